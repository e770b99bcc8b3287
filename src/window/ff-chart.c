/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-chart-part.h"
#include "ff-day-chart.h"
#include "ff-looks.h"
#include "ff-pixels.h"
#include "ff-shapes.h"

#define LEAST_WIDTH 240
#define NATURAL_WIDTH 800
#define MOVE_MINUTES 5
#define TICK_S 30 /* how often the line of now moves */

struct _FfChart {
  GtkWidget parent_instance;

  FfAnswer *answer;  /* with a plan, or NULL */
  int line;          /* chosen */
  int zoom;          /* how often the day is halved */
  gint64 from, to;   /* the part that is shown; not read without zoom */
  FfDayChart *whole; /* for the table while a part is shown; NULL: not asked for yet */
  FfDayChart *chart; /* laid out for what follows */
  int width, height;
  double em;
  FfLook look;

  /* The last height that was worked out, because GTK asks often. */
  int wanted_width, wanted_height;
  double wanted_em;

  guint tick;
};

G_DEFINE_FINAL_TYPE (FfChart, ff_chart, GTK_TYPE_WIDGET)

enum { CHOSEN, OPENED, MOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

/* Laying out */

/* The facts of the answer with the line of now where it is at this moment. */
static FfChartFacts
facts_now (FfChart *self)
{
  FfChartFacts facts = *self->answer->chart;
  gint64 now = g_get_real_time () / G_USEC_PER_SEC;

  facts.now = now >= facts.from && now <= facts.to ? now : 0;
  return facts;
}

static void
show_locks (FfChart *self, FfDayChart *chart)
{
  const GPtrArray *lines = self->answer->plan->lines;

  for (guint i = 0; i < lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (lines, i);

      if (ff_locks_find (self->answer->locks, line->id) != NULL)
        ff_day_chart_lock (chart, line->line);
    }
}

/* The whole day, or the part that is shown. */
static FfDayChart *
chart_new (FfChart *self, gboolean whole, const FfChartFrame *frame)
{
  FfChartFacts facts = facts_now (self);
  g_autoptr (FfChartPart) part = NULL;
  FfDayChart *chart;

  if (!whole && self->zoom > 0)
    part = ff_chart_part_new (&facts, self->answer->plan, self->from, self->to);
  chart = part != NULL ? ff_day_chart_new (&part->facts, &part->plan, frame)
                       : ff_day_chart_new (&facts, self->answer->plan, frame);
  show_locks (self, chart);
  return chart;
}

static void
lay_out (FfChart *self, int width, int height)
{
  double em;
  PangoFontDescription *font = ff_font_in_pixels (GTK_WIDGET (self), &em);
  const FfChartFrame frame = { ff_looks_palette (), font, 1, width, height };
  FfDayChart *chart = chart_new (self, FALSE, &frame);

  g_clear_pointer (&self->whole, ff_day_chart_free);
  g_clear_pointer (&self->chart, ff_day_chart_free);
  self->chart = chart;
  self->width = width;
  self->height = height;
  self->em = em;
  self->look = ff_looks_now ();
  pango_font_description_free (font);
}

static gboolean
is_current (FfChart *self, int width, int height)
{
  return self->chart != NULL && self->width == width && self->height == height
         && self->look == ff_looks_now () && ff_em_in_pixels (GTK_WIDGET (self)) == self->em;
}

/* Of the whole day, so that the page stays where it is when a part is shown. */
static int
wanted_height (FfChart *self, int width)
{
  FfChartFacts facts = facts_now (self);
  double em;
  PangoFontDescription *font = ff_font_in_pixels (GTK_WIDGET (self), &em);
  const FfChartFrame frame = { ff_looks_palette (), font, 1, width, 0 };

  if (self->wanted_width != width || self->wanted_em != em)
    {
      self->wanted_height = (int) ceil (ff_day_chart_height (&facts, self->answer->plan, &frame));
      self->wanted_width = width;
      self->wanted_em = em;
    }
  pango_font_description_free (font);
  return self->wanted_height;
}

/* What is said of it */

static const FfChartRow *
row_of_line (FfChart *self, int line)
{
  GPtrArray *rows = ff_chart_table (self);

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      const FfChartRow *row = g_ptr_array_index (rows, i);

      if (row->kind == FF_CHART_ROW_SORTIE && row->line == line)
        return row;
    }
  return NULL;
}

