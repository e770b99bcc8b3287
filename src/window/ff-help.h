/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the help is, and what to say when it can't be shown. GTK has no view for it: another
 * program does that. */
#pragma once

#include <glib.h>

/* "help:fieldfare/day"; NULL: the first page. */
char *ff_help_address (const char *page) G_GNUC_WARN_UNUSED_RESULT;

/* Whether the help is installed below one of these folders of data. The language does not matter:
 * the English pages are always there. */
gboolean ff_help_is_in (const char *const *data_dirs);

/* Shows a page of the help in the program that the desktop has for it. NULL: done; else one
 * sentence that says where the help is instead. */
char *ff_help_show (const char *page) G_GNUC_WARN_UNUSED_RESULT;
