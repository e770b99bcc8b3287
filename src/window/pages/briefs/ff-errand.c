/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-errand.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"

#define SMALL_WIDTH 300 /* pixels of a small picture, shown at half of that */

static void
errand_free (gpointer data)
{
  FfErrand *errand = data;

  ff_proof_unref (errand->proof);
  g_clear_object (&errand->file);
  g_free (errand->job_id);
  g_free (errand);
}

gboolean
ff_errand_source (FfKeeper *keeper, FfProofSource *ret_source, GError **error)
{
  FfAnswer *answer = ff_keeper_answer (keeper);
  const FfStanding *standing = answer != NULL ? answer->standing : NULL;
  const FfDayPlan *plan = ff_keeper_plan (keeper);
  const FfJob *job = ff_keeper_job (keeper);
  const char *why = ff_keeper_why (keeper);

  if (plan == NULL || job == NULL)
    {
      g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                           why != NULL ? why : _ ("There is no plan to print yet."));
      return FALSE;
    }
  /* What is frozen is printed as it was frozen: a letter says one thing only. */
  if (standing != NULL && standing->frozen != NULL)
    plan = standing->frozen;
  *ret_source = (FfProofSource) {
    .day = ff_keeper_day (keeper),
    .plan = plan,
    .standing = standing,
    .store = ff_keeper_store (keeper),
    .job_id = job->id,
    .date = job->date,
    .now = g_get_real_time () / G_USEC_PER_SEC,
  };
  return TRUE;
}

FfErrand *
ff_errand_new (FfKeeper *keeper, FfPurpose purpose, const FfProofWish *wish, GError **error)
{
  FfProofSource source;
  FfErrand *errand;
  FfProof *proof;

  if (!ff_errand_source (keeper, &source, error))
    return NULL;
  proof = ff_proof_new (&source, wish, error);
  if (proof == NULL)
    return NULL;
  errand = g_new0 (FfErrand, 1);
  errand->purpose = purpose;
  errand->proof = proof;
  errand->job_id = g_strdup (source.job_id);
  return errand;
}

/* Pictures are drawn here as well: letters of a size that is new are slow to come. */
static void
draw (const FfErrand *errand)
{
  ff_proof_draw_small (errand->proof, SMALL_WIDTH);
  ff_proof_draw_large (errand->proof, errand->page, errand->width, errand->height);
}

static void
work (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  const FfErrand *errand = task_data;
  GError *error = NULL;
  gboolean done = ff_proof_lay_out (errand->proof, &error);

  if (done && errand->purpose == FF_TO_SHOW)
    draw (errand);
  if (done && errand->purpose == FF_TO_SAVE)
    done = ff_brief_write_pdf (errand->proof->brief, g_file_peek_path (errand->file), &error);
  if (done)
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

void
ff_errand_send (FfErrand *errand, GObject *source, GAsyncReadyCallback came_back)
{
  g_autoptr (GTask) task = g_task_new (source, NULL, came_back, NULL);

  g_task_set_task_data (task, errand, errand_free);
  g_task_run_in_thread (task, work);
}

const FfErrand *
ff_errand_of (GAsyncResult *result)
{
  return g_task_get_task_data (G_TASK (result));
}

gboolean
ff_errand_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_boolean (G_TASK (result), error);
}
