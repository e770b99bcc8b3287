/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Advise on worked cases. The light, the camera and the wants are common practice (no source); what
 * is expected of them follows from the exposure equation and from the table of prices. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-advise.h"
#include "ff-error.h"
#include "ff-exposure.h"
#include "ff-scale.h"

static guint
iso_step (const char *label)
{
  int step = ff_scale_find (FF_SCALE_ISO, label);

  assert_true (step >= 0);
  return (guint) step;
}

static guint
shutter_step (const char *label)
{
  int step = ff_scale_find (FF_SCALE_SHUTTER, label);

  assert_true (step >= 0);
  return (guint) step;
}

static void
add_aperture (FfCameraRange *camera, const char *label)
{
  FfAperture *aperture = &camera->apertures[camera->n_apertures++];

  assert_true (ff_aperture_parse ("aperture", label, &aperture->written, &aperture->exact, NULL));
}

/* A fixed f/2.8, ISO 100 (base) to 6400, 1/8000 to 8 s, 3.0 micrometres. */
static FfCameraRange
fixed_camera (void)
{
  FfCameraRange camera = {
    .iso_low = iso_step ("100"),
    .iso_high = iso_step ("6400"),
    .base_iso = { iso_step ("100") },
    .n_bases = 1,
    .shutter_fast = shutter_step ("1/8000"),
    .shutter_slow = shutter_step ("8"),
    .pitch_um = 3.0,
  };

  add_aperture (&camera, "2.8");
  return camera;
}

static FfWant
video (double fps)
{
  return (FfWant) { .intent = FF_INTENT_VIDEO, .fps = fps, .angle_deg = 180,
                    .angle_from_deg = 144, .angle_to_deg = 216 };
}

static const FfAdviseFilter six_filters[] = {
  { "ND2", 1, 1 }, { "ND4", 2, 2 }, { "ND8", 3, 3 }, { "ND16", 4, 4 }, { "ND32", 5, 5 },
  { "ND64", 6, 6 },
};

/* f/2.8, 1/50, ISO 100: the level from which needs count. */
#define LEVEL_25 8.643856189774724

static FfAdviseQuery
query_of (double ev100, const FfCameraRange *camera, const FfWant *want)
{
  return (FfAdviseQuery) { .ev100 = ev100, .camera = camera, .want = want, .filters = six_filters,
                           .n_filters = G_N_ELEMENTS (six_filters), .max_stack = 1 };
}

static FfChoice
best_of (const FfAdviseQuery *query, FfReach *ret_reach)
{
  g_autoptr (GArray) choices = ff_advise (query, 3, ret_reach);

  assert_true (choices->len >= 1);
  return g_array_index (choices, FfChoice, 0);
}

/* All remarks of a choice in one text, to look for parts of it. */
static char *
remarks_of (const FfChoice *choice)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < choice->n_remarks; i++)
    {
      g_autofree char *remark = ff_remark_text (&choice->remarks[i]);

      g_string_append_printf (text, "%s\n", remark);
    }
  return g_string_free (text, FALSE);
}

static void
assert_says (const FfChoice *choice, const char *part)
{
  g_autofree char *text = remarks_of (choice);

  if (strstr (text, part) == NULL)
    fail_msg ("“%s” is not in:\n%s", part, text);
}

static void
assert_silent_on (const FfChoice *choice, const char *part)
{
  g_autofree char *text = remarks_of (choice);

  if (strstr (text, part) != NULL)
    fail_msg ("“%s” is in:\n%s", part, text);
}

static void
test_video_takes_the_filter_of_its_need (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);

  for (int need = 1; need <= 6; need++)
    {
      FfAdviseQuery query = query_of (LEVEL_25 + need, &camera, &want);
      FfReach reach;
      FfChoice best = best_of (&query, &reach);

      assert_true (reach.ok);
      assert_int_equal (best.n_filters, 1);
      assert_close (best.filter_stops, need, 0);
      assert_string_equal (ff_scale_label (FF_SCALE_SHUTTER, best.settings.shutter), "1/50");
      assert_close (best.settings.shutter_angle_deg, 180, 1e-9);
      assert_close (best.settings.error_stops, 0, 1e-9);
      assert_close (best.cost, 0, 1e-9);
      assert_int_equal (best.n_remarks, 0);
    }
}

