/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-test.h"

#include <gexiv2/gexiv2.h>
#include <stdio.h>
#include <string.h>

#include <jpeglib.h>
#include <png.h>
#include <tiffio.h>

#include "ff-test-picture.h"

static const char *const format_names[FF_TEST_N_FORMATS] = {
  [FF_TEST_JPEG] = "JPEG",
  [FF_TEST_JPEG_GREY] = "grey JPEG",
  [FF_TEST_JPEG_PROGRESSIVE] = "progressive JPEG",
  [FF_TEST_PNG] = "PNG",
  [FF_TEST_PNG_16] = "PNG of 16 bits",
  [FF_TEST_PNG_INTERLACED] = "interlaced PNG",
  [FF_TEST_PNG_GREY] = "grey PNG",
  [FF_TEST_PNG_ALPHA] = "PNG with opacity",
  [FF_TEST_TIFF] = "TIFF",
  [FF_TEST_TIFF_16] = "TIFF of 16 bits",
  [FF_TEST_TIFF_16_SWAPPED] = "TIFF of 16 swapped bits",
  [FF_TEST_TIFF_DEFLATE] = "deflated TIFF",
  [FF_TEST_TIFF_TILED] = "tiled TIFF",
  [FF_TEST_TIFF_GREY] = "grey TIFF",
  [FF_TEST_DNG] = "DNG",
};

const char *
ff_test_format_name (FfTestFormat format)
{
  return format_names[format];
}

/* A linear congruential step (Numerical Recipes): enough for a picture without order. */
static guint8
noise (guint32 *state)
{
  *state = *state * 1664525u + 1013904223u;
  return (guint8) (*state >> 24);
}

static guint8
code_at (const FfTestPicture *picture, guint x, guint y, guint32 *state)
{
  switch (picture->scene)
    {
    case FF_TEST_SPLIT:
      return y < picture->share * picture->height ? picture->a : picture->b;
    case FF_TEST_RAMP:
      return (guint8) (x * 256 / picture->width);
    case FF_TEST_NOISE:
      return noise (state);
    case FF_TEST_FLAT:
    case FF_TEST_RED:
    default:
      return picture->a;
    }
}

/* A row of so many samples a pixel: grey, red-green-blue, or with opacity. */
static void
fill_row (const FfTestPicture *picture, guint y, guint samples, guint8 *row)
{
  guint32 state = y + 1;

  for (guint x = 0; x < picture->width; x++, row += samples)
    {
      const guint8 code = code_at (picture, x, y, &state);

      row[0] = code;
      if (samples >= 3)
        row[1] = row[2] = picture->scene == FF_TEST_RED ? 0 : code;
      if (samples == 4)
        row[3] = 128;
    }
}

static void
widen (const guint8 *row, guint16 *wide, gsize samples)
{
  for (gsize i = 0; i < samples; i++)
    wide[i] = (guint16) (row[i] * 257);
}

static FILE *
create (const char *path)
{
  FILE *file = fopen (path, "wb");

  assert_non_null (file);
  return file;
}

static void
write_jpeg (const char *path, const FfTestPicture *picture, guint samples, gboolean progressive)
{
  struct jpeg_compress_struct codec;
  struct jpeg_error_mgr trouble;
  g_autofree guint8 *row = g_malloc ((gsize) picture->width * samples);
  FILE *file = create (path);

  codec.err = jpeg_std_error (&trouble);
  jpeg_create_compress (&codec);
  jpeg_stdio_dest (&codec, file);
  codec.image_width = picture->width;
  codec.image_height = picture->height;
  codec.input_components = (int) samples;
  codec.in_color_space = samples == 1 ? JCS_GRAYSCALE : JCS_RGB;
  jpeg_set_defaults (&codec);
  jpeg_set_quality (&codec, 95, TRUE);
  if (progressive)
    jpeg_simple_progression (&codec);
  jpeg_start_compress (&codec, TRUE);
  for (guint y = 0; y < picture->height; y++)
    {
      fill_row (picture, y, samples, row);
      jpeg_write_scanlines (&codec, &row, 1);
    }
  jpeg_finish_compress (&codec);
  jpeg_destroy_compress (&codec);
  fclose (file);
}

