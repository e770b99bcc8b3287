/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-names.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"

#define TABLE(symbol, what_text)                                                                   \
  const FfNames ff_names_##symbol = { what_text, symbol##_names, G_N_ELEMENTS (symbol##_names) }

static const FfName sky_names[] = {
  /* Translators: the state of the sky, for the light it gives. */
  [FF_SKY_CLEAR] = { "clear", N_ ("clear") },
  /* Translators: thin high cloud, the sun still throws a soft shadow. */
  [FF_SKY_THIN] = { "thin", N_ ("thin cloud") },
  [FF_SKY_PARTLY] = { "partly", N_ ("partly cloudy") },
  [FF_SKY_OVERCAST] = { "overcast", N_ ("overcast") },
  [FF_SKY_DARK] = { "dark", N_ ("dark cloud") },
};
TABLE (sky, "sky");

static const FfName view_names[] = {
  /* Translators: the camera looks forward and down at the ground, not straight down. */
  [FF_VIEW_OBLIQUE] = { "oblique", N_ ("oblique") },
  [FF_VIEW_DOWN] = { "down", N_ ("straight down") },
};
TABLE (view, "view");

static const FfName lit_names[] = {
  /* Translators: front light: the sun is behind the camera. */
  [FF_LIT_FRONT] = { "front", N_ ("front light") },
  [FF_LIT_SIDE] = { "side", N_ ("side light") },
  [FF_LIT_BACK] = { "back", N_ ("back light") },
};
TABLE (lit, "light direction");

static const FfName intent_names[] = {
  [FF_INTENT_VIDEO] = { "video", N_ ("video") },
  /* Translators: recorded at a high frame rate, shown slower. */
  [FF_INTENT_SLOW] = { "slow", N_ ("slow motion") },
  [FF_INTENT_STILL] = { "still", N_ ("still") },
  /* Translators: several stills of one scene at different exposures. */
  [FF_INTENT_BRACKET] = { "bracket", N_ ("bracket") },
  [FF_INTENT_TIMELAPSE] = { "timelapse", N_ ("time-lapse") },
};
TABLE (intent, "intent");

static const FfName role_names[] = {
  [FF_ROLE_LEAD] = { "lead", N_ ("crew lead") },
  [FF_ROLE_PILOT] = { "pilot", N_ ("pilot") },
  [FF_ROLE_CAMERA] = { "camera", N_ ("camera operator") },
  /* Translators: the crew member who watches the aircraft and the sky. */
  [FF_ROLE_OBSERVER] = { "observer", N_ ("observer") },
};
TABLE (role, "role");

static const FfName kind_names[] = {
  [FF_KIND_AIRCRAFT] = { "aircraft", N_ ("aircraft") },
  [FF_KIND_CAMERA] = { "camera", N_ ("camera") },
  [FF_KIND_FILTER] = { "filter", N_ ("filter") },
  [FF_KIND_BATTERY] = { "battery", N_ ("battery") },
  [FF_KIND_CHARGER] = { "charger", N_ ("charger") },
  /* Translators: a memory card. */
  [FF_KIND_CARD] = { "card", N_ ("card") },
  [FF_KIND_PROPELLERS] = { "propellers", N_ ("propeller set") },
  [FF_KIND_CONTROLLER] = { "controller", N_ ("controller") },
  [FF_KIND_TABLET] = { "tablet", N_ ("tablet") },
  [FF_KIND_CABLE] = { "cable", N_ ("cable") },
  /* Translators: what reads memory cards. */
  [FF_KIND_READER] = { "reader", N_ ("card reader") },
  [FF_KIND_RADIO] = { "radio", N_ ("radio") },
  [FF_KIND_SAFETY] = { "safety", N_ ("safety kit") },
  [FF_KIND_DOCUMENT] = { "document", N_ ("document") },
  /* Translators: a numbered box in which the gear travels. */
  [FF_KIND_CASE] = { "case", N_ ("case") },
  [FF_KIND_OTHER] = { "other", N_ ("other") },
};
TABLE (kind, "kind");

static const FfName state_names[] = {
  /* Translators: fit for use. */
  [FF_STATE_SERVICEABLE] = { "serviceable", N_ ("serviceable") },
  [FF_STATE_DEFECT] = { "defect", N_ ("defect open") },
  /* Translators: a battery pulled from use until it is decided about. */
  [FF_STATE_QUARANTINED] = { "quarantined", N_ ("quarantined") },
  /* Translators: the item is away, lent or on another job. */
  [FF_STATE_OUT] = { "out", N_ ("out") },
  [FF_STATE_RETIRED] = { "retired", N_ ("retired") },
};
TABLE (state, "state");

