/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What might make a change good, and each as a change that can be planned. Which is less trouble
 * than which is judgement (common practice, no source): what is at hand or near comes first, then
 * what somebody else must agree to, then what must be bought. */
#include "ff-change-private.h"

/* Windows are asked for in these steps: what somebody would say on the telephone. */
static const int near_minutes[] = { 5, 10, 15 };
static const int far_minutes[] = { 20, 30, 45, 60 };

#define MOST_BATTERIES 2
#define STRONGEST_STOPS 10

void
ff_remedy_clear (FfRemedy *remedy)
{
  g_clear_pointer (&remedy->label, g_free);
  g_clear_pointer (&remedy->where, g_free);
  g_clear_pointer (&remedy->saves, g_ptr_array_unref);
}

/* ---- As a change ---- */

void
ff_trial_clear (FfTrial *trial)
{
  g_clear_pointer (&trial->list, g_free);
  g_clear_pointer (&trial->move, g_free);
}

void
ff_trial_drop (FfTrial *trial, const FfDayChange *change, const char *shot)
{
  *trial = (FfTrial) { .change = *change, .list = ff_names_and (change->drop, shot) };
  trial->change.drop = trial->list;
}

/* The window as the change has it, opened so much further. */
static gboolean
widen (FfTrial *trial, const FfDay *day, const FfRemedy *remedy, GError **error)
{
  const FfShot *shot = ff_day_shot (day, remedy->label);
  g_autofree char *opens = NULL;
  g_autofree char *closes = NULL;
  int from, to;

  g_return_val_if_fail (shot != NULL, FALSE);
  if (!ff_day_moved_window (&trial->change, shot, &from, &to, error))
    return FALSE;
  if (remedy->kind == FF_REMEDY_EARLIER)
    from = MAX (from - remedy->minutes, 0);
  else
    to = MIN (to + remedy->minutes, 24 * 60);
  opens = ff_clock_format (from);
  closes = ff_clock_format (to);
  trial->move = g_strdup_printf ("%s=%s-%s", shot->label, opens, closes);
  trial->list = ff_names_and (trial->change.moves, trial->move);
  trial->change.moves = trial->list;
  return TRUE;
}

gboolean
ff_trial_remedy (FfTrial *trial,
                 const FfDay *day,
                 const FfDayChange *change,
                 const FfRemedy *remedy,
                 GError **error)
{
  *trial = (FfTrial) { .change = *change };
  switch (remedy->kind)
    {
    case FF_REMEDY_ATTEND:
      trial->change.attended = TRUE;
      break;
    case FF_REMEDY_FETCH:
      trial->list = ff_names_and (change->with, remedy->label);
      trial->change.with = trial->list;
      break;
    case FF_REMEDY_EARLIER:
    case FF_REMEDY_LATER:
      return widen (trial, day, remedy, error);
    case FF_REMEDY_BATTERY:
      trial->change.more_batteries += remedy->count;
      break;
    case FF_REMEDY_CHARGER:
      trial->change.more_charger_slots++;
      break;
    case FF_REMEDY_FILTER:
      trial->change.more_filter_stops = remedy->stops;
      break;
    case FF_REMEDY_NONE:
      break;
    }
  return TRUE;
}

/* ---- All that might help ---- */

static void
add (GArray *remedies, FfRemedy remedy)
{
  g_array_append_val (remedies, remedy);
}

static gboolean
is_named_out (const FfDayChange *change, const FfItem *item)
{
  for (guint i = 0; change->without != NULL && change->without[i] != NULL; i++)
    if (g_ascii_strcasecmp (change->without[i], item->label) == 0
        || g_str_equal (change->without[i], item->id))
      return TRUE;
  return FALSE;
}

/* What the crew owns and this job does not use: left off its list, or out with somebody. Nothing
 * that is defect or quarantined is ever fetched. */
static gboolean
can_be_fetched (const FfDay *day, const FfDayChange *change, const FfItem *item)
{
  if (item->kind != FF_KIND_FILTER && item->kind != FF_KIND_BATTERY
      && item->kind != FF_KIND_CHARGER)
    return FALSE;
  if (is_named_out (change, item))
    return FALSE;
  return item->state == FF_STATE_OUT
         || (item->state == FF_STATE_SERVICEABLE && !ff_day_uses (day, item));
}

static void
add_fetches (GArray *remedies, const FfDay *day, const FfDayChange *change)
{
  for (guint i = 0; i < day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (day->items, i);
      gboolean out = item->state == FF_STATE_OUT && item->out_with != NULL
                     && item->out_with[0] != '\0';

      if (can_be_fetched (day, change, item))
        add (remedies, (FfRemedy) { FF_REMEDY_FETCH, .label = g_strdup (item->label),
                                    .where = out ? g_strdup (item->out_with) : NULL });
    }
}

/* Nobody asks a ferry to wait: a time that someone else keeps is not moved. */
static void
add_windows (GArray *remedies, const FfShot *shot, const int *minutes, guint n)
{
  for (guint i = 0; !shot->fixed_time && i < n; i++)
    {
      add (remedies, (FfRemedy) { FF_REMEDY_LATER, .label = g_strdup (shot->label),
                                  .minutes = minutes[i] });
      add (remedies, (FfRemedy) { FF_REMEDY_EARLIER, .label = g_strdup (shot->label),
                                  .minutes = minutes[i] });
    }
}

static gboolean
owns_filter (const FfDay *day, const FfDayChange *change, int stops)
{
  for (guint i = 0; i < day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (day->items, i);

      if (item->kind == FF_KIND_FILTER && item->state == FF_STATE_SERVICEABLE
          && !is_named_out (change, item) && ff_day_uses (day, item)
          && item->stops < stops + 0.05 && item->stops_to > stops - 0.05)
        return TRUE;
    }
  return FALSE;
}

static void
add_gear (GArray *remedies, const FfDay *day, const FfDayChange *change)
{
  for (int count = 1; count <= MOST_BATTERIES; count++)
    add (remedies, (FfRemedy) { FF_REMEDY_BATTERY, .count = count });
  add (remedies, (FfRemedy) { FF_REMEDY_CHARGER, .count = 1 });
  for (int stops = 1; stops <= STRONGEST_STOPS; stops++)
    if (!owns_filter (day, change, stops))
      add (remedies, (FfRemedy) { FF_REMEDY_FILTER, .stops = stops });
}

GArray *
ff_remedies_for (const FfDay *day, const FfDayChange *change, const FfShot *shot)
{
  GArray *remedies = g_array_new (FALSE, FALSE, sizeof (FfRemedy));

  g_array_set_clear_func (remedies, (GDestroyNotify) ff_remedy_clear);
  if (!change->attended)
    add (remedies, (FfRemedy) { FF_REMEDY_ATTEND });
  add_fetches (remedies, day, change);
  add_windows (remedies, shot, near_minutes, G_N_ELEMENTS (near_minutes));
  add_gear (remedies, day, change);
  add_windows (remedies, shot, far_minutes, G_N_ELEMENTS (far_minutes));
  return remedies;
}
