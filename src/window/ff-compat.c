/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-compat.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#define APP_ID "org.fieldfare.Fieldfare"

/* What a dialog must remember until it is answered. */
typedef struct {
  FfFileChosen chosen;
  FfConfirmed confirmed;
  gpointer user_data;
} Waiting;

static Waiting *
waiting_new (FfFileChosen chosen, FfConfirmed confirmed, gpointer user_data)
{
  Waiting *waiting = g_new0 (Waiting, 1);

  waiting->chosen = chosen;
  waiting->confirmed = confirmed;
  waiting->user_data = user_data;
  return waiting;
}

/* Files */

#if GTK_CHECK_VERSION(4, 10, 0)

static void
save_finished (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autofree Waiting *waiting = user_data;
  g_autoptr (GFile) file = gtk_file_dialog_save_finish (GTK_FILE_DIALOG (source), result, NULL);

  waiting->chosen (file, waiting->user_data);
}

static void
open_finished (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autofree Waiting *waiting = user_data;
  g_autoptr (GFile) file = gtk_file_dialog_open_finish (GTK_FILE_DIALOG (source), result, NULL);

  waiting->chosen (file, waiting->user_data);
}

static void
folder_finished (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autofree Waiting *waiting = user_data;
  g_autoptr (GFile) file
      = gtk_file_dialog_select_folder_finish (GTK_FILE_DIALOG (source), result, NULL);

  waiting->chosen (file, waiting->user_data);
}

void
ff_compat_choose_folder (GtkWindow *parent,
                         const char *title,
                         FfFileChosen chosen,
                         gpointer user_data)
{
  g_autoptr (GtkFileDialog) dialog = gtk_file_dialog_new ();

  gtk_file_dialog_set_title (dialog, title);
  gtk_file_dialog_select_folder (dialog, parent, NULL, folder_finished,
                                 waiting_new (chosen, NULL, user_data));
}

void
ff_compat_save_file (GtkWindow *parent,
                     const char *title,
                     const char *suggested_name,
                     FfFileChosen chosen,
                     gpointer user_data)
{
  g_autoptr (GtkFileDialog) dialog = gtk_file_dialog_new ();

  gtk_file_dialog_set_title (dialog, title);
  gtk_file_dialog_set_initial_name (dialog, suggested_name);
  gtk_file_dialog_save (dialog, parent, NULL, save_finished,
                        waiting_new (chosen, NULL, user_data));
}

void
ff_compat_open_file (GtkWindow *parent,
                     const char *title,
                     FfFileChosen chosen,
                     gpointer user_data)
{
  g_autoptr (GtkFileDialog) dialog = gtk_file_dialog_new ();

  gtk_file_dialog_set_title (dialog, title);
  gtk_file_dialog_open (dialog, parent, NULL, open_finished,
                        waiting_new (chosen, NULL, user_data));
}

#else

static void
chooser_answered (GtkNativeDialog *dialog, int response, gpointer user_data)
{
  g_autofree Waiting *waiting = user_data;
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  waiting->chosen (file, waiting->user_data);
  g_object_unref (dialog);
}

static GtkFileChooserNative *
show_chooser (GtkWindow *parent,
              const char *title,
              GtkFileChooserAction action,
              FfFileChosen chosen,
              gpointer user_data)
{
  GtkFileChooserNative *dialog
      = gtk_file_chooser_native_new (title, parent, action, NULL, NULL);

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect (dialog, "response", G_CALLBACK (chooser_answered),
                    waiting_new (chosen, NULL, user_data));
  return dialog;
}

void
ff_compat_save_file (GtkWindow *parent,
                     const char *title,
                     const char *suggested_name,
                     FfFileChosen chosen,
                     gpointer user_data)
{
  GtkFileChooserNative *dialog
      = show_chooser (parent, title, GTK_FILE_CHOOSER_ACTION_SAVE, chosen, user_data);

  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), suggested_name);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

