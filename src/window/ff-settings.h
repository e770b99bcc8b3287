/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the window remembers of itself between two runs. */
#pragma once

#include <gio/gio.h>

/* The program's settings, or NULL where its schema is not installed: then nothing is remembered,
 * and the program works all the same. Borrowed. */
GSettings *ff_settings_get (void);

/* One text; what the schema says by default, or "" without a schema. */
char *ff_settings_dup_text (const char *key) G_GNUC_WARN_UNUSED_RESULT;
void ff_settings_set_text (const char *key, const char *text);

/* A choice of yes or no; without a schema: no. */
gboolean ff_settings_get_flag (const char *key);
void ff_settings_set_flag (const char *key, gboolean on);
