/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The small widgets that pages are made of: what is typed, picked and drawn. */
#include "ff-stage.h"

#include <math.h>
#include <string.h>

#include "ff-block.h"
#include "ff-pick.h"
#include "ff-split.h"

/* A window with one entry in it, and a rule: only digits are stored. */

typedef struct {
  GtkWindow *window;
  FfEntry *entry;
  GtkEditable *text;
  char *stored;
  guint n_typed;
} Typing;

static void
on_typed (FfEntry *entry, const char *text, Typing *typing)
{
  gboolean good = text[0] != '\0' && strspn (text, "0123456789.") == strlen (text);

  typing->n_typed++;
  if (good)
    {
      g_free (typing->stored);
      /* Stored as a number: "6." is 6. */
      typing->stored = g_strdup_printf ("%g", g_ascii_strtod (text, NULL));
      ff_entry_set_text (entry, typing->stored);
    }
  ff_entry_complain (entry, good ? NULL : "only digits");
}

static Typing *
typing_new (void)
{
  Typing *typing = g_new0 (Typing, 1);

  typing->window = GTK_WINDOW (gtk_window_new ());
  typing->entry = FF_ENTRY (ff_entry_new ("_Height", "m"));
  typing->stored = g_strdup ("60");
  ff_entry_set_text (typing->entry, "60");
  g_signal_connect (typing->entry, "typed", G_CALLBACK (on_typed), typing);
  gtk_window_set_child (typing->window, GTK_WIDGET (typing->entry));
  gtk_window_present (typing->window);
  ff_stage_settle ();
  typing->text = GTK_EDITABLE (
      ff_stage_find (GTK_WIDGET (typing->entry), GTK_TYPE_ENTRY, NULL));
  return typing;
}

static void
typing_free (Typing *typing)
{
  gtk_window_destroy (typing->window);
  ff_stage_settle ();
  g_free (typing->stored);
  g_free (typing);
}

static void
test_what_is_told_is_no_typing (void **state)
{
  Typing *typing = typing_new ();

  assert_string_equal (ff_entry_get_text (typing->entry), "60");
  ff_entry_set_text (typing->entry, "45");
  assert_string_equal (ff_entry_get_text (typing->entry), "45");
  assert_int_equal (typing->n_typed, 0);
  typing_free (typing);
}

static void
test_typing_is_not_rewritten_under_the_fingers (void **state)
{
  Typing *typing = typing_new ();

  gtk_editable_set_text (typing->text, "6.");
  assert_string_equal (typing->stored, "6");
  assert_string_equal (ff_entry_get_text (typing->entry), "6.");
  /* The plan comes a moment later and the page is shown anew: still not. */
  ff_entry_set_text (typing->entry, "6");
  assert_string_equal (ff_entry_get_text (typing->entry), "6.");
  /* Enter: now it is written as it is stored. */
  g_signal_emit_by_name (typing->text, "activate");
  assert_string_equal (ff_entry_get_text (typing->entry), "6");
  typing_free (typing);
}

static void
test_a_wrong_value_is_named_and_the_old_one_kept (void **state)
{
  Typing *typing = typing_new ();

  gtk_editable_set_text (typing->text, "6x");
  assert_string_equal (typing->stored, "60");
  /* Half typed is not scolded. */
  assert_null (ff_entry_get_complaint (typing->entry));
  g_signal_emit_by_name (typing->text, "activate");
  assert_string_equal (ff_entry_get_complaint (typing->entry), "only digits");
  assert_non_null (ff_stage_find (GTK_WIDGET (typing->entry), GTK_TYPE_LABEL,
                                  "✕ only digits. Kept: 60"));
  assert_string_equal (ff_entry_get_text (typing->entry), "6x");
  gtk_editable_set_text (typing->text, "65");
  assert_null (ff_entry_get_complaint (typing->entry));
  assert_string_equal (typing->stored, "65");
  typing_free (typing);
}

static gboolean
has_complained (gpointer entry)
{
  return ff_entry_get_complaint (entry) != NULL;
}

static void
test_a_wrong_value_is_named_after_a_moment (void **state)
{
  Typing *typing = typing_new ();

  gtk_editable_set_text (typing->text, "");
  assert_null (ff_entry_get_complaint (typing->entry));
  assert_true (ff_stage_wait (has_complained, typing->entry));
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (typing->text), GTK_ACCESSIBLE_STATE_INVALID,
                                    GTK_ACCESSIBLE_INVALID_TRUE);
  typing_free (typing);
}

