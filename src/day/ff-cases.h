/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cases of a day: other skies (0, 1, 2 and 3 stops of cloud) and late starts (15 and 30 minutes)
 * planned beside the plan, each by itself and with no odds put on any. From them the bag; and what of
 * the plan itself does not survive a slip of time or a stop of cloud. */
#pragma once

#include <glib.h>

#include "ff-bag.h"

#define FF_SLIP_MINUTES 15 /* of a line's start, and 1 stop of cloud: what a line should survive */

typedef struct {
  gboolean other_sky;
  FfSky sky;          /* with other_sky */
  int late_minutes;   /* else */
  char *title;        /* "thin cloud", "15 min late" */
  GPtrArray *filters; /* char*: labels, as they come up */
  GPtrArray *lost;    /* char*: labels of shots that the plan flies and this case does not */
  int sorties, batteries_used;
} FfCase;

/* What one line survives behind its own filter. */
typedef struct {
  int line;
  int room_minutes;           /* it may be off so much later, its windows kept */
  char *tightest;             /* label of the shot whose window closes then */
  gboolean light_holds_late;  /* FF_SLIP_MINUTES later every take is still exposed right */
  gboolean light_holds_cloud; /* and under one stop of cloud */
  GPtrArray *why;             /* char*: a sentence for each thing it does not survive */
} FfLineSlip;

/* What the day loses with a shot that is dropped before it begins. */
typedef struct {
  char *shot, *title;
  double price;  /* its weight, less what the rest of the day costs less without it */
  guint lost_in; /* cases that lose it anyway */
} FfDrop;

typedef struct {
  GPtrArray *cases; /* FfCase */
  GPtrArray *slips; /* FfLineSlip, one a line */
  FfBag *bag;
} FfCases;

void ff_cases_free (FfCases *cases);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfCases, ff_cases_free)

gboolean ff_line_slip_survives (const FfLineSlip *slip);

/* The sentences of all lines that do not survive, or the one that all do: an array that frees them.
 * Empty without lines. */
GPtrArray *ff_cases_slip_words (const FfCases *cases) G_GNUC_WARN_UNUSED_RESULT;

/* "Drop first: A; then F, B, C; G last." NULL with less than two to choose from. */
char *ff_drop_words (const GPtrArray *drops) G_GNUC_WARN_UNUSED_RESULT;