/* Nothing but the wanted shutter and the two thirds around it lies from 144 to 216 degrees. */
static void
test_video_stays_within_its_span (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (100);
  FfAdviseQuery query = query_of (LEVEL_25 + 2.3, &camera, &want);
  g_autoptr (GArray) choices = ff_advise (&query, 500, NULL);
  gboolean saw_the_end = FALSE;

  for (guint i = 0; i < choices->len; i++)
    {
      const FfSettings *settings = &g_array_index (choices, FfChoice, i).settings;

      assert_true (settings->shutter_angle_deg > 143.999 && settings->shutter_angle_deg < 216.001);
      saw_the_end = saw_the_end || fabs (settings->shutter_angle_deg - 144) < 1e-9;
    }
  assert_true (saw_the_end);
}

static void
test_angle_and_iso_are_remarked (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 + 6.3, &camera, &want);
  FfChoice best = best_of (&query, NULL);

  assert_says (&best, "Shutter at 150°, wanted 180°");
  query.ev100 = LEVEL_25 - 1.32;
  best = best_of (&query, NULL);
  assert_int_equal (best.n_filters, 0);
  assert_says (&best, "ISO 250, base 100");
}

static void
test_span_without_a_shutter (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 + 4, &camera, &want);
  g_autoptr (GArray) choices = NULL;

  want.angle_deg = want.angle_from_deg = 170;
  want.angle_to_deg = 172;
  choices = ff_advise (&query, 500, NULL);
  for (guint i = 0; i < choices->len; i++)
    {
      const FfChoice *choice = &g_array_index (choices, FfChoice, i);

      assert_true (fabs (choice->settings.shutter_angle_deg - 150) < 1e-9
                   || fabs (choice->settings.shutter_angle_deg - 180) < 1e-9);
      assert_says (choice, "no shutter from 170° to 172°");
    }
}

/* 100 frames want two stops less than 25: behind the 5-stop that suits real time, slow motion runs
 * on ISO (common practice, no source). */
static void
test_slow_motion_behind_the_real_time_filter (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant real_time = video (25), slow = video (100);
  FfAdviseQuery query = query_of (LEVEL_25 + 5.64, &camera, &slow);
  FfChoice choice;

  slow.intent = FF_INTENT_SLOW;
  slow.max_iso = 400;
  assert_close (ff_advise_need (query.ev100, &camera, &slow, sqrt (8)), 3.64, 1e-9);
  assert_close (ff_advise_need (query.ev100, &camera, &real_time, sqrt (8)), 5.64, 1e-9);
  ff_advise_settings (&query, 5, &choice);
  assert_string_equal (ff_scale_label (FF_SCALE_ISO, choice.settings.iso), "250");
  assert_string_equal (ff_scale_label (FF_SCALE_SHUTTER, choice.settings.shutter), "1/200");
  ff_advise_settings (&query, 6, &choice);
  assert_string_equal (ff_scale_label (FF_SCALE_ISO, choice.settings.iso), "400");
  assert_close (choice.settings.error_stops, -0.36, 1e-9);
  assert_says (&choice, "Too dark by 0.4 stops");
}

/* Late sun on a headland: no filter 1/1768 in the middle and 1/442 at the longest of a bracket over
 * two stops each way; behind a 5-stop 1/55 and 1/14; at ISO 400 1/221 and 1/55. */
