/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the camera of the demo day has and lacks, as the plan and the advice take it. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-day.h"
#include "ff-day-reading.h"
#include "ff-demo.h"
#include "ff-item.h"
#include "ff-shot-advice.h"

static char *folder;
static FfStore *store;

static void
change_camera (void (*change) (FfItem *camera))
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) items = ff_items_load (store, &error);

  for (guint i = 0; i < items->len; i++)
    {
      FfItem *item = g_ptr_array_index (items, i);

      if (item->kind != FF_KIND_CAMERA)
        continue;
      change (item);
      ff_item_save (store, item, &error);
      assert_no_error (error);
    }
}

static FfDay *
load (void)
{
  g_autoptr (GError) error = NULL;
  FfDay *day = ff_day_load (store, "Skarrowick", &error);

  assert_no_error (error);
  return day;
}

static FfDayPlan *
plan (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load ();
  FfDayPlan *made = ff_day_plan (day, NULL, &error);

  assert_no_error (error);
  return made;
}

static gboolean
says (GPtrArray *sentences, const char *part)
{
  for (guint i = 0; i < sentences->len; i++)
    if (strstr (g_ptr_array_index (sentences, i), part) != NULL)
      return TRUE;
  return FALSE;
}

static void
only_slow_rates (FfItem *camera)
{
  ff_set_text (&camera->frame_rates, "24, 25, 30, 50");
}

static void
test_a_rate_it_lacks_is_said (void **state)
{
  g_autoptr (FfDayPlan) before = plan (), after = NULL;
  g_autoptr (FfDay) day = NULL;
  g_autoptr (FfShotAdvice) slow = NULL, plain = NULL;

  assert_false (says (before->clashes, "frames a second"));
  change_camera (only_slow_rates);
  after = plan ();
  day = load ();
  /* C alone is at 100 frames. */
  assert_true (says (after->clashes, "C wants 100 frames a second"));
  assert_false (says (after->clashes, "B wants"));
  slow = ff_day_shot_advice (day, ff_day_find_shot (day, "C"), 0, NULL);
  plain = ff_day_shot_advice (day, ff_day_find_shot (day, "B"), 0, NULL);
  assert_true (says (slow->remarks, "C wants 100 frames a second"));
  assert_false (says (plain->remarks, "frames a second"));
}

static void
by_angle (FfItem *camera)
{
  camera->shutter_by = FF_SHUTTER_BY_ANGLE;
  camera->angle_low_deg = 172.8;
  camera->angle_high_deg = 180;
}

/* Every video take of the plan is at an angle that the camera has. */
static void
test_angles_it_lacks_are_not_planned (void **state)
{
  g_autoptr (FfDayPlan) made = NULL;

  change_camera (by_angle);
  made = plan ();
  for (guint i = 0; i < made->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (made->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, j);
          double angle = take->start.shutter_angle_deg;

          if (take->intent == FF_INTENT_VIDEO)
            assert_true (angle > 172 && angle < 181);
        }
    }
}

static void
variable_and_soft (FfItem *camera)
{
  ff_set_text (&camera->apertures, "2.8,4,5.6,8,11,16");
  camera->sharp_from = 4;
  camera->sharp_to = 5.6;
}

/* Where the light leaves a choice, the aperture is one of the sharp ones. */
static void
test_sharp_apertures_are_preferred (void **state)
{
  g_autoptr (FfDay) day = NULL;
  g_autoptr (FfShotAdvice) advice = NULL;

  change_camera (variable_and_soft);
  day = load ();
  advice = ff_day_shot_advice (day, ff_day_find_shot (day, "D"), 0, NULL);
  assert_true (advice->settings.aperture >= 4 && advice->settings.aperture <= 5.6);
}

static void
two_bases (FfItem *camera)
{
  ff_set_text (&camera->base_iso, "400,100");
  ff_set_text (&camera->profiles, "flat,standard");
}

static double
need_of_d (void)
{
  g_autoptr (FfDay) day = load ();
  FfShotMoment moment;

  ff_day_shot_moment (day, ff_day_find_shot (day, "D"), 1821285600, &moment);
  return moment.need_stops;
}

/* The base of the profile that the crew prefers comes first, and needs count from it: ISO 400 wants
 * two stops more of filter than ISO 100. */
static void
test_the_base_of_the_preferred_profile (void **state)
{
  double before = need_of_d ();

  change_camera (two_bases);
  assert_close (need_of_d (), before + 2, 1e-9);
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  return store != NULL && ff_demo_fill (store, &error) ? 0 : -1;
}

static int
tear_down (void **state)
{
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_a_rate_it_lacks_is_said),
    CASE (test_angles_it_lacks_are_not_planned),
    CASE (test_sharp_apertures_are_preferred),
    CASE (test_the_base_of_the_preferred_profile),
  };

  return cmocka_run_group_tests_name ("camera", tests, NULL, NULL);
}
