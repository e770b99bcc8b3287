/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A checklist of the crew's own, kept as the text that was written, byte for byte; and the crew's
 * rules for runs. What the text says is read elsewhere. */
#pragma once

#include "ff-field.h"
#include "ff-records.h"

typedef struct {
  char *id;
  char *title; /* as the text has it; unique */
  char *text;
  gint64 changed_at;
  char *by; /* initials */
} FfKeptList;

extern const FfFields ff_kept_list_fields;

FfKeptList *ff_kept_list_new (void) G_GNUC_WARN_UNUSED_RESULT; /* a new id */
void ff_kept_list_free (FfKeptList *list);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfKeptList, ff_kept_list_free)

/* Replaces the one with the same id. FF_ERROR_INPUT: another list has that title. */
gboolean ff_kept_list_save (FfStore *store, const FfKeptList *list, GError **error);

/* A starter list of the same id comes back; runs stay as they are. */
gboolean ff_kept_list_delete (FfStore *store, const char *id, GError **error);

/* By title: an array of FfKeptList that frees them. */
GPtrArray *ff_kept_lists_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The crew's own: idle time until a run holds itself, how long an interruption may last before its
 * section starts anew, which changes start it anew (bits: battery 1, aircraft 2, person 4), below
 * which forecast the day is cold. Until they are set: 180 s, 300 s, all three, 10 °C (common
 * practice, no source). */
typedef struct {
  int id; /* always 1 */
  int idle_s, restart_after_s, restart_on;
  double cold_below_c;
} FfListRules;

extern const FfFields ff_list_rules_fields;

gboolean ff_list_rules_load (FfStore *store, FfListRules *ret_rules, GError **error);
gboolean ff_list_rules_save (FfStore *store, const FfListRules *rules, GError **error);
