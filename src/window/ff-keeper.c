/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-keeper-private.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-planner.h"

struct _FfKeeper {
  GObject parent_instance;

  char *data_dir;
  char *trouble;
  char *initials;
  FfStore *store;
  FfUndo *undo;
  FfPlanner *planner;

  GPtrArray *jobs, *items, *members;
  GHashTable *places; /* id → FfPlace, read when first asked for */

  char *job_id;
  FfJob *job;
  GPtrArray *shots, *crew;
};

G_DEFINE_FINAL_TYPE (FfKeeper, ff_keeper, G_TYPE_OBJECT)

enum { PROP_0, PROP_INITIALS, N_PROPS };
enum { JOBS_CHANGED, ITEMS_CHANGED, JOB_CHANGED, PLAN_CHANGED, UNDO_CHANGED, N_SIGNALS };

static GParamSpec *properties[N_PROPS];
static guint signals[N_SIGNALS];

/* Reading */

static void
free_place (gpointer place)
{
  ff_place_free (place);
}

static void
take_array (GPtrArray **slot, GPtrArray *loaded)
{
  g_ptr_array_unref (*slot);
  *slot = loaded != NULL ? loaded : g_ptr_array_new ();
}

/* A store that opened but can't be read (a pulled card, a damaged page) is trouble as well. */
static void
note_trouble (FfKeeper *self, const GError *error)
{
  if (error == NULL || self->trouble != NULL)
    return;
  self->trouble = g_strdup (error->message);
  g_clear_pointer (&self->store, ff_records_close);
}

static void
read_jobs (FfKeeper *self)
{
  g_autoptr (GError) error = NULL;

  g_hash_table_remove_all (self->places);
  take_array (&self->jobs, self->store != NULL ? ff_jobs_load (self->store, &error) : NULL);
  if (error == NULL)
    take_array (&self->members, self->store != NULL ? ff_members_load (self->store, &error) : NULL);
  note_trouble (self, error);
}

static void
read_items (FfKeeper *self)
{
  g_autoptr (GError) error = NULL;

  take_array (&self->items, self->store != NULL ? ff_items_load (self->store, &error) : NULL);
  note_trouble (self, error);
}

static void
read_job (FfKeeper *self)
{
  FfStore *store = self->job_id != NULL ? self->store : NULL;
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->job, ff_job_free);
  if (store != NULL)
    self->job = ff_job_load (store, self->job_id, NULL);
  if (self->job == NULL)
    {
      /* It was deleted, or an old setting names one that never was here. */
      g_clear_pointer (&self->job_id, g_free);
      store = NULL;
    }
  take_array (&self->shots, store != NULL ? ff_shots_load (store, self->job_id, &error) : NULL);
  if (error == NULL)
    take_array (&self->crew, store != NULL ? ff_job_crew_load (store, self->job_id, &error) : NULL);
  note_trouble (self, error);
}

static gboolean
open_store (FfKeeper *self)
{
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->trouble, g_free);
  self->store = ff_records_open (self->data_dir, FF_RECORDS_WRITE, &error);
  note_trouble (self, error);
  read_jobs (self);
  read_items (self);
  read_job (self);
  return self->store != NULL;
}

/* Callbacks */

static void
on_planned (FfKeeper *self)
{
  g_signal_emit (self, signals[PLAN_CHANGED], 0);
}

/* Overrides */

