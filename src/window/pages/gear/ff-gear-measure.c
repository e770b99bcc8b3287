/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-measure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-compat.h"
#include "ff-frame-filter.h"
#include "ff-number.h"

typedef struct {
  GtkWidget *widget;
  FfKeeper *keeper;
  char *item_id, *without, *with;
} Measuring;

static Measuring *
measuring_new (GtkWidget *widget, FfKeeper *keeper, const char *item_id)
{
  Measuring *self = g_new0 (Measuring, 1);

  self->widget = g_object_ref (widget);
  self->keeper = g_object_ref (keeper);
  self->item_id = g_strdup (item_id);
  return self;
}

static void
measuring_free (gpointer data)
{
  Measuring *self = data;

  g_object_unref (self->widget);
  g_object_unref (self->keeper);
  g_free (self->item_id);
  g_free (self->without);
  g_free (self->with);
  g_free (self);
}

static void
say (Measuring *self, const char *sentence, gboolean undo)
{
  gtk_widget_activate_action (self->widget, "win.say", "(sb)", sentence, undo);
}

/* Measuring */

static void
measure (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Measuring *self = data;
  g_autofree FfFilterTest *test = g_new0 (FfFilterTest, 1);
  GError *error = NULL;

  if (ff_frame_filter_test (self->without, self->with, test, &error))
    g_task_return_pointer (task, g_steal_pointer (&test), g_free);
  else
    g_task_return_error (task, error);
}

static char *
result_words (const FfItem *item, const FfFilterTest *test)
{
  g_autofree char *stops = ff_stops_format (test->stops);
  g_autofree char *spread = ff_number_format (test->spread_stops, 1);
  g_autofree char *written = ff_stops_format (item->stops);

  /* Translators: label of a filter, its stops, how far off, and what is written on it. */
  return g_strdup_printf (_ ("%s: measured %s ± %s, written %s"), item->label, stops, spread,
                          written);
}

static void
keep (Measuring *self, const FfFilterTest *test, GError **error)
{
  g_autoptr (FfItem) item = ff_keeper_dup_item (self->keeper, self->item_id);
  g_autofree char *what = NULL, *words = NULL;

  if (item == NULL)
    return;
  /* What a picture says in thousandths of a stop is no news. */
  item->measured_stops = floor (test->stops * 100 + 0.5) / 100;
  /* Translators: what can be undone; then the label of a filter. */
  what = g_strdup_printf (_ ("%s measured"), item->label);
  words = result_words (item, test);
  if (ff_keeper_save_item (self->keeper, item, what, error))
    say (self, words, TRUE);
}

static void
on_measured (GObject *source, GAsyncResult *result, gpointer data)
{
  Measuring *self = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autofree FfFilterTest *test = g_task_propagate_pointer (G_TASK (result), &error);

  if (test != NULL)
    keep (self, test, &error);
  if (error != NULL)
    say (self, error->message, FALSE);
}

static void
run (Measuring *taken)
{
  g_autoptr (GTask) task = g_task_new (taken->widget, NULL, on_measured, NULL);

  g_task_set_task_data (task, taken, measuring_free);
  g_task_run_in_thread (task, measure);
}

/* Asking */

static void
on_with (GFile *file, gpointer data)
{
  Measuring *self = data;

  self->with = file != NULL ? g_file_get_path (file) : NULL;
  if (self->with != NULL)
    run (self);
  else
    measuring_free (self);
}

static void
on_without (GFile *file, gpointer data)
{
  Measuring *self = data;
  GtkRoot *root = gtk_widget_get_root (self->widget);

  self->without = file != NULL ? g_file_get_path (file) : NULL;
  if (self->without != NULL && root != NULL)
    ff_compat_open_file (GTK_WINDOW (root), _ ("The same scene with the filter"), on_with, self);
  else
    measuring_free (self);
}

/* Public */

void
ff_gear_measure_begin (GtkWidget *widget, FfKeeper *keeper, const char *item_id)
{
  GtkRoot *root = gtk_widget_get_root (widget);

  ff_compat_open_file (GTK_WINDOW (root), _ ("A picture without the filter"), on_without,
                       measuring_new (widget, keeper, item_id));
}

void
ff_gear_measure_pictures (GtkWidget *widget,
                          FfKeeper *keeper,
                          const char *item_id,
                          const char *without,
                          const char *with)
{
  Measuring *self = measuring_new (widget, keeper, item_id);

  self->without = g_strdup (without);
  self->with = g_strdup (with);
  run (self);
}
