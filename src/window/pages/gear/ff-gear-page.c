/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-page.h"

#include <glib/gi18n-lib.h>

#include "ff-block.h"
#include "ff-gear-files.h"
#include "ff-gear-index.h"
#include "ff-gear-item.h"
#include "ff-gear-list.h"
#include "ff-gear-words.h"
#include "ff-split.h"

struct _FfGearPage {
  FfPage parent_instance;

  GtkStack *stack;
  FfSplit *split;
  FfGearIndex *index;
  FfGearItem *item;
  GtkMenuButton *first_new;
};

G_DEFINE_FINAL_TYPE (FfGearPage, ff_gear_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Return", N_ ("Go to the item") },
  { "Escape", N_ ("Back to the list") },
  { "<Control>e", N_ ("Change the state") },
  { "<Control>d", N_ ("Duplicate the item") },
  { "Delete", N_ ("Delete the item") },
  { NULL },
};

const FfPageInfo ff_page_info_gear = {
  .name = "gear",
  .title = N_ ("Gear"),
  .icon = "ff-gear-symbolic",
  .sort = FF_PAGE_PLACE,
  .get_type = ff_gear_page_get_type,
  .help = "gear",
  .keys = page_keys,
};

static FfKeeper *
keeper_of (gpointer page)
{
  return ff_page_get_keeper (FF_PAGE (page));
}

static GPtrArray *
items_of (gpointer page)
{
  return ff_keeper_items (keeper_of (page));
}

static const char *
id_of (gpointer page)
{
  return ff_gear_index_get_id (FF_GEAR_PAGE (page)->index);
}

/* The item */

static void
show_item (FfGearPage *self)
{
  const FfItem *item = ff_keeper_find_item (keeper_of (self), id_of (self));
  const FfJob *job = ff_keeper_job (keeper_of (self));

  if (item == NULL)
    return;
  ff_gear_item_show (self->item, item);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "gear.spare",
                                 job != NULL
                                     && g_ptr_array_find_with_equal_func (job->item_ids, item->id,
                                                                          g_str_equal, NULL));
}

static gboolean
is_narrow (FfGearPage *self)
{
  return ff_split_get_collapsed (self->split);
}

static void
show_all (FfGearPage *self)
{
  gboolean any = items_of (self)->len > 0;

  ff_gear_index_refresh (self->index);
  gtk_stack_set_visible_child_name (self->stack, any ? "list" : "empty");
  if (!any)
    ff_split_set_show_content (self->split, FALSE);
  show_item (self);
}

/* What can be done */

/* A new item is on the screen with its label to be written. */
static void
add (FfGearPage *self, FfItem *item)
{
  g_autofree char *what
      /* Translators: what can be undone: a new item, by its label. */
      = g_strdup_printf (_ ("Item “%s” added"), item->label);
  g_autoptr (GError) error = NULL;

  ff_gear_index_choose (self->index, item->id);
  if (ff_keeper_save_item (keeper_of (self), item, what, &error))
    {
      ff_split_set_show_content (self->split, TRUE);
      ff_gear_item_edit (self->item);
    }
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
new_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  g_autoptr (FfItem) item = NULL;
  int kind;

  if (!ff_name_parse (&ff_names_kind, g_variant_get_string (parameter, NULL), &kind, NULL))
    return;
  item = ff_gear_new ((FfKind) kind, items_of (widget));
  add (FF_GEAR_PAGE (widget), item);
}

static void
duplicate_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfGearPage *self = FF_GEAR_PAGE (widget);
  g_autoptr (FfItem) copy = ff_keeper_dup_item (keeper_of (self), id_of (self));

  if (copy == NULL)
    return;
  ff_gear_make_another (copy, items_of (self));
  add (self, copy);
}

static void
delete_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfGearPage *self = FF_GEAR_PAGE (widget);
  g_autofree char *id = g_strdup (id_of (self));
  g_autoptr (GError) error = NULL;

  if (id == NULL)
    return;
  if (ff_keeper_delete_item (keeper_of (self), id, &error))
    {
      ff_page_say_last_change (FF_PAGE (self));
      ff_split_set_show_content (self->split, FALSE);
      gtk_widget_grab_focus (GTK_WIDGET (self->index));
    }
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
save_job_list (FfGearPage *self, const FfJob *job, const char *format)
{
  const FfItem *item = ff_keeper_find_item (keeper_of (self), id_of (self));
  g_autofree char *what = g_strdup_printf ("%s: %s", format, item->label);
  g_autoptr (GError) error = NULL;

  if (ff_keeper_save_job (keeper_of (self), job, what, &error))
    ff_page_say_last_change (FF_PAGE (self));
  ff_page_say_error (FF_PAGE (self), &error);
}

static FfJob *
dup_open_job (FfGearPage *self)
{
  const FfJob *job = ff_keeper_job (keeper_of (self));

  return job != NULL && id_of (self) != NULL ? ff_keeper_dup_job (keeper_of (self), job->id) : NULL;
}

static void
use_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfGearPage *self = FF_GEAR_PAGE (widget);
  g_autoptr (FfJob) job = dup_open_job (self);

  if (job == NULL)
    return;
  g_ptr_array_add (job->item_ids, g_strdup (id_of (self)));
  save_job_list (self, job, _ ("Put on the list of the job"));
}

static void
spare_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfGearPage *self = FF_GEAR_PAGE (widget);
  g_autoptr (FfJob) job = dup_open_job (self);
  guint at;

  if (job == NULL
      || !g_ptr_array_find_with_equal_func (job->item_ids, id_of (self), g_str_equal, &at))
    return;
  g_ptr_array_remove_index (job->item_ids, at);
  save_job_list (self, job, _ ("Taken off the list of the job"));
}

