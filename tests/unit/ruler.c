/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The stop ruler's moves: what eats adds up, a third is a third, who pays when a piece is held, how
 * long it holds; and the day studied around it. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-day-private.h"
#include "ff-demo.h"
#include "ff-exposure.h"
#include "ff-hold.h"
#include "ff-light-words.h"
#include "ff-records.h"
#include "ff-scale.h"

static const FfAdviseFilter filters[] = {
  { "ND2", 1, 1 }, { "ND4", 2, 2 }, { "ND8", 3, 3 }, { "ND16", 4, 4 }, { "ND32", 5, 5 },
};

static const FfWant video = { .intent = FF_INTENT_VIDEO, .fps = 25, .angle_deg = 180,
                              .angle_from_deg = 144, .angle_to_deg = 216 };
static FfCameraRange camera;

static FfAdviseQuery
query (double ev100)
{
  return (FfAdviseQuery) { .ev100 = ev100, .camera = &camera, .want = &video, .filters = filters,
                           .n_filters = G_N_ELEMENTS (filters), .max_stack = 1 };
}

static double
sum (const FfRuler *ruler, const FfAdviseQuery *asked)
{
  double all = 0;

  for (int i = 0; i < FF_N_PIECES; i++)
    all += ff_ruler_eats (ruler, asked, (FfRulerPiece) i);
  return all;
}

static const char *
shutter (const FfRuler *ruler)
{
  return ff_scale_label (FF_SCALE_SHUTTER, ruler->shutter);
}

static const char *
iso (const FfRuler *ruler)
{
  return ff_scale_label (FF_SCALE_ISO, ruler->iso);
}

static void
test_begins_with_the_best_choice (void **state)
{
  FfAdviseQuery asked = query (13.94);
  g_autoptr (GArray) choices = ff_advise (&asked, 1, NULL);
  const FfChoice *best = &g_array_index (choices, FfChoice, 0);
  FfSettings settings;
  FfRuler ruler;

  ff_ruler_init (&ruler, &asked);
  ff_ruler_settings (&ruler, &asked, &settings);
  assert_close (settings.error_stops, best->settings.error_stops, 1e-9);
  assert_close (sum (&ruler, &asked) + ff_ruler_gap (&ruler, &asked), 13.94, 1e-9);
  assert_string_equal (shutter (&ruler), "1/60");
  assert_close (settings.shutter_angle_deg, 150, 1e-9);
  assert_close (ff_ruler_filter_stops (&ruler), 5, 0);
}

static void
test_a_third_is_a_third (void **state)
{
  FfAdviseQuery asked = query (14);
  FfRulerChange pay;
  FfRuler ruler;
  double before;

  ff_ruler_init (&ruler, &asked);
  before = ff_ruler_gap (&ruler, &asked);
  ruler.chosen = FF_PIECE_ISO;
  assert_true (ff_ruler_move (&ruler, &asked, 1, &pay));
  assert_false (pay.any);
  assert_string_equal (iso (&ruler), "125");
  assert_close (ff_ruler_gap (&ruler, &asked) - before, log2 (1.25), 1e-9);
  ruler.chosen = FF_PIECE_SHUTTER;
  assert_true (ff_ruler_move (&ruler, &asked, 1, &pay));
  assert_string_equal (shutter (&ruler), "1/80");
  assert_true (ff_ruler_move (&ruler, &asked, -2, &pay));
  assert_string_equal (shutter (&ruler), "1/50");
  ruler.chosen = FF_PIECE_LENS;
  assert_false (ff_ruler_move (&ruler, &asked, 1, &pay)); /* fixed aperture */
}

