/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-calendar.h"
#include "ff-call-times.h"
#include "ff-civil.h"
#include "ff-command.h"
#include "ff-day-records.h"
#include "ff-error.h"
#include "ff-file.h"
#include "ff-job-file.h"
#include "ff-number.h"
#include "ff-paper.h"
#include "ff-standing.h"

static GOptionEntry entries[] = {
  G_OPTION_ENTRY_NULL,
};

/* ---- One whole job, as text ---- */

#define WIDTH 80
#define FACT_INDENT 18
#define SHOT_INDENT 6

/* The text after `start`, broken between words; what follows is indented as far. */
static void
print_broken (FfConsole *console, const char *start, int indent, const char *text)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \n\t", -1);
  g_autoptr (GString) line = g_string_new (start);
  glong used = indent;
  gboolean fresh = TRUE;

  for (guint i = 0; words[i] != NULL; i++)
    {
      glong length = g_utf8_strlen (words[i], -1);

      if (!fresh && used + 1 + length > WIDTH)
        {
          ff_console_line (console, "%s", line->str);
          g_string_printf (line, "%*s", indent, "");
          used = indent;
          fresh = TRUE;
        }
      g_string_append_printf (line, "%s%s", fresh ? "" : " ", words[i]);
      used += length + (fresh ? 0 : 1);
      fresh = FALSE;
    }
  ff_console_line (console, "%s", line->str);
}

static void
print_fact (FfConsole *console, const char *name, const char *text)
{
  int blanks = FACT_INDENT - 2 - (int) g_utf8_strlen (name, -1);
  g_autofree char *start = g_strdup_printf ("  %s%*s", name, MAX (blanks, 1), "");

  if (text != NULL && *text != '\0')
    print_broken (console, start, FACT_INDENT, text);
}

static void
print_hours (FfConsole *console, const FfJob *job)
{
  const int clocks[] = { job->on_site, job->first_off, job->all_down, job->off_site };
  const char *names[] = { _ ("on site"), _ ("first off"), _ ("all down"), _ ("off site") };
  g_autoptr (GString) line = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (clocks); i++)
    {
      g_autofree char *clock = clocks[i] != FF_NO_CLOCK ? ff_clock_format (clocks[i]) : NULL;

      if (clock != NULL)
        g_string_append_printf (line, "%s%s %s", line->len > 0 ? ", " : "", names[i], clock);
    }
  print_fact (console, _ ("hours"), line->str);
}

static void
append_measure (GString *line, const char *before, double value, const char *after)
{
  g_autofree char *number = ff_number_format (value, 1);

  if (!isnan (value))
    g_string_append_printf (line, "%s%s%s", before, number, after);
}

static void
print_weather (FfConsole *console, const FfJob *job)
{
  g_autoptr (GString) line = g_string_new (ff_name_text (&ff_names_sky, (int) job->sky));

  append_measure (line, _ (", wind "), job->wind_from_deg, "°");
  append_measure (line, " ", job->wind_ms, " m/s");
  append_measure (line, _ (" gusting "), job->gust_ms, " m/s");
  append_measure (line, _ (" at "), job->wind_height_m, " m");
  print_fact (console, _ ("weather"), line->str);
  g_string_truncate (line, 0);
  append_measure (line, "", job->temperature_c, " °C");
  append_measure (line, _ (", visibility "), job->visibility_m / 1000, " km");
  print_fact (console, "", line->str);
}

