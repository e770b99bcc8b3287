/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The gear to a CSV file and back, by way of the file dialogs; what a file would change is said before
 * it does. */
#pragma once

#include "ff-page.h"

void ff_gear_files_export (FfPage *page);
void ff_gear_files_import (FfPage *page);

/* The same with the file already chosen. The preview is asked about; `FALSE`: it was refused, and the
 * page has said why. */
gboolean ff_gear_files_preview (FfPage *page, const char *path);
