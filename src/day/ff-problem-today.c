/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is decided and what has happened, as the planner keeps it: locks, flown lines, and the state
 * that the crew has said batteries are in today. */
#include "ff-plan-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-battery-log.h"
#include "ff-lock.h"
#include "ff-usable.h"

/* Where the crew's limits name no reserve (common practice, no source). */
#define USUAL_RESERVE_PERCENT 30.0

static int
index_in (const GPtrArray *items, const char *id)
{
  for (guint i = 0; i < items->len; i++)
    if (g_str_equal (((const FfItem *) g_ptr_array_index (items, i))->id, id))
      return (int) i;
  return -1;
}

static int
shot_index (const FfDayProblem *self, const char *id)
{
  for (guint i = 0; i < self->records->len; i++)
    if (g_str_equal (((const FfShot *) g_ptr_array_index (self->records, i))->id, id))
      return (int) i;
  return -1;
}

/* The stack of these two, in whatever order; FF_ANY_FILTER: not at hand. */
static int
find_stack (const FfDayProblem *self, const char *first, const char *second)
{
  for (guint i = 0; i < self->filter_items->len; i++)
    {
      const FfItem *one = g_ptr_array_index (self->filter_items, i);
      const FfItem *other = g_ptr_array_index (self->second_items, i);

      if (other != NULL
          && ((g_str_equal (one->id, first) && g_str_equal (other->id, second))
              || (g_str_equal (one->id, second) && g_str_equal (other->id, first))))
        return (int) i;
    }
  return FF_ANY_FILTER;
}

/* A filter of one strength. A variable one may stand at any of its settings: which is left to the
 * planner, so it is no lock. FALSE: not at hand. */
static gboolean
find_filter (const FfDayProblem *self, const char *id, int *ret_filter)
{
  int first = index_in (self->filter_items, id);

  *ret_filter = first;
  if (*id == '\0' || (self->clear != NULL && g_str_equal (self->clear->id, id)))
    *ret_filter = FF_NO_FILTER;
  else if (first >= 0 && first + 1 < (int) self->filter_items->len
           && g_ptr_array_index (self->second_items, first + 1) == NULL
           && g_ptr_array_index (self->filter_items, first + 1)
                  == g_ptr_array_index (self->filter_items, first))
    *ret_filter = FF_ANY_FILTER;
  else if (first < 0)
    {
      *ret_filter = FF_ANY_FILTER;
      return FALSE;
    }
  return TRUE;
}

static gboolean
is_locked (const FfDayProblem *self, int shot)
{
  for (guint i = 0; i < self->locks->len; i++)
    if ((int) g_array_index (self->locks, FfSortieLock, i).shot == shot)
      return TRUE;
  return FALSE;
}

static const char *
label_of (const FfDay *day, const char *id)
{
  const FfItem *item = ff_day_item (day, id);

  return item != NULL ? item->label : id;
}

/* ---- Flown lines ---- */

static const FfFlight *
flight_before (const FfDay *day, guint index)
{
  return index > 0 ? g_ptr_array_index (day->flights, index - 1) : NULL;
}

/* What really flew need not be what a plan could have flown: a take that slipped past its window, a
 * battery changed in a minute. Then the time is left to the planner, or the shot would count as lost. */
static gboolean
can_keep_time (const FfDayProblem *self, guint index, const FfSortieShot *shot)
{
  const FfFlight *flight = g_ptr_array_index (self->day->flights, index);
  const FfFlight *before = flight_before (self->day, index);
  gint64 off = flight->off - flight->off % 60;
  gint64 from = MAX (off + self->problem.out_minutes * 60, shot->window_from);

  if (shot->fixed_time && from != shot->window_from)
    return FALSE;
  return off >= self->problem.from && from + shot->minutes * 60 <= shot->window_to
         && (before == NULL
             || off >= before->down + MAX (self->problem.battery_change_minutes,
                                           self->problem.filter_change_minutes) * 60);
}

/* Flown again sooner than the charge plan allows: the planner would not believe it. */
static gboolean
can_keep_battery (const FfDayProblem *self, guint index)
{
  const FfFlight *flight = g_ptr_array_index (self->day->flights, index);
  int minutes = self->problem.cool_minutes + self->problem.charge_minutes;

  for (guint i = 0; i < index; i++)
    {
      const FfFlight *other = g_ptr_array_index (self->day->flights, i);

      if (g_str_equal (other->battery_id, flight->battery_id)
          && flight->off < other->down + minutes * 60)
        return FALSE;
    }
  return TRUE;
}

