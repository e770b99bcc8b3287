/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must hold of every pack list, charge queue and share of batteries, over seeded random cases.
 * The shares and the queue are also held against a plain search that tries everything. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-charge-queue.h"
#include "ff-pack.h"
#include "ff-travel.h"

#define MOST 24

typedef struct {
  FfPackProblem problem;
  FfPackItem items[MOST];
  FfPackWant wants[12];
  FfPackLink links[30];
  FfPackSpare spares[3];
} Van;

static guint
pick (FfTestRandom *random, int low, int high)
{
  return (guint) ff_test_random_int (random, low, high);
}

static void
random_van (FfTestRandom *random, Van *van)
{
  static const FfKind kinds[] = { FF_KIND_BATTERY, FF_KIND_CARD, FF_KIND_PROPELLERS,
                                  FF_KIND_FILTER, FF_KIND_CABLE, FF_KIND_DOCUMENT };
  FfPackProblem *problem = &van->problem;

  *problem = (FfPackProblem) { van->items, pick (random, 1, MOST), van->wants, pick (random, 0, 12),
                               van->links, pick (random, 0, 30), van->spares, 3 };
  for (guint i = 0; i < problem->n_items; i++)
    van->items[i] = (FfPackItem) {
      .label = "", .kind = kinds[pick (random, 0, 5)], .may_go = pick (random, 0, 3) > 0,
      .state = pick (random, 0, 2) > 0 ? FF_STATE_SERVICEABLE : (FfState) pick (random, 0, 4),
      .lapsed = pick (random, 0, 9) == 0 };
  for (guint i = 0; i < problem->n_wants; i++)
    van->wants[i] = (FfPackWant) {
      .item = pick (random, 0, 1) ? pick (random, 0, (int) problem->n_items - 1) : FF_PACK_NO_ITEM,
      .kind = kinds[pick (random, 0, 5)], .count = pick (random, 1, 4),
      .need = (FfPackNeed) pick (random, FF_PACK_NEEDED, FF_PACK_DOCUMENT) };
  for (guint i = 0; i < problem->n_links; i++)
    van->links[i] = (FfPackLink) { pick (random, 0, (int) problem->n_items - 1),
                                   pick (random, 0, (int) problem->n_items - 1) };
  for (guint i = 0; i < 3; i++)
    van->spares[i] = (FfPackSpare) { kinds[i], pick (random, 0, 2), pick (random, 0, 1) };
}

static guint
lines_of (const FfPack *pack, guint item)
{
  guint n = 0;

  for (guint i = 0; i < pack->lines->len; i++)
    n += g_array_index (pack->lines, FfPackLine, i).item == item;
  return n;
}

static guint
shorts_of (const FfPack *pack, guint item)
{
  guint n = 0;

  for (guint i = 0; i < pack->shorts->len; i++)
    n += g_array_index (pack->shorts, FfPackShort, i).item == item;
  return n;
}

static guint
said (const FfPack *pack, guint item)
{
  return lines_of (pack, item) + shorts_of (pack, item);
}

/* Of a kind, taken by number and not by name: not wanted by name, not drawn in by a link. */
static guint
taken (const FfPack *pack, const Van *van, FfKind kind, gboolean spares)
{
  guint n = 0;

  for (guint i = 0; i < pack->lines->len; i++)
    {
      const FfPackLine *line = &g_array_index (pack->lines, FfPackLine, i);
      gboolean named = line->because != FF_PACK_NO_ITEM;

      for (guint j = 0; j < van->problem.n_wants; j++)
        named = named || van->wants[j].item == line->item;
      n += !named && van->items[line->item].kind == kind
           && (line->need == FF_PACK_SPARE) == spares;
    }
  return n;
}

