/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The lists of the day: typed events, which stand by their time, and the hazards of the place. */
#include "ff-day-page-private.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-day-values.h"

static FfJob *
dup_job (FfDayPage *self)
{
  FfKeeper *keeper = ff_day_page_keeper (self);

  return ff_keeper_dup_job (keeper, ff_keeper_job (keeper)->id);
}

static FfPlace *
dup_place (FfDayPage *self)
{
  FfKeeper *keeper = ff_day_page_keeper (self);

  return ff_keeper_dup_place (keeper, ff_keeper_job (keeper)->place_id);
}

static char *
job_sentence (const FfJob *job, const FfField *field, const GError *error)
{
  g_autofree char *whose = g_strdup_printf (_ ("job “%s”"), job->title);

  return g_strdup (ff_day_refusal (whose, field, error->message));
}

static char *
place_sentence (const FfPlace *place, const FfField *field, const GError *error)
{
  g_autofree char *whose = g_strdup_printf (_ ("place “%s”"), place->name);

  return g_strdup (ff_day_refusal (whose, field, error->message));
}

/* ---- Events ---- */

/* Where an event will stand when it has this time: after those that are earlier, and after those
 * before it that have the same. */
static guint
place_in_order (GPtrArray *events, guint row, int clock)
{
  guint at = 0;

  for (guint i = 0; i < events->len; i++)
    {
      const FfDayEvent *event = g_ptr_array_index (events, i);

      at += i != row && (event->clock < clock || (event->clock == clock && i < row));
    }
  return at;
}

/* What undo says must not change with each letter that is typed: the other part names the event. */
static char *
name_event_edit (const FfDayEvent *event, guint part)
{
  g_autofree char *clock = ff_clock_format (event->clock);

  return part == 0 ? g_strdup_printf (_ ("Time of “%s” changed"), event->text)
                   : g_strdup_printf (_ ("Event at %s changed"), clock);
}

/* The row goes to its new place, with the cursor in it, before the keeper tells the new order. */
static gboolean
save_event (FfDayPage *self, FfJob *job, guint row, guint part, GError **error)
{
  const FfDayEvent *event = g_ptr_array_index (job->events, row);
  const guint to = place_in_order (job->events, row, event->clock);
  g_autofree char *what = name_event_edit (event, part);

  ff_pair_list_move (self->events, row, to);
  if (ff_keeper_save_job (ff_day_page_keeper (self), job, what, error))
    return TRUE;
  ff_pair_list_move (self->events, to, row);
  return FALSE;
}

