/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-split.h"

struct _FfSplit {
  GtkWidget parent_instance;

  GtkWidget *sidebar, *content, *bar; /* each may be NULL */
  int collapse_width;
  int sidebar_width;
  gboolean collapsed;
  gboolean show_content;
  guint notify_source;
};

G_DEFINE_FINAL_TYPE (FfSplit, ff_split, GTK_TYPE_WIDGET)

enum {
  PROP_0,
  PROP_SIDEBAR,
  PROP_CONTENT,
  PROP_BAR,
  PROP_COLLAPSE_WIDTH,
  PROP_SIDEBAR_WIDTH,
  PROP_COLLAPSED,
  PROP_SHOW_CONTENT,
  N_PROPS,
};

static GParamSpec *properties[N_PROPS];

/* Measuring */

static gboolean
is_there (GtkWidget *child)
{
  return child != NULL && gtk_widget_get_visible (child);
}

static int
minimum (GtkWidget *child, GtkOrientation orientation, int for_size)
{
  int size = 0;

  if (is_there (child))
    gtk_widget_measure (child, orientation, for_size, &size, NULL, NULL, NULL);
  return size;
}

static int
natural (GtkWidget *child, GtkOrientation orientation, int for_size)
{
  int size = 0;

  if (is_there (child))
    gtk_widget_measure (child, orientation, for_size, NULL, &size, NULL, NULL);
  return size;
}

/* The width of the sidebar when both sides are shown. */
static int
side_width (FfSplit *self)
{
  return is_there (self->sidebar)
             ? MAX (self->sidebar_width, minimum (self->sidebar, GTK_ORIENTATION_HORIZONTAL, -1))
             : 0;
}

static gboolean
must_collapse (FfSplit *self, int width)
{
  return is_there (self->sidebar)
         && (width < self->collapse_width
             || width < side_width (self) + minimum (self->content, GTK_ORIENTATION_HORIZONTAL, -1));
}

/* Overrides */

static GtkSizeRequestMode
ff_split_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_CONSTANT_SIZE;
}

/* The split asks for as little as its narrow form needs. */
static void
ff_split_measure (GtkWidget *widget,
                  GtkOrientation orientation,
                  int for_size,
                  int *ret_minimum,
                  int *ret_natural,
                  int *ret_minimum_baseline,
                  int *ret_natural_baseline)
{
  FfSplit *self = FF_SPLIT (widget);
  int least = MAX (minimum (self->content, orientation, -1), 0);
  int wanted = natural (self->content, orientation, -1);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      least = MAX (least, minimum (self->bar, orientation, -1));
      if (self->bar == NULL)
        least = MAX (least, minimum (self->sidebar, orientation, -1));
      wanted += side_width (self);
    }
  else
    {
      least += minimum (self->bar, orientation, -1);
      if (self->bar == NULL)
        least = MAX (least, minimum (self->sidebar, orientation, -1));
      wanted = MAX (wanted, natural (self->sidebar, orientation, -1));
    }
  *ret_minimum = least;
  *ret_natural = MAX (least, wanted);
  *ret_minimum_baseline = *ret_natural_baseline = -1;
}

static gboolean
notify_collapsed (gpointer user_data)
{
  FfSplit *self = user_data;

  self->notify_source = 0;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_COLLAPSED]);
  return G_SOURCE_REMOVE;
}

static void
set_collapsed (FfSplit *self, gboolean collapsed)
{
  if (self->collapsed == collapsed)
    return;
  self->collapsed = collapsed;
  /* Others change widgets when they hear of it, which must not happen in an allocation. */
  if (self->notify_source == 0)
    self->notify_source = g_idle_add (notify_collapsed, self);
}

static void
place (GtkWidget *child, gboolean shown, GdkRectangle area)
{
  if (child == NULL)
    return;
  gtk_widget_set_child_visible (child, shown);
  if (shown && is_there (child))
    gtk_widget_size_allocate (child, &area, -1);
}

static void
allocate_both (FfSplit *self, int width, int height)
{
  gboolean mirrored = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  int side = side_width (self);

  place (self->sidebar, TRUE, (GdkRectangle) { mirrored ? width - side : 0, 0, side, height });
  place (self->content, TRUE,
         (GdkRectangle) { mirrored ? 0 : side, 0, width - side, height });
  place (self->bar, FALSE, (GdkRectangle) { 0 });
}

static void
allocate_one (FfSplit *self, int width, int height)
{
  gboolean content = self->bar != NULL || self->show_content;
  int bar = minimum (self->bar, GTK_ORIENTATION_VERTICAL, -1);

  place (self->sidebar, !content, (GdkRectangle) { 0, 0, width, height });
  place (self->content, content, (GdkRectangle) { 0, 0, width, MAX (height - bar, 0) });
  place (self->bar, self->bar != NULL, (GdkRectangle) { 0, height - bar, width, bar });
}

