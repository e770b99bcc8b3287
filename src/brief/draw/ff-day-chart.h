/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The day chart: sun, light, need, sorties, turn-rounds and charger of a shoot day on one axis of
 * time. Measured and laid out once; after that it is drawn on any Cairo context, asked what stands
 * where, and read as a table. */
#pragma once

#include <cairo.h>
#include <glib.h>
#include <pango/pango.h>

#include "ff-chart-facts.h"
#include "ff-labels.h"
#include "ff-palette.h"
#include "ff-plan.h"

typedef struct _FfDayChart FfDayChart;

typedef struct {
  const FfPalette *palette;
  const PangoFontDescription *font; /* its size in points or pixels counts as units; NULL: the
                                       palette's at 11 */
  double scale;                     /* of text and lines: 1, 2 */
  double width, height;
} FfChartFrame;

typedef enum {
  FF_CHART_ROW_SUN,       /* sunrise, sunset, twilight */
  FF_CHART_ROW_EVENT,     /* typed events and now */
  FF_CHART_ROW_READING,   /* light measured, its offset, how long it lasts */
  FF_CHART_ROW_LIGHT,     /* light and need at a clock time */
  FF_CHART_ROW_SORTIE,
  FF_CHART_ROW_TURNROUND,
  FF_CHART_ROW_CHARGE,
  FF_CHART_ROW_MISSED,    /* a shot that is not flown */
} FfChartRowKind;

/* One row of the table that says what the chart shows, for those who hear it. */
typedef struct {
  FfChartRowKind kind;
  int line;     /* of a sortie; else 0 */
  char *when;   /* "16:30–16:46"; may be empty */
  char *what;   /* "sortie 1: shots A, battery 1" */
  char *detail; /* "5 stops, land by 16:48"; may be empty */
} FfChartRow;

/* Reads facts and plan now and keeps neither. `plan` may be NULL: sun and light alone. What there
 * is no space for is left out of the picture, never out of the table. */
FfDayChart *ff_day_chart_new (const FfChartFacts *facts,
                              const FfDayPlan *plan,
                              const FfChartFrame *frame) G_GNUC_WARN_UNUSED_RESULT;
void ff_day_chart_free (FfDayChart *chart);

/* The height at which everything finds its place at this width; the frame's own is not read. */
double ff_day_chart_height (const FfChartFacts *facts,
                            const FfDayPlan *plan,
                            const FfChartFrame *frame);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfDayChart, ff_day_chart_free)

/* The crew has decided about this line: a padlock on its block, the word in its row of the table. A
 * line that is not there is nobody's. */
void ff_day_chart_lock (FfDayChart *chart, int line);

/* Draws into (0, 0) to (width, height), all of it. A line that is marked has a ring; 0: none. */
void ff_day_chart_draw (const FfDayChart *chart, cairo_t *cr, int marked_line);

/* The line at or close to a point; 0: none. */
int ff_day_chart_line_at (const FfDayChart *chart, double x, double y);

/* What belongs to a line; FALSE when it is not on the chart. */
gboolean ff_day_chart_line_rect (const FfDayChart *chart, int line, cairo_rectangle_t *ret_box);

/* The chart as a table: FfChartRow, from top to bottom and in order of time; borrowed. */
GPtrArray *ff_day_chart_rows (const FfDayChart *chart);

/* For tests: the texts in the picture. */
const FfLabels *ff_day_chart_labels (const FfDayChart *chart);
