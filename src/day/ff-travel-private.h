/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the air travel sheet share. */
#pragma once

#include "ff-item.h"
#include "ff-travel-sheet.h"

char *ff_travel_row_words (const FfTravelSheet *sheet,
                           const FfTravelRow *row,
                           const FfItem *item) G_GNUC_WARN_UNUSED_RESULT;
char *ff_travel_letter_line (const FfTravelSheet *sheet,
                             const FfTravelRow *row,
                             const FfItem *item) G_GNUC_WARN_UNUSED_RESULT;
void ff_travel_add_cautions (FfTravelSheet *sheet, const FfCarrier *carrier);
