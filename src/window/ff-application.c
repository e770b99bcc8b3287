/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-application.h"

#include <glib/gi18n-lib.h>

#include "ff-compat.h"
#include "ff-demo-folder.h"
#include "ff-help.h"
#include "ff-looks.h"
#include "ff-settings.h"
#include "ff-shortcuts.h"

#define APP_ID "org.fieldfare.Fieldfare"

struct _FfApplication {
  AdwApplication parent_instance;

  char *data_dir;
  char *demo_folder; /* to be thrown away at the end */
  char *page;
  gboolean demo;
  gboolean once; /* leave when the first frame is on the screen */
  FfKeeper *keeper;
};

G_DEFINE_FINAL_TYPE (FfApplication, ff_application, ADW_TYPE_APPLICATION)

static const GOptionEntry options[] = {
  { "data-dir", 0, 0, G_OPTION_ARG_FILENAME, NULL,
    N_ ("Folder of the store (default: the user's data folder)"), N_ ("DIR") },
  { "demo", 0, 0, G_OPTION_ARG_NONE, NULL,
    N_ ("Open the example day, in a folder that is thrown away at the end"), NULL },
  { "page", 0, 0, G_OPTION_ARG_STRING, NULL, N_ ("Page to show first"), N_ ("NAME") },
  { "quit-after-first-frame", 0, 0, G_OPTION_ARG_NONE, NULL,
    N_ ("Leave once the first frame is on the screen"), NULL },
  { "version", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Say the version"), NULL },
  G_OPTION_ENTRY_NULL,
};

/* The command line */

static char *
names_of_pages (void)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < ff_pages_count (); i++)
    g_string_append_printf (names, "%s%s", i > 0 ? ", " : "", ff_pages_get (i)->name);
  return g_string_free (names, FALSE);
}

/* An unknown page is a wrong request: 2, as in the console. */
static int
check_page (FfApplication *self)
{
  g_autofree char *names = NULL;

  if (self->page == NULL || ff_pages_find (self->page) != NULL)
    return -1;
  names = names_of_pages ();
  g_printerr (_ ("fieldfare: --page: there is no page “%s”; accepted: %s\n"), self->page, names);
  return 2;
}

static int
make_demo (FfApplication *self)
{
  g_autoptr (GError) error = NULL;

  self->demo_folder = ff_demo_folder_new (&error);
  if (self->demo_folder == NULL)
    {
      g_printerr ("fieldfare: --demo: %s\n", error->message);
      return 3;
    }
  g_free (self->data_dir);
  self->data_dir = g_strdup (self->demo_folder);
  return -1;
}

static int
ff_application_handle_local_options (GApplication *application, GVariantDict *given)
{
  FfApplication *self = FF_APPLICATION (application);
  int status;

  if (g_variant_dict_contains (given, "version"))
    {
      g_print ("fieldfare %s\n", FF_VERSION);
      return 0;
    }
  g_variant_dict_lookup (given, "data-dir", "^ay", &self->data_dir);
  g_variant_dict_lookup (given, "page", "s", &self->page);
  self->demo = g_variant_dict_contains (given, "demo");
  self->once = g_variant_dict_contains (given, "quit-after-first-frame");
  /* A window on another folder must not be handed over to the one that is already open. */
  if (self->data_dir != NULL || self->demo || self->once)
    g_application_set_flags (application, G_APPLICATION_NON_UNIQUE);
  status = check_page (self);
  return status >= 0 || !self->demo ? status : make_demo (self);
}

/* Actions */

static FfWindow *
window_of (FfApplication *self)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (self));

  while (window != NULL && !FF_IS_WINDOW (window))
    window = gtk_window_get_transient_for (window);
  return FF_WINDOW (window);
}

static void
toggle_daylight_action (GSimpleAction *action, GVariant *parameter, gpointer self)
{
  ff_looks_toggle (ff_looks_get (), "daylight");
}

static void
toggle_night_action (GSimpleAction *action, GVariant *parameter, gpointer self)
{
  ff_looks_toggle (ff_looks_get (), "night");
}

static const FfPageInfo *
page_on_screen (FfWindow *window)
{
  FfPage *page = window != NULL ? ff_window_get_page (window) : NULL;

  return page != NULL ? ff_page_get_info (page) : NULL;
}

static void
help_action (GSimpleAction *action, GVariant *parameter, gpointer self)
{
  FfWindow *window = window_of (self);
  const FfPageInfo *info = page_on_screen (window);
  g_autofree char *sentence = ff_help_show (info != NULL ? info->help : NULL);

  if (sentence != NULL && window != NULL)
    ff_window_say (window, sentence, FALSE);
}

static void
shortcuts_action (GSimpleAction *action, GVariant *parameter, gpointer self)
{
  FfWindow *window = window_of (self);

  if (window != NULL)
    gtk_window_present (
        GTK_WINDOW (ff_shortcuts_window_new (GTK_WINDOW (window), page_on_screen (window))));
}

static void
about_action (GSimpleAction *action, GVariant *parameter, gpointer self)
{
  ff_compat_about (GTK_WINDOW (window_of (self)));
}

