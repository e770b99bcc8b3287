/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The picture while the camera moves: what a pixel covers, how far the picture runs during an
 * exposure, how fast it may run on screen, and when the next picture is due. GSD = H p / f and
 * overlap as in any course of photogrammetry (for one, NC State University, GIS 584, lecture 3a;
 * Aber, Marzolff and Ries, "Small-Format Aerial Photography"). Looking straight down on flat
 * ground; a slanting view covers more of it and blurs less. */
#pragma once

#include <glib.h>

/* Ground sample distance in metres: the ground that one pixel covers from this height. */
double ff_motion_gsd_m (double height_m, double focal_mm, double pitch_um);

/* How fast the picture runs over the sensor, in pixels a second: of travel v / GSD; of a turn
 * w f / p, which holds in the middle of the picture. */
double ff_motion_travel_rate (double speed_ms, double gsd_m);
double ff_motion_yaw_rate (double yaw_deg_s, double focal_mm, double pitch_um);

/* Blur in pixels of an exposure at such a rate, and the longest exposure in seconds that stays
 * within a limit: infinite at rest. */
double ff_motion_blur_px (double rate, double seconds);
double ff_motion_longest_s (double max_blur_px, double rate);

/* Angle that so much of the sensor sees, in degrees: 2 atan (w / 2f); and the ground it covers in
 * metres: H w / f. */
double ff_motion_field_deg (double extent_mm, double focal_mm);
double ff_motion_footprint_m (double height_m, double focal_mm, double extent_mm);

/* Seconds that a point should take from one edge of the picture to the other when the camera pans:
 * a rule of thumb for 24 frames a second, 180 degrees and modest screens (trade articles on
 * panning speed; teaching texts ask for longer on large screens). Divide the field in degrees by
 * it for the fastest turn; dividing the footprint in metres for the fastest travel is our own
 * reading of the same rule. */
#define FF_MOTION_PAN_S 7.0

/* Metres between pictures that share this part of their footprint (0 to below 1), and seconds
 * between them: infinite at rest. */
double ff_motion_base_m (double footprint_m, double overlap);
double ff_motion_interval_s (double base_m, double speed_ms);
