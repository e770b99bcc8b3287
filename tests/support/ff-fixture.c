/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-fixture.h"

#include <math.h>
#include <string.h>

#define AT(hour, minute) (FIRST_MIDNIGHT + ((hour) * 60 + (minute)) * 60)
#define FIRST_MIDNIGHT G_GINT64_CONSTANT (1821222000) /* 2027-09-18 00:00 in London */

static char *
text_of (FfFixture *fixture, const char *text)
{
  return g_string_chunk_insert (fixture->texts, text);
}

static gpointer
own (FfFixture *fixture, gsize size)
{
  gpointer made = g_malloc0 (size);

  g_ptr_array_add (fixture->owned, made);
  return made;
}

/* Every text empty, every array there and empty. */
FfFixture *
ff_fixture_empty (void)
{
  FfFixture *fixture = g_new0 (FfFixture, 1);
  FfSheetFacts *facts = &fixture->facts;
  FfDayPlan *plan = &fixture->plan;
  char **texts[]
      = { &facts->job,          &facts->client,       &facts->place,
          &facts->version,      &facts->date,         &facts->printed,
          &facts->abort_word,   &facts->position,     &facts->emergency_location,
          &facts->takeoff_spot, &facts->second_spot,  &facts->emergency_phone,
          &facts->hours,        &facts->sun_times,    &facts->sun_check,
          &facts->wind,         &facts->weather,      &facts->return_height,
          &facts->aircraft,     &facts->camera,       &facts->light_source,
          &facts->cards,        &plan->job,           &plan->version,
          &facts->area,         &facts->observer_post, &facts->second_post,
          &facts->distance_limit, &facts->drop_first, &facts->defects, &facts->limits_stand };
  GPtrArray **arrays[]
      = { &facts->crew,   &facts->limits, &facts->hazards,   &facts->events,
          &facts->shots,  &facts->missing, &facts->amendments, &plan->lines,     &plan->missed,
          &plan->clashes, &plan->charges, &plan->bag_needed, &plan->bag_in_case, &plan->changes };

  fixture->texts = g_string_chunk_new (4096);
  fixture->owned = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    *texts[i] = text_of (fixture, "");
  for (guint i = 0; i < G_N_ELEMENTS (arrays); i++)
    *arrays[i] = g_ptr_array_new ();
  facts->zone = g_time_zone_new_identifier ("Europe/London");
  return fixture;
}

void
ff_fixture_free (FfFixture *fixture)
{
  FfSheetFacts *facts = &fixture->facts;
  FfDayPlan *plan = &fixture->plan;
  GPtrArray *arrays[]
      = { facts->crew,   facts->limits, facts->hazards,   facts->events,
          facts->shots,  facts->missing, facts->amendments, plan->lines,     plan->missed,
          plan->clashes, plan->charges, plan->bag_needed, plan->bag_in_case, plan->changes };

  for (guint i = 0; i < plan->lines->len; i++)
    {
      FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint t = 0; t < line->takes->len; t++)
        g_ptr_array_unref (((FfPlanTake *) g_ptr_array_index (line->takes, t))->remarks);
      g_ptr_array_unref (line->takes);
      g_ptr_array_unref (line->filters);
    }
  for (guint i = 0; i < G_N_ELEMENTS (arrays); i++)
    g_ptr_array_unref (arrays[i]);
  g_time_zone_unref (facts->zone);
  g_ptr_array_unref (fixture->owned);
  g_string_chunk_free (fixture->texts);
  g_free (fixture);
}

static FfPlanLine *
add_line (FfFixture *fixture,
          gint64 off_by,
          gint64 down,
          gint64 land_by,
          const char *battery,
          double stops,
          const char *engraving,
          const char *trim)
{
  FfPlanLine *line = own (fixture, sizeof *line);

  line->line = (int) fixture->plan.lines->len + 1;
  line->off_by = off_by;
  line->down = down;
  line->land_by = land_by;
  line->battery = text_of (fixture, battery);
  line->filters = g_ptr_array_new ();
  line->takes = g_ptr_array_new ();
  line->engraving = text_of (fixture, engraving);
  if (*engraving != '\0')
    g_ptr_array_add (line->filters, line->engraving);
  line->filter_stops = stops;
  line->trim = text_of (fixture, trim);
  line->why = text_of (fixture, "");
  g_ptr_array_add (fixture->plan.lines, line);
  return line;
}

