/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Earlier values of records, in steps that are taken back whole. */
#pragma once

#include "ff-records.h"

/* What can be done with a kind of record, so that one mechanism undoes them all. */
typedef struct {
  gpointer (*load) (FfStore *store, const char *id, GError **error);
  gboolean (*save) (FfStore *store, gconstpointer record, GError **error);
  gboolean (*remove) (FfStore *store, const char *id, GError **error);
  void (*free) (gpointer record);
} FfNoun;

extern const FfNoun ff_noun_job, ff_noun_place, ff_noun_shot, ff_noun_item, ff_noun_member;
extern const FfNoun ff_noun_lock;
extern const FfNoun ff_noun_job_crew; /* FfHeldRole; its id is "job/member/role" */

typedef struct {
  char *job_id, *member_id;
  int role;
} FfHeldRole;

typedef struct _FfUndo FfUndo;
typedef struct _FfUndoStep FfUndoStep;

FfUndo *ff_undo_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_undo_free (FfUndo *undo);

/* One step: a sentence, and for each record what it was. Entries are put back last first. */
FfUndoStep *ff_undo_step_new (const char *what) G_GNUC_WARN_UNUSED_RESULT;
void ff_undo_step_free (FfUndoStep *step);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfUndoStep, ff_undo_step_free)

/* `before` is taken; NULL: the record was not there, undo removes it. */
void ff_undo_step_add (FfUndoStep *step, const FfNoun *noun, const char *id, gpointer before);

/* Takes the step. One that changes the same record under the same name as the step before it, and
 * soon after it, becomes part of that. */
void ff_undo_push (FfUndo *undo, FfUndoStep *step);

const char *ff_undo_text (const FfUndo *undo);

/* Puts the last step's values back in one transaction and drops the step. */
gboolean ff_undo_take_back (FfUndo *undo, FfStore *store, GError **error);
