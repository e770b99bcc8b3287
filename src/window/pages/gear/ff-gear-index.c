/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-index.h"

#include <glib/gi18n-lib.h>

#include "ff-gear-find.h"
#include "ff-gear-list.h"
#include "ff-gear-row.h"

struct _FfGearIndex {
  GtkWidget parent_instance;

  FfKeeper *keeper;
  FfGearFound *found; /* what has the words of the search */
  guint first, shown; /* of them, those that have a row */
  char *id;          /* of the chosen item; NULL: none yet */
  guint at;          /* where it stood in the list */
  gboolean syncing;  /* rows change by our own hand */
  guint reveal_source;
  GtkEditable *search;
  GtkMenuButton *new;
  GtkScrolledWindow *scroller;
  GtkListBox *list;
  GtkButton *earlier, *more;
};

/* A hire house has ten thousand items; nobody looks at more than a few screens of rows. */
#define ROWS_AT_ONCE 60

G_DEFINE_FINAL_TYPE (FfGearIndex, ff_gear_index, GTK_TYPE_WIDGET)

enum { CHOSEN, OPENED, N_SIGNALS };

static guint signals[N_SIGNALS];

/* The rows */

static GPtrArray *
items_of (FfGearIndex *self)
{
  return ff_keeper_items (self->keeper);
}

static GtkListBoxRow *
row_at (FfGearIndex *self, guint i)
{
  return gtk_list_box_get_row_at_index (self->list, (int) i);
}

static GtkListBoxRow *
row_of (FfGearIndex *self, const char *id)
{
  GtkListBoxRow *row;

  for (guint i = 0; (row = row_at (self, i)) != NULL; i++)
    if (g_strcmp0 (ff_gear_row_get_id (FF_GEAR_ROW (row)), id) == 0)
      return row;
  return NULL;
}

static gboolean
is_row_of (GtkListBoxRow *row, const FfItem *item)
{
  return row != NULL && g_str_equal (ff_gear_row_get_id (FF_GEAR_ROW (row)), item->id);
}

/* Puts the row of an item to its place: a moved one keeps its widget, a new one gets one. */
static void
place_row (FfGearIndex *self, const FfItem *item, guint at)
{
  GtkListBoxRow *row = row_of (self, item->id);

  if (row == NULL)
    {
      gtk_list_box_insert (self->list, ff_gear_row_new (item), (int) at);
      return;
    }
  g_object_ref (row);
  gtk_list_box_remove (self->list, GTK_WIDGET (row));
  gtk_list_box_insert (self->list, GTK_WIDGET (row), (int) at);
  g_object_unref (row);
}

/* Rows of what is no longer found, the longest way first. */
static void
remove_rows (FfGearIndex *self)
{
  g_autoptr (GHashTable) wanted = g_hash_table_new (g_str_hash, g_str_equal);
  GtkListBoxRow *row;

  for (guint i = 0; i < self->shown; i++)
    {
      const FfItem *item = g_ptr_array_index (self->found->items, self->first + i);

      g_hash_table_add (wanted, item->id);
    }
  for (guint i = 0; (row = row_at (self, i)) != NULL;)
    if (g_hash_table_contains (wanted, ff_gear_row_get_id (FF_GEAR_ROW (row))))
      i++;
    else
      gtk_list_box_remove (self->list, GTK_WIDGET (row));
}

/* Rows for the items, in their order; FALSE: they stood already, nothing has moved. */
static gboolean
place_rows (FfGearIndex *self)
{
  gboolean moved = FALSE;

  remove_rows (self);
  for (guint i = 0; i < self->shown; i++)
    {
      const FfItem *item = g_ptr_array_index (self->found->items, self->first + i);

      if (!is_row_of (row_at (self, i), item))
        {
          place_row (self, item, i);
          moved = TRUE;
        }
      ff_gear_row_show (FF_GEAR_ROW (row_at (self, i)), item);
    }
  return moved;
}

/* While one types into the search no row has the focus: each shows what stands there now, which is
 * much quicker than other rows. */
