/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shots-page.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-block.h"
#include "ff-shot-advice.h"
#include "ff-shot-beside.h"
#include "ff-shot-editor.h"
#include "ff-shot-needs.h"
#include "ff-shot-row.h"
#include "ff-shots-list.h"
#include "ff-split.h"

struct _FfShotsPage {
  FfPage parent_instance;

  char *id;         /* of the edited shot; NULL: none */
  int index;        /* where it stood last, for when it is gone */
  gboolean syncing; /* rows change by our own hand */

  GtkStack *stack;
  FfSplit *split;
  GtkListBox *list;
  GtkScrolledWindow *scroller;
  GtkWidget *back, *up, *down;
  guint scroll_source; /* brings the chosen row into sight */
  GtkLabel *label, *title;
  FfBlock *need;
  FfShotEditor *editor;
  FfShotNeeds *needs;
};

G_DEFINE_FINAL_TYPE (FfShotsPage, ff_shots_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "<Alt>Up", N_ ("Move the shot up") },
  { "<Alt>Down", N_ ("Move the shot down") },
  { "<Control>d", N_ ("Duplicate the shot") },
  { "Return", N_ ("Edit the shot") },
  { "Escape", N_ ("Back to the list") },
  { "Delete", N_ ("Delete the shot, in the list") },
  { NULL },
};

const FfPageInfo ff_page_info_shots = {
  .name = "shots",
  .title = N_ ("Shots"),
  .icon = "ff-shots-symbolic",
  .sort = FF_PAGE_PART,
  .get_type = ff_shots_page_get_type,
  .help = "shots",
  .keys = page_keys,
};

static FfKeeper *
keeper_of (gpointer page)
{
  return ff_page_get_keeper (FF_PAGE (page));
}

static const FfShot *
shot_here (FfShotsPage *self)
{
  return ff_keeper_find_shot (keeper_of (self), self->id);
}

/* What the keeper knows of a shot */

static FfShotPlace
place_of (FfShotsPage *self, const FfShot *shot)
{
  return ff_shots_find_place (ff_keeper_plan (keeper_of (self)), shot);
}

static GTimeZone *
zone_of (FfShotsPage *self)
{
  const FfDay *day = ff_keeper_day (keeper_of (self));

  return day != NULL ? ff_day_zone (day) : NULL;
}

/* When its take starts by the plan; 0: it is not planned. */
static gint64
start_of (FfShotsPage *self, const FfShot *shot)
{
  FfShotPlace place = place_of (self, shot);

  return place.take != NULL ? place.take->from : 0;
}

/* The need when its take starts, or as its window opens. Stills need none. */
static double
need_of (FfShotsPage *self, const FfShot *shot)
{
  const FfDay *day = ff_keeper_day (keeper_of (self));
  gint64 from, to, start = start_of (self, shot);
  FfShotMoment moment;

  if (day == NULL || !ff_day_shot_window (day, shot, &from, &to, NULL))
    return NAN;
  ff_day_shot_moment (day, shot, start >= from && start <= to ? start : from, &moment);
  if (shot->intent == FF_INTENT_STILL || shot->intent == FF_INTENT_BRACKET)
    return 0;
  return moment.need_stops;
}

/* The list */

static void
show_row (FfShotsPage *self, FfShotRow *row, const FfShot *shot)
{
  FfShotPlace place = place_of (self, shot);
  g_autofree char *words
      = ff_shots_place_words (&place, zone_of (self), ff_keeper_is_planning (keeper_of (self)));

  ff_shot_row_show (row, shot, need_of (self, shot), words, place.miss != NULL);
}

static GtkListBoxRow *
nth_row (FfShotsPage *self, guint n)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int) n);

  if (row == NULL)
    {
      row = GTK_LIST_BOX_ROW (ff_shot_row_new ());
      gtk_list_box_append (self->list, GTK_WIDGET (row));
    }
  return row;
}

