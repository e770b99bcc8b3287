/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-strip.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-block.h"
#include "ff-civil.h"
#include "ff-looks.h"
#include "ff-number.h"

#define HOUR 3600
#define LEAST_HOUR_WIDTH 44 /* closer than this, hours are not all written */

struct _FfStrip {
  GtkWidget parent_instance;

  FfKeeper *keeper;
  gboolean unwanted;
};

G_DEFINE_FINAL_TYPE (FfStrip, ff_strip, GTK_TYPE_WIDGET)

/* Where things stand */

typedef struct {
  const FfChartFacts *chart;
  const FfDayPlan *plan;
  float width, block_height;
} Layout;

static float
x_of (const Layout *layout, gint64 at)
{
  return layout->width * (float) (at - layout->chart->from)
         / (float) (layout->chart->to - layout->chart->from);
}

static int
line_height (FfStrip *self)
{
  g_autoptr (PangoLayout) text = gtk_widget_create_pango_layout (GTK_WIDGET (self), "0");
  int height;

  pango_layout_get_pixel_size (text, NULL, &height);
  return height;
}

/* Drawing */

static void
draw_text (FfStrip *self, GtkSnapshot *snapshot, const char *words, float x, float y, FfHue ink)
{
  g_autoptr (PangoLayout) text = gtk_widget_create_pango_layout (GTK_WIDGET (self), words);
  GdkRGBA colour = ff_looks_hue (ink);
  int width;

  pango_layout_get_pixel_size (text, &width, NULL);
  x = CLAMP (x - (float) width / 2, 0, (float) (gtk_widget_get_width (GTK_WIDGET (self)) - width));
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (roundf (x), roundf (y)));
  gtk_snapshot_append_layout (snapshot, text, &colour);
  gtk_snapshot_restore (snapshot);
}

static void
draw_hours (FfStrip *self, GtkSnapshot *snapshot, const Layout *layout)
{
  GdkRGBA line = ff_looks_hue (FF_HUE_LINE);
  gint64 first = (layout->chart->from + HOUR - 1) / HOUR * HOUR;
  float hour_width = layout->width * HOUR / (float) (layout->chart->to - layout->chart->from);
  int every = (int) ceilf (LEAST_HOUR_WIDTH / MAX (hour_width, 1));

  gtk_snapshot_append_color (
      snapshot, &line, &GRAPHENE_RECT_INIT (0, layout->block_height / 2 - 1, layout->width, 2));
  for (gint64 at = first; at <= layout->chart->to; at += (gint64) every * HOUR)
    {
      g_autofree char *clock = ff_instant_clock ((double) at, layout->chart->zone);
      float x = x_of (layout, at);

      gtk_snapshot_append_color (
          snapshot, &line,
          &GRAPHENE_RECT_INIT (roundf (x) - 1, layout->block_height / 2, 2,
                               layout->block_height / 2 + 2));
      draw_text (self, snapshot, clock, x, layout->block_height + 2, FF_HUE_SOFT);
    }
}

/* After sunset the ground is darker, and a half disc stands among the hours where the sun goes
 * down. */
static void
draw_sunset (GtkSnapshot *snapshot, const Layout *layout, float height)
{
  GdkRGBA ochre = ff_looks_hue (FF_HUE_OCHRE);
  GdkRGBA dusk = ff_looks_hue (FF_HUE_SLATE);
  gint64 sunset = layout->chart->sunset;
  float x = sunset != 0 ? roundf (x_of (layout, sunset)) : 0;
  float y = height - 3;
  GskRoundedRect disc;

  if (sunset == 0)
    return;
  dusk.alpha = ff_looks_now () == FF_LOOK_DAYLIGHT ? 0 : 0.18f;
  gtk_snapshot_append_color (
      snapshot, &dusk,
      &GRAPHENE_RECT_INIT (x, 0, layout->width - x, layout->block_height));
  gsk_rounded_rect_init_from_rect (&disc, &GRAPHENE_RECT_INIT (x - 8, y - 8, 16, 16), 8);
  gtk_snapshot_push_clip (snapshot, &GRAPHENE_RECT_INIT (x - 9, y - 9, 18, 9));
  gtk_snapshot_push_rounded_clip (snapshot, &disc);
  gtk_snapshot_append_color (snapshot, &ochre, &disc.bounds);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_pop (snapshot);
}

