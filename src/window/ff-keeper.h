/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The one object that pages talk to. It owns the store on the main thread, holds what the screen
 * shows of it, stores each record as it is typed, remembers the earlier values for undo, and has
 * the open job planned anew after each change.
 *
 * Signals, always emitted on the main thread and before a saving function returns:
 *   "jobs-changed"   the list of jobs, places or crew
 *   "items-changed"  the gear
 *   "job-changed"    the open job, its place, shots or crew; or another job is open
 *   "plan-changed"   the plan of the open job (comes later, from a worker)
 *   "undo-changed"   what would be undone
 * What a getter returns is borrowed and good until the next signal. */
#pragma once

#include <gio/gio.h>

#include "ff-answer.h"
#include "ff-battery-log.h"
#include "ff-charge-watch.h"
#include "ff-chart-facts.h"
#include "ff-crew.h"
#include "ff-day.h"
#include "ff-gear-csv.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-limit.h"
#include "ff-pack-list.h"
#include "ff-place.h"
#include "ff-reading.h"
#include "ff-shot.h"
#include "ff-weather.h"

#define FF_TYPE_KEEPER (ff_keeper_get_type ())
G_DECLARE_FINAL_TYPE (FfKeeper, ff_keeper, FF, KEEPER, GObject)

/* Never fails: what is wrong with the store is its trouble, and then all lists are empty and every
 * change is refused with that sentence. */
FfKeeper *ff_keeper_new (const char *data_dir) G_GNUC_WARN_UNUSED_RESULT;
const char *ff_keeper_data_dir (FfKeeper *self);

/* Why the store is not open and what can be done; NULL: it is open. */
const char *ff_keeper_trouble (FfKeeper *self);
gboolean ff_keeper_try_again (FfKeeper *self);

/* The store itself, for reading what the keeper does not hold. NULL while there is trouble. */
FfStore *ff_keeper_store (FfKeeper *self);

/* What there is. Arrays of FfJob, FfItem and FfMember; never NULL. */
GPtrArray *ff_keeper_jobs (FfKeeper *self);
GPtrArray *ff_keeper_items (FfKeeper *self);
GPtrArray *ff_keeper_members (FfKeeper *self);
const FfItem *ff_keeper_find_item (FfKeeper *self, const char *id);
const FfMember *ff_keeper_find_member (FfKeeper *self, const char *id);
const FfPlace *ff_keeper_find_place (FfKeeper *self, const char *id);

/* All places by name, read from the store; an array that is the caller's. */
GPtrArray *ff_keeper_places (FfKeeper *self) G_GNUC_WARN_UNUSED_RESULT;

/* The open job with all that belongs to it; NULL and empty arrays when none is open. */
void ff_keeper_open_job (FfKeeper *self, const char *job_id);
const FfJob *ff_keeper_job (FfKeeper *self);
const FfPlace *ff_keeper_place (FfKeeper *self);
GPtrArray *ff_keeper_shots (FfKeeper *self); /* FfShot, in order */
GPtrArray *ff_keeper_crew (FfKeeper *self);  /* FfMember with the role in this job */
const FfShot *ff_keeper_find_shot (FfKeeper *self, const char *id);

/* Its plan as last worked out. Without a plan, `why` says what to enter. */
const FfDay *ff_keeper_day (FfKeeper *self);
const FfDayPlan *ff_keeper_plan (FfKeeper *self);
const FfChartFacts *ff_keeper_chart (FfKeeper *self);
const char *ff_keeper_why (FfKeeper *self);
gboolean ff_keeper_is_planning (FfKeeper *self);

/* All four at once, NULL while there is none; to hold on to it take a reference. */
FfAnswer *ff_keeper_answer (FfKeeper *self);

/* From this moment on what is edited in the open job is priced; NULL: nothing was edited since,
 * or its price comes later. */
void ff_keeper_mark_plan (FfKeeper *self);
const FfChangePrice *ff_keeper_edit (FfKeeper *self);

