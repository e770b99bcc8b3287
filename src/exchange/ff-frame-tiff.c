/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <tiffio.h>
#include <unistd.h>

#include "ff-frame-private.h"

/* What the library may take at once: a compressed strip or a tile. */
#define MAX_MEMORY (256 << 20)

typedef struct {
  TIFF *tiff;
  guint32 width, height;
  guint16 bits, samples;
  guint16 planar, photometric, compression, format;
  guint8 *row; /* of a scanline or a tile */
} Reader;

static int
be_silent (TIFF *tiff, void *data, const char *module, const char *format, va_list arguments)
{
  return 1;
}

/* Without memory mapping: pages of the file would count as the program's. */
static TIFF *
open_tiff (const char *path)
{
  TIFFOpenOptions *options = TIFFOpenOptionsAlloc ();
  TIFF *tiff;

  TIFFOpenOptionsSetMaxSingleMemAlloc (options, MAX_MEMORY);
  TIFFOpenOptionsSetErrorHandlerExtR (options, be_silent, NULL);
  TIFFOpenOptionsSetWarningHandlerExtR (options, be_silent, NULL);
  tiff = TIFFOpenExt (path, "rm", options);
  TIFFOpenOptionsFree (options);
  return tiff;
}

static void
read_fields (Reader *reader)
{
  TIFFGetField (reader->tiff, TIFFTAG_IMAGEWIDTH, &reader->width);
  TIFFGetField (reader->tiff, TIFFTAG_IMAGELENGTH, &reader->height);
  TIFFGetFieldDefaulted (reader->tiff, TIFFTAG_BITSPERSAMPLE, &reader->bits);
  TIFFGetFieldDefaulted (reader->tiff, TIFFTAG_SAMPLESPERPIXEL, &reader->samples);
  TIFFGetFieldDefaulted (reader->tiff, TIFFTAG_PLANARCONFIG, &reader->planar);
  TIFFGetFieldDefaulted (reader->tiff, TIFFTAG_COMPRESSION, &reader->compression);
  TIFFGetFieldDefaulted (reader->tiff, TIFFTAG_SAMPLEFORMAT, &reader->format);
  TIFFGetField (reader->tiff, TIFFTAG_PHOTOMETRIC, &reader->photometric);
}

static gboolean
check_kind (Reader *reader, GError **error)
{
  const gboolean grey = reader->photometric == PHOTOMETRIC_MINISBLACK && reader->samples >= 1
                        && reader->samples <= 2;
  gboolean colour
      = reader->photometric == PHOTOMETRIC_RGB && reader->samples >= 3 && reader->samples <= 8;

  /* JPEG inside stores luminance and colour differences; the library turns them into colours. */
  if (reader->photometric == PHOTOMETRIC_YCBCR && reader->compression == COMPRESSION_JPEG
      && reader->samples == 3)
    colour = TIFFSetField (reader->tiff, TIFFTAG_JPEGCOLORMODE, JPEGCOLORMODE_RGB) == 1;
  if ((grey || colour) && (reader->bits == 8 || reader->bits == 16)
      && reader->format == SAMPLEFORMAT_UINT
      && (reader->planar == PLANARCONFIG_CONTIG || reader->samples == 1))
    return TRUE;
  return ff_frame_refuse (error, _ ("a kind of TIFF that is not read; accepted: grey or red, green "
                                    "and blue together, 8 or 16 bits"));
}

static gsize
pixel_bytes (const Reader *reader)
{
  return (gsize) reader->samples * reader->bits / 8;
}

static void
add_row (const Reader *reader, FfFramePixels *pixels, const guint8 *row, gsize width)
{
  if (reader->bits == 16)
    /* Rows start at even places of an allocated block. */
    ff_histogram_add_16 (&pixels->histogram, &pixels->table, (const guint16 *) (const void *) row,
                         width, reader->samples);
  else
    ff_histogram_add_8 (&pixels->histogram, &pixels->table, row, width, reader->samples);
}

static gboolean
read_whole (int fd, guint8 *buffer, gsize size, guint64 offset)
{
  while (size > 0)
    {
      const gssize got = pread (fd, buffer, size, (off_t) offset);

      if (got <= 0)
        return FALSE;
      buffer += got;
      offset += (guint64) got;
      size -= (gsize) got;
    }
  return TRUE;
}

/* Rows that lie in the file as they are. The library would take a whole strip into memory, and many
 * programs write the picture as a single one. */
