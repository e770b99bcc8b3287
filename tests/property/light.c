/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must hold of light whatever the numbers: seeded, so that a failure comes back. */
#include "ff-test.h"

#include <math.h>

#include "ff-daylight.h"
#include "ff-exposure.h"
#include "ff-filter.h"
#include "ff-scale.h"
#include "ff-sun.h"

#define ROUNDS 2000

/* Two settings with equal N^2 / (t S) expose alike, and each is found again from the other two. */
static void
test_reciprocity (void **state)
{
  FfTestRandom random = { 1 };

  for (int i = 0; i < ROUNDS; i++)
    {
      double f_number = ff_test_random (&random, 0.7, 32);
      double seconds = exp2 (ff_test_random (&random, -15, 5));
      double iso = exp2 (ff_test_random (&random, 4, 17));
      double k = exp2 (ff_test_random (&random, -3, 3));
      double ev100 = ff_exposure_ev100 (f_number, seconds, iso);

      assert_close (ff_exposure_ev100 (f_number, seconds * k, iso / k), ev100, 1e-9);
      assert_close (ff_exposure_ev100 (f_number * sqrt (k), seconds * k, iso), ev100, 1e-9);
      assert_close (ff_exposure_seconds_for (ev100, f_number, iso) / seconds, 1, 1e-9);
      assert_close (ff_exposure_aperture_for (ev100, seconds, iso) / f_number, 1, 1e-9);
      assert_close (ff_exposure_iso_for (ev100, f_number, seconds) / iso, 1, 1e-9);
      assert_close (ff_exposure_ev100_of_lux (ff_exposure_illuminance (ev100)), ev100, 1e-9);
    }
}

/* APEX: Ev = Av + Tv, and Ev = EV at ISO 100 + Sv - 5. */
static void
test_apex_adds_up (void **state)
{
  FfTestRandom random = { 2 };

  for (int i = 0; i < ROUNDS; i++)
    {
      double f_number = ff_test_random (&random, 0.7, 32);
      double seconds = exp2 (ff_test_random (&random, -15, 5));
      double iso = exp2 (ff_test_random (&random, 4, 17));
      double ev = ff_exposure_ev (f_number, seconds);

      assert_close (ff_exposure_av (f_number) + ff_exposure_tv (seconds), ev, 1e-9);
      assert_close (ff_exposure_ev100 (f_number, seconds, iso) + ff_exposure_sv (iso) - 5, ev,
                    1e-9);
    }
}

static void
test_shutter_angle_round_trip (void **state)
{
  FfTestRandom random = { 3 };

  for (int i = 0; i < ROUNDS; i++)
    {
      double fps = ff_test_random (&random, 1, 240);
      double angle = ff_test_random (&random, 1, 360);

      assert_close (ff_shutter_angle_deg (ff_shutter_seconds (angle, fps), fps), angle, 1e-9);
    }
}

/* A label leads back to its step, by name, by what it reads and by what it stands for; a step is a
 * third of a stop; what is written lies within a seventh of a stop of what it stands for. */
static void
test_labels_round_trip (void **state)
{
  static const double stops_per_doubling[] = { 2, 1, 1 };

  for (int s = FF_SCALE_APERTURE; s <= FF_SCALE_ISO; s++)
    for (guint step = 0; step < ff_scale_size ((FfScale) s); step++)
      {
        FfScale scale = (FfScale) s;
        double exact = ff_scale_exact (scale, step);
        double written = ff_scale_written (scale, step);

        assert_int_equal (ff_scale_find (scale, ff_scale_label (scale, step)), step);
        assert_int_equal (ff_scale_nearest (scale, exact), step);
        assert_int_equal (ff_scale_nearest (scale, written), step);
        assert_close (stops_per_doubling[s] * log2 (written / exact), 0, 1.0 / 7);
        if (step > 0)
          assert_close (stops_per_doubling[s] * log2 (exact / ff_scale_exact (scale, step - 1)),
                        1.0 / 3, 1e-9);
      }
}

static void
test_nearest_is_nearest (void **state)
{
  FfTestRandom random = { 4 };

  for (int i = 0; i < ROUNDS; i++)
    {
      double seconds = exp2 (ff_test_random (&random, -16, 6));
      guint nearest = ff_scale_nearest (FF_SCALE_SHUTTER, seconds);
      double distance = fabs (log2 (seconds / ff_scale_exact (FF_SCALE_SHUTTER, nearest)));

      for (guint step = 0; step < ff_scale_size (FF_SCALE_SHUTTER); step++)
        assert_true (distance
                     <= fabs (log2 (seconds / ff_scale_exact (FF_SCALE_SHUTTER, step))) + 1e-12);
    }
}

/* What is said of a time reads back within 6 %: half a unit of the last place that is shown. */
static void
test_shutter_text_reads_back (void **state)
{
  FfTestRandom random = { 5 };

  for (int i = 0; i < ROUNDS; i++)
    {
      double seconds = exp2 (ff_test_random (&random, -16, 11));
      g_autofree char *said = ff_shutter_format (seconds);
      g_autoptr (GError) error = NULL;
      double back = NAN;

      ff_shutter_parse ("shutter", said, FALSE, &back, &error);
      assert_no_error (error);
      assert_close (back / seconds, 1, 0.06);
    }
}

