/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-measure-form.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-columns.h"
#include "ff-entry.h"
#include "ff-limit-kind.h"
#include "ff-number.h"
#include "ff-pick.h"

struct _FfMeasureForm {
  GtkBox parent_instance;

  GPtrArray *kinds; /* const FfLimitKind *, as in the choice */
  FfPick *kind, *unit, *answer;
  FfEntry *value, *height, *note;
};

G_DEFINE_FINAL_TYPE (FfMeasureForm, ff_measure_form, GTK_TYPE_BOX)

enum { ENTER, N_SIGNALS };

static guint signals[N_SIGNALS];

/* What a crew measures at the pad stands first. */
static const char *const usual[] = { "gust",       "mean-wind", "air-temperature",
                                     "visibility", "cloud-base", "rain",
                                     "icing",      "battery-temperature" };

static const FfLimitKind *
kind_of (FfMeasureForm *self)
{
  return g_ptr_array_index (self->kinds, (guint) MAX (ff_pick_get_value (self->kind), 0));
}

static void
list_kinds (FfMeasureForm *self)
{
  const FfLimitKind *kind;

  for (guint i = 0; i < G_N_ELEMENTS (usual); i++)
    g_ptr_array_add (self->kinds, (gpointer) ff_limit_kind_find (usual[i]));
  for (guint i = 0; (kind = ff_limit_kind_at (i)) != NULL; i++)
    if (!g_ptr_array_find (self->kinds, kind, NULL))
      g_ptr_array_add (self->kinds, (gpointer) kind);
}

static void
fill_kinds (FfMeasureForm *self)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new ();

  for (guint i = 0; i < self->kinds->len; i++)
    g_ptr_array_add (texts,
                     (gpointer) ff_limit_kind_text (g_ptr_array_index (self->kinds, i)));
  g_ptr_array_add (texts, NULL);
  ff_pick_set_texts (self->kind, (const char *const *) texts->pdata);
  ff_pick_set_value (self->kind, 0);
}

static gboolean
is_wind (const FfLimitKind *kind)
{
  return g_str_equal (kind->token, "gust") || g_str_equal (kind->token, "mean-wind");
}

/* The units of the kind; yes and no where it has none. */
static void
show_kind (FfMeasureForm *self)
{
  const FfLimitKind *kind = kind_of (self);
  const gboolean flag = kind->dimension == FF_DIMENSION_NONE;
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();
  const FfUnit *unit;

  for (guint i = 0; (unit = ff_unit_at (kind->dimension, i)) != NULL; i++)
    g_ptr_array_add (labels, (gpointer) unit->label);
  g_ptr_array_add (labels, NULL);
  ff_pick_set_texts (self->unit, (const char *const *) labels->pdata);
  ff_pick_set_value (self->unit, 0);
  gtk_widget_set_visible (GTK_WIDGET (self->value), !flag);
  gtk_widget_set_visible (GTK_WIDGET (self->unit), !flag && labels->len > 2);
  gtk_widget_set_visible (GTK_WIDGET (self->answer), flag);
  gtk_widget_set_visible (GTK_WIDGET (self->height), is_wind (kind));
  ff_entry_complain (self->value, NULL);
}

/* ---- Reading ---- */

static gboolean
read_value (FfMeasureForm *self, const FfLimitKind *kind, FfMeasurement *made)
{
  const char *text = ff_entry_get_text (self->value);
  g_autoptr (GError) error = NULL;
  int minutes;

  if (kind->dimension == FF_DIMENSION_NONE)
    {
      made->value = ff_pick_get_value (self->answer) == 0 ? 1 : 0;
      return TRUE;
    }
  if (*text == '\0')
    ff_entry_complain (self->value, _ ("This is needed"));
  else if (kind->dimension == FF_DIMENSION_CLOCK)
    {
      if (ff_clock_parse (text, &minutes, &error))
        made->value = minutes;
    }
  else
    ff_number_parse (_ ("Value"), text, -1e6, 1e6, &made->value, &error);
  if (error != NULL)
    ff_entry_complain (self->value, error->message);
  return *text != '\0' && error == NULL;
}

static gboolean
read_height (FfMeasureForm *self, const FfLimitKind *kind, FfMeasurement *made)
{
  const char *text = ff_entry_get_text (self->height);
  g_autoptr (GError) error = NULL;

  if (is_wind (kind) && *text != '\0')
    ff_number_parse (_ ("Height"), text, 0, 1000, &made->height_m, &error);
  ff_entry_complain (self->height, error != NULL ? error->message : NULL);
  return error == NULL;
}

