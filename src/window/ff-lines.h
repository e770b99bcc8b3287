/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lines of text in a box: made, and taken out again before the next ones. */
#pragma once

#include <gtk/gtk.h>

/* A text that wraps, from the left; `css_class` may be NULL. */
GtkWidget *ff_line_new (const char *text, const char *css_class) G_GNUC_WARN_UNUSED_RESULT;

void ff_lines_add (GtkBox *box, const char *text, const char *css_class);
void ff_lines_clear (GtkBox *box);

/* A card with a heading, into which lines and fields go. */
GtkWidget *ff_lines_card (const char *heading) G_GNUC_WARN_UNUSED_RESULT;
