/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-reading-dialog.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-compat.h"
#include "ff-entry.h"
#include "ff-number.h"
#include "ff-pick.h"
#include "ff-reading-list.h"
#include "ff-reading-text.h"
#include "ff-scale.h"

struct _FfReadingDialog {
  AdwWindow parent_instance;

  FfKeeper *keeper;
  FfDay *day; /* as the store holds it; NULL: it can't be read */
  FfFrame frame;
  char *picture; /* name of the file that `frame` was read from; NULL: none */
  GCancellable *reading_picture;

  FfEntry *time, *shown, *target, *ev100, *lux, *filter;
  FfPick *method, *looked_at;
  GtkWidget *shown_box, *picture_box;
  GtkLabel *picture_label, *says, *caution, *who;
  GtkCheckButton *moves;
  FfReadingList *list;
};

G_DEFINE_FINAL_TYPE (FfReadingDialog, ff_reading_dialog, ADW_TYPE_WINDOW)

static FfMethod
method_of (FfReadingDialog *self)
{
  return (FfMethod) MAX (ff_pick_get_value (self->method), 0);
}

/* What is typed */

/* An empty field is no mistake until the reading is entered. */
static gboolean
is_given (FfEntry *entry, gboolean insist)
{
  gboolean given = *ff_entry_get_text (entry) != '\0';

  ff_entry_complain (entry, !given && insist ? _ ("This is needed") : NULL);
  return given;
}

static gboolean
accept (FfEntry *entry, GError *error)
{
  ff_entry_complain (entry, error != NULL ? error->message : NULL);
  return error == NULL;
}

static gboolean
read_time (FfReadingDialog *self, gboolean insist, gint64 *ret_at)
{
  g_autoptr (GError) error = NULL;

  if (!is_given (self->time, insist))
    return FALSE;
  ff_reading_text_time (self->day, ff_entry_get_text (self->time), ret_at, &error);
  return accept (self->time, error);
}

static gboolean
read_shutter (FfEntry *entry, gboolean insist, double *ret_seconds)
{
  g_autoptr (GError) error = NULL;

  if (!is_given (entry, insist))
    return FALSE;
  ff_shutter_parse (_ ("Shutter"), ff_entry_get_text (entry), FALSE, ret_seconds, &error);
  return accept (entry, error);
}

static gboolean
read_number (FfEntry *entry, gboolean insist, double low, double high, double *ret_value)
{
  g_autoptr (GError) error = NULL;

  if (!is_given (entry, insist))
    return FALSE;
  ff_number_parse (_ ("Value"), ff_entry_get_text (entry), low, high, ret_value, &error);
  return accept (entry, error);
}

static gboolean
read_filter (FfReadingDialog *self, double *ret_stops)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *said = NULL;

  ff_reading_text_filter (ff_keeper_items (self->keeper), ff_entry_get_text (self->filter),
                          ret_stops, &said, &error);
  ff_entry_set_remark (self->filter, said);
  return accept (self->filter, error);
}

static gboolean
read_value (FfReadingDialog *self, gboolean insist, FfReadingEntry *entry)
{
  gboolean both;

  switch (entry->method)
    {
    case FF_METHOD_SHOWN:
      both = read_shutter (self->shown, insist, &entry->shown_s);
      return read_shutter (self->target, insist, &entry->target_s) && both;
    case FF_METHOD_EV100:
      return read_number (self->ev100, insist, -12, 24, &entry->ev100);
    case FF_METHOD_LUX:
      return read_number (self->lux, insist, 1e-3, 1e6, &entry->lux);
    case FF_METHOD_FRAME:
    default:
      if (self->picture != NULL)
        ff_reading_text_frame (&self->frame, entry);
      entry->source = self->picture;
      return self->picture != NULL;
    }
}

static const FfShot *
looked_at (FfReadingDialog *self)
{
  GPtrArray *shots = ff_keeper_shots (self->keeper);
  int picked = ff_pick_get_value (self->looked_at) - 1;

  return picked >= 0 && picked < (int) shots->len ? g_ptr_array_index (shots, picked) : NULL;
}

/* The reading as it is typed; NULL while something is missing, `error` set when it is refused. */
static FfReading *
read_all (FfReadingDialog *self, gboolean insist, GError **error)
{
  FfReadingEntry entry = FF_READING_ENTRY_INIT;
  gboolean good;

  if (self->day == NULL)
    return NULL;
  entry.method = method_of (self);
  entry.cloud = gtk_check_button_get_active (self->moves) ? FF_CLOUD_MOVES : FF_CLOUD_STILL;
  entry.shot = looked_at (self);
  entry.by = ff_keeper_initials (self->keeper);
  good = read_time (self, insist, &entry.at);
  good = read_filter (self, &entry.nd_stops) && good;
  good = read_value (self, insist, &entry) && good;
  return good ? ff_day_reading_new (self->day, &entry, error) : NULL;
}

/* What it means */

