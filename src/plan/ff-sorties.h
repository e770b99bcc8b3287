/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sorties: which shots on which battery behind which filter, and when. The problem is stated as a
 * value, the plan comes back as one; nothing here knows a store, a clock or a zone.
 *
 * Instants are UTC seconds on whole minutes; durations are whole minutes. */
#pragma once

#include <glib.h>

#include "ff-advise.h"
#include "ff-price.h"

#define FF_NO_FILTER (-1)
#define FF_SORTIE_MAX_BATTERIES 32 /* that a plan can keep in mind */
#define FF_SORTIE_MAX_SHOTS 200

typedef struct {
  const char *label;
  gint64 window_from, window_to; /* the whole take lies inside */
  int minutes;
  double weight;                 /* cost of not flying it; 0: the price table's */
  gboolean fixed_time;           /* someone else keeps the time at which the window opens */
  FfWant want;
  double own_from_angle_deg;     /* what the angle may close to at a price, once the sortie holds
                                    shots that want different filters */
  const double *ev100;           /* light at each minute of [from, to] of the problem */
} FfSortieShot;

typedef struct {
  const char *label;
  double stops;
} FfSortieFilter;

typedef struct {
  const char *label;
  int usable_minutes; /* after the reserve, at the day's temperature */
  gint64 ready_at;
} FfSortieBattery;

typedef struct {
  gint64 from, to; /* first off and all down; the light arrays cover it */
  int out_minutes, back_minutes;
  int battery_change_minutes, filter_change_minutes;
  guint charger_slots;
  int cool_minutes, charge_minutes;
  gboolean charger_attended; /* a charge nobody attends is not planned */
  const FfSortieShot *shots; /* in the order in which they are flown */
  guint n_shots;
  const FfSortieFilter *filters; /* serviceable, here, fitting; none is always a choice */
  guint n_filters;
  const FfSortieBattery *batteries;
  guint n_batteries;
  const FfCameraRange *camera;
  const FfPrices *prices; /* NULL: the defaults */
} FfSortieProblem;

typedef struct {
  guint shot; /* index into the problem's shots */
  gint64 from, to;
  double ev100_start, ev100_end;
  double need_start, need_end; /* NAN for stills */
  FfChoice start, end;         /* settings with the line's filter */
} FfSortieTake;

typedef struct {
  gint64 off_by, down, land_by;
  guint battery;
  int filter; /* index, or FF_NO_FILTER */
  double filter_stops;
  guint first_take, n_takes; /* slice of the plan's takes */
} FfSortieLine;

typedef enum {
  FF_WHY_WINDOW,     /* its window can't be met after what is flown before */
  FF_WHY_BATTERY,    /* no battery is ready in its window */
  FF_WHY_TOO_LONG,   /* it does not fit the minutes of any battery */
  FF_WHY_DAYLIGHT,   /* its window lies outside first off to all down */
  FF_WHY_LIGHT,      /* no filter at hand brings its light within the camera's reach */
  FF_WHY_PRICE,      /* flying it would cost more than it is worth */
} FfWhyNot;

typedef struct {
  guint shot;
  FfWhyNot why;
} FfSortieMiss;

typedef struct {
  guint battery;
  gint64 cool_from, charge_from, ready_at;
} FfSortieCharge;

typedef struct {
  GArray *lines;   /* FfSortieLine in order of time */
  GArray *takes;   /* FfSortieTake */
  GArray *missed;  /* FfSortieMiss */
  GArray *charges; /* FfSortieCharge, only those that a later line needs or the charger can do */
  double parts[FF_N_PARTS];
  double cost;
  gboolean optimal; /* proven: no plan in this order is cheaper by the price table */
} FfSortiePlan;

/* The cheapest plan in the order given: every leg, filter, battery and start minute is weighed. A day
 * too tangled to prove in bounded memory gives the best found, and says so in `optimal`. */
FfSortiePlan *ff_sorties_plan (const FfSortieProblem *problem) G_GNUC_WARN_UNUSED_RESULT;
void ff_sortie_plan_free (FfSortiePlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfSortiePlan, ff_sortie_plan_free)

char *ff_why_not_text (FfWhyNot why) G_GNUC_WARN_UNUSED_RESULT;
