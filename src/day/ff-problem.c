/* SPDX-License-Identifier: GPL-3.0-or-later */
/* States the planning problem from a day's records. */
#include "ff-plan-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-number.h"

/* In a sortie that must serve shots with different needs the shutter may close this far, at a
 * price; below it motion stutters (common practice, no source). */
#define NARROWEST_ANGLE_DEG 45.0
/* On the ground between two legs on one battery, without and with another filter (common practice,
 * no source). */
#define RELAUNCH_MINUTES 1
#define FILTER_LANDING_MINUTES 3

static gboolean
missing (GError **error, const FfDay *day, const char *sentence)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", day->job->title, sentence);
  return FALSE;
}

static gboolean
check_day (const FfDay *day, GError **error)
{
  if (!day->has_date)
    return missing (error, day, _ ("the job has no date; enter the day of the shoot"));
  if (day->place == NULL)
    return missing (error, day, _ ("the job has no place; enter where it is flown"));
  if (day->shots->len == 0)
    return missing (error, day, _ ("the job has no shots; enter at least one"));
  if (ff_day_aircraft (day) == NULL)
    return missing (error, day, _ ("no serviceable aircraft; enter one in the gear"));
  if (ff_day_camera (day) == NULL)
    return missing (error, day, _ ("the aircraft has no camera; enter what it carries"));
  return TRUE;
}

gboolean
ff_is_named (const char *const *names, const char *label, const char *id)
{
  for (guint i = 0; names != NULL && names[i] != NULL; i++)
    if (g_ascii_strcasecmp (names[i], label) == 0 || g_str_equal (names[i], id))
      return TRUE;
  return FALSE;
}

/* An item that is not here would be planned with in silence: unknown names are an error. */
static gboolean
check_items (const FfDay *day, const char *const *names, GError **error)
{
  for (guint i = 0; names != NULL && names[i] != NULL; i++)
    {
      const char *const one[] = { names[i], NULL };
      gboolean known = FALSE;

      for (guint j = 0; j < day->items->len && !known; j++)
        {
          const FfItem *item = g_ptr_array_index (day->items, j);

          known = ff_is_named (one, item->label, item->id);
        }
      if (!known)
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("no item is labelled “%s”; the gear list shows the labels"), names[i]);
          return FALSE;
        }
    }
  return TRUE;
}

/* ---- Shots ---- */

/* "18:20" moves the window there, as long as it was; "18:20-18:40" sets both ends. */
static gboolean
read_move (const char *text, const FfShot *shot, int *ret_from, int *ret_to, GError **error)
{
  g_auto (GStrv) ends = g_strsplit (text, "-", 2);

  if (!ff_clock_parse (ends[0] != NULL ? ends[0] : "", ret_from, error))
    return FALSE;
  *ret_to = *ret_from + shot->window_to - shot->window_from;
  if (ends[0] != NULL && ends[1] != NULL && !ff_clock_parse (ends[1], ret_to, error))
    return FALSE;
  if (*ret_to - *ret_from >= shot->minutes)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("the window %s is shorter than the shot, which takes %d min"), text,
               shot->minutes);
  return FALSE;
}

gboolean
ff_day_moved_window (const FfDayChange *change,
                     const FfShot *shot,
                     int *ret_from,
                     int *ret_to,
                     GError **error)
{
  *ret_from = shot->window_from;
  *ret_to = shot->window_to;
  for (guint i = 0; change->moves != NULL && change->moves[i] != NULL; i++)
    {
      const char *equals = strchr (change->moves[i], '=');
      gsize length = equals != NULL ? (gsize) (equals - change->moves[i]) : 0;

      if (equals != NULL && strlen (shot->label) == length
          && g_ascii_strncasecmp (change->moves[i], shot->label, length) == 0
          && !read_move (equals + 1, shot, ret_from, ret_to, error))
        return FALSE;
    }
  if (shot->sun_leaves != FF_NO_CLOCK)
    *ret_to = MIN (*ret_to, shot->sun_leaves);
  return TRUE;
}

static gboolean
check_moves (const FfDay *day, const FfDayChange *change, GError **error)
{
  for (guint i = 0; change->moves != NULL && change->moves[i] != NULL; i++)
    {
      g_auto (GStrv) parts = g_strsplit (change->moves[i], "=", 2);
      gboolean known = FALSE;

      for (guint j = 0; parts[0] != NULL && parts[1] != NULL && j < day->shots->len; j++)
        {
          const FfShot *shot = g_ptr_array_index (day->shots, j);

          known = known || g_ascii_strcasecmp (shot->label, parts[0]) == 0;
        }
      if (!known)
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("“%s” moves no shot of this job; accepted: SHOT=HH:MM"),
                       change->moves[i]);
          return FALSE;
        }
    }
  return TRUE;
}

const FfPrices *
ff_day_prices_under (const FfDay *day, const FfDayChange *change)
{
  return change != NULL && change->prices != NULL ? change->prices : &day->prices;
}

