/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who carries which battery in the cabin, under a carrier's rule as the crew entered it. Pure; it
 * knows no rule of its own. Bands and limits of this shape: IATA Dangerous Goods Regulations,
 * table 2.3.A, and the carriers' own pages. */
#pragma once

#include <glib.h>

#define FF_TRAVEL_NO_LIMIT (-1) /* the carrier states none */
#define FF_TRAVEL_NOBODY G_MAXUINT

/* Batteries over the band before and up to this energy, the edge included. */
typedef struct {
  double up_to_wh;   /* INFINITY: any */
  int spares_each;   /* a person may carry; 0: none go; FF_TRAVEL_NO_LIMIT */
  gboolean approval; /* the carrier must approve */
} FfTravelBand;

typedef struct {
  const FfTravelBand *bands; /* the smallest first */
  guint n_bands;             /* what is over the last does not go */
  int spares_in_all;         /* of all bands, each person; FF_TRAVEL_NO_LIMIT */
  double cabin_kg;           /* a person may take into the cabin, for batteries; NAN: no limit */
} FfTravelRule;

typedef struct {
  double energy_wh; /* NAN: not known */
  double mass_kg;   /* NAN: not known, counted as nothing */
  gboolean fit;     /* damaged or quarantined: stays, whatever the rule says */
  gboolean wanted;  /* the plan flies it: goes before one that it does not */
} FfTravelBattery;

typedef enum {
  FF_TRAVEL_GOES,
  FF_TRAVEL_UNFIT,
  FF_TRAVEL_NO_ENERGY, /* without its watt-hours it is in no band */
  FF_TRAVEL_TOO_LARGE, /* its band may not go, or it is over all bands */
  FF_TRAVEL_TOO_MANY,  /* everybody's number is full */
  FF_TRAVEL_TOO_HEAVY, /* there is a number left, but no weight */
} FfTravelAnswer;

typedef struct {
  FfTravelAnswer answer;
  guint person; /* FF_TRAVEL_NOBODY unless it goes */
  guint band;   /* n_bands: over all, or not known */
  gboolean approval;
} FfTravelShare;

typedef struct {
  GArray *shares;  /* FfTravelShare, one a battery, in their order */
  guint goes;
  gboolean proven; /* more can't go: of what the plan flies first, then of all */
} FfTravelPlan;

/* As many of the wanted ones as can go, then as many as can go at all, evenly among the people. */
FfTravelPlan *ff_travel_share (const FfTravelRule *rule,
                               const FfTravelBattery *batteries,
                               guint n_batteries,
                               guint n_people) G_GNUC_WARN_UNUSED_RESULT;
void ff_travel_plan_free (FfTravelPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfTravelPlan, ff_travel_plan_free)

/* The band of an energy, compared unrounded but for the noise of the last binary digits; n_bands
 * when it is over all of them or not a number. */
guint ff_travel_band (const FfTravelRule *rule, double energy_wh);
