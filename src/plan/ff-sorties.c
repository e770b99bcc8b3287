/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A search over the shots in the order given. A label is what stands on the ground after a landing:
 * the next shot, the clock, the filter fitted, when each battery is ready and the charger free, and
 * what it has cost so far. From each label every leg that a battery holds is flown behind every
 * filter, and every shot may be left out; labels that stand alike are merged, the cheaper kept. */
#include "ff-sorties.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-leg.h"
#include "ff-minute-price.h"

#define LABELS_KEPT 4000   /* per shot; beyond it the dearest are dropped */

typedef struct _Label Label;
struct _Label {
  FfGround ground;
  double cost;
  double parts[FF_N_PARTS];
  const Label *parent;
  FfLeg leg;      /* the leg that led here; n_shots 0: a shot was left out */
  guint missed; /* which one, when so */
};

typedef struct {
  const FfSortieProblem *problem;
  const FfPrices *prices;
  guint n_minutes;
  double *minute_price;  /* [shot][filter + 1][minute], summed from the first minute on */
  GPtrArray **stages;    /* labels by next shot; stage n_shots is the end */
  GHashTable **by_ground;
} Search;

static guint
ground_hash (gconstpointer key)
{
  const gint64 *words = key;
  guint64 hash = 0;

  /* A multiply and a fold a word: the struct is nothing but words. */
  for (gsize i = 0; i < sizeof (FfGround) / sizeof *words; i++)
    {
      hash = (hash ^ (guint64) words[i]) * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
      hash ^= hash >> 32;
    }
  return (guint) hash;
}

static gboolean
ground_equal (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, sizeof (FfGround)) == 0;
}

static double
filter_stops (const FfSortieProblem *problem, int filter)
{
  return filter >= 0 ? problem->filters[filter].stops : 0;
}

/* ---- What a take costs ---- */

static double *
price_row (const Search *search, guint shot, int filter)
{
  gsize row = (gsize) shot * (search->problem->n_filters + 1) + (gsize) (filter + 1);

  return search->minute_price + row * (search->n_minutes + 1);
}

static void
fill_prices (Search *search)
{
  const FfSortieProblem *problem = search->problem;

  for (guint shot = 0; shot < problem->n_shots; shot++)
    for (int filter = FF_NO_FILTER; filter < (int) problem->n_filters; filter++)
      {
        const FfSortieShot *wanted = &problem->shots[shot];
        double *row = price_row (search, shot, filter);

        for (guint minute = 0; minute < search->n_minutes; minute++)
          {
            gint64 at = problem->from + (gint64) minute * 60;
            double price = 0;

            if (at >= wanted->window_from && at <= wanted->window_to)
              price = ff_minute_price (search->prices, problem->camera, &wanted->want,
                                       wanted->own_from_angle_deg, wanted->ev100[minute],
                                       filter_stops (problem, filter), NULL);
            row[minute + 1] = row[minute] + price;
          }
      }
}

static double
price_of_take (const Search *search, guint shot, int filter, gint64 start)
{
  gint64 minute = (start - search->problem->from) / 60;
  const double *row = price_row (search, shot, filter);

  return row[minute + search->problem->shots[shot].minutes] - row[minute];
}

/* ---- The search ---- */

static void
add_part (Label *label, FfPart part, double price)
{
  label->parts[part] += price;
  label->cost += price;
}

/* Keeps a label unless one that stands alike is as cheap. */
static void
keep (Search *search, guint stage, const Label *label)
{
  Label *other = g_hash_table_lookup (search->by_ground[stage], &label->ground);

  if (other == NULL)
    {
      other = g_memdup2 (label, sizeof *label);
      g_ptr_array_add (search->stages[stage], other);
      g_hash_table_insert (search->by_ground[stage], &other->ground, other);
    }
  else if (label->cost < other->cost - 1e-9)
    *other = *label;
}

static double
weight_of (const Search *search, guint shot)
{
  double weight = search->problem->shots[shot].weight;

  return weight > 0 ? weight : search->prices->not_flown;
}

static void
leave_out (Search *search, const Label *from, guint shot)
{
  Label label = *from;

  label.parent = from;
  label.leg.n_shots = 0;
  label.missed = shot;
  add_part (&label, FF_PART_NOT_FLOWN, weight_of (search, shot));
  keep (search, shot + 1, &label);
}

