/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ruler of time between sky and sorties; now and the typed events, with their flags. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-day-chart-private.h"
#include "ff-shapes.h"

#define FLAG_ROW FF_CHART_FLAG_ROW
#define MOST_FLAG_ROWS 3
#define FLAG_MOST 22.0 /* em */

static double
crisp (double x)
{
  return floor (x) + 0.5;
}

/* Times at the ends of the axis move inwards as far as they must. */
static void
write_times (FfDayChart *chart, double width)
{
  double y = chart->ruler.y + 1.2 * chart->em, half = width / 2 + 0.3 * chart->em;
  gint64 at = chart->axis.from;

  while ((at = ff_time_axis_next (&chart->axis, at, chart->label_minutes)) != G_MAXINT64)
    {
      g_autofree char *clock = ff_instant_clock ((double) at, chart->zone);
      double x = crisp (ff_time_axis_x (&chart->axis, (double) at));
      FfLabel label = { .text = clock, .colour = chart->palette.ink,
                        .x = CLAMP (x, half, MAX (chart->width - half, half)), .y = y,
                        .align = 0.5, .plate = FF_CHART_PLATE };

      if (ff_labels_place (chart->labels, &label, NULL))
        g_array_append_val (chart->hours, x);
      at += FF_MINUTE;
    }
}

void
ff_chart_layout_ruler (FfDayChart *chart, const FfChartFacts *facts)
{
  FfLabel widest = { .text = "00:00" };
  double width = ff_labels_width (chart->labels, &widest);
  gint64 at = chart->axis.from;

  chart->label_minutes = ff_time_axis_step (&chart->axis, width + 0.8 * chart->em);
  chart->label_minutes = MAX (chart->label_minutes, 30);
  chart->tick_minutes = ff_time_axis_step (&chart->axis, 0.45 * chart->em);
  while ((at = ff_time_axis_next (&chart->axis, at, chart->tick_minutes)) != G_MAXINT64)
    {
      double x = crisp (ff_time_axis_x (&chart->axis, (double) at));

      g_array_append_val (chart->ticks, x);
      at += FF_MINUTE;
    }
  write_times (chart, width);
}

/* A flag to hang: its text to the right of its pole, at the right end of the axis to the left. */
typedef struct {
  gint64 at;
  const char *text;
  gboolean is_now;
} Flag;

static int
earlier (gconstpointer a, gconstpointer b)
{
  const Flag *first = a, *second = b;

  return first->at < second->at ? -1 : first->at > second->at;
}

/* The typed events and now, in order of time. */
static GArray *
flags_of (const FfDayChart *chart, const FfChartFacts *facts)
{
  GArray *flags = g_array_new (FALSE, FALSE, sizeof (Flag));
  /* Translators: after the time, on the line that shows the present moment: "17:32 now". */
  Flag now = { facts->now, _ ("now"), TRUE };

  if (facts->now != 0 && ff_time_axis_holds (&chart->axis, now.at))
    g_array_append_val (flags, now);
  for (guint i = 0; i < facts->events->len; i++)
    {
      const FfChartEvent *event = g_ptr_array_index (facts->events, i);
      Flag flag = { event->at, event->text, FALSE };

      if (ff_time_axis_holds (&chart->axis, event->at))
        g_array_append_val (flags, flag);
    }
  g_array_sort (flags, earlier);
  return flags;
}

static char *
flag_text (const FfDayChart *chart, const Flag *flag)
{
  g_autofree char *clock = ff_instant_clock ((double) flag->at, chart->zone);

  return g_strdup_printf ("%s %s", clock, flag->text);
}

static FfLabel
flag_label (const FfDayChart *chart, const Flag *flag, const char *text)
{
  return (FfLabel) { .text = text, .style = flag->is_now ? FF_TEXT_STRONG : FF_TEXT_SMALL,
                     .colour = flag->is_now ? chart->palette.accent : chart->palette.ink };
}

