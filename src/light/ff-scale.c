/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-scale.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-number.h"

/* Labels as lenses are engraved and cameras show them (after ISO 517 and ISO 516; the rounding is
 * the trade's and follows no one rule, which is why it is a table). */
static const char *const aperture_labels[] = {
  "1",   "1.1", "1.2", "1.4", "1.6", "1.8", "2",   "2.2", "2.5", "2.8", "3.2",
  "3.5", "4",   "4.5", "5",   "5.6", "6.3", "7.1", "8",   "9",   "10",  "11",
  "13",  "14",  "16",  "18",  "20",  "22",  "25",  "29",  "32",
};

static const char *const shutter_labels[] = {
  "1/32000", "1/25000", "1/20000", "1/16000", "1/12800", "1/10000", "1/8000", "1/6400", "1/5000",
  "1/4000",  "1/3200",  "1/2500",  "1/2000",  "1/1600",  "1/1250",  "1/1000", "1/800",  "1/640",
  "1/500",   "1/400",   "1/320",   "1/250",   "1/200",   "1/160",   "1/125",  "1/100",  "1/80",
  "1/60",    "1/50",    "1/40",    "1/30",    "1/25",    "1/20",    "1/15",   "1/13",   "1/10",
  "1/8",     "1/6",     "1/5",     "1/4",     "0.3",     "0.4",     "0.5",    "0.6",    "0.8",
  "1",       "1.3",     "1.6",     "2",       "2.5",     "3.2",     "4",      "5",      "6",
  "8",       "10",      "13",      "15",      "20",      "25",      "30",
};

static const char *const iso_labels[] = {
  "25",    "32",    "40",    "50",    "64",    "80",    "100",    "125",   "160",   "200",
  "250",   "320",   "400",   "500",   "640",   "800",   "1000",   "1250",  "1600",  "2000",
  "2500",  "3200",  "4000",  "5000",  "6400",  "8000",  "10000",  "12800", "16000", "20000",
  "25600", "32000", "40000", "51200", "64000", "80000", "102400",
};

/* The same as numbers: the planner reads them by the million. */
static const double aperture_numbers[] = {
  1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11,
  13, 14, 16, 18, 20, 22, 25, 29, 32,
};

static const double shutter_numbers[] = {
  1.0 / 32000, 1.0 / 25000, 1.0 / 20000, 1.0 / 16000, 1.0 / 12800, 1.0 / 10000, 1.0 / 8000,
  1.0 / 6400, 1.0 / 5000, 1.0 / 4000, 1.0 / 3200, 1.0 / 2500, 1.0 / 2000, 1.0 / 1600, 1.0 / 1250,
  1.0 / 1000, 1.0 / 800, 1.0 / 640, 1.0 / 500, 1.0 / 400, 1.0 / 320, 1.0 / 250, 1.0 / 200,
  1.0 / 160, 1.0 / 125, 1.0 / 100, 1.0 / 80, 1.0 / 60, 1.0 / 50, 1.0 / 40, 1.0 / 30, 1.0 / 25,
  1.0 / 20, 1.0 / 15, 1.0 / 13, 1.0 / 10, 1.0 / 8, 1.0 / 6, 1.0 / 5, 1.0 / 4, 0.3, 0.4, 0.5, 0.6,
  0.8, 1, 1.3, 1.6, 2, 2.5, 3.2, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30,
};

static const double iso_numbers[] = {
  25, 32, 40, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000,
  2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800, 16000, 20000, 25600, 32000, 40000, 51200, 64000,
  80000, 102400,
};

/* exact = unit 2^((first + step) / steps_per_doubling). An f-number doubles in two stops. */
typedef struct {
  const char *const *labels;
  const double *numbers; /* what each label reads as */
  guint n_labels;
  int first;
  double steps_per_doubling;
  double unit;
} Series;

static const Series all_series[] = {
  [FF_SCALE_APERTURE] = { aperture_labels, aperture_numbers,
                          G_N_ELEMENTS (aperture_labels), 0, 6.0, 1.0 },
  [FF_SCALE_SHUTTER] = { shutter_labels, shutter_numbers,
                         G_N_ELEMENTS (shutter_labels), -45, 3.0, 1.0 },
  [FF_SCALE_ISO] = { iso_labels, iso_numbers,
                     G_N_ELEMENTS (iso_labels), -6, 3.0, 100.0 },
};

#define SHORTEST_S (1.0 / 100000.0)
#define LONGEST_S  3600.0

/* A positive decimal number and nothing else. */
static gboolean
read_number (const char *text, double *ret_value)
{
  return g_ascii_isdigit (text[0]) && ff_number_parse ("", text, 1e-6, 1e7, ret_value, NULL);
}

