/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pack-page.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-entry.h"
#include "ff-flow.h"
#include "ff-lines.h"
#include "ff-pack-evening.h"
#include "ff-pack-notes.h"
#include "ff-pack-row.h"
#include "ff-pack-travel.h"
#include "ff-records.h"
#include "ff-scroll.h"

struct _FfPackPage {
  FfPage parent_instance;

  FfPackList *shown; /* NULL: nothing yet */
  char *job_id;      /* whose list that is */
  FfPackStage stage;
  gboolean busy, stale; /* a worker is out; what it was asked for has changed */
  char *leaving;        /* id of the item that is not taken, while its reason is asked for */

  GtkStack *stack;
  GtkToggleButton *out, *ground, *base;
  GtkLabel *count, *why;
  GtkBox *shorts, *due, *wallet;
  GtkWidget *reason_band;
  FfEntry *reason;
  GtkListBox *list;
  FfPackEvening *evening;
  FfPackTravel *travel;
};

G_DEFINE_FINAL_TYPE (FfPackPage, ff_pack_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "space", N_ ("Count the item, and go on to the next") },
  { "n", N_ ("Not taken, with a reason; or missing") },
  { "1", N_ ("Count out") },
  { "2", N_ ("Count in on the ground") },
  { "3", N_ ("Count in at base") },
  { NULL },
};

const FfPageInfo ff_page_info_pack = {
  .name = "pack",
  .title = N_ ("Pack"),
  .icon = "ff-pack-symbolic",
  .sort = FF_PAGE_PART,
  .get_type = ff_pack_page_get_type,
  .help = "pack",
  .keys = page_keys,
};

static FfKeeper *
keeper_of (gpointer page)
{
  return ff_page_get_keeper (FF_PAGE (page));
}

const FfPackList *
ff_pack_page_list (FfPackPage *self)
{
  return self->shown;
}

/* ---- The list on the screen ---- */

static FfPackRow *
row_at (FfPackPage *self, int index)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, index);

  return row != NULL ? FF_PACK_ROW (row) : NULL;
}

static double
stops_of (FfPackPage *self, const FfPackEntry *entry)
{
  const FfItem *item = entry->kind == FF_KIND_FILTER
                           ? ff_keeper_find_item (keeper_of (self), entry->item_id) : NULL;

  if (item == NULL)
    return NAN;
  return isfinite (item->measured_stops) ? item->measured_stops : item->stops;
}

/* Rows are changed in place, so that the focus and the place on the page stay. */
static void
show_row (FfPackPage *self, int index, const FfPackEntry *entry)
{
  if (row_at (self, index) == NULL)
    gtk_list_box_append (self->list, ff_pack_row_new ());
  ff_pack_row_show (row_at (self, index), entry, self->stage, stops_of (self, entry));
}

static void
show_rows (FfPackPage *self)
{
  int n = 0;

  for (guint i = 0; i < self->shown->cases->len; i++)
    {
      const FfPackCase *box = g_ptr_array_index (self->shown->cases, i);

      for (guint j = 0; j < box->entries->len; j++)
        show_row (self, n++, g_ptr_array_index (box->entries, j));
    }
  while (row_at (self, n) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row_at (self, n)));
  gtk_list_box_invalidate_headers (self->list);
}

static const FfPackCase *
case_of (FfPackPage *self, const char *label)
{
  for (guint i = 0; self->shown != NULL && i < self->shown->cases->len; i++)
    {
      const FfPackCase *box = g_ptr_array_index (self->shown->cases, i);

      if (g_strcmp0 (box->case_label, label) == 0)
        return box;
    }
  return NULL;
}

/* The heading of a case stands over its first line. */
static void
head (GtkListBoxRow *row, GtkListBoxRow *before, gpointer page)
{
  FfPackPage *self = FF_PACK_PAGE (page);
  const char *label = ff_pack_row_case (FF_PACK_ROW (row));
  const FfPackCase *box = case_of (self, label);
  g_autofree char *words = NULL;
  GtkWidget *heading;

  if (box == NULL
      || (before != NULL && g_strcmp0 (ff_pack_row_case (FF_PACK_ROW (before)), label) == 0))
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }
  words = ff_pack_notes_case (box, self->stage);
  heading = ff_line_new (words, "heading");
  gtk_widget_add_css_class (heading, "pack-case");
  gtk_list_box_row_set_header (row, heading);
}

