/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sentences of the pack list. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-number.h"
#include "ff-pack-private.h"

static const FfName needs[] = {
  /* Translators: why a thing is on the pack list. */
  [FF_PACK_NEEDED] = { "needed", N_ ("needed") },
  [FF_PACK_IN_CASE] = { "in_case", N_ ("in case") },
  [FF_PACK_GOES_WITH] = { "goes_with", N_ ("goes with") },
  [FF_PACK_DOCUMENT] = { "document", N_ ("document") },
  [FF_PACK_SPARE] = { "spare", N_ ("spare") },
};
const FfNames ff_names_pack_need = { "need", needs, G_N_ELEMENTS (needs) };

char *
ff_packing_join (const GPtrArray *words)
{
  GString *joined = g_string_new (NULL);

  for (guint i = 0; i < words->len; i++)
    g_string_append_printf (joined, "%s%s",
                            i == 0 ? ""
                                   : i + 1 < words->len ? ", "
                                                        /* Translators: between the last two of a
                                                           list: "1, 2 and 3". */
                                                        : _ (" and "),
                            (const char *) g_ptr_array_index (words, i));
  return g_string_free (joined, FALSE);
}

/* ---- Documents ---- */

/* "valid until Sat 18 Sep, the day of the job itself" */
static char *
until_words (const FfPacking *self, const FfItem *item)
{
  g_autofree char *shown = NULL;
  FfDate until;

  if (!ff_date_parse (item->valid_until, &until, NULL))
    return g_strdup ("");
  shown = ff_date_format_short (until);
  if (self->day->has_date && ff_date_compare (until, self->day->date) == 0)
    return g_strdup_printf (_ ("valid until %s, the day of the job itself"), shown);
  return g_strdup_printf (_ ("valid until %s"), shown);
}

/* What ends soon is said with what is due. */
static char *
why_document (const FfPacking *self, const FfItem *item)
{
  g_autofree char *due = ff_packing_due (self, item);

  if (*item->valid_until == '\0')
    return g_strdup (_ ("no end of validity entered"));
  return *due != '\0' ? g_strdup (_ ("document of the job"))
                      : g_strdup_printf (_ ("valid until %s"), item->valid_until);
}

/* ---- Why a line is there ---- */

static gboolean
line_uses (const FfPlanLine *line, const FfItem *item)
{
  if (item->kind == FF_KIND_BATTERY)
    return g_str_equal (line->battery, item->label);
  return item->kind == FF_KIND_FILTER
         && g_ptr_array_find_with_equal_func (line->filters, item->label, g_str_equal, NULL);
}

/* "sorties 1, 2 and 3"; empty: none. */
static char *
sorties_of (const FfDayPlan *plan, const FfItem *item)
{
  g_autoptr (GPtrArray) numbers = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *joined = NULL;

  for (guint i = 0; plan != NULL && i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      if (line_uses (line, item))
        g_ptr_array_add (numbers, g_strdup_printf ("%d", line->line));
    }
  if (numbers->len == 0)
    return g_strdup ("");
  joined = ff_packing_join (numbers);
  return g_strdup_printf (ngettext ("sortie %s", "sorties %s", numbers->len), joined);
}

static char *
why_needed (const FfPacking *self, const FfItem *item)
{
  g_autofree char *sorties = sorties_of (self->plan, item);

  if (*sorties != '\0')
    return g_steal_pointer (&sorties);
  if (item->kind == FF_KIND_CARD)
    return g_strdup (self->list->cards);
  if (item->kind == FF_KIND_AIRCRAFT)
    return g_strdup (_ ("the aircraft of the job"));
  if (item->kind == FF_KIND_CHARGER && self->plan != NULL && self->plan->charges->len > 0)
    return g_strdup (_ ("the plan charges on site"));
  return g_strdup (_ ("on the list of the job"));
}

/* "thin cloud: F, H; overcast: A" */
static char *
why_in_case (const FfPacking *self, const FfItem *item)
{
  const FfDayPlan *plans[] = { self->plan, self->wish };

  for (guint i = 0; i < G_N_ELEMENTS (plans); i++)
    {
      const FfBagItem *found
          = plans[i] != NULL && plans[i]->cases != NULL
                ? ff_bag_find (plans[i]->cases->bag->in_case, item->label) : NULL;

      if (found != NULL)
        return g_strdup_printf (_ ("in case of %s"), found->why);
    }
  return g_strdup (_ ("in case the day turns out otherwise"));
}

char *
ff_packing_why (const FfPacking *self, const FfPackLine *line)
{
  const FfItem *item = g_ptr_array_index (self->day->items, line->item);

  switch (line->need)
    {
    case FF_PACK_IN_CASE:
      return why_in_case (self, item);
    case FF_PACK_GOES_WITH:
      {
        const FfItem *leader = g_ptr_array_index (self->day->items, line->because);

        return g_strdup_printf (_ ("goes with %s"), leader->label);
      }
    case FF_PACK_DOCUMENT:
      return why_document (self, item);
    case FF_PACK_SPARE:
      return g_strdup (_ ("by the rule of spares"));
    case FF_PACK_NEEDED:
    default:
      return why_needed (self, item);
    }
}

/* ---- What is due ---- */

char *
ff_packing_due (const FfPacking *self, const FfItem *item)
{
  double total = ff_wear_total (item, self->wear);
  g_autofree char *due = NULL, *used = NULL;
  gboolean cycles;
  FfDue answer;

  ff_due (item, self->wear, self->day->has_date ? self->day->job->date : "2000-01-01", &answer);
  if (answer.answer == FF_DUE_NOT)
    return g_strdup ("");
  if (answer.unit == FF_DUE_DATE)
    return until_words (self, item);
  cycles = answer.unit == FF_DUE_CYCLES;
  due = ff_number_format (item->due_at, 1);
  used = ff_number_format (total, 1);
  if (answer.answer == FF_DUE_NOW)
    return g_strdup_printf (cycles ? _ ("overdue: %s cycles, %s so far")
                                   : _ ("overdue: %s h, %s h so far"),
                            due, used);
  return g_strdup_printf (cycles ? _ ("check due at %s cycles, %s so far")
                                 : _ ("check due at %s h, %s h so far"),
                          due, used);
}

