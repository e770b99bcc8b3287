/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shot-editor.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-entry.h"
#include "ff-flow.h"
#include "ff-note.h"
#include "ff-pick.h"
#include "ff-shot-form.h"

struct _FfShotEditor {
  AdwBin parent_instance;

  FfKeeper *keeper;
  char *id;
  gboolean showing; /* ticks and picks change by our own hand */

  GtkBox *groups;
  FfEntry *texts[FF_N_SHOT_TEXTS]; /* NULL for the note */
  FfNote *note;
  FfPick *intent, *view;
  GtkCheckButton *fixed, *wanted, *must, *auto_iso;
};

G_DEFINE_FINAL_TYPE (FfShotEditor, ff_shot_editor, ADW_TYPE_BIN)

static const char *const headings[FF_N_SHOT_GROUPS] = {
  [FF_SHOT_GROUP_WHAT] = NULL,
  [FF_SHOT_GROUP_WHEN] = N_ ("When"),
  [FF_SHOT_GROUP_PICTURE] = N_ ("Picture"),
  [FF_SHOT_GROUP_FLIGHT] = N_ ("Camera and flight"),
  [FF_SHOT_GROUP_LIGHT] = N_ ("Subject"),
};

/* Storing */

/* A refusal stands beside the field where there is one, else over the window. */
static void
store (FfShotEditor *self, const FfShot *shot, const char *what, FfEntry *entry)
{
  g_autoptr (GError) error = NULL;

  if (ff_keeper_save_shot (self->keeper, shot, what, &error))
    return;
  if (entry != NULL)
    ff_entry_complain (entry, error->message);
  else
    gtk_widget_activate_action (GTK_WIDGET (self), "win.say", "(sb)", error->message, FALSE);
}

static char *
words_of_change (const FfShot *shot, const char *field)
{
  /* Translators: what undo takes back: the label of a shot, the name of a field. */
  return g_strdup_printf (_ ("Shot %s: %s changed"), shot->label, field);
}

/* Callbacks */

/* The note is stored whatever else is wrong, and so is left out. */
static void
collect (FfShotEditor *self, const char *texts[FF_N_SHOT_TEXTS])
{
  for (int i = 0; i < FF_N_SHOT_TEXTS; i++)
    texts[i] = self->texts[i] != NULL && gtk_widget_get_visible (GTK_WIDGET (self->texts[i]))
                   ? ff_entry_get_text (self->texts[i])
                   : NULL;
}

static void
on_typed (FfShotEditor *self, const char *text, FfEntry *entry)
{
  FfShotText which = (FfShotText) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (entry), "which"));
  g_autoptr (FfShot) shot = ff_keeper_dup_shot (self->keeper, self->id);
  const char *texts[FF_N_SHOT_TEXTS];
  g_autofree char *what = NULL;
  g_autofree char *why = NULL;
  gboolean good;

  if (shot == NULL)
    return;
  what = ff_shot_text_change (shot, which);
  collect (self, texts);
  good = ff_shot_form_take (shot, texts, which, ff_keeper_shots (self->keeper), &why);
  ff_entry_complain (entry, why);
  if (good)
    store (self, shot, what, entry);
}

static void
on_note (FfShotEditor *self, const char *text)
{
  g_autoptr (FfShot) shot = ff_keeper_dup_shot (self->keeper, self->id);
  g_autofree char *what = NULL;
  g_autofree char *why = NULL;

  if (shot == NULL)
    return;
  what = ff_shot_text_change (shot, FF_SHOT_NOTE);
  if (ff_shot_text_put (shot, FF_SHOT_NOTE, text, ff_keeper_shots (self->keeper), &why))
    store (self, shot, what, NULL);
  ff_note_complain (self->note, why);
}

static void
on_intent (FfShotEditor *self, int intent)
{
  g_autoptr (FfShot) shot = ff_keeper_dup_shot (self->keeper, self->id);
  const FfJob *job = ff_keeper_job (self->keeper);
  g_autofree char *what = NULL;

  if (shot == NULL || job == NULL)
    return;
  ff_shot_form_set_intent (shot, (FfIntent) intent, job->delivery_fps);
  what = words_of_change (shot, _ ("intent"));
  store (self, shot, what, NULL);
}

static void
on_view (FfShotEditor *self, int view)
{
  g_autoptr (FfShot) shot = ff_keeper_dup_shot (self->keeper, self->id);
  g_autofree char *what = NULL;

  if (shot == NULL)
    return;
  shot->view = (FfView) view;
  what = words_of_change (shot, _ ("view"));
  store (self, shot, what, NULL);
}

