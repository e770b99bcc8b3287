/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The planner against an outside solver: the same day as an integer program, solved by GLPK (the
 * GNU Linear Programming Kit), which knows nothing of legs, stages or bounds. Its assignment is
 * priced again by the cost table, and must cost what the plan does.
 *
 * FF_LONG in the environment: 200 days instead of 40. */
#include "ff-random-day.h"

#include <glpk.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ff-minute-price.h"

#define MINUTE 60
#define MOST_SHOTS 6
#define MOST_STARTS 4
#define MOST_FILTERS 3 /* no filter is one */
#define MOST_BATTERIES 4

/* The day's lines stand in places one after the other; each has a filter, a battery, an off and a
 * down; each shot starts on one line, behind its filter, at one minute. */
typedef struct {
  const FfRandomDay *day;
  glp_prob *program;
  int n_shots, n_lines, n_filters, n_batteries, n_slots;
  double last, last_ready; /* minutes: the last down, the last charge that is told */
  int starts[MOST_SHOTS];   /* how many */
  int opens[MOST_SHOTS];    /* the first of them */
  int take[MOST_SHOTS][MOST_SHOTS][MOST_FILTERS][MOST_STARTS]; /* columns: [shot][line]… */
  int left_out[MOST_SHOTS];
  int first[MOST_SHOTS][MOST_SHOTS]; /* [shot][line]: it is the first there */
  int fitted[MOST_SHOTS][MOST_FILTERS];
  int flies[MOST_SHOTS][MOST_BATTERIES];
  int swapped[MOST_SHOTS];
  int off[MOST_SHOTS], down[MOST_SHOTS], ready[MOST_SHOTS];
  int slot[MOST_SHOTS][2];
  int at[2000]; /* the row that is being written */
  double factor[2000];
  int n;
} Program;

/* ---- Prices ---- */

static double
take_price (const FfRandomDay *day, int shot, int filter, int start)
{
  const FfSortieShot *wanted = &day->shots[shot];
  const FfPrices *prices = &ff_prices_default;
  double late = wanted->fixed_time ? prices->late_fixed : prices->late_minute;
  double price = late * (start - (int) (wanted->window_from / MINUTE));

  for (int minute = start; minute < start + wanted->minutes; minute++)
    price += ff_minute_price (prices, day->problem.camera, &wanted->want,
                              wanted->own_from_angle_deg, wanted->ev100[minute],
                              filter > 0 ? day->filters[filter - 1].stops : 0, NULL);
  return price;
}

static double
weight_of (const FfRandomDay *day, int shot)
{
  return day->shots[shot].weight > 0 ? day->shots[shot].weight : ff_prices_default.not_flown;
}

/* ---- Columns and rows ---- */

static int
column (Program *self, int kind, double high, double cost)
{
  int at = glp_add_cols (self->program, 1);

  glp_set_col_kind (self->program, at, kind);
  glp_set_col_bnds (self->program, at, GLP_DB, 0, high);
  glp_set_obj_coef (self->program, at, cost);
  return at;
}

static void
add (Program *self, int at, double factor)
{
  for (int i = 1; i <= self->n; i++)
    if (self->at[i] == at)
      {
        self->factor[i] += factor;
        return;
      }
  self->n++;
  self->at[self->n] = at;
  self->factor[self->n] = factor;
}

/* What was added is at most `most`, or exactly so; and a new row begins. */
static void
row (Program *self, int type, double most)
{
  int at = glp_add_rows (self->program, 1);

  glp_set_row_bnds (self->program, at, type, most, most);
  glp_set_mat_row (self->program, at, self->n, self->at, self->factor);
  self->n = 0;
}

/* ---- Takes ---- */