static void
write_png_rows (png_structp png, const FfTestPicture *picture, guint samples, gboolean deep)
{
  const gsize length = (gsize) picture->width * samples;
  g_autofree guint8 *row = g_malloc (length);
  g_autofree guint16 *wide = g_new (guint16, length);
  const int passes = png_set_interlace_handling (png);

  for (int pass = 0; pass < passes; pass++)
    for (guint y = 0; y < picture->height; y++)
      {
        fill_row (picture, y, samples, row);
        widen (row, wide, length);
        png_write_row (png, deep ? (png_bytep) wide : row);
      }
}

static void
write_png (const char *path,
           const FfTestPicture *picture,
           guint samples,
           gboolean deep,
           gboolean interlaced)
{
  png_structp png = png_create_write_struct (PNG_LIBPNG_VER_STRING, NULL, NULL, NULL);
  png_infop info = png_create_info_struct (png);
  FILE *file = create (path);

  png_init_io (png, file);
  png_set_compression_level (png, 1);
  png_set_IHDR (png, info, picture->width, picture->height, deep ? 16 : 8,
                samples == 1   ? PNG_COLOR_TYPE_GRAY
                : samples == 4 ? PNG_COLOR_TYPE_RGB_ALPHA
                               : PNG_COLOR_TYPE_RGB,
                interlaced ? PNG_INTERLACE_ADAM7 : PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT,
                PNG_FILTER_TYPE_DEFAULT);
  png_write_info (png, info);
  write_png_rows (png, picture, samples, deep);
  png_write_end (png, NULL);
  png_destroy_write_struct (&png, &info);
  fclose (file);
}

static void
set_tiff_fields (TIFF *tiff, const FfTestPicture *picture, guint samples, guint bits, guint packing)
{
  TIFFSetField (tiff, TIFFTAG_IMAGEWIDTH, picture->width);
  TIFFSetField (tiff, TIFFTAG_IMAGELENGTH, picture->height);
  TIFFSetField (tiff, TIFFTAG_BITSPERSAMPLE, bits);
  TIFFSetField (tiff, TIFFTAG_SAMPLESPERPIXEL, samples);
  TIFFSetField (tiff, TIFFTAG_PHOTOMETRIC, samples == 1 ? PHOTOMETRIC_MINISBLACK : PHOTOMETRIC_RGB);
  TIFFSetField (tiff, TIFFTAG_PLANARCONFIG, PLANARCONFIG_CONTIG);
  TIFFSetField (tiff, TIFFTAG_COMPRESSION, packing);
}

static void
write_tiff (const char *path,
            const char *mode,
            const FfTestPicture *picture,
            guint samples,
            guint bits,
            guint packing)
{
  const gsize length = (gsize) picture->width * samples;
  g_autofree guint8 *row = g_malloc (length);
  g_autofree guint16 *wide = g_new (guint16, length);
  TIFF *tiff = TIFFOpen (path, mode);

  assert_non_null (tiff);
  set_tiff_fields (tiff, picture, samples, bits, packing);
  /* Plain ones as a single strip, as many programs do. */
  TIFFSetField (tiff, TIFFTAG_ROWSPERSTRIP,
                packing == COMPRESSION_NONE ? picture->height : (guint32) 16);
  for (guint y = 0; y < picture->height; y++)
    {
      fill_row (picture, y, samples, row);
      widen (row, wide, length);
      assert_int_equal (TIFFWriteScanline (tiff, bits == 16 ? (void *) wide : row, y, 0), 1);
    }
  TIFFClose (tiff);
}

#define TILE 64u

static void
write_tiled_tiff (const char *path, const FfTestPicture *picture)
{
  const gsize length = (gsize) picture->width * 3;
  g_autofree guint8 *row = g_malloc (length);
  g_autofree guint8 *tile = g_malloc0 (TILE * TILE * 3);
  TIFF *tiff = TIFFOpen (path, "w");

  assert_non_null (tiff);
  set_tiff_fields (tiff, picture, 3, 8, COMPRESSION_LZW);
  TIFFSetField (tiff, TIFFTAG_TILEWIDTH, TILE);
  TIFFSetField (tiff, TIFFTAG_TILELENGTH, TILE);
  for (guint y = 0; y < picture->height; y += TILE)
    for (guint x = 0; x < picture->width; x += TILE)
      {
        /* What lies outside of the picture is white, and must not be counted. */
        memset (tile, 255, TILE * TILE * 3);
        for (guint i = 0; i < TILE && y + i < picture->height; i++)
          {
            fill_row (picture, y + i, 3, row);
            memcpy (tile + (gsize) i * TILE * 3, row + (gsize) x * 3,
                    MIN (TILE, picture->width - x) * 3);
          }
        assert_true (TIFFWriteTile (tiff, tile, x, y, 0, 0) > 0);
      }
  TIFFClose (tiff);
}

