/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The frame: places at the left (in a bar below where it is narrow), the parts of the open job
 * above its page, what is open in one line. Pages are built when they are first shown. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_WINDOW (ff_window_get_type ())
G_DECLARE_FINAL_TYPE (FfWindow, ff_window, FF, WINDOW, AdwApplicationWindow)

FfWindow *ff_window_new (GtkApplication *application, FfKeeper *keeper) G_GNUC_WARN_UNUSED_RESULT;

/* Shows a page by its name. A part of a job needs an open job, else the jobs are shown; an unknown
 * name shows the first place. */
void ff_window_show_page (FfWindow *self, const char *name);

/* The page on the screen, or NULL while the store is in trouble. */
FfPage *ff_window_get_page (FfWindow *self);
FfKeeper *ff_window_get_keeper (FfWindow *self);
gboolean ff_window_get_narrow (FfWindow *self);
void ff_window_say (FfWindow *self, const char *sentence, gboolean undo);