static void
ff_split_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  FfSplit *self = FF_SPLIT (widget);

  set_collapsed (self, must_collapse (self, width));
  if (self->collapsed)
    allocate_one (self, width, height);
  else
    allocate_both (self, width, height);
}

static void
replace_child (FfSplit *self, GtkWidget **slot, GtkWidget *child)
{
  if (*slot == child)
    return;
  g_clear_pointer (slot, gtk_widget_unparent);
  *slot = child;
  if (child != NULL)
    gtk_widget_set_parent (child, GTK_WIDGET (self));
}

static void
ff_split_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FfSplit *self = FF_SPLIT (object);

  switch (id)
    {
    case PROP_SIDEBAR:
      replace_child (self, &self->sidebar, g_value_get_object (value));
      break;
    case PROP_CONTENT:
      replace_child (self, &self->content, g_value_get_object (value));
      break;
    case PROP_BAR:
      replace_child (self, &self->bar, g_value_get_object (value));
      break;
    case PROP_COLLAPSE_WIDTH:
      self->collapse_width = g_value_get_int (value);
      gtk_widget_queue_resize (GTK_WIDGET (self));
      break;
    case PROP_SIDEBAR_WIDTH:
      self->sidebar_width = g_value_get_int (value);
      gtk_widget_queue_resize (GTK_WIDGET (self));
      break;
    case PROP_SHOW_CONTENT:
      ff_split_set_show_content (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
ff_split_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  FfSplit *self = FF_SPLIT (object);

  switch (id)
    {
    case PROP_SIDEBAR:
      g_value_set_object (value, self->sidebar);
      break;
    case PROP_CONTENT:
      g_value_set_object (value, self->content);
      break;
    case PROP_BAR:
      g_value_set_object (value, self->bar);
      break;
    case PROP_COLLAPSE_WIDTH:
      g_value_set_int (value, self->collapse_width);
      break;
    case PROP_SIDEBAR_WIDTH:
      g_value_set_int (value, self->sidebar_width);
      break;
    case PROP_COLLAPSED:
      g_value_set_boolean (value, self->collapsed);
      break;
    case PROP_SHOW_CONTENT:
      g_value_set_boolean (value, self->show_content);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
ff_split_dispose (GObject *object)
{
  FfSplit *self = FF_SPLIT (object);

  g_clear_handle_id (&self->notify_source, g_source_remove);
  g_clear_pointer (&self->sidebar, gtk_widget_unparent);
  g_clear_pointer (&self->content, gtk_widget_unparent);
  g_clear_pointer (&self->bar, gtk_widget_unparent);
  G_OBJECT_CLASS (ff_split_parent_class)->dispose (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags both = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  properties[PROP_SIDEBAR]
      = g_param_spec_object ("sidebar", NULL, NULL, GTK_TYPE_WIDGET, both);
  properties[PROP_CONTENT]
      = g_param_spec_object ("content", NULL, NULL, GTK_TYPE_WIDGET, both);
  properties[PROP_BAR] = g_param_spec_object ("bar", NULL, NULL, GTK_TYPE_WIDGET, both);
  properties[PROP_COLLAPSE_WIDTH]
      = g_param_spec_int ("collapse-width", NULL, NULL, 0, G_MAXINT, 720, both);
  properties[PROP_SIDEBAR_WIDTH]
      = g_param_spec_int ("sidebar-width", NULL, NULL, 0, G_MAXINT, 216, both);
  properties[PROP_COLLAPSED] = g_param_spec_boolean ("collapsed", NULL, NULL, FALSE,
                                                     G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  properties[PROP_SHOW_CONTENT] = g_param_spec_boolean ("show-content", NULL, NULL, TRUE,
                                                        both | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
ff_split_class_init (FfSplitClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = ff_split_dispose;
  object_class->set_property = ff_split_set_property;
  object_class->get_property = ff_split_get_property;
  widget_class->get_request_mode = ff_split_get_request_mode;
  widget_class->measure = ff_split_measure;
  widget_class->size_allocate = ff_split_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "split");
  install_properties (object_class);
}

static void
ff_split_init (FfSplit *self)
{
  self->collapse_width = 720;
  self->sidebar_width = 216;
  self->show_content = TRUE;
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

/* Public */

GtkWidget *
ff_split_new (void)
{
  return g_object_new (FF_TYPE_SPLIT, NULL);
}

gboolean
ff_split_get_collapsed (FfSplit *self)
{
  g_return_val_if_fail (FF_IS_SPLIT (self), FALSE);
  return self->collapsed;
}

gboolean
ff_split_get_show_content (FfSplit *self)
{
  g_return_val_if_fail (FF_IS_SPLIT (self), TRUE);
  return self->show_content;
}

void
ff_split_set_show_content (FfSplit *self, gboolean show_content)
{
  g_return_if_fail (FF_IS_SPLIT (self));
  if (self->show_content == show_content)
    return;
  self->show_content = show_content;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_SHOW_CONTENT]);
}