/* The shot of the day counts double where it was given no weight of its own. */
double
ff_day_shot_weight (const FfPrices *prices, const FfShot *shot)
{
  if (shot->must_fly)
    return prices->must_fly;
  if (shot->weight > 0)
    return shot->weight;
  return (shot->most_wanted ? 2 : 1) * prices->not_flown;
}

/* The narrowest angle of a sortie's own is none that the camera lacks. */
static gboolean
check_want (const FfDayProblem *self, FfSortieShot *shot, GError **error)
{
  const FfItem *camera = ff_day_camera (self->day);

  ff_day_fit_want (camera, &shot->want);
  if (camera->shutter_by == FF_SHUTTER_BY_ANGLE && camera->angle_low_deg > NARROWEST_ANGLE_DEG)
    shot->own_from_angle_deg = camera->angle_low_deg;
  return ff_advise_check (&self->camera, &shot->want, error);
}

/* Groups are names in the records and numbers in the problem, from 1 in order of appearance. */
static guint
match_group (const FfDayProblem *self, const FfShot *shot)
{
  guint highest = 0;

  if (shot->match_group == NULL || *shot->match_group == '\0')
    return 0;
  for (guint i = 0; i < self->records->len; i++)
    {
      const FfShot *other = g_ptr_array_index (self->records, i);
      guint group = g_array_index (self->shots, FfSortieShot, i).match_group;

      if (group > 0 && g_str_equal (other->match_group, shot->match_group))
        return group;
      highest = MAX (highest, group);
    }
  return highest + 1;
}

static gboolean
add_shot (FfDayProblem *self, const FfDayChange *change, FfShot *record, GError **error)
{
  FfSortieShot shot = {
    .label = record->label,
    .minutes = record->minutes,
    .weight = ff_day_shot_weight (self->problem.prices, record),
    .free_order = (change->any_order || self->day->job->any_order) && !record->fixed_time,
    .fixed_time = record->fixed_time,
    .must_fly = record->must_fly,
    .match_group = match_group (self, record),
    .own_from_angle_deg = NARROWEST_ANGLE_DEG,
  };
  double *light;
  int from, to;

  if (!ff_day_want (record, &shot.want, error)
      || !ff_day_moved_window (change, record, &from, &to, error)
      || !ff_day_instant (self->day, from, record->label, &shot.window_from, error)
      || !ff_day_instant (self->day, to, record->label, &shot.window_to, error)
      || !check_want (self, &shot, error))
    {
      g_prefix_error (error, _ ("shot %s: "), record->label);
      return FALSE;
    }
  light = ff_day_light (self->day, record, self->sky, self->problem.from, self->problem.to);
  shot.ev100 = light;
  g_ptr_array_add (self->lights, light);
  g_array_append_val (self->shots, shot);
  g_ptr_array_add (self->records, record);
  return TRUE;
}

static int
compare_shots (gconstpointer a, gconstpointer b)
{
  const FfShot *first = *(FfShot *const *) a, *second = *(FfShot *const *) b;

  if (first->window_from != second->window_from)
    return first->window_from - second->window_from;
  if (first->window_to != second->window_to)
    return first->window_to - second->window_to;
  return first->position - second->position;
}

/* The order they are flown in: by the time that their windows open. */
static gboolean
add_shots (FfDayProblem *self, const FfDayChange *change, GError **error)
{
  g_autoptr (GPtrArray) order = g_ptr_array_copy (self->day->shots, NULL, NULL);

  g_ptr_array_set_free_func (order, NULL);
  g_ptr_array_sort (order, compare_shots);
  for (guint i = 0; i < order->len; i++)
    {
      FfShot *shot = g_ptr_array_index (order, i);

      if (!ff_is_named (change->drop, shot->label, shot->id)
          && !add_shot (self, change, shot, error))
        return FALSE;
    }
  return TRUE;
}

/* A moved shot may have to change its place in the order. */
static void
sort_moved (FfDayProblem *self)
{
  FfSortieShot *shots = (FfSortieShot *) (gpointer) self->shots->data;

  for (guint i = 1; i < self->shots->len; i++)
    for (guint j = i; j > 0 && shots[j].window_from < shots[j - 1].window_from; j--)
      {
        FfSortieShot shot = shots[j];
        gpointer record = self->records->pdata[j];

        shots[j] = shots[j - 1];
        self->records->pdata[j] = self->records->pdata[j - 1];
        shots[j - 1] = shot;
        self->records->pdata[j - 1] = record;
      }
}

/* ---- The whole ---- */

