/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Exposure brackets: how many frames hold a scene, and their times. */
#pragma once

#include <glib.h>

/* Frames that hold a scene of so many stops when the camera holds `camera_stops` in one and frames
 * are `step_stops` apart. A derivation of our own, no published formula: n windows of width D at
 * spacing s cover D + (n - 1) s, which needs s <= D and gives n = 1 + ceil ((R - D) / s). Noise of
 * the last binary digits asks for no frame. */
guint ff_bracket_frames (double scene_stops, double camera_stops, double step_stops);

/* What most cameras offer for so many: they bracket in odd numbers (common practice, no source). */
guint ff_bracket_odd_frames (guint frames);

/* The time of frame `index` of `frames`, the shortest first, in seconds. The base stands in the
 * middle: of an even number it lies half a step from the two middle frames. */
double ff_bracket_exposure_s (double base_s, double step_stops, guint frames, guint index);
