/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steps behind settings: they stand in order, say their numbers, and add up to the error that
 * advise gives; those of the demo day are the plan's own numbers. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-day-explain.h"
#include "ff-day-private.h"
#include "ff-demo.h"
#include "ff-exposure.h"
#include "ff-records.h"
#include "ff-scale.h"

static const FfAdviseFilter filters[] = {
  { "ND2", 1, 1 }, { "ND4", 2, 2 },  { "ND8", 3.1, 3.1 },
  { "ND16", 4, 4 }, { "ND32", 5, 5 }, { "2-5 stops variable", 2, 5 },
};

static const FfExplainStep *
step (GPtrArray *steps, FfExplainKind kind)
{
  const FfExplainStep *found = g_ptr_array_index (steps, (guint) kind);

  assert_int_equal (found->kind, kind);
  return found;
}

static double
value (GPtrArray *steps, FfExplainKind kind, const char *name)
{
  return ff_explain_value (step (steps, kind), name);
}

static FfCameraRange
camera (GRand *rand)
{
  FfCameraRange range = { .iso_low = (guint) ff_scale_find (FF_SCALE_ISO, "100"),
                          .iso_high = (guint) ff_scale_find (FF_SCALE_ISO, "6400"),
                          .shutter_fast = (guint) ff_scale_find (FF_SCALE_SHUTTER, "1/8000"),
                          .shutter_slow = (guint) ff_scale_find (FF_SCALE_SHUTTER, "8"),
                          .n_bases = 1,
                          .thirds_exact = g_rand_boolean (rand),
                          .pitch_um = 3 };

  range.base_iso[0] = range.iso_low + (guint) g_rand_int_range (rand, 0, 6);
  for (double k = 9; k < 9 + g_rand_int_range (rand, 1, 10); k++)
    range.apertures[range.n_apertures++] = (FfAperture) { exp2 (k / 6), exp2 (k / 6) };
  return range;
}

static FfWant
want (GRand *rand)
{
  FfWant some = { .intent = (FfIntent) g_rand_int_range (rand, 0, FF_INTENT_TIMELAPSE + 1),
                  .fps = g_rand_int_range (rand, 24, 61), .angle_deg = 180, .angle_from_deg = 120,
                  .angle_to_deg = 240, .frames = 3, .step_stops = 1, .interval_s = 2 };

  if (g_rand_boolean (rand))
    some.hold_aperture = exp2 (g_rand_double_range (rand, 1, 3));
  return some;
}

static void
check_sum (GRand *rand)
{
  FfCameraRange range = camera (rand);
  FfWant some = want (rand);
  double ev100 = g_rand_double_range (rand, -2, 17);
  const FfAdviseQuery asked = { .ev100 = ev100, .camera = &range, .want = &some,
                                .filters = filters, .n_filters = G_N_ELEMENTS (filters),
                                .max_stack = 2 };
  g_autoptr (GArray) choices = ff_advise (&asked, 1, NULL);
  const FfChoice *best = &g_array_index (choices, FfChoice, 0);
  const FfExplainQuery query = { .from = FF_EXPLAIN_GIVEN, .ev100 = ev100, .low_ev100 = ev100,
                                 .high_ev100 = ev100, .camera = &range, .want = &some,
                                 .filters = "some glass", .filter_stops = best->filter_stops,
                                 .settings = best->settings };
  g_autoptr (GPtrArray) steps = ff_explain (&query);
  double left = value (steps, FF_WHY_LIGHT, "ev100") - value (steps, FF_WHY_LEVEL, "level_ev100")
                - value (steps, FF_WHY_FILTER, "filter_stops");
  double need = value (steps, FF_WHY_NEED, "need_stops");

  assert_int_equal (steps->len, FF_N_WHY);
  assert_close (value (steps, FF_WHY_LEFT, "left_stops"), left, 1e-9);
  assert_close (left - value (steps, FF_WHY_PAYS, "shutter_stops")
                    - value (steps, FF_WHY_PAYS, "aperture_stops")
                    - value (steps, FF_WHY_PAYS, "iso_stops"),
                best->settings.error_stops, 1e-9);
  assert_close (value (steps, FF_WHY_PAYS, "error_stops"), best->settings.error_stops, 1e-9);
  if (some.intent == FF_INTENT_STILL || some.intent == FF_INTENT_BRACKET)
    assert_true (isnan (need));
  else
    assert_close (need,
                  ff_advise_need (ev100, &range, &some,
                                  value (steps, FF_WHY_LEVEL, "aperture_exact")),
                  1e-9);
}