static const char *
words_of_tick (FfShotEditor *self, GtkCheckButton *tick)
{
  if (tick == self->fixed)
    return _ ("fixed time");
  if (tick == self->wanted)
    return _ ("most wanted");
  return tick == self->must ? _ ("must fly") : _ ("auto ISO");
}

static void
on_ticked (FfShotEditor *self, GtkCheckButton *tick)
{
  g_autoptr (FfShot) shot = NULL;
  g_autofree char *what = NULL;

  if (self->showing)
    return;
  shot = ff_keeper_dup_shot (self->keeper, self->id);
  if (shot == NULL)
    return;
  shot->fixed_time = gtk_check_button_get_active (self->fixed);
  shot->most_wanted = gtk_check_button_get_active (self->wanted);
  shot->must_fly = gtk_check_button_get_active (self->must);
  shot->auto_iso = gtk_check_button_get_active (self->auto_iso);
  what = words_of_change (shot, words_of_tick (self, tick));
  store (self, shot, what, NULL);
}

/* Building the form from its table */

static GtkWidget *
add_group (FfShotEditor *self, FfShotGroup group)
{
  GtkWidget *flow = ff_flow_new (12, 10);
  GtkWidget *heading;

  /* Over the first ones stand the label and the title themselves. */
  if (headings[group] == NULL)
    {
      gtk_box_append (self->groups, flow);
      return flow;
    }
  heading = gtk_label_new (_ (headings[group]));
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_widget_add_css_class (heading, "group-heading");
  gtk_box_append (self->groups, heading);
  gtk_box_append (self->groups, flow);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (flow), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  heading, NULL, -1);
  return flow;
}

static void
add_text (FfShotEditor *self, GtkWidget *flow, FfShotText which)
{
  const FfShotTextInfo *info = ff_shot_text_info (which);
  GtkWidget *entry
      = ff_entry_new (_ (info->label), info->unit[0] != '\0' ? _ (info->unit) : NULL);

  self->texts[which] = FF_ENTRY (entry);
  gtk_widget_set_hexpand (entry, TRUE);
  g_object_set_data (G_OBJECT (entry), "which", GINT_TO_POINTER (which));
  g_signal_connect_object (entry, "typed", G_CALLBACK (on_typed), self, G_CONNECT_SWAPPED);
  ff_flow_append (FF_FLOW (flow), entry, info->basis);
}

static FfPick *
add_pick (FfShotEditor *self,
          GtkWidget *flow,
          const char *label,
          const FfNames *names,
          GCallback picked)
{
  GtkWidget *pick = ff_pick_new (label, names);

  gtk_widget_set_hexpand (pick, TRUE);
  g_signal_connect_object (pick, "picked", picked, self, G_CONNECT_SWAPPED);
  ff_flow_append (FF_FLOW (flow), pick, 150);
  return FF_PICK (pick);
}

static GtkCheckButton *
add_tick (FfShotEditor *self, GtkWidget *flow, const char *label, const char *meaning)
{
  GtkWidget *tick = gtk_check_button_new_with_mnemonic (label);

  gtk_accessible_update_property (GTK_ACCESSIBLE (tick), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  meaning, -1);
  gtk_widget_set_tooltip_text (tick, meaning);
  gtk_widget_set_hexpand (tick, TRUE);
  g_signal_connect_object (tick, "toggled", G_CALLBACK (on_ticked), self, G_CONNECT_SWAPPED);
  ff_flow_append (FF_FLOW (flow), tick, 120);
  return GTK_CHECK_BUTTON (tick);
}

static void
add_note (FfShotEditor *self, GtkWidget *flow)
{
  const FfShotTextInfo *info = ff_shot_text_info (FF_SHOT_NOTE);
  GtkWidget *note = ff_note_new (_ (info->label));

  self->note = FF_NOTE (note);
  gtk_widget_set_hexpand (note, TRUE);
  g_signal_connect_object (note, "typed", G_CALLBACK (on_note), self, G_CONNECT_SWAPPED);
  ff_flow_append (FF_FLOW (flow), note, info->basis);
}

static void
add_texts (FfShotEditor *self, GtkWidget *flow, FfShotGroup group)
{
  for (int i = 0; i < FF_N_SHOT_TEXTS; i++)
    if (i != FF_SHOT_NOTE && ff_shot_text_info ((FfShotText) i)->group == group)
      add_text (self, flow, (FfShotText) i);
}