static void
draw_sorties (GtkWidget *widget, GtkSnapshot *snapshot, const Layout *layout)
{
  for (guint i = 0; i < layout->plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (layout->plan->lines, i);
      float from = roundf (x_of (layout, line->off_by));
      float to = roundf (x_of (layout, line->land_by));

      ff_block_draw (widget, snapshot,
                     &GRAPHENE_RECT_INIT (from, 0, MAX (to - from, 8), layout->block_height),
                     line->filter_stops);
    }
}

static void
ff_strip_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FfStrip *self = FF_STRIP (widget);
  Layout layout = { 0 };

  if (self->keeper == NULL)
    return;
  layout.chart = ff_keeper_chart (self->keeper);
  layout.plan = ff_keeper_plan (self->keeper);
  layout.width = (float) gtk_widget_get_width (widget);
  layout.block_height = (float) (gtk_widget_get_height (widget) - line_height (self) - 2);
  if (layout.chart == NULL || layout.plan == NULL || layout.chart->to <= layout.chart->from)
    return;
  draw_sunset (snapshot, &layout, (float) gtk_widget_get_height (widget));
  draw_hours (self, snapshot, &layout);
  draw_sorties (widget, snapshot, &layout);
}

/* Callbacks */

/* What the strip shows, for those who hear it. */
static char *
strip_words (FfStrip *self)
{
  const FfDayPlan *plan = self->keeper != NULL ? ff_keeper_plan (self->keeper) : NULL;
  const FfChartFacts *chart = plan != NULL ? ff_keeper_chart (self->keeper) : NULL;
  GString *words = g_string_new (NULL);

  if (chart == NULL)
    return g_string_free (words, FALSE);
  g_string_printf (words, g_dngettext (GETTEXT_PACKAGE, "%u sortie", "%u sorties", plan->lines->len),
                   plan->lines->len);
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);
      g_autofree char *off = ff_instant_clock ((double) line->off_by, chart->zone);
      g_autofree char *land = ff_instant_clock ((double) line->land_by, chart->zone);
      g_autofree char *stops = ff_number_format (line->filter_stops, 1);

      /* Translators: one sortie read aloud: off by, land by, strength of the filter in stops. */
      g_string_append_printf (words, _ ("; off %s, land by %s, %s stops"), off, land, stops);
    }
  return g_string_free (words, FALSE);
}

static void
on_plan_changed (FfStrip *self)
{
  g_autofree char *words = strip_words (self);

  gtk_widget_set_visible (GTK_WIDGET (self), words[0] != '\0' && !self->unwanted);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* Overrides */

static void
ff_strip_measure (GtkWidget *widget,
                  GtkOrientation orientation,
                  int for_size,
                  int *ret_minimum,
                  int *ret_natural,
                  int *ret_minimum_baseline,
                  int *ret_natural_baseline)
{
  int line = line_height (FF_STRIP (widget));

  *ret_minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 200 : 5 * line / 2 + 12;
  *ret_natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 600 : 5 * line / 2 + 12;
}

static void
ff_strip_dispose (GObject *object)
{
  ff_strip_set_keeper (FF_STRIP (object), NULL);
  G_OBJECT_CLASS (ff_strip_parent_class)->dispose (object);
}

static void
ff_strip_class_init (FfStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = ff_strip_dispose;
  widget_class->snapshot = ff_strip_snapshot;
  widget_class->measure = ff_strip_measure;
  gtk_widget_class_set_css_name (widget_class, "strip");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ff_strip_init (FfStrip *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  ff_looks_redraw (GTK_WIDGET (self));
}

/* Public */

void
ff_strip_set_keeper (FfStrip *self, FfKeeper *keeper)
{
  g_return_if_fail (FF_IS_STRIP (self));
  if (self->keeper != NULL)
    g_signal_handlers_disconnect_by_data (self->keeper, self);
  g_set_object (&self->keeper, keeper);
  if (keeper == NULL)
    return;
  g_signal_connect_object (keeper, "plan-changed", G_CALLBACK (on_plan_changed), self,
                           G_CONNECT_SWAPPED);
  on_plan_changed (self);
}

void
ff_strip_set_wanted (FfStrip *self, gboolean wanted)
{
  g_return_if_fail (FF_IS_STRIP (self));
  if (self->unwanted == !wanted)
    return;
  self->unwanted = !wanted;
  on_plan_changed (self);
}