static void
test_undo_reaches_a_field_that_was_typed_in (void **state)
{
  Typing *typing = typing_new ();
  guint n_typed;

  gtk_editable_set_text (typing->text, "61");
  n_typed = typing->n_typed;
  ff_entry_set_text (typing->entry, "60");
  assert_string_equal (ff_entry_get_text (typing->entry), "60");
  assert_int_equal (typing->n_typed, n_typed);
  typing_free (typing);
}

static void
on_picked (FfPick *pick, int value, int *picked)
{
  *picked = value;
}

static void
test_only_people_pick (void **state)
{
  FfPick *pick = FF_PICK (g_object_ref_sink (ff_pick_new ("_Sky", &ff_names_sky)));
  GtkDropDown *choice
      = GTK_DROP_DOWN (ff_stage_find (GTK_WIDGET (pick), GTK_TYPE_DROP_DOWN, NULL));
  int picked = -2;

  g_signal_connect (pick, "picked", G_CALLBACK (on_picked), &picked);
  assert_int_equal (ff_pick_get_value (pick), -1);
  ff_pick_set_value (pick, FF_SKY_OVERCAST);
  assert_int_equal (ff_pick_get_value (pick), FF_SKY_OVERCAST);
  assert_int_equal (picked, -2);
  gtk_drop_down_set_selected (choice, FF_SKY_THIN);
  assert_int_equal (picked, FF_SKY_THIN);
  g_object_unref (pick);
}

static void
test_blocks_say_their_stops (void **state)
{
  FfBlock *block = FF_BLOCK (g_object_ref_sink (ff_block_new (5)));

  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (block), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "5 stops");
  ff_block_set_stops (block, 1);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (block), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "1 stop");
  ff_block_set_stops (block, 3.1);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (block), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "3.1 stops");
  ff_block_set_stops (block, 0);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (block), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "no filter");
  ff_block_set_stops (block, NAN);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (block), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "stops not known");
  g_object_unref (block);
}

/* A split in a window, with and without a bar. */

static FfSplit *
show_split (GtkWindow *window, GtkWidget *bar, int width)
{
  GtkWidget *split = ff_split_new ();

  g_object_set (split, "sidebar", gtk_label_new ("left"), "content", gtk_label_new ("right"), "bar",
                bar, "collapse-width", 600, NULL);
  gtk_window_set_child (window, split);
  gtk_window_set_default_size (window, width, 300);
  gtk_window_present (window);
  ff_stage_settle ();
  return FF_SPLIT (split);
}

static gboolean
is_shown (FfSplit *split, const char *text)
{
  return ff_stage_find (GTK_WIDGET (split), GTK_TYPE_LABEL, text) != NULL;
}

static void
test_split_shows_both_or_one_side (void **state)
{
  GtkWindow *window = GTK_WINDOW (gtk_window_new ());
  FfSplit *split = show_split (window, NULL, 900);

  assert_false (ff_split_get_collapsed (split));
  assert_true (is_shown (split, "left") && is_shown (split, "right"));
  gtk_window_set_default_size (window, 400, 300);
  ff_stage_settle ();
  assert_true (ff_split_get_collapsed (split));
  assert_true (!is_shown (split, "left") && is_shown (split, "right"));
  ff_split_set_show_content (split, FALSE);
  ff_stage_settle ();
  assert_true (is_shown (split, "left") && !is_shown (split, "right"));
  gtk_window_destroy (window);
}

static void
test_split_with_a_bar_keeps_its_content (void **state)
{
  GtkWindow *window = GTK_WINDOW (gtk_window_new ());
  FfSplit *split = show_split (window, gtk_label_new ("below"), 900);

  assert_true (is_shown (split, "left") && is_shown (split, "right") && !is_shown (split, "below"));
  gtk_window_set_default_size (window, 400, 300);
  ff_stage_settle ();
  assert_true (!is_shown (split, "left") && is_shown (split, "right") && is_shown (split, "below"));
  gtk_window_destroy (window);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_what_is_told_is_no_typing),
    cmocka_unit_test (test_typing_is_not_rewritten_under_the_fingers),
    cmocka_unit_test (test_a_wrong_value_is_named_and_the_old_one_kept),
    cmocka_unit_test (test_a_wrong_value_is_named_after_a_moment),
    cmocka_unit_test (test_undo_reaches_a_field_that_was_typed_in),
    cmocka_unit_test (test_only_people_pick),
    cmocka_unit_test (test_blocks_say_their_stops),
    cmocka_unit_test (test_split_shows_both_or_one_side),
    cmocka_unit_test (test_split_with_a_bar_keeps_its_content),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("widgets", tests, NULL, NULL);
}
