/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The page of sorties on the demo day: what it says as values, the chart by keys and by ear, the
 * lines, what is tried and how it ends, days that can't be planned. */
#include "ff-stage.h"

#include <math.h>
#include <string.h>

#include "ff-accept-try.h"
#include "ff-block.h"
#include "ff-chart.h"
#include "ff-day-chart.h"
#include "ff-planner.h"
#include "ff-sortie-row.h"
#include "ff-sortie-words.h"
#include "ff-strip.h"
#include "ff-what-if.h"

static FfStage *
stage_on_sorties (int width, int height)
{
  FfStage *stage = ff_stage_new (TRUE, width, height);

  ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, "sorties");
  ff_stage_settle ();
  return stage;
}

static GtkWidget *
find (FfStage *stage, GType type, const char *text)
{
  return ff_stage_find (GTK_WIDGET (ff_window_get_page (stage->window)), type, text);
}

static FfChart *
chart_of (FfStage *stage)
{
  GtkWidget *chart = find (stage, FF_TYPE_CHART, NULL);

  assert_non_null (chart);
  return FF_CHART (chart);
}

/* A label that begins so. */
static GtkWidget *
label_with (GtkWidget *root, const char *part)
{
  GtkWidget *child;

  if (!gtk_widget_get_visible (root) || !gtk_widget_get_child_visible (root))
    return NULL;
  if (GTK_IS_LABEL (root) && strstr (gtk_label_get_text (GTK_LABEL (root)), part) != NULL)
    return root;
  for (child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = label_with (child, part);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
says (FfStage *stage, const char *part)
{
  return label_with (GTK_WIDGET (ff_window_get_page (stage->window)), part) != NULL;
}

/* A key as the focus widget gets it. */
static void
press (FfStage *stage, guint key, GdkModifierType state)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (stage->window));
  GListModel *controllers = gtk_widget_observe_controllers (focus);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (controllers, i);
      gboolean taken = FALSE;

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller)
          && g_signal_handler_find (controller, G_SIGNAL_MATCH_ID,
                                    g_signal_lookup ("key-pressed", GTK_TYPE_EVENT_CONTROLLER_KEY),
                                    0, NULL, NULL, NULL)
                 != 0)
        g_signal_emit_by_name (controller, "key-pressed", key, 0, state, &taken);
    }
  g_object_unref (controllers);
}

static FfSortieRow *
open_row (FfStage *stage)
{
  GtkWidget *list = gtk_widget_get_ancestor (find (stage, FF_TYPE_SORTIE_ROW, NULL),
                                             GTK_TYPE_LIST_BOX);
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), i)) != NULL; i++)
    if (ff_sortie_row_get_open (FF_SORTIE_ROW (row)))
      return FF_SORTIE_ROW (row);
  return NULL;
}

static gboolean
is_in_view (gpointer widget)
{
  GtkWidget *scrolled = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
  graphene_rect_t box;

  return gtk_widget_compute_bounds (widget, scrolled, &box) && box.origin.y >= 0
         && box.origin.y + box.size.height <= (float) gtk_widget_get_height (scrolled);
}

/* Words, as values */

static FfPlanLine *
line_at (const FfDayPlan *plan, guint i)
{
  return g_ptr_array_index (plan->lines, i);
}

