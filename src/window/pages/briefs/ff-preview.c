/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-preview.h"

#include <math.h>

#define LEAST_WIDTH 48
#define SMALL_WISH 72

struct _FfPreview {
  GtkWidget parent_instance;

  FfProof *proof;
  guint page;
  gboolean sharp;
  int wish;
  double times; /* as wide as its own width; what is beyond is panned to */
  double pan;   /* 0: its left side is seen, 1: its right side */
  double shape;        /* height over width */
  GdkTexture *picture; /* sharp: of the size that it has on the screen */
};

G_DEFINE_FINAL_TYPE (FfPreview, ff_preview, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_SHARP, PROP_WISH, N_PROPS };

static GParamSpec *properties[N_PROPS];

/* Drawing */

static gboolean
is_of_size (GdkTexture *picture, int width, int height)
{
  return picture != NULL && gdk_texture_get_width (picture) == width
         && gdk_texture_get_height (picture) == height;
}

/* As the proof brought it, or drawn here when the page was turned or another size is wanted. */
static GdkTexture *
sharp_picture (FfPreview *self)
{
  int width, height;

  ff_preview_get_pixels (self, &width, &height);
  if (self->proof->large_page == self->page && is_of_size (self->proof->large, width, height))
    return self->proof->large;
  if (is_of_size (self->picture, width, height))
    return self->picture;
  g_clear_object (&self->picture);
  self->picture = ff_proof_picture (self->proof, self->page, width, height);
  return self->picture;
}

static GdkTexture *
picture_of (FfPreview *self)
{
  if (self->sharp)
    return sharp_picture (self);
  return self->page < self->proof->small->len
             ? g_ptr_array_index (self->proof->small, self->page)
             : NULL;
}

/* Overrides */

static void
ff_preview_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FfPreview *self = FF_PREVIEW (widget);
  const double width = gtk_widget_get_width (widget);
  const graphene_rect_t area
      = GRAPHENE_RECT_INIT ((float) (-self->pan * (self->times - 1) * width), 0,
                            (float) (width * self->times),
                            (float) gtk_widget_get_height (widget));
  GdkTexture *picture;

  if (area.size.width < 1 || area.size.height < 1)
    return;
  gtk_snapshot_append_color (snapshot, &(GdkRGBA) { 1, 1, 1, 1 }, &area);
  picture = self->proof != NULL ? picture_of (self) : NULL;
  if (picture != NULL)
    gtk_snapshot_append_texture (snapshot, picture, &area);
}

static GtkSizeRequestMode
ff_preview_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
ff_preview_measure (GtkWidget *widget,
                    GtkOrientation orientation,
                    int for_size,
                    int *ret_minimum,
                    int *ret_natural,
                    int *ret_minimum_baseline,
                    int *ret_natural_baseline)
{
  FfPreview *self = FF_PREVIEW (widget);
  const int least = MIN (self->wish, LEAST_WIDTH);
  int width;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *ret_minimum = least;
      *ret_natural = self->wish;
      return;
    }
  /* A small one fills what it is given, the large one stands in the middle of it. */
  width = for_size > 0 ? for_size : least;
  if (self->sharp)
    width = MIN (width, self->wish);
  *ret_minimum = *ret_natural = (int) lround (width * self->times * self->shape);
}

static void
ff_preview_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FfPreview *self = FF_PREVIEW (object);

  if (id == PROP_SHARP)
    self->sharp = g_value_get_boolean (value);
  else if (id == PROP_WISH)
    ff_preview_set_wish (self, g_value_get_int (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_preview_dispose (GObject *object)
{
  FfPreview *self = FF_PREVIEW (object);

  g_clear_object (&self->picture);
  g_clear_pointer (&self->proof, ff_proof_unref);
  G_OBJECT_CLASS (ff_preview_parent_class)->dispose (object);
}

static void
ff_preview_class_init (FfPreviewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS;

  object_class->set_property = ff_preview_set_property;
  object_class->dispose = ff_preview_dispose;
  widget_class->snapshot = ff_preview_snapshot;
  widget_class->get_request_mode = ff_preview_get_request_mode;
  widget_class->measure = ff_preview_measure;
  properties[PROP_SHARP] = g_param_spec_boolean ("sharp", NULL, NULL, FALSE, flags);
  properties[PROP_WISH] = g_param_spec_int ("wish", NULL, NULL, 1, G_MAXINT, SMALL_WISH, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  gtk_widget_class_set_css_name (widget_class, "preview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ff_preview_init (FfPreview *self)
{
  self->wish = SMALL_WISH;
  self->times = 1;
  self->shape = 297.0 / 210; /* until there is a page: ISO 216 */
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

/* Public */

GtkWidget *
ff_preview_new (gboolean sharp)
{
  return g_object_new (FF_TYPE_PREVIEW, "sharp", sharp, NULL);
}

static void
take_shape (FfPreview *self)
{
  double width, height;

  ff_brief_page_size (self->proof->brief, &width, &height);
  if (self->shape == height / width)
    return;
  self->shape = height / width;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
ff_preview_show (FfPreview *self, FfProof *proof, guint page)
{
  g_autofree char *words = NULL;

  g_return_if_fail (FF_IS_PREVIEW (self));
  if (proof != NULL)
    ff_proof_ref (proof);
  g_clear_pointer (&self->proof, ff_proof_unref);
  g_clear_object (&self->picture);
  self->proof = proof;
  self->page = page;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (proof == NULL)
    return;
  take_shape (self);
  words = ff_proof_page_words (proof, page);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}

void
ff_preview_set_wish (FfPreview *self, int width)
{
  g_return_if_fail (FF_IS_PREVIEW (self));
  if (self->wish == width)
    return;
  self->wish = width;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
ff_preview_set_times (FfPreview *self, double times)
{
  g_return_if_fail (FF_IS_PREVIEW (self));
  if (self->times == times)
    return;
  self->times = times;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
ff_preview_pan (FfPreview *self, double by)
{
  g_return_if_fail (FF_IS_PREVIEW (self));
  self->pan = CLAMP (self->pan + by, 0, 1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
ff_preview_get_pixels (FfPreview *self, int *ret_width, int *ret_height)
{
  const int scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));

  g_return_if_fail (FF_IS_PREVIEW (self));
  *ret_width = (int) lround (gtk_widget_get_width (GTK_WIDGET (self)) * self->times) * scale;
  *ret_height = gtk_widget_get_height (GTK_WIDGET (self)) * scale;
}

double
ff_preview_get_shape (FfPreview *self)
{
  g_return_val_if_fail (FF_IS_PREVIEW (self), 1);
  return self->shape;
}