static guint
short_of (const FfPack *pack, FfKind kind, FfPackWhy why)
{
  guint n = 0;

  for (guint i = 0; i < pack->shorts->len; i++)
    {
      const FfPackShort *missing = &g_array_index (pack->shorts, FfPackShort, i);

      if (missing->item == FF_PACK_NO_ITEM && missing->kind == kind && missing->why == why)
        n += missing->count;
    }
  return n;
}

static void
check_numbers (const FfPack *pack, const Van *van)
{
  for (guint i = 0; i < 3; i++)
    {
      const FfPackSpare *spare = &van->spares[i];
      guint wanted = 0, got = taken (pack, van, spare->kind, TRUE);
      guint lacking = short_of (pack, spare->kind, FF_PACK_NO_SPARE);

      for (guint j = 0; j < van->problem.n_wants; j++)
        if (van->wants[j].item == FF_PACK_NO_ITEM && van->wants[j].kind == spare->kind)
          wanted += van->wants[j].count;
      assert_int_equal (taken (pack, van, spare->kind, FALSE)
                            + short_of (pack, spare->kind, FF_PACK_NO_MORE), wanted);
      assert_true (got <= spare->count);
      assert_int_equal (lacking, spare->count - got > spare->covered
                                     ? spare->count - got - spare->covered : 0);
    }
}

static void
nothing_is_forgotten (void **state)
{
  FfTestRandom random = { 51 };
  Van van;

  (void) state;
  for (int n = 0; n < 20000; n++)
    {
      g_autoptr (FfPack) pack = NULL;

      random_van (&random, &van);
      pack = ff_pack (&van.problem);
      for (guint i = 0; i < van.problem.n_wants; i++)
        if (van.wants[i].item != FF_PACK_NO_ITEM)
          assert_int_equal (said (pack, van.wants[i].item), 1);
      for (guint i = 0; i < van.problem.n_links; i++)
        if (said (pack, van.links[i].item) > 0)
          assert_int_equal (said (pack, van.links[i].with), 1);
      check_numbers (pack, &van);
    }
}

static void
nothing_unfit_is_packed (void **state)
{
  FfTestRandom random = { 52 };
  Van van;

  (void) state;
  for (int n = 0; n < 20000; n++)
    {
      g_autoptr (FfPack) pack = NULL;

      random_van (&random, &van);
      pack = ff_pack (&van.problem);
      for (guint i = 0; i < pack->lines->len; i++)
        {
          const FfPackLine *line = &g_array_index (pack->lines, FfPackLine, i);
          const FfPackItem *item = &van.items[line->item];

          assert_true (item->state == FF_STATE_SERVICEABLE && !item->lapsed);
          assert_int_equal (lines_of (pack, line->item), 1);
          assert_int_equal (shorts_of (pack, line->item), 0);
        }
    }
}

/* ---- The charge queue ---- */

static void
random_evening (FfTestRandom *random, FfChargeProblem *problem, FfChargeWatch *watches,
                FfChargeBench *chargers)
{
  gint64 at = 0;

  *problem = (FfChargeProblem) { .n_batteries = pick (random, 0, 9),
                                 .watches = watches,
                                 .n_watches = pick (random, 0, 3),
                                 .chargers = chargers,
                                 .n_chargers = pick (random, 0, 2) };
  for (guint i = 0; i < problem->n_watches; i++)
    {
      watches[i].from = at + 60 * (gint64) pick (random, 0, 90);
      watches[i].to = at = watches[i].from + 60 * (gint64) pick (random, 10, 300);
    }
  for (guint i = 0; i < problem->n_chargers; i++)
    chargers[i] = (FfChargeBench) { pick (random, 1, 3), (int) pick (random, 20, 90) };
}

static guint
places_by_hand (const FfChargeProblem *problem)
{
  guint n = 0;

  for (guint i = 0; i < problem->n_watches; i++)
    for (guint j = 0; j < problem->n_chargers; j++)
      n += problem->chargers[j].slots
           * (guint) ((problem->watches[i].to - problem->watches[i].from)
                      / (problem->chargers[j].minutes * 60));
  return n;
}

