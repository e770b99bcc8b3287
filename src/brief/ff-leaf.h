/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The frame that every page of a brief has, so that a page found alone on the ground makes sense:
 * whose it is, which job, day and version, which page of how many; the word that stops everything,
 * and whom to call and where to send them. */
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include "ff-sheet-facts.h"

#define FF_LEAF_MARGIN 24.0 /* 8.5 mm: inside what printers and copiers reach */

typedef struct _FfLeaf FfLeaf;

/* The frame of one page, numbered from 1. Copies what it needs. */
FfLeaf *ff_leaf_new (const FfSheetFacts *facts,
                     const char *role,
                     PangoContext *context,
                     double width,
                     guint number,
                     guint n_pages) G_GNUC_WARN_UNUSED_RESULT;
void ff_leaf_free (FfLeaf *page);

/* What the frame takes at the head and at the foot, margins included. */
double ff_leaf_head (const FfLeaf *page);
double ff_leaf_foot (const FfLeaf *page);

/* Whether the emergency text is longer than the foot may hold. */
gboolean ff_leaf_is_cut (const FfLeaf *page);

/* Letters of the frame that no installed font has. */
int ff_leaf_n_unknown (const FfLeaf *page);

void ff_leaf_draw (const FfLeaf *page, cairo_t *cr, double height);
