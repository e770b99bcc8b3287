/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-missing.h"

#include <glib/gi18n-lib.h>

#define WHERE_IT_IS_ENTERED "day"
#define SHOWN "ff-missing"

static void
on_enter (FfPage *page)
{
  ff_page_go (page, WHERE_IT_IS_ENTERED);
}

static GtkWidget *
row_new (FfPage *page, const char *sentence)
{
  const FfPageInfo *place = ff_pages_find (WHERE_IT_IS_ENTERED);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = gtk_label_new (sentence);
  GtkWidget *button;
  g_autofree char *spoken = NULL;

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), label);
  if (place == NULL)
    return row;
  button = gtk_button_new_with_label (_ (place->title));
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (on_enter), page);
  /* Translators: a button for a screen reader: the part of the job, what is to be entered there. */
  spoken = g_strdup_printf (_ ("To %s: %s"), _ (place->title), sentence);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                  -1);
  gtk_box_append (GTK_BOX (row), button);
  return row;
}

char *
ff_missing_join (GPtrArray *sentences)
{
  GString *joined = g_string_new (NULL);

  for (guint i = 0; i < sentences->len; i++)
    g_string_append_printf (joined, "%s%s", i > 0 ? "\n" : "",
                            (const char *) g_ptr_array_index (sentences, i));
  return g_string_free (joined, FALSE);
}

void
ff_missing_show (GtkBox *rows, GPtrArray *sentences, FfPage *page)
{
  g_autofree char *now = ff_missing_join (sentences);
  GtkWidget *row;

  /* The same rows stay, and with them the focus. */
  if (g_strcmp0 (now, g_object_get_data (G_OBJECT (rows), SHOWN)) == 0)
    return;
  while ((row = gtk_widget_get_first_child (GTK_WIDGET (rows))) != NULL)
    gtk_box_remove (rows, row);
  for (guint i = 0; i < sentences->len; i++)
    gtk_box_append (rows, row_new (page, g_ptr_array_index (sentences, i)));
  g_object_set_data_full (G_OBJECT (rows), SHOWN, g_steal_pointer (&now), g_free);
}
