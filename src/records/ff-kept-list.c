/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-kept-list.h"

#include <glib/gi18n-lib.h>

#include "ff-rows.h"

#define LONGEST_TEXT (128 * 1024)

static const FfField list_fields[] = {
  FF_ID (FfKeptList, id, "id", N_ ("id"), TRUE),
  FF_TEXT (FfKeptList, title, N_ ("title"), TRUE, 200),
  FF_TEXT (FfKeptList, text, N_ ("text"), TRUE, LONGEST_TEXT),
  FF_INSTANT (FfKeptList, changed_at, N_ ("last change")),
  { "entered_by", N_ ("initials of who entered it"), FF_FIELD_TEXT, FALSE,
    G_STRUCT_OFFSET (FfKeptList, by), 0, 12, NULL },
};
const FfFields ff_kept_list_fields = FF_FIELDS ("checklist", list_fields);

static const FfField rules_fields[] = {
  FF_WHOLE (FfListRules, id, "id", 1, 1),
  FF_WHOLE (FfListRules, idle_s, N_ ("idle time until a list holds itself"), 10, 86400),
  FF_WHOLE (FfListRules, restart_after_s, N_ ("longest interruption"), 10, 86400),
  FF_WHOLE (FfListRules, restart_on, N_ ("changes that start a section anew"), 0, 7),
  FF_REAL (FfListRules, cold_below_c, N_ ("temperature below which a day is cold"), TRUE, -60, 40),
};
const FfFields ff_list_rules_fields = FF_FIELDS ("list_rules", rules_fields);

static gpointer
list_blank (void)
{
  FfKeptList *list = g_new0 (FfKeptList, 1);

  ff_fields_init (&ff_kept_list_fields, list);
  return list;
}

FfKeptList *
ff_kept_list_new (void)
{
  FfKeptList *list = list_blank ();

  g_free (list->id);
  list->id = ff_records_new_id ();
  return list;
}

void
ff_kept_list_free (FfKeptList *list)
{
  if (list == NULL)
    return;
  ff_fields_clear (&ff_kept_list_fields, list);
  g_free (list);
}

gboolean
ff_kept_list_save (FfStore *store, const FfKeptList *list, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("list “%s”"), list->title);
  g_autofree char *sentence
      = g_strdup_printf (_ ("another list has the title “%s”; give this one another"), list->title);

  return ff_fields_check (&ff_kept_list_fields, list, whose, error)
         && (ff_rows_save (store, &ff_kept_list_fields, list, error)
             || ff_rows_taken (error, "checklist.title", sentence));
}

gboolean
ff_kept_list_delete (FfStore *store, const char *id, GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store, "DELETE FROM checklist WHERE id = ?1", error);

  return statement != NULL && ff_statement_bind_text (statement, 1, id, error)
         && ff_statement_run (statement, error);
}

GPtrArray *
ff_kept_lists_load (FfStore *store, GError **error)
{
  return ff_rows_load (store, &ff_kept_list_fields, "ORDER BY title, id", NULL, list_blank,
                       (GDestroyNotify) ff_kept_list_free, error);
}

static gpointer
rules_blank (void)
{
  return g_new0 (FfListRules, 1);
}

gboolean
ff_list_rules_load (FfStore *store, FfListRules *ret_rules, GError **error)
{
  static const FfListRules ours = { 1, 180, 300, 7, 10.0 };
  g_autoptr (GPtrArray) rows
      = ff_rows_load (store, &ff_list_rules_fields, "", NULL, rules_blank, g_free, error);

  if (rows == NULL)
    return FALSE;
  *ret_rules = rows->len > 0 ? *(const FfListRules *) g_ptr_array_index (rows, 0) : ours;
  return TRUE;
}

gboolean
ff_list_rules_save (FfStore *store, const FfListRules *rules, GError **error)
{
  return ff_fields_check (&ff_list_rules_fields, rules, _ ("rules for lists"), error)
         && ff_rows_save (store, &ff_list_rules_fields, rules, error);
}