/* A raw picture in small: a directory with a thumbnail and the mark of DNG, below it one with
 * nothing raw worth speaking of and one with the preview as a JPEG strip. Little-endian. */
static void
put_16 (GByteArray *out, guint value)
{
  const guint8 bytes[] = { (guint8) value, (guint8) (value >> 8) };

  g_byte_array_append (out, bytes, sizeof bytes);
}

static void
put_32 (GByteArray *out, guint32 value)
{
  put_16 (out, value & 0xffff);
  put_16 (out, value >> 16);
}

static void
put_entry (GByteArray *out, guint tag, guint type, guint32 count, guint32 value)
{
  put_16 (out, tag);
  put_16 (out, type);
  put_32 (out, count);
  put_32 (out, value);
}

enum { SHORT = 3, LONG = 4, BYTE = 1 };

static void
put_raw_directory (GByteArray *out, guint32 offset)
{
  put_16 (out, 8);
  put_entry (out, 254, LONG, 1, 0); /* the full picture */
  put_entry (out, 256, LONG, 1, 8);
  put_entry (out, 257, LONG, 1, 8);
  put_entry (out, 258, SHORT, 1, 8);
  put_entry (out, 259, SHORT, 1, 1);
  put_entry (out, 262, SHORT, 1, 32803); /* colour filter array */
  put_entry (out, 273, LONG, 1, offset);
  put_entry (out, 279, LONG, 1, 64);
  put_32 (out, 0);
}

static void
put_preview_directory (GByteArray *out, const FfTestPicture *picture, guint32 offset, gsize length)
{
  put_16 (out, 8);
  put_entry (out, 254, LONG, 1, 1); /* reduced */
  put_entry (out, 256, LONG, 1, picture->width);
  put_entry (out, 257, LONG, 1, picture->height);
  put_entry (out, 259, SHORT, 1, 7); /* JPEG */
  put_entry (out, 262, SHORT, 1, 6);
  put_entry (out, 273, LONG, 1, offset);
  put_entry (out, 277, SHORT, 1, 3);
  put_entry (out, 279, LONG, 1, (guint32) length);
  put_32 (out, 0);
}

static void
write_dng (const char *path, const FfTestPicture *picture)
{
  enum { HEAD = 8, FIRST = 2 + 9 * 12 + 4, SUB = 2 + 8 * 12 + 4, LIST = 8 };
  const guint32 list = HEAD + FIRST, raw = list + LIST, preview = raw + SUB;
  const guint32 pixels = preview + SUB, jpeg_at = pixels + 64;
  g_autoptr (GByteArray) out = g_byte_array_new ();
  g_autofree char *jpeg = NULL;
  gsize length;

  write_jpeg (path, picture, 3, FALSE);
  assert_true (g_file_get_contents (path, &jpeg, &length, NULL));
  g_byte_array_append (out, (const guint8 *) "II*\0", 4);
  put_32 (out, HEAD);
  put_16 (out, 9);
  put_entry (out, 254, LONG, 1, 1);
  put_entry (out, 256, LONG, 1, 8);
  put_entry (out, 257, LONG, 1, 8);
  put_entry (out, 258, SHORT, 1, 8);
  put_entry (out, 262, SHORT, 1, 1);
  put_entry (out, 273, LONG, 1, pixels);
  put_entry (out, 279, LONG, 1, 64);
  put_entry (out, 330, LONG, 2, list);
  put_entry (out, 50706, BYTE, 4, 0x00000401); /* DNG 1.4 */
  put_32 (out, 0);
  put_32 (out, raw);
  put_32 (out, preview);
  put_raw_directory (out, pixels);
  put_preview_directory (out, picture, jpeg_at, length);
  g_byte_array_set_size (out, jpeg_at);
  memset (out->data + pixels, 0, 64);
  g_byte_array_append (out, (const guint8 *) jpeg, (guint) length);
  assert_true (g_file_set_contents (path, (const char *) out->data, out->len, NULL));
}

