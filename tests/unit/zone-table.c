/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Zones suggested from the table of the time zone database (tzdb, zone1970.tab; public domain). */
#include "ff-test.h"

#include "ff-zone-table.h"

/* Rows as the file has them, and what it never should have. */
static const char rows[] = "# tzdb timezone descriptions\n"
                           "GB,GG,IM,JE\t+513030-0000731\tEurope/London\n"
                           "IE\t+5320-00615\tEurope/Dublin\n"
                           "NZ,AQ\t-3652+17446\tPacific/Auckland\tNew Zealand time\n"
                           "FJ\t-1808+17825\tPacific/Fiji\n"
                           "WS\t-1350-17144\tPacific/Apia\n"
                           "ET\t+0902+03842\tAfrica/Addis_Ababa\n"
                           "XX\t+99-999\tNo/Where\n"
                           "XX\t+9959-00000\tNo/Where\n"
                           "XX\tnowhere\tNo/Where\n"
                           "XX\t+5130\n"
                           "\t\t\t\n";

static const FfZoneCity *
row (GPtrArray *table, guint i)
{
  assert_true (i < table->len);
  return g_ptr_array_index (table, i);
}

static void
test_rows_are_read (void **state)
{
  g_autoptr (GPtrArray) table = ff_zone_table_parse (rows);

  assert_int_equal (table->len, 6);
  assert_string_equal (row (table, 0)->zone, "Europe/London");
  assert_string_equal (row (table, 0)->city, "London");
  assert_close (row (table, 0)->latitude_deg, 51 + 30 / 60.0 + 30 / 3600.0, 1e-9);
  assert_close (row (table, 0)->longitude_deg, -(7 / 60.0 + 31 / 3600.0), 1e-9);
  assert_close (row (table, 2)->latitude_deg, -(36 + 52 / 60.0), 1e-9);
  assert_close (row (table, 2)->longitude_deg, 174 + 46 / 60.0, 1e-9);
  assert_string_equal (row (table, 5)->city, "Addis Ababa");
}

static void
test_nearest_first (void **state)
{
  g_autoptr (GPtrArray) table = ff_zone_table_parse (rows);
  g_autoptr (GPtrArray) york = ff_zone_table_nearest (table, 53.96, -1.08, 3);
  g_autoptr (GPtrArray) none = ff_zone_table_nearest (table, 0, 0, 0);
  g_autoptr (GPtrArray) all = ff_zone_table_nearest (table, 0, 0, 100);

  assert_int_equal (york->len, 3);
  assert_string_equal (row (york, 0)->zone, "Europe/London");
  assert_string_equal (row (york, 1)->zone, "Europe/Dublin");
  assert_int_equal (none->len, 0);
  assert_int_equal (all->len, table->len);
}

/* Across the date line it is not far. */
static void
test_over_the_date_line (void **state)
{
  g_autoptr (GPtrArray) table = ff_zone_table_parse (rows);
  g_autoptr (GPtrArray) near = ff_zone_table_nearest (table, -16.8, -179.99, 1);

  assert_string_equal (row (near, 0)->zone, "Pacific/Fiji");
  assert_close (ff_zone_city_distance_km (row (near, 0), -16.8, -179.99), 226, 3);
}

static void
test_no_table_no_suggestion (void **state)
{
  g_autoptr (GPtrArray) table = ff_zone_table_parse ("");
  g_autoptr (GPtrArray) near = ff_zone_table_nearest (table, 57.2, -4, 3);

  assert_int_equal (table->len, 0);
  assert_int_equal (near->len, 0);
}

/* Every name that the system's own table has can be taken. */
static void
test_the_table_of_this_computer (void **state)
{
  g_autoptr (GPtrArray) table = ff_zone_table_load ();

  if (table->len == 0)
    skip ();
  assert_true (table->len > 100);
  for (guint i = 0; i < table->len; i++)
    {
      g_autoptr (GTimeZone) zone = g_time_zone_new_identifier (row (table, i)->zone);

      if (zone == NULL)
        fail_msg ("%s is no zone", row (table, i)->zone);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_rows_are_read),
    cmocka_unit_test (test_nearest_first),
    cmocka_unit_test (test_over_the_date_line),
    cmocka_unit_test (test_no_table_no_suggestion),
    cmocka_unit_test (test_the_table_of_this_computer),
  };

  return cmocka_run_group_tests_name ("zone-table", tests, NULL, NULL);
}
