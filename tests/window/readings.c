/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Light readings in the window: what is typed as values, the dialog by keys alone, a test picture,
 * setting one aside, and what the page of sorties makes of it. */
#include "ff-stage.h"

#include <math.h>
#include <string.h>

#include "ff-gear-measure.h"
#include "ff-pick.h"
#include "ff-reading-dialog.h"
#include "ff-reading-list.h"
#include "ff-reading-text.h"
#include "ff-test-picture.h"

static FfStage *
stage_on_sorties (void)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);

  ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, "sorties");
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  return stage;
}

static GtkWidget *
page_of (FfStage *stage)
{
  return GTK_WIDGET (ff_window_get_page (stage->window));
}

/* The dialog, as the page's key opens it. */
static FfReadingDialog *
open_dialog (FfStage *stage)
{
  GList *windows;
  FfReadingDialog *dialog = NULL;

  assert_true (gtk_widget_activate_action (page_of (stage), "sorties.reading", NULL));
  ff_stage_settle ();
  windows = gtk_window_list_toplevels ();
  for (GList *at = windows; at != NULL; at = at->next)
    if (FF_IS_READING_DIALOG (at->data))
      dialog = at->data;
  g_list_free (windows);
  assert_non_null (dialog);
  return dialog;
}

/* The shown entry with this label. */
static FfEntry *
entry_named (gpointer dialog, const char *label)
{
  GtkWidget *text = ff_stage_find (GTK_WIDGET (dialog), GTK_TYPE_LABEL, label);

  assert_non_null (text);
  return FF_ENTRY (gtk_widget_get_ancestor (text, FF_TYPE_ENTRY));
}

static void
type (gpointer dialog, const char *label, const char *text)
{
  FfEntry *entry = entry_named (dialog, label);
  GtkWidget *editable = ff_stage_find (GTK_WIDGET (entry), GTK_TYPE_TEXT, NULL);

  assert_non_null (editable);
  gtk_editable_set_text (GTK_EDITABLE (editable), text);
  ff_stage_settle ();
}

static const GtkLabel *
label_with (GtkWidget *root, const char *part)
{
  if (!gtk_widget_get_visible (root))
    return NULL;
  if (GTK_IS_LABEL (root) && strstr (gtk_label_get_text (GTK_LABEL (root)), part) != NULL)
    return GTK_LABEL (root);
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      const GtkLabel *found = label_with (child, part);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
says (gpointer root, const char *part)
{
  return label_with (GTK_WIDGET (root), part) != NULL;
}

static void
enter (gpointer dialog, const char *label)
{
  g_signal_emit_by_name (entry_named (dialog, label), "entered");
  ff_stage_settle ();
}

/* A picture to look at, where somebody asks for one. */
static void
shoot (gpointer window, const char *name)
{
  const char *folder = g_getenv ("FF_TEST_PICTURES");
  g_autofree char *path = folder != NULL ? g_build_filename (folder, name, NULL) : NULL;
  FfStage seen = { .window = window };

  if (path == NULL)
    return;
  gtk_widget_queue_draw (window);
  ff_stage_settle ();
  ff_stage_picture (&seen, path);
}

/* ---- Values ---- */

static void
check_filter (GPtrArray *items, const char *text, double stops, const char *said)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *got = NULL;
  double value = NAN;

  ff_reading_text_filter (items, text, &value, &got, &error);
  assert_no_error (error);
  assert_close (value, stops, 1e-9);
  assert_string_equal (got, said);
}

static void
test_filters_as_typed (void **state)
{
  FfStage *stage = stage_on_sorties ();
  GPtrArray *items = ff_keeper_items (stage->keeper);
  g_autoptr (GError) error = NULL;
  g_autofree char *said = NULL;
  double value;

  check_filter (items, "", 0, "none fitted");
  check_filter (items, " nd8 ", 3.1, "ND8, measured 3.1 stops");
  check_filter (items, "ND32", 5, "ND32, 5 stops");
  check_filter (items, "4", 4, "4 stops");
  check_filter (items, "ND1000", log2 (1000), "10 stops");
  assert_false (ff_reading_text_filter (items, "dark", &value, &said, &error));
  assert_non_null (error);
  ff_stage_free (stage);
}

