/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Frames of a bracket. The count is a derivation of our own, 1 + ceil ((R - D) / s), so that the
 * values here are computed from it and no published table. That frames at geometrically spaced
 * times and fixed ISO are the usual way: Hasinoff, Durand and Freeman, "Noise-optimal capture for
 * high dynamic range photography", CVPR 2010, abstract. */
#include "ff-test.h"

#include <math.h>

#include "ff-bracket.h"

static void
test_frames (void **state)
{
  static const struct {
    double scene, camera, step;
    guint frames;
  } cases[] = {
    { 12, 12, 2, 1 },
    { 10.5, 10, 1, 2 },
    { 14, 10, 2, 3 },
    { 15, 12, 2, 3 },
    { 16, 12, 2, 3 },
    { 17, 12, 1, 6 },
    { 20, 12, 3, 4 },
    { 20, 12, 2, 5 },
    { 18, 10, 2, 5 },
    { 24, 14, 2, 6 },
    { 8, 12, 2, 1 },
    { 10.3, 10, 0.1, 4 },
    { 12 + 4 / 3.0, 12, 1 / 3.0, 5 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_int_equal (ff_bracket_frames (cases[i].scene, cases[i].camera, cases[i].step),
                      cases[i].frames);
  assert_int_equal (ff_bracket_odd_frames (6), 7);
  assert_int_equal (ff_bracket_odd_frames (5), 5);
  assert_int_equal (ff_bracket_odd_frames (1), 1);
}

/* By definition: the frames span the scene, one fewer would not. */
static void
test_frames_are_just_enough (void **state)
{
  FfTestRandom random = { 20270918 };

  for (int i = 0; i < 10000; i++)
    {
      const double camera = ff_test_random (&random, 1, 16);
      const double step = ff_test_random (&random, 0.3, camera);
      const double scene = ff_test_random (&random, 1, 30);
      const guint frames = ff_bracket_frames (scene, camera, step);

      assert_true (camera + (frames - 1) * step >= scene - 1e-6);
      assert_true (frames == 1 || camera + (frames - 2) * step < scene);
    }
}

static void
test_exposures (void **state)
{
  static const double odd[] = { 1 / 800.0, 1 / 200.0, 1 / 50.0, 1 / 12.5, 1 / 3.125 };

  for (guint i = 0; i < G_N_ELEMENTS (odd); i++)
    assert_close (ff_bracket_exposure_s (1 / 50.0, 2, 5, i), odd[i], 1e-12);
  assert_close (ff_bracket_exposure_s (1 / 50.0, 2, 1, 0), 1 / 50.0, 0);

  /* An even number has no middle frame: the base lies between the middle two. */
  assert_close (ff_bracket_exposure_s (1 / 50.0, 2, 4, 1), 1 / 100.0, 1e-12);
  assert_close (ff_bracket_exposure_s (1 / 50.0, 2, 4, 2), 1 / 25.0, 1e-12);
  assert_close (ff_bracket_exposure_s (1 / 50.0, 2, 4, 3), 4 / 25.0, 1e-12);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_frames),
    cmocka_unit_test (test_frames_are_just_enough),
    cmocka_unit_test (test_exposures),
  };

  return cmocka_run_group_tests_name ("published bracket", tests, NULL, NULL);
}
