/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-person.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-entry.h"

struct _FfPerson {
  AdwBin parent_instance;

  FfKeeper *keeper;
  GtkMenuButton *button;
  GtkPopover *popover;
  GtkLabel *initials, *name;
  GtkBox *choices;
  FfEntry *entry;
};

G_DEFINE_FINAL_TYPE (FfPerson, ff_person, ADW_TYPE_BIN)

static const FfMember *
member_of_initials (FfKeeper *keeper, const char *initials)
{
  GPtrArray *members = ff_keeper_members (keeper);

  for (guint i = 0; i < members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (members, i);

      if (g_ascii_strcasecmp (member->initials, initials) == 0)
        return member;
    }
  return NULL;
}

/* People call each other by it, and it fits. */
static char *
first_name (const char *name)
{
  return g_strndup (name, strcspn (name, " "));
}

static void
show_person (FfPerson *self)
{
  const char *initials = ff_keeper_initials (self->keeper);
  const FfMember *member = member_of_initials (self->keeper, initials);
  g_autofree char *words = NULL;
  g_autofree char *first = member != NULL ? first_name (member->name) : NULL;
  const char *name = initials[0] == '\0' ? _ ("Who is here?") : "";

  if (first != NULL)
    name = first;
  gtk_label_set_label (self->initials, initials[0] != '\0' ? initials : "··");
  gtk_label_set_label (self->name, name);
  /* Translators: who is at the keys: initials and name. */
  words = g_strdup_printf (_ ("At the keys: %s %s"), initials, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  words, -1);
  ff_entry_set_text (self->entry, initials);
}

/* Callbacks */

static void
on_chosen (FfPerson *self, GtkButton *choice)
{
  ff_keeper_set_initials (self->keeper, g_object_get_data (G_OBJECT (choice), "initials"));
  gtk_popover_popdown (self->popover);
}

static void
on_typed (FfPerson *self, const char *text)
{
  g_autofree char *upper = g_utf8_strup (text, -1);
  g_autofree char *bare = g_strdup (g_strstrip (upper));
  glong n = g_utf8_strlen (bare, -1);
  gboolean good = n == 0 || n == 2 || n == 3;

  for (const char *p = bare; *p != '\0' && good; p = g_utf8_next_char (p))
    good = g_unichar_isalpha (g_utf8_get_char (p));
  ff_entry_complain (self->entry, good ? NULL : _ ("two or three letters"));
  if (good)
    ff_keeper_set_initials (self->keeper, bare);
}

/* The crew */

static void
add_choice (FfPerson *self, const FfMember *member)
{
  GtkWidget *choice = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *initials = gtk_label_new (member->initials);

  gtk_widget_add_css_class (initials, "initials");
  gtk_box_append (GTK_BOX (box), initials);
  gtk_box_append (GTK_BOX (box), gtk_label_new (member->name));
  gtk_button_set_child (GTK_BUTTON (choice), box);
  gtk_widget_add_css_class (choice, "flat");
  gtk_accessible_update_property (GTK_ACCESSIBLE (choice), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  member->name, -1);
  g_object_set_data_full (G_OBJECT (choice), "initials", g_strdup (member->initials), g_free);
  g_signal_connect_object (choice, "clicked", G_CALLBACK (on_chosen), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->choices, choice);
}

static void
show_crew (FfPerson *self)
{
  GPtrArray *members = ff_keeper_members (self->keeper);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->choices))) != NULL)
    gtk_box_remove (self->choices, child);
  for (guint i = 0; i < members->len; i++)
    add_choice (self, g_ptr_array_index (members, i));
  show_person (self);
}

/* Overrides */

static void
ff_person_dispose (GObject *object)
{
  g_clear_object (&FF_PERSON (object)->keeper);
  G_OBJECT_CLASS (ff_person_parent_class)->dispose (object);
}

static void
ff_person_class_init (FfPersonClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = ff_person_dispose;
  g_type_ensure (FF_TYPE_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-person.ui");
  gtk_widget_class_bind_template_child (widget_class, FfPerson, button);
  gtk_widget_class_bind_template_child (widget_class, FfPerson, popover);
  gtk_widget_class_bind_template_child (widget_class, FfPerson, initials);
  gtk_widget_class_bind_template_child (widget_class, FfPerson, name);
  gtk_widget_class_bind_template_child (widget_class, FfPerson, choices);
  gtk_widget_class_bind_template_child (widget_class, FfPerson, entry);
  gtk_widget_class_bind_template_callback (widget_class, on_typed);
}

static void
ff_person_init (FfPerson *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* Public */

void
ff_person_set_keeper (FfPerson *self, FfKeeper *keeper)
{
  g_return_if_fail (FF_IS_PERSON (self) && self->keeper == NULL);
  self->keeper = g_object_ref (keeper);
  g_signal_connect_object (keeper, "notify::initials", G_CALLBACK (show_person), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (keeper, "jobs-changed", G_CALLBACK (show_crew), self,
                           G_CONNECT_SWAPPED);
  show_crew (self);
}
