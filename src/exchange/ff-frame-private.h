/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only: how ff-frame.c comes to pixels and tags. */
#pragma once

#include <stdio.h>

#include "ff-frame.h"

/* What readers of pixels fill. Large: on the heap. */
typedef struct {
  guint width, height;
  FfLightTable table;
  FfHistogram histogram;
} FfFramePixels;

/* Each reads the whole picture or says why not, without the file's name. */
gboolean ff_frame_read_jpeg_file (FILE *file, FfFramePixels *pixels, GError **error);
gboolean ff_frame_read_jpeg_data (const guint8 *data,
                                  gsize size,
                                  FfFramePixels *pixels,
                                  GError **error);
gboolean ff_frame_read_png (FILE *file, FfFramePixels *pixels, GError **error);
gboolean ff_frame_read_tiff (const char *path, FfFramePixels *pixels, GError **error);

/* What a picture of this size claims is worth the time; sets width, height and the table of light
 * for so many bits. */
gboolean ff_frame_begin (FfFramePixels *pixels,
                         guint64 width,
                         guint64 height,
                         guint bits,
                         GError **error);

/* The aperture for arithmetic; NAN where the picture does not say. */
double ff_frame_exact_aperture (const FfFrame *frame);

/* Refuses a picture: FALSE, and the error says `why`. */
gboolean ff_frame_refuse (GError **error, const char *why);

/* The words for a picture that ends early or holds nonsense. */
const char *ff_frame_damaged (void);

/* Tags of a file; NULL when it has none or they can't be read. */
typedef struct _FfFrameTags FfFrameTags;

/* `head_of` is the file that may be a raw picture, at its beginning, else NULL. */
FfFrameTags *ff_frame_tags_new (const char *path, FILE *head_of) G_GNUC_WARN_UNUSED_RESULT;
void ff_frame_tags_free (FfFrameTags *tags);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfFrameTags, ff_frame_tags_free)

/* Settings and time into a frame; NULL tags say nothing. */
void ff_frame_tags_fill (FfFrameTags *tags, FfFrame *frame);

gboolean ff_frame_tags_is_raw (FfFrameTags *tags);

/* Where in the file the largest preview begins that lies there as one JPEG stream; FALSE without
 * one. */
gboolean ff_frame_tags_find_strip (FfFrameTags *tags, glong *ret_offset);

/* The largest JPEG preview that the library can put together; NULL without one. */
GBytes *ff_frame_tags_preview (FfFrameTags *tags) G_GNUC_WARN_UNUSED_RESULT;
