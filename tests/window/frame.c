/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The frame: every page and every template can be built, the window collapses and opens again, the
 * keys lead where they say, a store in trouble is named. */
#include "ff-stage.h"

#include <glib/gstdio.h>
#include <string.h>

#include "ff-shortcuts.h"

static void
test_every_page_is_built_and_shown (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);

  ff_stage_open_demo_job (stage);
  assert_true (ff_pages_count () > 0);
  for (guint i = 0; i < ff_pages_count (); i++)
    {
      const FfPageInfo *info = ff_pages_get (i);

      ff_window_show_page (stage->window, info->name);
      ff_stage_settle ();
      assert_ptr_equal (ff_page_get_info (ff_window_get_page (stage->window)), info);
      assert_true (gtk_widget_get_mapped (GTK_WIDGET (ff_window_get_page (stage->window))));
    }
  ff_stage_free (stage);
}

static void
test_pages_are_built_when_first_shown (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);

  assert_int_equal (ff_stage_count (GTK_WIDGET (stage->window), FF_TYPE_PAGE), 1);
  ff_stage_free (stage);
}

static gboolean
is_narrow (gpointer window)
{
  return ff_window_get_narrow (window);
}

static gboolean
is_wide (gpointer window)
{
  return !ff_window_get_narrow (window);
}

static void
test_narrow_and_wide_again (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);

  assert_false (ff_window_get_narrow (stage->window));
  gtk_window_set_default_size (GTK_WINDOW (stage->window), 400, 800);
  assert_true (ff_stage_wait (is_narrow, stage->window));
  ff_stage_settle ();
  assert_true (gtk_widget_get_width (GTK_WIDGET (stage->window)) <= 400);
  gtk_window_set_default_size (GTK_WINDOW (stage->window), 1000, 700);
  assert_true (ff_stage_wait (is_wide, stage->window));
  ff_stage_free (stage);
}

static void
test_fits_a_phone_in_every_look (void **state)
{
  static const char *const looks[] = { "light", "dark", "daylight", "night" };
  FfStage *stage = ff_stage_new (TRUE, 400, 800);

  ff_stage_open_demo_job (stage);
  for (guint i = 0; i < G_N_ELEMENTS (looks); i++)
    for (guint j = 0; j < ff_pages_count (); j++)
      {
        int least;

        ff_looks_choose (ff_looks_get (), looks[i]);
        ff_window_show_page (stage->window, ff_pages_get (j)->name);
        ff_stage_settle ();
        gtk_widget_measure (GTK_WIDGET (stage->window), GTK_ORIENTATION_HORIZONTAL, -1, &least,
                            NULL, NULL, NULL);
        if (least > 400)
          fail_msg ("%s in %s needs %d", ff_pages_get (j)->name, looks[i], least);
      }
  ff_looks_choose (ff_looks_get (), "follow");
  ff_stage_free (stage);
}

static void
test_looks_toggle_back (void **state)
{
  FfLooks *looks = ff_looks_get ();
  FfStage *stage = ff_stage_new (FALSE, 800, 600);

  ff_looks_choose (looks, "dark");
  assert_int_equal (ff_looks_now (), FF_LOOK_DARK);
  ff_looks_toggle (looks, "daylight");
  assert_int_equal (ff_looks_now (), FF_LOOK_DAYLIGHT);
  ff_looks_toggle (looks, "night");
  assert_int_equal (ff_looks_now (), FF_LOOK_NIGHT);
  /* From daylight straight to night, and back to what was there before both. */
  ff_looks_toggle (looks, "night");
  assert_string_equal (ff_looks_chosen (looks), "dark");
  ff_looks_choose (looks, "nonsense");
  assert_string_equal (ff_looks_chosen (looks), "follow");
  ff_stage_free (stage);
}

/* Words on their ground: 4.5 to 1 for text (WCAG 2.1, success criterion 1.4.3); in daylight 7. */
static FfColour
colour_of (FfLook look, FfHue hue)
{
  GdkRGBA rgba = ff_hue (look, hue);

  return (FfColour) { rgba.red, rgba.green, rgba.blue };
}

static void
test_words_can_be_read_in_every_look (void **state)
{
  static const FfHue pairs[][2] = {
    { FF_HUE_INK, FF_HUE_PAPER },          { FF_HUE_INK, FF_HUE_SHEET },
    { FF_HUE_SOFT, FF_HUE_PAPER },         { FF_HUE_SOFT, FF_HUE_SHEET },
    { FF_HUE_SIDE_INK, FF_HUE_SIDE },      { FF_HUE_SIDE_SOFT, FF_HUE_SIDE },
    { FF_HUE_ON_CHESTNUT, FF_HUE_CHESTNUT }, { FF_HUE_CHESTNUT_INK, FF_HUE_PAPER },
    { FF_HUE_CHESTNUT_INK, FF_HUE_SHEET }, { FF_HUE_OCHRE_INK, FF_HUE_OCHRE_WASH },
    { FF_HUE_OCHRE_INK, FF_HUE_PAPER },
  };

  for (int look = 0; look < FF_N_LOOKS; look++)
    for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
      {
        double got = ff_colour_contrast (colour_of ((FfLook) look, pairs[i][0]),
                                         colour_of ((FfLook) look, pairs[i][1]));

        if (got < (look == FF_LOOK_DAYLIGHT ? 7 : 4.5))
          fail_msg ("look %d, pair %u: %.2f to 1", look, i, got);
      }
}

