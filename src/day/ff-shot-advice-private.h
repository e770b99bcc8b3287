/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of the advice alone: what is found (ff-shot-advice.c) and how it is said (ff-shot-words.c). */
#pragma once

#include "ff-day-private.h"
#include "ff-shot-advice.h"

/* What the crew can put before the lens, and what the shot wants of the camera. */
typedef struct {
  const FfDay *day;
  const FfShot *shot;
  FfCameraRange camera;
  FfWant want;
  GArray *filters;     /* FfAdviseFilter */
  GPtrArray *items;    /* FfItem of each, borrowed */
  gint64 from, to, at; /* the window, and when the take starts */
} FfShotQuestion;

/* The sentences of FfShotAdvice, from its numbers. */
char *ff_shot_words_need (const FfShotQuestion *question, const FfShotAdvice *advice);
char *ff_shot_words_sun (const FfShotQuestion *question, const FfShotMoment *moment);
char *ff_shot_words_light (const FfShotQuestion *question, const FfShotAdvice *advice);
char *ff_shot_words_best (const FfChoice *choice);
char *ff_shot_words_glass (const FfShotQuestion *question, const FfChoice *choice);

/* `until`: the first instant at which another filter is better, behind so many stops; 0: none. */
char *ff_shot_words_lasts (const FfShotQuestion *question, gint64 until, double next_stops);
