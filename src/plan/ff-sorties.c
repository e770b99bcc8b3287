/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Best-first search for the cheapest plan in the order given. A node stands on the ground after a
 * landing: the next shot, the minute, the filter fitted, when each battery and the charger are
 * ready, and the cost so far. Its promise is that cost and the least that the rest can cost if a
 * battery were always ready (ff-sortie-bound.h), which is never more than the truth: the search is
 * over when nothing promises less than the cheapest finished node. Where batteries are plenty the
 * bound is exact and the search walks straight there; where they are short it looks around. */
#include "ff-sorties.h"

#include <math.h>
#include <string.h>

#include "ff-sortie-bound.h"
#include "ff-sortie-path.h"

#define NODES_AT_MOST 150000 /* beyond it the best found is given, and not called optimal */

/* What two nodes must have in common to be one; nothing but whole words. */
typedef struct {
  gint32 next, minute, filter;
  FfGround ground;
} Stand;

typedef struct _Node Node;
struct _Node {
  Stand stand;
  guint32 used;       /* bit per battery that has flown; of no matter but for ties */
  double cost, promise;
  guint born;         /* order of birth: ties go to the older */
  gboolean looked_at; /* its children are known */
  const Node *parent;
  FfFlown flown;      /* the leg that led here; no shots: one was left out */
};

typedef struct {
  const FfSortieProblem *problem;
  FfTakePrices prices;
  FfLegTable legs;
  FfSortieBound bound;
  GPtrArray *nodes;     /* all of them */
  GPtrArray *heap;      /* those not yet looked at, the most promising first */
  GHashTable *by_stand; /* the cheapest node of each stand */
  double cheapest;      /* cost of the cheapest finished node so far */
} Search;

/* ---- Heap ---- */

static gboolean
comes_before (const Node *a, const Node *b)
{
  if (a->promise != b->promise)
    return a->promise < b->promise;
  /* Of two that promise the same the one further along, so that ties do not fan out. */
  if (a->stand.next != b->stand.next)
    return a->stand.next > b->stand.next;
  return a->born < b->born;
}

static void
heap_push (GPtrArray *heap, Node *node)
{
  guint at = heap->len;

  g_ptr_array_add (heap, node);
  while (at > 0 && comes_before (node, heap->pdata[(at - 1) / 2]))
    {
      heap->pdata[at] = heap->pdata[(at - 1) / 2];
      at = (at - 1) / 2;
    }
  heap->pdata[at] = node;
}

static Node *
heap_pop (GPtrArray *heap)
{
  Node *top = heap->pdata[0];
  Node *last = heap->pdata[heap->len - 1];
  guint at = 0;

  g_ptr_array_set_size (heap, (int) heap->len - 1);
  while (2 * at + 1 < heap->len)
    {
      guint child = 2 * at + 1;

      if (child + 1 < heap->len && comes_before (heap->pdata[child + 1], heap->pdata[child]))
        child++;
      if (!comes_before (heap->pdata[child], last))
        break;
      heap->pdata[at] = heap->pdata[child];
      at = child;
    }
  if (heap->len > 0)
    heap->pdata[at] = last;
  return top;
}

/* ---- Nodes ---- */

static guint
stand_hash (gconstpointer key)
{
  const gint32 *words = key;
  guint64 hash = 0;

  for (gsize i = 0; i < sizeof (Stand) / sizeof *words; i++)
    {
      hash = (hash ^ (guint32) words[i]) * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
      hash ^= hash >> 32;
    }
  return (guint) hash;
}

static gboolean
stand_equal (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, sizeof (Stand)) == 0;
}

/* What is past is past and what comes too late never comes: nodes that differ only there are one. */
static void
settle (const Search *self, Node *node)
{
  int soonest = ff_sortie_turned_round (self->problem, node->stand.minute, node->stand.filter,
                                        node->stand.filter);

  for (guint i = 0; i < self->problem->n_batteries; i++)
    if (node->stand.ground.ready[i] <= soonest)
      node->stand.ground.ready[i] = 0;
    else if (node->stand.ground.ready[i] > self->prices.n_minutes)
      node->stand.ground.ready[i] = FF_NEVER;
  for (guint i = 0; i < FF_LEG_SLOTS; i++)
    if (node->stand.ground.slot_free[i] <= node->stand.minute)
      node->stand.ground.slot_free[i] = 0;
}

