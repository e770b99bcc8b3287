/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The night before: which battery goes into which slot when, while somebody is there. A charge that
 * nobody attends from end to end is not planned. Pure. Common practice, no source; that charging is
 * attended: FSRI, "Lithium-ion battery safety". */
#pragma once

#include <glib.h>

/* Somebody is there from `from` to `to`; watches don't overlap. */
typedef struct {
  gint64 from, to;
} FfChargeWatch;

typedef struct {
  guint slots;
  int minutes; /* to charge one battery */
} FfChargeBench;

/* Something is in that slot until then. */
typedef struct {
  guint charger, slot;
  gint64 until;
} FfChargeBusy;

typedef struct {
  guint n_batteries; /* by the order they are wanted in */
  const FfChargeWatch *watches;
  guint n_watches;
  const FfChargeBench *chargers;
  guint n_chargers;
  const gint64 *not_before; /* of each battery: it cools until then; NULL: all at once */
  const FfChargeBusy *busy;
  guint n_busy;
} FfChargeProblem;

typedef struct {
  guint battery, charger, slot, watch;
  gint64 from, to;
} FfCharge;

typedef struct {
  GArray *charges;  /* FfCharge, by time; each battery at most once */
  guint not_charged; /* so many batteries have no place: the last wanted where there is a choice */
  gint64 first_by;  /* the first must be in by then for all these to end in their watches; 0: none */
  gint64 done_at;   /* when the last is off, begun at once; 0: none */
  int busy_minutes; /* from the first in to the last off, were somebody there all along; 0: no slot */
} FfChargePlan;

/* As many as can be, as early as can be. */
FfChargePlan *ff_charge_queue (const FfChargeProblem *problem) G_GNUC_WARN_UNUSED_RESULT;
void ff_charge_plan_free (FfChargePlan *plan);

/* Whether a battery is among the charges, FfCharge. */
gboolean ff_charges_hold (const GArray *charges, guint battery);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfChargePlan, ff_charge_plan_free)
