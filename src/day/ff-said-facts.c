/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Values entered in runs, as facts of the day. */
#include "ff-day-checks.h"

static void
said_free (gpointer data)
{
  FfSaidFact *fact = data;

  g_free (fact->list);
  g_free (fact->what);
  g_free (fact->said);
  g_free (fact->unit);
  g_free (fact->by);
  g_free (fact);
}

static void
add_said (GPtrArray *facts, const FfDayRun *run, const FfKeptEvent *event)
{
  const FfListRun *machine = ff_day_run_run (run);
  const FfCheckItem *item;
  FfSaidFact *fact;

  if (event->act != FF_ACT_SAY || event->item >= ff_list_run_n_items (machine)
      || (item = ff_list_run_item (machine, event->item)->item) == NULL)
    return;
  fact = g_new0 (FfSaidFact, 1);
  fact->at = event->at;
  fact->list = g_strdup (ff_day_run_kept (run)->title);
  fact->what = g_strdup (item->challenge);
  fact->said = g_strdup (event->said);
  fact->unit = g_strdup (item->value.unit != NULL ? item->value.unit : "");
  fact->by = g_strdup (event->by);
  if (!ff_said_within (&item->value, event->said))
    fact->challenge = FF_CHALLENGE_OUTSIDE;
  else if (item->fact != FF_FACT_NONE && event->expected[0] != '\0'
           && !ff_said_agrees (event->expected, event->said))
    fact->challenge = FF_CHALLENGE_DIFFERS;
  fact->from_paper = event->from_paper;
  g_ptr_array_add (facts, fact);
}

static gint
compare_at (gconstpointer a, gconstpointer b)
{
  gint64 first = (*(FfSaidFact *const *) a)->at, second = (*(FfSaidFact *const *) b)->at;

  return (first > second) - (first < second);
}

GPtrArray *
ff_day_said (FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) facts = g_ptr_array_new_with_free_func (said_free);
  g_autoptr (GPtrArray) runs = ff_kept_runs_load (store, job_id, error);

  for (guint i = 0; runs != NULL && i < runs->len; i++)
    {
      const FfKeptRun *kept = g_ptr_array_index (runs, i);
      g_autoptr (FfDayRun) run = ff_day_run_open (store, kept->id, error);
      g_autoptr (GPtrArray) events
          = run != NULL ? ff_kept_events_load (store, kept->id, error) : NULL;

      if (events == NULL)
        return NULL;
      for (guint e = 0; e < events->len; e++)
        add_said (facts, run, g_ptr_array_index (events, e));
    }
  if (runs == NULL)
    return NULL;
  /* Stable: events of one second keep their order. */
  g_ptr_array_sort (facts, compare_at);
  return g_steal_pointer (&facts);
}
