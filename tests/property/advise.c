/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ten thousand seeded cases against a plain search: every combination is written out and priced by
 * the public price functions, nothing is skipped. */
#include "ff-test.h"

#include <math.h>
#include <stdlib.h>

#include "ff-advise.h"
#include "ff-exposure.h"
#include "ff-scale.h"

#define N_CASES 10000
#define TOP 5
#define MAX_FILTERS 4

typedef struct {
  FfCameraRange camera;
  FfWant want;
  FfAdviseFilter filters[MAX_FILTERS];
  FfAdviseQuery query;
} Case;

static gboolean
chance (FfTestRandom *random, double share)
{
  return ff_test_random (random, 0, 1) < share;
}

static guint
pick (FfTestRandom *random, guint low, guint high)
{
  return (guint) ff_test_random_int (random, (int) low, (int) high);
}

static void
make_camera (FfTestRandom *random, FfCameraRange *camera)
{
  guint aperture = pick (random, 3, 12);
  guint n_apertures = chance (random, 0.5) ? 1 : pick (random, 2, 5);

  *camera = (FfCameraRange) { 0 };
  for (guint i = 0; i < n_apertures; i++, aperture += pick (random, 1, 3))
    camera->apertures[camera->n_apertures++]
        = (FfAperture) { ff_scale_written (FF_SCALE_APERTURE, aperture),
                         ff_scale_exact (FF_SCALE_APERTURE, aperture) };
  camera->iso_low = pick (random, 0, 8);
  camera->iso_high = camera->iso_low + pick (random, 0, 15);
  camera->n_bases = pick (random, 1, 3);
  for (guint i = 0; i < camera->n_bases; i++)
    camera->base_iso[i] = pick (random, camera->iso_low, camera->iso_high);
  camera->shutter_fast = pick (random, 0, 20);
  camera->shutter_slow = camera->shutter_fast + pick (random, 0, 40);
  camera->thirds_exact = chance (random, 0.3);
  camera->pitch_um = chance (random, 0.7) ? ff_test_random (random, 1, 6) : 0;
  camera->sharp_to = chance (random, 0.2) ? ff_test_random (random, 2, 10) : 0;
  camera->sharp_from = chance (random, 0.2) ? ff_test_random (random, 1.4, 6) : 0;
  camera->iso_whole = chance (random, 0.2);
}

static void
make_want (FfTestRandom *random, const FfCameraRange *camera, FfWant *want)
{
  static const double rates[] = { 23.976, 24, 25, 29.97, 50, 60, 100, 120 };

  *want = (FfWant) {
    .intent = (FfIntent) ff_test_random_int (random, FF_INTENT_VIDEO, FF_INTENT_TIMELAPSE),
    .fps = rates[pick (random, 0, G_N_ELEMENTS (rates) - 1)],
    .angle_deg = 180,
    .angle_from_deg = 180 - ff_test_random (random, 0, 170),
    .angle_to_deg = 180 + ff_test_random (random, 0, 180),
    .frames = ff_test_random_int (random, 2, 5),
    .step_stops = ff_test_random_int (random, 1, 6) / 3.0,
    .interval_s = ff_test_random (random, 0.5, 10),
  };
  if (chance (random, 0.4))
    {
      want->angle_from_deg = 144;
      want->angle_to_deg = 216;
    }
  if (chance (random, 0.4))
    want->max_iso = ff_test_random (random, 100, 3000);
  if (chance (random, 0.2))
    want->hold_aperture = camera->apertures[pick (random, 0, camera->n_apertures - 1)].exact;
  if (chance (random, 0.3))
    {
      want->max_blur_px = ff_test_random (random, 0.2, 4);
      want->speed_ms = ff_test_random (random, 1, 15);
      want->height_m = ff_test_random (random, 5, 100);
      want->focal_mm = ff_test_random (random, 5, 50);
    }
}

/* Until it is one that a crew could ask. */
static void
make_case (FfTestRandom *random, Case *it)
{
  do
    {
      make_camera (random, &it->camera);
      make_want (random, &it->camera, &it->want);
    }
  while (!ff_advise_check (&it->camera, &it->want, NULL));
  it->query = (FfAdviseQuery) {
    .ev100 = ff_test_random (random, -2, 19),
    .camera = &it->camera,
    .want = &it->want,
    .filters = it->filters,
    .n_filters = pick (random, 0, MAX_FILTERS),
    .max_stack = pick (random, 0, 2),
  };
  for (guint i = 0; i < it->query.n_filters; i++)
    {
      double stops = ff_test_random_int (random, 2, 20) / 2.0 + 0.01 * i;

      it->filters[i] = (FfAdviseFilter) { "filter", stops, stops };
      if (chance (random, 0.15))
        it->filters[i].stops_to = stops + ff_test_random (random, 0.2, 3);
    }
}

