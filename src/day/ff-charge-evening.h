/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The charge evening before a job: which battery is in which charger when, and who attends. */
#pragma once

#include <glib.h>

typedef struct _FfStore FfStore;
typedef struct _FfDay FfDay;

typedef struct {
  char *battery, *charger; /* labels */
  guint slot;              /* from 1 */
  gint64 from, to;
  char *attended_by;       /* name */
} FfChargeTurn;

typedef struct {
  GPtrArray *turns;       /* FfChargeTurn, by time */
  GPtrArray *not_charged; /* char*: labels of batteries that have no place */
  GPtrArray *remarks;     /* char*: what the crew said of a battery, and what follows for its charge */
  gint64 first_by;        /* the first must be in by then; 0: none is planned */
  gint64 done_at;
  int busy_minutes;       /* what all of them take in the slots there are; 0: no charger */
  char *words;            /* "5 batteries, 1 slot: 5 h. The first goes in by 18:00 at the latest." */
  char *trouble;          /* nobody attends, no charger, not all have a place; empty: none */
} FfChargeEvening;

/* The queue for these batteries (labels, the first wanted first) and the chargers of the day, as the
 * watches of the job allow and as the crew has said the batteries are: a full one is not charged, a
 * hot one waits, one that is charging keeps a slot. What was said before the day before the job, or
 * before the battery's last flight, counts no more: then it is taken as empty. */
FfChargeEvening *ff_charge_evening_new (const FfDay *day,
                                        FfStore *store,
                                        const GPtrArray *batteries,
                                        GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_charge_evening_free (FfChargeEvening *evening);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfChargeEvening, ff_charge_evening_free)
