/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-lists-page.h"

#include <glib/gi18n-lib.h>

#include "ff-compat.h"
#include "ff-file.h"
#include "ff-flow.h"
#include "ff-list-editor.h"
#include "ff-list-print.h"
#include "ff-list-reader.h"
#include "ff-split.h"

struct _FfListsPage {
  FfPage parent_instance;

  GPtrArray *book; /* FfListEntry; NULL: trouble */
  char *id;        /* of the list that is shown */
  gboolean filling;
  FfSplit *split;
  GtkListBox *index;
  GtkStack *stack;
  GtkBox *reader;
  GtkWidget *editor, *back;
};

G_DEFINE_FINAL_TYPE (FfListsPage, ff_lists_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Return", N_ ("Go to the list") },
  { "<Control>e", N_ ("Write the list, or read it") },
  { "<Control>o", N_ ("Take a list in from a file") },
  { "<Control>s", N_ ("Give the list out to a file") },
  { "Escape", N_ ("Back to all lists") },
  { NULL },
};

const FfPageInfo ff_page_info_lists = {
  .name = "lists",
  .title = N_ ("Lists"),
  .icon = "ff-lists-symbolic",
  .sort = FF_PAGE_PLACE,
  .get_type = ff_lists_page_get_type,
  .help = "lists",
  .keys = page_keys,
};

static FfKeeper *
keeper_of (FfListsPage *self)
{
  return ff_page_get_keeper (FF_PAGE (self));
}

static const FfListEntry *
entry_of (FfListsPage *self)
{
  const FfListEntry *entry
      = self->book != NULL && self->id != NULL ? ff_list_book_get (self->book, self->id) : NULL;

  if (entry == NULL && self->book != NULL && self->book->len > 0)
    entry = g_ptr_array_index (self->book, 0);
  return entry;
}

/* Showing */

static GtkWidget *
label_new (const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css);
  return label;
}

static GtkWidget *
row_new (const FfListEntry *entry)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  guint n = ff_checklist_count (entry->list, ~0u);
  g_autofree char *items = g_strdup_printf (ngettext ("%u item", "%u items", n), n);
  g_autofree char *words = g_strdup_printf (
      "%s · %s%s%s", ff_name_text (&ff_names_phase, (int) entry->list->phase), items,
      entry->own ? "" : " · ", entry->own ? "" : _ ("example"));

  gtk_widget_add_css_class (row, "gear-row");
  gtk_box_append (GTK_BOX (box), label_new (entry->title, "run-challenge"));
  gtk_box_append (GTK_BOX (box), label_new (words, "gear-caption"));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, entry->title,
                                  -1);
  return row;
}

static void
fill_index (FfListsPage *self)
{
  const FfListEntry *shown = entry_of (self);
  GtkListBoxRow *row;

  self->filling = TRUE;
  while ((row = gtk_list_box_get_row_at_index (self->index, 0)) != NULL)
    gtk_list_box_remove (self->index, GTK_WIDGET (row));
  for (guint i = 0; self->book != NULL && i < self->book->len; i++)
    {
      const FfListEntry *entry = g_ptr_array_index (self->book, i);
      GtkWidget *widget = row_new (entry);

      gtk_list_box_append (self->index, widget);
      if (entry == shown)
        gtk_list_box_select_row (self->index, GTK_LIST_BOX_ROW (widget));
    }
  self->filling = FALSE;
}

static void
show_entry (FfListsPage *self)
{
  const FfListEntry *entry = entry_of (self);

  if (entry == NULL)
    return;
  if (self->id == NULL)
    self->id = g_strdup (entry->id);
  ff_list_reader_fill (self->reader, entry);
  ff_list_editor_set (FF_LIST_EDITOR (self->editor), entry);
}

static void
load (FfListsPage *self)
{
  FfStore *store = ff_keeper_store (keeper_of (self));
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->book, g_ptr_array_unref);
  if (store != NULL)
    self->book = ff_list_book_load (store, &error);
  ff_page_say_error (FF_PAGE (self), &error);
  fill_index (self);
}

/* What can be done */

static gboolean
is_writing (FfListsPage *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->stack), "write") == 0;
}

