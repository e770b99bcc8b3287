/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-parts.h"

GtkLabel *
ff_gear_line_new (GtkBox *box, const char *words, const char *css_class)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (box, label);
  return GTK_LABEL (label);
}

GtkWidget *
ff_gear_sheet_new (const char *heading)
{
  GtkWidget *sheet = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_widget_add_css_class (sheet, "sheet");
  gtk_widget_add_css_class (sheet, "gear-group");
  ff_gear_line_new (GTK_BOX (sheet), heading, "heading");
  return sheet;
}
