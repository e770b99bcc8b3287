/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sorties-page.h"

#include <glib/gi18n-lib.h>

#include "ff-accept-try.h"
#include "ff-chart.h"
#include "ff-flow.h"
#include "ff-otherwise.h"
#include "ff-patience.h"
#include "ff-planner.h"
#include "ff-reading-dialog.h"
#include "ff-scroll.h"
#include "ff-sortie-lock.h"
#include "ff-sortie-notes.h"
#include "ff-sortie-rows.h"
#include "ff-sortie-words.h"
#include "ff-sorties-table.h"
#include "ff-standing-card.h"
#include "ff-what-if.h"

struct _FfSortiesPage {
  FfPage parent_instance;

  FfPlanner *tries; /* works out what is tried, beside the keeper's own planner */
  FfTry tried;        /* none: the plan as stored is on the screen */
  FfAnswer *shown;  /* what is on the screen; NULL: nothing yet */
  char *job_id;     /* whose plan that is */
  char *chosen;     /* label of the first shot of the chosen line; NULL: none */
  FfPatience patience; /* says that a plan is on its way */

  GtkStack *stack, *views;
  GtkWidget *try_band, *try_box, *working;
  GtkLabel *try_words, *try_trouble, *why, *light, *rule, *count, *cost_label;
  GtkBox *try_changes, *open, *charges, *bag;
  FfChart *chart;
  GtkToggleButton *as_table;
  FfWhatIf *what_if;
  FfOtherwise *otherwise;
  FfStandingCard *standing;
  GtkWidget *accept;
  GtkButton *lock;
  GtkListBox *table, *list;
  GtkGrid *cost;
  FfSortieColumns columns;
};

G_DEFINE_FINAL_TYPE (FfSortiesPage, ff_sorties_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Left", N_ ("Choose the sortie before, on the chart") },
  { "Right", N_ ("Choose the next sortie, on the chart") },
  { "plus", N_ ("Half as much of the day on the chart") },
  { "minus", N_ ("Twice as much of the day on the chart") },
  { "0", N_ ("The whole day on the chart") },
  { "k", N_ ("Lock the chosen sortie as it stands, or unlock it") },
  { "<Alt>Left", N_ ("Try the chosen sortie 5 minutes earlier") },
  { "<Alt>Right", N_ ("Try the chosen sortie 5 minutes later") },
  { "Return", N_ ("Open the sortie") },
  { "l", N_ ("We are late: 5, 10, 15 minutes, and on time again") },
  { "<Control>Return", N_ ("Accept what is tried") },
  { "r", N_ ("Add a light reading") },
  { "<Control>t", N_ ("The chart as a table, and back") },
  { "Escape", N_ ("End what is tried") },
  { NULL },
};

const FfPageInfo ff_page_info_sorties = {
  .name = "sorties",
  .title = N_ ("Sorties"),
  .icon = "ff-sorties-symbolic",
  .sort = FF_PAGE_PART,
  .get_type = ff_sorties_page_get_type,
  .help = "sorties",
  .keys = page_keys,
  .shows_day = TRUE,
};

static FfKeeper *
keeper_of (gpointer page)
{
  return ff_page_get_keeper (FF_PAGE (page));
}

static gboolean
is_trying (FfSortiesPage *self)
{
  return !ff_try_is_none (&self->tried);
}

static void
show_view (FfSortiesPage *self)
{
  gboolean table = gtk_toggle_button_get_active (self->as_table);

  if (table)
    ff_sorties_table_show (self->table, ff_chart_table (self->chart));
  gtk_stack_set_visible_child_name (self->views, table ? "table" : "chart");
}

/* The whole */

static void
choose (FfSortiesPage *self, int line)
{
  const FfPlanLine *chosen;

  if (line < 1 || self->shown == NULL || line > (int) self->shown->plan->lines->len)
    return;
  chosen = g_ptr_array_index (self->shown->plan->lines, line - 1);
  g_free (self->chosen);
  self->chosen = g_strdup (((const FfPlanTake *) g_ptr_array_index (chosen->takes, 0))->shot);
  ff_chart_set_line (self->chart, line);
  ff_sortie_rows_mark (self->list, line);
  ff_sortie_lock_show (self->lock, self->shown, line, is_trying (self));
}

