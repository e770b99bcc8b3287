/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "ff-window.h"

/* Puts the actions of the window ("win.page", "win.undo" …) on it. */
void ff_window_add_actions (FfWindow *self);

/* Which of them make sense now. */
void ff_window_update_actions (FfWindow *self);