static void
state_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfGearPage *self = FF_GEAR_PAGE (widget);

  ff_split_set_show_content (self->split, TRUE);
  ff_gear_item_change_state (self->item);
}

/* To the item: its first field, or the first thing in it. */
static void
edit_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfGearPage *self = FF_GEAR_PAGE (widget);

  ff_split_set_show_content (self->split, TRUE);
  if (g_str_equal (action, "gear.edit"))
    ff_gear_item_edit (self->item);
  else
    gtk_widget_child_focus (GTK_WIDGET (self->item), GTK_DIR_TAB_FORWARD);
}

static void
back_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfGearPage *self = FF_GEAR_PAGE (widget);

  ff_split_set_show_content (self->split, FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->index));
}

static void
file_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  if (g_str_equal (action, "gear.export"))
    ff_gear_files_export (FF_PAGE (widget));
  else
    ff_gear_files_import (FF_PAGE (widget));
}

/* Callbacks */

static void
on_opened (FfGearPage *self)
{
  if (!is_narrow (self))
    return;
  ff_split_set_show_content (self->split, TRUE);
  gtk_widget_child_focus (GTK_WIDGET (self->item), GTK_DIR_TAB_FORWARD);
}

/* Overrides */

static void
ff_gear_page_refresh (FfPage *page, FfChanged changed)
{
  if (changed & (FF_CHANGED_ITEMS | FF_CHANGED_JOBS | FF_CHANGED_JOB))
    show_all (FF_GEAR_PAGE (page));
}

static gboolean
ff_gear_page_grab_focus (GtkWidget *widget)
{
  FfGearPage *self = FF_GEAR_PAGE (widget);

  if (items_of (self)->len == 0)
    return gtk_widget_grab_focus (GTK_WIDGET (self->first_new));
  if (is_narrow (self) && ff_split_get_show_content (self->split))
    return gtk_widget_child_focus (GTK_WIDGET (self->item), GTK_DIR_TAB_FORWARD);
  gtk_widget_grab_focus (GTK_WIDGET (self->index));
  return TRUE;
}

static void
ff_gear_page_find (FfPage *page)
{
  FfGearPage *self = FF_GEAR_PAGE (page);

  ff_split_set_show_content (self->split, FALSE);
  ff_gear_index_find (self->index);
}

static void
ff_gear_page_add (FfPage *page)
{
  FfGearPage *self = FF_GEAR_PAGE (page);

  ff_split_set_show_content (self->split, FALSE);
  if (items_of (self)->len > 0)
    ff_gear_index_add (self->index);
  else
    gtk_menu_button_popup (self->first_new);
}

static void
install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "gear.new", "s", new_action);
  gtk_widget_class_install_action (widget_class, "gear.duplicate", NULL, duplicate_action);
  gtk_widget_class_install_action (widget_class, "gear.delete", NULL, delete_action);
  gtk_widget_class_install_action (widget_class, "gear.export", NULL, file_action);
  gtk_widget_class_install_action (widget_class, "gear.import", NULL, file_action);
  gtk_widget_class_install_action (widget_class, "gear.use", NULL, use_action);
  gtk_widget_class_install_action (widget_class, "gear.spare", NULL, spare_action);
  gtk_widget_class_install_action (widget_class, "gear.state", NULL, state_action);
  gtk_widget_class_install_action (widget_class, "gear.edit", NULL, edit_action);
  gtk_widget_class_install_action (widget_class, "gear.item", NULL, edit_action);
  gtk_widget_class_install_action (widget_class, "gear.back", NULL, back_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_d, GDK_CONTROL_MASK, "gear.duplicate",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_e, GDK_CONTROL_MASK, "gear.state",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "gear.back", NULL);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-gear-page.ui");
  gtk_widget_class_bind_template_child (widget_class, FfGearPage, stack);
  gtk_widget_class_bind_template_child (widget_class, FfGearPage, split);
  gtk_widget_class_bind_template_child (widget_class, FfGearPage, index);
  gtk_widget_class_bind_template_child (widget_class, FfGearPage, item);
  gtk_widget_class_bind_template_child (widget_class, FfGearPage, first_new);
  gtk_widget_class_bind_template_callback (widget_class, show_item);
  gtk_widget_class_bind_template_callback (widget_class, on_opened);
}

static void
ff_gear_page_constructed (GObject *object)
{
  FfGearPage *self = FF_GEAR_PAGE (object);

  G_OBJECT_CLASS (ff_gear_page_parent_class)->constructed (object);
  ff_gear_index_set_keeper (self->index, keeper_of (self));
  ff_gear_item_set_keeper (self->item, keeper_of (self));
}

static void
ff_gear_page_class_init (FfGearPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->constructed = ff_gear_page_constructed;
  widget_class->grab_focus = ff_gear_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_gear_page_refresh;
  FF_PAGE_CLASS (klass)->find = ff_gear_page_find;
  FF_PAGE_CLASS (klass)->add = ff_gear_page_add;
  g_type_ensure (FF_TYPE_BLOCK);
  g_type_ensure (FF_TYPE_SPLIT);
  g_type_ensure (FF_TYPE_GEAR_INDEX);
  g_type_ensure (FF_TYPE_GEAR_ITEM);
  bind_template (widget_class);
  install_actions (widget_class);
}

static void
ff_gear_page_init (FfGearPage *self)
{
  g_autoptr (GMenuModel) kinds = ff_gear_kinds_menu ();

  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_menu_button_set_menu_model (self->first_new, kinds);
}
