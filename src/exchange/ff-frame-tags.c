/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Exif, where the picture's maker, a converter or anyone at all may have written anything. */
#include <gexiv2/gexiv2.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ff-frame-private.h"

/* No preview is as large; a tag can say anything. */
#define MAX_PREVIEW (256 << 20)

#define HEAD_BYTES (1 << 20)

struct _FfFrameTags {
  GExiv2Metadata *metadata;
};

/* The library complains on standard error, which belongs to the one sentence of the command. */
static gboolean
prepare_library (void)
{
  static gsize prepared;

  if (g_once_init_enter (&prepared))
    {
      gsize value = 2;

      if (gexiv2_initialize ())
        value = 1;
      gexiv2_log_set_level (GEXIV2_LOG_LEVEL_MUTE);
      g_once_init_leave (&prepared, value);
    }
  return prepared == 1;
}

static gboolean
has_tag (FfFrameTags *tags, const char *name)
{
  return gexiv2_metadata_try_has_tag (tags->metadata, name, NULL);
}

/* The library takes every picture inside a raw one into memory, several times over. The tags stand
 * before all of them as a rule, so that the head of the file will do: unless it points to settings
 * that lie farther on. */
static gboolean
open_head (FfFrameTags *tags, FILE *file)
{
  g_autofree guint8 *head = g_malloc (HEAD_BYTES);
  const gsize length = fread (head, 1, HEAD_BYTES, file);

  rewind (file);
  return gexiv2_metadata_open_buf (tags->metadata, head, (glong) length, NULL)
         && ff_frame_tags_is_raw (tags)
         && (!has_tag (tags, "Exif.Image.ExifTag") || has_tag (tags, "Exif.Photo.ExposureTime"));
}

/* A metadata object leaks what it holds when it is opened again. */
static void
start_anew (FfFrameTags *tags)
{
  g_clear_object (&tags->metadata);
  tags->metadata = gexiv2_metadata_new ();
}

FfFrameTags *
ff_frame_tags_new (const char *path, FILE *head_of)
{
  g_autoptr (FfFrameTags) tags = NULL;

  if (!prepare_library ())
    return NULL;
  tags = g_new0 (FfFrameTags, 1);
  start_anew (tags);
  if (head_of != NULL && open_head (tags, head_of))
    return g_steal_pointer (&tags);
  start_anew (tags);
  return gexiv2_metadata_open_path (tags->metadata, path, NULL) ? g_steal_pointer (&tags) : NULL;
}

void
ff_frame_tags_free (FfFrameTags *tags)
{
  if (tags == NULL)
    return;
  g_object_unref (tags->metadata);
  g_free (tags);
}

/* A rational between two bounds, else NAN. */
static double
rational (FfFrameTags *tags, const char *name, double low, double high)
{
  int nominator = 0, denominator = 0;
  double value;

  if (!has_tag (tags, name)
      || !gexiv2_metadata_try_get_exif_tag_rational (tags->metadata, name, &nominator, &denominator,
                                                     NULL)
      || denominator == 0)
    return NAN;
  value = (double) nominator / denominator;
  return value >= low && value <= high ? value : NAN;
}

static double
first_of (double first, double second)
{
  return isnan (first) ? second : first;
}

static double
aperture_of (FfFrameTags *tags)
{
  /* APEX: N = 2^(Av/2), to a tenth like the engraving. */
  const double av = rational (tags, "Exif.Photo.ApertureValue", -2, 12);
  const double written = first_of (rational (tags, "Exif.Photo.FNumber", 0.5, 64),
                                   rational (tags, "Exif.Image.FNumber", 0.5, 64));

  return first_of (written, round (exp2 (av / 2) * 10) / 10);
}

static double
shutter_of (FfFrameTags *tags)
{
  /* APEX: t = 2^-Tv. */
  const double tv = rational (tags, "Exif.Photo.ShutterSpeedValue", -12, 17);
  const double written = first_of (rational (tags, "Exif.Photo.ExposureTime", 1e-5, 3600),
                                   rational (tags, "Exif.Image.ExposureTime", 1e-5, 3600));

  return first_of (written, exp2 (-tv));
}

static double
iso_of (FfFrameTags *tags)
{
  /* The first is two bytes wide: 65535 says "more than this", and one of the others how much. */
  static const char *const names[] = {
    "Exif.Photo.ISOSpeedRatings",
    "Exif.Image.ISOSpeedRatings",
    "Exif.Photo.ISOSpeed",
    "Exif.Photo.RecommendedExposureIndex",
    "Exif.Photo.StandardOutputSensitivity",
  };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      glong iso = has_tag (tags, names[i])
                      ? gexiv2_metadata_try_get_tag_long (tags->metadata, names[i], NULL)
                      : 0;

      if (iso >= 1 && iso <= 10000000 && iso != 65535)
        return (double) iso;
    }
  return NAN;
}

/* So many digits at the start of *text, then one of `ends`; moves behind it. */
static gboolean
take_digits (const char **text, guint digits, char end, int *ret_value)
{
  int value = 0;

  for (guint i = 0; i < digits; i++)
    {
      if (!g_ascii_isdigit ((*text)[i]))
        return FALSE;
      value = value * 10 + ((*text)[i] - '0');
    }
  if ((*text)[digits] != end)
    return FALSE;
  *text += digits + (end != '\0');
  *ret_value = value;
  return TRUE;
}