static void
test_words_of_the_plan (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  const FfDayPlan *plan = ff_keeper_plan (stage->keeper);
  GTimeZone *zone = ff_keeper_chart (stage->keeper)->zone;
  const FfPlanCharge *charge = g_ptr_array_index (plan->charges, 0);
  g_autofree char *promise = ff_sortie_charge_words (charge, zone);
  g_autofree char *needed = ff_sortie_needed_words (charge, plan, zone);
  g_autofree char *rule = ff_sortie_land_rule (plan);
  g_autofree char *count = ff_sortie_count_words (plan);
  g_autofree char *spoken = ff_sortie_spoken (line_at (plan, 0), zone);

  assert_string_equal (promise, "on charge 17:08, ready 18:08, attended by Marit Ostrander");
  assert_string_equal (needed, "needed 19:26");
  assert_non_null (strstr (rule, "off + 18 min"));
  assert_non_null (strstr (rule, "own reading wins"));
  assert_string_equal (count, "6 sorties · 5 batteries · 3 filter changes");
  assert_string_equal (spoken, "Sortie 1: off by 16:30, land by 16:48, battery b1, 5 stops. Shot A "
                               "harbour from above, f/2.8 · 1/50 (180°) · ISO 100");
  assert_int_equal (ff_sortie_line_of_shot (plan, "C"), 2);
  assert_int_equal (ff_sortie_line_of_shot (plan, "none such"), 0);
  ff_stage_free (stage);
}

static void
test_shots_not_flown_share_a_reason (void **state)
{
  FfPlanMiss misses[] = { { (char *) "A", (char *) "mill", (char *) "no battery" },
                          { (char *) "B", (char *) "", (char *) "no light" },
                          { (char *) "C", (char *) "quay", (char *) "no battery" } };
  FfDayPlan plan = { .missed = g_ptr_array_new () };
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (misses); i++)
    g_ptr_array_add (plan.missed, &misses[i]);
  first = ff_sortie_missed_words (&plan, 0);
  second = ff_sortie_missed_words (&plan, 1);
  assert_string_equal (first, "A\302\240mill · C\302\240quay");
  assert_string_equal (second, "B");
  assert_null (ff_sortie_missed_words (&plan, 2));
  g_ptr_array_unref (plan.missed);
}

static void
test_why_not_in_words (void **state)
{
  g_autofree char *ours = ff_sortie_why_not_words ("Mill: the job has no date; enter it", "Mill");
  g_autofree char *other = ff_sortie_why_not_words ("disk full", "Mill");
  g_autofree char *nothing = ff_sortie_why_not_words ("", "");

  assert_string_equal (ours, "The job has no date; enter it.");
  assert_string_equal (other, "Disk full.");
  assert_string_equal (nothing, "");
}

static void
test_a_try_in_words (void **state)
{
  FfTry none = FF_TRY_INIT, copy = FF_TRY_INIT;
  FfTry tried = { .sky = FF_SKY_OVERCAST, .late_minutes = 10, .without = g_strdup ("b1") };
  g_autofree char *words = ff_try_words (&tried);
  g_autofree char *nothing = ff_try_words (&none);

  assert_string_equal (words, "overcast, 10 min late, without b1");
  assert_string_equal (nothing, "");
  assert_true (ff_try_is_none (&none));
  assert_false (ff_try_is_none (&tried));
  ff_try_set (&copy, &tried);
  ff_try_set (&copy, &copy);
  assert_string_equal (copy.without, "b1");
  assert_int_equal (copy.sky, FF_SKY_OVERCAST);
  ff_try_set (&copy, NULL);
  assert_true (ff_try_is_none (&copy));
  ff_try_clear (&tried);
}

static void
test_a_try_of_a_shot_in_words (void **state)
{
  FfTry later = FF_TRY_INIT, dropped = FF_TRY_INIT, only_picked = FF_TRY_INIT;
  g_autofree char *words = NULL;
  g_autofree char *other = NULL;

  later.shot = g_strdup ("D");
  later.move_minutes = 30;
  dropped.shot = g_strdup ("D");
  dropped.drop = TRUE;
  only_picked.shot = g_strdup ("D");
  words = ff_try_words (&later);
  other = ff_try_words (&dropped);
  assert_string_equal (words, "shot D 30 min later");
  assert_string_equal (other, "shot D dropped");
  assert_false (ff_try_is_none (&later));
  assert_false (ff_try_is_none (&dropped));
  assert_true (ff_try_is_none (&only_picked));
  assert_true (ff_accept_try_can (&later));
  assert_false (ff_accept_try_can (&dropped));
  assert_false (ff_accept_try_can (&only_picked));
  ff_try_clear (&later);
  ff_try_clear (&dropped);
  ff_try_clear (&only_picked);
}