static gboolean
read_plain (Reader *reader, FfFramePixels *pixels)
{
  const gsize row_bytes = reader->width * pixel_bytes (reader);
  const int fd = TIFFFileno (reader->tiff);
  guint32 rows_per_strip = reader->height;

  TIFFGetFieldDefaulted (reader->tiff, TIFFTAG_ROWSPERSTRIP, &rows_per_strip);
  if (rows_per_strip == 0)
    return FALSE;
  reader->row = g_malloc (row_bytes);
  for (guint32 y = 0; y < reader->height; y++)
    {
      const guint64 strip = TIFFGetStrileOffset (reader->tiff, y / rows_per_strip);
      const guint64 offset = strip + (guint64) (y % rows_per_strip) * row_bytes;

      if (strip == 0 || offset > G_MAXINT64 || !read_whole (fd, reader->row, row_bytes, offset))
        return FALSE;
      if (reader->bits == 16 && TIFFIsByteSwapped (reader->tiff))
        TIFFSwabArrayOfShort ((guint16 *) (void *) reader->row, (tmsize_t) row_bytes / 2);
      add_row (reader, pixels, reader->row, reader->width);
    }
  return TRUE;
}

static gboolean
read_scanlines (Reader *reader, FfFramePixels *pixels)
{
  const gsize row_bytes = reader->width * pixel_bytes (reader);

  if (TIFFScanlineSize64 (reader->tiff) != row_bytes)
    return FALSE;
  reader->row = g_malloc (row_bytes);
  for (guint32 y = 0; y < reader->height; y++)
    {
      if (TIFFReadScanline (reader->tiff, reader->row, y, 0) != 1)
        return FALSE;
      add_row (reader, pixels, reader->row, reader->width);
    }
  return TRUE;
}

/* Adds the part of a tile that lies within the picture. */
static void
add_tile (
    const Reader *reader, FfFramePixels *pixels, guint32 x, guint32 y, guint32 wide, guint32 high)
{
  const guint32 columns = MIN (wide, reader->width - x), rows = MIN (high, reader->height - y);

  for (guint32 i = 0; i < rows; i++)
    add_row (reader, pixels, reader->row + (gsize) i * wide * pixel_bytes (reader), columns);
}

static gboolean
read_tiles (Reader *reader, FfFramePixels *pixels)
{
  guint32 wide = 0, high = 0;
  guint64 bytes;

  TIFFGetField (reader->tiff, TIFFTAG_TILEWIDTH, &wide);
  TIFFGetField (reader->tiff, TIFFTAG_TILELENGTH, &high);
  bytes = (guint64) wide * high * pixel_bytes (reader);
  if (wide == 0 || high == 0 || wide > 65536 || high > 65536 || bytes > MAX_MEMORY
      || TIFFTileSize64 (reader->tiff) != bytes)
    return FALSE;
  reader->row = g_malloc (bytes);
  for (guint32 y = 0; y < reader->height; y += high)
    for (guint32 x = 0; x < reader->width; x += wide)
      {
        const guint32 tile = TIFFComputeTile (reader->tiff, x, y, 0, 0);

        if (TIFFReadEncodedTile (reader->tiff, tile, reader->row, (tmsize_t) bytes)
            != (tmsize_t) bytes)
          return FALSE;
        add_tile (reader, pixels, x, y, wide, high);
      }
  return TRUE;
}

static gboolean
decode (Reader *reader, FfFramePixels *pixels, GError **error)
{
  gboolean done;

  read_fields (reader);
  if (!check_kind (reader, error)
      || !ff_frame_begin (pixels, reader->width, reader->height, reader->bits, error))
    return FALSE;
  if (TIFFIsTiled (reader->tiff))
    done = read_tiles (reader, pixels);
  else if (reader->compression == COMPRESSION_NONE)
    done = read_plain (reader, pixels);
  else
    done = read_scanlines (reader, pixels);
  return done || ff_frame_refuse (error, ff_frame_damaged ());
}

gboolean
ff_frame_read_tiff (const char *path, FfFramePixels *pixels, GError **error)
{
  Reader reader = { .tiff = open_tiff (path) };
  gboolean done;

  if (reader.tiff == NULL)
    return ff_frame_refuse (error, ff_frame_damaged ());
  done = decode (&reader, pixels, error);
  TIFFClose (reader.tiff);
  g_free (reader.row);
  return done;
}