static void
add_flown (FfDayProblem *self, guint index)
{
  const FfFlight *flight = g_ptr_array_index (self->day->flights, index);
  int shot = shot_index (self, flight->line_id);
  int battery = index_in (self->battery_items, flight->battery_id);
  FfSortieLock lock = { .shot = (guint) shot, FF_ANY_BATTERY, FF_ANY_FILTER, FF_ANY_TIME };

  if (shot < 0 || is_locked (self, shot))
    return;
  if (battery >= 0 && can_keep_battery (self, index))
    lock.battery = battery;
  if (flight->filter_ids->len <= 1)
    find_filter (self, flight->filter_ids->len > 0 ? g_ptr_array_index (flight->filter_ids, 0) : "",
                 &lock.filter);
  else if (flight->filter_ids->len == 2)
    lock.filter = find_stack (self, g_ptr_array_index (flight->filter_ids, 0),
                              g_ptr_array_index (flight->filter_ids, 1));
  if (can_keep_time (self, index, &g_array_index (self->shots, FfSortieShot, shot)))
    lock.off_by = flight->off - flight->off % 60;
  g_array_append_val (self->locks, lock);
}

/* ---- What the crew has decided ---- */

static void
say_missing (FfDayProblem *self, const char *shot, const char *item)
{
  g_ptr_array_add (self->said,
                   /* Translators: label of a shot, label of a battery or filter. */
                   g_strdup_printf (_ ("%s is locked to %s, which is not at hand: that lock is not "
                                       "kept."),
                                    shot, item));
}

static void
add_lock (FfDayProblem *self, const FfLock *record)
{
  int shot = shot_index (self, record->shot_id);
  FfSortieLock lock = { .shot = (guint) shot, FF_ANY_BATTERY, FF_ANY_FILTER, FF_ANY_TIME };
  const char *label;

  if (shot < 0 || is_locked (self, shot))
    return;
  label = g_array_index (self->shots, FfSortieShot, shot).label;
  if (*record->battery_id != '\0')
    lock.battery = index_in (self->battery_items, record->battery_id);
  if (*record->battery_id != '\0' && lock.battery < 0)
    say_missing (self, label, label_of (self->day, record->battery_id));
  if (record->keep_filter && !find_filter (self, record->filter_id, &lock.filter))
    say_missing (self, label, label_of (self->day, record->filter_id));
  if (record->off_by != FF_NO_CLOCK)
    ff_day_instant (self->day, record->off_by, label, &lock.off_by, NULL);
  g_array_append_val (self->locks, lock);
}

/* What has flown comes first: it can't be decided any more. */
void
ff_problem_add_locks (FfDayProblem *self)
{
  for (guint i = 0; i < self->day->flights->len; i++)
    if (*((const FfFlight *) g_ptr_array_index (self->day->flights, i))->line_id != '\0')
      add_flown (self, i);
  for (guint i = 0; i < self->day->locks->len; i++)
    add_lock (self, g_ptr_array_index (self->day->locks, i));
  self->problem.locks = (const FfSortieLock *) (gpointer) self->locks->data;
  self->problem.n_locks = self->locks->len;
}

/* ---- What stands ---- */

/* What stands in front on a line, as the planner numbers it; FF_ANY_FILTER: not at hand. */
static int
filter_of_line (const FfDayProblem *self, const FfPlanLine *line)
{
  const FfItem *items[2] = { NULL, NULL };
  int filter;

  for (guint i = 0; i < MIN (line->filters->len, G_N_ELEMENTS (items)); i++)
    {
      items[i] = ff_items_labelled (self->day->items, g_ptr_array_index (line->filters, i));
      if (items[i] == NULL)
        return FF_ANY_FILTER;
    }
  if (items[1] != NULL)
    return find_stack (self, items[0]->id, items[1]->id);
  find_filter (self, items[0] != NULL ? items[0]->id : "", &filter);
  return filter;
}

static void
add_line_so_far (FfDayProblem *self, const FfPlanLine *line)
{
  const FfItem *battery = ff_items_labelled (self->day->items, line->battery);
  FfSortieLock lock = {
    .battery = battery != NULL ? index_in (self->battery_items, battery->id) : FF_ANY_BATTERY,
    .filter = filter_of_line (self, line),
    .off_by = line->off_by,
  };

  for (guint i = 0; i < line->takes->len; i++)
    {
      int shot = shot_index (self, ((FfPlanTake *) g_ptr_array_index (line->takes, i))->shot_id);

      lock.shot = (guint) shot;
      if (shot >= 0)
        g_array_append_val (self->so_far, lock);
    }
}

/* The lines that stand count as the plan so far, where the crew has set a margin for it. */
void
ff_problem_stay_close (FfDayProblem *self)
{
  if (self->day->stands == NULL)
    return;
  for (guint i = 0; i < self->day->stands->lines->len; i++)
    add_line_so_far (self, g_ptr_array_index (self->day->stands->lines, i));
  self->problem.plan_so_far = (const FfSortieLock *) (gpointer) self->so_far->data;
  self->problem.n_so_far = self->so_far->len;
  self->problem.stay_margin = self->day->job->stay_margin;
}

/* ---- The words of a locked line ---- */

static const FfFlight *
flight_of (const FfDay *day, const char *shot_id)
{
  for (guint i = 0; i < day->flights->len; i++)
    {
      const FfFlight *flight = g_ptr_array_index (day->flights, i);

      if (g_str_equal (flight->line_id, shot_id))
        return flight;
    }
  return NULL;
}