static const FfName battery_use_names[] = {
  /* Translators: what a battery drives. */
  [FF_BATTERY_USE_AIRCRAFT] = { "aircraft", N_ ("aircraft") },
  [FF_BATTERY_USE_CONTROLLER] = { "controller", N_ ("controller") },
  [FF_BATTERY_USE_CAMERA] = { "camera", N_ ("camera") },
  [FF_BATTERY_USE_VAN] = { "van", N_ ("van") },
};
TABLE (battery_use, "use of a battery");

static const FfName battery_day_names[] = {
  /* Translators: how full or warm a battery is today. */
  [FF_BATTERY_DAY_FULL] = { "full", N_ ("full") },
  [FF_BATTERY_DAY_PART_USED] = { "part-used", N_ ("part-used") },
  [FF_BATTERY_DAY_HOT] = { "hot", N_ ("hot") },
  [FF_BATTERY_DAY_COLD] = { "cold", N_ ("cold") },
  [FF_BATTERY_DAY_CHARGING] = { "charging", N_ ("charging") },
  /* Translators: charged to about half, to be kept. */
  [FF_BATTERY_DAY_STORAGE] = { "storage", N_ ("storage charge") },
};
TABLE (battery_day, "state of the day");

static const FfName sign_names[] = {
  /* Translators: what was seen at a battery. */
  [FF_SIGN_SWELLING] = { "swelling", N_ ("swelling") },
  [FF_SIGN_DROP] = { "drop", N_ ("drop or crash") },
  [FF_SIGN_WET] = { "wet", N_ ("wet") },
};
TABLE (sign, "sign");

static const FfName decision_names[] = {
  /* Translators: what becomes of a battery that swelled, fell or got wet. */
  [FF_DECISION_QUARANTINE] = { "quarantine", N_ ("quarantine") },
  [FF_DECISION_RETIRE] = { "retire", N_ ("retire") },
  [FF_DECISION_KEEP] = { "keep", N_ ("keep in use") },
};
TABLE (decision, "decision");

static const FfName job_state_names[] = {
  [FF_JOB_PLANNED] = { "planned", N_ ("planned") },
  [FF_JOB_FLOWN] = { "flown", N_ ("flown") },
  [FF_JOB_PUT_AWAY] = { "put-away", N_ ("put away") },
};
TABLE (job_state, "state of a job");

static const FfName iso_steps_names[] = {
  /* Translators: the steps in which ISO is set on a camera. */
  [FF_ISO_THIRDS] = { "thirds", N_ ("thirds") },
  [FF_ISO_STOPS] = { "stops", N_ ("whole stops") },
};
TABLE (iso_steps, "steps of ISO");

static const FfName shutter_by_names[] = {
  /* Translators: how the shutter of a camera is set: by 1/50 s, or by 180 degrees. */
  [FF_SHUTTER_BY_TIME] = { "time", N_ ("by time") },
  [FF_SHUTTER_BY_ANGLE] = { "angle", N_ ("by angle") },
};
TABLE (shutter_by, "way to set a shutter");

static const FfName method_names[] = {
  /* Translators: how a light reading was taken: the camera chose the shutter by itself. */
  [FF_METHOD_SHOWN] = { "shown", N_ ("shutter shown") },
  [FF_METHOD_EV100] = { "ev100", N_ ("meter, EV") },
  /* Translators: an incident light meter; lux falling on level ground. */
  [FF_METHOD_LUX] = { "lux", N_ ("meter, lux") },
  [FF_METHOD_FRAME] = { "frame", N_ ("test picture") },
};
TABLE (method, "way to take a reading");

static const FfName polar_names[] = {
  [FF_POLAR_NONE] = { "none", N_ ("the sun rises or sets") },
  [FF_POLAR_DAY] = { "day", N_ ("the sun does not set") },
  [FF_POLAR_NIGHT] = { "night", N_ ("the sun does not rise") },
};
TABLE (polar, "polar state");

static const FfName paper_names[] = {
  [FF_PAPER_A4] = { "a4", N_ ("A4") },
  [FF_PAPER_LETTER] = { "letter", N_ ("Letter") },
};
TABLE (paper, "paper");

