/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All legs that are off at one minute behind one filter grow together, minute by minute: in the
 * air at a minute with some shots done an aircraft waits a minute, leaves out the next shot of the
 * list, or takes one that is open. Of two that have the same shots done at the same minute only
 * the cheaper goes on, so that a tangle of windows costs no more than a few. */
#include "ff-leg.h"

#include <math.h>
#include <string.h>

#define NONE (-1)

/* In the air, with shots done. */
typedef struct {
  double cost;
  double landing;   /* the same straight after its last take; infinite where it has only waited */
  gint32 from, landing_from; /* the one it grew from, by taking `shot` or by waiting */
  gint32 next;      /* in the list of its minute and place */
  gint16 minute;
  gint16 shot, landing_shot; /* NONE: waited or left one out */
  guint16 variant;
  guint8 place, flown;
} Aloft;

typedef struct {
  const FfLegTable *table;
  const FfTakePrices *prices;
  const FfSortieProblem *problem;
  const FfOrder *order;
  guint first;        /* place of the first shot of the list; n_fixed: none */
  int filter;
  int off;
  int span;           /* minutes between out and back */
  GArray *aloft;      /* Aloft */
  gint32 *heads;      /* [minute][place]: lists of them */
  gint32 *found;      /* [place][flown][variant][minute]: number in `aloft`, where stamped */
  guint32 *stamps;
  guint32 stamp;
  gint8 batteries[FF_SORTIE_MAX_BATTERIES + 1]; /* that locks ask for; the first: any */
  guint n_batteries;
  guint n_groups;
} Growing;

/* ---- Looking up ---- */

static guint
group_bit (const FfLegTable *table, guint shot)
{
  guint group = table->prices->problem->shots[shot].match_group;

  return group > 0 && group <= FF_SORTIE_MAX_GROUPS ? (1u << (group - 1)) & table->groups : 0;
}

/* Groups and battery of a leg in one number, so that legs which differ in them stay apart. The
 * groups that matter are counted densely. */
static guint
variant_groups (const Growing *self, guint variant)
{
  guint dense = variant % (1u << self->n_groups), groups = 0, at = 0;

  for (guint bit = 0; bit < FF_SORTIE_MAX_GROUPS; bit++)
    if ((self->table->groups >> bit) & 1)
      groups |= ((dense >> at++) & 1) << bit;
  return groups;
}

static guint
variant_with (const Growing *self, guint variant, guint shot)
{
  guint bit = group_bit (self->table, shot), at = 0;

  if (bit == 0)
    return variant;
  for (guint i = 0; (1u << i) != bit; i++)
    at += (self->table->groups >> i) & 1;
  return variant | 1u << at;
}

/* The variant after a shot locked to a battery; NONE where the leg is locked to another one. */
static int
variant_locked (const Growing *self, guint variant, const FfSortieLock *lock)
{
  guint of = 1u << self->n_groups;
  guint now = variant / of;

  if (lock == NULL || lock->battery == FF_ANY_BATTERY || self->batteries[now] == lock->battery)
    return (int) variant;
  if (now != 0)
    return NONE;
  for (guint i = 1; i < self->n_batteries; i++)
    if (self->batteries[i] == lock->battery)
      return (int) (i * of + variant);
  return NONE;
}

static gsize
key_of (const Growing *self, guint place, guint flown, guint variant, int minute)
{
  gsize row = (gsize) (place - self->first) << self->order->n_free | flown;

  row = row * (self->n_batteries << self->n_groups) + variant;
  return row * (gsize) (self->span + 1) + (gsize) minute;
}

static gint32 *
head_of (const Growing *self, int minute, guint place)
{
  return &self->heads[(gsize) minute * (self->order->n_fixed + 2) + place];
}

/* ---- Growing ---- */

/* The one with these shots done at this minute, made where it is new. */
static Aloft *
reach (Growing *self, guint place, guint flown, guint variant, int minute)
{
  gsize key = key_of (self, place, flown, variant, minute);
  gint32 *head = head_of (self, minute, place);
  Aloft fresh = {
    .cost = INFINITY, .landing = INFINITY, .from = NONE, .landing_from = NONE, .next = *head,
    .minute = (gint16) minute, .shot = NONE, .landing_shot = NONE, .place = (guint8) place,
    .flown = (guint8) flown, .variant = (guint16) variant,
  };

  if (self->stamps[key] != self->stamp)
    {
      self->stamps[key] = self->stamp;
      self->found[key] = *head = (gint32) self->aloft->len;
      g_array_append_val (self->aloft, fresh);
    }
  return &g_array_index (self->aloft, Aloft, self->found[key]);
}