static void
print_place (FfConsole *console, const FfPlace *place)
{
  g_autofree char *latitude = NULL, *longitude = NULL, *position = NULL;

  if (place == NULL)
    return;
  latitude = ff_number_format (place->latitude_deg, 5);
  longitude = ff_number_format (place->longitude_deg, 5);
  position = g_strdup_printf ("%s, %s, %g m, %s", latitude, longitude, place->elevation_m,
                              place->zone);
  print_fact (console, _ ("place"), place->name);
  print_fact (console, "", position);
  print_fact (console, _ ("take-off"), place->takeoff_spot);
  print_fact (console, _ ("second spot"), place->second_spot);
  print_fact (console, _ ("observer"), place->observer_post);
  print_fact (console, _ ("second post"), place->second_post);
  for (guint i = 0; i < place->hazards->len; i++)
    {
      const FfHazard *hazard = g_ptr_array_index (place->hazards, i);
      g_autofree char *text = g_strdup_printf ("%s%s%s", hazard->what,
                                               *hazard->measure != '\0' ? ": " : "",
                                               hazard->measure);

      print_fact (console, i == 0 ? _ ("hazards") : "", text);
    }
  print_fact (console, _ ("emergency"),
              *place->emergency_location != '\0' ? place->emergency_location
                                                 : _ ("BLANK: fill in before anybody flies"));
  print_fact (console, "", place->emergency_phone);
}

static void
print_crew (FfConsole *console, const FfJobFile *file)
{
  for (guint i = 0; i < file->roles->len; i++)
    {
      const FfJobRole *role = g_ptr_array_index (file->roles, i);

      for (guint j = 0; j < file->crew->len; j++)
        {
          const FfMember *member = g_ptr_array_index (file->crew, j);
          g_autofree char *text = g_strdup_printf ("%s (%s)%s%s", member->name, member->initials,
                                                   *member->phone != '\0' ? ", " : "",
                                                   member->phone);

          if (strcmp (member->id, role->member_id) == 0)
            print_fact (console, ff_name_text (&ff_names_role, (int) role->role), text);
        }
    }
}

static void
print_events (FfConsole *console, const FfJob *job)
{
  for (guint i = 0; i < job->events->len; i++)
    {
      const FfDayEvent *event = g_ptr_array_index (job->events, i);
      g_autofree char *clock = ff_clock_format (event->clock);
      g_autofree char *text = g_strdup_printf ("%s %s", clock, event->text);

      print_fact (console, i == 0 ? _ ("events") : "", text);
    }
}

/* "25 frames, video" with what the intent adds. */
static char *
intent_text (const FfShot *shot)
{
  GString *text = g_string_new (ff_name_text (&ff_names_intent, (int) shot->intent));

  if (shot->intent == FF_INTENT_VIDEO || shot->intent == FF_INTENT_SLOW)
    {
      append_measure (text, ", ", shot->fps, _ (" frames"));
      append_measure (text, ", ", shot->angle_deg, "°");
      append_measure (text, " (", shot->angle_from_deg, "°");
      append_measure (text, _ (" to "), shot->angle_to_deg, "°)");
    }
  else if (shot->intent == FF_INTENT_BRACKET)
    {
      g_string_append_printf (text, _ (", %d frames"), shot->frames);
      append_measure (text, _ (", "), shot->step_stops, _ (" stops apart"));
    }
  else if (shot->intent == FF_INTENT_TIMELAPSE)
    append_measure (text, _ (", every "), shot->interval_s, " s");
  if (shot->max_iso > 0)
    append_measure (text, _ (", ISO up to "), shot->max_iso, "");
  if (shot->auto_iso)
    g_string_append (text, _ (", auto ISO"));
  if (shot->hold_aperture > 0)
    append_measure (text, ", f/", shot->hold_aperture, "");
  return g_string_free (text, FALSE);
}

static char *
geometry_text (const FfShot *shot)
{
  GString *text = g_string_new (ff_name_text (&ff_names_view, (int) shot->view));

  append_measure (text, _ (", camera "), shot->bearing_deg, "°");
  append_measure (text, ", ", shot->height_from_m, "");
  if (shot->height_to_m > shot->height_from_m || shot->height_to_m < shot->height_from_m)
    append_measure (text, _ (" to "), shot->height_to_m, "");
  g_string_append (text, " m");
  if (*shot->track != '\0')
    g_string_append_printf (text, ", %s", shot->track);
  if (shot->speed_ms > 0)
    append_measure (text, ", ", shot->speed_ms, " m/s");
  return g_string_free (text, FALSE);
}

