/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cards against published marks and sizes. Source of the marks: SD Association, "SD Standard for
 * Video Recording / Speed Class": the number is the least writing speed in MB/s; CompactFlash
 * Association, Video Performance Guarantee profiles (VPG20, VPG65 and VPG130 from memory). The
 * durations are computed in decimal units. */
#include "ff-test.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ff-media.h"

static void
test_classes (void **state)
{
  static const struct {
    const char *name;
    double mbs, mbits;
  } cases[] = {
    { "C2", 2, 16 },         { "C4", 4, 32 },
    { "C6", 6, 48 },         { "C10", 10, 80 },
    { "U1", 10, 80 },        { "U3", 30, 240 },
    { "V6", 6, 48 },         { "V10", 10, 80 },
    { "V30", 30, 240 },      { "V60", 60, 480 },
    { "V90", 90, 720 },      { "E150", 150, 1200 },
    { "E300", 300, 2400 },   { "E450", 450, 3600 },
    { "E600", 600, 4800 },   { "VPG20", 20, 160 },
    { "VPG65", 65, 520 },    { "VPG130", 130, 1040 },
    { "VPG200", 200, 1600 }, { "VPG400", 400, 3200 },
    { "VPG800", 800, 6400 }, { "VPG1600", 1600, 12800 },
  };

  assert_int_equal (ff_card_class_count (), G_N_ELEMENTS (cases));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const FfCardClass *found = ff_card_class (i);

      assert_string_equal (found->name, cases[i].name);
      assert_close (found->mbs, cases[i].mbs, 0);
      assert_close (ff_media_write_mbs (cases[i].mbits), cases[i].mbs, 0);
      assert_ptr_equal (ff_card_class_for (found->family, cases[i].mbs), found);
    }
}

/* A class carries its own rate and not a hair more. */
static void
test_lowest_class (void **state)
{
  static const struct {
    double mbits;
    const char *name;
  } cases[] = {
    { 10, "V6" },   { 48, "V6" },   { 48.1, "V10" }, { 100, "V30" }, { 150, "V30" },
    { 240, "V30" }, { 241, "V60" }, { 480, "V60" },  { 720, "V90" }, { 721, NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const FfCardClass *found
          = ff_card_class_for (FF_CARD_VIDEO, ff_media_write_mbs (cases[i].mbits));

      if (cases[i].name == NULL)
        assert_null (found);
      else
        assert_string_equal (found->name, cases[i].name);
    }
}

static void
test_minutes (void **state)
{
  static const struct {
    double gb, mbits, minutes, minutes_if_gib, gib;
  } cases[] = {
    { 64, 100, 85.333, 91.626, 59.605 },     { 128, 100, 170.667, 183.252, 119.209 },
    { 128, 150, 113.778, 122.168, 119.209 }, { 256, 200, 170.667, 183.252, 238.419 },
    { 512, 400, 170.667, 183.252, 476.837 }, { 32, 60, 71.111, 76.355, 29.802 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const double gib_as_gb = cases[i].gb * 1.073741824;

      assert_close (ff_media_minutes (cases[i].gb, cases[i].mbits), cases[i].minutes, 5e-4);
      assert_close (ff_media_minutes (gib_as_gb, cases[i].mbits), cases[i].minutes_if_gib, 5e-4);
      assert_close (ff_media_gib (cases[i].gb), cases[i].gib, 5e-4);
    }
}

static void
test_units (void **state)
{
  assert_close (ff_media_write_mbs (100), 12.5, 0);
  assert_close (ff_media_write_mbs (100) * 1e6 / 1048576, 11.9209, 5e-5);
  assert_close (ff_media_gb_per_hour (100), 45, 0);
  assert_close (ff_media_gib (1.073741824), 1, 1e-12);
  assert_close (ff_media_gib (1099.511627776), 1024, 1e-9); /* a TiB */
}

/* 4 GiB at 100 Mbit/s: 343.597 s, 5 min 43.6 s. */
static void
test_longest_file (void **state)
{
  assert_close (ff_media_file_s (100), 343.597, 5e-4);
  assert_close (ff_media_file_s (100) * ff_media_write_mbs (100) / 1e3, 4.294967, 5e-7);
}

static void
test_pictures (void **state)
{
  assert_close (ff_media_pictures (128, 25), 5120, 0);
  assert_close (ff_media_pictures (128, 25 * 1.048576), 4882, 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_classes),      cmocka_unit_test (test_lowest_class),
    cmocka_unit_test (test_minutes),      cmocka_unit_test (test_units),
    cmocka_unit_test (test_longest_file), cmocka_unit_test (test_pictures),
  };

  return cmocka_run_group_tests_name ("published media", tests, NULL, NULL);
}
