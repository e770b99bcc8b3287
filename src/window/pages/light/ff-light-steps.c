/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-light-steps.h"

static GtkWidget *
add_label (GtkWidget *box, const char *class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, class);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static GtkWidget *
row_new (void)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  add_label (box, "step-name");
  add_label (box, "step-text");
  add_label (box, "step-formula");
  add_label (box, "number-small");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  return row;
}

static void
set_text (GtkWidget **label, const char *text)
{
  gtk_label_set_text (GTK_LABEL (*label), text);
  gtk_widget_set_visible (*label, text[0] != '\0');
  *label = gtk_widget_get_next_sibling (*label);
}

static void
show_step (GtkListBoxRow *row, const FfExplainStep *step)
{
  GtkWidget *label = gtk_widget_get_first_child (gtk_list_box_row_get_child (row));

  set_text (&label, ff_name_text (&ff_names_step, (int) step->kind));
  set_text (&label, step->text);
  set_text (&label, step->formula);
  set_text (&label, step->source);
}

void
ff_light_steps_show (GtkListBox *list, GPtrArray *steps)
{
  GtkListBoxRow *row;

  for (guint i = 0; i < steps->len; i++)
    {
      if (gtk_list_box_get_row_at_index (list, (int) i) == NULL)
        gtk_list_box_append (list, row_new ());
      show_step (gtk_list_box_get_row_at_index (list, (int) i), g_ptr_array_index (steps, i));
    }
  while ((row = gtk_list_box_get_row_at_index (list, (int) steps->len)) != NULL)
    gtk_list_box_remove (list, GTK_WIDGET (row));
}
