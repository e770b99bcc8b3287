/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One page of a proof on the screen, white as paper in every look. As high as its width asks for.
 * A sharp one is drawn for its size, the others scale the small pictures of the proof. */
#pragma once

#include "ff-proof.h"

#define FF_TYPE_PREVIEW (ff_preview_get_type ())
G_DECLARE_FINAL_TYPE (FfPreview, ff_preview, FF, PREVIEW, GtkWidget)

GtkWidget *ff_preview_new (gboolean sharp) G_GNUC_WARN_UNUSED_RESULT;

/* Shows this page; what was shown stays until then. NULL: an empty page. */
void ff_preview_show (FfPreview *self, FfProof *proof, guint page);

/* The width it would like to have; it takes less where there is less. */
void ff_preview_set_wish (FfPreview *self, int width);

/* So many times as wide as its room; what is beyond is panned to, by a part of it: -1 to 1. */
void ff_preview_set_times (FfPreview *self, double times);
void ff_preview_pan (FfPreview *self, double by);

/* The size in pixels of the screen that its picture has; 0 before it is on the screen. */
void ff_preview_get_pixels (FfPreview *self, int *ret_width, int *ret_height);

/* Height over width of its paper. */
double ff_preview_get_shape (FfPreview *self);