/* The plain search. */

typedef struct {
  const Case *of;
  double stops;
  guint n_filters;
  double costs[TOP]; /* rising */
  guint n_costs;
  double least_error;
} Plain;

static double
time_of (const FfCameraRange *camera, guint step)
{
  return camera->thirds_exact ? ff_scale_exact (FF_SCALE_SHUTTER, step)
                              : ff_scale_written (FF_SCALE_SHUTTER, step);
}

static gboolean
is_moving (const FfWant *want)
{
  return want->intent == FF_INTENT_VIDEO || want->intent == FF_INTENT_SLOW;
}

static double
bracket_stops (const FfWant *want)
{
  return want->intent == FF_INTENT_BRACKET ? want->step_stops * (want->frames - 1) / 2 : 0;
}

static double
wanted_time (const FfWant *want)
{
  return is_moving (want) ? want->angle_deg / 360 / want->fps : want->interval_s / 2;
}

/* -1: faster than the shot allows, 0: allowed, 1: slower. */
static int
side_of_span (const Case *it, double seconds)
{
  double frames = exp2 (bracket_stops (&it->want));
  double from = time_of (&it->camera, it->camera.shutter_fast) * frames;
  double to = time_of (&it->camera, it->camera.shutter_slow) / frames;

  if (is_moving (&it->want))
    {
      from = it->want.angle_from_deg / 360 / it->want.fps;
      to = it->want.angle_to_deg / 360 / it->want.fps;
    }
  else if (it->want.intent == FF_INTENT_TIMELAPSE)
    {
      from = it->want.interval_s / 8;
      to = it->want.interval_s * 0.75;
    }
  if (seconds < from * (1 - 1e-9))
    return -1;
  return seconds > to * (1 + 1e-9);
}

/* Marks the shutters that may be used: those of the span or the ones next to it, and of them those
 * within the blur limit or the fastest. */
static void
mark_shutters (const Case *it, gboolean *allowed)
{
  guint first = it->camera.shutter_fast, last = it->camera.shutter_slow, fastest = G_MAXUINT;
  gboolean any = FALSE;
  double gsd = it->want.height_m * it->camera.pitch_um * 1e-3 / it->want.focal_mm;
  double frames = exp2 (bracket_stops (&it->want));

  for (guint i = first; i <= last; i++)
    any |= allowed[i] = side_of_span (it, time_of (&it->camera, i)) == 0;
  for (guint i = first; !any && i <= last; i++)
    {
      int side = side_of_span (it, time_of (&it->camera, i));

      allowed[i] = (side < 0 && (i == last || side_of_span (it, time_of (&it->camera, i + 1)) > 0))
                   || (side > 0
                       && (i == first || side_of_span (it, time_of (&it->camera, i - 1)) < 0));
    }
  for (guint i = last + 1; i-- > first;)
    if (allowed[i])
      fastest = i;
  if (it->want.max_blur_px > 0)
    for (guint i = fastest + 1; i <= last; i++)
      if (it->want.speed_ms * time_of (&it->camera, i) * frames / gsd
          > it->want.max_blur_px * (1 + 1e-9))
        allowed[i] = FALSE;
}

/* The highest base that is not above. */
static guint
base_of (const FfCameraRange *camera, guint step)
{
  guint base = 0;

  for (guint i = 0; i < camera->n_bases; i++)
    if (camera->base_iso[i] <= step && camera->base_iso[i] >= base)
      base = camera->base_iso[i];
  return base;
}

static double
price_of_iso (const FfCameraRange *camera, guint step)
{
  guint base = base_of (camera, step);
  double price;

  price = 0.4
          * log2 (ff_scale_written (FF_SCALE_ISO, step) / ff_scale_written (FF_SCALE_ISO, base));
  return base == camera->base_iso[0] ? price : price + 0.2;
}

static gboolean
iso_allowed (const Case *it, guint step)
{
  if (it->camera.iso_whole && (step - base_of (&it->camera, step)) % 3 != 0)
    return FALSE;
  for (guint i = 0; i < it->camera.n_bases; i++)
    if (it->camera.base_iso[i] <= step)
      return it->want.max_iso == 0
             || ff_scale_written (FF_SCALE_ISO, step) <= it->want.max_iso * (1 + 1e-9);
  return FALSE;
}

static double
price_of_aperture (const FfCameraRange *camera, double f_number)
{
  double sharp = camera->sharp_to > 0 ? camera->sharp_to : 2 * camera->pitch_um / (2.44 * 0.55);

  double price = 0;

  if (sharp > 0)
    price = fmax (price, 2 * 2 * log2 (f_number / sharp));
  if (camera->sharp_from > 0)
    price = fmax (price, 2 * 2 * log2 (camera->sharp_from / f_number));
  return price;
}