static void
improve (Aloft *aloft, double cost, gint32 from, int shot)
{
  if (cost < aloft->cost - 1e-12)
    {
      aloft->cost = cost;
      aloft->from = from;
      aloft->shot = (gint16) shot;
    }
  if (shot != NONE && cost < aloft->landing - 1e-12)
    {
      aloft->landing = cost;
      aloft->landing_from = from;
      aloft->landing_shot = (gint16) shot;
    }
}

/* Takes `shot` at `minute` after the shots of `from` (NONE: as the first). */
static void
take (Growing *self, gint32 from, const Aloft *at, guint shot, guint place, guint flown)
{
  const FfSortieShot *wanted = &self->problem->shots[shot];
  const FfSortieLock *lock = self->problem->n_locks > 0 ? ff_take_lock (self->problem, shot) : NULL;
  int start = self->off + self->problem->out_minutes + at->minute;
  int end = at->minute + wanted->minutes;
  int variant = variant_locked (self, at->variant, lock);
  double price;

  if (end > self->span || variant == NONE || start < ff_take_first_start (self->prices, shot)
      || start > ff_take_last_start (self->prices, shot))
    return;
  if (lock != NULL && ((lock->filter != FF_ANY_FILTER && lock->filter != self->filter)
                       || (lock->off_by != FF_ANY_TIME
                           && lock->off_by != self->problem->from + (gint64) self->off * 60)))
    return;
  price = ff_take_price (self->prices, shot, self->filter, start);
  /* Dearer than not flying it and waiting for as long: never of use. */
  if (price > ff_take_weight (self->prices, shot)
                  + self->prices->prices->air_minute * wanted->minutes)
    return;
  improve (reach (self, place, flown, variant_with (self, (guint) variant, shot), end),
           at->cost + price, from, (int) shot);
}

static void
take_free (Growing *self, gint32 from, const Aloft *at)
{
  for (guint i = 0; i < self->order->n_free; i++)
    if (!((at->flown >> i) & 1))
      take (self, from, at, self->order->free[i], at->place, at->flown | 1u << i);
}

/* The next of the list; or, where the leg has one of it already, that one left out. */
static void
take_fixed (Growing *self, gint32 from, const Aloft *at)
{
  guint shot;

  if (at->place >= self->order->n_fixed)
    return;
  shot = self->order->fixed[at->place];
  take (self, from, at, shot, at->place + 1u, at->flown);
  if (at->place > self->first)
    improve (reach (self, at->place + 1u, at->flown, at->variant, at->minute),
             at->cost + ff_take_weight (self->prices, shot), from, NONE);
}

static void
grow (Growing *self, gint32 from)
{
  Aloft at = g_array_index (self->aloft, Aloft, from);

  take_free (self, from, &at);
  take_fixed (self, from, &at);
  if (at.minute < self->span)
    improve (reach (self, at.place, at.flown, at.variant, at.minute + 1),
             at.cost + self->prices->prices->air_minute, from, NONE);
}

/* Everything that can be in the air when off at this minute. */
static void
grow_all (Growing *self, int off)
{
  const Aloft none = { .place = (guint8) self->first };

  self->off = off;
  self->stamp++;
  g_array_set_size (self->aloft, 0);
  for (gsize i = 0; i < (gsize) (self->span + 1) * (self->order->n_fixed + 2); i++)
    self->heads[i] = NONE;
  take_free (self, NONE, &none);
  take_fixed (self, NONE, &none);
  for (int minute = 0; minute <= self->span && self->aloft->len > 0; minute++)
    for (guint place = self->first; place <= self->order->n_fixed; place++)
      for (gint32 at = *head_of (self, minute, place); at != NONE;
           at = g_array_index (self->aloft, Aloft, at).next)
        grow (self, at);
}

/* ---- Keeping ---- */

/* Whether another leg leaves as much open, is down as soon and costs no more. */
static gboolean
is_outdone (const Growing *self, const Aloft *aloft)
{
  double left_out = 0;

  for (guint place = aloft->place;; place--)
    {
      for (int minute = 0; minute <= aloft->minute; minute++)
        {
          gsize key = key_of (self, place, aloft->flown, aloft->variant, minute);
          const Aloft *other;

          if (self->stamps[key] != self->stamp)
            continue;
          other = &g_array_index (self->aloft, Aloft, self->found[key]);
          if (other != aloft && other->landing + left_out <= aloft->landing)
            return TRUE;
        }
      if (place <= self->first + 1)
        return FALSE;
      left_out += ff_take_weight (self->prices, self->order->fixed[place - 1]);
      if (left_out > aloft->landing)
        return FALSE;
    }
}

