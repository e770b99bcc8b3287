/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The keys of the program: one table, from which they are set and from which the window that lists
 * them is made. */
#pragma once

#include <adwaita.h>

#include "ff-page.h"

void ff_shortcuts_set (GtkApplication *application);

/* The window that lists them; `page` adds its own keys and may be NULL. */
GtkWidget *ff_shortcuts_window_new (GtkWindow *parent,
                                    const FfPageInfo *page) G_GNUC_WARN_UNUSED_RESULT;