static double
price_of_time (const Case *it, double seconds)
{
  if (is_moving (&it->want) || it->want.intent == FF_INTENT_TIMELAPSE)
    return ff_price_shutter (&ff_prices_default, log2 (wanted_time (&it->want) / seconds));
  return 0.5 * fmax (0, log2 (seconds * 60) + bracket_stops (&it->want));
}

static void
keep_cost (Plain *plain, double cost)
{
  guint place = plain->n_costs;

  while (place > 0 && cost < plain->costs[place - 1])
    place--;
  if (place == TOP)
    return;
  plain->n_costs = MIN (plain->n_costs + 1, TOP);
  for (guint i = plain->n_costs - 1; i > place; i--)
    plain->costs[i] = plain->costs[i - 1];
  plain->costs[place] = cost;
}

static void
search_settings (Plain *plain)
{
  const Case *it = plain->of;
  gboolean needs_none = !is_moving (&it->want) && it->want.intent != FF_INTENT_TIMELAPSE;
  double glass = (plain->n_filters > 1 ? plain->n_filters - 1.0 : 0.0)
                 + (needs_none && plain->n_filters > 0 ? 0.5 : 0.0);
  gboolean allowed[64] = { FALSE };

  mark_shutters (it, allowed);
  for (guint s = it->camera.shutter_fast; s <= it->camera.shutter_slow; s++)
    for (guint a = 0; allowed[s] && a < it->camera.n_apertures; a++)
      {
        double seconds = time_of (&it->camera, s);
        double f_number = it->camera.apertures[a].exact;
        double fixed
            = glass + price_of_time (it, seconds) + price_of_aperture (&it->camera, f_number);

        if (it->want.hold_aperture > 0 && it->want.hold_aperture != f_number)
          continue;
        for (guint i = it->camera.iso_low; i <= it->camera.iso_high; i++)
          {
            double iso = ff_scale_written (FF_SCALE_ISO, i);
            double error = it->query.ev100 - plain->stops
                           - log2 (f_number * f_number / seconds * 100 / iso);

            if (!iso_allowed (it, i))
              continue;
            keep_cost (plain, fixed + price_of_iso (&it->camera, i)
                                  + ff_price_error (&ff_prices_default, error));
            if (fabs (error) < fabs (plain->least_error))
              plain->least_error = error;
          }
      }
}

/* Fits filter after filter, and searches behind each way of doing so. */
static void
search_filters (Plain *plain, guint next, guint left)
{
  search_settings (plain);
  for (guint i = next; left > 0 && i < plain->of->query.n_filters; i++)
    {
      const FfAdviseFilter *filter = &plain->of->filters[i];
      double width = filter->stops_to - filter->stops;
      int thirds = (int) ceil (width * 3 - 1e-9);

      for (int k = 0; k <= thirds; k++)
        {
          double set_to = k == thirds ? filter->stops_to : filter->stops + k / 3.0;

          plain->stops += set_to;
          plain->n_filters++;
          search_filters (plain, i + 1, left - 1);
          plain->n_filters--;
          plain->stops -= set_to;
        }
    }
}

/* What has to hold. */

static void
check_settings (const Case *it, const FfChoice *choice)
{
  const FfSettings *settings = &choice->settings;
  double stops = 0;
  gboolean has_aperture = FALSE;

  assert_true (settings->iso >= it->camera.iso_low && settings->iso <= it->camera.iso_high);
  assert_true (settings->shutter >= it->camera.shutter_fast
               && settings->shutter <= it->camera.shutter_slow);
  assert_close (settings->shutter_s, time_of (&it->camera, settings->shutter), 0);
  for (guint i = 0; i < it->camera.n_apertures; i++)
    has_aperture |= it->camera.apertures[i].exact == settings->aperture.exact;
  assert_true (has_aperture);
  assert_true (choice->n_filters <= it->query.max_stack);
  for (guint i = 0; i < choice->n_filters; i++)
    {
      const FfAdviseFilter *filter = &it->filters[choice->filters[i]];

      assert_true (choice->set_to[i] >= filter->stops && choice->set_to[i] <= filter->stops_to);
      assert_true (i == 0 || choice->filters[i] > choice->filters[i - 1]);
      stops += choice->set_to[i];
    }
  assert_close (choice->filter_stops, stops, 1e-12);
  assert_close (settings->error_stops,
                it->query.ev100 - choice->filter_stops
                    - ff_exposure_ev100 (settings->aperture.exact, settings->shutter_s,
                                         ff_scale_written (FF_SCALE_ISO, settings->iso)),
                1e-9);
}