/* A line stays chosen while its first shot is flown, wherever that now stands. */
static void
choose_again (FfSortiesPage *self)
{
  int before = ff_chart_get_line (self->chart);
  int line = ff_sortie_line_of_shot (self->shown->plan, self->chosen);
  gboolean open = before > 0 && ff_sortie_rows_at (self->list, before - 1) != NULL
                  && ff_sortie_row_get_open (ff_sortie_rows_at (self->list, before - 1));

  ff_chart_set_line (self->chart, line);
  ff_sortie_rows_mark (self->list, line);
  if (before != line)
    ff_sortie_rows_open (self->list, open ? line : 0);
  ff_sortie_lock_show (self->lock, self->shown, line, is_trying (self));
}

static void
show_words (FfSortiesPage *self, const FfDayPlan *plan, GTimeZone *zone)
{
  g_autofree char *rule = ff_sortie_land_rule (plan);
  g_autofree char *count = ff_sortie_count_words (plan);
  g_autofree char *cost = ff_sortie_cost_words (plan);

  gtk_label_set_label (self->light, plan->light);
  gtk_label_set_label (self->rule, rule);
  gtk_widget_set_visible (GTK_WIDGET (self->rule), plan->lines->len > 0);
  gtk_label_set_label (self->count, count);
  gtk_label_set_label (self->cost_label, cost);
  ff_sortie_notes_show_open (self->open, self->shown);
  ff_sortie_notes_show_charges (self->charges, plan, zone);
  ff_sortie_notes_show_bag (self->bag, plan, ff_keeper_items (keeper_of (self)));
  ff_sortie_notes_show_cost (self->cost, plan);
}

/* Everything is changed in one go, between two frames. */
static void
show_answer (FfSortiesPage *self, FfAnswer *answer)
{
  GTimeZone *zone = answer->chart->zone;

  ff_answer_ref (answer);
  g_clear_pointer (&self->shown, ff_answer_unref);
  self->shown = answer;
  ff_chart_show (self->chart, answer);
  ff_sortie_rows_show (self->list, &self->columns, answer);
  show_words (self, answer->plan, zone);
  ff_otherwise_show (self->otherwise, answer);
  ff_standing_card_show (self->standing, keeper_of (self), answer);
  choose_again (self);
  show_view (self);
  gtk_stack_set_visible_child_name (self->stack, "plan");
}

static void
show_why_not (FfSortiesPage *self, const char *why)
{
  const FfJob *job = ff_keeper_job (keeper_of (self));
  g_autofree char *words = ff_sortie_why_not_words (why, job != NULL ? job->title : "");

  gtk_label_set_label (self->why, words);
  gtk_stack_set_visible_child_name (self->stack, "none");
}

/* Trying */

static void
show_try_band (FfSortiesPage *self)
{
  FfAnswer *answer = ff_planner_answer (self->tries);
  g_autofree char *what = ff_try_words (&self->tried);
  /* Translators: over a plan that is only tried: "Trying: overcast, 10 min late. …". */
  g_autofree char *words = g_strdup_printf (_ ("Trying: %s. Nothing is stored."), what);
  const char *trouble = answer != NULL && answer->plan == NULL ? answer->why : NULL;

  gtk_widget_set_visible (self->try_band, is_trying (self));
  gtk_widget_set_visible (self->accept, ff_accept_try_can (&self->tried) && trouble == NULL);
  gtk_widget_set_visible (self->try_box, is_trying (self) && answer != NULL);
  gtk_label_set_label (self->try_words, words);
  gtk_label_set_label (self->try_trouble, trouble != NULL ? trouble : "");
  gtk_widget_set_visible (GTK_WIDGET (self->try_trouble), trouble != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->try_changes), trouble == NULL);
  if (answer != NULL && answer->plan != NULL)
    ff_sortie_notes_show_sentences (self->try_changes, answer->plan->changes);
  if (is_trying (self))
    gtk_widget_add_css_class (GTK_WIDGET (self->views), "tried");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->views), "tried");
}