/* Labels of one strength written three ways agree; stacks add stops and density and multiply
 * factors; more stops let less through. */
static void
test_filters_agree (void **state)
{
  FfTestRandom random = { 6 };

  for (int i = 0; i < ROUNDS; i++)
    {
      double a = ff_test_random (&random, 0, 14);
      double b = ff_test_random (&random, 0, 14);

      assert_close (ff_filter_factor (a) * ff_filter_factor (b) / ff_filter_factor (a + b), 1,
                    1e-9);
      assert_close (ff_filter_density (a) + ff_filter_density (b), ff_filter_density (a + b), 1e-9);
      assert_close (ff_filter_transmittance (a) * ff_filter_factor (a), 1, 1e-9);
      assert_close (pow (10, ff_filter_density (a)) / ff_filter_factor (a), 1, 1e-9);
      if (a < b)
        assert_true (ff_filter_transmittance (a) > ff_filter_transmittance (b));
    }
}

static void
test_filter_labels_round_trip (void **state)
{
  FfTestRandom random = { 7 };

  for (int i = 0; i < ROUNDS; i++)
    {
      int hundredths = ff_test_random_int (&random, 0, 999);
      g_autofree char *density = g_strdup_printf ("ND%d.%02d", hundredths / 100, hundredths % 100);
      g_autofree char *stops
          = g_strdup_printf ("%d.%02d stops", hundredths / 100, hundredths % 100);
      FfFilterStrength strength = { 0 };

      assert_true (ff_filter_parse (density, &strength, NULL));
      assert_close (ff_filter_density (strength.stops), hundredths / 100.0, 1e-9);
      assert_true (ff_filter_parse (stops, &strength, NULL));
      assert_close (strength.stops, hundredths / 100.0, 1e-9);
    }
}

/* Any bytes: taken within bounds or refused with a reason, never anything else. */
static void
test_filter_labels_of_noise (void **state)
{
  static const char letters[] = "ND 0123456789.-stopvariableSTOP\xe2\x80\x93";
  FfTestRandom random = { 8 };

  for (int i = 0; i < 10 * ROUNDS; i++)
    {
      char label[16] = "";
      int length = ff_test_random_int (&random, 0, 15);
      g_autoptr (GError) error = NULL;
      FfFilterStrength strength = { FF_FILTER_BY_STOPS, NAN, NAN };

      for (int j = 0; j < length; j++)
        label[j] = letters[ff_test_random_int (&random, 0, (int) sizeof letters - 2)];
      if (ff_filter_parse (label, &strength, &error))
        assert_true (strength.stops >= 0 && strength.stops <= strength.stops_to
                     && strength.stops_to < 34);
      else
        assert_non_null (error);
    }
}

/* Higher sun, more light, under every sky, in steps that are wider than the joins of the
 * polynomials are rough. */
static void
test_daylight_rises_with_the_sun (void **state)
{
  for (int sky = FF_SKY_CLEAR; sky <= FF_SKY_DARK; sky++)
    for (double h = -17.95; h <= 90; h += 0.05)
      if (!(ff_daylight_lx (h, (FfSky) sky) > ff_daylight_lx (h - 0.05, (FfSky) sky)))
        fail_msg ("sky %d: darker at %.2f than below", sky, h);
}

/* No step over 0.05 stop anywhere: not at the joins of the polynomials, nor where the gain of a
 * view bends or the ratio of a sky is held. The polynomials are steepest in twilight, 1.7 stops a
 * degree, which a millidegree does not show. */
static void
test_daylight_is_continuous (void **state)
{
  static const double from_sun[] = { 0, 60, 90, 135, 180 };

  for (int sky = FF_SKY_CLEAR; sky <= FF_SKY_DARK; sky++)
    for (guint i = 0; i < G_N_ELEMENTS (from_sun); i++)
      for (int millidegrees = -20000; millidegrees < 90000; millidegrees += 2)
        {
          FfDaylightQuery query
              = { millidegrees / 1000.0, (FfSky) sky, FF_VIEW_OBLIQUE, from_sun[i], 0 };
          FfDaylight here, next;

          ff_daylight (&query, &here);
          query.sun_altitude_deg += 0.002;
          ff_daylight (&query, &next);
          if (!(fabs (next.ev100 - here.ev100) < 0.05))
            fail_msg ("sky %d, %g from the sun: a step at %g", sky, from_sun[i],
                      query.sun_altitude_deg);
        }
}

/* A day at a random place, from the sun's highest on: minute by minute the light never rises, on the
 * ground or straight down under any sky, nor with the sun behind the camera. */
