/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-lines.h"

GtkWidget *
ff_line_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

void
ff_lines_add (GtkBox *box, const char *text, const char *css_class)
{
  gtk_box_append (box, ff_line_new (text, css_class));
}

void
ff_lines_clear (GtkBox *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}

GtkWidget *
ff_lines_card (const char *heading)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "label", heading, "xalign", 0.0, "wrap", TRUE,
                                   "accessible-role", GTK_ACCESSIBLE_ROLE_HEADING, NULL);

  gtk_widget_add_css_class (label, "section-title");
  gtk_widget_add_css_class (card, "sheet");
  gtk_widget_add_css_class (card, "card-body");
  gtk_box_append (GTK_BOX (card), label);
  return card;
}
