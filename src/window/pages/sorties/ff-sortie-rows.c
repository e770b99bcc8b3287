/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sortie-rows.h"

static GtkSizeGroup *
column_new (void)
{
  return gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
}

void
ff_sortie_columns_init (FfSortieColumns *columns)
{
  *columns = (FfSortieColumns) { column_new (), column_new (), column_new (), column_new () };
}

void
ff_sortie_columns_clear (FfSortieColumns *columns)
{
  g_clear_object (&columns->number);
  g_clear_object (&columns->off);
  g_clear_object (&columns->land);
  g_clear_object (&columns->filter);
}

FfSortieRow *
ff_sortie_rows_at (GtkListBox *list, int index)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (list, index);

  return row != NULL ? FF_SORTIE_ROW (row) : NULL;
}

static void
set_n_rows (GtkListBox *list, const FfSortieColumns *columns, int n)
{
  while (ff_sortie_rows_at (list, n) != NULL)
    gtk_list_box_remove (list, GTK_WIDGET (ff_sortie_rows_at (list, n)));
  for (int i = 0; i < n; i++)
    if (ff_sortie_rows_at (list, i) == NULL)
      gtk_list_box_append (list, ff_sortie_row_new (columns));
}

void
ff_sortie_rows_show (GtkListBox *list,
                     const FfSortieColumns *columns,
                     const FfAnswer *answer)
{
  const FfDayPlan *plan = answer->plan;

  set_n_rows (list, columns, (int) plan->lines->len);
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      ff_sortie_row_show (ff_sortie_rows_at (list, (int) i), line, answer->chart->zone,
                          g_ptr_array_index (answer->limits->lines, i),
                          ff_locks_find (answer->locks, line->id) != NULL);
    }
}

void
ff_sortie_rows_mark (GtkListBox *list, int line)
{
  for (int i = 0; ff_sortie_rows_at (list, i) != NULL; i++)
    ff_sortie_row_set_chosen (ff_sortie_rows_at (list, i), i + 1 == line);
}

void
ff_sortie_rows_open (GtkListBox *list, int line)
{
  for (int i = 0; ff_sortie_rows_at (list, i) != NULL; i++)
    ff_sortie_row_set_open (ff_sortie_rows_at (list, i), i + 1 == line);
}
