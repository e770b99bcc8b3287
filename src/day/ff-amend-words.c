/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A change of the plan in words: for each role one sentence, made of what its own sheet says and is
 * no longer so. It is read aloud in the field and written on the sheet by hand, so it names the line,
 * then what is, then what was. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-number.h"
#include "ff-plan-change.h"
#include "ff-plan-private.h"

typedef struct {
  const FfPlanChange *change;
  const FfDayPlan *before;
  GTimeZone *zone;
} Tale;

typedef char *(*SayLine) (const Tale *tale, const FfPlanLine *was, const FfPlanLine *is);

/* Takes the text; an empty one is left out. */
static void
append (GString *all, const char *between, char *text)
{
  if (text != NULL && *text != '\0')
    g_string_append_printf (all, "%s%s", all->len > 0 ? between : "", text);
  g_free (text);
}

static char *
joined (const GPtrArray *texts, const char *between)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < texts->len; i++)
    append (all, between, g_strdup (g_ptr_array_index (texts, i)));
  return g_string_free (all, FALSE);
}

/* ---- Words of a line ---- */

static char *
filter_words (const FfPlanLine *line)
{
  g_autofree char *stops = ff_stops_format (line->filter_stops);
  g_autofree char *labels = *line->engraving != '\0' ? g_strdup (line->engraving)
                                                     : joined (line->filters, " + ");

  if (line->filter_stops <= 0)
    return g_strdup (line->filters->len > 0 ? _ ("the clear filter") : _ ("no filter"));
  return g_strdup_printf ("%s (%s)", stops, labels);
}

static char *
shots_words (const FfPlanLine *line)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < line->takes->len; i++)
    append (all, ", ", g_strdup (((FfPlanTake *) g_ptr_array_index (line->takes, i))->shot));
  return g_string_free (all, FALSE);
}

/* What a clock says now and said before; FALSE where it stays. `was` NULL: it is new, and `ret_then`
 * too. */
static gboolean
clocks (const Tale *tale, gint64 is, const gint64 *was, char **ret_now, char **ret_then)
{
  *ret_now = ff_instant_clock ((double) is, tale->zone);
  *ret_then = was != NULL ? ff_instant_clock ((double) *was, tale->zone) : NULL;
  return was == NULL || is != *was;
}

/* "off 18:18 not 17:38", and "off 18:18" of a line that was not there. Empty where it stays. */
static char *
off_words (const Tale *tale, const FfPlanLine *was, const FfPlanLine *is)
{
  g_autofree char *now = NULL, *then = NULL;

  if (!clocks (tale, is->off_by, was != NULL ? &was->off_by : NULL, &now, &then))
    return g_strdup ("");
  if (then == NULL)
    return g_strdup_printf (_ ("off %s"), now);
  /* Translators: new time of take-off, then the old one. */
  return g_strdup_printf (_ ("off %s not %s"), now, then);
}

static char *
land_words (const Tale *tale, const FfPlanLine *was, const FfPlanLine *is)
{
  g_autofree char *now = NULL, *then = NULL;

  if (!clocks (tale, is->land_by, was != NULL ? &was->land_by : NULL, &now, &then))
    return g_strdup ("");
  if (then == NULL)
    return g_strdup_printf (_ ("land by %s"), now);
  return g_strdup_printf (_ ("land by %s not %s"), now, then);
}

static char *
battery_words (const FfPlanLine *was, const FfPlanLine *is)
{
  if (was == NULL)
    return g_strdup_printf (_ ("battery %s"), is->battery);
  if (strcmp (was->battery, is->battery) == 0)
    return g_strdup ("");
  return g_strdup_printf (_ ("battery %s not %s"), is->battery, was->battery);
}

/* Of a filter that stays, "keep" is said where the operator has something else to do. */
static char *
glass_words (const FfPlanLine *was, const FfPlanLine *is, gboolean say_keep)
{
  g_autofree char *now = filter_words (is);
  g_autofree char *then = was != NULL ? filter_words (was) : NULL;

  if (then == NULL)
    return g_steal_pointer (&now);
  if (strcmp (now, then) != 0)
    return g_strdup_printf (_ ("%s not %s"), now, then);
  /* Translators: the filter that is in front stays there. */
  return say_keep ? g_strdup_printf (_ ("keep %s"), now) : g_strdup ("");
}

static char *
shot_list_words (const FfPlanLine *was, const FfPlanLine *is)
{
  g_autofree char *now = shots_words (is);
  g_autofree char *then = was != NULL ? shots_words (was) : NULL;

  if (then == NULL)
    return g_strdup_printf (_ ("shots %s"), now);
  return strcmp (now, then) != 0 ? g_strdup_printf (_ ("shots %s not %s"), now, then)
                                 : g_strdup ("");
}

/* ---- Words of a take, for the camera ---- */

static const FfPlanTake *
find_take (const FfPlanLine *line, const char *shot_id)
{
  for (guint i = 0; line != NULL && i < line->takes->len; i++)
    {
      const FfPlanTake *take = g_ptr_array_index (line->takes, i);

      if (strcmp (take->shot_id, shot_id) == 0)
        return take;
    }
  return NULL;
}

