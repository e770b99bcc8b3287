/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Best-first search for the cheapest plan of one order. A node stands on the ground after a
 * landing: what is still to be decided, the minute, the battery and the filter fitted, when each
 * battery and the charger are ready, and the cost so far. Its promise is that cost and the least
 * that the rest can cost if a battery were always ready (ff-sortie-bound.h), which is never more
 * than the truth: the search is over when nothing promises less than the cheapest finished node.
 * Where batteries are plenty the bound is exact and the search walks straight there; where they are
 * short it looks around, and dives to a finished node now and then, so that it has a plan to beat.
 * A node that another one outdoes (ff-sortie-node.c) goes no further. */
#include "ff-sortie-search.h"

#include <math.h>
#include <string.h>

#include "ff-sortie-bound.h"
#include "ff-sortie-path.h"

#define NOISE 1e-9
#define DIVE_EVERY 256 /* nodes looked at */

typedef struct {
  const FfSortieProblem *problem;
  const FfTakePrices *prices;
  const FfOrder *order;
  const FfSearchLimits *limits;
  FfBatteries batteries;
  FfLegTable legs;
  FfSortieBound bound;
  FfSortieNodes nodes;
  guint32 alone;            /* places of the classes of one battery that may be part-used */
  guint finished;           /* the stage at which all is decided */
  const FfSortieNode *best; /* the cheapest finished node */
  double cheapest;          /* what it costs, or what is to be beaten */
  guint n_looked_at;
  gboolean stopped;
} Search;

/* ---- Nodes ---- */

static int
flights_left (const Search *self, const FfSortieNode *node)
{
  return ff_ground_flights_left (&node->ground, &self->batteries, self->problem, node->minute);
}

static int
relaunches_left (const Search *self, const FfSortieNode *node)
{
  if (node->stand.class < 0)
    return 0;
  return ff_sortie_bound_relaunches (
      &self->bound,
      (int) self->batteries.classes[node->stand.class].legs - node->stand.legs, node->left);
}

/* Groups that have no shots left match anything. */
static void
forget_groups (const Search *self, FfSortieNode *node)
{
  for (guint i = 0; i < FF_SORTIE_MAX_GROUPS; i++)
    if (node->stand.matched[i] != FF_UNFITTED
        && !ff_order_has_group (self->order, self->problem, node->stand.stage, i + 1))
      node->stand.matched[i] = FF_UNFITTED;
}

/* Keeps the node unless a finished plan is as cheap as it promises. */
static void
keep (Search *self, FfSortieNode *node)
{
  const FfSortieNode *kept;

  node->promise = node->cost
                  + ff_sortie_bound_get (&self->bound, node->stand.stage,
                                         flights_left (self, node), relaunches_left (self, node),
                                         node->minute, node->stand.filter);
  if (!(node->promise < self->cheapest - NOISE))
    return;
  if (self->legs.groups != 0)
    forget_groups (self, node);
  kept = ff_sortie_nodes_add (&self->nodes, node);
  if (kept == NULL || kept->stand.stage != self->finished)
    return;
  self->cheapest = kept->cost;
  self->best = kept;
}

static FfSortieNode
child_of (const FfSortieNode *from)
{
  FfSortieNode node = *from;

  node.parent = from;
  node.leg = NULL;
  node.looked_at = node.outdone = node.relaunched = FALSE;
  return node;
}

/* The battery that is in comes out for good and queues at the charger. */
static void
take_out (const Search *self, FfSortieNode *node)
{
  int charge_from, ready_at;

  if (node->stand.class < 0)
    return;
  ff_ground_queue (&node->ground, self->problem, node->land_by, &charge_from, &ready_at);
  ff_ground_bring_back (&node->ground, &self->batteries.classes[node->stand.class], ready_at);
  node->stand.class = -1;
  node->stand.legs = 0;
  node->left = node->land_by = 0;
}

/* ---- Steps ---- */

