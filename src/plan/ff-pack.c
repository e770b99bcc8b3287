/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pack.h"

typedef struct {
  const FfPackProblem *problem;
  FfPack *pack;
  gboolean *seen; /* by item: on a line or short */
  guint next;     /* the first line whose companions are not yet looked for */
  guint next_short;
} Packing;

static void
add_line (Packing *self, guint item, FfPackNeed need, guint because)
{
  const FfPackLine line = { item, need, because };

  self->seen[item] = TRUE;
  g_array_append_val (self->pack->lines, line);
}

static void
add_short (Packing *self, FfPackShort missing)
{
  if (missing.item != FF_PACK_NO_ITEM)
    self->seen[missing.item] = TRUE;
  g_array_append_val (self->pack->shorts, missing);
}

static gboolean
is_fit (const FfPackItem *item)
{
  return item->state == FF_STATE_SERVICEABLE && !item->lapsed;
}

/* The item on a line, or among what is short; once. */
static void
want_item (Packing *self, guint index, FfPackNeed need, guint because)
{
  const FfPackItem *item = &self->problem->items[index];

  if (self->seen[index])
    return;
  if (is_fit (item))
    add_line (self, index, need, because);
  else
    add_short (self, (FfPackShort) {
      .item = index, .kind = item->kind, .count = 1, .need = need, .because = because,
      .why = item->state != FF_STATE_SERVICEABLE ? FF_PACK_STATE : FF_PACK_LAPSED });
}

/* Takes up to `count` of what is left of a kind; returns how many are still wanted. */
static guint
take_any (Packing *self, FfKind kind, guint count, FfPackNeed need)
{
  const FfPackProblem *problem = self->problem;

  for (guint i = 0; i < problem->n_items && count > 0; i++)
    {
      const FfPackItem *item = &problem->items[i];

      if (item->kind != kind || !item->may_go || self->seen[i] || !is_fit (item))
        continue;
      add_line (self, i, need, FF_PACK_NO_ITEM);
      count--;
    }
  return count;
}

static void
want_number (Packing *self, const FfPackWant *want)
{
  guint left = take_any (self, want->kind, want->count, want->need);

  if (left > 0)
    add_short (self, (FfPackShort) {
      .item = FF_PACK_NO_ITEM, .kind = want->kind, .count = left, .need = want->need,
      .why = FF_PACK_NO_MORE, .because = FF_PACK_NO_ITEM });
}

static void
want_companions (Packing *self, guint item)
{
  for (guint i = 0; i < self->problem->n_links; i++)
    if (self->problem->links[i].item == item)
      want_item (self, self->problem->links[i].with, FF_PACK_GOES_WITH, item);
}

/* The companions of each line, theirs too, until there are no new ones. What is short draws its own
 * with it: an aircraft that is mended in the night must not leave without its cable. */
static void
close_over (Packing *self)
{
  FfPack *pack = self->pack;

  while (self->next < pack->lines->len || self->next_short < pack->shorts->len)
    if (self->next < pack->lines->len)
      want_companions (self, g_array_index (pack->lines, FfPackLine, self->next++).item);
    else
      {
        guint item = g_array_index (pack->shorts, FfPackShort, self->next_short++).item;

        if (item != FF_PACK_NO_ITEM)
          want_companions (self, item);
      }
}

static void
want_spares (Packing *self, const FfPackSpare *spare)
{
  guint left = take_any (self, spare->kind, spare->count, FF_PACK_SPARE);

  if (left > spare->covered)
    add_short (self, (FfPackShort) {
      .item = FF_PACK_NO_ITEM, .kind = spare->kind, .count = left - spare->covered,
      .need = FF_PACK_SPARE, .why = FF_PACK_NO_SPARE, .because = FF_PACK_NO_ITEM });
}

/* Named ones first: a number of a kind must not take what somebody asked for by name. */
static void
meet_wants (Packing *self)
{
  for (guint i = 0; i < self->problem->n_wants; i++)
    {
      const FfPackWant *want = &self->problem->wants[i];

      if (want->item != FF_PACK_NO_ITEM)
        want_item (self, want->item, want->need, FF_PACK_NO_ITEM);
    }
  close_over (self);
  for (guint i = 0; i < self->problem->n_wants; i++)
    if (self->problem->wants[i].item == FF_PACK_NO_ITEM)
      want_number (self, &self->problem->wants[i]);
  close_over (self);
}

FfPack *
ff_pack (const FfPackProblem *problem)
{
  FfPack *pack = g_new0 (FfPack, 1);
  Packing self = { .problem = problem, .pack = pack, .seen = g_new0 (gboolean, problem->n_items) };

  pack->lines = g_array_new (FALSE, FALSE, sizeof (FfPackLine));
  pack->shorts = g_array_new (FALSE, FALSE, sizeof (FfPackShort));
  meet_wants (&self);
  for (guint i = 0; i < problem->n_spares; i++)
    want_spares (&self, &problem->spares[i]);
  close_over (&self);
  g_free (self.seen);
  return pack;
}

void
ff_pack_free (FfPack *pack)
{
  if (pack == NULL)
    return;
  g_array_unref (pack->lines);
  g_array_unref (pack->shorts);
  g_free (pack);
}
