/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-try.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-names.h"

void
ff_try_clear (FfTry *self)
{
  g_free (self->without);
  g_free (self->shot);
  *self = (FfTry) FF_TRY_INIT;
}

void
ff_try_set (FfTry *self, const FfTry *other)
{
  const FfTry none = FF_TRY_INIT;
  FfTry copy = other != NULL ? *other : none;

  /* Before the old one goes: both may be the same. */
  copy.without = g_strdup (copy.without);
  copy.shot = g_strdup (copy.shot);
  ff_try_clear (self);
  *self = copy;
}

gboolean
ff_try_is_none (const FfTry *self)
{
  return self->sky == FF_TRY_SAME_SKY && self->late_minutes == 0 && self->without == NULL
         && (self->shot == NULL || (self->move_minutes == 0 && !self->drop));
}

void
ff_try_move (FfTry *self, const char *shot, int minutes)
{
  if (self->shot == NULL)
    self->shot = g_strdup (shot);
  self->move_minutes += minutes;
  if (self->move_minutes == 0)
    self->move_minutes = minutes;
}

/* "D 30 min later", "without shot D"; NULL: no shot is touched. */
static char *
shot_words (const FfTry *self)
{
  if (self->shot == NULL)
    return NULL;
  if (self->drop)
    /* Translators: a shot is not flown; its label. */
    return g_strdup_printf (_ ("shot %s dropped"), self->shot);
  if (self->move_minutes > 0)
    /* Translators: label of a shot whose window is moved by so many minutes. */
    return g_strdup_printf (_ ("shot %s %d min later"), self->shot, self->move_minutes);
  if (self->move_minutes < 0)
    return g_strdup_printf (_ ("shot %s %d min earlier"), self->shot, -self->move_minutes);
  return NULL;
}

char *
ff_try_words (const FfTry *self)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  char *shot = shot_words (self);

  if (self->sky != FF_TRY_SAME_SKY)
    g_ptr_array_add (parts, g_strdup (ff_name_text (&ff_names_sky, self->sky)));
  if (self->late_minutes != 0)
    /* Translators: the first take-off is so many minutes late. */
    g_ptr_array_add (parts, g_strdup_printf (_ ("%d min late"), self->late_minutes));
  if (self->without != NULL)
    /* Translators: the label of an item that is not there: "without b1". */
    g_ptr_array_add (parts, g_strdup_printf (_ ("without %s"), self->without));
  if (shot != NULL)
    g_ptr_array_add (parts, shot);
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (", ", (char **) parts->pdata);
}

/* "D=18:20-18:35": the window as it is stored, moved within the day. */
static char *
move_of (const FfTry *self, const FfDay *day)
{
  int from, to, by;
  g_autofree char *opens = NULL;
  g_autofree char *closes = NULL;

  if (!ff_day_shot_clocks (day, self->shot, &from, &to))
    return NULL;
  by = CLAMP (self->move_minutes, -from, 24 * 60 - to);
  opens = ff_clock_format (from + by);
  closes = ff_clock_format (to + by);
  return g_strdup_printf ("%s=%s-%s", self->shot, opens, closes);
}

void
ff_try_change (const FfTry *self, const FfDay *day, FfTryChange *ret_change)
{
  FfTryChange *made = ret_change;

  *made = (FfTryChange) { .change = { .other_sky = self->sky != FF_TRY_SAME_SKY,
                                      .sky = (FfSky) MAX (self->sky, 0),
                                      .late_minutes = self->late_minutes } };
  made->without[0] = self->without;
  made->dropped[0] = self->drop ? self->shot : NULL;
  made->move = self->shot != NULL && !self->drop && self->move_minutes != 0
                   ? move_of (self, day)
                   : NULL;
  made->moves[0] = made->move;
  if (made->without[0] != NULL)
    made->change.without = made->without;
  if (made->dropped[0] != NULL)
    made->change.drop = made->dropped;
  if (made->moves[0] != NULL)
    made->change.moves = made->moves;
}

void
ff_try_change_clear (FfTryChange *change)
{
  g_clear_pointer (&change->move, g_free);
}