static char *
wishes_text (const FfShot *shot)
{
  GString *text = g_string_new (NULL);

  if (shot->must_fly)
    g_string_append (text, _ (", must fly"));
  if (shot->fixed_time)
    g_string_append (text, _ (", fixed time"));
  if (shot->most_wanted)
    g_string_append (text, _ (", most wanted"));
  if (shot->weight > 0)
    append_measure (text, _ (", weight "), shot->weight, "");
  if (fabs (shot->subject_offset_stops) > 0)
    append_measure (text, _ (", subject offset "), shot->subject_offset_stops, _ (" stops"));
  if (*shot->match_group != '\0')
    g_string_append_printf (text, _ (", matches %s"), shot->match_group);
  return g_string_free (text, FALSE);
}

static void
print_shot (FfConsole *console, const FfShot *shot)
{
  g_autofree char *from = ff_clock_format (shot->window_from);
  g_autofree char *to = ff_clock_format (shot->window_to);
  g_autofree char *wishes = wishes_text (shot);
  g_autofree char *geometry = geometry_text (shot);
  g_autofree char *intent = intent_text (shot);

  ff_console_line (console, _ ("  %-3s %s–%s  %d min  %s%s"), shot->label, from, to, shot->minutes,
                   shot->title, wishes);
  print_broken (console, "      ", SHOT_INDENT, geometry);
  print_broken (console, "      ", SHOT_INDENT, intent);
  if (*shot->note != '\0')
    print_broken (console, "      ", SHOT_INDENT, shot->note);
}

static void
print_gear (FfConsole *console, GPtrArray *items)
{
  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      ff_console_line (console, _ ("  %-14s %-14s %s%s%s%s%s"), item->label,
                       ff_name_text (&ff_names_kind, (int) item->kind), item->title,
                       *item->case_label != '\0' ? _ (", case ") : "", item->case_label,
                       item->state != FF_STATE_SERVICEABLE ? ", " : "",
                       item->state != FF_STATE_SERVICEABLE
                           ? ff_name_text (&ff_names_state, (int) item->state)
                           : "");
    }
}

static void
print_job (FfConsole *console, const FfJobFile *file, const char *letter)
{
  const FfJob *job = file->job;

  if (job->example)
    ff_console_line (console, _ ("EXAMPLE, not a place to fly"));
  ff_console_line (console, _ ("%s · version %s · %s"), job->title, letter,
                   ff_name_text (&ff_names_job_state, (int) job->state));
  print_fact (console, _ ("date"), job->date);
  print_fact (console, _ ("client"), job->client);
  print_fact (console, _ ("purpose"), job->purpose);
  print_hours (console, job);
  print_weather (console, job);
  print_fact (console, _ ("abort word"), job->abort_word);
  print_place (console, file->place);
  print_crew (console, file);
  print_events (console, job);
  ff_console_line (console, _ ("\nShots"));
  for (guint i = 0; i < file->shots->len; i++)
    print_shot (console, g_ptr_array_index (file->shots, i));
  ff_console_line (console, _ ("\nGear"));
  print_gear (console, file->items);
}

/* ---- The three forms of the command ---- */

static FfJobFile *
load (FfStore *store, const char *wanted, GError **error)
{
  g_autofree char *id = ff_job_find (store, wanted, error);

  return id != NULL ? ff_job_file_load (store, id, error) : NULL;
}

static FfOutcome
show (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (FfJobFile) file = store != NULL ? load (store, console->words[0], error) : NULL;
  g_autofree char *letter
      = file != NULL ? ff_paper_letter (store, file->job->id, error) : NULL;

  if (letter == NULL)
    return FF_FAILED;
  ff_job_file_write (file, console->json);
  print_job (console, file, letter);
  return FF_DONE;
}

static FfOutcome
export_job (FfConsole *console, GError **error)
{
  const char *path = console->words[2];
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (FfJobFile) file = store != NULL ? load (store, console->words[1], error) : NULL;
  g_autoptr (FfJson) json = ff_json_new ();
  g_autofree char *text = NULL;

  if (file == NULL)
    return FF_FAILED;
  ff_job_file_write (file, json);
  text = ff_json_finish (json);
  if (!ff_file_write_new (path, text, error))
    return FF_FAILED;
  ff_json_text (console->json, "job", file->job->id);
  ff_json_text (console->json, "file", path);
  ff_console_line (console, _ ("%s is written to %s."), file->job->title, path);
  return FF_DONE;
}