static void
test_the_filter_moves_by_what_is_at_hand (void **state)
{
  FfAdviseQuery asked = query (14);
  FfRulerChange pay;
  FfRuler ruler;

  ff_ruler_init (&ruler, &asked);
  ruler.chosen = FF_PIECE_FILTER;
  assert_false (ff_ruler_move (&ruler, &asked, 1, &pay));
  for (int stops = 4; stops >= 0; stops--)
    {
      assert_true (ff_ruler_move (&ruler, &asked, -1, &pay));
      assert_close (ff_ruler_filter_stops (&ruler), stops, 1e-9);
    }
  assert_int_equal (ruler.filter, -1);
  assert_false (ff_ruler_move (&ruler, &asked, -1, &pay));
  assert_true (ff_ruler_fit (&ruler, &asked, 3, &pay));
  assert_close (ff_ruler_filter_stops (&ruler), 3, 1e-9);
  assert_false (ff_ruler_fit (&ruler, &asked, 8, &pay));
  assert_close (ff_ruler_filter_stops (&ruler), 3, 1e-9);
  assert_true (ff_ruler_fit (&ruler, &asked, 0, &pay));
  assert_int_equal (ruler.filter, -1);
}

static void
test_a_variable_filter_moves_by_thirds (void **state)
{
  const FfAdviseFilter variable[] = { { "2-5 stops variable", 2, 5 } };
  FfAdviseQuery asked = query (12);
  FfRulerChange pay;
  FfRuler ruler = { .chosen = FF_PIECE_FILTER, .filter = -1 };

  asked.filters = variable;
  asked.n_filters = 1;
  ff_ruler_clamp (&ruler, &asked);
  assert_true (ff_ruler_move (&ruler, &asked, 1, &pay));
  assert_close (ff_ruler_filter_stops (&ruler), 2, 1e-9);
  assert_true (ff_ruler_move (&ruler, &asked, 1, &pay));
  assert_close (ff_ruler_filter_stops (&ruler), 2 + 1.0 / 3, 1e-9);
  assert_true (ff_ruler_fit (&ruler, &asked, 4, &pay));
  assert_close (ff_ruler_filter_stops (&ruler), 4, 1e-6);
}

static void
test_a_fixed_piece_stays_and_another_pays (void **state)
{
  FfAdviseQuery asked = query (13.94);
  FfRulerChange pay;
  FfRuler ruler;

  ff_ruler_init (&ruler, &asked);
  assert_true (ff_ruler_move (&ruler, &asked, -1, &pay)); /* 1/50: 0.3 too bright */
  assert_false (pay.any);
  ff_ruler_fix (&ruler, &asked, FF_PIECE_SHUTTER, &pay);
  /* Base ISO, one aperture: only the filter could pay, and a stop more leaves more gap. */
  assert_false (pay.any);
  assert_string_equal (shutter (&ruler), "1/50");
  assert_false (ff_ruler_move (&ruler, &asked, 1, &pay));
  assert_true (ff_ruler_fit (&ruler, &asked, 4, &pay));
  assert_false (pay.any); /* ISO can't go below its base */
  assert_true (ff_ruler_fit (&ruler, &asked, 5, &pay));
  asked.ev100 = 12.7; /* the light goes: ISO pays */
  ff_ruler_follow (&ruler, &asked, &pay);
  assert_true (pay.any);
  assert_int_equal (pay.piece, FF_PIECE_ISO);
  assert_string_equal (shutter (&ruler), "1/50");
  assert_true (fabs (ff_ruler_gap (&ruler, &asked)) <= 1.0 / 6 + 0.02);
  assert_close (pay.gap, ff_ruler_gap (&ruler, &asked), 1e-12);
}

static void
test_the_cheapest_pays_and_the_filter_last (void **state)
{
  FfAdviseQuery asked = query (13.94);
  FfRulerChange changes[FF_N_PIECES];
  FfRulerChange pay;
  FfRuler ruler;
  guint n;

  ff_ruler_init (&ruler, &asked);
  ruler.shutter = (guint) ff_scale_find (FF_SCALE_SHUTTER, "1/50");
  ff_ruler_fix (&ruler, &asked, FF_PIECE_ISO, &pay);
  assert_true (pay.any);
  assert_int_equal (pay.piece, FF_PIECE_SHUTTER);
  assert_string_equal (shutter (&ruler), "1/60");
  ruler = (FfRuler) { .shutter = (guint) ff_scale_find (FF_SCALE_SHUTTER, "1/50"),
                      .iso = camera.iso_low, .filter = 3, .set_to = 4 };
  n = ff_ruler_closers (&ruler, &asked, changes);
  assert_int_equal (n, 1);
  assert_int_equal (changes[0].piece, FF_PIECE_FILTER);
  assert_close (changes[0].stops, 1, 1e-9);
}