/* The page */

static void
test_the_plan_is_shown (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);

  assert_int_equal (ff_stage_count (GTK_WIDGET (ff_window_get_page (stage->window)),
                                    FF_TYPE_SORTIE_ROW),
                    6);
  assert_non_null (find (stage, GTK_TYPE_LABEL, "16:48"));
  assert_non_null (find (stage, GTK_TYPE_LABEL, "ND32"));
  assert_non_null (find (stage, FF_TYPE_BLOCK, NULL));
  assert_true (says (stage, "B and C share a battery"));
  assert_true (says (stage, "attended by Marit Ostrander"));
  assert_true (says (stage, "needed 19:26"));
  assert_true (says (stage, "whichever comes first"));
  assert_true (says (stage, "proven cheapest"));
  assert_true (says (stage, "In case the day turns out otherwise"));
  assert_true (says (stage, "thin cloud: F, H"));
  ff_stage_free (stage);
}

/* The chart is the day; the strip over the other parts of a job would be the same once more. */
static void
test_the_strip_stays_away (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);

  assert_null (ff_stage_find (GTK_WIDGET (stage->window), FF_TYPE_STRIP, NULL));
  ff_stage_free (stage);
}

static void
test_the_chart_by_keys (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  FfChart *chart = chart_of (stage);

  assert_ptr_equal (gtk_window_get_focus (GTK_WINDOW (stage->window)), chart);
  assert_int_equal (ff_chart_get_line (chart), 0);
  press (stage, GDK_KEY_Right, 0);
  press (stage, GDK_KEY_Right, 0);
  assert_int_equal (ff_chart_get_line (chart), 2);
  press (stage, GDK_KEY_Left, 0);
  assert_int_equal (ff_chart_get_line (chart), 1);
  press (stage, GDK_KEY_Left, 0);
  assert_int_equal (ff_chart_get_line (chart), 1);
  press (stage, GDK_KEY_End, 0);
  press (stage, GDK_KEY_Right, 0);
  assert_int_equal (ff_chart_get_line (chart), 6);
  press (stage, GDK_KEY_Home, 0);
  press (stage, GDK_KEY_Right, 0);
  assert_null (open_row (stage));
  press (stage, GDK_KEY_Return, 0);
  ff_stage_settle ();
  assert_non_null (open_row (stage));
  assert_int_equal (gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (open_row (stage))), 1);
  assert_ptr_equal (gtk_window_get_focus (GTK_WINDOW (stage->window)), open_row (stage));
  assert_true (ff_stage_wait (is_in_view, open_row (stage)));
  assert_true (says (stage, "C needs 3.5 at 17:17"));
  assert_true (says (stage, "then raise ISO between takes"));
  ff_stage_free (stage);
}

static void
test_a_row_opens_and_closes (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  GtkWidget *first = find (stage, FF_TYPE_SORTIE_ROW, NULL);

  gtk_widget_activate (first);
  assert_ptr_equal (open_row (stage), first);
  assert_int_equal (ff_chart_get_line (chart_of (stage)), 1);
  gtk_widget_activate (first);
  assert_null (open_row (stage));
  ff_stage_free (stage);
}

static void
test_the_chart_by_ear (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  FfChart *chart = chart_of (stage);
  GPtrArray *rows = ff_chart_table (chart);

  gtk_test_accessible_assert_role (chart, GTK_ACCESSIBLE_ROLE_IMG);
  assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (chart),
                                                 GTK_ACCESSIBLE_PROPERTY_DESCRIPTION));
  assert_non_null (rows);
  assert_true (rows->len > 20);
  press (stage, GDK_KEY_Right, 0);
  gtk_test_accessible_assert_property (
      chart, GTK_ACCESSIBLE_PROPERTY_LABEL,
      "Day chart, 16:30–16:40 sortie 1: A, battery b1, 5 stops (ND32), land by 16:48");
  ff_stage_free (stage);
}

