/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The parts of the page of sorties that are words: what is not flown, clashes, what the charger
 * promises, the bag, the cost. Each fills a box anew. */
#pragma once

#include <gtk/gtk.h>

#include "ff-answer.h"

/* Limits that are outside, shots that are not flown, then clashes. The box hides itself when there
 * are none. */
void ff_sortie_notes_show_open (GtkBox *box, const FfAnswer *answer);

/* Sentences one under the other. */
void ff_sortie_notes_show_sentences (GtkBox *box, const GPtrArray *sentences);

void ff_sortie_notes_show_charges (GtkBox *box, const FfDayPlan *plan, GTimeZone *zone);

/* What to pack: filters each with its neutral block, whose strength `items` (FfItem) know; what is
 * packed in case with the case. */
void ff_sortie_notes_show_bag (GtkBox *box, const FfDayPlan *plan, const GPtrArray *items);

void ff_sortie_notes_show_cost (GtkGrid *grid, const FfDayPlan *plan);