static void
check_afternoon (FfTestRandom *random)
{
  const FfSite site = { ff_test_random (random, -66, 66), ff_test_random (random, -180, 180), 0 };
  const double from = 1798761600 + 86400.0 * ff_test_random_int (random, 0, 364); /* 2027 */
  const FfSky sky = (FfSky) ff_test_random_int (random, FF_SKY_CLEAR, FF_SKY_DARK);
  FfDaylightQuery down = { .sky = sky, .view = FF_VIEW_DOWN };
  FfDaylightQuery front = { .sky = sky, .view = FF_VIEW_OBLIQUE, .from_sun_deg = 180 };
  double before_down = INFINITY, before_front = INFINITY, noon = from;
  FfSunTrack track;

  ff_sun_track_init (&track, from, from + 2 * 86400, &site);
  while (ff_sun_track_hour_angle_deg (&track, noon) < 0
         || ff_sun_track_hour_angle_deg (&track, noon) > 0.25)
    noon += 60;
  /* The sun's own motion puts its highest a little off the meridian, near the poles most. */
  for (double at = noon + 300; ff_sun_track_hour_angle_deg (&track, at) > 0; at += 60)
    {
      FfDaylight light;

      down.sun_altitude_deg = front.sun_altitude_deg = ff_sun_track_altitude_deg (&track, at);
      if (down.sun_altitude_deg < -18)
        return;
      ff_daylight (&down, &light);
      if (light.ev100 > before_down + 0.01)
        fail_msg ("sky %d: brighter at %.2f° after noon", (int) sky, down.sun_altitude_deg);
      before_down = MIN (before_down, light.ev100);
      ff_daylight (&front, &light);
      if (light.ev100 > before_front + 0.05)
        fail_msg ("sky %d, front: brighter at %.2f°", (int) sky, down.sun_altitude_deg);
      before_front = MIN (before_front, light.ev100);
    }
}

static void
test_light_never_rises_after_noon (void **state)
{
  FfTestRandom random = { 12 };

  for (int i = 0; i < 200; i++)
    check_afternoon (&random);
}

/* A thicker sky is darker; turning from front to back light never gains; the spread holds the
 * level. */
static void
test_daylight_order (void **state)
{
  FfTestRandom random = { 9 };

  for (int i = 0; i < ROUNDS; i++)
    {
      double h = ff_test_random (&random, -30, 90);
      double angle = ff_test_random (&random, 0, 179);
      int sky = ff_test_random_int (&random, FF_SKY_CLEAR, FF_SKY_DARK);
      FfDaylightQuery query = { h, (FfSky) sky, FF_VIEW_OBLIQUE, angle, 0 };
      FfDaylight back, front;

      assert_true (ff_daylight_lx (h, FF_SKY_THIN) < ff_daylight_lx (h, FF_SKY_CLEAR));
      assert_true (ff_daylight_lx (h, FF_SKY_PARTLY) < ff_daylight_lx (h, FF_SKY_CLEAR));
      assert_true (ff_daylight_lx (h, FF_SKY_OVERCAST) < ff_daylight_lx (h, FF_SKY_PARTLY));
      assert_true (ff_daylight_lx (h, FF_SKY_DARK) < ff_daylight_lx (h, FF_SKY_OVERCAST));
      ff_daylight (&query, &back);
      query.from_sun_deg = angle + 1;
      ff_daylight (&query, &front);
      assert_true (front.ev100 >= back.ev100);
      assert_true (back.low_ev100 < back.ev100 && back.ev100 < back.high_ev100);
    }
}

static void
test_bearing_differences (void **state)
{
  FfTestRandom random = { 10 };

  for (int i = 0; i < ROUNDS; i++)
    {
      double a = ff_test_random (&random, 0, 360);
      double b = ff_test_random (&random, 0, 360);
      double turn = ff_test_random (&random, -720, 720);
      double difference = ff_bearing_difference_deg (a, b);

      assert_true (difference >= 0 && difference <= 180);
      assert_close (ff_bearing_difference_deg (b, a), difference, 1e-9);
      assert_close (ff_bearing_difference_deg (a + turn, b + turn), difference, 1e-9);
      assert_close (ff_bearing_difference_deg (a, b + 180), 180 - difference, 1e-9);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_reciprocity),
    cmocka_unit_test (test_apex_adds_up),
    cmocka_unit_test (test_shutter_angle_round_trip),
    cmocka_unit_test (test_labels_round_trip),
    cmocka_unit_test (test_nearest_is_nearest),
    cmocka_unit_test (test_shutter_text_reads_back),
    cmocka_unit_test (test_filters_agree),
    cmocka_unit_test (test_filter_labels_round_trip),
    cmocka_unit_test (test_filter_labels_of_noise),
    cmocka_unit_test (test_daylight_rises_with_the_sun),
    cmocka_unit_test (test_daylight_is_continuous),
    cmocka_unit_test (test_light_never_rises_after_noon),
    cmocka_unit_test (test_daylight_order),
    cmocka_unit_test (test_bearing_differences),
  };

  return cmocka_run_group_tests_name ("light properties", tests, NULL, NULL);
}