/* Whoever pays, the gap never grows, what is fixed stays, and settings are the camera's. */
static void
test_paying_never_widens_the_gap (void **state)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (60309);
  int paid = 0;

  for (int i = 0; i < 3000; i++)
    {
      FfAdviseQuery asked = query (g_rand_double_range (rand, 0, 17));
      FfRuler before = { .shutter = (guint) g_rand_int_range (rand, (int) camera.shutter_fast,
                                                              (int) camera.shutter_slow + 1),
                         .iso = (guint) g_rand_int_range (rand, (int) camera.iso_low,
                                                          (int) camera.iso_high + 1),
                         .filter = g_rand_int_range (rand, -1, (int) G_N_ELEMENTS (filters)) };
      FfRuler after;
      FfRulerChange pay;

      before.set_to = before.filter < 0 ? 0 : filters[before.filter].stops;
      for (int piece = 0; piece < FF_N_PIECES; piece++)
        before.fixed[piece] = g_rand_boolean (rand);
      after = before;
      ff_ruler_follow (&after, &asked, &pay);
      paid += pay.any;
      assert_true (fabs (ff_ruler_gap (&after, &asked)) <= fabs (ff_ruler_gap (&before, &asked)));
      assert_true (!before.fixed[FF_PIECE_SHUTTER] || after.shutter == before.shutter);
      assert_true (!before.fixed[FF_PIECE_ISO] || after.iso == before.iso);
      assert_true (!before.fixed[FF_PIECE_FILTER] || after.filter == before.filter);
      assert_true (after.iso >= camera.iso_low && after.iso <= camera.iso_high);
      assert_close (after.set_to, after.filter < 0 ? 0 : filters[after.filter].stops, 0);
    }
  assert_true (paid > 1000);
}

static void
test_spans_of_light (void **state)
{
  FfAdviseQuery asked = query (13.94);
  double low, high, trimmed_low, trimmed_high;
  FfRuler ruler;

  ff_ruler_init (&ruler, &asked);
  ff_ruler_span (&ruler, &asked, &low, &high);
  assert_close ((low + high) / 2, 13.94 - ff_ruler_gap (&ruler, &asked), 1e-9);
  assert_close (high - low, 2.0 / 3, 1e-9);
  ff_ruler_trimmed_span (&ruler, &asked, &trimmed_low, &trimmed_high);
  assert_true (trimmed_low < low - 5 && trimmed_high >= high);
  ruler.fixed[FF_PIECE_SHUTTER] = ruler.fixed[FF_PIECE_ISO] = TRUE;
  ff_ruler_trimmed_span (&ruler, &asked, &trimmed_low, &trimmed_high);
  assert_close (trimmed_low, low, 0);
  assert_close (trimmed_high, high, 0);
}

static void
test_holding_over_samples (void **state)
{
  const double light[] = { 10, 11, 12, 11, 9, 11 };
  g_autoptr (GArray) runs = ff_hold_within (light, G_N_ELEMENTS (light), 10.5, 13);
  const FfHold *first = &g_array_index (runs, FfHold, 0), *last = first + 1;

  assert_int_equal (runs->len, 2);
  assert_int_equal (first->from, 1);
  assert_int_equal (first->to, 3);
  assert_int_equal (last->from, 5);
  assert_close (ff_hold_until (light, 6, 2, 10.5, 13), 3.25, 1e-9);
  assert_true (isnan (ff_hold_until (light, 6, 5, 10.5, 13)));
  assert_close (ff_hold_until (light, 6, 0, 9, 11.5), 1.5, 1e-9);
}

/* The demo day */

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

static FfLightStudy *
study_of (const char *label)
{
  const FfLightStudyQuery asked = { .day = day, .shot = shot (label), .sky = FF_SKY_CLEAR };
  g_autoptr (GError) error = NULL;
  FfLightStudy *study = ff_light_study_new (&asked, &error);

  assert_no_error (error);
  return study;
}

