/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The day chart of the demo day at 1200 x 420: laid out once, drawn at every frame. */
#include <glib.h>
#include <stdio.h>

#include "ff-chart-fixture.h"
#include "ff-day-chart.h"

#define ROUNDS 100
#define DRAW_MS 8.0
#define LAYOUT_MS 30.0

static double
ms_each (gint64 begun)
{
  return (double) (g_get_monotonic_time () - begun) / 1000 / ROUNDS;
}

static void
report (const char *what, double ms, double granted)
{
  printf ("%-28s %7.2f ms (granted %.0f)\n", what, ms, granted);
}

static void
measure (const FfChartFixture *fixture, const FfPalette *palette, const char *name)
{
  FfChartFrame frame = { palette, NULL, 1.2, 1200, 420 };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 1200, 420);
  cairo_t *cr = cairo_create (surface);
  FfDayChart *chart = ff_day_chart_new (&fixture->facts, &fixture->plan, &frame);
  g_autofree char *layout = g_strdup_printf ("%s, layout", name);
  g_autofree char *draw = g_strdup_printf ("%s, draw", name);
  gint64 begun = g_get_monotonic_time ();

  for (int i = 0; i < ROUNDS; i++)
    {
      ff_day_chart_free (chart);
      chart = ff_day_chart_new (&fixture->facts, &fixture->plan, &frame);
    }
  report (layout, ms_each (begun), LAYOUT_MS);
  ff_day_chart_draw (chart, cr, 0);
  begun = g_get_monotonic_time ();
  for (int i = 0; i < ROUNDS; i++)
    ff_day_chart_draw (chart, cr, 2);
  cairo_surface_flush (surface);
  report (draw, ms_each (begun), DRAW_MS);
  ff_day_chart_free (chart);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (void)
{
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();

  measure (fixture, &ff_palette_light, "light");
  measure (fixture, &ff_palette_paper, "paper");
  return 0;
}