static void
test_bracket_behind_a_filter (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = { .intent = FF_INTENT_BRACKET, .frames = 3, .step_stops = 2, .max_iso = 100 };
  FfAdviseQuery query = query_of (ff_exposure_ev100 (sqrt (8), 1 / 1768.0, 100), &camera, &want);
  FfChoice choice = best_of (&query, NULL);

  assert_int_equal (choice.n_filters, 0);
  assert_close (choice.settings.shutter_s, 1 / 1768.0, 0.2 / 1768.0);
  assert_says (&choice, "The longest frame is 1/400 s");
  assert_silent_on (&choice, "without the filter");
  ff_advise_settings (&query, 5, &choice);
  assert_close (choice.settings.shutter_s, 1 / 55.0, 0.2 / 55.0);
  assert_says (&choice, "With this filter at ISO 100 the longest frame would be 1/14 s");
  assert_says (&choice, "without the filter");
  want.max_iso = 400;
  ff_advise_settings (&query, 5, &choice);
  assert_string_equal (ff_scale_label (FF_SCALE_ISO, choice.settings.iso), "400");
  assert_close (choice.settings.shutter_s, 1 / 221.0, 0.2 / 221.0);
  assert_says (&choice, "With this filter at ISO 100 the longest frame would be 1/14 s");
}

static void
test_bracket_keeps_all_frames_on_the_camera (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = { .intent = FF_INTENT_BRACKET, .frames = 5, .step_stops = 2 };
  FfAdviseQuery query = query_of (15, &camera, &want);
  g_autoptr (GArray) choices = ff_advise (&query, 5000, NULL);

  for (guint i = 0; i < choices->len; i++)
    {
      double middle = g_array_index (choices, FfChoice, i).settings.shutter_s;

      assert_true (middle / 16 >= 1 / 8000.0 * (1 - 1e-9) && middle * 16 <= 8 * (1 + 1e-9));
    }
}

static void
test_still_takes_no_filter_that_it_does_not_need (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = { .intent = FF_INTENT_STILL };
  FfAdviseQuery query = query_of (13.1, &camera, &want);
  FfReach reach;
  FfChoice best = best_of (&query, &reach);

  assert_true (reach.ok);
  assert_int_equal (best.n_filters, 0);
  assert_true (isnan (best.settings.shutter_angle_deg));
  assert_true (isnan (ff_advise_need (13.1, &camera, &want, sqrt (8))));
  query.ev100 = 17.6; /* a third beyond 1/8000: now a filter is needed */
  best = best_of (&query, &reach);
  assert_true (reach.ok);
  assert_int_equal (best.n_filters, 1);
}

/* Slower than 1/60 costs half a stop a stop, ISO four tenths: in the dusk ISO rises first. */
static void
test_still_prefers_iso_to_slow_frames (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = { .intent = FF_INTENT_STILL };
  FfAdviseQuery query = query_of (6, &camera, &want);
  FfChoice best = best_of (&query, NULL);

  assert_true (best.settings.shutter_s <= 1 / 50.0 * (1 + 1e-9));
  assert_true (best.settings.iso > camera.iso_low);
}

static void
test_time_lapse_wants_half_its_interval (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = { .intent = FF_INTENT_TIMELAPSE, .interval_s = 2 };
  FfAdviseQuery query = query_of (LEVEL_25 - log2 (50) + 4, &camera, &want);
  FfChoice best = best_of (&query, NULL);

  assert_close (ff_advise_need (query.ev100, &camera, &want, sqrt (8)), 4, 1e-9);
  assert_close (best.filter_stops, 4, 0);
  assert_string_equal (ff_scale_label (FF_SCALE_SHUTTER, best.settings.shutter), "1");
  query.n_filters = 0;
  query.ev100 = LEVEL_25 - log2 (50) + 1;
  best = best_of (&query, NULL);
  assert_string_equal (ff_scale_label (FF_SCALE_SHUTTER, best.settings.shutter), "0.6");
  assert_says (&best, "Shutter at 0.6 s, wanted 1 s");
  query.ev100 = LEVEL_25 - log2 (50) - 6; /* all the way open, and the rest on ISO */
  ff_advise_settings (&query, 0, &best);
  assert_true (best.settings.shutter_s <= 1.5);
}

static void
test_second_base (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 - 3, &camera, &want);
  FfChoice best;

  camera.base_iso[1] = iso_step ("800");
  camera.n_bases = 2;
  best = best_of (&query, NULL);
  assert_string_equal (ff_scale_label (FF_SCALE_ISO, best.settings.iso), "800");
  assert_close (best.parts[FF_PART_ISO], ff_prices_default.second_base, 1e-12);
  assert_says (&best, "On the base ISO 800");
  query.ev100 = LEVEL_25 - 4;
  best = best_of (&query, NULL);
  assert_says (&best, "ISO 1600, base 800");
}

