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
  FfLook look = ff_looks_now ();
  float step = (float) gtk_widget_get_width (widget) / STEPS;
  float height = (float) gtk_widget_get_height (widget);

  for (int i = 0; i < STEPS; i++)
    {
      GdkRGBA fill = look == FF_LOOK_DAYLIGHT ? ff_looks_colour (FF_COLOUR_INK)
                                              : ff_palette_block (look, i);
      float x = roundf (step * (float) i);
      float width = roundf (step * (float) (i + 1)) - x;

      if (look == FF_LOOK_DAYLIGHT)
        width = roundf (width * (float) (i + 1) / STEPS);
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
