/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-run-view-private.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"

/* Events */

FfRunEvent
ff_run_view_event (FfRunView *self, FfAct act)
{
  gint64 ms = (g_get_monotonic_time () - self->came_up) / 1000;

  return (FfRunEvent) {
    .act = act, .item = ff_list_run_current (ff_run_view_machine (self)),
    .at = self->paper_at != 0 ? self->paper_at : ff_run_view_clock (),
    .after_ms = self->paper_at != 0 ? -1 : (int) MIN (ms, 86400000),
    .from_paper = self->paper_at != 0,
  };
}

/* The question is answered, or what was answered is refused and stands there still. */
gboolean
ff_run_view_act (FfRunView *self, FfRunEvent *event)
{
  g_autoptr (GError) error = NULL;

  if (!ff_keeper_run_act (self->keeper, self->run, event, &error))
    {
      ff_run_view_say (self, error->message);
      gtk_widget_error_bell (GTK_WIDGET (self));
      return FALSE;
    }
  self->asked = ASK_NOTHING;
  /* What was said to have changed counts until the list goes on. */
  if (event->act != FF_ACT_HOLD)
    self->changed = 0;
  self->came_item = -2;
  g_clear_pointer (&self->why, g_free);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  ff_run_view_show (self);
  return TRUE;
}

static void
act_now (FfRunView *self, FfAct what)
{
  FfRunEvent event = ff_run_view_event (self, what);

  if (what == FF_ACT_HOLD || what == FF_ACT_AUTO_HOLD)
    event.item = -1;
  ff_run_view_act (self, &event);
}

static void
ask_for (FfRunView *self, FfRunAsk ask)
{
  self->asked = ask;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  ff_run_view_say (self, NULL);
  ff_run_view_show_question (self);
}

static void
resume (FfRunView *self)
{
  FfRunEvent event = ff_run_view_event (self, FF_ACT_RESUME);

  event.item = -1;
  event.changed = self->changed;
  ff_run_view_act (self, &event);
}

static void
take_back (FfRunView *self)
{
  FfRunEvent event = ff_run_view_event (self, FF_ACT_REOPEN);
  const FfRunItem *item = ff_run_view_current (self);

  if (item == NULL || !item->waits_for_second)
    event.item = ff_list_run_last_completed (ff_run_view_machine (self));
  ff_run_view_act (self, &event);
}

/* What the failure can be a defect of: the aircraft and what goes with the next flight. */
static void
gather_subjects (FfRunView *self)
{
  static const FfKind kinds[] = { FF_KIND_AIRCRAFT, FF_KIND_PROPELLERS, FF_KIND_BATTERY,
                                  FF_KIND_CONTROLLER, FF_KIND_FILTER };
  const FfJob *job = ff_keeper_job (self->keeper);
  GPtrArray *items = ff_keeper_items (self->keeper);

  g_ptr_array_set_size (self->subjects, 0);
  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    for (guint i = 0; i < items->len && self->subjects->len < 9; i++)
      {
        const FfItem *item = g_ptr_array_index (items, i);

        if (item->kind == kinds[k] && item->state == FF_STATE_SERVICEABLE
            && (job->item_ids->len == 0 || g_str_equal (item->id, job->aircraft_id)
                || g_ptr_array_find_with_equal_func (job->item_ids, item->id, g_str_equal, NULL)))
          g_ptr_array_add (self->subjects, g_strdup (item->id));
      }
}

static gboolean
choose_subject (FfRunView *self, guint digit)
{
  FfRunEvent event = ff_run_view_event (self, FF_ACT_FAIL);

  if (digit > self->subjects->len)
    return TRUE;
  event.why = self->why;
  event.subject = digit > 0 ? g_ptr_array_index (self->subjects, digit - 1) : "";
  ff_run_view_act (self, &event);
  return TRUE;
}

static void
keep_words (FfRunView *self, FfRunAsk next, const char *text)
{
  if (text[0] == '\0')
    {
      ff_run_view_say (self, _ ("A reason is needed."));
      return;
    }
  g_free (self->why);
  self->why = g_strdup (text);
  if (next == ASK_SUBJECT)
    gather_subjects (self);
  ask_for (self, next);
}

