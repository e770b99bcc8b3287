/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Depth of field and diffraction. Apertures as engraved, distances in metres from the lens, focal
 * lengths in millimetres, circle of confusion in micrometres. Source: H. Greenleaf, "Photographic
 * Optics" (1950), and the worked examples of US Navy NAVEDTRA 14209; exact forms, with the
 * focal-length term that the short ones leave out (up to 6 per cent at wide angles). */
#pragma once

#include <glib.h>

/* H = f^2 / (N c) + f: focused there, all from half of it to infinity is acceptably sharp. */
double ff_depth_hyperfocal_m (double focal_mm, double f_number, double coc_um);

/* Nearest and farthest distance that is acceptably sharp when focused at s, which lies beyond the
 * focal length: s (H - f) / (H + s - 2f) and s (H - f) / (H - s), infinite from s = H on. */
double ff_depth_near_m (double distance_m, double focal_mm, double hyperfocal_m);
double ff_depth_far_m (double distance_m, double focal_mm, double hyperfocal_m);

/* Where to focus to cover near to far: 2 D d / (D + d) (US Navy NAVEDTRA 14209). */
double ff_depth_focus_m (double near_m, double far_m);

/* Diameter of the Airy disk to its first dark ring, in micrometres, in green light of 550 nm:
 * 2.44 lambda N (Airy 1835; the factor from memory). */
double ff_depth_airy_um (double f_number);

/* The f-number at which the disk reaches two pixels of this pitch, beyond which stopping down costs
 * sharpness: a rule of thumb (from memory). */
double ff_depth_sharp_to (double pitch_um);