/* ---- The dialog ---- */

static double
learned (FfStage *stage)
{
  return ff_keeper_plan (stage->keeper)->learned_offset_stops;
}

/* Time, shutter shown, Enter: the plan is another one, and the page says why. */
static void
test_a_reading_by_keys (void **state)
{
  FfStage *stage = stage_on_sorties ();
  FfReadingDialog *dialog = open_dialog (stage);

  assert_true (says (page_of (stage), "not yet checked by a reading"));
  assert_string_equal (ff_entry_get_text (entry_named (dialog, "Shutter wanted")), "1/50");
  enter (dialog, "Shutter shown");
  assert_true (FF_IS_READING_DIALOG (dialog)); /* nothing is typed: it stays */
  type (dialog, "Time", "16:42");
  type (dialog, "Shutter shown", "1/1600");
  assert_true (says (dialog, "against the estimate; holds while the sky stays the same (clear)"));
  shoot (dialog, "reading-dialog.png");
  enter (dialog, "Shutter shown");
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  assert_true (learned (stage) < -0.7);
  assert_true (says (page_of (stage), ": holds while the sky stays the same (clear)."));
  shoot (stage->window, "reading-sorties.png");

  /* Undone, it is set aside. */
  assert_true (ff_keeper_undo (stage->keeper, NULL));
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  assert_close (learned (stage), 0, 0);
  assert_int_equal (ff_day_readings (ff_keeper_day (stage->keeper))->len, 1);
  ff_stage_free (stage);
}

static void
test_what_is_wrong_is_said_where_it_is (void **state)
{
  FfStage *stage = stage_on_sorties ();
  FfReadingDialog *dialog = open_dialog (stage);

  type (dialog, "Time", "16:42");
  type (dialog, "Shutter shown", "1/50000");
  type (dialog, "Filter that was fitted", "ND32");
  assert_true (says (dialog, "ND32, 5 stops"));
  assert_true (says (dialog, "check filter, aperture, ISO and sky"));
  type (dialog, "Filter that was fitted", "black");
  enter (dialog, "Time");
  type (dialog, "Filter that was fitted", "");
  type (dialog, "Shutter shown", "1/80");
  assert_true (says (dialog, "as much as ND32 takes: was it fitted?"));
  gtk_window_close (GTK_WINDOW (dialog));
  ff_stage_settle ();
  assert_int_equal (ff_day_readings (ff_keeper_day (stage->keeper))->len, 0);
  ff_stage_free (stage);
}

static gboolean
has_read (gpointer dialog)
{
  return says (dialog, "grey.jpg: The middle is right");
}

static void
test_a_test_picture (void **state)
{
  const FfTestPicture picture = { 60, 40, FF_TEST_FLAT, .a = 118 };
  const FfTestExif exif = { .aperture = { 28, 10 }, .shutter = { 1, 2500 }, .iso = 100,
                            .taken = "2027:09:18 16:55:00" };
  FfStage *stage = stage_on_sorties ();
  FfReadingDialog *dialog = open_dialog (stage);
  g_autofree char *path = g_build_filename (stage->folder, "grey.jpg", NULL);
  const FfReading *reading;

  ff_test_picture_write (path, FF_TEST_JPEG, &picture);
  ff_test_exif_write (path, &exif);
  ff_reading_dialog_take_picture (dialog, path);
  assert_true (ff_stage_wait (has_read, dialog));
  assert_string_equal (ff_entry_get_text (entry_named (dialog, "Time")), "16:55");
  enter (dialog, "Time");
  ff_stage_wait_for_plan (stage);
  reading = g_ptr_array_index (ff_day_readings (ff_keeper_day (stage->keeper)), 0);
  assert_int_equal (reading->method, FF_METHOD_FRAME);
  assert_string_equal (reading->source, "grey.jpg");
  /* f/2.8 is 2^1.5: EV 3 + log2 2500. */
  assert_close (reading->ev100, 3 + log2 (2500), 0.011);
  ff_stage_free (stage);
}

