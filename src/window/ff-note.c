/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-note.h"

#include <glib/gi18n-lib.h>

struct _FfNote {
  GtkWidget parent_instance;

  GtkLabel *label, *message;
  GtkTextView *view;
  char *stored;
  char *typed;       /* what stands in the view, as it was last asked for */
  gboolean emitting; /* inside "typed": what is told now follows from the typing */
  gboolean setting;  /* the text changes by our own hand */
};

G_DEFINE_FINAL_TYPE (FfNote, ff_note, GTK_TYPE_WIDGET)

enum { TYPED, N_SIGNALS };

static guint signals[N_SIGNALS];

static void
put_text (FfNote *self, const char *text)
{
  self->setting = TRUE;
  if (!g_str_equal (ff_note_get_text (self), text))
    gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->view), text, -1);
  self->setting = FALSE;
}

/* Callbacks */

static void
on_changed (FfNote *self)
{
  if (self->setting)
    return;
  self->emitting = TRUE;
  g_signal_emit (self, signals[TYPED], 0, ff_note_get_text (self));
  self->emitting = FALSE;
}

/* Overrides */

static gboolean
ff_note_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_NOTE (widget)->view));
}

static void
ff_note_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ff_note_parent_class)->dispose (object);
}

static void
ff_note_finalize (GObject *object)
{
  FfNote *self = FF_NOTE (object);

  g_free (self->stored);
  g_free (self->typed);
  G_OBJECT_CLASS (ff_note_parent_class)->finalize (object);
}

static void
ff_note_class_init (FfNoteClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = ff_note_dispose;
  G_OBJECT_CLASS (klass)->finalize = ff_note_finalize;
  widget_class->grab_focus = ff_note_grab_focus;
  signals[TYPED] = g_signal_new ("typed", FF_TYPE_NOTE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "note");
}

static GtkLabel *
add_label (FfNote *self, const char *style)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, style);
  gtk_widget_set_parent (label, GTK_WIDGET (self));
  return GTK_LABEL (label);
}

static void
add_view (FfNote *self)
{
  GtkWidget *view = gtk_text_view_new ();

  self->view = GTK_TEXT_VIEW (view);
  gtk_text_view_set_wrap_mode (self->view, GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (self->view, FALSE);
  gtk_widget_set_hexpand (view, TRUE);
  gtk_widget_set_parent (view, GTK_WIDGET (self));
  g_signal_connect_object (gtk_text_view_get_buffer (self->view), "changed",
                           G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
}

static void
ff_note_init (FfNote *self)
{
  GtkBoxLayout *layout = GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self)));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (layout, 4);
  self->stored = g_strdup ("");
  self->label = add_label (self, "field-label");
  add_view (self);
  self->message = add_label (self, "field-message");
  gtk_widget_set_visible (GTK_WIDGET (self->message), FALSE);
  gtk_label_set_mnemonic_widget (self->label, GTK_WIDGET (self->view));
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  self->label, NULL, GTK_ACCESSIBLE_RELATION_DESCRIBED_BY,
                                  self->message, NULL, -1);
}

/* Public */

GtkWidget *
ff_note_new (const char *label)
{
  FfNote *self = g_object_new (FF_TYPE_NOTE, NULL);

  gtk_label_set_text_with_mnemonic (self->label, label);
  return GTK_WIDGET (self);
}

const char *
ff_note_get_text (FfNote *self)
{
  GtkTextBuffer *buffer;
  GtkTextIter start, end;

  g_return_val_if_fail (FF_IS_NOTE (self), "");
  buffer = gtk_text_view_get_buffer (self->view);
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  g_free (self->typed);
  self->typed = gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
  return self->typed;
}

void
ff_note_set_text (FfNote *self, const char *stored)
{
  g_return_if_fail (FF_IS_NOTE (self));
  if (g_str_equal (self->stored, stored))
    return;
  if (!self->emitting)
    {
      ff_note_reset (self, stored);
      return;
    }
  g_free (self->stored);
  self->stored = g_strdup (stored);
}

void
ff_note_reset (FfNote *self, const char *stored)
{
  g_return_if_fail (FF_IS_NOTE (self));
  g_free (self->stored);
  self->stored = g_strdup (stored);
  put_text (self, self->stored);
  ff_note_complain (self, NULL);
}

void
ff_note_complain (FfNote *self, const char *sentence)
{
  g_autofree char *words = NULL;

  g_return_if_fail (FF_IS_NOTE (self));
  if (sentence != NULL)
    /* Translators: under a field: why the typed value is refused. */
    words = g_strdup_printf (_ ("✕ %s."), sentence);
  gtk_label_set_label (self->message, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message), words != NULL);
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_STATE_INVALID,
      words != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}
