/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The half of ff-gear-words.h that stands beside the fields. */
#include "ff-gear-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-battery.h"
#include "ff-civil.h"
#include "ff-filter.h"
#include "ff-item-camera.h"
#include "ff-media.h"
#include "ff-number.h"
#include "ff-scale.h"

gboolean
ff_gear_is_question (const char *remark)
{
  return remark != NULL && g_str_has_prefix (remark, "□");
}

/* Labels */

/* The digit that a letter is taken for; 0: none. */
static char
digit_like (char letter)
{
  if (letter == 'O' || letter == 'o')
    return '0';
  if (letter == 'S')
    return '5';
  if (letter == 'B')
    return '8';
  return letter == 'I' || letter == 'l' ? '1' : 0;
}

/* What can't be told apart in poor light has the same text: the digit for letters like it, and no
 * capitals. */
static char *
seen_from_afar (const char *label)
{
  g_autofree char *seen = g_strdup (label);

  for (char *c = seen; *c != '\0'; c++)
    if (digit_like (*c) != 0)
      *c = digit_like (*c);
  return g_utf8_casefold (seen, -1);
}

/* In a word a letter is read as a letter; beside a digit, or among its like, it may be either. */
static gboolean
is_doubtful (const char *label, const char *at)
{
  gboolean code = TRUE;

  if (digit_like (*at) == 0)
    return FALSE;
  for (const char *c = label; *c != '\0'; c++)
    code = code && (g_ascii_isdigit (*c) || digit_like (*c) != 0);
  return code || (at > label && g_ascii_isdigit (at[-1])) || g_ascii_isdigit (at[1]);
}

static char *
warn_of_letter (const char *label)
{
  for (const char *c = label; *c != '\0'; c++)
    if (is_doubtful (label, c))
      /* Translators: in a label: the letter, and the digit that it looks like. */
      return g_strdup_printf (_ ("□ The letter %c looks like the digit %c: is it one?"), *c,
                              digit_like (*c));
  return NULL;
}

char *
ff_gear_label_warning (const char *label, const char *id, GPtrArray *items)
{
  g_autofree char *seen = seen_from_afar (label);

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *other = g_ptr_array_index (items, i);
      g_autofree char *theirs = seen_from_afar (other->label);

      if (!g_str_equal (other->id, id) && g_str_equal (theirs, seen))
        return g_strdup_printf (_ ("□ Looks like “%s”, which is another item: write them apart"),
                                other->label);
    }
  if (g_utf8_strlen (label, -1) > FF_GEAR_LABEL_LENGTH)
    return g_strdup (_ ("long for a label: six characters are soon written and said"));
  return warn_of_letter (label);
}

/* Filters */

static char *
one_strength (double stops)
{
  g_autofree char *said = ff_stops_format (stops);
  g_autofree char *factor = ff_number_format (ff_filter_factor (stops), stops < 7 ? 1 : 0);
  g_autofree char *density = ff_number_format (ff_filter_density (stops), 2);

  /* Translators: the three names of a filter's strength: "5 stops", its factor, its density. */
  return g_strdup_printf (_ ("%s · factor %s · density %s"), said, factor, density);
}

char *
ff_gear_strength (double stops, double stops_to)
{
  g_autofree char *from = one_strength (stops);
  g_autofree char *to = one_strength (stops_to);

  if (stops_to > stops)
    /* Translators: a filter that can be turned: from the first strength to the second. */
    return g_strdup_printf (_ ("from %s to %s"), from, to);
  if (stops <= 0)
    return g_strdup (_ ("clear glass: takes no light"));
  return g_steal_pointer (&from);
}

static char *
measured_remark (const FfItem *item)
{
  double more = item->measured_stops - item->stops;
  g_autofree char *said = ff_number_format (fabs (more), 2);

  if (isnan (more))
    return g_strdup (_ ("empty: not measured, the strength counts"));
  if (fabs (more) > 0.5)
    return g_strdup_printf (_ ("□ %s away from the strength: was it this filter?"), said);
  return more >= 0 ? g_strdup_printf (_ ("+%s; the plan counts with what is measured"), said)
                   : g_strdup_printf (_ ("−%s; the plan counts with what is measured"), said);
}

/* Engravings that are no strength (a maker's code) are left alone. */
static char *
engraving_remark (const FfItem *item)
{
  FfFilterStrength strength;
  g_autofree char *read = NULL;
  g_autofree char *typed = NULL;

  if (!ff_filter_parse (item->engraving, &strength, NULL)
      || fabs (strength.stops - item->stops) < 0.1)
    return NULL;
  read = ff_stops_format (strength.stops);
  typed = ff_stops_format (item->stops);
  return g_strdup_printf (_ ("□ Engraved are %s, typed are %s: which is right?"), read, typed);
}

/* Batteries */