static gint64
instant (int hour, int minute)
{
  gint64 at;

  assert_true (ff_day_instant (day, hour * 60 + minute, "test", &at, NULL));
  return at;
}

static void
test_the_study_agrees_with_the_worked_day (void **state)
{
  g_autoptr (FfLightStudy) study = study_of ("D");
  FfExplainQuery light;

  ff_light_study_light (study, instant (17, 40), &light);
  assert_close (light.ev100 - ff_exposure_ev100 (exp2 (1.5), 0.02, 100), 5.3, 0.5);
  assert_int_equal (study->filters->len, 6); /* the clear one does not count */
  assert_close (g_array_index (study->filters, FfAdviseFilter, 2).stops, 3.1, 1e-9);
  for (guint i = 0; i < study->n_samples; i++)
    assert_true (isfinite (study->need_stops[i]));
}

/* At each moment that is within reach just one filter is the one to fit. */
static void
test_hours_share_the_day (void **state)
{
  g_autoptr (FfLightStudy) study = study_of ("D");
  guint best = 0, within = 0;

  assert_int_equal (study->hours->len, 7);
  for (guint i = 0; i < study->hours->len; i++)
    {
      const FfStudyHours *hours = g_ptr_array_index (study->hours, i);

      for (guint j = 0; j < hours->best->len; j++)
        {
          const FfStudySpan *span = &g_array_index (hours->best, FfStudySpan, j);

          best += (guint) ((span->to - span->from) / study->step_s) + 1;
        }
      assert_true (hours->words[0] != '\0');
    }
  for (guint i = 0; i < study->n_samples; i++)
    {
      FfAdviseQuery asked = ff_light_study_advise (study, study->ev100[i]);
      FfReach reach;
      g_autoptr (GArray) choices = ff_advise (&asked, 1, &reach);

      assert_int_equal (choices->len, 1);
      within += reach.ok;
    }
  assert_int_equal (best, within);
}

static void
test_until_when_in_words (void **state)
{
  g_autoptr (FfLightStudy) study = study_of ("D");
  gint64 at = instant (17, 40), until;
  FfExplainQuery light;
  FfAdviseQuery asked;
  FfRuler ruler;
  double low, high;
  g_autofree char *words = NULL;

  ff_light_study_light (study, at, &light);
  asked = ff_light_study_advise (study, light.ev100);
  ff_ruler_init (&ruler, &asked);
  ff_ruler_span (&ruler, &asked, &low, &high);
  until = ff_light_study_until (study, at, low, high);
  assert_true (until > at && until < instant (18, 30));
  ff_light_study_light (study, until, &light);
  assert_true (light.ev100 >= low - 0.01);
  ff_light_study_light (study, until + 120, &light);
  assert_true (light.ev100 < low);
  words = ff_light_words_until (study, &ruler, at);
  assert_true (g_str_has_prefix (words, "Good until "));
  assert_non_null (strstr (words, "With shutter and ISO following"));
  ruler.fixed[FF_PIECE_SHUTTER] = TRUE;
  g_free (words);
  words = ff_light_words_until (study, &ruler, at);
  assert_non_null (strstr (words, "With ISO following"));
  ruler.fixed[FF_PIECE_ISO] = TRUE;
  g_free (words);
  words = ff_light_words_until (study, &ruler, at);
  assert_null (strstr (words, "following"));
}

