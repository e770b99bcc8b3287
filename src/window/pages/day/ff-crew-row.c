/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-crew-row.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-entry.h"
#include "ff-flow.h"
#include "ff-pick.h"

struct _FfCrewRow {
  GtkWidget parent_instance;

  char *member_id;
  FfRole shown_role;
  GtkLabel *badge, *title, *facts;
  FfPick *role;
  GtkToggleButton *more;
  GtkWidget *remove, *record;
};

G_DEFINE_FINAL_TYPE (FfCrewRow, ff_crew_row, GTK_TYPE_WIDGET)

enum { TYPED, ROLE_PICKED, REMOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

static const char *const fields[]
    = { "name", "initials", "phone", "certificate", "certificate_expiry" };

static FfEntry *
entry_of (FfCrewRow *self, const char *field)
{
  return FF_ENTRY (gtk_widget_get_template_child (GTK_WIDGET (self), FF_TYPE_CREW_ROW, field));
}

/* ---- Words ---- */

static char *
certificate_words (const FfMember *member, const char *date)
{
  if (member->certificate_expiry[0] == '\0')
    return g_strdup (member->certificate);
  if (date[0] != '\0' && strcmp (member->certificate_expiry, date) < 0)
    /* Translators: name of a certificate (may be empty), date as YYYY-MM-DD. */
    return g_strdup_printf (_ ("✕ certificate %s ends %s, before the day"), member->certificate,
                            member->certificate_expiry);
  return g_strdup_printf (_ ("certificate %s to %s"), member->certificate,
                          member->certificate_expiry);
}

static char *
facts_of (const FfMember *member, const char *date)
{
  g_autofree char *certificate = certificate_words (member, date);
  const char *phone = member->phone[0] != '\0' ? member->phone : _ ("no telephone yet");

  return g_strdup_printf ("%s · %s%s%s", ff_name_text (&ff_names_role, (int) member->role), phone,
                          certificate[0] != '\0' ? " · " : "", certificate);
}

/* ---- Callbacks ---- */

static void
on_typed (FfEntry *entry, const char *text, FfCrewRow *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    if (entry_of (self, fields[i]) == entry)
      g_signal_emit (self, signals[TYPED], 0, fields[i], text);
}

static void
on_picked (FfCrewRow *self, int role)
{
  g_signal_emit (self, signals[ROLE_PICKED], 0, role);
}

static void
on_more (FfCrewRow *self)
{
  const gboolean open = gtk_toggle_button_get_active (self->more);

  gtk_widget_set_visible (self->record, open);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->more), GTK_ACCESSIBLE_STATE_EXPANDED, open,
                               -1);
}

static void
on_remove (FfCrewRow *self)
{
  g_signal_emit (self, signals[REMOVED], 0);
}

/* ---- Overrides ---- */

static void
ff_crew_row_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ff_crew_row_parent_class)->dispose (object);
}

static void
ff_crew_row_finalize (GObject *object)
{
  g_free (FF_CREW_ROW (object)->member_id);
  G_OBJECT_CLASS (ff_crew_row_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-crew-row.ui");
  gtk_widget_class_bind_template_child (widget_class, FfCrewRow, badge);
  gtk_widget_class_bind_template_child (widget_class, FfCrewRow, title);
  gtk_widget_class_bind_template_child (widget_class, FfCrewRow, facts);
  gtk_widget_class_bind_template_child (widget_class, FfCrewRow, role);
  gtk_widget_class_bind_template_child (widget_class, FfCrewRow, more);
  gtk_widget_class_bind_template_child (widget_class, FfCrewRow, remove);
  gtk_widget_class_bind_template_child (widget_class, FfCrewRow, record);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    gtk_widget_class_bind_template_child_full (widget_class, fields[i], FALSE, 0);
  gtk_widget_class_bind_template_callback (widget_class, on_typed);
  gtk_widget_class_bind_template_callback (widget_class, on_picked);
  gtk_widget_class_bind_template_callback (widget_class, on_more);
  gtk_widget_class_bind_template_callback (widget_class, on_remove);
}

static void
ff_crew_row_class_init (FfCrewRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  g_type_ensure (FF_TYPE_FLOW);
  g_type_ensure (FF_TYPE_ENTRY);
  g_type_ensure (FF_TYPE_PICK);
  object_class->dispose = ff_crew_row_dispose;
  object_class->finalize = ff_crew_row_finalize;
  signals[TYPED] = g_signal_new ("typed", FF_TYPE_CREW_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 2, G_TYPE_STRING, G_TYPE_STRING);
  signals[ROLE_PICKED] = g_signal_new ("role-picked", FF_TYPE_CREW_ROW, G_SIGNAL_RUN_LAST, 0, NULL,
                                       NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  signals[REMOVED] = g_signal_new ("removed", FF_TYPE_CREW_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
  bind_template (GTK_WIDGET_CLASS (klass));
}

static void
ff_crew_row_init (FfCrewRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  ff_pick_set_names (self->role, &ff_names_role);
}

/* ---- Public ---- */

GtkWidget *
ff_crew_row_new (void)
{
  return g_object_new (FF_TYPE_CREW_ROW, NULL);
}

static void
name_buttons (FfCrewRow *self, const char *name)
{
  g_autofree char *more = g_strdup_printf (_ ("Details of %s"), name);
  g_autofree char *remove = g_strdup_printf (_ ("Take %s from the crew"), name);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->more), GTK_ACCESSIBLE_PROPERTY_LABEL, more,
                                  -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->remove), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  remove, -1);
}

void
ff_crew_row_show (FfCrewRow *self, const FfMember *member, const char *date)
{
  g_autofree char *facts = facts_of (member, date);

  g_return_if_fail (FF_IS_CREW_ROW (self));
  g_free (self->member_id);
  self->member_id = g_strdup (member->id);
  self->shown_role = member->role;
  gtk_label_set_label (self->badge, member->initials);
  gtk_label_set_label (self->title, member->name);
  gtk_label_set_label (self->facts, facts);
  ff_pick_set_value (self->role, (int) member->role);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      const FfField *field = ff_fields_find (&ff_member_fields, fields[i]);

      ff_entry_set_text (entry_of (self, fields[i]), *ff_field_text (field, member));
    }
  name_buttons (self, member->name);
}

const char *
ff_crew_row_get_member (FfCrewRow *self)
{
  g_return_val_if_fail (FF_IS_CREW_ROW (self), NULL);
  return self->member_id;
}

FfRole
ff_crew_row_get_role (FfCrewRow *self)
{
  g_return_val_if_fail (FF_IS_CREW_ROW (self), FF_ROLE_LEAD);
  return self->shown_role;
}

void
ff_crew_row_complain (FfCrewRow *self, const char *field, const char *sentence)
{
  g_return_if_fail (FF_IS_CREW_ROW (self));
  ff_entry_complain (entry_of (self, field), sentence);
}

void
ff_crew_row_open (FfCrewRow *self)
{
  g_return_if_fail (FF_IS_CREW_ROW (self));
  gtk_toggle_button_set_active (self->more, TRUE);
  gtk_widget_grab_focus (GTK_WIDGET (entry_of (self, "phone")));
}