/* Another shot is edited from here on: what that costs counts from now. */
static void
set_shot (FfShotsPage *self, const char *id)
{
  if (g_strcmp0 (self->id, id) == 0)
    return;
  ff_set_text (&self->id, id);
  ff_keeper_mark_plan (keeper_of (self));
}

/* The shot that stays chosen: the one before, or, when it is gone, the one in its place. */
static void
choose_shot (FfShotsPage *self, GPtrArray *shots)
{
  for (guint i = 0; i < shots->len; i++)
    if (g_strcmp0 (((const FfShot *) g_ptr_array_index (shots, i))->id, self->id) == 0)
      {
        self->index = (int) i;
        return;
      }
  g_clear_pointer (&self->id, g_free);
  self->index = CLAMP (self->index, 0, MAX ((int) shots->len - 1, 0));
  if (shots->len > 0)
    set_shot (self, ((const FfShot *) g_ptr_array_index (shots, (guint) self->index))->id);
  else
    ff_split_set_show_content (self->split, FALSE);
}

static gboolean
list_has_focus (FfShotsPage *self)
{
  return gtk_widget_get_focus_child (GTK_WIDGET (self->list)) != NULL;
}

static void
show_list (FfShotsPage *self)
{
  GPtrArray *shots = ff_keeper_shots (keeper_of (self));
  gboolean focus = list_has_focus (self);
  GtkListBoxRow *row;

  choose_shot (self, shots);
  self->syncing = TRUE;
  for (guint i = 0; i < shots->len; i++)
    show_row (self, FF_SHOT_ROW (nth_row (self, i)), g_ptr_array_index (shots, i));
  while ((row = gtk_list_box_get_row_at_index (self->list, (int) shots->len)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  row = gtk_list_box_get_row_at_index (self->list, self->index);
  gtk_list_box_select_row (self->list, row);
  if (focus && row != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (row));
  self->syncing = FALSE;
  gtk_stack_set_visible_child_name (self->stack, shots->len > 0 ? "list" : "empty");
}

/* A row that is new has no place yet: it gets one before the loop is idle. */
static gboolean
scroll_to_row (gpointer user_data)
{
  FfShotsPage *self = user_data;
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, self->index);
  GtkAdjustment *scroll = gtk_list_box_get_adjustment (self->list);
  graphene_rect_t bounds;

  self->scroll_source = 0;
  if (row != NULL && scroll != NULL
      && gtk_widget_compute_bounds (GTK_WIDGET (row), GTK_WIDGET (self->list), &bounds))
    gtk_adjustment_clamp_page (scroll, (double) bounds.origin.y,
                               (double) (bounds.origin.y + bounds.size.height));
  return G_SOURCE_REMOVE;
}

static void
bring_into_sight (FfShotsPage *self)
{
  if (self->scroll_source == 0)
    self->scroll_source = g_idle_add (scroll_to_row, self);
}

/* The edited shot */

/* What the day has gained or lost since the shot was opened; undo takes it back. */
static void
show_edit (FfShotsPage *self)
{
  const FfChangePrice *price = ff_keeper_edit (keeper_of (self));

  ff_shot_needs_show_edit (self->needs, price != NULL && ff_change_price_tells (price)
                                            ? price->sentence
                                            : NULL);
}

/* `said`: remarks that stand there already. */
static void
show_plan (FfShotsPage *self, const FfShot *shot, GPtrArray *said)
{
  FfShotPlace place = place_of (self, shot);
  g_autofree char *words = ff_shots_plan_words (
      &place, zone_of (self), ff_keeper_is_planning (keeper_of (self)), said);

  ff_shot_needs_show_plan (self->needs, words, place.miss != NULL);
  show_edit (self);
}

static void
show_needs (FfShotsPage *self, const FfShot *shot)
{
  const FfDay *day = ff_keeper_day (keeper_of (self));
  g_autoptr (GError) error = NULL;
  g_autoptr (FfShotAdvice) advice = NULL;

  if (day != NULL)
    advice = ff_day_shot_advice (day, shot, start_of (self, shot), &error);
  ff_shot_needs_show (self->needs, shot, advice, zone_of (self),
                      error != NULL ? error->message : "");
  show_plan (self, shot, advice != NULL ? advice->remarks : NULL);
}

static void
show_head (FfShotsPage *self, const FfShot *shot)
{
  gtk_label_set_label (self->label, shot->label);
  gtk_label_set_label (self->title, shot->title[0] != '\0' ? shot->title : _ ("no title yet"));
  ff_block_set_stops (self->need, need_of (self, shot));
}

static void
show_shot (FfShotsPage *self)
{
  const FfShot *shot = shot_here (self);

  if (shot == NULL)
    return;
  show_head (self, shot);
  ff_shot_editor_show (self->editor, keeper_of (self), shot);
  show_needs (self, shot);
}

/* What can be done */

static void
focus_list (FfShotsPage *self)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, self->index);

  ff_split_set_show_content (self->split, FALSE);
  if (row != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (row));
}