static void
add_columns_of_shot (Program *self, int shot)
{
  const FfSortieProblem *problem = &self->day->problem;
  const FfSortieShot *wanted = &self->day->shots[shot];
  double air = ff_prices_default.air_minute;
  int last = MIN ((int) (wanted->window_to / MINUTE),
                  (int) (problem->to / MINUTE) - problem->back_minutes) - wanted->minutes;

  self->opens[shot] = MAX ((int) (wanted->window_from / MINUTE), problem->out_minutes);
  self->starts[shot] = CLAMP (last - self->opens[shot] + 1, 0, MOST_STARTS);
  self->left_out[shot] = column (self, GLP_BV, 1, weight_of (self->day, shot));
  for (int line = 0; line < self->n_lines; line++)
    self->first[shot][line] = column (self, GLP_BV, 1, 0);
  for (int line = 0; line < self->n_lines; line++)
    for (int filter = 0; filter < self->n_filters; filter++)
      for (int i = 0; i < self->starts[shot]; i++)
        self->take[shot][line][filter][i]
            = column (self, GLP_BV, 1,
                      take_price (self->day, shot, filter, self->opens[shot] + i)
                          - air * wanted->minutes);
}

/* Flown once or left out, and behind what is fitted on its line. */
static void
rows_of_shot (Program *self, int shot)
{
  add (self, self->left_out[shot], 1);
  for (int line = 0; line < self->n_lines; line++)
    for (int filter = 0; filter < self->n_filters; filter++)
      for (int i = 0; i < self->starts[shot]; i++)
        add (self, self->take[shot][line][filter][i], 1);
  row (self, GLP_FX, 1);
  for (int line = 0; line < self->n_lines; line++)
    for (int filter = 0; filter < self->n_filters; filter++)
      {
        for (int i = 0; i < self->starts[shot]; i++)
          add (self, self->take[shot][line][filter][i], 1);
        add (self, self->fitted[line][filter], -1);
        row (self, GLP_UP, 0);
      }
}

/* The aircraft is off before each of its takes and down after it. */
static void
rows_of_take (Program *self, int shot, int line)
{
  const FfSortieProblem *problem = &self->day->problem;
  int minutes = self->day->shots[shot].minutes;

  add (self, self->off[line], 1);
  for (int filter = 0; filter < self->n_filters; filter++)
    for (int i = 0; i < self->starts[shot]; i++)
      add (self, self->take[shot][line][filter][i],
           self->last - (self->opens[shot] + i - problem->out_minutes));
  row (self, GLP_UP, self->last);
  add (self, self->down[line], -1);
  for (int filter = 0; filter < self->n_filters; filter++)
    for (int i = 0; i < self->starts[shot]; i++)
      add (self, self->take[shot][line][filter][i],
           self->opens[shot] + i + minutes + problem->back_minutes);
  row (self, GLP_UP, 0);
}

/* Nobody waits in the air before the first take, not even to land sooner: the aircraft is off when
 * its first take asks for it. */
static void
rows_of_first (Program *self, int line)
{
  for (int shot = 0; shot < self->n_shots; shot++)
    {
      add (self, self->first[shot][line], self->last + 1);
      add (self, self->off[line], -1);
      for (int filter = 0; filter < self->n_filters; filter++)
        for (int i = 0; i < self->starts[shot]; i++)
          add (self, self->take[shot][line][filter][i],
               self->opens[shot] + i - self->day->problem.out_minutes);
      row (self, GLP_UP, self->last + 1);
      add (self, self->first[shot][line], 1);
      for (int filter = 0; filter < self->n_filters; filter++)
        for (int i = 0; i < self->starts[shot]; i++)
          add (self, self->take[shot][line][filter][i], -1);
      row (self, GLP_UP, 0);
    }
  for (int shot = 0; shot < self->n_shots; shot++)
    add (self, self->first[shot][line], 1);
  for (int battery = 0; battery < self->n_batteries; battery++)
    add (self, self->flies[line][battery], -1);
  row (self, GLP_FX, 0);
}

