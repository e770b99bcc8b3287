/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which shot to drop first when the day gets tight: the one whose loss costs least, found by planning
 * the day without it. */
#include "ff-plan-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static void
drop_free (gpointer data)
{
  FfDrop *drop = data;

  g_free (drop->shot);
  g_free (drop->title);
  g_free (drop);
}

const char **
ff_names_and (const char *const *names, const char *name)
{
  guint n = names != NULL ? g_strv_length ((char **) names) : 0;
  const char **more = g_new0 (const char *, n + 2);

  for (guint i = 0; i < n; i++)
    more[i] = names[i];
  more[n] = name;
  return more;
}

const FfShot *
ff_day_shot (const FfDay *day, const char *label)
{
  for (guint i = 0; i < day->shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (day->shots, i);

      if (g_str_equal (shot->label, label))
        return shot;
    }
  return NULL;
}

gboolean
ff_day_shot_clocks (const FfDay *day, const char *label, int *ret_from, int *ret_to)
{
  const FfShot *shot = ff_day_shot (day, label);

  if (shot == NULL)
    return FALSE;
  *ret_from = shot->window_from;
  *ret_to = shot->window_to;
  return TRUE;
}

static guint
count_lost (const FfCases *cases, const char *shot)
{
  guint n = 0;

  for (guint i = 0; cases != NULL && i < cases->cases->len; i++)
    {
      const FfCase *one = g_ptr_array_index (cases->cases, i);

      if (g_ptr_array_find_with_equal_func (one->lost, shot, g_str_equal, NULL))
        n++;
    }
  return n;
}

static gboolean
add_drop (GPtrArray *drops,
          const FfDay *day,
          const FfDayChange *change,
          const FfDayPlan *plan,
          const FfPlanTake *take,
          GError **error)
{
  g_autofree const char **dropped = ff_names_and (change->drop, take->shot);
  const FfShot *shot = ff_day_shot (day, take->shot);
  g_autoptr (FfDayPlan) without = NULL;
  FfDayChange fewer = *change;
  FfDrop *drop;

  fewer.drop = dropped;
  without = ff_day_plan_bare (day, &fewer, error);
  if (without == NULL || shot == NULL)
    return FALSE;
  drop = g_new0 (FfDrop, 1);
  drop->shot = g_strdup (take->shot);
  drop->title = g_strdup (take->title);
  drop->price = ff_day_shot_weight (ff_day_prices_under (day, change), shot) + without->cost
                - plan->cost;
  drop->lost_in = count_lost (plan->cases, take->shot);
  g_ptr_array_add (drops, drop);
  return TRUE;
}

static int
compare_drops (gconstpointer a, gconstpointer b)
{
  const FfDrop *first = *(FfDrop *const *) a, *second = *(FfDrop *const *) b;

  if (first->price != second->price)
    return first->price < second->price ? -1 : 1;
  return strcmp (first->shot, second->shot);
}

GPtrArray *
ff_day_drop_first (const FfDay *day,
                   const FfDayChange *change,
                   const FfDayPlan *plan,
                   FfGoOn go_on,
                   gpointer data,
                   GError **error)
{
  static const FfDayChange no_change;
  g_autoptr (GPtrArray) drops = g_ptr_array_new_with_free_func (drop_free);

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        if ((go_on != NULL && !go_on (data))
            || !add_drop (drops, day, change != NULL ? change : &no_change, plan,
                          g_ptr_array_index (line->takes, j), error))
          return NULL;
    }
  g_ptr_array_sort (drops, compare_drops);
  return g_steal_pointer (&drops);
}

char *
ff_drop_words (const GPtrArray *drops)
{
  g_autoptr (GString) others = g_string_new (NULL);
  const FfDrop *first, *last;

  if (drops->len < 2)
    return NULL;
  first = g_ptr_array_index (drops, 0);
  last = g_ptr_array_index (drops, drops->len - 1);
  for (guint i = 1; i + 1 < drops->len; i++)
    g_string_append_printf (others, "%s%s", i > 1 ? ", " : "",
                            ((const FfDrop *) g_ptr_array_index (drops, i))->shot);
  if (others->len == 0)
    /* Translators: labels of two shots. */
    return g_strdup_printf (_ ("Drop first: %s; %s last."), first->shot, last->shot);
  /* Translators: labels of shots in the order in which they are given up. */
  return g_strdup_printf (_ ("Drop first: %s; then %s; %s last."), first->shot, others->str,
                          last->shot);
}
