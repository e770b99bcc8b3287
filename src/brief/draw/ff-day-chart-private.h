/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The day chart's parts, each in a file of its own: bands (who gets how much height), sky (sun,
 * light, need), ruler, sorties, charger, rows (the table). A part lays itself out once, in
 * ff_chart_layout_*(), and is drawn from what it left in the chart. */
#pragma once

#include "ff-day-chart.h"
#include "ff-time-axis.h"

#define FF_CHART_PLATE 0.1 /* em: around a text that a vertical may pass */
#define FF_CHART_FLAG_ROW 1.5

typedef struct {
  double x, y; /* y NAN: the pen is lifted */
} FfChartPoint;

typedef enum { FF_PHASE_DAY, FF_PHASE_LOW, FF_PHASE_TWILIGHT, FF_PHASE_NIGHT } FfSunPhase;

typedef struct {
  FfSunPhase phase;
  double left, right;
} FfChartPhase;

/* A typed event, or now: a vertical with its flag on top. */
typedef struct {
  double x, top;
  gboolean is_now;
} FfChartPole;

typedef struct {
  int line;
  double stops;
  cairo_rectangle_t block;  /* off to down */
  cairo_rectangle_t target; /* block and what is written about it */
  double land_x;            /* land by */
  double text_x;            /* where the text at its right may begin */
  gboolean holds;           /* its filter holds every take to a third of a stop */
  gboolean locked;
} FfChartBlock;

/* From landed to the next off: a line with a bend where lanes change. */
typedef struct {
  double from_x, to_x, y, end_y;
} FfChartTurn;

typedef struct {
  double from_x, charge_x, ready_x, y; /* y: the middle of its lane */
} FfChartCharge;

/* What is shown, and how much height each part takes; in em where it is a height. */
typedef struct {
  int flag_rows;
  gboolean sun, light, need;
  gboolean off_times;
  int under_rows;   /* rows of text under the blocks */
  int lanes;        /* 1: one row of blocks; more: a cascade with the text beside */
  int charge_lanes;
  int word_lines;
  double block;
} FfChartShare;

struct _FfDayChart {
  FfPalette palette;
  double width, height, em;
  FfLabels *labels;
  FfTimeAxis axis;
  GTimeZone *zone;
  double pad;           /* between the edge and everything */
  gboolean has_gutter;  /* names of the parts at the left */
  FfChartShare share;
  cairo_rectangle_t flags, sky, sun, light, need, ruler, lanes, charger, words;

  GArray *phases;                                        /* FfChartPhase */
  double horizon, sun_radius;
  GArray *sun_curve, *light_curve, *low_curve, *high_curve; /* FfChartPoint */
  GArray *need_curve;                                    /* FfChartPoint, y in stops */
  GArray *dots;                                          /* FfChartPoint, round EVs */
  GArray *readings;                                      /* FfChartPoint, on the light */
  GArray *suns;                                          /* FfChartPoint: rise, set and now */
  int tick_minutes, label_minutes;
  GArray *ticks, *hours;                                 /* double, x */
  GArray *poles;                                         /* FfChartPole */
  GArray *blocks;                                        /* FfChartBlock */
  GArray *turns;                                         /* FfChartTurn */
  GArray *cells;                                         /* cairo_rectangle_t, battery marks */
  GArray *charges;                                       /* FfChartCharge */
  GArray *cautions;                                      /* FfChartPoint, a triangle's foot */
  GPtrArray *rows;                                       /* FfChartRow */
};

/* Sentences below everything: shots not flown, sorties that no filter holds. */
GPtrArray *ff_chart_sentences (const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

/* Whether a line's filter holds its takes to FF_REACH_STOPS at both ends. */
gboolean ff_chart_line_holds (const FfPlanLine *line);

char *ff_chart_shots (const FfPlanLine *line, const char *between);
char *ff_chart_one_decimal (double value);

/* A sampled curve at an instant, NAN outside. */
double ff_chart_sample (const FfChartFacts *facts, const double *values, gint64 at);

void ff_chart_layout_bands (FfDayChart *chart, const FfChartFacts *facts, const FfDayPlan *plan);
/* The height at which nothing has to be given up and the curves can be read. */
double ff_chart_wanted_height (FfDayChart *chart,
                               const FfChartFacts *facts,
                               const FfDayPlan *plan);
void ff_chart_layout_ruler (FfDayChart *chart, const FfChartFacts *facts);
void ff_chart_layout_flags (FfDayChart *chart, const FfChartFacts *facts);
void ff_chart_layout_sky (FfDayChart *chart, const FfChartFacts *facts);
void ff_chart_layout_need (FfDayChart *chart, const FfChartFacts *facts);
void ff_chart_layout_sorties (FfDayChart *chart, const FfDayPlan *plan);
void ff_chart_layout_charger (FfDayChart *chart, const FfDayPlan *plan);
void ff_chart_layout_words (FfDayChart *chart, const FfDayPlan *plan);
GPtrArray *ff_chart_rows (const FfDayChart *chart,
                          const FfChartFacts *facts,
                          const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

/* Rows that the flags need so that no pole runs through a text; at most 3. */
int ff_chart_flag_rows (FfDayChart *chart, const FfChartFacts *facts);

/* Whether all that is written about the sorties fits under them in one row. */
gboolean ff_chart_sorties_fit_one_row (FfDayChart *chart, const FfDayPlan *plan);

/* Writes a battery's label in its mark, in the middle of (x, y); FALSE when there is no space.
 * `align` as in FfLabel; ret_box may be NULL. */
gboolean ff_chart_place_cell (FfDayChart *chart,
                              const char *battery,
                              double x,
                              double y,
                              double align,
                              double max_width,
                              cairo_rectangle_t *ret_box);
double ff_chart_cell_width (FfDayChart *chart, const char *battery);

/* Says in a line's row that it is locked. */
void ff_chart_rows_lock (GPtrArray *rows, int line);

void ff_chart_draw_sky (const FfDayChart *chart, cairo_t *cr);
void ff_chart_draw_need (const FfDayChart *chart, cairo_t *cr);
void ff_chart_draw_ruler (const FfDayChart *chart, cairo_t *cr);
void ff_chart_draw_sorties (const FfDayChart *chart, cairo_t *cr);
void ff_chart_draw_charger (const FfDayChart *chart, cairo_t *cr);
