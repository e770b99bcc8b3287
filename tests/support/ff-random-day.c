/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-random-day.h"

#include <math.h>
#include <string.h>

#include "ff-minute-price.h"
#include "ff-scale.h"

#define MINUTE 60

/* ---- Making ---- */

static guint
step (FfScale scale, const char *label)
{
  return (guint) ff_scale_find (scale, label);
}

static gboolean
one_in (FfTestRandom *random, int n)
{
  return ff_test_random_int (random, 1, n) == 1;
}

static void
random_shot (FfTestRandom *random, FfRandomDayParts parts, FfRandomDay *day, guint index, int *at)
{
  static const char *const labels[] = { "A", "B", "C", "D", "E", "F", "G", "H" };
  int minutes = ff_test_random_int (random, 3, 12);
  int from = *at + ff_test_random_int (random, 0, 25);
  int to = from + minutes + ff_test_random_int (random, 0, 30);
  double start = ff_test_random (random, 9, 15), slope = ff_test_random (random, -0.03, 0.005);

  for (guint i = 0; i < FF_RANDOM_DAY_MINUTES; i++)
    day->light[index][i] = start + slope * i;
  day->shots[index] = (FfSortieShot) {
    .label = labels[index], .window_from = from * MINUTE, .window_to = to * MINUTE,
    .minutes = minutes, .own_from_angle_deg = 45, .ev100 = day->light[index],
    .weight = ff_test_random_int (random, 0, 1) * ff_test_random (random, 20, 300),
    .fixed_time = one_in (random, 6),
    .want = { .intent = (FfIntent) ff_test_random_int (random, FF_INTENT_VIDEO,
                                                       FF_INTENT_TIMELAPSE),
              .fps = 25, .angle_deg = 180, .angle_from_deg = 144, .angle_to_deg = 216,
              .frames = 3, .step_stops = 2, .interval_s = 2, .max_iso = 400 },
  };
  if (parts & FF_RANDOM_MATCH)
    day->shots[index].match_group = one_in (random, 5) ? 2 : 1;
  if (parts & FF_RANDOM_FREE)
    day->shots[index].free_order = one_in (random, 2);
  if (parts & FF_RANDOM_LOCKS)
    day->shots[index].must_fly = one_in (random, 5);
  *at = from;
}

static void
random_lock (FfTestRandom *random, FfRandomDay *day, guint shot)
{
  const FfSortieProblem *problem = &day->problem;
  gint64 opens = day->shots[shot].window_from - problem->out_minutes * MINUTE;
  FfSortieLock lock = { shot, FF_ANY_BATTERY, FF_ANY_FILTER, FF_ANY_TIME };

  if (one_in (random, 2))
    lock.battery = ff_test_random_int (random, 0, (int) problem->n_batteries - 1);
  if (one_in (random, 2))
    lock.filter = ff_test_random_int (random, FF_NO_FILTER, (int) problem->n_filters - 1);
  if (one_in (random, 2))
    lock.off_by = opens + ff_test_random_int (random, 0, 3) * MINUTE;
  day->locks[day->problem.n_locks++] = lock;
}

static void
random_locks (FfTestRandom *random, FfRandomDay *day)
{
  int from = ff_test_random_int (random, 20, 120);

  day->problem.locks = day->locks;
  day->problem.pauses = day->pauses;
  if (one_in (random, 2))
    random_lock (random, day, 0);
  if (day->problem.n_shots > 2 && one_in (random, 2))
    random_lock (random, day, 2);
  day->pauses[0] = (FfSortiePause) { from * MINUTE, (from + 10) * MINUTE };
  day->problem.n_pauses = one_in (random, 3);
}

static void
random_gear (FfTestRandom *random, FfRandomDayParts parts, FfRandomDay *day)
{
  static const char *const labels[] = { "b1", "b2", "b3", "b4", "b5" };
  static const char *const names[] = { "1", "2", "3", "4", "5", "6" };

  for (guint i = 0; i < day->problem.n_filters + 1; i++)
    {
      day->filters[i] = (FfSortieFilter) { names[i], ff_test_random_int (random, 1, 7) };
      if (parts & FF_RANDOM_MATCH)
        day->filters[i].set = one_in (random, 2) ? "coast" : "old";
      if (parts & FF_RANDOM_MATCH)
        day->filters[i].price_per_take = one_in (random, 4);
    }
  for (guint i = 0; i < day->problem.n_batteries + 1; i++)
    {
      FfSortieBattery *battery = &day->batteries[i];

      *battery = (FfSortieBattery) { labels[i], ff_test_random_int (random, 10, 22),
                                     ff_test_random_int (random, 0, 60) * MINUTE };
      if (!(parts & FF_RANDOM_RELAUNCH))
        continue;
      battery->usable_minutes += 8;
      battery->legs_at_most = (guint) ff_test_random_int (random, 0, 3);
      battery->legs_flown = one_in (random, 4);
      battery->minutes_flown = battery->legs_flown > 0 ? ff_test_random_int (random, 1, 12) : 0;
    }
}

