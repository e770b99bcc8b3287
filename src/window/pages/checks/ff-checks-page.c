/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-checks-page.h"

#include <glib/gi18n-lib.h>

#include "ff-checks-rows.h"
#include "ff-civil.h"
#include "ff-flow.h"
#include "ff-run-view.h"
#include "ff-words.h"

struct _FfChecksPage {
  FfPage parent_instance;

  FfDayChecks *checks; /* NULL: trouble */
  gboolean filling;    /* switches and rows change by our own hand */
  GtkStack *stack;
  GtkButton *next;
  GtkWidget *who, *people; /* asked while nobody is at the keys */
  GtkLabel *next_words, *open;
  GtkWidget *conditions[FF_N_WHEN];
  GtkListBox *list;
  FfRunView *run;
};

G_DEFINE_FINAL_TYPE (FfChecksPage, ff_checks_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Return", N_ ("Start the list, or go on with it; answer the item") },
  { "space", N_ ("Answer the item; go on after a hold") },
  { "n", N_ ("Not applicable, with a reason") },
  { "f", N_ ("Failed: a defect, or the flight is held") },
  { "d", N_ ("Defer the item") },
  { "h", N_ ("Hold the list") },
  { "k", N_ ("Keep a value that differs, with a reason") },
  { "u", N_ ("Take back the last answer") },
  { "p", N_ ("Enter from paper, with its time") },
  { "x", N_ ("Abandon the run, with a reason") },
  { "Escape", N_ ("Back to all lists of the day") },
  { NULL },
};

const FfPageInfo ff_page_info_checks = {
  .name = "checks",
  .title = N_ ("Checks"),
  .icon = "ff-checks-symbolic",
  .sort = FF_PAGE_PART,
  .get_type = ff_checks_page_get_type,
  .help = "checks",
  .keys = page_keys,
  .shows_day = TRUE,
};

static FfKeeper *
keeper_of (FfChecksPage *self)
{
  return ff_page_get_keeper (FF_PAGE (self));
}

static GTimeZone *
zone_of (FfChecksPage *self)
{
  const FfPlace *place = ff_keeper_place (keeper_of (self));
  GTimeZone *zone = place != NULL ? ff_zone_new (place->zone, NULL) : NULL;

  return zone != NULL ? zone : g_time_zone_new_utc ();
}

static const FfDayCheck *
check_at (FfChecksPage *self, int i)
{
  return self->checks != NULL && i >= 0 && i < (int) self->checks->checks->len
             ? g_ptr_array_index (self->checks->checks, i)
             : NULL;
}

/* Showing */

static void
fill_list (FfChecksPage *self)
{
  g_autoptr (GTimeZone) zone = zone_of (self);
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->list, 0)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  for (int i = 0; check_at (self, i) != NULL; i++)
    gtk_list_box_append (self->list, ff_checks_row_new (check_at (self, i), zone));
}

static void
show_next (FfChecksPage *self)
{
  const FfDayCheck *next = check_at (self, self->checks->next);
  g_autoptr (GTimeZone) zone = zone_of (self);
  g_autofree char *label = NULL;
  g_autofree char *words = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->next), next != NULL);
  if (next == NULL)
    {
      gtk_label_set_label (self->next_words,
                           _ ("Every list of the day is complete. The pilot decides."));
      return;
    }
  label = g_strdup_printf (next->state == FF_RUN_GOING || next->state == FF_RUN_HELD
                               ? _ ("Go on: %s")
                               : _ ("Start: %s"),
                           next->title);
  words = ff_checks_row_words (next, zone);
  gtk_button_set_label (self->next, label);
  gtk_label_set_label (self->next_words, words);
}

static void
show_conditions (FfChecksPage *self)
{
  self->filling = TRUE;
  for (int i = 0; i < FF_N_WHEN; i++)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->conditions[i]),
                                 (self->checks->conditions & 1u << i) != 0);
  self->filling = FALSE;
}

