/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The small pages of a proof. */
#pragma once

#include "ff-proof.h"

/* Those that are there stay and show the new proof, so that nothing blinks. */
void ff_thumbs_show (GtkFlowBox *thumbs, FfProof *proof);
