/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A folder of its own for the demo day, thrown away at the end. */
#pragma once

#include <glib.h>

/* Makes the folder and fills a store in it. */
char *ff_demo_folder_new (GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Removes it with all it holds, and frees the name. */
void ff_demo_folder_remove (char *folder);