static void
build (FfShotEditor *self)
{
  GtkWidget *flow = add_group (self, FF_SHOT_GROUP_WHAT);

  add_texts (self, flow, FF_SHOT_GROUP_WHAT);
  add_note (self, flow);
  flow = add_group (self, FF_SHOT_GROUP_WHEN);
  add_texts (self, flow, FF_SHOT_GROUP_WHEN);
  self->fixed = add_tick (self, flow, _ ("Fi_xed time"),
                          _ ("Somebody else keeps this time: a ferry, a train"));
  self->wanted = add_tick (self, flow, _ ("Most wante_d"),
                           _ ("The shot of the day; give it a weight above the others as well"));
  self->must = add_tick (self, flow, _ ("Must fl_y"),
                         _ ("Left out only where nothing else can be done; the plan says so first"));
  flow = add_group (self, FF_SHOT_GROUP_PICTURE);
  self->intent
      = add_pick (self, flow, _ ("Intent"), &ff_names_intent, G_CALLBACK (on_intent));
  add_texts (self, flow, FF_SHOT_GROUP_PICTURE);
  /* Translators: the camera sets its ISO by itself while it films. */
  self->auto_iso = add_tick (self, flow, _ ("Aut_o ISO"),
                             _ ("The camera follows the light by ISO, up to the highest allowed; "
                                "steps show in the picture: lock it before each take"));
  flow = add_group (self, FF_SHOT_GROUP_FLIGHT);
  self->view = add_pick (self, flow, _ ("View"), &ff_names_view, G_CALLBACK (on_view));
  add_texts (self, flow, FF_SHOT_GROUP_FLIGHT);
  flow = add_group (self, FF_SHOT_GROUP_LIGHT);
  add_texts (self, flow, FF_SHOT_GROUP_LIGHT);
}

/* Showing */

static int
sunset_of (FfKeeper *keeper)
{
  const FfChartFacts *chart = ff_keeper_chart (keeper);
  g_autofree char *clock = NULL;
  int minutes;

  if (chart == NULL || chart->sunset == 0)
    return FF_NO_CLOCK;
  clock = ff_instant_clock ((double) chart->sunset, chart->zone);
  return ff_clock_parse (clock, &minutes, NULL) ? minutes : FF_NO_CLOCK;
}

static char *
remark_of (FfShotEditor *self, const FfShot *shot, FfShotText which)
{
  const FfJob *job = ff_keeper_job (self->keeper);

  if (which == FF_SHOT_TO && job != NULL)
    return ff_shot_hours_remark (shot, job, sunset_of (self->keeper));
  return ff_shot_text_remark (shot, which);
}

static void
show_text (FfShotEditor *self, const FfShot *shot, FfShotText which, gboolean other)
{
  g_autofree char *text = ff_shot_text_get (shot, which);
  g_autofree char *remark = remark_of (self, shot, which);

  if (other)
    ff_entry_reset (self->texts[which], text);
  else
    ff_entry_set_text (self->texts[which], text);
  ff_entry_set_remark (self->texts[which], remark);
  gtk_widget_set_visible (GTK_WIDGET (self->texts[which]), ff_shot_text_is_asked (shot, which));
}

/* Overrides */

static void
ff_shot_editor_dispose (GObject *object)
{
  FfShotEditor *self = FF_SHOT_EDITOR (object);

  g_clear_object (&self->keeper);
  g_clear_pointer (&self->id, g_free);
  G_OBJECT_CLASS (ff_shot_editor_parent_class)->dispose (object);
}

static void
ff_shot_editor_class_init (FfShotEditorClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ff_shot_editor_dispose;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "shot-editor");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
ff_shot_editor_init (FfShotEditor *self)
{
  GtkWidget *groups = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->groups = GTK_BOX (groups);
  adw_bin_set_child (ADW_BIN (self), groups);
  build (self);
}

/* Public */

void
ff_shot_editor_show (FfShotEditor *self, FfKeeper *keeper, const FfShot *shot)
{
  gboolean other;

  g_return_if_fail (FF_IS_SHOT_EDITOR (self));
  other = g_strcmp0 (self->id, shot->id) != 0;
  g_set_object (&self->keeper, keeper);
  ff_set_text (&self->id, shot->id);
  self->showing = TRUE;
  for (int i = 0; i < FF_N_SHOT_TEXTS; i++)
    if (self->texts[i] != NULL)
      show_text (self, shot, (FfShotText) i, other);
  if (other)
    ff_note_reset (self->note, shot->note);
  else
    ff_note_set_text (self->note, shot->note);
  ff_pick_set_value (self->intent, (int) shot->intent);
  ff_pick_set_value (self->view, (int) shot->view);
  gtk_check_button_set_active (self->fixed, shot->fixed_time);
  gtk_check_button_set_active (self->wanted, shot->most_wanted);
  gtk_check_button_set_active (self->must, shot->must_fly);
  gtk_check_button_set_active (self->auto_iso, shot->auto_iso);
  self->showing = FALSE;
}

void
ff_shot_editor_grab_title (FfShotEditor *self)
{
  g_return_if_fail (FF_IS_SHOT_EDITOR (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->texts[FF_SHOT_TITLE]));
}