/* The keeper's plan, when nothing is tried. */
static void
show_stored (FfSortiesPage *self)
{
  FfAnswer *answer = ff_keeper_answer (keeper_of (self));

  /* While the first plan of a job is worked out nothing is shown; later ones keep the last. */
  if (answer == NULL && ff_keeper_is_planning (keeper_of (self)))
    {
      if (self->shown == NULL)
        gtk_stack_set_visible_child_name (self->stack, "blank");
    }
  else if (answer == NULL || answer->plan == NULL)
    show_why_not (self, answer != NULL ? answer->why : "");
  else if (answer != self->shown)
    show_answer (self, answer);
}

static void
ask_try (FfSortiesPage *self)
{
  const FfJob *job = ff_keeper_job (keeper_of (self));

  if (job != NULL)
    {
      ff_planner_ask_try (self->tries, job->id, &self->tried);
      ff_patience_start (&self->patience);
    }
}

static void
end_try (FfSortiesPage *self)
{
  if (!is_trying (self))
    return;
  ff_try_clear (&self->tried);
  ff_what_if_reset (self->what_if);
  ff_planner_ask (self->tries, NULL);
  ff_patience_stop (&self->patience);
  show_try_band (self);
  show_stored (self);
}

/* Callbacks */

static void
on_what_if (FfSortiesPage *self)
{
  FfTry picked = FF_TRY_INIT;

  ff_what_if_get (self->what_if, &picked);
  if (ff_try_is_none (&picked))
    {
      end_try (self);
      return;
    }
  ff_try_set (&self->tried, &picked);
  ff_try_clear (&picked);
  ask_try (self);
}

static void
on_tried (FfSortiesPage *self)
{
  FfAnswer *answer = ff_planner_answer (self->tries);

  if (answer == NULL || !is_trying (self))
    return;
  ff_patience_stop (&self->patience);
  show_try_band (self);
  if (answer->plan != NULL)
    show_answer (self, answer);
}

static void
on_chosen (FfSortiesPage *self, int line)
{
  choose (self, line);
}

/* The focus goes to the line, and the page scrolls to it. */
static void
on_opened (FfSortiesPage *self, int line)
{
  choose (self, line);
  ff_sortie_rows_open (self->list, line);
  if (ff_sortie_rows_at (self->list, line - 1) == NULL)
    return;
  gtk_widget_grab_focus (GTK_WIDGET (ff_sortie_rows_at (self->list, line - 1)));
  ff_scroll_to (GTK_WIDGET (ff_sortie_rows_at (self->list, line - 1)));
}

/* Another time for the chosen sortie is tried, further with each key; Ctrl+Enter accepts it. */
static void
on_moved (FfSortiesPage *self, int minutes)
{
  if (self->chosen == NULL)
    return;
  ff_try_move (&self->tried, self->chosen, minutes);
  ask_try (self);
}

static void
on_row_activated (FfSortiesPage *self, GtkListBoxRow *row)
{
  int line = gtk_list_box_row_get_index (row) + 1;
  gboolean open = ff_sortie_row_get_open (FF_SORTIE_ROW (row));

  choose (self, line);
  ff_sortie_rows_open (self->list, open ? 0 : line);
}

static void
on_as_table (FfSortiesPage *self)
{
  show_view (self);
}

/* Actions */

static void
act_end_try (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfSortiesPage *self = FF_SORTIES_PAGE (widget);

  end_try (self);
  gtk_widget_grab_focus (widget);
}

/* One key: later and later, then on time again. The answer comes before anything is stored. */
static void
act_late (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfSortiesPage *self = FF_SORTIES_PAGE (widget);

  ff_what_if_next_late (self->what_if);
  on_what_if (self);
}

static void
act_accept (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfSortiesPage *self = FF_SORTIES_PAGE (widget);
  g_autoptr (GError) error = NULL;
  FfTry accepted = FF_TRY_INIT;

  if (!ff_accept_try_can (&self->tried))
    return;
  ff_try_set (&accepted, &self->tried);
  end_try (self);
  if (!ff_accept_try (keeper_of (self), &accepted, &error))
    ff_page_say_error (FF_PAGE (self), &error);
  ff_try_clear (&accepted);
  gtk_widget_grab_focus (widget);
}

