/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pack-travel.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-columns.h"
#include "ff-entry.h"
#include "ff-lines.h"
#include "ff-number.h"
#include "ff-pack-notes.h"
#include "ff-pick.h"

struct _FfPackTravel {
  GtkBox parent_instance;

  FfKeeper *keeper;
  char *picked;
  GPtrArray *names; /* of the carriers, as the pick has them */
  FfPick *carrier;
  GtkBox *words;
  GtkWidget *examples;
  FfEntry *name, *source, *read_on, *bands, *cabin;
};

G_DEFINE_FINAL_TYPE (FfPackTravel, ff_pack_travel, GTK_TYPE_BOX)

enum { CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

const char *
ff_pack_travel_carrier (FfPackTravel *self)
{
  return self->picked;
}

/* ---- The sheet ---- */

static void
add_text (FfPackTravel *self, const char *text, const char *css_class)
{
  gtk_box_append (self->words, ff_line_new (text, css_class));
}

static void
add_texts (FfPackTravel *self, const char *heading, const GPtrArray *texts)
{
  if (texts->len > 0 && heading != NULL)
    add_text (self, heading, "heading");
  for (guint i = 0; i < texts->len; i++)
    add_text (self, g_ptr_array_index (texts, i), NULL);
}

static void
add_rows (FfPackTravel *self, const FfTravelSheet *sheet)
{
  for (guint i = 0; i < sheet->rows->len; i++)
    {
      const FfTravelRow *row = g_ptr_array_index (sheet->rows, i);
      g_autofree char *energy
          = isfinite (row->energy_wh) ? ff_number_format (row->energy_wh, 1) : g_strdup ("–");
      g_autofree char *words = g_strdup_printf (_ ("%s %s  %s Wh  %s"), row->person >= 0 ? "■" : "✕",
                                                row->label, energy, row->words);

      add_text (self, words, NULL);
    }
}

static void
show_sheet (FfPackTravel *self, const FfTravelSheet *sheet)
{
  g_autofree char *source
      = g_strdup_printf (sheet->example ? _ ("Example, dated %s: %s. Enter your own carrier’s rule.")
                                        : _ ("Read %s: %s."),
                         sheet->read_on, sheet->source);

  add_texts (self, NULL, sheet->cautions);
  add_text (self, source, sheet->example ? "heed" : "soft");
  add_rows (self, sheet);
  add_texts (self, _ ("For the letter that asks for approval"), sheet->approval);
  add_texts (self, _ ("To look at"), sheet->remarks);
}

/* The rules there are; what was picked stays picked while it is there. */
static void
show_carriers (FfPackTravel *self, const char *shown)
{
  FfStore *store = ff_keeper_store (self->keeper);
  g_autoptr (GPtrArray) carriers = store != NULL ? ff_carriers_load (store, NULL) : NULL;
  int chosen = -1;

  g_ptr_array_set_size (self->names, 0);
  for (guint i = 0; carriers != NULL && i < carriers->len; i++)
    {
      const FfCarrier *carrier = g_ptr_array_index (carriers, i);

      if (g_strcmp0 (carrier->name, shown) == 0)
        chosen = (int) i;
      g_ptr_array_add (self->names, g_strdup (carrier->name));
    }
  g_ptr_array_add (self->names, NULL);
  ff_pick_set_texts (self->carrier, (const char *const *) self->names->pdata);
  ff_pick_set_value (self->carrier, chosen);
  gtk_widget_set_visible (GTK_WIDGET (self->carrier), self->names->len > 1);
  gtk_widget_set_visible (self->examples, self->names->len <= 1);
}

void
ff_pack_travel_show (FfPackTravel *self,
                     FfKeeper *keeper,
                     const FfTravelSheet *sheet,
                     const char *why)
{
  g_set_object (&self->keeper, keeper);
  ff_lines_clear (self->words);
  show_carriers (self, sheet != NULL ? sheet->carrier : NULL);
  if (sheet != NULL)
    show_sheet (self, sheet);
  else if (why != NULL)
    add_text (self, why, NULL);
}

/* ---- Entering a rule ---- */

static void
on_picked (FfPackTravel *self, int value)
{
  if (value < 0 || value + 1 >= (int) self->names->len)
    return;
  g_free (self->picked);
  self->picked = g_strdup (g_ptr_array_index (self->names, (guint) value));
  g_signal_emit (self, signals[CHANGED], 0);
}

static gboolean
read_bands (FfPackTravel *self, FfCarrier *carrier)
{
  g_auto (GStrv) parts = g_strsplit (ff_entry_get_text (self->bands), ",", -1);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; parts[i] != NULL && error == NULL; i++)
    if (*g_strstrip (parts[i]) != '\0')
      ff_travel_read_band (carrier, parts[i], &error);
  ff_entry_complain (self->bands, error != NULL ? error->message : NULL);
  return error == NULL;
}