/* "1/50" or "0.5", with or without " s" behind. */
static gboolean
read_seconds (const char *text, double *ret_seconds)
{
  g_autofree char *bare = g_strdup (text);
  gboolean fraction = g_str_has_prefix (bare, "1/");
  double value;

  if (g_str_has_suffix (bare, "s"))
    {
      bare[strlen (bare) - 1] = '\0';
      g_strchomp (bare);
    }
  if (!read_number (fraction ? bare + 2 : bare, &value))
    return FALSE;
  *ret_seconds = fraction ? 1.0 / value : value;
  return TRUE;
}

static const char *
after_f (const char *text)
{
  return g_ascii_strncasecmp (text, "f/", 2) == 0 ? text + 2 : text;
}

static gboolean
read_on_scale (FfScale scale, const char *text, double *ret_value)
{
  if (scale == FF_SCALE_SHUTTER)
    return read_seconds (text, ret_value);
  return read_number (scale == FF_SCALE_APERTURE ? after_f (text) : text, ret_value);
}

guint
ff_scale_size (FfScale scale)
{
  return all_series[scale].n_labels;
}

const char *
ff_scale_label (FfScale scale, guint step)
{
  g_return_val_if_fail (step < ff_scale_size (scale), "");
  return all_series[scale].labels[step];
}

double
ff_scale_written (FfScale scale, guint step)
{
  g_return_val_if_fail (step < ff_scale_size (scale), NAN);
  return all_series[scale].numbers[step];
}

double
ff_scale_exact (FfScale scale, guint step)
{
  const Series *series = &all_series[scale];

  g_return_val_if_fail (step < series->n_labels, NAN);
  return series->unit * exp2 ((series->first + (int) step) / series->steps_per_doubling);
}

/* By what the label reads as, so that "5.0" is the label 5 and "1/2" the label 0.5. */
int
ff_scale_find (FfScale scale, const char *label)
{
  double value;

  if (!read_on_scale (scale, label, &value))
    return -1;
  for (guint step = 0; step < ff_scale_size (scale); step++)
    if (fabs (value / ff_scale_written (scale, step) - 1.0) < 1e-9)
      return (int) step;
  return -1;
}

guint
ff_scale_nearest (FfScale scale, double value)
{
  const Series *series = &all_series[scale];
  double step;

  g_return_val_if_fail (value > 0.0, 0);
  step = round (series->steps_per_doubling * log2 (value / series->unit)) - series->first;
  return (guint) CLAMP (step, 0.0, series->n_labels - 1.0);
}

gboolean
ff_aperture_parse (const char *what,
                   const char *text,
                   double *ret_written,
                   double *ret_exact,
                   GError **error)
{
  int step = ff_scale_find (FF_SCALE_APERTURE, text);
  double written;

  if (!ff_number_parse (what, after_f (text), 0.5, 64.0, &written, error))
    return FALSE;
  *ret_written = written;
  *ret_exact = step >= 0 ? ff_scale_exact (FF_SCALE_APERTURE, (guint) step) : written;
  return TRUE;
}

gboolean
ff_shutter_parse (const char *what,
                  const char *text,
                  gboolean thirds,
                  double *ret_seconds,
                  GError **error)
{
  int step = thirds ? ff_scale_find (FF_SCALE_SHUTTER, text) : -1;
  double seconds;

  if (!read_seconds (text, &seconds) || seconds < SHORTEST_S * (1.0 - 1e-9) || seconds > LONGEST_S)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("%s: “%s” is not a shutter time; accepted: seconds as 1/50, 0.5 or 8, "
                      "from 1/100000 to 3600"),
                   what, text);
      return FALSE;
    }
  *ret_seconds = step >= 0 ? ff_scale_exact (FF_SCALE_SHUTTER, (guint) step) : seconds;
  return TRUE;
}

/* The step whose label reads nearest, which may differ from the one that is exactly nearest. */
static guint
nearest_written (double seconds)
{
  guint nearest = ff_scale_nearest (FF_SCALE_SHUTTER, seconds);
  guint best = nearest;

  for (guint step = nearest > 0 ? nearest - 1 : 0;
       step <= nearest + 1 && step < ff_scale_size (FF_SCALE_SHUTTER); step++)
    if (fabs (log (seconds / ff_scale_written (FF_SCALE_SHUTTER, step)))
        < fabs (log (seconds / ff_scale_written (FF_SCALE_SHUTTER, best))))
      best = step;
  return best;
}

char *
ff_shutter_format (double seconds)
{
  g_autofree char *below_one = NULL;
  guint step;

  if (!(seconds > 0.0) || !isfinite (seconds))
    return ff_number_format (NAN, 0);
  step = nearest_written (seconds);
  if (fabs (seconds / ff_scale_written (FF_SCALE_SHUTTER, step) - 1.0) <= 0.02)
    return g_strdup (ff_scale_label (FF_SCALE_SHUTTER, step));

  /* Above the last fraction of the series people read seconds. */
  if (seconds > 0.26)
    return ff_number_format (seconds, seconds < 1.0 ? 2 : 1);
  below_one = ff_number_format (1.0 / seconds, seconds > 0.1 ? 1 : 0);
  return g_strconcat ("1/", below_one, NULL);
}