static void
take_paper (FfRunView *self, const char *text)
{
  g_autoptr (GTimeZone) zone = ff_run_view_zone (self);
  g_autoptr (GError) error = NULL;
  int minutes;

  if (text[0] == '\0')
    self->paper_at = 0;
  else if (!ff_clock_parse (text, &minutes, &error)
           || !ff_instant_from_clock (ff_instant_date (ff_run_view_clock (), zone), minutes, zone,
                                      &self->paper_at, &error))
    {
      ff_run_view_say (self, error->message);
      return;
    }
  self->asked = ASK_NOTHING;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  ff_run_view_show (self);
}

static void
send_words (FfRunView *self, FfAct what, const char *text)
{
  FfRunEvent event = ff_run_view_event (self, what);

  event.why = text;
  if (what == FF_ACT_ABANDON || what == FF_ACT_HOLD)
    event.item = -1;
  ff_run_view_act (self, &event);
}

static void
send_keep (FfRunView *self, const char *other)
{
  FfRunEvent event = ff_run_view_event (self, FF_ACT_ACCEPT);

  event.why = self->why;
  event.other = other;
  ff_run_view_act (self, &event);
}

static void
submit_nothing (FfRunView *self)
{
  const FfRunItem *item = ff_run_view_current (self);

  switch (ff_list_run_state (ff_run_view_machine (self)))
    {
    case FF_RUN_HELD:
      resume (self);
      break;
    case FF_RUN_GOING:
      if (item != NULL && item->mark == FF_MARK_FAILED)
        ask_for (self, ASK_REOPEN);
      else
        act_now (self, FF_ACT_DONE);
      break;
    case FF_RUN_NOT_STARTED:
    case FF_RUN_COMPLETE:
    case FF_RUN_ABANDONED:
    default:
      ff_run_view_leave (self);
      break;
    }
}

void
ff_run_view_submit (FfRunView *self)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));
  const FfRunItem *item = ff_run_view_current (self);
  FfRunEvent event = ff_run_view_event (self, FF_ACT_SAY);

  switch (ff_run_view_asks (self))
    {
    case ASK_VALUE:
      event.said = text;
      ff_run_view_act (self, &event);
      break;
    case ASK_SECOND:
      event.act = FF_ACT_SECOND;
      event.by = text;
      ff_run_view_act (self, &event);
      break;
    case ASK_LEAVE_OUT:
      send_words (self, FF_ACT_NOT_APPLICABLE, text);
      break;
    case ASK_FAIL:
      keep_words (self, ASK_SUBJECT, text);
      break;
    case ASK_REOPEN:
      send_words (self, FF_ACT_REOPEN, text);
      break;
    case ASK_KEEP:
      if (item->item->critical)
        keep_words (self, ASK_KEEP_OTHER, text);
      else
        send_words (self, FF_ACT_ACCEPT, text);
      break;
    case ASK_KEEP_OTHER:
      send_keep (self, text);
      break;
    case ASK_PAPER:
      take_paper (self, text);
      break;
    case ASK_ABANDON:
      send_words (self, FF_ACT_ABANDON, text);
      break;
    case ASK_HOLD:
      send_words (self, FF_ACT_HOLD, text);
      break;
    case ASK_SUBJECT:
      break;
    case ASK_NOTHING:
    default:
      submit_nothing (self);
      break;
    }
}

/* Keys */

/* Values that are said in letters; all others leave the letters to the commands. */
static gboolean
takes_letters (FfRunView *self)
{
  const FfRunItem *item = ff_run_view_current (self);
  FfRunAsk ask = ff_run_view_asks (self);

  if (ask == ASK_NOTHING || ask == ASK_SUBJECT || ask == ASK_PAPER)
    return FALSE;
  if (ask != ASK_VALUE)
    return TRUE;
  return item->item->value.sort == FF_VALUE_WORDS || item->item->fact == FF_FACT_ABORT_WORD
         || item->item->fact == FF_FACT_AIRCRAFT
         || gtk_entry_get_text_length (self->entry) > 0;
}

/* The commonest reasons have a digit: gloves do not type. */
static gboolean
hold_reason (FfRunView *self, guint digit)
{
  /* Translators: why a checklist is held. */
  static const char *const reasons[] = { N_ ("client"), N_ ("weather"), N_ ("aircraft"),
                                         N_ ("person") };

  if (digit < 1 || digit > G_N_ELEMENTS (reasons))
    return FALSE;
  send_words (self, FF_ACT_HOLD, _ (reasons[digit - 1]));
  return TRUE;
}

