/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-cards.h"

#include <glib/gi18n-lib.h>

#include "ff-lines.h"
#include "ff-list-book.h"

static void
add_item (GtkBox *box, const FfCheckItem *item)
{
  g_autofree char *text = item->response[0] != '\0'
                              ? g_strdup_printf ("%s: %s", item->challenge, item->response)
                              : g_strdup (item->challenge);

  for (guint i = 0; i < item->guards->len; i++)
    gtk_box_append (box, ff_line_new (((const FfGuard *) g_ptr_array_index (item->guards, i))->text,
                                    "run-guard"));
  /* What is to be known by heart stands boxed (CAP 676, chapter 7). */
  gtk_box_append (box, ff_line_new (text, item->critical ? "card-first" : "card-then"));
}

static GtkWidget *
card_new (const FfListEntry *entry)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkBox *box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 10));

  gtk_widget_add_css_class (GTK_WIDGET (box), "card-body");
  gtk_box_append (box, ff_line_new (entry->title, "card-title"));
  for (guint s = 0; s < entry->list->sections->len; s++)
    {
      const FfCheckSection *section = g_ptr_array_index (entry->list->sections, s);

      for (guint i = 0; i < section->items->len; i++)
        add_item (box, g_ptr_array_index (section->items, i));
    }
  gtk_box_append (box, ff_line_new (_ ("The card helps the memory. Training, local rules and the "
                                     "aircraft's own instructions come first. Esc: all cards."),
                                  "soft"));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), GTK_WIDGET (box));
  return scrolled;
}

static void
open_card (GtkStack *stack, guint number)
{
  g_autofree char *name = g_strdup_printf ("%u", number);

  if (gtk_stack_get_child_by_name (stack, name) != NULL)
    gtk_stack_set_visible_child_name (stack, name);
}

static void
on_card (GtkStack *stack, GtkButton *button)
{
  open_card (stack, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "number")));
}

static gboolean
on_key (GtkStack *stack, guint key, guint code, GdkModifierType state)
{
  if (key >= GDK_KEY_1 && key <= GDK_KEY_9)
    open_card (stack, key - GDK_KEY_0);
  else if (key >= GDK_KEY_KP_1 && key <= GDK_KEY_KP_9)
    open_card (stack, key - GDK_KEY_KP_0);
  else if (key != GDK_KEY_Escape)
    return FALSE;
  else if (g_strcmp0 (gtk_stack_get_visible_child_name (stack), "all") == 0)
    gtk_window_close (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (stack))));
  else
    gtk_stack_set_visible_child_name (stack, "all");
  return TRUE;
}

static void
add_card (GtkStack *stack, GtkBox *index, const FfListEntry *entry, guint number)
{
  g_autofree char *name = g_strdup_printf ("%u", number);
  g_autofree char *label = g_strdup_printf ("%u  %s", number, entry->title);
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_label_set_xalign (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), 0);
  gtk_widget_add_css_class (button, "card-choice");
  g_object_set_data (G_OBJECT (button), "number", GUINT_TO_POINTER (number));
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_card), stack, G_CONNECT_SWAPPED);
  gtk_box_append (index, button);
  gtk_stack_add_named (stack, card_new (entry), name);
}

static void
add_cards (GtkStack *stack, FfStore *store)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkBox *index = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 8));
  g_autoptr (GPtrArray) book = store != NULL ? ff_list_book_load (store, NULL) : NULL;
  guint number = 0;

  gtk_widget_add_css_class (GTK_WIDGET (index), "card-body");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), GTK_WIDGET (index));
  gtk_stack_add_named (stack, scrolled, "all");
  for (guint i = 0; book != NULL && i < book->len; i++)
    {
      const FfListEntry *entry = g_ptr_array_index (book, i);

      if (entry->list->phase == FF_PHASE_EMERGENCY)
        add_card (stack, index, entry, ++number);
    }
}

GtkWidget *
ff_cards_window_new (GtkWindow *parent, FfKeeper *keeper)
{
  GtkWidget *window = g_object_new (ADW_TYPE_WINDOW, "title", _ ("Emergency cards"),
                                    "transient-for", parent, "modal", TRUE, "default-width", 560,
                                    "default-height", 640, NULL);
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *stack = gtk_stack_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_stack_set_hhomogeneous (GTK_STACK (stack), FALSE);
  gtk_widget_set_vexpand (stack, TRUE);
  add_cards (GTK_STACK (stack), ff_keeper_store (keeper));
  gtk_box_append (GTK_BOX (content), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (content), stack);
  adw_window_set_content (ADW_WINDOW (window), content);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (on_key), stack, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (window, keys);
  return window;
}
