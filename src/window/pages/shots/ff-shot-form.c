/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shot-form.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-exposure.h"
#include "ff-number.h"
#include "ff-scale.h"

#define NARROW 112
#define MIDDLE 150
#define WIDE 300

static const FfShotTextInfo texts_info[FF_N_SHOT_TEXTS] = {
  [FF_SHOT_LABEL] = { "label", N_ ("_Label"), "", FF_SHOT_GROUP_WHAT, 72 },
  [FF_SHOT_TITLE] = { "title", N_ ("_Title"), "", FF_SHOT_GROUP_WHAT, 180 },
  [FF_SHOT_NOTE] = { "note", N_ ("_Note"), "", FF_SHOT_GROUP_WHAT, WIDE },
  /* Translators: the window: the earliest and latest time of a shot. */
  [FF_SHOT_FROM] = { "window_from", N_ ("_Window from"), "", FF_SHOT_GROUP_WHEN, NARROW },
  [FF_SHOT_TO] = { "window_to", N_ ("to"), "", FF_SHOT_GROUP_WHEN, NARROW },
  [FF_SHOT_MINUTES] = { "minutes", N_ ("_Minutes"), N_ ("min"), FF_SHOT_GROUP_WHEN, NARROW },
  [FF_SHOT_SUN_LEAVES] = { "sun_leaves", N_ ("S_un leaves"), "", FF_SHOT_GROUP_WHEN, NARROW },
  /* Translators: how much is lost if the shot is not flown, against the other shots. */
  [FF_SHOT_WEIGHT] = { "weight", N_ ("Wei_ght"), "", FF_SHOT_GROUP_WHEN, NARROW },
  /* Translators: frame rate: frames a second. */
  [FF_SHOT_FPS] = { "fps", N_ ("Frame _rate"), N_ ("fps"), FF_SHOT_GROUP_PICTURE, NARROW },
  [FF_SHOT_ANGLE] = { "angle_deg", N_ ("Shutter _angle"), N_ ("°"), FF_SHOT_GROUP_PICTURE, 200 },
  /* Translators: the smallest and largest shutter angle that the shot allows. */
  [FF_SHOT_ANGLE_FROM] = { "angle_from_deg", N_ ("allowed from"), N_ ("°"),
                           FF_SHOT_GROUP_PICTURE, NARROW },
  [FF_SHOT_ANGLE_TO] = { "angle_to_deg", N_ ("to"), N_ ("°"), FF_SHOT_GROUP_PICTURE, NARROW },
  [FF_SHOT_FRAMES] = { "frames", N_ ("_Frames"), "", FF_SHOT_GROUP_PICTURE, MIDDLE },
  [FF_SHOT_STEP] = { "step_stops", N_ ("_Step"), N_ ("stops"),
                     FF_SHOT_GROUP_PICTURE, MIDDLE },
  [FF_SHOT_INTERVAL] = { "interval_s", N_ ("Inter_val"), N_ ("s"), FF_SHOT_GROUP_PICTURE, MIDDLE },
  [FF_SHOT_MAX_ISO] = { "max_iso", N_ ("_ISO at most"), "", FF_SHOT_GROUP_PICTURE, NARROW },
  [FF_SHOT_APERTURE] = { "hold_aperture", N_ ("Hold a_perture f/"), "",
                         FF_SHOT_GROUP_PICTURE, NARROW },
  [FF_SHOT_BEARING] = { "bearing_deg", N_ ("Camera _bearing"), N_ ("°"),
                        FF_SHOT_GROUP_FLIGHT, NARROW },
  [FF_SHOT_HEIGHT_FROM] = { "height_from_m", N_ ("_Height"), N_ ("m"),
                            FF_SHOT_GROUP_FLIGHT, NARROW },
  [FF_SHOT_HEIGHT_TO] = { "height_to_m", N_ ("at the end"), N_ ("m"),
                          FF_SHOT_GROUP_FLIGHT, NARROW },
  [FF_SHOT_TRACK] = { "track", N_ ("Trac_k"), "", FF_SHOT_GROUP_FLIGHT, 160 },
  [FF_SHOT_SPEED] = { "speed_ms", N_ ("Sp_eed"), N_ ("m/s"), FF_SHOT_GROUP_FLIGHT, NARROW },
  /* Translators: how much brighter (+) or darker (−) than usual ground the subject is, in stops. */
  [FF_SHOT_OFFSET] = { "subject_offset_stops", N_ ("Sub_ject offset"), N_ ("stops"),
                       FF_SHOT_GROUP_LIGHT, MIDDLE },
  /* Translators: shots of one group must look alike when they are cut together. */
  [FF_SHOT_MATCH] = { "match_group", N_ ("Mat_ch group"), "", FF_SHOT_GROUP_LIGHT, MIDDLE },
};

