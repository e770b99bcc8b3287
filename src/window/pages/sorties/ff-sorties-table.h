/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The day chart as a table: for those who would rather read it, or hear it. */
#pragma once

#include <gtk/gtk.h>

/* Fills the list anew with an array of FfChartRow. */
void ff_sorties_table_show (GtkListBox *list, const GPtrArray *rows);