static void
test_the_chart_as_a_table (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  FfChart *chart = chart_of (stage);
  guint n = ff_chart_table (chart)->len;
  GtkWidget *page = GTK_WIDGET (ff_window_get_page (stage->window));

  gtk_widget_activate_action (page, "sorties.toggle-table", NULL);
  ff_stage_settle ();
  assert_false (gtk_widget_get_mapped (GTK_WIDGET (chart)));
  assert_non_null (find (stage, GTK_TYPE_LABEL, "sortie 2: B, C, battery b2"));
  assert_non_null (find (stage, GTK_TYPE_LABEL, "ferry passes"));
  assert_int_equal (ff_stage_count (page, GTK_TYPE_LIST_BOX_ROW), n + 6);
  gtk_widget_activate_action (page, "sorties.toggle-table", NULL);
  ff_stage_settle ();
  assert_true (gtk_widget_get_mapped (GTK_WIDGET (chart)));
  ff_stage_free (stage);
}

/* Trying */

static gboolean
is_trying (gpointer stage)
{
  return says (stage, "Nothing is stored.");
}

/* What a test waits to read. */
typedef struct {
  FfStage *stage;
  const char *part;
} Wanted;

static gboolean
is_said (gpointer data)
{
  const Wanted *wanted = data;

  return says (wanted->stage, wanted->part);
}

static void
wait_to_read (FfStage *stage, const char *part)
{
  Wanted wanted = { stage, part };

  if (!ff_stage_wait (is_said, &wanted))
    fail_msg ("never said: %s", part);
  ff_stage_settle ();
}

static void
pick (FfStage *stage, const char *label, int value)
{
  GtkWidget *name = find (stage, GTK_TYPE_LABEL, label);
  GtkWidget *choice = gtk_widget_get_next_sibling (name);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), (guint) value);
  assert_true (ff_stage_wait (is_trying, stage));
  ff_stage_settle ();
}

static void
test_another_sky_is_tried (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  GtkWidget *page = GTK_WIDGET (ff_window_get_page (stage->window));

  pick (stage, "What if the sky is", FF_SKY_OVERCAST);
  assert_true (says (stage, "Trying: overcast. Nothing is stored."));
  assert_true (says (stage, "instead of"));
  assert_non_null (find (stage, GTK_TYPE_LABEL, "ND8"));
  /* Nothing of it is stored, and the keeper's plan is as it was. */
  assert_int_equal (ff_keeper_job (stage->keeper)->sky, FF_SKY_CLEAR);
  assert_int_equal (ff_keeper_plan (stage->keeper)->sky, FF_SKY_CLEAR);
  assert_null (ff_keeper_undo_text (stage->keeper));
  gtk_widget_activate_action (page, "sorties.end-try", NULL);
  ff_stage_settle ();
  assert_false (is_trying (stage));
  assert_non_null (find (stage, GTK_TYPE_LABEL, "ND32"));
  ff_stage_free (stage);
}

static void
test_a_missing_filter_is_tried (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  GtkWidget *what_if = find (stage, FF_TYPE_WHAT_IF, NULL);
  FfTry picked = FF_TRY_INIT;
  int value = 0;

  while (picked.without == NULL || strcmp (picked.without, "ND32") != 0)
    {
      pick (stage, "without", ++value);
      ff_what_if_get (FF_WHAT_IF (what_if), &picked);
    }
  ff_try_clear (&picked);
  wait_to_read (stage, "Trying: without ND32.");
  assert_true (says (stage, "instead of behind 5 stops."));
  pick (stage, "and we are", 2);
  wait_to_read (stage, "Trying: 10 min late, without ND32.");
  ff_stage_free (stage);
}

