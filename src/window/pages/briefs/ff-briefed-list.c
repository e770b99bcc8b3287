/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-briefed-list.h"

#include <glib/gi18n-lib.h>

#include "ff-briefing.h"
#include "ff-entry.h"
#include "ff-flow.h"
#include "ff-lines.h"

#define NAME "ff-name"
#define INITIALS "ff-initials"

struct _FfBriefedList {
  GtkBox parent_instance;

  FfPage *page; /* borrowed: it is inside it */
  FfAnswer *shown;
  GtkToggleButton *head; /* unfolds what is under it; an expander is mute on the bus of GTK 4.8 */
  GtkLabel *sum;
  GtkBox *rows;
  FfEntry *name, *initials; /* of somebody else */
};

G_DEFINE_FINAL_TYPE (FfBriefedList, ff_briefed_list, GTK_TYPE_BOX)

/* Callbacks */

static gboolean
note (FfBriefedList *self, const char *name, const char *initials)
{
  g_autoptr (GError) error = NULL;
  const gboolean kept = ff_keeper_brief (ff_page_get_keeper (self->page), name, initials, &error);

  ff_page_say_error (self->page, &error);
  return kept;
}

static void
on_briefed (GtkWidget *button, FfBriefedList *self)
{
  g_autofree char *name = g_strdup (g_object_get_data (G_OBJECT (button), NAME));
  g_autofree char *initials = g_strdup (g_object_get_data (G_OBJECT (button), INITIALS));

  note (self, name, initials);
}

static void
on_someone (FfBriefedList *self)
{
  g_autofree char *name = g_strstrip (g_strdup (ff_entry_get_text (self->name)));
  g_autofree char *initials = g_strstrip (g_strdup (ff_entry_get_text (self->initials)));

  if (note (self, name, initials))
    {
      ff_entry_reset (self->name, "");
      ff_entry_reset (self->initials, "");
    }
}

/* Rows */

static void
add_button (FfBriefedList *self, GtkWidget *row, const FfBriefing *one)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Was briefed"));
  g_autofree char *spoken = NULL;

  /* Translators: a button for a screen reader; the name of a person. */
  spoken = g_strdup_printf (_ ("%s was briefed"), one->name);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  /* From GTK 4.10 a button is named by its own words first, whatever else it is given. */
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_RELATION_LABELLED_BY);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                  -1);
  g_object_set_data_full (G_OBJECT (button), NAME, g_strdup (one->name), g_free);
  g_object_set_data_full (G_OBJECT (button), INITIALS, g_strdup (one->initials), g_free);
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_briefed), self, 0);
  gtk_box_append (GTK_BOX (row), button);
}

static void
add_row (FfBriefedList *self, const FfBriefing *one)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  g_autofree char *who = *one->role != '\0' ? g_strdup_printf ("%s, %s", one->name, one->role)
                                            : g_strdup (one->name);
  g_autofree char *words = g_strdup_printf ("%s %s", ff_briefing_shape (one->state), one->words);

  gtk_box_append (GTK_BOX (texts), ff_line_new (who, NULL));
  gtk_box_append (GTK_BOX (texts), ff_line_new (words, "soft"));
  gtk_widget_set_hexpand (texts, TRUE);
  gtk_box_append (GTK_BOX (row), texts);
  if (one->state != FF_BRIEFING_DONE)
    add_button (self, row, one);
  gtk_box_append (self->rows, row);
}

/* The focus does not fall out of the list when the button it was on is gone. */
static void
show_rows (FfBriefedList *self, GPtrArray *briefings)
{
  const gboolean inside = gtk_widget_get_focus_child (GTK_WIDGET (self->rows)) != NULL;

  if (inside)
    gtk_widget_grab_focus (GTK_WIDGET (self->head));
  ff_lines_clear (self->rows);
  for (guint i = 0; i < briefings->len; i++)
    add_row (self, g_ptr_array_index (briefings, i));
}

void
ff_briefed_list_show (FfBriefedList *self, FfPage *page)
{
  FfAnswer *answer = ff_keeper_answer (ff_page_get_keeper (page));
  const gboolean known = answer != NULL && answer->standing != NULL;
  g_autoptr (GPtrArray) briefings = NULL;
  g_autofree char *sum = NULL;
  g_autofree char *title = NULL;

  g_return_if_fail (FF_IS_BRIEFED_LIST (self));
  self->page = page;
  gtk_widget_set_visible (GTK_WIDGET (self), known);
  if (!known || answer == self->shown)
    return;
  ff_answer_ref (answer);
  g_clear_pointer (&self->shown, ff_answer_unref);
  self->shown = answer;
  briefings = ff_briefings (answer->standing, answer->day);
  sum = ff_briefings_sum (briefings);
  title = g_strdup_printf ("%s %s", ff_briefing_shape (ff_briefings_n_open (briefings) > 0
                                                           ? FF_BRIEFING_OPEN
                                                           : FF_BRIEFING_DONE),
                           sum);
  gtk_label_set_label (self->sum, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->head), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  -1);
  show_rows (self, briefings);
}

/* The line for somebody else */

static GtkWidget *
someone_new (FfBriefedList *self)
{
  GtkWidget *row = ff_flow_new (8, 6);
  GtkWidget *button = gtk_button_new_with_label (_ ("Someone else was briefed"));

  self->name = FF_ENTRY (ff_entry_new (_ ("Someone else"), NULL));
  self->initials = FF_ENTRY (ff_entry_new (_ ("Initials"), NULL));
  gtk_widget_set_hexpand (GTK_WIDGET (self->name), TRUE);
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_someone), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->initials, "entered", G_CALLBACK (on_someone), self,
                           G_CONNECT_SWAPPED);
  ff_flow_append (FF_FLOW (row), GTK_WIDGET (self->name), 160);
  ff_flow_append (FF_FLOW (row), GTK_WIDGET (self->initials), 80);
  ff_flow_append (FF_FLOW (row), button, -1);
  return row;
}

/* Overrides */

static void
ff_briefed_list_finalize (GObject *object)
{
  g_clear_pointer (&FF_BRIEFED_LIST (object)->shown, ff_answer_unref);
  G_OBJECT_CLASS (ff_briefed_list_parent_class)->finalize (object);
}

static void
ff_briefed_list_class_init (FfBriefedListClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ff_briefed_list_finalize;
}

static void
ff_briefed_list_init (FfBriefedList *self)
{
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->head = GTK_TOGGLE_BUTTON (gtk_toggle_button_new ());
  self->sum = GTK_LABEL (ff_line_new ("", "heading"));
  self->rows = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 8));
  gtk_button_set_child (GTK_BUTTON (self->head), GTK_WIDGET (self->sum));
  gtk_widget_set_margin_top (body, 8);
  gtk_box_append (GTK_BOX (body), GTK_WIDGET (self->rows));
  gtk_box_append (GTK_BOX (body), someone_new (self));
  g_object_bind_property (self->head, "active", body, "visible", G_BINDING_SYNC_CREATE);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->head));
  gtk_box_append (GTK_BOX (self), body);
}
