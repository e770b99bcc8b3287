/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-reading-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-filter.h"
#include "ff-item.h"
#include "ff-number.h"

#define MOST_STOPS 30.0

gboolean
ff_reading_text_time (const FfDay *day, const char *text, gint64 *ret_at, GError **error)
{
  FfDate date;
  int minutes;

  return ff_date_parse (ff_day_job (day)->date, &date, error)
         && ff_clock_parse (text, &minutes, error)
         && ff_instant_from_clock (date, minutes, ff_day_zone (day), ret_at, error);
}

char *
ff_reading_text_clock (const FfDay *day, gint64 at)
{
  FfDate date = ff_instant_date (at, ff_day_zone (day));
  g_autofree char *text = ff_date_format (date);

  return g_str_equal (text, ff_day_job (day)->date)
             ? ff_instant_clock ((double) at, ff_day_zone (day))
             : g_strdup ("");
}

static const FfItem *
filter_labelled (GPtrArray *items, const char *label)
{
  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (item->kind == FF_KIND_FILTER && g_ascii_strcasecmp (item->label, label) == 0)
        return item;
    }
  return NULL;
}

static char *
say_own (const FfItem *item, double stops)
{
  g_autofree char *strength = ff_stops_format (stops);

  if (isfinite (item->measured_stops))
    /* Translators: label of a filter, its strength. */
    return g_strdup_printf (_ ("%s, measured %s"), item->label, strength);
  return g_strdup_printf ("%s, %s", item->label, strength);
}

gboolean
ff_reading_text_filter (GPtrArray *items,
                        const char *text,
                        double *ret_stops,
                        char **ret_said,
                        GError **error)
{
  g_autofree char *typed = g_strstrip (g_strdup (text));
  const FfItem *own = filter_labelled (items, typed);
  FfFilterStrength strength = { .stops = 0 };

  if (own != NULL)
    strength.stops = isfinite (own->measured_stops) ? own->measured_stops : own->stops;
  else if (*typed != '\0' && !ff_number_parse ("", typed, 0, MOST_STOPS, &strength.stops, NULL)
           && !ff_filter_parse (typed, &strength, error))
    return FALSE;
  *ret_stops = strength.stops;
  if (own != NULL)
    *ret_said = say_own (own, strength.stops);
  else
    *ret_said = *typed != '\0' ? ff_stops_format (strength.stops) : g_strdup (_ ("none fitted"));
  return TRUE;
}

void
ff_reading_text_frame (const FfFrame *frame, FfReadingEntry *entry)
{
  FfMeterReading meter;

  ff_frame_meter (frame, entry->nd_stops, &meter);
  entry->ev100 = meter.ev100;
  entry->spread_stops = meter.spread_stops;
  entry->aperture = frame->aperture;
  entry->iso = frame->iso;
}

char *
ff_reading_text_says (const FfDay *day, const FfReading *reading)
{
  double offset = ff_day_reading_offset (day, reading);
  g_autofree char *ev = ff_number_format (reading->ev100, 1);
  g_autofree char *off = ff_signed_stops (offset);
  g_autofree char *lasts = ff_day_reading_lasts (day, reading, ff_day_job (day)->sky);

  if (!isfinite (offset))
    return g_strdup_printf (_ ("EV %s. The job needs a day and a place before it is compared."), ev);
  /* Translators: exposure value; "−0.3 stop"; how long that lasts. */
  return g_strdup_printf (_ ("EV %s: %s against the estimate; %s."), ev, off, lasts);
}
