/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sun-compass.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-shapes.h"

#define RADIANS (G_PI / 180.0)
#define WATCH_SIDE_DEG 60.0 /* to either side of where a post faces */
#define FARTHEST 0.62       /* of the radius: where the spot that lies farthest is drawn */
#define CAMERA_RING 0.97    /* of the radius: where the camera bearings end */

typedef struct {
  const FfCompassFacts *facts;
  const FfPalette *palette;
  FfLabels *labels;
  double x, y, radius, em;
  double scale; /* units a metre */
} Compass;

static void
at (const Compass *compass, double bearing_deg, double radius, double *ret_x, double *ret_y)
{
  *ret_x = compass->x + radius * sin (bearing_deg * RADIANS);
  *ret_y = compass->y - radius * cos (bearing_deg * RADIANS);
}

/* Cairo counts from the right and downwards. */
static double
cairo_angle (double bearing_deg)
{
  return (bearing_deg - 90.0) * RADIANS;
}

static gboolean
place_label (const Compass *compass, const char *text, FfTextStyle style, double x, double y)
{
  const FfLabel label = { .text = text,
                          .style = style,
                          .colour = compass->palette->ink,
                          .x = x,
                          .y = y,
                          .align = 0.5,
                          .plate = 0.15 };

  return ff_labels_place (compass->labels, &label, NULL);
}

/* ---- the rim ------------------------------------------------------------------------------- */

static void
draw_rim (cairo_t *cr, const Compass *compass)
{
  int bearing;

  ff_colour_set (cr, compass->palette->ink);
  cairo_set_line_width (cr, compass->palette->line * compass->em);
  cairo_new_sub_path (cr);
  cairo_arc (cr, compass->x, compass->y, compass->radius, 0, 2 * G_PI);
  cairo_stroke (cr);
  cairo_set_line_width (cr, compass->palette->hair * compass->em);
  for (bearing = 0; bearing < 360; bearing += 10)
    {
      const double length = compass->em * (bearing % 30 == 0 ? 0.6 : 0.3);
      double x1, y1, x2, y2;

      at (compass, bearing, compass->radius - length, &x1, &y1);
      at (compass, bearing, compass->radius, &x2, &y2);
      ff_shape_line (cr, x1, y1, x2, y2);
    }
  cairo_stroke (cr);
}

static void
label_points (const Compass *compass)
{
  /* TRANSLATORS: the four points of the compass, one letter each. */
  static const char *const points[] = { N_ ("N"), N_ ("E"), N_ ("S"), N_ ("W") };
  int i;

  for (i = 0; i < 4; i++)
    {
      double x, y;

      at (compass, i * 90.0, compass->radius - 1.35 * compass->em, &x, &y);
      place_label (compass, _ (points[i]), FF_TEXT_STRONG, x, y);
    }
}

/* ---- the sun ------------------------------------------------------------------------------- */

/* The horizon is the rim, the zenith the middle. */
static void
sun_at (const Compass *compass, const FfCompassSun *sun, double *ret_x, double *ret_y)
{
  at (compass, sun->azimuth_deg, compass->radius * (1.0 - MAX (sun->altitude_deg, 0.0) / 90.0),
      ret_x, ret_y);
}

static void
draw_sun (cairo_t *cr, const Compass *compass)
{
  GPtrArray *suns = compass->facts->suns;
  double x, y;
  guint i;

  ff_colour_set (cr, compass->palette->sun_line);
  cairo_set_line_width (cr, compass->palette->line * compass->em);
  for (i = 0; i < suns->len; i++)
    {
      sun_at (compass, g_ptr_array_index (suns, i), &x, &y);
      cairo_line_to (cr, x, y);
    }
  cairo_stroke (cr);
  for (i = 0; i < suns->len; i++)
    {
      sun_at (compass, g_ptr_array_index (suns, i), &x, &y);
      ff_shape_disc (cr, x, y, 0.22 * compass->em);
      cairo_fill (cr);
    }
}

