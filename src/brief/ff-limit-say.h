/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A limit on a sheet, in the same words for every reader. */
#pragma once

#include "ff-sheet-facts.h"
#include "ff-sheet.h"

/* "gust at flying height at most 9 m/s", and "✕ outside: 10.8 m/s, measured 16:40 by JV" where that
 * is so; added to what stands in the cell. */
void ff_limit_say (FfCell *cell, const FfSheetLimit *limit);
