/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the camera looks and where the sun stands, seen from above, north up: a ring with a mark at
 * north, the field of view as a wedge, the sun as a disk (low: on the ring; high: nearer to the
 * middle; down: an empty circle outside). It shows in a picture what stands beside it in words. */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_SUN_ROSE (ff_sun_rose_get_type ())
G_DECLARE_FINAL_TYPE (FfSunRose, ff_sun_rose, FF, SUN_ROSE, GtkWidget)

/* `camera_deg` NAN: all round or straight down. `words`: the same for a screen reader. */
void ff_sun_rose_show (FfSunRose *self,
                       double camera_deg,
                       double sun_azimuth_deg,
                       double sun_altitude_deg,
                       const char *words);
