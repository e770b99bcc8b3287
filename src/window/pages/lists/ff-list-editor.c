/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-list-editor.h"

#include <glib/gi18n-lib.h>

#include "ff-checklist-advice.h"

struct _FfListEditor {
  GtkBox parent_instance;

  FfKeeper *keeper; /* borrowed */
  char *id;
  gboolean setting;
  GtkTextView *view;
  GtkBox *advice;
};

enum { KEPT, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (FfListEditor, ff_list_editor, GTK_TYPE_BOX)

static char *
text_of (FfListEditor *self)
{
  GtkTextIter from, to;

  gtk_text_buffer_get_bounds (gtk_text_view_get_buffer (self->view), &from, &to);
  return gtk_text_buffer_get_text (gtk_text_view_get_buffer (self->view), &from, &to, TRUE);
}

/* Advice */

static void
add_line (FfListEditor *self, const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, css);
  gtk_box_append (self->advice, label);
}

static void
on_critical_first (FfListEditor *self, GtkButton *button)
{
  int line = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "line"));
  g_autofree char *text = text_of (self);
  g_autofree char *moved = ff_checklist_critical_first (text, line);

  if (moved != NULL)
    gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->view), moved, -1);
}

static void
offer_critical_first (FfListEditor *self, const char *text, const FfCheckSection *section)
{
  g_autofree char *moved = ff_checklist_critical_first (text, section->line);
  g_autofree char *label = NULL;
  GtkWidget *button;

  if (moved == NULL)
    return;
  /* Translators: a button; %s is the name of a section of a checklist. */
  label = g_strdup_printf (_ ("Move the critical items of “%s” to its front"), section->title);
  button = gtk_button_new_with_label (label);
  gtk_label_set_wrap (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), TRUE);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_object_set_data (G_OBJECT (button), "line", GINT_TO_POINTER (section->line));
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_critical_first), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (self->advice, button);
}

static void
show_advice (FfListEditor *self, const char *text, const FfChecklist *list)
{
  g_autoptr (GPtrArray) advice = ff_checklist_advice (list);

  for (guint i = 0; i < advice->len; i++)
    {
      const FfAdvice *one = g_ptr_array_index (advice, i);
      g_autofree char *line = g_strdup_printf (_ ("Line %d. %s"), one->line, one->text);

      add_line (self, line, "advice");
    }
  for (guint i = 0; i < list->sections->len; i++)
    offer_critical_first (self, text, g_ptr_array_index (list->sections, i));
  if (advice->len == 0)
    add_line (self, _ ("Kept. Nothing to advise."), "soft");
}

static void
check (FfListEditor *self, gboolean keep)
{
  g_autofree char *text = text_of (self);
  g_autoptr (GError) error = NULL;
  g_autoptr (FfChecklist) list = ff_checklist_parse (text, &error);
  g_autofree char *kept = NULL;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->advice))) != NULL)
    gtk_box_remove (self->advice, child);
  if (list != NULL && keep)
    kept = ff_keeper_save_list (self->keeper, self->id, text, &error);
  if (error != NULL)
    {
      g_autofree char *sentence = g_strdup_printf (_ ("Not kept yet. %s"), error->message);

      add_line (self, sentence, "attention");
    }
  else
    show_advice (self, text, list);
  if (kept != NULL)
    g_signal_emit (self, signals[KEPT], 0);
}

static void
on_changed (FfListEditor *self)
{
  if (!self->setting && self->id != NULL)
    check (self, TRUE);
}

void
ff_list_editor_set (FfListEditor *self, const FfListEntry *entry)
{
  g_autofree char *shown = text_of (self);

  if (g_strcmp0 (self->id, entry->id) == 0 && g_str_equal (shown, entry->text))
    return;
  self->setting = TRUE;
  g_free (self->id);
  self->id = g_strdup (entry->id);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->view), entry->text, -1);
  self->setting = FALSE;
  check (self, FALSE);
}

GtkWidget *
ff_list_editor_new (FfKeeper *keeper)
{
  FfListEditor *self = g_object_new (FF_TYPE_LIST_EDITOR, NULL);

  self->keeper = keeper;
  return GTK_WIDGET (self);
}

static gboolean
ff_list_editor_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_LIST_EDITOR (widget)->view));
}

static void
ff_list_editor_finalize (GObject *object)
{
  g_free (FF_LIST_EDITOR (object)->id);
  G_OBJECT_CLASS (ff_list_editor_parent_class)->finalize (object);
}

static void
ff_list_editor_class_init (FfListEditorClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ff_list_editor_finalize;
  GTK_WIDGET_CLASS (klass)->grab_focus = ff_list_editor_grab_focus;
  signals[KEPT] = g_signal_new ("kept", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
scrolled_new (GtkWidget *child)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), child);
  return scrolled;
}

static void
ff_list_editor_init (FfListEditor *self)
{
  GtkWidget *text, *below;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->view = GTK_TEXT_VIEW (gtk_text_view_new ());
  gtk_text_view_set_wrap_mode (self->view, GTK_WRAP_WORD_CHAR);
  /* Tab leads on: a list has no tabs in it. */
  gtk_text_view_set_accepts_tab (self->view, FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self->view), "list-text");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Text of the list"), -1);
  text = scrolled_new (GTK_WIDGET (self->view));
  gtk_widget_set_vexpand (text, TRUE);
  self->advice = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
  gtk_widget_add_css_class (GTK_WIDGET (self->advice), "list-advice");
  below = scrolled_new (GTK_WIDGET (self->advice));
  gtk_widget_set_size_request (below, -1, 130);
  gtk_box_append (GTK_BOX (self), text);
  gtk_box_append (GTK_BOX (self), below);
  g_signal_connect_object (gtk_text_view_get_buffer (self->view), "changed",
                           G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
}
