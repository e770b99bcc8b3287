/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the plan of a day is made: the problem stated from a day, the planner's answer, the words. */
#pragma once

#include "ff-day-private.h"
#include "ff-plan.h"
#include "ff-sorties.h"

FfDayPlan *ff_day_plan_new (void) G_GNUC_WARN_UNUSED_RESULT;
FfPlanLine *ff_plan_line_new (void) G_GNUC_WARN_UNUSED_RESULT;
FfPlanTake *ff_plan_take_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* The problem with all that its pointers point to, and which record each index means. */
typedef struct {
  const FfDay *day;
  FfSky sky;
  FfSortieProblem problem;
  FfCameraRange camera;
  GArray *shots;       /* FfSortieShot */
  GPtrArray *records;  /* FfShot of each, borrowed */
  GPtrArray *lights;   /* the light arrays */
  GArray *filters;     /* FfSortieFilter */
  GPtrArray *filter_items;  /* FfItem of each, borrowed */
  GPtrArray *second_items;  /* FfItem behind each in a stack, borrowed; NULL: it stands alone */
  GArray *batteries;   /* FfSortieBattery */
  GPtrArray *battery_items; /* FfItem of each, borrowed */
  GPtrArray *loans;    /* FfItem: what a change borrows */
  GArray *locks;       /* FfSortieLock: flown lines, then what the crew has decided */
  GArray *so_far;      /* FfSortieLock: the lines that stand, where the crew wants them kept */
  GPtrArray *said;     /* char*: sentences about locks and batteries that the plan rests on */
  const FfItem *charger; /* the one that is planned with, or NULL */
  const FfItem *clear; /* a clear glass, where one is owned */
  const char *charger_by; /* name of who attends the charger, or NULL */
} FfDayProblem;

/* States the problem under a change. Errors: FF_ERROR_INPUT, saying what to enter. */
FfDayProblem *ff_day_problem_new (const FfDay *day,
                                  const FfDayChange *change,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_day_problem_free (FfDayProblem *problem);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfDayProblem, ff_day_problem_free)

/* Whether a list (NULL: none) holds the label, case ignored, or the id. */
gboolean ff_is_named (const char *const *names, const char *label, const char *id);

/* Filters, batteries, the charger and loans; prices are there already: ff-problem-gear.c. */
void ff_problem_add_gear (FfDayProblem *problem, const FfDayChange *change);

/* What is decided, has flown, or is said of the batteries today: ff-problem-today.c. Gear and shots are
 * there already. */
void ff_problem_set_batteries (FfDayProblem *problem);
void ff_problem_add_locks (FfDayProblem *problem);
void ff_problem_stay_close (FfDayProblem *problem);

/* "C is locked: b4, off by 16:40."; NULL: neither locked nor flown. */
char *ff_problem_lock_words (const FfDayProblem *problem, guint shot) G_GNUC_WARN_UNUSED_RESULT;

/* A shot by label, or NULL. */
const FfShot *ff_day_shot (const FfDay *day, const char *label);

/* Its window under a change, wall clocks. Error: FF_ERROR_INPUT. */
gboolean ff_day_moved_window (const FfDayChange *change,
                              const FfShot *shot,
                              int *ret_from,
                              int *ret_to,
                              GError **error);

/* The prices of a change, or else the crew's. */
const FfPrices *ff_day_prices_under (const FfDay *day, const FfDayChange *change);

/* What it costs not to fly the shot. */
double ff_day_shot_weight (const FfPrices *prices, const FfShot *shot);

/* A NULL-terminated list with one name more; the names are borrowed. */
const char **ff_names_and (const char *const *names,
                           const char *name) G_GNUC_WARN_UNUSED_RESULT;

/* The sentences of one line and its clashes. */
char *ff_plan_why (const FfDayProblem *problem, const FfSortiePlan *sorties, const FfSortieLine *line);
char *ff_plan_trim (const FfDayProblem *problem, const FfSortiePlan *sorties, const FfSortieLine *line);
char *ff_plan_land_rule (const FfPlanLine *line, GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;
void ff_plan_add_clashes (const FfDayProblem *problem,
                          const FfSortiePlan *sorties,
                          const FfSortieLine *line,
                          GPtrArray *clashes);
void ff_plan_add_remarks (const FfDayProblem *problem, const FfSortieTake *take, GPtrArray *remarks);

/* What the light asks for within a take, and on the day: ff-light-cautions.c. */
void ff_plan_add_light_remarks (const FfDayProblem *problem,
                                const FfSortieLine *line,
                                const FfSortieTake *take,
                                GPtrArray *remarks);
void ff_plan_add_light_clashes (const FfDayProblem *problem,
                                const FfSortiePlan *sorties,
                                GPtrArray *clashes);

/* The plan in words, without its cases and without what it changes. */
FfDayPlan *ff_plan_read (const FfDayProblem *problem,
                         const FfSortiePlan *sorties) G_GNUC_WARN_UNUSED_RESULT;

/* The same from a day, as every case and every remedy is planned. */
FfDayPlan *ff_day_plan_bare (const FfDay *day,
                             const FfDayChange *change,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Plans the cases beside `plan`, which answers `problem` with `sorties`. */
FfCases *ff_cases_new (const FfDayProblem *problem,
                       const FfSortiePlan *sorties,
                       const FfDayPlan *plan,
                       const FfDayChange *change,
                       GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What each line survives. */
GPtrArray *ff_slips_new (const FfDayProblem *problem,
                         const FfSortiePlan *sorties) G_GNUC_WARN_UNUSED_RESULT;

/* The ISO that a shot may be raised to between takes. */
int ff_plan_iso_limit (const FfDayProblem *problem, const FfShot *shot);

/* Whether the plan flies the shot. */
const FfPlanLine *ff_plan_line_of (const FfDayPlan *plan, const char *shot);

/* The bearing in the text of a track: three figures and a degree sign, "out along 060°". NAN: none. */
double ff_run_track_deg (const char *track);

/* Wind and turn-back of a take on a line with this land-by. */
void ff_run_read (const FfDayProblem *problem,
                  const FfShot *shot,
                  gint64 land_by,
                  FfPlanTake *take);

/* What else a changed plan does to the one before it: the number of sorties, other times (in a zone;
 * NULL: not said), other filters. */
void ff_plan_add_details (const FfDayPlan *before, FfDayPlan *after, GTimeZone *zone);
