/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The plan of a day in the crew's words: what console, chart and sheets show. Labels and sentences
 * are translated and owned; instants are UTC seconds. */
#pragma once

#include <glib.h>

#include "ff-cases.h"
#include "ff-change.h"
#include "ff-names.h"
#include "ff-price.h"

/* Settings the camera has, as they are read out. */
typedef struct {
  double aperture;          /* as written: 2.8 */
  char *shutter;            /* "1/50" */
  double shutter_s;
  double shutter_angle_deg; /* NAN where there is no frame rate */
  int iso;
  double error_stops;
} FfPlanSettings;

typedef struct {
  char *shot_id;
  char *shot;  /* label: "A" */
  char *title; /* "harbour from above" */
  gint64 from, to;
  double ev100_start, ev100_end;
  double need_start_stops, need_end_stops; /* NAN for stills */
  FfPlanSettings start, end;
  FfIntent intent;
  double fps;          /* NAN where there is none */
  GPtrArray *remarks;  /* char*, sentences */
  double track_deg;    /* the run out; NAN: the shot has none, or says none */
  double wind_ms, tail_ms; /* at its height, and the part from behind; NAN: not known */
  gint64 turn_back_by; /* of a run out downwind; 0: none, or not known */
  char *run;           /* "D runs out downwind along 060°: …"; NULL: it does not */
} FfPlanTake;

typedef struct {
  char *id; /* of its first shot: a line stays the same line while that stays */
  int line; /* from 1 */
  gint64 off_by, down, land_by;
  char *battery;       /* label */
  GPtrArray *filters;  /* char*: labels as written on them; empty: none */
  char *engraving;     /* "ND32"; empty: none fitted */
  double filter_stops; /* measured where the filter was measured */
  GPtrArray *takes;    /* FfPlanTake */
  char *land_rule;     /* "Land by 17:56, or off + 18 min, or at the reserve, …" */
  char *trim;          /* "as it darkens raise ISO to 400, then land" */
  char *turn_round;    /* at its landing: "out 5 (ND32), into slot 5; in 4 (ND16)"; empty: the
                          same filter stays on, or the day is over */
  char *why;           /* "5 stops because the need is 5.3 at 17:40 and 5.2 at 17:46" */
} FfPlanLine;

typedef struct {
  char *shot, *title, *reason;
} FfPlanMiss;

typedef struct {
  char *battery;
  gint64 cool_from, charge_from, ready_at;
  char *attended_by; /* name */
} FfPlanCharge;

typedef struct {
  char *job, *version;
  FfSky sky;
  double learned_offset_stops; /* of the newest reading, at its time; 0: none */
  char *light;         /* what the light rests on: an estimate, or a reading and how long */
  GPtrArray *lines;    /* FfPlanLine */
  GPtrArray *missed;   /* FfPlanMiss */
  GPtrArray *clashes;  /* char* */
  GPtrArray *charges;  /* FfPlanCharge */
  GPtrArray *bag_needed, *bag_in_case; /* char*: filter labels */
  FfCases *cases;      /* the bag with its reasons, and what survives; NULL: not worked out */
  GPtrArray *changes;  /* char*: what a tried change does, in sentences */
  FfChangePrice *price; /* the claim behind the first of them; NULL: nothing is tried */
  int swaps, landings_for_filter_alone, batteries_used;
  double cost, parts[FF_N_PARTS];
  gboolean kept;    /* as it stands, though another would be cheaper by less than the margin */
  gboolean optimal; /* of the light and the minutes as stated */
  double bound;     /* no plan costs less; the cost itself where optimal */
} FfDayPlan;

void ff_day_plan_free (FfDayPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfDayPlan, ff_day_plan_free)
