/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-frame.h"

#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "ff-error.h"
#include "ff-frame-private.h"
#include "ff-number.h"
#include "ff-scale.h"

/* Beyond any camera that flies. A small file can claim any size; this bounds the time it takes. */
#define MAX_SIDE   65535
#define MAX_PIXELS (G_GUINT64_CONSTANT (300) * 1000 * 1000)

typedef enum { FORMAT_UNKNOWN, FORMAT_JPEG, FORMAT_PNG, FORMAT_TIFF } Format;

gboolean
ff_frame_refuse (GError **error, const char *why)
{
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, why);
  return FALSE;
}

const char *
ff_frame_damaged (void)
{
  return _ ("the picture is cut short or damaged; copy it from the card once more");
}

gboolean
ff_frame_begin (FfFramePixels *pixels, guint64 width, guint64 height, guint bits, GError **error)
{
  if (width == 0 || height == 0)
    return ff_frame_refuse (error, _ ("the picture has no pixels"));
  if (width > MAX_SIDE || height > MAX_SIDE || width * height > MAX_PIXELS)
    return ff_frame_refuse (error, _ ("the picture is too large; accepted: up to 300 megapixels"));
  pixels->width = (guint) width;
  pixels->height = (guint) height;
  ff_light_table_fill (&pixels->table, bits);
  return TRUE;
}

/* By what the file begins with; its name proves nothing. */
static Format
format_of (FILE *file)
{
  static const guint8 png[] = { 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n' };
  guint8 head[8] = { 0 };
  const gsize length = fread (head, 1, sizeof head, file);

  rewind (file);
  if (length < sizeof head)
    return FORMAT_UNKNOWN;
  if (head[0] == 0xff && head[1] == 0xd8 && head[2] == 0xff)
    return FORMAT_JPEG;
  if (memcmp (head, png, sizeof png) == 0)
    return FORMAT_PNG;
  if ((head[0] == 'I' && head[1] == 'I' && (head[2] == 42 || head[2] == 43) && head[3] == 0)
      || (head[0] == 'M' && head[1] == 'M' && head[2] == 0 && (head[3] == 42 || head[3] == 43)))
    return FORMAT_TIFF;
  return FORMAT_UNKNOWN;
}

/* A raw picture's own pixels are no measure of exposure until they are developed. The preview is
 * read where it lies if it can be: pieced together by the library it is in memory several times. */
static gboolean
read_preview (FfFrameTags *tags, FILE *file, FfFramePixels *pixels, GError **error)
{
  g_autoptr (GBytes) preview = NULL;
  const guint8 *data;
  glong offset;
  gsize size;

  if (ff_frame_tags_find_strip (tags, &offset) && fseek (file, offset, SEEK_SET) == 0)
    return ff_frame_read_jpeg_file (file, pixels, error);
  preview = ff_frame_tags_preview (tags);
  if (preview == NULL)
    return ff_frame_refuse (error, _ ("the raw picture has no preview inside; accepted: one with a "
                                      "JPEG preview, or a JPEG, PNG or TIFF beside it"));
  data = g_bytes_get_data (preview, &size);
  return ff_frame_read_jpeg_data (data, size, pixels, error);
}

static gboolean
read_pixels (const char *path,
             FILE *file,
             Format format,
             FfFrameTags *tags,
             FfFramePixels *pixels,
             gboolean *ret_is_preview,
             GError **error)
{
  switch (format)
    {
    case FORMAT_JPEG:
      return ff_frame_read_jpeg_file (file, pixels, error);
    case FORMAT_PNG:
      return ff_frame_read_png (file, pixels, error);
    case FORMAT_TIFF:
      *ret_is_preview = ff_frame_tags_is_raw (tags);
      return *ret_is_preview ? read_preview (tags, file, pixels, error)
                             : ff_frame_read_tiff (path, pixels, error);
    case FORMAT_UNKNOWN:
    default:
      return ff_frame_refuse (error, _ ("not a picture that can be read; accepted: JPEG, PNG, TIFF "
                                        "or DNG"));
    }
}

/* A pipe or a device would make the program wait for ever. */
static FILE *
open_regular (const char *path, GError **error)
{
  const int fd = open (path, O_RDONLY | O_NONBLOCK | O_CLOEXEC);
  struct stat status;
  FILE *file;

  if (fd < 0)
    {
      ff_frame_refuse (error, g_strerror (errno));
      return NULL;
    }
  file = fstat (fd, &status) == 0 && S_ISREG (status.st_mode) ? fdopen (fd, "rb") : NULL;
  if (file == NULL)
    {
      close (fd);
      ff_frame_refuse (error, _ ("not a file; accepted: a picture"));
    }
  return file;
}

/* Tags are read before the pixels only where they say which pixels to read. Elsewhere a picture
 * must be sound first: the library of tags takes the length of a piece at its word, and asks for
 * two gigabytes when a damaged one says so. */
static gboolean
read_open_file (const char *path, FILE *file, FfFrame *frame, GError **error)
{
  const Format format = format_of (file);
  g_autofree FfFramePixels *pixels = g_new0 (FfFramePixels, 1);
  g_autoptr (FfFrameTags) tags = format == FORMAT_TIFF ? ff_frame_tags_new (path, file) : NULL;

  if (!read_pixels (path, file, format, tags, pixels, &frame->is_preview, error))
    return FALSE;
  if (format != FORMAT_TIFF)
    tags = ff_frame_tags_new (path, NULL);
  frame->width = pixels->width;
  frame->height = pixels->height;
  ff_histogram_measure (&pixels->histogram, &frame->tones);
  ff_frame_tags_fill (tags, frame);
  return TRUE;
}

gboolean
ff_frame_read (const char *path, FfFrame *ret_frame, GError **error)
{
  FILE *file = open_regular (path, error);
  FfFrame frame = { 0 };
  gboolean read = file != NULL && read_open_file (path, file, &frame, error);

  if (file != NULL)
    fclose (file);
  if (read)
    *ret_frame = frame;
  else
    g_prefix_error (error, "%s: ", path);
  return read;
}

gboolean
ff_frame_instant (const FfFrame *frame, GTimeZone *zone, gint64 *ret_instant, GError **error)
{
  g_autoptr (GTimeZone) own = NULL;
  gint64 minute;

  if (!frame->has_taken)
    return ff_frame_refuse (error, _ ("the picture does not say when it was taken"));
  if (frame->has_offset)
    own = g_time_zone_new_offset (frame->offset_s);
  else
    own = zone != NULL ? g_time_zone_ref (zone) : g_time_zone_new_utc ();
  if (!ff_instant_from_clock (frame->taken_date, frame->taken_second / FF_MINUTE, own, &minute,
                              error))
    return FALSE;
  *ret_instant = minute + frame->taken_second % FF_MINUTE;
  return TRUE;
}

double
ff_frame_exact_aperture (const FfFrame *frame)
{
  g_autofree char *label = ff_number_format (frame->aperture, 2);
  const int step = ff_scale_find (FF_SCALE_APERTURE, label);

  return step >= 0 ? ff_scale_exact (FF_SCALE_APERTURE, (guint) step) : frame->aperture;
}

void
ff_frame_meter (const FfFrame *frame, double nd_stops, FfMeterReading *ret_reading)
{
  const FfMeterSettings settings = {
    .f_number = ff_frame_exact_aperture (frame),
    .seconds = frame->shutter_s,
    .iso = frame->iso,
    .bias_stops = isnan (frame->bias_stops) ? 0.0 : frame->bias_stops,
    .nd_stops = nd_stops,
  };

  ff_meter_picture (&frame->tones, &settings, ret_reading);
}