static FfPlanSettings
settings (FfFixture *fixture, const char *shutter, double seconds, double fps, int iso)
{
  return (FfPlanSettings) { .aperture = 2.8,
                            .shutter = text_of (fixture, shutter),
                            .shutter_s = seconds,
                            .shutter_angle_deg = 360 * seconds * fps,
                            .iso = iso };
}

static FfPlanTake *
add_take (FfFixture *fixture,
          const char *shot,
          const char *title,
          gint64 from,
          gint64 to,
          double need_start,
          double need_end,
          FfIntent intent,
          double fps)
{
  FfPlanLine *line = g_ptr_array_index (fixture->plan.lines, fixture->plan.lines->len - 1);
  FfPlanTake *take = own (fixture, sizeof *take);

  take->shot = text_of (fixture, shot);
  take->title = text_of (fixture, title);
  take->from = from;
  take->to = to;
  take->need_start_stops = need_start;
  take->need_end_stops = need_end;
  take->intent = intent;
  take->fps = fps;
  take->remarks = g_ptr_array_new ();
  g_ptr_array_add (line->takes, take);
  return take;
}

static void
set (FfFixture *fixture,
     FfPlanTake *take,
     const char *start,
     double start_s,
     int start_iso,
     const char *end,
     double end_s,
     int end_iso)
{
  take->start = settings (fixture, start, start_s, take->fps, start_iso);
  take->end = settings (fixture, end, end_s, take->fps, end_iso);
}

static void
remark (FfFixture *fixture, FfPlanTake *take, const char *text)
{
  g_ptr_array_add (take->remarks, text_of (fixture, text));
}

static void
add_shot (FfFixture *fixture,
          const char *shot,
          const char *view,
          const char *sun,
          const char *caution,
          const char *note)
{
  FfSheetShot *made = own (fixture, sizeof *made);

  made->shot = text_of (fixture, shot);
  made->view = text_of (fixture, view);
  made->sun = text_of (fixture, sun);
  made->caution = text_of (fixture, caution);
  made->note = text_of (fixture, note);
  g_ptr_array_add (fixture->facts.shots, made);
}

