/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-window-actions.h"

#include <glib/gi18n-lib.h>

#include "ff-cards.h"

static void
page_action (GSimpleAction *action, GVariant *name, gpointer window)
{
  g_auto (GStrv) parts = g_strsplit (g_variant_get_string (name, NULL), ":", 2);

  ff_window_show_page (window, parts[0]);
  if (parts[0] != NULL && parts[1] != NULL)
    ff_page_go_to (ff_window_get_page (window), parts[1]);
}

static void
show_nth (FfWindow *self, FfPageSort sort, GVariant *number)
{
  int n = g_variant_get_int32 (number);
  const FfPageInfo *info = n > 0 ? ff_pages_nth (sort, (guint) n - 1) : NULL;

  if (info != NULL)
    ff_window_show_page (self, info->name);
}

static void
place_number_action (GSimpleAction *action, GVariant *number, gpointer window)
{
  show_nth (window, FF_PAGE_PLACE, number);
}

static void
part_number_action (GSimpleAction *action, GVariant *number, gpointer window)
{
  show_nth (window, FF_PAGE_PART, number);
}

static void
back_action (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  ff_window_show_page (window, "jobs");
}

static void
undo_action (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  FfKeeper *keeper = ff_window_get_keeper (window);
  g_autofree char *what = g_strdup (ff_keeper_undo_text (keeper));
  g_autofree char *words = NULL;
  g_autoptr (GError) error = NULL;

  if (what == NULL)
    return;
  if (ff_keeper_undo (keeper, &error))
    /* Translators: said after undo; %s is the sentence of what was done before. */
    words = g_strdup_printf (_ ("Undone: %s"), what);
  ff_window_say (window, words != NULL ? words : error->message, FALSE);
}

static void
find_action (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  ff_page_find (ff_window_get_page (window));
}

static void
print_action (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  ff_page_print (ff_window_get_page (window));
}

static void
add_action (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  ff_page_add (ff_window_get_page (window));
}

static void
say_action (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  const char *sentence;
  gboolean undo;

  g_variant_get (parameter, "(&sb)", &sentence, &undo);
  ff_window_say (window, sentence, undo);
}

static void
try_again_action (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  FfKeeper *keeper = ff_window_get_keeper (window);

  if (ff_keeper_try_again (keeper))
    ff_window_show_page (window, "jobs");
  else
    ff_window_say (window, ff_keeper_trouble (keeper), FALSE);
}

/* The emergency cards stand over whatever is on the screen, once. */
static void
cards_action (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  gtk_window_present (
      GTK_WINDOW (ff_cards_window_new (window, ff_window_get_keeper (window))));
}

/* The bare letter, wherever nothing is being typed. */
static gboolean
on_key (GtkWidget *window, guint key, guint code, GdkModifierType state)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (window));

  if ((key != GDK_KEY_e && key != GDK_KEY_E)
      || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0
      || (focus != NULL && (GTK_IS_TEXT (focus) || GTK_IS_TEXT_VIEW (focus))))
    return FALSE;
  return gtk_widget_activate_action (window, "win.cards", NULL);
}

static void
watch_keys (GtkWidget *window)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key), window);
  gtk_widget_add_controller (window, keys);
}

static const GActionEntry actions[] = {
  { "cards", cards_action },
  { "page", page_action, "s" },
  { "place-number", place_number_action, "i" },
  { "part-number", part_number_action, "i" },
  { "back", back_action },
  { "undo", undo_action },
  { "find", find_action },
  { "print", print_action },
  { "add", add_action },
  { "say", say_action, "(sb)" },
  { "try-again", try_again_action },
};

void
ff_window_add_actions (FfWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), actions, G_N_ELEMENTS (actions), self);
  watch_keys (GTK_WIDGET (self));
}

static void
set_enabled (FfWindow *self, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

void
ff_window_update_actions (FfWindow *self)
{
  FfPage *page = ff_window_get_page (self);
  FfKeeper *keeper = ff_window_get_keeper (self);

  set_enabled (self, "undo", ff_keeper_undo_text (keeper) != NULL);
  set_enabled (self, "find", page != NULL && ff_page_can_find (page));
  set_enabled (self, "print", page != NULL && ff_page_can_print (page));
  set_enabled (self, "add", page != NULL && ff_page_can_add (page));
}
