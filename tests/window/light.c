/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The light page on the demo day, by keyboard alone: the ruler's pieces, the gap, who pays, time,
 * filters, the steps; its three sources; narrow, large and without a job. */
#include "ff-stage.h"

#include <math.h>
#include <string.h>

#include "ff-hours-view.h"
#include "ff-light-source.h"
#include "ff-pick.h"
#include "ff-reading-dialog.h"
#include "ff-ruler-view.h"

static FfStage *
stage_on_light (int width, int height)
{
  FfStage *stage = ff_stage_new (TRUE, width, height);

  ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, "light");
  ff_stage_settle ();
  return stage;
}

static GtkWidget *
page_of (FfStage *stage)
{
  return GTK_WIDGET (ff_window_get_page (stage->window));
}

static GtkWidget *
find (FfStage *stage, GType type)
{
  GtkWidget *found = ff_stage_find (page_of (stage), type, NULL);

  assert_non_null (found);
  return found;
}

static gboolean
says_in (GtkWidget *root, const char *part)
{
  if (!gtk_widget_get_visible (root) || !gtk_widget_get_child_visible (root))
    return FALSE;
  if (GTK_IS_LABEL (root) && strstr (gtk_label_get_text (GTK_LABEL (root)), part) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (says_in (child, part))
      return TRUE;
  return FALSE;
}

static gboolean
says (FfStage *stage, const char *part)
{
  return says_in (page_of (stage), part);
}

/* A key as the focus widget gets it. */
static void
press (FfStage *stage, guint key, GdkModifierType state)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (stage->window));
  GListModel *controllers = gtk_widget_observe_controllers (focus);
  gboolean taken = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller)
          && g_signal_has_handler_pending (
              controller, g_signal_lookup ("key-pressed", GTK_TYPE_EVENT_CONTROLLER_KEY), 0, TRUE))
        g_signal_emit_by_name (controller, "key-pressed", key, 0, state, &taken);
    }
  g_object_unref (controllers);
  assert_true (taken);
  ff_stage_settle ();
}

static const char *
spoken (FfStage *stage)
{
  return ff_ruler_view_spoken (FF_RULER_VIEW (find (stage, FF_TYPE_RULER_VIEW)));
}

/* The shot by its label, chosen as a person would. */
static void
choose_shot (FfStage *stage, const char *label)
{
  GPtrArray *shots = ff_keeper_shots (stage->keeper);

  for (guint i = 0; i < shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (shots, i);

      if (strcmp (shot->label, label) == 0)
        ff_light_source_choose_shot (FF_LIGHT_SOURCE (find (stage, FF_TYPE_LIGHT_SOURCE)),
                                     shot->id);
    }
  ff_stage_settle ();
}

static void
pick (FfStage *stage, const char *label, int value)
{
  GtkWidget *name = ff_stage_find (page_of (stage), GTK_TYPE_LABEL, label);

  assert_non_null (name);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (gtk_widget_get_next_sibling (name)), (guint) value);
  ff_stage_settle ();
}

/* What it shows */

static void
test_the_open_job_and_its_first_shot (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);

  assert_true (says (stage, "16:30 · sun 22° high, straight down · clear · A harbour from above"));
  assert_true (says (stage, "f/2.8"));
  assert_true (says (stage, "5 stops"));
  assert_true (says (stage, "ND32"));
  assert_true (says (stage, "Good until 1"));
  assert_ptr_equal (gtk_window_get_focus (GTK_WINDOW (stage->window)),
                    find (stage, FF_TYPE_RULER_VIEW));
  ff_stage_free (stage);
}

static void
test_each_filter_at_hand_has_its_hours (void **state)
{
  FfStage *stage = stage_on_light (1200, 1600);

  assert_true (says (stage, "6 stops · ND64"));
  assert_true (says (stage, "3.1 stops · ND8"));
  assert_true (says (stage, "no filter"));
  assert_true (says (stage, "Fit it "));
  ff_stage_free (stage);
}

/* By keys */

