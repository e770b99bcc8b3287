/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files that gather the facts of sheets share. */
#pragma once

#include "ff-sheet-facts.h"
#include "ff-standing.h"

/* Joins what is there, and takes it; nothing is said of what is not. */
void ff_sheet_append_part (GString *text, const char *separator, char *part);

void ff_sheet_add_shots (FfSheetFacts *facts, const FfDay *day, const FfDayPlan *plan);
void ff_sheet_shot_free (gpointer shot);

/* The amendments of the letter that stands. */
void ff_sheet_add_amendments (FfSheetFacts *facts, const FfStanding *standing);
void ff_sheet_amendment_free (gpointer amendment);