/* A copy to change and hand to ff_keeper_save_…(); NULL when it is no longer there. */
FfJob *ff_keeper_dup_job (FfKeeper *self, const char *id) G_GNUC_WARN_UNUSED_RESULT;
FfPlace *ff_keeper_dup_place (FfKeeper *self, const char *id) G_GNUC_WARN_UNUSED_RESULT;
FfShot *ff_keeper_dup_shot (FfKeeper *self, const char *id) G_GNUC_WARN_UNUSED_RESULT;
FfItem *ff_keeper_dup_item (FfKeeper *self, const char *id) G_GNUC_WARN_UNUSED_RESULT;
FfMember *ff_keeper_dup_member (FfKeeper *self, const char *id) G_GNUC_WARN_UNUSED_RESULT;

/* Stores one record, new or changed, at once. A record that is not right is refused with the
 * sentence that says why, and the stored one stays. `what` names the change for undo, as one
 * sentence: "Height of shot D changed". Changes of one record under the same name that follow each
 * other quickly, as keystrokes do, are undone together. */
gboolean ff_keeper_save_job (FfKeeper *self, const FfJob *job, const char *what, GError **error);
gboolean ff_keeper_save_place (FfKeeper *self,
                               const FfPlace *place,
                               const char *what,
                               GError **error);
gboolean ff_keeper_save_shot (FfKeeper *self, const FfShot *shot, const char *what, GError **error);
gboolean ff_keeper_save_item (FfKeeper *self, const FfItem *item, const char *what, GError **error);
gboolean ff_keeper_save_member (FfKeeper *self,
                                const FfMember *member,
                                const char *what,
                                GError **error);