static void
test_one_is_set_aside (void **state)
{
  FfStage *stage = stage_on_sorties ();
  FfReadingDialog *dialog = open_dialog (stage);
  GtkWidget *button;

  type (dialog, "Time", "16:42");
  type (dialog, "Shutter shown", "1/1600");
  enter (dialog, "Time");
  ff_stage_wait_for_plan (stage);
  dialog = open_dialog (stage);
  assert_true (says (dialog, "■  16:42, shutter shown"));
  button = ff_stage_find (GTK_WIDGET (dialog), GTK_TYPE_BUTTON, "Set aside…");
  assert_non_null (button);
  g_signal_emit_by_name (button, "clicked");
  ff_stage_settle ();
  enter (dialog, "Why is it set aside? Enter keeps the reason"); /* without one: refused */
  type (dialog, "Why is it set aside? Enter keeps the reason", "a cloud passed");
  enter (dialog, "Why is it set aside? Enter keeps the reason");
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  assert_true (says (dialog, "Set aside: a cloud passed"));
  assert_true (says (dialog, "–  16:42"));
  assert_close (learned (stage), 0, 0);
  shoot (dialog, "reading-aside.png");
  gtk_window_close (GTK_WINDOW (dialog));
  ff_stage_free (stage);
}

/* ---- A filter ---- */

static gboolean
is_measured (gpointer keeper)
{
  GPtrArray *items = ff_keeper_items (keeper);

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (g_str_equal (item->label, "ND16"))
        return isfinite (item->measured_stops);
    }
  return FALSE;
}

static void
write_grey (const char *path, int per_second)
{
  const FfTestPicture picture = { 60, 40, FF_TEST_FLAT, .a = 118 };
  const FfTestExif exif = { .aperture = { 28, 10 }, .shutter = { 1, per_second }, .iso = 100 };

  ff_test_picture_write (path, FF_TEST_JPEG, &picture);
  ff_test_exif_write (path, &exif);
}

static void
test_a_filter_is_measured (void **state)
{
  FfStage *stage = stage_on_sorties ();
  g_autofree char *bare = g_build_filename (stage->folder, "bare.jpg", NULL);
  g_autofree char *fitted = g_build_filename (stage->folder, "fitted.jpg", NULL);
  g_autofree char *id = ff_item_find (ff_keeper_store (stage->keeper), "ND16", NULL);

  write_grey (bare, 3200);
  write_grey (fitted, 200);
  ff_window_show_page (stage->window, "gear");
  ff_stage_settle ();
  assert_false (is_measured (stage->keeper));
  ff_gear_measure_pictures (page_of (stage), stage->keeper, id, bare, fitted);
  assert_true (ff_stage_wait (is_measured, stage->keeper));
  ff_stage_settle ();
  assert_close (ff_keeper_find_item (stage->keeper, id)->measured_stops, 4, 0.011);
  assert_true (says (page_of (stage), "measured 4"));
  /* The other way round it is refused, and what was measured stays. */
  ff_gear_measure_pictures (page_of (stage), stage->keeper, id, fitted, bare);
  ff_stage_settle ();
  assert_close (ff_keeper_find_item (stage->keeper, id)->measured_stops, 4, 0.011);
  assert_true (ff_keeper_undo (stage->keeper, NULL));
  assert_false (is_measured (stage->keeper));
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_filters_as_typed),
    cmocka_unit_test (test_a_reading_by_keys),
    cmocka_unit_test (test_what_is_wrong_is_said_where_it_is),
    cmocka_unit_test (test_a_test_picture),
    cmocka_unit_test (test_one_is_set_aside),
    cmocka_unit_test (test_a_filter_is_measured),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("readings", tests, NULL, NULL);
}
