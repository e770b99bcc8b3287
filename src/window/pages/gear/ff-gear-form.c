/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-form.h"

#include <glib/gi18n-lib.h>

#include "ff-columns.h"
#include "ff-entry.h"
#include "ff-gear-list.h"
#include "ff-pick.h"

struct _FfGearForm {
  GtkWidget parent_instance;

  FfKeeper *keeper;
  FfKind kind;
  char *id;         /* of the item on the screen */
  GPtrArray *cells; /* GtkWidget: FfEntry, FfPick or GtkCheckButton */
  gboolean setting; /* widgets change by our own hand */
};

G_DEFINE_FINAL_TYPE (FfGearForm, ff_gear_form, GTK_TYPE_WIDGET)

/* Which field a widget is about. */
static const FfGearField *
field_of (gpointer widget)
{
  return g_object_get_data (widget, "field");
}

static const FfField *
record_field_of (FfGearForm *self, gpointer widget)
{
  return ff_gear_record_field (self->kind, field_of (widget));
}

static const char *
name_of (gpointer widget)
{
  return g_dgettext (GETTEXT_PACKAGE, field_of (widget)->label);
}

/* Storing */

/* The label itself changes with each letter, so that change goes without it. */
static char *
what_changed (gpointer widget, const FfItem *item)
{
  if (field_of (widget)->how == FF_GEAR_LABEL)
    return g_strdup (_ ("Label changed"));
  /* Translators: what can be undone: a field, and the label of the item: "Strength of ND32". */
  return g_strdup_printf (_ ("“%s” of %s changed"), name_of (widget), item->label);
}

static gboolean
save (FfGearForm *self, gpointer widget, const FfItem *item, GError **error)
{
  g_autofree char *what = what_changed (widget, item);

  return ff_keeper_save_item (self->keeper, item, what, error);
}

static void
on_typed (FfGearForm *self, const char *text, FfEntry *entry)
{
  g_autoptr (FfItem) item = ff_keeper_dup_item (self->keeper, self->id);
  g_autoptr (GError) error = NULL;

  if (item != NULL
      && ff_gear_read (item, field_of (entry), text, ff_keeper_items (self->keeper), &error))
    save (self, entry, item, &error);
  ff_entry_complain (entry, error != NULL ? error->message : NULL);
}

/* A choice among the names of a table, or among records. */
static gboolean
is_name (FfGearForm *self, gpointer widget)
{
  return record_field_of (self, widget)->type == FF_FIELD_NAME;
}

static void
on_picked (FfGearForm *self, int value, FfPick *pick)
{
  g_autoptr (FfItem) item = ff_keeper_dup_item (self->keeper, self->id);
  FfGearChoices *choices = g_object_get_data (G_OBJECT (pick), "choices");
  g_autoptr (GError) error = NULL;

  if (item == NULL || (choices == NULL && !is_name (self, pick)))
    return;
  if (is_name (self, pick))
    *ff_field_whole (record_field_of (self, pick), item) = value;
  else
    ff_set_text (ff_field_text (record_field_of (self, pick), item),
                 g_ptr_array_index (choices->ids, (guint) value));
  if (!save (self, pick, item, &error))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.say", "(sb)", error->message, FALSE);
}

static void
on_checked (FfGearForm *self, GtkCheckButton *button)
{
  g_autoptr (FfItem) item = NULL;
  g_autoptr (GError) error = NULL;

  if (self->setting || (item = ff_keeper_dup_item (self->keeper, self->id)) == NULL)
    return;
  *ff_field_whole (record_field_of (self, button), item) = gtk_check_button_get_active (button);
  if (!save (self, button, item, &error))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.say", "(sb)", error->message, FALSE);
}

/* Showing */

static void
show_entry (FfEntry *entry, const FfItem *item, const FfGearWorld *world, gboolean another)
{
  g_autofree char *text = ff_gear_text (item, field_of (entry));
  g_autofree char *remark = ff_gear_remark (item, field_of (entry), world);

  if (another)
    ff_entry_reset (entry, text);
  else
    ff_entry_set_text (entry, text);
  ff_entry_set_remark (entry, remark);
  if (ff_gear_is_question (remark))
    gtk_widget_add_css_class (GTK_WIDGET (entry), "asking");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (entry), "asking");
}

static gboolean
same_texts (const FfGearChoices *a, const FfGearChoices *b)
{
  return a != NULL
         && g_strv_equal ((const char *const *) a->texts->pdata,
                          (const char *const *) b->texts->pdata);
}

/* A list that is open is not filled anew under the fingers when nothing in it has changed. */
static void
show_pick (FfGearForm *self, FfPick *pick, const FfItem *item)
{
  const FfGearChoices *before = g_object_get_data (G_OBJECT (pick), "choices");
  FfGearChoices *choices
      = ff_gear_choices_new (field_of (pick)->name, ff_keeper_items (self->keeper),
                             ff_keeper_members (self->keeper));

  if (!same_texts (before, choices))
    ff_pick_set_texts (pick, (const char *const *) choices->texts->pdata);
  ff_pick_set_value (
      pick, ff_gear_choices_find (choices, *ff_field_text (record_field_of (self, pick), item)));
  g_object_set_data_full (G_OBJECT (pick), "choices", choices,
                          (GDestroyNotify) ff_gear_choices_free);
}

static char *
today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_format (now, "%Y-%m-%d");
}

/* Building */