static void
add_takes_between (Program *self, int shot, int from, int to)
{
  for (int i = 0; i < self->starts[shot]; i++)
    if (self->opens[shot] + i >= from && self->opens[shot] + i < to)
      for (int line = 0; line < self->n_lines; line++)
        for (int filter = 0; filter < self->n_filters; filter++)
          add (self, self->take[shot][line][filter][i], 1);
}

/* One take at a time; and the order of the list, where it is not free. */
static void
rows_of_minutes (Program *self)
{
  for (int minute = 0; minute < FF_RANDOM_DAY_MINUTES; minute++)
    {
      for (int shot = 0; shot < self->n_shots; shot++)
        add_takes_between (self, shot, minute - self->day->shots[shot].minutes + 1, minute + 1);
      if (self->n > 1)
        row (self, GLP_UP, 1);
      self->n = 0;
      for (int shot = 0; shot < self->n_shots; shot++)
        for (int later = shot + 1; later < self->n_shots; later++)
          {
            if (self->day->shots[shot].free_order || self->day->shots[later].free_order)
              continue;
            add_takes_between (self, shot, minute, FF_RANDOM_DAY_MINUTES);
            add_takes_between (self, later, 0, minute);
            if (self->n > 1)
              row (self, GLP_UP, 1);
            self->n = 0;
          }
    }
}

/* A shot on a later line starts when one on an earlier line is down and turned round. It follows
 * from the rows of the lines; said for each two shots it leads the solver there a good deal sooner. */
static void
rows_of_two (Program *self, int shot, int later, int line, int from)
{
  const FfSortieProblem *problem = &self->day->problem;
  int ready = from + self->day->shots[shot].minutes + problem->back_minutes
              + problem->battery_change_minutes + problem->out_minutes;

  for (int filter = 0; filter < self->n_filters; filter++)
    {
      for (int at = 0; at < line; at++)
        for (int i = from - self->opens[shot]; i < self->starts[shot]; i++)
          add (self, self->take[shot][at][filter][i], 1);
      for (int at = line; at < self->n_lines; at++)
        for (int i = 0; i < self->starts[later] && self->opens[later] + i < ready; i++)
          add (self, self->take[later][at][filter][i], 1);
    }
  row (self, GLP_UP, 1);
}

static void
rows_of_pairs (Program *self)
{
  for (int shot = 0; shot < self->n_shots; shot++)
    for (int later = 0; later < self->n_shots; later++)
      for (int line = 1; shot != later && line < self->n_lines; line++)
        for (int i = 0; i < self->starts[shot]; i++)
          rows_of_two (self, shot, later, line, self->opens[shot] + i);
}

/* ---- Lines ---- */

static void
add_columns_of_line (Program *self, int line)
{
  const FfPrices *prices = &ff_prices_default;
  double air = prices->air_minute;

  for (int filter = 0; filter < self->n_filters; filter++)
    self->fitted[line][filter] = column (self, GLP_BV, 1, 0);
  /* Waiting in the air: all of the leg but its takes, out and back. */
  for (int battery = 0; battery < self->n_batteries; battery++)
    self->flies[line][battery]
        = column (self, GLP_BV, 1,
                  prices->new_battery
                      - air * (self->day->problem.out_minutes + self->day->problem.back_minutes));
  self->off[line] = column (self, GLP_CV, self->last, -air);
  self->down[line] = column (self, GLP_CV, self->last, air);
  self->ready[line] = column (self, GLP_CV, self->last_ready, 0);
  self->swapped[line] = column (self, GLP_BV, 1, line > 0 ? prices->filter_swap : 0);
  for (int slot = 0; slot < self->n_slots; slot++)
    self->slot[line][slot] = column (self, GLP_BV, 1, 0);
}