static FfLeg
leg_of (const Growing *self, const Aloft *aloft)
{
  return (FfLeg) {
    .cost = aloft->landing,
    .off = (gint16) self->off,
    .down = (gint16) (self->off + self->problem->out_minutes + aloft->minute
                      + self->problem->back_minutes),
    .place = self->first == self->order->n_fixed ? FF_LEG_NO_PLACE : aloft->place,
    .flown = aloft->flown,
    .battery = self->batteries[aloft->variant >> self->n_groups],
    .groups = (guint8) variant_groups (self, aloft->variant),
  };
}

/* A leg of the list that has flown none of it yet belongs to another list. */
static gboolean
is_leg (const Growing *self, const Aloft *aloft, int latest)
{
  int down = self->off + self->problem->out_minutes + aloft->minute + self->problem->back_minutes;

  return isfinite (aloft->landing) && down <= latest
         && (aloft->place > self->first) == (self->first < self->order->n_fixed);
}

static void
keep_legs (Growing *self, FfLegTable *table)
{
  int latest = MIN (table->next_pause[self->off], self->prices->n_minutes);

  for (guint i = 0; i < self->aloft->len; i++)
    {
      const Aloft *aloft = &g_array_index (self->aloft, Aloft, i);
      guint list = (self->first << self->order->n_free | aloft->flown) * (table->n_filters + 1)
                   + (guint) (self->filter + 1);
      FfLeg leg;

      if (!is_leg (self, aloft, latest) || is_outdone (self, aloft))
        continue;
      leg = leg_of (self, aloft);
      g_array_append_val (table->legs[list], leg);
    }
}

/* ---- The whole ---- */

static void
growing_init (Growing *self, const FfLegTable *table, guint first, int filter)
{
  const FfSortieProblem *problem = table->prices->problem;
  gsize n_places, n_keys;

  *self = (Growing) { .table = table, .prices = table->prices, .problem = problem,
                      .order = table->order, .first = first, .filter = filter };
  self->span = table->longest - problem->out_minutes - problem->back_minutes;
  self->batteries[self->n_batteries++] = FF_ANY_BATTERY;
  for (guint i = 0; i < problem->n_locks; i++)
    if (memchr (self->batteries, problem->locks[i].battery, self->n_batteries) == NULL)
      self->batteries[self->n_batteries++] = (gint8) problem->locks[i].battery;
  for (guint bit = 0; bit < FF_SORTIE_MAX_GROUPS; bit++)
    self->n_groups += (table->groups >> bit) & 1;
  n_places = self->order->n_fixed + 1 - first;
  n_keys = (n_places << self->order->n_free) * (self->n_batteries << self->n_groups)
           * (gsize) (MAX (self->span, 0) + 1);
  self->aloft = g_array_new (FALSE, FALSE, sizeof (Aloft));
  self->heads = g_new (gint32, (gsize) (MAX (self->span, 0) + 1) * (self->order->n_fixed + 2));
  self->found = g_new (gint32, n_keys);
  self->stamps = g_new0 (guint32, n_keys);
}

static void
growing_clear (Growing *self)
{
  g_array_unref (self->aloft);
  g_free (self->heads);
  g_free (self->found);
  g_free (self->stamps);
}

/* The minutes at which a leg of this list may be off: those of any shot that can come first. */
static void
off_span (const Growing *self, int *ret_from, int *ret_to)
{
  *ret_from = G_MAXINT;
  *ret_to = -1;
  for (guint i = 0; i <= self->order->n_free; i++)
    {
      guint shot;

      if (i == self->order->n_free && self->first == self->order->n_fixed)
        break;
      shot = i < self->order->n_free ? self->order->free[i] : self->order->fixed[self->first];
      *ret_from = MIN (*ret_from, ff_take_first_start (self->prices, shot));
      *ret_to = MAX (*ret_to, ff_take_last_start (self->prices, shot));
    }
  *ret_from -= self->problem->out_minutes;
  *ret_to -= self->problem->out_minutes;
}

static void
fill_lists (FfLegTable *table, guint first, int filter)
{
  Growing growing;
  int from, to;

  growing_init (&growing, table, first, filter);
  off_span (&growing, &from, &to);
  for (int off = from; off <= to && growing.span > 0; off++)
    {
      grow_all (&growing, off);
      keep_legs (&growing, table);
    }
  growing_clear (&growing);
}

