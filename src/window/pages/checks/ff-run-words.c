/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-run-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-number.h"

const char *
ff_mark_shape (FfMark mark)
{
  static const char *const shapes[] = {
    [FF_MARK_OPEN] = "□", [FF_MARK_DONE] = "■",   [FF_MARK_DEFERRED] = "◧",
    [FF_MARK_HELD] = "‖", [FF_MARK_FAILED] = "✕", [FF_MARK_NOT_APPLICABLE] = "–",
  };

  return shapes[mark];
}

char *
ff_run_words_bounds (const FfCheckValue *value)
{
  g_autofree char *low = ff_number_format (value->low, 6);
  g_autofree char *high = ff_number_format (value->high, 6);
  const char *unit = value->unit != NULL ? value->unit : "";

  if (value->sort != FF_VALUE_NUMBER)
    return g_strdup (value->sort == FF_VALUE_WORDS ? _ ("in words") : "");
  if (isfinite (value->low) && isfinite (value->high))
    /* Translators: bounds of a value and its unit: "within 16.4 to 16.8 V". */
    return g_strdup_printf (_ ("within %s to %s %s"), low, high, unit);
  if (isfinite (value->low))
    return g_strdup_printf (_ ("at least %s %s"), low, unit);
  if (isfinite (value->high))
    return g_strdup_printf (_ ("at most %s %s"), high, unit);
  /* Translators: the unit a value is to be said in. */
  return unit[0] != '\0' ? g_strdup_printf (_ ("in %s"), unit) : g_strdup (_ ("a number"));
}

static int
number_in_section (const FfListRun *run, int i)
{
  int number = 0;

  for (int k = 0; k <= i; k++)
    number += ff_list_run_item (run, k)->section_number
                  == ff_list_run_item (run, i)->section_number
              && ff_list_run_item (run, k)->item != NULL;
  return number;
}

char *
ff_run_words_where (const FfListRun *run)
{
  int current = ff_list_run_current (run), section, deferred, failed;
  GString *text = g_string_new (NULL);

  if (current < 0)
    return g_string_free (text, FALSE);
  section = ff_list_run_item (run, current)->section_number;
  g_string_append_printf (text, _ ("Section %d of %d · item %d of %d"), section + 1,
                          ff_list_run_n_sections (run), number_in_section (run, current),
                          ff_list_run_section_size (run, section));
  if ((deferred = ff_list_run_count (run, section, FF_MARK_DEFERRED)) > 0)
    g_string_append_printf (text, _ (" · %d deferred"), deferred);
  if ((failed = ff_list_run_count (run, section, FF_MARK_FAILED)) > 0)
    g_string_append_printf (text, _ (" · %d failed"), failed);
  return g_string_free (text, FALSE);
}

static const char *
name_of (GPtrArray *crew, const char *initials)
{
  for (guint i = 0; i < crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (crew, i);

      if (g_ascii_strcasecmp (member->initials, initials) == 0)
        return member->name;
    }
  return initials;
}

static const char *
holder_of (GPtrArray *crew, int role)
{
  for (guint i = 0; i < crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (crew, i);

      if ((int) member->role == role)
        return member->name;
    }
  return ff_name_text (&ff_names_role, role);
}

char *
ff_run_words_who (FfKeeper *keeper, const FfListRun *run, const FfRunItem *item)
{
  GPtrArray *crew = ff_keeper_crew (keeper);

  if (ff_list_run_list (run)->mode == FF_LIST_READ_AND_DO)
    return g_strdup ("");
  if (item->waits_for_second || (item->item != NULL && item->item->role < 0))
    return g_strdup (name_of (crew, ff_list_run_other (run)));
  if (item->item == NULL)
    return g_strdup (name_of (crew, ff_list_run_reader (run)));
  return g_strdup (holder_of (crew, item->item->role));
}

