/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-turn-round.h"

#include <glib/gi18n-lib.h>

#include "ff-item.h"

static const char *
slot_of (GPtrArray *items, const char *label)
{
  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (item->kind == FF_KIND_FILTER && g_str_equal (item->label, label))
        return item->slot;
    }
  return "";
}

static char *
off_words (const char *label, const char *slot)
{
  if (*slot == '\0')
    /* Translators: at a landing: this filter, by its label, comes off the lens. */
    return g_strdup_printf (_ ("out %s, into its place"), label);
  /* Translators: at a landing: this filter comes off the lens and goes back into its slot of the
     wallet: the slot, the label, the slot. */
  return g_strdup_printf (_ ("out %s (%s), into slot %s"), slot, label, slot);
}

static char *
on_words (const char *label, const char *slot)
{
  if (*slot == '\0')
    /* Translators: at a landing: this filter, by its label, goes onto the lens. */
    return g_strdup_printf (_ ("in %s"), label);
  /* Translators: at a landing: this filter, by its slot of the wallet and its label, goes onto the
     lens. */
  return g_strdup_printf (_ ("in %s (%s)"), slot, label);
}

typedef char *(*Say) (const char *label, const char *slot);

/* Those of `filters` that `others` lack, each in words. */
static void
add_words (GString *words, GPtrArray *filters, GPtrArray *others, GPtrArray *items, Say say)
{
  for (guint i = 0; i < filters->len; i++)
    {
      const char *label = g_ptr_array_index (filters, i);
      g_autofree char *said = NULL;

      if (g_ptr_array_find_with_equal_func (others, label, g_str_equal, NULL))
        continue;
      said = say (label, slot_of (items, label));
      g_string_append_printf (words, "%s%s", words->len > 0 ? "; " : "", said);
    }
}

char *
ff_turn_round_words (const FfPlanLine *before, const FfPlanLine *after, GPtrArray *items)
{
  GString *words = g_string_new (NULL);

  add_words (words, before->filters, after->filters, items, off_words);
  add_words (words, after->filters, before->filters, items, on_words);
  if (words->len > 0 && after->filters->len == 0)
    g_string_append_printf (words, "; %s", _ ("no filter goes on"));
  return g_string_free (words, FALSE);
}

void
ff_turn_rounds_add (FfDayPlan *plan, GPtrArray *items)
{
  for (guint i = 1; i < plan->lines->len; i++)
    {
      FfPlanLine *line = g_ptr_array_index (plan->lines, i - 1);

      g_free (line->turn_round);
      line->turn_round = ff_turn_round_words (line, g_ptr_array_index (plan->lines, i), items);
    }
}
