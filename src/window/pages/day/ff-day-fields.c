/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-fields.h"

#include <glib/gi18n-lib.h>

#include "ff-job.h"
#include "ff-place.h"

#define JOB(name, what)                                                                            \
  {                                                                                                \
    name, FF_DAY_OF_JOB, 1, what                                                                   \
  }
#define PLACE(name, what)                                                                          \
  {                                                                                                \
    name, FF_DAY_OF_PLACE, 1, what                                                                 \
  }

static const FfDayField day_fields[] = {
  JOB ("title", N_ ("Title changed")),
  JOB ("client", N_ ("Client changed")),
  JOB ("purpose", N_ ("Purpose changed")),
  JOB ("delivery_fps", N_ ("Frames a second changed")),
  JOB ("date", N_ ("Date changed")),
  JOB ("on_site", N_ ("Time on site changed")),
  JOB ("first_off", N_ ("First off changed")),
  JOB ("all_down", N_ ("All down changed")),
  JOB ("off_site", N_ ("Time off site changed")),
  JOB ("wind_from_deg", N_ ("Wind direction changed")),
  JOB ("wind_ms", N_ ("Mean wind changed")),
  JOB ("gust_ms", N_ ("Gust changed")),
  JOB ("wind_height_m", N_ ("Height of the wind changed")),
  JOB ("temperature_c", N_ ("Temperature changed")),
  { "visibility_m", FF_DAY_OF_JOB, 1000, N_ ("Visibility changed") }, /* typed in kilometres */
  JOB ("out_minutes", N_ ("Minutes out changed")),
  JOB ("back_minutes", N_ ("Minutes back changed")),
  JOB ("battery_change_minutes", N_ ("Minutes of a battery change changed")),
  JOB ("filter_change_minutes", N_ ("Minutes of a filter change changed")),
  JOB ("legs_per_battery", N_ ("Legs on a charge changed")),
  JOB ("filters_at_once", N_ ("Filters at once changed")),
  JOB ("stay_margin", N_ ("Margin for another plan changed")),
  JOB ("abort_word", N_ ("Abort word changed")),
  PLACE ("name", N_ ("Name of the place changed")),
  PLACE ("elevation_m", N_ ("Height above the sea changed")),
  PLACE ("zone", N_ ("Time zone changed")),
  PLACE ("takeoff_spot", N_ ("Take-off spot changed")),
  PLACE ("second_spot", N_ ("Second landing spot changed")),
  PLACE ("observer_post", N_ ("Observer post changed")),
  PLACE ("second_post", N_ ("Second observer post changed")),
  PLACE ("emergency_location", N_ ("Emergency location changed")),
  PLACE ("emergency_phone", N_ ("Emergency telephone changed")),
};

guint
ff_day_fields_count (void)
{
  return G_N_ELEMENTS (day_fields);
}

const FfDayField *
ff_day_fields_get (guint i)
{
  return i < G_N_ELEMENTS (day_fields) ? &day_fields[i] : NULL;
}

const FfDayField *
ff_day_fields_find (const char *widget)
{
  for (guint i = 0; i < G_N_ELEMENTS (day_fields); i++)
    if (g_str_equal (day_fields[i].widget, widget))
      return &day_fields[i];
  return NULL;
}

const FfField *
ff_day_field_of (const FfDayField *day_field)
{
  return ff_fields_find (day_field->owner == FF_DAY_OF_JOB ? &ff_job_fields : &ff_place_fields,
                         day_field->widget);
}