void
ff_random_day (FfTestRandom *random, FfRandomDayParts parts, FfRandomDay *day)
{
  int at = 0;

  memset (day, 0, sizeof *day);
  day->camera = (FfCameraRange) {
    .apertures = { { 2.8, pow (2, 1.5) } }, .n_apertures = 1,
    .iso_low = step (FF_SCALE_ISO, "100"), .iso_high = step (FF_SCALE_ISO, "6400"),
    .base_iso = { step (FF_SCALE_ISO, "100") }, .n_bases = 1,
    .shutter_fast = step (FF_SCALE_SHUTTER, "1/8000"), .shutter_slow = step (FF_SCALE_SHUTTER, "8"),
  };
  day->problem = (FfSortieProblem) {
    .to = (FF_RANDOM_DAY_MINUTES - 1) * MINUTE,
    .out_minutes = ff_test_random_int (random, 1, 3), .back_minutes = 2,
    .battery_change_minutes = 4, .filter_change_minutes = 2,
    .relaunch_minutes = ff_test_random_int (random, 0, 2), .filter_landing_minutes = 3,
    .charger_slots = (guint) ff_test_random_int (random, 0, 2), .cool_minutes = 20,
    .charge_minutes = ff_test_random_int (random, 20, 70), .charger_attended = TRUE,
    .shots = day->shots, .n_shots = (guint) ff_test_random_int (random, 1, 7),
    .filters = day->filters, .n_filters = (guint) ff_test_random_int (random, 0, 5),
    .batteries = day->batteries, .n_batteries = (guint) ff_test_random_int (random, 1, 4),
    .camera = &day->camera,
  };
  for (guint i = 0; i < day->problem.n_shots; i++)
    random_shot (random, parts, day, i, &at);
  random_gear (random, parts, day);
  if (parts & FF_RANDOM_LOCKS)
    random_locks (random, day);
}

void
ff_random_day_tiny (FfTestRandom *random, FfRandomDayParts parts, FfRandomDay *day)
{
  ff_random_day (random, parts, day);
  day->problem.n_shots = MIN (day->problem.n_shots, 4);
  day->problem.n_filters = MIN (day->problem.n_filters, 2);
  day->problem.n_batteries = MIN (day->problem.n_batteries, 2);
  for (guint i = 0; i < day->problem.n_shots; i++)
    {
      FfSortieShot *shot = &day->shots[i];
      gint64 narrow = shot->window_from
                      + (shot->minutes + ff_test_random_int (random, 0, 4)) * MINUTE;

      shot->window_to = MIN (shot->window_to, narrow);
    }
  for (guint i = 0; i < 2; i++)
    day->batteries[i].ready_at = ff_test_random_int (random, 0, 10) * MINUTE;
  for (guint i = 0; i < day->problem.n_locks; i++)
    {
      day->locks[i].battery = MIN (day->locks[i].battery, (int) day->problem.n_batteries - 1);
      day->locks[i].filter = MIN (day->locks[i].filter, (int) day->problem.n_filters - 1);
      if (day->locks[i].shot >= day->problem.n_shots)
        day->problem.n_locks = i;
    }
}

/* ---- Trying everything ---- */

/* Each subset of shots in each order that is allowed, cut into legs in every way, each leg behind
 * every filter on every battery, each take on every minute. */
typedef struct {
  const FfRandomDay *day;
  const FfSortieProblem *problem;
  const FfPrices *prices;
  double best;
} Plain;

typedef struct {
  int clock, filter; /* minute of the last landing, -1 before; filter -2: none fitted yet */
  int ready[FF_RANDOM_DAY_BATTERIES], minutes[FF_RANDOM_DAY_BATTERIES];
  guint legs[FF_RANDOM_DAY_BATTERIES];
  int slots[2];
  int fitted, land_by; /* the battery that is in; -1 */
  guint flown;         /* a bit per shot */
  int last_fixed;
  int matched[3];
  double cost;
} Ground;