static GtkWidget *
make_entry (FfGearForm *self, const FfGearField *field)
{
  GtkWidget *entry = ff_entry_new (g_dgettext (GETTEXT_PACKAGE, field->label),
                                   field->unit != NULL ? g_dgettext (GETTEXT_PACKAGE, field->unit)
                                                       : NULL);

  g_signal_connect_object (entry, "typed", G_CALLBACK (on_typed), self, G_CONNECT_SWAPPED);
  return entry;
}

static GtkWidget *
make_pick (FfGearForm *self, const FfGearField *field)
{
  GtkWidget *pick = ff_pick_new (g_dgettext (GETTEXT_PACKAGE, field->label),
                                 ff_gear_record_field (self->kind, field)->names);

  g_signal_connect_object (pick, "picked", G_CALLBACK (on_picked), self, G_CONNECT_SWAPPED);
  return pick;
}

static GtkWidget *
make_check (FfGearForm *self, const FfGearField *field)
{
  GtkWidget *check = gtk_check_button_new_with_label (g_dgettext (GETTEXT_PACKAGE, field->label));

  gtk_widget_set_valign (check, GTK_ALIGN_CENTER);
  g_signal_connect_object (check, "toggled", G_CALLBACK (on_checked), self, G_CONNECT_SWAPPED);
  return check;
}

static GtkWidget *
make_cell (FfGearForm *self, const FfGearField *field)
{
  FfFieldType type = ff_gear_record_field (self->kind, field)->type;
  GtkWidget *cell;

  if (type == FF_FIELD_ID || type == FF_FIELD_NAME)
    cell = make_pick (self, field);
  else if (type == FF_FIELD_FLAG)
    cell = make_check (self, field);
  else
    cell = make_entry (self, field);
  g_object_set_data (G_OBJECT (cell), "field", (gpointer) field);
  g_ptr_array_add (self->cells, cell);
  return cell;
}

static void
add_group (FfGearForm *self, const FfGearGroup *group)
{
  GtkWidget *sheet = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *columns = ff_columns_new (17, 3);

  gtk_widget_add_css_class (sheet, "sheet");
  gtk_widget_add_css_class (sheet, "gear-group");
  if (group->title != NULL)
    {
      GtkWidget *heading = gtk_label_new (g_dgettext (GETTEXT_PACKAGE, group->title));

      gtk_label_set_xalign (GTK_LABEL (heading), 0);
      gtk_widget_add_css_class (heading, "heading");
      gtk_box_append (GTK_BOX (sheet), heading);
    }
  for (guint i = 0; i < group->n_fields; i++)
    ff_columns_append (FF_COLUMNS (columns), make_cell (self, &group->fields[i]),
                       group->fields[i].wide);
  gtk_box_append (GTK_BOX (sheet), columns);
  gtk_widget_set_parent (sheet, GTK_WIDGET (self));
}

/* Overrides */

static gboolean
ff_gear_form_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (g_ptr_array_index (FF_GEAR_FORM (widget)->cells, 0));
}

static void
ff_gear_form_dispose (GObject *object)
{
  FfGearForm *self = FF_GEAR_FORM (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_ptr_array_set_size (self->cells, 0);
  g_clear_object (&self->keeper);
  G_OBJECT_CLASS (ff_gear_form_parent_class)->dispose (object);
}

static void
ff_gear_form_finalize (GObject *object)
{
  FfGearForm *self = FF_GEAR_FORM (object);

  g_ptr_array_unref (self->cells);
  g_free (self->id);
  G_OBJECT_CLASS (ff_gear_form_parent_class)->finalize (object);
}

static void
ff_gear_form_class_init (FfGearFormClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = ff_gear_form_dispose;
  object_class->finalize = ff_gear_form_finalize;
  widget_class->grab_focus = ff_gear_form_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
ff_gear_form_init (FfGearForm *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 12);
  self->cells = g_ptr_array_new ();
}

/* Public */

GtkWidget *
ff_gear_form_new (FfKind kind, FfKeeper *keeper)
{
  FfGearForm *self = g_object_new (FF_TYPE_GEAR_FORM, NULL);
  FfGearGroup groups[FF_GEAR_MAX_GROUPS];
  guint n = ff_gear_groups (kind, groups);

  self->kind = kind;
  self->keeper = g_object_ref (keeper);
  for (guint i = 0; i < n; i++)
    add_group (self, &groups[i]);
  return GTK_WIDGET (self);
}

void
ff_gear_form_show (FfGearForm *self, const FfItem *item)
{
  g_autofree char *day = today ();
  FfGearWorld world = { ff_keeper_items (self->keeper), ff_keeper_jobs (self->keeper), day };
  gboolean another = g_strcmp0 (self->id, item->id) != 0;

  g_return_if_fail (FF_IS_GEAR_FORM (self) && item->kind == self->kind);
  if (another)
    ff_set_text (&self->id, item->id);
  self->setting = TRUE;
  for (guint i = 0; i < self->cells->len; i++)
    {
      GtkWidget *cell = g_ptr_array_index (self->cells, i);

      if (FF_IS_ENTRY (cell))
        show_entry (FF_ENTRY (cell), item, &world, another);
      else if (FF_IS_PICK (cell) && is_name (self, cell))
        ff_pick_set_value (FF_PICK (cell), *ff_field_whole (record_field_of (self, cell), item));
      else if (FF_IS_PICK (cell))
        show_pick (self, FF_PICK (cell), item);
      else
        gtk_check_button_set_active (GTK_CHECK_BUTTON (cell),
                                     *ff_field_whole (record_field_of (self, cell), item));
    }
  self->setting = FALSE;
}
