/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was counted, put on the lines of the pack list; and where what is missing was last seen. */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-pack-private.h"

/* ---- Last seen ---- */

typedef struct {
  gint64 at;
  char *words;
} Sight;

static void
saw (Sight *last, gint64 at, char *words)
{
  if (at < last->at)
    {
      g_free (words);
      return;
    }
  g_free (last->words);
  last->at = at;
  last->words = words;
}

static const char *
label_of (const FfPacking *self, const char *id)
{
  const FfItem *item = ff_day_item (self->day, id);

  return item != NULL ? item->label : "";
}

static void
look_at_flight (const FfPacking *self, const FfFlight *flight, const FfItem *item, Sight *last)
{
  g_autofree char *off = ff_instant_clock ((double) flight->off, self->day->zone);

  if (g_str_equal (flight->battery_id, item->id))
    saw (last, flight->off,
         flight->line > 0 ? g_strdup_printf (_ ("last flown %s, sortie %d"), off, flight->line)
                          : g_strdup_printf (_ ("last flown %s"), off));
  else if (g_ptr_array_find_with_equal_func (flight->filter_ids, item->id, g_str_equal, NULL))
    saw (last, flight->off,
         /* Translators: a filter, when it was last before the lens, and the battery of that flight. */
         g_strdup_printf (_ ("last fitted %s, battery %s"), off,
                          label_of (self, flight->battery_id)));
}

static void
look_at_event (const FfPacking *self, const FfPackEvent *event, Sight *last)
{
  g_autofree char *clock = ff_instant_clock ((double) event->at, self->day->zone);
  g_autofree char *where
      = *event->case_label != '\0' ? g_strdup_printf (_ (", case %s"), event->case_label)
                                   : g_strdup ("");
  const char *by = event->entered_by;
  const char *stage = event->stage == FF_PACK_OUT ? _ ("counted out") : _ ("counted in");

  if (event->mark == FF_PACK_DONE)
    saw (last, event->at,
         /* Translators: "last counted out 22:10, case 3, MO" */
         g_strdup_printf (_ ("last %s %s%s%s%s"), stage, clock, where, *by != '\0' ? ", " : "", by));
}

char *
ff_packing_last_seen (const FfPacking *self, const FfItem *item)
{
  Sight last = { G_MININT64, NULL };

  for (guint i = 0; i < self->events->len; i++)
    {
      const FfPackEvent *event = g_ptr_array_index (self->events, i);

      if (g_str_equal (event->item_id, item->id))
        look_at_event (self, event, &last);
    }
  /* A flight is seen last where clocks are equal: it says more than that a thing was in a case. */
  for (guint i = 0; i < self->flights->len; i++)
    look_at_flight (self, g_ptr_array_index (self->flights, i), item, &last);
  if (last.words != NULL)
    return last.words;
  return *item->case_label != '\0'
             ? g_strdup_printf (_ ("never counted; its place is case %s"), item->case_label)
             : g_strdup (_ ("never counted; it has no case"));
}

/* ---- Events onto lines ---- */

static gboolean
is_back_or_out (const FfPackEvent *event)
{
  return event->mark == FF_PACK_DONE || event->mark == FF_PACK_MISSING;
}

static void
apply (FfPacking *self, const FfPackEvent *event)
{
  FfPackEntry *entry = ff_pack_list_find (self->list, event->item_id);
  const FfItem *item = ff_day_item (self->day, event->item_id);

  if (entry == NULL && item != NULL && is_back_or_out (event))
    {
      entry = ff_packing_add_entry (self, item);
      entry->extra = TRUE;
      entry->why = g_strdup (_ ("counted out, though the list does not ask for it"));
      entry->due = ff_packing_due (self, item);
    }
  if (entry == NULL)
    return;
  entry->marks[event->stage] = event->mark;
  ff_set_text (&entry->conditions[event->stage], event->condition);
}

/* An extra that was taken back again is no line any more. */
static void
drop_idle_extras (FfPacking *self)
{
  for (guint i = 0; i < self->list->cases->len; i++)
    {
      FfPackCase *box = g_ptr_array_index (self->list->cases, i);

      for (guint j = box->entries->len; j-- > 0;)
        {
          const FfPackEntry *entry = g_ptr_array_index (box->entries, j);

          if (entry->extra && entry->marks[FF_PACK_OUT] == FF_PACK_OPEN
              && entry->marks[FF_PACK_GROUND] == FF_PACK_OPEN
              && entry->marks[FF_PACK_BASE] == FF_PACK_OPEN)
            g_ptr_array_remove_index (box->entries, j);
        }
    }
}

/* Out and in no in-check since, at the stage that was reached last. */
static gboolean
is_not_in (const FfPackEntry *entry, FfPackStage reached)
{
  if (entry->marks[reached] == FF_PACK_MISSING)
    return TRUE;
  return entry->marks[FF_PACK_OUT] == FF_PACK_DONE && entry->marks[reached] == FF_PACK_OPEN;
}

static void
say_not_in (FfPacking *self, FfPackEntry *entry, FfPackStage reached)
{
  FfPackMissing *missing = ff_packing_add_missing (self, entry->label, entry->item_id);

  g_free (missing->reason);
  missing->reason = g_strdup_printf (entry->marks[reached] == FF_PACK_MISSING ? _ ("missing; %s")
                                     : reached == FF_PACK_GROUND
                                         ? _ ("not counted in on the ground; %s")
                                         : _ ("not counted in at base; %s"),
                                     entry->last_seen);
  ff_set_text (&missing->advice, reached == FF_PACK_GROUND
                                     ? _ ("Look for it before the van moves.")
                                     : _ ("Ask for it today: the longer it is away, the less "
                                          "anybody remembers."));
  missing->counted = TRUE;
}

static void
count_entry (FfPackList *list, const FfPackEntry *entry)
{
  if (!entry->extra)
    list->n_lines++;
  for (guint stage = 0; stage < FF_N_PACK_STAGES; stage++)
    list->n_marked[stage] += entry->marks[stage] == FF_PACK_DONE;
  list->n_not_taken += entry->marks[FF_PACK_OUT] == FF_PACK_NOT_TAKEN;
}

void
ff_packing_apply_events (FfPacking *self)
{
  FfPackList *list = self->list;
  FfPackStage reached = FF_PACK_GROUND;

  for (guint i = 0; i < self->events->len; i++)
    apply (self, g_ptr_array_index (self->events, i));
  drop_idle_extras (self);
  for (guint i = 0; i < self->events->len; i++)
    {
      const FfPackEvent *event = g_ptr_array_index (self->events, i);

      if (event->stage == FF_PACK_BASE && event->mark != FF_PACK_OPEN)
        reached = FF_PACK_BASE;
      list->back_begun = list->back_begun
                         || (event->stage != FF_PACK_OUT && event->mark != FF_PACK_OPEN);
    }
  for (guint i = 0; i < list->cases->len; i++)
    {
      FfPackCase *box = g_ptr_array_index (list->cases, i);

      for (guint j = 0; j < box->entries->len; j++)
        {
          FfPackEntry *entry = g_ptr_array_index (box->entries, j);

          entry->last_seen = ff_packing_last_seen (self, ff_day_item (self->day, entry->item_id));
          count_entry (list, entry);
          if (list->back_begun && is_not_in (entry, reached))
            {
              list->n_missing++;
              say_not_in (self, entry, reached);
            }
        }
    }
}