void
ff_compat_choose_folder (GtkWindow *parent,
                         const char *title,
                         FfFileChosen chosen,
                         gpointer user_data)
{
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (show_chooser (
      parent, title, GTK_FILE_CHOOSER_ACTION_SELECT_FOLDER, chosen, user_data)));
}

void
ff_compat_open_file (GtkWindow *parent,
                     const char *title,
                     FfFileChosen chosen,
                     gpointer user_data)
{
  GtkFileChooserNative *dialog
      = show_chooser (parent, title, GTK_FILE_CHOOSER_ACTION_OPEN, chosen, user_data);

  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

#endif

/* Questions */

static void
question_answered (GObject *dialog, const char *response, gpointer user_data)
{
  g_autofree Waiting *waiting = user_data;

  if (g_str_equal (response, "do"))
    waiting->confirmed (waiting->user_data);
}

#if ADW_CHECK_VERSION(1, 5, 0)

void
ff_compat_confirm (GtkWindow *parent,
                   const char *heading,
                   const char *body,
                   const char *action,
                   FfConfirmed confirmed,
                   gpointer user_data)
{
  AdwDialog *dialog = adw_alert_dialog_new (heading, body);
  AdwAlertDialog *alert = ADW_ALERT_DIALOG (dialog);

  adw_alert_dialog_add_responses (alert, "cancel", _ ("_Cancel"), "do", action, NULL);
  adw_alert_dialog_set_default_response (alert, "cancel");
  adw_alert_dialog_set_close_response (alert, "cancel");
  g_signal_connect (dialog, "response", G_CALLBACK (question_answered),
                    waiting_new (NULL, confirmed, user_data));
  adw_dialog_present (dialog, GTK_WIDGET (parent));
}

#else

void
ff_compat_confirm (GtkWindow *parent,
                   const char *heading,
                   const char *body,
                   const char *action,
                   FfConfirmed confirmed,
                   gpointer user_data)
{
  GtkWidget *dialog = adw_message_dialog_new (parent, heading, body);
  AdwMessageDialog *message = ADW_MESSAGE_DIALOG (dialog);

  adw_message_dialog_add_responses (message, "cancel", _ ("_Cancel"), "do", action, NULL);
  adw_message_dialog_set_default_response (message, "cancel");
  adw_message_dialog_set_close_response (message, "cancel");
  g_signal_connect (dialog, "response", G_CALLBACK (question_answered),
                    waiting_new (NULL, confirmed, user_data));
  gtk_window_present (GTK_WINDOW (dialog));
}

#endif

/* About */

static const char *
about_comments (void)
{
  return _ ("Field kit of a small aerial-camera crew. It holds no law and gives no permission: "
            "the pilot decides.");
}

#if ADW_CHECK_VERSION(1, 5, 0)

void
ff_compat_about (GtkWindow *parent)
{
  AdwDialog *dialog = ADW_DIALOG (
      g_object_new (ADW_TYPE_ABOUT_DIALOG, "application-name", "Fieldfare", "application-icon",
                    APP_ID, "version", FF_VERSION, "license-type", GTK_LICENSE_GPL_3_0, "comments",
                    about_comments (), NULL));

  adw_dialog_present (dialog, GTK_WIDGET (parent));
}

#else

void
ff_compat_about (GtkWindow *parent)
{
  GtkWidget *dialog = GTK_WIDGET (
      g_object_new (ADW_TYPE_ABOUT_WINDOW, "application-name", "Fieldfare", "application-icon",
                    APP_ID, "version", FF_VERSION, "license-type", GTK_LICENSE_GPL_3_0, "comments",
                    about_comments (), "transient-for", parent, NULL));

  gtk_window_present (GTK_WINDOW (dialog));
}

#endif

/* Style */

void
ff_compat_load_css (GtkCssProvider *provider, const char *css)
{
#if GTK_CHECK_VERSION(4, 12, 0)
  gtk_css_provider_load_from_string (provider, css);
#else
  gtk_css_provider_load_from_data (provider, css, -1);
#endif
}
