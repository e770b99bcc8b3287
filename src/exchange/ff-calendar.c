/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-calendar.h"

#include <libical/ical.h>
#include <math.h>

/* Text from outside may not break out of its line: libical escapes commas, semicolons and line ends;
 * other control characters have no place in a calendar. */
static char *
clean (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *kept = g_string_new (NULL);
  const char *c;

  for (c = valid; *c != '\0'; c = g_utf8_next_char (c))
    if (*c == '\n' || !g_unichar_iscntrl (g_utf8_get_char (c)))
      g_string_append_unichar (kept, g_utf8_get_char (c));
  return g_string_free (kept, FALSE);
}

static struct icaltimetype
time_of (gint64 at)
{
  return icaltime_from_timet_with_zone ((time_t) at, 0, icaltimezone_get_utc_timezone ());
}

static icalcomponent *
event_of (const FfCalendar *calendar, const FfCalendarEntry *entry)
{
  icalcomponent *event = icalcomponent_new (ICAL_VEVENT_COMPONENT);
  g_autofree char *uid = g_strdup_printf ("%s-%s@fieldfare", calendar->job_id, entry->key);
  g_autofree char *summary = clean (entry->summary);
  g_autofree char *place = clean (calendar->place);
  g_autofree char *note = clean (calendar->note);

  icalcomponent_add_property (event, icalproperty_new_uid (uid));
  icalcomponent_add_property (event, icalproperty_new_dtstamp (time_of (calendar->written_at)));
  icalcomponent_add_property (event, icalproperty_new_dtstart (time_of (entry->at)));
  if (entry->to > entry->at)
    icalcomponent_add_property (event, icalproperty_new_dtend (time_of (entry->to)));
  icalcomponent_add_property (event, icalproperty_new_summary (summary));
  if (*place != '\0')
    icalcomponent_add_property (event, icalproperty_new_location (place));
  if (*note != '\0')
    icalcomponent_add_property (event, icalproperty_new_description (note));
  if (!isnan (calendar->latitude_deg) && !isnan (calendar->longitude_deg))
    {
      struct icalgeotype position = { calendar->latitude_deg, calendar->longitude_deg };

      icalcomponent_add_property (event, icalproperty_new_geo (position));
    }
  return event;
}

char *
ff_calendar_text (const FfCalendar *calendar)
{
  icalcomponent *root = icalcomponent_new (ICAL_VCALENDAR_COMPONENT);
  char *raw, *text;
  guint i;

  icalcomponent_add_property (root, icalproperty_new_version ("2.0"));
  icalcomponent_add_property (root, icalproperty_new_prodid ("-//Fieldfare//Fieldfare//EN"));
  for (i = 0; i < calendar->n_entries; i++)
    icalcomponent_add_component (root, event_of (calendar, &calendar->entries[i]));
  raw = icalcomponent_as_ical_string_r (root);
  text = g_strdup (raw);
  icalmemory_free_buffer (raw);
  icalcomponent_free (root);
  return text;
}