static void
test_steps_add_up_to_the_error (void **state)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20270918);

  for (int i = 0; i < 2000; i++)
    check_sum (rand);
}

static void
test_sources_and_formulae_of_a_level_as_given (void **state)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1);
  FfCameraRange range = camera (rand);
  FfWant some = { .intent = FF_INTENT_VIDEO, .fps = 25, .angle_deg = 180, .angle_from_deg = 144,
                  .angle_to_deg = 216 };
  const FfExplainQuery query = { .from = FF_EXPLAIN_GIVEN, .ev100 = 10, .low_ev100 = 10,
                                 .high_ev100 = 10, .camera = &range, .want = &some,
                                 .settings = { .aperture = range.apertures[0], .shutter_s = 0.02,
                                               .iso = range.base_iso[0] } };
  g_autoptr (GPtrArray) steps = ff_explain (&query);

  assert_string_equal (step (steps, FF_WHY_SUN)->text, "Not asked: the light was entered.");
  assert_string_equal (step (steps, FF_WHY_SUN)->formula, "");
  assert_string_equal (step (steps, FF_WHY_LIGHT)->text, "EV 10.00 ± 0.00 at ISO 100.");
  assert_string_equal (step (steps, FF_WHY_LEVEL)->formula, "EV = log2 (N² / t × 100 / S)");
  assert_string_equal (step (steps, FF_WHY_FILTER)->text, "None is fitted: it takes nothing.");
  assert_true (isnan (value (steps, FF_WHY_LIGHT, "illuminance_lx")));
  assert_true (isnan (value (steps, FF_WHY_LIGHT, "no such value")));
}

/* The demo day */

static void
check_take (const FfDay *day, const FfDayPlan *plan, const FfPlanLine *line, const FfPlanTake *take)
{
  g_autoptr (GPtrArray) steps = ff_day_explain_take (day, plan, line, take);
  double flat, view, offset;

  assert_non_null (steps);
  flat = value (steps, FF_WHY_LIGHT, "horizontal_ev100");
  view = value (steps, FF_WHY_LIGHT, "view_stops");
  offset = value (steps, FF_WHY_LIGHT, "offset_stops");
  assert_close (value (steps, FF_WHY_LIGHT, "ev100"), take->ev100_start, 1e-9);
  assert_close (flat + view + offset, take->ev100_start, 1e-9);
  assert_close (flat,
                ff_exposure_ev100_of_lux (value (steps, FF_WHY_LIGHT, "illuminance_lx")), 1e-9);
  if (isfinite (take->need_start_stops))
    assert_close (value (steps, FF_WHY_NEED, "need_stops"), take->need_start_stops, 1e-9);
  assert_close (value (steps, FF_WHY_FILTER, "filter_stops"), line->filter_stops, 1e-9);
  assert_close (value (steps, FF_WHY_PAYS, "error_stops"), take->start.error_stops, 1e-9);
  for (guint i = 0; i < steps->len; i++)
    {
      assert_true (step (steps, (FfExplainKind) i)->source[0] != '\0');
      assert_true (step (steps, (FfExplainKind) i)->formula[0] != '\0');
    }
}

static void
test_the_demo_day_explains_its_own_numbers (void **state)
{
  char *folder = ff_test_folder_new ();
  FfStore *store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);
  g_autoptr (FfDay) day = NULL;
  g_autoptr (FfDayPlan) plan = NULL;
  guint takes = 0;

  assert_true (ff_demo_fill (store, NULL));
  day = ff_day_load (store, "Skarrowick", NULL);
  plan = ff_day_plan (day, NULL, NULL);
  assert_non_null (plan);
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint j = 0; j < line->takes->len; j++, takes++)
        check_take (day, plan, line, g_ptr_array_index (line->takes, j));
    }
  assert_int_equal (takes, 8);
  ff_records_close (store);
  ff_test_folder_remove (folder);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_steps_add_up_to_the_error),
    cmocka_unit_test (test_sources_and_formulae_of_a_level_as_given),
    cmocka_unit_test (test_the_demo_day_explains_its_own_numbers),
  };

  return cmocka_run_group_tests_name ("explain", tests, NULL, NULL);
}