static void
add_sorties (FfFixture *fixture)
{
  FfPlanTake *take;

  add_line (fixture, AT (16, 30), AT (16, 40), AT (16, 48), "1", 5, "ND32",
            "hold the shutter at 1/50");
  take = add_take (fixture, "A", "harbour from above", AT (16, 32), AT (16, 38), 4.9, 4.8,
                   FF_INTENT_VIDEO, 25);
  set (fixture, take, "1/50", 0.02, 100, "1/50", 0.02, 125);

  add_line (fixture, AT (17, 8), AT (17, 24), AT (17, 26), "2", 5, "ND32",
            "as it darkens raise ISO to 400, then land");
  take = add_take (fixture, "B", "ferry tracking", AT (17, 10), AT (17, 17), 5.7, 5.6,
                   FF_INTENT_VIDEO, 25);
  set (fixture, take, "1/80", 0.0125, 100, "1/80", 0.0125, 100);
  remark (fixture, take, "The shutter is at 112° instead of 180°.");
  take = add_take (fixture, "C", "mill wheel, slow", AT (17, 17), AT (17, 22), 3.6, 3.5,
                   FF_INTENT_SLOW, 100);
  set (fixture, take, "1/200", 0.005, 250, "1/200", 0.005, 250);
  remark (fixture, take, "ISO 250 instead of 100.");

  add_line (fixture, AT (17, 41), AT (17, 57), AT (17, 59), "3", 5, "ND32",
            "as it darkens open the shutter to 1/40, then land");
  take = add_take (fixture, "D", "headland push-in", AT (17, 43), AT (17, 49), 5.3, 5.2,
                   FF_INTENT_VIDEO, 25);
  set (fixture, take, "1/60", 1.0 / 60, 100, "1/60", 1.0 / 60, 100);
  take = add_take (fixture, "E", "stills and panorama", AT (17, 49), AT (17, 55), NAN, NAN,
                   FF_INTENT_BRACKET, NAN);
  set (fixture, take, "1/60", 1.0 / 60, 100, "1/60", 1.0 / 60, 100);
  remark (fixture, take, "The longest frame is about 1/14 s with this filter, 1/442 s without.");

  add_line (fixture, AT (18, 33), AT (18, 44), AT (18, 51), "4", 4, "ND16",
            "as it darkens raise ISO to 400, then land");
  take = add_take (fixture, "F", "low-sun reveal", AT (18, 35), AT (18, 42), 4.0, 3.7,
                   FF_INTENT_VIDEO, 25);
  set (fixture, take, "1/50", 0.02, 100, "1/50", 0.02, 125);

  add_line (fixture, AT (18, 57), AT (19, 8), AT (19, 15), "5", 2, "ND4",
            "as it darkens raise ISO to 400, then land");
  take = add_take (fixture, "G", "last-sun line", AT (18, 59), AT (19, 6), 2.4, 1.6,
                   FF_INTENT_VIDEO, 25);
  set (fixture, take, "1/60", 1.0 / 60, 100, "1/50", 0.02, 125);

  add_line (fixture, AT (19, 26), AT (19, 40), AT (19, 44), "1", 4, "ND16",
            "as it darkens open the shutter to 1 s, then raise ISO to 400");
  take = add_take (fixture, "H", "dusk moving time-lapse", AT (19, 28), AT (19, 38), 5.0, 4.1,
                   FF_INTENT_TIMELAPSE, NAN);
  set (fixture, take, "0.8", 0.8, 100, "1", 1, 200);
}

static void
add_shots (FfFixture *fixture)
{
  add_shot (fixture, "A", "straight down, height 60 m", "sun 239°, 24° high", "", "");
  add_shot (fixture, "B", "oblique, camera 60°, height 30 m", "sun 248°, 19° high, behind",
            "", "skipper agreed; abeam, never over the vessel");
  add_shot (fixture, "C", "oblique, camera 75°, height 8 m", "sun 249°, 18° high, behind", "", "");
  add_shot (fixture, "D", "oblique, camera 70°, height 40 m", "sun 254°, 15° high, behind", "", "");
  add_shot (fixture, "E", "oblique, all round, height 50 m", "sun 256°, 14° high, all round",
            "the panorama looks into the sun: flare", "");
  add_shot (fixture, "F", "oblique, camera 80°, height 10 to 45 m", "sun 266°, 7° high, behind",
            "", "");
  add_shot (fixture, "G", "oblique, camera 95°, height 25 m", "sun 270°, 4° high, behind", "", "");
  add_shot (fixture, "H", "oblique, camera 90°, height 50 m", "sun down, twilight 276°", "", "");
}

static void
add_member (FfFixture *fixture, const char *name, const char *initials, FfRole role)
{
  FfSheetMember *member = own (fixture, sizeof *member);

  *member = (FfSheetMember) { text_of (fixture, name), text_of (fixture, initials),
                              text_of (fixture, "07700 900 123"),
                              text_of (fixture, ""), role };
  g_ptr_array_add (fixture->facts.crew, member);
}

static void
add_limit (FfFixture *fixture, const char *text, const char *bound)
{
  FfSheetLimit *limit = own (fixture, sizeof *limit);

  *limit = (FfSheetLimit) { text_of (fixture, text), text_of (fixture, bound),
                            text_of (fixture, "own sheet, example, set your own"),
                            text_of (fixture, "") };
  g_ptr_array_add (fixture->facts.limits, limit);
}

static void
add_hazard (FfFixture *fixture, const char *what, const char *measure)
{
  FfSheetHazard *hazard = own (fixture, sizeof *hazard);

  *hazard = (FfSheetHazard) { text_of (fixture, what), text_of (fixture, measure) };
  g_ptr_array_add (fixture->facts.hazards, hazard);
}