const FfShotTextInfo *
ff_shot_text_info (FfShotText which)
{
  return &texts_info[which];
}

static const FfField *
field_of (FfShotText which)
{
  return ff_fields_find (&ff_shot_fields, texts_info[which].field);
}

/* These are not given when they are 0, and stand empty then. */
static gboolean
is_empty_at_zero (FfShotText which)
{
  return which == FF_SHOT_WEIGHT || which == FF_SHOT_MAX_ISO || which == FF_SHOT_APERTURE
         || which == FF_SHOT_FRAMES;
}

static gboolean
same (double a, double b)
{
  return fabs (a - b) < 1e-9;
}

/* Writing */

static char *
write_number (FfShotText which, double value)
{
  g_autofree char *text = NULL;

  if (isnan (value) || (same (value, 0) && is_empty_at_zero (which)))
    return g_strdup ("");
  text = ff_number_format (fabs (value), 3);
  return g_strdup_printf ("%s%s", value < 0 ? "−" : "", text);
}

char *
ff_shot_text_get (const FfShot *shot, FfShotText which)
{
  const FfField *field = field_of (which);

  if (ff_field_is_text (field))
    return g_strdup (*ff_field_text (field, shot));
  if (field->type == FF_FIELD_CLOCK)
    return *ff_field_whole (field, shot) == FF_NO_CLOCK
               ? g_strdup ("")
               : ff_clock_format (*ff_field_whole (field, shot));
  if (field->type == FF_FIELD_WHOLE)
    return write_number (which, *ff_field_whole (field, shot));
  /* A shot at one height says it once. */
  if (which == FF_SHOT_HEIGHT_TO && same (shot->height_from_m, shot->height_to_m))
    return g_strdup ("");
  return write_number (which, *ff_field_real (field, shot));
}

/* Reading */

/* "17:40", "1740" or "17.40"; past midnight the hours go on: "24:20". */
static gboolean
read_clock (const char *text, int *ret_minutes)
{
  int digits[4], n = 0;

  for (const char *p = text; *p != '\0'; p++)
    {
      if (g_ascii_isdigit (*p) && n < 4)
        digits[n++] = g_ascii_digit_value (*p);
      else if (!(strchr (":.h", *p) != NULL && p > text && strlen (p + 1) == 2))
        return FALSE;
    }
  if (n < 3)
    return FALSE;
  *ret_minutes = (n == 4 ? digits[0] * 10 + digits[1] : digits[0]) * 60
                 + digits[n - 2] * 10 + digits[n - 1];
  return digits[n - 2] < 6 && *ret_minutes <= FF_CLOCK_MAX;
}

/* A number as people type it: a comma for the point, a true minus, the unit before or behind it. */
static char *
plain_number (const char *text, const char *unit)
{
  g_autofree char *bare = g_strdup (text);
  g_autoptr (GString) plain = NULL;

  if (unit[0] != '\0' && g_str_has_suffix (bare, unit))
    bare[strlen (bare) - strlen (unit)] = '\0';
  plain = g_string_new (g_strstrip (bare));
  if (g_str_has_prefix (plain->str, "f/"))
    g_string_erase (plain, 0, 2);
  if (plain->str[0] == '+')
    g_string_erase (plain, 0, 1);
  g_string_replace (plain, ",", ".", 1);
  g_string_replace (plain, "−", "-", 1);
  return g_string_free (g_steal_pointer (&plain), FALSE);
}

