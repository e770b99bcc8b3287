/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of the ruler alone: where the pieces stand (ff-ruler.c) and who pays (ff-ruler-pay.c). */
#pragma once

#include "ff-ruler.h"

gboolean ff_ruler_any_fixed (const FfRuler *ruler);

/* The best change of one free piece, `but` and the fixed ones left alone. */
void ff_ruler_pay (FfRuler *ruler,
                   const FfAdviseQuery *query,
                   FfRulerPiece but,
                   FfRulerChange *ret_pay);
