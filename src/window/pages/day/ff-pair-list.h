/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A list of rows with two fields each, as the events of a day (when, what) or hazards (what, what
 * is done about it), and a line at its end that adds one.
 *
 * Signals: "typed" (guint row, guint part, const char *text) with every keystroke in a row;
 * "removed" (guint row); "added" (const char *text) when Enter or the button closes the last line.
 * As with FfEntry, the page stores what was typed, tells why it was not by complaining, and shows
 * the stored rows again whenever they may have changed. */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_PAIR_LIST (ff_pair_list_get_type ())
G_DECLARE_FINAL_TYPE (FfPairList, ff_pair_list, FF, PAIR_LIST, GtkWidget)

/* The stored rows: two arrays of `n` texts. */
void ff_pair_list_show (FfPairList *self,
                        guint n,
                        const char *const *firsts,
                        const char *const *seconds);

void ff_pair_list_complain (FfPairList *self, guint row, guint part, const char *sentence);

/* Takes the line that adds: NULL empties it for the next one, a sentence says what is wrong. */
void ff_pair_list_answer (FfPairList *self, const char *sentence);

/* Moves a row, with the cursor that may be in it, before the stored rows are shown in that order. */
void ff_pair_list_move (FfPairList *self, guint from, guint to);

void ff_pair_list_focus_row (FfPairList *self, guint row, guint part);
void ff_pair_list_focus_add (FfPairList *self);
