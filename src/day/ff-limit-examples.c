/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-limit-examples.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-limit-kind.h"
#include "ff-limit.h"

typedef struct {
  const char *kind;
  FfCompare compare;
  double value, value_to;
  const char *unit;
  FfOnlyIf only_if;
  FfAnchor from, to;
  const char *source;
} Row;

#define NONE NAN, NAN, ""
#define ALWAYS FF_ONLY_ALWAYS, FF_ANCHOR_CLOCK, FF_ANCHOR_CLOCK
#define IF(condition) FF_ONLY_##condition, FF_ANCHOR_CLOCK, FF_ANCHOR_CLOCK

/* Numbers as published in 14 CFR Part 107; read it yourself. */
static const Row us[] = {
  { "height", FF_COMPARE_AT_MOST, 400, NAN, "ft", ALWAYS, "14 CFR 107.51(b)" },
  { "structure-radius", FF_COMPARE_AT_MOST, 400, NAN, "ft", ALWAYS, "14 CFR 107.51(b)" },
  { "structure-height", FF_COMPARE_AT_MOST, 400, NAN, "ft", ALWAYS, "14 CFR 107.51(b)" },
  { "ground-speed", FF_COMPARE_AT_MOST, 87, NAN, "kt", ALWAYS, "14 CFR 107.51(a)" },
  { "visibility", FF_COMPARE_AT_LEAST, 3, NAN, "SM", ALWAYS, "14 CFR 107.51(c)" },
  { "below-cloud", FF_COMPARE_AT_LEAST, 500, NAN, "ft", ALWAYS, "14 CFR 107.51(d)" },
  { "beside-cloud", FF_COMPARE_AT_LEAST, 2000, NAN, "ft", ALWAYS, "14 CFR 107.51(d)" },
  { "flying-time", FF_COMPARE_WINDOW, -30, 30, "", FF_ONLY_ALWAYS, FF_ANCHOR_SUNRISE,
    FF_ANCHOR_SUNSET, "14 CFR 107.29" },
  { "light", FF_COMPARE_REQUIRED, NONE, IF (TWILIGHT), "14 CFR 107.29" },
  { "over-people", FF_COMPARE_PROHIBITED, NONE, ALWAYS, "14 CFR 107.39" },
  { "alcohol-hours", FF_COMPARE_AT_LEAST, 8, NAN, "h", ALWAYS, "14 CFR 107.27, 91.17" },
  { "alcohol", FF_COMPARE_BELOW, 0.04, NAN, "g/dL", ALWAYS, "14 CFR 107.27, 91.17" },
  { "airspace", FF_COMPARE_REQUIRED, NONE, IF (CONTROLLED_AIRSPACE), "14 CFR 107.41" },
  { "report-within", FF_COMPARE_AT_MOST, 10, NAN, "d", ALWAYS, "14 CFR 107.9" },
};

/* Regulation (EU) 2019/947; the zones of each state come before it. */
static const Row eu[] = {
  { "height", FF_COMPARE_AT_MOST, 120, NAN, "m", ALWAYS, "UAS.OPEN.010" },
  { "mass", FF_COMPARE_BELOW, 25, NAN, "kg", ALWAYS, "2019/947 Art. 4" },
  { "people", FF_COMPARE_AT_LEAST, 30, NAN, "m", ALWAYS, "UAS.OPEN.030" },
  { "one-to-one", FF_COMPARE_AT_LEAST, 1, NAN, "", IF (NEAR_PEOPLE), "guidance" },
  { "built-up", FF_COMPARE_AT_LEAST, 150, NAN, "m", ALWAYS, "UAS.OPEN.040" },
  { "over-crowds", FF_COMPARE_PROHIBITED, NONE, ALWAYS, "2019/947 Art. 4" },
  { "light", FF_COMPARE_REQUIRED, NONE, IF (NIGHT), "UAS.OPEN.060" },
  { "airspace", FF_COMPARE_REQUIRED, NONE, ALWAYS, "geographical zones, UAS.OPEN.010" },
  { "dangerous-goods", FF_COMPARE_PROHIBITED, NONE, ALWAYS, "2019/947 Art. 4" },
  { "emergency-scene", FF_COMPARE_PROHIBITED, NONE, ALWAYS, "UAS.OPEN.060" },
};