typedef struct {
  int off, at, filter;
  guint flown;
  int last_fixed;
  int matched[3];
  double cost;
} Leg;

static void plain_from (Plain *self, const Ground *ground);

static double
weight_of (const Plain *self, guint shot)
{
  for (guint i = 0; i < self->problem->n_locks; i++)
    if (self->problem->locks[i].shot == shot)
      return self->prices->must_fly;
  if (self->day->shots[shot].must_fly)
    return self->prices->must_fly;
  return self->day->shots[shot].weight > 0 ? self->day->shots[shot].weight
                                           : self->prices->not_flown;
}

static void
plain_charge (const Plain *self, Ground *ground, int battery, int land_by)
{
  guint slots = self->problem->charger_slots;
  guint slot = slots == 2 && ground->slots[1] < ground->slots[0] ? 1 : 0;

  ground->ready[battery] = 1 << 20;
  if (slots == 0)
    return;
  ground->slots[slot] = MAX (land_by + self->problem->cool_minutes, ground->slots[slot])
                        + self->problem->charge_minutes;
  ground->ready[battery] = ground->slots[slot];
  ground->minutes[battery] = self->day->batteries[battery].usable_minutes;
  ground->legs[battery] = 0;
}

static gboolean
keeps_locks (const Plain *self, const Leg *leg, int battery)
{
  for (guint i = 0; i < self->problem->n_locks; i++)
    {
      const FfSortieLock *lock = &self->problem->locks[i];

      if (((leg->flown >> lock->shot) & 1)
          && ((lock->battery != FF_ANY_BATTERY && lock->battery != battery)
              || (lock->filter != FF_ANY_FILTER && lock->filter != leg->filter)
              || (lock->off_by != FF_ANY_TIME && lock->off_by != leg->off * MINUTE)))
        return FALSE;
    }
  return TRUE;
}

static gboolean
keeps_pauses (const Plain *self, int off, int down)
{
  for (guint i = 0; i < self->problem->n_pauses; i++)
    if (off * MINUTE < self->problem->pauses[i].to && down * MINUTE > self->problem->pauses[i].from)
      return FALSE;
  return TRUE;
}

/* On this battery, which is in already where it is a relaunch. */
static void
plain_land (Plain *self, const Ground *before, const Leg *leg, int battery, gboolean relaunch)
{
  Ground after = *before;
  gboolean swap = before->filter != leg->filter && before->filter != -2;
  int down = leg->at + self->problem->back_minutes;
  int turn = relaunch ? (swap ? self->problem->filter_landing_minutes
                              : self->problem->relaunch_minutes)
                      : self->problem->battery_change_minutes
                            + (swap ? self->problem->filter_change_minutes : 0);

  if (!relaunch && before->fitted >= 0)
    plain_charge (self, &after, before->fitted, before->land_by);
  if (leg->off < (before->clock < 0 ? 0 : before->clock + turn)
      || (!relaunch && leg->off < after.ready[battery])
      || down - leg->off > after.minutes[battery] || down > (int) (self->problem->to / MINUTE)
      || after.legs[battery] >= MAX (self->day->batteries[battery].legs_at_most, 1)
      || !keeps_locks (self, leg, battery) || !keeps_pauses (self, leg->off, down))
    return;
  after.cost += leg->cost;
  if (relaunch)
    after.cost += swap ? self->prices->filter_landing : self->prices->relaunch;
  else
    after.cost += self->prices->new_battery + (swap ? self->prices->filter_swap : 0);
  after.land_by = leg->off + after.minutes[battery];
  after.minutes[battery] -= down - leg->off;
  after.legs[battery]++;
  after.fitted = battery;
  after.ready[battery] = 1 << 20;
  after.clock = down;
  after.filter = leg->filter;
  after.flown |= leg->flown;
  after.last_fixed = leg->last_fixed;
  memcpy (after.matched, leg->matched, sizeof after.matched);
  plain_from (self, &after);
}

static double
plain_price (const Plain *self, const Leg *leg, guint shot, int start, int matched)
{
  const FfSortieShot *wanted = &self->day->shots[shot];
  const FfSortieFilter *filter = leg->filter >= 0 ? &self->day->filters[leg->filter] : NULL;
  const FfSortieFilter *other = matched >= 0 ? &self->day->filters[matched] : NULL;
  double price = (wanted->fixed_time ? self->prices->late_fixed : self->prices->late_minute)
                 * (start - (int) (wanted->window_from / MINUTE));

  for (int minute = start; minute < start + wanted->minutes; minute++)
    price += ff_minute_price (self->prices, self->problem->camera, &wanted->want,
                              wanted->own_from_angle_deg, wanted->ev100[minute],
                              filter != NULL ? filter->stops : 0, NULL);
  price += filter != NULL ? filter->price_per_take : 0;
  if (matched != -2 && matched != leg->filter)
    price += filter != NULL && other != NULL && filter->set != NULL
                     && g_strcmp0 (filter->set, other->set) != 0
                 ? self->prices->match_set
                 : self->prices->match_step;
  return price;
}

