/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a day wants in the van: stated from the plan and the gear list of the job. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-media.h"
#include "ff-pack-private.h"

guint
ff_packing_index (const FfPacking *self, const char *label)
{
  for (guint i = 0; i < self->day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (self->day->items, i);

      if (g_str_equal (item->label, label))
        return i;
    }
  return FF_PACK_NO_ITEM;
}

static guint
index_of_id (const FfPacking *self, const char *id)
{
  for (guint i = 0; i < self->day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (self->day->items, i);

      if (g_str_equal (item->id, id))
        return i;
    }
  return FF_PACK_NO_ITEM;
}

/* ---- Items and what goes with them ---- */

static gboolean
has_lapsed (const FfPacking *self, const FfItem *item)
{
  FfDate until;

  return *item->valid_until != '\0' && self->day->has_date
         && ff_date_parse (item->valid_until, &until, NULL)
         && ff_date_compare (until, self->day->date) < 0;
}

/* A card that can't keep up with the camera is no card for this day. */
static gboolean
keeps_up (const FfPacking *self, const FfItem *card)
{
  const FfItem *camera = ff_day_camera (self->day);

  if (camera == NULL || isnan (camera->bitrate_mbits) || *card->speed_class == '\0')
    return TRUE;
  for (guint i = 0; i < ff_card_class_count (); i++)
    if (g_ascii_strcasecmp (ff_card_class (i)->name, card->speed_class) == 0)
      return ff_card_class (i)->mbs >= ff_media_write_mbs (camera->bitrate_mbits);
  return TRUE;
}

/* Whether it counts when so many of its kind are wanted. */
static gboolean
may_stand_in (const FfPacking *self, const FfItem *item)
{
  if (item->kind == FF_KIND_CARD)
    return keeps_up (self, item);
  return item->kind != FF_KIND_BATTERY || item->battery_use == FF_BATTERY_USE_AIRCRAFT;
}

static void
add_items (FfPacking *self)
{
  for (guint i = 0; i < self->day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (self->day->items, i);
      FfPackItem one = { item->label, item->kind, item->state, has_lapsed (self, item),
                         ff_day_uses (self->day, item) && may_stand_in (self, item) };

      g_array_append_val (self->items, one);
    }
}

static void
add_link (FfPacking *self, guint item, guint with)
{
  const FfPackLink link = { item, with };

  if (item != FF_PACK_NO_ITEM && with != FF_PACK_NO_ITEM)
    g_array_append_val (self->links, link);
}

static void
add_links (FfPacking *self)
{
  for (guint i = 0; i < self->day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (self->day->items, i);

      for (guint j = 0; j < item->with_ids->len; j++)
        add_link (self, i, index_of_id (self, g_ptr_array_index (item->with_ids, j)));
      if (item->kind == FF_KIND_AIRCRAFT && *item->camera_id != '\0')
        add_link (self, i, index_of_id (self, item->camera_id));
    }
}

/* ---- Wants ---- */

static void
want_item (FfPacking *self, guint item, FfPackNeed need)
{
  const FfPackWant want = { item, FF_KIND_OTHER, 1, need };

  if (item != FF_PACK_NO_ITEM)
    g_array_append_val (self->wants, want);
}

static void
want_plan (FfPacking *self, const FfDayPlan *plan)
{
  for (guint i = 0; i < plan->bag_needed->len; i++)
    want_item (self, ff_packing_index (self, g_ptr_array_index (plan->bag_needed, i)),
               FF_PACK_NEEDED);
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      want_item (self, ff_packing_index (self, line->battery), FF_PACK_NEEDED);
    }
  for (guint i = 0; i < plan->charges->len; i++)
    for (guint j = 0; j < self->day->items->len; j++)
      {
        const FfItem *item = g_ptr_array_index (self->day->items, j);

        if (item->kind == FF_KIND_CHARGER && ff_day_uses (self->day, item))
          want_item (self, j, FF_PACK_NEEDED);
      }
}