static void
fly (Search *search, const Label *from, const FfLeg *leg)
{
  Label label = *from;

  label.parent = from;
  label.leg = *leg;
  label.missed = 0;
  add_part (&label, FF_PART_BATTERY, search->prices->new_battery);
  if (from->ground.filter != FF_UNFITTED && from->ground.filter != leg->filter)
    add_part (&label, FF_PART_SWAP, search->prices->filter_swap);
  for (guint i = 0; i < leg->n_shots; i++)
    {
      const FfSortieShot *shot = &search->problem->shots[leg->shots[i]];

      label.cost += price_of_take (search, leg->shots[i], leg->filter, leg->starts[i]);
      add_part (&label, FF_PART_LATE,
                search->prices->late_minute * (double) (leg->starts[i] - shot->window_from) / 60);
    }
  label.ground.clock = leg->down;
  label.ground.filter = leg->filter;
  label.ground.used |= (gint64) 1 << leg->battery;
  ff_leg_queue_charge (search->problem, leg, &label.ground);
  keep (search, leg->shots[leg->n_shots - 1] + 1, &label);
}

/* Flies the leg behind every filter, then tries to take the next shot along. When it flies depends
 * only on whether the filter in front is kept or changed. */
static void
extend_leg (Search *search, const Label *from, FfLeg *leg)
{
  FfLeg kept = *leg, changed = *leg;
  gboolean kept_fits, changed_fits;

  kept.filter = (int) from->ground.filter;
  changed.filter = (int) from->ground.filter == FF_NO_FILTER ? 0 : FF_NO_FILTER;
  kept_fits = ff_leg_fit_battery (search->problem, &from->ground, &kept);
  changed_fits = ff_leg_fit_battery (search->problem, &from->ground, &changed);
  for (int filter = FF_NO_FILTER; filter < (int) search->problem->n_filters; filter++)
    {
      gboolean is_kept = filter == from->ground.filter;
      FfLeg tried = is_kept ? kept : changed;

      tried.filter = filter;
      if (is_kept ? kept_fits : changed_fits)
        fly (search, from, &tried);
    }
  /* A longer leg starts no earlier and lasts no shorter: what does not fit now never will. */
  if ((kept_fits || changed_fits) && leg->n_shots < FF_LEG_SHOTS
      && leg->shots[leg->n_shots - 1] + 1 < search->problem->n_shots)
    {
      leg->shots[leg->n_shots] = leg->shots[leg->n_shots - 1] + 1;
      leg->n_shots++;
      extend_leg (search, from, leg);
      leg->n_shots--;
    }
}

static int
compare_labels (gconstpointer a, gconstpointer b)
{
  const Label *first = *(Label *const *) a, *second = *(Label *const *) b;

  if (first->cost != second->cost)
    return first->cost < second->cost ? -1 : 1;
  return memcmp (&first->ground, &second->ground, sizeof (FfGround));
}

static void
expand_stage (Search *search, guint shot)
{
  GPtrArray *labels = search->stages[shot];

  g_ptr_array_sort (labels, compare_labels);
  for (guint i = 0; i < MIN (labels->len, LABELS_KEPT); i++)
    {
      const Label *label = g_ptr_array_index (labels, i);
      FfLeg leg = { .n_shots = 1, .shots = { shot } };

      leave_out (search, label, shot);
      extend_leg (search, label, &leg);
    }
}

static void
search_init (Search *search, const FfSortieProblem *problem)
{
  Label start = { 0 };

  search->problem = problem;
  search->prices = problem->prices != NULL ? problem->prices : &ff_prices_default;
  search->n_minutes = (guint) ((problem->to - problem->from) / 60) + 1;
  search->minute_price = g_new0 (double, (gsize) problem->n_shots * (problem->n_filters + 1)
                                             * (search->n_minutes + 1));
  search->stages = g_new0 (GPtrArray *, problem->n_shots + 1);
  search->by_ground = g_new0 (GHashTable *, problem->n_shots + 1);
  for (guint i = 0; i <= problem->n_shots; i++)
    {
      search->stages[i] = g_ptr_array_new_with_free_func (g_free);
      search->by_ground[i] = g_hash_table_new (ground_hash, ground_equal);
    }
  fill_prices (search);
  start.ground.filter = FF_UNFITTED;
  for (guint i = 0; i < problem->n_batteries; i++)
    start.ground.ready[i] = problem->batteries[i].ready_at;
  keep (search, 0, &start);
}

static void
search_clear (Search *search)
{
  for (guint i = 0; i <= search->problem->n_shots; i++)
    {
      g_hash_table_unref (search->by_ground[i]);
      g_ptr_array_unref (search->stages[i]);
    }
  g_free (search->by_ground);
  g_free (search->stages);
  g_free (search->minute_price);
}

