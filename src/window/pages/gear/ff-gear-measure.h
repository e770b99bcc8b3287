/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A filter of the gear measured with two pictures of one scene, without and with it. */
#pragma once

#include <gtk/gtk.h>

#include "ff-keeper.h"

/* Asks for both pictures, then measures. */
void ff_gear_measure_begin (GtkWidget *widget, FfKeeper *keeper, const char *item_id);

/* Measures beside the main loop and stores the strength, which is undone like any change; the window
 * of `widget` says what came of it. */
void ff_gear_measure_pictures (GtkWidget *widget,
                               FfKeeper *keeper,
                               const char *item_id,
                               const char *without,
                               const char *with);
