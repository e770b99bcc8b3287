/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The emergency card: the first actions of the crew's emergency lists, as they are kept; where none
 * are loaded, of the lists that come with the program. */
#pragma once

#include "ff-sheet-facts.h"
#include "ff-sheet.h"

/* An injury is no flight: its card is in the first-aid kit and among the lists on paper. */
#define FF_INJURY_LIST "28-injury"

void ff_emergency_card_add (FfSheet *sheet, const FfSheetFacts *facts);
