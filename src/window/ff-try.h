/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A change of the day that is tried before it is stored: another sky, a late start, an item that is
 * not there, a shot at another time or dropped. */
#pragma once

#include "ff-day.h"

#define FF_TRY_SAME_SKY (-1)

typedef struct {
  int sky;          /* FfSky, or FF_TRY_SAME_SKY */
  int late_minutes; /* 0: on time */
  char *without;    /* label of an item, owned; NULL: nothing is missing */
  char *shot;       /* label of a shot, owned; NULL: none is touched */
  int move_minutes; /* its window so much later, earlier when negative */
  gboolean drop;    /* it is not flown */
} FfTry;

/* As the day is stored. */
#define FF_TRY_INIT { .sky = FF_TRY_SAME_SKY }

void ff_try_clear (FfTry *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FfTry, ff_try_clear)

/* `self` must have been initialised. NULL: as stored. */
void ff_try_set (FfTry *self, const FfTry *other);

gboolean ff_try_is_none (const FfTry *self);

/* The window of a shot so much later, or earlier, than it is tried already; past the time as stored
 * in one step, because there it is none. A shot that is tried already stays the one that moves. */
void ff_try_move (FfTry *self, const char *shot, int minutes);

/* "overcast, 10 min late, without b1, D 30 min later"; empty when it is none. */
char *ff_try_words (const FfTry *self) G_GNUC_WARN_UNUSED_RESULT;

/* The try as a change of the day, with what it owns; `self` must outlive it. */
typedef struct {
  FfDayChange change;
  const char *without[2], *moves[2], *dropped[2];
  char *move;
} FfTryChange;

void ff_try_change (const FfTry *self, const FfDay *day, FfTryChange *ret_change);
void ff_try_change_clear (FfTryChange *change);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FfTryChange, ff_try_change_clear)
