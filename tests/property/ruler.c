/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ruler over random cameras and lights: equivalent settings leave the same gap, a stronger
 * filter never brightens, up and down again is where one was, filters add. */
#include "ff-test.h"

#include <math.h>

#include "ff-ruler.h"
#include "ff-scale.h"

#define ROUNDS 5000

static FfAdviseFilter filters[8];
static FfCameraRange camera;
static const FfWant want = { .intent = FF_INTENT_VIDEO, .fps = 25, .angle_deg = 180,
                             .angle_from_deg = 144, .angle_to_deg = 216 };

static guint
step (FfScale scale, const char *label)
{
  return (guint) ff_scale_find (scale, label);
}

static FfAdviseQuery
query (FfTestRandom *random)
{
  return (FfAdviseQuery) { .ev100 = ff_test_random (random, -4, 17), .camera = &camera,
                           .want = &want, .filters = filters, .n_filters = G_N_ELEMENTS (filters),
                           .max_stack = 1 };
}

/* Somewhere from which each piece can still move three steps either way. */
static FfRuler
somewhere (FfTestRandom *random)
{
  FfRuler ruler = { .aperture = (guint) ff_test_random_int (random, 3, 8),
                    .shutter = (guint) ff_test_random_int (random, (int) camera.shutter_fast + 3,
                                                           (int) camera.shutter_slow - 3),
                    .iso = (guint) ff_test_random_int (random, (int) camera.iso_low + 3,
                                                       (int) camera.iso_high - 3),
                    .filter = ff_test_random_int (random, 0, 6) };

  ruler.set_to = filters[ruler.filter].stops;
  return ruler;
}

/* Reciprocity: what one piece takes more another takes less; the gap is the same. */
static void
test_equivalent_settings_have_the_same_gap (void **state)
{
  FfTestRandom random = { 21 };

  for (int i = 0; i < ROUNDS; i++)
    {
      FfAdviseQuery asked = query (&random);
      FfRuler ruler = somewhere (&random);
      double gap = ff_ruler_gap (&ruler, &asked);
      int thirds = ff_test_random_int (&random, -3, 3);
      FfRuler other = ruler;

      other.aperture = (guint) ((int) other.aperture + thirds);
      other.shutter = (guint) ((int) other.shutter + thirds);
      assert_close (ff_ruler_gap (&other, &asked), gap, 1e-9);
      other = ruler;
      other.shutter += 3;
      other.filter++;
      other.set_to++;
      assert_close (ff_ruler_gap (&other, &asked), gap, 1e-9);
    }
}

/* Labels of ISO are rounded, so that doubling one is a stop but for 1/30. */
static void
test_iso_for_shutter_within_its_rounding (void **state)
{
  FfTestRandom random = { 22 };

  for (int i = 0; i < ROUNDS; i++)
    {
      FfAdviseQuery asked = query (&random);
      FfRuler ruler = somewhere (&random);
      double gap = ff_ruler_gap (&ruler, &asked);

      ruler.iso += 3;
      ruler.shutter -= 3;
      assert_close (ff_ruler_gap (&ruler, &asked), gap, 0.04);
    }
}

static void
test_a_stronger_filter_never_brightens (void **state)
{
  FfTestRandom random = { 23 };

  for (int i = 0; i < ROUNDS; i++)
    {
      FfAdviseQuery asked = query (&random);
      FfRuler ruler = somewhere (&random);
      double gap = ff_ruler_gap (&ruler, &asked);
      FfRulerChange pay;

      ruler.chosen = FF_PIECE_FILTER;
      assert_true (ff_ruler_move (&ruler, &asked, 1, &pay));
      assert_close (ff_ruler_gap (&ruler, &asked), gap - 1, 1e-9);
    }
}

static void
test_up_and_down_is_where_one_was (void **state)
{
  FfTestRandom random = { 24 };

  for (int i = 0; i < ROUNDS; i++)
    {
      FfAdviseQuery asked = query (&random);
      FfRuler ruler = somewhere (&random);
      double gap = ff_ruler_gap (&ruler, &asked);
      FfRulerChange pay;

      ruler.chosen = (FfRulerPiece) ff_test_random_int (&random, 0, FF_N_PIECES - 1);
      assert_true (ff_ruler_move (&ruler, &asked, 1, &pay));
      assert_true (fabs (ff_ruler_gap (&ruler, &asked) - gap) > 0.25);
      assert_true (ff_ruler_move (&ruler, &asked, -1, &pay));
      assert_close (ff_ruler_gap (&ruler, &asked), gap, 1e-9);
    }
}

/* Fixing one piece and letting the light wander: whoever can pay keeps the gap within a third as
 * long as the shot allows it, and what was fixed is as it was. */
static void
test_payers_follow_the_light (void **state)
{
  FfTestRandom random = { 25 };
  int held = 0;

  for (int i = 0; i < ROUNDS; i++)
    {
      FfAdviseQuery asked = query (&random);
      FfRulerChange pay;
      FfRuler ruler;
      guint fixed;

      asked.ev100 = ff_test_random (&random, 8, 14);
      ff_ruler_init (&ruler, &asked);
      ff_ruler_fix (&ruler, &asked, FF_PIECE_SHUTTER, &pay);
      fixed = ruler.shutter;
      asked.ev100 -= ff_test_random (&random, 0, 2);
      ff_ruler_follow (&ruler, &asked, &pay);
      assert_int_equal (ruler.shutter, fixed);
      held += fabs (ff_ruler_gap (&ruler, &asked)) <= FF_REACH_STOPS + 1e-9;
    }
  assert_int_equal (held, ROUNDS);
}

static int
set_up (void **state)
{
  camera = (FfCameraRange) { .iso_low = step (FF_SCALE_ISO, "100"),
                             .iso_high = step (FF_SCALE_ISO, "25600"),
                             .base_iso = { step (FF_SCALE_ISO, "100") },
                             .n_bases = 1,
                             .shutter_fast = step (FF_SCALE_SHUTTER, "1/8000"),
                             .shutter_slow = step (FF_SCALE_SHUTTER, "8"),
                             .thirds_exact = TRUE,
                             .n_apertures = 12 };
  for (guint i = 0; i < camera.n_apertures; i++)
    camera.apertures[i] = (FfAperture) { ff_scale_written (FF_SCALE_APERTURE, 6 + i),
                                         ff_scale_exact (FF_SCALE_APERTURE, 6 + i) };
  for (guint i = 0; i < G_N_ELEMENTS (filters); i++)
    filters[i] = (FfAdviseFilter) { "filter", i + 1, i + 1 };
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_equivalent_settings_have_the_same_gap),
    cmocka_unit_test (test_iso_for_shutter_within_its_rounding),
    cmocka_unit_test (test_a_stronger_filter_never_brightens),
    cmocka_unit_test (test_up_and_down_is_where_one_was),
    cmocka_unit_test (test_payers_follow_the_light),
  };

  return cmocka_run_group_tests_name ("property ruler", tests, set_up, NULL);
}
