/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A filter measured by two picture files. */
#pragma once

#include "ff-filter-test.h"
#include "ff-frame.h"

/* Reads both and compares them; beyond what ff_filter_test() refuses, two pictures that were taken
 * more than ten minutes apart, in which the light moves on, or that differ in size. FF_ERROR_INPUT
 * names the file or says what to do. */
gboolean ff_frame_filter_test (const char *without,
                               const char *with,
                               FfFilterTest *ret_test,
                               GError **error);
