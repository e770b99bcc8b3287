/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sun compass of the demo day: what it knows, and that its texts keep clear of each other. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-demo.h"
#include "ff-records.h"
#include "ff-sun-compass.h"

static char *folder;
static FfCompassFacts *facts;

static int
load (void **state)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfDay) day = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);
  if (store == NULL || !ff_demo_fill (store, NULL))
    return -1;
  day = ff_day_load (store, "Skarrowick", NULL);
  facts = day != NULL ? ff_compass_facts (day) : NULL;
  return facts != NULL ? 0 : -1;
}

static int
unload (void **state)
{
  ff_compass_facts_free (facts);
  ff_test_folder_remove (folder);
  return 0;
}

/* Each half hour from first off, and sunset at 19:27 (± 2 min); the sun sinks and goes on to the
 * west. Azimuths are held to the ephemeris in tests/published/sky.c. */
static void
test_sun_over_the_hours (void **state)
{
  const FfCompassSun *first = g_ptr_array_index (facts->suns, 0);
  const FfCompassSun *last = g_ptr_array_index (facts->suns, facts->suns->len - 1);
  guint i;

  assert_int_equal (facts->suns->len, 7);
  assert_string_equal (first->clock, "16:30");
  assert_true (strcmp (last->clock, "19:25") >= 0 && strcmp (last->clock, "19:29") <= 0);
  assert_close (last->altitude_deg, 0, 0.01);
  for (i = 1; i < facts->suns->len; i++)
    {
      const FfCompassSun *sun = g_ptr_array_index (facts->suns, i);
      const FfCompassSun *before = g_ptr_array_index (facts->suns, i - 1);

      assert_true (sun->azimuth_deg > before->azimuth_deg);
      assert_true (sun->altitude_deg < before->altitude_deg);
    }
}

/* The sea wall faces 260°, into the evening sun; the mill yard does not. */
static void
test_glare_is_told_where_it_is (void **state)
{
  guint i, posts = 0;

  for (i = 0; i < facts->spots->len; i++)
    {
      const FfCompassSpot *spot = g_ptr_array_index (facts->spots, i);

      if (!spot->post)
        continue;
      posts++;
      assert_int_equal (strcmp (spot->mark, "P1") == 0, *spot->glare != '\0');
      if (*spot->glare != '\0')
        assert_true (spot->glare_from_deg > 240 && spot->glare_to_deg < 280
                     && spot->glare_from_deg < spot->glare_to_deg);
    }
  assert_int_equal (posts, 2);
}

static void
test_labels_keep_clear (void **state)
{
  static const double sizes[][2] = { { 160, 150 }, { 204, 180 }, { 320, 300 }, { 800, 500 } };
  gsize s;

  for (s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      const FfCompassFrame frame = { &ff_palette_paper, NULL, 1, sizes[s][0], sizes[s][1] };
      g_autoptr (FfLabels) labels = ff_sun_compass_labels (facts, &frame);
      cairo_rectangle_t a, b;
      guint i, k;

      for (i = 0; i < ff_labels_count (labels); i++)
        {
          ff_labels_ink (labels, i, &a);
          assert_true (a.x >= -1e-6 && a.y >= -1e-6 && a.x + a.width <= sizes[s][0] + 1e-6
                       && a.y + a.height <= sizes[s][1] + 1e-6);
          for (k = 0; k < i; k++)
            {
              ff_labels_ink (labels, k, &b);
              assert_true (a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y
                           || b.y + b.height <= a.y);
            }
        }
      /* On paper and larger: the points, the spots, the first time and the wind are all there. */
      assert_true (s == 0 || ff_labels_count (labels) >= 14);
    }
}

/* The same for those who hear it. */
static void
test_words_say_it_all (void **state)
{
  g_autoptr (GPtrArray) words = ff_sun_compass_words (facts);

  assert_int_equal (words->len, 4);
  assert_non_null (strstr (g_ptr_array_index (words, 0), "bowling green, 120 m at 320"));
  assert_non_null (strstr (g_ptr_array_index (words, 1), "sun low in your eyes"));
  assert_non_null (strstr (g_ptr_array_index (words, 3), "wind 240"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_sun_over_the_hours),
    cmocka_unit_test (test_glare_is_told_where_it_is),
    cmocka_unit_test (test_labels_keep_clear),
    cmocka_unit_test (test_words_say_it_all),
  };

  return cmocka_run_group_tests (tests, load, unload);
}
