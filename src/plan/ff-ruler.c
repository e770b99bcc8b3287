/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-ruler-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-advise-table.h"
#include "ff-exposure.h"
#include "ff-scale.h"

#define THIRD (1.0 / 3.0)
#define SAME_STOPS 0.05

static const FfName piece_names[] = {
  [FF_PIECE_LENS] = { "lens", N_ ("Lens") },
  [FF_PIECE_SHUTTER] = { "shutter", N_ ("Shutter") },
  /* Translators: the sensitivity of the camera by its ISO number. */
  [FF_PIECE_ISO] = { "iso", N_ ("ISO") },
  [FF_PIECE_FILTER] = { "filter", N_ ("Filter") },
};

const FfNames ff_names_piece = { N_ ("piece"), piece_names, G_N_ELEMENTS (piece_names) };

/* Where it stands */

static guint
index_of_aperture (const FfCameraRange *camera, double exact)
{
  guint nearest = 0;

  for (guint i = 1; i < camera->n_apertures; i++)
    if (fabs (log2 (camera->apertures[i].exact / exact))
        < fabs (log2 (camera->apertures[nearest].exact / exact)))
      nearest = i;
  return nearest;
}

void
ff_ruler_init (FfRuler *ruler, const FfAdviseQuery *query)
{
  FfAdviseQuery one = *query;
  g_autoptr (GArray) choices = NULL;
  const FfChoice *best;

  one.max_stack = MIN (query->max_stack, 1);
  choices = ff_advise (&one, 1, NULL);
  best = &g_array_index (choices, FfChoice, 0);
  *ruler = (FfRuler) {
    .aperture = index_of_aperture (query->camera, best->settings.aperture.exact),
    .shutter = best->settings.shutter,
    .iso = best->settings.iso,
    .filter = best->n_filters > 0 ? (int) best->filters[0] : -1,
    .set_to = best->filter_stops,
    .chosen = FF_PIECE_SHUTTER,
  };
}

void
ff_ruler_clamp (FfRuler *ruler, const FfAdviseQuery *query)
{
  const FfCameraRange *camera = query->camera;

  ruler->aperture = MIN (ruler->aperture, camera->n_apertures - 1);
  ruler->shutter = CLAMP (ruler->shutter, camera->shutter_fast, camera->shutter_slow);
  ruler->iso = CLAMP (ruler->iso, camera->iso_low, camera->iso_high);
  if (ruler->filter >= (int) query->n_filters)
    ruler->filter = -1;
  if (ruler->filter < 0)
    ruler->set_to = 0;
  else
    ruler->set_to = CLAMP (ruler->set_to, query->filters[ruler->filter].stops,
                           query->filters[ruler->filter].stops_to);
}

gboolean
ff_ruler_any_fixed (const FfRuler *ruler)
{
  for (int i = 0; i < FF_N_PIECES; i++)
    if (ruler->fixed[i])
      return TRUE;
  return FALSE;
}

double
ff_ruler_filter_stops (const FfRuler *ruler)
{
  return ruler->filter < 0 ? 0 : ruler->set_to;
}

double
ff_ruler_eats (const FfRuler *ruler, const FfAdviseQuery *query, FfRulerPiece piece)
{
  switch (piece)
    {
    case FF_PIECE_LENS:
      return ff_exposure_av (query->camera->apertures[ruler->aperture].exact);
    case FF_PIECE_SHUTTER:
      return ff_exposure_tv (ff_advise_shutter_s (query->camera, ruler->shutter));
    case FF_PIECE_ISO:
      return ff_exposure_sv (100) - ff_exposure_sv (ff_scale_written (FF_SCALE_ISO, ruler->iso));
    case FF_PIECE_FILTER:
    case FF_N_PIECES:
    default:
      return ff_ruler_filter_stops (ruler);
    }
}

double
ff_ruler_gap (const FfRuler *ruler, const FfAdviseQuery *query)
{
  double gap = query->ev100;

  for (int i = 0; i < FF_N_PIECES; i++)
    gap -= ff_ruler_eats (ruler, query, (FfRulerPiece) i);
  return gap;
}

void
ff_ruler_settings (const FfRuler *ruler, const FfAdviseQuery *query, FfSettings *ret_settings)
{
  double seconds = ff_advise_shutter_s (query->camera, ruler->shutter);
  gboolean moving = query->want->intent == FF_INTENT_VIDEO || query->want->intent == FF_INTENT_SLOW;

  *ret_settings = (FfSettings) {
    .aperture = query->camera->apertures[ruler->aperture],
    .shutter = ruler->shutter,
    .shutter_s = seconds,
    .shutter_angle_deg = moving ? ff_shutter_angle_deg (seconds, query->want->fps) : NAN,
    .iso = ruler->iso,
    .error_stops = ff_ruler_gap (ruler, query),
  };
}

/* Moving */

static gboolean
move_number (guint *number, int steps, guint low, guint high)
{
  gint64 wanted = CLAMP ((gint64) *number + steps, (gint64) low, (gint64) high);
  gboolean moved = wanted != (gint64) *number;

  *number = (guint) wanted;
  return moved;
}

/* The filter next in strength, a variable one by thirds within itself first. Filters need not stand
 * in order. */