FfMeasurement *
ff_measure_form_read (FfMeasureForm *self, const char *job_id)
{
  const FfLimitKind *kind = kind_of (self);
  const FfUnit *unit = ff_unit_at (kind->dimension, (guint) MAX (ff_pick_get_value (self->unit), 0));
  g_autoptr (FfMeasurement) made = ff_measurement_new (job_id);

  ff_set_text (&made->kind, kind->token);
  ff_set_text (&made->unit, unit != NULL ? unit->label : "");
  ff_set_text (&made->note, ff_entry_get_text (self->note));
  if (!read_value (self, kind, made) || !read_height (self, kind, made))
    return NULL;
  return g_steal_pointer (&made);
}

void
ff_measure_form_kept (FfMeasureForm *self)
{
  ff_entry_reset (self->value, "");
  ff_entry_reset (self->note, "");
  ff_entry_complain (self->value, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (gtk_widget_get_visible (GTK_WIDGET (self->value))
                                         ? (gpointer) self->value : self->kind));
}

void
ff_measure_form_complain (FfMeasureForm *self, const char *sentence)
{
  ff_entry_complain (gtk_widget_get_visible (GTK_WIDGET (self->value)) ? self->value : self->note,
                     sentence);
}

void
ff_measure_form_pick (FfMeasureForm *self, const char *kind)
{
  guint at;

  if (!g_ptr_array_find (self->kinds, ff_limit_kind_find (kind), &at))
    return;
  ff_pick_set_value (self->kind, (int) at);
  show_kind (self);
}

/* ---- The widget ---- */

static void
on_enter (FfMeasureForm *self)
{
  g_signal_emit (self, signals[ENTER], 0);
}

static void
ff_measure_form_finalize (GObject *object)
{
  g_ptr_array_unref (FF_MEASURE_FORM (object)->kinds);
  G_OBJECT_CLASS (ff_measure_form_parent_class)->finalize (object);
}

static gboolean
ff_measure_form_grab_focus (GtkWidget *widget)
{
  FfMeasureForm *self = FF_MEASURE_FORM (widget);

  return gtk_widget_grab_focus (GTK_WIDGET (self->value))
         || gtk_widget_grab_focus (GTK_WIDGET (self->kind));
}

static void
ff_measure_form_class_init (FfMeasureFormClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ff_measure_form_finalize;
  GTK_WIDGET_CLASS (klass)->grab_focus = ff_measure_form_grab_focus;
  signals[ENTER] = g_signal_new ("enter", FF_TYPE_MEASURE_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
}

static FfPick *
pick_new (FfColumns *columns, const char *label)
{
  GtkWidget *pick = ff_pick_new (label, NULL);

  ff_columns_append (columns, pick, FALSE);
  return FF_PICK (pick);
}

static void
ff_measure_form_init (FfMeasureForm *self)
{
  const GCallback enter = G_CALLBACK (on_enter);
  GtkWidget *columns = ff_columns_new (11, 3);
  GtkWidget *button = gtk_button_new_with_mnemonic (_ ("_Keep it · Enter"));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 10);
  self->kinds = g_ptr_array_new ();
  self->kind = pick_new (FF_COLUMNS (columns), _ ("What was measured"));
  self->value = ff_columns_append_entry (FF_COLUMNS (columns), _ ("Value"),
                                         NULL, FALSE, enter, self);
  self->answer = pick_new (FF_COLUMNS (columns), _ ("Is there any?"));
  self->unit = pick_new (FF_COLUMNS (columns), _ ("Unit"));
  /* Translators: of an instrument that measures the wind, above ground. */
  self->height = ff_columns_append_entry (FF_COLUMNS (columns), _ ("Height of the sensor"),
                                          "m", FALSE, enter, self);
  self->note = ff_columns_append_entry (FF_COLUMNS (columns), _ ("Note"), NULL, FALSE, enter, self);
  ff_pick_set_texts (self->answer, (const char *[]){ _ ("yes"), _ ("no"), NULL });
  ff_pick_set_value (self->answer, 0);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_enter), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->kind, "picked", G_CALLBACK (show_kind), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self), columns);
  gtk_box_append (GTK_BOX (self), button);
  list_kinds (self);
  fill_kinds (self);
  show_kind (self);
}

GtkWidget *
ff_measure_form_new (void)
{
  return g_object_new (FF_TYPE_MEASURE_FORM, NULL);
}