static void
check_charges (const FfChargeProblem *problem, const FfChargePlan *plan)
{
  for (guint i = 0; i < plan->charges->len; i++)
    {
      const FfCharge *charge = &g_array_index (plan->charges, FfCharge, i);
      const FfChargeWatch *watch = &problem->watches[charge->watch];

      assert_int_equal (charge->battery, i);
      assert_true (charge->from >= watch->from && charge->to <= watch->to);
      assert_true (charge->slot < problem->chargers[charge->charger].slots);
      assert_int_equal (charge->to - charge->from, problem->chargers[charge->charger].minutes * 60);
      assert_true (plan->first_by >= g_array_index (plan->charges, FfCharge, 0).from);
      for (guint j = 0; j < i; j++)
        {
          const FfCharge *other = &g_array_index (plan->charges, FfCharge, j);

          assert_true (other->charger != charge->charger || other->slot != charge->slot
                       || other->to <= charge->from || charge->to <= other->from);
        }
    }
}

static void
every_charge_is_attended (void **state)
{
  FfTestRandom random = { 53 };
  FfChargeWatch watches[3];
  FfChargeBench chargers[2];

  (void) state;
  for (int n = 0; n < 20000; n++)
    {
      FfChargeProblem problem;
      g_autoptr (FfChargePlan) plan = NULL;

      random_evening (&random, &problem, watches, chargers);
      plan = ff_charge_queue (&problem);
      check_charges (&problem, plan);
      assert_int_equal (plan->charges->len, MIN (problem.n_batteries, places_by_hand (&problem)));
      assert_int_equal (plan->not_charged, problem.n_batteries - plan->charges->len);
    }
}

/* One watch begun at first_by serves as many; a minute later it serves fewer. */
static void
the_first_may_wait_no_longer (void **state)
{
  FfTestRandom random = { 54 };

  (void) state;
  for (int n = 0; n < 5000; n++)
    {
      FfChargeWatch watch = { 0, 60 * (gint64) pick (&random, 60, 400) };
      FfChargeBench charger = { pick (&random, 1, 3), (int) pick (&random, 20, 70) };
      FfChargeProblem problem = {
        .n_batteries = pick (&random, 1, 9), .watches = &watch, .n_watches = 1,
        .chargers = &charger, .n_chargers = 1
      };
      g_autoptr (FfChargePlan) plan = ff_charge_queue (&problem);
      g_autoptr (FfChargePlan) late = NULL, later = NULL;

      if (plan->charges->len == 0)
        continue;
      watch.from = plan->first_by;
      late = ff_charge_queue (&problem);
      assert_int_equal (late->charges->len, plan->charges->len);
      watch.from += 60;
      later = ff_charge_queue (&problem);
      assert_true (later->charges->len < plan->charges->len);
    }
}

/* ---- Hot batteries, and slots that are taken ---- */

typedef struct {
  FfChargeProblem problem;
  FfChargeWatch watches[2];
  FfChargeBench charger;
  gint64 not_before[4];
  FfChargeBusy busy;
} Warm;

static void
random_warm (FfTestRandom *random, Warm *self)
{
  gint64 first = 60 * (gint64) pick (random, 0, 60);
  gint64 between = first + 60 * (gint64) pick (random, 20, 200);

  self->watches[0] = (FfChargeWatch) { first, between };
  self->watches[1].from = between + 60 * (gint64) pick (random, 0, 60);
  self->watches[1].to = self->watches[1].from + 60 * (gint64) pick (random, 20, 200);
  self->charger = (FfChargeBench) { pick (random, 1, 2), (int) pick (random, 20, 90) };
  for (guint i = 0; i < G_N_ELEMENTS (self->not_before); i++)
    self->not_before[i] = pick (random, 0, 1) * 60 * (gint64) pick (random, 0, 250);
  self->busy = (FfChargeBusy) { 0, 0, 60 * (gint64) pick (random, 0, 250) };
  self->problem = (FfChargeProblem) { .n_batteries = pick (random, 1, 4),
                                      .watches = self->watches,
                                      .n_watches = pick (random, 1, 2),
                                      .chargers = &self->charger,
                                      .n_chargers = 1,
                                      .not_before = self->not_before,
                                      .busy = &self->busy,
                                      .n_busy = pick (random, 0, 1) };
}

