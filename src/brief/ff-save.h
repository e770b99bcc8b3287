/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Writes a whole file: beside it under another name, synced, then renamed over it, so that whoever
 * looks finds the old one or the new one. What is not a plain file (a pipe, a device) is written to
 * as it stands. Error: FF_ERROR_OUTPUT; then nothing new is left. */
gboolean ff_save (const char *path, const guint8 *bytes, gsize n_bytes, GError **error);