static gboolean
fill_rows (FfGearIndex *self)
{
  GtkListBoxRow *row;

  for (guint i = 0; i < self->shown; i++)
    {
      const FfItem *item = g_ptr_array_index (self->found->items, self->first + i);

      row = row_at (self, i);
      if (row != NULL)
        ff_gear_row_show (FF_GEAR_ROW (row), item);
      else
        gtk_list_box_insert (self->list, ff_gear_row_new (item), -1);
    }
  while ((row = row_at (self, self->shown)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  return TRUE;
}

static void
show_rest (FfGearIndex *self)
{
  guint after = self->found->items->len - self->first - self->shown;
  /* Translators: a button: so many more items stand before, or after, those in the list. */
  g_autofree char *earlier = g_strdup_printf (_ ("Show earlier: %u"), self->first);
  g_autofree char *more = g_strdup_printf (_ ("Show more: %u"), after);

  gtk_button_set_label (self->earlier, earlier);
  gtk_button_set_label (self->more, more);
  gtk_widget_set_visible (GTK_WIDGET (self->earlier), self->first > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->more), after > 0);
}

/* Where the chosen item stands among what was found; 0 when it does not. */
static guint
place_of_chosen (FfGearIndex *self)
{
  for (guint i = 0; i < self->found->items->len; i++)
    if (g_strcmp0 (((FfItem *) g_ptr_array_index (self->found->items, i))->id, self->id) == 0)
      return i;
  return 0;
}

/* The rows that stand, or others when what is chosen is not among them. */
static void
choose_rows (FfGearIndex *self, gboolean anew)
{
  guint all = self->found->items->len;
  guint at = place_of_chosen (self);

  if (anew || self->shown < ROWS_AT_ONCE)
    self->shown = ROWS_AT_ONCE;
  if (anew || self->first >= all || at < self->first || at >= self->first + self->shown)
    self->first = at < self->shown ? 0 : at - ROWS_AT_ONCE / 2;
  self->shown = MIN (self->shown, all - self->first);
}

static gboolean
find_and_place (FfGearIndex *self, gboolean anew)
{
  gboolean moved;

  ff_gear_found_free (self->found);
  self->found = ff_gear_find (ff_keeper_store (self->keeper), items_of (self),
                              gtk_editable_get_text (self->search));
  choose_rows (self, anew);
  self->syncing = TRUE;
  moved = anew ? fill_rows (self) : place_rows (self);
  self->syncing = FALSE;
  gtk_list_box_invalidate_headers (self->list);
  show_rest (self);
  return moved;
}

/* The row of the item on the screen or, when that is gone, the one that took its place. */
static GtkListBoxRow *
row_to_show (FfGearIndex *self)
{
  GtkListBoxRow *row = row_of (self, self->id);

  if (row == NULL)
    row = row_at (self, self->at);
  if (row == NULL && self->at > 0)
    row = row_at (self, self->at - 1);
  return row != NULL ? row : row_at (self, 0);
}

static GtkWidget *
make_heading (FfGearIndex *self, FfKind kind)
{
  g_autofree char *counts = ff_gear_found_counts (self->found, kind);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *name = gtk_label_new (ff_gear_plural (kind));
  GtkWidget *count = gtk_label_new (counts);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_xalign (GTK_LABEL (count), 0);
  gtk_label_set_wrap (GTK_LABEL (count), TRUE);
  gtk_widget_add_css_class (box, "gear-heading");
  gtk_widget_add_css_class (name, "heading");
  gtk_widget_add_css_class (count, "soft");
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), count);
  return box;
}

static void
head_row (GtkListBoxRow *row, GtkListBoxRow *before, gpointer index)
{
  FfKind kind = ff_gear_row_get_kind (FF_GEAR_ROW (row));

  if (before != NULL && ff_gear_row_get_kind (FF_GEAR_ROW (before)) == kind)
    gtk_list_box_row_set_header (row, NULL);
  else
    gtk_list_box_row_set_header (row, make_heading (index, kind));
}

/* Choosing */

static gboolean
reveal_row (gpointer index)
{
  FfGearIndex *self = index;
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  graphene_rect_t area;

  self->reveal_source = 0;
  if (row != NULL && gtk_widget_get_mapped (GTK_WIDGET (row))
      && gtk_widget_compute_bounds (GTK_WIDGET (row), GTK_WIDGET (self->list), &area))
    gtk_adjustment_clamp_page (adjustment, area.origin.y - area.size.height,
                               area.origin.y + 2 * area.size.height);
  return G_SOURCE_REMOVE;
}

