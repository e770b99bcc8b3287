/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the sheets say what the plan holds. All texts are owned by the caller. */
#pragma once

#include "ff-plan.h"

/* "16:32–16:38" */
char *ff_say_span (gint64 from, gint64 to, GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;

/* "5 stops", "1 stop", "3.1 stops"; "no filter" where none is fitted. */
char *ff_say_stops (const FfPlanLine *line) G_GNUC_WARN_UNUSED_RESULT;

gboolean ff_say_has_filter (const FfPlanLine *line);

/* What stands on the filter: "ND32"; of several "ND8 + ND4". Empty where none is fitted. */
char *ff_say_engraving (const FfPlanLine *line) G_GNUC_WARN_UNUSED_RESULT;

/* The same strength under its two other names: "factor 32, density 1.5". */
char *ff_say_strength (double stops) G_GNUC_WARN_UNUSED_RESULT;

/* Settings from start to end of a take, each said once where it stays:
 * "f/2.8 · 1/50 (180°) → 1/60 (150°) · ISO 100 → 160"; and the short form of the pilot's sheet,
 * "1/50 → 1/60 · ISO 100 → 160". */
char *ff_say_settings (const FfPlanTake *take) G_GNUC_WARN_UNUSED_RESULT;
char *ff_say_short_settings (const FfPlanTake *take) G_GNUC_WARN_UNUSED_RESULT;

/* "f/2.8 → f/4" */
char *ff_say_aperture (const FfPlanTake *take) G_GNUC_WARN_UNUSED_RESULT;

/* "need 5.7 → 5.6 stops"; empty where a shot wants no shutter. */
char *ff_say_need (const FfPlanTake *take) G_GNUC_WARN_UNUSED_RESULT;

/* "25 frames/s"; what is taken where there is no frame rate: "bracket". */
char *ff_say_rate (const FfPlanTake *take) G_GNUC_WARN_UNUSED_RESULT;

/* Each text as a sentence with its full stop. */
char *ff_say_sentences (const GPtrArray *texts) G_GNUC_WARN_UNUSED_RESULT;

/* All texts of an array with `between` them; two texts as one, where either may be empty. */
char *ff_say_all (const GPtrArray *texts, const char *between) G_GNUC_WARN_UNUSED_RESULT;
char *ff_say_two (const char *first,
                  const char *between,
                  const char *second) G_GNUC_WARN_UNUSED_RESULT;