static gboolean
is_finished (const Search *self, const Node *node)
{
  return (guint) node->stand.next == self->problem->n_shots;
}

/* Keeps the node unless a cheaper one stands alike or a finished plan is as cheap as it promises. */
static void
keep (Search *self, Node *node)
{
  const Node *other;
  int flights = ff_sortie_flights_left (self->problem, &node->stand.ground, node->stand.minute);

  node->promise = node->cost
                  + ff_sortie_bound_get (&self->bound, (guint) node->stand.next, flights,
                                         node->stand.minute, node->stand.filter);
  if (!(node->promise < self->cheapest - 1e-9))
    return;
  settle (self, node);
  other = g_hash_table_lookup (self->by_stand, &node->stand);
  if (other != NULL && other->cost <= node->cost + 1e-9)
    return;
  node->born = self->nodes->len;
  node = g_memdup2 (node, sizeof *node);
  g_ptr_array_add (self->nodes, node);
  g_hash_table_replace (self->by_stand, &node->stand, node);
  heap_push (self->heap, node);
  if (is_finished (self, node))
    self->cheapest = MIN (self->cheapest, node->cost);
}

static void
leave_out (Search *self, const Node *from)
{
  Node node = *from;

  node.parent = from;
  node.looked_at = FALSE;
  node.flown = (FfFlown) { 0 };
  node.cost += ff_take_weight (&self->prices, (guint) from->stand.next);
  node.stand.next++;
  keep (self, &node);
}

static void
fly (Search *self, const Node *from, const FfLeg *leg, int filter, guint battery)
{
  int land_by = leg->off + self->problem->batteries[battery].usable_minutes;
  int charge_from, ready_at;
  Node node = *from;

  node.parent = from;
  node.looked_at = FALSE;
  node.flown = (FfFlown) { *leg, battery, filter };
  node.cost += leg->cost + self->prices.prices->new_battery;
  if (from->stand.filter != FF_UNFITTED && from->stand.filter != filter)
    node.cost += self->prices.prices->filter_swap;
  node.stand.next = leg->next;
  node.stand.minute = leg->down;
  node.stand.filter = filter;
  node.used |= (guint32) 1 << battery;
  ff_ground_queue (&node.stand.ground, self->problem, battery, land_by, &charge_from, &ready_at);
  keep (self, &node);
}

/* Batteries that are ready and last equally long are one choice: the one not yet used, else the one
 * that has been ready longest. */
static gboolean
is_spare_twin (const Search *self, const Node *from, const FfLeg *leg, guint battery)
{
  const FfSortieBattery *batteries = self->problem->batteries;
  const int *ready = from->stand.ground.ready;

  for (guint i = 0; i < self->problem->n_batteries; i++)
    {
      gboolean used = (from->used >> i) & 1, own_used = (from->used >> battery) & 1;

      if (i == battery || ready[i] > leg->off
          || batteries[i].usable_minutes != batteries[battery].usable_minutes)
        continue;
      if (used != own_used ? !used
                           : ready[i] < ready[battery] || (ready[i] == ready[battery] && i < battery))
        return TRUE;
    }
  return FALSE;
}

static void
try_batteries (Search *self, const Node *from, const FfLeg *leg, int filter)
{
  for (guint battery = 0; battery < self->problem->n_batteries; battery++)
    if (from->stand.ground.ready[battery] <= leg->off
        && leg->down - leg->off <= self->problem->batteries[battery].usable_minutes
        && !is_spare_twin (self, from, leg, battery))
      fly (self, from, leg, filter, battery);
}

