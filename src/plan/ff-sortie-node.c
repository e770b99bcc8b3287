/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sortie-node.h"

#include <string.h>

#define NOISE 1e-9
#define COMPARED_AT_MOST 200 /* nodes of a stand that a new one is held against: speed alone */

/* ---- Heap ---- */

gboolean
ff_sortie_node_comes_before (const FfSortieNode *a, const FfSortieNode *b)
{
  if (a->promise != b->promise)
    return a->promise < b->promise;
  /* Of two that promise the same the one further along, so that ties do not fan out. */
  if (a->stand.stage != b->stand.stage)
    return a->stand.stage > b->stand.stage;
  return a->born < b->born;
}

static void
heap_push (GPtrArray *heap, FfSortieNode *node)
{
  guint at = heap->len;

  g_ptr_array_add (heap, node);
  while (at > 0 && ff_sortie_node_comes_before (node, heap->pdata[(at - 1) / 2]))
    {
      heap->pdata[at] = heap->pdata[(at - 1) / 2];
      at = (at - 1) / 2;
    }
  heap->pdata[at] = node;
}

FfSortieNode *
ff_sortie_nodes_pop (FfSortieNodes *self)
{
  GPtrArray *heap = self->heap;
  FfSortieNode *top, *last;
  guint at = 0;

  if (heap->len == 0)
    return NULL;
  top = heap->pdata[0];
  last = heap->pdata[heap->len - 1];
  g_ptr_array_set_size (heap, (int) heap->len - 1);
  while (2 * at + 1 < heap->len)
    {
      guint child = 2 * at + 1;

      if (child + 1 < heap->len
          && ff_sortie_node_comes_before (heap->pdata[child + 1], heap->pdata[child]))
        child++;
      if (!ff_sortie_node_comes_before (heap->pdata[child], last))
        break;
      heap->pdata[at] = heap->pdata[child];
      at = child;
    }
  if (heap->len > 0)
    heap->pdata[at] = last;
  return top;
}

/* ---- Stands ---- */

static guint
stand_hash (gconstpointer key)
{
  const guint8 *bytes = key;
  guint64 hash = 0;

  for (gsize i = 0; i < sizeof (FfStand); i++)
    hash = (hash ^ bytes[i]) * G_GUINT64_CONSTANT (0x100000001b3);
  return (guint) (hash ^ hash >> 32);
}

static gboolean
stand_equal (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, sizeof (FfStand)) == 0;
}

/* ---- Comparing ---- */

/* The minute from which a battery that is ready at `ready` is of use: not before the aircraft has
 * been turned round. What comes too late never comes. */
static int
of_use_from (int ready, int soonest, int last)
{
  return ready > last ? FF_NEVER : MAX (ready, soonest);
}

/* Whether whatever can be done from `node` can be done from `other`, at no more cost: batteries and
 * charger are free no later, minute by minute, and it is down no later. */
static gboolean
outdoes (const FfSortieNodes *self, const FfSortieNode *other, const FfSortieNode *node)
{
  int last = (int) ((self->problem->to - self->problem->from) / 60);
  int soonest = node->stand.filter == FF_UNFITTED
                    ? node->minute
                    : node->minute + self->problem->battery_change_minutes;

  if (other->cost > node->cost + NOISE || other->minute > node->minute)
    return FALSE;
  if (node->stand.class >= 0 && (other->left < node->left || other->land_by > node->land_by))
    return FALSE;
  for (guint i = 0; i < self->batteries->n_batteries; i++)
    if (of_use_from (other->ground.ready[i], soonest, last)
        > of_use_from (node->ground.ready[i], soonest, last))
      return FALSE;
  for (guint i = 0; i < FF_GROUND_SLOTS; i++)
    if (other->ground.slot_free[i] > MAX (node->ground.slot_free[i], node->minute))
      return FALSE;
  return TRUE;
}

/* Whether an older one outdoes the new one. Those that the new one outdoes are done with, and go
 * from the list. */
static gboolean
is_outdone (FfSortieNodes *self, FfSortieNode **list, const FfSortieNode *node)
{
  FfSortieNode **at = list;

  for (guint i = 0; i < COMPARED_AT_MOST && *at != NULL; i++)
    if (outdoes (self, *at, node))
      return TRUE;
    else if (outdoes (self, node, *at))
      {
        (*at)->outdone = TRUE;
        *at = (*at)->alike;
      }
    else
      at = &(*at)->alike;
  return FALSE;
}

/* ---- The whole ---- */

FfSortieNode *
ff_sortie_nodes_add (FfSortieNodes *self, const FfSortieNode *node)
{
  FfSortieNode *list = g_hash_table_lookup (self->by_stand, &node->stand);
  FfSortieNode *kept;

  if (is_outdone (self, &list, node))
    return NULL;
  kept = g_memdup2 (node, sizeof *node);
  kept->born = self->nodes->len;
  kept->alike = list;
  g_ptr_array_add (self->nodes, kept);
  g_hash_table_replace (self->by_stand, &kept->stand, kept);
  heap_push (self->heap, kept);
  return kept;
}

void
ff_sortie_nodes_init (FfSortieNodes *self,
                      const FfSortieProblem *problem,
                      const FfBatteries *batteries)
{
  *self = (FfSortieNodes) { .problem = problem, .batteries = batteries };
  self->nodes = g_ptr_array_new_with_free_func (g_free);
  self->heap = g_ptr_array_new ();
  self->by_stand = g_hash_table_new (stand_hash, stand_equal);
}

void
ff_sortie_nodes_clear (FfSortieNodes *self)
{
  g_hash_table_unref (self->by_stand);
  g_ptr_array_unref (self->heap);
  g_ptr_array_unref (self->nodes);
}
