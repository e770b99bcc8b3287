/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-with.h"

#include <glib/gi18n-lib.h>

#include "ff-entry.h"
#include "ff-flow.h"
#include "ff-gear-parts.h"

struct _FfGearWith {
  GtkWidget parent_instance;

  FfKeeper *keeper;
  char *id;
  GtkWidget *sheet;
  FfFlow *labels;
  FfEntry *add;
};

G_DEFINE_FINAL_TYPE (FfGearWith, ff_gear_with, GTK_TYPE_WIDGET)

static const FfItem *
item_labelled (FfGearWith *self, const char *label)
{
  GPtrArray *items = ff_keeper_items (self->keeper);

  for (guint i = 0; i < items->len; i++)
    if (g_ascii_strcasecmp (((FfItem *) g_ptr_array_index (items, i))->label, label) == 0)
      return g_ptr_array_index (items, i);
  return NULL;
}

static gboolean
save (FfGearWith *self, const FfItem *item)
{
  /* Translators: what can be undone: what an item, by its label, can't go without. */
  g_autofree char *what = g_strdup_printf (_ ("What goes with %s changed"), item->label);
  g_autoptr (GError) error = NULL;

  ff_keeper_save_item (self->keeper, item, what, &error);
  ff_entry_complain (self->add, error != NULL ? error->message : NULL);
  return error == NULL;
}

static void
on_entered (FfGearWith *self)
{
  g_autofree char *label = g_strstrip (g_strdup (ff_entry_get_text (self->add)));
  const FfItem *other = item_labelled (self, label);
  g_autofree char *other_id = other != NULL ? g_strdup (other->id) : NULL;
  g_autoptr (FfItem) item = ff_keeper_dup_item (self->keeper, self->id);

  if (item == NULL || *label == '\0')
    return;
  if (other_id == NULL || g_str_equal (other_id, item->id))
    {
      ff_entry_complain (self->add, _ ("No other item has this label: write it as it stands there"));
      return;
    }
  ff_item_add_with (item, other_id);
  if (save (self, item))
    ff_entry_reset (self->add, "");
}

static void
on_removed (FfGearWith *self, GtkButton *button)
{
  g_autoptr (FfItem) item = ff_keeper_dup_item (self->keeper, self->id);

  if (item == NULL)
    return;
  ff_item_remove_with (item, g_object_get_data (G_OBJECT (button), "id"));
  gtk_widget_grab_focus (GTK_WIDGET (self->add));
  save (self, item);
}

static void
add_label (FfGearWith *self, const FfItem *other)
{
  /* Translators: a button: takes this item, by its label, out of what goes with another. */
  g_autofree char *spoken = g_strdup_printf (_ ("Take %s away"), other->label);
  g_autofree char *text = g_strdup_printf ("%s  ✕", other->label);
  GtkWidget *button = gtk_button_new_with_label (text);

  g_object_set_data_full (G_OBJECT (button), "id", g_strdup (other->id), g_free);
  gtk_widget_set_tooltip_text (button, spoken);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                  -1);
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_removed), self, G_CONNECT_SWAPPED);
  ff_flow_append (self->labels, button, -1);
}

static void
ff_gear_with_dispose (GObject *object)
{
  FfGearWith *self = FF_GEAR_WITH (object);

  g_clear_pointer (&self->sheet, gtk_widget_unparent);
  g_clear_object (&self->keeper);
  G_OBJECT_CLASS (ff_gear_with_parent_class)->dispose (object);
}

static void
ff_gear_with_finalize (GObject *object)
{
  g_free (FF_GEAR_WITH (object)->id);
  G_OBJECT_CLASS (ff_gear_with_parent_class)->finalize (object);
}

static void
ff_gear_with_class_init (FfGearWithClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ff_gear_with_dispose;
  G_OBJECT_CLASS (klass)->finalize = ff_gear_with_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
ff_gear_with_init (FfGearWith *self)
{
  self->sheet = ff_gear_sheet_new (_ ("It can't go without"));
  self->labels = FF_FLOW (ff_flow_new (8, 8));
  self->add = FF_ENTRY (ff_entry_new (_ ("Add an item by its label, then Enter"), NULL));
  gtk_box_append (GTK_BOX (self->sheet), GTK_WIDGET (self->labels));
  gtk_box_append (GTK_BOX (self->sheet), GTK_WIDGET (self->add));
  g_signal_connect_object (self->add, "entered", G_CALLBACK (on_entered), self, G_CONNECT_SWAPPED);
  gtk_widget_set_parent (self->sheet, GTK_WIDGET (self));
}

void
ff_gear_with_show (FfGearWith *self, FfKeeper *keeper, const FfItem *item)
{
  GtkWidget *child;

  g_return_if_fail (FF_IS_GEAR_WITH (self));
  g_set_object (&self->keeper, keeper);
  if (g_strcmp0 (self->id, item->id) != 0)
    ff_entry_reset (self->add, "");
  ff_set_text (&self->id, item->id);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->labels))) != NULL)
    gtk_widget_unparent (child);
  for (guint i = 0; i < item->with_ids->len; i++)
    {
      const FfItem *other = ff_keeper_find_item (keeper, g_ptr_array_index (item->with_ids, i));

      if (other != NULL)
        add_label (self, other);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->labels), item->with_ids->len > 0);
}
