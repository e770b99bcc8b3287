/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The price of a change as one sentence. */
#include "ff-change-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-number.h"

#define SAME_COST 0.05 /* points; less is not said */

static char *
join (const GPtrArray *labels)
{
  GString *joined = g_string_new (NULL);

  for (guint i = 0; i < labels->len; i++)
    {
      const char *label = g_ptr_array_index (labels, i);

      if (i > 0 && i + 1 == labels->len)
        /* Translators: before the last of several labels: "A, B and C". */
        g_string_append_printf (joined, _ (" and %s"), label);
      else
        g_string_append_printf (joined, "%s%s", i > 0 ? ", " : "", label);
    }
  return g_string_free (joined, FALSE);
}

static const char *
title_in (const FfDayPlan *plan, const char *shot)
{
  const FfPlanLine *line = ff_plan_line_of (plan, shot);

  for (guint i = 0; line != NULL && i < line->takes->len; i++)
    {
      const FfPlanTake *take = g_ptr_array_index (line->takes, i);

      if (g_str_equal (take->shot, shot))
        return take->title;
    }
  return "";
}

/* "G (last-sun line) is lost: no battery is ready in its window" */
static char *
lost_words (const FfChangePrice *price, const FfDayPlan *before)
{
  g_autofree char *labels = join (price->lost);
  const char *title = title_in (before, g_ptr_array_index (price->lost, 0));

  if (price->lost->len > 1)
    /* Translators: labels of shots. */
    return g_strdup_printf (_ ("%s are lost"), labels);
  if (title[0] == '\0')
    /* Translators: label of a shot, why it is not flown. */
    return g_strdup_printf (_ ("%s is lost: %s"), labels, price->reason);
  /* Translators: label and title of a shot, why it is not flown. */
  return g_strdup_printf (_ ("%s (%s) is lost: %s"), labels, title, price->reason);
}

static char *
fetch_words (const FfRemedy *remedy, const char *saved)
{
  if (remedy->where != NULL)
    /* Translators: label of an item, with whom it is out, labels of shots. */
    return g_strdup_printf (_ ("%s, out with %s, would save %s"), remedy->label, remedy->where,
                            saved);
  /* Translators: label of an item, labels of shots. */
  return g_strdup_printf (_ ("%s, which this job does not use, would save %s"), remedy->label,
                          saved);
}

/* "one more battery would save G" */
static char *
remedy_words (const FfRemedy *remedy)
{
  g_autofree char *saved = remedy->saves != NULL ? join (remedy->saves) : NULL;
  g_autofree char *stops = ff_stops_format (remedy->stops);

  switch (remedy->kind)
    {
    case FF_REMEDY_ATTEND:
      return g_strdup_printf (_ ("somebody at the charger would save %s"), saved);
    case FF_REMEDY_FETCH:
      return fetch_words (remedy, saved);
    case FF_REMEDY_EARLIER:
      /* Translators: label of a shot, minutes, labels of shots. */
      return g_strdup_printf (_ ("a window of %s that opens %d min earlier would save %s"),
                              remedy->label, remedy->minutes, saved);
    case FF_REMEDY_LATER:
      /* Translators: label of a shot, minutes, labels of shots. */
      return g_strdup_printf (_ ("a window of %s that closes %d min later would save %s"),
                              remedy->label, remedy->minutes, saved);
    case FF_REMEDY_BATTERY:
      /* Translators: number of batteries, labels of shots. */
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d more battery would save %s",
                                           "%d more batteries would save %s",
                                           (gulong) remedy->count),
                              remedy->count, saved);
    case FF_REMEDY_CHARGER:
      return g_strdup_printf (_ ("one more charger slot would save %s"), saved);
    case FF_REMEDY_FILTER:
      /* Translators: strength of a filter, "7 stops"; labels of shots. */
      return g_strdup_printf (_ ("a filter of %s, which you don't own, would save %s"), stops,
                              saved);
    case FF_REMEDY_NONE:
      break;
    }
  return NULL;
}

/* "drop F to keep G" */
static char *
drop_words (const FfChangePrice *price)
{
  g_autofree char *saved = price->drop != NULL ? join (price->drop_saves) : NULL;

  if (price->drop == NULL)
    return NULL;
  /* Translators: a shot that is given up so that another can be flown; labels. */
  return g_strdup_printf (_ ("drop %s instead to keep %s"), price->drop, saved);
}

static char *
nothing_lost_words (const FfChangePrice *price)
{
  g_autofree char *won = join (price->won);

  if (price->won->len > 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Nothing is lost, and %s is flown too.",
                                         "Nothing is lost, and %s are flown too.",
                                         price->won->len),
                            won);
  if (fabs (price->more_cost) < SAME_COST)
    return g_strdup (_ ("Nothing is lost, and the plan costs the same."));
  if (price->more_cost > 0)
    /* Translators: points by the price table. */
    return g_strdup_printf (_ ("Nothing is lost; the plan costs %.1f points more."),
                            price->more_cost);
  return g_strdup_printf (_ ("Nothing is lost; the plan costs %.1f points less."),
                          -price->more_cost);
}

char *
ff_change_sentence (const FfChangePrice *price, const FfDayPlan *before)
{
  g_autofree char *lost = NULL;
  g_autofree char *labels = NULL;
  g_autofree char *takes = remedy_words (&price->remedy);
  g_autofree char *drop = drop_words (price);

  if (price->lost->len == 0)
    return nothing_lost_words (price);
  lost = lost_words (price, before);
  if (takes != NULL && drop != NULL)
    /* Translators: "G is lost: why; one more battery would save G, or drop F instead to keep G." */
    return g_strdup_printf (_ ("%s; %s, or %s."), lost, takes, drop);
  if (takes != NULL || drop != NULL)
    return g_strdup_printf (_ ("%s; %s."), lost, takes != NULL ? takes : drop);
  labels = join (price->lost);
  /* Translators: "G is lost: why; nothing that was tried would save G." */
  return g_strdup_printf (_ ("%s; nothing that was tried would save %s."), lost, labels);
}

gboolean
ff_change_price_tells (const FfChangePrice *price)
{
  return price->lost->len > 0 || price->won->len > 0 || fabs (price->more_cost) >= SAME_COST;
}