static void
plain_take (Plain *self, const Ground *ground, const Leg *before, guint shot, gboolean first)
{
  const FfSortieShot *wanted = &self->day->shots[shot];
  int opens = (int) (wanted->window_from / MINUTE), closes = (int) (wanted->window_to / MINUTE);

  for (int start = MAX (opens, before->at); start + wanted->minutes <= closes; start++)
    {
      Leg leg = *before;
      guint group = wanted->match_group;

      if (start + wanted->minutes + self->problem->back_minutes > self->problem->to / MINUTE)
        return;
      if (first)
        leg.off = start - self->problem->out_minutes;
      if (leg.off < 0)
        continue;
      leg.cost += first ? 0 : self->prices->air_minute * (start - leg.at);
      leg.cost += plain_price (self, &leg, shot, start, group > 0 ? leg.matched[group] : -2);
      leg.matched[group] = leg.filter;
      leg.at = start + wanted->minutes;
      leg.flown |= 1u << shot;
      if (!wanted->free_order)
        leg.last_fixed = (int) shot;
      if (leg.at + self->problem->back_minutes - leg.off > 30)
        return;
      for (int battery = 0; battery < (int) self->problem->n_batteries; battery++)
        plain_land (self, ground, &leg, battery, FALSE);
      if (ground->fitted >= 0)
        plain_land (self, ground, &leg, ground->fitted, TRUE);
      for (guint next = 0; next < self->problem->n_shots; next++)
        if (!(((ground->flown | leg.flown) >> next) & 1)
            && (self->day->shots[next].free_order || (int) next > leg.last_fixed))
          plain_take (self, ground, &leg, next, FALSE);
    }
}

static void
plain_from (Plain *self, const Ground *ground)
{
  double stop = ground->cost;

  if (ground->cost >= self->best)
    return;
  for (guint shot = 0; shot < self->problem->n_shots; shot++)
    if (!((ground->flown >> shot) & 1))
      stop += weight_of (self, shot);
  self->best = MIN (self->best, stop);
  for (int filter = FF_NO_FILTER; filter < (int) self->problem->n_filters; filter++)
    for (guint shot = 0; shot < self->problem->n_shots; shot++)
      {
        Leg leg = { .filter = filter, .last_fixed = ground->last_fixed };

        memcpy (leg.matched, ground->matched, sizeof leg.matched);
        if (!((ground->flown >> shot) & 1)
            && (self->day->shots[shot].free_order || (int) shot > ground->last_fixed))
          plain_take (self, ground, &leg, shot, TRUE);
      }
}

/* Part-used batteries that may not fly again are charged first, the first to come down first. */
static void
plain_charge_used (const Plain *self, Ground *ground)
{
  gboolean done[FF_RANDOM_DAY_BATTERIES] = { FALSE };

  for (;;)
    {
      int next = -1;

      for (int i = 0; i < (int) self->problem->n_batteries; i++)
        if (!done[i] && ground->legs[i] >= MAX (self->day->batteries[i].legs_at_most, 1)
            && (next < 0
                || self->day->batteries[i].ready_at < self->day->batteries[next].ready_at))
          next = i;
      if (next < 0)
        return;
      done[next] = TRUE;
      plain_charge (self, ground, next, ground->ready[next]);
    }
}

double
ff_random_day_cheapest (const FfRandomDay *day)
{
  Plain plain = { .day = day, .problem = &day->problem, .prices = &ff_prices_default,
                  .best = 1e9 };
  Ground ground = { .clock = -1, .filter = -2, .fitted = -1, .last_fixed = -1,
                    .matched = { -2, -2, -2 } };

  for (guint i = 0; i < day->problem.n_batteries; i++)
    {
      ground.ready[i] = (int) (day->batteries[i].ready_at / MINUTE);
      ground.minutes[i] = day->batteries[i].usable_minutes - day->batteries[i].minutes_flown;
      ground.legs[i] = day->batteries[i].legs_flown;
    }
  plain_charge_used (&plain, &ground);
  plain_from (&plain, &ground);
  return plain.best;
}