/* Where the row stands is known after the next layout, which runs at a higher priority. */
static void
reveal_soon (FfGearIndex *self)
{
  if (self->reveal_source == 0)
    self->reveal_source = g_timeout_add_full (G_PRIORITY_LOW, 40, reveal_row, self, NULL);
}

static void
choose (FfGearIndex *self, GtkListBoxRow *row)
{
  if (row == NULL)
    return;
  self->syncing = TRUE;
  gtk_list_box_select_row (self->list, row);
  self->syncing = FALSE;
  self->at = (guint) gtk_list_box_row_get_index (row);
  ff_set_text (&self->id, ff_gear_row_get_id (FF_GEAR_ROW (row)));
}

static void
choose_and_say (FfGearIndex *self, GtkListBoxRow *row)
{
  choose (self, row);
  g_signal_emit (self, signals[CHOSEN], 0);
}

/* Callbacks */

static void
on_search (FfGearIndex *self)
{
  GtkListBoxRow *row;

  find_and_place (self, TRUE);
  row = row_of (self, self->id);
  if (row != NULL)
    choose (self, row);
  else
    choose_and_say (self, row_at (self, 0));
  reveal_soon (self);
}

static void
on_earlier (FfGearIndex *self)
{
  guint by = MIN (self->first, ROWS_AT_ONCE);

  self->first -= by;
  self->shown += by;
  self->syncing = TRUE;
  place_rows (self);
  self->syncing = FALSE;
  show_rest (self);
}

static void
on_more (FfGearIndex *self)
{
  self->shown = MIN (self->shown + ROWS_AT_ONCE, self->found->items->len - self->first);
  self->syncing = TRUE;
  place_rows (self);
  self->syncing = FALSE;
  show_rest (self);
}