static gboolean
read_number (FfShotText which, const char *text, double *ret_value, char **ret_why)
{
  const FfField *field = field_of (which);
  const char *unit = texts_info[which].unit;
  g_autofree char *bare = plain_number (text, unit[0] != '\0' ? _ (unit) : "");
  g_autofree char *low = ff_number_format (field->low, 1);
  g_autofree char *high = ff_number_format (field->high, 1);
  double value;

  if (!ff_number_parse ("", bare, -1e9, 1e9, &value, NULL)
      || (field->type == FF_FIELD_WHOLE && value != floor (value)))
    {
      *ret_why = g_strdup_printf (field->type == FF_FIELD_WHOLE
                                      ? _ ("“%s” is not a whole number; accepted: %s to %s")
                                      : _ ("“%s” is not a number; accepted: %s to %s"),
                                  text, low, high);
      return FALSE;
    }
  if (value < field->low || value > field->high)
    {
      *ret_why = g_strdup_printf (_ ("%s is out of range; accepted: %s to %s"), bare, low, high);
      return FALSE;
    }
  *ret_value = value;
  return TRUE;
}

/* An empty field: what it means, or that it is missed. */
static gboolean
put_nothing (FfShot *shot, FfShotText which, char **ret_why)
{
  const FfField *field = field_of (which);

  if (which == FF_SHOT_HEIGHT_TO)
    shot->height_to_m = shot->height_from_m;
  else if (field->type == FF_FIELD_CLOCK && !field->needed)
    *ff_field_whole (field, shot) = FF_NO_CLOCK;
  else if (field->type == FF_FIELD_REAL && !field->needed)
    *ff_field_real (field, shot) = NAN;
  else if (field->type == FF_FIELD_REAL && field->low <= 0)
    *ff_field_real (field, shot) = 0;
  else
    {
      *ret_why = g_strdup (_ ("it is missing"));
      return FALSE;
    }
  return TRUE;
}

static gboolean
put_number (FfShot *shot, FfShotText which, const char *text, char **ret_why)
{
  const FfField *field = field_of (which);
  gboolean level = same (shot->height_from_m, shot->height_to_m);
  double value;

  if (!read_number (which, text, &value, ret_why))
    return FALSE;
  if (field->type == FF_FIELD_WHOLE)
    *ff_field_whole (field, shot) = (int) value;
  else
    *ff_field_real (field, shot) = value;
  if (which == FF_SHOT_HEIGHT_FROM && level)
    shot->height_to_m = value;
  return TRUE;
}

static gboolean
put_clock (FfShot *shot, FfShotText which, const char *text, char **ret_why)
{
  if (read_clock (text, ff_field_whole (field_of (which), shot)))
    return TRUE;
  *ret_why = g_strdup_printf (_ ("“%s” is not a clock time; write it as 17:40"), text);
  return FALSE;
}

static gboolean
is_label_taken (const FfShot *shot, const char *label, GPtrArray *shots)
{
  g_autofree char *folded = g_utf8_casefold (label, -1);

  for (guint i = 0; i < shots->len; i++)
    {
      const FfShot *other = g_ptr_array_index (shots, i);
      g_autofree char *theirs = g_utf8_casefold (other->label, -1);

      if (!g_str_equal (other->id, shot->id) && g_str_equal (theirs, folded))
        return TRUE;
    }
  return FALSE;
}

static gboolean
put_text (FfShot *shot, FfShotText which, const char *text, GPtrArray *shots, char **ret_why)
{
  const FfField *field = field_of (which);
  g_autofree char *bare = g_strdup (text);

  if (which == FF_SHOT_LABEL)
    g_strstrip (bare);
  if (strlen (bare) > (gsize) field->high)
    *ret_why = g_strdup_printf (_ ("it is too long; accepted: %d letters"), (int) field->high);
  else if (field->needed && bare[0] == '\0')
    *ret_why = g_strdup (_ ("a shot needs a label, best one or two letters"));
  else if (which == FF_SHOT_LABEL && is_label_taken (shot, bare, shots))
    *ret_why = g_strdup_printf (_ ("another shot is called %s"), bare);
  else
    {
      ff_set_text (ff_field_text (field, shot), bare);
      return TRUE;
    }
  return FALSE;
}

gboolean
ff_shot_text_put (FfShot *shot,
                  FfShotText which,
                  const char *text,
                  GPtrArray *shots,
                  char **ret_why)
{
  const FfField *field = field_of (which);
  g_autofree char *bare = g_strstrip (g_strdup (text));

  if (ff_field_is_text (field))
    return put_text (shot, which, text, shots, ret_why);
  if (bare[0] == '\0')
    return put_nothing (shot, which, ret_why);
  if (field->type == FF_FIELD_CLOCK)
    return put_clock (shot, which, bare, ret_why);
  return put_number (shot, which, bare, ret_why);
}