static void
leave_out (Search *self, const FfSortieNode *from)
{
  FfSortieNode node = child_of (from);
  guint place = ff_order_place (self->order, from->stand.stage);

  if (place < self->order->n_fixed)
    {
      node.cost += ff_take_weight (self->prices, self->order->fixed[place]);
      node.stand.stage += 1u << self->order->n_free;
    }
  else
    {
      for (guint i = 0; i < self->order->n_free; i++)
        if (!((from->stand.stage >> i) & 1))
          node.cost += ff_take_weight (self->prices, self->order->free[i]);
      node.stand.stage = self->finished;
    }
  keep (self, &node);
}

/* What shots that must match cost behind this filter after those flown before. */
static double
price_of_matching (const Search *self, const FfSortieNode *from, const FfLeg *leg, int filter)
{
  double price = 0;

  for (guint i = 0; i < FF_SORTIE_MAX_GROUPS; i++)
    if ((leg->groups >> i) & 1)
      price += ff_take_match_price (self->prices, from->stand.matched[i], filter);
  return price;
}

static guint
stage_after (const Search *self, const FfSortieNode *from, const FfLeg *leg)
{
  guint place = leg->place == FF_LEG_NO_PLACE ? ff_order_place (self->order, from->stand.stage)
                                              : leg->place;

  return ff_order_stage (self->order, place,
                         ff_order_flown (self->order, from->stand.stage) | leg->flown);
}

/* A leg that may be flown: from where, behind what, and what it adds to the cost. */
typedef struct {
  const FfSortieNode *from;
  const FfGround *ground; /* once the battery that is in has come out */
  const FfLeg *leg;
  int filter;
  guint stage;   /* after it */
  double price;
} Step;

/* Whether the step could lead to a cheaper plan at all. */
static gboolean
promises (const Search *self, const Step *step, int flights, int relaunches)
{
  double least = ff_sortie_bound_get (&self->bound, step->stage, flights, relaunches,
                                      step->leg->down, step->filter);

  return step->from->cost + step->price + least < self->cheapest - NOISE;
}

/* The aircraft is down again on a battery of `class`, which had `left` minutes at take-off. */
static void
land (Search *self, FfSortieNode *node, const Step *step, int class, int left, guint legs)
{
  const FfLeg *leg = step->leg;
  gboolean may_relaunch;

  node->cost += step->price;
  node->leg = leg;
  node->flown_class = (gint8) class;
  node->stand.stage = step->stage;
  node->stand.filter = (gint16) step->filter;
  for (guint i = 0; i < FF_SORTIE_MAX_GROUPS; i++)
    if ((leg->groups >> i) & 1)
      node->stand.matched[i] = (gint16) step->filter;
  node->minute = leg->down;
  node->land_by = (gint16) (leg->off + left);
  node->left = (gint16) (left - (leg->down - leg->off));
  node->stand.class = (gint8) class;
  node->stand.legs = (guint8) legs;
  may_relaunch = legs < self->batteries.classes[class].legs
                 && node->left >= self->bound.shortest_leg;
  if (!may_relaunch)
    take_out (self, node);
  keep (self, node);
}

static void
fly (Search *self, const Step *step, int class_index)
{
  const FfBatteryClass *class = &self->batteries.classes[class_index];
  FfSortieNode node = child_of (step->from);
  gboolean part_used = class->alone >= 0 && (node.stand.first_charge >> class->first) & 1;
  guint used = 0;

  take_out (self, &node);
  ff_ground_take (&node.ground, class, FF_NEVER);
  while (used + 1 < class->n && (node.used >> (class->first + used)) & 1)
    used++;
  node.used |= (guint32) 1 << (class->first + used);
  if (class->alone >= 0)
    node.stand.first_charge &= ~((guint32) 1 << class->first);
  land (self, &node, step, class_index, part_used ? class->first_usable : class->usable,
        part_used ? class->legs - class->first_legs + 1 : 1);
}

static gboolean
fits_battery (const FfLeg *leg, const FfBatteryClass *class)
{
  return leg->battery == FF_ANY_BATTERY || leg->battery == class->alone;
}

static gboolean
has_unused (const FfSortieNode *node, const FfBatteryClass *class)
{
  guint32 all = class->n == 32 ? G_MAXUINT32 : ((guint32) 1 << class->n) - 1;

  return ((node->used >> class->first) & all) != all;
}

