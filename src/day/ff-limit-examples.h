/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Example limit sheets, to begin from. Neither law nor advice: each row says where its number was
 * read, each is marked as an example, and none was ever checked by the crew. */
#pragma once

#include <glib.h>

/* Name of the i-th sheet; NULL past the last. */
const char *ff_limit_example_name (guint i);

/* Its rows, new records (FfLimit), in an array that frees them. */
GPtrArray *ff_limit_example_rows (guint i) G_GNUC_WARN_UNUSED_RESULT;
