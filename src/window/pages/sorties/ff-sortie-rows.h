/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list of sorties: one row a line of the plan. */
#pragma once

#include "ff-answer.h"
#include "ff-sortie-row.h"

void ff_sortie_columns_init (FfSortieColumns *columns);
void ff_sortie_columns_clear (FfSortieColumns *columns);

/* The row at an index from 0, or NULL. */
FfSortieRow *ff_sortie_rows_at (GtkListBox *list, int index);

/* Rows are changed in place, so that the focus and the place on the page stay. A row whose limits a
 * forecast crosses says so. */
void ff_sortie_rows_show (GtkListBox *list,
                          const FfSortieColumns *columns,
                          const FfAnswer *answer);

/* Marks the row of a line, counted from 1, and no other; opens it, and closes the one before. */
void ff_sortie_rows_mark (GtkListBox *list, int line);
void ff_sortie_rows_open (GtkListBox *list, int line);
