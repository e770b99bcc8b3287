/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-briefs-keys.h"

/* An open list of choices has keys of its own. */
static gboolean
is_in_popover (GtkWidget *widget)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (widget));

  return focus != NULL && gtk_widget_get_ancestor (focus, GTK_TYPE_POPOVER) != NULL;
}

/* What goes into a field is no key of the page. */
static gboolean
is_typing (GtkWidget *widget)
{
  return GTK_IS_EDITABLE (gtk_root_get_focus (gtk_widget_get_root (widget)));
}

static gboolean
on_page_key (GtkWidget *widget, GVariant *by, gpointer user_data)
{
  return !is_in_popover (widget)
         && gtk_widget_activate_action (widget, "sheet.turn", "i", g_variant_get_int32 (by));
}

/* An arrow to the side means that side: where one reads from right to left, the next page is at the
 * left. */
static gboolean
on_side_key (GtkWidget *widget, GVariant *by, gpointer user_data)
{
  const int sign = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL ? -1 : 1;

  return !is_in_popover (widget) && !is_typing (widget)
         && gtk_widget_activate_action (widget, "sheet.turn", "i",
                                        sign * g_variant_get_int32 (by));
}

static gboolean
on_pan_key (GtkWidget *widget, GVariant *by, gpointer user_data)
{
  return gtk_widget_activate_action (widget, "sheet.pan", "i", g_variant_get_int32 (by));
}

static gboolean
on_zoom_key (GtkWidget *widget, GVariant *by, gpointer user_data)
{
  return !is_typing (widget)
         && gtk_widget_activate_action (widget, "sheet.zoom", "i", g_variant_get_int32 (by));
}

static gboolean
on_save_key (GtkWidget *widget, GVariant *unused, gpointer user_data)
{
  return gtk_widget_activate_action (widget, "sheet.save", NULL);
}

static gboolean
on_scroll_key (GtkWidget *widget, GVariant *by, gpointer user_data)
{
  return gtk_widget_activate_action (widget, "sheet.scroll", "i", g_variant_get_int32 (by));
}

static void
add_key (GtkEventController *keys, const char *trigger, GtkShortcutFunc callback, int by)
{
  GtkShortcut *shortcut = gtk_shortcut_new (gtk_shortcut_trigger_parse_string (trigger),
                                            gtk_callback_action_new (callback, NULL, NULL));

  gtk_shortcut_set_arguments (shortcut, g_variant_new_int32 (by));
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys), shortcut);
}

void
ff_briefs_keys_add (GtkWidget *page, GtkWidget *large)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();
  GtkEventController *scroll = gtk_shortcut_controller_new ();

  /* Before the scrolled window, which would scroll by a page, takes them. */
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  add_key (keys, "Left", on_side_key, -1);
  add_key (keys, "Right", on_side_key, 1);
  add_key (keys, "Page_Up", on_page_key, -1);
  add_key (keys, "Page_Down", on_page_key, 1);
  add_key (keys, "plus", on_zoom_key, 1);
  add_key (keys, "KP_Add", on_zoom_key, 1);
  add_key (keys, "equal", on_zoom_key, 1);
  add_key (keys, "minus", on_zoom_key, -1);
  add_key (keys, "KP_Subtract", on_zoom_key, -1);
  add_key (keys, "<Shift>Left", on_pan_key, -1);
  add_key (keys, "<Shift>Right", on_pan_key, 1);
  add_key (keys, "<Control>s", on_save_key, 0);
  gtk_widget_add_controller (page, keys);
  add_key (scroll, "Up", on_scroll_key, -1);
  add_key (scroll, "Down", on_scroll_key, 1);
  gtk_widget_add_controller (large, scroll);
}
