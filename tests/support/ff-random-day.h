/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Random days for the planner: the problem with all that its pointers point to. */
#pragma once

#include "ff-sorties.h"
#include "ff-test.h"

#define FF_RANDOM_DAY_MINUTES 241
#define FF_RANDOM_DAY_SHOTS 8
#define FF_RANDOM_DAY_FILTERS 6
#define FF_RANDOM_DAY_BATTERIES 5

typedef struct {
  FfSortieProblem problem;
  FfCameraRange camera;
  FfSortieShot shots[FF_RANDOM_DAY_SHOTS];
  FfSortieFilter filters[FF_RANDOM_DAY_FILTERS];
  FfSortieBattery batteries[FF_RANDOM_DAY_BATTERIES];
  FfSortieLock locks[2];
  FfSortiePause pauses[1];
  double light[FF_RANDOM_DAY_SHOTS][FF_RANDOM_DAY_MINUTES];
} FfRandomDay;

/* What a day may have beside shots, filters, batteries and a charger. */
typedef enum {
  FF_RANDOM_RELAUNCH = 1 << 0,  /* batteries that may fly twice, some part-used */
  FF_RANDOM_MATCH = 1 << 1,     /* must-match groups and sets of filters */
  FF_RANDOM_LOCKS = 1 << 2,     /* locks, shots that must fly, a pause */
  FF_RANDOM_FREE = 1 << 3,      /* shots of free order */
  FF_RANDOM_ALL = (1 << 4) - 1,
} FfRandomDayParts;

/* One filter and one battery more than the problem counts are filled in, to be counted in later. */
void ff_random_day (FfTestRandom *random, FfRandomDayParts parts, FfRandomDay *day);

/* One small enough to try everything: few shots in narrow windows. */
void ff_random_day_tiny (FfTestRandom *random, FfRandomDayParts parts, FfRandomDay *day);

/* The cost of the cheapest plan, found by trying everything there is. */
double ff_random_day_cheapest (const FfRandomDay *day);
