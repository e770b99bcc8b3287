/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-ruler-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-looks.h"
#include "ff-pixels.h"
#include "ff-stop-ruler.h"

#define LEAST_WIDTH 260
#define NATURAL_WIDTH 800

struct _FfRulerView {
  GtkWidget parent_instance;

  gboolean shown;
  FfStopRulerFacts facts;
  char *values[FF_N_PIECES];
  char *light, *gap, *spoken;
};

G_DEFINE_FINAL_TYPE (FfRulerView, ff_ruler_view, GTK_TYPE_WIDGET)

enum { BY, MOVE, FIX, FIT, LETTER, N_SIGNALS };

static guint signals[N_SIGNALS];

static void
forget (FfRulerView *self)
{
  for (int i = 0; i < FF_N_PIECES; i++)
    g_clear_pointer (&self->values[i], g_free);
  g_clear_pointer (&self->light, g_free);
  g_clear_pointer (&self->gap, g_free);
  g_clear_pointer (&self->spoken, g_free);
}

/* Callbacks */

static gboolean
move (FfRulerView *self, int steps)
{
  g_signal_emit (self, signals[MOVE], 0, steps);
  return GDK_EVENT_STOP;
}

static gboolean
by (FfRulerView *self, int pieces)
{
  g_signal_emit (self, signals[BY], 0, pieces);
  return GDK_EVENT_STOP;
}

/* The ruler runs from left to right in every language, and so do the keys. */
static gboolean
on_arrow (FfRulerView *self, guint key)
{
  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return by (self, -1);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return by (self, 1);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return move (self, 1);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return move (self, -1);
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static gboolean
on_key (FfRulerView *self, guint key, guint code, GdkModifierType state)
{
  guint32 letter = gdk_keyval_to_unicode (gdk_keyval_to_lower (key));

  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  if (letter == 'f')
    {
      g_signal_emit (self, signals[FIX], 0);
      return GDK_EVENT_STOP;
    }
  if (letter >= '0' && letter <= '9')
    {
      g_signal_emit (self, signals[FIT], 0, (int) (letter - '0'));
      return GDK_EVENT_STOP;
    }
  if (letter >= 'a' && letter <= 'z')
    {
      g_signal_emit (self, signals[LETTER], 0,
                     (int) ((state & GDK_SHIFT_MASK) != 0 ? letter - 'a' + 'A' : letter));
      return GDK_EVENT_STOP;
    }
  return on_arrow (self, key);
}

static void
on_tap (FfRulerView *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

/* Overrides */

static void
ff_ruler_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FfRulerView *self = FF_RULER_VIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  PangoFontDescription *font;
  cairo_t *cr;
  double em;

  if (!self->shown || width < 1)
    return;
  font = ff_font_in_pixels (widget, &em);
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  ff_stop_ruler_draw (cr, ff_looks_palette (), font, width, &self->facts);
  cairo_destroy (cr);
  pango_font_description_free (font);
}

static void
ff_ruler_view_measure (GtkWidget *widget,
                       GtkOrientation orientation,
                       int for_size,
                       int *ret_minimum,
                       int *ret_natural,
                       int *ret_minimum_baseline,
                       int *ret_natural_baseline)
{
  *ret_minimum_baseline = *ret_natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *ret_minimum = LEAST_WIDTH;
      *ret_natural = NATURAL_WIDTH;
      return;
    }
  *ret_minimum = *ret_natural = (int) ceil (ff_stop_ruler_height (ff_em_in_pixels (widget)));
}

static void
ff_ruler_view_finalize (GObject *object)
{
  forget (FF_RULER_VIEW (object));
  G_OBJECT_CLASS (ff_ruler_view_parent_class)->finalize (object);
}

static guint
number_signal (const char *name)
{
  return g_signal_new (name, FF_TYPE_RULER_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 1, G_TYPE_INT);
}

static void
ff_ruler_view_class_init (FfRulerViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = ff_ruler_view_finalize;
  widget_class->snapshot = ff_ruler_view_snapshot;
  widget_class->measure = ff_ruler_view_measure;
  signals[BY] = number_signal ("by");
  signals[MOVE] = number_signal ("move");
  signals[FIT] = number_signal ("fit");
  signals[LETTER] = number_signal ("letter");
  signals[FIX] = g_signal_new ("fix", FF_TYPE_RULER_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "stopruler");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ff_ruler_view_init (FfRulerView *self)
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

static void
speak (FfRulerView *self, const FfLightStudy *study, const FfRuler *ruler, double gap)
{
  g_autofree char *piece = ff_light_words_piece (study, ruler, ruler->chosen);
  g_autofree char *words = ff_light_words_gap (gap);

  g_free (self->spoken);
  /* Translators: read aloud: the chosen piece of the ruler with its value, the light, the gap. */
  self->spoken = g_strdup_printf (_ ("Stop ruler: %s. %s. %s."), piece, self->light, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  self->spoken, -1);
}

void
ff_ruler_view_show (FfRulerView *self,
                    const FfLightStudy *study,
                    const FfRuler *ruler,
                    const FfExplainQuery *light)
{
  FfAdviseQuery query;
  double gap;

  g_return_if_fail (FF_IS_RULER_VIEW (self));
  self->shown = study != NULL;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (study == NULL)
    return;
  forget (self);
  query = ff_light_study_advise (study, light->ev100);
  gap = ff_ruler_gap (ruler, &query);
  self->light = ff_light_words_level (light);
  self->gap = ff_light_words_gap_number (gap);
  self->facts = (FfStopRulerFacts) { light->ev100, light->low_ev100, light->high_ev100,
                                     .chosen = ruler->chosen, .light = self->light,
                                     .gap = self->gap };
  for (int i = 0; i < FF_N_PIECES; i++)
    {
      self->values[i] = ff_light_words_value (study, ruler, (FfRulerPiece) i);
      self->facts.values[i] = self->values[i];
      self->facts.eats[i] = ff_ruler_eats (ruler, &query, (FfRulerPiece) i);
      self->facts.fixed[i] = ruler->fixed[i];
    }
  speak (self, study, ruler, gap);
}

const char *
ff_ruler_view_spoken (FfRulerView *self)
{
  g_return_val_if_fail (FF_IS_RULER_VIEW (self), NULL);
  return self->spoken;
}