static void
on_person (FfChecksPage *self, GtkButton *button)
{
  ff_keeper_set_initials (keeper_of (self), g_object_get_data (G_OBJECT (button), "initials"));
  gtk_widget_set_visible (self->who, FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

/* Nothing is answered by nobody. */
static void
show_people (FfChecksPage *self)
{
  GPtrArray *crew = ff_keeper_crew (keeper_of (self));
  GtkWidget *child;

  gtk_widget_set_visible (self->who, ff_keeper_initials (keeper_of (self))[0] == '\0');
  while ((child = gtk_widget_get_first_child (self->people)) != NULL)
    gtk_widget_unparent (child);
  for (guint i = 0; i < crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (crew, i);
      GtkWidget *button = gtk_button_new_with_label (member->name);

      g_object_set_data_full (G_OBJECT (button), "initials", g_strdup (member->initials), g_free);
      g_signal_connect_object (button, "clicked", G_CALLBACK (on_person), self, G_CONNECT_SWAPPED);
      ff_flow_append (FF_FLOW (self->people), button, -1);
    }
}

static void
show_open (FfChecksPage *self)
{
  guint n = self->checks->open->len;
  g_autofree char *text
      = n > 0 ? g_strdup_printf (ngettext ("%u thing is open.", "%u things are open.", n), n)
              : g_strdup (_ ("Nothing entered here is open. Airspace and notices are not known to "
                             "this program. The pilot decides."));

  gtk_label_set_label (self->open, text);
}

static void
refresh (FfChecksPage *self)
{
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->checks, ff_day_checks_free);
  if (ff_keeper_job (keeper_of (self)) == NULL)
    return;
  self->checks = ff_keeper_checks (keeper_of (self), &error);
  if (self->checks == NULL)
    {
      ff_page_say_error (FF_PAGE (self), &error);
      return;
    }
  fill_list (self);
  show_next (self);
  show_conditions (self);
  show_people (self);
  show_open (self);
}

static gboolean
on_run (FfChecksPage *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->stack), "run") == 0;
}

static void
show_all (FfChecksPage *self)
{
  ff_run_view_take (self->run, NULL);
  gtk_stack_set_visible_child_name (self->stack, "all");
  refresh (self);
}

/* What can be done */

static void
run_check (FfChecksPage *self, const FfDayCheck *check)
{
  g_autoptr (GError) error = NULL;
  gboolean goes = check->state == FF_RUN_GOING || check->state == FF_RUN_HELD;
  FfDayRun *run;

  if (ff_keeper_initials (keeper_of (self))[0] == '\0')
    {
      gtk_widget_set_visible (self->who, TRUE);
      gtk_widget_child_focus (self->people, GTK_DIR_TAB_FORWARD);
      return;
    }
  run = goes ? ff_keeper_open_run (keeper_of (self), check->run_id, &error)
             : ff_keeper_start_run (keeper_of (self), check->entry, self->checks->conditions,
                                    check->line, &error);

  if (run == NULL)
    {
      ff_page_say_error (FF_PAGE (self), &error);
      return;
    }
  gtk_stack_set_visible_child_name (self->stack, "run");
  ff_run_view_take (self->run, run);
  gtk_widget_grab_focus (GTK_WIDGET (self->run));
}

static void
on_next (FfChecksPage *self)
{
  const FfDayCheck *next = self->checks != NULL ? check_at (self, self->checks->next) : NULL;

  if (next != NULL)
    run_check (self, next);
}

static void
on_row (FfChecksPage *self, GtkListBoxRow *row)
{
  const FfDayCheck *check = check_at (self, gtk_list_box_row_get_index (row));

  if (check != NULL)
    run_check (self, check);
}

