/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The page of jobs: their order and search as pure rules, and what can be done with them by keys. */
#include "ff-stage.h"

#include <string.h>

#include "ff-job-row.h"
#include "ff-jobs-list.h"

/* The rules */

static FfJob *
job_of (const char *title, const char *date, FfJobState job_state)
{
  FfJob *job = ff_job_new ();

  ff_set_text (&job->title, title);
  ff_set_text (&job->date, date);
  job->state = job_state;
  return job;
}

static void
test_next_comes_first (void **state)
{
  g_autoptr (GPtrArray) jobs = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_job_free);
  static const char *const want[] = { "today", "soon", "later", "undated", "last", "old", "away" };

  g_ptr_array_add (jobs, job_of ("away", "2027-09-30", FF_JOB_PUT_AWAY));
  g_ptr_array_add (jobs, job_of ("undated", "", FF_JOB_PLANNED));
  g_ptr_array_add (jobs, job_of ("old", "2027-01-02", FF_JOB_FLOWN));
  g_ptr_array_add (jobs, job_of ("later", "2028-01-01", FF_JOB_PLANNED));
  g_ptr_array_add (jobs, job_of ("last", "2027-09-17", FF_JOB_PLANNED));
  g_ptr_array_add (jobs, job_of ("soon", "2027-09-19", FF_JOB_PLANNED));
  g_ptr_array_add (jobs, job_of ("today", "2027-09-18", FF_JOB_FLOWN));
  ff_jobs_sort (jobs, "2027-09-18");
  for (guint i = 0; i < G_N_ELEMENTS (want); i++)
    assert_string_equal (((FfJob *) g_ptr_array_index (jobs, i))->title, want[i]);
}

static void
test_every_word_must_stand_somewhere (void **state)
{
  const char *texts[] = { "Skarrowick tidal mill", "Harbour Trust", "Überlingen", NULL };

  assert_true (ff_jobs_match ("", texts));
  assert_true (ff_jobs_match ("  MILL ", texts));
  assert_true (ff_jobs_match ("trust mill", texts));
  assert_true (ff_jobs_match ("überl", texts));
  assert_false (ff_jobs_match ("mill ferry", texts));
}

static void
test_days_are_counted (void **state)
{
  static const struct {
    const char *date, *want;
  } cases[] = {
    { "2027-09-18", "today" },       { "2027-09-19", "tomorrow" }, { "2027-09-30", "in 12 days" },
    { "2028-09-18", "in 366 days" }, { "2027-09-17", NULL },       { "", NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *got = ff_jobs_when (cases[i].date, "2027-09-18");

      if (g_strcmp0 (got, cases[i].want) != 0)
        fail_msg ("%s: %s", cases[i].date, got != NULL ? got : "nothing");
    }
}

/* The page */

static GtkWidget *
page_of (FfStage *stage)
{
  return GTK_WIDGET (ff_window_get_page (stage->window));
}

static guint
rows (FfStage *stage)
{
  return ff_stage_count (page_of (stage), FF_TYPE_JOB_ROW);
}

static GtkWidget *
row_of (FfStage *stage, const char *title)
{
  GtkWidget *label = ff_stage_find (page_of (stage), GTK_TYPE_LABEL, title);

  assert_non_null (label);
  return gtk_widget_get_ancestor (label, FF_TYPE_JOB_ROW);
}

/* What the key does, done with the row in focus as a person would. */
static void
act (FfStage *stage, GtkWidget *row, const char *action)
{
  gtk_widget_grab_focus (row);
  gtk_widget_activate_action (row, action, "s", "");
  ff_stage_settle ();
}

static void
test_empty_store_says_what_to_do (void **state)
{
  FfStage *stage = ff_stage_new (FALSE, 1200, 800);

  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "No job yet"));
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_BUTTON, "_New job"));
  gtk_widget_activate_action (GTK_WIDGET (stage->window), "win.add", NULL);
  assert_string_equal (ff_keeper_job (stage->keeper)->title, "New job");
  ff_window_show_page (stage->window, "jobs");
  ff_stage_settle ();
  assert_int_equal (rows (stage), 1);
  ff_stage_free (stage);
}

