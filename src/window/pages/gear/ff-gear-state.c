/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-state.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-entry.h"
#include "ff-gear-words.h"
#include "ff-pick.h"

struct _FfGearState {
  GtkWidget parent_instance;

  FfKeeper *keeper;
  char *id; /* of the item */
  FfPick *state;
  FfEntry *why, *with, *until;
  GtkWidget *out;
  GtkLabel *who;
};

G_DEFINE_FINAL_TYPE (FfGearState, ff_gear_state, GTK_TYPE_WIDGET)

enum { DONE, N_SIGNALS };

static guint signals[N_SIGNALS];

/* What is shown */

static void
fill_states (FfGearState *self)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < ff_names_state.n_names; i++)
    g_ptr_array_add (texts, ff_gear_state_words ((FfState) i));
  g_ptr_array_add (texts, NULL);
  ff_pick_set_texts (self->state, (const char *const *) texts->pdata);
}

static void
show_out (FfGearState *self)
{
  gtk_widget_set_visible (self->out, ff_pick_get_value (self->state) == FF_STATE_OUT);
}

static void
show_who (FfGearState *self)
{
  const char *initials = ff_keeper_initials (self->keeper);
  g_autofree char *words = NULL;

  if (initials[0] != '\0')
    /* Translators: who enters a change: initials. */
    words = g_strdup_printf (_ ("entered by %s"), initials);
  else
    words = g_strdup (_ ("□ Nobody has said who is here: it is entered without initials"));
  gtk_label_set_label (self->who, words);
}

static gboolean
is_day_or_empty (FfGearState *self, const char *until)
{
  g_autoptr (GError) error = NULL;
  FfDate day;

  if (until[0] != '\0')
    ff_date_parse (until, &day, &error);
  ff_entry_complain (self->until, error != NULL ? error->message : NULL);
  return error == NULL;
}

static gboolean
has_reason (FfGearState *self, const char *why)
{
  ff_entry_complain (self->why, why[0] == '\0'
                                    ? _ ("A reason is needed: the next to hold it wants to know")
                                    : NULL);
  if (why[0] == '\0')
    gtk_widget_grab_focus (GTK_WIDGET (self->why));
  return why[0] != '\0';
}

static char *
typed (FfEntry *entry)
{
  return g_strstrip (g_strdup (ff_entry_get_text (entry)));
}

/* Callbacks */

static void
on_leave (FfGearState *self)
{
  g_signal_emit (self, signals[DONE], 0);
}

static void
on_enter (FfGearState *self)
{
  int state = ff_pick_get_value (self->state);
  gboolean out = state == FF_STATE_OUT;
  g_autofree char *why = typed (self->why);
  g_autofree char *with = out ? typed (self->with) : g_strdup ("");
  g_autofree char *until = out ? typed (self->until) : g_strdup ("");
  g_autoptr (GError) error = NULL;

  if (state < 0 || !has_reason (self, why) || !is_day_or_empty (self, until))
    return;
  if (ff_keeper_set_item_state (self->keeper, self->id, (FfState) state, why, with, until, &error))
    g_signal_emit (self, signals[DONE], 0);
  else
    ff_entry_complain (self->why, error->message);
}

static void
on_why_typed (FfGearState *self)
{
  ff_entry_complain (self->why, NULL);
}

static void
on_until_typed (FfGearState *self, const char *text)
{
  g_autofree char *until = g_strstrip (g_strdup (text));

  is_day_or_empty (self, until);
}

/* Enter in a field enters the whole; on a button or the choice it does what it always does, and the
 * list of choices has its own Escape. */
static gboolean
on_key (FfGearState *self, guint key)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self)));

  if (focus == NULL || gtk_widget_get_ancestor (focus, GTK_TYPE_POPOVER) != NULL)
    return GDK_EVENT_PROPAGATE;
  if (key == GDK_KEY_Escape)
    on_leave (self);
  else if ((key == GDK_KEY_Return || key == GDK_KEY_KP_Enter) && GTK_IS_EDITABLE (focus))
    on_enter (self);
  else
    return GDK_EVENT_PROPAGATE;
  return GDK_EVENT_STOP;
}

/* Overrides */

static gboolean
ff_gear_state_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_GEAR_STATE (widget)->state));
}

static void
ff_gear_state_dispose (GObject *object)
{
  FfGearState *self = FF_GEAR_STATE (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->keeper);
  G_OBJECT_CLASS (ff_gear_state_parent_class)->dispose (object);
}

static void
ff_gear_state_finalize (GObject *object)
{
  g_free (FF_GEAR_STATE (object)->id);
  G_OBJECT_CLASS (ff_gear_state_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-gear-state.ui");
  gtk_widget_class_bind_template_child (widget_class, FfGearState, state);
  gtk_widget_class_bind_template_child (widget_class, FfGearState, why);
  gtk_widget_class_bind_template_child (widget_class, FfGearState, with);
  gtk_widget_class_bind_template_child (widget_class, FfGearState, until);
  gtk_widget_class_bind_template_child (widget_class, FfGearState, out);
  gtk_widget_class_bind_template_child (widget_class, FfGearState, who);
  gtk_widget_class_bind_template_callback (widget_class, show_out);
  gtk_widget_class_bind_template_callback (widget_class, on_why_typed);
  gtk_widget_class_bind_template_callback (widget_class, on_until_typed);
  gtk_widget_class_bind_template_callback (widget_class, on_enter);
  gtk_widget_class_bind_template_callback (widget_class, on_leave);
}

static void
ff_gear_state_class_init (FfGearStateClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = ff_gear_state_dispose;
  object_class->finalize = ff_gear_state_finalize;
  widget_class->grab_focus = ff_gear_state_grab_focus;
  g_type_ensure (FF_TYPE_ENTRY);
  g_type_ensure (FF_TYPE_PICK);
  signals[DONE] = g_signal_new ("done", FF_TYPE_GEAR_STATE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
  bind_template (widget_class);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
ff_gear_state_init (FfGearState *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  fill_states (self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

/* Public */

void
ff_gear_state_set_keeper (FfGearState *self, FfKeeper *keeper)
{
  g_return_if_fail (FF_IS_GEAR_STATE (self));
  g_set_object (&self->keeper, keeper);
  g_signal_connect_object (keeper, "notify::initials", G_CALLBACK (show_who), self,
                           G_CONNECT_SWAPPED);
}

void
ff_gear_state_begin (FfGearState *self, const FfItem *item)
{
  g_return_if_fail (FF_IS_GEAR_STATE (self));
  ff_set_text (&self->id, item->id);
  ff_pick_set_value (self->state, item->state == FF_STATE_SERVICEABLE ? FF_STATE_DEFECT
                                                                      : FF_STATE_SERVICEABLE);
  ff_entry_reset (self->why, "");
  ff_entry_reset (self->with, "");
  ff_entry_reset (self->until, "");
  ff_entry_set_remark (self->until, _ ("year-month-day; may stay empty"));
  show_out (self);
  show_who (self);
}
