/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What belongs to cameras alone: the rules of their record, and what its lists say. */
#pragma once

#include "ff-item.h"

/* No range upside down, bases and sharp apertures inside their ranges, lists of numbers that can be
 * read. `whose` begins the sentence. FF_ERROR_INPUT. */
gboolean ff_item_check_camera (const FfItem *camera, const char *whose, GError **error);

/* Whether the camera records so many frames a second; yes as long as its rates are not entered. */
gboolean ff_item_has_frame_rate (const FfItem *camera, double fps);

/* The highest data rate it writes, Mbit/s; NAN: none entered. */
double ff_item_highest_data_rate (const FfItem *camera);
