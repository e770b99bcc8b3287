/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-limit-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-number.h"

/* One end of the bound; of a window it may count from sunrise and the like. */
static char *
end_words (const FfLimit *limit, double value, FfAnchor anchor)
{
  g_autofree char *number = NULL;

  if (limit->compare == FF_COMPARE_BY_TIME
      || (limit->compare == FF_COMPARE_WINDOW && anchor == FF_ANCHOR_CLOCK))
    return ff_clock_format ((int) CLAMP (floor (value + 0.5), 0, FF_CLOCK_MAX));
  number = ff_number_format (value, 4);
  if (limit->compare == FF_COMPARE_WINDOW)
    /* Translators: minutes after sunrise and the like: "sunset +30 min". */
    return g_strdup_printf (_ ("%s %s%s min"), ff_name_text (&ff_names_anchor, (int) anchor),
                            value >= 0 ? "+" : "", number);
  return g_strdup_printf ("%s%s%s", number, *limit->unit != '\0' ? " " : "", limit->unit);
}

static char *
ends_words (const FfLimit *limit)
{
  const char *word = ff_name_text (&ff_names_compare, (int) limit->compare);
  g_autofree char *from = NULL, *to = NULL;

  if (isnan (limit->value))
    return g_strdup (word);
  from = end_words (limit, limit->value, limit->anchor_from);
  if (isnan (limit->value_to))
    return g_strdup_printf ("%s %s", word, from);
  to = end_words (limit, limit->value_to, limit->anchor_to);
  /* Translators: "between 5 °C and 40 °C", "within the hours 06:20 and 19:57". */
  return g_strdup_printf (_ ("%s %s and %s"), word, from, to);
}

char *
ff_limit_with_datum (const FfLimit *limit, char *words)
{
  g_autofree char *taken = words;

  if (*limit->datum == '\0')
    return g_steal_pointer (&taken);
  /* Translators: a bound, and what it counts from: "at most 60 m (above the water)". */
  return g_strdup_printf (_ ("%s (%s)"), taken, limit->datum);
}

char *
ff_limit_bound_words (const FfLimit *limit)
{
  return ff_limit_with_datum (limit, ends_words (limit));
}
