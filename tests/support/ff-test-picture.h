/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pictures that tests make themselves, so that their true light is known. */
#pragma once

#include <glib.h>

/* What is on it, by sRGB codes 0 to 255. */
typedef enum {
  FF_TEST_FLAT,  /* all of code `a` */
  FF_TEST_SPLIT, /* the first `share` of the rows of code a, the others of code b */
  FF_TEST_RAMP,  /* each row runs from code 0 to 255 */
  FF_TEST_RED,   /* red of code a, nothing else */
  FF_TEST_NOISE, /* every code, in no order: the worst for a decoder */
} FfTestScene;

typedef struct {
  guint width, height;
  FfTestScene scene;
  guint8 a, b;
  double share;
} FfTestPicture;

typedef enum {
  FF_TEST_JPEG,
  FF_TEST_JPEG_GREY,
  FF_TEST_JPEG_PROGRESSIVE,
  FF_TEST_PNG,
  FF_TEST_PNG_16,
  FF_TEST_PNG_INTERLACED,
  FF_TEST_PNG_GREY,
  FF_TEST_PNG_ALPHA,
  FF_TEST_TIFF,
  FF_TEST_TIFF_16,
  FF_TEST_TIFF_16_SWAPPED, /* in the other order of bytes */
  FF_TEST_TIFF_DEFLATE,
  FF_TEST_TIFF_TILED,
  FF_TEST_TIFF_GREY,
  FF_TEST_DNG,             /* the picture is the preview, one JPEG strip */
  FF_TEST_N_FORMATS,
} FfTestFormat;

const char *ff_test_format_name (FfTestFormat format);

/* Fails the test when it can't be written. */
void ff_test_picture_write (const char *path, FfTestFormat format, const FfTestPicture *picture);

/* Exif as a camera writes it: NULL or 0 / 0 leaves a tag out. */
typedef struct {
  int aperture[2], shutter[2], bias[2];
  int iso;
  const char *taken;  /* "2027:09:18 17:40:12" */
  const char *offset; /* "+01:00" */
} FfTestExif;

void ff_test_exif_write (const char *path, const FfTestExif *exif);