char *
ff_gear_energy (const FfItem *item)
{
  double energy = ff_battery_energy_wh (item->volts, item->milliamp_hours);
  g_autofree char *volts = ff_number_format (item->volts, 2);
  g_autofree char *capacity = ff_number_format (item->milliamp_hours / 1000, 3);
  g_autofree char *said = ff_number_format (energy, 1);

  if (isnan (energy))
    return NULL;
  if (isfinite (item->printed_wh) && ff_battery_print_differs (item->printed_wh, energy))
    {
      g_autofree char *percent
          = ff_number_format (fabs (item->printed_wh - energy) / energy * 100, 0);

      return g_strdup_printf (_ ("□ %s V × %s Ah = %s Wh, %s %% away from what is printed: which of "
                                 "the three is misread?"),
                              volts, capacity, said, percent);
    }
  return g_strdup_printf (_ ("%s V × %s Ah = %s Wh"), volts, capacity, said);
}

static char *
cells_remark (const FfItem *item)
{
  g_autofree char *each = ff_number_format (item->volts / item->cells, 2);

  if (item->cells <= 0 || isnan (item->volts))
    return NULL;
  return g_strdup_printf (_ ("%s V a cell"), each);
}

static char *
minutes_remark (const FfItem *item)
{
  if (item->usable_minutes <= 1)
    return g_strdup (_ ("□ Not typed yet: counts as 1. A maker's hover time is not usable minutes"));
  return g_strdup (_ ("From off to land by. A maker's hover time is not usable minutes"));
}

/* What runs out */

static char *
due_remark (const FfItem *item)
{
  double left = item->due_at - item->used;
  g_autofree char *said = ff_number_format (fabs (left), 1);

  if (isnan (left))
    return NULL;
  if (left <= 0)
    return g_strdup_printf (_ ("□ Due, and %s over: change or look, then set it anew"), said);
  return g_strdup_printf (_ ("%s left"), said);
}

static const FfJob *
job_after (const FfItem *item, const FfGearWorld *world)
{
  for (guint i = 0; i < world->jobs->len; i++)
    {
      const FfJob *job = g_ptr_array_index (world->jobs, i);

      if (job->state == FF_JOB_PLANNED && ff_gear_job_uses (job, item)
          && strcmp (job->date, item->valid_until) > 0)
        return job;
    }
  return NULL;
}

static char *
valid_remark (const FfItem *item, const FfGearWorld *world)
{
  const FfJob *job = job_after (item, world);
  FfDate day;

  if (item->valid_until[0] == '\0')
    return g_strdup (_ ("year-month-day, as 2027-12-31; empty: no last day"));
  if (!ff_date_parse (item->valid_until, &day, NULL))
    return NULL;
  /* Dates in this form compare as text. */
  if (strcmp (item->valid_until, world->today) < 0)
    return g_strdup (_ ("□ This day is past: is there a new one?"));
  if (job != NULL)
    return g_strdup_printf (_ ("□ Runs out before “%s” on %s"), job->title, job->date);
  return ff_date_format_long (day);
}

/* Cameras and cards */

static char *
aperture_remark (const FfItem *item)
{
  if (strchr (item->apertures, ',') != NULL)
    return NULL;
  if (ff_scale_find (FF_SCALE_APERTURE, item->apertures) < 0)
    return g_strdup (_ ("fixed; no third of a stop, taken as it is written"));
  return g_strdup (_ ("fixed; a list is written “2.8, 3.2, 3.5”"));
}

static char *
base_remark (const FfItem *item)
{
  g_auto (GStrv) parts = g_strsplit (item->base_iso, ",", -1);

  for (guint i = 0; parts[i] != NULL; i++)
    {
      double base = g_ascii_strtod (parts[i], NULL);

      if (base < item->iso_low || base > item->iso_high)
        return g_strdup_printf (_ ("□ %s is not between the lowest and the highest ISO"), parts[i]);
    }
  return parts[0] == NULL ? g_strdup (_ ("empty: the lowest ISO")) : NULL;
}

static char *
bitrate_remark (const FfItem *item)
{
  g_autofree char *hour = ff_number_format (ff_media_gb_per_hour (item->bitrate_mbits), 0);

  return isfinite (item->bitrate_mbits) ? g_strdup_printf (_ ("%s GB an hour"), hour) : NULL;
}

static char *
profiles_remark (const FfItem *item)
{
  return item->profiles[0] == '\0' ? g_strdup (_ ("one or two, in the order of the base ISOs"))
                                   : NULL;
}

static char *
angle_remark (const FfItem *item)
{
  return item->shutter_by == FF_SHUTTER_BY_TIME ? g_strdup (_ ("counts when it is set by angle"))
                                                : NULL;
}

static char *
rates_remark (const FfItem *item)
{
  return item->frame_rates[0] == '\0' ? g_strdup (_ ("empty: no shot is warned of")) : NULL;
}

