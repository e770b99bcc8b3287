/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who pays: the piece that closes the gap, of those the cheapest by the prices of advise. A filter
 * comes last, because it wants a landing. What a piece may pay with is what the shot allows, not
 * all that the camera has. */
#include "ff-ruler-private.h"

#include <math.h>

#include "ff-advise-table.h"

/* A gap that nobody would correct, and a gain that nobody would see. */
#define CLOSED_STOPS (1.0 / 6)
#define GAIN_STOPS 0.02
#define THIRD (1.0 / 3.0)

/* What a search for payers keeps at hand. */
typedef struct {
  const FfRuler *ruler;
  const FfAdviseQuery *query;
  FfAdviseTable table;
  FfRulerChange best; /* of the piece that is looked at */
  double price;
} FfPayers;

static void
payers_init (FfPayers *payers, const FfRuler *ruler, const FfAdviseQuery *query)
{
  payers->ruler = ruler;
  payers->query = query;
  ff_advise_table_fill (&payers->table, query->camera, query->want,
                        query->prices != NULL ? query->prices : &ff_prices_default);
}

/* Keeps the candidate that leaves the least; of equals the cheaper one. */
static void
offer (FfPayers *payers, FfRulerPiece piece, const FfRuler *after, double price)
{
  double gap = ff_ruler_gap (after, payers->query);
  FfRulerChange *best = &payers->best;

  if (best->any && fabs (gap) > fabs (best->gap) - 1e-9
      && !(fabs (gap) < fabs (best->gap) + 1e-9 && price < payers->price))
    return;
  *best = (FfRulerChange) { TRUE, piece,
                           ff_ruler_eats (after, payers->query, piece)
                               - ff_ruler_eats (payers->ruler, payers->query, piece),
                           *after, gap };
  payers->price = price;
}

static void
offer_apertures (FfPayers *payers)
{
  const FfCameraRange *camera = payers->query->camera;

  for (guint i = 0; i < payers->table.n_apertures; i++)
    for (guint j = 0; j < camera->n_apertures; j++)
      if (camera->apertures[j].exact == payers->table.apertures[i].aperture.exact)
        {
          FfRuler after = *payers->ruler;

          after.aperture = j;
          offer (payers, FF_PIECE_LENS, &after, payers->table.apertures[i].price);
        }
}

static void
offer_filters (FfPayers *payers)
{
  FfRuler after = *payers->ruler;

  after.filter = -1;
  after.set_to = 0;
  offer (payers, FF_PIECE_FILTER, &after, 0);
  for (guint i = 0; i < payers->query->n_filters; i++)
    {
      const FfAdviseFilter *filter = &payers->query->filters[i];

      after.filter = (int) i;
      for (after.set_to = filter->stops; after.set_to < filter->stops_to + 0.01;
           after.set_to += THIRD)
        offer (payers, FF_PIECE_FILTER, &after, 0);
    }
}

static void
offer_piece (FfPayers *payers, FfRulerPiece piece)
{
  FfRuler after = *payers->ruler;

  payers->best = (FfRulerChange) { 0 };
  payers->price = INFINITY;
  if (piece == FF_PIECE_LENS)
    offer_apertures (payers);
  for (guint i = 0; piece == FF_PIECE_SHUTTER && i < payers->table.n_shutters; i++)
    {
      after.shutter = payers->table.shutters[i].step;
      offer (payers, piece, &after, payers->table.shutters[i].price);
    }
  for (guint i = 0; piece == FF_PIECE_ISO && i < payers->table.n_isos; i++)
    {
      after.iso = payers->table.isos[i].step;
      offer (payers, piece, &after, payers->table.isos[i].price);
    }
  if (piece == FF_PIECE_FILTER)
    offer_filters (payers);
}

/* Whether the first of two changes is the better one to make. */
static gboolean
is_better (const FfRulerChange *a, double price_a, const FfRulerChange *b, double price_b)
{
  gboolean closes_a = fabs (a->gap) <= FF_REACH_STOPS, closes_b = fabs (b->gap) <= FF_REACH_STOPS;

  if (closes_a != closes_b)
    return closes_a;
  if (!closes_a)
    return fabs (a->gap) < fabs (b->gap);
  if ((a->piece == FF_PIECE_FILTER) != (b->piece == FF_PIECE_FILTER))
    return b->piece == FF_PIECE_FILTER;
  return price_a < price_b;
}

void
ff_ruler_pay (FfRuler *ruler, const FfAdviseQuery *query, FfRulerPiece but, FfRulerChange *ret_pay)
{
  double gap = ff_ruler_gap (ruler, query);
  double price = INFINITY;
  FfPayers payers;

  *ret_pay = (FfRulerChange) { 0 };
  if (fabs (gap) <= CLOSED_STOPS)
    return;
  payers_init (&payers, ruler, query);
  for (int i = 0; i < FF_N_PIECES; i++)
    {
      if (i == (int) but || ruler->fixed[i])
        continue;
      offer_piece (&payers, (FfRulerPiece) i);
      if (!payers.best.any || fabs (payers.best.gap) > fabs (gap) - GAIN_STOPS)
        continue;
      if (ret_pay->any && !is_better (&payers.best, payers.price, ret_pay, price))
        continue;
      *ret_pay = payers.best;
      price = payers.price;
    }
  if (ret_pay->any)
    *ruler = ret_pay->after;
}

guint
ff_ruler_closers (const FfRuler *ruler,
                  const FfAdviseQuery *query,
                  FfRulerChange ret_changes[FF_N_PIECES])
{
  double gap = ff_ruler_gap (ruler, query);
  double prices[FF_N_PIECES];
  FfPayers payers;
  guint n = 0;

  payers_init (&payers, ruler, query);
  for (int i = 0; i < FF_N_PIECES; i++)
    {
      guint place = n;

      if (ruler->fixed[i])
        continue;
      offer_piece (&payers, (FfRulerPiece) i);
      if (!payers.best.any || fabs (payers.best.gap) > FF_REACH_STOPS
          || fabs (payers.best.gap) > fabs (gap) - GAIN_STOPS)
        continue;
      for (; place > 0
             && is_better (&payers.best, payers.price, &ret_changes[place - 1], prices[place - 1]);
           place--)
        {
          ret_changes[place] = ret_changes[place - 1];
          prices[place] = prices[place - 1];
        }
      ret_changes[place] = payers.best;
      prices[place] = payers.price;
      n++;
    }
  return n;
}