/* "2027:09:18 17:40:12"; a camera that was never set writes zeros or blanks. */
static gboolean
read_time (const char *text, FfDate *ret_date, int *ret_second)
{
  int hour, minute, second;
  FfDate date;
  g_autofree char *iso = NULL;

  if (!take_digits (&text, 4, ':', &date.year) || !take_digits (&text, 2, ':', &date.month)
      || !take_digits (&text, 2, ' ', &date.day) || !take_digits (&text, 2, ':', &hour)
      || !take_digits (&text, 2, ':', &minute) || !take_digits (&text, 2, '\0', &second))
    return FALSE;
  iso = g_strdup_printf ("%04d-%02d-%02d", date.year, date.month, date.day);
  if (!ff_date_parse (iso, ret_date, NULL) || hour > 23 || minute > 59 || second > 59)
    return FALSE;
  *ret_second = (hour * 60 + minute) * FF_MINUTE + second;
  return TRUE;
}

/* "+01:00" */
static gboolean
read_offset (const char *text, int *ret_seconds)
{
  const int sign = text[0] == '-' ? -1 : 1;
  int hours, minutes;

  if (text[0] != '+' && text[0] != '-')
    return FALSE;
  text++;
  if (!take_digits (&text, 2, ':', &hours) || !take_digits (&text, 2, '\0', &minutes) || hours > 14
      || minutes > 59)
    return FALSE;
  *ret_seconds = sign * (hours * 60 + minutes) * FF_MINUTE;
  return TRUE;
}

static char *
text_of (FfFrameTags *tags, const char *name)
{
  char *text = has_tag (tags, name)
                   ? gexiv2_metadata_try_get_tag_string (tags->metadata, name, NULL)
                   : NULL;

  return text != NULL ? g_strstrip (text) : NULL;
}

static void
fill_time (FfFrameTags *tags, FfFrame *frame)
{
  g_autofree char *original = text_of (tags, "Exif.Photo.DateTimeOriginal");
  g_autofree char *changed = text_of (tags, "Exif.Image.DateTimeOriginal");
  g_autofree char *offset = text_of (tags, "Exif.Photo.OffsetTimeOriginal");
  const char *text = original != NULL ? original : changed;

  frame->has_taken = text != NULL && read_time (text, &frame->taken_date, &frame->taken_second);
  frame->has_offset = frame->has_taken && offset != NULL && read_offset (offset, &frame->offset_s);
}

void
ff_frame_tags_fill (FfFrameTags *tags, FfFrame *frame)
{
  frame->aperture = frame->shutter_s = frame->iso = frame->bias_stops = NAN;
  if (tags == NULL)
    return;
  frame->aperture = aperture_of (tags);
  frame->shutter_s = shutter_of (tags);
  frame->iso = iso_of (tags);
  frame->bias_stops = rational (tags, "Exif.Photo.ExposureBiasValue", -10, 10);
  fill_time (tags, frame);
}

gboolean
ff_frame_tags_is_raw (FfFrameTags *tags)
{
  return tags != NULL && has_tag (tags, "Exif.Image.DNGVersion");
}

/* A JPEG stream that lies whole in the file. */
typedef struct {
  glong offset, length;
} Stream;

static glong
number_of (FfFrameTags *tags, const char *group, const char *name)
{
  g_autofree char *whole = g_strdup_printf ("Exif.%s.%s", group, name);

  return has_tag (tags, whole) ? gexiv2_metadata_try_get_tag_long (tags->metadata, whole, NULL)
                               : -1;
}

/* A reduced picture stored as one JPEG strip, which is how raw pictures carry their previews (DNG
 * specification, from memory). The raw pixels may be packed as JPEG, too; they are no
 * reduced picture. */
static gboolean
find_strip (FfFrameTags *tags, const char *group, Stream *ret_stream)
{
  enum { REDUCED = 1, PACKED_AS_JPEG = 7 };
  const Stream stream = {
    .offset = number_of (tags, group, "StripOffsets"),
    .length = number_of (tags, group, "StripByteCounts"),
  };

  if (number_of (tags, group, "NewSubfileType") != REDUCED
      || number_of (tags, group, "Compression") != PACKED_AS_JPEG || stream.offset <= 0
      || stream.length <= 0 || stream.length > MAX_PREVIEW)
    return FALSE;
  *ret_stream = stream;
  return TRUE;
}

gboolean
ff_frame_tags_find_strip (FfFrameTags *tags, glong *ret_offset)
{
  static const char *const groups[] = {
    "Image", "SubImage1", "SubImage2", "SubImage3", "SubImage4", "SubImage5", "SubImage6",
  };
  Stream largest = { 0 };

  for (guint i = 0; i < G_N_ELEMENTS (groups); i++)
    {
      Stream stream;

      if (find_strip (tags, groups[i], &stream) && stream.length > largest.length)
        largest = stream;
    }
  if (largest.length == 0)
    return FALSE;
  *ret_offset = largest.offset;
  return TRUE;
}

/* They come smallest first. */
GBytes *
ff_frame_tags_preview (FfFrameTags *tags)
{
  GExiv2PreviewProperties **found = gexiv2_metadata_get_preview_properties (tags->metadata);
  GExiv2PreviewProperties *largest = NULL;
  g_autoptr (GExiv2PreviewImage) image = NULL;
  const guint8 *data;
  guint size = 0;

  for (guint i = 0; found != NULL && found[i] != NULL; i++)
    if (g_strcmp0 (gexiv2_preview_properties_get_mime_type (found[i]), "image/jpeg") == 0)
      largest = found[i];
  if (largest == NULL || gexiv2_preview_properties_get_size (largest) > MAX_PREVIEW)
    return NULL;
  image = gexiv2_metadata_try_get_preview_image (tags->metadata, largest, NULL);
  data = image != NULL ? gexiv2_preview_image_get_data (image, &size) : NULL;
  return data != NULL && size > 0 ? g_bytes_new (data, size) : NULL;
}
