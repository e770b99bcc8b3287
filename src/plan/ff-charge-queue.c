/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-charge-queue.h"

#include "ff-civil.h"

static gint
by_end (gconstpointer a, gconstpointer b)
{
  const FfCharge *first = a, *second = b;

  if (first->to != second->to)
    return first->to < second->to ? -1 : 1;
  if (first->charger != second->charger)
    return first->charger < second->charger ? -1 : 1;
  return (first->slot > second->slot) - (first->slot < second->slot);
}

static gint
by_start_latest (gconstpointer a, gconstpointer b)
{
  const FfCharge *first = a, *second = b;

  return (first->from < second->from) - (first->from > second->from);
}

static gint
by_start (gconstpointer a, gconstpointer b)
{
  const FfCharge *first = a, *second = b;

  if (first->from != second->from)
    return first->from < second->from ? -1 : 1;
  return by_end (a, b);
}

/* From when a slot is free. */
static gint64
free_from (const FfChargeProblem *problem, guint charger, guint slot)
{
  gint64 from = G_MININT64;

  for (guint i = 0; i < problem->n_busy; i++)
    if (problem->busy[i].charger == charger && problem->busy[i].slot == slot)
      from = MAX (from, problem->busy[i].until);
  return from;
}

/* Every place for a charge of one slot in one watch, end to end: from its beginning, or back from
 * its end. */
static void
add_places (GArray *places, const FfChargeProblem *problem, FfCharge place, gboolean from_end)
{
  const FfChargeWatch *watch = &problem->watches[place.watch];
  gint64 length = (gint64) problem->chargers[place.charger].minutes * FF_MINUTE;
  gint64 begin = MAX (watch->from, free_from (problem, place.charger, place.slot));

  for (guint i = 0; length > 0 && i < problem->n_batteries; i++)
    {
      place.from = from_end ? watch->to - (i + 1) * length : begin + i * length;
      place.to = place.from + length;
      if (place.from < begin || place.to > watch->to)
        return;
      g_array_append_val (places, place);
    }
}

static GArray *
all_places (const FfChargeProblem *problem, gboolean from_end)
{
  GArray *places = g_array_new (FALSE, TRUE, sizeof (FfCharge));

  for (guint watch = 0; watch < problem->n_watches; watch++)
    for (guint charger = 0; charger < problem->n_chargers; charger++)
      for (guint slot = 0; slot < problem->chargers[charger].slots; slot++)
        add_places (places, problem, (FfCharge) { 0, charger, slot, watch, 0, 0 }, from_end);
  return places;
}

/* The latest that the first may go in: the places taken back from the ends of the watches. */
static gint64
latest_start (const FfChargeProblem *problem, guint n)
{
  g_autoptr (GArray) places = all_places (problem, TRUE);

  g_array_sort (places, by_start_latest);
  return n > 0 && n <= places->len ? g_array_index (places, FfCharge, n - 1).from : 0;
}

/* With nobody's hours in the way: one long watch. */
static int
busy_minutes (const FfChargeProblem *problem)
{
  FfChargeWatch always = { 0, 0 };
  FfChargeProblem whole = *problem;
  g_autoptr (GArray) places = NULL;

  for (guint i = 0; i < problem->n_chargers; i++)
    always.to = MAX (always.to,
                     (gint64) problem->chargers[i].minutes * problem->n_batteries * FF_MINUTE);
  whole.watches = &always;
  whole.n_watches = 1;
  whole.n_busy = 0;
  places = all_places (&whole, FALSE);
  g_array_sort (places, by_end);
  if (problem->n_batteries == 0 || places->len < problem->n_batteries)
    return 0;
  return (int) (g_array_index (places, FfCharge, problem->n_batteries - 1).to / FF_MINUTE);
}

/* ---- The queue ---- */

typedef struct {
  const FfChargeProblem *problem;
  const gboolean *asked; /* of each battery */
  GArray *charges;
} Queue;

gboolean
ff_charges_hold (const GArray *charges, guint battery)
{
  for (guint i = 0; i < charges->len; i++)
    if (g_array_index (charges, FfCharge, i).battery == battery)
      return TRUE;
  return FALSE;
}

static gint64
slot_free_from (const Queue *self, guint charger, guint slot)
{
  gint64 from = free_from (self->problem, charger, slot);

  for (guint i = 0; i < self->charges->len; i++)
    {
      const FfCharge *charge = &g_array_index (self->charges, FfCharge, i);

      if (charge->charger == charger && charge->slot == slot)
        from = MAX (from, charge->to);
    }
  return from;
}

