/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <png.h>
#include <setjmp.h>

#include "ff-frame-private.h"

typedef struct {
  png_structp png;
  png_infop info;
  png_bytep row;
} Reader;

static void G_GNUC_NORETURN
on_error (png_structp png, png_const_charp message)
{
  png_longjmp (png, 1);
}

static void
on_warning (png_structp png, png_const_charp message)
{
}

/* Whatever is stored, make it one or three samples of 8 or 16 bits, in this machine's order. */
static void
even_out (Reader *reader)
{
  png_set_palette_to_rgb (reader->png);
  png_set_expand_gray_1_2_4_to_8 (reader->png);
  png_set_strip_alpha (reader->png);
  if (G_BYTE_ORDER == G_LITTLE_ENDIAN)
    png_set_swap (reader->png);
  png_read_update_info (reader->png, reader->info);
}

static void
read_rows (Reader *reader, FfFramePixels *pixels, guint width, guint height)
{
  const guint samples = png_get_channels (reader->png, reader->info);
  const gboolean wide = png_get_bit_depth (reader->png, reader->info) == 16;

  for (guint y = 0; y < height; y++)
    {
      png_read_row (reader->png, reader->row, NULL);
      if (wide)
        /* The row was allocated, so that it is aligned for any sample. */
        ff_histogram_add_16 (&pixels->histogram, &pixels->table,
                             (const guint16 *) (const void *) reader->row, width, samples);
      else
        ff_histogram_add_8 (&pixels->histogram, &pixels->table, reader->row, width, samples);
    }
}

/* An interlaced picture comes as seven smaller ones; for counting they need not be put together. */
static void
read_passes (Reader *reader, FfFramePixels *pixels)
{
  if (png_get_interlace_type (reader->png, reader->info) != PNG_INTERLACE_ADAM7)
    {
      read_rows (reader, pixels, pixels->width, pixels->height);
      return;
    }
  for (int pass = 0; pass < PNG_INTERLACE_ADAM7_PASSES; pass++)
    {
      const guint width = PNG_PASS_COLS (pixels->width, pass);

      if (width > 0)
        read_rows (reader, pixels, width, PNG_PASS_ROWS (pixels->height, pass));
    }
}

static gboolean
decode (Reader *reader, FILE *file, FfFramePixels *pixels, GError **error)
{
  if (setjmp (png_jmpbuf (reader->png)) != 0)
    return ff_frame_refuse (error, ff_frame_damaged ());
  /* Pieces that are not needed to see the picture are skipped unread: the library would make room
   * for whatever length they claim. */
  png_set_keep_unknown_chunks (reader->png, PNG_HANDLE_CHUNK_NEVER, NULL, -1);
  png_init_io (reader->png, file);
  png_read_info (reader->png, reader->info);
  even_out (reader);
  if (!ff_frame_begin (pixels, png_get_image_width (reader->png, reader->info),
                       png_get_image_height (reader->png, reader->info),
                       png_get_bit_depth (reader->png, reader->info), error))
    return FALSE;
  reader->row = g_malloc (png_get_rowbytes (reader->png, reader->info));
  read_passes (reader, pixels);
  png_read_end (reader->png, NULL);
  return TRUE;
}

gboolean
ff_frame_read_png (FILE *file, FfFramePixels *pixels, GError **error)
{
  Reader reader = { 0 };
  gboolean done;

  reader.png = png_create_read_struct (PNG_LIBPNG_VER_STRING, NULL, on_error, on_warning);
  reader.info = reader.png != NULL ? png_create_info_struct (reader.png) : NULL;
  done = reader.info != NULL && decode (&reader, file, pixels, error);
  png_destroy_read_struct (&reader.png, &reader.info, NULL);
  g_free (reader.row);
  return done;
}
