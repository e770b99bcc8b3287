/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The parts of the page "Pack" that are sentences. Each fills a box anew. */
#pragma once

#include <gtk/gtk.h>

#include "ff-pack-list.h"

/* What is short and what to do, then what clashes. */
void ff_pack_notes_show_shorts (GtkBox *box, const FfPackList *list);

/* Checks that come up; the filter wallet. */
void ff_pack_notes_show_due (GtkBox *box, const FfPackList *list);
void ff_pack_notes_show_wallet (GtkBox *box, const FfPackList *list);

/* Whether something is not counted in yet, as one sentence: "34 not counted in yet: aircraft 1, …". */
char *ff_pack_notes_not_in (const FfPackList *list) G_GNUC_WARN_UNUSED_RESULT;

/* "Case 2 · 3 of 8 out · 2.1 kg known · 348 Wh" */
char *ff_pack_notes_case (const FfPackCase *box, FfPackStage stage) G_GNUC_WARN_UNUSED_RESULT;

/* "12 of 36 out · 1 not taken" */
char *ff_pack_notes_count (const FfPackList *list,
                           FfPackStage stage) G_GNUC_WARN_UNUSED_RESULT;
