/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-columns.h"

#define GAP_X 20
#define GAP_Y 14

struct _FfColumns {
  GtkWidget parent_instance;

  int chars, most;
};

G_DEFINE_FINAL_TYPE (FfColumns, ff_columns, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_CHARS, PROP_MOST, N_PROPS };

static GParamSpec *properties[N_PROPS];
static GQuark wide_quark;

/* Measuring */

static gboolean
is_wide (GtkWidget *child)
{
  return g_object_get_qdata (G_OBJECT (child), wide_quark) != NULL;
}

static int
least_width (FfColumns *self)
{
  PangoContext *context = gtk_widget_get_pango_context (GTK_WIDGET (self));
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  int width = PANGO_PIXELS (pango_font_metrics_get_approximate_char_width (metrics)) * self->chars;

  pango_font_metrics_unref (metrics);
  return width;
}

static int
widest_child (FfColumns *self)
{
  int widest = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int least = 0;

      if (gtk_widget_should_layout (child))
        gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
      widest = MAX (widest, least);
    }
  return widest;
}

static int
count_columns (FfColumns *self, int width)
{
  int column = MAX (least_width (self), widest_child (self));

  return CLAMP ((width + GAP_X) / (column + GAP_X), 1, self->most);
}

static int
column_width (int width, int n)
{
  return (width - (n - 1) * GAP_X) / n;
}

/* One row that begins with `child`: its height, and how many children it takes. */
static int
measure_row (GtkWidget *child, int width, int n, GtkWidget **ret_next)
{
  int height = 0, taken = 0;

  for (; child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      gboolean wide = is_wide (child);
      int wanted;

      if (!gtk_widget_should_layout (child))
        continue;
      if (taken == n || (wide && taken > 0))
        break;
      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, wide ? width : column_width (width, n),
                          NULL, &wanted, NULL, NULL);
      height = MAX (height, wanted);
      taken += wide ? n : 1;
    }
  *ret_next = child;
  return height;
}

static int
height_for (FfColumns *self, int width)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));
  int n = count_columns (self, width), height = 0;

  while (child != NULL)
    {
      int row = measure_row (child, width, n, &child);

      if (row > 0)
        height += row + (height > 0 ? GAP_Y : 0);
    }
  return height;
}

/* Overrides */

static GtkSizeRequestMode
ff_columns_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
ff_columns_measure (GtkWidget *widget,
                    GtkOrientation orientation,
                    int for_size,
                    int *ret_minimum,
                    int *ret_natural,
                    int *ret_minimum_baseline,
                    int *ret_natural_baseline)
{
  FfColumns *self = FF_COLUMNS (widget);
  int column = MAX (least_width (self), widest_child (self));

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *ret_minimum = widest_child (self);
      *ret_natural = column * self->most + GAP_X * (self->most - 1);
    }
  else
    *ret_minimum = *ret_natural
        = height_for (self, for_size >= 0 ? for_size
                                          : column * self->most + GAP_X * (self->most - 1));
}

static void
allocate_row (GtkWidget *from, GtkWidget *to, int width, int n, int y, int height, gboolean mirror)
{
  int each = column_width (width, n), x = 0;

  for (GtkWidget *child = from; child != to; child = gtk_widget_get_next_sibling (child))
    {
      int taken = is_wide (child) ? width : each;

      if (!gtk_widget_should_layout (child))
        continue;
      gtk_widget_size_allocate (
          child, &(GtkAllocation) { mirror ? width - x - taken : x, y, taken, height }, -1);
      x += taken + GAP_X;
    }
}

static void
ff_columns_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  FfColumns *self = FF_COLUMNS (widget);
  gboolean mirror = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  GtkWidget *child = gtk_widget_get_first_child (widget);
  int n = count_columns (self, width), y = 0;

  while (child != NULL)
    {
      GtkWidget *next;
      int row = measure_row (child, width, n, &next);

      allocate_row (child, next, width, n, y, row, mirror);
      y += row > 0 ? row + GAP_Y : 0;
      child = next;
    }
}

static void
ff_columns_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FfColumns *self = FF_COLUMNS (object);

  if (id == PROP_CHARS)
    self->chars = g_value_get_int (value);
  else if (id == PROP_MOST)
    self->most = g_value_get_int (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_columns_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ff_columns_parent_class)->dispose (object);
}

static void
ff_columns_class_init (FfColumnsClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags once = G_PARAM_WRITABLE | G_PARAM_CONSTRUCT | G_PARAM_STATIC_STRINGS;

  object_class->set_property = ff_columns_set_property;
  object_class->dispose = ff_columns_dispose;
  widget_class->get_request_mode = ff_columns_get_request_mode;
  widget_class->measure = ff_columns_measure;
  widget_class->size_allocate = ff_columns_size_allocate;
  properties[PROP_CHARS] = g_param_spec_int ("chars", NULL, NULL, 1, 200, 22, once);
  properties[PROP_MOST] = g_param_spec_int ("most", NULL, NULL, 1, 20, 3, once);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  gtk_widget_class_set_css_name (widget_class, "columns");
  wide_quark = g_quark_from_static_string ("ff-columns-wide");
}

static void
ff_columns_init (FfColumns *self)
{
}

/* Public */

GtkWidget *
ff_columns_new (int chars, int most)
{
  return g_object_new (FF_TYPE_COLUMNS, "chars", chars, "most", most, NULL);
}

void
ff_columns_append (FfColumns *self, GtkWidget *child, gboolean wide)
{
  g_return_if_fail (FF_IS_COLUMNS (self));
  g_object_set_qdata (G_OBJECT (child), wide_quark, GINT_TO_POINTER (wide));
  gtk_widget_set_parent (child, GTK_WIDGET (self));
}

FfEntry *
ff_columns_append_entry (FfColumns *self,
                         const char *label,
                         const char *unit,
                         gboolean wide,
                         GCallback entered,
                         gpointer owner)
{
  GtkWidget *entry = ff_entry_new (label, unit);

  g_signal_connect_object (entry, "entered", entered, owner, G_CONNECT_SWAPPED);
  ff_columns_append (self, entry, wide);
  return FF_ENTRY (entry);
}