/* One filter and one battery on a line that is flown; the lines are filled from the first on. */
static void
rows_of_line (Program *self, int line)
{
  for (int filter = 0; filter < self->n_filters; filter++)
    add (self, self->fitted[line][filter], 1);
  for (int battery = 0; battery < self->n_batteries; battery++)
    add (self, self->flies[line][battery], -1);
  row (self, GLP_FX, 0);
  for (int battery = 0; battery < self->n_batteries; battery++)
    add (self, self->flies[line][battery], 1);
  for (int battery = 0; line > 0 && battery < self->n_batteries; battery++)
    add (self, self->flies[line - 1][battery], -1);
  row (self, GLP_UP, line > 0 ? 0 : 1);
  /* No longer than its battery lasts; an idle line is down when it is off. */
  add (self, self->down[line], 1);
  add (self, self->off[line], -1);
  for (int battery = 0; battery < self->n_batteries; battery++)
    add (self, self->flies[line][battery], -self->day->batteries[battery].usable_minutes);
  row (self, GLP_UP, 0);
  add (self, self->off[line], 1);
  add (self, self->down[line], -1);
  for (int battery = 0; battery < self->n_batteries; battery++)
    add (self, self->flies[line][battery],
         self->day->problem.out_minutes + self->day->problem.back_minutes);
  row (self, GLP_UP, 0);
  /* Off when its battery is ready for the first time. */
  add (self, self->off[line], -1);
  for (int battery = 0; battery < self->n_batteries; battery++)
    add (self, self->flies[line][battery],
         (double) self->day->batteries[battery].ready_at / MINUTE);
  row (self, GLP_UP, 0);
  /* Idle: at minute 0. */
  add (self, self->off[line], 1);
  for (int battery = 0; battery < self->n_batteries; battery++)
    add (self, self->flies[line][battery], -self->last);
  row (self, GLP_UP, 0);
}

/* A line after another: swapped where the filter is another one, off when it is turned round. */
static void
rows_of_turn_round (Program *self, int line)
{
  const FfSortieProblem *problem = &self->day->problem;

  for (int filter = 0; filter < self->n_filters; filter++)
    {
      add (self, self->fitted[line][filter], 1);
      add (self, self->fitted[line - 1][filter], -1);
      add (self, self->swapped[line], -1);
      row (self, GLP_UP, 0);
    }
  add (self, self->down[line - 1], 1);
  add (self, self->off[line], -1);
  add (self, self->swapped[line], problem->filter_change_minutes);
  for (int battery = 0; battery < self->n_batteries; battery++)
    add (self, self->flies[line][battery], problem->battery_change_minutes + self->last);
  row (self, GLP_UP, self->last);
}

/* ---- Charger ---- */

/* Charged after cooling, from land-by on; one after the other in its slot, in order of landing. */
static void
rows_of_charge (Program *self, int line)
{
  const FfSortieProblem *problem = &self->day->problem;

  add (self, self->off[line], 1);
  for (int battery = 0; battery < self->n_batteries; battery++)
    add (self, self->flies[line][battery], self->day->batteries[battery].usable_minutes);
  add (self, self->ready[line], -1);
  row (self, GLP_UP, -problem->cool_minutes - problem->charge_minutes);
  /* The slots are alike: the first line has the first. */
  for (int slot = 0; slot < (line > 0 ? self->n_slots : 1); slot++)
    add (self, self->slot[line][slot], 1);
  row (self, GLP_FX, 1);
  for (int before = 0; before < line; before++)
    for (int slot = 0; slot < self->n_slots; slot++)
      {
        add (self, self->ready[before], 1);
        add (self, self->ready[line], -1);
        for (int battery = 0; battery < self->n_batteries; battery++)
          add (self, self->flies[line][battery], self->last_ready);
        add (self, self->slot[line][slot], self->last_ready);
        add (self, self->slot[before][slot], self->last_ready);
        row (self, GLP_UP, 3 * self->last_ready - problem->charge_minutes);
      }
}

