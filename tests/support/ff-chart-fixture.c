/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-chart-fixture.h"

#include <math.h>

#include "ff-daylight.h"
#include "ff-events.h"
#include "ff-sun.h"

#define MINUTE 60
#define HOUR 3600
/* f/2.8 and 1/50 at ISO 100 expose EV 8.6 right: what is above it is the need. */
#define CAMERA_EV100 8.614

static FfChartFixture *
fixture_new (const char *zone, gint64 from, gint64 to)
{
  FfChartFixture *fixture = g_new0 (FfChartFixture, 1);
  FfDayPlan *plan = &fixture->plan;

  fixture->texts = g_string_chunk_new (1024);
  fixture->owned = g_ptr_array_new_with_free_func (g_free);
  fixture->facts.zone = g_time_zone_new_identifier (zone);
  assert_non_null (fixture->facts.zone);
  fixture->facts.from = from;
  fixture->facts.to = to;
  fixture->facts.events = g_ptr_array_new ();
  plan->lines = g_ptr_array_new ();
  plan->missed = g_ptr_array_new ();
  plan->clashes = g_ptr_array_new ();
  plan->charges = g_ptr_array_new ();
  plan->bag_needed = g_ptr_array_new ();
  plan->bag_in_case = g_ptr_array_new ();
  plan->changes = g_ptr_array_new ();
  return fixture;
}

void
ff_chart_fixture_free (FfChartFixture *fixture)
{
  FfDayPlan *plan = &fixture->plan;
  GPtrArray *arrays[] = { plan->missed,     plan->clashes,     plan->charges, plan->bag_needed,
                          plan->bag_in_case, plan->changes, fixture->facts.events };

  for (guint i = 0; i < plan->lines->len; i++)
    {
      FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      g_ptr_array_unref (line->takes);
      g_ptr_array_unref (line->filters);
    }
  g_ptr_array_unref (plan->lines);
  for (guint i = 0; i < G_N_ELEMENTS (arrays); i++)
    g_ptr_array_unref (arrays[i]);
  g_time_zone_unref (fixture->facts.zone);
  g_string_chunk_free (fixture->texts);
  g_ptr_array_unref (fixture->owned);
  g_free (fixture);
}

static char *
keep (FfChartFixture *fixture, const char *text)
{
  return g_string_chunk_insert (fixture->texts, text);
}

static gpointer
own (FfChartFixture *fixture, gpointer data)
{
  g_ptr_array_add (fixture->owned, data);
  return data;
}

static double *
samples_new (FfChartFixture *fixture)
{
  double *samples = own (fixture, g_new (double, fixture->facts.n_samples));

  for (guint i = 0; i < fixture->facts.n_samples; i++)
    samples[i] = NAN;
  return samples;
}

static gint64
instant_of (GArray *events, FfEvent event)
{
  const FfSkyEvent *found = ff_sky_events_find (events, event);

  return found != NULL ? (gint64) found->instant : 0;
}

static void
add_sky (FfChartFixture *fixture, const FfSite *site, FfSky sky, gboolean with_camera)
{
  FfChartFacts *facts = &fixture->facts;
  g_autoptr (GArray) events = ff_sky_events (facts->from, facts->to, site, NULL);
  FfSunTrack track;

  facts->step_s = 2 * MINUTE;
  facts->n_samples = (guint) ((facts->to - facts->from) / facts->step_s) + 1;
  facts->sun_altitude_deg = samples_new (fixture);
  facts->ev100 = samples_new (fixture);
  facts->low_ev100 = samples_new (fixture);
  facts->high_ev100 = samples_new (fixture);
  facts->need_stops = samples_new (fixture);
  ff_sun_track_init (&track, (double) facts->from, (double) facts->to, site);
  for (guint i = 0; i < facts->n_samples; i++)
    {
      FfDaylightQuery query = { .sky = sky, .from_sun_deg = 180 };
      FfDaylight light;
      FfDirection sun;

      ff_sun_track_direction (&track, (double) facts->from + i * (double) facts->step_s, &sun);
      query.sun_altitude_deg = sun.altitude_deg;
      ff_daylight (&query, &light);
      facts->sun_altitude_deg[i] = sun.altitude_deg;
      facts->ev100[i] = light.ev100;
      facts->low_ev100[i] = light.low_ev100;
      facts->high_ev100[i] = light.high_ev100;
      facts->need_stops[i] = with_camera ? light.ev100 - CAMERA_EV100 : NAN;
    }
  facts->sunrise = instant_of (events, FF_EVENT_SUNRISE);
  facts->sunset = instant_of (events, FF_EVENT_SUNSET);
  facts->civil_dawn = instant_of (events, FF_EVENT_CIVIL_DAWN);
  facts->civil_dusk = instant_of (events, FF_EVENT_CIVIL_DUSK);
}

