/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The keys of the briefs: Left, Right, Page Up and Page Down turn the pages, plus and minus make
 * the large one larger and smaller, Ctrl+S saves; Up and Down scroll it, Shift+Left and Shift+Right
 * sideways. */
#pragma once

#include <gtk/gtk.h>

/* They activate "sheet.turn" (i), "sheet.scroll" (i), "sheet.pan" (i), "sheet.zoom" (i) and
 * "sheet.save". */
void ff_briefs_keys_add (GtkWidget *page, GtkWidget *large);
