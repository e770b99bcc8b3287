/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-try.h"

#include <glib/gi18n-lib.h>

#include "ff-names.h"

void
ff_try_clear (FfTry *self)
{
  g_free (self->without);
  *self = (FfTry) FF_TRY_INIT;
}

void
ff_try_set (FfTry *self, const FfTry *other)
{
  const FfTry none = FF_TRY_INIT;
  FfTry copy = other != NULL ? *other : none;

  /* Before the old one goes: both may be the same. */
  copy.without = g_strdup (copy.without);
  ff_try_clear (self);
  *self = copy;
}

gboolean
ff_try_is_none (const FfTry *self)
{
  return self->sky == FF_TRY_SAME_SKY && self->late_minutes == 0 && self->without == NULL;
}

char *
ff_try_words (const FfTry *self)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  if (self->sky != FF_TRY_SAME_SKY)
    g_ptr_array_add (parts, g_strdup (ff_name_text (&ff_names_sky, self->sky)));
  if (self->late_minutes != 0)
    /* Translators: the first take-off is so many minutes late. */
    g_ptr_array_add (parts, g_strdup_printf (_ ("%d min late"), self->late_minutes));
  if (self->without != NULL)
    /* Translators: the label of an item that is not there: "without b1". */
    g_ptr_array_add (parts, g_strdup_printf (_ ("without %s"), self->without));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (", ", (char **) parts->pdata);
}