static void
show_list (FfPackPage *self)
{
  g_autofree char *count = ff_pack_notes_count (self->shown, self->stage);
  const FfDay *day = ff_keeper_day (keeper_of (self));

  gtk_label_set_label (self->count, count);
  ff_pack_notes_show_shorts (self->shorts, self->shown);
  ff_pack_notes_show_due (self->due, self->shown);
  ff_pack_notes_show_wallet (self->wallet, self->shown);
  show_rows (self);
  ff_pack_evening_show (self->evening, keeper_of (self), self->shown->evening,
                        day != NULL ? ff_day_zone (day) : NULL);
  gtk_stack_set_visible_child_name (self->stack, "list");
}

/* ---- The worker ---- */

typedef struct {
  char *data_dir, *job_id, *carrier;
} Question;

/* A sheet that can't be made is no trouble of the list: `travel_why` says what to enter. */
typedef struct {
  FfPackList *list;
  FfTravelSheet *travel;
  char *travel_why;
} Lists;

static void
lists_free (gpointer data)
{
  Lists *lists = data;

  ff_pack_list_free (lists->list);
  ff_travel_sheet_free (lists->travel);
  g_free (lists->travel_why);
  g_free (lists);
}

static void
question_free (gpointer data)
{
  Question *question = data;

  g_free (question->data_dir);
  g_free (question->job_id);
  g_free (question->carrier);
  g_free (question);
}

static void
work (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  const Question *question = task_data;
  GError *error = NULL;
  g_autoptr (GError) no_sheet = NULL;
  g_autoptr (FfStore) store = ff_records_open (question->data_dir, FF_RECORDS_READ, &error);
  FfPackList *list = store != NULL ? ff_pack_list_load (store, question->job_id, &error) : NULL;
  Lists *lists;

  if (list == NULL)
    {
      g_task_return_error (task, error);
      return;
    }
  lists = g_new0 (Lists, 1);
  lists->list = list;
  lists->travel
      = ff_travel_sheet_load (store, question->job_id, question->carrier, 0, &no_sheet);
  lists->travel_why = g_strdup (no_sheet != NULL ? no_sheet->message : NULL);
  g_task_return_pointer (task, lists, lists_free);
}

static void reload (FfPackPage *self);

static void
take_lists (FfPackPage *self, Lists *lists, const GError *error)
{
  g_clear_pointer (&self->shown, ff_pack_list_free);
  if (lists != NULL)
    {
      self->shown = g_steal_pointer (&lists->list);
      show_list (self);
      ff_pack_travel_show (self->travel, keeper_of (self), lists->travel, lists->travel_why);
      lists_free (lists);
      return;
    }
  gtk_label_set_label (self->why, error != NULL ? error->message : "");
  gtk_stack_set_visible_child_name (self->stack, "none");
}

static void
finished (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FfPackPage *self = FF_PACK_PAGE (source);
  g_autoptr (GError) error = NULL;
  Lists *lists = g_task_propagate_pointer (G_TASK (result), &error);

  self->busy = FALSE;
  if (!self->stale && self->job_id != NULL && keeper_of (self) != NULL)
    {
      take_lists (self, lists, error);
      return;
    }
  g_clear_pointer (&lists, lists_free);
  if (self->job_id != NULL && keeper_of (self) != NULL)
    reload (self);
}

/* What stands on the screen stays until the next has come. */
static void
reload (FfPackPage *self)
{
  g_autoptr (GTask) task = NULL;
  Question *question;

  self->stale = TRUE;
  if (self->busy || self->job_id == NULL)
    return;
  task = g_task_new (self, NULL, finished, NULL);
  question = g_new0 (Question, 1);
  question->data_dir = g_strdup (ff_keeper_data_dir (keeper_of (self)));
  question->job_id = g_strdup (self->job_id);
  question->carrier = g_strdup (ff_pack_travel_carrier (self->travel));
  g_task_set_task_data (task, question, question_free);
  self->busy = TRUE;
  self->stale = FALSE;
  g_task_run_in_thread (task, work);
}

/* ---- Counting ---- */

static int
index_of (FfPackPage *self, const char *item_id)
{
  for (int i = 0; row_at (self, i) != NULL; i++)
    if (g_strcmp0 (ff_pack_row_item (row_at (self, i)), item_id) == 0)
      return i;
  return -1;
}

