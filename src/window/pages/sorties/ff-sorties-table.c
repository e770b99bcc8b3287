/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sorties-table.h"

#include "ff-day-chart.h"

static void
add_text (GtkBox *box, const char *text, gboolean strong)
{
  GtkWidget *label;

  if (text[0] == '\0')
    return;
  label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (strong)
    gtk_widget_add_css_class (label, "heading");
  gtk_box_append (box, label);
}

static GtkWidget *
row_new (const FfChartRow *chart_row, GtkSizeGroup *group)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 16);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *when = gtk_label_new (chart_row->when);
  g_autofree char *spoken
      = g_strdup_printf ("%s %s %s", chart_row->when, chart_row->what, chart_row->detail);

  gtk_label_set_xalign (GTK_LABEL (when), 0);
  gtk_widget_set_valign (when, GTK_ALIGN_START);
  gtk_size_group_add_widget (group, when);
  gtk_widget_set_hexpand (texts, TRUE);
  add_text (GTK_BOX (texts), chart_row->what, chart_row->kind == FF_CHART_ROW_SORTIE);
  add_text (GTK_BOX (texts), chart_row->detail, FALSE);
  gtk_box_append (GTK_BOX (box), when);
  gtk_box_append (GTK_BOX (box), texts);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  return row;
}

void
ff_sorties_table_show (GtkListBox *list, const GPtrArray *rows)
{
  g_autoptr (GtkSizeGroup) group = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (list, 0)) != NULL)
    gtk_list_box_remove (list, GTK_WIDGET (row));
  for (guint i = 0; rows != NULL && i < rows->len; i++)
    gtk_list_box_append (list, row_new (g_ptr_array_index (rows, i), group));
}