/* ---- What is short ---- */

static char *
back_words (const FfItem *item)
{
  FfDate date;
  g_autofree char *shown = NULL;

  if (!ff_date_parse (item->out_until, &date, NULL))
    return g_strdup ("");
  shown = ff_date_format_short (date);
  return g_strdup_printf (_ (", back %s"), shown);
}

/* "out with Brackenholt, back Sun 19 Sep: lent" */
static char *
state_words (const FfItem *item)
{
  g_autofree char *back = item->state == FF_STATE_OUT ? back_words (item) : g_strdup ("");
  const char *state = ff_name_text (&ff_names_state, (int) item->state);
  const char *why = item->state_why;

  if (item->state == FF_STATE_OUT && *item->out_with != '\0')
    return g_strdup_printf (_ ("out with %s%s: %s"), item->out_with, back, why);
  return g_strdup_printf ("%s%s%s%s", state, back, *why != '\0' ? ": " : "", why);
}

/* What the plan does instead of what is broken or lent. */
static char *
instead_words (const FfPacking *self, const FfItem *item)
{
  if (item->kind == FF_KIND_AIRCRAFT)
    return g_strdup (_ ("Nothing is flown without it: choose another aircraft in the job."));
  if (self->plan == NULL || (item->kind != FF_KIND_FILTER && item->kind != FF_KIND_BATTERY))
    return g_strdup (item->state == FF_STATE_OUT ? _ ("Fetch it, or take another in its place.")
                                                 : _ ("Take another in its place."));
  if (self->plan->missed->len > self->wish->missed->len)
    {
      const FfPlanMiss *miss = g_ptr_array_index (self->plan->missed, 0);

      return g_strdup_printf (_ ("Without it shot %s is not flown: %s."), miss->shot,
                              miss->reason);
    }
  if (self->plan->lines->len != self->wish->lines->len)
    return g_strdup_printf (_ ("The plan flies every shot without it, in %u sorties instead of "
                               "%u."),
                            self->plan->lines->len, self->wish->lines->len);
  return g_strdup (_ ("The plan is made without it and flies every shot that it flew with it."));
}

FfPackMissing *
ff_packing_add_missing (FfPacking *self, const char *item, const char *item_id)
{
  FfPackMissing *missing = g_new0 (FfPackMissing, 1);

  missing->item = g_strdup (item);
  missing->item_id = g_strdup (item_id);
  missing->reason = g_strdup ("");
  missing->advice = g_strdup ("");
  g_ptr_array_add (self->list->shorts, missing);
  return missing;
}

static void
add_short_item (FfPacking *self, const FfPackShort *missing)
{
  const FfItem *item = g_ptr_array_index (self->day->items, missing->item);
  FfPackMissing *said = ff_packing_add_missing (self, item->label, item->id);
  gboolean wished = self->wish != NULL;

  g_free (said->reason);
  g_free (said->advice);
  if (missing->why == FF_PACK_LAPSED)
    {
      said->reason = g_strdup_printf (_ ("no longer valid on the day: it ended %s"),
                                      item->valid_until);
      said->advice = g_strdup (_ ("Have it renewed before the job, and enter the new date."));
      return;
    }
  said->reason = state_words (item);
  said->advice = wished || self->plan == NULL ? instead_words (self, item) : g_strdup ("");
}

static char *
no_spare_words (const FfPacking *self, const FfPackShort *missing)
{
  if (missing->kind != FF_KIND_BATTERY)
    return g_strdup (_ ("no spare left: all that are serviceable are needed"));
  return g_strdup_printf (_ ("no spare left: all that are serviceable are needed%s%s"),
                          self->no_spare_why != NULL ? _ (", and ") : "",
                          self->no_spare_why != NULL ? self->no_spare_why : "");
}

static void
add_short_number (FfPacking *self, const FfPackShort *missing)
{
  FfPackMissing *said
      = ff_packing_add_missing (self, ff_name_text (&ff_names_kind, (int) missing->kind), "");

  g_free (said->reason);
  g_free (said->advice);
  if (missing->why == FF_PACK_NO_SPARE)
    {
      said->reason = no_spare_words (self, missing);
      said->advice = g_strdup (_ ("Bring one more, or change the number of spares."));
      return;
    }
  said->reason = g_strdup_printf (ngettext ("%u more is needed than is serviceable",
                                            "%u more are needed than are serviceable",
                                            missing->count),
                                  missing->count);
  said->advice = missing->kind == FF_KIND_CARD
                     ? g_strdup_printf (_ ("The day records %s."), self->list->cards)
                     : g_strdup ("");
}

void
ff_packing_add_short (FfPacking *self, const FfPackShort *missing)
{
  if (missing->item != FF_PACK_NO_ITEM)
    add_short_item (self, missing);
  else
    add_short_number (self, missing);
}

/* ---- The filter wallet ---- */

void
ff_packing_add_swaps (FfPacking *self)
{
  for (guint i = 0; self->plan != NULL && i < self->plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (self->plan->lines, i);

      if (*line->turn_round != '\0')
        /* Translators: a number of a sortie, then what is done to the filters at its landing. */
        g_ptr_array_add (self->list->swaps, g_strdup_printf (_ ("After sortie %d: %s"), line->line,
                                                             line->turn_round));
    }
}
