/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shot.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-rows.h"

static const FfField shot_fields[] = {
  FF_ID (FfShot, id, "id", N_ ("id"), TRUE),
  FF_ID (FfShot, job_id, "job_id", N_ ("job"), TRUE),
  FF_WHOLE (FfShot, position, N_ ("position"), 0, 9999),
  FF_TEXT (FfShot, label, N_ ("label"), TRUE, 16),
  FF_TEXT (FfShot, title, N_ ("title"), FALSE, 200),
  FF_TEXT (FfShot, note, N_ ("note"), FALSE, 2000),
  FF_NAME (FfShot, view, N_ ("view"), &ff_names_view),
  FF_REAL (FfShot, bearing_deg, N_ ("camera bearing"), FALSE, 0, 360),
  FF_REAL (FfShot, height_from_m, N_ ("height"), TRUE, 0, 10000),
  FF_REAL (FfShot, height_to_m, N_ ("height at the end"), TRUE, 0, 10000),
  FF_TEXT (FfShot, track, N_ ("track"), FALSE, 200),
  FF_REAL (FfShot, speed_ms, N_ ("speed"), TRUE, 0, 100),
  FF_NAME (FfShot, intent, N_ ("intent"), &ff_names_intent),
  FF_REAL (FfShot, fps, N_ ("frames a second"), FALSE, 1, 1000),
  FF_REAL (FfShot, angle_deg, N_ ("shutter angle"), FALSE, 1, 360),
  FF_REAL (FfShot, angle_from_deg, N_ ("lowest shutter angle"), FALSE, 1, 360),
  FF_REAL (FfShot, angle_to_deg, N_ ("highest shutter angle"), FALSE, 1, 360),
  FF_WHOLE (FfShot, frames, N_ ("frames of the bracket"), 0, 15),
  FF_REAL (FfShot, step_stops, N_ ("step of the bracket"), FALSE, 0, 6),
  FF_REAL (FfShot, interval_s, N_ ("interval"), FALSE, 0.1, 3600),
  FF_REAL (FfShot, max_iso, N_ ("highest ISO"), TRUE, 0, 1e6),
  FF_REAL (FfShot, hold_aperture, N_ ("aperture to hold"), TRUE, 0, 128),
  FF_WHOLE (FfShot, minutes, N_ ("minutes"), 1, 120),
  FF_CLOCK (FfShot, window_from, N_ ("start of the window"), TRUE),
  FF_CLOCK (FfShot, window_to, N_ ("end of the window"), TRUE),
  FF_FLAG (FfShot, fixed_time, N_ ("fixed time")),
  FF_FLAG (FfShot, most_wanted, N_ ("most wanted")),
  FF_REAL (FfShot, weight, N_ ("weight"), TRUE, 0, 1e6),
  FF_REAL (FfShot, subject_offset_stops, N_ ("offset of the subject"), TRUE, -6, 6),
  FF_TEXT (FfShot, match_group, N_ ("match group"), FALSE, 64),
  FF_LATER_FLAG (FfShot, must_fly, N_ ("must fly")),
  FF_CLOCK (FfShot, sun_leaves, N_ ("time the sun leaves the subject"), FALSE),
  /* Translators: the camera sets its ISO by itself while it films. */
  FF_LATER_FLAG (FfShot, auto_iso, N_ ("auto ISO")),
};
const FfFields ff_shot_fields = FF_FIELDS ("shot", shot_fields);

static gpointer
shot_blank (void)
{
  FfShot *shot = g_new0 (FfShot, 1);

  ff_fields_init (&ff_shot_fields, shot);
  return shot;
}

FfShot *
ff_shot_new (const char *job_id)
{
  FfShot *shot = shot_blank ();

  g_free (shot->id);
  shot->id = ff_records_new_id ();
  ff_set_text (&shot->job_id, job_id);
  shot->intent = FF_INTENT_VIDEO;
  shot->fps = 25;
  shot->angle_deg = 180;
  shot->angle_from_deg = 144;
  shot->angle_to_deg = 216;
  shot->subject_offset_stops = 0;
  return shot;
}

void
ff_shot_free (FfShot *shot)
{
  if (shot == NULL)
    return;
  ff_fields_clear (&ff_shot_fields, shot);
  g_free (shot);
}

static gboolean
refuse (const char *whose, const char *what, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return FALSE;
}