static FfCameraRange
ring_camera (void)
{
  static const char *const labels[] = { "2.8", "4", "5.6", "8", "11" };
  FfCameraRange camera = fixed_camera ();

  camera.n_apertures = 0;
  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    add_aperture (&camera, labels[i]);
  return camera;
}

static void
test_aperture_absorbs_drift_up_to_diffraction (void **state)
{
  FfCameraRange camera = ring_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 + 5, &camera, &want);
  FfChoice choice;

  ff_advise_settings (&query, 4, &choice);
  assert_close (choice.settings.aperture.written, 4, 0);
  assert_silent_on (&choice, "sharp");
  ff_advise_settings (&query, 1, &choice);
  assert_close (choice.settings.aperture.written, 11, 0);
  assert_says (&choice, "Beyond the sharp range: a point spreads over 15.2 µm, pixels are 3 µm");
  /* Two pixels of 3 um are the Airy disk of f/4.47; 2.6 stops beyond it at 1 the half stop. */
  assert_close (choice.parts[FF_PART_APERTURE], 2 * (7 - 2 * log2 (6 / 1.342)), 1e-9);
  camera.sharp_to = sqrt (128);
  ff_advise_settings (&query, 1, &choice);
  assert_close (choice.parts[FF_PART_APERTURE], 0, 0);
  want.hold_aperture = sqrt (32);
  ff_advise_settings (&query, 1, &choice);
  assert_close (choice.settings.aperture.written, 5.6, 0);
}

/* A lens that is soft wide open: half a stop of it costs what half a stop of diffraction does. */
static void
test_soft_wide_open (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25, &camera, &want);
  FfChoice choice;

  add_aperture (&camera, "4");
  add_aperture (&camera, "5.6");
  ff_advise_settings (&query, 0, &choice);
  assert_close (choice.settings.aperture.written, 2.8, 0);
  assert_silent_on (&choice, "wider than the lens is sharp");
  camera.sharp_from = 4;
  want.hold_aperture = camera.apertures[0].exact;
  ff_advise_settings (&query, 0, &choice);
  assert_close (choice.parts[FF_PART_APERTURE], 2, 1e-9);
  assert_says (&choice, "f/2.8 is wider than the lens is sharp, which is from f/4");
}

/* In whole stops from the base there is 100, 200, 400 and nothing between. */
static void
test_iso_in_whole_stops (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);

  camera.iso_whole = TRUE;
  want.angle_from_deg = want.angle_to_deg = 180;
  for (double less = 0; less < 5; less += 0.1)
    {
      FfAdviseQuery query = query_of (LEVEL_25 - less, &camera, &want);
      FfChoice choice;

      ff_advise_settings (&query, 0, &choice);
      assert_int_equal ((choice.settings.iso - iso_step ("100")) % 3, 0);
      assert_true (fabs (choice.settings.error_stops) < 0.55);
    }
}

/* Equal costs: fewer filters, the weaker filter, the lower ISO, the wider aperture. */
static void
test_ties (void **state)
{
  static const FfAdviseFilter filters[] = { { "ND16", 4, 4 }, { "ND8", 3, 3 } };
  FfPrices prices = ff_prices_default;
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 + 3, &camera, &want);
  g_autoptr (GArray) by_filter = NULL;
  g_autoptr (GArray) by_aperture = NULL;

  prices.iso_stop = 0;
  query.prices = &prices;
  query.filters = filters;
  query.n_filters = G_N_ELEMENTS (filters);
  by_filter = ff_advise (&query, 2, NULL);
  assert_close (g_array_index (by_filter, FfChoice, 0).filter_stops, 3, 0);
  assert_close (g_array_index (by_filter, FfChoice, 1).filter_stops, 4, 0);
  assert_close (g_array_index (by_filter, FfChoice, 1).cost, 0, 1e-9);

  camera = ring_camera ();
  camera.thirds_exact = TRUE;
  want = (FfWant) { .intent = FF_INTENT_STILL };
  query.ev100 = 14;
  query.n_filters = 0;
  by_aperture = ff_advise (&query, 3, NULL);
  assert_close (g_array_index (by_aperture, FfChoice, 0).settings.aperture.written, 2.8, 0);
  assert_close (g_array_index (by_aperture, FfChoice, 1).settings.aperture.written, 4, 0);
  assert_int_equal (g_array_index (by_aperture, FfChoice, 1).settings.iso, camera.iso_low);
  assert_int_equal (g_array_index (by_aperture, FfChoice, 2).settings.iso, iso_step ("200"));
  assert_close (g_array_index (by_aperture, FfChoice, 2).cost, 0, 1e-9);
}

