/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The keys of the briefs: Left, Right, Page Up and Page Down turn the pages, Ctrl+S saves; Up and
 * Down scroll the large page. */
#pragma once

#include <gtk/gtk.h>

/* They activate "sheet.turn" (i), "sheet.scroll" (i) and "sheet.save". */
void ff_briefs_keys_add (GtkWidget *page, GtkWidget *large);
