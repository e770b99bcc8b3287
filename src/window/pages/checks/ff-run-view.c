/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-run-view-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-flow.h"
#include "ff-run-rows.h"
#include "ff-scroll.h"

#define TICK_S 15
#define SLEPT_S (4 * TICK_S) /* a tick this late: the machine was not awake */

enum { LEFT, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (FfRunView, ff_run_view, GTK_TYPE_BOX)

const FfListRun *
ff_run_view_machine (FfRunView *self)
{
  return ff_day_run_run (self->run);
}

gint64
ff_run_view_clock (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

const FfRunItem *
ff_run_view_current (FfRunView *self)
{
  int current = ff_list_run_current (ff_run_view_machine (self));

  return current >= 0 ? ff_list_run_item (ff_run_view_machine (self), current) : NULL;
}

/* What the current item asks for by itself. */
FfRunAsk
ff_run_view_asks (FfRunView *self)
{
  const FfRunItem *item = ff_run_view_current (self);

  if (self->asked != ASK_NOTHING)
    return self->asked;
  if (item == NULL || item->item == NULL || item->mark == FF_MARK_FAILED
      || ff_list_run_state (ff_run_view_machine (self)) != FF_RUN_GOING)
    return ASK_NOTHING;
  if (item->waits_for_second)
    return ASK_SECOND;
  return ff_check_item_asks (item->item) ? ASK_VALUE : ASK_NOTHING;
}

/* Showing */

static const char *
question (FfRunView *self)
{
  switch (ff_run_view_asks (self))
    {
    case ASK_VALUE:
      return _ ("Say the value");
    case ASK_SECOND:
      return _ ("Initials of who looked as well");
    case ASK_LEAVE_OUT:
      return _ ("Why is it not applicable?");
    case ASK_FAIL:
      return _ ("What is wrong?");
    case ASK_REOPEN:
      return _ ("What was done about it?");
    case ASK_KEEP:
      return _ ("Why is it kept as it is?");
    case ASK_KEEP_OTHER:
      return _ ("Initials of who agrees");
    case ASK_PAPER:
      return _ ("Time on the paper, as 16:30");
    case ASK_ABANDON:
      return _ ("Why is the list abandoned?");
    case ASK_HOLD:
      return _ ("Why is it held?");
    case ASK_SUBJECT:
    case ASK_NOTHING:
    default:
      return "";
    }
}

static char *
subject_words (FfRunView *self)
{
  GString *text = g_string_new (_ ("Press a digit. 0: it holds the flight"));

  for (guint i = 0; i < self->subjects->len; i++)
    {
      const FfItem *item
          = ff_keeper_find_item (self->keeper, g_ptr_array_index (self->subjects, i));

      if (item != NULL)
        /* Translators: a digit, and the item of the gear on which a defect is opened. */
        g_string_append_printf (text, _ (" · %u: defect of %s"), i + 1, item->label);
    }
  return g_string_free (text, FALSE);
}

void
ff_run_view_show_question (FfRunView *self)
{
  FfRunAsk ask = ff_run_view_asks (self);
  g_autofree char *subjects = ask == ASK_SUBJECT ? subject_words (self) : NULL;
  gboolean types = ask != ASK_NOTHING && ask != ASK_SUBJECT;

  gtk_label_set_label (self->ask, subjects != NULL ? subjects : question (self));
  gtk_widget_set_visible (GTK_WIDGET (self->line), ask != ASK_NOTHING);
  gtk_widget_set_visible (GTK_WIDGET (self->entry), types);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  question (self), -1);
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    gtk_widget_grab_focus (types ? GTK_WIDGET (self->entry) : GTK_WIDGET (self));
}

void
ff_run_view_say (FfRunView *self, const char *sentence)
{
  gtk_label_set_label (self->refused, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->refused), sentence != NULL && sentence[0] != '\0');
}

GTimeZone *
ff_run_view_zone (FfRunView *self)
{
  const FfPlace *place = ff_keeper_place (self->keeper);
  GTimeZone *zone = place != NULL ? ff_zone_new (place->zone, NULL) : NULL;

  return zone != NULL ? zone : g_time_zone_new_utc ();
}