static gboolean
same_choice (const FfChoice *a, const FfChoice *b)
{
  gboolean same = a->n_filters == b->n_filters && a->settings.iso == b->settings.iso
                  && a->settings.shutter == b->settings.shutter
                  && a->settings.aperture.exact == b->settings.aperture.exact;

  for (guint i = 0; same && i < a->n_filters; i++)
    same = a->filters[i] == b->filters[i] && a->set_to[i] == b->set_to[i];
  return same;
}

static void
check_choices (const Case *it, const GArray *choices, const Plain *plain)
{
  assert_int_equal (choices->len, plain->n_costs);
  for (guint i = 0; i < choices->len; i++)
    {
      const FfChoice *choice = &g_array_index (choices, FfChoice, i);

      assert_close (choice->cost, plain->costs[i], 1e-8);
      assert_close (choice->cost, ff_price_sum (choice->parts), 0);
      check_settings (it, choice);
      for (guint j = 0; j < i; j++)
        assert_false (same_choice (choice, &g_array_index (choices, FfChoice, j)));
    }
}

static void
check_reach (const Case *it, const FfChoice *best, const FfReach *reach, const Plain *plain)
{
  assert_int_equal (reach->ok, fabs (best->settings.error_stops) <= FF_REACH_STOPS + 1e-9);
  assert_int_equal (reach->ok, fabs (plain->least_error) <= FF_REACH_STOPS + 1e-9);
  if (reach->ok)
    {
      assert_close (reach->shortfall_stops, 0, 0);
      assert_true (it->query.ev100 >= best->good_from_ev100 - 1e-9);
      assert_true (it->query.ev100 <= best->good_to_ev100 + 1e-9);
    }
  else
    assert_close (fabs (reach->shortfall_stops), fabs (plain->least_error), 1e-9);
}

static void
test_best_is_that_of_a_plain_search (void **state)
{
  FfTestRandom random = { 20270918 };

  for (int n = 0; n < N_CASES; n++)
    {
      Case it;
      Plain plain = { .of = &it, .least_error = INFINITY };
      FfReach reach;
      g_autoptr (GArray) choices = NULL;

      make_case (&random, &it);
      search_filters (&plain, 0, it.query.max_stack);
      choices = ff_advise (&it.query, TOP, &reach);
      check_choices (&it, choices, &plain);
      check_reach (&it, &g_array_index (choices, FfChoice, 0), &reach, &plain);
    }
}

/* With a filter fitted the best is what it is when only that filter is asked about; the planner's
 * short way and the crew's question never disagree. */
static void
test_settings_agree_with_the_search (void **state)
{
  FfTestRandom random = { 19270 };

  for (int n = 0; n < N_CASES; n++)
    {
      Case it;
      Plain plain = { .of = &it, .least_error = INFINITY };
      FfChoice choice;

      make_case (&random, &it);
      plain.stops = ff_test_random_int (&random, 0, 30) / 3.0;
      search_settings (&plain);
      ff_advise_settings (&it.query, plain.stops, &choice);
      assert_close (choice.cost, plain.costs[0], 1e-8);
      assert_close (choice.filter_stops, plain.stops, 0);
      assert_close (choice.parts[FF_PART_STACK], 0, 0);
    }
}

/* Through a stronger filter nothing gets too bright that was not, and what was too dark gets no
 * brighter. A ring of apertures, or ISO in whole stops, may leave gaps in which the nearest setting
 * jumps. */
static void
test_stronger_filter_never_brightens (void **state)
{
  FfTestRandom random = { 4711 };

  for (int n = 0; n < N_CASES; n++)
    {
      Case it;
      FfChoice weak, strong;
      double stops = ff_test_random (&random, 0, 8);

      make_case (&random, &it);
      it.camera.n_apertures = 1;
      it.camera.iso_whole = FALSE;
      it.want.hold_aperture = 0;
      ff_advise_settings (&it.query, stops, &weak);
      ff_advise_settings (&it.query, stops + ff_test_random (&random, 0, 4), &strong);
      assert_true (strong.settings.error_stops
                   <= fmax (weak.settings.error_stops, FF_REACH_STOPS) + 1e-9);
      if (weak.settings.error_stops < -FF_REACH_STOPS)
        assert_true (strong.settings.error_stops <= weak.settings.error_stops + 1e-9);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_best_is_that_of_a_plain_search),
    cmocka_unit_test (test_settings_agree_with_the_search),
    cmocka_unit_test (test_stronger_filter_never_brightens),
  };

  return cmocka_run_group_tests_name ("property advise", tests, NULL, NULL);
}
