/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shots of a day as the sheets say them: how the camera looks, where the sun stands then. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-private.h"
#include "ff-number.h"
#include "ff-sheet-private.h"

#define LOW_SUN_DEG 10.0   /* a sun lower than this dazzles and flares (common practice) */
#define FLARE_WITHIN_DEG 30.0

void
ff_sheet_shot_free (gpointer data)
{
  FfSheetShot *shot = data;

  g_free (shot->shot);
  g_free (shot->view);
  g_free (shot->sun);
  g_free (shot->caution);
  g_free (shot->note);
  g_free (shot);
}

void
ff_sheet_append_part (GString *text, const char *separator, char *part)
{
  if (part != NULL && *part != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? separator : "", part);
  g_free (part);
}

static char *
view_text (const FfShot *shot)
{
  GString *text = g_string_new (ff_name_text (&ff_names_view, shot->view));

  if (isfinite (shot->bearing_deg))
    ff_sheet_append_part (text, ", ", g_strdup_printf (_ ("camera %.0f°"), shot->bearing_deg));
  else if (shot->view == FF_VIEW_OBLIQUE)
    ff_sheet_append_part (text, ", ", g_strdup (_ ("all round")));
  if (shot->height_to_m > shot->height_from_m)
    ff_sheet_append_part (text, ", ", g_strdup_printf (_ ("height %.0f to %.0f m"), shot->height_from_m,
                                              shot->height_to_m));
  else
    ff_sheet_append_part (text, ", ", g_strdup_printf (_ ("height %.0f m"), shot->height_from_m));
  ff_sheet_append_part (text, ", ", g_strdup (shot->track));
  if (shot->speed_ms > 0)
    {
      g_autofree char *speed = ff_number_format (shot->speed_ms, 1);

      ff_sheet_append_part (text, ", ", g_strdup_printf (_ ("%s m/s"), speed));
    }
  return g_string_free (text, FALSE);
}

static char *
sun_text (const FfShot *shot, const FfDirection *sun)
{
  GString *text = g_string_new (NULL);

  if (sun->altitude_deg < -0.8333)
    return g_strdup (_ ("sun is down"));
  ff_sheet_append_part (text, ", ", g_strdup_printf (_ ("sun %.0f°, %.0f° high"), sun->azimuth_deg,
                                            MAX (sun->altitude_deg, 0.0)));
  if (shot->view == FF_VIEW_OBLIQUE && isfinite (shot->bearing_deg))
    {
      double angle = ff_bearing_difference_deg (shot->bearing_deg, sun->azimuth_deg);

      ff_sheet_append_part (text, ", ", g_strdup (ff_name_text (&ff_names_lit, ff_lit_of_angle (angle))));
    }
  return g_string_free (text, FALSE);
}

char *
ff_day_sun_caution (const FfShot *shot, const FfDirection *sun)
{
  double angle;

  if (shot->view != FF_VIEW_OBLIQUE || sun->altitude_deg < -0.8333
      || sun->altitude_deg > 2 * LOW_SUN_DEG)
    return g_strdup ("");
  if (!isfinite (shot->bearing_deg))
    return g_strdup (_ ("Low sun on one side: flare and lens shade; lock exposure and white balance "
                        "for all frames."));
  angle = ff_bearing_difference_deg (shot->bearing_deg, sun->azimuth_deg);
  if (angle < FLARE_WITHIN_DEG)
    return g_strdup (_ ("Low sun in front of the camera: flare; meter for the sky."));
  if (angle > 180 - FLARE_WITHIN_DEG && sun->altitude_deg < LOW_SUN_DEG)
    return g_strdup (_ ("Low sun behind the camera: propeller shadow and the aircraft's own shadow "
                        "can fall into the picture."));
  return g_strdup ("");
}

/* When the shot is flown, or the opening of its window. */
static gint64
instant_of_shot (const FfDay *day, const FfDayPlan *plan, const FfShot *shot)
{
  gint64 instant = 0;

  for (guint i = 0; plan != NULL && i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, j);

          if (g_str_equal (take->shot, shot->label))
            return take->from;
        }
    }
  (void) ff_day_instant (day, shot->window_from, shot->label, &instant, NULL);
  return instant;
}

void
ff_sheet_add_shots (FfSheetFacts *facts, const FfDay *day, const FfDayPlan *plan)
{
  for (guint i = 0; i < day->shots->len; i++)
    {
      const FfShot *record = g_ptr_array_index (day->shots, i);
      FfSheetShot *shot = g_new0 (FfSheetShot, 1);
      FfDirection sun;

      ff_sun_track_direction (&day->sun, (double) instant_of_shot (day, plan, record), &sun);
      shot->shot = g_strdup (record->label);
      shot->view = view_text (record);
      shot->sun = sun_text (record, &sun);
      shot->caution = ff_day_sun_caution (record, &sun);
      shot->note = g_strdup (record->note);
      g_ptr_array_add (facts->shots, shot);
    }
}
