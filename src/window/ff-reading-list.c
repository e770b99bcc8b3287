/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-reading-list.h"

#include <glib/gi18n-lib.h>

#include "ff-entry.h"
#include "ff-lines.h"

struct _FfReadingList {
  GtkBox parent_instance;

  FfKeeper *keeper; /* of the dialog, which outlives this */
};

G_DEFINE_FINAL_TYPE (FfReadingList, ff_reading_list, GTK_TYPE_BOX)

/* Setting aside */

static void
on_entered (FfEntry *entry, FfReadingList *self)
{
  g_autofree char *id = g_strdup (g_object_get_data (G_OBJECT (entry), "ff-reading"));
  g_autoptr (GError) error = NULL;

  /* The list is shown anew by then, and the entry is gone. */
  g_object_ref (entry);
  if (!ff_keeper_drop_reading (self->keeper, id, ff_entry_get_text (entry), &error))
    ff_entry_complain (entry, error->message);
  g_object_unref (entry);
}

static void
on_set_aside (GtkButton *button, FfReadingList *self)
{
  GtkWidget *row = gtk_widget_get_parent (GTK_WIDGET (button));
  GtkWidget *why = ff_entry_new (_ ("Why is it set aside? Enter keeps the reason"), NULL);

  g_object_set_data_full (G_OBJECT (why), "ff-reading",
                          g_strdup (g_object_get_data (G_OBJECT (button), "ff-reading")), g_free);
  g_signal_connect (why, "entered", G_CALLBACK (on_entered), self);
  gtk_box_append (GTK_BOX (row), why);
  gtk_box_remove (GTK_BOX (row), GTK_WIDGET (button));
  gtk_widget_grab_focus (why);
}

/* Rows */

static GtkWidget *
button_new (FfReadingList *self, const FfReading *reading, const char *words)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Set aside…"));

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words, -1);
  g_object_set_data_full (G_OBJECT (button), "ff-reading", g_strdup (reading->id), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (on_set_aside), self);
  return button;
}

static GtkWidget *
row_new (FfReadingList *self, const FfDay *day, const FfReading *reading, gboolean counts)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gboolean dropped = ff_reading_is_dropped (reading);
  g_autofree char *words = ff_day_reading_words (day, reading);
  /* A state is a shape and words. */
  g_autofree char *line = g_strdup_printf ("%s  %s", dropped ? "–" : counts ? "■" : "□", words);
  g_autofree char *more = NULL;

  if (dropped)
    /* Translators: then the reason. */
    more = g_strdup_printf (_ ("Set aside: %s"), reading->dropped_why);
  else if (counts)
    /* Translators: of a light reading; then how long it lasts. */
    more = g_strdup_printf (_ ("Counts: %s"), ff_day_reading_lasts (day, reading,
                                                                    ff_day_job (day)->sky));
  else
    more = g_strdup (_ ("Counted until the next reading"));
  gtk_box_append (GTK_BOX (row), ff_line_new (line, NULL));
  gtk_box_append (GTK_BOX (row), ff_line_new (more, "soft"));
  if (!dropped)
    gtk_box_append (GTK_BOX (row), button_new (self, reading, words));
  return row;
}

void
ff_reading_list_show (FfReadingList *self, FfKeeper *keeper, const FfDay *day)
{
  GPtrArray *readings = ff_day_readings (day);
  double offset;
  const FfReading *last = ff_day_last_reading (day, &offset);
  GtkWidget *child;

  g_return_if_fail (FF_IS_READING_LIST (self));
  self->keeper = keeper;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_box_remove (GTK_BOX (self), child);
  for (guint i = readings->len; i > 0; i--)
    {
      const FfReading *reading = g_ptr_array_index (readings, i - 1);

      gtk_box_append (GTK_BOX (self), row_new (self, day, reading, reading == last));
    }
  if (readings->len == 0)
    gtk_box_append (GTK_BOX (self),
                    ff_line_new (_ ("None yet. The light of the plan is an estimate."), "soft"));
}

static void
ff_reading_list_class_init (FfReadingListClass *klass)
{
}

static void
ff_reading_list_init (FfReadingList *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}
