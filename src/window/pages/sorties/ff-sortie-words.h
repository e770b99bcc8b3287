/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the page of sorties says, as values: a plan in, texts out. Pure. All texts are owned by the
 * caller. */
#pragma once

#include "ff-plan.h"

/* "A harbour from above · 16:32–16:38" */
char *ff_sortie_shot_words (const FfPlanTake *take, GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;

/* "f/2.8 · 1/80 (112°) → 1/60 (150°) · ISO 100" */
char *ff_sortie_settings_words (const FfPlanTake *take) G_GNUC_WARN_UNUSED_RESULT;

/* "need 5.6 → 5.5 stops · 25 fps", without what a shot does not have. */
char *ff_sortie_light_words (const FfPlanTake *take) G_GNUC_WARN_UNUSED_RESULT;

/* The shots that are not flown for the same reason as this one: "A harbour from above · B ferry
 * tracking"; NULL when they were said with an earlier one. */
char *ff_sortie_missed_words (const FfDayPlan *plan, guint index) G_GNUC_WARN_UNUSED_RESULT;

/* Why a day can't be planned, as a sentence without the title of the job before it. */
char *ff_sortie_why_not_words (const char *why, const char *title) G_GNUC_WARN_UNUSED_RESULT;

/* One sortie read aloud, everything of its row. */
char *ff_sortie_spoken (const FfPlanLine *line, GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;

/* When to land, once for all lines: "Land by the line's time, or off + 18 min, or …". */
char *ff_sortie_land_rule (const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

/* "on charge 17:08, ready 18:08, attended by Marit Ostrander", and when the plan flies that battery
 * again: "needed 19:26", or empty. */
char *ff_sortie_charge_words (const FfPlanCharge *charge,
                              GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;
char *ff_sortie_needed_words (const FfPlanCharge *charge,
                              const FfDayPlan *plan,
                              GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;

/* "What the plan costs: 51.6, proven cheapest" */
char *ff_sortie_cost_words (const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

/* "6 sorties, 5 batteries, 3 filter changes" */
char *ff_sortie_count_words (const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

/* "30 min late: 5 sorties; A is lost": a line for each case that loses something; and one that the
 * others lose nothing. An array that frees them. */
GPtrArray *ff_sortie_case_words (const FfCases *cases) G_GNUC_WARN_UNUSED_RESULT;

/* The line that a shot is on, 0: none. */
int ff_sortie_line_of_shot (const FfDayPlan *plan, const char *shot);
