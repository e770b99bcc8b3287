/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The stop ruler: the light is so long, and lens, shutter, sensitivity and filter end to end eat
 * it. Here are the moves: a third of a stop at a time, among what the camera has; who pays when a
 * piece is held; how much light the settings stand. In stops after APEX (Exif 2.3, annex C). Pure.
 */
#pragma once

#include <glib.h>

#include "ff-advise.h"

typedef enum {
  FF_PIECE_LENS,
  FF_PIECE_SHUTTER,
  FF_PIECE_ISO,
  FF_PIECE_FILTER,
  FF_N_PIECES,
} FfRulerPiece;

extern const FfNames ff_names_piece;

/* Where the pieces stand. What they can be comes with the query that every function takes: light,
 * camera, want, filters, prices. */
typedef struct {
  guint aperture;     /* index into the camera's apertures */
  guint shutter, iso; /* steps of ff-scale.h */
  int filter;         /* index into the filters; -1: none */
  double set_to;      /* stops of that filter as it is set */
  FfRulerPiece chosen;
  gboolean fixed[FF_N_PIECES];
} FfRuler;

/* A change of one piece. */
typedef struct {
  gboolean any; /* FALSE: nothing is changed, and the rest is not set */
  FfRulerPiece piece;
  double stops; /* what the piece eats more than before; negative: less */
  FfRuler after;
  double gap; /* left then */
} FfRulerChange;

/* The best choice of ff_advise() with at most one filter; nothing fixed, the shutter chosen. */
void ff_ruler_init (FfRuler *ruler, const FfAdviseQuery *query);

/* Puts back what the query no longer has (another camera, fewer filters). */
void ff_ruler_clamp (FfRuler *ruler, const FfAdviseQuery *query);

/* What a piece eats; negative where it gives light: ISO above 100, a time longer than a second. */
double ff_ruler_eats (const FfRuler *ruler, const FfAdviseQuery *query, FfRulerPiece piece);

/* What is left of the light: positive is too bright. */
double ff_ruler_gap (const FfRuler *ruler, const FfAdviseQuery *query);

/* Moves the chosen piece so many steps of its number: a third of a stop each; of a filter the next
 * stronger or weaker one. FALSE: it is fixed, or at its end. While any piece is fixed another one
 * pays, and ret_pay says which. */
gboolean ff_ruler_move (FfRuler *ruler,
                        const FfAdviseQuery *query,
                        int steps,
                        FfRulerChange *ret_pay);

/* Fits the filter that takes about so many whole stops; 0: none. FALSE: there is none such, or the
 * filter is fixed. */
gboolean ff_ruler_fit (FfRuler *ruler,
                       const FfAdviseQuery *query,
                       int stops,
                       FfRulerChange *ret_pay);

/* Fixes a piece, or lets it go; once it is fixed another one pays for the gap. */
void ff_ruler_fix (FfRuler *ruler,
                   const FfAdviseQuery *query,
                   FfRulerPiece piece,
                   FfRulerChange *ret_pay);

/* The light has changed: while any piece is fixed, one of the others pays. */
void ff_ruler_follow (FfRuler *ruler, const FfAdviseQuery *query, FfRulerChange *ret_pay);

/* Each free piece that alone brings the gap within a third of a stop, the cheapest first, a filter
 * last: how many. */
guint ff_ruler_closers (const FfRuler *ruler,
                        const FfAdviseQuery *query,
                        FfRulerChange ret_changes[FF_N_PIECES]);

/* The settings on the ruler; their error is the gap. */
void ff_ruler_settings (const FfRuler *ruler, const FfAdviseQuery *query, FfSettings *ret_settings);
double ff_ruler_filter_stops (const FfRuler *ruler);

/* The light over which these very settings stay within a third of a stop. */
void ff_ruler_span (const FfRuler *ruler,
                    const FfAdviseQuery *query,
                    double *ret_from_ev100,
                    double *ret_to_ev100);

/* The same where the shutter within its span and the ISO up to its limit follow, those that are
 * fixed left alone. */
void ff_ruler_trimmed_span (const FfRuler *ruler,
                            const FfAdviseQuery *query,
                            double *ret_from_ev100,
                            double *ret_to_ev100);
