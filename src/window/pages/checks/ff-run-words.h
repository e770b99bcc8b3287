/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the page of a run says, as text: values alone, no widgets. */
#pragma once

#include "ff-keeper-lists.h"

/* □ ■ ◧ ‖ ✕ – */
const char *ff_mark_shape (FfMark mark);

/* "within 16.4 to 16.8 V", "at least 15 °C", "in m/s", "in words"; empty: nothing is asked for. */
char *ff_run_words_bounds (const FfCheckValue *value) G_GNUC_WARN_UNUSED_RESULT;

/* "Section 2 of 4 · item 3 of 7 · 1 deferred". */
char *ff_run_words_where (const FfListRun *run) G_GNUC_WARN_UNUSED_RESULT;

/* Who is to answer an item, by name: the role it names, else the second person of the run. */
char *ff_run_words_who (FfKeeper *keeper,
                        const FfListRun *run,
                        const FfRunItem *item) G_GNUC_WARN_UNUSED_RESULT;

/* What the list wants to hear: response, bounds, the plan where it may be seen. */
char *ff_run_words_wanted (const FfDayRun *run, int i) G_GNUC_WARN_UNUSED_RESULT;

/* Why what was said does not pass and what to do; NULL: it does. */
char *ff_run_words_challenge (const FfDayRun *run, int i) G_GNUC_WARN_UNUSED_RESULT;

/* "Held at Filter since 16:42, 3 min. Client. Resume: Propellers comes again." */
char *ff_run_words_held (const FfListRun *run,
                         gint64 now,
                         GTimeZone *zone,
                         const char *by,
                         guint changed) G_GNUC_WARN_UNUSED_RESULT;

/* What an item or the completion of its section is called. */
char *ff_run_words_name (const FfListRun *run, int i) G_GNUC_WARN_UNUSED_RESULT;
