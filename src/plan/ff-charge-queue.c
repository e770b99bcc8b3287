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

/* Every place for a charge of one slot in one watch, end to end: from its beginning, or back from
 * its end. */
static void
add_places (GArray *places, const FfChargeProblem *problem, FfCharge place, gboolean from_end)
{
  const FfChargeWatch *watch = &problem->watches[place.watch];
  gint64 length = (gint64) problem->chargers[place.charger].minutes * FF_MINUTE;

  for (guint i = 0; length > 0 && i < problem->n_batteries; i++)
    {
      place.from = from_end ? watch->to - (i + 1) * length : watch->from + i * length;
      place.to = place.from + length;
      if (place.from < watch->from || place.to > watch->to)
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
  places = all_places (&whole, FALSE);
  g_array_sort (places, by_end);
  if (problem->n_batteries == 0 || places->len < problem->n_batteries)
    return 0;
  return (int) (g_array_index (places, FfCharge, problem->n_batteries - 1).to / FF_MINUTE);
}

FfChargePlan *
ff_charge_queue (const FfChargeProblem *problem)
{
  FfChargePlan *plan = g_new0 (FfChargePlan, 1);
  guint n;

  plan->charges = all_places (problem, FALSE);
  g_array_sort (plan->charges, by_end);
  n = MIN (plan->charges->len, problem->n_batteries);
  g_array_set_size (plan->charges, n);
  plan->done_at = n > 0 ? g_array_index (plan->charges, FfCharge, n - 1).to : 0;
  g_array_sort (plan->charges, by_start);
  for (guint i = 0; i < n; i++)
    g_array_index (plan->charges, FfCharge, i).battery = i;
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