static FfPackRow *
focused_row (FfPackPage *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  GtkWidget *row = focus != NULL ? gtk_widget_get_ancestor (focus, FF_TYPE_PACK_ROW) : NULL;

  return row != NULL ? FF_PACK_ROW (row) : NULL;
}

/* On the screen at once; what follows from it comes with the next list. */
static gboolean
count (FfPackPage *self, FfPackEntry *entry, FfPackMark mark, const char *condition)
{
  g_autoptr (GError) error = NULL;

  if (!ff_keeper_count (keeper_of (self), entry, self->stage, mark, condition, &error))
    {
      ff_page_say_error (FF_PAGE (self), &error);
      return FALSE;
    }
  if (mark == FF_PACK_DONE || entry->marks[self->stage] == FF_PACK_DONE)
    self->shown->n_marked[self->stage] += mark == FF_PACK_DONE ? 1 : (guint) -1;
  entry->marks[self->stage] = mark;
  ff_set_text (&entry->conditions[self->stage], condition);
  show_list (self);
  reload (self);
  return TRUE;
}

static void
focus_row (FfPackPage *self, int index)
{
  FfPackRow *row = row_at (self, index);

  if (row == NULL)
    return;
  gtk_widget_grab_focus (GTK_WIDGET (row));
  ff_scroll_to (GTK_WIDGET (row));
}

static void
on_row_activated (FfPackPage *self, GtkListBoxRow *row)
{
  int index = gtk_list_box_row_get_index (row);
  FfPackEntry *entry = self->shown != NULL
                           ? ff_pack_list_find (self->shown, ff_pack_row_item (FF_PACK_ROW (row)))
                           : NULL;
  FfPackMark mark;

  if (entry == NULL)
    return;
  mark = entry->marks[self->stage] == FF_PACK_DONE ? FF_PACK_OPEN : FF_PACK_DONE;
  if (count (self, entry, mark, "") && mark == FF_PACK_DONE)
    focus_row (self, index + 1);
}

static void
end_leaving (FfPackPage *self)
{
  int index = self->leaving != NULL ? index_of (self, self->leaving) : -1;

  g_clear_pointer (&self->leaving, g_free);
  gtk_widget_set_visible (self->reason_band, FALSE);
  focus_row (self, MAX (index, 0));
}

static void
on_reason (FfPackPage *self)
{
  FfPackEntry *entry = self->leaving != NULL && self->shown != NULL
                           ? ff_pack_list_find (self->shown, self->leaving) : NULL;
  g_autofree char *reason = g_strstrip (g_strdup (ff_entry_get_text (self->reason)));

  if (entry == NULL)
    return;
  if (*reason == '\0')
    {
      ff_entry_complain (self->reason, _ ("What is not taken needs a reason"));
      return;
    }
  if (count (self, entry, FF_PACK_NOT_TAKEN, reason))
    end_leaving (self);
}

static void
ask_reason (FfPackPage *self, const FfPackEntry *entry)
{
  g_autofree char *label = g_strdup_printf (_ ("Why is %s not taken?"), entry->label);

  g_free (self->leaving);
  self->leaving = g_strdup (entry->item_id);
  ff_entry_set_label (self->reason, label);
  ff_entry_reset (self->reason, "");
  gtk_widget_set_visible (self->reason_band, TRUE);
  gtk_widget_child_focus (GTK_WIDGET (self->reason), GTK_DIR_TAB_FORWARD);
  ff_scroll_to (self->reason_band);
}

static void
act_not_taken (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfPackPage *self = FF_PACK_PAGE (widget);
  FfPackRow *row = focused_row (self);
  FfPackEntry *entry = row != NULL && self->shown != NULL
                           ? ff_pack_list_find (self->shown, ff_pack_row_item (row)) : NULL;

  if (entry == NULL)
    return;
  if (self->stage == FF_PACK_OUT)
    ask_reason (self, entry);
  else if (count (self, entry, FF_PACK_MISSING, ""))
    focus_row (self, index_of (self, entry->item_id) + 1);
}

static gboolean
on_escape (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  FfPackPage *self = FF_PACK_PAGE (widget);

  if (self->leaving == NULL)
    return FALSE;
  end_leaving (self);
  return TRUE;
}

/* ---- Stages ---- */

