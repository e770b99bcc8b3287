/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-missing.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define SHOWN "ff-missing"
#define GOAL "ff-goal"

static void
on_enter (GtkWidget *button, FfPage *page)
{
  ff_page_go (page, g_object_get_data (G_OBJECT (button), GOAL));
}

/* The part of the job that a goal is in: "day" of "day:abort_word". */
static const FfPageInfo *
page_of (const char *goal)
{
  g_autofree char *name = g_strndup (goal, strcspn (goal, ":"));

  return ff_pages_find (name);
}

static void
add_button (GtkWidget *row, FfPage *page, const char *sentence, const char *goal)
{
  const FfPageInfo *place = page_of (goal);
  GtkWidget *button;
  g_autofree char *spoken = NULL;

  if (place == NULL)
    return;
  button = gtk_button_new_with_label (_ (place->title));
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_object_set_data (G_OBJECT (button), GOAL, (gpointer) goal);
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_enter), page, 0);
  /* Translators: a button for a screen reader: the part of the job, what is to be entered there. */
  spoken = g_strdup_printf (_ ("To %s: %s"), _ (place->title), sentence);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                  -1);
  gtk_box_append (GTK_BOX (row), button);
}

/* `goal` is one of a few texts that stay. */
static GtkWidget *
row_new (FfPage *page, const char *sentence, const char *goal)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = gtk_label_new (sentence);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), label);
  add_button (row, page, sentence, goal);
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

static const char *
unfrozen (void)
{
  return _ ("The plan is not frozen: it may still change.");
}

static void
fill (GtkBox *rows, const FfProof *proof, FfPage *page)
{
  const FfSheetFacts *facts = proof->facts;
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (GTK_WIDGET (rows))) != NULL)
    gtk_box_remove (rows, row);
  for (guint i = 0; i < facts->missing->len; i++)
    gtk_box_append (rows, row_new (page, g_ptr_array_index (facts->missing, i),
                                   g_ptr_array_index (facts->mend, i)));
  if (!proof->frozen)
    gtk_box_append (rows, row_new (page, unfrozen (), "sorties"));
}

gboolean
ff_missing_show (GtkBox *rows, const FfProof *proof, FfPage *page)
{
  g_autofree char *sentences = ff_missing_join (proof->facts->missing);
  g_autofree char *now = g_strconcat (sentences, "\n", proof->frozen ? "" : unfrozen (), NULL);

  /* The same rows stay, and with them the focus. */
  if (g_strcmp0 (now, g_object_get_data (G_OBJECT (rows), SHOWN)) != 0)
    {
      fill (rows, proof, page);
      g_object_set_data_full (G_OBJECT (rows), SHOWN, g_steal_pointer (&now), g_free);
    }
  return proof->facts->missing->len > 0 || !proof->frozen;
}
