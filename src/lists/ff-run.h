/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The run of a checklist as a pure state machine: events in, marks out, the same events always to
 * the same marks. There is always one current item, and an event is about that one: nothing is
 * ticked ahead, nothing twice, nothing by itself. A section ends with an item of its own that says
 * it is complete and can't be reached while another one is unresolved.
 *
 * Sources of the rules: Degani and Wiener, Human Factors of Flight-Deck Checklists (NASA CR-177549,
 * 1990), guidelines 4 to 7 and 11; Flight Safety Foundation, ALAR Briefing Note 1.5: after an
 * interruption the last completed item is repeated; Dismukes and Berman (NASA/TM-2010-216396) on
 * answers without looking. */
#pragma once

#include <glib.h>

#include "ff-checklist.h"
#include "ff-run-acts.h"

typedef enum {
  FF_MARK_OPEN,
  FF_MARK_DONE,
  FF_MARK_DEFERRED,
  FF_MARK_HELD,
  FF_MARK_FAILED,
  FF_MARK_NOT_APPLICABLE,
} FfMark;

extern const FfNames ff_names_mark;

/* Whether an item may go from one mark to the other. A failed item is opened again before it can
 * be done; a held one resumes as open, so that it is read out anew. */
gboolean ff_mark_may_follow (FfMark from, FfMark to);

/* Whether an item with this mark still stands in the way of completing its section. */
gboolean ff_mark_is_unresolved (FfMark mark);

typedef enum {
  FF_ANOTHER_BATTERY = 1 << 0,
  FF_ANOTHER_AIRCRAFT = 1 << 1,
  FF_ANOTHER_PERSON = 1 << 2,
} FfAnother;

/* The crew's own rules: how long an interruption may last, and which changes start a section anew. */
typedef struct {
  int restart_after_s;
  guint restart_on; /* mask of FfAnother */
} FfRunRules;

/* Texts may be NULL. `at` is when it happened, which may be long before it was entered when it comes
 * from paper. */
typedef struct {
  FfAct act;
  int item;             /* its place in the run; -1: the run itself */
  gint64 at;
  const char *by;       /* initials */
  const char *other;    /* initials of the second person, where one is there at once */
  const char *said;
  const char *expected; /* what the plan said at that moment; empty: nothing */
  const char *why;
  const char *subject;  /* of a failure: what it is a defect of; empty: it holds the flight */
  guint changed;
  int after_ms;         /* since the item came up; -1: not known */
  gboolean from_paper;
} FfRunEvent;

typedef enum {
  FF_RUN_NOT_STARTED,
  FF_RUN_GOING,
  FF_RUN_HELD,
  FF_RUN_COMPLETE,
  FF_RUN_ABANDONED,
} FfRunState;

extern const FfNames ff_names_run_state;

/* Why what was said does not pass. */
typedef enum { FF_CHALLENGE_NONE, FF_CHALLENGE_OUTSIDE, FF_CHALLENGE_DIFFERS } FfChallenge;

/* One item of the run, as it stands. Texts are never NULL. */
typedef struct {
  const FfCheckSection *section;
  const FfCheckItem *item; /* NULL: the item that completes its section */
  int section_number;      /* among those that this day calls for, from 0 */
  FfMark mark;
  FfChallenge challenge;
  gboolean waits_for_second; /* answered; another person is to look */
  gboolean quick;            /* answered within a second of coming up */
  gboolean from_paper;
  gint64 at;                 /* of its last event */
  char *by, *second_by;
  char *said, *expected, *why, *subject;
  guint order;               /* of completion; 0: not complete */
} FfRunItem;

typedef struct _FfListRun FfListRun;

/* The items that a day under these conditions calls for. The list is borrowed and must outlive the
 * run. */
FfListRun *ff_list_run_new (const FfChecklist *list,
                   guint conditions,
                   const FfRunRules *rules) G_GNUC_WARN_UNUSED_RESULT;
void ff_list_run_free (FfListRun *run);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfListRun, ff_list_run_free)

/* One event. A hold of a run that is held already needs a reason and gives the hold that one; since
 * when it stands does not change. What the rules do not allow is refused with a sentence, and
 * nothing has changed.
 * FF_ERROR_INPUT. */
gboolean ff_list_run_step (FfListRun *run, const FfRunEvent *event, GError **error);

/* The same question without the step. */
gboolean ff_list_run_allows (const FfListRun *run, const FfRunEvent *event, GError **error);

const FfChecklist *ff_list_run_list (const FfListRun *run);
FfRunState ff_list_run_state (const FfListRun *run);

int ff_list_run_n_items (const FfListRun *run);
int ff_list_run_n_sections (const FfListRun *run);
const FfRunItem *ff_list_run_item (const FfListRun *run, int i);

/* The mark to show: the current item of a held run is held. */
FfMark ff_list_run_mark (const FfListRun *run, int i);

/* The one item that is next: the first open one of the first section that is not complete, then what
 * was deferred there, then what failed, then its completion. -1: none is. */
int ff_list_run_current (const FfListRun *run);

/* The item completed last; -1: none. */
int ff_list_run_last_completed (const FfListRun *run);

/* Whether the expected value may be seen: that of a critical item only after the person has said
 * what they read. */
gboolean ff_list_run_shows_expected (const FfListRun *run, int i);

/* Items with this mark, completions left out; in one section (its number), or -1: in all. */
int ff_list_run_count (const FfListRun *run, int section, FfMark mark);
int ff_list_run_section_size (const FfListRun *run, int section);

/* Who reads and who answers; never NULL. Since when and why it is held, and whether the section will
 * start anew when it is resumed at an instant by someone. */
const char *ff_list_run_reader (const FfListRun *run);
const char *ff_list_run_other (const FfListRun *run);
gint64 ff_list_run_held_since (const FfListRun *run);
const char *ff_list_run_held_why (const FfListRun *run);
gboolean ff_list_run_will_restart (const FfListRun *run, gint64 at, const char *by, guint changed);

/* When its last event happened. */
gint64 ff_list_run_last_at (const FfListRun *run);
