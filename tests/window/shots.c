/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The page of shots: the rules of its form and list as pure functions; what is typed is stored and
 * said beside the field when it is wrong; keys, undo, the narrow window, forty shots. */
#include "ff-stage.h"

#include <math.h>
#include <string.h>

#include "ff-block.h"
#include "ff-civil.h"
#include "ff-note.h"
#include "ff-pick.h"
#include "ff-shot-beside.h"
#include "ff-shot-form.h"
#include "ff-shot-needs.h"
#include "ff-shot-row.h"
#include "ff-shots-list.h"
#include "ff-split.h"

/* ---- The rules of the form ---- */

static FfShot *
shot_of (const char *label, const char *from, const char *to, int minutes)
{
  FfShot *shot = ff_shot_new ("7d0d3f7e-4a3c-4a7e-9a53-000000000001");

  ff_set_text (&shot->label, label);
  assert_true (ff_clock_parse (from, &shot->window_from, NULL));
  assert_true (ff_clock_parse (to, &shot->window_to, NULL));
  shot->minutes = minutes;
  return shot;
}

static GPtrArray *
no_shots (void)
{
  return g_ptr_array_new ();
}

static void
test_what_is_typed_is_read (void **state)
{
  static const struct {
    FfShotText which;
    const char *typed, *stored; /* NULL: it is refused */
  } cases[] = {
    { FF_SHOT_FROM, "1640", "16:40" },   { FF_SHOT_FROM, "16.40", "16:40" },
    { FF_SHOT_FROM, " 16:40 ", "16:40" }, { FF_SHOT_FROM, "905", "09:05" },
    { FF_SHOT_FROM, "24:20", "24:20" },  { FF_SHOT_FROM, "16:60", NULL },
    { FF_SHOT_FROM, "16", NULL },        { FF_SHOT_FROM, "half four", NULL },
    { FF_SHOT_FROM, "", NULL },          { FF_SHOT_MINUTES, "7", "7" },
    { FF_SHOT_MINUTES, "7 min", "7" },   { FF_SHOT_MINUTES, "7.5", NULL },
    { FF_SHOT_MINUTES, "0", NULL },      { FF_SHOT_MINUTES, "121", NULL },
    { FF_SHOT_BEARING, "60°", "60" },    { FF_SHOT_BEARING, "", "" },
    { FF_SHOT_BEARING, "361", NULL },    { FF_SHOT_SPEED, "0,5", "0.5" },
    { FF_SHOT_APERTURE, "f/2.8", "2.8" }, { FF_SHOT_APERTURE, "", "" },
    { FF_SHOT_OFFSET, "-1", "−1" },      { FF_SHOT_OFFSET, "−1", "−1" },
    { FF_SHOT_OFFSET, "+1", "1" },       { FF_SHOT_OFFSET, "7", NULL },
    { FF_SHOT_MAX_ISO, "400", "400" },   { FF_SHOT_WEIGHT, "0", "" },
    { FF_SHOT_LABEL, "", NULL },         { FF_SHOT_LABEL, " D2 ", "D2" },
    { FF_SHOT_LABEL, "a label that is far too long", NULL },
  };
  g_autoptr (GPtrArray) shots = no_shots ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FfShot) shot = shot_of ("D", "16:30", "17:00", 6);
      g_autofree char *why = NULL;
      g_autofree char *stored = NULL;
      gboolean good = ff_shot_text_put (shot, cases[i].which, cases[i].typed, shots, &why);

      if (good != (cases[i].stored != NULL) || good != (why == NULL))
        fail_msg ("“%s”: %s", cases[i].typed, why != NULL ? why : "taken");
      stored = ff_shot_text_get (shot, cases[i].which);
      if (good && strcmp (stored, cases[i].stored) != 0)
        fail_msg ("“%s” became “%s”", cases[i].typed, stored);
    }
}