static const FfName reader_names[] = {
  [FF_READER_LEAD] = { "lead", N_ ("crew lead") },
  [FF_READER_PILOT] = { "pilot", N_ ("pilot") },
  [FF_READER_CAMERA] = { "camera", N_ ("camera operator") },
  [FF_READER_OBSERVER] = { "observer", N_ ("observer") },
  [FF_READER_CLIENT] = { "client", N_ ("client and cast") },
  [FF_READER_ALL] = { "all", N_ ("all") },
};
TABLE (reader, "reader of a brief");

static const FfName rule_names[] = {
  /* Translators: whose rule a limit is. */
  [FF_RULE_OWN] = { "own", N_ ("own sheet") },
  [FF_RULE_LAW] = { "law", N_ ("law") },
  [FF_RULE_PERMIT] = { "permit", N_ ("permit") },
  [FF_RULE_MAKER] = { "maker", N_ ("maker") },
  [FF_RULE_INSURER] = { "insurer", N_ ("insurer") },
};
TABLE (rule, "rule");

static const FfName compare_names[] = {
  [FF_COMPARE_AT_MOST] = { "at-most", N_ ("at most") },
  [FF_COMPARE_AT_LEAST] = { "at-least", N_ ("at least") },
  [FF_COMPARE_REQUIRED] = { "required", N_ ("required") },
  [FF_COMPARE_PROHIBITED] = { "prohibited", N_ ("prohibited") },
  [FF_COMPARE_BY_TIME] = { "by-time", N_ ("by") },
  [FF_COMPARE_BELOW] = { "below", N_ ("less than") },
  [FF_COMPARE_ABOVE] = { "above", N_ ("more than") },
  [FF_COMPARE_BETWEEN] = { "between", N_ ("between") },
  [FF_COMPARE_WINDOW] = { "window", N_ ("within the hours") },
  [FF_COMPARE_INFORMATION] = { "information", N_ ("for information") },
};
TABLE (compare, "comparison");

static const FfName anchor_names[] = {
  /* Translators: what the minutes of a window count from. */
  [FF_ANCHOR_CLOCK] = { "clock", N_ ("the clock") },
  [FF_ANCHOR_CIVIL_DAWN] = { "civil-dawn", N_ ("civil dawn") },
  [FF_ANCHOR_SUNRISE] = { "sunrise", N_ ("sunrise") },
  [FF_ANCHOR_SUNSET] = { "sunset", N_ ("sunset") },
  [FF_ANCHOR_CIVIL_DUSK] = { "civil-dusk", N_ ("civil dusk") },
};
TABLE (anchor, "anchor of a window");

static const FfName only_if_names[] = {
  /* Translators: when a limit applies. */
  [FF_ONLY_ALWAYS] = { "always", N_ ("always") },
  [FF_ONLY_DAYLIGHT] = { "daylight", N_ ("in daylight") },
  [FF_ONLY_TWILIGHT] = { "twilight", N_ ("in civil twilight") },
  [FF_ONLY_NIGHT] = { "night", N_ ("at night") },
  [FF_ONLY_NEAR_PEOPLE] = { "near-people", N_ ("near uninvolved people") },
  [FF_ONLY_OVER_WATER] = { "over-water", N_ ("over water") },
  [FF_ONLY_CONTROLLED_AIRSPACE] = { "controlled-airspace", N_ ("in controlled airspace") },
  [FF_ONLY_OBSERVER_USED] = { "observer-used", N_ ("when an observer is used") },
};
TABLE (only_if, "condition of a limit");

const char *
ff_name_token (const FfNames *names, int value)
{
  g_return_val_if_fail (value >= 0 && (guint) value < names->n_names, "");
  return names->names[value].token;
}

const char *
ff_name_text (const FfNames *names, int value)
{
  g_return_val_if_fail (value >= 0 && (guint) value < names->n_names, "");
  return g_dgettext (GETTEXT_PACKAGE, names->names[value].text);
}

static char *
accepted_tokens (const FfNames *names)
{
  GString *list = g_string_new (NULL);

  for (guint i = 0; i < names->n_names; i++)
    g_string_append_printf (list, "%s%s", i > 0 ? ", " : "", names->names[i].token);
  return g_string_free (list, FALSE);
}

gboolean
ff_name_parse (const FfNames *names, const char *token, int *ret_value, GError **error)
{
  g_autofree char *accepted = NULL;

  for (guint i = 0; i < names->n_names; i++)
    if (g_ascii_strcasecmp (names->names[i].token, token) == 0)
      {
        *ret_value = (int) i;
        return TRUE;
      }
  accepted = accepted_tokens (names);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               /* Translators: the kind of word (sky, view), what was found, what is accepted. */
               _ ("unknown %s “%s”; accepted: %s"), names->what, token, accepted);
  return FALSE;
}