/* Where it ends when it is put in as soon as it can be; G_MAXINT64: nowhere. */
static gint64
put_in (const Warm *self, guint battery, gint64 slot_free)
{
  const gint64 length = 60 * (gint64) self->charger.minutes;

  for (guint i = 0; i < self->problem.n_watches; i++)
    {
      gint64 from = MAX (MAX (self->watches[i].from, slot_free), self->not_before[battery]);

      if (from + length <= self->watches[i].to)
        return from + length;
    }
  return G_MAXINT64;
}

/* Those of `left` one after the other in every order and every slot: the most that are charged. */
static guint
most_by_hand (const Warm *self, guint left, const gint64 *slots)
{
  guint most = 0;

  for (guint battery = 0; battery < self->problem.n_batteries; battery++)
    for (guint slot = 0; (left >> battery & 1) != 0 && slot < self->charger.slots; slot++)
      {
        gint64 next[2] = { slots[0], slots[1] };

        next[slot] = put_in (self, battery, slots[slot]);
        if (next[slot] < G_MAXINT64)
          most = MAX (most, 1 + most_by_hand (self, left & ~(1U << battery), next));
      }
  return most;
}

static void
check_warm (const Warm *self, const FfChargePlan *plan)
{
  guint seen = 0;

  for (guint i = 0; i < plan->charges->len; i++)
    {
      const FfCharge *charge = &g_array_index (plan->charges, FfCharge, i);

      assert_true (charge->from >= self->not_before[charge->battery]);
      assert_true (charge->from >= self->watches[charge->watch].from
                   && charge->to <= self->watches[charge->watch].to);
      assert_true (self->problem.n_busy == 0 || charge->slot != 0
                   || charge->from >= self->busy.until);
      assert_true ((seen >> charge->battery & 1) == 0);
      seen |= 1U << charge->battery;
      for (guint j = 0; j < i; j++)
        {
          const FfCharge *other = &g_array_index (plan->charges, FfCharge, j);

          assert_true (other->slot != charge->slot || other->to <= charge->from
                       || charge->to <= other->from);
        }
    }
}

static void
a_hot_one_waits_and_none_is_left_for_it (void **state)
{
  FfTestRandom random = { 57 };
  Warm self;

  (void) state;
  for (int n = 0; n < 3000; n++)
    {
      g_autoptr (FfChargePlan) plan = NULL;
      gint64 slots[2];

      random_warm (&random, &self);
      slots[0] = self.problem.n_busy > 0 ? self.busy.until : G_MININT64;
      slots[1] = G_MININT64;
      plan = ff_charge_queue (&self.problem);
      check_warm (&self, plan);
      assert_int_equal (plan->charges->len,
                        most_by_hand (&self, (1U << self.problem.n_batteries) - 1, slots));
      assert_true (plan->charges->len == 0
                   || plan->first_by >= g_array_index (plan->charges, FfCharge, 0).from);
    }
}

/* One place for two: the one that is wanted first has it, hot as it is. */
static void
the_first_wanted_has_the_only_place (void **state)
{
  const FfChargeWatch watch = { 0, 80 * 60 };
  const FfChargeBench charger = { 1, 60 };
  const gint64 not_before[] = { 20 * 60, 0 };
  const FfChargeProblem problem = {
    .n_batteries = 2, .watches = &watch, .n_watches = 1, .chargers = &charger, .n_chargers = 1,
    .not_before = not_before
  };
  g_autoptr (FfChargePlan) plan = ff_charge_queue (&problem);

  (void) state;
  assert_int_equal (plan->charges->len, 1);
  assert_int_equal (g_array_index (plan->charges, FfCharge, 0).battery, 0);
  assert_int_equal (g_array_index (plan->charges, FfCharge, 0).from, 20 * 60);
}