static void
test_a_third_opens_the_gap_and_another_pays (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);
  g_autofree char *before = NULL;

  choose_shot (stage, "D");
  before = g_strdup (spoken (stage));
  assert_non_null (strstr (before, "Shutter 1/60"));
  press (stage, GDK_KEY_Down, 0);
  assert_non_null (strstr (spoken (stage), "Shutter 1/50"));
  assert_true (says (stage, "too bright"));
  assert_true (says (stage, "Shutter 1/60 (150°) closes it"));
  /* Held at 1/50; then the light goes and the ISO pays. */
  press (stage, GDK_KEY_f, 0);
  assert_true (says (stage, "‖ fixed"));
  assert_non_null (strstr (spoken (stage), "fixed"));
  press (stage, GDK_KEY_Up, 0);
  assert_true (says (stage, "It is fixed."));
  for (int i = 0; i < 14 && !says (stage, "ISO pays"); i++)
    press (stage, GDK_KEY_t, 0);
  assert_true (says (stage, "ISO pays: "));
  assert_true (says (stage, "for 100"));
  assert_non_null (strstr (spoken (stage), "Shutter 1/50"));
  press (stage, GDK_KEY_f, 0);
  assert_false (says (stage, "‖ fixed"));
  ff_stage_free (stage);
}

static void
test_left_and_right_choose (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);

  press (stage, GDK_KEY_Right, 0);
  assert_non_null (strstr (spoken (stage), "ISO 100"));
  press (stage, GDK_KEY_Up, 0);
  assert_non_null (strstr (spoken (stage), "ISO 125"));
  press (stage, GDK_KEY_Right, 0);
  press (stage, GDK_KEY_Right, 0);
  assert_non_null (strstr (spoken (stage), "Filter 5 stops"));
  ff_stage_free (stage);
}

static void
test_digits_fit_filters_and_b_is_the_best (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);

  press (stage, GDK_KEY_3, 0);
  assert_non_null (strstr (spoken (stage), "Filter 3.1 stops, ND8"));
  assert_true (says (stage, "too bright"));
  press (stage, GDK_KEY_0, 0);
  assert_non_null (strstr (spoken (stage), "Filter none"));
  press (stage, GDK_KEY_9, 0);
  assert_true (says (stage, "No filter at hand"));
  press (stage, GDK_KEY_b, 0);
  press (stage, GDK_KEY_Right, 0);
  press (stage, GDK_KEY_Right, 0);
  assert_non_null (strstr (spoken (stage), "Filter 5 stops"));
  ff_stage_free (stage);
}

static void
test_time_by_five_minutes (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);

  press (stage, GDK_KEY_t, 0);
  assert_true (says (stage, "16:35 · "));
  press (stage, GDK_KEY_T, GDK_SHIFT_MASK);
  press (stage, GDK_KEY_T, GDK_SHIFT_MASK);
  assert_true (says (stage, "16:25 · "));
  gtk_widget_grab_focus (find (stage, FF_TYPE_HOURS_VIEW));
  press (stage, GDK_KEY_Page_Down, 0);
  assert_true (says (stage, "17:25 · "));
  press (stage, GDK_KEY_Left, 0);
  assert_true (says (stage, "17:20 · "));
  ff_stage_free (stage);
}

static void
test_why_opens_the_steps (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);

  assert_false (says (stage, "APEX"));
  press (stage, GDK_KEY_w, 0);
  assert_true (says (stage, "EV = log2 (N² / t × 100 / S)"));
  assert_true (says (stage, "ND32 takes 5 stops."));
  press (stage, GDK_KEY_4, 0);
  assert_true (says (stage, "ND16 takes 4 stops."));
  press (stage, GDK_KEY_w, 0);
  assert_false (says (stage, "APEX"));
  ff_stage_free (stage);
}

static gboolean
has_reading_dialog (void)
{
  g_autoptr (GListModel) windows = g_object_ref (gtk_window_get_toplevels ());

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);

      if (FF_IS_READING_DIALOG (window))
        {
          gtk_window_destroy (window);
          ff_stage_settle ();
          return TRUE;
        }
    }
  return FALSE;
}

static void
test_r_enters_a_reading (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);

  assert_true (says (stage, "not yet checked by a reading"));
  press (stage, GDK_KEY_r, 0);
  assert_true (has_reading_dialog ());
  pick (stage, "Light of", 2);
  assert_false (says (stage, "not yet checked by a reading"));
  gtk_widget_grab_focus (find (stage, FF_TYPE_RULER_VIEW));
  press (stage, GDK_KEY_r, 0);
  assert_false (has_reading_dialog ());
  ff_stage_free (stage);
}

