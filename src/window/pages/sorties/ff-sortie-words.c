/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sortie-words.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-number.h"
#include "ff-say.h"

static char *
clock_of (gint64 at, GTimeZone *zone)
{
  return ff_instant_clock ((double) at, zone);
}

/* Joined so that no line is broken between a take's two times, or between ISO and its number. */
#define WORD_JOINER "\342\201\240"
#define NO_BREAK_SPACE "\302\240"

static char *
replaced (const char *text, const char *what, const char *by)
{
  g_auto (GStrv) parts = g_strsplit (text, what, -1);

  return g_strjoinv (by, parts);
}

char *
ff_sortie_shot_words (const FfPlanTake *take, GTimeZone *zone)
{
  g_autofree char *span = ff_say_span (take->from, take->to, zone);
  g_autofree char *joined = replaced (span, "–", WORD_JOINER "–" WORD_JOINER);
  g_autofree char *name = ff_say_two (take->shot, " ", take->title);

  return g_strdup_printf ("%s · %s", name, joined);
}

char *
ff_sortie_settings_words (const FfPlanTake *take)
{
  g_autofree char *settings = ff_say_settings (take);
  const char *iso = strstr (settings, "ISO ");
  g_autofree char *before = iso != NULL ? g_strndup (settings, (gsize) (iso - settings)) : NULL;
  g_autofree char *joined = iso != NULL ? replaced (iso, " ", NO_BREAK_SPACE) : NULL;

  return iso != NULL ? g_strconcat (before, joined, NULL) : g_steal_pointer (&settings);
}

char *
ff_sortie_why_not_words (const char *why, const char *title)
{
  gsize length = strlen (title);
  const char *sentence = why;
  char first[8] = "";

  if (g_str_has_prefix (why, title) && g_str_has_prefix (why + length, ": "))
    sentence = why + length + 2;
  if (sentence[0] == '\0')
    return g_strdup ("");
  first[g_unichar_to_utf8 (g_unichar_totitle (g_utf8_get_char (sentence)), first)] = '\0';
  return g_strconcat (first, g_utf8_next_char (sentence), ".", NULL);
}

/* Whether one of the misses before this one has the same reason. */
static gboolean
is_said_before (const FfDayPlan *plan, guint index)
{
  const FfPlanMiss *miss = g_ptr_array_index (plan->missed, index);

  for (guint i = 0; i < index; i++)
    if (g_str_equal (((const FfPlanMiss *) g_ptr_array_index (plan->missed, i))->reason,
                     miss->reason))
      return TRUE;
  return FALSE;
}

char *
ff_sortie_missed_words (const FfDayPlan *plan, guint index)
{
  const FfPlanMiss *first = g_ptr_array_index (plan->missed, index);
  GString *names = NULL;

  if (is_said_before (plan, index))
    return NULL;
  names = g_string_new (NULL);
  for (guint i = index; i < plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, i);
      g_autofree char *name = ff_say_two (miss->shot, NO_BREAK_SPACE, miss->title);

      if (g_str_equal (miss->reason, first->reason))
        g_string_append_printf (names, "%s%s", names->len > 0 ? " · " : "", name);
    }
  return g_string_free (names, FALSE);
}

char *
ff_sortie_light_words (const FfPlanTake *take)
{
  g_autofree char *need = ff_say_need (take);
  g_autofree char *rate = ff_say_rate (take);

  return ff_say_two (need, " · ", rate);
}

static void
say_take (GString *words, const FfPlanTake *take)
{
  g_autofree char *settings = ff_say_settings (take);

  /* Translators: one shot of a sortie read aloud: label, title, settings. */
  g_string_append_printf (words, _ (". Shot %s %s, %s"), take->shot, take->title, settings);
}

char *
ff_sortie_spoken (const FfPlanLine *line, GTimeZone *zone)
{
  g_autofree char *off = clock_of (line->off_by, zone);
  g_autofree char *land = clock_of (line->land_by, zone);
  g_autofree char *stops = ff_say_stops (line);
  GString *words = g_string_new (NULL);

  /* Translators: a sortie read aloud: its number, off by, land by, battery, filter in stops. */
  g_string_printf (words, _ ("Sortie %d: off by %s, land by %s, battery %s, %s"), line->line, off,
                   land, line->battery, stops);
  for (guint i = 0; i < line->takes->len; i++)
    say_take (words, g_ptr_array_index (line->takes, i));
  return g_string_free (words, FALSE);
}

static int
minutes_of (const FfDayPlan *plan, guint index)
{
  const FfPlanLine *line = g_ptr_array_index (plan->lines, index);

  return (int) ((line->land_by - line->off_by) / FF_MINUTE);
}

