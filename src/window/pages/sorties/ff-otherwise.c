/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-otherwise.h"

#include <glib/gi18n-lib.h>

#include "ff-sortie-notes.h"
#include "ff-sortie-words.h"

struct _FfOtherwise {
  GtkBox parent_instance;

  GtkLabel *drop;
  GtkBox *slips, *cases;
  FfAnswer *asked;           /* whose drop order is shown or on its way */
  GCancellable *cancellable; /* of the worker that is out; NULL: none */
};

G_DEFINE_FINAL_TYPE (FfOtherwise, ff_otherwise, GTK_TYPE_BOX)

/* The worker */

static void
work (GTask *task, gpointer source, gpointer answer, GCancellable *cancellable)
{
  g_task_return_pointer (task, ff_answer_drop_first (answer, cancellable),
                         (GDestroyNotify) g_ptr_array_unref);
}

static void
finished (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FfOtherwise *self = FF_OTHERWISE (source);
  g_autoptr (GPtrArray) drops = g_task_propagate_pointer (G_TASK (result), NULL);
  g_autofree char *words = drops != NULL ? ff_drop_words (drops) : NULL;

  /* Of a cancelled one nothing is shown: another may be on its way. */
  if (drops == NULL)
    return;
  gtk_label_set_label (self->drop, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->drop), words != NULL);
}

static void
stop (FfOtherwise *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

static void
ask (FfOtherwise *self)
{
  g_autoptr (GTask) task = NULL;

  stop (self);
  self->cancellable = g_cancellable_new ();
  task = g_task_new (self, self->cancellable, finished, NULL);
  g_task_set_task_data (task, ff_answer_ref (self->asked), (GDestroyNotify) ff_answer_unref);
  g_task_run_in_thread (task, work);
}

/* Overrides */

static void
ff_otherwise_dispose (GObject *object)
{
  FfOtherwise *self = FF_OTHERWISE (object);

  stop (self);
  g_clear_pointer (&self->asked, ff_answer_unref);
  G_OBJECT_CLASS (ff_otherwise_parent_class)->dispose (object);
}

static void
ff_otherwise_class_init (FfOtherwiseClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ff_otherwise_dispose;
}

static GtkBox *
add_box (FfOtherwise *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);

  gtk_box_append (GTK_BOX (self), box);
  return GTK_BOX (box);
}

static void
ff_otherwise_init (FfOtherwise *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 10);
  self->drop = GTK_LABEL (gtk_label_new (""));
  gtk_label_set_xalign (self->drop, 0);
  gtk_label_set_wrap (self->drop, TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self->drop), FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self->drop), "drop-first");
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->drop));
  self->slips = add_box (self);
  self->cases = add_box (self);
}

/* Public */

void
ff_otherwise_show (FfOtherwise *self, FfAnswer *answer)
{
  g_autoptr (GPtrArray) slips = NULL;
  g_autoptr (GPtrArray) cases = NULL;

  g_return_if_fail (FF_IS_OTHERWISE (self));
  if (answer == self->asked || answer->plan->cases == NULL)
    return;
  ff_answer_ref (answer);
  g_clear_pointer (&self->asked, ff_answer_unref);
  self->asked = answer;
  slips = ff_cases_slip_words (answer->plan->cases);
  cases = ff_sortie_case_words (answer->plan->cases);
  ff_sortie_notes_show_sentences (self->slips, slips);
  ff_sortie_notes_show_sentences (self->cases, cases);
  ask (self);
}
