/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The button that locks the chosen sortie, and what it does. */
#pragma once

#include "ff-keeper.h"

#include <gtk/gtk.h>

/* What it would do to the line, from 1; 0: none is chosen. Under a try nothing can be locked. */
void ff_sortie_lock_show (GtkButton *button, const FfAnswer *answer, int line, gboolean trying);

/* Error: what the keeper says. */
gboolean ff_sortie_lock_toggle (FfKeeper *keeper,
                                const FfAnswer *answer,
                                int line,
                                GError **error);