static void
ff_keeper_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_INITIALS)
    g_value_set_string (value, FF_KEEPER (object)->initials);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_keeper_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_INITIALS)
    ff_keeper_set_initials (FF_KEEPER (object), g_value_get_string (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_keeper_dispose (GObject *object)
{
  FfKeeper *self = FF_KEEPER (object);

  if (self->planner != NULL)
    ff_planner_ask (self->planner, NULL);
  g_clear_object (&self->planner);
  G_OBJECT_CLASS (ff_keeper_parent_class)->dispose (object);
}

static void
ff_keeper_finalize (GObject *object)
{
  FfKeeper *self = FF_KEEPER (object);

  g_clear_pointer (&self->store, ff_records_close);
  ff_undo_free (self->undo);
  g_clear_pointer (&self->job, ff_job_free);
  g_ptr_array_unref (self->jobs);
  g_ptr_array_unref (self->items);
  g_ptr_array_unref (self->members);
  g_ptr_array_unref (self->shots);
  g_ptr_array_unref (self->crew);
  g_hash_table_unref (self->places);
  g_free (self->data_dir);
  g_free (self->trouble);
  g_free (self->initials);
  g_free (self->job_id);
  G_OBJECT_CLASS (ff_keeper_parent_class)->finalize (object);
}

static guint
plain_signal (const char *name)
{
  return g_signal_new (name, FF_TYPE_KEEPER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                       0);
}

static void
ff_keeper_class_init (FfKeeperClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = ff_keeper_get_property;
  object_class->set_property = ff_keeper_set_property;
  object_class->dispose = ff_keeper_dispose;
  object_class->finalize = ff_keeper_finalize;
  properties[PROP_INITIALS] = g_param_spec_string (
      "initials", NULL, NULL, "",
      G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  signals[JOBS_CHANGED] = plain_signal ("jobs-changed");
  signals[ITEMS_CHANGED] = plain_signal ("items-changed");
  signals[JOB_CHANGED] = plain_signal ("job-changed");
  signals[PLAN_CHANGED] = plain_signal ("plan-changed");
  signals[UNDO_CHANGED] = plain_signal ("undo-changed");
}

static void
ff_keeper_init (FfKeeper *self)
{
  self->undo = ff_undo_new ();
  self->jobs = g_ptr_array_new ();
  self->items = g_ptr_array_new ();
  self->members = g_ptr_array_new ();
  self->shots = g_ptr_array_new ();
  self->crew = g_ptr_array_new ();
  self->places = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, free_place);
  self->initials = g_strdup ("");
}

/* Private to the keeper */

FfUndo *
ff_keeper_get_undo (FfKeeper *self)
{
  return self->undo;
}

FfStore *
ff_keeper_need_store (FfKeeper *self, GError **error)
{
  if (self->store == NULL)
    g_set_error_literal (error, FF_ERROR, FF_ERROR_STORE,
                         self->trouble != NULL ? self->trouble : _ ("the store is not open"));
  return self->store;
}

void
ff_keeper_announce (FfKeeper *self, FfKeeperNews news)
{
  if (news & FF_NEWS_JOBS)
    read_jobs (self);
  if (news & FF_NEWS_ITEMS)
    read_items (self);
  if (news & FF_NEWS_JOB)
    read_job (self);
  if (news != FF_NEWS_COUNT)
    ff_planner_ask (self->planner, self->job_id);
  g_object_ref (self);
  if (news & FF_NEWS_JOBS)
    g_signal_emit (self, signals[JOBS_CHANGED], 0);
  if (news & FF_NEWS_ITEMS)
    g_signal_emit (self, signals[ITEMS_CHANGED], 0);
  if (news & FF_NEWS_JOB)
    g_signal_emit (self, signals[JOB_CHANGED], 0);
  g_signal_emit (self, signals[UNDO_CHANGED], 0);
  g_object_unref (self);
}

/* Public */

FfKeeper *
ff_keeper_new (const char *data_dir)
{
  FfKeeper *self = g_object_new (FF_TYPE_KEEPER, NULL);

  self->data_dir = g_strdup (data_dir);
  self->planner = ff_planner_new (data_dir);
  g_signal_connect_object (self->planner, "changed", G_CALLBACK (on_planned), self,
                           G_CONNECT_SWAPPED);
  open_store (self);
  return self;
}

const char *
ff_keeper_data_dir (FfKeeper *self)
{
  return self->data_dir;
}

const char *
ff_keeper_trouble (FfKeeper *self)
{
  return self->trouble;
}

gboolean
ff_keeper_try_again (FfKeeper *self)
{
  if (self->store == NULL && open_store (self))
    ff_keeper_announce (self, FF_NEWS_JOBS | FF_NEWS_ITEMS | FF_NEWS_JOB);
  return self->store != NULL;
}

FfStore *
ff_keeper_store (FfKeeper *self)
{
  return self->store;
}

GPtrArray *
ff_keeper_jobs (FfKeeper *self)
{
  return self->jobs;
}

GPtrArray *
ff_keeper_items (FfKeeper *self)
{
  return self->items;
}

GPtrArray *
ff_keeper_members (FfKeeper *self)
{
  return self->members;
}

const FfItem *
ff_keeper_find_item (FfKeeper *self, const char *id)
{
  for (guint i = 0; i < self->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (self->items, i);

      if (g_strcmp0 (item->id, id) == 0)
        return item;
    }
  return NULL;
}

const FfMember *
ff_keeper_find_member (FfKeeper *self, const char *id)
{
  for (guint i = 0; i < self->members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (self->members, i);

      if (g_strcmp0 (member->id, id) == 0)
        return member;
    }
  return NULL;
}

GPtrArray *
ff_keeper_places (FfKeeper *self)
{
  GPtrArray *places = self->store != NULL ? ff_places_load (self->store, NULL) : NULL;

  return places != NULL ? places : g_ptr_array_new ();
}

const FfPlace *
ff_keeper_find_place (FfKeeper *self, const char *id)
{
  FfPlace *place;

  if (id == NULL || id[0] == '\0' || self->store == NULL)
    return NULL;
  place = g_hash_table_lookup (self->places, id);
  if (place == NULL)
    {
      place = ff_place_load (self->store, id, NULL);
      if (place != NULL)
        g_hash_table_insert (self->places, g_strdup (id), place);
    }
  return place;
}

void
ff_keeper_open_job (FfKeeper *self, const char *job_id)
{
  g_return_if_fail (FF_IS_KEEPER (self));
  if (g_strcmp0 (self->job_id, job_id) == 0)
    return;
  g_free (self->job_id);
  self->job_id = g_strdup (job_id);
  ff_keeper_announce (self, FF_NEWS_JOB);
}

const FfJob *
ff_keeper_job (FfKeeper *self)
{
  return self->job;
}

const FfPlace *
ff_keeper_place (FfKeeper *self)
{
  return self->job != NULL ? ff_keeper_find_place (self, self->job->place_id) : NULL;
}

GPtrArray *
ff_keeper_shots (FfKeeper *self)
{
  return self->shots;
}

GPtrArray *
ff_keeper_crew (FfKeeper *self)
{
  return self->crew;
}

const FfShot *
ff_keeper_find_shot (FfKeeper *self, const char *id)
{
  for (guint i = 0; i < self->shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (self->shots, i);

      if (g_strcmp0 (shot->id, id) == 0)
        return shot;
    }
  return NULL;
}

FfAnswer *
ff_keeper_answer (FfKeeper *self)
{
  return ff_planner_answer (self->planner);
}

const FfDay *
ff_keeper_day (FfKeeper *self)
{
  const FfAnswer *answer = ff_keeper_answer (self);

  return answer != NULL ? answer->day : NULL;
}

const FfDayPlan *
ff_keeper_plan (FfKeeper *self)
{
  const FfAnswer *answer = ff_keeper_answer (self);

  return answer != NULL ? answer->plan : NULL;
}

const FfChartFacts *
ff_keeper_chart (FfKeeper *self)
{
  const FfAnswer *answer = ff_keeper_answer (self);

  return answer != NULL ? answer->chart : NULL;
}

const char *
ff_keeper_why (FfKeeper *self)
{
  const FfAnswer *answer = ff_keeper_answer (self);

  return answer != NULL ? answer->why : NULL;
}

void
ff_keeper_mark_plan (FfKeeper *self)
{
  g_return_if_fail (FF_IS_KEEPER (self));
  if (self->planner != NULL)
    ff_planner_mark (self->planner);
}

const FfChangePrice *
ff_keeper_edit (FfKeeper *self)
{
  g_return_val_if_fail (FF_IS_KEEPER (self), NULL);
  return self->planner != NULL ? ff_planner_edit (self->planner) : NULL;
}

gboolean
ff_keeper_is_planning (FfKeeper *self)
{
  return ff_planner_is_busy (self->planner);
}

const char *
ff_keeper_initials (FfKeeper *self)
{
  return self->initials;
}

void
ff_keeper_set_initials (FfKeeper *self, const char *initials)
{
  g_return_if_fail (FF_IS_KEEPER (self));
  if (g_strcmp0 (self->initials, initials) == 0)
    return;
  g_free (self->initials);
  self->initials = g_strdup (initials != NULL ? initials : "");
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_INITIALS]);
}
