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
#define FF_SORTIE_MAX_GROUPS 8     /* of shots that must match; shots of any further one are free */
#define FF_SORTIE_MAX_FREE 8       /* shots whose order is searched exactly */

/* In a lock: whatever the planner likes. */
#define FF_ANY_FILTER (-2)
#define FF_ANY_BATTERY (-1)
#define FF_ANY_TIME G_MININT64

typedef struct {
  const char *label;
  gint64 window_from, window_to; /* the whole take lies inside */
  int minutes;
  double weight;                 /* cost of not flying it; 0: the price table's */
  gboolean fixed_time;           /* someone else keeps the time at which the window opens */
  gboolean free_order;           /* may be flown before or after its neighbours in the list */
  gboolean must_fly;             /* left out only where nothing else can be done */
  guint match_group;             /* shots of one number must look alike; 0: none */
  FfWant want;
  double own_from_angle_deg;     /* what the angle may close to at a price, once the sortie holds
                                    shots that want different filters */
  const double *ev100;           /* light at each minute of [from, to] of the problem */
} FfSortieShot;

typedef struct {
  const char *label;
  double stops;
  const char *set;       /* filters of one set have one cast; NULL: not told apart */
  double price_per_take; /* of having it in front: a stack, the top end of a variable one */
} FfSortieFilter;

typedef struct {
  const char *label;
  int usable_minutes; /* after the reserve, at the day's temperature */
  gint64 ready_at;
  /* The crew's own rule: how many legs it may fly on one charge. 0 and 1: land, charge. In the cold
   * a part-used battery stays down: that is for the rule to say, not for a price. */
  guint legs_at_most;
  /* Flown already since it was charged; where the rule allows no more legs it is charged first. */
  guint legs_flown;
  int minutes_flown;
  gboolean on_charger; /* it has a slot until it is ready */
} FfSortieBattery;

/* A line that somebody has decided: the leg that flies this shot has this battery, this filter and
 * is off at this instant. The shot is then one that must fly. */
typedef struct {
  guint shot;
  int battery, filter;
  gint64 off_by;
} FfSortieLock;

/* Nothing is in the air from `from` until `to`: a break, a ferry, a closed sky. */
typedef struct {
  gint64 from, to;
} FfSortiePause;

typedef struct {
  gint64 from, to; /* first off and all down; the light arrays cover it */
  int out_minutes, back_minutes;
  int battery_change_minutes, filter_change_minutes;
  guint charger_slots;
  int cool_minutes, charge_minutes;
  gboolean charger_attended; /* a charge nobody attends is not planned */
  int relaunch_minutes;       /* on the ground before a further leg on the battery that is in */
  int filter_landing_minutes; /* the same when the filter is changed in it */
  const FfSortieShot *shots; /* in the order in which they are flown */
  guint n_shots;
  const FfSortieFilter *filters; /* serviceable, here, fitting; none is always a choice */
  guint n_filters;
  const FfSortieBattery *batteries;
  guint n_batteries;
  const FfCameraRange *camera;
  const FfPrices *prices; /* NULL: the defaults */
  const FfSortieLock *locks;
  guint n_locks;
  const FfSortiePause *pauses;
  guint n_pauses;
  /* The plan so far, as locks without an instant are read: it stays unless the new one is cheaper
   * by more than the margin. 0: it does not count. */
  const FfSortieLock *plan_so_far;
  guint n_so_far;
  double stay_margin;
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
  guint leg;                 /* on this charge of the battery: 1, or more after a relaunch */
  gboolean relaunch;         /* on the battery that was in */
  gboolean filter_landing;   /* the landing before it was for the filter alone */
} FfSortieLine;

typedef enum {
  FF_WHY_WINDOW,     /* its window can't be met after what is flown before */
  FF_WHY_BATTERY,    /* no battery is ready in its window */
  FF_WHY_TOO_LONG,   /* it does not fit the minutes of any battery */
  FF_WHY_DAYLIGHT,   /* its window lies outside first off to all down */
  FF_WHY_LIGHT,      /* no filter at hand brings its light within the camera's reach */
  FF_WHY_PRICE,      /* flying it would cost more than it is worth */
  FF_WHY_LOCK,       /* what it is locked to can't be flown */
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
  gboolean optimal; /* proven: no plan is cheaper by the price table, in any order that is allowed;
                       of the light and the minutes as stated, not of what the day may bring */
  double bound;     /* no plan is cheaper than this; the cost itself where optimal */
  gboolean stopped; /* the caller called it off: the best until then */
  gboolean kept;    /* the plan so far stays, though one cheaper by `kept_price` exists */
  double kept_price;
  guint looked_at;  /* nodes */
} FfSortiePlan;

/* How a search is watched. Zeroed: not at all. */
typedef struct {
  gboolean (*stop) (gpointer data); /* asked often; TRUE: give the best so far */
  void (*better) (const FfSortiePlan *plan, gpointer data); /* each better plan, on its way */
  gpointer data;
  guint nodes_at_most; /* 0: FF_SORTIE_NODES. Nodes, not time: the same plan on every machine */
} FfSortieWatch;

#define FF_SORTIE_NODES 150000

/* The cheapest plan: every leg, filter, battery and start minute is weighed, and for up to
 * FF_SORTIE_MAX_FREE shots of free order every order. A day too tangled to prove within the nodes
 * gives the best found, says so in `optimal`, and how far from the best it can be in `bound`.
 * Charges queue in the order of the landings: a battery cools, then takes the slot free first. */
FfSortiePlan *ff_sorties_plan (const FfSortieProblem *problem) G_GNUC_WARN_UNUSED_RESULT;
FfSortiePlan *ff_sorties_plan_watched (const FfSortieProblem *problem,
                                       const FfSortieWatch *watch) G_GNUC_WARN_UNUSED_RESULT;
void ff_sortie_plan_free (FfSortiePlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfSortiePlan, ff_sortie_plan_free)

/* The lines of a plan as locks, one a take, for the next plan's `plan_so_far`: an array of
 * FfSortieLock. Indices mean the problem that the plan is of. */
GArray *ff_sortie_plan_locks (const FfSortiePlan *plan) G_GNUC_WARN_UNUSED_RESULT;

char *ff_why_not_text (FfWhyNot why) G_GNUC_WARN_UNUSED_RESULT;