/* A crew's own: every number is invented here. */
static const Row own[] = {
  { "mean-wind", FF_COMPARE_AT_MOST, 8, NAN, "m/s", ALWAYS, "" },
  { "gust", FF_COMPARE_AT_MOST, 11, NAN, "m/s", ALWAYS, "" },
  { "rain", FF_COMPARE_PROHIBITED, NONE, ALWAYS, "" },
  { "air-temperature", FF_COMPARE_BETWEEN, 0, 40, "°C", ALWAYS, "" },
  { "battery-temperature", FF_COMPARE_AT_LEAST, 15, NAN, "°C", ALWAYS, "" },
  { "reserve", FF_COMPARE_AT_LEAST, 30, NAN, "%", ALWAYS, "" },
  { "pad-radius", FF_COMPARE_AT_LEAST, 10, NAN, "m", ALWAYS, "" },
  { "observer", FF_COMPARE_REQUIRED, NONE, ALWAYS, "" },
  { "distance", FF_COMPARE_AT_MOST, 300, NAN, "m", ALWAYS, "" },
  { "geomagnetic", FF_COMPARE_AT_MOST, 5, NAN, "", ALWAYS, "" },
  { "rest", FF_COMPARE_AT_LEAST, 8, NAN, "h", ALWAYS, "" },
  { "flights-between-breaks", FF_COMPARE_AT_MOST, 4, NAN, "", ALWAYS, "" },
};

static const struct {
  const char *name;
  FfRule rule;
  const char *authority;
  const Row *rows;
  guint n;
} sheets[] = {
  /* Translators: names of example limit sheets; the numbers in them are of these rules. */
  { N_ ("EXAMPLE: US Part 107, by day, no waiver"), FF_RULE_LAW, "FAA", us, G_N_ELEMENTS (us) },
  { N_ ("EXAMPLE: EU Open category, A2 and A3"), FF_RULE_LAW, "EU", eu, G_N_ELEMENTS (eu) },
  { N_ ("EXAMPLE: a crew’s own sheet"), FF_RULE_OWN, "", own, G_N_ELEMENTS (own) },
};

const char *
ff_limit_example_name (guint i)
{
  return i < G_N_ELEMENTS (sheets) ? _ (sheets[i].name) : NULL;
}

static FfLimit *
record_of (const Row *row, guint sheet, guint position)
{
  const FfLimitKind *kind = ff_limit_kind_find (row->kind);
  FfLimit *limit = ff_limit_new ();

  ff_set_text (&limit->sheet, _ (sheets[sheet].name));
  limit->position = (int) position;
  ff_set_text (&limit->kind, row->kind);
  ff_set_text (&limit->text, ff_limit_kind_text (kind));
  limit->compare = row->compare;
  limit->value = row->value;
  limit->value_to = row->value_to;
  ff_set_text (&limit->unit, row->unit);
  ff_set_text (&limit->datum, ff_limit_kind_datum (kind));
  limit->only_if = row->only_if;
  limit->anchor_from = row->from;
  limit->anchor_to = row->to;
  limit->rule = sheets[sheet].rule;
  ff_set_text (&limit->authority, sheets[sheet].authority);
  ff_set_text (&limit->source, row->source);
  ff_set_text (&limit->note, _ ("EXAMPLE; not law, not advice; set your own."));
  limit->example = TRUE;
  return limit;
}

GPtrArray *
ff_limit_example_rows (guint i)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_limit_free);
  guint k;

  for (k = 0; i < G_N_ELEMENTS (sheets) && k < sheets[i].n; k++)
    g_ptr_array_add (rows, record_of (&sheets[i].rows[k], i, k + 1));
  return rows;
}
