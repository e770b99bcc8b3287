/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-bundle.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"

struct _FfBundle {
  GFile *folder;
  FfSheetFacts *facts;
  GPtrArray *briefs; /* FfBrief */
  GPtrArray *names;  /* of their files */
  guint n_saved;
};

void
ff_bundle_free (FfBundle *bundle)
{
  if (bundle == NULL)
    return;
  g_clear_object (&bundle->folder);
  g_ptr_array_unref (bundle->briefs);
  g_ptr_array_unref (bundle->names);
  /* The briefs draw from the facts. */
  ff_sheet_facts_free (bundle->facts);
  g_free (bundle);
}

static FfBriefMore
all_that_is_read (void)
{
  FfBriefMore more = FF_BRIEF_ALONE;

  for (guint i = 0; i < ff_printables_count (); i++)
    more |= ff_printable (i)->more;
  return more;
}

static gboolean
gather (FfBundle *bundle, const FfProofSource *source, const FfProofWish *wish, GError **error)
{
  FfProofWish one = *wish;

  for (one.what = 0; one.what < ff_printables_count (); one.what++)
    {
      const FfPrintable *what = ff_printable (one.what);
      FfBrief *brief;

      if (!what->alone)
        continue;
      brief = ff_proof_gather (source, bundle->facts, &one, error);
      if (brief == NULL)
        return FALSE;
      g_ptr_array_add (bundle->briefs, brief);
      g_ptr_array_add (bundle->names,
                       ff_proof_name_file (bundle->facts->job, source->date,
                                           bundle->facts->version, _ (what->title)));
    }
  return TRUE;
}

FfBundle *
ff_bundle_new (FfKeeper *keeper, const FfProofWish *wish, GFile *folder, GError **error)
{
  g_autoptr (FfBundle) bundle = g_new0 (FfBundle, 1);
  FfProofSource source;

  bundle->briefs = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_brief_free);
  bundle->names = g_ptr_array_new_with_free_func (g_free);
  bundle->folder = g_object_ref (folder);
  if (!ff_errand_source (keeper, &source, error))
    return NULL;
  bundle->facts = ff_proof_facts (&source, all_that_is_read (), wish->phones, error);
  if (bundle->facts == NULL || !gather (bundle, &source, wish, error))
    return NULL;
  return g_steal_pointer (&bundle);
}

GFile *
ff_bundle_folder (const FfBundle *bundle)
{
  return bundle->folder;
}

guint
ff_bundle_n_files (const FfBundle *bundle)
{
  return bundle->names->len;
}

static char *
path_of (const FfBundle *bundle, guint i)
{
  return g_build_filename (g_file_peek_path (bundle->folder),
                           (const char *) g_ptr_array_index (bundle->names, i), NULL);
}

GPtrArray *
ff_bundle_existing (const FfBundle *bundle)
{
  GPtrArray *existing = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < bundle->names->len; i++)
    {
      g_autofree char *path = path_of (bundle, i);

      if (g_file_test (path, G_FILE_TEST_EXISTS))
        g_ptr_array_add (existing, g_strdup (g_ptr_array_index (bundle->names, i)));
    }
  return existing;
}

/* Writing */

static gboolean
write_one (FfBundle *bundle, guint i, GError **error)
{
  FfBrief *brief = g_ptr_array_index (bundle->briefs, i);
  g_autofree char *path = path_of (bundle, i);

  return ff_brief_lay_out (brief, bundle->facts, error) && ff_brief_write_pdf (brief, path, error);
}

static void
work (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  FfBundle *bundle = task_data;
  GError *error = NULL;

  while (bundle->n_saved < bundle->names->len && write_one (bundle, bundle->n_saved, &error))
    bundle->n_saved++;
  if (error == NULL)
    {
      g_task_return_boolean (task, TRUE);
      return;
    }
  if (bundle->n_saved > 0)
    /* Translators: before the reason why the next one could not be written. */
    g_prefix_error (&error, _ ("%u of %u files are saved. "), bundle->n_saved,
                    bundle->names->len);
  g_task_return_error (task, error);
}

void
ff_bundle_send (FfBundle *bundle, GObject *source, GAsyncReadyCallback came_back)
{
  g_autoptr (GTask) task = g_task_new (source, NULL, came_back, NULL);

  g_task_set_task_data (task, bundle, (GDestroyNotify) ff_bundle_free);
  g_task_run_in_thread (task, work);
}

const FfBundle *
ff_bundle_of (GAsyncResult *result)
{
  return g_task_get_task_data (G_TASK (result));
}

guint
ff_bundle_n_saved (const FfBundle *bundle)
{
  return bundle->n_saved;
}

gboolean
ff_bundle_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_boolean (G_TASK (result), error);
}
