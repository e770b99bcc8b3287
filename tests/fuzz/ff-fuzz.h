/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A fuzz target takes bytes from outside and must come back: it returns 0, always. What it finds
 * wrong it says with g_assert. */
#pragma once

#include <glib.h>
#include <stddef.h>
#include <stdint.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);
