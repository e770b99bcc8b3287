/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-briefed.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-rows.h"

#define AMENDMENT_MOST 9999

static const FfField briefed_fields[] = {
  FF_ID (FfBriefed, job_id, "job_id", N_ ("job"), TRUE),
  FF_TEXT (FfBriefed, letter, N_ ("letter of the version"), TRUE, 3),
  FF_WHOLE (FfBriefed, upto, N_ ("number of the last amendment that was told"), 0, AMENDMENT_MOST),
  FF_TEXT (FfBriefed, name, N_ ("name of who was briefed"), TRUE, 200),
  FF_TEXT (FfBriefed, initials, N_ ("initials of who was briefed"), TRUE, 12),
  FF_INSTANT (FfBriefed, at, N_ ("when it was said")),
  { "entered_by", N_ ("initials of who entered it"), FF_FIELD_TEXT, FALSE,
    G_STRUCT_OFFSET (FfBriefed, by), 0, 12, NULL },
};
const FfFields ff_briefed_fields = FF_FIELDS ("briefed", briefed_fields);

static gpointer
briefed_blank (void)
{
  FfBriefed *briefed = g_new0 (FfBriefed, 1);

  ff_fields_init (&ff_briefed_fields, briefed);
  return briefed;
}

FfBriefed *
ff_briefed_new (const char *job_id)
{
  FfBriefed *briefed = briefed_blank ();

  ff_set_text (&briefed->job_id, job_id);
  return briefed;
}

void
ff_briefed_free (FfBriefed *briefed)
{
  if (briefed == NULL)
    return;
  ff_fields_clear (&ff_briefed_fields, briefed);
  g_free (briefed);
}

gboolean
ff_briefed_check (const FfBriefed *briefed, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("briefed, %s"), briefed->initials);

  if (!ff_fields_check (&ff_briefed_fields, briefed, whose, error))
    return FALSE;
  for (const char *p = briefed->letter; *p != '\0'; p++)
    if (!g_ascii_isupper (*p))
      {
        g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                     _ ("%s: the version of the plan is a letter, A to Z"), whose);
        return FALSE;
      }
  return TRUE;
}

gboolean
ff_briefed_append (FfStore *store, const FfBriefed *briefed, GError **error)
{
  return ff_briefed_check (briefed, error)
         && (ff_rows_append (store, &ff_briefed_fields, briefed, error)
             || ff_rows_taken (error, "briefed.at",
                               _ ("these initials stand there already for this moment")));
}

GPtrArray *
ff_briefed_load (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_briefed_fields, "WHERE job_id = ?1 ORDER BY at, rowid", job_id,
                       briefed_blank, (GDestroyNotify) ff_briefed_free, error);
}
