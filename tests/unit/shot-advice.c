/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What one shot needs, on the demo day: numbers within the worked day's tolerances, the sentences
 * that the crew reads, and what is said where something is missing. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-day-private.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-records.h"
#include "ff-shot-advice.h"

static char *folder;
static FfStore *store;
static FfDay *day;

static const FfShot *
shot (const char *label)
{
  for (guint i = 0; i < day->shots->len; i++)
    if (g_str_equal (((const FfShot *) g_ptr_array_index (day->shots, i))->label, label))
      return g_ptr_array_index (day->shots, i);
  fail_msg ("no shot %s", label);
  return NULL;
}

static FfShotAdvice *
advise (const FfShot *about, gint64 at)
{
  g_autoptr (GError) error = NULL;
  FfShotAdvice *advice = ff_day_shot_advice (day, about, at, &error);

  assert_no_error (error);
  assert_non_null (advice);
  return advice;
}

static gint64
instant (int hour, int minute)
{
  gint64 at;

  assert_true (ff_day_instant (day, hour * 60 + minute, "test", &at, NULL));
  return at;
}

/* The worked day: needs within 0.5 stop above 8 degrees of sun, 1 below. */
static void
test_needs_of_the_worked_day (void **state)
{
  static const struct {
    const char *shot;
    double need, tolerance;
  } cases[] = {
    { "A", 4.9, 0.5 }, { "B", 5.7, 0.5 }, { "D", 5.3, 0.5 }, { "F", 4.0, 1.0 }, { "G", 2.4, 1.0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FfShotAdvice) advice = advise (shot (cases[i].shot), 0);

      assert_close (advice->start.need_stops, cases[i].need, cases[i].tolerance);
      assert_true (advice->end.need_stops < advice->start.need_stops);
      assert_true (advice->middle.at > advice->start.at && advice->middle.at < advice->end.at);
    }
}

static void
test_says_filter_settings_and_sun (void **state)
{
  g_autoptr (FfShotAdvice) advice = advise (shot ("D"), 0);

  assert_true (advice->has_choice && advice->in_reach);
  assert_close (advice->filter_stops, 5, 1e-9);
  assert_string_equal (advice->best, "5 stops, f/2.8, 1/60 (150°), ISO 100.");
  assert_string_equal (advice->glass, "factor 32 · density 1.5 · ND32");
  assert_string_equal (advice->lasts, "Good for its whole window.");
  assert_true (g_str_has_prefix (advice->need, "Needs 5."));
  assert_non_null (strstr (advice->need, "at 17:40"));
  assert_non_null (strstr (advice->need, "at 17:55"));
  assert_true (g_str_has_prefix (advice->sun, "Front light: the sun is behind the camera, at 25"));
  assert_non_null (strstr (advice->light, "± 0.5 at 17:40"));
}

static void
test_light_direction_in_words (void **state)
{
  FfShot turned = *shot ("D");
  static const struct {
    double bearing_deg;
    const char *words;
  } cases[] = {
    { 252, "Back light" }, { 162, "Side light: the sun is on the right" },
    { 342, "Side light: the sun is on the left" }, { NAN, "All round" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FfShotAdvice) advice = NULL;

      turned.bearing_deg = cases[i].bearing_deg;
      advice = advise (&turned, 0);
      if (!g_str_has_prefix (advice->sun, cases[i].words))
        fail_msg ("%g°: %s", cases[i].bearing_deg, advice->sun);
    }
}

static void
test_another_filter_later_in_the_window (void **state)
{
  g_autoptr (FfShotAdvice) early = advise (shot ("G"), 0);
  g_autoptr (FfShotAdvice) late = advise (shot ("G"), instant (19, 12));

  assert_non_null (strstr (early->lasts, "or later, 1 stop would be better"));
  assert_close (early->filter_stops, 2, 1e-9);
  assert_true (late->filter_stops < early->filter_stops);
  assert_int_equal (late->now.at, instant (19, 12));
}

/* What lies outside of the window is no time of this shot. */
static void
test_a_start_outside_the_window_is_not_taken (void **state)
{
  g_autoptr (FfShotAdvice) advice = advise (shot ("D"), instant (12, 0));

  assert_int_equal (advice->now.at, instant (17, 40));
}

static void
test_stills_need_none (void **state)
{
  g_autoptr (FfShotAdvice) advice = advise (shot ("E"), 0);

  assert_true (isnan (advice->start.need_stops));
  assert_string_equal (advice->need, "Stills take any shutter: no filter is needed.");
  assert_close (advice->filter_stops, 0, 1e-9);
  assert_true (g_str_has_prefix (advice->best, "No filter, f/2.8"));
}

