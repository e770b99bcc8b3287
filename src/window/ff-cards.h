/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The emergency cards over whatever is on the screen: read and do, nothing is ticked. A digit opens a
 * card, Escape goes back. */
#pragma once

#include "ff-keeper.h"

#include <adwaita.h>

/* A window over the parent; show it with gtk_window_present(). */
GtkWidget *ff_cards_window_new (GtkWindow *parent, FfKeeper *keeper);