static char *
row_text (const FfChartRow *row)
{
  return g_strdup_printf ("%s%s%s%s%s", row->when, row->when[0] != '\0' ? " " : "", row->what,
                          row->detail[0] != '\0' ? ", " : "", row->detail);
}

/* The chosen sortie is the name, so that it is read out as it is chosen; the whole table is the
 * description. */
static void
say_chosen (FfChart *self)
{
  const FfChartRow *row = row_of_line (self, self->line);
  g_autofree char *chosen = row != NULL ? row_text (row) : NULL;
  g_autofree char *name = NULL;

  if (chosen != NULL)
    /* Translators: read aloud; then one row of the table: "16:30–16:40 sortie 1: A, battery b1". */
    name = g_strdup_printf (_ ("Day chart, %s"), chosen);
  else
    name = g_strdup (_ ("Day chart: left and right choose a sortie, Enter opens it"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
say_all (FfChart *self)
{
  GPtrArray *rows = ff_chart_table (self);
  GString *all = g_string_new (NULL);

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      g_autofree char *text = row_text (g_ptr_array_index (rows, i));

      g_string_append_printf (all, "%s%s", i > 0 ? "; " : "", text);
    }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  all->str, -1);
  g_string_free (all, TRUE);
  say_chosen (self);
}

/* Choosing */

static int
n_lines (FfChart *self)
{
  return self->answer != NULL ? (int) self->answer->plan->lines->len : 0;
}

/* Lays the part that is shown around the chosen sortie, or leaves it when that is in it already. */
static void
place_part (FfChart *self)
{
  const FfChartFacts *facts = self->answer->chart;
  gint64 first = facts->from, last = facts->to;

  self->zoom = MIN (self->zoom, ff_chart_part_most (facts));
  if (self->line > 0)
    {
      const FfPlanLine *line = g_ptr_array_index (self->answer->plan->lines, self->line - 1);

      first = line->off_by;
      last = line->land_by;
    }
  ff_chart_part_place (facts, self->zoom, first, last, &self->from, &self->to);
  self->width = -1; /* lay out anew when it is drawn */
}

static void
choose (FfChart *self, int line)
{
  if (line < 1 || line > n_lines (self) || line == self->line)
    return;
  ff_chart_set_line (self, line);
  g_signal_emit (self, signals[CHOSEN], 0, line);
}

static void
open_line (FfChart *self, int line)
{
  choose (self, line);
  if (self->line > 0)
    g_signal_emit (self, signals[OPENED], 0, self->line);
}

/* Callbacks */

/* A sortie is not moved here: its other time is asked for, and what that costs is said first. */
static gboolean
ask_to_move (FfChart *self, guint key)
{
  gboolean later = key == GDK_KEY_Right || key == GDK_KEY_KP_Right;

  if (!later && key != GDK_KEY_Left && key != GDK_KEY_KP_Left)
    return GDK_EVENT_PROPAGATE;
  if (self->line > 0)
    g_signal_emit (self, signals[MOVED], 0, later ? MOVE_MINUTES : -MOVE_MINUTES);
  return GDK_EVENT_STOP;
}

static gboolean
zoom_by_key (FfChart *self, guint key)
{
  switch (key)
    {
    case GDK_KEY_plus:
    case GDK_KEY_equal: /* the same key without Shift */
    case GDK_KEY_KP_Add:
      ff_chart_zoom (self, 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      ff_chart_zoom (self, -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_0:
    case GDK_KEY_KP_0:
      ff_chart_zoom (self, 0);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

/* Time runs from left to right in every language, and so do the keys. */
static gboolean
on_key (FfChart *self, guint key, guint code, GdkModifierType state)
{
  if ((state & GDK_ALT_MASK) != 0)
    return ask_to_move (self, key);
  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      choose (self, MAX (self->line - 1, 1));
      return GDK_EVENT_STOP;
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      choose (self, MIN (self->line + 1, n_lines (self)));
      return GDK_EVENT_STOP;
    case GDK_KEY_Home:
      choose (self, 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_End:
      choose (self, n_lines (self));
      return GDK_EVENT_STOP;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_space:
      open_line (self, MAX (self->line, 1));
      return GDK_EVENT_STOP;
    default:
      return (state & GDK_CONTROL_MASK) == 0 ? zoom_by_key (self, key) : GDK_EVENT_PROPAGATE;
    }
}

static void
on_tap (FfChart *self, int presses, double x, double y)
{
  int line = self->chart != NULL ? ff_day_chart_line_at (self->chart, x, y) : 0;

  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (line > 0)
    open_line (self, line);
}

static gboolean
on_tick (gpointer data)
{
  FfChart *self = FF_CHART (data);

  if (self->answer != NULL && facts_now (self).now != 0)
    {
      self->width = -1; /* lay out anew when it is drawn */
      gtk_widget_queue_draw (GTK_WIDGET (self));
    }
  return G_SOURCE_CONTINUE;
}

/* Overrides */

/* Below a part of the day: all of it as a line, and thick on that what is shown. */
static void
draw_part (FfChart *self, cairo_t *cr)
{
  const FfChartFacts *facts = self->answer->chart;
  const FfPalette *palette = ff_looks_palette ();
  double left = self->em, right = self->width - self->em, y = self->height - 0.45 * self->em;
  double per_second = (right - left) / (double) (facts->to - facts->from);

  ff_shape_line (cr, left, y, right, y);
  ff_colour_set (cr, palette->soft);
  cairo_set_line_width (cr, palette->hair * self->em);
  cairo_stroke (cr);
  ff_shape_line (cr, left + (double) (self->from - facts->from) * per_second, y,
                 left + (double) (self->to - facts->from) * per_second, y);
  ff_colour_set (cr, palette->accent);
  cairo_set_line_width (cr, 0.4 * self->em);
  cairo_stroke (cr);
}

static void
ff_chart_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FfChart *self = FF_CHART (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  cairo_t *cr;

  if (self->answer == NULL || width < 1 || height < 1)
    return;
  if (!is_current (self, width, height))
    lay_out (self, width, height);
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  ff_day_chart_draw (self->chart, cr, self->line);
  if (self->zoom > 0)
    draw_part (self, cr);
  cairo_destroy (cr);
}

static GtkSizeRequestMode
ff_chart_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
ff_chart_measure (GtkWidget *widget,
                  GtkOrientation orientation,
                  int for_size,
                  int *ret_minimum,
                  int *ret_natural,
                  int *ret_minimum_baseline,
                  int *ret_natural_baseline)
{
  FfChart *self = FF_CHART (widget);

  *ret_minimum = *ret_natural = 0;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *ret_minimum = LEAST_WIDTH;
      *ret_natural = NATURAL_WIDTH;
    }
  else if (self->answer != NULL)
    *ret_minimum = *ret_natural = wanted_height (self, for_size > 0 ? for_size : NATURAL_WIDTH);
}

static void
ff_chart_map (GtkWidget *widget)
{
  FfChart *self = FF_CHART (widget);

  GTK_WIDGET_CLASS (ff_chart_parent_class)->map (widget);
  self->tick = g_timeout_add_seconds (TICK_S, on_tick, self);
}

static void
ff_chart_unmap (GtkWidget *widget)
{
  g_clear_handle_id (&FF_CHART (widget)->tick, g_source_remove);
  GTK_WIDGET_CLASS (ff_chart_parent_class)->unmap (widget);
}

static void
ff_chart_finalize (GObject *object)
{
  FfChart *self = FF_CHART (object);

  g_clear_handle_id (&self->tick, g_source_remove);
  g_clear_pointer (&self->chart, ff_day_chart_free);
  g_clear_pointer (&self->whole, ff_day_chart_free);
  g_clear_pointer (&self->answer, ff_answer_unref);
  G_OBJECT_CLASS (ff_chart_parent_class)->finalize (object);
}

static guint
line_signal (const char *name)
{
  return g_signal_new (name, FF_TYPE_CHART, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                       G_TYPE_INT);
}

static void
ff_chart_class_init (FfChartClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = ff_chart_finalize;
  widget_class->snapshot = ff_chart_snapshot;
  widget_class->measure = ff_chart_measure;
  widget_class->get_request_mode = ff_chart_get_request_mode;
  widget_class->map = ff_chart_map;
  widget_class->unmap = ff_chart_unmap;
  signals[CHOSEN] = line_signal ("chosen");
  signals[OPENED] = line_signal ("opened");
  signals[MOVED] = line_signal ("moved");
  gtk_widget_class_set_css_name (widget_class, "chart");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ff_chart_init (FfChart *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *tap = gtk_gesture_click_new ();

  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (on_key), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_object (tap, "released", G_CALLBACK (on_tap), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (tap));
  ff_looks_redraw (GTK_WIDGET (self));
  say_chosen (self);
}

/* Public */

void
ff_chart_show (FfChart *self, FfAnswer *answer)
{
  int before, width;

  g_return_if_fail (FF_IS_CHART (self));
  if (answer == NULL || answer->plan == NULL || answer == self->answer)
    return;
  before = self->wanted_height;
  g_clear_pointer (&self->answer, ff_answer_unref);
  self->answer = ff_answer_ref (answer);
  if (self->line > n_lines (self))
    self->line = 0;
  width = self->width > 0 ? self->width : NATURAL_WIDTH;
  place_part (self);
  lay_out (self, width, MAX (self->height, 1));
  self->wanted_em = 0;
  if (self->wanted_width <= 0 || wanted_height (self, self->wanted_width) != before)
    gtk_widget_queue_resize (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
  say_all (self);
}

int
ff_chart_get_line (FfChart *self)
{
  g_return_val_if_fail (FF_IS_CHART (self), 0);
  return self->line;
}

void
ff_chart_set_line (FfChart *self, int line)
{
  g_return_if_fail (FF_IS_CHART (self));
  self->line = line >= 1 && line <= n_lines (self) ? line : 0;
  if (self->zoom > 0 && self->line > 0)
    place_part (self);
  say_chosen (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
ff_chart_zoom (FfChart *self, int by)
{
  int width;

  g_return_if_fail (FF_IS_CHART (self));
  if (self->answer == NULL)
    return;
  width = self->width;
  if (by > 0 && self->line == 0)
    choose (self, 1);
  self->zoom = by == 0 ? 0 : MAX (self->zoom + by, 0);
  place_part (self);
  if (width > 0)
    lay_out (self, width, self->height);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

int
ff_chart_get_zoom (FfChart *self)
{
  g_return_val_if_fail (FF_IS_CHART (self), 0);
  return self->zoom;
}

GPtrArray *
ff_chart_table (FfChart *self)
{
  const FfChartFrame frame = { ff_looks_palette (), NULL, 1, NATURAL_WIDTH, 1 };

  g_return_val_if_fail (FF_IS_CHART (self), NULL);
  if (self->zoom > 0 && self->answer != NULL)
    {
      if (self->whole == NULL)
        self->whole = chart_new (self, TRUE, &frame);
      return ff_day_chart_rows (self->whole);
    }
  return self->chart != NULL ? ff_day_chart_rows (self->chart) : NULL;
}
