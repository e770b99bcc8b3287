/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-explain-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-advise-table.h"
#include "ff-daylight.h"
#include "ff-exposure.h"
#include "ff-scale.h"

/* Lux by the height of the sun, and what a camera meets of it. */
#define LIGHT_FORMULA                                                                              \
  "log10 E = l0 + l1 x + l2 x² + l3 x³, x = h / 90°; EV = log2 (E / 2.5) + view + offset"

static const FfName step_names[] = {
  [FF_WHY_SUN] = { "sun", N_ ("Sun") },
  [FF_WHY_LIGHT] = { "light", N_ ("Light") },
  /* Translators: the light that the camera exposes right as it would like to be set, in EV. */
  [FF_WHY_LEVEL] = { "level", N_ ("Camera level") },
  /* Translators: how much light has to be taken away, in stops. */
  [FF_WHY_NEED] = { "need", N_ ("Need") },
  [FF_WHY_FILTER] = { "filter", N_ ("Filter") },
  [FF_WHY_LEFT] = { "left", N_ ("What is left") },
  /* Translators: which setting gives way to close what is left. */
  [FF_WHY_PAYS] = { "pays", N_ ("Who pays") },
};

const FfNames ff_names_step = { N_ ("step"), step_names, G_N_ELEMENTS (step_names) };

/* The sums */

static void
sum_light (const FfExplainQuery *query, FfExplainSums *sums)
{
  sums->illuminance_lx = sums->flat_ev100 = sums->view_gain = sums->offset = sums->learned = NAN;
  if (query->from != FF_EXPLAIN_SUN)
    return;
  sums->illuminance_lx = ff_daylight_lx (query->sun_altitude_deg, query->sky);
  sums->flat_ev100 = ff_exposure_ev100_of_lux (sums->illuminance_lx);
  sums->view_gain = ff_daylight_view_gain (query->sun_altitude_deg, query->sky, query->view,
                                           query->from_sun_deg);
  sums->offset = query->ev100 - sums->flat_ev100 - sums->view_gain;
  sums->learned = sums->offset - query->subject_stops;
}

/* The aperture that the level is counted at: the one to hold, else the camera's first. */
static FfAperture
aperture_of_level (const FfExplainQuery *query)
{
  const FfCameraRange *camera = query->camera;
  guint nearest = 0;

  for (guint i = 1; query->want->hold_aperture > 0 && i < camera->n_apertures; i++)
    if (fabs (log2 (camera->apertures[i].exact / query->want->hold_aperture))
        < fabs (log2 (camera->apertures[nearest].exact / query->want->hold_aperture)))
      nearest = i;
  return camera->apertures[nearest];
}

static void
sum_settings (const FfExplainQuery *query, FfExplainSums *sums)
{
  const FfSettings *settings = &query->settings;
  const FfCameraRange *camera = query->camera;
  guint base = camera->n_bases > 0 ? camera->base_iso[0] : camera->iso_low;
  double iso = ff_scale_written (FF_SCALE_ISO, settings->iso);
  double wanted = ff_advise_wanted_s (query->want);
  FfAperture aperture = aperture_of_level (query);

  sums->f_number = aperture.exact;
  sums->f_written = aperture.written;
  sums->wanted_s = isfinite (wanted) ? wanted : settings->shutter_s;
  sums->base_iso = ff_scale_written (FF_SCALE_ISO, base);
  sums->level = ff_exposure_ev100 (sums->f_number, sums->wanted_s, sums->base_iso);
  sums->need = isfinite (wanted) ? query->ev100 - sums->level : NAN;
  sums->left = query->ev100 - sums->level - query->filter_stops;
  sums->shutter_pays = log2 (sums->wanted_s / settings->shutter_s);
  sums->aperture_pays
      = ff_exposure_av (settings->aperture.exact) - ff_exposure_av (sums->f_number);
  sums->iso_pays = log2 (sums->base_iso / iso);
  sums->error = sums->left - sums->shutter_pays - sums->aperture_pays - sums->iso_pays;
}

/* The steps */

static const char *
formula_of (const FfExplainQuery *query, FfExplainKind kind)
{
  static const char *const formulae[] = {
    [FF_WHY_SUN] = "sin h = sin φ sin δ + cos φ cos δ cos H",
    [FF_WHY_LIGHT] = LIGHT_FORMULA,
    [FF_WHY_LEVEL] = "EV = log2 (N² / t × 100 / S)",
    [FF_WHY_NEED] = "need = light − level",
    [FF_WHY_FILTER] = "stops = log2 (factor) = density / 0.301",
    [FF_WHY_LEFT] = "left = light − level − filter",
    [FF_WHY_PAYS] = "error = left − shutter − aperture − ISO",
  };

  return query->from != FF_EXPLAIN_SUN && kind <= FF_WHY_LIGHT ? "" : formulae[kind];
}

