/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-block.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-looks.h"
#include "ff-neutral-block.h"

struct _FfBlock {
  GtkWidget parent_instance;

  double stops;
  gboolean tenths;
};

G_DEFINE_FINAL_TYPE (FfBlock, ff_block, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_STOPS, PROP_TENTHS, N_PROPS };

static GParamSpec *properties[N_PROPS];

void
ff_block_draw (GtkWidget *widget,
               GtkSnapshot *snapshot,
               const graphene_rect_t *area,
               double stops)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  cairo_rectangle_t box = { area->origin.x + 1, area->origin.y + 1, area->size.width - 2,
                            area->size.height - 2 };
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, area);

  ff_neutral_block_draw (cr, ff_looks_palette (), &box, stops,
                         pango_context_get_font_description (context));
  cairo_destroy (cr);
}

/* Nothing is known of it: an empty frame. */
static void
draw_unknown (GtkSnapshot *snapshot, const graphene_rect_t *area)
{
  GdkRGBA line = ff_looks_hue (FF_HUE_SOFT);
  GskRoundedRect outline;

  gsk_rounded_rect_init_from_rect (&outline, area, 4);
  gtk_snapshot_append_border (snapshot, &outline, (float[4]) { 1, 1, 1, 1 },
                              (GdkRGBA[4]) { line, line, line, line });
  gtk_snapshot_append_color (
      snapshot, &line,
      &GRAPHENE_RECT_INIT (area->size.width / 2 - 4, area->size.height / 2 - 1, 8, 2));
}

/* Overrides */

static void
ff_block_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FfBlock *self = FF_BLOCK (widget);
  const graphene_rect_t area
      = GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                            (float) gtk_widget_get_height (widget));

  if (isnan (self->stops))
    draw_unknown (snapshot, &area);
  else
    ff_block_draw (widget, snapshot, &area, self->stops);
}

/* As large as two figures and a point of its own font need, so that blocks line up in a list. */
static void
ff_block_measure (GtkWidget *widget,
                  GtkOrientation orientation,
                  int for_size,
                  int *ret_minimum,
                  int *ret_natural,
                  int *ret_minimum_baseline,
                  int *ret_natural_baseline)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, "10.0");
  int width, height;

  pango_layout_get_pixel_size (layout, &width, &height);
  *ret_minimum = *ret_natural
      = orientation == GTK_ORIENTATION_HORIZONTAL ? width + 14 : height + 8;
}

static void describe (FfBlock *self);

static void
set_tenths (FfBlock *self, gboolean tenths)
{
  self->tenths = tenths;
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
ff_block_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_STOPS)
    g_value_set_double (value, FF_BLOCK (object)->stops);
  else if (id == PROP_TENTHS)
    g_value_set_boolean (value, FF_BLOCK (object)->tenths);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_block_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_STOPS)
    ff_block_set_stops (FF_BLOCK (object), g_value_get_double (value));
  else if (id == PROP_TENTHS)
    set_tenths (FF_BLOCK (object), g_value_get_boolean (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_block_class_init (FfBlockClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = ff_block_get_property;
  object_class->set_property = ff_block_set_property;
  widget_class->snapshot = ff_block_snapshot;
  widget_class->measure = ff_block_measure;
  gtk_widget_class_set_css_name (widget_class, "block");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  properties[PROP_STOPS]
      = g_param_spec_double ("stops", NULL, NULL, -G_MAXDOUBLE, G_MAXDOUBLE, 0,
                             G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  properties[PROP_TENTHS] = g_param_spec_boolean ("tenths", NULL, NULL, FALSE,
                                                  G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
describe (FfBlock *self)
{
  g_autofree char *number = ff_neutral_block_text (self->stops);
  g_autofree char *words = NULL;

  if (isnan (self->stops))
    words = g_strdup (_ ("stops not known"));
  else if (self->stops == 0)
    words = g_strdup (_ ("no filter"));
  else
    /* Translators: the strength of a neutral-density filter, as "5 stops"; %s is the number. */
    words = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s stop", "%s stops",
                                          (gulong) ceil (fabs (self->stops))),
                             number);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}

static void
ff_block_init (FfBlock *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  ff_looks_redraw (GTK_WIDGET (self));
  describe (self);
}

/* Public */

GtkWidget *
ff_block_new (double stops)
{
  FfBlock *self = g_object_new (FF_TYPE_BLOCK, NULL);

  ff_block_set_stops (self, stops);
  return GTK_WIDGET (self);
}

void
ff_block_set_stops (FfBlock *self, double stops)
{
  g_return_if_fail (FF_IS_BLOCK (self));
  if (self->stops == stops || (isnan (self->stops) && isnan (stops)))
    return;
  self->stops = stops;
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_STOPS]);
}

double
ff_block_get_stops (FfBlock *self)
{
  g_return_val_if_fail (FF_IS_BLOCK (self), 0);
  return self->stops;
}
