/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-jobs-page.h"

#include <glib/gi18n-lib.h>

#include "ff-job-row.h"
#include "ff-jobs-list.h"

struct _FfJobsPage {
  FfPage parent_instance;

  GtkStack *stack;
  GtkEditable *search;
  GtkListBox *list;
  GtkToggleButton *away;
  GtkWidget *new;
};

G_DEFINE_FINAL_TYPE (FfJobsPage, ff_jobs_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Return", N_ ("Open the job") },
  { "<Control>d", N_ ("Duplicate the job") },
  { "Delete", N_ ("Delete the job") },
  { NULL },
};

const FfPageInfo ff_page_info_jobs = {
  .name = "jobs",
  .title = N_ ("Jobs"),
  .icon = "ff-jobs-symbolic",
  .sort = FF_PAGE_PLACE,
  .get_type = ff_jobs_page_get_type,
  .help = "jobs",
  .keys = page_keys,
};

static FfKeeper *
keeper_of (gpointer page)
{
  return ff_page_get_keeper (FF_PAGE (page));
}

/* The list */

static char *
today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_format (now, "%Y-%m-%d");
}

static gboolean
is_wanted (FfJobsPage *self, const FfJob *job, const FfPlace *place)
{
  const char *texts[] = { job->title, job->client, job->date, place != NULL ? place->name : "",
                          NULL };

  return ff_jobs_match (gtk_editable_get_text (self->search), texts);
}

static GPtrArray *
sorted_jobs (FfJobsPage *self, const char *day)
{
  GPtrArray *jobs = g_ptr_array_copy (ff_keeper_jobs (keeper_of (self)), NULL, NULL);

  /* A copy of pointers: the keeper's array goes on owning the jobs. */
  g_ptr_array_set_free_func (jobs, NULL);
  ff_jobs_sort (jobs, day);
  return jobs;
}

static void
add_row (FfJobsPage *self, const FfJob *job, const char *next)
{
  FfKeeper *keeper = keeper_of (self);
  const FfJob *open = ff_keeper_job (keeper);
  const FfPlace *place = ff_keeper_find_place (keeper, job->place_id);

  gtk_list_box_append (self->list,
                       ff_job_row_new (job, place, next,
                                       open != NULL && g_str_equal (open->id, job->id)));
}

static void
show_away_button (FfJobsPage *self, guint n_away)
{
  g_autofree char *words = NULL;

  if (gtk_toggle_button_get_active (self->away))
    words = g_strdup (_ ("Hide those put away"));
  else
    words = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Show %u job put away",
                                          "Show %u jobs put away", n_away),
                             n_away);
  gtk_button_set_label (GTK_BUTTON (self->away), words);
  gtk_widget_set_visible (GTK_WIDGET (self->away), n_away > 0);
}

static void
clear_list (FfJobsPage *self)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->list, 0)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
}

static void
fill_list (FfJobsPage *self)
{
  g_autofree char *day = today ();
  g_autoptr (GPtrArray) jobs = sorted_jobs (self, day);
  guint n_away = 0;

  clear_list (self);
  for (guint i = 0; i < jobs->len; i++)
    {
      const FfJob *job = g_ptr_array_index (jobs, i);
      FfJobsGroup group = ff_jobs_group (job, day);

      n_away += group == FF_JOBS_AWAY;
      if (group == FF_JOBS_AWAY && !gtk_toggle_button_get_active (self->away))
        continue;
      if (is_wanted (self, job, ff_keeper_find_place (keeper_of (self), job->place_id)))
        {
          /* Only the nearest dated job is "next"; the list begins with it. */
          g_autofree char *when = i == 0 ? ff_jobs_when (job->date, day) : NULL;

          add_row (self, job, when);
        }
    }
  show_away_button (self, n_away);
  gtk_stack_set_visible_child_name (self->stack, jobs->len > 0 ? "list" : "empty");
}

/* The row that the keys are about. */
static FfJobRow *
row_in_focus (FfJobsPage *self)
{
  GtkWidget *child = gtk_widget_get_focus_child (GTK_WIDGET (self->list));

  return child != NULL && FF_IS_JOB_ROW (child) ? FF_JOB_ROW (child) : NULL;
}

/* After a change the list is new; the focus goes back to where it was, or near it. */
static void
focus_index (FfJobsPage *self, int index)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, index);

  if (row == NULL && index > 0)
    row = gtk_list_box_get_row_at_index (self->list, index - 1);
  if (row != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (row));
}

/* What can be done */

static void
open_job (FfJobsPage *self, const char *id)
{
  const FfPageInfo *first = ff_pages_nth (FF_PAGE_PART, 0);

  ff_keeper_open_job (keeper_of (self), id);
  if (first != NULL)
    ff_page_go (FF_PAGE (self), first->name);
  else
    fill_list (self);
}

static void
ff_jobs_page_add (FfPage *page)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_keeper_new_job (keeper_of (page), &error);

  if (id != NULL)
    open_job (FF_JOBS_PAGE (page), id);
  ff_page_say_error (page, &error);
}

static void
duplicate (FfJobsPage *self, const char *id)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *copy = ff_keeper_duplicate_job (keeper_of (self), id, &error);

  if (copy != NULL)
    ff_page_say_last_change (FF_PAGE (self));
  ff_page_say_error (FF_PAGE (self), &error);
}