static gboolean
move_filter (FfRuler *ruler, const FfAdviseQuery *query, int direction)
{
  double now = ff_ruler_filter_stops (ruler);
  double nearest = INFINITY;
  FfRuler best = *ruler;

  if (direction < 0 && now > SAME_STOPS)
    {
      nearest = now;
      best.filter = -1;
      best.set_to = 0;
    }
  for (guint i = 0; i < query->n_filters; i++)
    for (double set = query->filters[i].stops; set < query->filters[i].stops_to + 0.01;
         set += THIRD)
      {
        double away = (set - now) * direction;

        if (away > SAME_STOPS && away < nearest - 1e-9)
          {
            nearest = away;
            best.filter = (int) i;
            best.set_to = MIN (set, query->filters[i].stops_to);
          }
      }
  *ruler = best;
  return isfinite (nearest);
}

/* A step up is a number up: f/3.2 after f/2.8, 1/60 after 1/50, ISO 125 after 100. Steps of the
 * shutter's scale run towards the longer times. */
static gboolean
move_piece (FfRuler *ruler, const FfAdviseQuery *query, int steps)
{
  const FfCameraRange *camera = query->camera;

  switch (ruler->chosen)
    {
    case FF_PIECE_LENS:
      return move_number (&ruler->aperture, steps, 0, camera->n_apertures - 1);
    case FF_PIECE_SHUTTER:
      return move_number (&ruler->shutter, -steps, camera->shutter_fast, camera->shutter_slow);
    case FF_PIECE_ISO:
      return move_number (&ruler->iso, steps, camera->iso_low, camera->iso_high);
    case FF_PIECE_FILTER:
    case FF_N_PIECES:
    default:
      return move_filter (ruler, query, steps > 0 ? 1 : -1);
    }
}

gboolean
ff_ruler_move (FfRuler *ruler, const FfAdviseQuery *query, int steps, FfRulerChange *ret_pay)
{
  *ret_pay = (FfRulerChange) { 0 };
  if (ruler->fixed[ruler->chosen] || steps == 0 || !move_piece (ruler, query, steps))
    return FALSE;
  if (ff_ruler_any_fixed (ruler))
    ff_ruler_pay (ruler, query, ruler->chosen, ret_pay);
  return TRUE;
}

/* How far a filter is from so many stops, and what it is set to then. */
static double
away_from (const FfAdviseFilter *filter, double stops, double *ret_set_to)
{
  *ret_set_to = filter->stops;
  while (*ret_set_to < stops - THIRD / 2 && *ret_set_to + THIRD < filter->stops_to + 0.01)
    *ret_set_to += THIRD;
  return fabs (*ret_set_to - stops);
}

gboolean
ff_ruler_fit (FfRuler *ruler, const FfAdviseQuery *query, int stops, FfRulerChange *ret_pay)
{
  double nearest = stops == 0 ? SAME_STOPS : 0.5;
  int found = -1;
  double set_to = 0;

  *ret_pay = (FfRulerChange) { 0 };
  if (ruler->fixed[FF_PIECE_FILTER])
    return FALSE;
  for (guint i = 0; stops > 0 && i < query->n_filters; i++)
    {
      double set;

      if (away_from (&query->filters[i], stops, &set) >= nearest)
        continue;
      nearest = fabs (set - stops);
      found = (int) i;
      set_to = set;
    }
  if (found < 0 && stops > 0)
    return FALSE;
  ruler->filter = found;
  ruler->set_to = set_to;
  ruler->chosen = FF_PIECE_FILTER;
  if (ff_ruler_any_fixed (ruler))
    ff_ruler_pay (ruler, query, FF_PIECE_FILTER, ret_pay);
  return TRUE;
}

void
ff_ruler_fix (FfRuler *ruler,
              const FfAdviseQuery *query,
              FfRulerPiece piece,
              FfRulerChange *ret_pay)
{
  *ret_pay = (FfRulerChange) { 0 };
  ruler->fixed[piece] = !ruler->fixed[piece];
  if (ruler->fixed[piece])
    ff_ruler_pay (ruler, query, piece, ret_pay);
}

void
ff_ruler_follow (FfRuler *ruler, const FfAdviseQuery *query, FfRulerChange *ret_pay)
{
  *ret_pay = (FfRulerChange) { 0 };
  if (ff_ruler_any_fixed (ruler))
    ff_ruler_pay (ruler, query, FF_N_PIECES, ret_pay);
}

/* How long it holds */

void
ff_ruler_span (const FfRuler *ruler,
               const FfAdviseQuery *query,
               double *ret_from_ev100,
               double *ret_to_ev100)
{
  double right = query->ev100 - ff_ruler_gap (ruler, query);

  *ret_from_ev100 = right - FF_REACH_STOPS;
  *ret_to_ev100 = right + FF_REACH_STOPS;
}

void
ff_ruler_trimmed_span (const FfRuler *ruler,
                       const FfAdviseQuery *query,
                       double *ret_from_ev100,
                       double *ret_to_ev100)
{
  double tv = ff_ruler_eats (ruler, query, FF_PIECE_SHUTTER);
  double iso = ff_ruler_eats (ruler, query, FF_PIECE_ISO);
  FfAdviseTable table;

  ff_ruler_span (ruler, query, ret_from_ev100, ret_to_ev100);
  ff_advise_table_fill (&table, query->camera, query->want,
                        query->prices != NULL ? query->prices : &ff_prices_default);
  if (!ruler->fixed[FF_PIECE_SHUTTER])
    {
      *ret_from_ev100 += MIN (-table.shutters[table.n_shutters - 1].log_s - tv, 0);
      *ret_to_ev100 += MAX (-table.shutters[0].log_s - tv, 0);
    }
  if (!ruler->fixed[FF_PIECE_ISO])
    {
      *ret_from_ev100 += MIN (-table.isos[table.n_isos - 1].stops - iso, 0);
      *ret_to_ev100 += MAX (-table.isos[0].stops - iso, 0);
    }
}
