/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-ground.h"

#include <string.h>

/* ---- Classes ---- */

static gboolean
is_locked (const FfSortieProblem *problem, guint battery)
{
  for (guint i = 0; i < problem->n_locks; i++)
    if (problem->locks[i].battery == (int) battery)
      return TRUE;
  return FALSE;
}

static gboolean
is_alone (const FfSortieProblem *problem, guint battery)
{
  const FfSortieBattery *wanted = &problem->batteries[battery];

  return wanted->minutes_flown > 0 || wanted->legs_flown > 0 || is_locked (problem, battery);
}

static FfBatteryClass
class_of (const FfSortieProblem *problem, guint battery)
{
  const FfSortieBattery *wanted = &problem->batteries[battery];
  FfBatteryClass class = { .usable = wanted->usable_minutes };

  class.legs = MAX (wanted->legs_at_most, 1);
  class.alone = is_alone (problem, battery) ? (int) battery : -1;
  class.first_usable = MAX (class.usable - wanted->minutes_flown, 0);
  class.first_legs = class.legs - MIN (class.legs, wanted->legs_flown);
  return class;
}

static gboolean
is_alike (const FfBatteryClass *a, const FfBatteryClass *b)
{
  return a->usable == b->usable && a->legs == b->legs && a->alone == b->alone;
}

static gint16
ready_minute (const FfSortieProblem *problem, guint battery)
{
  gint64 minutes = (problem->batteries[battery].ready_at - problem->from + 59) / 60;

  return (gint16) CLAMP (minutes, 0, FF_NEVER);
}

static void
add_class (FfBatteries *self, const FfSortieProblem *problem, guint like)
{
  FfBatteryClass class = class_of (problem, like);

  class.first = self->n_batteries;
  for (guint i = like; i < problem->n_batteries; i++)
    {
      FfBatteryClass other = class_of (problem, i);

      if (!is_alike (&class, &other))
        continue;
      self->battery[self->n_batteries] = (guint8) i;
      self->ready[self->n_batteries] = class.first_legs > 0 ? ready_minute (problem, i) : FF_NEVER;
      self->n_batteries++;
    }
  class.n = self->n_batteries - class.first;
  self->longest = MAX (self->longest, class.usable);
  self->most_legs = MAX (self->most_legs, (int) class.legs);
  self->classes[self->n_classes++] = class;
}

void
ff_batteries_init (FfBatteries *self, const FfSortieProblem *problem)
{
  memset (self, 0, sizeof *self);
  for (guint i = 0; i < problem->n_batteries; i++)
    {
      FfBatteryClass class = class_of (problem, i);
      gboolean known = FALSE;

      for (guint c = 0; c < self->n_classes && !known; c++)
        known = is_alike (&self->classes[c], &class);
      if (!known)
        add_class (self, problem, i);
    }
}

/* ---- Ground ---- */

static void
sort (gint16 *minutes, guint n)
{
  for (guint i = 1; i < n; i++)
    {
      gint16 minute = minutes[i];
      guint at = i;

      for (; at > 0 && minutes[at - 1] > minute; at--)
        minutes[at] = minutes[at - 1];
      minutes[at] = minute;
    }
}

/* A battery that has flown all its rule allows is charged before it flies: those queue first, the
 * ones that came down first before the others. */
static void
queue_part_used (FfGround *self, const FfBatteries *batteries, const FfSortieProblem *problem)
{
  gboolean queued[FF_SORTIE_MAX_BATTERIES] = { FALSE };

  for (;;)
    {
      const FfBatteryClass *next = NULL;
      int charge_from, ready_at;

      for (guint c = 0; c < batteries->n_classes; c++)
        {
          const FfBatteryClass *class = &batteries->classes[c];

          if (class->first_legs == 0 && !queued[c]
              && (next == NULL
                  || ready_minute (problem, (guint) class->alone)
                         < ready_minute (problem, (guint) next->alone)))
            next = class;
        }
      if (next == NULL)
        return;
      queued[next - batteries->classes] = TRUE;
      ff_ground_queue (self, problem, ready_minute (problem, (guint) next->alone), &charge_from,
                       &ready_at);
      self->ready[next->first] = (gint16) ready_at;
    }
}

/* What is charging has its slot until it is ready. More than there are slots: they were charged
 * elsewhere. */
static void
occupy_slots (FfGround *self, const FfSortieProblem *problem)
{
  guint slots = MIN (problem->charger_slots, FF_GROUND_SLOTS);

  for (guint i = 0; i < problem->n_batteries && slots > 0; i++)
    if (problem->batteries[i].on_charger)
      {
        self->slot_free[0] = MAX (self->slot_free[0], ready_minute (problem, i));
        sort (self->slot_free, slots);
      }
}

void
ff_ground_init (FfGround *self, const FfBatteries *batteries, const FfSortieProblem *problem)
{
  memset (self, 0, sizeof *self);
  memcpy (self->ready, batteries->ready, sizeof self->ready);
  for (guint c = 0; c < batteries->n_classes; c++)
    sort (self->ready + batteries->classes[c].first, batteries->classes[c].n);
  occupy_slots (self, problem);
  queue_part_used (self, batteries, problem);
}

void
ff_ground_queue (FfGround *self,
                 const FfSortieProblem *problem,
                 int land_by,
                 int *ret_charge_from,
                 int *ret_ready_at)
{
  guint slots = MIN (problem->charger_slots, FF_GROUND_SLOTS);

  *ret_charge_from = *ret_ready_at = FF_NEVER;
  if (slots == 0 || !problem->charger_attended)
    return;
  *ret_charge_from = MIN (MAX (land_by + problem->cool_minutes, self->slot_free[0]), FF_NEVER);
  *ret_ready_at = MIN (*ret_charge_from + problem->charge_minutes, FF_NEVER);
  self->slot_free[0] = (gint16) *ret_ready_at;
  sort (self->slot_free, slots);
}

void
ff_ground_take (FfGround *self, const FfBatteryClass *class, int ready_at)
{
  self->ready[class->first] = (gint16) ready_at;
  sort (self->ready + class->first, class->n);
}

void
ff_ground_bring_back (FfGround *self, const FfBatteryClass *class, int ready_at)
{
  self->ready[class->first + class->n - 1] = (gint16) ready_at;
  sort (self->ready + class->first, class->n);
}

int
ff_ground_flights_left (const FfGround *self,
                        const FfBatteries *batteries,
                        const FfSortieProblem *problem,
                        int minute)
{
  int last = (int) ((problem->to - problem->from) / 60);
  int flights = 0;

  for (guint i = 0; i < batteries->n_batteries; i++)
    flights += self->ready[i] <= last;
  if (!problem->charger_attended)
    return flights;
  for (guint i = 0; i < MIN (problem->charger_slots, FF_GROUND_SLOTS); i++)
    {
      int free_at = MAX (self->slot_free[i], minute + problem->cool_minutes);

      flights += MAX (last - free_at, 0) / MAX (problem->charge_minutes, 1);
    }
  return flights;
}