static void
test_every_field_says_itself_back (void **state)
{
  g_autoptr (FfShot) shot = shot_of ("D", "17:40", "17:55", 6);
  g_autoptr (GPtrArray) shots = no_shots ();

  ff_shot_form_set_intent (shot, FF_INTENT_BRACKET, 25);
  ff_shot_form_set_intent (shot, FF_INTENT_TIMELAPSE, 25);
  ff_shot_form_set_intent (shot, FF_INTENT_VIDEO, 25);
  shot->bearing_deg = 70.5;
  shot->height_to_m = 45;
  for (int i = 0; i < FF_N_SHOT_TEXTS; i++)
    {
      g_autofree char *text = ff_shot_text_get (shot, (FfShotText) i);
      g_autofree char *again = NULL;
      g_autofree char *why = NULL;

      if (!ff_shot_text_put (shot, (FfShotText) i, text, shots, &why))
        fail_msg ("field %d, “%s”: %s", i, text, why);
      again = ff_shot_text_get (shot, (FfShotText) i);
      assert_string_equal (again, text);
    }
}

/* The texts of a form on which nothing but what is named is typed. */
static void
fill_texts (const FfShot *shot, char *texts[FF_N_SHOT_TEXTS])
{
  for (int i = 0; i < FF_N_SHOT_TEXTS; i++)
    texts[i] = ff_shot_text_get (shot, (FfShotText) i);
}

static void
retype (char *texts[FF_N_SHOT_TEXTS], FfShotText which, const char *text)
{
  g_free (texts[which]);
  texts[which] = g_strdup (text);
}

static void
free_texts (char *texts[FF_N_SHOT_TEXTS])
{
  for (int i = 0; i < FF_N_SHOT_TEXTS; i++)
    g_free (texts[i]);
}

/* A window is moved in two fields: the first alone can't be stored, both together can. */
static void
test_a_window_moves_in_two_fields (void **state)
{
  g_autoptr (FfShot) first = shot_of ("D", "16:30", "17:00", 6);
  g_autoptr (FfShot) second = shot_of ("D", "16:30", "17:00", 6);
  g_autoptr (GPtrArray) shots = no_shots ();
  char *texts[FF_N_SHOT_TEXTS];
  g_autofree char *why = NULL;
  g_autofree char *no_why = NULL;

  fill_texts (first, texts);
  retype (texts, FF_SHOT_FROM, "18:20");
  assert_false (ff_shot_form_take (first, (const char *const *) texts, FF_SHOT_FROM, shots, &why));
  assert_non_null (strstr (why, "before it starts"));
  retype (texts, FF_SHOT_TO, "18:50");
  assert_true (ff_shot_form_take (second, (const char *const *) texts, FF_SHOT_TO, shots, &no_why));
  assert_int_equal (second->window_from, 18 * 60 + 20);
  assert_int_equal (second->window_to, 18 * 60 + 50);
  free_texts (texts);
}

/* What is wrong in one field does not keep another from being stored. */
static void
test_a_wrong_field_stands_alone (void **state)
{
  g_autoptr (FfShot) shot = shot_of ("D", "16:30", "17:00", 6);
  g_autoptr (GPtrArray) shots = no_shots ();
  char *texts[FF_N_SHOT_TEXTS];
  g_autofree char *why = NULL;

  fill_texts (shot, texts);
  retype (texts, FF_SHOT_MINUTES, "45");
  retype (texts, FF_SHOT_SPEED, "5");
  assert_true (ff_shot_form_take (shot, (const char *const *) texts, FF_SHOT_SPEED, shots, &why));
  assert_close (shot->speed_ms, 5, 1e-9);
  assert_int_equal (shot->minutes, 6);
  free_texts (texts);
}

static void
test_minutes_that_do_not_fit_say_so (void **state)
{
  g_autoptr (FfShot) shot = shot_of ("D", "17:40", "17:55", 6);
  g_autoptr (GPtrArray) shots = no_shots ();
  char *texts[FF_N_SHOT_TEXTS];
  g_autofree char *why = NULL;

  fill_texts (shot, texts);
  retype (texts, FF_SHOT_MINUTES, "16");
  assert_false (
      ff_shot_form_take (shot, (const char *const *) texts, FF_SHOT_MINUTES, shots, &why));
  assert_string_equal (why, "the window 17:40 to 17:55 is shorter than the 16 minutes of the shot");
  free_texts (texts);
}

static void
test_a_label_is_taken_once (void **state)
{
  g_autoptr (FfShot) shot = shot_of ("D", "17:40", "17:55", 6);
  g_autoptr (FfShot) other = shot_of ("E", "17:40", "17:55", 6);
  g_autoptr (GPtrArray) shots = no_shots ();
  g_autofree char *why = NULL;
  g_autofree char *no_why = NULL;

  g_ptr_array_add (shots, shot);
  g_ptr_array_add (shots, other);
  assert_false (ff_shot_text_put (shot, FF_SHOT_LABEL, "e", shots, &why));
  assert_string_equal (why, "another shot is called e");
  assert_true (ff_shot_text_put (shot, FF_SHOT_LABEL, "D", shots, &no_why));
}

