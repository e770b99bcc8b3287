/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Advise: every combination of settings and filters that a camera allows for one shot in one
 * light, ranked by a cost whose parts can be seen. Pure; the caller owns everything passed in. */
#pragma once

#include <glib.h>

#include "ff-names.h"
#include "ff-price.h"

#define FF_MAX_APERTURES 48
#define FF_MAX_BASES 4
#define FF_MAX_STACK 3
#define FF_MAX_REMARKS 12

typedef struct {
  double written; /* what the ring says: 2.8 */
  double exact;   /* what arithmetic uses: 2.8284 */
} FfAperture;

/* What a camera can be set to. ISO and shutter are spans of steps of ff-scale.h. */
typedef struct {
  FfAperture apertures[FF_MAX_APERTURES];
  guint n_apertures;               /* 1: fixed */
  guint iso_low, iso_high;         /* steps of FF_SCALE_ISO */
  guint base_iso[FF_MAX_BASES];    /* steps, the preferred one first */
  guint n_bases;
  guint shutter_fast, shutter_slow; /* steps of FF_SCALE_SHUTTER, fast <= slow */
  gboolean thirds_exact;           /* shutter labels stand for 2^(k/3) s instead of themselves */
  gboolean iso_whole;              /* ISO goes in whole stops from its bases, not in thirds */
  double pitch_um;                 /* 0: not known */
  double sharp_from;               /* first sharp f-number; 0: the widest */
  double sharp_to;                 /* last sharp f-number; 0: where the Airy disk (550 nm)
                                      reaches two pixels, or none without a pitch */
} FfCameraRange;

/* What a shot wants. Fields that do not belong to the intent are ignored. */
typedef struct {
  FfIntent intent;
  double fps;                         /* video, slow */
  double angle_deg;                   /* wanted shutter angle, 180 */
  double angle_from_deg, angle_to_deg; /* allowed span, both included */
  int frames;                         /* bracket: 2 to 15 */
  double step_stops;                  /* bracket */
  double interval_s;                  /* time-lapse; the shutter wants half of it, from an eighth
                                         of it up to 3/4 */
  double max_iso;                     /* the shot's own limit; 0: the camera's */
  double hold_aperture;               /* exact f-number of one of the camera's; 0: free */
  double max_blur_px;                 /* 0: no limit; else with the four below */
  double speed_ms, height_m, focal_mm;
} FfWant;

/* A filter that could be fitted. A variable one has stops < stops_to and is set on the ground in
 * steps of a third. */
typedef struct {
  const char *label;
  double stops, stops_to;
} FfAdviseFilter;

typedef enum {
  FF_REMARK_ANGLE,         /* a: angle in degrees, b: wanted */
  FF_REMARK_ISO,           /* a: ISO, b: base */
  FF_REMARK_SECOND_BASE,   /* a: ISO */
  FF_REMARK_DIFFRACTION,   /* a: Airy disk, b: pixel pitch, both in micrometres */
  FF_REMARK_SOFT,          /* a: f-number, b: the widest sharp one */
  FF_REMARK_LONGEST_FRAME, /* a: longest frame in s, b: without the filter */
  FF_REMARK_FRAME_AT_BASE, /* a: longest frame in s, were the ISO at its base; b: that base */
  FF_REMARK_BLUR,          /* a: blur in pixels, b: limit */
  FF_REMARK_STACK,         /* a: filters in the stack */
  FF_REMARK_VARIABLE,      /* a: stops to set it to */
  FF_REMARK_OFF,           /* a: error in stops */
  FF_REMARK_SPAN,          /* the camera has no shutter from angle a to angle b */
  FF_REMARK_INTERVAL,      /* a: shutter in s, b: wanted, of a time-lapse */
} FfRemarkKind;

typedef struct {
  FfRemarkKind kind;
  double a, b;
} FfRemark;

/* The remark as a sentence, translated. */
char *ff_remark_text (const FfRemark *remark) G_GNUC_WARN_UNUSED_RESULT;

/* Settings that the camera has. */
typedef struct {
  FfAperture aperture;
  guint shutter;            /* step of FF_SCALE_SHUTTER; of a bracket the middle frame */
  double shutter_s;
  double shutter_angle_deg; /* NAN where there is no frame rate */
  guint iso;                /* step of FF_SCALE_ISO */
  double error_stops;       /* positive: brighter than the target */
} FfSettings;

typedef struct {
  guint filters[FF_MAX_STACK]; /* indices into the filters asked about */
  double set_to[FF_MAX_STACK]; /* stops each is (set to) */
  guint n_filters;
  double filter_stops;
  FfSettings settings;
  double parts[FF_N_PARTS];
  double cost;
  /* The light over which this filter and aperture stay good: the shutter within its span and ISO
   * up to its limit follow, the error stays within a third of a stop. */
  double good_from_ev100, good_to_ev100;
  FfRemark remarks[FF_MAX_REMARKS];
  guint n_remarks;
} FfChoice;

typedef struct {
  gboolean ok;
  double shortfall_stops; /* 0 when ok; else positive: too bright for everything */
} FfReach;

typedef struct {
  double ev100;
  const FfCameraRange *camera;
  const FfWant *want;
  const FfAdviseFilter *filters;
  guint n_filters;
  guint max_stack;        /* 0: no filter, 1: one at a time */
  const FfPrices *prices; /* NULL: the defaults */
} FfAdviseQuery;

/* The best `top` choices, best first: an array of FfChoice; ties go to fewer filters, weaker
 * filters, lower ISO, then the wider aperture. Each (filters, settings) once. Never empty. */
GArray *ff_advise (const FfAdviseQuery *query,
                   guint top,
                   FfReach *ret_reach) G_GNUC_WARN_UNUSED_RESULT;

/* The best settings with exactly these stops of filter in front, as a flying aircraft has it.
 * The light, the camera, the want and the prices are the query's; its filters are not looked at,
 * so that the choice names none and carries no price of extra filters. */
void ff_advise_settings (const FfAdviseQuery *query, double filter_stops, FfChoice *ret_choice);

/* What would close a shortfall, in sentences (an array of strings); empty when reach is ok. */
GPtrArray *ff_advise_would_help (const FfAdviseQuery *query,
                                 const FfReach *reach) G_GNUC_WARN_UNUSED_RESULT;

/* Need in stops: the light less the camera's level at the wanted shutter, the preferred base ISO
 * and this aperture (exact f-number). NAN for stills and brackets, which want no shutter. */
double ff_advise_need (double ev100,
                       const FfCameraRange *camera,
                       const FfWant *want,
                       double f_number);

/* Whether camera and want make sense (no ISO range upside down, base inside it, an angle span that
 * holds the angle, a bracket the shutter can reach). Error: FF_ERROR_INPUT. */
gboolean ff_advise_check (const FfCameraRange *camera, const FfWant *want, GError **error);
