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
  GArray *batteries;   /* FfSortieBattery */
  GPtrArray *battery_items; /* FfItem of each, borrowed */
  const FfItem *clear; /* a clear glass, where one is owned */
  const char *charger_by; /* name of who attends the charger, or NULL */
} FfDayProblem;

/* States the problem under a change. Errors: FF_ERROR_INPUT, saying what to enter. */
FfDayProblem *ff_day_problem_new (const FfDay *day,
                                  const FfDayChange *change,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_day_problem_free (FfDayProblem *problem);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfDayProblem, ff_day_problem_free)

/* The sentences of one line and its clashes. */
char *ff_plan_why (const FfDayProblem *problem, const FfSortiePlan *sorties, const FfSortieLine *line);
char *ff_plan_trim (const FfDayProblem *problem, const FfSortiePlan *sorties, const FfSortieLine *line);
void ff_plan_add_clashes (const FfDayProblem *problem,
                          const FfSortiePlan *sorties,
                          const FfSortieLine *line,
                          GPtrArray *clashes);
void ff_plan_add_remarks (const FfDayProblem *problem, const FfSortieTake *take, GPtrArray *remarks);

/* What a changed plan does to the one before it. */
void ff_plan_add_changes (const FfDayPlan *before, FfDayPlan *after);