/* Which fields there are */

gboolean
ff_shot_text_is_asked (const FfShot *shot, FfShotText which)
{
  switch ((int) which)
    {
    case FF_SHOT_FPS:
    case FF_SHOT_ANGLE:
    case FF_SHOT_ANGLE_FROM:
    case FF_SHOT_ANGLE_TO:
      return shot->intent == FF_INTENT_VIDEO || shot->intent == FF_INTENT_SLOW;
    case FF_SHOT_FRAMES:
    case FF_SHOT_STEP:
      return shot->intent == FF_INTENT_BRACKET;
    case FF_SHOT_INTERVAL:
      return shot->intent == FF_INTENT_TIMELAPSE;
    case FF_SHOT_BEARING:
      return shot->view != FF_VIEW_DOWN;
    default:
      return TRUE;
    }
}

static char *
remark_of_angle (const FfShot *shot)
{
  g_autofree char *shutter = NULL;

  if (!(shot->angle_deg > 0) || !(shot->fps > 0))
    return NULL;
  shutter = ff_shutter_format (ff_shutter_seconds (shot->angle_deg, shot->fps));
  /* Translators: the shutter time that a shutter angle stands for. */
  return g_strdup_printf (_ ("is %s s"), shutter);
}

char *
ff_shot_text_remark (const FfShot *shot, FfShotText which)
{
  switch ((int) which)
    {
    case FF_SHOT_MINUTES:
      /* Translators: under the minutes of a shot: how many its window has. */
      return g_strdup_printf (_ ("of %d"), shot->window_to - shot->window_from);
    case FF_SHOT_SUN_LEAVES:
      return g_strdup (shot->sun_leaves == FF_NO_CLOCK
                           ? _ ("empty: the hills do not matter")
                           : _ ("the subject is in shade from then on"));
    case FF_SHOT_BEARING:
      return isnan (shot->bearing_deg) ? g_strdup (_ ("empty: all round")) : NULL;
    case FF_SHOT_HEIGHT_TO:
      return same (shot->height_from_m, shot->height_to_m) ? g_strdup (_ ("empty: the same"))
                                                           : NULL;
    case FF_SHOT_SPEED:
      return shot->speed_ms > 0 ? NULL : g_strdup (_ ("0: still"));
    case FF_SHOT_MAX_ISO:
      return shot->max_iso > 0 ? NULL : g_strdup (_ ("empty: as far as the camera goes"));
    case FF_SHOT_APERTURE:
      return shot->hold_aperture > 0 ? NULL : g_strdup (_ ("empty: free"));
    case FF_SHOT_WEIGHT:
      return shot->weight > 0 ? NULL : g_strdup (_ ("empty: 120"));
    case FF_SHOT_OFFSET:
      return g_strdup (_ ("+1 snow or pale sand, −1 dark forest"));
    case FF_SHOT_MATCH:
      return g_strdup (_ ("shots of one group must look alike"));
    case FF_SHOT_ANGLE:
      return remark_of_angle (shot);
    default:
      return NULL;
    }
}

char *
ff_shot_hours_remark (const FfShot *shot, const FfJob *job, int sunset)
{
  g_autofree char *clock = NULL;

  if (job->first_off != FF_NO_CLOCK && shot->window_from < job->first_off)
    {
      clock = ff_clock_format (job->first_off);
      return g_strdup_printf (_ ("opens before first off, %s"), clock);
    }
  if (job->all_down != FF_NO_CLOCK && shot->window_to > job->all_down)
    {
      clock = ff_clock_format (job->all_down);
      return g_strdup_printf (_ ("closes after all down, %s"), clock);
    }
  if (sunset == FF_NO_CLOCK || sunset < shot->window_from - 60 || sunset > shot->window_to + 60)
    return NULL;
  clock = ff_clock_format (sunset);
  return g_strdup_printf (_ ("sunset %s"), clock);
}