static void
on_left (FfChecksPage *self)
{
  show_all (self);
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

/* What the person says of the day stands before what its facts say. */
static void
on_condition (FfChecksPage *self, GtkCheckButton *button)
{
  const char *token = g_object_get_data (G_OBJECT (button), "condition");
  const FfJob *job = ff_keeper_job (keeper_of (self));
  FfStore *store = ff_keeper_store (keeper_of (self));
  g_autoptr (GError) error = NULL;

  if (self->filling || store == NULL || job == NULL)
    return;
  ff_day_condition_save (store, job->id, token, gtk_check_button_get_active (button), &error);
  ff_page_say_error (FF_PAGE (self), &error);
  refresh (self);
}

/* Overrides */

static void
ff_checks_page_refresh (FfPage *page, FfChanged changed)
{
  FfChecksPage *self = FF_CHECKS_PAGE (page);
  FfDayRun *run = ff_run_view_get (self->run);
  const FfJob *job = ff_keeper_job (keeper_of (self));

  if (run != NULL && (job == NULL || !g_str_equal (ff_day_run_kept (run)->job_id, job->id)))
    show_all (self);
  else if (!on_run (self))
    refresh (self);
}

static gboolean
ff_checks_page_grab_focus (GtkWidget *widget)
{
  FfChecksPage *self = FF_CHECKS_PAGE (widget);

  if (on_run (self))
    return gtk_widget_grab_focus (GTK_WIDGET (self->run));
  if (gtk_widget_get_visible (self->who))
    return gtk_widget_child_focus (self->people, GTK_DIR_TAB_FORWARD);
  if (gtk_widget_get_visible (GTK_WIDGET (self->next)))
    return gtk_widget_grab_focus (GTK_WIDGET (self->next));
  return gtk_widget_child_focus (GTK_WIDGET (self->list), GTK_DIR_TAB_FORWARD);
}

static void
ff_checks_page_dispose (GObject *object)
{
  g_clear_pointer (&FF_CHECKS_PAGE (object)->checks, ff_day_checks_free);
  G_OBJECT_CLASS (ff_checks_page_parent_class)->dispose (object);
}

static void
ff_checks_page_constructed (GObject *object)
{
  FfChecksPage *self = FF_CHECKS_PAGE (object);

  G_OBJECT_CLASS (ff_checks_page_parent_class)->constructed (object);
  self->run = FF_RUN_VIEW (ff_run_view_new (keeper_of (self)));
  g_signal_connect_swapped (self->run, "left", G_CALLBACK (on_left), self);
  gtk_stack_add_named (self->stack, GTK_WIDGET (self->run), "run");
}

static void
ff_checks_page_class_init (FfChecksPageClass *klass)
{
  G_OBJECT_CLASS (klass)->constructed = ff_checks_page_constructed;
  G_OBJECT_CLASS (klass)->dispose = ff_checks_page_dispose;
  GTK_WIDGET_CLASS (klass)->grab_focus = ff_checks_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_checks_page_refresh;
}

/* Building */

static GtkLabel *
label_new (GtkBox *box, const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, css);
  gtk_box_append (box, label);
  return GTK_LABEL (label);
}

static void
add_next (FfChecksPage *self, GtkBox *body)
{
  GtkWidget *label;

  self->next = GTK_BUTTON (gtk_button_new_with_label (" "));
  label = gtk_button_get_child (self->next);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (GTK_WIDGET (self->next), "suggested-action");
  gtk_widget_add_css_class (GTK_WIDGET (self->next), "check-next");
  g_signal_connect_swapped (self->next, "clicked", G_CALLBACK (on_next), self);
  gtk_box_append (body, GTK_WIDGET (self->next));
  self->next_words = label_new (body, "", "soft");
}

static void
add_people (FfChecksPage *self, GtkBox *body)
{
  self->who = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  self->people = ff_flow_new (8, 6);
  label_new (GTK_BOX (self->who), _ ("Who is at the keys?"), "heading");
  gtk_box_append (GTK_BOX (self->who), self->people);
  gtk_widget_set_visible (self->who, FALSE);
  gtk_box_append (body, self->who);
}

static void
add_conditions (FfChecksPage *self, GtkBox *body)
{
  GtkWidget *flow = ff_flow_new (14, 4);

  label_new (body, _ ("This day is"), "field-label");
  for (int i = 0; i < FF_N_WHEN; i++)
    {
      self->conditions[i] = gtk_check_button_new_with_label (ff_name_text (&ff_names_when, i));
      g_object_set_data (G_OBJECT (self->conditions[i]), "condition",
                         (gpointer) ff_name_token (&ff_names_when, i));
      g_signal_connect_swapped (self->conditions[i], "toggled", G_CALLBACK (on_condition), self);
      ff_flow_append (FF_FLOW (flow), self->conditions[i], -1);
    }
  gtk_box_append (body, flow);
}

static void
add_list (FfChecksPage *self, GtkBox *body)
{
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "boxed-list");
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (on_row), self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Lists of the day"), -1);
  gtk_box_append (body, GTK_WIDGET (self->list));
}

static void
ff_checks_page_init (FfChecksPage *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkBox *body = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 10));

  gtk_widget_add_css_class (GTK_WIDGET (body), "page-body");
  add_people (self, body);
  add_next (self, body);
  self->open = label_new (body, "", "heading");
  add_conditions (self, body);
  add_list (self, body);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), GTK_WIDGET (body));
  self->stack = GTK_STACK (gtk_stack_new ());
  gtk_stack_set_hhomogeneous (self->stack, FALSE);
  gtk_stack_add_named (self->stack, scrolled, "all");
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->stack));
}
