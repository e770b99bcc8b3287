/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A checklist on paper, plain: a square to tick for each item, warnings before what they guard, each
 * section kept on one page where it fits, version, date and the rough time in the foot. 14 point,
 * black on white, 20 mm at the side that is bound. Degani, On the Typography of Flight-Deck
 * Documentation (NASA CR-177605, 1992): an x-height of 2.5 mm, a pitch of 1.3; CAP 676 (UK CAA, 2006),
 * chapter 7. */
#pragma once

#include <cairo.h>

#include "ff-checklist.h"

typedef struct _FfListPaper FfListPaper;

/* What a day under these conditions calls for. Everything is read now and not kept. */
FfListPaper *ff_list_paper_new (const FfChecklist *list,
                                guint conditions,
                                FfPaper paper) G_GNUC_WARN_UNUSED_RESULT;
void ff_list_paper_free (FfListPaper *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfListPaper, ff_list_paper_free)

guint ff_list_paper_n_pages (const FfListPaper *self);

/* In points. */
void ff_list_paper_size (const FfListPaper *self, double *ret_width, double *ret_height);

/* Draws page 0 … n-1; one unit is a point. */
void ff_list_paper_draw (const FfListPaper *self, cairo_t *cr, guint page);
