/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-plan-version.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-json-check.h"
#include "ff-rows.h"

#define COPY_MOST 2000000 /* bytes: a day of two hundred shots is a fifth of it */

static const FfField version_fields[] = {
  FF_ID (FfPlanVersion, job_id, "job_id", N_ ("job"), TRUE),
  FF_TEXT (FfPlanVersion, letter, N_ ("letter of the version"), TRUE, 3),
  FF_INSTANT (FfPlanVersion, frozen_at, N_ ("when it was frozen")),
  { "frozen_by", N_ ("initials of who froze it"), FF_FIELD_TEXT, FALSE,
    G_STRUCT_OFFSET (FfPlanVersion, by), 0, 12, NULL },
  FF_TEXT (FfPlanVersion, why, N_ ("why it has a letter of its own"), FALSE, 500),
  FF_TEXT (FfPlanVersion, copy, N_ ("copy of the plan, as JSON"), TRUE, COPY_MOST),
};
const FfFields ff_plan_version_fields = FF_FIELDS ("plan_version", version_fields);

static gpointer
version_blank (void)
{
  FfPlanVersion *version = g_new0 (FfPlanVersion, 1);

  ff_fields_init (&ff_plan_version_fields, version);
  return version;
}

FfPlanVersion *
ff_plan_version_new (const char *job_id)
{
  FfPlanVersion *version = version_blank ();

  ff_set_text (&version->job_id, job_id);
  return version;
}

void
ff_plan_version_free (FfPlanVersion *version)
{
  if (version == NULL)
    return;
  ff_fields_clear (&ff_plan_version_fields, version);
  g_free (version);
}

gboolean
ff_plan_version_check (const FfPlanVersion *version, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("version %s"), version->letter);

  if (!ff_fields_check (&ff_plan_version_fields, version, whose, error))
    return FALSE;
  for (const char *p = version->letter; *p != '\0'; p++)
    if (!g_ascii_isupper (*p))
      {
        g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                     _ ("%s: the version of the plan is a letter, A to Z"), whose);
        return FALSE;
      }
  if (ff_json_check (version->copy, error))
    return TRUE;
  g_prefix_error (error, "%s: ", whose);
  return FALSE;
}

gboolean
ff_plan_version_append (FfStore *store, const FfPlanVersion *version, GError **error)
{
  return ff_plan_version_check (version, error)
         && (ff_rows_append (store, &ff_plan_version_fields, version, error)
             || ff_rows_taken (error, "plan_version.letter",
                               _ ("this letter is frozen already, and a frozen plan stays as it "
                                  "is; take the next letter")));
}

GPtrArray *
ff_plan_versions_load (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_plan_version_fields, "WHERE job_id = ?1 ORDER BY frozen_at, rowid",
                       job_id, version_blank, (GDestroyNotify) ff_plan_version_free, error);
}
