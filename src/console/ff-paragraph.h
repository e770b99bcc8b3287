/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sentences on a terminal of 80 columns. */
#pragma once

#include "ff-command.h"

/* The text after `head` ("  ", "   B and C: "), broken between words; further lines are indented by
 * as many columns as the head has. Columns are counted in letters, not bytes. */
void ff_console_paragraph (FfConsole *console, const char *head, const char *text);