/* The file is read and checked before the store is even opened. */
/* The day's times as a calendar file. Never onto a file that exists. */
static FfOutcome
calendar_of_job (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (FfDay) day = store != NULL ? ff_day_load (store, console->words[1], error) : NULL;
  g_autoptr (GPtrArray) times = NULL;
  g_autofree FfCalendarEntry *events = NULL;
  g_autofree char *text = NULL;
  FfCalendar calendar = { .latitude_deg = NAN, .longitude_deg = NAN, .place = "", .note = "" };
  const FfPlace *place;

  if (day == NULL)
    return FF_FAILED;
  times = ff_call_times (day);
  events = g_new0 (FfCalendarEntry, MAX (times->len, 1));
  for (guint i = 0; i < times->len; i++)
    {
      const FfCallTime *time = g_ptr_array_index (times, i);

      events[i] = (FfCalendarEntry) { time->key, time->text, time->at, time->to };
    }
  place = ff_day_place (day);
  if (place != NULL)
    {
      calendar.place = place->name;
      calendar.latitude_deg = place->latitude_deg;
      calendar.longitude_deg = place->longitude_deg;
    }
  calendar.job_id = ff_day_job (day)->id;
  calendar.note = ff_day_job (day)->title;
  calendar.written_at = g_get_real_time () / G_USEC_PER_SEC;
  calendar.entries = events;
  calendar.n_entries = times->len;
  text = ff_calendar_text (&calendar);
  if (!ff_file_write_new (console->words[2], text, error))
    return FF_FAILED;
  ff_json_text (console->json, "file", console->words[2]);
  ff_json_integer (console->json, "entries", times->len);
  ff_console_line (console, _ ("%s: %u entries"), console->words[2], times->len);
  return times->len > 0 ? FF_DONE : FF_NO;
}

static FfOutcome
import_job (FfConsole *console, GError **error)
{
  const char *path = console->words[1];
  g_autofree char *text = ff_file_read (path, FF_JOB_FILE_MOST, error);
  g_autoptr (FfJobFile) file = text != NULL ? ff_job_file_parse (text, error) : NULL;
  g_autoptr (FfStore) store = NULL;

  if (file == NULL || !ff_standing_check (file->versions, file->amendments, error))
    {
      if (text != NULL)
        g_prefix_error (error, "%s: ", path);
      return FF_FAILED;
    }
  store = ff_console_open (console, FF_RECORDS_WRITE, error);
  if (store == NULL
      || !ff_job_file_store (file, store, g_get_real_time () / G_USEC_PER_SEC, error))
    return FF_FAILED;
  ff_json_text (console->json, "job", file->job->id);
  ff_json_text (console->json, "title", file->job->title);
  ff_console_line (console, _ ("%s is in the store."), file->job->title);
  return FF_DONE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  const char *what = console->n_words > 0 ? console->words[0] : "";

  if (strcmp (what, "export") == 0)
    return ff_console_want_words (console, 3, "JOB FILE", error) ? export_job (console, error)
                                                                 : FF_FAILED;
  if (strcmp (what, "calendar") == 0)
    return ff_console_want_words (console, 3, "JOB FILE", error)
               ? calendar_of_job (console, error)
               : FF_FAILED;
  if (strcmp (what, "import") == 0)
    return ff_console_want_words (console, 2, "FILE", error) ? import_job (console, error)
                                                             : FF_FAILED;
  return ff_console_want_words (console, 1, "JOB", error) ? show (console, error) : FF_FAILED;
}

const FfCommand ff_command_job = {
  .name = "job",
  .summary = N_ ("Show a whole job, write it to a file, read one"),
  .usage = "job JOB | job export JOB FILE | job import FILE | job calendar JOB FILE",
  .example = "fieldfarectl job export Skarrowick skarrowick.json",
  .entries = entries,
  .run = run,
};