static void
expand (Search *self, const Node *from)
{
  guint shot = (guint) from->stand.next;

  for (int filter = FF_NO_FILTER; filter < (int) self->problem->n_filters; filter++)
    {
      GArray *legs = ff_leg_table_get (&self->legs, shot, filter);
      int soonest = ff_sortie_turned_round (self->problem, from->stand.minute, from->stand.filter,
                                            filter);

      for (guint i = 0; i < legs->len; i++)
        {
          const FfLeg *leg = &g_array_index (legs, FfLeg, i);

          if (leg->off >= soonest)
            try_batteries (self, from, leg, filter);
        }
    }
  leave_out (self, from);
}

/* ---- The whole ---- */

static void
search_init (Search *self, const FfSortieProblem *problem)
{
  Node start = { .stand = { .filter = FF_UNFITTED } };

  self->problem = problem;
  self->cheapest = INFINITY;
  ff_take_prices_init (&self->prices, problem);
  ff_leg_table_init (&self->legs, &self->prices);
  ff_sortie_bound_init (&self->bound, &self->prices, &self->legs);
  self->nodes = g_ptr_array_new_with_free_func (g_free);
  self->heap = g_ptr_array_new ();
  self->by_stand = g_hash_table_new (stand_hash, stand_equal);
  ff_ground_init (&start.stand.ground, problem);
  keep (self, &start);
}

static void
search_clear (Search *self)
{
  g_hash_table_unref (self->by_stand);
  g_ptr_array_unref (self->heap);
  g_ptr_array_unref (self->nodes);
  ff_sortie_bound_clear (&self->bound);
  ff_leg_table_clear (&self->legs);
  ff_take_prices_clear (&self->prices);
}

/* Goes straight to some finished node by the most promising child each time, so that the search
 * has a plan to beat. */
static void
dive (Search *self, Node *node)
{
  while (node != NULL && !is_finished (self, node))
    {
      guint before = self->nodes->len;
      Node *best = NULL;

      node->looked_at = TRUE;
      expand (self, node);
      for (guint i = before; i < self->nodes->len; i++)
        {
          Node *child = g_ptr_array_index (self->nodes, i);

          if (best == NULL || comes_before (child, best))
            best = child;
        }
      node = best;
    }
}

/* The cheapest finished node, and whether it is proven so. Leaving every shot out is always one. */
static const Node *
search_run (Search *self, gboolean *ret_proven)
{
  const Node *best = NULL;

  *ret_proven = TRUE;
  dive (self, g_ptr_array_index (self->nodes, 0));
  while (self->heap->len > 0)
    {
      Node *node = heap_pop (self->heap);

      if (node->promise >= self->cheapest - 1e-9)
        break;
      if (node->looked_at)
        continue;
      if (self->nodes->len < NODES_AT_MOST)
        expand (self, node);
      else
        *ret_proven = FALSE;
    }
  for (guint i = 0; i < self->nodes->len; i++)
    {
      const Node *node = g_ptr_array_index (self->nodes, i);

      if (is_finished (self, node) && (best == NULL || node->cost < best->cost))
        best = node;
    }
  return best;
}

static FfSortiePlan *
read_plan (Search *self, const Node *end)
{
  g_autoptr (GArray) flown = g_array_new (FALSE, FALSE, sizeof (FfFlown));

  for (const Node *node = end; node != NULL; node = node->parent)
    if (node->flown.leg.n_shots > 0)
      g_array_prepend_val (flown, node->flown);
  return ff_sortie_path_read (&self->prices, (const FfFlown *) (gpointer) flown->data, flown->len);
}

FfSortiePlan *
ff_sorties_plan (const FfSortieProblem *problem)
{
  Search search = { 0 };
  FfSortiePlan *plan;
  gboolean proven;

  g_return_val_if_fail (problem->n_batteries <= FF_SORTIE_MAX_BATTERIES, NULL);
  g_return_val_if_fail (problem->n_shots <= FF_SORTIE_MAX_SHOTS, NULL);
  g_return_val_if_fail (problem->to >= problem->from, NULL);
  search_init (&search, problem);
  plan = read_plan (&search, search_run (&search, &proven));
  plan->optimal = proven;
  search_clear (&search);
  return plan;
}
