/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <setjmp.h>
#include <stdio.h>

#include <jerror.h>
#include <jpeglib.h>

#include "ff-frame-private.h"

/* A progressive picture may hold any number of scans, each of which is worked through: a small
 * file could keep a computer busy for hours. Cameras write about ten. */
#define MAX_SCANS 100

/* All of a progressive picture is in memory until its last scan. */
#define MAX_PROGRESSIVE_PIXELS (G_GUINT64_CONSTANT (110) * 1000 * 1000)

/* The library reports trouble by calling back and must not come back from that. */
typedef struct {
  struct jpeg_error_mgr manager;
  struct jpeg_progress_mgr progress;
  jmp_buf escape;
} Trouble;

static void G_GNUC_NORETURN
jump_out (j_common_ptr codec)
{
  Trouble *trouble = codec->client_data;

  longjmp (trouble->escape, 1);
}

/* Warnings come with a level below 0. Some mean that pixels are made up, which would falsify the
 * reading; others are harmless. */
static void
on_message (j_common_ptr codec, int level)
{
  switch (codec->err->msg_code)
    {
    case JWRN_HIT_MARKER:
    case JWRN_HUFF_BAD_CODE:
    case JWRN_JPEG_EOF:
    case JWRN_MUST_RESYNC:
      jump_out (codec);
      break;
    default:
      break;
    }
}

static void
on_output (j_common_ptr codec)
{
}

static void
on_progress (j_common_ptr codec)
{
  if (codec->is_decompressor && ((j_decompress_ptr) codec)->input_scan_number > MAX_SCANS)
    jump_out (codec);
}

static void
watch (j_decompress_ptr codec, Trouble *trouble)
{
  codec->err = jpeg_std_error (&trouble->manager);
  trouble->manager.error_exit = jump_out;
  trouble->manager.emit_message = on_message;
  trouble->manager.output_message = on_output;
  codec->client_data = trouble;
}

/* Grey or three colours; the four inks of print have no place here. */
static gboolean
choose_colours (j_decompress_ptr codec, GError **error)
{
  if (codec->num_components == 1)
    codec->out_color_space = JCS_GRAYSCALE;
  else if (codec->num_components == 3)
    codec->out_color_space = JCS_RGB;
  else
    return ff_frame_refuse (error, _ ("a JPEG picture in the inks of print; accepted: grey or red, "
                                      "green and blue"));
  return TRUE;
}

static gboolean
decode (j_decompress_ptr codec, FfFramePixels *pixels, GError **error)
{
  JSAMPARRAY row;

  jpeg_read_header (codec, TRUE);
  if (!choose_colours (codec, error)
      || !ff_frame_begin (pixels, codec->image_width, codec->image_height, 8, error))
    return FALSE;
  if (jpeg_has_multiple_scans (codec)
      && (guint64) codec->image_width * codec->image_height > MAX_PROGRESSIVE_PIXELS)
    return ff_frame_refuse (error, _ ("the progressive picture is too large; accepted: up to 110 "
                                      "megapixels, or any other JPEG"));
  jpeg_start_decompress (codec);
  row = codec->mem->alloc_sarray ((j_common_ptr) codec, JPOOL_IMAGE,
                                  codec->output_width * (JDIMENSION) codec->output_components, 1);
  while (codec->output_scanline < codec->output_height)
    {
      jpeg_read_scanlines (codec, row, 1);
      ff_histogram_add_8 (&pixels->histogram, &pixels->table, row[0], codec->output_width,
                          (guint) codec->output_components);
    }
  jpeg_finish_decompress (codec);
  return TRUE;
}

/* From a file or, without one, from memory. */
static gboolean
read_jpeg (FILE *file, const guint8 *data, gsize size, FfFramePixels *pixels, GError **error)
{
  struct jpeg_decompress_struct codec = { 0 };
  Trouble trouble = { 0 };
  volatile gboolean done = FALSE;

  watch (&codec, &trouble);
  if (setjmp (trouble.escape) == 0)
    {
      jpeg_create_decompress (&codec);
      trouble.progress.progress_monitor = on_progress;
      codec.progress = &trouble.progress;
      if (file != NULL)
        jpeg_stdio_src (&codec, file);
      else
        jpeg_mem_src (&codec, data, size);
      done = decode (&codec, pixels, error);
    }
  else
    ff_frame_refuse (error, ff_frame_damaged ());
  jpeg_destroy_decompress (&codec);
  return done;
}

gboolean
ff_frame_read_jpeg_file (FILE *file, FfFramePixels *pixels, GError **error)
{
  return read_jpeg (file, NULL, 0, pixels, error);
}

gboolean
ff_frame_read_jpeg_data (const guint8 *data, gsize size, FfFramePixels *pixels, GError **error)
{
  return read_jpeg (NULL, data, size, pixels, error);
}
