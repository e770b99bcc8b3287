/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Days and plans for the day chart, made by hand or at random, without a store. */
#pragma once

#include "ff-chart-facts.h"
#include "ff-plan.h"
#include "ff-test.h"

typedef struct {
  FfChartFacts facts;
  FfDayPlan plan;
  GStringChunk *texts; /* every text of both */
  GPtrArray *owned;    /* every struct in their arrays, and the samples */
} FfChartFixture;

/* The demo day: six sorties, now at 17:32. */
FfChartFixture *ff_chart_fixture_demo (void) G_GNUC_WARN_UNUSED_RESULT;

/* The same day with nothing planned, no events and no camera. */
FfChartFixture *ff_chart_fixture_empty (void) G_GNUC_WARN_UNUSED_RESULT;

/* A day somewhere at some time of the year with so many sorties; texts of several scripts. */
FfChartFixture *ff_chart_fixture_random (FfTestRandom *random,
                                         guint n_lines) G_GNUC_WARN_UNUSED_RESULT;

void ff_chart_fixture_free (FfChartFixture *fixture);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfChartFixture, ff_chart_fixture_free)