static gboolean
check_window (const FfShot *shot, const char *whose, GError **error)
{
  g_autofree char *from = ff_clock_format (shot->window_from);
  g_autofree char *to = ff_clock_format (shot->window_to);
  g_autofree char *what = NULL;

  if (shot->window_to < shot->window_from)
    what = g_strdup_printf (_ ("the window ends at %s, before it starts at %s"), to, from);
  else if (shot->window_to - shot->window_from < shot->minutes)
    what = g_strdup_printf (_ ("the window %s to %s is shorter than the %d minutes of the shot"),
                            from, to, shot->minutes);
  return what == NULL || refuse (whose, what, error);
}

static gboolean
check_sun (const FfShot *shot, const char *whose, GError **error)
{
  g_autofree char *leaves = NULL;
  g_autofree char *from = NULL;
  g_autofree char *what = NULL;

  if (shot->sun_leaves == FF_NO_CLOCK || shot->sun_leaves - shot->window_from >= shot->minutes)
    return TRUE;
  leaves = ff_clock_format (shot->sun_leaves);
  from = ff_clock_format (shot->window_from);
  what = g_strdup_printf (_ ("the sun leaves the subject at %s, less than the %d minutes of the shot "
                             "after its window starts at %s"),
                          leaves, shot->minutes, from);
  return refuse (whose, what, error);
}

static gboolean
check_angles (const FfShot *shot, const char *whose, GError **error)
{
  if (isnan (shot->fps))
    return refuse (whose, _ ("frames a second are missing; moving pictures need them"), error);
  if (isnan (shot->angle_deg) || isnan (shot->angle_from_deg) || isnan (shot->angle_to_deg))
    return refuse (whose, _ ("a shutter angle is missing; moving pictures need it, and its lowest "
                             "and highest"), error);
  if (shot->angle_from_deg > shot->angle_deg || shot->angle_deg > shot->angle_to_deg)
    return refuse (whose, _ ("the shutter angle must lie between its lowest and highest"), error);
  return TRUE;
}

static gboolean
check_intent (const FfShot *shot, const char *whose, GError **error)
{
  switch (shot->intent)
    {
    case FF_INTENT_VIDEO:
    case FF_INTENT_SLOW:
      return check_angles (shot, whose, error);
    case FF_INTENT_BRACKET:
      if (shot->frames < 2 || !(shot->step_stops > 0))
        return refuse (whose, _ ("a bracket needs at least 2 frames and a step in stops"), error);
      return TRUE;
    case FF_INTENT_TIMELAPSE:
      if (isnan (shot->interval_s))
        return refuse (whose, _ ("the interval is missing; a time-lapse needs it"), error);
      return TRUE;
    case FF_INTENT_STILL:
    default:
      return TRUE;
    }
}

gboolean
ff_shot_check (const FfShot *shot, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("shot %s"), shot->label);

  return ff_fields_check (&ff_shot_fields, shot, whose, error)
         && check_window (shot, whose, error) && check_sun (shot, whose, error)
         && check_intent (shot, whose, error);
}

static gboolean
label_taken (const FfShot *shot, GError **error)
{
  g_autofree char *sentence
      = g_strdup_printf (_ ("shot %s: another shot of the job has this label"), shot->label);

  return ff_rows_taken (error, "shot.label", sentence);
}

int
ff_shot_closes (const FfShot *shot)
{
  return shot->sun_leaves == FF_NO_CLOCK ? shot->window_to
                                         : MIN (shot->window_to, shot->sun_leaves);
}

gboolean
ff_shot_save (FfStore *store, const FfShot *shot, GError **error)
{
  return ff_shot_check (shot, error)
         && (ff_rows_save (store, &ff_shot_fields, shot, error) || label_taken (shot, error));
}

FfShot *
ff_shot_load (FfStore *store, const char *id, GError **error)
{
  g_autoptr (GPtrArray) found = ff_rows_load (store, &ff_shot_fields, "WHERE id = ?1", id,
                                              shot_blank, (GDestroyNotify) ff_shot_free, error);

  if (found != NULL && found->len == 0)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("no shot has the id %s"), id);
  return found != NULL && found->len > 0 ? g_ptr_array_steal_index (found, 0) : NULL;
}

gboolean
ff_shot_add (FfStore *store, const FfShot *shot, GError **error)
{
  if (!ff_shot_check (shot, error))
    return FALSE;
  if (ff_rows_append (store, &ff_shot_fields, shot, error))
    return TRUE;
  g_prefix_error (error, _ ("shot %s: "), shot->label);
  return FALSE;
}

GPtrArray *
ff_shots_load (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_shot_fields, "WHERE job_id = ?1 ORDER BY position, label", job_id,
                       shot_blank, (GDestroyNotify) ff_shot_free, error);
}