/* On each class of battery that is ready; first those with one that has not flown yet, so that of
 * plans that cost the same that one is found first. */
static void
try_batteries (Search *self, const Step *step)
{
  const FfSortieNode *from = step->from;

  for (int unused = TRUE; unused >= FALSE; unused--)
    for (guint i = 0; i < self->batteries.n_classes; i++)
      {
        const FfBatteryClass *class = &self->batteries.classes[i];
        gboolean part_used
            = class->alone >= 0 && (from->stand.first_charge >> class->first) & 1;
        int minutes = part_used ? class->first_usable : class->usable;

        if (step->ground->ready[class->first] <= step->leg->off
            && step->leg->down - step->leg->off <= minutes && fits_battery (step->leg, class)
            && has_unused (from, class) == unused)
          fly (self, step, (int) i);
      }
}

static void
change_battery (Search *self, Step step, int flights)
{
  int fitted = step.from->stand.filter;

  step.price += self->prices->prices->new_battery;
  if (fitted != FF_UNFITTED && fitted != step.filter)
    step.price += self->prices->prices->filter_swap;
  if (promises (self, &step, flights, self->bound.n_relaunches))
    try_batteries (self, &step);
}

static void
relaunch (Search *self, Step step, int flights)
{
  const FfSortieNode *from = step.from;
  FfSortieNode node = child_of (from);

  step.price += ff_sortie_relaunch_price (self->prices->prices, from->stand.filter, step.filter);
  node.relaunched = TRUE;
  if (promises (self, &step, flights, self->bound.n_relaunches))
    land (self, &node, &step, from->stand.class, from->left, from->stand.legs + 1u);
}

static gboolean
can_relaunch (const Search *self, const FfSortieNode *from, const FfLeg *leg, int filter)
{
  return from->stand.class >= 0 && leg->down - leg->off <= from->left
         && leg->off >= ff_sortie_relaunched (self->problem, from->minute, from->stand.filter,
                                              filter)
         && fits_battery (leg, &self->batteries.classes[from->stand.class]);
}

static void
try_legs (Search *self, const Step *begun, const GArray *legs, int flights)
{
  const FfSortieNode *from = begun->from;
  int fitted = from->stand.filter;
  int fresh = ff_sortie_turned_round (self->problem, from->minute, fitted, begun->filter);
  int again = from->stand.class < 0
                  ? fresh
                  : ff_sortie_relaunched (self->problem, from->minute, fitted, begun->filter);

  for (guint i = ff_leg_first_from (legs, MIN (fresh, again)); i < legs->len; i++)
    {
      Step step = *begun;

      step.leg = &g_array_index (legs, FfLeg, i);
      step.stage = stage_after (self, from, step.leg);
      step.price = step.leg->cost;
      if (self->legs.groups != 0)
        step.price += price_of_matching (self, from, step.leg, step.filter);
      if (step.leg->off >= fresh)
        change_battery (self, step, flights);
      if (can_relaunch (self, from, step.leg, step.filter))
        relaunch (self, step, flights);
    }
}

static void
expand (Search *self, FfSortieNode *from)
{
  const FfOrder *order = self->order;
  guint place = ff_order_place (order, from->stand.stage);
  guint open = ff_order_flown (order, ~from->stand.stage);
  int flights = flights_left (self, from);
  FfSortieNode changed = *from;

  from->looked_at = TRUE;
  self->n_looked_at++;
  take_out (self, &changed);
  for (int filter = FF_NO_FILTER; filter < (int) self->problem->n_filters; filter++)
    for (guint flown = open;; flown = (flown - 1) & open)
      {
        const Step begun = { .from = from, .ground = &changed.ground, .filter = filter };

        if (place < order->n_fixed)
          try_legs (self, &begun, ff_leg_table_get (&self->legs, place, flown, filter), flights);
        try_legs (self, &begun, ff_leg_table_get (&self->legs, order->n_fixed, flown, filter),
                  flights);
        if (flown == 0)
          break;
      }
  leave_out (self, from);
}

/* ---- Reading ---- */

/* Which battery of its class each flight has: of those that are ready the one not yet used, else
 * the one that has been ready longest. Batteries of a class are alike, so it costs the same. */