static void
test_words_of_the_gap (void **state)
{
  g_autoptr (FfLightStudy) study = study_of ("D");
  FfAdviseQuery asked = ff_light_study_advise (study, 13.94);
  g_autofree char *bright = ff_light_words_gap (0.3);
  g_autofree char *dark = ff_light_words_gap (-1);
  g_autofree char *right = ff_light_words_gap (0.02);
  g_autofree char *closers = NULL;
  g_autofree char *piece = NULL;
  FfRuler ruler;

  assert_string_equal (bright, "0.3 stops too bright");
  assert_string_equal (dark, "1 stop too dark");
  assert_string_equal (right, "Exposed right");
  ff_ruler_init (&ruler, &asked);
  ruler.shutter = (guint) ff_scale_find (FF_SCALE_SHUTTER, "1/50");
  closers = ff_light_words_closers (study, &ruler, 13.94);
  assert_string_equal (closers, "Shutter 1/60 (150°) closes it. 6 stops would want f/2.8, 1/50, "
                                "ISO 160.");
  ruler.fixed[FF_PIECE_SHUTTER] = TRUE;
  piece = ff_light_words_piece (study, &ruler, FF_PIECE_SHUTTER);
  assert_string_equal (piece, "Shutter 1/50, 180° · 5.6 stops, fixed");
}

static void
test_a_condition_has_no_hours (void **state)
{
  const FfLightStudyQuery asked = { .day = day, .shot = shot ("D"),
                                    .condition = ff_condition_find ("night-sports", NULL) };
  g_autoptr (FfLightStudy) study = NULL;
  FfExplainQuery light;

  assert_non_null (asked.condition);
  study = ff_light_study_new (&asked, NULL);
  ff_light_study_light (study, instant (12, 0), &light);
  assert_close (light.ev100, 9, 0);
  assert_int_equal (study->hours->len, 0);
  assert_true (ff_light_study_until (study, instant (12, 0), 0, 9.1) == 0);
}

static void
test_a_day_anywhere (void **state)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  const FfDate midsummer = { 2027, 6, 21 };
  g_autoptr (FfDay) far = ff_day_anywhere (70, 25, midsummer, zone, day->items);
  g_autoptr (FfShot) some = ff_shot_new ("");
  const FfLightStudyQuery asked = { .day = far, .shot = some };
  g_autoptr (GError) error = NULL;
  g_autoptr (FfLightStudy) study = ff_light_study_new (&asked, &error);

  assert_no_error (error);
  /* The midnight sun: the whole day is studied. */
  assert_true (study->to - study->from == 86400);
  for (guint i = 0; i < study->n_samples; i++)
    assert_true (study->sun_altitude_deg[i] > 0);
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);
  camera = (FfCameraRange) { .apertures = { { 2.8, exp2 (1.5) } }, .n_apertures = 1,
                             .iso_low = (guint) ff_scale_find (FF_SCALE_ISO, "100"),
                             .iso_high = (guint) ff_scale_find (FF_SCALE_ISO, "6400"),
                             .base_iso = { (guint) ff_scale_find (FF_SCALE_ISO, "100") },
                             .n_bases = 1,
                             .shutter_fast = (guint) ff_scale_find (FF_SCALE_SHUTTER, "1/8000"),
                             .shutter_slow = (guint) ff_scale_find (FF_SCALE_SHUTTER, "8"),
                             .pitch_um = 3 };
  assert_true (ff_demo_fill (store, NULL));
  day = ff_day_load (store, "Skarrowick", NULL);
  assert_non_null (day);
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
    cmocka_unit_test (test_begins_with_the_best_choice),
    cmocka_unit_test (test_a_third_is_a_third),
    cmocka_unit_test (test_the_filter_moves_by_what_is_at_hand),
    cmocka_unit_test (test_a_variable_filter_moves_by_thirds),
    cmocka_unit_test (test_a_fixed_piece_stays_and_another_pays),
    cmocka_unit_test (test_the_cheapest_pays_and_the_filter_last),
    cmocka_unit_test (test_paying_never_widens_the_gap),
    cmocka_unit_test (test_spans_of_light),
    cmocka_unit_test (test_holding_over_samples),
    cmocka_unit_test (test_the_study_agrees_with_the_worked_day),
    cmocka_unit_test (test_hours_share_the_day),
    cmocka_unit_test (test_until_when_in_words),
    cmocka_unit_test (test_words_of_the_gap),
    cmocka_unit_test (test_a_condition_has_no_hours),
    cmocka_unit_test (test_a_day_anywhere),
  };

  return cmocka_run_group_tests_name ("ruler", tests, set_up, tear_down);
}
