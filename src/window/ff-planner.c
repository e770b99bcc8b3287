/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-planner.h"

#include <gio/gio.h>

struct _FfPlanner {
  GObject parent_instance;

  char *data_dir;
  char *job_id;   /* of the last question; NULL: none */
  FfTry tried;    /* of the last question */
  GCancellable *cancellable; /* of the worker that is out; NULL: none ever was */
  gboolean busy;  /* a worker is out */
  gboolean stale; /* another question came while it was */
  FfAnswer *answer;
  FfAnswer *marked; /* what edits are priced against; NULL: none */
  FfChangePrice *edit;  /* of the answer against it; NULL: none, or not yet */
  GCancellable *pricing; /* of the worker that finds it; NULL: none is out */
  gboolean mark_next;
};

G_DEFINE_FINAL_TYPE (FfPlanner, ff_planner, G_TYPE_OBJECT)

enum { CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

/* The worker */

typedef struct {
  char *data_dir;
  char *job_id;
  FfTry tried;
} Question;

static void
question_free (gpointer data)
{
  Question *question = data;

  g_free (question->data_dir);
  g_free (question->job_id);
  ff_try_clear (&question->tried);
  g_free (question);
}

static void
work (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  const Question *question = task_data;

  g_task_return_pointer (
      task,
      ff_answer_new (question->data_dir, question->job_id, &question->tried, cancellable),
      (GDestroyNotify) ff_answer_unref);
}

/* Two answers to compare. */
typedef struct {
  FfAnswer *before, *after;
} Edit;

static void
edit_free (gpointer data)
{
  Edit *edit = data;

  ff_answer_unref (edit->before);
  ff_answer_unref (edit->after);
  g_free (edit);
}

static void
price_work (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  const Edit *edit = task_data;

  g_task_return_pointer (task, ff_answer_price_since (edit->after, edit->before, cancellable),
                         (GDestroyNotify) ff_change_price_free);
}

/* The main thread */

static void
drop_price (FfPlanner *self)
{
  if (self->pricing != NULL)
    g_cancellable_cancel (self->pricing);
  g_clear_object (&self->pricing);
  g_clear_pointer (&self->edit, ff_change_price_free);
}

static void
priced (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FfPlanner *self = FF_PLANNER (source);
  FfChangePrice *price = g_task_propagate_pointer (G_TASK (result), NULL);

  /* A cancelled one gives nothing: another question has come. */
  if (price == NULL)
    return;
  g_clear_object (&self->pricing);
  g_clear_pointer (&self->edit, ff_change_price_free);
  self->edit = price;
  g_signal_emit (self, signals[CHANGED], 0);
}

/* After the plan is on the screen: where shots are lost this takes many plans more. */
static void
start_pricing (FfPlanner *self)
{
  g_autoptr (GTask) task = NULL;
  Edit *edit;

  drop_price (self);
  if (self->marked == NULL || self->answer == NULL || self->answer == self->marked)
    return;
  edit = g_new0 (Edit, 1);
  edit->before = ff_answer_ref (self->marked);
  edit->after = ff_answer_ref (self->answer);
  self->pricing = g_cancellable_new ();
  task = g_task_new (self, self->pricing, priced, NULL);
  g_task_set_task_data (task, edit, edit_free);
  g_task_run_in_thread (task, price_work);
}

static void start (FfPlanner *self);

/* Whoever borrowed the last answer may still look at it while it hears of the new one. */
static void
take_answer (FfPlanner *self, FfAnswer *answer)
{
  FfAnswer *last = self->answer;

  self->answer = answer;
  if (answer == NULL)
    g_clear_pointer (&self->marked, ff_answer_unref);
  else if (self->mark_next)
    ff_planner_mark (self);
  start_pricing (self);
  g_signal_emit (self, signals[CHANGED], 0);
  g_clear_pointer (&last, ff_answer_unref);
}

static void
finished (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FfPlanner *self = FF_PLANNER (source);
  FfAnswer *answer = g_task_propagate_pointer (G_TASK (result), NULL);

  self->busy = FALSE;
  if (!self->stale && self->job_id != NULL && answer != NULL)
    {
      take_answer (self, answer);
      return;
    }
  /* The question has changed meanwhile: this is the answer to an old one. */
  g_clear_pointer (&answer, ff_answer_unref);
  if (self->job_id != NULL)
    start (self);
}

static void
start (FfPlanner *self)
{
  g_autoptr (GTask) task = NULL;
  Question *question = g_new0 (Question, 1);

  g_clear_object (&self->cancellable);
  self->cancellable = g_cancellable_new ();
  task = g_task_new (self, self->cancellable, finished, NULL);
  question->data_dir = g_strdup (self->data_dir);
  question->job_id = g_strdup (self->job_id);
  ff_try_set (&question->tried, &self->tried);
  g_task_set_task_data (task, question, question_free);
  self->busy = TRUE;
  self->stale = FALSE;
  g_task_run_in_thread (task, work);
}

/* Overrides */

static void
ff_planner_finalize (GObject *object)
{
  FfPlanner *self = FF_PLANNER (object);

  g_clear_pointer (&self->answer, ff_answer_unref);
  g_clear_object (&self->cancellable);
  ff_try_clear (&self->tried);
  g_free (self->data_dir);
  g_free (self->job_id);
  G_OBJECT_CLASS (ff_planner_parent_class)->finalize (object);
}

static void
ff_planner_class_init (FfPlannerClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ff_planner_finalize;
  signals[CHANGED] = g_signal_new ("changed", FF_TYPE_PLANNER, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
ff_planner_init (FfPlanner *self)
{
  ff_try_clear (&self->tried);
}

/* Public */

FfPlanner *
ff_planner_new (const char *data_dir)
{
  FfPlanner *self = g_object_new (FF_TYPE_PLANNER, NULL);

  self->data_dir = g_strdup (data_dir);
  return self;
}

void
ff_planner_ask (FfPlanner *self, const char *job_id)
{
  ff_planner_ask_try (self, job_id, NULL);
}

void
ff_planner_ask_try (FfPlanner *self, const char *job_id, const FfTry *tried)
{
  gboolean other;

  g_return_if_fail (FF_IS_PLANNER (self));
  other = g_strcmp0 (self->job_id, job_id) != 0;
  if (other)
    {
      g_free (self->job_id);
      self->job_id = g_strdup (job_id);
    }
  ff_try_set (&self->tried, tried);
  /* Another job's plan must not stand under this job's name. */
  if (other && self->answer != NULL)
    take_answer (self, NULL);
  self->stale = TRUE;
  drop_price (self);
  if (self->busy)
    g_cancellable_cancel (self->cancellable); /* nobody waits for the old answer */
  if (!self->busy && job_id != NULL)
    start (self);
}

FfAnswer *
ff_planner_answer (FfPlanner *self)
{
  g_return_val_if_fail (FF_IS_PLANNER (self), NULL);
  return self->answer;
}

void
ff_planner_mark (FfPlanner *self)
{
  g_return_if_fail (FF_IS_PLANNER (self));
  /* While an edit is being worked out what stands is the plan before it: the next is the one. */
  drop_price (self);
  self->mark_next = self->answer == NULL || self->busy;
  if (self->mark_next)
    return;
  g_clear_pointer (&self->marked, ff_answer_unref);
  self->marked = ff_answer_ref (self->answer);
}

const FfChangePrice *
ff_planner_edit (FfPlanner *self)
{
  g_return_val_if_fail (FF_IS_PLANNER (self), NULL);
  return self->edit;
}

gboolean
ff_planner_is_busy (FfPlanner *self)
{
  return self->busy;
}
