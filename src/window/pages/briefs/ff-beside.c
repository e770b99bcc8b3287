/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-beside.h"

#include <math.h>

#include "ff-pixels.h"

#define GAP 28

struct _FfBeside {
  GtkWidget parent_instance;

  GtkWidget *first, *second;
  double first_width; /* where they stand side by side, in em */
  double least_width; /* of both together, in em; below it the second goes under the first */
  gboolean stacked;
  guint idle;
};

G_DEFINE_FINAL_TYPE (FfBeside, ff_beside, GTK_TYPE_WIDGET)

enum {
  PROP_0,
  PROP_FIRST,
  PROP_SECOND,
  PROP_FIRST_WIDTH,
  PROP_LEAST_WIDTH,
  PROP_STACKED,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

/* Sizes */

/* Lengths go with the size of the text: twice as large, both need twice the room. */
static int
from_em (FfBeside *self, double em)
{
  return (int) lround (em * ff_em_in_pixels (GTK_WIDGET (self)));
}

static int
first_side (FfBeside *self)
{
  return MAX (from_em (self, self->first_width), ff_least_width (self->first));
}

static gboolean
is_narrow (FfBeside *self, int width)
{
  return width < MAX (from_em (self, self->least_width),
                      first_side (self) + GAP + ff_least_width (self->second));
}

static int
height_at (GtkWidget *child, int width)
{
  int height;

  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, MAX (ff_least_width (child), width),
                      &height, NULL, NULL, NULL);
  return height;
}

static int
second_width (FfBeside *self, int width)
{
  return width - first_side (self) - GAP;
}

static int
height_of_both (FfBeside *self, int width)
{
  if (is_narrow (self, width))
    return height_at (self->first, width) + GAP + height_at (self->second, width);
  return MAX (height_at (self->first, first_side (self)),
              height_at (self->second, second_width (self, width)));
}

static gboolean
tell (gpointer beside)
{
  FF_BESIDE (beside)->idle = 0;
  g_object_notify_by_pspec (beside, properties[PROP_STACKED]);
  return G_SOURCE_REMOVE;
}

static void
note_stacked (FfBeside *self, gboolean stacked)
{
  if (self->stacked == stacked)
    return;
  self->stacked = stacked;
  if (self->idle == 0)
    self->idle = g_idle_add (tell, self);
}

/* Overrides */

static GtkSizeRequestMode
ff_beside_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
ff_beside_measure (GtkWidget *widget,
                   GtkOrientation orientation,
                   int for_size,
                   int *ret_minimum,
                   int *ret_natural,
                   int *ret_minimum_baseline,
                   int *ret_natural_baseline)
{
  FfBeside *self = FF_BESIDE (widget);

  *ret_minimum = *ret_natural = MAX (ff_least_width (self->first), ff_least_width (self->second));
  if (orientation == GTK_ORIENTATION_VERTICAL)
    *ret_minimum = *ret_natural = height_of_both (self, MAX (for_size, *ret_minimum));
  else
    *ret_natural = MAX (*ret_minimum, from_em (self, self->least_width));
}

static void
place (GtkWidget *child, int x, int y, int width, int height)
{
  gtk_widget_size_allocate (child, &(GtkAllocation) { x, y, width, height }, -1);
}

static void
ff_beside_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  FfBeside *self = FF_BESIDE (widget);
  const gboolean narrow = is_narrow (self, width);
  const gboolean mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  const int over = height_at (self->first, width) + GAP;
  const int side = first_side (self), rest = second_width (self, width);

  if (narrow)
    {
      place (self->first, 0, 0, width, over - GAP);
      place (self->second, 0, over, width, MAX (height - over, height_at (self->second, width)));
    }
  else
    {
      place (self->first, mirrored ? rest + GAP : 0, 0, side, height);
      place (self->second, mirrored ? 0 : side + GAP, 0, rest, height);
    }
  note_stacked (self, narrow);
}

static void
ff_beside_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FfBeside *self = FF_BESIDE (object);

  if (id == PROP_FIRST || id == PROP_SECOND)
    {
      GtkWidget *child = g_value_get_object (value);

      *(id == PROP_FIRST ? &self->first : &self->second) = child;
      if (child != NULL)
        gtk_widget_set_parent (child, GTK_WIDGET (self));
    }
  else if (id == PROP_FIRST_WIDTH)
    self->first_width = g_value_get_double (value);
  else if (id == PROP_LEAST_WIDTH)
    self->least_width = g_value_get_double (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_beside_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_STACKED)
    g_value_set_boolean (value, FF_BESIDE (object)->stacked);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_beside_dispose (GObject *object)
{
  FfBeside *self = FF_BESIDE (object);

  g_clear_handle_id (&self->idle, g_source_remove);
  g_clear_pointer (&self->first, gtk_widget_unparent);
  g_clear_pointer (&self->second, gtk_widget_unparent);
  G_OBJECT_CLASS (ff_beside_parent_class)->dispose (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags once = G_PARAM_WRITABLE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS;
  const GParamFlags set = G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS;

  properties[PROP_FIRST] = g_param_spec_object ("first", NULL, NULL, GTK_TYPE_WIDGET, set);
  properties[PROP_SECOND] = g_param_spec_object ("second", NULL, NULL, GTK_TYPE_WIDGET, set);
  properties[PROP_FIRST_WIDTH]
      = g_param_spec_double ("first-width", NULL, NULL, 0, 1000, 20, once);
  properties[PROP_LEAST_WIDTH]
      = g_param_spec_double ("least-width", NULL, NULL, 0, 1000, 46, once);
  properties[PROP_STACKED] = g_param_spec_boolean ("stacked", NULL, NULL, FALSE,
                                                   G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
ff_beside_class_init (FfBesideClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->set_property = ff_beside_set_property;
  object_class->get_property = ff_beside_get_property;
  object_class->dispose = ff_beside_dispose;
  widget_class->get_request_mode = ff_beside_get_request_mode;
  widget_class->measure = ff_beside_measure;
  widget_class->size_allocate = ff_beside_size_allocate;
  install_properties (object_class);
}

static void
ff_beside_init (FfBeside *self)
{
}

/* Public */

gboolean
ff_beside_get_stacked (FfBeside *self)
{
  g_return_val_if_fail (FF_IS_BESIDE (self), FALSE);
  return self->stacked;
}
