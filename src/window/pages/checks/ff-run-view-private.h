/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The two halves of the view of a run: what it shows (ff-run-view.c), what the keys do
 * (ff-run-keys.c). */
#pragma once

#include "ff-run-view.h"
#include "ff-run-words.h"

/* What is asked for in the line below; each has its own answer to Enter. */
typedef enum {
  ASK_NOTHING,
  ASK_VALUE,
  ASK_SECOND,
  ASK_LEAVE_OUT,
  ASK_FAIL,
  ASK_SUBJECT,
  ASK_REOPEN,
  ASK_KEEP,
  ASK_KEEP_OTHER,
  ASK_PAPER,
  ASK_ABANDON,
  ASK_HOLD,
} FfRunAsk;

struct _FfRunView {
  GtkBox parent_instance;

  FfKeeper *keeper; /* borrowed: the page's */
  FfDayRun *run;
  FfRunAsk asked;        /* by a key; ASK_NOTHING: what the item itself asks for */
  char *why;        /* given already, for a question that has two parts */
  gint64 paper_at;  /* 0: not from paper */
  gint64 came_up;   /* monotonic, when the current item did */
  int came_item;
  gint64 touched, ticked; /* wall clock: last key, last tick */
  int idle_s;
  guint changed, timer;
  GPtrArray *subjects; /* char*: ids behind the digits */

  GtkLabel *title, *where, *held, *ask, *refused;
  GtkScrolledWindow *scroller;
  GtkBox *rows, *line;
  GtkEntry *entry;
  GtkWidget *keys;
};

const FfListRun *ff_run_view_machine (FfRunView *self);
const FfRunItem *ff_run_view_current (FfRunView *self);

/* What the line below asks for now. */
FfRunAsk ff_run_view_asks (FfRunView *self);

void ff_run_view_show (FfRunView *self);
void ff_run_view_show_state (FfRunView *self);
void ff_run_view_show_question (FfRunView *self);

/* A sentence in the place of refusals; NULL: none. */
void ff_run_view_say (FfRunView *self, const char *sentence);
GTimeZone *ff_run_view_zone (FfRunView *self) G_GNUC_WARN_UNUSED_RESULT;
gint64 ff_run_view_clock (void);
void ff_run_view_leave (FfRunView *self);

/* What the keys do. */
FfRunEvent ff_run_view_event (FfRunView *self, FfAct act);
gboolean ff_run_view_act (FfRunView *self, FfRunEvent *event);
void ff_run_view_submit (FfRunView *self);
gboolean ff_run_view_command (FfRunView *self, guint letter);
gboolean ff_run_view_back (FfRunView *self);
gboolean ff_run_view_key (FfRunView *self, guint key, guint code, GdkModifierType state);