static char *
lock_parts (const FfDay *day, const FfLock *lock)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  if (*lock->battery_id != '\0')
    g_ptr_array_add (parts, g_strdup (label_of (day, lock->battery_id)));
  if (lock->keep_filter)
    g_ptr_array_add (parts, g_strdup (*lock->filter_id != '\0' ? label_of (day, lock->filter_id)
                                                               : _ ("no filter")));
  if (lock->off_by != FF_NO_CLOCK)
    {
      g_autofree char *clock = ff_clock_format (lock->off_by);

      g_ptr_array_add (parts, g_strdup_printf (_ ("off by %s"), clock));
    }
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (", ", (char **) parts->pdata);
}

char *
ff_problem_lock_words (const FfDayProblem *self, guint shot)
{
  const FfShot *record = g_ptr_array_index (self->records, shot);
  const FfFlight *flight = flight_of (self->day, record->id);
  const FfLock *lock = ff_locks_find (self->day->locks, record->id);

  if (flight != NULL)
    {
      g_autofree char *clock = ff_instant_clock ((double) flight->off, self->day->zone);

      /* Translators: label of a shot, label of a battery, clock time. */
      return g_strdup_printf (_ ("%s has flown on %s, off at %s."), record->label,
                              label_of (self->day, flight->battery_id), clock);
    }
  if (lock != NULL)
    {
      g_autofree char *parts = lock_parts (self->day, lock);

      /* Translators: label of a shot, then what it is locked to: "b4, ND8, off by 16:40". */
      return g_strdup_printf (_ ("%s is locked: %s."), record->label, parts);
    }
  return NULL;
}

/* ---- Batteries today ---- */

/* Of the day of the shoot, and not after a flight of it: what that used is in the plan already. */
static gboolean
counts_today (const FfDay *day, const char *battery_id, const FfBatteryDay *said)
{
  gint64 from, to;

  ff_day_bounds (day->date, day->zone, &from, &to);
  for (guint i = 0; i < day->flights->len; i++)
    {
      const FfFlight *flight = g_ptr_array_index (day->flights, i);

      if (g_str_equal (flight->battery_id, battery_id) && flight->off <= said->at)
        return FALSE;
    }
  return said->at >= from && said->at < to;
}

/* Nothing in it: the charger comes first, whatever the rule about legs. */
static void
empty (FfSortieBattery *battery)
{
  battery->minutes_flown = battery->usable_minutes;
  battery->legs_flown = MAX (battery->legs_at_most, 1);
}

static void
part_use (const FfDay *day, const FfBatteryDay *said, FfSortieBattery *battery)
{
  double reserve = ff_usable_reserve (day->limits), left;

  if (isnan (reserve))
    reserve = USUAL_RESERVE_PERCENT;
  left = battery->usable_minutes * (said->percent - reserve) / (100 - reserve);
  if (isnan (said->percent) || left < 1)
    {
      empty (battery);
      return;
    }
  if (ff_battery_day_is_full (said))
    return;
  battery->minutes_flown = battery->usable_minutes - (int) floor (left);
  battery->legs_flown = 1;
}

static void
say_state (FfDayProblem *self, const FfItem *item, const FfBatteryDay *said)
{
  g_autofree char *clock = ff_instant_clock ((double) said->at, self->day->zone);

  g_ptr_array_add (self->said,
                   /* Translators: label of a battery, "part-used" or the like, clock time. */
                   g_strdup_printf (_ ("%s: %s at %s, and planned so."), item->label,
                                    ff_name_text (&ff_names_battery_day, (int) said->state), clock));
}

static void
set_battery (FfDayProblem *self, const FfItem *item, const FfBatteryDay *said,
             FfSortieBattery *battery)
{
  gint64 ready = 0;

  switch (said->state)
    {
    case FF_BATTERY_DAY_FULL:
    case FF_BATTERY_DAY_COLD: /* it is warmed until it flies */
      return;
    case FF_BATTERY_DAY_PART_USED:
      part_use (self->day, said, battery);
      break;
    case FF_BATTERY_DAY_HOT:
      ready = said->at + self->problem.cool_minutes * 60;
      break;
    case FF_BATTERY_DAY_CHARGING:
      ready = said->until > 0 ? said->until : said->at + self->problem.charge_minutes * 60;
      battery->on_charger = ready > self->problem.from;
      break;
    case FF_BATTERY_DAY_STORAGE:
      empty (battery);
      break;
    }
  if (ready > battery->ready_at)
    battery->ready_at = ready;
  say_state (self, item, said);
}

void
ff_problem_set_batteries (FfDayProblem *self)
{
  for (guint i = 0; i < self->battery_items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (self->battery_items, i);
      const FfBatteryDay *said = g_hash_table_lookup (self->day->battery_days, item->id);

      if (said != NULL && counts_today (self->day, item->id, said))
        set_battery (self, item, said, &g_array_index (self->batteries, FfSortieBattery, i));
    }
}
