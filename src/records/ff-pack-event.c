/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pack-event.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-rows.h"

static const FfName stages[] = {
  /* Translators: stages of counting the gear: out of the store, in where it was flown, in at base. */
  [FF_PACK_OUT] = { "out", N_ ("out") },
  [FF_PACK_GROUND] = { "ground", N_ ("in on the ground") },
  [FF_PACK_BASE] = { "base", N_ ("in at base") },
};
const FfNames ff_names_pack_stage = { "stage", stages, G_N_ELEMENTS (stages) };

static const FfName marks[] = {
  [FF_PACK_OPEN] = { "open", N_ ("open") },
  [FF_PACK_DONE] = { "done", N_ ("done") },
  [FF_PACK_NOT_TAKEN] = { "not-taken", N_ ("not taken") },
  [FF_PACK_MISSING] = { "missing", N_ ("missing") },
};
const FfNames ff_names_pack_mark = { "mark", marks, G_N_ELEMENTS (marks) };

const char *
ff_pack_mark_shape (FfPackMark mark)
{
  static const char *const shapes[] = {
    [FF_PACK_OPEN] = "□", [FF_PACK_DONE] = "■", [FF_PACK_NOT_TAKEN] = "–", [FF_PACK_MISSING] = "✕",
  };

  return shapes[mark];
}

static const FfField event_fields[] = {
  FF_ID (FfPackEvent, id, "id", N_ ("id"), TRUE),
  FF_ID (FfPackEvent, job_id, "job_id", N_ ("job"), TRUE),
  FF_ID (FfPackEvent, item_id, "item_id", N_ ("item"), TRUE),
  FF_INSTANT (FfPackEvent, at, N_ ("when it was counted")),
  FF_NAME (FfPackEvent, stage, N_ ("stage"), &ff_names_pack_stage),
  FF_NAME (FfPackEvent, mark, N_ ("mark"), &ff_names_pack_mark),
  FF_TEXT (FfPackEvent, case_label, N_ ("case"), FALSE, 24),
  FF_TEXT (FfPackEvent, condition, N_ ("condition or reason"), FALSE, 500),
  FF_TEXT (FfPackEvent, entered_by, N_ ("initials of who entered it"), FALSE, 12),
};
const FfFields ff_pack_event_fields = FF_FIELDS ("pack_event", event_fields);

static gpointer
event_blank (void)
{
  FfPackEvent *event = g_new0 (FfPackEvent, 1);

  ff_fields_init (&ff_pack_event_fields, event);
  return event;
}

FfPackEvent *
ff_pack_event_new (const char *job_id, const char *item_id)
{
  FfPackEvent *event = event_blank ();

  g_free (event->id);
  event->id = ff_records_new_id ();
  ff_set_text (&event->job_id, job_id);
  ff_set_text (&event->item_id, item_id);
  return event;
}

void
ff_pack_event_free (FfPackEvent *event)
{
  if (event == NULL)
    return;
  ff_fields_clear (&ff_pack_event_fields, event);
  g_free (event);
}

gboolean
ff_pack_event_check (const FfPackEvent *event, GError **error)
{
  const char *whose = _ ("counting an item"), *what = NULL;

  if (!ff_fields_check (&ff_pack_event_fields, event, whose, error))
    return FALSE;
  if (event->mark == FF_PACK_NOT_TAKEN && event->stage != FF_PACK_OUT)
    what = _ ("only at the out-check is something not taken; at an in-check it is missing");
  else if (event->mark == FF_PACK_NOT_TAKEN && *event->condition == '\0')
    what = _ ("what is not taken needs a reason");
  else if (event->mark == FF_PACK_MISSING && event->stage == FF_PACK_OUT)
    what = _ ("at the out-check nothing is missing yet: it is not taken, with a reason");
  if (what != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return what == NULL;
}

gboolean
ff_pack_event_append (FfStore *store, const FfPackEvent *event, GError **error)
{
  return ff_pack_event_check (event, error)
         && ff_rows_append (store, &ff_pack_event_fields, event, error);
}

GPtrArray *
ff_pack_events_load (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_pack_event_fields, "WHERE job_id = ?1 ORDER BY sequence", job_id,
                       event_blank, (GDestroyNotify) ff_pack_event_free, error);
}

GPtrArray *
ff_pack_events_elsewhere (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_pack_event_fields,
                       "WHERE job_id <> ?1 AND sequence IN"
                       " (SELECT max (sequence) FROM pack_event GROUP BY item_id)"
                       " ORDER BY sequence",
                       job_id, event_blank, (GDestroyNotify) ff_pack_event_free, error);
}