/* What is locked is what is stored: not something that is only tried. */
static void
act_lock (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FfSortiesPage *self = FF_SORTIES_PAGE (widget);
  int line = ff_chart_get_line (self->chart);
  g_autoptr (GError) error = NULL;

  if (line < 1 || is_trying (self))
    return;
  if (!ff_sortie_lock_toggle (keeper_of (self), self->shown, line, &error))
    ff_page_say_error (FF_PAGE (self), &error);
}

static void
act_zoom (GtkWidget *widget, const char *action, GVariant *parameter)
{
  ff_chart_zoom (FF_SORTIES_PAGE (widget)->chart, g_variant_get_int32 (parameter));
}

static void
act_toggle_table (GtkWidget *widget, const char *action, GVariant *parameter)
{
  GtkToggleButton *button = FF_SORTIES_PAGE (widget)->as_table;

  gtk_toggle_button_set_active (button, !gtk_toggle_button_get_active (button));
}

static void
act_reading (GtkWidget *widget, const char *action, GVariant *parameter)
{
  ff_reading_dialog_present (widget, keeper_of (widget), NULL);
}

static void
act_go (GtkWidget *widget, const char *action, GVariant *parameter)
{
  ff_page_go (FF_PAGE (widget), g_variant_get_string (parameter, NULL));
}

/* Escape is for the popovers first, then ends the try; with nothing tried it is nobody's. */
static gboolean
on_escape (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  FfSortiesPage *self = FF_SORTIES_PAGE (widget);

  if (!is_trying (self))
    return FALSE;
  act_end_try (widget, NULL, NULL);
  return TRUE;
}

/* Overrides */

/* Another job's plan must not stand under this job's name. */
static void
drop_other_job (FfSortiesPage *self, const FfJob *job)
{
  const char *id = job != NULL ? job->id : NULL;

  if (g_strcmp0 (self->job_id, id) == 0)
    return;
  g_free (self->job_id);
  self->job_id = g_strdup (id);
  g_clear_pointer (&self->shown, ff_answer_unref);
  g_clear_pointer (&self->chosen, g_free);
  ff_chart_set_line (self->chart, 0);
}

static void
ff_sorties_page_refresh (FfPage *page, FfChanged changed)
{
  FfSortiesPage *self = FF_SORTIES_PAGE (page);
  const FfJob *job = ff_keeper_job (keeper_of (self));

  drop_other_job (self, job);
  if (job != NULL)
    ff_what_if_set_day (self->what_if, job->sky, ff_keeper_items (keeper_of (self)),
                        ff_keeper_shots (keeper_of (self)));
  if (ff_keeper_is_planning (keeper_of (self)))
    ff_patience_start (&self->patience);
  else if (!is_trying (self))
    ff_patience_stop (&self->patience);
  if ((changed & FF_CHANGED_PLAN) == 0)
    return;
  if (is_trying (self))
    ask_try (self);
  else
    show_stored (self);
}

/* Leaving the page ends the try: what one comes back to is the plan. */
static void
ff_sorties_page_unmap (GtkWidget *widget)
{
  end_try (FF_SORTIES_PAGE (widget));
  ff_patience_stop (&FF_SORTIES_PAGE (widget)->patience);
  GTK_WIDGET_CLASS (ff_sorties_page_parent_class)->unmap (widget);
}

static gboolean
ff_sorties_page_grab_focus (GtkWidget *widget)
{
  FfSortiesPage *self = FF_SORTIES_PAGE (widget);

  if (gtk_widget_get_mapped (GTK_WIDGET (self->chart)))
    return gtk_widget_grab_focus (GTK_WIDGET (self->chart));
  return GTK_WIDGET_CLASS (ff_sorties_page_parent_class)->grab_focus (widget);
}