static gboolean
set_hours (FfDayProblem *self, const FfDayChange *change, GError **error)
{
  const FfJob *job = self->day->job;
  int first_off = job->first_off, all_down = job->all_down;

  for (guint i = 0; i < self->day->shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (self->day->shots, i);
      int off = MAX (shot->window_from - job->out_minutes, 0);

      if (job->first_off == FF_NO_CLOCK && (first_off == FF_NO_CLOCK || off < first_off))
        first_off = off;
      if (job->all_down == FF_NO_CLOCK)
        all_down = MAX (all_down, shot->window_to + job->back_minutes);
    }
  first_off += MAX (change->late_minutes, 0);
  if (!ff_day_instant (self->day, first_off, _ ("first off"), &self->problem.from, error)
      || !ff_day_instant (self->day, all_down, _ ("all down"), &self->problem.to, error))
    return FALSE;
  if (self->problem.to <= self->problem.from)
    return missing (error, self->day, _ ("all down is not after first off; put the hours right"));
  return TRUE;
}

/* In the cold a part-used battery stays down, whatever the rule allows: it has cooled. */
static void
set_legs (FfDayProblem *self, const FfDayChange *change)
{
  const FfJob *job = self->day->job;
  gboolean is_cold = isfinite (job->temperature_c) && job->temperature_c < FF_RELAUNCH_FROM_C;
  int legs = change->legs_per_battery > 0 ? change->legs_per_battery : job->legs_per_battery;

  for (guint i = 0; legs > 1 && !is_cold && i < self->batteries->len; i++)
    g_array_index (self->batteries, FfSortieBattery, i).legs_at_most = (guint) legs;
  self->problem.relaunch_minutes = RELAUNCH_MINUTES;
  self->problem.filter_landing_minutes = FILTER_LANDING_MINUTES;
}

static void
set_times (FfDayProblem *self)
{
  const FfJob *job = self->day->job;

  self->problem.out_minutes = job->out_minutes;
  self->problem.back_minutes = job->back_minutes;
  self->problem.battery_change_minutes = job->battery_change_minutes;
  self->problem.filter_change_minutes = job->filter_change_minutes;
}

static void
point_at_arrays (FfDayProblem *self)
{
  self->problem.camera = &self->camera;
  self->problem.shots = (const FfSortieShot *) (gpointer) self->shots->data;
  self->problem.n_shots = self->shots->len;
  self->problem.filters = (const FfSortieFilter *) (gpointer) self->filters->data;
  self->problem.n_filters = self->filters->len;
  self->problem.batteries = (const FfSortieBattery *) (gpointer) self->batteries->data;
  self->problem.n_batteries = self->batteries->len;
}

FfDayProblem *
ff_day_problem_new (const FfDay *day, const FfDayChange *change, GError **error)
{
  g_autoptr (FfDayProblem) self = g_new0 (FfDayProblem, 1);

  self->day = day;
  self->sky = change->other_sky ? change->sky : day->job->sky;
  self->shots = g_array_new (FALSE, FALSE, sizeof (FfSortieShot));
  self->filters = g_array_new (FALSE, FALSE, sizeof (FfSortieFilter));
  self->batteries = g_array_new (FALSE, FALSE, sizeof (FfSortieBattery));
  self->records = g_ptr_array_new ();
  self->filter_items = g_ptr_array_new ();
  self->second_items = g_ptr_array_new ();
  self->battery_items = g_ptr_array_new ();
  self->lights = g_ptr_array_new_with_free_func (g_free);
  self->loans = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_item_free);
  self->locks = g_array_new (FALSE, FALSE, sizeof (FfSortieLock));
  self->so_far = g_array_new (FALSE, FALSE, sizeof (FfSortieLock));
  self->said = g_ptr_array_new_with_free_func (g_free);
  if (!check_day (day, error) || !check_items (day, change->without, error)
      || !check_items (day, change->with, error) || !check_moves (day, change, error)
      || !ff_day_camera_range (ff_day_camera (day), &self->camera, error)
      || !set_hours (self, change, error))
    return NULL;
  set_times (self);
  self->problem.prices = ff_day_prices_under (day, change);
  ff_problem_add_gear (self, change);
  set_legs (self, change);
  ff_problem_set_batteries (self);
  if (self->batteries->len == 0)
    {
      missing (error, day, _ ("no serviceable battery; enter one in the gear"));
      return NULL;
    }
  if (!add_shots (self, change, error))
    return NULL;
  sort_moved (self);
  point_at_arrays (self);
  ff_problem_add_locks (self);
  if (!change->other_sky)
    ff_problem_stay_close (self);
  return g_steal_pointer (&self);
}

void
ff_day_problem_free (FfDayProblem *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->shots);
  g_array_unref (self->filters);
  g_array_unref (self->batteries);
  g_ptr_array_unref (self->records);
  g_ptr_array_unref (self->filter_items);
  g_ptr_array_unref (self->second_items);
  g_array_unref (self->so_far);
  g_ptr_array_unref (self->battery_items);
  g_ptr_array_unref (self->lights);
  g_ptr_array_unref (self->loans);
  g_array_unref (self->locks);
  g_ptr_array_unref (self->said);
  g_free (self);
}
