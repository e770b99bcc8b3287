/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Between the level of a recorded tone and the light that made it, 1 being the brightest that is
 * recorded. Holds for the plain curves; a camera's picture profile adds a curve of its own, so that
 * stops read from a developed picture are approximate. */
#pragma once

#include <glib.h>

/* The tone that a meter aims at: 18 per cent reflectance. */
#define FF_TONE_GREY 0.18

/* sRGB curve, IEC 61966-2-1:1999: value 0 to 1 of light 0 to 1 and back. The 8-bit code is 255
 * times the value. */
double ff_tone_srgb_value (double light);
double ff_tone_srgb_light (double value);

/* Video level in per cent (IRE) of light, ITU-R BT.709 curve (the formula from memory), and back.
 * Levels above 100 are light above 1: what a zebra at 109 warns of. */
double ff_tone_video_level (double light);
double ff_tone_video_light (double level);

/* Stops from the clip (0 and below) and from middle grey, of light above 0. */
double ff_tone_stops_of_clip (double light);
double ff_tone_stops_of_grey (double light);

/* Sensor exposure in lx s, ISO 12232:2019 (the constants from memory): where the meter's mid-tone
 * falls at a speed, and where recording saturates, 2.96 stops above it. */
double ff_tone_metered_lxs (double iso);
double ff_tone_saturation_lxs (double iso);