/* "One slot, five batteries: five hours." */
static void
one_slot_five_batteries_five_hours (void **state)
{
  const FfChargeWatch watch = { 0, 6 * 3600 };
  const FfChargeBench charger = { 1, 60 };
  const FfChargeProblem problem = {
    .n_batteries = 5, .watches = &watch, .n_watches = 1, .chargers = &charger, .n_chargers = 1
  };
  const FfChargeProblem nobody = { .n_batteries = 5, .chargers = &charger, .n_chargers = 1 };
  g_autoptr (FfChargePlan) plan = ff_charge_queue (&problem);
  g_autoptr (FfChargePlan) alone = ff_charge_queue (&nobody);

  (void) state;
  assert_int_equal (plan->busy_minutes, 300);
  assert_int_equal (plan->done_at, 5 * 3600);
  assert_int_equal (plan->first_by, 3600);
  assert_int_equal (alone->charges->len, 0);
  assert_int_equal (alone->not_charged, 5);
  assert_int_equal (alone->busy_minutes, 300);
}

/* ---- Air travel ---- */

typedef struct {
  FfTravelRule rule;
  FfTravelBand bands[3];
  FfTravelBattery batteries[7];
  guint n_batteries, n_people;
} Flight;

static void
random_flight (FfTestRandom *random, Flight *flight)
{
  flight->rule = (FfTravelRule) {
    flight->bands, pick (random, 1, 3), ff_test_random_int (random, -1, 4),
    pick (random, 0, 2) > 0 ? ff_test_random (random, 0.2, 3) : NAN };
  for (guint i = 0; i < 3; i++)
    flight->bands[i] = (FfTravelBand) { 100 + 60 * i, ff_test_random_int (random, -1, 3),
                                        pick (random, 0, 1) > 0 };
  flight->n_batteries = pick (random, 0, 7);
  flight->n_people = pick (random, 0, 3);
  for (guint i = 0; i < flight->n_batteries; i++)
    flight->batteries[i] = (FfTravelBattery) {
      pick (random, 0, 9) ? ff_test_random (random, 20, 260) : NAN,
      pick (random, 0, 9) ? ff_test_random (random, 0.1, 1.6) : NAN,
      pick (random, 0, 9) > 0, pick (random, 0, 1) > 0 };
}

/* The carrier's rule held against a share, from its words alone. */
static gboolean
is_within (const Flight *flight, const guint *person, guint *ret_worth)
{
  double kg[3] = { 0 };
  int by_band[3][3] = { { 0 } }, in_all[3] = { 0 };

  *ret_worth = 0;
  for (guint i = 0; i < flight->n_batteries; i++)
    {
      const FfTravelBattery *battery = &flight->batteries[i];
      guint band = ff_travel_band (&flight->rule, battery->energy_wh), who = person[i];

      if (who >= flight->n_people)
        continue;
      if (!battery->fit || band == flight->rule.n_bands)
        return FALSE;
      by_band[who][band]++;
      in_all[who]++;
      kg[who] += isnan (battery->mass_kg) ? 0 : battery->mass_kg;
      *ret_worth += battery->wanted ? 101 : 1;
      if ((flight->bands[band].spares_each >= 0
           && by_band[who][band] > flight->bands[band].spares_each)
          || (flight->rule.spares_in_all >= 0 && in_all[who] > flight->rule.spares_in_all)
          || kg[who] > flight->rule.cabin_kg)
        return FALSE;
    }
  return TRUE;
}

