/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A limit as the crew entered it, in words. */
#pragma once

#include "ff-limit.h"

/* "at most 8 m/s", "between 5 °C and 40 °C", "within the hours sunset +0 min and 23:00"; what it
 * counts from behind it, where that is not the usual. */
char *ff_limit_bound_words (const FfLimit *limit) G_GNUC_WARN_UNUSED_RESULT;

/* A bound in words that is taken, with what it counts from behind it, where that is not the usual:
 * "at most 60 m (above the water)". */
char *ff_limit_with_datum (const FfLimit *limit, char *words) G_GNUC_WARN_UNUSED_RESULT;