static void
focus_shot (FfShotsPage *self)
{
  ff_split_set_show_content (self->split, TRUE);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
  ff_shot_editor_grab_title (self->editor);
}

/* Takes the shot and stores it behind the edited one, then goes there to type. */
static void
insert (FfShotsPage *self, FfShot *shot)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *before = g_steal_pointer (&self->id);

  self->id = g_strdup (shot->id);
  if (ff_keeper_insert_shot (keeper_of (self), shot, before, &error))
    {
      bring_into_sight (self);
      focus_shot (self);
    }
  else
    self->id = g_steal_pointer (&before);
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
ff_shots_page_add (FfPage *page)
{
  FfShotsPage *self = FF_SHOTS_PAGE (page);
  const FfJob *job = ff_keeper_job (keeper_of (self));
  g_autoptr (FfShot) shot = NULL;

  if (job == NULL)
    return;
  shot = ff_shots_new (job, ff_keeper_shots (keeper_of (self)), shot_here (self));
  insert (self, shot);
}

static void
duplicate_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfShotsPage *self = FF_SHOTS_PAGE (widget);
  g_autoptr (FfShot) copy = ff_keeper_dup_shot (keeper_of (self), self->id);
  g_autofree char *label = NULL;

  if (copy == NULL)
    return;
  label = ff_shots_free_label (ff_keeper_shots (keeper_of (self)), copy->label);
  ff_set_text (&copy->label, label);
  g_free (copy->id);
  copy->id = ff_records_new_id ();
  insert (self, copy);
}

static void
delete_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfShotsPage *self = FF_SHOTS_PAGE (widget);
  g_autofree char *id = g_strdup (self->id);
  g_autoptr (GError) error = NULL;

  if (id == NULL)
    return;
  if (ff_keeper_delete_shot (keeper_of (self), id, &error))
    {
      ff_page_say_last_change (FF_PAGE (self));
      focus_list (self);
    }
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
move_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfShotsPage *self = FF_SHOTS_PAGE (widget);
  g_autofree char *id = g_strdup (self->id);
  g_autoptr (GError) error = NULL;

  if (id != NULL)
    ff_keeper_move_shot (keeper_of (self), id, g_variant_get_int32 (parameter), &error);
  bring_into_sight (self);
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
leave_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  focus_list (FF_SHOTS_PAGE (widget));
}

/* Callbacks */

static void
on_row_selected (FfShotsPage *self, GtkListBoxRow *row)
{
  if (self->syncing || row == NULL)
    return;
  set_shot (self, ff_shot_row_get_id (FF_SHOT_ROW (row)));
  self->index = gtk_list_box_row_get_index (row);
  bring_into_sight (self);
  show_shot (self);
}

static void
on_row_activated (FfShotsPage *self, GtkListBoxRow *row)
{
  on_row_selected (self, row);
  focus_shot (self);
}