static void
test_blur_limit (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = { .intent = FF_INTENT_STILL, .max_blur_px = 0.5, .speed_ms = 5, .height_m = 36.7,
                  .focal_mm = 11 };
  FfAdviseQuery query = query_of (6, &camera, &want);
  g_autoptr (GArray) choices = ff_advise (&query, 5000, NULL);
  FfChoice choice;

  /* 36.7 m x 3 um / 11 mm is 1.0009 cm a pixel; half of it at 5 m/s takes 1/999 s. */
  for (guint i = 0; i < choices->len; i++)
    assert_true (g_array_index (choices, FfChoice, i).settings.shutter_s <= 1 / 999.0);
  assert_says (&g_array_index (choices, FfChoice, 0), "Moves 0.5 pixels in a frame, of 0.5");
  want = video (25);
  want.max_blur_px = 0.5;
  want.speed_ms = 5;
  want.height_m = 36.7;
  want.focal_mm = 11;
  ff_advise_settings (&query, 0, &choice);
  assert_string_equal (ff_scale_label (FF_SCALE_SHUTTER, choice.settings.shutter), "1/60");
  assert_says (&choice, "more than the 0.5 allowed");
}

static void
test_stacks_and_variable_filters (void **state)
{
  static const FfAdviseFilter filters[] = { { "ND8", 3, 3 }, { "2-5 stops variable", 2, 5 },
                                            { "ND64", 6, 6 } };
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 + 4 + 1 / 3.0, &camera, &want);
  FfReach reach;
  FfChoice best;

  query.filters = filters;
  query.n_filters = G_N_ELEMENTS (filters);
  best = best_of (&query, NULL);
  assert_int_equal (best.n_filters, 1);
  assert_int_equal (best.filters[0], 1);
  assert_close (best.set_to[0], 4 + 1 / 3.0, 1e-12);
  assert_says (&best, "Set the variable filter to 4.33 stops");
  query.ev100 = LEVEL_25 + 9;
  best = best_of (&query, &reach);
  assert_false (reach.ok);
  query.max_stack = 2;
  best = best_of (&query, &reach);
  assert_true (reach.ok);
  assert_int_equal (best.n_filters, 2);
  assert_close (best.filter_stops, 9, 1e-9);
  assert_close (best.parts[FF_PART_STACK], 1, 0);
  assert_says (&best, "2 filters stacked");
}

/* Two filters that are alike are two when stacked, and one when not. */
static void
test_twins_are_offered_once (void **state)
{
  static const FfAdviseFilter twins[] = { { "ND16", 4, 4 }, { "ND16", 4, 4 } };
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 + 8, &camera, &want);
  g_autoptr (GArray) choices = NULL;
  guint stacked = 0;

  query.filters = twins;
  query.n_filters = G_N_ELEMENTS (twins);
  query.max_stack = 2;
  choices = ff_advise (&query, 5000, NULL);
  for (guint i = 0; i < choices->len; i++)
    {
      const FfChoice *choice = &g_array_index (choices, FfChoice, i);

      assert_false (choice->n_filters == 1 && choice->filters[0] == 1);
      stacked += choice->n_filters == 2;
    }
  assert_true (stacked > 0);
  assert_int_equal (g_array_index (choices, FfChoice, 0).n_filters, 2);
}