static void
ff_sorties_page_constructed (GObject *object)
{
  FfSortiesPage *self = FF_SORTIES_PAGE (object);

  G_OBJECT_CLASS (ff_sorties_page_parent_class)->constructed (object);
  self->tries = ff_planner_new (ff_keeper_data_dir (keeper_of (self)));
  g_signal_connect_object (self->tries, "changed", G_CALLBACK (on_tried), self, G_CONNECT_SWAPPED);
}

static void
ff_sorties_page_dispose (GObject *object)
{
  FfSortiesPage *self = FF_SORTIES_PAGE (object);

  if (self->tries != NULL)
    ff_planner_ask (self->tries, NULL);
  g_clear_object (&self->tries);
  g_clear_handle_id (&self->patience.source, g_source_remove);
  ff_sortie_columns_clear (&self->columns);
  G_OBJECT_CLASS (ff_sorties_page_parent_class)->dispose (object);
}

static void
ff_sorties_page_finalize (GObject *object)
{
  FfSortiesPage *self = FF_SORTIES_PAGE (object);

  g_clear_pointer (&self->shown, ff_answer_unref);
  ff_try_clear (&self->tried);
  g_free (self->chosen);
  g_free (self->job_id);
  G_OBJECT_CLASS (ff_sorties_page_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, stack);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, views);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, try_band);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, try_box);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, working);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, try_words);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, try_trouble);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, try_changes);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, why);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, light);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, rule);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, count);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, cost_label);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, open);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, charges);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, bag);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, cost);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, chart);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, as_table);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, what_if);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, otherwise);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, standing);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, accept);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, lock);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, table);
  gtk_widget_class_bind_template_child (widget_class, FfSortiesPage, list);
}

static void
bind_callbacks (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, on_what_if);
  gtk_widget_class_bind_template_callback (widget_class, on_chosen);
  gtk_widget_class_bind_template_callback (widget_class, on_opened);
  gtk_widget_class_bind_template_callback (widget_class, on_moved);
  gtk_widget_class_bind_template_callback (widget_class, on_row_activated);
  gtk_widget_class_bind_template_callback (widget_class, on_as_table);
  gtk_widget_class_install_action (widget_class, "sorties.end-try", NULL, act_end_try);
  gtk_widget_class_install_action (widget_class, "sorties.toggle-table", NULL, act_toggle_table);
  gtk_widget_class_install_action (widget_class, "sorties.reading", NULL, act_reading);
  gtk_widget_class_install_action (widget_class, "sorties.late", NULL, act_late);
  gtk_widget_class_install_action (widget_class, "sorties.lock", NULL, act_lock);
  gtk_widget_class_install_action (widget_class, "sorties.zoom", "i", act_zoom);
  gtk_widget_class_install_action (widget_class, "sorties.accept", NULL, act_accept);
  gtk_widget_class_install_action (widget_class, "sorties.go", "s", act_go);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, on_escape, NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_r, 0, "sorties.reading", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_k, 0, "sorties.lock", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_l, 0, "sorties.late", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Return, GDK_CONTROL_MASK,
                                       "sorties.accept", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_t, GDK_CONTROL_MASK,
                                       "sorties.toggle-table", NULL);
}

static void
ff_sorties_page_class_init (FfSortiesPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->constructed = ff_sorties_page_constructed;
  object_class->dispose = ff_sorties_page_dispose;
  object_class->finalize = ff_sorties_page_finalize;
  widget_class->unmap = ff_sorties_page_unmap;
  widget_class->grab_focus = ff_sorties_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_sorties_page_refresh;
  g_type_ensure (FF_TYPE_CHART);
  g_type_ensure (FF_TYPE_FLOW);
  g_type_ensure (FF_TYPE_OTHERWISE);
  g_type_ensure (FF_TYPE_STANDING_CARD);
  g_type_ensure (FF_TYPE_WHAT_IF);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-sorties-page.ui");
  bind_children (widget_class);
  bind_callbacks (widget_class);
}

static void
ff_sorties_page_init (FfSortiesPage *self)
{
  ff_try_clear (&self->tried);
  ff_sortie_columns_init (&self->columns);
  gtk_widget_init_template (GTK_WIDGET (self));
  self->patience.words = self->working;
}