static void
test_every_intent_can_be_stored_at_once (void **state)
{
  for (int from = 0; from < (int) ff_names_intent.n_names; from++)
    for (int to = 0; to < (int) ff_names_intent.n_names; to++)
      {
        g_autoptr (FfShot) shot = shot_of ("D", "17:40", "17:55", 6);
        g_autofree char *why = NULL;

        ff_shot_form_set_intent (shot, (FfIntent) from, 25);
        ff_shot_form_set_intent (shot, (FfIntent) to, 25);
        why = ff_shot_form_why (shot);
        if (why != NULL)
          fail_msg ("from %d to %d: %s", from, to, why);
      }
}

static void
test_fields_follow_the_intent (void **state)
{
  g_autoptr (FfShot) shot = shot_of ("D", "17:40", "17:55", 6);

  assert_true (ff_shot_text_is_asked (shot, FF_SHOT_FPS));
  assert_false (ff_shot_text_is_asked (shot, FF_SHOT_INTERVAL));
  ff_shot_form_set_intent (shot, FF_INTENT_TIMELAPSE, 25);
  assert_false (ff_shot_text_is_asked (shot, FF_SHOT_FPS));
  assert_true (ff_shot_text_is_asked (shot, FF_SHOT_INTERVAL));
  shot->view = FF_VIEW_DOWN;
  assert_false (ff_shot_text_is_asked (shot, FF_SHOT_BEARING));
}

static void
test_hours_of_the_day_are_remarked (void **state)
{
  g_autoptr (FfJob) job = ff_job_new ();
  g_autoptr (FfShot) shot = shot_of ("D", "16:00", "20:00", 6);
  g_autofree char *early = NULL;
  g_autofree char *late = NULL;
  g_autofree char *sunset = NULL;

  job->first_off = 16 * 60 + 30;
  job->all_down = 19 * 60 + 50;
  early = ff_shot_hours_remark (shot, job, 19 * 60 + 27);
  assert_string_equal (early, "opens before first off, 16:30");
  shot->window_from = 17 * 60;
  late = ff_shot_hours_remark (shot, job, 19 * 60 + 27);
  assert_string_equal (late, "closes after all down, 19:50");
  shot->window_to = 19 * 60;
  sunset = ff_shot_hours_remark (shot, job, 19 * 60 + 27);
  assert_string_equal (sunset, "sunset 19:27");
}

/* ---- The rules of the list ---- */

static void
test_new_shots_can_be_stored (void **state)
{
  g_autoptr (FfJob) job = ff_job_new ();
  g_autoptr (GPtrArray) shots = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_shot_free);
  const FfShot *after = NULL;

  for (int i = 0; i < 60; i++)
    {
      FfShot *shot = ff_shots_new (job, shots, after);
      g_autofree char *why = ff_shot_form_why (shot);

      if (why != NULL)
        fail_msg ("shot %d: %s", i, why);
      g_ptr_array_add (shots, shot);
      after = shot;
      job->first_off = i == 20 ? 16 * 60 : job->first_off;
      job->all_down = i == 20 ? 19 * 60 + 50 : job->all_down;
    }
  assert_string_equal (((FfShot *) g_ptr_array_index (shots, 0))->label, "A");
  assert_string_equal (((FfShot *) g_ptr_array_index (shots, 25))->label, "Z");
  assert_string_equal (((FfShot *) g_ptr_array_index (shots, 26))->label, "A2");
}

static void
test_a_copy_has_a_number (void **state)
{
  g_autoptr (GPtrArray) shots = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_shot_free);
  g_autofree char *second = NULL;
  g_autofree char *third = NULL;

  g_ptr_array_add (shots, shot_of ("D", "17:40", "17:55", 6));
  second = ff_shots_free_label (shots, "D");
  assert_string_equal (second, "D2");
  g_ptr_array_add (shots, shot_of ("D2", "17:40", "17:55", 6));
  third = ff_shots_free_label (shots, "D2");
  assert_string_equal (third, "D3");
}

/* ---- The page ---- */

static FfStage *
open_page (int width, int height)
{
  FfStage *stage = ff_stage_new (TRUE, width, height);

  ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, "shots");
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

