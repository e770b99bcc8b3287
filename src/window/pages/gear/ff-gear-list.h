/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list of the gear, and what a new item begins with. Pure. */
#pragma once

#include "ff-item.h"

/* "Batteries": the heading of a kind, translated. */
const char *ff_gear_plural (FfKind kind);

/* What can be chosen for a field that names another record: texts for people, and the id behind each.
 * The first is none, with an empty id. `members` are FfMember. */
typedef struct {
  GPtrArray *ids, *texts; /* char*; texts end with NULL */
} FfGearChoices;

FfGearChoices *ff_gear_choices_new (const char *field,
                                    GPtrArray *items,
                                    GPtrArray *members) G_GNUC_WARN_UNUSED_RESULT;
void ff_gear_choices_free (FfGearChoices *choices);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfGearChoices, ff_gear_choices_free)

/* Where an id stands among them; 0 when it does not. */
int ff_gear_choices_find (const FfGearChoices *choices, const char *id);

/* A new item with a label that is free. What is not typed yet is left out or, where a value is
 * needed, the most careful one. */
FfItem *ff_gear_new (FfKind kind, GPtrArray *items) G_GNUC_WARN_UNUSED_RESULT;

/* Turns a copy of an item into another one of its sort: a new id and label, and none of what belongs
 * to the one it was copied from (hours, cycles, measured values, its place, its note). */
void ff_gear_make_another (FfItem *copy, GPtrArray *items);
