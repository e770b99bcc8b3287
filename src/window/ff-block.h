/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The neutral block: the strength of a filter as a block, lighter to darker, with the stops written
 * in it ("tenths": always with the tenth, so that needs line up). In the daylight look, which has no greys, hatched by as many lines as there are stops. */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_BLOCK (ff_block_get_type ())
G_DECLARE_FINAL_TYPE (FfBlock, ff_block, FF, BLOCK, GtkWidget)

GtkWidget *ff_block_new (double stops);

/* NAN: not known, a dash. 0: no filter. */
void ff_block_set_stops (FfBlock *self, double stops);
double ff_block_get_stops (FfBlock *self);

/* The same drawing in another widget, in its font. */
void ff_block_draw (GtkWidget *widget,
                    GtkSnapshot *snapshot,
                    const graphene_rect_t *area,
                    double stops);