static void
test_every_key_has_its_action (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);
  g_auto (GStrv) actions
      = gtk_application_list_action_descriptions (GTK_APPLICATION (stage->application));

  assert_true (g_strv_length (actions) > 15);
  for (guint i = 0; actions[i] != NULL; i++)
    {
      g_autofree char *name = NULL;
      g_autoptr (GVariant) target = NULL;
      const char *bare = strchr (actions[i], '.') + 1;
      GActionMap *map = g_str_has_prefix (actions[i], "win.") ? G_ACTION_MAP (stage->window)
                                                              : G_ACTION_MAP (stage->application);

      assert_true (g_action_parse_detailed_name (bare, &name, &target, NULL));
      if (!g_str_has_prefix (actions[i], "window.") && g_action_map_lookup_action (map, name) == NULL)
        fail_msg ("%s has keys and no action", actions[i]);
    }
  ff_stage_free (stage);
}

static void
test_keys_are_listed (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);
  GtkWidget *keys = ff_shortcuts_window_new (GTK_WINDOW (stage->window), ff_pages_find ("jobs"));

  gtk_window_present (GTK_WINDOW (keys));
  ff_stage_settle ();
  assert_non_null (ff_stage_find (keys, GTK_TYPE_LABEL, "F8"));
  assert_non_null (ff_stage_find (keys, GTK_TYPE_LABEL, "Alt+1"));
  assert_non_null (ff_stage_find (keys, GTK_TYPE_LABEL, "Delete"));
  gtk_window_destroy (GTK_WINDOW (keys));
  ff_stage_free (stage);
}

static void
test_places_by_number (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);
  const FfPageInfo *first = ff_pages_nth (FF_PAGE_PLACE, 0);

  gtk_widget_activate_action (GTK_WIDGET (stage->window), "win.place-number", "i", 1);
  assert_ptr_equal (ff_page_get_info (ff_window_get_page (stage->window)), first);
  /* A number with no place behind it does nothing. */
  gtk_widget_activate_action (GTK_WIDGET (stage->window), "win.place-number", "i", 6);
  gtk_widget_activate_action (GTK_WIDGET (stage->window), "win.place-number", "i", 0);
  ff_stage_free (stage);
}

static void
test_a_part_needs_an_open_job (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);
  const FfPageInfo *part = ff_pages_nth (FF_PAGE_PART, 0);

  ff_window_show_page (stage->window, part != NULL ? part->name : "no such page");
  assert_string_equal (ff_page_get_info (ff_window_get_page (stage->window))->name, "jobs");
  ff_stage_free (stage);
}

static void
test_trouble_is_said_and_mended (void **state)
{
  FfStage *stage = ff_stage_new (FALSE, 1200, 800);
  g_autofree char *folder = ff_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "fieldfare.db", NULL);
  g_autoptr (FfKeeper) keeper = NULL;
  FfWindow *window;

  assert_true (g_file_set_contents (path, "This is a letter to a friend, and no store at all.",
                                    -1, NULL));
  keeper = ff_keeper_new (folder);
  assert_non_null (ff_keeper_trouble (keeper));
  window = ff_window_new (GTK_APPLICATION (stage->application), keeper);
  ff_window_show_page (window, "jobs");
  gtk_window_present (GTK_WINDOW (window));
  ff_stage_settle ();
  assert_null (ff_window_get_page (window));
  assert_non_null (
      ff_stage_find (GTK_WIDGET (window), GTK_TYPE_LABEL, ff_keeper_trouble (keeper)));
  assert_int_equal (g_unlink (path), 0);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.try-again", NULL);
  assert_null (ff_keeper_trouble (keeper));
  assert_non_null (ff_window_get_page (window));
  gtk_window_destroy (GTK_WINDOW (window));
  ff_stage_free (stage);
  ff_test_folder_remove (g_steal_pointer (&folder));
}

static void
test_initials_are_chosen (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);

  assert_non_null (ff_stage_find (GTK_WIDGET (stage->window), GTK_TYPE_LABEL, "Who is here?"));
  ff_keeper_set_initials (stage->keeper, "JV");
  assert_non_null (ff_stage_find (GTK_WIDGET (stage->window), GTK_TYPE_LABEL, "Jonah"));
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_every_page_is_built_and_shown),
    cmocka_unit_test (test_pages_are_built_when_first_shown),
    cmocka_unit_test (test_narrow_and_wide_again),
    cmocka_unit_test (test_fits_a_phone_in_every_look),
    cmocka_unit_test (test_looks_toggle_back),
    cmocka_unit_test (test_words_can_be_read_in_every_look),
    cmocka_unit_test (test_every_key_has_its_action),
    cmocka_unit_test (test_keys_are_listed),
    cmocka_unit_test (test_places_by_number),
    cmocka_unit_test (test_a_part_needs_an_open_job),
    cmocka_unit_test (test_trouble_is_said_and_mended),
    cmocka_unit_test (test_initials_are_chosen),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("frame", tests, NULL, NULL);
}
