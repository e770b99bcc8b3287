/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of prices against the formulas that it is made of. The figures themselves are
 * judgement: common practice, no source. */
#include "ff-test.h"

#include <math.h>

#include "ff-error.h"
#include "ff-price.h"

static const FfPrices *const prices = &ff_prices_default;

static void
test_closing_the_shutter (void **state)
{
  static const struct {
    double closed, price;
  } cases[] = {
    { 0, 0 },
    { 0.2, 0.15 * 0.2 },
    { 0.33, 0.15 * 0.33 },
    { 1, 0.15 + 3 * 0.67 * 0.67 + 0.67 },
    { 2, 0.15 * 2 + 3 * 1.67 * 1.67 + 1.67 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_close (ff_price_shutter (prices, cases[i].closed), cases[i].price, 1e-12);
}

/* 216 degrees where 180 were wanted are free; from there on opening costs what closing does. */
static void
test_opening_the_shutter (void **state)
{
  assert_close (ff_price_shutter (prices, -0.2), 0, 0);
  assert_close (ff_price_shutter (prices, -0.2630344), 0, 0);
  assert_close (ff_price_shutter (prices, -prices->open_free - 0.8),
                ff_price_shutter (prices, 0.8), 1e-12);
}

static void
test_error_is_square_then_straight (void **state)
{
  assert_close (ff_price_error (prices, 0), 0, 0);
  assert_close (ff_price_error (prices, 0.25), 2 * 0.0625, 1e-12);
  assert_close (ff_price_error (prices, -0.25), ff_price_error (prices, 0.25), 0);
  assert_close (ff_price_error (prices, 1 / 3.0), 2 / 9.0, 1e-12);
  assert_close (ff_price_error (prices, 1), 2 + 12 + 100 * 2 / 3.0, 1e-9);
  assert_close (ff_price_error (prices, -3), 2 * 3 + 12 + 100 * 8 / 3.0, 1e-9);
}

static void
test_sum_and_names (void **state)
{
  double parts[FF_N_PARTS];

  for (int i = 0; i < FF_N_PARTS; i++)
    parts[i] = i;
  assert_close (ff_price_sum (parts), FF_N_PARTS * (FF_N_PARTS - 1) / 2.0, 0);
  assert_int_equal (ff_names_part.n_names, FF_N_PARTS);
  assert_string_equal (ff_name_token (&ff_names_part, FF_PART_FILTER_LANDING), "filter_landing");
}

/* Every price is in the table, so that none is hidden from the crew: the rows fill the struct. */
static void
test_every_price_has_a_row (void **state)
{
  const FfPriceRow *rows;
  guint n_rows = ff_price_rows (&rows);
  g_autoptr (GError) error = NULL;
  FfPrices changed = *prices;

  assert_int_equal (n_rows, sizeof (FfPrices) / sizeof (double));
  for (guint i = 0; i < n_rows; i++)
    for (guint j = 0; j < i; j++)
      assert_int_not_equal (rows[i].offset, rows[j].offset);
  assert_true (ff_prices_check (prices, &error));
  assert_true (ff_price_set (&changed, "filter_swap", 2.5, &error));
  assert_close (changed.filter_swap, 2.5, 0);
  assert_false (ff_price_set (&changed, "filter_swap", -1, &error));
  assert_error (error, FF_ERROR_INPUT, "0 to 1000");
  assert_false (ff_price_set (&changed, "mood", 1, &error));
  assert_error (error, FF_ERROR_INPUT, "mood");
  assert_close (changed.filter_swap, 2.5, 0);
  changed.new_battery = NAN;
  assert_false (ff_prices_check (&changed, &error));
  assert_error (error, FF_ERROR_INPUT, "a battery");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_closing_the_shutter),
    cmocka_unit_test (test_opening_the_shutter),
    cmocka_unit_test (test_error_is_square_then_straight),
    cmocka_unit_test (test_sum_and_names),
    cmocka_unit_test (test_every_price_has_a_row),
  };

  return cmocka_run_group_tests_name ("price", tests, NULL, NULL);
}