/* "118", or "118 to 134" where it changes in flight. */
static char *
trend (const char *start, const char *end)
{
  return strcmp (start, end) == 0 ? g_strdup (start) : g_strdup_printf (_ ("%s to %s"), start, end);
}

static char *
iso_words (const FfPlanTake *take)
{
  g_autofree char *start = g_strdup_printf ("%d", take->start.iso);
  g_autofree char *end = g_strdup_printf ("%d", take->end.iso);
  g_autofree char *both = trend (start, end);

  return g_strdup_printf (_ ("ISO %s"), both);
}

static char *
aperture_words (const FfPlanTake *take)
{
  g_autofree char *start = ff_number_format (take->start.aperture, 1);
  g_autofree char *end = ff_number_format (take->end.aperture, 1);
  g_autofree char *both = trend (start, end);

  return g_strdup_printf ("f/%s", both);
}

static char *
shutter_words (const FfPlanTake *take)
{
  return trend (take->start.shutter, take->end.shutter);
}

static char *
span_words (const Tale *tale, const FfPlanTake *take)
{
  g_autofree char *from = ff_instant_clock ((double) take->from, tale->zone);
  g_autofree char *to = ff_instant_clock ((double) take->to, tale->zone);

  return g_strdup_printf ("%s–%s", from, to);
}

/* Takes both; what is, unless it was so before. */
static char *
unless_same (char *is, char *was)
{
  if (g_strcmp0 (is, was) == 0)
    g_clear_pointer (&is, g_free);
  g_free (was);
  return is != NULL ? is : g_strdup ("");
}

/* "D 18:20–18:26, ISO 118 to 134": what is not as it was. */
static char *
take_words (const Tale *tale, const FfPlanTake *was, const FfPlanTake *is)
{
  GString *all = g_string_new (NULL);

  append (all, ", ", unless_same (span_words (tale, is), was ? span_words (tale, was) : NULL));
  append (all, ", ", unless_same (aperture_words (is), was ? aperture_words (was) : NULL));
  append (all, ", ", unless_same (shutter_words (is), was ? shutter_words (was) : NULL));
  append (all, ", ", unless_same (iso_words (is), was ? iso_words (was) : NULL));
  if (all->len > 0)
    {
      g_string_prepend_c (all, ' ');
      g_string_prepend (all, is->shot);
    }
  return g_string_free (all, FALSE);
}

/* ---- What each role is told of a line ---- */

static char *
say_pilot (const Tale *tale, const FfPlanLine *was, const FfPlanLine *is)
{
  GString *all = g_string_new (NULL);

  append (all, ", ", off_words (tale, was, is));
  append (all, ", ", land_words (tale, was, is));
  append (all, ", ", battery_words (was, is));
  append (all, ", ", glass_words (was, is, FALSE));
  append (all, ", ", shot_list_words (was, is));
  return g_string_free (all, FALSE);
}

static char *
say_camera (const Tale *tale, const FfPlanLine *was, const FfPlanLine *is)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < is->takes->len; i++)
    {
      const FfPlanTake *take = g_ptr_array_index (is->takes, i);

      append (all, "; ", take_words (tale, find_take (was, take->shot_id), take));
    }
  for (guint i = 0; was != NULL && i < was->takes->len; i++)
    {
      const FfPlanTake *take = g_ptr_array_index (was->takes, i);

      if (find_take (is, take->shot_id) == NULL)
        append (all, "; ", g_strdup_printf (_ ("%s is out"), take->shot));
    }
  if (all->len > 0)
    {
      char *takes = g_string_free (all, FALSE);

      all = g_string_new (NULL);
      append (all, ", ", glass_words (was, is, TRUE));
      append (all, ", ", takes);
    }
  else
    append (all, ", ", glass_words (was, is, FALSE));
  return g_string_free (all, FALSE);
}

static char *
say_observer (const Tale *tale, const FfPlanLine *was, const FfPlanLine *is)
{
  GString *all = g_string_new (NULL);

  append (all, ", ", off_words (tale, was, is));
  append (all, ", ", land_words (tale, was, is));
  return g_string_free (all, FALSE);
}

/* The lead reads all of it aloud; what is the lead's own is the battery. */
static char *
say_lead (const Tale *tale, const FfPlanLine *was, const FfPlanLine *is)
{
  GString *all = g_string_new (NULL);

  append (all, ", ", off_words (tale, was, is));
  append (all, ", ", battery_words (was, is));
  append (all, ", ", shot_list_words (was, is));
  return g_string_free (all, FALSE);
}

/* ---- The whole ---- */

static void
add_dropped (const Tale *tale, GString *sentence)
{
  for (guint i = 0; i < tale->before->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (tale->before->lines, i);
      g_autofree char *shots = shots_words (line);

      if (!g_ptr_array_find_with_equal_func (tale->change->order, line->id, g_str_equal, NULL))
        /* Translators: a line of the plan, and the shots on it. */
        append (sentence, "; ", g_strdup_printf (_ ("line %d (%s) is dropped"), line->line, shots));
    }
}

