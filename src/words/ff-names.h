/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tables of names: one list of each kind of word, from which console, store, brief, window
 * and translations read. A token is what files and the command line say and never changes;
 * a text is what people read and is translated. */
#pragma once

#include <glib.h>

typedef enum { FF_SKY_CLEAR, FF_SKY_THIN, FF_SKY_PARTLY, FF_SKY_OVERCAST, FF_SKY_DARK } FfSky;

typedef enum { FF_VIEW_OBLIQUE, FF_VIEW_DOWN } FfView;

/* Where the light comes from, seen from the camera: front light has the sun behind the camera. */
typedef enum { FF_LIT_FRONT, FF_LIT_SIDE, FF_LIT_BACK } FfLit;

typedef enum {
  FF_INTENT_VIDEO,
  FF_INTENT_SLOW,
  FF_INTENT_STILL,
  FF_INTENT_BRACKET,
  FF_INTENT_TIMELAPSE,
} FfIntent;

typedef enum { FF_ROLE_LEAD, FF_ROLE_PILOT, FF_ROLE_CAMERA, FF_ROLE_OBSERVER } FfRole;

typedef enum {
  FF_KIND_AIRCRAFT,
  FF_KIND_CAMERA,
  FF_KIND_FILTER,
  FF_KIND_BATTERY,
  FF_KIND_CHARGER,
  FF_KIND_CARD,
  FF_KIND_PROPELLERS,
  FF_KIND_CONTROLLER,
  FF_KIND_TABLET,
  FF_KIND_CABLE,
  FF_KIND_READER,
  FF_KIND_RADIO,
  FF_KIND_SAFETY,
  FF_KIND_DOCUMENT,
  FF_KIND_CASE,
  FF_KIND_OTHER,
} FfKind;

typedef enum {
  FF_STATE_SERVICEABLE,
  FF_STATE_DEFECT,
  FF_STATE_QUARANTINED,
  FF_STATE_OUT,
  FF_STATE_RETIRED,
} FfState;

/* What a battery is in. */
typedef enum {
  FF_BATTERY_USE_AIRCRAFT,
  FF_BATTERY_USE_CONTROLLER,
  FF_BATTERY_USE_CAMERA,
  FF_BATTERY_USE_VAN,
} FfBatteryUse;

/* How full and how warm a battery is on the day. */
typedef enum {
  FF_BATTERY_DAY_FULL,
  FF_BATTERY_DAY_PART_USED,
  FF_BATTERY_DAY_HOT,
  FF_BATTERY_DAY_COLD,
  FF_BATTERY_DAY_CHARGING,
  FF_BATTERY_DAY_STORAGE,
} FfBatteryDayState;

/* Why a battery must be decided about, and the decision. */
typedef enum { FF_SIGN_SWELLING, FF_SIGN_DROP, FF_SIGN_WET } FfSign;

typedef enum { FF_DECISION_QUARANTINE, FF_DECISION_RETIRE, FF_DECISION_KEEP } FfDecision;

typedef enum { FF_JOB_PLANNED, FF_JOB_FLOWN, FF_JOB_PUT_AWAY } FfJobState;

/* What a camera is set in. */
typedef enum { FF_ISO_THIRDS, FF_ISO_STOPS } FfIsoSteps;
typedef enum { FF_SHUTTER_BY_TIME, FF_SHUTTER_BY_ANGLE } FfShutterBy;

/* How the light of a reading was measured. */
typedef enum {
  FF_METHOD_SHOWN, /* by the shutter that the camera showed by itself */
  FF_METHOD_EV100,
  FF_METHOD_LUX,
  FF_METHOD_FRAME, /* a test picture */
} FfMethod;

/* What the sun does in a day at a place: rises or sets, stays up, stays down. */
typedef enum { FF_POLAR_NONE, FF_POLAR_DAY, FF_POLAR_NIGHT } FfPolar;

typedef enum { FF_PAPER_A4, FF_PAPER_LETTER } FfPaper;

/* Whom a sheet is for. */
typedef enum {
  FF_READER_LEAD,
  FF_READER_PILOT,
  FF_READER_CAMERA,
  FF_READER_OBSERVER,
  FF_READER_CLIENT,
  FF_READER_ALL,
} FfReader;

/* Whose rule a limit is, and how it compares. */
typedef enum { FF_RULE_OWN, FF_RULE_LAW, FF_RULE_PERMIT, FF_RULE_MAKER, FF_RULE_INSURER } FfRule;

typedef enum {
  FF_COMPARE_AT_MOST,
  FF_COMPARE_AT_LEAST,
  FF_COMPARE_REQUIRED,
  FF_COMPARE_PROHIBITED,
  FF_COMPARE_BY_TIME,
  FF_COMPARE_BELOW,
  FF_COMPARE_ABOVE,
  FF_COMPARE_BETWEEN,
  FF_COMPARE_WINDOW,      /* a time of day from … to */
  FF_COMPARE_INFORMATION, /* shown, never compared */
} FfCompare;

/* What the clocks of a window count from. */
typedef enum {
  FF_ANCHOR_CLOCK,
  FF_ANCHOR_CIVIL_DAWN,
  FF_ANCHOR_SUNRISE,
  FF_ANCHOR_SUNSET,
  FF_ANCHOR_CIVIL_DUSK,
} FfAnchor;

/* When a limit applies at all. */
typedef enum {
  FF_ONLY_ALWAYS,
  FF_ONLY_DAYLIGHT,
  FF_ONLY_TWILIGHT,
  FF_ONLY_NIGHT,
  FF_ONLY_NEAR_PEOPLE,
  FF_ONLY_OVER_WATER,
  FF_ONLY_CONTROLLED_AIRSPACE,
  FF_ONLY_OBSERVER_USED,
} FfOnlyIf;

typedef struct {
  const char *token;
  const char *text; /* marked for translation; ff_name_text() translates */
} FfName;

/* One table. `what` names the thing in messages: "sky", "view". */
typedef struct {
  const char *what;
  const FfName *names;
  guint n_names;
} FfNames;

extern const FfNames ff_names_sky;
extern const FfNames ff_names_view;
extern const FfNames ff_names_lit;
extern const FfNames ff_names_intent;
extern const FfNames ff_names_role;
extern const FfNames ff_names_kind;
extern const FfNames ff_names_state;
extern const FfNames ff_names_battery_use;
extern const FfNames ff_names_battery_day;
extern const FfNames ff_names_sign;
extern const FfNames ff_names_decision;
extern const FfNames ff_names_job_state;
extern const FfNames ff_names_iso_steps;
extern const FfNames ff_names_shutter_by;
extern const FfNames ff_names_method;
extern const FfNames ff_names_polar;
extern const FfNames ff_names_paper;
extern const FfNames ff_names_reader;
extern const FfNames ff_names_rule;
extern const FfNames ff_names_compare;
extern const FfNames ff_names_anchor;
extern const FfNames ff_names_only_if;

/* Token of a value, as files and the command line write it. Value must be of the table's enum. */
const char *ff_name_token (const FfNames *names, int value);

/* The value in people's words, translated. */
const char *ff_name_text (const FfNames *names, int value);

/* Reads a token, case ignored. Error: FF_ERROR_INPUT, naming what is accepted; ret untouched. */
gboolean ff_name_parse (const FfNames *names, const char *token, int *ret_value, GError **error);
