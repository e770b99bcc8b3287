/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-looks.h"

#include <adwaita.h>

#include "ff-compat.h"

#define RESOURCES "/org/fieldfare/Fieldfare/looks/"

struct _FfLooks {
  GObject parent_instance;

  char *chosen;
  char *before; /* what was chosen before daylight or night */
  FfLook now;
  FfPalette palette; /* for drawings in this look */
  GtkCssProvider *colours; /* the palette of the look */
  GtkCssProvider *extra;   /* rules that only this look has */
};

G_DEFINE_FINAL_TYPE (FfLooks, ff_looks, G_TYPE_OBJECT)

enum { PROP_0, PROP_CHOSEN, PROP_NOW, N_PROPS };

static GParamSpec *properties[N_PROPS];

static const struct {
  const char *name;
  AdwColorScheme scheme;
  const char *extra;
  const FfPalette *palette;
} looks[FF_N_LOOKS] = {
  [FF_LOOK_LIGHT] = { "light", ADW_COLOR_SCHEME_FORCE_LIGHT, NULL, &ff_palette_light },
  [FF_LOOK_DARK] = { "dark", ADW_COLOR_SCHEME_FORCE_DARK, NULL, &ff_palette_dark },
  [FF_LOOK_DAYLIGHT] = { "daylight", ADW_COLOR_SCHEME_FORCE_LIGHT, RESOURCES "daylight.css",
                         &ff_palette_daylight },
  [FF_LOOK_NIGHT] = { "night", ADW_COLOR_SCHEME_FORCE_DARK, RESOURCES "night.css",
                      &ff_palette_night },
};

/* The look of a name; FF_N_LOOKS for "follow". */
static FfLook
look_of_name (const char *name)
{
  for (guint i = 0; i < FF_N_LOOKS; i++)
    if (g_strcmp0 (looks[i].name, name) == 0)
      return (FfLook) i;
  return FF_N_LOOKS;
}

static void
apply (FfLooks *self, FfLook now)
{
  g_autofree char *css = ff_hues_css (now);
  GdkRGBA sheet = ff_hue (now, FF_HUE_SHEET);

  self->now = now;
  self->palette = *looks[now].palette;
  self->palette.paper = (FfColour) { sheet.red, sheet.green, sheet.blue };
  ff_compat_load_css (self->colours, css);
  if (looks[now].extra != NULL)
    gtk_css_provider_load_from_resource (self->extra, looks[now].extra);
  else
    ff_compat_load_css (self->extra, "");
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_NOW]);
}

static void
resolve (FfLooks *self)
{
  AdwStyleManager *manager = adw_style_manager_get_default ();
  FfLook look = look_of_name (self->chosen);

  adw_style_manager_set_color_scheme (manager, look == FF_N_LOOKS ? ADW_COLOR_SCHEME_DEFAULT
                                                                  : looks[look].scheme);
  if (look == FF_N_LOOKS)
    look = adw_style_manager_get_dark (manager) ? FF_LOOK_DARK : FF_LOOK_LIGHT;
  if (look != self->now)
    apply (self, look);
}

static GtkCssProvider *
add_provider (GdkDisplay *display, guint above)
{
  GtkCssProvider *provider = gtk_css_provider_new ();

  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (provider),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION + above);
  return provider;
}

static void
ff_looks_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_CHOSEN)
    ff_looks_choose (FF_LOOKS (object), g_value_get_string (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_looks_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  FfLooks *self = FF_LOOKS (object);

  if (id == PROP_CHOSEN)
    g_value_set_string (value, self->chosen);
  else if (id == PROP_NOW)
    g_value_set_int (value, (int) self->now);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_looks_finalize (GObject *object)
{
  FfLooks *self = FF_LOOKS (object);

  g_clear_object (&self->colours);
  g_clear_object (&self->extra);
  g_free (self->chosen);
  g_free (self->before);
  G_OBJECT_CLASS (ff_looks_parent_class)->finalize (object);
}

static void
ff_looks_class_init (FfLooksClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->set_property = ff_looks_set_property;
  object_class->get_property = ff_looks_get_property;
  object_class->finalize = ff_looks_finalize;
  properties[PROP_CHOSEN] = g_param_spec_string (
      "chosen", NULL, NULL, "follow",
      G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  properties[PROP_NOW] = g_param_spec_int ("now", NULL, NULL, 0, FF_N_LOOKS - 1, 0,
                                           G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
ff_looks_init (FfLooks *self)
{
  GdkDisplay *display = gdk_display_get_default ();
  g_autoptr (GtkCssProvider) frame = add_provider (display, 1);

  gtk_css_provider_load_from_resource (frame, RESOURCES "frame.css");
  self->colours = add_provider (display, 2);
  self->extra = add_provider (display, 3);
  self->chosen = g_strdup ("follow");
  self->before = g_strdup ("follow");
  self->now = FF_N_LOOKS;
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark", G_CALLBACK (resolve),
                           self, G_CONNECT_SWAPPED);
  resolve (self);
}

/* Public */

FfLooks *
ff_looks_get (void)
{
  static FfLooks *the_looks;

  if (the_looks == NULL)
    the_looks = g_object_new (FF_TYPE_LOOKS, NULL);
  return the_looks;
}

FfLook
ff_looks_now (void)
{
  return ff_looks_get ()->now;
}

const char *
ff_looks_chosen (FfLooks *self)
{
  g_return_val_if_fail (FF_IS_LOOKS (self), "follow");
  return self->chosen;
}

void
ff_looks_choose (FfLooks *self, const char *chosen)
{
  g_autofree char *wanted = NULL;

  g_return_if_fail (FF_IS_LOOKS (self));
  /* A word that is none of ours (an old setting) follows the desktop. */
  wanted = g_strdup (look_of_name (chosen) != FF_N_LOOKS ? chosen : "follow");
  if (g_str_equal (self->chosen, wanted))
    return;
  if (look_of_name (self->chosen) != FF_LOOK_DAYLIGHT
      && look_of_name (self->chosen) != FF_LOOK_NIGHT)
    {
      g_free (self->before);
      self->before = g_strdup (self->chosen);
    }
  g_free (self->chosen);
  self->chosen = g_steal_pointer (&wanted);
  resolve (self);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_CHOSEN]);
}

void
ff_looks_toggle (FfLooks *self, const char *chosen)
{
  g_return_if_fail (FF_IS_LOOKS (self));
  ff_looks_choose (self, g_str_equal (self->chosen, chosen) ? self->before : chosen);
}

GdkRGBA
ff_looks_hue (FfHue hue)
{
  return ff_hue (ff_looks_now (), hue);
}

const FfPalette *
ff_looks_palette (void)
{
  return &ff_looks_get ()->palette;
}

void
ff_looks_redraw (GtkWidget *widget)
{
  g_signal_connect_object (ff_looks_get (), "notify::now", G_CALLBACK (gtk_widget_queue_draw),
                           widget, G_CONNECT_SWAPPED);
}