static void
want_in_case (FfPacking *self, const FfDayPlan *plan)
{
  for (guint i = 0; i < plan->bag_in_case->len; i++)
    want_item (self, ff_packing_index (self, g_ptr_array_index (plan->bag_in_case, i)),
               FF_PACK_IN_CASE);
  for (guint i = 0; plan->cases != NULL && i < plan->cases->bag->in_case->len; i++)
    {
      const FfBagItem *item = g_ptr_array_index (plan->cases->bag->in_case, i);

      want_item (self, ff_packing_index (self, item->label), FF_PACK_IN_CASE);
    }
}

/* Only what is broken or lent: the rest of the wish is in no plan, since a better one is flown. */
static void
want_what_the_wish_misses (FfPacking *self)
{
  if (self->wish == NULL)
    return;
  for (guint i = 0; i < self->wish->bag_needed->len; i++)
    {
      guint item = ff_packing_index (self, g_ptr_array_index (self->wish->bag_needed, i));

      if (item != FF_PACK_NO_ITEM
          && g_array_index (self->items, FfPackItem, item).state != FF_STATE_SERVICEABLE)
        want_item (self, item, FF_PACK_NEEDED);
    }
  for (guint i = 0; i < self->wish->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (self->wish->lines, i);
      guint item = ff_packing_index (self, line->battery);

      if (item != FF_PACK_NO_ITEM
          && g_array_index (self->items, FfPackItem, item).state != FF_STATE_SERVICEABLE)
        want_item (self, item, FF_PACK_NEEDED);
    }
}

static void
want_in_case_of_the_wish (FfPacking *self)
{
  for (guint i = 0; self->wish != NULL && i < self->wish->bag_in_case->len; i++)
    {
      guint item = ff_packing_index (self, g_ptr_array_index (self->wish->bag_in_case, i));

      if (item != FF_PACK_NO_ITEM
          && g_array_index (self->items, FfPackItem, item).state != FF_STATE_SERVICEABLE)
        want_item (self, item, FF_PACK_IN_CASE);
    }
}

/* What the plan chooses among is not wanted by being on the list of the job; nor is a case, which
 * goes with what is in it. */
static gboolean
is_chosen_by_plan (const FfPacking *self, const FfItem *item)
{
  if (item->kind == FF_KIND_BATTERY && item->battery_use != FF_BATTERY_USE_AIRCRAFT)
    return FALSE;
  if (item->kind == FF_KIND_FILTER || item->kind == FF_KIND_BATTERY || item->kind == FF_KIND_CARD
      || item->kind == FF_KIND_PROPELLERS)
    return self->plan != NULL;
  return item->kind == FF_KIND_AIRCRAFT || item->kind == FF_KIND_CAMERA
         || item->kind == FF_KIND_CASE;
}

static void
want_list_of_job (FfPacking *self)
{
  const FfJob *job = self->day->job;

  for (guint i = 0; i < job->item_ids->len; i++)
    {
      guint index = index_of_id (self, g_ptr_array_index (job->item_ids, i));
      const FfItem *item;

      if (index == FF_PACK_NO_ITEM)
        continue;
      item = g_ptr_array_index (self->day->items, index);
      if (!is_chosen_by_plan (self, item) && item->state != FF_STATE_RETIRED)
        want_item (self, index,
                   item->kind == FF_KIND_DOCUMENT ? FF_PACK_DOCUMENT : FF_PACK_NEEDED);
    }
  if (job->item_ids->len == 0)
    g_ptr_array_add (self->list->remarks,
                     g_strdup (_ ("This job has no gear list: radios, tablet, safety kit and "
                                  "documents are not asked for. Enter the list in the job.")));
}

/* ---- Cards ---- */

static double
minutes_of_takes (const FfDayPlan *plan)
{
  double minutes = 0;

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, j);

          minutes += (double) (take->to - take->from) / FF_MINUTE;
        }
    }
  return minutes;
}

/* Cards in the order of the list until the day's recording fits; one at least. Stills and time-lapse
 * are counted as if they ran at the camera's rate, which they stay below. */
