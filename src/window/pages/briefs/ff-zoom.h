/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How large the large page is: whole, as wide as there is room, or wider and panned. */
#pragma once

#include "ff-preview.h"

#define FF_ZOOM_WHOLE (-1)
#define FF_ZOOM_WIDE 0
#define FF_ZOOM_MOST 4

/* Shows it at a step between these, inside what scrolls it up and down. */
void ff_zoom_show (FfPreview *large, GtkScrolledWindow *around, int step);