/* Where the run stands as a whole: held, complete, from paper. */
void
ff_run_view_show_state (FfRunView *self)
{
  const FfListRun *run = ff_run_view_machine (self);
  g_autoptr (GTimeZone) zone = ff_run_view_zone (self);
  g_autofree char *text = NULL;
  FfRunState state = ff_list_run_state (run);

  if (state == FF_RUN_HELD)
    {
      g_autofree char *held = ff_run_words_held (run, ff_run_view_clock (), zone,
                                                 ff_keeper_initials (self->keeper), self->changed);

      text = g_strdup_printf (_ ("‖ %s Space: go on. B: another battery. A: another aircraft.\n"
                                 "Why: 1 client · 2 weather · 3 aircraft · 4 person · R: in words."),
                              held);
    }
  else if (state == FF_RUN_COMPLETE)
    text = g_strdup (_ ("■ This list is complete: what was entered, no more. The pilot decides. "
                        "Space: all lists."));
  else if (state == FF_RUN_ABANDONED)
    text = g_strdup (_ ("✕ This run was abandoned. Space: all lists."));
  else if (self->paper_at != 0)
    {
      g_autofree char *clock = ff_instant_clock ((double) self->paper_at, zone);

      text = g_strdup_printf (_ ("Entered from paper, at %s. P: another time, or none."), clock);
    }
  gtk_label_set_label (self->held, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->held), text != NULL);
}

static void
note_item (FfRunView *self)
{
  int current = ff_list_run_current (ff_run_view_machine (self));

  if (current == self->came_item)
    return;
  self->came_item = current;
  self->came_up = g_get_monotonic_time ();
}

static char *
spoken (FfRunView *self)
{
  int current = ff_list_run_current (ff_run_view_machine (self));
  g_autofree char *name = current >= 0 ? ff_run_words_name (ff_run_view_machine (self), current) : NULL;
  g_autofree char *wanted = current >= 0 ? ff_run_words_wanted (self->run, current) : NULL;

  return name != NULL ? g_strdup_printf ("%s: %s", name, wanted)
                      : g_strdup (gtk_label_get_label (self->held));
}

void
ff_run_view_show (FfRunView *self)
{
  const FfKeptRun *kept = ff_day_run_kept (self->run);
  g_autofree char *where = ff_run_words_where (ff_run_view_machine (self));
  g_autofree char *title = NULL;
  g_autofree char *name = NULL;
  g_autofree char *challenge = NULL;
  GtkWidget *now = ff_run_rows_fill (self->rows, self->keeper, self->run);

  note_item (self);
  title = kept->line > 0 ? g_strdup_printf (_ ("%s · line %d"), kept->title, kept->line)
                         : g_strdup (kept->title);
  gtk_label_set_label (self->title, title);
  gtk_label_set_label (self->where, where);
  ff_run_view_show_state (self);
  ff_run_view_show_question (self);
  name = spoken (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  name, -1);
  if (ff_list_run_current (ff_run_view_machine (self)) >= 0)
    challenge = ff_run_words_challenge (self->run, ff_list_run_current (ff_run_view_machine (self)));
  ff_run_view_say (self, challenge);
  gtk_widget_set_visible (self->keys, ff_list_run_state (ff_run_view_machine (self)) == FF_RUN_GOING);
  if (now != NULL)
    ff_scroll_to (now);
}

/* Interruptions */

void
ff_run_view_idle (FfRunView *self)
{
  FfRunEvent event;

  if (self->run == NULL || ff_list_run_state (ff_run_view_machine (self)) != FF_RUN_GOING)
    return;
  event = ff_run_view_event (self, FF_ACT_AUTO_HOLD);
  event.item = -1;
  event.at = self->touched;
  event.why = _ ("Nobody was at the keys");
  ff_run_view_act (self, &event);
}

static gboolean
on_tick (gpointer data)
{
  FfRunView *self = data;
  gint64 now = ff_run_view_clock ();
  gboolean slept = now - self->ticked > SLEPT_S || now < self->ticked;

  self->ticked = now;
  if (self->run != NULL && (slept || now - self->touched >= self->idle_s))
    ff_run_view_idle (self);
  return G_SOURCE_CONTINUE;
}

/* The timer goes while a run goes on the screen; at rest nothing happens. */
static void
set_timer (FfRunView *self, gboolean wanted)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  if (!wanted)
    return;
  self->ticked = ff_run_view_clock ();
  self->timer = g_timeout_add_seconds (TICK_S, on_tick, self);
}

/* Public */

void
ff_run_view_leave (FfRunView *self)
{
  g_signal_emit (self, signals[LEFT], 0);
}

void
ff_run_view_take (FfRunView *self, FfDayRun *run)
{
  FfListRules rules = { .idle_s = 180 };
  FfStore *store = ff_keeper_store (self->keeper);

  g_clear_pointer (&self->run, ff_day_run_free);
  self->run = run;
  self->asked = ASK_NOTHING;
  self->paper_at = 0;
  self->came_item = -2;
  self->touched = ff_run_view_clock ();
  if (store != NULL)
    ff_list_rules_load (store, &rules, NULL);
  self->idle_s = rules.idle_s;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  set_timer (self, run != NULL);
  if (run != NULL)
    ff_run_view_show (self);
}

