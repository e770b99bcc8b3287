/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lamps on alternating current pulse twice a period: 100 or 120 times a second. Footage does not
 * flicker when every exposure holds a whole number of pulses, t = n / (2 mains), or when every
 * frame meets the pulses at the same point. Source: the cinematographer's tables of safe frame
 * rates and shutter angles for 50 and 60 Hz. */
#pragma once

#include <glib.h>

/* How many flicker-free shutter times fit into a frame: n of n / (2 mains) <= 1 / fps. None when
 * a frame is shorter than one pulse. */
guint ff_flicker_count (double mains_hz, double fps);

/* The n-th of them from 1, in seconds; its angle is ff_shutter_angle_deg(). */
double ff_flicker_shutter_s (double mains_hz, guint n);

/* Whether the frame rate divides the pulses: then any shutter is safe while the mains keeps its
 * frequency exactly. */
gboolean ff_flicker_any_angle (double mains_hz, double fps);
