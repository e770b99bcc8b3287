/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The crew's own limit sheets in the window: a row is changed, one is refused, an example is added
 * and taken back. */
#include "ff-stage.h"

#include <math.h>
#include <string.h>

#include "ff-limit-form.h"
#include "ff-limit.h"
#include "ff-records-page.h"

static FfStage *
stage_on_records (int width)
{
  FfStage *stage = ff_stage_new (TRUE, width, 800);

  ff_keeper_set_initials (stage->keeper, "MO");
  ff_window_show_page (stage->window, "records");
  ff_stage_settle ();
  return stage;
}

static FfLimitForm *
form_of (FfStage *stage)
{
  GtkWidget *found = ff_stage_find (GTK_WIDGET (ff_window_get_page (stage->window)),
                                    FF_TYPE_LIMIT_FORM, NULL);

  assert_non_null (found);
  return FF_LIMIT_FORM (found);
}

static GPtrArray *
stored (FfStage *stage)
{
  GError *error = NULL;
  GPtrArray *limits = ff_limits_load (ff_keeper_store (stage->keeper), &error);

  assert_no_error (error);
  return limits;
}

static void
press_store (FfStage *stage)
{
  g_signal_emit_by_name (form_of (stage), "store");
  ff_stage_settle ();
}

static void
type_over (FfStage *stage, const char *from, const char *to)
{
  GtkWidget *text = ff_stage_find (GTK_WIDGET (form_of (stage)), GTK_TYPE_TEXT, from);

  assert_non_null (text);
  gtk_editable_set_text (GTK_EDITABLE (text), to);
  ff_stage_settle ();
}

/* The first row of the demo's sheet: mean wind, at most 8 m/s. */
static void
test_a_row_is_changed (void **state)
{
  FfStage *stage = stage_on_records (1200);
  g_autoptr (GPtrArray) limits = NULL;

  type_over (stage, "8", "7.5");
  press_store (stage);
  limits = stored (stage);
  assert_int_equal (limits->len, 12);
  assert_close (((FfLimit *) g_ptr_array_index (limits, 0))->value, 7.5, 0);
  ff_stage_free (stage);
}

static void
test_a_row_without_a_value_is_refused (void **state)
{
  FfStage *stage = stage_on_records (1200);
  g_autoptr (GPtrArray) limits = NULL;

  type_over (stage, "8", "");
  press_store (stage);
  limits = stored (stage);
  assert_close (((FfLimit *) g_ptr_array_index (limits, 0))->value, 8, 0);
  ff_stage_free (stage);
}

static void
test_an_example_comes_and_goes (void **state)
{
  FfStage *stage = stage_on_records (1200);
  GtkWidget *page = GTK_WIDGET (ff_window_get_page (stage->window));
  GtkWidget *card = ff_stage_find (page, GTK_TYPE_LABEL, "Add an example sheet");
  GtkWidget *button;
  g_autoptr (GPtrArray) added = NULL, again = NULL;

  assert_non_null (card);
  button = ff_stage_find (gtk_widget_get_parent (card), GTK_TYPE_BUTTON, NULL);
  assert_non_null (button);
  g_signal_emit_by_name (button, "clicked");
  ff_stage_settle ();
  added = stored (stage);
  assert_true (added->len > 15);
  for (guint i = 0; i < added->len; i++)
    assert_true (((FfLimit *) g_ptr_array_index (added, i))->example);
  assert_true (gtk_widget_activate_action (GTK_WIDGET (stage->window), "win.undo", NULL));
  ff_stage_settle ();
  again = stored (stage);
  assert_int_equal (again->len, 12);
  ff_stage_free (stage);
}

static void
test_it_stands_on_a_narrow_window (void **state)
{
  FfStage *stage = stage_on_records (400);

  assert_in_range (gtk_widget_get_width (GTK_WIDGET (ff_window_get_page (stage->window))), 1, 400);
  assert_in_range (gtk_widget_get_width (GTK_WIDGET (form_of (stage))), 1, 400);
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_a_row_is_changed),
    cmocka_unit_test (test_a_row_without_a_value_is_refused),
    cmocka_unit_test (test_an_example_comes_and_goes),
    cmocka_unit_test (test_it_stands_on_a_narrow_window),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("records", tests, NULL, NULL);
}