/* The first of the ways to say it. */
static char *
first_way (const char *expected)
{
  const char *end = strstr (expected, " / ");

  return end != NULL ? g_strndup (expected, (gsize) (end - expected)) : g_strdup (expected);
}

static void
add_part (GString *text, const char *part)
{
  if (part[0] != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", part);
}

char *
ff_run_words_wanted (const FfDayRun *self, int i)
{
  const FfListRun *run = ff_day_run_run (self);
  const FfRunItem *item = ff_list_run_item (run, i);
  GString *text = g_string_new (NULL);
  g_autofree char *bounds = NULL, *way = NULL, *plan = NULL;

  if (item->item == NULL)
    return g_string_free (text, FALSE);
  bounds = ff_run_words_bounds (&item->item->value);
  add_part (text, item->item->response);
  if (item->item->touch)
    /* Translators: the item is to be touched, not only looked at. */
    add_part (text, _ ("touch it"));
  add_part (text, bounds);
  if (item->item->fact == FF_FACT_NONE)
    return g_string_free (text, FALSE);
  way = first_way (ff_day_run_expected (self, i));
  if (!ff_list_run_shows_expected (run, i))
    add_part (text, _ ("the plan: shown after you say it"));
  else if (way[0] != '\0')
    add_part (text, plan = g_strdup_printf (_ ("the plan: %s"), way));
  else
    add_part (text, _ ("the plan does not say"));
  return g_string_free (text, FALSE);
}

char *
ff_run_words_challenge (const FfDayRun *self, int i)
{
  const FfRunItem *item = ff_list_run_item (ff_day_run_run (self), i);
  g_autofree char *way = NULL, *bounds = NULL;

  if (item->challenge == FF_CHALLENGE_NONE || item->mark != FF_MARK_OPEN)
    return NULL;
  way = first_way (item->expected);
  bounds = ff_run_words_bounds (&item->item->value);
  if (item->challenge == FF_CHALLENGE_DIFFERS)
    return g_strdup_printf (_ ("You read “%s”. The plan says %s. Look again and say it; or K to keep "
                               "what is there, with a reason; or F."),
                            item->said, way);
  if (item->item->critical)
    return g_strdup_printf (_ ("“%s” is outside: %s. Look again and say it, or F. A critical value is "
                               "not kept."),
                            item->said, bounds);
  return g_strdup_printf (_ ("“%s” is outside: %s. Look again and say it; or K to keep it, with a "
                             "reason; or F."),
                          item->said, bounds);
}

char *
ff_run_words_name (const FfListRun *run, int i)
{
  const FfRunItem *item = ff_list_run_item (run, i);

  if (item->item != NULL)
    return g_strdup (item->item->challenge);
  /* Translators: the last item of each section of a checklist; the name of the section. */
  return g_strdup_printf (_ ("“%s” complete"), item->section->title);
}

char *
ff_run_words_held (const FfListRun *run,
                   gint64 now,
                   GTimeZone *zone,
                   const char *by,
                   guint changed)
{
  int current = ff_list_run_current (run), last = ff_list_run_last_completed (run);
  g_autofree char *clock = ff_instant_clock ((double) ff_list_run_held_since (run), zone);
  g_autofree char *name = current >= 0 ? ff_run_words_name (run, current) : g_strdup ("");
  g_autofree char *again = last >= 0 ? ff_run_words_name (run, last) : NULL;
  const char *why = ff_list_run_held_why (run);
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, _ ("Held at %s since %s, %d min."), name, clock,
                          (int) MAX ((now - ff_list_run_held_since (run)) / 60, 0));
  if (why[0] != '\0')
    g_string_append_printf (text, " %s.", why);
  g_string_append_c (text, ' ');
  if (ff_list_run_will_restart (run, now, by, changed))
    g_string_append (text, _ ("The section starts anew."));
  else if (again != NULL)
    g_string_append_printf (text, _ ("%s comes again."), again);
  return g_string_free (text, FALSE);
}