static void
quit_action (GSimpleAction *action, GVariant *parameter, gpointer self)
{
  FfWindow *window = window_of (self);

  if (window != NULL)
    gtk_window_close (GTK_WINDOW (window));
}

static const GActionEntry actions[] = {
  { "toggle-daylight", toggle_daylight_action },
  { "toggle-night", toggle_night_action },
  { "help", help_action },
  { "shortcuts", shortcuts_action },
  { "about", about_action },
  { "quit", quit_action },
};

/* The first frame */

static void
after_paint (GdkFrameClock *clock, GtkWidget *window)
{
  if (!gtk_widget_get_mapped (window) || gtk_widget_get_width (window) == 0)
    return;
  g_signal_handlers_disconnect_by_func (clock, after_paint, window);
  gdk_display_sync (gtk_widget_get_display (window));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
on_realize (GtkWidget *window)
{
  g_signal_connect_object (gtk_widget_get_frame_clock (window), "after-paint",
                           G_CALLBACK (after_paint), window, 0);
}

/* The window */

/* The job to begin with: the one last open, or in the demo the first there is. */
static void
open_first_job (FfApplication *self)
{
  GPtrArray *jobs = ff_keeper_jobs (self->keeper);
  g_autofree char *last = ff_settings_dup_text ("job");

  if (self->demo)
    for (guint i = 0; i < jobs->len; i++)
      {
        const FfJob *job = g_ptr_array_index (jobs, i);

        /* The example day itself, not the other job that a filter is out with. */
        if (job->example && ff_keeper_job (self->keeper) == NULL && job->first_off >= 0)
          ff_keeper_open_job (self->keeper, job->id);
      }
  else if (last[0] != '\0')
    ff_keeper_open_job (self->keeper, last);
}

static char *
first_page (FfApplication *self)
{
  g_autofree char *last = NULL;

  if (self->page != NULL)
    return g_strdup (self->page);
  if (self->demo && ff_pages_find ("sorties") != NULL)
    return g_strdup ("sorties");
  last = ff_settings_dup_text ("page");
  return g_strdup (last[0] != '\0' ? last : "jobs");
}

static void
ff_application_activate (GApplication *application)
{
  FfApplication *self = FF_APPLICATION (application);
  FfWindow *window = window_of (self);
  g_autofree char *page = NULL;

  if (window == NULL)
    {
      window = ff_window_new (GTK_APPLICATION (self), self->keeper);
      if (self->once)
        g_signal_connect (window, "realize", G_CALLBACK (on_realize), NULL);
      open_first_job (self);
      page = first_page (self);
      ff_window_show_page (window, page);
    }
  gtk_window_present (GTK_WINDOW (window));
}

/* Overrides */

static void
bind_settings (FfApplication *self)
{
  GSettings *settings = ff_settings_get ();
  g_autoptr (GPropertyAction) look = g_property_action_new ("look", ff_looks_get (), "chosen");

  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (look));
  if (settings == NULL)
    return;
  g_settings_bind (settings, "look", ff_looks_get (), "chosen", G_SETTINGS_BIND_DEFAULT);
  g_settings_bind (settings, "initials", self->keeper, "initials", G_SETTINGS_BIND_DEFAULT);
}

static char *
default_data_dir (void)
{
  return g_build_filename (g_get_user_data_dir (), "fieldfare", NULL);
}

static void
ff_application_startup (GApplication *application)
{
  FfApplication *self = FF_APPLICATION (application);

  G_APPLICATION_CLASS (ff_application_parent_class)->startup (application);
  if (self->data_dir == NULL)
    self->data_dir = default_data_dir ();
  self->keeper = ff_keeper_new (self->data_dir);
  g_action_map_add_action_entries (G_ACTION_MAP (self), actions, G_N_ELEMENTS (actions), self);
  bind_settings (self);
  ff_shortcuts_set (GTK_APPLICATION (self));
}

static void
ff_application_shutdown (GApplication *application)
{
  FfApplication *self = FF_APPLICATION (application);

  G_APPLICATION_CLASS (ff_application_parent_class)->shutdown (application);
  g_clear_object (&self->keeper);
  ff_demo_folder_remove (g_steal_pointer (&self->demo_folder));
}

static void
ff_application_finalize (GObject *object)
{
  FfApplication *self = FF_APPLICATION (object);

  g_free (self->data_dir);
  g_free (self->page);
  g_free (self->demo_folder);
  G_OBJECT_CLASS (ff_application_parent_class)->finalize (object);
}

static void
ff_application_class_init (FfApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = ff_application_finalize;
  application_class->handle_local_options = ff_application_handle_local_options;
  application_class->startup = ff_application_startup;
  application_class->activate = ff_application_activate;
  application_class->shutdown = ff_application_shutdown;
}

static void
ff_application_init (FfApplication *self)
{
  g_application_add_main_option_entries (G_APPLICATION (self), options);
}

/* Public */

FfApplication *
ff_application_new (void)
{
  return g_object_new (FF_TYPE_APPLICATION, "application-id", APP_ID, "resource-base-path",
                       "/org/fieldfare/Fieldfare", NULL);
}