/* Groups of a single shot have nothing to match. */
static guint8
groups_that_matter (const FfSortieProblem *problem)
{
  guint8 once = 0, more = 0;

  for (guint i = 0; i < problem->n_shots; i++)
    {
      guint group = problem->shots[i].match_group;
      guint8 bit = group > 0 && group <= FF_SORTIE_MAX_GROUPS ? (guint8) (1u << (group - 1)) : 0;

      more |= once & bit;
      once |= bit;
    }
  return more;
}

static void
find_pauses (FfLegTable *self, const FfSortieProblem *problem, int n_minutes)
{
  self->next_pause = g_new (gint16, n_minutes + 1);
  for (int minute = n_minutes; minute >= 0; minute--)
    {
      gint64 at = problem->from + (gint64) minute * 60;

      self->next_pause[minute] = minute < n_minutes ? self->next_pause[minute + 1] : G_MAXINT16;
      for (guint i = 0; i < problem->n_pauses; i++)
        if (at + 60 > problem->pauses[i].from && at < problem->pauses[i].to)
          self->next_pause[minute] = (gint16) minute;
    }
}

void
ff_leg_table_init (FfLegTable *self,
                   const FfTakePrices *prices,
                   const FfOrder *order,
                   int longest)
{
  *self = (FfLegTable) { .prices = prices, .order = order,
                         .n_filters = prices->problem->n_filters };
  self->longest = MIN (longest, FF_LEG_MINUTES);
  self->groups = groups_that_matter (prices->problem);
  find_pauses (self, prices->problem, prices->n_minutes);
  self->n_lists = ff_order_n_stages (order) * (self->n_filters + 1);
  self->legs = g_new (GArray *, self->n_lists);
  for (guint i = 0; i < self->n_lists; i++)
    self->legs[i] = g_array_new (FALSE, FALSE, sizeof (FfLeg));
  for (guint first = 0; first <= order->n_fixed; first++)
    for (int filter = FF_NO_FILTER; filter < (int) self->n_filters; filter++)
      fill_lists (self, first, filter);
}

void
ff_leg_table_clear (FfLegTable *self)
{
  for (guint i = 0; i < self->n_lists; i++)
    g_array_unref (self->legs[i]);
  g_clear_pointer (&self->legs, g_free);
  g_clear_pointer (&self->next_pause, g_free);
}

guint
ff_leg_first_from (const GArray *legs, int minute)
{
  guint low = 0, high = legs->len;

  while (low < high)
    {
      guint middle = (low + high) / 2;

      if (g_array_index (legs, FfLeg, middle).off < minute)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* ---- Reading ---- */

static void
add_front (FfFlown *flown, guint shot, int start)
{
  memmove (flown->shots + 1, flown->shots, flown->n_shots * sizeof *flown->shots);
  memmove (flown->starts + 1, flown->starts, flown->n_shots * sizeof *flown->starts);
  flown->shots[0] = (guint8) shot;
  flown->starts[0] = (gint16) start;
  flown->n_shots++;
}

static void
read_takes (const Growing *self, const Aloft *aloft, FfFlown *flown)
{
  int shot = aloft->landing_shot;
  gint32 from = aloft->landing_from;

  for (;;)
    {
      if (shot != NONE && flown->n_shots < FF_LEG_MINUTES)
        add_front (flown, (guint) shot,
                   self->off + self->problem->out_minutes + aloft->minute
                       - self->problem->shots[shot].minutes);
      if (from == NONE)
        return;
      aloft = &g_array_index (self->aloft, Aloft, from);
      shot = aloft->shot;
      from = aloft->from;
    }
}

void
ff_leg_table_read (const FfLegTable *self,
                   const FfLeg *leg,
                   guint place,
                   int filter,
                   FfFlown *ret_flown)
{
  Growing growing;

  *ret_flown = (FfFlown) { .leg = *leg, .filter = filter };
  growing_init (&growing, self, place, filter);
  grow_all (&growing, leg->off);
  for (guint i = 0; i < growing.aloft->len; i++)
    {
      const Aloft *aloft = &g_array_index (growing.aloft, Aloft, i);
      FfLeg same;

      if (!is_leg (&growing, aloft, leg->down))
        continue;
      same = leg_of (&growing, aloft);
      if (same.place != leg->place || same.flown != leg->flown || same.down != leg->down
          || same.battery != leg->battery || same.groups != leg->groups)
        continue;
      read_takes (&growing, aloft, ret_flown);
      break;
    }
  growing_clear (&growing);
}
