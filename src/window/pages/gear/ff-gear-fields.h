/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is asked of an item, by its kind: which fields, in which groups, how a stored value is shown
 * and how a typed one is read. Pure. */
#pragma once

#include "ff-item.h"

/* How a field is shown and read where its type in the record does not say enough. */
typedef enum {
  FF_GEAR_PLAIN,
  FF_GEAR_LABEL,     /* 1 to 6 characters that no other item has */
  FF_GEAR_STRENGTH,  /* of a filter: "ND32", "1.5", "5 stops", "2-5 stops variable" */
  FF_GEAR_APERTURES, /* one, or a list of third stops */
  FF_GEAR_BASES,     /* a list of ISO steps, the preferred one first */
  FF_GEAR_ISO,       /* one step */
  FF_GEAR_SHUTTER,   /* one step */
  FF_GEAR_COUNT,     /* its smallest value stands for "not given" and is shown as nothing */
  FF_GEAR_WANTED,    /* the same, but it is needed: nothing typed is refused */
} FfGearHow;

typedef struct {
  const char *name;  /* of the field of the record */
  const char *label; /* what people call it here; marked for translation */
  const char *unit;  /* marked for translation; NULL: none */
  FfGearHow how;
  gboolean wide; /* words, that want the whole width */
} FfGearField;

typedef struct {
  const char *title; /* marked for translation; NULL: none */
  const FfGearField *fields;
  guint n_fields;
} FfGearGroup;

/* Groups of a kind in their order: fills up to FF_GEAR_MAX_GROUPS, returns how many. */
#define FF_GEAR_MAX_GROUPS 4
guint ff_gear_groups (FfKind kind, FfGearGroup groups[FF_GEAR_MAX_GROUPS]);

/* The field of the record behind one that is asked for. */
const FfField *ff_gear_record_field (FfKind kind, const FfGearField *field);

/* The stored value as it stands in its entry; empty: not given. */
char *ff_gear_text (const FfItem *item, const FfGearField *field) G_GNUC_WARN_UNUSED_RESULT;

/* Reads what was typed into the item. `items` are all there are, for the label that must be unlike
 * theirs. FF_ERROR_INPUT says what is accepted, as one sentence without its full stop; the item is
 * untouched then. */
gboolean ff_gear_read (FfItem *item,
                       const FfGearField *field,
                       const char *typed,
                       GPtrArray *items,
                       GError **error);

#define FF_GEAR_LABEL_LENGTH 6
