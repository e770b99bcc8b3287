/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-wedge.h"

#include <math.h>

#include "ff-looks.h"

#define STEPS 8
#define HEIGHT 6

struct _FfWedge {
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (FfWedge, ff_wedge, GTK_TYPE_WIDGET)

/* In the daylight look, which has no greys, the steps are bars that grow. */
static void
ff_wedge_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  const FfPalette *palette = ff_looks_palette ();
  float step = (float) gtk_widget_get_width (widget) / STEPS;
  float height = (float) gtk_widget_get_height (widget);

  for (int i = 0; i < STEPS; i++)
    {
      FfColour shade = ff_palette_shade (palette, i);
      GdkRGBA fill = { (float) shade.red, (float) shade.green, (float) shade.blue, 1 };
      float x = roundf (step * (float) i);
      float width = roundf (step * (float) (i + 1)) - x;

      if (palette->hatched)
        {
          fill = ff_looks_hue (FF_HUE_INK);
          width = roundf (width * (float) (i + 1) / STEPS);
        }
      gtk_snapshot_append_color (snapshot, &fill, &GRAPHENE_RECT_INIT (x, 0, width, height));
    }
}

static void
ff_wedge_measure (GtkWidget *widget,
                  GtkOrientation orientation,
                  int for_size,
                  int *ret_minimum,
                  int *ret_natural,
                  int *ret_minimum_baseline,
                  int *ret_natural_baseline)
{
  *ret_minimum = *ret_natural = orientation == GTK_ORIENTATION_HORIZONTAL ? STEPS * 4 : HEIGHT;
}

static void
ff_wedge_class_init (FfWedgeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = ff_wedge_snapshot;
  widget_class->measure = ff_wedge_measure;
  gtk_widget_class_set_css_name (widget_class, "wedge");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
ff_wedge_init (FfWedge *self)
{
  ff_looks_redraw (GTK_WIDGET (self));
}
