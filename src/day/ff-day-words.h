/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What sun and moon do on a day at a place, in sentences. Pure. Flat horizon at sea level: hills
 * are not known here. */
#pragma once

#include <glib.h>

#include "ff-civil.h"
#include "ff-horizon.h"

/* Below this height of the sun the light goes fast and no filter holds for a whole battery (common
 * practice, no source). */
#define FF_LOW_SUN_DEG 8.0

typedef struct {
  FfDate date;
  GTimeZone *zone;
  FfSite site;
  int check_clock; /* wall clock at which to look for the sun; FF_NO_CLOCK: at noon */
} FfDayWordsQuery;

typedef struct {
  char *sun;     /* "Sun up 06:53, down 19:27; civil dawn 06:19, dusk 20:01." */
  char *low_sun; /* "Low sun, under 8°, until 07:56 and from 18:24."; NULL: it never is low */
  char *moon;    /* "Moon rises 19:50, sets 05:12; 84 % lit." */
  char *check;   /* where the sun stands at a clock, to check clock and zone by; NULL: it is down */
  char *clock;   /* "Clock of Europe/London: UTC+1." and whether it changes on this day */
} FfDayWords;

FfDayWords *ff_day_words (const FfDayWordsQuery *query) G_GNUC_WARN_UNUSED_RESULT;
void ff_day_words_free (FfDayWords *words);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfDayWords, ff_day_words_free)