/* A later pole starts below the earlier texts that it would run through. */
int
ff_chart_flag_rows (FfDayChart *chart, const FfChartFacts *facts)
{
  g_autoptr (GArray) flags = flags_of (chart, facts);
  double end[MOST_FLAG_ROWS];
  int rows = 0;

  for (int row = 0; row < MOST_FLAG_ROWS; row++)
    end[row] = -INFINITY;
  for (guint i = 0; i < flags->len; i++)
    {
      const Flag *flag = &g_array_index (flags, Flag, i);
      g_autofree char *text = flag_text (chart, flag);
      FfLabel label = flag_label (chart, flag, text);
      double x = ff_time_axis_x (&chart->axis, (double) flag->at);
      int row = 0;

      for (int r = 0; r < MOST_FLAG_ROWS; r++)
        if (end[r] > x)
          row = MIN (r + 1, MOST_FLAG_ROWS - 1);
      end[row] = x + MIN (ff_labels_width (chart->labels, &label), FLAG_MOST * chart->em)
                 + chart->em;
      rows = MAX (rows, row + 1);
    }
  return rows;
}

static cairo_rectangle_t
pole_box (const FfDayChart *chart, double x, double top)
{
  return (cairo_rectangle_t) { x - 0.1 * chart->em, top, 0.2 * chart->em,
                               MAX (chart->flags.y + chart->flags.height - top, 0) };
}

static gboolean
hang (FfDayChart *chart, const Flag *flag, const char *text, double max_width)
{
  double x = crisp (ff_time_axis_x (&chart->axis, (double) flag->at));

  for (int row = 0; row < chart->share.flag_rows; row++)
    {
      FfChartPole pole = { x, chart->flags.y + (row + 0.15) * FLAG_ROW * chart->em,
                           flag->is_now };
      cairo_rectangle_t box = pole_box (chart, x, pole.top);
      FfLabel label = flag_label (chart, flag, text);

      label.x = x + 0.45 * chart->em;
      label.y = pole.top + 0.45 * FLAG_ROW * chart->em;
      label.max_width = max_width;
      if (!ff_labels_is_free (chart->labels, &box))
        continue;
      if (!ff_labels_place (chart->labels, &label, NULL))
        {
          label.x = x - 0.45 * chart->em;
          label.align = 1;
          if (!ff_labels_place (chart->labels, &label, NULL))
            continue;
        }
      ff_labels_keep_off (chart->labels, &box);
      g_array_append_val (chart->poles, pole);
      return TRUE;
    }
  return FALSE;
}

/* A flag is written in full, or shorter, or as its time alone; where nothing fits the pole stands
 * without one. */
static void
add_flag (FfDayChart *chart, const Flag *flag)
{
  g_autofree char *clock = ff_instant_clock ((double) flag->at, chart->zone);
  g_autofree char *text = flag_text (chart, flag);
  FfChartPole bare = { crisp (ff_time_axis_x (&chart->axis, (double) flag->at)),
                       chart->flags.y + chart->flags.height, flag->is_now };

  if (!hang (chart, flag, text, FLAG_MOST * chart->em) && !hang (chart, flag, text, 9 * chart->em)
      && !hang (chart, flag, clock, 0))
    g_array_append_val (chart->poles, bare);
}

void
ff_chart_layout_flags (FfDayChart *chart, const FfChartFacts *facts)
{
  g_autoptr (GArray) flags = flags_of (chart, facts);
  gboolean now_first = chart->share.flag_rows == 1;

  for (guint i = 0; i < flags->len && now_first; i++)
    if (g_array_index (flags, Flag, i).is_now)
      add_flag (chart, &g_array_index (flags, Flag, i));
  for (guint i = 0; i < flags->len; i++)
    if (!now_first || !g_array_index (flags, Flag, i).is_now)
      add_flag (chart, &g_array_index (flags, Flag, i));
}

void
ff_chart_draw_ruler (const FfDayChart *chart, cairo_t *cr)
{
  double top = crisp (chart->ruler.y);

  for (guint i = 0; i < chart->ticks->len; i++)
    {
      double x = g_array_index (chart->ticks, double, i);

      ff_shape_line (cr, x, top, x, top + 0.22 * chart->em);
    }
  for (guint i = 0; i < chart->hours->len; i++)
    {
      double x = g_array_index (chart->hours, double, i);

      ff_shape_line (cr, x, top, x, top + 0.5 * chart->em);
    }
  ff_colour_set (cr, chart->palette.ink);
  cairo_set_line_width (cr, chart->palette.hair * chart->em);
  cairo_stroke (cr);
  ff_shape_line (cr, chart->axis.left, top, chart->axis.right, top);
  cairo_set_line_width (cr, chart->palette.line * chart->em);
  cairo_stroke (cr);
}