/* Where the list stands alone a touch opens the shot; beside it a touch shows it. */
static void
on_collapsed (FfShotsPage *self)
{
  gboolean collapsed = ff_split_get_collapsed (self->split);

  gtk_widget_set_visible (self->back, collapsed);
  /* What it needs scrolls away there, and must still be seen while one types. */
  gtk_widget_set_visible (GTK_WIDGET (self->need), collapsed);
  /* There the title needs their room; the menu has them as well. */
  gtk_widget_set_visible (self->up, !collapsed);
  gtk_widget_set_visible (self->down, !collapsed);
  gtk_list_box_set_activate_on_single_click (self->list, collapsed);
}

/* Overrides */

static void
ff_shots_page_refresh (FfPage *page, FfChanged changed)
{
  FfShotsPage *self = FF_SHOTS_PAGE (page);

  if ((changed & (FF_CHANGED_JOB | FF_CHANGED_PLAN | FF_CHANGED_ITEMS)) == 0)
    return;
  show_list (self);
  show_shot (self);
}

static gboolean
ff_shots_page_grab_focus (GtkWidget *widget)
{
  FfShotsPage *self = FF_SHOTS_PAGE (widget);
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, self->index);

  if (ff_split_get_collapsed (self->split) && ff_split_get_show_content (self->split))
    return gtk_widget_child_focus (GTK_WIDGET (self->editor), GTK_DIR_TAB_FORWARD);
  if (row != NULL)
    return gtk_widget_grab_focus (GTK_WIDGET (row));
  return GTK_WIDGET_CLASS (ff_shots_page_parent_class)->grab_focus (widget);
}

static void
ff_shots_page_dispose (GObject *object)
{
  FfShotsPage *self = FF_SHOTS_PAGE (object);

  g_clear_handle_id (&self->scroll_source, g_source_remove);
  g_clear_pointer (&self->id, g_free);
  G_OBJECT_CLASS (ff_shots_page_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-shots-page.ui");
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, stack);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, split);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, list);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, scroller);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, back);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, up);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, down);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, label);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, title);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, need);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, editor);
  gtk_widget_class_bind_template_child (widget_class, FfShotsPage, needs);
  gtk_widget_class_bind_template_callback (widget_class, on_row_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_row_activated);
  gtk_widget_class_bind_template_callback (widget_class, on_collapsed);
}

static void
add_keys (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "shot.duplicate", NULL, duplicate_action);
  gtk_widget_class_install_action (widget_class, "shot.delete", NULL, delete_action);
  gtk_widget_class_install_action (widget_class, "shot.move", "i", move_action);
  gtk_widget_class_install_action (widget_class, "shot.leave", NULL, leave_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Up, GDK_ALT_MASK, "shot.move", "i",
                                       -1);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Down, GDK_ALT_MASK, "shot.move", "i",
                                       1);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_d, GDK_CONTROL_MASK, "shot.duplicate",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "shot.leave", NULL);
}

static void
ff_shots_page_class_init (FfShotsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = ff_shots_page_dispose;
  widget_class->grab_focus = ff_shots_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_shots_page_refresh;
  FF_PAGE_CLASS (klass)->add = ff_shots_page_add;
  g_type_ensure (FF_TYPE_SHOT_BESIDE);
  g_type_ensure (FF_TYPE_BLOCK);
  g_type_ensure (FF_TYPE_SHOT_EDITOR);
  g_type_ensure (FF_TYPE_SHOT_NEEDS);
  g_type_ensure (FF_TYPE_SPLIT);
  bind_template (widget_class);
  add_keys (widget_class);
}

/* Delete is a key of the list alone: in a field it deletes letters. */
static void
add_list_keys (FfShotsPage *self)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (controller),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Delete, 0),
                        gtk_named_action_new ("shot.delete")));
  gtk_widget_add_controller (GTK_WIDGET (self->list), controller);
}

static void
ff_shots_page_init (FfShotsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  ff_split_set_show_content (self->split, FALSE);
  on_collapsed (self);
  add_list_keys (self);
}
