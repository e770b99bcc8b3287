/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The four pieces of the ruler as cards: what each is, large, and what it does. Pressing one chooses
 * it. Signal "chosen" (int piece). */
#pragma once

#include <adwaita.h>

#include "ff-light-words.h"

#define FF_TYPE_PIECE_CARDS (ff_piece_cards_get_type ())
G_DECLARE_FINAL_TYPE (FfPieceCards, ff_piece_cards, FF, PIECE_CARDS, AdwBin)

void ff_piece_cards_show (FfPieceCards *self, const FfLightStudy *study, const FfRuler *ruler);