/* ---- The plan ---- */

/* What the search added up as one price, told apart. */
static void
add_take_parts (FfSortiePlan *plan,
                const FfSortieProblem *problem,
                const FfSortieTake *take,
                double stops)
{
  const FfSortieShot *shot = &problem->shots[take->shot];
  const FfPrices *prices = problem->prices != NULL ? problem->prices : &ff_prices_default;

  for (gint64 at = take->from; at < take->to; at += 60)
    ff_minute_price (prices, problem->camera, &shot->want, shot->own_from_angle_deg,
                     shot->ev100[(at - problem->from) / 60], stops, plan->parts);
}

static void
add_take (FfSortiePlan *plan, const FfSortieProblem *problem, const FfLeg *leg, guint index)
{
  const FfSortieShot *shot = &problem->shots[leg->shots[index]];
  FfWant want = shot->want;
  FfAdviseQuery query = { .camera = problem->camera, .want = &want, .prices = problem->prices };
  FfSortieTake take = { .shot = leg->shots[index], .from = leg->starts[index] };
  double stops = filter_stops (problem, leg->filter);
  double f_number;

  take.to = take.from + shot->minutes * 60;
  take.ev100_start = shot->ev100[(take.from - problem->from) / 60];
  take.ev100_end = shot->ev100[(take.to - problem->from) / 60];
  if (shot->own_from_angle_deg > 0)
    want.angle_from_deg = MIN (want.angle_from_deg, shot->own_from_angle_deg);
  query.ev100 = take.ev100_start;
  ff_advise_settings (&query, stops, &take.start);
  query.ev100 = take.ev100_end;
  ff_advise_settings (&query, stops, &take.end);
  f_number = take.start.settings.aperture.exact;
  take.need_start = ff_advise_need (take.ev100_start, problem->camera, &shot->want, f_number);
  take.need_end = ff_advise_need (take.ev100_end, problem->camera, &shot->want, f_number);
  g_array_append_val (plan->takes, take);
  add_take_parts (plan, problem, &take, stops);
}

static void
add_line (FfSortiePlan *plan, const FfSortieProblem *problem, const FfLeg *leg)
{
  FfSortieLine line = {
    .off_by = leg->off,
    .down = leg->down,
    .land_by = ff_leg_land_by (problem, leg),
    .battery = (guint) leg->battery,
    .filter = leg->filter,
    .filter_stops = filter_stops (problem, leg->filter),
    .first_take = plan->takes->len,
    .n_takes = leg->n_shots,
  };

  for (guint i = 0; i < leg->n_shots; i++)
    add_take (plan, problem, leg, i);
  g_array_append_val (plan->lines, line);
}

/* Whether a leg for this shot alone fits between its neighbours, batteries aside. */
static gboolean
fits_between (const FfSortieProblem *problem, const FfSortiePlan *plan, const FfSortieShot *shot)
{
  gint64 flight = (problem->out_minutes + shot->minutes + problem->back_minutes) * 60;
  gint64 change = problem->battery_change_minutes * 60;
  gint64 earliest = problem->from, latest_down = problem->to;
  gint64 off;

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfSortieLine *line = &g_array_index (plan->lines, FfSortieLine, i);

      if (line->off_by < shot->window_from)
        earliest = MAX (earliest, line->down + change);
      else
        latest_down = MIN (latest_down, line->off_by - change);
    }
  off = MAX (earliest, shot->window_from - problem->out_minutes * 60);
  return off + (problem->out_minutes + shot->minutes) * 60 <= shot->window_to
         && off + flight <= latest_down;
}

/* What the take costs at the best start in its window behind the best filter. */
static double
cheapest_take (const Search *search, guint index)
{
  const FfSortieProblem *problem = search->problem;
  const FfSortieShot *shot = &problem->shots[index];
  gint64 last = MIN (shot->window_to, problem->to) - shot->minutes * 60;
  double cheapest = INFINITY;

  for (gint64 start = MAX (shot->window_from, problem->from); start <= last; start += 60)
    for (int filter = FF_NO_FILTER; filter < (int) problem->n_filters; filter++)
      cheapest = MIN (cheapest, price_of_take (search, index, filter, start));
  return cheapest;
}

