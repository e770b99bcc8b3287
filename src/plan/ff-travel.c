/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Branch and bound: each battery goes to one of the people or stays. What can't be told apart is
 * tried once; a share that meets the bound without weights ends the search at once. */
#include "ff-travel.h"

#include <math.h>
#include <string.h>

/* A search that is longer than this answers with the best it has found. */
#define MOST_STEPS 400000

typedef struct {
  guint battery;
  guint band;
  double mass_kg;
  gboolean wanted;
} Candidate;

typedef struct {
  guint wanted, all;
} Count;

typedef struct {
  const FfTravelRule *rule;
  const Candidate *candidates;
  guint n_candidates, n_people;
  guint *held;      /* by person and band */
  guint *held_all;  /* by person */
  double *held_kg;  /* by person */
  guint *now, *best; /* person of each candidate */
  Count count, best_count, most;
  guint steps;
  gboolean done;
} Search;

guint
ff_travel_band (const FfTravelRule *rule, double energy_wh)
{
  guint band = 0;

  if (isnan (energy_wh))
    return rule->n_bands;
  while (band < rule->n_bands && !(energy_wh <= rule->bands[band].up_to_wh * (1 + 1e-12)))
    band++;
  return band;
}

static gboolean
in_number (const Search *self, guint person, guint band)
{
  int each = self->rule->bands[band].spares_each;
  int in_all = self->rule->spares_in_all;

  return (each < 0 || self->held[person * self->rule->n_bands + band] < (guint) each)
         && (in_all < 0 || self->held_all[person] < (guint) in_all);
}

static gboolean
in_weight (const Search *self, guint person, double mass_kg)
{
  return isnan (self->rule->cabin_kg)
         || self->held_kg[person] + mass_kg <= self->rule->cabin_kg * (1 + 1e-12);
}

static void
hand (Search *self, const Candidate *candidate, guint person, int sign)
{
  self->held[person * self->rule->n_bands + candidate->band] += (guint) sign;
  self->held_all[person] += (guint) sign;
  self->held_kg[person] += sign * candidate->mass_kg;
  self->count.all += (guint) sign;
  if (candidate->wanted)
    self->count.wanted += (guint) sign;
}

static gboolean
is_better (Count a, Count b)
{
  return a.wanted != b.wanted ? a.wanted > b.wanted : a.all > b.all;
}

/* The most that could still come of this, were everything left to go. */
static Count
at_most (const Search *self, guint next)
{
  Count most = self->count;

  for (guint i = next; i < self->n_candidates; i++)
    {
      most.all++;
      if (self->candidates[i].wanted)
        most.wanted++;
    }
  return most;
}

static gboolean
are_alike (const Candidate *a, const Candidate *b)
{
  return a->band == b->band && a->wanted == b->wanted && !(a->mass_kg < b->mass_kg)
         && !(a->mass_kg > b->mass_kg);
}

static gboolean
people_alike (const Search *self, guint a, guint b)
{
  gsize n_bands = self->rule->n_bands;

  return memcmp (self->held + a * n_bands, self->held + b * n_bands, n_bands * sizeof (guint)) == 0
         && fabs (self->held_kg[a] - self->held_kg[b]) < 1e-9;
}

/* The one who holds the least of those not yet asked; FF_TRAVEL_NOBODY when all were. */
static guint
next_person (const Search *self, const gboolean *asked)
{
  guint person = FF_TRAVEL_NOBODY;

  for (guint i = 0; i < self->n_people; i++)
    if (!asked[i] && (person == FF_TRAVEL_NOBODY || self->held_all[i] < self->held_all[person]))
      person = i;
  return person;
}

static void
ask (const Search *self, gboolean *asked, guint person)
{
  for (guint i = 0; i < self->n_people; i++)
    if (people_alike (self, i, person))
      asked[i] = TRUE;
}

static void
keep_if_better (Search *self)
{
  if (!is_better (self->count, self->best_count))
    return;
  self->best_count = self->count;
  memcpy (self->best, self->now, self->n_candidates * sizeof (guint));
  self->done = !is_better (self->most, self->best_count);
}

static void search (Search *self, guint next);

static void
give_to_each (Search *self, guint next)
{
  const Candidate *candidate = &self->candidates[next];
  g_autofree gboolean *asked = g_new0 (gboolean, self->n_people);
  guint person;

  while (!self->done && (person = next_person (self, asked)) != FF_TRAVEL_NOBODY)
    {
      ask (self, asked, person);
      if (!in_number (self, person, candidate->band)
          || !in_weight (self, person, candidate->mass_kg))
        continue;
      hand (self, candidate, person, 1);
      self->now[next] = person;
      search (self, next + 1);
      self->now[next] = FF_TRAVEL_NOBODY;
      hand (self, candidate, person, -1);
    }
}

static void
search (Search *self, guint next)
{
  guint after = next;

  keep_if_better (self);
  if (self->done || next == self->n_candidates || !is_better (at_most (self, next), self->best_count))
    return;
  if (++self->steps > MOST_STEPS)
    {
      self->done = TRUE;
      return;
    }
  give_to_each (self, next);
  /* Where one stays, those like it stay: they could only take its place. */
  while (after < self->n_candidates
         && are_alike (&self->candidates[after], &self->candidates[next]))
    after++;
  if (!self->done)
    search (self, after);
}

/* ---- What could go at most, were nothing to weigh anything ---- */