static void
add_people_and_place (FfFixture *fixture)
{
  add_member (fixture, "Marit Ostrander", "MO", FF_ROLE_LEAD);
  add_member (fixture, "Jonah Velk", "JV", FF_ROLE_PILOT);
  add_member (fixture, "Ife Calloway", "IC", FF_ROLE_CAMERA);
  add_member (fixture, "Pell Rasmussen", "PR", FF_ROLE_OBSERVER);
  add_limit (fixture, "mean wind at flying height", "at most 8 m/s");
  add_limit (fixture, "gust at flying height", "at most 9 m/s");
  add_limit (fixture, "rain", "prohibited");
  add_limit (fixture, "height", "at most 60 m");
  add_limit (fixture, "distance", "at most 130 m");
  add_limit (fixture, "uninvolved people", "at least 50 m");
  add_limit (fixture, "visibility", "at least 5 km");
  add_limit (fixture, "battery at take-off", "at least 15 °C");
  add_limit (fixture, "reserve at landing", "at least 30 %");
  add_limit (fixture, "light on", "from sunset");
  add_limit (fixture, "all down", "by 19:50");
  add_limit (fixture, "observer", "required");
  add_hazard (fixture, "power line along the lane", "keep clear, never retrieve from it");
  add_hazard (fixture, "harbour wall edge and water", "nobody within 2 m of the edge alone");
  add_hazard (fixture, "walkers from the north gate", "observer calls; hold or land");
  add_hazard (fixture, "gulls", "land when they gather");
  g_ptr_array_add (fixture->facts.events, text_of (fixture, "17:14 ferry passes"));
  g_ptr_array_add (fixture->facts.events, text_of (fixture, "18:05 high water"));
  g_ptr_array_add (fixture->facts.events, text_of (fixture, "20:00 north gate locked"));
  g_ptr_array_add (fixture->facts.missing, text_of (fixture, "Emergency telephone: fill it in."));
  g_ptr_array_add (fixture->facts.missing,
                   text_of (fixture, "Emergency location, to read out: fill it in."));
  g_ptr_array_add (fixture->plan.clashes,
                   text_of (fixture, "B and C share a battery and are two stops apart: B runs at "
                                     "1/80 (112°) and C at ISO 250."));
}