/* A battery that flies again is back from the charger; without one it does not. */
static void
rows_of_battery (Program *self, int battery)
{
  if (self->n_slots == 0)
    {
      for (int line = 0; line < self->n_lines; line++)
        add (self, self->flies[line][battery], 1);
      row (self, GLP_UP, 1);
      return;
    }
  for (int line = 1; line < self->n_lines; line++)
    for (int before = 0; before < line; before++)
      {
        add (self, self->ready[before], 1);
        add (self, self->off[line], -1);
        add (self, self->flies[before][battery], self->last_ready);
        add (self, self->flies[line][battery], self->last_ready);
        row (self, GLP_UP, 2 * self->last_ready);
      }
}

/* ---- The whole ---- */

/* The last minute on which it can be down, and one after which no charge matters: the later a charge
 * is told, the longer the queue it may stand in. */
static void
set_ends (Program *self)
{
  const FfSortieProblem *problem = &self->day->problem;
  gint64 last = 0;

  for (int shot = 0; shot < self->n_shots; shot++)
    last = MAX (last, self->day->shots[shot].window_to / MINUTE + problem->back_minutes);
  self->last = (double) MIN (last, problem->to / MINUTE);
  self->last_ready = self->last + 30 + problem->cool_minutes
                     + (self->n_lines + 1) * problem->charge_minutes;
}

static void
program_init (Program *self, const FfRandomDay *day)
{
  memset (self, 0, sizeof *self);
  self->day = day;
  self->program = glp_create_prob ();
  glp_set_obj_dir (self->program, GLP_MIN);
  self->n_shots = self->n_lines = (int) day->problem.n_shots;
  self->n_filters = (int) day->problem.n_filters + 1;
  self->n_batteries = (int) day->problem.n_batteries;
  self->n_slots = (int) day->problem.charger_slots;
  set_ends (self);
  for (int line = 0; line < self->n_lines; line++)
    add_columns_of_line (self, line);
  for (int shot = 0; shot < self->n_shots; shot++)
    add_columns_of_shot (self, shot);
  for (int shot = 0; shot < self->n_shots; shot++)
    {
      rows_of_shot (self, shot);
      for (int line = 0; line < self->n_lines; line++)
        rows_of_take (self, shot, line);
    }
  rows_of_minutes (self);
  rows_of_pairs (self);
  for (int line = 0; line < self->n_lines; line++)
    {
      rows_of_line (self, line);
      rows_of_first (self, line);
      if (line > 0)
        rows_of_turn_round (self, line);
      if (self->n_slots > 0)
        rows_of_charge (self, line);
    }
  for (int battery = 0; battery < self->n_batteries; battery++)
    rows_of_battery (self, battery);
}

static gboolean
is_chosen (const Program *self, int at)
{
  return glp_mip_col_val (self->program, at) > 0.5;
}

/* One line of the assignment by the cost table; its filter is given back, -1 for an idle one. */
static double
price_of_line (const Program *self, int line, int filter_before, int *ret_filter)
{
  int first = 1000, last = -1, in_takes = 0;
  double price = 0;

  *ret_filter = -1;
  for (int filter = 0; filter < self->n_filters; filter++)
    for (int shot = 0; shot < self->n_shots; shot++)
      for (int i = 0; i < self->starts[shot]; i++)
        if (is_chosen (self, self->take[shot][line][filter][i]))
          {
            int start = self->opens[shot] + i, minutes = self->day->shots[shot].minutes;

            *ret_filter = filter;
            price += take_price (self->day, shot, filter, start);
            first = MIN (first, start);
            last = MAX (last, start + minutes);
            in_takes += minutes;
          }
  if (*ret_filter < 0)
    return 0;
  price += ff_prices_default.new_battery + ff_prices_default.air_minute * (last - first - in_takes);
  if (filter_before >= 0 && filter_before != *ret_filter)
    price += ff_prices_default.filter_swap;
  return price;
}

