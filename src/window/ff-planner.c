/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-planner.h"

#include <gio/gio.h>

#include "ff-records.h"

#define CHART_STEP_S 120

typedef struct {
  FfDay *day;
  FfDayPlan *plan;
  FfChartFacts *chart;
  char *why; /* the sentence that says what keeps it from being planned */
} Answer;

struct _FfPlanner {
  GObject parent_instance;

  char *data_dir;
  char *job_id;  /* of the last question; NULL: none */
  gboolean busy; /* a worker is out */
  gboolean stale; /* another question came while it was */
  Answer *answer;
};

G_DEFINE_FINAL_TYPE (FfPlanner, ff_planner, G_TYPE_OBJECT)

enum { CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

static void
answer_free (Answer *answer)
{
  g_clear_pointer (&answer->chart, ff_chart_facts_free);
  g_clear_pointer (&answer->plan, ff_day_plan_free);
  g_clear_pointer (&answer->day, ff_day_free);
  g_free (answer->why);
  g_free (answer);
}

/* The worker */

typedef struct {
  char *data_dir;
  char *job_id;
} Question;

static void
question_free (gpointer data)
{
  Question *question = data;

  g_free (question->data_dir);
  g_free (question->job_id);
  g_free (question);
}

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

/* Everything that follows from the store as it is at this moment. Never NULL. */
static Answer *
work_out (const Question *question)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStore) store = ff_records_open (question->data_dir, FF_RECORDS_READ, &error);
  Answer *answer = g_new0 (Answer, 1);

  if (store != NULL)
    answer->day = ff_day_load (store, question->job_id, &error);
  if (answer->day != NULL)
    answer->plan = ff_day_plan (answer->day, NULL, &error);
  if (answer->plan != NULL)
    answer->chart = ff_chart_facts (answer->day, CHART_STEP_S, now ());
  if (error != NULL)
    answer->why = g_strdup (error->message);
  return answer;
}

static void
work (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  g_task_return_pointer (task, work_out (task_data), (GDestroyNotify) answer_free);
}

/* The main thread */

static void start (FfPlanner *self);

static void
take_answer (FfPlanner *self, Answer *answer)
{
  g_clear_pointer (&self->answer, answer_free);
  self->answer = answer;
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
finished (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FfPlanner *self = FF_PLANNER (source);
  Answer *answer = g_task_propagate_pointer (G_TASK (result), NULL);

  self->busy = FALSE;
  if (!self->stale && self->job_id != NULL && answer != NULL)
    {
      take_answer (self, answer);
      return;
    }
  /* The question has changed meanwhile: this is the answer to an old one. */
  g_clear_pointer (&answer, answer_free);
  if (self->job_id != NULL)
    start (self);
}

static void
start (FfPlanner *self)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, finished, NULL);
  Question *question = g_new0 (Question, 1);

  question->data_dir = g_strdup (self->data_dir);
  question->job_id = g_strdup (self->job_id);
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

  g_clear_pointer (&self->answer, answer_free);
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
  gboolean other;

  g_return_if_fail (FF_IS_PLANNER (self));
  other = g_strcmp0 (self->job_id, job_id) != 0;
  if (other)
    {
      g_free (self->job_id);
      self->job_id = g_strdup (job_id);
    }
  /* Another job's plan must not stand under this job's name. */
  if (other && self->answer != NULL)
    take_answer (self, NULL);
  self->stale = TRUE;
  if (!self->busy && job_id != NULL)
    start (self);
}

const FfDay *
ff_planner_day (FfPlanner *self)
{
  return self->answer != NULL ? self->answer->day : NULL;
}

const FfDayPlan *
ff_planner_plan (FfPlanner *self)
{
  return self->answer != NULL ? self->answer->plan : NULL;
}

const FfChartFacts *
ff_planner_chart (FfPlanner *self)
{
  return self->answer != NULL ? self->answer->chart : NULL;
}

const char *
ff_planner_why (FfPlanner *self)
{
  return self->answer != NULL ? self->answer->why : NULL;
}

gboolean
ff_planner_is_busy (FfPlanner *self)
{
  return self->busy;
}