static char *
sharp_remark (const FfItem *item)
{
  return isnan (item->sharp_to) ? g_strdup (_ ("empty: from the pixel pitch")) : NULL;
}

/* The highest data rate among the cameras: what a card must keep up with. */
static double
highest_bitrate (GPtrArray *items)
{
  double highest = NAN;

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (item->kind == FF_KIND_CAMERA)
        highest = fmax (highest, ff_item_highest_data_rate (item));
    }
  return highest;
}

static char *
capacity_remark (const FfItem *item, GPtrArray *items)
{
  double rate = highest_bitrate (items);
  g_autofree char *said = ff_number_format (rate, 0);

  if (item->capacity_gb < 0.01)
    return g_strdup (_ ("□ Not typed yet"));
  if (isnan (rate))
    return NULL;
  /* Translators: how long a card lasts: minutes, at a data rate of video. */
  return g_strdup_printf (_ ("%.0f minutes at %s Mbit/s"),
                          floor (ff_media_minutes (item->capacity_gb, rate)), said);
}

static const FfCardClass *
class_by_name (const char *name)
{
  for (guint i = 0; i < ff_card_class_count (); i++)
    if (g_ascii_strcasecmp (ff_card_class (i)->name, name) == 0)
      return ff_card_class (i);
  return NULL;
}

static char *
speed_remark (const FfItem *item, GPtrArray *items)
{
  const FfCardClass *mark = class_by_name (item->speed_class);
  double needs = ff_media_write_mbs (highest_bitrate (items));
  g_autofree char *said = ff_number_format (needs, 1);
  g_autofree char *writes = NULL;

  if (mark == NULL)
    return NULL;
  writes = ff_number_format (mark->mbs, 0);
  if (isfinite (needs) && needs > mark->mbs)
    return g_strdup_printf (_ ("□ Promises %s MB/s, the camera writes %s: too slow?"), writes, said);
  return g_strdup_printf (_ ("promises %s MB/s"), writes);
}

static char *
charge_remark (const FfItem *item)
{
  return item->charge_minutes <= 1 ? g_strdup (_ ("□ Not typed yet: counts as 1 minute")) : NULL;
}

static gboolean
is_carried (const FfItem *camera, GPtrArray *items)
{
  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (item->kind == FF_KIND_AIRCRAFT && g_str_equal (item->camera_id, camera->id))
        return TRUE;
    }
  return FALSE;
}

char *
ff_gear_question (const FfItem *item, const FfGearWorld *world)
{
  if (item->kind == FF_KIND_AIRCRAFT && item->camera_id[0] == '\0')
    return g_strdup (_ ("□ No camera is chosen: a plan needs to know what it can be set to"));
  if (item->kind == FF_KIND_CAMERA && !is_carried (item, world->items))
    return g_strdup (_ ("□ No aircraft carries it: choose it on the page of its aircraft"));
  if (item->kind == FF_KIND_CHARGER && item->attended_by[0] == '\0')
    return g_strdup (_ ("□ Nobody attends it: somebody stays beside a battery that charges"));
  return NULL;
}

char *
ff_gear_remark (const FfItem *item, const FfGearField *field, const FfGearWorld *world)
{
  const char *name = field->name;

  if (g_str_equal (name, "label"))
    return ff_gear_label_warning (item->label, item->id, world->items);
  if (g_str_equal (name, "stops"))
    return ff_gear_strength (item->stops, item->stops_to);
  if (g_str_equal (name, "measured_stops"))
    return measured_remark (item);
  if (g_str_equal (name, "engraving"))
    return engraving_remark (item);
  if (g_str_equal (name, "printed_wh"))
    return ff_gear_energy (item);
  if (g_str_equal (name, "cells"))
    return cells_remark (item);
  if (g_str_equal (name, "usable_minutes"))
    return minutes_remark (item);
  if (g_str_equal (name, "due_at"))
    return due_remark (item);
  if (g_str_equal (name, "valid_until"))
    return valid_remark (item, world);
  if (g_str_equal (name, "apertures"))
    return aperture_remark (item);
  if (g_str_equal (name, "base_iso"))
    return base_remark (item);
  if (g_str_equal (name, "profiles"))
    return profiles_remark (item);
  if (g_str_equal (name, "angle_low_deg"))
    return angle_remark (item);
  if (g_str_equal (name, "frame_rates"))
    return rates_remark (item);
  if (g_str_equal (name, "sharp_to"))
    return sharp_remark (item);
  if (g_str_equal (name, "bitrate_mbits"))
    return bitrate_remark (item);
  if (g_str_equal (name, "capacity_gb"))
    return capacity_remark (item, world->items);
  if (g_str_equal (name, "speed_class"))
    return speed_remark (item, world->items);
  if (g_str_equal (name, "charge_minutes"))
    return charge_remark (item);
  return NULL;
}