static void
say (FfReadingDialog *self, const char *says, const char *caution)
{
  gtk_label_set_label (self->says, says);
  gtk_label_set_label (self->caution, caution);
  gtk_widget_set_visible (GTK_WIDGET (self->caution), *caution != '\0');
}

static void
show_meaning (FfReadingDialog *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfReading) reading = read_all (self, FALSE, &error);
  g_autofree char *says = NULL, *caution = NULL;

  if (reading == NULL)
    {
      say (self, error != NULL ? error->message : _ ("What it means stands here as you type."), "");
      return;
    }
  says = ff_reading_text_says (self->day, reading);
  caution = ff_day_reading_caution (self->day, reading);
  say (self, says, caution);
}

static void
show_method (FfReadingDialog *self)
{
  FfMethod method = method_of (self);

  gtk_widget_set_visible (self->shown_box, method == FF_METHOD_SHOWN);
  gtk_widget_set_visible (GTK_WIDGET (self->ev100), method == FF_METHOD_EV100);
  gtk_widget_set_visible (GTK_WIDGET (self->lux), method == FF_METHOD_LUX);
  gtk_widget_set_visible (self->picture_box, method == FF_METHOD_FRAME);
  show_meaning (self);
}

static void
show_who (FfReadingDialog *self)
{
  const char *initials = ff_keeper_initials (self->keeper);
  g_autofree char *words
      = *initials != '\0'
            /* Translators: who enters a reading: initials. */
            ? g_strdup_printf (_ ("entered by %s"), initials)
            : g_strdup (_ ("□ Nobody has said who is here: it is entered without initials"));

  gtk_label_set_label (self->who, words);
}

/* The day */

static void
load_day (FfReadingDialog *self)
{
  const FfJob *job = ff_keeper_job (self->keeper);
  FfStore *store = ff_keeper_store (self->keeper);

  g_clear_pointer (&self->day, ff_day_free);
  if (job != NULL && store != NULL)
    self->day = ff_day_load (store, job->id, NULL);
  if (self->day != NULL)
    ff_reading_list_show (self->list, self->keeper, self->day);
}

static void
fill_shots (FfReadingDialog *self, const char *shot_id)
{
  GPtrArray *shots = ff_keeper_shots (self->keeper);
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  int picked = 0;

  g_ptr_array_add (texts, g_strdup (_ ("oblique, the sun behind the camera")));
  for (guint i = 0; i < shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (shots, i);

      /* Translators: label and title of a shot. */
      g_ptr_array_add (texts, g_strdup_printf (_ ("%s, %s"), shot->label, shot->title));
      if (g_strcmp0 (shot->id, shot_id) == 0)
        picked = (int) i + 1;
    }
  g_ptr_array_add (texts, NULL);
  ff_pick_set_texts (self->looked_at, (const char *const *) texts->pdata);
  ff_pick_set_value (self->looked_at, picked);
}

/* Now, half the frame's time, the sky of the job. */
static void
fill_usual (FfReadingDialog *self)
{
  const FfJob *job = ff_day_job (self->day);
  double fps = job->delivery_fps > 0 ? job->delivery_fps : 25;
  g_autofree char *now
      = ff_reading_text_clock (self->day, g_get_real_time () / G_USEC_PER_SEC);
  g_autofree char *target = ff_shutter_format (1 / (2 * fps));

  ff_entry_reset (self->time, now);
  ff_entry_reset (self->target, target);
  gtk_check_button_set_active (self->moves, ff_learned_sky_moves (job->sky));
}

/* A test picture */

static void
read_picture (GTask *task, gpointer source, gpointer path, GCancellable *cancellable)
{
  g_autofree FfFrame *frame = g_new0 (FfFrame, 1);
  GError *error = NULL;

  if (ff_frame_read (path, frame, &error))
    g_task_return_pointer (task, g_steal_pointer (&frame), g_free);
  else
    g_task_return_error (task, error);
}

static char *
picture_words (const char *name, const FfFrame *frame)
{
  FfMeterReading meter;
  g_autofree char *advice = NULL;

  ff_frame_meter (frame, 0, &meter);
  if (!isfinite (meter.ev100))
    /* Translators: name of a file. */
    return g_strdup_printf (_ ("%s does not say aperture, shutter and ISO; pick one with its "
                               "settings."),
                            name);
  advice = ff_meter_advice (&frame->tones, &meter);
  return g_strdup_printf ("%s: %s", name, advice);
}

static void
take_frame (FfReadingDialog *self, const FfFrame *frame, const char *path)
{
  g_autofree char *name = g_path_get_basename (path);
  g_autofree char *words = picture_words (name, frame);
  gint64 at;

  self->frame = *frame;
  g_free (self->picture);
  self->picture = g_steal_pointer (&name);
  gtk_label_set_label (self->picture_label, words);
  if (ff_frame_instant (frame, ff_day_zone (self->day), &at, NULL))
    {
      g_autofree char *clock = ff_reading_text_clock (self->day, at);

      ff_entry_reset (self->time, clock);
    }
  show_meaning (self);
}