static guint
best_by_trying_all (const Flight *flight)
{
  guint person[7] = { 0 }, best = 0, n = 1, worth;

  for (guint i = 0; i < flight->n_batteries; i++)
    n *= flight->n_people + 1;
  for (guint code = 0; code < n; code++)
    {
      guint rest = code;

      for (guint i = 0; i < flight->n_batteries; i++, rest /= flight->n_people + 1)
        person[i] = rest % (flight->n_people + 1);
      if (is_within (flight, person, &worth))
        best = MAX (best, worth);
    }
  return best;
}

static void
no_other_share_takes_more (void **state)
{
  FfTestRandom random = { 55 };
  Flight flight;

  (void) state;
  for (int n = 0; n < 1500; n++)
    {
      g_autoptr (FfTravelPlan) plan = NULL;
      guint person[7], worth;

      random_flight (&random, &flight);
      plan = ff_travel_share (&flight.rule, flight.batteries, flight.n_batteries, flight.n_people);
      assert_true (plan->proven);
      for (guint i = 0; i < flight.n_batteries; i++)
        person[i] = g_array_index (plan->shares, FfTravelShare, i).person;
      assert_true (is_within (&flight, person, &worth));
      assert_int_equal (worth, best_by_trying_all (&flight));
    }
}

/* What stays says why, and what goes over an approval band says so. */
static void
every_battery_has_its_answer (void **state)
{
  FfTestRandom random = { 56 };
  Flight flight;

  (void) state;
  for (int n = 0; n < 5000; n++)
    {
      g_autoptr (FfTravelPlan) plan = NULL;

      random_flight (&random, &flight);
      plan = ff_travel_share (&flight.rule, flight.batteries, flight.n_batteries, flight.n_people);
      for (guint i = 0; i < flight.n_batteries; i++)
        {
          const FfTravelShare *share = &g_array_index (plan->shares, FfTravelShare, i);
          gboolean goes = share->person < flight.n_people;

          assert_int_equal (share->answer == FF_TRAVEL_GOES, goes);
          assert_int_equal (share->answer == FF_TRAVEL_UNFIT, !flight.batteries[i].fit);
          if (goes)
            assert_int_equal (share->approval, flight.bands[share->band].approval);
        }
    }
}

/* A hire house at the desk: the search must not drown. */
static void
many_batteries_are_shared (void **state)
{
  const FfTravelBand bands[] = { { 100, FF_TRAVEL_NO_LIMIT, FALSE }, { 160, 2, TRUE } };
  const FfTravelRule rule = { bands, 2, 20, 7 };
  FfTestRandom random = { 57 };
  FfTravelBattery batteries[60];
  g_autoptr (FfTravelPlan) plan = NULL;
  guint small = 0, large = 0;

  (void) state;
  for (guint i = 0; i < 60; i++)
    {
      batteries[i] = (FfTravelBattery) { ff_test_random (&random, 60, 170),
                                         ff_test_random (&random, 0.3, 0.9), TRUE, i < 20 };
      small += batteries[i].energy_wh <= 100;
      large += batteries[i].energy_wh > 100 && batteries[i].energy_wh <= 160;
    }
  plan = ff_travel_share (&rule, batteries, 60, 4);
  for (guint i = 0; i < 20; i++)
    if (batteries[i].energy_wh < 100)
      assert_int_equal (g_array_index (plan->shares, FfTravelShare, i).answer, FF_TRAVEL_GOES);
  assert_int_equal (plan->goes, small + MIN (large, 8));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (nothing_is_forgotten),
    cmocka_unit_test (nothing_unfit_is_packed),
    cmocka_unit_test (every_charge_is_attended),
    cmocka_unit_test (the_first_may_wait_no_longer),
    cmocka_unit_test (one_slot_five_batteries_five_hours),
    cmocka_unit_test (a_hot_one_waits_and_none_is_left_for_it),
    cmocka_unit_test (the_first_wanted_has_the_only_place),
    cmocka_unit_test (no_other_share_takes_more),
    cmocka_unit_test (every_battery_has_its_answer),
    cmocka_unit_test (many_batteries_are_shared),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