/* Whose light */

static void
test_another_sky_stores_nothing (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);

  pick (stage, "Sky", FF_SKY_OVERCAST);
  assert_true (says (stage, "straight down · overcast"));
  assert_int_equal (ff_keeper_job (stage->keeper)->sky, FF_SKY_CLEAR);
  assert_null (ff_keeper_undo_text (stage->keeper));
  ff_stage_free (stage);
}

static void
test_a_condition_of_the_table (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);

  pick (stage, "Light of", 2);
  assert_true (says (stage, "EV 16.0") || strstr (spoken (stage), "EV 16.0") != NULL);
  assert_false (says (stage, "The need over the day"));
  assert_true (says (stage, "Good as long as the light stays."));
  ff_stage_free (stage);
}

static void
test_a_place_of_ones_own (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);

  pick (stage, "Light of", 1);
  assert_true (says (stage, "12:00 · "));
  assert_true (says (stage, "The need over the day"));
  ff_stage_free (stage);
}

static void
test_without_a_job_or_any_gear (void **state)
{
  FfStage *stage = ff_stage_new (FALSE, 1200, 800);

  ff_window_show_page (stage->window, "light");
  ff_stage_settle ();
  assert_true (says (stage, "No job is open."));
  pick (stage, "Light of", 1);
  assert_true (says (stage, "Enter a position"));
  pick (stage, "Light of", 2);
  assert_true (says (stage, "No serviceable aircraft; enter one in the gear."));
  ff_stage_free (stage);
}

/* Sizes */

static void
assert_fits (FfStage *stage, int width)
{
  int least;

  gtk_widget_measure (page_of (stage), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  assert_true (least <= width);
}

static void
test_narrow_and_large_text (void **state)
{
  FfStage *stage = stage_on_light (360, 800);
  GtkSettings *settings = gtk_settings_get_default ();
  int dpi;

  assert_fits (stage, 360);
  press (stage, GDK_KEY_w, 0);
  assert_fits (stage, 360);
  g_object_get (settings, "gtk-xft-dpi", &dpi, NULL);
  g_object_set (settings, "gtk-xft-dpi", 2 * (dpi > 0 ? dpi : 96 * 1024), NULL);
  ff_stage_settle ();
  assert_fits (stage, 400);
  g_object_set (settings, "gtk-xft-dpi", dpi, NULL);
  ff_stage_free (stage);
}

static void
test_an_edit_is_followed (void **state)
{
  FfStage *stage = stage_on_light (1200, 800);
  const FfShot *first = g_ptr_array_index (ff_keeper_shots (stage->keeper), 0);
  g_autoptr (FfShot) copy = ff_keeper_dup_shot (stage->keeper, first->id);

  ff_set_text (&copy->title, "harbour in snow");
  copy->subject_offset_stops = 1;
  assert_true (ff_keeper_save_shot (stage->keeper, copy, "Shot changed", NULL));
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  assert_true (says (stage, "A harbour in snow"));
  assert_non_null (strstr (spoken (stage), "EV 14.6"));
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_open_job_and_its_first_shot),
    cmocka_unit_test (test_each_filter_at_hand_has_its_hours),
    cmocka_unit_test (test_a_third_opens_the_gap_and_another_pays),
    cmocka_unit_test (test_left_and_right_choose),
    cmocka_unit_test (test_digits_fit_filters_and_b_is_the_best),
    cmocka_unit_test (test_time_by_five_minutes),
    cmocka_unit_test (test_why_opens_the_steps),
    cmocka_unit_test (test_r_enters_a_reading),
    cmocka_unit_test (test_another_sky_stores_nothing),
    cmocka_unit_test (test_a_condition_of_the_table),
    cmocka_unit_test (test_a_place_of_ones_own),
    cmocka_unit_test (test_without_a_job_or_any_gear),
    cmocka_unit_test (test_narrow_and_large_text),
    cmocka_unit_test (test_an_edit_is_followed),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("light", tests, NULL, NULL);
}