/* Puts a job away, or takes one out again. */
static void
put_away (FfJobsPage *self, const char *id)
{
  g_autoptr (FfJob) job = ff_keeper_dup_job (keeper_of (self), id);
  g_autoptr (GError) error = NULL;
  g_autofree char *what = NULL;
  gboolean back;

  if (job == NULL)
    return;
  back = job->state == FF_JOB_PUT_AWAY;
  job->state = back ? FF_JOB_PLANNED : FF_JOB_PUT_AWAY;
  what = g_strdup_printf (back ? _ ("Job “%s” taken out again") : _ ("Job “%s” put away"),
                          job->title);
  if (ff_keeper_save_job (keeper_of (self), job, what, &error))
    ff_page_say_last_change (FF_PAGE (self));
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
delete (FfJobsPage *self, const char *id)
{
  FfJobRow *row = row_in_focus (self);
  int index = row != NULL ? gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row)) : 0;
  g_autoptr (GError) error = NULL;

  if (ff_keeper_delete_job (keeper_of (self), id, &error))
    {
      ff_page_say_last_change (FF_PAGE (self));
      focus_index (self, index);
    }
  ff_page_say_error (FF_PAGE (self), &error);
}

/* Actions: with the id from a menu, without one from a key. */

static char *
id_for (FfJobsPage *self, GVariant *parameter)
{
  FfJobRow *row = row_in_focus (self);

  if (parameter != NULL && g_variant_get_string (parameter, NULL)[0] != '\0')
    return g_variant_dup_string (parameter, NULL);
  return row != NULL ? g_strdup (ff_job_row_get_id (row)) : NULL;
}

static void
act (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfJobsPage *self = FF_JOBS_PAGE (widget);
  g_autofree char *id = id_for (self, parameter);

  if (id == NULL)
    return;
  if (g_str_equal (action, "job.duplicate"))
    duplicate (self, id);
  else if (g_str_equal (action, "job.put-away"))
    put_away (self, id);
  else
    delete (self, id);
}

/* Callbacks */

static void
on_search (FfJobsPage *self)
{
  fill_list (self);
}

static void
on_search_done (FfJobsPage *self)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, 0);

  if (row != NULL)
    gtk_widget_activate (GTK_WIDGET (row));
}

static void
on_search_stop (FfJobsPage *self)
{
  gtk_editable_set_text (self->search, "");
  focus_index (self, 0);
}

static void
on_row_activated (FfJobsPage *self, GtkListBoxRow *row)
{
  g_autofree char *id = g_strdup (ff_job_row_get_id (FF_JOB_ROW (row)));

  open_job (self, id);
}

static void
on_away_toggled (FfJobsPage *self)
{
  fill_list (self);
}

/* Overrides */

static void
ff_jobs_page_refresh (FfPage *page, FfChanged changed)
{
  FfJobsPage *self = FF_JOBS_PAGE (page);
  GtkWidget *inside = gtk_widget_get_focus_child (GTK_WIDGET (self->list));
  int index = inside != NULL ? gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (inside)) : -1;

  if ((changed & (FF_CHANGED_JOBS | FF_CHANGED_JOB)) == 0)
    return;
  fill_list (self);
  if (index >= 0)
    focus_index (self, index);
}

/* The job that comes next, so that Enter opens it. */
static gboolean
ff_jobs_page_grab_focus (GtkWidget *widget)
{
  FfJobsPage *self = FF_JOBS_PAGE (widget);
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, 0);

  if (row != NULL)
    return gtk_widget_grab_focus (GTK_WIDGET (row));
  return GTK_WIDGET_CLASS (ff_jobs_page_parent_class)->grab_focus (widget);
}

static void
ff_jobs_page_find (FfPage *page)
{
  FfJobsPage *self = FF_JOBS_PAGE (page);

  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

static void
add_keys (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "job.duplicate", "s", act);
  gtk_widget_class_install_action (widget_class, "job.put-away", "s", act);
  gtk_widget_class_install_action (widget_class, "job.delete", "s", act);
}

static void
ff_jobs_page_class_init (FfJobsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->grab_focus = ff_jobs_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_jobs_page_refresh;
  FF_PAGE_CLASS (klass)->find = ff_jobs_page_find;
  FF_PAGE_CLASS (klass)->add = ff_jobs_page_add;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-jobs-page.ui");
  gtk_widget_class_bind_template_child (widget_class, FfJobsPage, stack);
  gtk_widget_class_bind_template_child (widget_class, FfJobsPage, search);
  gtk_widget_class_bind_template_child (widget_class, FfJobsPage, list);
  gtk_widget_class_bind_template_child (widget_class, FfJobsPage, away);
  gtk_widget_class_bind_template_child (widget_class, FfJobsPage, new);
  gtk_widget_class_bind_template_callback (widget_class, on_search);
  gtk_widget_class_bind_template_callback (widget_class, on_search_done);
  gtk_widget_class_bind_template_callback (widget_class, on_search_stop);
  gtk_widget_class_bind_template_callback (widget_class, on_row_activated);
  gtk_widget_class_bind_template_callback (widget_class, on_away_toggled);
  add_keys (widget_class);
}

/* The keys of a job are those of the list alone: Delete in the search entry deletes letters. */
static void
add_list_keys (FfJobsPage *self)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();
  GtkShortcutController *shortcuts = GTK_SHORTCUT_CONTROLLER (controller);

  gtk_shortcut_controller_add_shortcut (
      shortcuts, gtk_shortcut_new_with_arguments (gtk_keyval_trigger_new (GDK_KEY_d, GDK_CONTROL_MASK),
                                                  gtk_named_action_new ("job.duplicate"), "s", ""));
  gtk_shortcut_controller_add_shortcut (
      shortcuts, gtk_shortcut_new_with_arguments (gtk_keyval_trigger_new (GDK_KEY_Delete, 0),
                                                  gtk_named_action_new ("job.delete"), "s", ""));
  gtk_widget_add_controller (GTK_WIDGET (self->list), controller);
}

static void
ff_jobs_page_init (FfJobsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_list_keys (self);
}