static double
price_of_assignment (const Program *self)
{
  double price = 0;
  int fitted = -1;

  for (int line = 0; line < self->n_lines; line++)
    {
      int filter;

      price += price_of_line (self, line, fitted, &filter);
      fitted = filter >= 0 ? filter : fitted;
    }
  for (int shot = 0; shot < self->n_shots; shot++)
    if (is_chosen (self, self->left_out[shot]))
      price += weight_of (self->day, shot);
  return price;
}

/* The solver is told that an assignment no dearer than the plan is wanted: it has to find one, and
 * the cheapest of them, but need not look at the dear ones. */
static void
row_of_cost (Program *self, double cost)
{
  for (int at = 1; at <= glp_get_num_cols (self->program); at++)
    if (glp_get_obj_coef (self->program, at) != 0)
      add (self, at, glp_get_obj_coef (self->program, at));
  row (self, GLP_UP, cost + 1e-3);
}

static double
solve (const FfRandomDay *day, double cost)
{
  Program *self = g_new (Program, 1);
  glp_iocp how;
  double price;

  program_init (self, day);
  row_of_cost (self, cost);
  glp_init_iocp (&how);
  how.presolve = GLP_ON;
  how.msg_lev = GLP_MSG_OFF;
  how.clq_cuts = how.mir_cuts = GLP_ON;
  how.tol_int = 1e-7;
  assert_int_equal (glp_intopt (self->program, &how), 0);
  assert_int_equal (glp_mip_status (self->program), GLP_OPT);
  price = price_of_assignment (self);
  assert_close (price, glp_mip_obj_val (self->program), 1e-3);
  glp_delete_prob (self->program);
  g_free (self);
  return price;
}

/* Up to six shots in short windows, so that the outside solver gets there, too. */
static void
day_for_solver (FfTestRandom *random, FfRandomDay *day)
{
  ff_random_day (random, ff_test_random_int (random, 0, 2) == 0 ? FF_RANDOM_FREE : 0, day);
  day->problem.n_shots = MIN (day->problem.n_shots, MOST_SHOTS);
  day->problem.n_filters = MIN (day->problem.n_filters, MOST_FILTERS - 1);
  day->problem.n_batteries = MIN (day->problem.n_batteries, day->problem.n_shots > 4 ? 1 : 3);
  day->problem.charger_slots = (guint) ff_test_random_int (random, 0, 2);
  for (guint i = 0; i < day->problem.n_shots; i++)
    {
      FfSortieShot *shot = &day->shots[i];
      int wide = ff_test_random_int (random, 0, MOST_STARTS - 1);

      shot->window_to = MIN (shot->window_to, shot->window_from + (shot->minutes + wide) * MINUTE);
    }
  day->problem.charge_minutes = ff_test_random_int (random, 5, 20);
  day->problem.cool_minutes = ff_test_random_int (random, 0, 8);
  for (guint i = 0; i < day->problem.n_batteries; i++)
    day->batteries[i].ready_at = ff_test_random_int (random, 0, 20) * MINUTE;
}

static void
test_an_outside_solver_finds_nothing_cheaper (void **state)
{
  FfTestRandom random = { 1947 };
  guint n_days = g_getenv ("FF_LONG") != NULL ? 200 : 40;
  guint n_charged = 0, n_missed = 0;

  for (guint i = 0; i < n_days; i++)
    {
      g_autoptr (FfSortiePlan) plan = NULL;
      FfRandomDay day;

      day_for_solver (&random, &day);
      plan = ff_sorties_plan (&day.problem);
      assert_true (plan->optimal);
      assert_close (plan->cost, solve (&day, plan->cost), 1e-6);
      n_charged += plan->lines->len > day.problem.n_batteries;
      n_missed += plan->missed->len > 0;
    }
  /* The days do put the question: some batteries are used twice, some shots are lost. */
  assert_true (n_charged >= n_days / 20);
  assert_true (n_missed >= n_days / 20);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_an_outside_solver_finds_nothing_cheaper),
  };

  glp_term_out (GLP_OFF);
  return cmocka_run_group_tests_name ("sorties against a solver", tests, NULL, NULL);
}
