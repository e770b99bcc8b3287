/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-limit-say.h"

void
ff_limit_say (FfCell *cell, const FfSheetLimit *limit)
{
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, limit->text);
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, " ");
  ff_cell_more (cell, FF_SIZE_BODY, TRUE, limit->bound);
  if (*limit->stands == '\0')
    return;
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, " ");
  ff_cell_more (cell, FF_SIZE_BODY, TRUE, limit->stands);
}