/* The clock stands outside the rim, where the sun stands over the horizon. */
static void
label_sun (const Compass *compass)
{
  guint i;

  for (i = 0; i < compass->facts->suns->len; i++)
    {
      const FfCompassSun *sun = g_ptr_array_index (compass->facts->suns, i);
      double x, y;

      at (compass, sun->azimuth_deg, compass->radius + 1.7 * compass->em, &x, &y);
      place_label (compass, sun->clock, FF_TEXT_BODY, x, y);
    }
}

/* ---- spots and posts ----------------------------------------------------------------------- */

static gboolean
spot_at (const Compass *compass, const FfCompassSpot *spot, double *ret_x, double *ret_y)
{
  if (isnan (spot->bearing_deg) || isnan (spot->distance_m))
    return FALSE;
  at (compass, spot->bearing_deg, spot->distance_m * compass->scale, ret_x, ret_y);
  return TRUE;
}

static void
wedge (cairo_t *cr, double x, double y, double radius, double from_deg, double to_deg)
{
  cairo_move_to (cr, x, y);
  cairo_arc (cr, x, y, radius, cairo_angle (from_deg), cairo_angle (to_deg));
  cairo_close_path (cr);
}

/* What the post watches, and within it, hatched, where a low sun will stand. */
static void
draw_watch (cairo_t *cr, const Compass *compass, const FfCompassSpot *spot)
{
  const double reach = 0.42 * compass->radius;
  const cairo_rectangle_t all
      = { compass->x - compass->radius, compass->y - compass->radius, 2 * compass->radius,
          2 * compass->radius };
  const double dash = 0.4 * compass->em;
  double x, y;

  if (isnan (spot->faces_deg) || !spot_at (compass, spot, &x, &y))
    return;
  cairo_save (cr);
  ff_colour_set (cr, compass->palette->ink);
  cairo_set_line_width (cr, compass->palette->hair * compass->em);
  cairo_set_dash (cr, &dash, 1, 0);
  wedge (cr, x, y, reach, spot->faces_deg - WATCH_SIDE_DEG, spot->faces_deg + WATCH_SIDE_DEG);
  cairo_stroke (cr);
  cairo_restore (cr);
  if (isnan (spot->glare_from_deg))
    return;
  cairo_save (cr);
  /* No thinner than can be seen, were the sun to stand there for a minute only. */
  wedge (cr, x, y, reach, spot->glare_from_deg - 2.0, spot->glare_to_deg + 2.0);
  cairo_clip_preserve (cr);
  cairo_set_line_width (cr, compass->palette->line * compass->em);
  ff_colour_set (cr, compass->palette->hatched ? compass->palette->ink
                                               : compass->palette->attention);
  cairo_stroke (cr);
  cairo_set_line_width (cr, compass->palette->hair * compass->em);
  ff_shape_slants (cr, &all, 0.45 * compass->em);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_spot (cairo_t *cr, const Compass *compass, const FfCompassSpot *spot)
{
  const double side = 0.7 * compass->em;
  cairo_rectangle_t box;
  double x, y;

  if (!spot_at (compass, spot, &x, &y))
    return;
  box = (cairo_rectangle_t){ x - side / 2, y - side / 2, side, side };
  ff_colour_set (cr, compass->palette->ink);
  if (spot->post)
    cairo_rectangle (cr, box.x, box.y, box.width, box.height);
  else
    ff_shape_disc (cr, x, y, side / 2);
  cairo_fill (cr);
  ff_labels_keep_off (compass->labels, &box);
}

static void
label_spot (const Compass *compass, const FfCompassSpot *spot)
{
  static const double sides[][2] = { { 0, -1.1 }, { 0, 1.1 }, { 1.5, 0 }, { -1.5, 0 } };
  double x, y;
  gsize i;

  if (!spot_at (compass, spot, &x, &y))
    return;
  for (i = 0; i < G_N_ELEMENTS (sides); i++)
    if (place_label (compass, spot->mark, FF_TEXT_STRONG, x + sides[i][0] * compass->em,
                     y + sides[i][1] * compass->em))
      return;
}

/* The take-off spot: a cross in a ring, in the middle of everything. */
static void
draw_middle (cairo_t *cr, const Compass *compass)
{
  const double half = 0.6 * compass->em;
  const cairo_rectangle_t box = { compass->x - half, compass->y - half, 2 * half, 2 * half };

  ff_colour_set (cr, compass->palette->ink);
  cairo_set_line_width (cr, compass->palette->line * compass->em);
  cairo_new_sub_path (cr);
  cairo_arc (cr, compass->x, compass->y, half, 0, 2 * G_PI);
  ff_shape_line (cr, compass->x - half, compass->y, compass->x + half, compass->y);
  ff_shape_line (cr, compass->x, compass->y - half, compass->x, compass->y + half);
  cairo_stroke (cr);
  ff_labels_keep_off (compass->labels, &box);
}

/* ---- cameras and wind ---------------------------------------------------------------------- */

static void
draw_arrow (cairo_t *cr, const Compass *compass, double x1, double y1, double x2, double y2)
{
  const double angle = atan2 (y2 - y1, x2 - x1);
  const double head = 0.35 * compass->em + 2.0 * cairo_get_line_width (cr);

  cairo_move_to (cr, x1, y1);
  cairo_line_to (cr, x2 - 0.8 * head * cos (angle), y2 - 0.8 * head * sin (angle));
  cairo_stroke (cr);
  cairo_move_to (cr, x2, y2);
  cairo_line_to (cr, x2 - head * cos (angle - 0.45), y2 - head * sin (angle - 0.45));
  cairo_line_to (cr, x2 - head * cos (angle + 0.45), y2 - head * sin (angle + 0.45));
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
draw_cameras (cairo_t *cr, const Compass *compass)
{
  guint i;

  ff_colour_set (cr, compass->palette->accent);
  cairo_set_line_width (cr, compass->palette->line * compass->em);
  for (i = 0; i < compass->facts->shots->len; i++)
    {
      const FfCompassShot *shot = g_ptr_array_index (compass->facts->shots, i);
      double x1, y1, x2, y2;

      at (compass, shot->bearing_deg, (CAMERA_RING - 0.12) * compass->radius, &x1, &y1);
      at (compass, shot->bearing_deg, CAMERA_RING * compass->radius, &x2, &y2);
      draw_arrow (cr, compass, x1, y1, x2, y2);
    }
}

/* Outside the rim, behind one another where they look nearly the same way. */
static void
label_cameras (const Compass *compass)
{
  guint i;
  int ring;

  for (i = 0; i < compass->facts->shots->len; i++)
    {
      const FfCompassShot *shot = g_ptr_array_index (compass->facts->shots, i);

      for (ring = 0; ring < 3; ring++)
        {
          double x, y;

          at (compass, shot->bearing_deg, compass->radius + (0.9 + 1.1 * ring) * compass->em, &x,
              &y);
          if (place_label (compass, shot->shot, FF_TEXT_STRONG, x, y))
            break;
        }
    }
}

/* The wind blows in from outside the rim towards the middle. */
static void
draw_wind (cairo_t *cr, const Compass *compass)
{
  double x1, y1, x2, y2;

  if (isnan (compass->facts->wind_from_deg))
    return;
  at (compass, compass->facts->wind_from_deg, compass->radius * 0.95, &x1, &y1);
  at (compass, compass->facts->wind_from_deg, compass->radius * 0.68, &x2, &y2);
  ff_colour_set (cr, compass->palette->ink);
  cairo_set_line_width (cr, 2.2 * compass->palette->line * compass->em);
  draw_arrow (cr, compass, x1, y1, x2, y2);
}

static void
label_wind (const Compass *compass, const FfCompassFrame *frame)
{
  const FfLabel label = { .text = compass->facts->wind,
                          .style = FF_TEXT_BODY,
                          .colour = compass->palette->ink,
                          .x = frame->width / 2,
                          .y = frame->height - compass->em,
                          .align = 0.5,
                          .max_width = frame->width - compass->em };

  if (*compass->facts->wind != '\0')
    ff_labels_place (compass->labels, &label, NULL);
}

/* ---- all of it ----------------------------------------------------------------------------- */

static double
farthest_m (const FfCompassFacts *facts)
{
  double farthest = 0.0;
  guint i;

  for (i = 0; i < facts->spots->len; i++)
    {
      const FfCompassSpot *spot = g_ptr_array_index (facts->spots, i);

      if (!isnan (spot->distance_m) && !isnan (spot->bearing_deg))
        farthest = MAX (farthest, spot->distance_m);
    }
  return farthest;
}

static void
begin (Compass *compass, const FfCompassFacts *facts, const FfCompassFrame *frame)
{
  const cairo_rectangle_t bounds = { 0, 0, frame->width, frame->height };
  const double farthest = farthest_m (facts);

  compass->facts = facts;
  compass->palette = frame->palette;
  compass->labels = ff_labels_new (frame->palette, frame->font, frame->scale, &bounds);
  compass->em = ff_labels_em (compass->labels);
  compass->x = frame->width / 2;
  compass->radius
      = MAX (MIN (frame->width / 2 - 3.4 * compass->em, (frame->height - 5.6 * compass->em) / 2),
             compass->em);
  compass->y = compass->radius + 2.4 * compass->em;
  compass->scale = farthest > 0.0 ? FARTHEST * compass->radius / farthest : 0.0;
}

static void
place_labels (const Compass *compass, const FfCompassFrame *frame)
{
  guint i;

  label_points (compass);
  for (i = 0; i < compass->facts->spots->len; i++)
    label_spot (compass, g_ptr_array_index (compass->facts->spots, i));
  label_sun (compass);
  label_cameras (compass);
  label_wind (compass, frame);
}

void
ff_sun_compass_draw (cairo_t *cr, const FfCompassFacts *facts, const FfCompassFrame *frame)
{
  Compass compass;
  guint i;

  begin (&compass, facts, frame);
  cairo_save (cr);
  for (i = 0; i < facts->spots->len; i++)
    draw_watch (cr, &compass, g_ptr_array_index (facts->spots, i));
  draw_rim (cr, &compass);
  draw_sun (cr, &compass);
  draw_wind (cr, &compass);
  draw_cameras (cr, &compass);
  draw_middle (cr, &compass);
  for (i = 0; i < facts->spots->len; i++)
    draw_spot (cr, &compass, g_ptr_array_index (facts->spots, i));
  place_labels (&compass, frame);
  ff_labels_draw (compass.labels, cr);
  cairo_restore (cr);
  ff_labels_free (compass.labels);
}

FfLabels *
ff_sun_compass_labels (const FfCompassFacts *facts, const FfCompassFrame *frame)
{
  Compass compass;

  begin (&compass, facts, frame);
  place_labels (&compass, frame);
  return compass.labels;
}

GPtrArray *
ff_sun_compass_words (const FfCompassFacts *facts)
{
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);
  guint i;

  for (i = 0; i < facts->spots->len; i++)
    {
      const FfCompassSpot *spot = g_ptr_array_index (facts->spots, i);
      GString *text = g_string_new (NULL);

      g_string_printf (text, "%s  %s", spot->mark, spot->name);
      if (!isnan (spot->bearing_deg) && !isnan (spot->distance_m))
        /* TRANSLATORS: where a spot lies, seen from the take-off spot. */
        g_string_append_printf (text, _ (", %.0f m at %03.0f°"), spot->distance_m,
                                spot->bearing_deg);
      if (!isnan (spot->faces_deg))
        g_string_append_printf (text, _ (", face %03.0f°"), spot->faces_deg);
      if (*spot->glare != '\0')
        g_string_append_printf (text, "; %s", spot->glare);
      g_ptr_array_add (words, g_string_free (text, FALSE));
    }
  if (*facts->wind != '\0')
    g_ptr_array_add (words, g_strdup (facts->wind));
  return words;
}