static void
test_dusk_is_a_guide_only (void **state)
{
  FfShot dark = *shot ("H");
  g_autoptr (FfShotAdvice) advice = NULL;

  dark.window_from = 20 * 60 + 10;
  dark.window_to = 20 * 60 + 30;
  advice = advise (&dark, 0);
  assert_true (advice->start.guide_only);
  assert_non_null (strstr (advice->light, "take a reading"));
  assert_true (g_str_has_prefix (advice->sun, "The sun is down"));
}

static void
test_too_bright_says_what_helps (void **state)
{
  FfShot bright = *shot ("A");
  g_autoptr (FfShotAdvice) advice = NULL;

  bright.subject_offset_stops = 4;
  bright.view = FF_VIEW_OBLIQUE;
  bright.bearing_deg = 60;
  advice = advise (&bright, 0);
  assert_false (advice->in_reach);
  assert_true (g_str_has_prefix (advice->best, "Too bright by "));
  assert_true (advice->helps->len > 0);
  assert_string_equal (advice->lasts, "");
}

static void
test_light_without_a_camera (void **state)
{
  FfItem *camera = ff_day_camera (day);
  g_autofree char *shutter = g_strdup (camera->shutter_fast);
  g_autoptr (FfShotAdvice) advice = NULL;

  ff_set_text (&camera->shutter_fast, "nonsense");
  advice = advise (shot ("D"), 0);
  ff_set_text (&camera->shutter_fast, shutter);
  assert_false (advice->has_choice);
  assert_true (isnan (advice->start.need_stops));
  assert_non_null (strstr (advice->best, "nonsense"));
  assert_true (advice->start.ev100 > 12);
}

static void
test_no_filters_at_hand (void **state)
{
  g_autoptr (GPtrArray) items = g_ptr_array_new ();
  GPtrArray *all = day->items;
  g_autoptr (FfShotAdvice) advice = NULL;

  for (guint i = 0; i < all->len; i++)
    if (((FfItem *) g_ptr_array_index (all, i))->kind != FF_KIND_FILTER)
      g_ptr_array_add (items, g_ptr_array_index (all, i));
  day->items = items;
  advice = advise (shot ("D"), 0);
  day->items = all;
  assert_false (advice->in_reach);
  assert_close (advice->filter_stops, 0, 1e-9);
  assert_true (advice->helps->len > 0);
}

static void
test_what_is_missing_is_said (void **state)
{
  FfShot open = *shot ("D");
  GError *no_window = NULL, *no_date = NULL;

  open.window_from = FF_NO_CLOCK;
  assert_null (ff_day_shot_advice (day, &open, 0, &no_window));
  assert_error (no_window, FF_ERROR_INPUT, "enter from when to when");
  day->has_date = FALSE;
  assert_null (ff_day_shot_advice (day, shot ("D"), 0, &no_date));
  day->has_date = TRUE;
  assert_error (no_date, FF_ERROR_INPUT, "enter the day");
}

/* Asked at every keystroke: 5 ms are granted, and a window of a whole day is the most there is. */
static void
test_quick_enough_for_a_keystroke (void **state)
{
  FfShot wide = *shot ("A");
  gint64 before = g_get_monotonic_time ();

  wide.window_from = 7 * 60;
  wide.window_to = 20 * 60;
  for (int i = 0; i < 10; i++)
    {
      g_autoptr (FfShotAdvice) advice = advise (&wide, 0);

      assert_non_null (advice);
    }
  assert_true (g_get_monotonic_time () - before < 10 * 5000 * 4); /* four times, for slow machines */
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  assert_true (ff_demo_fill (store, &error));
  day = ff_day_load (store, "Skarrowick", &error);
  assert_no_error (error);
  return 0;
}

static int
tear_down (void **state)
{
  ff_day_free (day);
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_needs_of_the_worked_day),
    cmocka_unit_test (test_says_filter_settings_and_sun),
    cmocka_unit_test (test_light_direction_in_words),
    cmocka_unit_test (test_another_filter_later_in_the_window),
    cmocka_unit_test (test_a_start_outside_the_window_is_not_taken),
    cmocka_unit_test (test_stills_need_none),
    cmocka_unit_test (test_dusk_is_a_guide_only),
    cmocka_unit_test (test_too_bright_says_what_helps),
    cmocka_unit_test (test_light_without_a_camera),
    cmocka_unit_test (test_no_filters_at_hand),
    cmocka_unit_test (test_what_is_missing_is_said),
    cmocka_unit_test (test_quick_enough_for_a_keystroke),
  };

  return cmocka_run_group_tests_name ("shot advice", tests, set_up, tear_down);
}