static void
add_event (FfChartFixture *fixture, gint64 at, const char *text)
{
  FfChartEvent *event = own (fixture, g_new0 (FfChartEvent, 1));

  event->at = at;
  event->text = keep (fixture, text);
  g_ptr_array_add (fixture->facts.events, event);
}

static FfPlanLine *
add_line (FfChartFixture *fixture,
          gint64 off_by,
          gint64 down,
          gint64 land_by,
          const char *battery,
          double stops)
{
  FfPlanLine *line = own (fixture, g_new0 (FfPlanLine, 1));

  line->line = (int) fixture->plan.lines->len + 1;
  line->off_by = off_by;
  line->down = down;
  line->land_by = land_by;
  line->battery = keep (fixture, battery);
  line->filter_stops = stops;
  line->filters = g_ptr_array_new ();
  line->engraving = keep (fixture, "");
  line->trim = line->why = keep (fixture, "");
  if (stops > 0)
    {
      g_autofree char *engraving = g_strdup_printf ("ND%d", (int) lround (exp2 (stops)));

      line->engraving = keep (fixture, engraving);
      g_ptr_array_add (line->filters, keep (fixture, engraving));
    }
  line->takes = g_ptr_array_new ();
  g_ptr_array_add (fixture->plan.lines, line);
  return line;
}

static void
add_take (FfChartFixture *fixture,
          FfPlanLine *line,
          const char *shot,
          const char *title,
          double error)
{
  FfPlanTake *take = own (fixture, g_new0 (FfPlanTake, 1));

  take->shot = keep (fixture, shot);
  take->title = keep (fixture, title);
  take->from = line->off_by;
  take->to = line->down;
  take->end.error_stops = error;
  g_ptr_array_add (line->takes, take);
}

static void
add_charge (FfChartFixture *fixture,
            const char *battery,
            gint64 cool_from,
            gint64 charge_from,
            gint64 ready_at,
            const char *attended_by)
{
  FfPlanCharge *charge = own (fixture, g_new0 (FfPlanCharge, 1));

  charge->battery = keep (fixture, battery);
  charge->cool_from = cool_from;
  charge->charge_from = charge_from;
  charge->ready_at = ready_at;
  charge->attended_by = keep (fixture, attended_by);
  g_ptr_array_add (fixture->plan.charges, charge);
}

static void
add_miss (FfChartFixture *fixture, const char *shot, const char *title, const char *reason)
{
  FfPlanMiss *miss = own (fixture, g_new0 (FfPlanMiss, 1));

  miss->shot = keep (fixture, shot);
  miss->title = keep (fixture, title);
  miss->reason = keep (fixture, reason);
  g_ptr_array_add (fixture->plan.missed, miss);
}

/* 18 September 2027, 00:00 in Britain. */
static const gint64 demo_midnight = 1821222000;

static gint64
demo_at (int hour, int minute)
{
  return demo_midnight + hour * HOUR + minute * MINUTE;
}

static const FfSite demo_site = { 57.2, -4, 12 };

FfChartFixture *
ff_chart_fixture_demo (void)
{
  static const struct {
    int off, down, land_by; /* minutes of the day */
    const char *battery, *shots[3];
    double stops;
  } lines[] = {
    { 990, 1000, 1008, "1", { "A" }, 5 },       { 1028, 1049, 1049, "2", { "B", "C" }, 5 },
    { 1061, 1082, 1082, "3", { "D", "E" }, 5 }, { 1113, 1124, 1131, "4", { "F" }, 4 },
    { 1138, 1149, 1156, "5", { "G" }, 2 },      { 1166, 1180, 1184, "1", { "H" }, 4 },
  };
  FfChartFixture *fixture = fixture_new ("Europe/London", demo_at (16, 20), demo_at (20, 0));

  add_sky (fixture, &demo_site, FF_SKY_CLEAR, TRUE);
  fixture->facts.now = demo_at (17, 32);
  add_event (fixture, demo_at (17, 14), "ferry passes");
  add_event (fixture, demo_at (18, 5), "high water");
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      FfPlanLine *line = add_line (fixture, demo_at (0, lines[i].off), demo_at (0, lines[i].down),
                                   demo_at (0, lines[i].land_by), lines[i].battery,
                                   lines[i].stops);

      for (guint s = 0; s < 3 && lines[i].shots[s] != NULL; s++)
        add_take (fixture, line, lines[i].shots[s], "", 0.1);
    }
  add_charge (fixture, "1", demo_at (16, 40), demo_at (17, 0), demo_at (18, 0),
              "Marit Ostrander");
  add_charge (fixture, "2", demo_at (17, 29), demo_at (18, 0), demo_at (19, 0),
              "Marit Ostrander");
  return fixture;
}

