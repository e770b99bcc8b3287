/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-filter-test.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-error.h"
#include "ff-exposure.h"
#include "ff-number.h"

/* Judgements of our own, no source. Lost highlights pull the mean down; deep shadows hardly move
 * it. The mean against the median says how the tones are spread, whatever the exposure. */
#define MOST_LOST_HIGH   0.005
#define MOST_LOST_LOW    0.05
#define SAME_SHAPE_STOPS 0.5
#define HARDWARE_STOPS   0.1
#define PROFILE_STOPS    (1.0 / 3.0)
#define SHAPE_SHARE      0.25

#define LEAST_STOPS (-0.3) /* a clear glass, give or take */
#define MOST_STOPS  20.0

static gboolean
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, sentence);
  return FALSE;
}

static gboolean
check_settings (const FfFilterPicture *without, const FfFilterPicture *with, GError **error)
{
  const FfFilterPicture *pictures[] = { without, with };

  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    if (!(pictures[i]->f_number > 0) || !(pictures[i]->seconds > 0) || !(pictures[i]->iso > 0))
      return refuse (error, i == 0 ? _ ("the picture without the filter does not say aperture, "
                                        "shutter and ISO; accepted: one with its settings")
                                   : _ ("the picture with the filter does not say aperture, "
                                        "shutter and ISO; accepted: one with its settings"));
  return TRUE;
}

static gboolean
check_clipped (const FfFilterPicture *without, const FfFilterPicture *with, GError **error)
{
  const FfFilterPicture *pictures[] = { without, with };

  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    {
      const FfTones *tones = &pictures[i]->tones;

      if (tones->clipped_high > MOST_LOST_HIGH)
        return refuse (error, i == 0 ? _ ("the picture without the filter has lost highlights; "
                                          "take it again darker")
                                     : _ ("the picture with the filter has lost highlights; take "
                                          "it again darker"));
      if (tones->clipped_low > MOST_LOST_LOW || !isfinite (tones->middle_stops))
        return refuse (error, i == 0 ? _ ("the picture without the filter has lost shadows; take "
                                          "it again brighter")
                                     : _ ("the picture with the filter has lost shadows; take it "
                                          "again brighter"));
    }
  return TRUE;
}

/* How the tones are spread, in stops. */
static double
shape_of (const FfTones *tones)
{
  return log2 (tones->mean / tones->median);
}

static double
scene_ev100 (const FfFilterPicture *picture)
{
  const FfMeterSettings settings = { picture->f_number, picture->seconds, picture->iso, 0.0, 0.0 };
  FfMeterReading reading;

  ff_meter_picture (&picture->tones, &settings, &reading);
  return reading.ev100;
}

static double
spread_of (const FfFilterPicture *without, const FfFilterPicture *with)
{
  double apart = fabs (without->tones.middle_stops - with->tones.middle_stops);
  double profile = PROFILE_STOPS * MIN (apart, 1.0);
  double shape = SHAPE_SHARE * (shape_of (&without->tones) - shape_of (&with->tones));

  return sqrt (HARDWARE_STOPS * HARDWARE_STOPS + profile * profile + shape * shape);
}

static gboolean
check_result (double stops, GError **error)
{
  g_autofree char *said = ff_stops_format (stops);

  if (stops < LEAST_STOPS)
    return refuse (error, _ ("it is brighter with the filter than without; are the two pictures "
                             "swapped?"));
  if (stops <= MOST_STOPS)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("%s is more than any filter takes; are they of one scene?"), said);
  return FALSE;
}

gboolean
ff_filter_test (const FfFilterPicture *without,
                const FfFilterPicture *with,
                FfFilterTest *ret_test,
                GError **error)
{
  double stops;

  if (!check_settings (without, with, error) || !check_clipped (without, with, error))
    return FALSE;
  if (!(fabs (shape_of (&without->tones) - shape_of (&with->tones)) <= SAME_SHAPE_STOPS))
    return refuse (error, _ ("the two pictures don't show the same scene; take both from one spot, "
                             "one after the other"));
  stops = scene_ev100 (without) - scene_ev100 (with);
  if (!check_result (stops, error))
    return FALSE;
  *ret_test = (FfFilterTest) { MAX (stops, 0.0), spread_of (without, with) };
  return TRUE;
}