static FfWhyNot
why_not (const Search *search, const FfSortiePlan *plan, guint index)
{
  const FfSortieProblem *problem = search->problem;
  const FfSortieShot *shot = &problem->shots[index];
  int longest = 0;

  for (guint i = 0; i < problem->n_batteries; i++)
    longest = MAX (longest, problem->batteries[i].usable_minutes);
  if (problem->out_minutes + shot->minutes + problem->back_minutes > longest)
    return FF_WHY_TOO_LONG;
  if (MAX (shot->window_from, problem->from + problem->out_minutes * 60) + shot->minutes * 60
      > MIN (shot->window_to, problem->to - problem->back_minutes * 60))
    return FF_WHY_DAYLIGHT;
  if (cheapest_take (search, index) >= weight_of (search, index))
    return FF_WHY_LIGHT;
  if (!fits_between (problem, plan, shot))
    return FF_WHY_WINDOW;
  return plan->lines->len >= problem->n_batteries ? FF_WHY_BATTERY : FF_WHY_PRICE;
}

/* The charges of the legs flown, as the search queued them; those done before all down. */
static void
add_charges (FfSortiePlan *plan, const FfSortieProblem *problem, GPtrArray *path)
{
  FfGround ground = { 0 };

  for (guint i = 0; i < path->len; i++)
    {
      const Label *label = g_ptr_array_index (path, i);
      FfSortieCharge charge;

      if (label->leg.n_shots == 0)
        continue;
      charge = ff_leg_queue_charge (problem, &label->leg, &ground);
      if (charge.ready_at <= problem->to)
        g_array_append_val (plan->charges, charge);
    }
}

static FfSortiePlan *
read_plan (const Search *search, const Label *end)
{
  const FfSortieProblem *problem = search->problem;
  FfSortiePlan *plan = g_new0 (FfSortiePlan, 1);
  g_autoptr (GPtrArray) path = g_ptr_array_new ();

  plan->lines = g_array_new (FALSE, FALSE, sizeof (FfSortieLine));
  plan->takes = g_array_new (FALSE, FALSE, sizeof (FfSortieTake));
  plan->missed = g_array_new (FALSE, FALSE, sizeof (FfSortieMiss));
  plan->charges = g_array_new (FALSE, FALSE, sizeof (FfSortieCharge));
  memcpy (plan->parts, end->parts, sizeof plan->parts);
  plan->cost = end->cost;
  for (const Label *label = end; label->parent != NULL; label = label->parent)
    g_ptr_array_insert (path, 0, (gpointer) label);
  for (guint i = 0; i < path->len; i++)
    {
      const Label *label = g_ptr_array_index (path, i);

      if (label->leg.n_shots > 0)
        add_line (plan, problem, &label->leg);
    }
  for (guint i = 0; i < path->len; i++)
    {
      const Label *label = g_ptr_array_index (path, i);
      FfSortieMiss miss = { .shot = label->missed };

      if (label->leg.n_shots > 0)
        continue;
      miss.why = why_not (search, plan, label->missed);
      g_array_append_val (plan->missed, miss);
    }
  add_charges (plan, problem, path);
  return plan;
}

FfSortiePlan *
ff_sorties_plan (const FfSortieProblem *problem)
{
  Search search = { 0 };
  FfSortiePlan *plan;

  g_return_val_if_fail (problem->n_batteries <= FF_SORTIE_MAX_BATTERIES, NULL);
  g_return_val_if_fail (problem->to >= problem->from, NULL);
  search_init (&search, problem);
  for (guint shot = 0; shot < problem->n_shots; shot++)
    expand_stage (&search, shot);
  g_ptr_array_sort (search.stages[problem->n_shots], compare_labels);
  plan = read_plan (&search, g_ptr_array_index (search.stages[problem->n_shots], 0));
  search_clear (&search);
  return plan;
}

void
ff_sortie_plan_free (FfSortiePlan *plan)
{
  if (plan == NULL)
    return;
  g_array_unref (plan->lines);
  g_array_unref (plan->takes);
  g_array_unref (plan->missed);
  g_array_unref (plan->charges);
  g_free (plan);
}

char *
ff_why_not_text (FfWhyNot why)
{
  switch (why)
    {
    case FF_WHY_WINDOW:
      return g_strdup (_ ("its window can't be met beside the sorties before and after it"));
    case FF_WHY_BATTERY:
      return g_strdup (_ ("no battery is ready in its window"));
    case FF_WHY_TOO_LONG:
      return g_strdup (_ ("it is longer than any battery's usable minutes, out and back included"));
    case FF_WHY_DAYLIGHT:
      return g_strdup (_ ("its window lies outside first off to all down"));
    case FF_WHY_LIGHT:
      return g_strdup (_ ("no filter at hand brings its light within the camera's reach"));
    case FF_WHY_PRICE:
      return g_strdup (_ ("flying it would cost more than it is worth"));
    default:
      return g_strdup ("");
    }
}
