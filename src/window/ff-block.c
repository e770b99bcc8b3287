/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-block.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-looks.h"
#include "ff-number.h"

struct _FfBlock {
  GtkWidget parent_instance;

  double stops;
};

G_DEFINE_FINAL_TYPE (FfBlock, ff_block, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_STOPS, N_PROPS };

static GParamSpec *properties[N_PROPS];

/* Drawing */

/* Upright lines, as many as the stops, spread over the block: what the paper shows, too. */
static void
draw_hatching (GtkSnapshot *snapshot, const graphene_rect_t *area, double stops)
{
  GdkRGBA ink = ff_looks_colour (FF_COLOUR_INK);
  int n = (int) lround (CLAMP (stops, 0, 20));

  for (int i = 0; i < n; i++)
    {
      float x = area->origin.x + area->size.width * ((float) i + 0.5f) / (float) n;

      gtk_snapshot_append_color (
          snapshot, &ink, &GRAPHENE_RECT_INIT (x - 1, area->origin.y, 2, area->size.height));
    }
}

static void
draw_words (GtkWidget *widget,
            GtkSnapshot *snapshot,
            const graphene_rect_t *area,
            double stops,
            const char *words)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, words);
  GdkRGBA on = ff_palette_on_block (ff_looks_now (), isnan (stops) ? 0 : stops);
  GdkRGBA paper = ff_looks_colour (FF_COLOUR_SHEET);
  int width, height;

  pango_layout_get_pixel_size (layout, &width, &height);
  /* Words that would be cut are left out: half a number is a wrong number. */
  if ((float) width > area->size.width - 2)
    return;
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot,
                          &GRAPHENE_POINT_INIT (
                              roundf (area->origin.x + (area->size.width - (float) width) / 2),
                              roundf (area->origin.y + (area->size.height - (float) height) / 2)));
  if (ff_palette_block_has_patch (ff_looks_now ()))
    gtk_snapshot_append_color (
        snapshot, &paper, &GRAPHENE_RECT_INIT (-3, 2, (float) width + 6, (float) height - 4));
  gtk_snapshot_append_layout (snapshot, layout, &on);
  gtk_snapshot_restore (snapshot);
}

void
ff_block_draw (GtkWidget *widget,
               GtkSnapshot *snapshot,
               const graphene_rect_t *area,
               double stops,
               const char *words)
{
  FfLook look = ff_looks_now ();
  GdkRGBA fill = ff_palette_block (look, isnan (stops) ? 0 : stops);
  GdkRGBA frame = ff_looks_colour (look == FF_LOOK_DAYLIGHT ? FF_COLOUR_INK : FF_COLOUR_SLATE);
  float border = look == FF_LOOK_DAYLIGHT ? 2 : 1;
  GskRoundedRect outline;

  if (isnan (stops))
    fill = ff_looks_colour (FF_COLOUR_SHEET);
  gsk_rounded_rect_init_from_rect (&outline, area, 3);
  gtk_snapshot_push_rounded_clip (snapshot, &outline);
  gtk_snapshot_append_color (snapshot, &fill, area);
  if (look == FF_LOOK_DAYLIGHT && !isnan (stops))
    draw_hatching (snapshot, area, stops);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_append_border (snapshot, &outline,
                              (float[4]) { border, border, border, border },
                              (GdkRGBA[4]) { frame, frame, frame, frame });
  draw_words (widget, snapshot, area, stops, words);
}

/* Overrides */

static char *
words_of_stops (double stops)
{
  return isnan (stops) ? g_strdup ("–") : ff_number_format (stops, 1);
}

static void
ff_block_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FfBlock *self = FF_BLOCK (widget);
  g_autofree char *words = words_of_stops (self->stops);

  ff_block_draw (widget, snapshot,
                 &GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                      (float) gtk_widget_get_height (widget)),
                 self->stops, words);
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

static void
ff_block_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_STOPS)
    g_value_set_double (value, FF_BLOCK (object)->stops);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_block_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_STOPS)
    ff_block_set_stops (FF_BLOCK (object), g_value_get_double (value));
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
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
describe (FfBlock *self)
{
  g_autofree char *number = words_of_stops (self->stops);
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