static void
write_any_tiff (const char *path, FfTestFormat format, const FfTestPicture *picture)
{
  const char *swapped = G_BYTE_ORDER == G_LITTLE_ENDIAN ? "wb" : "wl";

  if (format == FF_TEST_TIFF_TILED)
    write_tiled_tiff (path, picture);
  else if (format == FF_TEST_TIFF_GREY)
    write_tiff (path, "w", picture, 1, 8, COMPRESSION_NONE);
  else if (format == FF_TEST_TIFF_DEFLATE)
    write_tiff (path, "w", picture, 3, 8, COMPRESSION_ADOBE_DEFLATE);
  else if (format == FF_TEST_TIFF)
    write_tiff (path, "w", picture, 3, 8, COMPRESSION_NONE);
  else
    write_tiff (path, format == FF_TEST_TIFF_16_SWAPPED ? swapped : "w", picture, 3, 16,
                COMPRESSION_NONE);
}

void
ff_test_picture_write (const char *path, FfTestFormat format, const FfTestPicture *picture)
{
  switch (format)
    {
    case FF_TEST_JPEG:
    case FF_TEST_JPEG_PROGRESSIVE:
      write_jpeg (path, picture, 3, format == FF_TEST_JPEG_PROGRESSIVE);
      break;
    case FF_TEST_JPEG_GREY:
      write_jpeg (path, picture, 1, FALSE);
      break;
    case FF_TEST_PNG:
    case FF_TEST_PNG_16:
    case FF_TEST_PNG_INTERLACED:
      write_png (path, picture, 3, format == FF_TEST_PNG_16, format == FF_TEST_PNG_INTERLACED);
      break;
    case FF_TEST_PNG_GREY:
      write_png (path, picture, 1, FALSE, FALSE);
      break;
    case FF_TEST_PNG_ALPHA:
      write_png (path, picture, 4, FALSE, FALSE);
      break;
    case FF_TEST_DNG:
      write_dng (path, picture);
      break;
    case FF_TEST_TIFF:
    case FF_TEST_TIFF_16:
    case FF_TEST_TIFF_16_SWAPPED:
    case FF_TEST_TIFF_DEFLATE:
    case FF_TEST_TIFF_TILED:
    case FF_TEST_TIFF_GREY:
    case FF_TEST_N_FORMATS:
    default:
      write_any_tiff (path, format, picture);
      break;
    }
}

static void
set_rational (GExiv2Metadata *metadata, const char *tag, const int rational[2])
{
  if (rational[0] != 0 || rational[1] != 0)
    assert_true (
        gexiv2_metadata_try_set_exif_tag_rational (metadata, tag, rational[0], rational[1], NULL));
}

static void
set_text (GExiv2Metadata *metadata, const char *tag, const char *text)
{
  if (text != NULL)
    assert_true (gexiv2_metadata_try_set_tag_string (metadata, tag, text, NULL));
}

void
ff_test_exif_write (const char *path, const FfTestExif *exif)
{
  g_autoptr (GExiv2Metadata) metadata = NULL;
  g_autoptr (GError) error = NULL;

  assert_true (gexiv2_initialize ());
  gexiv2_log_set_level (GEXIV2_LOG_LEVEL_MUTE);
  metadata = gexiv2_metadata_new ();
  gexiv2_metadata_open_path (metadata, path, &error);
  assert_no_error (error);
  set_rational (metadata, "Exif.Photo.FNumber", exif->aperture);
  set_rational (metadata, "Exif.Photo.ExposureTime", exif->shutter);
  set_rational (metadata, "Exif.Photo.ExposureBiasValue", exif->bias);
  set_text (metadata, "Exif.Photo.DateTimeOriginal", exif->taken);
  set_text (metadata, "Exif.Photo.OffsetTimeOriginal", exif->offset);
  if (exif->iso != 0)
    assert_true (
        gexiv2_metadata_try_set_tag_long (metadata, "Exif.Photo.ISOSpeedRatings", exif->iso, NULL));
  gexiv2_metadata_save_file (metadata, path, &error);
  assert_no_error (error);
}
