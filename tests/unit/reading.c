/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Readings of the demo day: what was measured becomes light, and the light moves the plan. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-chart-facts.h"
#include "ff-day-reading.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-sheet-facts.h"

#define AT_1642 1821282120 /* 18 September 2027, 16:42 at Skarrowick */
#define AT_1705 (AT_1642 + 23 * 60)

static char *folder;
static FfStore *store;

static FfDay *
load (void)
{
  g_autoptr (GError) error = NULL;
  FfDay *day = ff_day_load (store, "Skarrowick", &error);

  assert_no_error (error);
  return day;
}

static void
append (const FfReadingEntry *entry)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfReading) reading = ff_day_reading_new (day, entry, &error);

  assert_no_error (error);
  assert_non_null (reading);
  ff_reading_append (store, reading, &error);
  assert_no_error (error);
}

/* The model's EV at 16:42, oblique with the sun behind, found by asking for its offset. */
static double
model_at (gint64 at)
{
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfReading) probe = ff_reading_new (ff_day_job (day)->id);

  probe->at = at;
  probe->ev100 = 0;
  return -ff_day_reading_offset (day, probe);
}

static FfReadingEntry
metered (double offset, FfCloud cloud)
{
  FfReadingEntry entry = FF_READING_ENTRY_INIT;

  entry.method = FF_METHOD_EV100;
  entry.at = AT_1642;
  entry.ev100 = model_at (AT_1642) + offset;
  entry.cloud = cloud;
  return entry;
}

/* Shown 1/3200, wanted 1/50, no filter: 6.0 stops. The light is that of f/2.8 (2^1.5), 1/3200 s
 * and ISO 100: 3 + log2 3200. */
static void
test_auto_shutter (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfReading) bare = NULL, filtered = NULL;
  FfReadingEntry entry = FF_READING_ENTRY_INIT;

  entry.method = FF_METHOD_SHOWN;
  entry.at = AT_1642;
  entry.shown_s = 1.0 / 3200;
  entry.target_s = 1.0 / 50;
  bare = ff_day_reading_new (day, &entry, &error);
  assert_no_error (error);
  assert_close (ff_day_reading_need (bare), 6.0, 1e-12);
  assert_close (bare->ev100, 3 + log2 (3200), 1e-12);
  assert_close (bare->aperture, 2.8, 0);
  assert_close (bare->iso, 100, 0);

  /* The same light through three stops: the shutter shown is three stops longer. */
  entry.shown_s *= 8;
  entry.nd_stops = 3;
  filtered = ff_day_reading_new (day, &entry, &error);
  assert_no_error (error);
  assert_close (filtered->ev100, bare->ev100, 1e-12);
  assert_close (ff_day_reading_need (filtered), 6.0, 1e-12);
}

/* ISO 2720 constants: 2.5 lx on the flat at EV 0. */
static void
test_lux_and_ev (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfReading) lux = NULL, ev = NULL;
  FfReadingEntry entry = FF_READING_ENTRY_INIT;

  entry.at = AT_1642;
  entry.method = FF_METHOD_LUX;
  entry.lux = 2.5 * 4096;
  lux = ff_day_reading_new (day, &entry, &error);
  assert_no_error (error);
  assert_close (lux->ev100, 12, 1e-12);
  assert_int_equal (lux->view, FF_VIEW_DOWN);
  entry.method = FF_METHOD_EV100;
  entry.ev100 = 11;
  entry.nd_stops = 2;
  ev = ff_day_reading_new (day, &entry, &error);
  assert_no_error (error);
  assert_close (ev->ev100, 13, 1e-12);
  assert_true (isnan (ff_day_reading_need (ev)));
}

static void
refused (const FfReadingEntry *entry, const char *part)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load ();

  assert_null (ff_day_reading_new (day, entry, &error));
  assert_error (error, FF_ERROR_INPUT, part);
}