static void
write_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfListsPage *self = FF_LISTS_PAGE (widget);

  ff_split_set_show_content (self->split, TRUE);
  gtk_stack_set_visible_child_name (self->stack, is_writing (self) ? "read" : "write");
  if (is_writing (self))
    gtk_widget_grab_focus (self->editor);
  else
    gtk_widget_grab_focus (GTK_WIDGET (gtk_list_box_get_selected_row (self->index)));
}

void
ff_lists_page_import (FfListsPage *self, GFile *file)
{
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = path != NULL ? ff_file_read (path, FF_CHECKLIST_BYTES, &error) : NULL;
  char *id = text != NULL ? ff_keeper_save_list (keeper_of (self), NULL, text, &error) : NULL;

  if (id != NULL)
    {
      g_free (self->id);
      self->id = id;
      load (self);
      show_entry (self);
      ff_page_say (FF_PAGE (self), _ ("The list is taken in."), FALSE);
    }
  ff_page_say_error (FF_PAGE (self), &error);
}

void
ff_lists_page_export (FfListsPage *self, GFile *file)
{
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  const FfListEntry *entry = entry_of (self);
  g_autoptr (GError) error = NULL;

  /* The dialog has asked about a file that is there. */
  if (path != NULL && entry != NULL
      && g_file_set_contents (path, entry->text, -1, &error))
    ff_page_say (FF_PAGE (self), _ ("The list is written, as it stands here."), FALSE);
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
on_import_chosen (GFile *file, gpointer self)
{
  if (file != NULL)
    ff_lists_page_import (self, file);
  g_object_unref (self);
}

static void
on_export_chosen (GFile *file, gpointer self)
{
  if (file != NULL)
    ff_lists_page_export (self, file);
  g_object_unref (self);
}

static void
import_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  ff_compat_open_file (GTK_WINDOW (gtk_widget_get_root (widget)), _ ("Take a list in"),
                       on_import_chosen, g_object_ref (widget));
}

static void
export_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  const FfListEntry *entry = entry_of (FF_LISTS_PAGE (widget));
  g_autofree char *name = NULL;

  if (entry == NULL)
    return;
  name = g_strdup_printf ("%s.md", entry->name[0] != '\0' ? entry->name : entry->title);
  g_strdelimit (name, "/:?", '-');
  ff_compat_save_file (GTK_WINDOW (gtk_widget_get_root (widget)), _ ("Give the list out"), name,
                       on_export_chosen, g_object_ref (widget));
}

static void
back_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfListsPage *self = FF_LISTS_PAGE (widget);
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->index);

  ff_split_set_show_content (self->split, FALSE);
  gtk_stack_set_visible_child_name (self->stack, "read");
  if (row != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (row));
}

static void
on_selected (FfListsPage *self, GtkListBoxRow *row)
{
  int i = row != NULL ? gtk_list_box_row_get_index (row) : -1;

  if (self->filling || i < 0 || self->book == NULL || i >= (int) self->book->len)
    return;
  g_free (self->id);
  self->id = g_strdup (((const FfListEntry *) g_ptr_array_index (self->book, i))->id);
  show_entry (self);
}

static void
on_activated (FfListsPage *self)
{
  ff_split_set_show_content (self->split, TRUE);
}

static void
on_kept (FfListsPage *self)
{
  g_autoptr (GPtrArray) before = g_steal_pointer (&self->book);

  load (self);
  if (entry_of (self) != NULL)
    ff_list_reader_fill (self->reader, entry_of (self));
}

/* Overrides */

static void
ff_lists_page_refresh (FfPage *page, FfChanged changed)
{
  FfListsPage *self = FF_LISTS_PAGE (page);

  if (changed != FF_CHANGED_ALL)
    return;
  load (self);
  show_entry (self);
}

static gboolean
ff_lists_page_grab_focus (GtkWidget *widget)
{
  FfListsPage *self = FF_LISTS_PAGE (widget);
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->index);

  if (is_writing (self))
    return gtk_widget_grab_focus (self->editor);
  return row != NULL && gtk_widget_grab_focus (GTK_WIDGET (row));
}