static guint
most_by_number (const Search *self, gboolean wanted_only)
{
  guint most = 0;

  for (guint band = 0; band < self->rule->n_bands; band++)
    {
      int each = self->rule->bands[band].spares_each;
      guint n = 0;

      for (guint i = 0; i < self->n_candidates; i++)
        if (self->candidates[i].band == band && (self->candidates[i].wanted || !wanted_only))
          n++;
      most += each < 0 ? n : MIN (n, (guint) each * self->n_people);
    }
  if (self->rule->spares_in_all >= 0)
    most = MIN (most, (guint) self->rule->spares_in_all * self->n_people);
  return most;
}

/* ---- The whole ---- */

static gint
by_worth (gconstpointer a, gconstpointer b)
{
  const Candidate *first = a, *second = b;

  if (first->wanted != second->wanted)
    return first->wanted ? -1 : 1;
  if (first->band != second->band)
    return first->band < second->band ? -1 : 1;
  if (first->mass_kg < second->mass_kg || first->mass_kg > second->mass_kg)
    return first->mass_kg < second->mass_kg ? -1 : 1;
  return (first->battery > second->battery) - (first->battery < second->battery);
}

/* Answers what needs no search, and gathers the rest. */
static GArray *
find_candidates (const FfTravelRule *rule, const FfTravelBattery *batteries, GArray *shares)
{
  GArray *candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));

  for (guint i = 0; i < shares->len; i++)
    {
      FfTravelShare *share = &g_array_index (shares, FfTravelShare, i);
      double mass = isnan (batteries[i].mass_kg) ? 0 : batteries[i].mass_kg;
      const Candidate candidate
          = { i, ff_travel_band (rule, batteries[i].energy_wh), mass, batteries[i].wanted };

      share->person = FF_TRAVEL_NOBODY;
      share->band = candidate.band;
      if (!batteries[i].fit)
        share->answer = FF_TRAVEL_UNFIT;
      else if (isnan (batteries[i].energy_wh))
        share->answer = FF_TRAVEL_NO_ENERGY;
      else if (candidate.band == rule->n_bands || rule->bands[candidate.band].spares_each == 0)
        share->answer = FF_TRAVEL_TOO_LARGE;
      else
        g_array_append_val (candidates, candidate);
    }
  g_array_sort (candidates, by_worth);
  return candidates;
}

static FfTravelAnswer
why_it_stays (const Search *self, const Candidate *candidate)
{
  for (guint person = 0; person < self->n_people; person++)
    if (in_number (self, person, candidate->band))
      return FF_TRAVEL_TOO_HEAVY;
  return FF_TRAVEL_TOO_MANY;
}

static void
write_shares (Search *self, FfTravelPlan *plan)
{
  for (guint i = 0; i < self->n_candidates; i++)
    if (self->best[i] != FF_TRAVEL_NOBODY)
      hand (self, &self->candidates[i], self->best[i], 1);
  for (guint i = 0; i < self->n_candidates; i++)
    {
      const Candidate *candidate = &self->candidates[i];
      FfTravelShare *share = &g_array_index (plan->shares, FfTravelShare, candidate->battery);

      share->person = self->best[i];
      share->answer = share->person != FF_TRAVEL_NOBODY ? FF_TRAVEL_GOES
                                                        : why_it_stays (self, candidate);
      share->approval = share->answer == FF_TRAVEL_GOES
                        && self->rule->bands[candidate->band].approval;
    }
  plan->goes = self->best_count.all;
  plan->proven = self->steps <= MOST_STEPS;
}

static void
search_init (Search *self, const FfTravelRule *rule, GArray *candidates, guint n_people)
{
  gsize n = candidates->len;

  *self = (Search) { .rule = rule, .n_candidates = candidates->len, .n_people = n_people,
                     .candidates = (const Candidate *) (gpointer) candidates->data };
  self->held = g_new0 (guint, n_people * (gsize) rule->n_bands);
  self->held_all = g_new0 (guint, n_people);
  self->held_kg = g_new0 (double, n_people);
  self->now = g_new (guint, n);
  self->best = g_new (guint, n);
  for (gsize i = 0; i < n; i++)
    self->now[i] = self->best[i] = FF_TRAVEL_NOBODY;
  self->most = (Count) { most_by_number (self, TRUE), most_by_number (self, FALSE) };
}

static void
search_clear (Search *self)
{
  g_free (self->held);
  g_free (self->held_all);
  g_free (self->held_kg);
  g_free (self->now);
  g_free (self->best);
}

FfTravelPlan *
ff_travel_share (const FfTravelRule *rule,
                 const FfTravelBattery *batteries,
                 guint n_batteries,
                 guint n_people)
{
  FfTravelPlan *plan = g_new0 (FfTravelPlan, 1);
  g_autoptr (GArray) candidates = NULL;
  Search self;

  plan->shares = g_array_new (FALSE, TRUE, sizeof (FfTravelShare));
  g_array_set_size (plan->shares, n_batteries);
  candidates = find_candidates (rule, batteries, plan->shares);
  search_init (&self, rule, candidates, n_people);
  search (&self, 0);
  write_shares (&self, plan);
  search_clear (&self);
  return plan;
}

void
ff_travel_plan_free (FfTravelPlan *plan)
{
  if (plan == NULL)
    return;
  g_array_unref (plan->shares);
  g_free (plan);
}