static void
on_stage (FfPackPage *self)
{
  FfPackStage stage = gtk_toggle_button_get_active (self->base)     ? FF_PACK_BASE
                      : gtk_toggle_button_get_active (self->ground) ? FF_PACK_GROUND
                                                                    : FF_PACK_OUT;

  if (stage == self->stage)
    return;
  self->stage = stage;
  if (self->leaving != NULL)
    end_leaving (self);
  if (self->shown != NULL)
    show_list (self);
}

static void
act_stage (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfPackPage *self = FF_PACK_PAGE (widget);
  GtkToggleButton *buttons[] = { self->out, self->ground, self->base };
  guint stage = g_variant_get_uint32 (parameter);

  if (stage < G_N_ELEMENTS (buttons))
    gtk_toggle_button_set_active (buttons[stage], TRUE);
}

static void
on_below_changed (FfPackPage *self)
{
  reload (self);
}

static void
on_watch_trouble (FfPackPage *self, const char *sentence)
{
  ff_page_say (FF_PAGE (self), sentence, FALSE);
}

/* ---- Overrides ---- */

/* Another job's list must not stand under this job's name. */
static void
drop_other_job (FfPackPage *self, const FfJob *job)
{
  const char *id = job != NULL ? job->id : NULL;

  if (g_strcmp0 (self->job_id, id) == 0)
    return;
  g_free (self->job_id);
  self->job_id = g_strdup (id);
  g_clear_pointer (&self->shown, ff_pack_list_free);
  g_clear_pointer (&self->leaving, g_free);
  gtk_widget_set_visible (self->reason_band, FALSE);
  gtk_stack_set_visible_child_name (self->stack, "blank");
}

static void
ff_pack_page_refresh (FfPage *page, FfChanged changed)
{
  FfPackPage *self = FF_PACK_PAGE (page);

  drop_other_job (self, ff_keeper_job (keeper_of (self)));
  reload (self);
}

static gboolean
ff_pack_page_grab_focus (GtkWidget *widget)
{
  FfPackPage *self = FF_PACK_PAGE (widget);

  if (row_at (self, 0) != NULL && gtk_widget_get_mapped (GTK_WIDGET (self->list)))
    return gtk_widget_grab_focus (GTK_WIDGET (row_at (self, 0)));
  return GTK_WIDGET_CLASS (ff_pack_page_parent_class)->grab_focus (widget);
}

static void
ff_pack_page_finalize (GObject *object)
{
  FfPackPage *self = FF_PACK_PAGE (object);

  g_clear_pointer (&self->shown, ff_pack_list_free);
  g_free (self->job_id);
  g_free (self->leaving);
  G_OBJECT_CLASS (ff_pack_page_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, stack);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, out);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, ground);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, base);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, count);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, why);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, shorts);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, due);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, wallet);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, reason_band);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, reason);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, list);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, evening);
  gtk_widget_class_bind_template_child (widget_class, FfPackPage, travel);
}

static void
bind_keys (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, on_stage);
  gtk_widget_class_bind_template_callback (widget_class, on_reason);
  gtk_widget_class_bind_template_callback (widget_class, on_row_activated);
  gtk_widget_class_install_action (widget_class, "pack.not-taken", NULL, act_not_taken);
  gtk_widget_class_install_action (widget_class, "pack.stage", "u", act_stage);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, on_escape, NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_n, 0, "pack.not-taken", NULL);
  for (guint i = 0; i < FF_N_PACK_STAGES; i++)
    gtk_widget_class_add_binding_action (widget_class, GDK_KEY_1 + i, 0, "pack.stage", "u", i);
}

static void
ff_pack_page_class_init (FfPackPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = ff_pack_page_finalize;
  widget_class->grab_focus = ff_pack_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_pack_page_refresh;
  g_type_ensure (FF_TYPE_FLOW);
  g_type_ensure (FF_TYPE_ENTRY);
  g_type_ensure (FF_TYPE_PACK_EVENING);
  g_type_ensure (FF_TYPE_PACK_TRAVEL);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-pack-page.ui");
  bind_children (widget_class);
  bind_keys (widget_class);
}

static void
ff_pack_page_init (FfPackPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_toggle_button_set_active (self->out, TRUE);
  gtk_list_box_set_header_func (self->list, head, self, NULL);
  g_signal_connect_object (self->evening, "changed", G_CALLBACK (on_below_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->evening, "trouble", G_CALLBACK (on_watch_trouble), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->travel, "changed", G_CALLBACK (on_below_changed), self,
                           G_CONNECT_SWAPPED);
}
