/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-hours-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-light-hours.h"
#include "ff-looks.h"
#include "ff-number.h"
#include "ff-pixels.h"

#define LEAST_WIDTH 260
#define NATURAL_WIDTH 800
#define STEP_S (5 * FF_MINUTE)
#define HOUR_S (60 * FF_MINUTE)

struct _FfHoursView {
  GtkWidget parent_instance;

  const FfLightStudy *study; /* borrowed */
  gint64 at;
};

G_DEFINE_FINAL_TYPE (FfHoursView, ff_hours_view, GTK_TYPE_WIDGET)

static guint picked_signal;

/* What is said of it */

static char *
need_at (const FfLightStudy *study, gint64 at)
{
  guint i = (guint) CLAMP ((at - study->from) / study->step_s, 0, (gint64) study->n_samples - 1);
  double need = study->need_stops[i];
  g_autofree char *stops = ff_stops_format (fabs (need));

  if (isnan (need))
    return g_strdup (_ ("stills take any shutter"));
  return need < 0 ? g_strdup_printf (_ ("%s too dark already"), stops)
                  : g_strdup_printf (_ ("needs %s"), stops);
}

static void
speak (FfHoursView *self)
{
  g_autofree char *clock
      = ff_instant_clock ((double) self->at, ff_day_zone (self->study->query.day));
  g_autofree char *need = need_at (self->study, self->at);
  g_autofree char *name = NULL;
  g_autoptr (GString) all = g_string_new (NULL);

  for (guint i = 0; i < self->study->hours->len; i++)
    {
      const FfStudyHours *hours = g_ptr_array_index (self->study->hours, i);

      g_string_append_printf (all, "%s%s: %s", i > 0 ? " " : "", hours->name, hours->words);
    }
  /* Translators: read aloud: the drawing of the need over the day; clock time and need there. */
  name = g_strdup_printf (_ ("The day: at %s %s"), clock, need);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, all->str, -1);
}

/* Callbacks */

static gboolean
pick (FfHoursView *self, gint64 at)
{
  if (self->study != NULL)
    g_signal_emit (self, picked_signal, 0, CLAMP (at, self->study->from, self->study->to));
  return GDK_EVENT_STOP;
}

/* Time runs from left to right in every language. */
static gboolean
on_key (FfHoursView *self, guint key, guint code, GdkModifierType state)
{
  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return pick (self, (self->at - 1) / STEP_S * STEP_S);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return pick (self, (self->at / STEP_S + 1) * STEP_S);
    case GDK_KEY_Page_Up:
    case GDK_KEY_KP_Page_Up:
      return pick (self, self->at - HOUR_S);
    case GDK_KEY_Page_Down:
    case GDK_KEY_KP_Page_Down:
      return pick (self, self->at + HOUR_S);
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
on_tap (FfHoursView *self, int presses, double x, double y)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (self->study == NULL)
    return;
  pick (self, ff_light_hours_at (self->study, ff_em_in_pixels (GTK_WIDGET (self)),
                                 gtk_widget_get_width (GTK_WIDGET (self)), x));
}

/* Overrides */

static void
ff_hours_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FfHoursView *self = FF_HOURS_VIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  PangoFontDescription *font;
  cairo_t *cr;
  double em;

  if (self->study == NULL || width < 1)
    return;
  font = ff_font_in_pixels (widget, &em);
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  ff_light_hours_draw (cr, ff_looks_palette (), font, width, self->study, self->at);
  cairo_destroy (cr);
  pango_font_description_free (font);
}

static void
ff_hours_view_measure (GtkWidget *widget,
                       GtkOrientation orientation,
                       int for_size,
                       int *ret_minimum,
                       int *ret_natural,
                       int *ret_minimum_baseline,
                       int *ret_natural_baseline)
{
  FfHoursView *self = FF_HOURS_VIEW (widget);

  *ret_minimum_baseline = *ret_natural_baseline = -1;
  *ret_minimum = *ret_natural = 0;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *ret_minimum = LEAST_WIDTH;
      *ret_natural = NATURAL_WIDTH;
    }
  else if (self->study != NULL)
    *ret_minimum = *ret_natural
        = (int) ceil (ff_light_hours_height (self->study, ff_em_in_pixels (widget)));
}

static void
ff_hours_view_class_init (FfHoursViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = ff_hours_view_snapshot;
  widget_class->measure = ff_hours_view_measure;
  picked_signal = g_signal_new ("picked", FF_TYPE_HOURS_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
  gtk_widget_class_set_css_name (widget_class, "lighthours");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ff_hours_view_init (FfHoursView *self)
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
}

/* Public */

void
ff_hours_view_show (FfHoursView *self, const FfLightStudy *study, gint64 at)
{
  g_return_if_fail (FF_IS_HOURS_VIEW (self));
  if (self->study != study)
    gtk_widget_queue_resize (GTK_WIDGET (self));
  self->study = study;
  self->at = at;
  if (study != NULL)
    speak (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
