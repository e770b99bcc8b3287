/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Small parts that the sheets of an item share. */
#pragma once

#include <gtk/gtk.h>

/* A sheet with a heading: a vertical box. */
GtkWidget *ff_gear_sheet_new (const char *heading);

/* A line of words that wraps, appended; `css_class` NULL: plain. */
GtkLabel *ff_gear_line_new (GtkBox *box, const char *words, const char *css_class);