static void
test_good_span_of_a_filter (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 + 4, &camera, &want);
  FfChoice best;

  want.max_iso = 400;
  best = best_of (&query, NULL);
  /* 1/60 at ISO 100 is 0.263 above the level, 1/50 at ISO 400 two stops below it. */
  assert_close (best.good_to_ev100, LEVEL_25 + 4 + log2 (60 / 50.0) + 1 / 3.0, 1e-9);
  assert_close (best.good_from_ev100, LEVEL_25 + 4 - 2 - 1 / 3.0, 1e-9);
}

/* The two cameras' own thirds: with exact ones 1/60 is 1/64 s. */
static void
test_exact_thirds (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = { .intent = FF_INTENT_STILL };
  FfAdviseQuery query = query_of (9, &camera, &want);
  FfChoice choice;

  camera.thirds_exact = TRUE;
  ff_advise_settings (&query, 0, &choice);
  assert_close (choice.settings.shutter_s, 1 / 64.0, 1e-15);
  assert_close (choice.settings.error_stops, 0, 1e-12);
}

static gboolean
helps (const FfAdviseQuery *query, const char *sentence)
{
  FfReach reach;
  g_autoptr (GPtrArray) sentences = NULL;

  best_of (query, &reach);
  sentences = ff_advise_would_help (query, &reach);
  for (guint i = 0; i < sentences->len; i++)
    if (strcmp (g_ptr_array_index (sentences, i), sentence) == 0)
      return TRUE;
  for (guint i = 0; i < sentences->len; i++)
    print_message ("would help: %s\n", (char *) g_ptr_array_index (sentences, i));
  return FALSE;
}

static void
test_too_bright (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 + 8, &camera, &want);
  FfReach reach;
  FfChoice best = best_of (&query, &reach);

  assert_false (reach.ok);
  /* The 6-stop and 1/60 leave 2 stops less 0.263. */
  assert_close (reach.shortfall_stops, 2 - log2 (60 / 50.0), 1e-9);
  assert_close (best.settings.error_stops, reach.shortfall_stops, 1e-9);
  assert_says (&best, "Too bright by 1.7 stops");
  assert_true (helps (&query, "A filter of 8 stops"));
  assert_true (helps (&query, "Stacking 2 filters"));
  assert_true (helps (&query, "A shutter angle down to 56°"));
}

static void
test_too_dark (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 - 3, &camera, &want);
  FfReach reach;

  want.max_iso = 400;
  best_of (&query, &reach);
  assert_false (reach.ok);
  assert_close (reach.shortfall_stops, -1, 1e-9);
  assert_true (helps (&query, "ISO up to 640"));
  assert_true (helps (&query, "A shutter angle up to 300°"));
  want.max_iso = 0;
  want.angle_to_deg = 360;
  query.ev100 = LEVEL_25 - 9;
  assert_true (helps (&query, "1.7 stops more light"));
}

/* Only a 3 and a 6 in the case, and a limit on ISO: the gap is named by what would fill it. */
static void
test_gap_between_filters (void **state)
{
  static const FfAdviseFilter filters[] = { { "ND8", 3, 3 }, { "ND64", 6, 6 } };
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 + 4.5, &camera, &want);
  FfReach reach;

  want.max_iso = 100;
  query.filters = filters;
  query.n_filters = G_N_ELEMENTS (filters);
  best_of (&query, &reach);
  assert_false (reach.ok);
  assert_close (reach.shortfall_stops, 1.5 - log2 (60 / 50.0), 1e-9);
  assert_true (helps (&query, "A filter of 4 stops"));
}

static void
test_held_aperture_may_be_freed (void **state)
{
  FfCameraRange camera = ring_camera ();
  FfWant want = video (25);
  FfAdviseQuery query = query_of (LEVEL_25 + 3, &camera, &want);

  query.n_filters = 0;
  want.hold_aperture = sqrt (8);
  assert_true (helps (&query, "An aperture of f/8"));
}