FfDayRun *
ff_run_view_get (FfRunView *self)
{
  return self->run;
}

GtkWidget *
ff_run_view_new (FfKeeper *keeper)
{
  FfRunView *self = g_object_new (FF_TYPE_RUN_VIEW, NULL);

  self->keeper = keeper;
  return GTK_WIDGET (self);
}

/* Building */

static void
key_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfRunView *self = FF_RUN_VIEW (widget);
  const char *key = g_variant_get_string (parameter, NULL);

  if (self->run == NULL)
    return;
  self->touched = ff_run_view_clock ();
  if (g_str_equal (key, "space"))
    ff_run_view_submit (self);
  else if (g_str_equal (key, "escape"))
    ff_run_view_back (self);
  else
    ff_run_view_command (self, (guint) key[0]);
}

static void
add_key (FfFlow *flow, const char *key, const char *words)
{
  GtkWidget *button = gtk_button_new_with_label (words);

  /* The focus stays where the values are typed. */
  gtk_widget_set_focusable (button, FALSE);
  gtk_widget_set_focus_on_click (button, FALSE);
  gtk_widget_add_css_class (button, "run-key");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "run.key");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", key);
  ff_flow_append (flow, button, -1);
}

static GtkWidget *
keys_new (void)
{
  GtkWidget *flow = ff_flow_new (8, 6);

  /* Translators: a key and what it does. */
  add_key (FF_FLOW (flow), "space", _ ("Space  done"));
  add_key (FF_FLOW (flow), "n", _ ("N  not applicable"));
  add_key (FF_FLOW (flow), "f", _ ("F  failed"));
  add_key (FF_FLOW (flow), "d", _ ("D  defer"));
  add_key (FF_FLOW (flow), "h", _ ("H  hold"));
  add_key (FF_FLOW (flow), "u", _ ("U  take back"));
  add_key (FF_FLOW (flow), "p", _ ("P  from paper"));
  add_key (FF_FLOW (flow), "e", _ ("E  emergency cards"));
  add_key (FF_FLOW (flow), "escape", _ ("Esc  all lists"));
  return flow;
}

static GtkLabel *
label_new (GtkBox *box, const char *css)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, css);
  gtk_box_append (box, label);
  return GTK_LABEL (label);
}

static void
build_line (FfRunView *self)
{
  self->line = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
  self->ask = label_new (self->line, "field-label");
  self->entry = GTK_ENTRY (gtk_entry_new ());
  gtk_entry_set_max_length (self->entry, 200);
  gtk_widget_add_css_class (GTK_WIDGET (self->entry), "run-entry");
  gtk_box_append (self->line, GTK_WIDGET (self->entry));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->line));
}

static gboolean
ff_run_view_grab_focus (GtkWidget *widget)
{
  FfRunView *self = FF_RUN_VIEW (widget);

  if (gtk_widget_get_mapped (GTK_WIDGET (self->entry)))
    return gtk_widget_grab_focus (GTK_WIDGET (self->entry));
  return GTK_WIDGET_CLASS (ff_run_view_parent_class)->grab_focus (widget);
}

static void
ff_run_view_dispose (GObject *object)
{
  FfRunView *self = FF_RUN_VIEW (object);

  set_timer (self, FALSE);
  g_clear_pointer (&self->run, ff_day_run_free);
  g_clear_pointer (&self->why, g_free);
  g_clear_pointer (&self->subjects, g_ptr_array_unref);
  G_OBJECT_CLASS (ff_run_view_parent_class)->dispose (object);
}

static void
ff_run_view_class_init (FfRunViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = ff_run_view_dispose;
  widget_class->grab_focus = ff_run_view_grab_focus;
  signals[LEFT] = g_signal_new ("left", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "run.key", "s", key_action);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
ff_run_view_init (FfRunView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkBox *body = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));

  self->subjects = g_ptr_array_new_with_free_func (g_free);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 8);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "run");
  self->title = label_new (GTK_BOX (self), "heading-large");
  self->where = label_new (GTK_BOX (self), "run-where");
  self->held = label_new (GTK_BOX (self), "run-held");
  self->scroller = GTK_SCROLLED_WINDOW (gtk_scrolled_window_new ());
  gtk_scrolled_window_set_policy (self->scroller, GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_vexpand (GTK_WIDGET (self->scroller), TRUE);
  self->rows = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 2));
  self->keys = keys_new ();
  gtk_widget_set_margin_top (self->keys, 14);
  gtk_box_append (body, GTK_WIDGET (self->rows));
  gtk_box_append (body, self->keys);
  gtk_scrolled_window_set_child (self->scroller, GTK_WIDGET (body));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->scroller));
  self->refused = label_new (GTK_BOX (self), "run-refused");
  build_line (self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (ff_run_view_key), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}