static void
choose (FfStage *stage, int index)
{
  GtkListBox *list = GTK_LIST_BOX (find (stage, GTK_TYPE_LIST_BOX));

  gtk_list_box_select_row (list, gtk_list_box_get_row_at_index (list, index));
  ff_stage_settle ();
}

static GtkWidget *
entry_below (GtkWidget *root, const char *label)
{
  if (FF_IS_ENTRY (root))
    {
      g_autofree char *own = NULL;

      g_object_get (root, "label", &own, NULL);
      if (strcmp (own, label) == 0)
        return root;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = entry_below (child, label);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static FfEntry *
entry_of (FfStage *stage, FfShotText which)
{
  GtkWidget *entry = entry_below (page_of (stage), ff_shot_text_info (which)->label);

  assert_non_null (entry);
  return FF_ENTRY (entry);
}

static void
type (FfStage *stage, FfShotText which, const char *text)
{
  GtkWidget *entry = ff_stage_find (GTK_WIDGET (entry_of (stage, which)), GTK_TYPE_ENTRY, NULL);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static const FfShot *
shot_at (FfStage *stage, guint index)
{
  return g_ptr_array_index (ff_keeper_shots (stage->keeper), index);
}

static gboolean
is_complaining (gpointer entry)
{
  return ff_entry_get_complaint (entry) != NULL;
}

static void
test_all_shots_are_listed (void **state)
{
  FfStage *stage = open_page (1200, 800);

  assert_int_equal (ff_stage_count (page_of (stage), FF_TYPE_SHOT_ROW), 8);
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "Sortie 1 at 16:32 · 5 stops"));
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "16:30–17:00 · 6 min · video"));
  ff_stage_free (stage);
}

static void
test_what_is_typed_is_stored_and_planned (void **state)
{
  FfStage *stage = open_page (1200, 800);

  choose (stage, 3);
  type (stage, FF_SHOT_MINUTES, "8");
  assert_int_equal (shot_at (stage, 3)->minutes, 8);
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "17:40–17:55 · 8 min · video"));
  assert_string_equal (ff_keeper_undo_text (stage->keeper), "Shot D: minutes changed");
  ff_stage_wait_for_plan (stage);
  assert_true (ff_keeper_undo (stage->keeper, NULL));
  assert_int_equal (shot_at (stage, 3)->minutes, 6);
  assert_string_equal (ff_entry_get_text (entry_of (stage, FF_SHOT_MINUTES)), "6");
  ff_stage_free (stage);
}

/* The advice follows the keystroke itself, not the plan that comes after it. */
static void
test_the_need_follows_the_keystroke (void **state)
{
  FfStage *stage = open_page (1200, 800);
  GtkWidget *block;
  double before;

  choose (stage, 3);
  block = ff_stage_find (find (stage, FF_TYPE_SHOT_NEEDS), FF_TYPE_BLOCK, NULL);
  before = ff_block_get_stops (FF_BLOCK (block));
  assert_close (before, 5.3, 0.5);
  type (stage, FF_SHOT_OFFSET, "1");
  assert_close (ff_block_get_stops (FF_BLOCK (block)), before + 1, 1e-6);
  ff_stage_wait_for_plan (stage);
  ff_stage_free (stage);
}

static void
test_a_wrong_value_is_said_beside_its_field (void **state)
{
  FfStage *stage = open_page (1200, 800);
  FfEntry *minutes;

  choose (stage, 3);
  minutes = entry_of (stage, FF_SHOT_MINUTES);
  type (stage, FF_SHOT_MINUTES, "500");
  assert_true (ff_stage_wait (is_complaining, minutes));
  assert_non_null (ff_stage_find (GTK_WIDGET (minutes), GTK_TYPE_LABEL,
                                  "✕ 500 is out of range; accepted: 1 to 120. Kept: 6"));
  assert_int_equal (shot_at (stage, 3)->minutes, 6);
  type (stage, FF_SHOT_MINUTES, "16");
  assert_true (ff_stage_wait (is_complaining, minutes));
  assert_non_null (strstr (ff_entry_get_complaint (minutes), "is shorter than the 16 minutes"));
  /* The window grows, and the minutes that waited for it are stored with it. */
  type (stage, FF_SHOT_TO, "18:00");
  assert_int_equal (shot_at (stage, 3)->minutes, 16);
  assert_null (ff_entry_get_complaint (minutes));
  ff_stage_wait_for_plan (stage);
  ff_stage_free (stage);
}

