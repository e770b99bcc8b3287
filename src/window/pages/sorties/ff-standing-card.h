/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands on paper: the letter, what the plan of now would change, the amendments and who has
 * read them. Every decision is one button, so that all of it is done by Tab and Space. */
#pragma once

#include <gtk/gtk.h>

#include "ff-keeper.h"

#define FF_TYPE_STANDING_CARD (ff_standing_card_get_type ())
G_DECLARE_FINAL_TYPE (FfStandingCard, ff_standing_card, FF, STANDING_CARD, GtkBox)

/* Shows what stands of the answer's job. Under a try it says what stands and offers nothing. */
void ff_standing_card_show (FfStandingCard *self, FfKeeper *keeper, FfAnswer *answer);