static gint64
free_battery_from (const FfChargeProblem *problem, guint battery)
{
  return problem->not_before != NULL ? problem->not_before[battery] : G_MININT64;
}

/* The first place of that slot in which the battery is off while somebody is there. */
static gboolean
fit (const Queue *self, FfCharge *charge, gint64 slot_from)
{
  const FfChargeProblem *problem = self->problem;
  gint64 length = (gint64) problem->chargers[charge->charger].minutes * FF_MINUTE;
  gboolean found = FALSE;

  for (guint i = 0; length > 0 && i < problem->n_watches; i++)
    {
      gint64 from = MAX (MAX (problem->watches[i].from, slot_from),
                         free_battery_from (problem, charge->battery));

      if (from + length > problem->watches[i].to || (found && from >= charge->from))
        continue;
      charge->watch = i;
      charge->from = from;
      charge->to = from + length;
      found = TRUE;
    }
  return found;
}

static gboolean
next_charge (const Queue *self, FfCharge *ret_next)
{
  const FfChargeProblem *problem = self->problem;
  gboolean found = FALSE;

  for (guint charger = 0; charger < problem->n_chargers; charger++)
    for (guint slot = 0; slot < problem->chargers[charger].slots; slot++)
      {
        gint64 slot_from = slot_free_from (self, charger, slot);

        for (guint battery = 0; battery < problem->n_batteries; battery++)
          {
            FfCharge next = { battery, charger, slot, 0, 0, 0 };

            if (self->asked[battery] && !ff_charges_hold (self->charges, battery) && fit (self, &next, slot_from)
                && (!found || next.to < ret_next->to))
              {
                *ret_next = next;
                found = TRUE;
              }
          }
      }
  return found;
}

/* Always what is off first. With equal chargers no other order has the k-th off earlier. */
static GArray *
charges_of (const FfChargeProblem *problem, const gboolean *asked)
{
  Queue self = { problem, asked, g_array_new (FALSE, TRUE, sizeof (FfCharge)) };
  FfCharge next;

  while (next_charge (&self, &next))
    g_array_append_val (self.charges, next);
  return self.charges;
}

/* Where not all have a place, the last wanted go without, unless that would leave a place empty. */
static GArray *
queue (const FfChargeProblem *problem)
{
  g_autofree gboolean *asked = g_new (gboolean, problem->n_batteries + 1);
  guint n_asked = problem->n_batteries;
  GArray *charges;

  for (guint i = 0; i < problem->n_batteries; i++)
    asked[i] = TRUE;
  charges = charges_of (problem, asked);
  if (problem->not_before == NULL)
    return charges; /* they are the first wanted already */
  for (guint i = problem->n_batteries; i-- > 0 && charges->len < n_asked;)
    {
      GArray *without;

      asked[i] = FALSE;
      without = charges_of (problem, asked);
      if (without->len < charges->len)
        {
          asked[i] = TRUE;
          g_array_unref (without);
          continue;
        }
      g_array_unref (charges);
      charges = without;
      n_asked--;
    }
  return charges;
}

/* In the order of their starts, each the first wanted of those that are to be had by then. */
static void
hand_out (const FfChargeProblem *problem, GArray *charges)
{
  g_autofree gboolean *left = g_new0 (gboolean, problem->n_batteries + 1);

  for (guint i = 0; i < charges->len; i++)
    left[g_array_index (charges, FfCharge, i).battery] = TRUE;
  for (guint i = 0; i < charges->len; i++)
    {
      FfCharge *charge = &g_array_index (charges, FfCharge, i);
      guint battery = 0;

      while (!left[battery] || free_battery_from (problem, battery) > charge->from)
        battery++;
      left[battery] = FALSE;
      charge->battery = battery;
    }
}

FfChargePlan *
ff_charge_queue (const FfChargeProblem *problem)
{
  FfChargePlan *plan = g_new0 (FfChargePlan, 1);
  guint n;

  plan->charges = queue (problem);
  n = plan->charges->len;
  g_array_sort (plan->charges, by_end);
  plan->done_at = n > 0 ? g_array_index (plan->charges, FfCharge, n - 1).to : 0;
  g_array_sort (plan->charges, by_start);
  hand_out (problem, plan->charges);
  plan->not_charged = problem->n_batteries - n;
  plan->first_by = latest_start (problem, n);
  plan->busy_minutes = busy_minutes (problem);
  return plan;
}

void
ff_charge_plan_free (FfChargePlan *plan)
{
  if (plan == NULL)
    return;
  g_array_unref (plan->charges);
  g_free (plan);
}
