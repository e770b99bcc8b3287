/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The joins of a shoot day: a job with its place, shots, gear, crew, limits and log, loaded at one
 * moment; and the plan that follows from them. */
#pragma once

#include <glib.h>

#include "ff-plan.h"

typedef struct _FfStore FfStore;
typedef struct _FfDay FfDay;

#define FF_RELAUNCH_FROM_C 10.0 /* common practice, no source */

/* Loads the job found by id or beginning of its title. Read-only on the store; the value stands
 * alone afterwards. Errors: FF_ERROR_INPUT (no such job), FF_ERROR_STORE. */
FfDay *ff_day_load (FfStore *store, const char *wanted, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_day_free (FfDay *day);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfDay, ff_day_free)

GTimeZone *ff_day_zone (const FfDay *day); /* borrowed */

/* The window of a shot by label as it is stored, minutes after local midnight. FALSE: no such shot. */
gboolean ff_day_shot_clocks (const FfDay *day, const char *label, int *ret_from, int *ret_to);

/* A change that is tried, not stored. Zeroed: none. */
typedef struct {
  gboolean other_sky;
  FfSky sky;
  int late_minutes;
  const char *const *without; /* labels or ids, NULL-terminated; or NULL */
  const char *const *moves;   /* "D=18:20" moves a window there, "D=18:20-18:40" sets both its
                                 ends; NULL-terminated; or NULL */
  const char *const *drop;    /* labels of shots that are not flown; or NULL */
  const char *const *with;    /* labels or ids of items that the job does not use; or NULL */
  int more_batteries;         /* borrowed, each like the one that lasts longest */
  double more_filter_stops;   /* strength of a filter that is borrowed; 0: none */
  int more_charger_slots;
  gboolean attended;          /* as if somebody stood at the charger */
  gboolean any_order;         /* shots in any order, although the job goes by the list */
  int legs_per_battery;       /* on one charge; 0: as the job says; 1: land, charge. Not below
                                 FF_RELAUNCH_FROM_C: a part-used battery has cooled */
  const FfPrices *prices;     /* other prices; NULL: the crew's */
} FfDayChange;

/* Plans the day. A job that can't be planned (no date, no place, no shots, no batteries, no camera)
 * is FF_ERROR_INPUT with the sentence that says what to enter; no filters is no error. */
FfDayPlan *ff_day_plan (const FfDay *day,
                        const FfDayChange *change,
                        GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Asked between two plans of a longer work: FALSE stops it, since nobody waits for the answer. */
typedef gboolean (*FfGoOn) (gpointer data);

/* What of the plan of ff_day_plan() would be dropped first, by planning the day without each shot in
 * turn: an array of FfDrop that frees them, the first to drop first. `go_on` may be NULL. NULL with no
 * error: stopped. */
GPtrArray *ff_day_drop_first (const FfDay *day,
                              const FfDayChange *change,
                              const FfDayPlan *plan,
                              FfGoOn go_on,
                              gpointer data,
                              GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Prices a change: what `plan`, planned under `change`, loses against the day under `before` (NULL: as
 * it is stored), into `plan->price` and, with the other filters and the number of sorties, into
 * `plan->changes`. `go_on` may be NULL. FALSE with no error: stopped. */
gboolean ff_day_price_change (const FfDay *day,
                              const FfDayChange *before,
                              const FfDayChange *change,
                              FfDayPlan *plan,
                              FfGoOn go_on,
                              gpointer data,
                              GError **error);

/* The same for an edit that is stored: what `plan` of `day` loses against `was`, the plan of the day
 * before the edit. NULL: stopped. */
FfChangePrice *ff_day_edit_price (const FfDayPlan *was,
                                  const FfDay *day,
                                  const FfDayPlan *plan,
                                  FfGoOn go_on,
                                  gpointer data) G_GNUC_WARN_UNUSED_RESULT;

/* Says in `after->changes` what differs between two plans of a job whose records have changed
 * meanwhile: the shots that are lost or won, the number of sorties, the filters. */
void ff_day_plan_compare (const FfDayPlan *before, FfDayPlan *after);