/* What is half typed in one shot must not be left in the next, even where both hold the same. */
static void
test_another_shot_is_shown_clean (void **state)
{
  FfStage *stage = open_page (1200, 800);
  FfEntry *minutes;

  choose (stage, 0);
  minutes = entry_of (stage, FF_SHOT_MINUTES);
  type (stage, FF_SHOT_MINUTES, "500");
  choose (stage, 3);
  assert_string_equal (ff_entry_get_text (minutes), "6");
  assert_null (ff_entry_get_complaint (minutes));
  ff_stage_free (stage);
}

static void
test_shots_move_by_action (void **state)
{
  FfStage *stage = open_page (1200, 800);
  GtkListBox *list = GTK_LIST_BOX (find (stage, GTK_TYPE_LIST_BOX));

  choose (stage, 0);
  gtk_widget_grab_focus (GTK_WIDGET (gtk_list_box_get_selected_row (list)));
  assert_true (gtk_widget_activate_action (page_of (stage), "shot.move", "i", 1));
  assert_string_equal (shot_at (stage, 1)->label, "A");
  assert_int_equal (gtk_list_box_row_get_index (gtk_list_box_get_selected_row (list)), 1);
  /* The focus goes with it, so that the key can be pressed again. */
  assert_ptr_equal (gtk_widget_get_focus_child (GTK_WIDGET (list)),
                    gtk_list_box_get_selected_row (list));
  assert_true (gtk_widget_activate_action (page_of (stage), "shot.move", "i", -1));
  assert_string_equal (shot_at (stage, 0)->label, "A");
  ff_stage_settle ();
  ff_stage_wait_for_plan (stage);
  ff_stage_free (stage);
}

static void
test_add_duplicate_delete_and_undo (void **state)
{
  FfStage *stage = open_page (1200, 800);

  choose (stage, 3);
  gtk_widget_activate_action (page_of (stage), "win.add", NULL);
  assert_int_equal (ff_keeper_shots (stage->keeper)->len, 9);
  assert_string_equal (shot_at (stage, 4)->label, "I");
  assert_string_equal (ff_entry_get_text (entry_of (stage, FF_SHOT_LABEL)), "I");
  choose (stage, 3);
  gtk_widget_activate_action (page_of (stage), "shot.duplicate", NULL);
  assert_string_equal (shot_at (stage, 4)->label, "D2");
  assert_string_equal (shot_at (stage, 4)->title, "headland push-in");
  gtk_widget_activate_action (page_of (stage), "shot.delete", NULL);
  assert_int_equal (ff_keeper_shots (stage->keeper)->len, 9);
  assert_true (ff_keeper_undo (stage->keeper, NULL));
  assert_string_equal (shot_at (stage, 4)->label, "D2");
  ff_stage_wait_for_plan (stage);
  ff_stage_free (stage);
}

static void
test_intent_and_ticks_are_stored (void **state)
{
  FfStage *stage = open_page (1200, 800);
  GtkWidget *pick, *tick, *choice;

  choose (stage, 3);
  pick = find (stage, FF_TYPE_PICK);
  choice = ff_stage_find (pick, GTK_TYPE_DROP_DOWN, NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), FF_INTENT_BRACKET);
  assert_int_equal (shot_at (stage, 3)->intent, FF_INTENT_BRACKET);
  assert_true (gtk_widget_get_visible (GTK_WIDGET (entry_of (stage, FF_SHOT_FRAMES))));
  assert_false (gtk_widget_get_visible (GTK_WIDGET (entry_of (stage, FF_SHOT_FPS))));
  tick = find (stage, GTK_TYPE_CHECK_BUTTON);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (tick), TRUE);
  assert_true (shot_at (stage, 3)->fixed_time);
  ff_stage_wait_for_plan (stage);
  ff_stage_free (stage);
}

static void
test_the_note_is_stored (void **state)
{
  FfStage *stage = open_page (1200, 800);
  GtkWidget *view;

  choose (stage, 1);
  view = ff_stage_find (find (stage, FF_TYPE_NOTE), GTK_TYPE_TEXT_VIEW, NULL);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (view)), "abeam only", -1);
  assert_string_equal (shot_at (stage, 1)->note, "abeam only");
  assert_true (ff_keeper_undo (stage->keeper, NULL));
  assert_true (g_str_has_prefix (ff_note_get_text (FF_NOTE (find (stage, FF_TYPE_NOTE))),
                                 "skipper agreed"));
  ff_stage_wait_for_plan (stage);
  ff_stage_free (stage);
}

