/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Depth of field and diffraction against handbook examples. Sources, named again at each case: US
 * Army correspondence course of the SS0507/SS0508 series, learning event 10; US Navy, NAVEDTRA
 * 14209. Those use short forms in feet and inches; the table below is computed from the exact
 * forms. */
#include "ff-test.h"

#include <math.h>

#include "ff-depth.h"

#define FOOT 0.3048
#define INCH 25.4 /* mm */

/* Army: 50 mm taken as 2 in, f/8, circle of 0.002 in: hyperfocal 20.8 ft, and focused there sharp
 * from 10.4 ft to infinity (computed 20.833 and 10.417 without the focal-length term, which adds
 * 2 in). */
static void
test_army (void **state)
{
  const double f = 2 * INCH;
  const double hyperfocal = ff_depth_hyperfocal_m (f, 8, 0.002 * INCH * 1e3);

  assert_close ((hyperfocal - f * 1e-3) / FOOT, 20.833, 5e-4);
  assert_close (hyperfocal / FOOT, 20.8, 0.21);
  assert_close (ff_depth_near_m (hyperfocal, f, hyperfocal) / FOOT, 10.4, 0.11);
  assert_close (ff_depth_near_m (hyperfocal, f, hyperfocal), hyperfocal / 2, 1e-12);
  assert_true (isinf (ff_depth_far_m (hyperfocal, f, hyperfocal)));
}

/* Navy: 155 mm (6.1 in), f/2.8: hyperfocal 554 ft, which implies a circle of 0.002 in; focused at
 * 10 ft sharp from 9.8 to 10.2 ft, 0.4 ft in all; and focus at 10 ft to cover just that. */
static void
test_navy (void **state)
{
  const double f = 6.1 * INCH;
  const double hyperfocal = ff_depth_hyperfocal_m (f, 2.8, 0.002 * INCH * 1e3);
  const double near = ff_depth_near_m (10 * FOOT, f, hyperfocal) / FOOT;
  const double far = ff_depth_far_m (10 * FOOT, f, hyperfocal) / FOOT;

  assert_close ((hyperfocal - f * 1e-3) / FOOT, 553.72, 0.005);
  assert_close (hyperfocal / FOOT, 554, 0.5);
  assert_close (near, 9.8, 0.05);
  assert_close (far, 10.2, 0.05);
  assert_close (far - near, 0.4, 0.06);
  assert_close (ff_depth_focus_m (9.8, 10.2), 10, 0.005);
  assert_close (ff_depth_focus_m (9.8, 10.2), 9.996, 5e-4);
}

/* To 0.1 mm; metres here. A far limit of 0 stands for infinity. */
static void
test_exact_forms (void **state)
{
  static const struct {
    double focal, f_number, coc_um, distance, hyperfocal, near, far;
  } cases[] = {
    { 50, 8, 30, 5, 10.4667, 3.3894, 9.5274 },     { 50, 8, 25, 5, 12.5500, 3.5817, 8.2781 },
    { 24, 8, 30, 2, 2.4240, 1.0969, 11.3208 },     { 24, 5.6, 30, 10, 3.4526, 2.5578, 0 },
    { 35, 8, 20, 5, 7.6912, 3.0331, 14.2243 },     { 8.8, 2.8, 11, 5, 2.5231, 1.6750, 0 },
    { 6.7, 1.7, 6.6, 3, 4.0076, 1.7161, 11.9122 }, { 85, 2.8, 30, 3, 86.0969, 2.9017, 3.1052 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const double f = cases[i].focal;
      const double h = ff_depth_hyperfocal_m (f, cases[i].f_number, cases[i].coc_um);
      const double far = ff_depth_far_m (cases[i].distance, f, h);

      assert_close (h, cases[i].hyperfocal, 1e-4);
      assert_close (ff_depth_near_m (cases[i].distance, f, h), cases[i].near, 1e-4);
      if (cases[i].far == 0)
        assert_true (isinf (far));
      else
        assert_close (far, cases[i].far, 1e-4);
    }
}

/* An aperture is taken as written; its exact value would give 3418.1 mm. */
static void
test_exact_aperture (void **state)
{
  assert_close (ff_depth_hyperfocal_m (24, exp2 (2.5), 30), 3.4181, 1e-4);
}

/* What is sharp at the hyperfocal distance reaches from half of it to infinity, and focusing for
 * both limits leads back to where they came from but for the focal-length term. */
static void
test_focus_between (void **state)
{
  assert_close (ff_depth_focus_m (5, INFINITY), 10, 0);
  assert_close (ff_depth_focus_m (3.3894, 9.5274), 5, 1e-3);
}

/* 2.44 lambda N at 550 nm (the formula from memory; a first zero at 1.22 lambda f / D is in any
 * textbook of optics). */
static void
test_airy_disk (void **state)
{
  static const struct {
    double f_number, um;
  } cases[] = {
    { 1.4, 1.879 }, { 2, 2.684 },        { 2.8, 3.758 },        { 4, 5.368 },
    { 5.6, 7.515 }, { 8, 10.736 },       { 11, 14.762 },        { 16, 21.472 },
    { 22, 29.524 }, { 5.656854, 7.591 }, { 11.313708, 15.183 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_close (ff_depth_airy_um (cases[i].f_number), cases[i].um, 5e-4);
  assert_close (ff_depth_airy_um (ff_depth_sharp_to (3)), 6, 1e-12);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_army),          cmocka_unit_test (test_navy),
    cmocka_unit_test (test_exact_forms),   cmocka_unit_test (test_exact_aperture),
    cmocka_unit_test (test_focus_between), cmocka_unit_test (test_airy_disk),
  };

  return cmocka_run_group_tests_name ("published depth", tests, NULL, NULL);
}