static void
want_cards (FfPacking *self)
{
  const FfItem *camera = ff_day_camera (self->day);
  double minutes = self->plan != NULL ? minutes_of_takes (self->plan) : 0;
  FfPackWant want = { FF_PACK_NO_ITEM, FF_KIND_CARD, 0, FF_PACK_NEEDED };
  double left, last = 0;

  if (camera == NULL || isnan (camera->bitrate_mbits) || self->plan == NULL)
    return;
  left = ff_media_gb_per_hour (camera->bitrate_mbits) * minutes / 60;
  g_free (self->list->cards);
  self->list->cards = g_strdup_printf (_ ("%.0f GB for %.0f min at %.0f Mbit/s"), left, minutes,
                                       camera->bitrate_mbits);
  for (guint i = 0; i < self->day->items->len && (left > 0 || want.count == 0); i++)
    {
      const FfItem *item = g_ptr_array_index (self->day->items, i);
      const FfPackItem *one = &g_array_index (self->items, FfPackItem, i);

      if (item->kind != FF_KIND_CARD || !one->may_go || one->state != FF_STATE_SERVICEABLE)
        continue;
      left -= item->capacity_gb;
      last = item->capacity_gb;
      want.count++;
    }
  if (left > 0 || want.count == 0)
    want.count += last > 0 ? (guint) ceil (left / last) : 1;
  g_array_append_val (self->wants, want);
}

/* ---- Spares ---- */

/* How many shots are not flown without this battery, and one of them. */
static guint
lost_without (FfPacking *self, const char *label, const FfShot **ret_lost)
{
  const char *without[] = { label, NULL };
  const FfDayChange change = { .without = without };
  g_autoptr (FfDayProblem) problem = ff_day_problem_new (self->day, &change, NULL);
  g_autoptr (FfSortiePlan) sorties = NULL;

  *ret_lost = NULL;
  if (problem == NULL)
    return G_MAXUINT;
  sorties = ff_sorties_plan (&problem->problem);
  if (sorties->missed->len > 0)
    *ret_lost = g_ptr_array_index (
        problem->records, g_array_index (sorties->missed, FfSortieMiss, 0).shot);
  return sorties->missed->len;
}

static gboolean
stands_without (FfPacking *self, const char *label)
{
  const FfShot *lost;
  guint missed = lost_without (self, label, &lost);

  if (missed <= self->plan->missed->len)
    return TRUE;
  g_free (self->no_spare_why);
  self->no_spare_why
      = lost != NULL ? g_strdup_printf (_ ("without %s shot %s is not flown"), label, lost->label)
                     : g_strdup_printf (_ ("without %s the day can't be flown"), label);
  return FALSE;
}

/* Whether the day is flown in full without any one of its batteries: then one of them is a spare
 * already. */
static gboolean
survives_any_loss (FfPacking *self)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < self->plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (self->plan->lines, i);

      if (g_hash_table_add (seen, line->battery) && !stands_without (self, line->battery))
        return FALSE;
    }
  return TRUE;
}

static void
add_spares (FfPacking *self)
{
  for (guint i = 0; i < self->rules->len; i++)
    {
      const FfSpareRule *rule = g_ptr_array_index (self->rules, i);
      FfPackSpare spare = { rule->kind, (guint) rule->count, 0 };

      if (rule->kind == FF_KIND_BATTERY && self->plan != NULL && self->plan->lines->len > 0
          && survives_any_loss (self))
        spare.covered = 1;
      g_array_append_val (self->spares, spare);
    }
}

void
ff_packing_state_needs (FfPacking *self)
{
  const FfItem *aircraft = ff_day_aircraft (self->day);

  add_items (self);
  add_links (self);
  if (aircraft != NULL)
    want_item (self, ff_packing_index (self, aircraft->label), FF_PACK_NEEDED);
  if (self->plan != NULL)
    want_plan (self, self->plan);
  want_what_the_wish_misses (self);
  want_cards (self);
  want_list_of_job (self);
  if (self->plan != NULL)
    want_in_case (self, self->plan);
  want_in_case_of_the_wish (self);
  add_spares (self);
}
