/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-frame-filter.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-frame-private.h"

#define MOST_APART_S (10 * 60) /* our own judgement, no source */

static FfFilterPicture
picture_of (const FfFrame *frame)
{
  return (FfFilterPicture) { frame->tones, ff_frame_exact_aperture (frame), frame->shutter_s,
                             frame->iso };
}

/* Both by the clock of the one camera. */
static gboolean
check_times (const FfFrame *without, const FfFrame *with, GError **error)
{
  int apart = ABS (without->taken_second - with->taken_second);

  if (!without->has_taken || !with->has_taken
      || (ff_date_compare (without->taken_date, with->taken_date) == 0 && apart <= MOST_APART_S))
    return TRUE;
  return ff_frame_refuse (error, _ ("the two pictures were taken more than 10 minutes apart; the "
                                    "light moves on, so take them one after the other"));
}

static gboolean
check_sizes (const FfFrame *without, const FfFrame *with, GError **error)
{
  if (without->width == with->width && without->height == with->height)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("the two pictures are of different size: %u × %u and %u × %u; accepted: two of "
                  "one camera"),
               without->width, without->height, with->width, with->height);
  return FALSE;
}

gboolean
ff_frame_filter_test (const char *without, const char *with, FfFilterTest *ret_test, GError **error)
{
  FfFrame bare, filtered;
  FfFilterPicture bare_picture, filtered_picture;

  if (!ff_frame_read (without, &bare, error) || !ff_frame_read (with, &filtered, error)
      || !check_sizes (&bare, &filtered, error) || !check_times (&bare, &filtered, error))
    return FALSE;
  bare_picture = picture_of (&bare);
  filtered_picture = picture_of (&filtered);
  return ff_filter_test (&bare_picture, &filtered_picture, ret_test, error);
}
