/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A limit on a sheet, in the same words for every reader. */
#pragma once

#include "ff-sheet-facts.h"
#include "ff-sheet.h"

/* "gust at flying height at most 9 m/s", and "✕" where it is outside; added to what stands in the
 * cell. */
void ff_limit_say (FfCell *cell, const FfSheetLimit *limit);