static void
test_refusals (void **state)
{
  FfCameraRange camera = fixed_camera ();
  FfWant want = video (25);
  GError *error = NULL;

#define REFUSES(change, back, part)                                                                \
  do                                                                                               \
    {                                                                                              \
      change;                                                                                      \
      assert_false (ff_advise_check (&camera, &want, &error));                                     \
      assert_error (error, FF_ERROR_INPUT, part);                                                  \
      back;                                                                                        \
      assert_true (ff_advise_check (&camera, &want, NULL));                                        \
    }                                                                                              \
  while (0)

  assert_true (ff_advise_check (&camera, &want, &error));
  assert_no_error (error);
  REFUSES (camera.iso_high = camera.iso_low - 1, camera.iso_high = iso_step ("6400"),
           "lowest first");
  REFUSES (camera.shutter_fast = camera.shutter_slow + 1,
           camera.shutter_fast = shutter_step ("1/8000"), "fastest first");
  REFUSES (camera.base_iso[0] = iso_step ("50"), camera.base_iso[0] = iso_step ("100"),
           "accepted: 100 to 6400");
  REFUSES (camera.n_bases = 0, camera.n_bases = 1, "base ISOs");
  REFUSES (camera.n_apertures = 0, camera.n_apertures = 1, "apertures");
  REFUSES (want.angle_from_deg = 181, want.angle_from_deg = 144, "does not hold");
  REFUSES (want.angle_to_deg = 400, want.angle_to_deg = 216, "not possible");
  REFUSES (want.angle_deg = NAN, want.angle_deg = 180, "does not hold");
  REFUSES (want.fps = 0, want.fps = 25, "frame rate");
  REFUSES (want.max_iso = 64, want.max_iso = 0, "accepted: 100 or more");
  REFUSES (want.hold_aperture = 4, want.hold_aperture = 0, "no f/4 to hold");
  REFUSES (want.max_blur_px = 1, want.max_blur_px = 0, "pixel pitch");
  REFUSES (want.intent = FF_INTENT_TIMELAPSE, want.interval_s = 2, "interval");
  want = (FfWant) { .intent = FF_INTENT_BRACKET, .frames = 3, .step_stops = 2 };
  REFUSES (want.frames = 1, want.frames = 3, "accepted: 2 to 15");
  REFUSES (want.step_stops = 0, want.step_stops = 2, "above 0");
  REFUSES (want.frames = 15, want.frames = 3, "does not fit the camera's shutters, 1/8000 to 8 s");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_video_takes_the_filter_of_its_need),
    cmocka_unit_test (test_video_stays_within_its_span),
    cmocka_unit_test (test_angle_and_iso_are_remarked),
    cmocka_unit_test (test_span_without_a_shutter),
    cmocka_unit_test (test_slow_motion_behind_the_real_time_filter),
    cmocka_unit_test (test_bracket_behind_a_filter),
    cmocka_unit_test (test_bracket_keeps_all_frames_on_the_camera),
    cmocka_unit_test (test_still_takes_no_filter_that_it_does_not_need),
    cmocka_unit_test (test_still_prefers_iso_to_slow_frames),
    cmocka_unit_test (test_time_lapse_wants_half_its_interval),
    cmocka_unit_test (test_second_base),
    cmocka_unit_test (test_aperture_absorbs_drift_up_to_diffraction),
    cmocka_unit_test (test_soft_wide_open),
    cmocka_unit_test (test_iso_in_whole_stops),
    cmocka_unit_test (test_ties),
    cmocka_unit_test (test_blur_limit),
    cmocka_unit_test (test_stacks_and_variable_filters),
    cmocka_unit_test (test_twins_are_offered_once),
    cmocka_unit_test (test_good_span_of_a_filter),
    cmocka_unit_test (test_exact_thirds),
    cmocka_unit_test (test_too_bright),
    cmocka_unit_test (test_too_dark),
    cmocka_unit_test (test_gap_between_filters),
    cmocka_unit_test (test_held_aperture_may_be_freed),
    cmocka_unit_test (test_refusals),
  };

  return cmocka_run_group_tests_name ("advise", tests, NULL, NULL);
}
