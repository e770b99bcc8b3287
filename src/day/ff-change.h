/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a change of a day costs: what is lost by it, what it would take to keep that, what to drop
 * instead. Nothing of this is written down anywhere: the day is planned as it was, as it would be,
 * and once more for each thing that might help, until one does. The claim behind the sentence can
 * be planned again by anyone. */
#pragma once

#include <glib.h>

/* What might make a change good. In the order in which they are tried, the least trouble first. */
typedef enum {
  FF_REMEDY_NONE,
  FF_REMEDY_ATTEND,  /* somebody stands at the charger */
  FF_REMEDY_FETCH,   /* `label` is an item the crew owns and the job does not use */
  FF_REMEDY_EARLIER, /* the window of shot `label` opens `minutes` earlier */
  FF_REMEDY_LATER,   /* it closes `minutes` later */
  FF_REMEDY_BATTERY, /* `count` batteries more */
  FF_REMEDY_CHARGER, /* one more slot to charge in */
  FF_REMEDY_FILTER,  /* a filter of `stops`, which the crew does not own */
} FfRemedyKind;

typedef struct {
  FfRemedyKind kind;
  char *label;   /* FETCH, EARLIER, LATER; else NULL */
  char *where;   /* FETCH: with whom it is out; NULL: it is not */
  int minutes, count;
  double stops;
  GPtrArray *saves; /* char*: labels of lost shots that are flown with it, and nothing else is lost */
} FfRemedy;

typedef struct {
  GPtrArray *lost;   /* char*: labels of shots flown before the change and not after it */
  GPtrArray *won;    /* char*: the other way round */
  char *reason;      /* why the first of the lost is not flown; NULL: nothing is lost */
  double more_cost;  /* points that the plan costs more, shots not flown included */
  FfRemedy remedy;
  char *drop;        /* this one dropped, `drop_saves` are flown and nothing else is lost; or NULL */
  GPtrArray *drop_saves; /* char* */
  char *sentence;
} FfChangePrice;

void ff_change_price_free (FfChangePrice *price);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfChangePrice, ff_change_price_free)

/* Whether the change does anything to the day: a shot lost or won, or another cost. */
gboolean ff_change_price_tells (const FfChangePrice *price);