typedef struct {
  int ready[FF_SORTIE_MAX_BATTERIES]; /* by number of the battery */
  gboolean used[FF_SORTIE_MAX_BATTERIES];
  FfGround ground; /* for its charger */
} Handing;

static void
handing_init (Handing *self, const Search *search)
{
  memset (self, 0, sizeof *self);
  ff_ground_init (&self->ground, &search->batteries, search->problem);
  for (guint i = 0; i < search->batteries.n_classes; i++)
    {
      const FfBatteryClass *class = &search->batteries.classes[i];

      for (guint at = class->first; at < class->first + class->n; at++)
        self->ready[search->batteries.battery[at]]
            = class->alone >= 0 ? self->ground.ready[at] : search->batteries.ready[at];
    }
}

static gboolean
is_better_choice (const Handing *self, guint battery, guint than)
{
  if (self->used[battery] != self->used[than])
    return !self->used[battery];
  if (self->ready[battery] != self->ready[than])
    return self->ready[battery] < self->ready[than];
  return battery < than;
}

static guint
hand_out (Handing *self, const Search *search, const FfBatteryClass *class, int off)
{
  guint chosen = G_MAXUINT;

  for (guint at = class->first; at < class->first + class->n; at++)
    {
      guint battery = search->batteries.battery[at];

      if (self->ready[battery] <= off
          && (chosen == G_MAXUINT || is_better_choice (self, battery, chosen)))
        chosen = battery;
    }
  g_assert (chosen != G_MAXUINT);
  return chosen;
}

static void
hand (Handing *self, const Search *search, GArray *flown, guint index, guint class_index)
{
  const FfBatteryClass *class = &search->batteries.classes[class_index];
  FfFlown *flight = &g_array_index (flown, FfFlown, index);
  FfFlown *before = index > 0 ? flight - 1 : NULL;
  int charge_from, ready_at;

  if (before != NULL && flight->relaunch)
    {
      flight->battery = before->battery;
      flight->minutes = before->minutes - (before->leg.down - before->leg.off);
      flight->number = before->number + 1;
      return;
    }
  if (before != NULL)
    {
      ff_ground_queue (&self->ground, search->problem, before->leg.off + before->minutes,
                       &charge_from, &ready_at);
      self->ready[before->battery] = ready_at;
    }
  flight->battery = hand_out (self, search, class, flight->leg.off);
  flight->minutes = class->usable;
  flight->number = 1;
  if (!self->used[flight->battery] && class->alone >= 0 && class->first_legs > 0)
    {
      flight->minutes = class->first_usable;
      flight->number = class->legs - class->first_legs + 1;
    }
  self->used[flight->battery] = TRUE;
}

static FfSortiePlan *
read_plan (const Search *self, const FfSortieNode *end)
{
  g_autoptr (GArray) flown = g_array_new (FALSE, FALSE, sizeof (FfFlown));
  g_autoptr (GPtrArray) steps = g_ptr_array_new ();
  FfSortiePlan *plan;
  Handing handing;

  for (const FfSortieNode *node = end; node != NULL; node = node->parent)
    if (node->leg != NULL)
      g_ptr_array_insert (steps, 0, (gpointer) node);
  handing_init (&handing, self);
  for (guint i = 0; i < steps->len; i++)
    {
      const FfSortieNode *node = g_ptr_array_index (steps, i);
      guint place = node->leg->place == FF_LEG_NO_PLACE
                        ? self->order->n_fixed
                        : ff_order_place (self->order, node->parent->stand.stage);
      FfFlown flight;

      ff_leg_table_read (&self->legs, node->leg, place, node->stand.filter, &flight);
      flight.relaunch = node->relaunched;
      g_array_append_val (flown, flight);
      hand (&handing, self, flown, i, (guint) node->flown_class);
    }
  plan = ff_sortie_path_read (self->prices, (const FfFlown *) (gpointer) flown->data, flown->len);
  plan->looked_at = self->n_looked_at;
  return plan;
}

/* ---- The whole ---- */

