/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words that say something is on its way, and only when it takes long: words that come and go with
 * each keystroke would be noise. */
#pragma once

#include <gtk/gtk.h>

typedef struct {
  GtkWidget *words; /* borrowed */
  guint source;     /* 0: not waiting, or said already */
} FfPatience;

/* Waiting already it goes on. */
void ff_patience_start (FfPatience *patience);
/* Hides the words; also before `words` goes. */
void ff_patience_stop (FfPatience *patience);