static void
test_not_flown_is_said_with_its_reason (void **state)
{
  FfStage *stage = open_page (1200, 800);
  GtkWidget *row;

  choose (stage, 0);
  type (stage, FF_SHOT_FROM, "14:00");
  type (stage, FF_SHOT_TO, "14:30");
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  row = GTK_WIDGET (gtk_list_box_get_row_at_index (
      GTK_LIST_BOX (find (stage, GTK_TYPE_LIST_BOX)), 0));
  assert_true (gtk_widget_has_css_class (row, "missed"));
  ff_stage_free (stage);
}

/* A label on the screen that holds this. */
static GtkWidget *
label_with (GtkWidget *root, const char *part)
{
  if (!gtk_widget_get_visible (root))
    return NULL;
  if (GTK_IS_LABEL (root) && strstr (gtk_label_get_text (GTK_LABEL (root)), part) != NULL)
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = label_with (child, part);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static const char *
edit_said (FfStage *stage)
{
  const FfChangePrice *price = ff_keeper_edit (stage->keeper);

  return price != NULL && ff_change_price_tells (price) ? price->sentence : NULL;
}

static gboolean
is_priced (gpointer stage)
{
  return edit_said (stage) != NULL;
}

/* What an edit costs stands beside the shot as soon as it is planned, and counts from the moment the
 * shot was opened. */
static void
test_an_edit_is_priced (void **state)
{
  FfStage *stage = open_page (1200, 800);

  choose (stage, 0);
  assert_null (edit_said (stage));
  type (stage, FF_SHOT_MINUTES, "25");
  assert_true (ff_stage_wait (is_priced, stage));
  ff_stage_settle ();
  assert_non_null (strstr (edit_said (stage), "A (harbour from above) is lost: "));
  assert_non_null (label_with (page_of (stage), "Since you opened it: A"));
  choose (stage, 3);
  assert_null (edit_said (stage));
  assert_null (label_with (page_of (stage), "Since you opened it"));
  ff_stage_free (stage);
}

static gboolean
is_side_by_side (gpointer beside)
{
  return ff_shot_beside_is_wide (beside);
}

static void
test_wide_has_the_need_beside_the_fields (void **state)
{
  FfStage *stage = open_page (1200, 800);

  assert_true (ff_stage_wait (is_side_by_side, find (stage, FF_TYPE_SHOT_BESIDE)));
  ff_stage_free (stage);
}

static void
test_narrow_shows_list_then_shot (void **state)
{
  FfStage *stage = open_page (400, 800);
  FfSplit *split = FF_SPLIT (find (stage, FF_TYPE_SPLIT));
  GtkListBox *list = GTK_LIST_BOX (find (stage, GTK_TYPE_LIST_BOX));

  assert_true (ff_split_get_collapsed (split));
  assert_false (ff_split_get_show_content (split));
  g_signal_emit_by_name (list, "row-activated", gtk_list_box_get_row_at_index (list, 6));
  ff_stage_settle ();
  assert_true (ff_split_get_show_content (split));
  assert_string_equal (ff_entry_get_text (entry_of (stage, FF_SHOT_LABEL)), "G");
  assert_false (ff_shot_beside_is_wide (FF_SHOT_BESIDE (find (stage, FF_TYPE_SHOT_BESIDE))));
  gtk_widget_activate_action (page_of (stage), "shot.leave", NULL);
  assert_false (ff_split_get_show_content (split));
  ff_stage_free (stage);
}

static void
delete_all (FfStage *stage)
{
  while (ff_keeper_shots (stage->keeper)->len > 0)
    assert_true (ff_keeper_delete_shot (stage->keeper, shot_at (stage, 0)->id, NULL));
}

static void
test_an_empty_list_says_what_to_do (void **state)
{
  FfStage *stage = open_page (400, 800);

  delete_all (stage);
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "No shot yet"));
  gtk_widget_activate_action (page_of (stage), "win.add", NULL);
  assert_int_equal (ff_keeper_shots (stage->keeper)->len, 1);
  assert_true (ff_split_get_show_content (FF_SPLIT (find (stage, FF_TYPE_SPLIT))));
  ff_stage_wait_for_plan (stage);
  ff_stage_free (stage);
}

