/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Files that come in and go out, whole or not at all. */
#pragma once

#include <glib.h>

/* The text of a file of at most `most` bytes. A file that can't be read, is too large or holds
 * bytes that are no UTF-8 is FF_ERROR_INPUT. */
char *ff_file_read (const char *path, gsize most, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Writes a new file: under another name, flushed, then named. One that exists is FF_ERROR_INPUT and
 * left as it is; one that can't be written is FF_ERROR_OUTPUT and leaves nothing behind. */
gboolean ff_file_write_new (const char *path, const char *text, GError **error);