static const char *
source_of_light (const FfExplainQuery *query)
{
  if (query->from == FF_EXPLAIN_TABLE)
    return query->source != NULL ? query->source : "";
  if (query->from == FF_EXPLAIN_GIVEN)
    return _ ("As entered");
  if (query->sky == FF_SKY_CLEAR)
    return _ ("Explanatory Supplement to the Astronomical Almanac, 1992; ISO 2720, C = 250; the "
              "gain of the view is this program's own model");
  return _ ("Explanatory Supplement to the Astronomical Almanac, 1992, thinned by the sky (IES "
            "1984, or common practice); ISO 2720, C = 250; the gain of the view is this program's "
            "own model");
}

static const char *
source_of (const FfExplainQuery *query, FfExplainKind kind)
{
  switch (kind)
    {
    case FF_WHY_SUN:
      return query->from == FF_EXPLAIN_SUN ? _ ("IAU models of sun and Earth (ERFA)") : "";
    case FF_WHY_LIGHT:
      return source_of_light (query);
    case FF_WHY_LEVEL:
      return _ ("APEX, Exif 2.3 annex C; ISO 2720");
    case FF_WHY_FILTER:
      return _ ("ISO 5-1 notation");
    case FF_WHY_NEED:
    case FF_WHY_LEFT:
      return _ ("Difference of the steps above");
    case FF_WHY_PAYS:
    case FF_N_WHY:
    default:
      return _ ("Common practice, no source: the cheapest change by the table of prices");
    }
}

static void
add_value (FfExplainStep *step, const char *name, double value)
{
  g_return_if_fail (step->n_values < FF_MAX_WHY_VALUES);
  step->values[step->n_values++] = (FfExplainValue) { name, value };
}

static void
add_sun_and_light (FfExplainStep *step, const FfExplainQuery *query, const FfExplainSums *sums)
{
  if (step->kind == FF_WHY_SUN && query->from == FF_EXPLAIN_SUN)
    {
      add_value (step, "sun_altitude_deg", query->sun_altitude_deg);
      add_value (step, "sun_azimuth_deg", query->sun_azimuth_deg);
      add_value (step, "from_sun_deg", query->from_sun_deg);
    }
  if (step->kind != FF_WHY_LIGHT)
    return;
  add_value (step, "illuminance_lx", sums->illuminance_lx);
  add_value (step, "horizontal_ev100", sums->flat_ev100);
  add_value (step, "view_stops", sums->view_gain);
  add_value (step, "offset_stops", sums->offset);
  add_value (step, "learned_offset_stops", sums->learned);
  add_value (step, "ev100", query->ev100);
  add_value (step, "low_ev100", query->low_ev100);
  add_value (step, "high_ev100", query->high_ev100);
}

static void
add_rest (FfExplainStep *step, const FfExplainQuery *query, const FfExplainSums *sums)
{
  if (step->kind == FF_WHY_LEVEL)
    {
      add_value (step, "aperture_exact", sums->f_number);
      add_value (step, "shutter_s", sums->wanted_s);
      add_value (step, "iso", sums->base_iso);
      add_value (step, "level_ev100", sums->level);
    }
  if (step->kind == FF_WHY_NEED)
    add_value (step, "need_stops", sums->need);
  if (step->kind == FF_WHY_FILTER)
    add_value (step, "filter_stops", query->filter_stops);
  if (step->kind == FF_WHY_LEFT)
    add_value (step, "left_stops", sums->left);
  if (step->kind != FF_WHY_PAYS)
    return;
  add_value (step, "shutter_stops", sums->shutter_pays);
  add_value (step, "aperture_stops", sums->aperture_pays);
  add_value (step, "iso_stops", sums->iso_pays);
  add_value (step, "error_stops", sums->error);
}

static FfExplainStep *
step_new (const FfExplainQuery *query, const FfExplainSums *sums, FfExplainKind kind)
{
  FfExplainStep *step = g_new0 (FfExplainStep, 1);

  step->kind = kind;
  step->formula = formula_of (query, kind);
  step->source = source_of (query, kind);
  step->text = ff_explain_words (query, sums, kind);
  add_sun_and_light (step, query, sums);
  add_rest (step, query, sums);
  return step;
}

static void
step_free (gpointer data)
{
  FfExplainStep *step = data;

  g_free (step->text);
  g_free (step);
}

GPtrArray *
ff_explain (const FfExplainQuery *query)
{
  GPtrArray *steps = g_ptr_array_new_with_free_func (step_free);
  FfExplainSums sums;

  sum_light (query, &sums);
  sum_settings (query, &sums);
  for (int kind = FF_WHY_SUN; kind < FF_N_WHY; kind++)
    g_ptr_array_add (steps, step_new (query, &sums, (FfExplainKind) kind));
  return steps;
}

double
ff_explain_value (const FfExplainStep *step, const char *name)
{
  for (guint i = 0; i < step->n_values; i++)
    if (strcmp (step->values[i].name, name) == 0)
      return step->values[i].value;
  return NAN;
}