/* Forty shots with long names: nothing asks for more width, and a keystroke holds the main loop
 * for less than 50 ms (four times that here: tests share the machine). */
static void
test_forty_shots_with_long_names (void **state)
{
  FfStage *stage = open_page (400, 800);
  gint64 before;
  int least;

  for (int i = 0; i < 32; i++)
    gtk_widget_activate_action (page_of (stage), "win.add", NULL);
  assert_int_equal (ff_keeper_shots (stage->keeper)->len, 40);
  type (stage, FF_SHOT_TITLE,
        "the very long approach over Skarrowickheadlandharbourwallandtidalmill at last light");
  ff_stage_settle ();
  gtk_widget_measure (GTK_WIDGET (stage->window), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL,
                      NULL, NULL);
  assert_true (least <= 400);
  before = g_get_monotonic_time ();
  type (stage, FF_SHOT_SPEED, "3");
  print_message ("# a keystroke among 40 shots: %.1f ms\n",
                 (double) (g_get_monotonic_time () - before) / 1000);
  assert_true (g_get_monotonic_time () - before < 4 * 50 * 1000);
  ff_stage_wait_for_plan (stage);
  ff_stage_free (stage);
}

static void
test_right_to_left_and_large_text (void **state)
{
  GtkSettings *settings = gtk_settings_get_default ();
  FfStage *stage;
  int least, dpi;

  g_object_get (settings, "gtk-xft-dpi", &dpi, NULL);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  stage = open_page (1200, 800);
  g_object_set (settings, "gtk-xft-dpi", 2 * 96 * 1024, NULL);
  ff_stage_settle ();
  gtk_widget_measure (page_of (stage), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  assert_true (least <= 400);
  g_object_set (settings, "gtk-xft-dpi", dpi, NULL);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
  ff_stage_free (stage);
}

static void
test_rows_speak_for_themselves (void **state)
{
  FfStage *stage = open_page (1200, 800);
  GtkWidget *row = find (stage, FF_TYPE_SHOT_ROW);
  g_autofree char *spoken = gtk_test_accessible_check_property (
      GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
      "A harbour from above. 16:30–17:00 · 6 min · video. Needs 4.9 stops. "
      "Sortie 1 at 16:32 · 5 stops.");

  if (spoken != NULL)
    fail_msg ("it says %s", spoken);
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_what_is_typed_is_read),
    cmocka_unit_test (test_every_field_says_itself_back),
    cmocka_unit_test (test_a_window_moves_in_two_fields),
    cmocka_unit_test (test_a_wrong_field_stands_alone),
    cmocka_unit_test (test_minutes_that_do_not_fit_say_so),
    cmocka_unit_test (test_a_label_is_taken_once),
    cmocka_unit_test (test_every_intent_can_be_stored_at_once),
    cmocka_unit_test (test_fields_follow_the_intent),
    cmocka_unit_test (test_hours_of_the_day_are_remarked),
    cmocka_unit_test (test_new_shots_can_be_stored),
    cmocka_unit_test (test_a_copy_has_a_number),
    cmocka_unit_test (test_all_shots_are_listed),
    cmocka_unit_test (test_what_is_typed_is_stored_and_planned),
    cmocka_unit_test (test_the_need_follows_the_keystroke),
    cmocka_unit_test (test_a_wrong_value_is_said_beside_its_field),
    cmocka_unit_test (test_another_shot_is_shown_clean),
    cmocka_unit_test (test_shots_move_by_action),
    cmocka_unit_test (test_add_duplicate_delete_and_undo),
    cmocka_unit_test (test_intent_and_ticks_are_stored),
    cmocka_unit_test (test_the_note_is_stored),
    cmocka_unit_test (test_not_flown_is_said_with_its_reason),
    cmocka_unit_test (test_an_edit_is_priced),
    cmocka_unit_test (test_wide_has_the_need_beside_the_fields),
    cmocka_unit_test (test_narrow_shows_list_then_shot),
    cmocka_unit_test (test_an_empty_list_says_what_to_do),
    cmocka_unit_test (test_forty_shots_with_long_names),
    cmocka_unit_test (test_right_to_left_and_large_text),
    cmocka_unit_test (test_rows_speak_for_themselves),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("shots", tests, NULL, NULL);
}
