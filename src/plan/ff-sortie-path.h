/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From the legs that a search has chosen to the plan that is shown. */
#pragma once

#include "ff-leg.h"

/* `flown` in order of time; shots that are in none were left out. Takes nothing over. */
FfSortiePlan *ff_sortie_path_read (const FfTakePrices *prices,
                                   const FfFlown *flown,
                                   guint n_flown) G_GNUC_WARN_UNUSED_RESULT;

gboolean ff_sortie_path_flies (const FfSortiePlan *plan, guint shot);