static void
search_init (Search *self)
{
  FfSortieNode start = { .stand = { .filter = FF_UNFITTED, .class = -1 }, .flown_class = -1 };

  ff_batteries_init (&self->batteries, self->problem);
  ff_ground_init (&start.ground, &self->batteries, self->problem);
  ff_leg_table_init (&self->legs, self->prices, self->order, self->batteries.longest);
  ff_sortie_bound_init (&self->bound, self->prices, &self->legs, &self->batteries,
                        flights_left (self, &start));
  ff_sortie_nodes_init (&self->nodes, self->problem, &self->batteries);
  self->finished = ff_order_n_stages (self->order) - 1;
  for (guint i = 0; i < FF_SORTIE_MAX_GROUPS; i++)
    start.stand.matched[i] = FF_UNFITTED;
  for (guint i = 0; i < self->batteries.n_classes; i++)
    {
      const FfBatteryClass *class = &self->batteries.classes[i];

      if (class->alone >= 0 && class->first_legs > 0 && class->first_usable < class->usable)
        start.stand.first_charge |= (guint32) 1 << class->first;
      else if (class->alone >= 0 && class->first_legs > 0 && class->first_legs < class->legs)
        start.stand.first_charge |= (guint32) 1 << class->first;
    }
  keep (self, &start);
}

static void
search_clear (Search *self)
{
  ff_sortie_nodes_clear (&self->nodes);
  ff_sortie_bound_clear (&self->bound);
  ff_leg_table_clear (&self->legs);
}

/* Goes straight to some finished node by the most promising child each time. */
static void
dive (Search *self, FfSortieNode *node)
{
  while (node != NULL && node->stand.stage != self->finished && !node->looked_at)
    {
      guint before = self->nodes.nodes->len;
      FfSortieNode *best = NULL;

      expand (self, node);
      for (guint i = before; i < self->nodes.nodes->len; i++)
        {
          FfSortieNode *child = g_ptr_array_index (self->nodes.nodes, i);

          if (!child->outdone && (best == NULL || ff_sortie_node_comes_before (child, best)))
            best = child;
        }
      node = best;
    }
}

static void
tell_better (Search *self, const FfSortieNode **told)
{
  const FfSortieWatch *watch = self->limits->watch;
  g_autoptr (FfSortiePlan) plan = NULL;

  if (watch == NULL || watch->better == NULL || self->best == *told)
    return;
  *told = self->best;
  plan = read_plan (self, self->best);
  watch->better (plan, watch->data);
}

/* There is a plan to give after the first dive. */
static gboolean
is_stopped (Search *self)
{
  const FfSortieWatch *watch = self->limits->watch;

  if (watch != NULL && watch->stop != NULL && self->n_looked_at % 16 == 0
      && watch->stop (watch->data))
    self->stopped = TRUE;
  return self->stopped;
}

/* The least that any plan not yet found can cost. */
static double
search_run (Search *self)
{
  const FfSortieNode *told = NULL;
  FfSortieNode *node;

  while ((node = ff_sortie_nodes_pop (&self->nodes)) != NULL)
    {
      if (node->promise >= self->cheapest - NOISE)
        return self->cheapest;
      if (node->looked_at || node->outdone)
        continue;
      if ((self->best != NULL || isfinite (self->limits->to_beat))
          && (self->nodes.nodes->len >= self->limits->nodes_at_most || is_stopped (self)))
        return node->promise;
      if (self->n_looked_at % DIVE_EVERY == 0)
        dive (self, node);
      else
        expand (self, node);
      tell_better (self, &told);
    }
  return self->cheapest;
}

FfSortiePlan *
ff_sortie_search (const FfTakePrices *prices,
                  const FfOrder *order,
                  const FfSearchLimits *limits,
                  double *ret_bound)
{
  Search search = { .problem = prices->problem, .prices = prices, .order = order,
                    .limits = limits, .cheapest = limits->to_beat };
  FfSortiePlan *plan = NULL;

  search_init (&search);
  *ret_bound = search_run (&search);
  if (search.best != NULL)
    {
      plan = read_plan (&search, search.best);
      plan->stopped = search.stopped;
    }
  search_clear (&search);
  return plan;
}