/* One key, and the answer before anything is stored. */
static void
test_we_are_late (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  GtkWidget *page = GTK_WIDGET (ff_window_get_page (stage->window));
  int first_off = ff_keeper_job (stage->keeper)->first_off;

  gtk_widget_activate_action (page, "sorties.late", NULL);
  wait_to_read (stage, "Trying: 5 min late.");
  wait_to_read (stage, "Nothing is lost");
  gtk_widget_activate_action (page, "sorties.late", NULL);
  wait_to_read (stage, "Trying: 10 min late.");
  gtk_widget_activate_action (page, "sorties.late", NULL);
  wait_to_read (stage, "Trying: 15 min late.");
  assert_true (says (stage, "A 16:47 (was 16:32)"));
  assert_int_equal (ff_keeper_job (stage->keeper)->first_off, first_off);
  gtk_widget_activate_action (page, "sorties.late", NULL);
  ff_stage_settle ();
  assert_false (is_trying (stage));
  ff_stage_free (stage);
}

static void
test_what_is_tried_is_accepted_and_undone (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  GtkWidget *page = GTK_WIDGET (ff_window_get_page (stage->window));
  int first_off = ff_keeper_job (stage->keeper)->first_off;

  gtk_widget_activate_action (page, "sorties.late", NULL);
  wait_to_read (stage, "Trying: 5 min late.");
  gtk_widget_activate_action (page, "sorties.accept", NULL);
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  assert_false (is_trying (stage));
  assert_int_equal (ff_keeper_job (stage->keeper)->first_off, first_off + 5);
  assert_string_equal (ff_keeper_undo_text (stage->keeper), "First off 5 min later");
  assert_true (ff_keeper_undo (stage->keeper, NULL));
  assert_int_equal (ff_keeper_job (stage->keeper)->first_off, first_off);
  ff_stage_free (stage);
}

/* The choice under a label. */
static GtkDropDown *
choice_of (FfStage *stage, const char *label)
{
  return GTK_DROP_DOWN (gtk_widget_get_next_sibling (find (stage, GTK_TYPE_LABEL, label)));
}

static void
test_a_moved_shot_is_priced_first (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  GtkWidget *page = GTK_WIDGET (ff_window_get_page (stage->window));
  const FfShot *headland = g_ptr_array_index (ff_keeper_shots (stage->keeper), 3);
  int from = headland->window_from;

  assert_string_equal (headland->label, "D");
  gtk_drop_down_set_selected (choice_of (stage, "and shot"), 4);
  ff_stage_settle ();
  assert_false (is_trying (stage)); /* nothing is said of it yet */
  pick (stage, "is", 4);
  wait_to_read (stage, "Trying: shot D 30 min later.");
  assert_true (says (stage, "Nothing is lost"));
  assert_true (says (stage, "D 18:"));
  gtk_widget_activate_action (page, "sorties.accept", NULL);
  ff_stage_wait_for_plan (stage);
  headland = g_ptr_array_index (ff_keeper_shots (stage->keeper), 3);
  assert_int_equal (headland->window_from, from + 30);
  assert_string_equal (ff_keeper_undo_text (stage->keeper), "Window of shot D moved");
  ff_stage_free (stage);
}

static void
test_if_the_day_turns_out_otherwise (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);

  assert_true (says (stage, "Line 2 can be 3 min late at most: then the window of B closes."));
  assert_true (says (stage, "30 min late”, it loses A."));
  wait_to_read (stage, "Drop first: "); /* comes later, from a worker */
  assert_true (says (stage, "; G last."));
  ff_stage_free (stage);
}

static void
test_leaving_the_page_ends_the_try (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);

  pick (stage, "and we are", 4);
  ff_window_show_page (stage->window, "jobs");
  ff_stage_settle ();
  ff_window_show_page (stage->window, "sorties");
  ff_stage_settle ();
  assert_false (is_trying (stage));
  assert_non_null (find (stage, GTK_TYPE_LABEL, "16:48"));
  ff_stage_free (stage);
}

