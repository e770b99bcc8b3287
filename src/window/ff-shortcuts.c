/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shortcuts.h"

#include <glib/gi18n-lib.h>

#define MOST_PLACES 6
#define MOST_PARTS 7

typedef struct {
  const char *action; /* with its parameter, as GTK writes it */
  const char *keys[3];
  const char *text;
} Key;

static const Key keys[] = {
  { "win.back", { "<Alt>Left" }, N_ ("All jobs") },
  { "win.find", { "<Control>f" }, N_ ("Find") },
  { "win.add", { "<Control>n" }, N_ ("Add one more") },
  { "win.undo", { "<Control>z" }, N_ ("Undo") },
  { "win.page::weather", { "F7" }, N_ ("Weather call of the open job") },
  { "win.print", { "<Control>p" }, N_ ("Print") },
  { "win.cards", { "F6" }, N_ ("Emergency cards; E where nothing is typed") },
  { "app.toggle-daylight", { "F8" }, N_ ("Daylight look, on and off") },
  { "app.toggle-night", { "F9" }, N_ ("Night look, on and off") },
  { "app.help", { "F1" }, N_ ("Help on this page") },
  { "app.shortcuts", { "<Control>question", "<Control>slash" }, N_ ("All keys") },
  { "window.close", { "<Control>w" }, N_ ("Close the window") },
  { "app.quit", { "<Control>q" }, N_ ("Leave the program") },
};

static void
set_numbered (GtkApplication *application, const char *action, const char *modifier, int most)
{
  for (int n = 1; n <= most; n++)
    {
      g_autofree char *detailed = g_strdup_printf ("%s(%d)", action, n);
      g_autofree char *accel = g_strdup_printf ("<%s>%d", modifier, n);

      gtk_application_set_accels_for_action (application, detailed,
                                             (const char *[]) { accel, NULL });
    }
}

void
ff_shortcuts_set (GtkApplication *application)
{
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_application_set_accels_for_action (application, keys[i].action,
                                           (const char *[]) { keys[i].keys[0], keys[i].keys[1],
                                                              NULL });
  set_numbered (application, "win.place-number", "Alt", MOST_PLACES);
  set_numbered (application, "win.part-number", "Control", MOST_PARTS);
}

/* The list */

static char *
words_of_keys (const char *accel)
{
  guint key;
  GdkModifierType modifiers;

  if (!gtk_accelerator_parse (accel, &key, &modifiers))
    return g_strdup (accel);
  return gtk_accelerator_get_label (key, modifiers);
}

static void
add_row (GtkListBox *list, const char *accel, const char *text)
{
  g_autofree char *words = words_of_keys (accel);
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *key = gtk_label_new (words);

  gtk_widget_add_css_class (key, "key");
  gtk_widget_set_valign (key, GTK_ALIGN_CENTER);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), text);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), key);
  gtk_list_box_append (list, row);
}

static GtkListBox *
add_group (GtkBox *box, const char *title)
{
  GtkWidget *heading = gtk_label_new (title);
  GtkWidget *list = gtk_list_box_new ();

  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_widget_add_css_class (heading, "heading");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (list, "boxed-list");
  gtk_box_append (box, heading);
  gtk_box_append (box, list);
  return GTK_LIST_BOX (list);
}

static void
add_pages (GtkBox *box, FfPageSort sort, const char *title, const char *modifier)
{
  GtkListBox *list;
  const FfPageInfo *info;

  if (ff_pages_nth (sort, 0) == NULL)
    return;
  list = add_group (box, title);
  for (guint n = 0; (info = ff_pages_nth (sort, n)) != NULL; n++)
    {
      g_autofree char *accel = g_strdup_printf ("<%s>%u", modifier, n + 1);

      add_row (list, accel, _ (info->title));
    }
}

static void
add_page_keys (GtkBox *box, const FfPageInfo *page)
{
  GtkListBox *list;

  if (page == NULL || page->keys == NULL)
    return;
  list = add_group (box, _ (page->title));
  for (const FfPageKey *key = page->keys; key->keys != NULL; key++)
    add_row (list, key->keys, _ (key->text));
}

static GtkBox *
list_of_keys (const FfPageInfo *page)
{
  GtkBox *box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 12));
  GtkListBox *list;

  gtk_widget_add_css_class (GTK_WIDGET (box), "keys");
  add_page_keys (box, page);
  list = add_group (box, _ ("Everywhere"));
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    add_row (list, keys[i].keys[0], _ (keys[i].text));
  add_pages (box, FF_PAGE_PLACE, _ ("Places"), "Alt");
  add_pages (box, FF_PAGE_PART, _ ("Parts of the job"), "Control");
  return box;
}

static void
close_on_escape (GtkWidget *window)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (controller),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                        gtk_named_action_new ("window.close")));
  gtk_widget_add_controller (window, controller);
}

GtkWidget *
ff_shortcuts_window_new (GtkWindow *parent, const FfPageInfo *page)
{
  GtkWidget *window = g_object_new (ADW_TYPE_WINDOW, "title", _ ("Keys"), "transient-for", parent,
                                    "modal", TRUE, "default-width", 460, "default-height", 640,
                                    NULL);
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_box_append (GTK_BOX (content), adw_header_bar_new ());
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled),
                                 GTK_WIDGET (list_of_keys (page)));
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_box_append (GTK_BOX (content), scrolled);
  adw_window_set_content (ADW_WINDOW (window), content);
  close_on_escape (window);
  return window;
}