/* Whole changes, each undone as one. */
char *ff_keeper_new_job (FfKeeper *self, GError **error) G_GNUC_WARN_UNUSED_RESULT; /* its id */
char *ff_keeper_duplicate_job (FfKeeper *self,
                               const char *id,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean ff_keeper_delete_job (FfKeeper *self, const char *id, GError **error);
/* A new shot of the open job, behind the shot `after` (NULL: at the end of the list). */
gboolean ff_keeper_insert_shot (FfKeeper *self,
                                const FfShot *shot,
                                const char *after,
                                GError **error);
gboolean ff_keeper_delete_shot (FfKeeper *self, const char *id, GError **error);
gboolean ff_keeper_delete_item (FfKeeper *self, const char *id, GError **error);
gboolean ff_keeper_move_shot (FfKeeper *self, const char *id, int by, GError **error);

/* Appends what happened to an item: its state, why, and for one that is out with whom and until when
 * (YYYY-MM-DD); by whoever is at the keys. What happened is kept: undo appends the state before. */
gboolean ff_keeper_set_item_state (FfKeeper *self,
                                   const char *id,
                                   FfState state,
                                   const char *why,
                                   const char *with,
                                   const char *until,
                                   GError **error);

/* Appends a light reading to the open job: undo sets it aside. Sets one aside with a reason, by
 * whoever is at the keys; that is not undone. */
gboolean ff_keeper_add_reading (FfKeeper *self, const FfReading *reading, GError **error);
gboolean ff_keeper_drop_reading (FfKeeper *self,
                                 const char *id,
                                 const char *why,
                                 GError **error);

/* Appends what was measured, an aerodrome's report, or the crew's call to the open job. What
 * happened is kept: there is no undo. */
gboolean ff_keeper_add_measurement (FfKeeper *self, const FfMeasurement *measured, GError **error);
gboolean ff_keeper_add_report (FfKeeper *self, const FfWeatherReport *report, GError **error);
gboolean ff_keeper_add_call (FfKeeper *self, const FfWeatherCall *call, GError **error);

/* How far thin air shortens what is planned, of all jobs: FfAirRules.thin_air. */
double ff_keeper_thin_air (FfKeeper *self);
gboolean ff_keeper_save_thin_air (FfKeeper *self, double share, GError **error);

/* Rows of the crew's limit sheets, which are of all jobs: "job-changed" tells of them. All of some
 * rows (FfLimit) are stored as one. */
gboolean ff_keeper_save_limit (FfKeeper *self,
                               const FfLimit *limit,
                               const char *what,
                               GError **error);
gboolean ff_keeper_add_limits (FfKeeper *self, GPtrArray *limits, const char *what, GError **error);
gboolean ff_keeper_delete_limit (FfKeeper *self, const char *id, GError **error);

/* Counts an item of the pack list of the open job; `condition` may be NULL. What was counted is
 * kept: undo appends the mark that `entry` had before. No signal but "undo-changed": the pack list
 * is not held here. */
gboolean ff_keeper_count (FfKeeper *self,
                          const FfPackEntry *entry,
                          FfPackStage stage,
                          FfPackMark mark,
                          const char *condition,
                          GError **error);

/* Who attends the charger before the open job, all watches (FfWatch) as one. */
gboolean ff_keeper_save_watches (FfKeeper *self, GPtrArray *watches, GError **error);

/* What was measured or decided at a battery, by whoever is at the keys; a decision sets its state.
 * What happened is kept. */
gboolean ff_keeper_add_resistance (FfKeeper *self,
                                   const char *battery_id,
                                   FfResistance *resistance,
                                   GError **error);
gboolean ff_keeper_add_incident (FfKeeper *self,
                                 const char *battery_id,
                                 FfSign sign,
                                 FfDecision decision,
                                 const char *found,
                                 GError **error);

/* Stores what a CSV file brings, all or nothing. */
gboolean ff_keeper_import_gear (FfKeeper *self, const FfGearImport *import, GError **error);

/* Who holds a role in the open job. */
gboolean ff_keeper_add_crew (FfKeeper *self,
                             const char *member_id,
                             FfRole role,
                             GError **error);
gboolean ff_keeper_remove_crew (FfKeeper *self,
                                const char *member_id,
                                FfRole role,
                                GError **error);

/* The same with another role; and a member who is new and takes a role at once. */
gboolean ff_keeper_change_role (FfKeeper *self,
                                const char *member_id,
                                FfRole from,
                                FfRole to,
                                GError **error);
gboolean ff_keeper_add_new_crew (FfKeeper *self,
                                 const FfMember *member,
                                 FfRole role,
                                 GError **error);

/* A new place, which becomes that of the open job. */
gboolean ff_keeper_add_place (FfKeeper *self, const FfPlace *place, GError **error);

/* Freezes the plan of the open job (`why` of a further letter), makes what has changed since an
 * amendment, notes who has read one. Others have it on paper: none of it is undone. */
gboolean ff_keeper_freeze (FfKeeper *self, const char *why, GError **error);
gboolean ff_keeper_amend (FfKeeper *self, GError **error);
gboolean ff_keeper_acknowledge (FfKeeper *self,
                                int number,
                                FfRole role,
                                const char *initials,
                                GError **error);

/* That somebody was briefed now, on what stands. What was said was said: there is no undo. */
gboolean ff_keeper_brief (FfKeeper *self, const char *name, const char *initials, GError **error);

/* Locks a line of the plan as it stands, with its battery, its filter and when it is off; or unlocks
 * one that is locked. `line_id`: its first shot. A filter of several pieces, or a variable one, is
 * left to the planner. */
gboolean ff_keeper_toggle_lock (FfKeeper *self, const char *line_id, GError **error);

/* The sentence of what would be undone, or NULL. */
const char *ff_keeper_undo_text (FfKeeper *self);
gboolean ff_keeper_undo (FfKeeper *self, GError **error);

/* Who is at the keys: initials that stand beside what is entered. Property "initials". */
const char *ff_keeper_initials (FfKeeper *self);
void ff_keeper_set_initials (FfKeeper *self, const char *initials);
