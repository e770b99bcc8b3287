/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-zoom.h"

#define WIDEST 1000 /* where there is more room than a page needs */
#define ROUND_THE_PAGE 96 /* what stands over and under a page that is shown whole */
#define LEAST 120

/* Of the width there is room for. */
static const double steps[] = { 1, 1.25, 1.5, 2, 3 };

G_STATIC_ASSERT (G_N_ELEMENTS (steps) == FF_ZOOM_MOST + 1);

static int
whole_width (FfPreview *large, GtkScrolledWindow *around)
{
  const int height = gtk_widget_get_height (GTK_WIDGET (around)) - ROUND_THE_PAGE;

  return MAX ((int) (height / ff_preview_get_shape (large)), LEAST);
}

void
ff_zoom_show (FfPreview *large, GtkScrolledWindow *around, int step)
{
  ff_preview_set_wish (large, step == FF_ZOOM_WHOLE ? whole_width (large, around) : WIDEST);
  ff_preview_set_times (large, steps[CLAMP (step, FF_ZOOM_WIDE, FF_ZOOM_MOST)]);
}