char *
ff_shot_text_change (const FfShot *shot, FfShotText which)
{
  /* The label changes with each keystroke; its name must not, or each would be undone alone. */
  if (which == FF_SHOT_LABEL)
    return g_strdup (_ ("Label of a shot changed"));
  /* Translators: what undo takes back: the label of a shot, the name of a field. */
  return g_strdup_printf (_ ("Shot %s: %s changed"), shot->label,
                          g_dgettext (GETTEXT_PACKAGE, field_of (which)->words));
}

/* The shot as a whole */

char *
ff_shot_form_why (const FfShot *shot)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *whose = g_strdup_printf (_ ("shot %s"), shot->label);
  const char *why;

  if (ff_shot_check (shot, &error))
    return NULL;
  /* The form says it beside the field of this very shot, and need not name it. */
  why = error->message;
  if (g_str_has_prefix (why, whose))
    why += strlen (whose);
  while (*why == ':' || *why == ',' || *why == ' ')
    why++;
  return g_strdup (why);
}

/* Everything that stands in the other fields and is not stored yet. FALSE: some of it is wrong. */
static gboolean
put_others (FfShot *shot,
            const char *const texts[FF_N_SHOT_TEXTS],
            FfShotText typed,
            GPtrArray *shots)
{
  for (int i = 0; i < FF_N_SHOT_TEXTS; i++)
    {
      g_autofree char *stored = ff_shot_text_get (shot, (FfShotText) i);
      g_autofree char *why = NULL;

      if (i == (int) typed || texts[i] == NULL || g_str_equal (texts[i], stored))
        continue;
      if (!ff_shot_text_put (shot, (FfShotText) i, texts[i], shots, &why))
        return FALSE;
    }
  return TRUE;
}

static void
take_over (FfShot *shot, FfShot *from)
{
  const FfShot empty = *shot;

  *shot = *from;
  *from = empty;
}

static FfShot *
copy_of (const FfShot *shot)
{
  FfShot *copy = ff_shot_new (shot->job_id);

  for (guint i = 0; i < ff_shot_fields.n_fields; i++)
    {
      const FfField *field = &ff_shot_fields.fields[i];

      if (ff_field_is_text (field))
        ff_set_text (ff_field_text (field, copy), *ff_field_text (field, shot));
      else if (field->type == FF_FIELD_REAL)
        *ff_field_real (field, copy) = *ff_field_real (field, shot);
      else
        *ff_field_whole (field, copy) = *ff_field_whole (field, shot);
    }
  return copy;
}

gboolean
ff_shot_form_take (FfShot *shot,
                   const char *const texts[FF_N_SHOT_TEXTS],
                   FfShotText typed,
                   GPtrArray *shots,
                   char **ret_why)
{
  g_autoptr (FfShot) all = NULL;
  g_autofree char *together = NULL;

  if (!ff_shot_text_put (shot, typed, texts[typed], shots, ret_why))
    return FALSE;
  all = copy_of (shot);
  if (put_others (all, texts, typed, shots))
    {
      together = ff_shot_form_why (all);
      if (together == NULL)
        {
          take_over (shot, all);
          return TRUE;
        }
    }
  *ret_why = ff_shot_form_why (shot);
  return *ret_why == NULL;
}

void
ff_shot_form_set_intent (FfShot *shot, FfIntent intent, double delivery_fps)
{
  gboolean moving = intent == FF_INTENT_VIDEO || intent == FF_INTENT_SLOW;
  double normal = delivery_fps > 0 ? delivery_fps : 25;

  if (intent == FF_INTENT_SLOW && shot->intent != FF_INTENT_SLOW)
    shot->fps = 4 * normal; /* four times slower, common practice */
  else if (intent == FF_INTENT_VIDEO && (isnan (shot->fps) || shot->intent == FF_INTENT_SLOW))
    shot->fps = normal;
  if (moving && (isnan (shot->angle_deg) || isnan (shot->angle_from_deg)
                 || isnan (shot->angle_to_deg)))
    {
      shot->angle_deg = 180;
      shot->angle_from_deg = 144;
      shot->angle_to_deg = 216;
    }
  if (intent == FF_INTENT_BRACKET && shot->frames < 2)
    shot->frames = 3;
  if (intent == FF_INTENT_BRACKET && !(shot->step_stops > 0))
    shot->step_stops = 2;
  if (intent == FF_INTENT_TIMELAPSE && isnan (shot->interval_s))
    shot->interval_s = 2;
  shot->intent = intent;
}