static gboolean
read_cabin (FfPackTravel *self, FfCarrier *carrier)
{
  const char *text = ff_entry_get_text (self->cabin);
  g_autoptr (GError) error = NULL;

  if (*text != '\0')
    ff_number_parse (_ ("cabin weight"), text, 0.1, 100, &carrier->cabin_kg, &error);
  ff_entry_complain (self->cabin, error != NULL ? error->message : NULL);
  return error == NULL;
}

static void
on_add (FfPackTravel *self)
{
  g_autoptr (FfCarrier) carrier = ff_carrier_new ();
  g_autoptr (GError) error = NULL;
  FfStore *store = self->keeper != NULL ? ff_keeper_store (self->keeper) : NULL;

  carrier->spares_in_all = FF_CARRIER_NO_LIMIT;
  ff_set_text (&carrier->name, ff_entry_get_text (self->name));
  ff_set_text (&carrier->source, ff_entry_get_text (self->source));
  ff_set_text (&carrier->read_on, ff_entry_get_text (self->read_on));
  if (store == NULL || !read_bands (self, carrier) || !read_cabin (self, carrier))
    return;
  if (!ff_carrier_save (store, carrier, &error))
    {
      ff_entry_complain (self->name, error->message);
      return;
    }
  ff_entry_complain (self->name, NULL);
  g_free (self->picked);
  self->picked = g_strdup (carrier->name);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
on_examples (FfPackTravel *self)
{
  FfStore *store = self->keeper != NULL ? ff_keeper_store (self->keeper) : NULL;

  if (store != NULL && ff_travel_add_examples (store, NULL))
    g_signal_emit (self, signals[CHANGED], 0);
}

/* ---- The widget ---- */

static void
ff_pack_travel_dispose (GObject *object)
{
  FfPackTravel *self = FF_PACK_TRAVEL (object);

  g_clear_object (&self->keeper);
  g_clear_pointer (&self->names, g_ptr_array_unref);
  g_clear_pointer (&self->picked, g_free);
  G_OBJECT_CLASS (ff_pack_travel_parent_class)->dispose (object);
}

static void
ff_pack_travel_class_init (FfPackTravelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ff_pack_travel_dispose;
  signals[CHANGED] = g_signal_new ("changed", FF_TYPE_PACK_TRAVEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static FfEntry *
field_new (FfPackTravel *self, FfColumns *columns, const char *label, const char *unit, gboolean wide)
{
  GtkWidget *entry = ff_entry_new (label, unit);

  g_signal_connect_object (entry, "entered", G_CALLBACK (on_add), self, G_CONNECT_SWAPPED);
  ff_columns_append (columns, entry, wide);
  return FF_ENTRY (entry);
}

static GtkWidget *
form_new (FfPackTravel *self)
{
  GtkWidget *expander = gtk_expander_new (_ ("Enter a carrier’s rule"));
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  GtkWidget *columns = ff_columns_new (14, 2);
  GtkWidget *add = gtk_button_new_with_label (_ ("Enter this rule"));

  self->name = field_new (self, FF_COLUMNS (columns), _ ("Carrier"), NULL, FALSE);
  self->read_on = field_new (self, FF_COLUMNS (columns), _ ("Read on (YYYY-MM-DD)"), NULL, FALSE);
  self->source = field_new (self, FF_COLUMNS (columns), _ ("Source"), NULL, TRUE);
  self->bands = field_new (self, FF_COLUMNS (columns),
                           _ ("Size bands (100:20, 160:2:approval)"), NULL, TRUE);
  /* Translators: how many kilograms one person may take into the cabin. */
  self->cabin = field_new (self, FF_COLUMNS (columns), _ ("Cabin weight each"), "kg", FALSE);
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  g_signal_connect_object (add, "clicked", G_CALLBACK (on_add), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), columns);
  gtk_box_append (GTK_BOX (box), add);
  gtk_expander_set_child (GTK_EXPANDER (expander), box);
  return expander;
}

static void
ff_pack_travel_init (FfPackTravel *self)
{
  self->names = g_ptr_array_new_with_free_func (g_free);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 10);
  self->carrier = FF_PICK (ff_pick_new (_ ("Whose rule"), NULL));
  g_signal_connect_object (self->carrier, "picked", G_CALLBACK (on_picked), self,
                           G_CONNECT_SWAPPED);
  self->words = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  self->examples = gtk_button_new_with_label (_ ("Begin with the published examples"));
  gtk_widget_set_halign (self->examples, GTK_ALIGN_START);
  g_signal_connect_object (self->examples, "clicked", G_CALLBACK (on_examples), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->carrier));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->words));
  gtk_box_append (GTK_BOX (self), self->examples);
  gtk_box_append (GTK_BOX (self), form_new (self));
}
