/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is said about an item: beside its fields, at its head, in the list. A sentence that begins
 * with □ is an open question. Pure. */
#pragma once

#include "ff-gear-fields.h"
#include "ff-job.h"

/* What a remark may look at besides the item itself. */
typedef struct {
  GPtrArray *items, *jobs; /* FfItem, FfJob */
  const char *today;       /* YYYY-MM-DD */
} FfGearWorld;

/* Beside a field; NULL: nothing to say. */
char *ff_gear_remark (const FfItem *item,
                      const FfGearField *field,
                      const FfGearWorld *world) G_GNUC_WARN_UNUSED_RESULT;
gboolean ff_gear_is_question (const char *remark);

/* What is open about the item as a whole; NULL: nothing. */
char *ff_gear_question (const FfItem *item, const FfGearWorld *world) G_GNUC_WARN_UNUSED_RESULT;

/* "5 stops · factor 32 · density 1.51". */
char *ff_gear_strength (double stops, double stops_to) G_GNUC_WARN_UNUSED_RESULT;

/* What can be misread in a label, or mistaken for that of another item; NULL: nothing. */
char *ff_gear_label_warning (const char *label,
                             const char *id,
                             GPtrArray *items) G_GNUC_WARN_UNUSED_RESULT;

/* The energy that follows from volts and capacity, beside the printed one; NULL: not known. */
char *ff_gear_energy (const FfItem *item) G_GNUC_WARN_UNUSED_RESULT;

/* The few values that say what the item is, large: "18", "usable minutes". */
typedef struct {
  char *value;
  char *caption;
} FfGearFigure;

#define FF_GEAR_MAX_FIGURES 3
guint ff_gear_figures (const FfItem *item, FfGearFigure figures[FF_GEAR_MAX_FIGURES]);
void ff_gear_figures_clear (FfGearFigure figures[FF_GEAR_MAX_FIGURES]);

/* The title, or nothing when it only repeats the label. Borrowed from the item. */
const char *ff_gear_title (const FfItem *item);

/* "✕ defect open": word and shape, as everywhere. */
char *ff_gear_state_words (FfState state) G_GNUC_WARN_UNUSED_RESULT;

/* With whom, until when, and why; empty: nothing to add. `brief`: of one that is out not why. */
char *ff_gear_state_reason (const FfItem *item, gboolean brief) G_GNUC_WARN_UNUSED_RESULT;

/* The jobs that use the item: "Skarrowick tidal mill, Brackenholt"; NULL: none. */
char *ff_gear_used_by (const FfItem *item, GPtrArray *jobs) G_GNUC_WARN_UNUSED_RESULT;
gboolean ff_gear_job_uses (const FfJob *job, const FfItem *item);

/* What goes with the item, by label: "camera 1, P1"; NULL: nothing. */
char *ff_gear_followers (const FfItem *item, GPtrArray *items) G_GNUC_WARN_UNUSED_RESULT;
