/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of the explanation alone: its numbers (ff-explain.c) and how they are said
 * (ff-explain-words.c). */
#pragma once

#include "ff-explain.h"

/* Every number of the seven steps, in stops where nothing else is said. */
typedef struct {
  double illuminance_lx, flat_ev100, view_gain, offset, learned;
  double wanted_s, base_iso, f_number; /* the settings of the level */
  double f_written;
  double level, need, left;
  double shutter_pays, aperture_pays, iso_pays; /* positive: takes light away */
  double error;
} FfExplainSums;

/* The sentence of one step. */
char *ff_explain_words (const FfExplainQuery *query, const FfExplainSums *sums, FfExplainKind kind);