static void
ff_lists_page_print (FfPage *page)
{
  const FfListEntry *entry = entry_of (FF_LISTS_PAGE (page));

  if (entry != NULL)
    ff_list_print (entry->list, page);
}

static void
ff_lists_page_dispose (GObject *object)
{
  FfListsPage *self = FF_LISTS_PAGE (object);

  g_clear_pointer (&self->book, g_ptr_array_unref);
  g_clear_pointer (&self->id, g_free);
  G_OBJECT_CLASS (ff_lists_page_parent_class)->dispose (object);
}

static void
ff_lists_page_constructed (GObject *object)
{
  FfListsPage *self = FF_LISTS_PAGE (object);

  G_OBJECT_CLASS (ff_lists_page_parent_class)->constructed (object);
  self->editor = ff_list_editor_new (keeper_of (self));
  g_signal_connect_swapped (self->editor, "kept", G_CALLBACK (on_kept), self);
  gtk_stack_add_named (self->stack, self->editor, "write");
}

static void
ff_lists_page_class_init (FfListsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->constructed = ff_lists_page_constructed;
  G_OBJECT_CLASS (klass)->dispose = ff_lists_page_dispose;
  widget_class->grab_focus = ff_lists_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_lists_page_refresh;
  FF_PAGE_CLASS (klass)->print = ff_lists_page_print;
  gtk_widget_class_install_action (widget_class, "lists.write", NULL, write_action);
  gtk_widget_class_install_action (widget_class, "lists.import", NULL, import_action);
  gtk_widget_class_install_action (widget_class, "lists.export", NULL, export_action);
  gtk_widget_class_install_action (widget_class, "lists.back", NULL, back_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_e, GDK_CONTROL_MASK, "lists.write",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_o, GDK_CONTROL_MASK, "lists.import",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, GDK_CONTROL_MASK, "lists.export",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "lists.back", NULL);
}

/* Building */

static void
add_button (FfFlow *flow, const char *label, const char *action)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  ff_flow_append (flow, button, -1);
}

static GtkWidget *
scrolled_new (GtkWidget *child)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), child);
  gtk_widget_set_vexpand (scrolled, TRUE);
  return scrolled;
}

static GtkWidget *
content_new (FfListsPage *self)
{
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkWidget *flow = ff_flow_new (8, 6);

  add_button (FF_FLOW (flow), _ ("A_ll lists"), "lists.back");
  self->back = gtk_widget_get_first_child (flow);
  add_button (FF_FLOW (flow), _ ("_Write"), "lists.write");
  add_button (FF_FLOW (flow), _ ("Take _in…"), "lists.import");
  add_button (FF_FLOW (flow), _ ("Give _out…"), "lists.export");
  add_button (FF_FLOW (flow), _ ("_Print…"), "win.print");
  self->reader = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  self->stack = GTK_STACK (gtk_stack_new ());
  gtk_stack_set_hhomogeneous (self->stack, FALSE);
  gtk_stack_add_named (self->stack, scrolled_new (GTK_WIDGET (self->reader)), "read");
  gtk_widget_add_css_class (content, "page-body");
  gtk_box_append (GTK_BOX (content), flow);
  gtk_box_append (GTK_BOX (content), GTK_WIDGET (self->stack));
  return content;
}

static void
ff_lists_page_init (FfListsPage *self)
{
  GtkWidget *side;

  self->index = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_activate_on_single_click (self->index, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->index), "gear-list");
  side = scrolled_new (GTK_WIDGET (self->index));
  gtk_widget_add_css_class (side, "gear-side");
  self->split = FF_SPLIT (g_object_new (FF_TYPE_SPLIT, "collapse-width", 720, "sidebar-width", 348,
                                        "show-content", FALSE, "sidebar", side, "content",
                                        content_new (self), NULL));
  g_object_bind_property (self->split, "collapsed", self->back, "visible", G_BINDING_SYNC_CREATE);
  g_signal_connect_swapped (self->index, "row-selected", G_CALLBACK (on_selected), self);
  g_signal_connect_swapped (self->index, "row-activated", G_CALLBACK (on_activated), self);
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->split));
}
