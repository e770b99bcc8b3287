/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Readings in the crew's words. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-private.h"
#include "ff-day-reading.h"
#include "ff-number.h"

/* A reading this far from the model is more often a slip than weather (our own judgement). */
#define SUSPECT_STOPS 2.0
#define SAME_STOPS    0.35 /* as much as a filter takes, give or take what readings are off */
#define CLEAR_STOPS   0.5

char *
ff_signed_stops (double stops)
{
  g_autofree char *amount = ff_number_format (fabs (stops), 1);
  const char *sign = stops < 0 ? "−" : "+";

  /* Translators: a sign and a number of stops: "+0.4 stop", "−1.3 stops". */
  return g_strdup_printf (fabs (stops) < 1.05 ? _ ("%s%s stop") : _ ("%s%s stops"),
                          fabs (stops) < 0.05 ? "" : sign, amount);
}

static char *
clock_of (const FfDay *day, gint64 at)
{
  return ff_instant_clock ((double) at, day->zone);
}

char *
ff_day_reading_words (const FfDay *day, const FfReading *reading)
{
  g_autofree char *clock = clock_of (day, reading->at);
  g_autofree char *ev = ff_number_format (reading->ev100, 1);
  double offset = ff_day_reading_offset (day, reading);
  g_autofree char *off = ff_signed_stops (offset);
  const char *method = ff_name_text (&ff_names_method, (int) reading->method);

  if (!isfinite (offset))
    /* Translators: clock time, how the reading was taken, exposure value. */
    return g_strdup_printf (_ ("%s, %s, EV %s"), clock, method, ev);
  /* Translators: the same, then how far it is from the estimate: "+0.4 stops". */
  return g_strdup_printf (_ ("%s, %s, EV %s: %s"), clock, method, ev, off);
}

char *
ff_day_reading_lasts (const FfDay *day, const FfReading *reading, FfSky sky)
{
  g_autofree char *end = clock_of (day, reading->at + FF_LEARNED_FADE_S);

  if (reading->sky != sky)
    /* Translators: a state of the sky, then a clock time. */
    return g_strdup_printf (_ ("was taken under another sky (%s), so it fades by %s"),
                            ff_name_text (&ff_names_sky, (int) reading->sky), end);
  if (reading->cloud_moves)
    return g_strdup_printf (_ ("cloud is on the move, so it fades by %s"), end);
  /* Translators: of a light reading; then a state of the sky: "clear". */
  return g_strdup_printf (_ ("holds while the sky stays the same (%s)"),
                          ff_name_text (&ff_names_sky, (int) sky));
}

char *
ff_day_learned_words (const FfDay *day, FfSky sky)
{
  double offset;
  const FfReading *reading = ff_day_last_reading (day, &offset);
  g_autofree char *clock = NULL, *off = NULL, *lasts = NULL;

  if (reading == NULL)
    /* Translators: then a state of the sky: "clear". */
    return g_strdup_printf (_ ("Light: an estimate (%s), not yet checked by a reading."),
                            ff_name_text (&ff_names_sky, (int) sky));
  clock = clock_of (day, reading->at);
  off = ff_signed_stops (offset);
  lasts = ff_day_reading_lasts (day, reading, sky);
  /* Translators: clock time, "+0.4 stops", then how long that lasts. */
  return g_strdup_printf (_ ("Reading %s, %s: %s."), clock, off, lasts);
}

/* A filter of the job that takes as much as the reading lacks. */
static const FfItem *
forgotten_filter (const FfDay *day, double offset)
{
  for (guint i = 0; i < day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (day->items, i);
      double stops = isfinite (item->measured_stops) ? item->measured_stops : item->stops;

      if (item->kind == FF_KIND_FILTER && stops > CLEAR_STOPS && ff_day_uses (day, item)
          && fabs (offset + stops) < SAME_STOPS)
        return item;
    }
  return NULL;
}

char *
ff_day_reading_caution (const FfDay *day, const FfReading *reading)
{
  double offset = ff_day_reading_offset (day, reading);
  g_autofree char *off = ff_signed_stops (offset);
  const FfItem *filter;

  if (!(fabs (offset) >= SUSPECT_STOPS))
    return g_strdup ("");
  filter = reading->nd_stops < CLEAR_STOPS ? forgotten_filter (day, offset) : NULL;
  if (filter != NULL)
    /* Translators: "−3 stops", then the label of a filter. */
    return g_strdup_printf (_ ("%s against the estimate, as much as %s takes: was it fitted?"), off,
                            filter->label);
  return g_strdup_printf (_ ("%s against the estimate: check filter, aperture, ISO and sky, then "
                             "take it again."),
                          off);
}