static void
on_picture_read (GObject *source, GAsyncResult *result, gpointer data)
{
  FfReadingDialog *self = FF_READING_DIALOG (source);
  g_autoptr (GError) error = NULL;
  g_autofree FfFrame *frame = g_task_propagate_pointer (G_TASK (result), &error);

  if (g_cancellable_is_cancelled (g_task_get_cancellable (G_TASK (result))) || self->day == NULL)
    return;
  if (frame != NULL)
    take_frame (self, frame, g_task_get_task_data (G_TASK (result)));
  else
    gtk_label_set_label (self->picture_label, error->message);
}

void
ff_reading_dialog_take_picture (FfReadingDialog *self, const char *path)
{
  g_autoptr (GTask) task = NULL;

  g_return_if_fail (FF_IS_READING_DIALOG (self));
  if (self->reading_picture != NULL)
    g_cancellable_cancel (self->reading_picture);
  g_clear_object (&self->reading_picture);
  self->reading_picture = g_cancellable_new ();
  task = g_task_new (self, self->reading_picture, on_picture_read, NULL);
  g_task_set_task_data (task, g_strdup (path), g_free);
  gtk_label_set_label (self->picture_label, _ ("Reading the picture…"));
  ff_pick_set_value (self->method, FF_METHOD_FRAME);
  show_method (self);
  g_task_run_in_thread (task, read_picture);
}

/* Callbacks */

static void
on_file_chosen (GFile *file, gpointer data)
{
  g_autoptr (FfReadingDialog) self = FF_READING_DIALOG (data);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (path != NULL && self->keeper != NULL)
    ff_reading_dialog_take_picture (self, path);
}

static void
on_pick_picture (FfReadingDialog *self)
{
  ff_compat_open_file (GTK_WINDOW (self), _ ("Pick a test picture"), on_file_chosen,
                       g_object_ref (self));
}

static void
on_changed (FfReadingDialog *self)
{
  show_meaning (self);
}

static void
on_add (FfReadingDialog *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfReading) reading = read_all (self, TRUE, &error);

  if (reading != NULL && ff_keeper_add_reading (self->keeper, reading, &error))
    gtk_window_close (GTK_WINDOW (self));
  else if (error != NULL)
    say (self, error->message, "");
  else if (self->picture == NULL && method_of (self) == FF_METHOD_FRAME)
    say (self, _ ("Pick a test picture first."), "");
}

static void
on_job_changed (FfReadingDialog *self)
{
  load_day (self);
  show_meaning (self);
}

/* Overrides */

static void
ff_reading_dialog_dispose (GObject *object)
{
  FfReadingDialog *self = FF_READING_DIALOG (object);

  if (self->reading_picture != NULL)
    g_cancellable_cancel (self->reading_picture);
  g_clear_object (&self->reading_picture);
  g_clear_pointer (&self->day, ff_day_free);
  g_clear_object (&self->keeper);
  G_OBJECT_CLASS (ff_reading_dialog_parent_class)->dispose (object);
}

static void
ff_reading_dialog_finalize (GObject *object)
{
  g_free (FF_READING_DIALOG (object)->picture);
  G_OBJECT_CLASS (ff_reading_dialog_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, time);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, method);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, shown_box);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, shown);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, target);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, ev100);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, lux);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, picture_box);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, picture_label);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, filter);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, looked_at);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, moves);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, says);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, caution);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, who);
  gtk_widget_class_bind_template_child (widget_class, FfReadingDialog, list);
}

static void
ff_reading_dialog_class_init (FfReadingDialogClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = ff_reading_dialog_dispose;
  object_class->finalize = ff_reading_dialog_finalize;
  g_type_ensure (FF_TYPE_ENTRY);
  g_type_ensure (FF_TYPE_PICK);
  g_type_ensure (FF_TYPE_READING_LIST);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-reading-dialog.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, show_method);
  gtk_widget_class_bind_template_callback (widget_class, on_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_pick_picture);
  gtk_widget_class_bind_template_callback (widget_class, on_add);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
ff_reading_dialog_init (FfReadingDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  ff_pick_set_names (self->method, &ff_names_method);
  ff_pick_set_value (self->method, FF_METHOD_SHOWN);
}

/* Public */

FfReadingDialog *
ff_reading_dialog_present (GtkWidget *parent, FfKeeper *keeper, const char *shot_id)
{
  GtkRoot *root = gtk_widget_get_root (parent);
  FfReadingDialog *self;

  if (ff_keeper_job (keeper) == NULL)
    return NULL;
  self = g_object_new (FF_TYPE_READING_DIALOG, "transient-for", root, NULL);
  self->keeper = g_object_ref (keeper);
  load_day (self);
  if (self->day != NULL)
    fill_usual (self);
  fill_shots (self, shot_id);
  show_who (self);
  show_method (self);
  g_signal_connect_object (keeper, "job-changed", G_CALLBACK (on_job_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (keeper, "notify::initials", G_CALLBACK (show_who), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (*ff_entry_get_text (self->time) == '\0' ? GTK_WIDGET (self->time)
                                                                 : GTK_WIDGET (self->shown));
  return self;
}
