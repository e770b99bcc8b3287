/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the light page says: pieces of the ruler, its gap and who could close it, how long the
 * settings hold, the hours of a filter. Translated sentences that the caller frees. */
#pragma once

#include "ff-light-study.h"

/* A filter as it is said: "5 stops · ND32", "no filter". */
char *ff_light_words_glass (const FfLightStudy *study, int filter) G_GNUC_WARN_UNUSED_RESULT;

/* "Fit it 15:20–18:00. It exposes right 14:50–18:40." */
char *ff_light_words_hours (const FfLightStudy *study,
                            const FfStudyHours *hours) G_GNUC_WARN_UNUSED_RESULT;

/* The value of a piece, large: "1/50"; and what is small beside it: "180° · 5.6 stops". */
char *ff_light_words_value (const FfLightStudy *study,
                            const FfRuler *ruler,
                            FfRulerPiece piece) G_GNUC_WARN_UNUSED_RESULT;
char *ff_light_words_detail (const FfLightStudy *study,
                             const FfRuler *ruler,
                             FfRulerPiece piece) G_GNUC_WARN_UNUSED_RESULT;

/* A piece for those who hear it: "Shutter 1/50, 180°, takes 5.6 stops, fixed". */
char *ff_light_words_piece (const FfLightStudy *study,
                            const FfRuler *ruler,
                            FfRulerPiece piece) G_GNUC_WARN_UNUSED_RESULT;

/* "EV 13.9 ± 0.5" */
char *ff_light_words_level (const FfExplainQuery *light) G_GNUC_WARN_UNUSED_RESULT;

/* "0.3 stops too bright", "exposed right"; and the same as a number with its sign: "+0.3". */
char *ff_light_words_gap (double gap_stops) G_GNUC_WARN_UNUSED_RESULT;
char *ff_light_words_gap_number (double gap_stops) G_GNUC_WARN_UNUSED_RESULT;

/* "Shutter 1/60 (150°) closes it. 6 stops would want 1/40 (225°), ISO 125." */
char *ff_light_words_closers (const FfLightStudy *study,
                              const FfRuler *ruler,
                              double ev100) G_GNUC_WARN_UNUSED_RESULT;

/* "ISO pays: 125 for 100." Empty: nobody paid. */
char *ff_light_words_pay (const FfLightStudy *study,
                          const FfRuler *before,
                          const FfRulerChange *pay) G_GNUC_WARN_UNUSED_RESULT;

/* "Good until 17:52. With shutter and ISO following, this filter holds until 18:41." */
char *ff_light_words_until (const FfLightStudy *study,
                            const FfRuler *ruler,
                            gint64 at) G_GNUC_WARN_UNUSED_RESULT;

/* Over the ruler: "17:40 · sun 13° high, behind the camera · clear · D headland push-in". */
char *ff_light_words_head (const FfLightStudy *study, gint64 at) G_GNUC_WARN_UNUSED_RESULT;