void
ff_day_rows_event_typed (FfDayPage *self, guint row, guint part, const char *text)
{
  const FfField *field = ff_fields_find (&ff_day_event_fields, part == 0 ? "clock" : "text");
  g_autoptr (FfJob) job = dup_job (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *sentence = NULL;
  FfDayEvent *event;
  guint at = row;

  if (job == NULL || row >= job->events->len)
    return;
  event = g_ptr_array_index (job->events, row);
  if (ff_day_value_set (field, event, 1, text, &error) && save_event (self, job, row, part, &error))
    at = place_in_order (job->events, row, event->clock);
  else
    sentence = job_sentence (job, field, error);
  ff_pair_list_complain (self->events, at, part, sentence);
}

void
ff_day_rows_event_removed (FfDayPage *self, guint row)
{
  g_autoptr (FfJob) job = dup_job (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *what = NULL;

  if (job == NULL || row >= job->events->len)
    return;
  what = g_strdup_printf (_ ("Event “%s” deleted"),
                          ((FfDayEvent *) g_ptr_array_index (job->events, row))->text);
  g_ptr_array_remove_index (job->events, row);
  ff_pair_list_focus_add (self->events);
  if (ff_keeper_save_job (ff_day_page_keeper (self), job, what, &error))
    ff_page_say_last_change (FF_PAGE (self));
  ff_page_say_error (FF_PAGE (self), &error);
}

void
ff_day_rows_event_added (FfDayPage *self, const char *text)
{
  g_autoptr (FfJob) job = dup_job (self);
  FfDayEvent *event = ff_day_event_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *sentence = NULL;
  g_autofree char *what = NULL;

  g_clear_pointer (&event->text, g_free);
  if (job == NULL || !ff_day_event_parse (text, &event->clock, &event->text, &error))
    {
      ff_day_event_free (event);
      ff_pair_list_answer (self->events, error != NULL ? error->message : NULL);
      return;
    }
  what = g_strdup_printf (_ ("Event “%s” added"), event->text);
  g_ptr_array_add (job->events, event);
  if (!ff_keeper_save_job (ff_day_page_keeper (self), job, what, &error))
    sentence = job_sentence (job, ff_fields_find (&ff_day_event_fields, "text"), error);
  ff_pair_list_answer (self->events, sentence);
}

static void
show_events (FfDayPage *self, const FfJob *job)
{
  g_autoptr (GPtrArray) clocks = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) texts = g_ptr_array_new ();

  for (guint i = 0; i < job->events->len; i++)
    {
      const FfDayEvent *event = g_ptr_array_index (job->events, i);

      g_ptr_array_add (clocks, ff_clock_format (event->clock));
      g_ptr_array_add (texts, event->text);
    }
  ff_pair_list_show (self->events, job->events->len, (const char *const *) clocks->pdata,
                     (const char *const *) texts->pdata);
}

/* ---- Hazards ---- */

static char *
name_hazard_edit (const FfHazard *hazard, guint row, guint part)
{
  return part == 0 ? g_strdup_printf (_ ("Hazard %u changed"), row + 1)
                   : g_strdup_printf (_ ("Measure for “%s” changed"), hazard->what);
}

void
ff_day_rows_hazard_typed (FfDayPage *self, guint row, guint part, const char *text)
{
  const FfField *field = ff_fields_find (&ff_hazard_fields, part == 0 ? "what" : "measure");
  g_autoptr (FfPlace) place = dup_place (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *sentence = NULL;
  g_autofree char *what = NULL;
  FfHazard *hazard;

  if (place == NULL || row >= place->hazards->len)
    return;
  hazard = g_ptr_array_index (place->hazards, row);
  what = name_hazard_edit (hazard, row, part);
  if (!ff_day_value_set (field, hazard, 1, text, &error)
      || !ff_keeper_save_place (ff_day_page_keeper (self), place, what, &error))
    sentence = place_sentence (place, field, error);
  ff_pair_list_complain (self->hazards, row, part, sentence);
}

void
ff_day_rows_hazard_removed (FfDayPage *self, guint row)
{
  g_autoptr (FfPlace) place = dup_place (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *what = NULL;

  if (place == NULL || row >= place->hazards->len)
    return;
  what = g_strdup_printf (_ ("Hazard “%s” deleted"),
                          ((FfHazard *) g_ptr_array_index (place->hazards, row))->what);
  g_ptr_array_remove_index (place->hazards, row);
  ff_pair_list_focus_add (self->hazards);
  if (ff_keeper_save_place (ff_day_page_keeper (self), place, what, &error))
    ff_page_say_last_change (FF_PAGE (self));
  ff_page_say_error (FF_PAGE (self), &error);
}

/* The measure is asked for next: a hazard without one is only half a line. */
void
ff_day_rows_hazard_added (FfDayPage *self, const char *text)
{
  g_autoptr (FfPlace) place = dup_place (self);
  FfHazard *hazard = ff_hazard_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *sentence = NULL;
  g_autofree char *what = g_strdup_printf (_ ("Hazard “%s” added"), text);

  ff_set_text (&hazard->what, text);
  if (place == NULL)
    {
      ff_hazard_free (hazard);
      return;
    }
  g_ptr_array_add (place->hazards, hazard);
  if (!ff_keeper_save_place (ff_day_page_keeper (self), place, what, &error))
    sentence = place_sentence (place, ff_fields_find (&ff_hazard_fields, "what"), error);
  ff_pair_list_answer (self->hazards, sentence);
  if (sentence == NULL)
    ff_pair_list_focus_row (self->hazards, place->hazards->len - 1, 1);
}

static void
show_hazards (FfDayPage *self, const FfPlace *place)
{
  g_autoptr (GPtrArray) whats = g_ptr_array_new ();
  g_autoptr (GPtrArray) measures = g_ptr_array_new ();

  for (guint i = 0; place != NULL && i < place->hazards->len; i++)
    {
      const FfHazard *hazard = g_ptr_array_index (place->hazards, i);

      g_ptr_array_add (whats, hazard->what);
      g_ptr_array_add (measures, hazard->measure);
    }
  ff_pair_list_show (self->hazards, whats->len, (const char *const *) whats->pdata,
                     (const char *const *) measures->pdata);
}

void
ff_day_rows_refresh (FfDayPage *self)
{
  FfKeeper *keeper = ff_day_page_keeper (self);

  show_events (self, ff_keeper_job (keeper));
  show_hazards (self, ff_keeper_place (keeper));
}