static void
test_what_is_refused (void **state)
{
  FfReadingEntry entry = FF_READING_ENTRY_INIT;

  entry.at = AT_1642;
  entry.method = FF_METHOD_SHOWN;
  refused (&entry, "shutter shown");
  entry.method = FF_METHOD_LUX;
  refused (&entry, "lux");
  entry.method = FF_METHOD_FRAME;
  refused (&entry, "settings are missing");
  entry.method = FF_METHOD_EV100;
  entry.ev100 = 13;
  entry.at = AT_1642 - 86400;
  refused (&entry, "2027-09-18");
}

/* ---- The plan ---- */

static double
stops_of (const FfDayPlan *plan, const char *shot)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        if (strcmp (((FfPlanTake *) g_ptr_array_index (line->takes, j))->shot, shot) == 0)
          return line->filter_stops;
    }
  return NAN;
}

static FfDayPlan *
plan (const FfDayChange *change)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load ();
  FfDayPlan *made = ff_day_plan (day, change, &error);

  assert_no_error (error);
  return made;
}

static void
test_a_reading_moves_what_comes_after (void **state)
{
  g_autoptr (FfDayPlan) before = plan (NULL), after = NULL;
  FfReadingEntry entry = metered (-1, FF_CLOUD_STILL);

  assert_close (before->learned_offset_stops, 0, 0);
  assert_non_null (strstr (before->light, "not yet checked by a reading"));
  entry.ev100 += model_at (AT_1705) - model_at (AT_1642);
  entry.at = AT_1705;
  append (&entry);
  after = plan (NULL);
  assert_close (after->learned_offset_stops, -1, 1e-6);
  assert_non_null (strstr (after->light, "17:05, −1 stop"));
  /* A's window closes before the reading. */
  assert_close (stops_of (after, "A"), stops_of (before, "A"), 1e-9);
  assert_true (stops_of (after, "D") < stops_of (before, "D"));
  assert_true (stops_of (after, "G") < stops_of (before, "G"));
  {
    const FfPlanLine *first = g_ptr_array_index (after->lines, 0);
    const FfPlanLine *second = g_ptr_array_index (after->lines, 1);

    assert_null (strstr (first->why, "17:05"));
    assert_non_null (strstr (second->why, "With the reading of 17:05: −1 stop."));
  }
}

/* With cloud on the move it is gone half an hour later, before D at 17:40. */
static void
test_a_reading_under_moving_cloud_fades (void **state)
{
  g_autoptr (FfDayPlan) before = plan (NULL), after = NULL;
  FfReadingEntry entry = metered (-2, FF_CLOUD_MOVES);

  append (&entry);
  after = plan (NULL);
  assert_non_null (strstr (after->light, "fades by 17:12"));
  assert_close (stops_of (after, "D"), stops_of (before, "D"), 1e-9);
  assert_close (stops_of (after, "G"), stops_of (before, "G"), 1e-9);
}

/* For a sky that nobody has read it fades likewise. */
static void
test_another_sky_was_not_read (void **state)
{
  FfDayChange overcast = { .other_sky = TRUE, .sky = FF_SKY_OVERCAST };
  g_autoptr (FfDayPlan) before = plan (&overcast), after = NULL;
  FfReadingEntry entry = metered (1.5, FF_CLOUD_STILL);

  append (&entry);
  after = plan (&overcast);
  assert_non_null (strstr (after->light, "another sky (clear)"));
  assert_close (stops_of (after, "G"), stops_of (before, "G"), 1e-9);
}

static void
test_one_set_aside_counts_no_more (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDayPlan) before = plan (NULL), after = NULL;
  g_autoptr (GPtrArray) readings = NULL;
  g_autoptr (FfDay) day = load ();
  FfReadingEntry entry = metered (-1, FF_CLOUD_STILL);

  append (&entry);
  readings = ff_readings_load (store, ff_day_job (day)->id, &error);
  assert_int_equal (readings->len, 1);
  assert_true (ff_reading_drop (store, ((FfReading *) g_ptr_array_index (readings, 0))->id,
                                "wrong filter", NULL, AT_1642, &error));
  after = plan (NULL);
  assert_close (after->learned_offset_stops, 0, 0);
  assert_close (after->cost, before->cost, 1e-9);
}