static void
test_search_narrows_the_list (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);
  guint all = rows (stage);
  GtkWidget *search = ff_stage_find (page_of (stage), GTK_TYPE_SEARCH_ENTRY, NULL);

  assert_true (all >= 2);
  gtk_widget_activate_action (GTK_WIDGET (stage->window), "win.find", NULL);
  assert_true (gtk_widget_is_ancestor (gtk_window_get_focus (GTK_WINDOW (stage->window)), search));
  gtk_editable_set_text (GTK_EDITABLE (search), "harbour");
  g_signal_emit_by_name (search, "search-changed");
  assert_int_equal (rows (stage), 1);
  g_signal_emit_by_name (search, "stop-search");
  g_signal_emit_by_name (search, "search-changed");
  assert_int_equal (rows (stage), all);
  ff_stage_free (stage);
}

static void
test_delete_and_undo_by_keys (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);
  guint all = rows (stage);

  act (stage, row_of (stage, "Skarrowick tidal mill"), "job.delete");
  assert_int_equal (rows (stage), all - 1);
  assert_non_null (ff_stage_find (GTK_WIDGET (stage->window), GTK_TYPE_LABEL,
                                  "Job “Skarrowick tidal mill” deleted"));
  gtk_widget_activate_action (GTK_WIDGET (stage->window), "win.undo", NULL);
  ff_stage_settle ();
  assert_int_equal (rows (stage), all);
  (void) row_of (stage, "Skarrowick tidal mill");
  ff_stage_free (stage);
}

static void
test_duplicate_and_put_away (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);
  guint all = rows (stage);
  GtkWidget *away;

  act (stage, row_of (stage, "Skarrowick tidal mill"), "job.duplicate");
  assert_int_equal (rows (stage), all + 1);
  act (stage, row_of (stage, "Skarrowick tidal mill, again"), "job.put-away");
  assert_int_equal (rows (stage), all);
  away = ff_stage_find (page_of (stage), GTK_TYPE_TOGGLE_BUTTON, "Show 1 job put away");
  assert_non_null (away);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (away), TRUE);
  assert_int_equal (rows (stage), all + 1);
  act (stage, row_of (stage, "Skarrowick tidal mill, again"), "job.put-away");
  assert_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "put away"));
  ff_stage_free (stage);
}

static void
test_enter_opens_the_job (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);
  const FfPageInfo *first = ff_pages_nth (FF_PAGE_PART, 0);

  gtk_widget_activate (row_of (stage, "Skarrowick tidal mill"));
  ff_stage_settle ();
  assert_string_equal (ff_keeper_job (stage->keeper)->title, "Skarrowick tidal mill");
  assert_ptr_equal (ff_page_get_info (ff_window_get_page (stage->window)),
                    first != NULL ? first : ff_pages_find ("jobs"));
  ff_stage_free (stage);
}

static void
test_titles_that_are_markup_are_words (void **state)
{
  FfStage *stage = ff_stage_new (FALSE, 1200, 800);
  g_autoptr (FfJob) job = job_of ("<b>&amp; Sons", "2027-09-18", FF_JOB_PLANNED);
  GError *error = NULL;

  assert_true (ff_keeper_save_job (stage->keeper, job, "Job added", &error));
  ff_stage_settle ();
  act (stage, row_of (stage, "<b>&amp; Sons"), "job.delete");
  assert_non_null (ff_stage_find (GTK_WIDGET (stage->window), GTK_TYPE_LABEL,
                                  "Job “<b>&amp; Sons” deleted"));
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_next_comes_first),
    cmocka_unit_test (test_every_word_must_stand_somewhere),
    cmocka_unit_test (test_days_are_counted),
    cmocka_unit_test (test_empty_store_says_what_to_do),
    cmocka_unit_test (test_search_narrows_the_list),
    cmocka_unit_test (test_delete_and_undo_by_keys),
    cmocka_unit_test (test_duplicate_and_put_away),
    cmocka_unit_test (test_enter_opens_the_job),
    cmocka_unit_test (test_titles_that_are_markup_are_words),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("jobs", tests, NULL, NULL);
}