/* Batteries may differ in their minutes; then no one number can be said for all. */
static int
common_minutes (const FfDayPlan *plan)
{
  int minutes = plan->lines->len > 0 ? minutes_of (plan, 0) : 0;

  for (guint i = 1; i < plan->lines->len; i++)
    if (minutes_of (plan, i) != minutes)
      return 0;
  return minutes;
}

char *
ff_sortie_land_rule (const FfDayPlan *plan)
{
  int minutes = common_minutes (plan);

  if (minutes > 0)
    /* Translators: "reserve" is the battery charge kept back; "off" is the take-off. */
    return g_strdup_printf (_ ("Land by the line’s time, or off + %d min, or the reserve: whichever "
                               "comes first; the aircraft’s own reading wins."),
                            minutes);
  /* Translators: the batteries of the day have different minutes. */
  return g_strdup (_ ("Land by the line’s time, or off + its battery’s minutes, or the reserve: "
                      "whichever comes first; the aircraft’s own reading wins."));
}

char *
ff_sortie_charge_words (const FfPlanCharge *charge, GTimeZone *zone)
{
  g_autofree char *from = clock_of (charge->charge_from, zone);
  g_autofree char *ready = clock_of (charge->ready_at, zone);

  if (charge->attended_by == NULL || charge->attended_by[0] == '\0')
    /* Translators: a battery is put on the charger then, and is full then. */
    return g_strdup_printf (_ ("on charge %s, ready %s, attended by nobody yet"), from, ready);
  /* Translators: the same, and who watches the charger. */
  return g_strdup_printf (_ ("on charge %s, ready %s, attended by %s"), from, ready,
                          charge->attended_by);
}

/* The first line after the charge that flies this battery. */
static const FfPlanLine *
next_flight (const FfPlanCharge *charge, const FfDayPlan *plan)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      if (line->off_by >= charge->ready_at && g_str_equal (line->battery, charge->battery))
        return line;
    }
  return NULL;
}

char *
ff_sortie_needed_words (const FfPlanCharge *charge, const FfDayPlan *plan, GTimeZone *zone)
{
  const FfPlanLine *next = next_flight (charge, plan);
  g_autofree char *off = NULL;

  if (next == NULL)
    return g_strdup ("");
  off = clock_of (next->off_by, zone);
  /* Translators: when a charged battery must be in the aircraft again. */
  return g_strdup_printf (_ ("needed %s"), off);
}

char *
ff_sortie_cost_words (const FfDayPlan *plan)
{
  if (plan->optimal)
    /* Translators: the price of the whole plan; no plan in this order is cheaper. */
    return g_strdup_printf (_ ("What the plan costs: %.1f, proven cheapest"), plan->cost);
  /* Translators: the same; a cheaper one was not ruled out. */
  return g_strdup_printf (_ ("What the plan costs: %.1f, best found"), plan->cost);
}

char *
ff_sortie_count_words (const FfDayPlan *plan)
{
  guint lines = plan->lines->len, batteries = (guint) plan->batteries_used;
  guint swaps = (guint) plan->swaps;
  g_autofree char *sorties = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u sortie", "%u sorties", lines), lines);
  g_autofree char *used = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u battery", "%u batteries", batteries), batteries);
  g_autofree char *changes = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u filter change", "%u filter changes", swaps), swaps);

  return g_strdup_printf ("%s · %s · %s", sorties, used, changes);
}

static char *
all_of (const GPtrArray *texts)
{
  return ff_say_all (texts, ", ");
}

GPtrArray *
ff_sortie_case_words (const FfCases *cases)
{
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) harmless = g_ptr_array_new ();
  g_autofree char *titles = NULL;

  for (guint i = 0; i < cases->cases->len; i++)
    {
      const FfCase *one = g_ptr_array_index (cases->cases, i);
      g_autofree char *lost = all_of (one->lost);

      if (one->lost->len == 0)
        g_ptr_array_add (harmless, one->title);
      else
        /* Translators: a case of the day ("30 min late"), labels of the shots it loses. */
        g_ptr_array_add (words, g_strdup_printf (_ ("Planned for “%s”, it loses %s."), one->title,
                                                 lost));
    }
  titles = all_of (harmless);
  if (harmless->len > 0)
    /* Translators: cases of the day: "thin cloud, overcast, 15 min late". */
    g_ptr_array_add (words, g_strdup_printf (_ ("No shot is lost, with the bag as packed: %s."),
                                             titles));
  return words;
}

int
ff_sortie_line_of_shot (const FfDayPlan *plan, const char *shot)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint t = 0; t < line->takes->len; t++)
        if (g_strcmp0 (((const FfPlanTake *) g_ptr_array_index (line->takes, t))->shot, shot) == 0)
          return line->line;
    }
  return 0;
}