FfChartFixture *
ff_chart_fixture_empty (void)
{
  FfChartFixture *fixture
      = fixture_new ("Europe/London", demo_at (16, 20), demo_at (20, 0));

  add_sky (fixture, &demo_site, FF_SKY_CLEAR, FALSE);
  return fixture;
}

static const char *const words[] = { "A",
                                     "B7",
                                     "W",
                                     "harbour wall",
                                     "מעבורת עוברת",
                                     "ذروة المد",
                                     "Überführung mit sehr langem Namen über die Brücke",
                                     "gatefold & <b>",
                                     "ÅÇ",
                                     "q" };

static const char *
word (FfTestRandom *random)
{
  return words[ff_test_random_int (random, 0, G_N_ELEMENTS (words) - 1)];
}

static void
add_random_line (FfChartFixture *fixture,
                 FfTestRandom *random,
                 gint64 off_by,
                 int minutes,
                 int spare)
{
  gint64 down = off_by + minutes * MINUTE;
  double stops = ff_test_random_int (random, 0, 10);
  g_autofree char *battery = g_strdup_printf ("%d", ff_test_random_int (random, 1, 12));
  int n = ff_test_random_int (random, 1, 5);
  FfPlanLine *line;

  if (ff_test_random_int (random, 0, 3) == 0)
    stops += ff_test_random (random, -0.5, 0.5);
  line = add_line (fixture, off_by, down,
                   down + ff_test_random_int (random, 0, spare) * MINUTE,
                   ff_test_random_int (random, 0, 4) == 0 ? word (random) : battery,
                   MAX (stops, 0));
  for (int i = 0; i < n; i++)
    add_take (fixture, line, word (random), word (random),
              ff_test_random_int (random, 0, 9) == 0 ? ff_test_random (random, -3, 3) : 0.2);
}

static void
add_random_rest (FfChartFixture *fixture, FfTestRandom *random)
{
  gint64 from = fixture->facts.from, span = fixture->facts.to - from;

  for (int i = ff_test_random_int (random, 0, 5); i > 0; i--)
    {
      gint64 cool = from + (gint64) ff_test_random (random, 0, 0.7 * (double) span);

      add_charge (fixture, word (random), cool, cool + 20 * MINUTE, cool + 80 * MINUTE,
                  word (random));
    }
  for (int i = ff_test_random_int (random, 0, 6); i > 0; i--)
    add_event (fixture, from + (gint64) ff_test_random (random, 0, (double) span), word (random));
  for (int i = ff_test_random_int (random, 0, 3); i > 0; i--)
    add_miss (fixture, word (random), word (random), "Its window can't be met.");
  if (ff_test_random_int (random, 0, 1) == 1)
    fixture->facts.now = from + (gint64) ff_test_random (random, 0, (double) span);
}

FfChartFixture *
ff_chart_fixture_random (FfTestRandom *random, guint n_lines)
{
  int hours = ff_test_random_int (random, 1, 24);
  gint64 from = demo_midnight + (gint64) ff_test_random_int (random, 0, 8760) * HOUR;
  FfSite site = { ff_test_random (random, -75, 75), ff_test_random (random, -180, 180), 0 };
  FfChartFixture *fixture = fixture_new ("Europe/London", from, from + hours * HOUR);
  gint64 slot = n_lines > 0 ? hours * HOUR / (gint64) n_lines / MINUTE * MINUTE : 0;

  add_sky (fixture, &site, (FfSky) ff_test_random_int (random, 0, 4),
           ff_test_random_int (random, 0, 4) > 0);
  for (guint i = 0; i < n_lines; i++)
    {
      int most = (int) (slot / MINUTE), minutes = ff_test_random_int (random, 1, most);

      add_random_line (fixture, random, from + i * slot, minutes, MIN (most - minutes, 4));
    }
  add_random_rest (fixture, random);
  return fixture;
}