FfFixture *
ff_fixture_demo (void)
{
  FfFixture *fixture = ff_fixture_empty ();
  FfSheetFacts *facts = &fixture->facts;
  const struct {
    char **to;
    const char *text;
  } texts[] = {
    { &facts->job, "Skarrowick tidal mill" },
    { &facts->client, "Skarrowick Harbour Trust" },
    { &facts->place, "Skarrowick Head" },
    { &facts->version, "A" },
    { &facts->date, "Saturday 18 September 2027" },
    { &facts->printed, "printed 17:32 Thu" },
    { &facts->abort_word, "Kestrel" },
    { &facts->position, "57.2000° N, 4.0000° W" },
    { &facts->takeoff_spot, "slipway car park" },
    { &facts->second_spot, "bowling green" },
    { &facts->observer_post, "the sea wall" },
    { &facts->area, "A over the basin; D out along 060°" },
    { &facts->distance_limit, "at most 130 m" },
    { &facts->limits_stand, "□ 12 limits not assessed." },
    { &facts->hours, "on site 15:00, first off 16:30, all down 19:50, off site 20:30" },
    { &facts->sun_times, "sunrise 06:53, sunset 19:27" },
    { &facts->sun_check, "at 16:30 the sun stands at 239°, 24° high" },
    { &facts->wind, "240° 4 m/s gusting 6, at 10 m" },
    { &facts->weather, "clear, 15 °C, visibility 20 km" },
    { &facts->return_height, "automatic return at 50 m" },
    { &facts->aircraft, "Aircraft 1" },
    { &facts->camera, "Camera 1" },
    { &facts->light_source, "clear-sky estimate, not yet checked by a reading" },
    { &facts->cards, "C1–C4, 128 GB each: 170 min at 100 Mbit/s" },
    { &fixture->plan.job, "Skarrowick tidal mill" },
    { &fixture->plan.version, "A" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    *texts[i].to = text_of (fixture, texts[i].text);
  facts->example = TRUE;
  add_sorties (fixture);
  add_shots (fixture);
  add_people_and_place (fixture);
  return fixture;
}

FfFixture *
ff_fixture_hostile (const char *text, guint n_shots)
{
  FfFixture *fixture = ff_fixture_demo ();
  FfSheetFacts *facts = &fixture->facts;
  char **texts[] = { &facts->job,          &facts->client,      &facts->place,
                     &facts->date,         &facts->abort_word,  &facts->emergency_location,
                     &facts->takeoff_spot, &facts->second_spot, &facts->emergency_phone,
                     &facts->hours,        &facts->wind,        &facts->weather,
                     &facts->cards,        &facts->aircraft,    &facts->light_source };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    *texts[i] = text_of (fixture, text);
  for (guint i = 0; i < n_shots; i++)
    {
      g_autofree char *label = g_strdup_printf ("S%u", i + 1);
      gint64 from = AT (8, 0) + i * 600;
      FfPlanTake *take;

      if (i % 4 == 0)
        add_line (fixture, from - 120, from + 2400, from + 2520, text, 3.1, text, text);
      take = add_take (fixture, label, text, from, from + 540, 3.2, 3.0, FF_INTENT_VIDEO, 25);
      set (fixture, take, "1/50", 0.02, 100, "1/40", 0.025, 160);
      remark (fixture, take, text);
      add_shot (fixture, label, text, text, text, text);
    }
  add_hazard (fixture, text, text);
  add_limit (fixture, text, text);
  return fixture;
}

static void
add_random_take (FfFixture *fixture, FfTestRandom *random, gint64 from)
{
  static const char *const shutters[] = { "1/8000", "1/640", "1/50", "1/14", "0.8", "8" };
  g_autofree char *label = g_strdup_printf ("R%d", ff_test_random_int (random, 1, 999));
  g_autofree char *title
      = g_strdup_printf ("view %d of the mill", ff_test_random_int (random, 1, 99));
  const gboolean moving = ff_test_random_int (random, 0, 3) > 0;
  const gint64 to = from + 60 * ff_test_random_int (random, 1, 9);
  const double need_start = moving ? ff_test_random (random, -2, 12) : NAN;
  const double need_end = moving ? ff_test_random (random, -2, 12) : NAN;
  FfPlanTake *take
      = add_take (fixture, label, title, from, to, need_start, need_end,
                  moving ? FF_INTENT_VIDEO : FF_INTENT_BRACKET,
                  moving ? ff_test_random_int (random, 24, 120) : NAN);
  const char *start = shutters[ff_test_random_int (random, 0, 5)];
  const char *end = shutters[ff_test_random_int (random, 0, 5)];

  set (fixture, take, start, 0.02, ff_test_random_int (random, 50, 12800), end, 0.01,
       ff_test_random_int (random, 50, 12800));
  if (ff_test_random_int (random, 0, 2) == 0)
    remark (fixture, take, "The shutter is at 112° instead of 180°.");
  add_shot (fixture, label, "oblique", "sun 252°, 17° high, behind", "", "");
}

FfFixture *
ff_fixture_random (FfTestRandom *random)
{
  FfFixture *fixture = ff_fixture_demo ();
  gint64 at = AT (6, 0);
  int n_lines = ff_test_random_int (random, 0, 8);

  for (int i = 0; i < n_lines; i++)
    {
      gint64 land_by = at + 60 * ff_test_random_int (random, 6, 40);
      g_autofree char *battery = g_strdup_printf ("%d", ff_test_random_int (random, 1, 40));
      double stops = ff_test_random_int (random, 0, 100) / 10.0;
      g_autofree char *engraving = g_strdup_printf ("ND%d", ff_test_random_int (random, 2, 1000));

      add_line (fixture, at, land_by - 60, land_by, battery, stops,
                stops > 0 ? engraving : "", "as it darkens raise ISO, then land");
      for (int t = ff_test_random_int (random, 1, 4); t > 0; t--)
        add_random_take (fixture, random, at += 120);
      at = land_by + 60 * ff_test_random_int (random, 4, 30);
    }
  return fixture;
}