static void
on_search_done (FfGearIndex *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
on_search_stop (FfGearIndex *self)
{
  gtk_editable_set_text (self->search, "");
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
on_row_selected (FfGearIndex *self, GtkListBoxRow *row)
{
  if (!self->syncing && row != NULL)
    choose_and_say (self, row);
}

static void
on_row_activated (FfGearIndex *self, GtkListBoxRow *row)
{
  choose_and_say (self, row);
  g_signal_emit (self, signals[OPENED], 0);
}

/* Overrides */

static gboolean
ff_gear_index_grab_focus (GtkWidget *widget)
{
  FfGearIndex *self = FF_GEAR_INDEX (widget);
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);

  if (row == NULL)
    row = row_at (self, 0);
  return gtk_widget_grab_focus (row != NULL ? GTK_WIDGET (row) : GTK_WIDGET (self->search));
}

static void
ff_gear_index_dispose (GObject *object)
{
  FfGearIndex *self = FF_GEAR_INDEX (object);
  GtkWidget *child;

  g_clear_handle_id (&self->reveal_source, g_source_remove);
  /* A list that goes away asks once more for what it shows, and the search may be gone first. */
  if (self->list != NULL)
    {
      gtk_list_box_set_header_func (self->list, NULL, NULL, NULL);
    }
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  self->list = NULL;
  g_clear_object (&self->keeper);
  G_OBJECT_CLASS (ff_gear_index_parent_class)->dispose (object);
}

static void
ff_gear_index_finalize (GObject *object)
{
  g_free (FF_GEAR_INDEX (object)->id);
  ff_gear_found_free (FF_GEAR_INDEX (object)->found);
  G_OBJECT_CLASS (ff_gear_index_parent_class)->finalize (object);
}

static guint
plain_signal (const char *name)
{
  return g_signal_new (name, FF_TYPE_GEAR_INDEX, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-gear-index.ui");
  gtk_widget_class_bind_template_child (widget_class, FfGearIndex, search);
  gtk_widget_class_bind_template_child (widget_class, FfGearIndex, new);
  gtk_widget_class_bind_template_child (widget_class, FfGearIndex, scroller);
  gtk_widget_class_bind_template_child (widget_class, FfGearIndex, list);
  gtk_widget_class_bind_template_child (widget_class, FfGearIndex, earlier);
  gtk_widget_class_bind_template_child (widget_class, FfGearIndex, more);
  gtk_widget_class_bind_template_callback (widget_class, on_earlier);
  gtk_widget_class_bind_template_callback (widget_class, on_more);
  gtk_widget_class_bind_template_callback (widget_class, on_search);
  gtk_widget_class_bind_template_callback (widget_class, on_search_stop);
  gtk_widget_class_bind_template_callback (widget_class, on_row_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_row_activated);
  gtk_widget_class_bind_template_callback (widget_class, on_search_done);
}

static void
ff_gear_index_class_init (FfGearIndexClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = ff_gear_index_dispose;
  object_class->finalize = ff_gear_index_finalize;
  widget_class->grab_focus = ff_gear_index_grab_focus;
  signals[CHOSEN] = plain_signal ("chosen");
  signals[OPENED] = plain_signal ("opened");
  bind_template (widget_class);
}

/* Keys of the list alone: in a field Delete deletes letters. Tab leaves the list, as it leaves any
 * other choice of one; by itself it would walk through all rows. */
static void
add_list_keys (FfGearIndex *self)
{
  static const struct {
    guint key;
    GdkModifierType modifiers;
    const char *action;
  } list_keys[] = {
    { GDK_KEY_Delete, 0, "gear.delete" },
    { GDK_KEY_Return, 0, "gear.edit" },
    { GDK_KEY_KP_Enter, 0, "gear.edit" },
    { GDK_KEY_Tab, 0, "gear.item" },
    { GDK_KEY_ISO_Left_Tab, GDK_SHIFT_MASK, "win.find" },
    { GDK_KEY_Tab, GDK_SHIFT_MASK, "win.find" },
  };
  GtkEventController *controller = gtk_shortcut_controller_new ();

  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_CAPTURE);
  for (guint i = 0; i < G_N_ELEMENTS (list_keys); i++)
    gtk_shortcut_controller_add_shortcut (
        GTK_SHORTCUT_CONTROLLER (controller),
        gtk_shortcut_new (gtk_keyval_trigger_new (list_keys[i].key, list_keys[i].modifiers),
                          gtk_named_action_new (list_keys[i].action)));
  gtk_widget_add_controller (GTK_WIDGET (self->list), controller);
}

static void
ff_gear_index_init (FfGearIndex *self)
{
  g_autoptr (GMenuModel) kinds = ff_gear_kinds_menu ();

  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_menu_button_set_menu_model (self->new, kinds);
  gtk_list_box_set_header_func (self->list, head_row, self, NULL);
  add_list_keys (self);
}

/* Public */

void
ff_gear_index_set_keeper (FfGearIndex *self, FfKeeper *keeper)
{
  g_return_if_fail (FF_IS_GEAR_INDEX (self));
  g_set_object (&self->keeper, keeper);
}

void
ff_gear_index_refresh (FfGearIndex *self)
{
  g_return_if_fail (FF_IS_GEAR_INDEX (self));
  if (find_and_place (self, FALSE))
    reveal_soon (self);
  choose (self, row_to_show (self));
}

const char *
ff_gear_index_get_id (FfGearIndex *self)
{
  g_return_val_if_fail (FF_IS_GEAR_INDEX (self), NULL);
  return self->id;
}

void
ff_gear_index_choose (FfGearIndex *self, const char *id)
{
  g_return_if_fail (FF_IS_GEAR_INDEX (self));
  gtk_editable_set_text (self->search, "");
  ff_set_text (&self->id, id);
}

void
ff_gear_index_find (FfGearIndex *self)
{
  g_return_if_fail (FF_IS_GEAR_INDEX (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

void
ff_gear_index_add (FfGearIndex *self)
{
  g_return_if_fail (FF_IS_GEAR_INDEX (self));
  gtk_menu_button_popup (self->new);
}

static GMenuModel *
files_menu (void)
{
  GMenu *menu = g_menu_new ();

  g_menu_append (menu, _ ("From a CSV file…"), "gear.import");
  g_menu_append (menu, _ ("Into a CSV file…"), "gear.export");
  return G_MENU_MODEL (menu);
}

GMenuModel *
ff_gear_kinds_menu (void)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenuModel) files = files_menu ();

  for (guint i = 0; i < ff_names_kind.n_names; i++)
    {
      const char *text = ff_name_text (&ff_names_kind, (int) i);
      g_autoptr (GMenuItem) item = g_menu_item_new (text, NULL);

      g_menu_item_set_action_and_target (item, "gear.new", "s",
                                         ff_name_token (&ff_names_kind, (int) i));
      g_menu_append_item (menu, item);
    }
  g_menu_append_section (menu, _ ("All of it"), files);
  return G_MENU_MODEL (menu);
}
