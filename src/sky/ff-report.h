/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Aerodrome weather reports (METAR, SPECI) and forecasts (TAF) as typed or pasted, read group by
 * group after WMO-No. 306, Volume I.1, Part A (FM 15, FM 16, FM 51; code table 4678), and FMH-1
 * (FCM-H1, chapter 12) for the American forms. A group that is not understood is kept and shown; it
 * never spoils the rest. Heights are above the aerodrome. What a report does not say stays missing:
 * it never becomes zero. */
#pragma once

#include <glib.h>

/* How a field is known. Visibility "9999" is 10 km or more, "M1/4SM" less than a quarter mile. */
typedef enum {
  FF_REPORTED_MISSING,
  FF_REPORTED_EXACT,
  FF_REPORTED_LESS_THAN,
  FF_REPORTED_OR_MORE,
} FfReportedIs;

typedef struct {
  FfReportedIs is;
  double value;
} FfReported;

typedef enum { FF_REPORT_METAR, FF_REPORT_SPECI, FF_REPORT_TAF } FfReportKind;

typedef enum {
  FF_COVER_UNKNOWN,
  FF_COVER_FEW,       /* 1 to 2 eighths */
  FF_COVER_SCATTERED, /* 3 to 4 */
  FF_COVER_BROKEN,    /* 5 to 7 */
  FF_COVER_OVERCAST,  /* 8 */
} FfCover;

typedef struct {
  FfCover cover;
  FfReported base_m;
  char type[4]; /* "CB", "TCU", a genus such as "SC", or "" */
} FfCloudLayer;

/* Which elements a part of a report names. In a forecast, what a change does not name stays. */
typedef enum {
  FF_NAMES_WIND = 1 << 0,
  FF_NAMES_VISIBILITY = 1 << 1,
  FF_NAMES_WEATHER = 1 << 2,
  FF_NAMES_CLOUD = 1 << 3,
} FfReportNames;

#define FF_REPORT_LAYERS 8
#define FF_REPORT_WEATHERS 8

/* Wind, visibility, weather and cloud: observed, or of one period of a forecast. */
typedef struct {
  FfReportNames names;
  FfReported wind_deg; /* where it comes from, degrees true; missing when variable */
  gboolean wind_variable;
  double veer_from_deg, veer_to_deg; /* clockwise limits of a varying direction; NaN if not given */
  FfReported wind_ms, gust_ms;
  double wind_unit_ms; /* one unit of the report in m/s; 0 without a wind group */
  FfReported visibility_m;
  FfReported lowest_visibility_m; /* in the worst direction, where given beside the prevailing */
  gboolean cavok;
  char weather[FF_REPORT_WEATHERS][12]; /* "-RA", "BR", … */
  guint n_weather;
  gboolean clear; /* SKC, CLR, NSC, NCD or CAVOK: no cloud of significance */
  double clear_to_m; /* how high that says there is none: it is no clear sky; 0: it does not say */
  gboolean cloud_unknown; /* solidi instead of cloud groups */
  FfCloudLayer layers[FF_REPORT_LAYERS];
  guint n_layers;
  gboolean sky_hidden; /* VV group */
  FfReported vertical_visibility_m;
} FfReportPart;

typedef enum {
  FF_PERIOD_BASE,
  FF_PERIOD_FROM,     /* FM: replaces all that stood before */
  FF_PERIOD_BECOMING, /* BECMG: some time within; holds from its end */
  FF_PERIOD_AT_TIMES, /* TEMPO: less than an hour at a time, less than half of it */
  FF_PERIOD_PERHAPS,  /* PROB30, PROB40, also with TEMPO */
} FfPeriodKind;

typedef struct {
  FfPeriodKind kind;
  int chance; /* 30 or 40 per cent with FF_PERIOD_PERHAPS, else 0 */
  gint64 from, to;
  FfReportPart part;
} FfReportPeriod;

typedef struct {
  FfReportKind kind;
  char station[8];
  gint64 at;
  gboolean automatic, nil, corrected, amended, cancelled;
  FfReportPart part; /* a forecast: its first period */
  FfReported temperature_c, dew_point_c; /* "M00" is −0.0 */
  FfReported qnh_hpa;
  char *trend;   /* what a METAR says of the next two hours, as written; or NULL */
  char *remarks; /* behind RMK, as written; or NULL */
  char **aside;  /* groups known and not used here: runway range, runway state, shear */
  char **unread; /* groups not understood */
  gint64 valid_from, valid_to; /* a forecast */
  FfReportPeriod *periods;
  guint n_periods;
} FfReport;

#define FF_REPORT_LONGEST 4096 /* bytes */

/* Reads one report. A report names no month: it is the one that brings it nearest to `now`, and one
 * more than 16 days away is refused. Also refused, as FF_ERROR_INPUT with what was found: an empty
 * or overlong text, one with characters that are no report's, one without station and time. */
FfReport *ff_report_read (const char *text, gint64 now, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_report_free (FfReport *report);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfReport, ff_report_free)

typedef enum { FF_CEILING_UNKNOWN, FF_CEILING_NONE, FF_CEILING_KNOWN } FfCeiling;

/* The lowest broken or overcast layer, or the vertical visibility, in metres above the aerodrome
 * (FMH-1, chapter 9). Cloud that can't be told, or is hidden, is unknown and not none. */
FfCeiling ff_report_ceiling (const FfReportPart *part, double *ret_m);

/* The base of the lowest cloud of any amount, in metres above the aerodrome; or how high there is
 * none, "or more": CAVOK and NSC say 5000 ft (WMO-No. 306, 15.9 and 15.10), CLR 12 000 ft (FMH-1,
 * chapter 9), NCD nothing, since it is what an instrument did not see. */
FfReported ff_report_cloud_base (const FfReportPart *part);

/* The highest gust that the wind group allows: the one reported, else the mean and what may go
 * unreported, which is less than 10 kt, 5 m/s or 20 km/h (WMO-No. 306, 15.5.5). Missing without a
 * wind. */
FfReported ff_report_gust_limit (const FfReportPart *part);

/* What a forecast holds to at an instant, changes applied: what becomes counts from its end. FALSE
 * outside its validity. A report observed holds at any instant. */
gboolean ff_report_prevailing (const FfReport *report, gint64 at, FfReportPart *ret_part);

/* The worst of it within [from, to): of what prevails, what is becoming, and what comes at times or
 * perhaps. Strongest wind and gust, least visibility, lowest ceiling and cloud, all weather. FALSE
 * where the validity does not touch it. */
gboolean ff_report_worst (const FfReport *report, gint64 from, gint64 to, FfReportPart *ret_part);