/* ---- The chart ---- */

static void
test_the_chart_shows_why (void **state)
{
  FfReadingEntry entry = metered (-1, FF_CLOUD_STILL);
  g_autoptr (FfDay) before = load (), after = NULL;
  g_autoptr (FfChartFacts) was = ff_chart_facts (before, 60, 0), is = NULL;
  const FfChartEvent *mark = NULL;

  append (&entry);
  after = load ();
  is = ff_chart_facts (after, 60, 0);
  for (guint i = 0; i < is->events->len; i++)
    if (((FfChartEvent *) g_ptr_array_index (is->events, i))->is_reading)
      mark = g_ptr_array_index (is->events, i);
  g_assert (mark != NULL); /* one that never comes back, for the compiler's sake */
  assert_int_equal (mark->at, AT_1642);
  assert_string_equal (mark->text, "reading −1 stop");
  for (guint i = 0; i < is->n_samples; i++)
    {
      gint64 at = is->from + (gint64) i * is->step_s;

      assert_close (is->ev100[i] - was->ev100[i], at < AT_1642 ? 0 : -1, 1e-6);
      assert_true (is->high_ev100[i] - is->low_ev100[i]
                   <= was->high_ev100[i] - was->low_ev100[i] + 1e-9);
    }
}

/* Paper says what its light rests on. */
static void
test_the_camera_sheet_says_it (void **state)
{
  FfReadingEntry entry = metered (-1, FF_CLOUD_STILL);
  g_autoptr (FfDay) before = load (), after = NULL;
  g_autoptr (FfDayPlan) was = plan (NULL), is = NULL;
  g_autoptr (FfSheetFacts) unread = ff_sheet_facts (before, was, 0), read = NULL;

  assert_non_null (strstr (unread->light_source, "not yet checked by a reading"));
  append (&entry);
  after = load ();
  is = plan (NULL);
  read = ff_sheet_facts (after, is, 0);
  assert_non_null (strstr (read->light_source, "Reading 16:42, −1 stop: holds"));
}

/* ---- Words ---- */

static char *
caution_of (double offset, double nd_stops)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfReading) reading = NULL;
  FfReadingEntry entry = metered (offset - nd_stops, FF_CLOUD_STILL);

  entry.nd_stops = nd_stops;
  reading = ff_day_reading_new (day, &entry, &error);
  assert_no_error (error);
  return ff_day_reading_caution (day, reading);
}

static void
test_what_looks_wrong_is_said (void **state)
{
  g_autofree char *fine = caution_of (1.9, 0);
  g_autofree char *forgotten = caution_of (-5, 0);
  g_autofree char *odd = caution_of (3, 0);
  g_autofree char *told = caution_of (-5, 2);

  assert_string_equal (fine, "");
  assert_non_null (strstr (forgotten, "as much as ND32 takes"));
  assert_non_null (strstr (odd, "take it again"));
  assert_null (strstr (told, "ND32"));
}

static void
test_signed_stops (void **state)
{
  static const struct {
    double stops;
    const char *text;
  } cases[] = { { 0.4, "+0.4 stop" }, { -1, "−1 stop" },  { 1.3, "+1.3 stops" },
                { 0.01, "0 stop" },   { -0.04, "0 stop" }, { -5, "−5 stops" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = ff_signed_stops (cases[i].stops);

      assert_string_equal (text, cases[i].text);
    }
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
    CASE (test_auto_shutter),
    CASE (test_lux_and_ev),
    CASE (test_what_is_refused),
    CASE (test_a_reading_moves_what_comes_after),
    CASE (test_a_reading_under_moving_cloud_fades),
    CASE (test_another_sky_was_not_read),
    CASE (test_one_set_aside_counts_no_more),
    CASE (test_the_chart_shows_why),
    CASE (test_the_camera_sheet_says_it),
    CASE (test_what_looks_wrong_is_said),
    cmocka_unit_test (test_signed_stops),
  };

  return cmocka_run_group_tests_name ("reading", tests, NULL, NULL);
}
