/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What differs between GTK 4.8 with libadwaita 1.2 and their successors, and nothing else. This
 * file alone is compiled without the version macros, so that each branch may use what its own
 * version has and neither uses what its own version calls deprecated. */
#pragma once

#include <gtk/gtk.h>

/* `file` is NULL when the dialog was left without a choice. */
typedef void (*FfFileChosen) (GFile *file, gpointer user_data);
typedef void (*FfConfirmed) (gpointer user_data);

void ff_compat_save_file (GtkWindow *parent,
                          const char *title,
                          const char *suggested_name,
                          FfFileChosen chosen,
                          gpointer user_data);
void ff_compat_choose_folder (GtkWindow *parent,
                              const char *title,
                              FfFileChosen chosen,
                              gpointer user_data);
void ff_compat_open_file (GtkWindow *parent,
                          const char *title,
                          FfFileChosen chosen,
                          gpointer user_data);

/* Asks one question; `confirmed` is called only when the answer is `action`. */
void ff_compat_confirm (GtkWindow *parent,
                        const char *heading,
                        const char *body,
                        const char *action,
                        FfConfirmed confirmed,
                        gpointer user_data);

void ff_compat_about (GtkWindow *parent);

void ff_compat_load_css (GtkCssProvider *provider, const char *css);