static void
add_lines (const Tale *tale, GString *sentence, SayLine say)
{
  for (guint i = 0; i < tale->change->lines->len; i++)
    {
      const FfPlanLine *is = g_ptr_array_index (tale->change->lines, i);
      const FfPlanLine *was = ff_plan_find_line (tale->before, is->id);
      g_autofree char *what = say (tale, was, is);

      if (*what != '\0')
        append (sentence, "; ",
                was != NULL ? g_strdup_printf (_ ("line %d, %s"), is->line, what)
                            : g_strdup_printf (_ ("new line %d, %s"), is->line, what));
    }
}

static gboolean
is_missed (const GPtrArray *missed, const char *shot)
{
  for (guint i = 0; i < missed->len; i++)
    if (strcmp (((FfPlanMiss *) g_ptr_array_index (missed, i))->shot, shot) == 0)
      return TRUE;
  return FALSE;
}

static void
add_misses (const Tale *tale, GString *sentence)
{
  for (guint i = 0; i < tale->change->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (tale->change->missed, i);

      if (!is_missed (tale->before->missed, miss->shot))
        append (sentence, "; ",
                g_strdup_printf (_ ("shot %s is not flown: %s"), miss->shot, miss->reason));
    }
  for (guint i = 0; i < tale->before->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (tale->before->missed, i);

      if (!is_missed (tale->change->missed, miss->shot))
        append (sentence, "; ",
                g_strdup_printf (_ ("shot %s is no longer among those not flown"), miss->shot));
    }
}

static const FfPlanCharge *
find_charge (const GPtrArray *charges, const FfPlanCharge *wanted)
{
  for (guint i = 0; i < charges->len; i++)
    {
      const FfPlanCharge *charge = g_ptr_array_index (charges, i);

      if (strcmp (charge->battery, wanted->battery) == 0)
        return charge;
    }
  return NULL;
}

/* What whoever attends the charger has promised. */
static void
add_charges (const Tale *tale, GString *sentence)
{
  for (guint i = 0; i < tale->change->charges->len; i++)
    {
      const FfPlanCharge *charge = g_ptr_array_index (tale->change->charges, i);
      const FfPlanCharge *was = find_charge (tale->before->charges, charge);
      g_autofree char *now = NULL, *then = NULL;

      if (!clocks (tale, charge->ready_at, was != NULL ? &was->ready_at : NULL, &now, &then))
        continue;
      append (sentence, "; ",
              then == NULL ? g_strdup_printf (_ ("battery %s ready %s"), charge->battery, now)
                           : g_strdup_printf (_ ("battery %s ready %s not %s"), charge->battery,
                                              now, then));
    }
  for (guint i = 0; i < tale->before->charges->len; i++)
    {
      const FfPlanCharge *charge = g_ptr_array_index (tale->before->charges, i);

      if (find_charge (tale->change->charges, charge) == NULL)
        append (sentence, "; ",
                g_strdup_printf (_ ("battery %s is not charged"), charge->battery));
    }
}

static void
add_sentence (FfAmendment *amendment, FfRole role, GString *text)
{
  if (text->len > 0)
    ff_amendment_add_sentence (amendment, role, text->str);
  g_string_free (text, TRUE);
}

static GString *
sentence_of (const Tale *tale, SayLine say)
{
  GString *sentence = g_string_new (NULL);

  add_lines (tale, sentence, say);
  add_dropped (tale, sentence);
  return sentence;
}

static void
add_text (FfAmendment *amendment)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < amendment->sentences->len; i++)
    append (all, "\n", ff_sentence_words (g_ptr_array_index (amendment->sentences, i)));
  ff_set_text (&amendment->text, all->str);
  g_string_free (all, TRUE);
}

void
ff_plan_change_say (const FfPlanChange *change,
                    const FfDayPlan *before,
                    GTimeZone *zone,
                    FfAmendment *amendment)
{
  const Tale tale = { change, before, zone };
  GString *lead = sentence_of (&tale, say_lead);

  add_misses (&tale, lead);
  add_charges (&tale, lead);
  if (lead->len == 0)
    g_string_append (lead, _ ("settings of the camera alone"));
  add_sentence (amendment, FF_ROLE_LEAD, lead);
  add_sentence (amendment, FF_ROLE_PILOT, sentence_of (&tale, say_pilot));
  add_sentence (amendment, FF_ROLE_CAMERA, sentence_of (&tale, say_camera));
  add_sentence (amendment, FF_ROLE_OBSERVER, sentence_of (&tale, say_observer));
  add_text (amendment);
}

char *
ff_sentence_words (const FfSentence *sentence)
{
  static const char *const who[] = {
    /* Translators: to whom a sentence of an amendment is read. */
    [FF_ROLE_LEAD] = N_ ("Lead"),
    [FF_ROLE_PILOT] = N_ ("Pilot"),
    [FF_ROLE_CAMERA] = N_ ("Camera"),
    [FF_ROLE_OBSERVER] = N_ ("Observer"),
  };

  return g_strdup_printf ("%s: %s.", _ (who[sentence->role]), sentence->text);
}