/* Edits and other jobs */

static void
lengthen (FfStage *stage, const char *label, int minutes)
{
  GPtrArray *shots = ff_keeper_shots (stage->keeper);

  for (guint i = 0; i < shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (shots, i);

      if (strcmp (shot->label, label) == 0)
        {
          g_autoptr (FfShot) copy = ff_keeper_dup_shot (stage->keeper, shot->id);
          g_autoptr (GError) error = NULL;

          copy->minutes = minutes;
          ff_keeper_save_shot (stage->keeper, copy, "Minutes changed", &error);
          assert_no_error (error);
          break;
        }
    }
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
}

static void
test_an_edit_shows_and_is_undone (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  FfChart *chart = chart_of (stage);

  press (stage, GDK_KEY_Right, 0);
  press (stage, GDK_KEY_Right, 0);
  press (stage, GDK_KEY_Right, 0);
  /* A takes 25 minutes: longer than any battery, so it is not flown and the lines move up. */
  lengthen (stage, "A", 25);
  assert_true (says (stage, "Not flown:"));
  assert_int_equal (ff_chart_get_line (chart), 2);
  assert_true (ff_keeper_undo (stage->keeper, NULL));
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  assert_false (says (stage, "Not flown:"));
  assert_int_equal (ff_chart_get_line (chart), 3);
  ff_stage_free (stage);
}

static void
test_a_day_that_cannot_be_planned (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  g_autofree char *other
      = ff_job_find (ff_keeper_store (stage->keeper), "Brackenholt, first", NULL);

  ff_window_show_page (stage->window, "jobs");
  ff_keeper_open_job (stage->keeper, other);
  ff_window_show_page (stage->window, "sorties");
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  assert_true (says (stage, "Not planned yet"));
  assert_non_null (
      find (stage, GTK_TYPE_LABEL, "The job has no place; enter where it is flown."));
  assert_false (says (stage, "whichever comes first"));
  ff_stage_free (stage);
}

/* The plan of one job never stands under the name of another, not even for a frame. */
static void
test_no_plan_of_another_job (void **state)
{
  FfStage *stage = stage_on_sorties (1200, 800);
  g_autofree char *other
      = ff_job_find (ff_keeper_store (stage->keeper), "Brackenholt, first", NULL);
  FfChart *chart = chart_of (stage);

  ff_window_show_page (stage->window, "jobs");
  ff_keeper_open_job (stage->keeper, other);
  ff_window_show_page (stage->window, "sorties");
  assert_false (gtk_widget_get_mapped (GTK_WIDGET (chart)));
  ff_stage_wait_for_plan (stage);
  ff_stage_free (stage);
}

/* Sizes */

static void
assert_fits (FfStage *stage, int width)
{
  int least;

  gtk_widget_measure (GTK_WIDGET (stage->window), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL,
                      NULL, NULL);
  if (least > width)
    fail_msg ("needs %d of %d", least, width);
}

static void
test_narrow_and_large_text (void **state)
{
  FfStage *stage = stage_on_sorties (400, 800);
  FfChart *chart = chart_of (stage);
  int before = gtk_widget_get_height (GTK_WIDGET (chart)), dpi;

  assert_fits (stage, 400);
  assert_true (gtk_widget_get_width (GTK_WIDGET (chart)) <= 400);
  g_object_get (gtk_settings_get_default (), "gtk-xft-dpi", &dpi, NULL);
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", 192 * 1024, NULL);
  for (int i = 0; i < 20 && gtk_widget_get_height (GTK_WIDGET (chart)) <= before; i++)
    ff_stage_settle ();
  assert_true (gtk_widget_get_height (GTK_WIDGET (chart)) > before);
  assert_fits (stage, 400);
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", dpi, NULL);
  ff_stage_settle ();
  ff_stage_free (stage);
}

