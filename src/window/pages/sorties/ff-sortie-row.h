/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One sortie: its number, off by, LAND BY large, battery, filter as a neutral block with its stops
 * and engraving, its shots with their settings; opened, also why and how to trim. */
#pragma once

#include <gtk/gtk.h>

#include "ff-plan.h"

#define FF_TYPE_SORTIE_ROW (ff_sortie_row_get_type ())
G_DECLARE_FINAL_TYPE (FfSortieRow, ff_sortie_row, FF, SORTIE_ROW, GtkListBoxRow)

/* What the columns of all rows share, so that they stand in line. */
typedef struct {
  GtkSizeGroup *number, *off, *land, *filter;
} FfSortieColumns;

GtkWidget *ff_sortie_row_new (const FfSortieColumns *columns) G_GNUC_WARN_UNUSED_RESULT;

/* Shows another line, or the same one as it is now, and whether the crew has locked it. Copies what
 * it needs. `crossed` says which limits a forecast crosses while it flies; char*, may be NULL. */
void ff_sortie_row_show (FfSortieRow *self,
                         const FfPlanLine *line,
                         GTimeZone *zone,
                         const GPtrArray *crossed,
                         gboolean locked);

void ff_sortie_row_set_open (FfSortieRow *self, gboolean open);
gboolean ff_sortie_row_get_open (FfSortieRow *self);
void ff_sortie_row_set_chosen (FfSortieRow *self, gboolean chosen);