static gboolean
command_while_held (FfRunView *self, guint letter)
{
  if (letter >= GDK_KEY_0 && letter <= GDK_KEY_9)
    return hold_reason (self, letter - GDK_KEY_0);
  if (letter >= GDK_KEY_KP_0 && letter <= GDK_KEY_KP_9)
    return hold_reason (self, letter - GDK_KEY_KP_0);
  if (letter == GDK_KEY_r)
    ask_for (self, ASK_HOLD);
  else if (letter == GDK_KEY_b)
    self->changed ^= FF_ANOTHER_BATTERY;
  else if (letter == GDK_KEY_a)
    self->changed ^= FF_ANOTHER_AIRCRAFT;
  else if (letter == GDK_KEY_x)
    ask_for (self, ASK_ABANDON);
  else
    return FALSE;
  ff_run_view_show_state (self);
  return TRUE;
}

gboolean
ff_run_view_command (FfRunView *self, guint letter)
{
  const FfRunItem *item = ff_run_view_current (self);

  if (letter == GDK_KEY_e)
    return gtk_widget_activate_action (GTK_WIDGET (self), "win.cards", NULL);
  if (ff_list_run_state (ff_run_view_machine (self)) == FF_RUN_HELD)
    return command_while_held (self, letter);
  if (ff_list_run_state (ff_run_view_machine (self)) != FF_RUN_GOING)
    return FALSE;
  if (letter == GDK_KEY_n)
    ask_for (self, ASK_LEAVE_OUT);
  else if (letter == GDK_KEY_f)
    ask_for (self, ASK_FAIL);
  else if (letter == GDK_KEY_d)
    act_now (self, FF_ACT_DEFER);
  else if (letter == GDK_KEY_h)
    act_now (self, FF_ACT_HOLD);
  else if (letter == GDK_KEY_u)
    take_back (self);
  else if (letter == GDK_KEY_p)
    ask_for (self, ASK_PAPER);
  else if (letter == GDK_KEY_x)
    ask_for (self, ASK_ABANDON);
  else if (letter == GDK_KEY_k && item != NULL && item->challenge != FF_CHALLENGE_NONE)
    ask_for (self, ASK_KEEP);
  else
    return FALSE;
  return TRUE;
}

gboolean
ff_run_view_back (FfRunView *self)
{
  if (self->asked == ASK_NOTHING)
    {
      ff_run_view_leave (self);
      return TRUE;
    }
  self->asked = ASK_NOTHING;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  ff_run_view_show (self);
  return TRUE;
}

static void
scroll (FfRunView *self, double by)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);

  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + by);
}

static gboolean
plain_key (FfRunView *self, guint key)
{
  switch (key)
    {
    case GDK_KEY_Escape:
      return ff_run_view_back (self);
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      ff_run_view_submit (self);
      return TRUE;
    case GDK_KEY_space:
    case GDK_KEY_KP_Space:
      /* Between the words of a reason it is a blank. */
      if (ff_run_view_asks (self) > ASK_VALUE || (ff_run_view_asks (self) == ASK_VALUE
                                          && ff_run_view_current (self)->item->value.sort == FF_VALUE_WORDS))
        return FALSE;
      ff_run_view_submit (self);
      return TRUE;
    case GDK_KEY_Up:
    case GDK_KEY_Down:
      scroll (self, key == GDK_KEY_Up ? -80 : 80);
      return TRUE;
    case GDK_KEY_BackSpace:
      if (self->asked != ASK_NOTHING || gtk_entry_get_text_length (self->entry) > 0)
        return FALSE;
      return ff_run_view_command (self, GDK_KEY_u);
    default:
      return FALSE;
    }
}

gboolean
ff_run_view_key (FfRunView *self, guint key, guint code, GdkModifierType state)
{
  guint letter = gdk_keyval_to_lower (key);

  if (self->run == NULL || (state & GDK_CONTROL_MASK) != 0)
    return FALSE;
  self->touched = ff_run_view_clock ();
  if ((state & GDK_ALT_MASK) != 0)
    return ff_run_view_command (self, letter);
  if (plain_key (self, key))
    return TRUE;
  if (ff_run_view_asks (self) == ASK_SUBJECT && letter >= GDK_KEY_0 && letter <= GDK_KEY_9)
    return choose_subject (self, letter - GDK_KEY_0);
  return !takes_letters (self) && ff_run_view_command (self, letter);
}
