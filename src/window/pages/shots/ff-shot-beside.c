/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shot-beside.h"

#include "ff-pixels.h"

#define GAP 20

struct _FfShotBeside {
  GtkWidget parent_instance;

  GtkWidget *form, *aside; /* NULL until the template gives them */
  GtkAdjustment *scroll;   /* of the scrolled window around; NULL while not shown */
  int aside_width;
};

G_DEFINE_FINAL_TYPE (FfShotBeside, ff_shot_beside, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_FORM, PROP_ASIDE, PROP_ASIDE_WIDTH, N_PROPS };

static GParamSpec *properties[N_PROPS];

/* Measuring */

static int
height_at (GtkWidget *child, int width)
{
  int natural;

  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, width, NULL, &natural, NULL, NULL);
  return natural;
}

static int
width_of_aside (FfShotBeside *self)
{
  return MAX (self->aside_width, ff_least_width (self->aside));
}

/* The form keeps room for two short fields in a line; so large text stacks them, too. */
static gboolean
fits_beside (FfShotBeside *self, int width)
{
  int form = MAX (ff_least_width (self->form) * 3 / 2, self->aside_width);

  return width >= width_of_aside (self) + GAP + form;
}

static void
measure_height (FfShotBeside *self, int for_width, int *minimum, int *natural)
{
  int width = MAX (for_width, MAX (ff_least_width (self->form), ff_least_width (self->aside)));
  int aside = width_of_aside (self);

  if (fits_beside (self, width))
    *minimum = MAX (height_at (self->form, width - aside - GAP), height_at (self->aside, aside));
  else
    *minimum = height_at (self->aside, width) + GAP + height_at (self->form, width);
  *natural = *minimum;
}

/* Overrides */

static GtkSizeRequestMode
ff_shot_beside_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
ff_shot_beside_measure (GtkWidget *widget,
                        GtkOrientation orientation,
                        int for_size,
                        int *ret_minimum,
                        int *ret_natural,
                        int *ret_minimum_baseline,
                        int *ret_natural_baseline)
{
  FfShotBeside *self = FF_SHOT_BESIDE (widget);

  *ret_minimum_baseline = *ret_natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_VERTICAL)
    {
      measure_height (self, for_size, ret_minimum, ret_natural);
      return;
    }
  *ret_minimum = MAX (ff_least_width (self->form), ff_least_width (self->aside));
  *ret_natural = MAX (*ret_minimum, 2 * width_of_aside (self) + GAP);
}

/* Where the aside begins, so that it stays in sight: with its top, or with its end where it is
 * higher than the window. */
static int
sticky_y (FfShotBeside *self, int aside_height, int height)
{
  double value, page;

  if (self->scroll == NULL)
    return 0;
  value = gtk_adjustment_get_value (self->scroll);
  page = gtk_adjustment_get_page_size (self->scroll);
  if (aside_height > page)
    value -= aside_height - page;
  return CLAMP ((int) value, 0, MAX (height - aside_height, 0));
}

static void
allocate_beside (FfShotBeside *self, int width, int height)
{
  gboolean mirrored = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  int aside = width_of_aside (self), form = width - aside - GAP;
  int aside_height = height_at (self->aside, aside);
  GtkAllocation at_form = { mirrored ? aside + GAP : 0, 0, form, height };
  GtkAllocation at_aside = { mirrored ? 0 : form + GAP, sticky_y (self, aside_height, height),
                             aside, aside_height };

  gtk_widget_size_allocate (self->form, &at_form, -1);
  gtk_widget_size_allocate (self->aside, &at_aside, -1);
}

static void
ff_shot_beside_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  FfShotBeside *self = FF_SHOT_BESIDE (widget);
  int aside;

  if (fits_beside (self, width))
    {
      allocate_beside (self, width, height);
      return;
    }
  aside = height_at (self->aside, width);
  gtk_widget_size_allocate (self->aside, &(GtkAllocation) { 0, 0, width, aside }, -1);
  gtk_widget_size_allocate (
      self->form, &(GtkAllocation) { 0, aside + GAP, width, MAX (height - aside - GAP, 0) }, -1);
}

static void
drop_scroll (FfShotBeside *self)
{
  if (self->scroll != NULL)
    g_signal_handlers_disconnect_by_func (self->scroll, gtk_widget_queue_allocate, self);
  g_clear_object (&self->scroll);
}

static void
ff_shot_beside_map (GtkWidget *widget)
{
  FfShotBeside *self = FF_SHOT_BESIDE (widget);
  GtkWidget *around = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);

  drop_scroll (self);
  if (around != NULL)
    {
      self->scroll = g_object_ref (
          gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (around)));
      g_signal_connect_object (self->scroll, "value-changed",
                               G_CALLBACK (gtk_widget_queue_allocate), self, G_CONNECT_SWAPPED);
    }
  GTK_WIDGET_CLASS (ff_shot_beside_parent_class)->map (widget);
}

static void
replace_child (FfShotBeside *self, GtkWidget **slot, GtkWidget *child, GtkWidget *before)
{
  g_clear_pointer (slot, gtk_widget_unparent);
  *slot = child;
  if (child != NULL)
    gtk_widget_insert_before (child, GTK_WIDGET (self), before);
}

static void
ff_shot_beside_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FfShotBeside *self = FF_SHOT_BESIDE (object);

  if (id == PROP_FORM)
    replace_child (self, &self->form, g_value_get_object (value), NULL);
  else if (id == PROP_ASIDE)
    replace_child (self, &self->aside, g_value_get_object (value), self->form);
  else if (id == PROP_ASIDE_WIDTH)
    self->aside_width = g_value_get_int (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_shot_beside_dispose (GObject *object)
{
  FfShotBeside *self = FF_SHOT_BESIDE (object);

  drop_scroll (self);
  g_clear_pointer (&self->form, gtk_widget_unparent);
  g_clear_pointer (&self->aside, gtk_widget_unparent);
  G_OBJECT_CLASS (ff_shot_beside_parent_class)->dispose (object);
}

static void
ff_shot_beside_class_init (FfShotBesideClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags write = G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS;

  object_class->set_property = ff_shot_beside_set_property;
  object_class->dispose = ff_shot_beside_dispose;
  widget_class->get_request_mode = ff_shot_beside_get_request_mode;
  widget_class->measure = ff_shot_beside_measure;
  widget_class->size_allocate = ff_shot_beside_size_allocate;
  widget_class->map = ff_shot_beside_map;
  properties[PROP_FORM] = g_param_spec_object ("form", NULL, NULL, GTK_TYPE_WIDGET, write);
  properties[PROP_ASIDE] = g_param_spec_object ("aside", NULL, NULL, GTK_TYPE_WIDGET, write);
  properties[PROP_ASIDE_WIDTH]
      = g_param_spec_int ("aside-width", NULL, NULL, 0, G_MAXINT, 280, write);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  gtk_widget_class_set_css_name (widget_class, "beside");
}

static void
ff_shot_beside_init (FfShotBeside *self)
{
  self->aside_width = 280;
}

/* Public */

gboolean
ff_shot_beside_is_wide (FfShotBeside *self)
{
  g_return_val_if_fail (FF_IS_SHOT_BESIDE (self), FALSE);
  return fits_beside (self, gtk_widget_get_width (GTK_WIDGET (self)));
}