static void
test_right_to_left (void **state)
{
  FfStage *stage;

  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  stage = stage_on_sorties (400, 800);
  assert_fits (stage, 400);
  press (stage, GDK_KEY_Right, 0);
  assert_int_equal (ff_chart_get_line (chart_of (stage)), 1);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
  ff_stage_free (stage);
}

static gboolean
is_said_to_be_on_its_way (gpointer stage)
{
  return says (stage, "being worked out anew");
}

static gboolean
is_planned (gpointer stage)
{
  return !ff_keeper_is_planning (((FfStage *) stage)->keeper);
}

/* On a quiet machine the plan can be there before the sentence that it is coming. */
static gboolean
is_planned_or_on_its_way (gpointer stage)
{
  return is_planned (stage) || is_said_to_be_on_its_way (stage);
}

static void
test_forty_shots_with_long_names (void **state)
{
  FfStage *stage = stage_on_sorties (400, 800);
  const FfJob *job = ff_keeper_job (stage->keeper);
  g_autofree char *job_id = g_strdup (job->id);

  for (int i = 0; i < 32; i++)
    {
      g_autoptr (FfShot) shot = ff_shot_new (job_id);
      g_autoptr (GError) error = NULL;
      g_autofree char *label = g_strdup_printf ("S%d", i);

      ff_set_text (&shot->label, label);
      ff_set_text (&shot->title, "Donaudampfschifffahrtsgesellschaftskapitän on the harbour wall");
      shot->minutes = 3;
      shot->window_from = 16 * 60 + 30 + 6 * i;
      shot->window_to = shot->window_from + 12;
      shot->position = 8 + i;
      ff_keeper_save_shot (stage->keeper, shot, "Shot added", &error);
      assert_no_error (error);
    }
  /* A day as crowded as this takes its time; the page says so meanwhile. */
  assert_true (ff_stage_wait (is_planned_or_on_its_way, stage));
  for (int i = 0; i < 12 && ff_keeper_is_planning (stage->keeper); i++)
    ff_stage_wait (is_planned, stage);
  assert_false (ff_keeper_is_planning (stage->keeper));
  ff_stage_settle ();
  assert_fits (stage, 400);
  assert_true (ff_stage_count (GTK_WIDGET (ff_window_get_page (stage->window)), FF_TYPE_SORTIE_ROW)
               > 4);
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_words_of_the_plan),
    cmocka_unit_test (test_shots_not_flown_share_a_reason),
    cmocka_unit_test (test_why_not_in_words),
    cmocka_unit_test (test_a_try_in_words),
    cmocka_unit_test (test_a_try_of_a_shot_in_words),
    cmocka_unit_test (test_the_plan_is_shown),
    cmocka_unit_test (test_the_strip_stays_away),
    cmocka_unit_test (test_the_chart_by_keys),
    cmocka_unit_test (test_a_row_opens_and_closes),
    cmocka_unit_test (test_the_chart_by_ear),
    cmocka_unit_test (test_the_chart_as_a_table),
    cmocka_unit_test (test_another_sky_is_tried),
    cmocka_unit_test (test_a_missing_filter_is_tried),
    cmocka_unit_test (test_we_are_late),
    cmocka_unit_test (test_what_is_tried_is_accepted_and_undone),
    cmocka_unit_test (test_a_moved_shot_is_priced_first),
    cmocka_unit_test (test_if_the_day_turns_out_otherwise),
    cmocka_unit_test (test_leaving_the_page_ends_the_try),
    cmocka_unit_test (test_an_edit_shows_and_is_undone),
    cmocka_unit_test (test_a_day_that_cannot_be_planned),
    cmocka_unit_test (test_no_plan_of_another_job),
    cmocka_unit_test (test_narrow_and_large_text),
    cmocka_unit_test (test_right_to_left),
    cmocka_unit_test (test_forty_shots_with_long_names),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("sorties", tests, NULL, NULL);
}
