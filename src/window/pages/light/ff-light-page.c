/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-light-page.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-reading.h"
#include "ff-flow.h"
#include "ff-hours-view.h"
#include "ff-light-source.h"
#include "ff-light-steps.h"
#include "ff-light-words.h"
#include "ff-piece-cards.h"
#include "ff-reading-dialog.h"
#include "ff-ruler-view.h"

struct _FfLightPage {
  FfPage parent_instance;

  GtkStack *stack;
  GtkLabel *trouble;
  FfLightSource *source;
  GtkLabel *head, *rests, *gap, *closers, *pay, *until;
  FfRulerView *view;
  FfPieceCards *cards;
  GtkButton *fix;
  GtkToggleButton *why;
  GtkWidget *why_box, *day_box;
  GtkListBox *steps, *hours_words;
  FfHoursView *hours;

  FfLightStudy *study; /* NULL: something is missing */
  FfRuler ruler;
  FfExplainQuery light; /* at this moment */
  char *about;          /* what the ruler was made for: another one begins anew */
};

G_DEFINE_FINAL_TYPE (FfLightPage, ff_light_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Left Right", N_ ("Choose a piece of the ruler") },
  { "Up Down", N_ ("Move it a third of a stop") },
  { "f", N_ ("Fix the piece: another one pays") },
  { "0...9", N_ ("Fit the filter of so many stops") },
  { "t <Shift>t", N_ ("Five minutes later, earlier") },
  { "b", N_ ("The best settings again") },
  { "r", N_ ("Enter a light reading of the open job") },
  { "w", N_ ("Why: the steps") },
  { NULL },
};

const FfPageInfo ff_page_info_light = {
  .name = "light",
  .title = N_ ("Light"),
  .icon = "ff-light-symbolic",
  .sort = FF_PAGE_PLACE,
  .get_type = ff_light_page_get_type,
  .help = "light-page",
  .keys = page_keys,
};

static FfAdviseQuery
asked (FfLightPage *self)
{
  return ff_light_study_advise (self->study, self->light.ev100);
}

/* Showing */

static void
set_words (GtkLabel *label, const char *words)
{
  gtk_label_set_label (label, words);
  gtk_widget_set_visible (GTK_WIDGET (label), words[0] != '\0');
}

/* A place or a condition has no readings to rest on. */
static void
show_reading (FfLightPage *self)
{
  const FfLightStudyQuery *query = &self->study->query;
  g_autofree char *words = ff_light_source_shot (self->source) != NULL
                               ? ff_day_learned_words (query->day, query->sky)
                               : g_strdup ("");

  set_words (self->rests, words);
}

static void
show_words (FfLightPage *self)
{
  FfAdviseQuery query = asked (self);
  gint64 at = ff_light_source_at (self->source);
  g_autofree char *head = ff_light_words_head (self->study, at);
  g_autofree char *gap = ff_light_words_gap (ff_ruler_gap (&self->ruler, &query));
  g_autofree char *closers
      = ff_light_words_closers (self->study, &self->ruler, self->light.ev100);
  g_autofree char *until = ff_light_words_until (self->study, &self->ruler, at);

  set_words (self->head, head);
  show_reading (self);
  set_words (self->gap, gap);
  set_words (self->closers, closers);
  set_words (self->until, until);
  gtk_button_set_label (self->fix, self->ruler.fixed[self->ruler.chosen] ? _ ("Let go · F")
                                                                         : _ ("Fix · F"));
}

static void
show_steps (FfLightPage *self)
{
  FfAdviseQuery query = asked (self);
  FfExplainQuery explain = self->light;
  g_autoptr (GPtrArray) steps = NULL;

  explain.filters = ff_light_study_filter (self->study, self->ruler.filter);
  explain.filter_stops = ff_ruler_filter_stops (&self->ruler);
  ff_ruler_settings (&self->ruler, &query, &explain.settings);
  steps = ff_explain (&explain);
  ff_light_steps_show (self->steps, steps);
}

static void
show_ruler (FfLightPage *self)
{
  ff_ruler_view_show (self->view, self->study, &self->ruler, &self->light);
  ff_piece_cards_show (self->cards, self->study, &self->ruler);
  show_words (self);
  if (gtk_toggle_button_get_active (self->why))
    show_steps (self);
}

static GtkWidget *
hours_row (const FfStudyHours *hours)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *flow = ff_flow_new (12, 0);
  GtkWidget *name = gtk_label_new (hours->name);
  GtkWidget *words = gtk_label_new (hours->words);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_widget_add_css_class (name, "heading");
  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_widget_set_hexpand (words, TRUE);
  ff_flow_append (FF_FLOW (flow), name, 150);
  ff_flow_append (FF_FLOW (flow), words, 260);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), flow);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  return row;
}

static void
show_day (FfLightPage *self)
{
  GtkListBoxRow *row;

  ff_hours_view_show (self->hours, self->study, ff_light_source_at (self->source));
  gtk_widget_set_visible (self->day_box, self->study->query.condition == NULL);
  while ((row = gtk_list_box_get_row_at_index (self->hours_words, 0)) != NULL)
    gtk_list_box_remove (self->hours_words, GTK_WIDGET (row));
  for (guint i = 0; i < self->study->hours->len; i++)
    gtk_list_box_append (self->hours_words,
                         hours_row (g_ptr_array_index (self->study->hours, i)));
}

static void
say_pay (FfLightPage *self, const FfRuler *before, const FfRulerChange *pay)
{
  g_autofree char *words = ff_light_words_pay (self->study, before, pay);

  set_words (self->pay, words);
}

/* Another question */

/* The ruler begins anew for another shot or camera; under another sky it stays as it is set. */
static void
begin_ruler (FfLightPage *self)
{
  const FfLightStudyQuery *query = &self->study->query;
  g_autofree char *about = g_strdup_printf (
      "%s %s %d", query->shot->label[0] != '\0' ? query->shot->id : "",
      query->condition != NULL ? query->condition->name : "", (int) query->shot->view);
  FfAdviseQuery advise = asked (self);
  FfRulerChange pay;

  if (g_strcmp0 (about, self->about) != 0)
    ff_ruler_init (&self->ruler, &advise);
  else
    {
      ff_ruler_clamp (&self->ruler, &advise);
      ff_ruler_follow (&self->ruler, &advise, &pay);
    }
  g_free (self->about);
  self->about = g_steal_pointer (&about);
  set_words (self->pay, "");
}

static void
ask (FfLightPage *self)
{
  g_autoptr (GError) error = NULL;
  FfLightStudy *study = NULL;
  FfLightStudyQuery query;

  /* What is shown borrows from the study before. */
  ff_hours_view_show (self->hours, NULL, 0);
  if (ff_light_source_get (self->source, &query, &error))
    study = ff_light_study_new (&query, &error);
  g_clear_pointer (&self->study, ff_light_study_free);
  self->study = study;
  gtk_stack_set_visible_child_name (self->stack, study != NULL ? "light" : "none");
  if (study == NULL)
    {
      gtk_label_set_label (self->trouble, error->message);
      return;
    }
  ff_light_study_light (study, ff_light_source_at (self->source), &self->light);
  begin_ruler (self);
  show_day (self);
  show_ruler (self);
}

/* Callbacks */

static void
on_changed (FfLightPage *self)
{
  ask (self);
}

static void
on_moved (FfLightPage *self)
{
  const FfRuler before = self->ruler;
  FfAdviseQuery query;
  FfRulerChange pay;

  if (self->study == NULL)
    return;
  ff_light_study_light (self->study, ff_light_source_at (self->source), &self->light);
  query = asked (self);
  ff_ruler_follow (&self->ruler, &query, &pay);
  say_pay (self, &before, &pay);
  ff_hours_view_show (self->hours, self->study, ff_light_source_at (self->source));
  show_ruler (self);
}

static void
on_by (FfLightPage *self, int pieces)
{
  self->ruler.chosen
      = (FfRulerPiece) CLAMP ((int) self->ruler.chosen + pieces, 0, FF_N_PIECES - 1);
  show_ruler (self);
}

static void
on_chosen (FfLightPage *self, int piece)
{
  self->ruler.chosen = (FfRulerPiece) piece;
  show_ruler (self);
}

static void
on_move (FfLightPage *self, int steps)
{
  FfAdviseQuery query = asked (self);
  FfRuler before = self->ruler;
  FfRulerChange pay;

  if (!ff_ruler_move (&self->ruler, &query, steps, &pay))
    set_words (self->pay, self->ruler.fixed[self->ruler.chosen]
                              ? _ ("It is fixed. F lets it go.")
                              : _ ("This is its end."));
  else
    say_pay (self, &before, &pay);
  show_ruler (self);
}

static void
on_fix (FfLightPage *self)
{
  FfAdviseQuery query = asked (self);
  FfRuler before = self->ruler;
  FfRulerChange pay;

  ff_ruler_fix (&self->ruler, &query, self->ruler.chosen, &pay);
  say_pay (self, &before, &pay);
  show_ruler (self);
}

static void
on_fit (FfLightPage *self, int stops)
{
  FfAdviseQuery query = asked (self);
  FfRuler before = self->ruler;
  FfRulerChange pay;

  if (ff_ruler_fit (&self->ruler, &query, stops, &pay))
    say_pay (self, &before, &pay);
  else
    set_words (self->pay, self->ruler.fixed[FF_PIECE_FILTER] ? _ ("The filter is fixed.")
                                                             : _ ("No filter at hand is of it."));
  show_ruler (self);
}

static void
best_again (FfLightPage *self)
{
  FfAdviseQuery query = asked (self);

  ff_ruler_init (&self->ruler, &query);
  set_words (self->pay, "");
  show_ruler (self);
}

static void
on_why (FfLightPage *self)
{
  gboolean open = gtk_toggle_button_get_active (self->why);

  gtk_widget_set_visible (self->why_box, open);
  if (open && self->study != NULL)
    show_steps (self);
}

static void
enter_reading (FfLightPage *self)
{
  const char *shot_id = ff_light_source_shot (self->source);

  if (shot_id != NULL)
    ff_reading_dialog_present (GTK_WIDGET (self), ff_page_get_keeper (FF_PAGE (self)), shot_id);
  else
    ff_page_say (FF_PAGE (self), _ ("A reading belongs to a job: choose the light of a shot."),
                 FALSE);
}

/* Letters of the ruler that are not its own; capitals with Shift. */
static void
on_letter (FfLightPage *self, int letter)
{
  switch (letter)
    {
    case 't':
      ff_light_source_step (self->source, 1);
      break;
    case 'T':
      ff_light_source_step (self->source, -1);
      break;
    case 'b':
    case 'B':
      best_again (self);
      break;
    case 'r':
    case 'R':
      enter_reading (self);
      break;
    case 'w':
    case 'W':
      gtk_toggle_button_set_active (self->why, !gtk_toggle_button_get_active (self->why));
      break;
    default:
      break;
    }
}

static void
on_picked (FfLightPage *self, gint64 at)
{
  ff_light_source_go (self->source, at);
}

/* Actions: the keys as buttons */

static void
act_move (GtkWidget *widget, const char *action, GVariant *parameter)
{
  on_move (FF_LIGHT_PAGE (widget), g_variant_get_int32 (parameter));
}

static void
act_time (GtkWidget *widget, const char *action, GVariant *parameter)
{
  ff_light_source_step (FF_LIGHT_PAGE (widget)->source, g_variant_get_int32 (parameter));
}

static void
act_fix (GtkWidget *widget, const char *action, GVariant *parameter)
{
  on_fix (FF_LIGHT_PAGE (widget));
}

static void
act_best (GtkWidget *widget, const char *action, GVariant *parameter)
{
  best_again (FF_LIGHT_PAGE (widget));
}

static void
act_reading (GtkWidget *widget, const char *action, GVariant *parameter)
{
  enter_reading (FF_LIGHT_PAGE (widget));
}

/* Overrides */

static void
ff_light_page_refresh (FfPage *page, FfChanged changed)
{
  FfLightPage *self = FF_LIGHT_PAGE (page);

  ff_light_source_refresh (self->source);
  ask (self);
}

static gboolean
ff_light_page_grab_focus (GtkWidget *widget)
{
  FfLightPage *self = FF_LIGHT_PAGE (widget);

  if (self->study != NULL)
    return gtk_widget_grab_focus (GTK_WIDGET (self->view));
  return gtk_widget_child_focus (GTK_WIDGET (self->source), GTK_DIR_TAB_FORWARD);
}

static void
ff_light_page_constructed (GObject *object)
{
  FfLightPage *self = FF_LIGHT_PAGE (object);

  G_OBJECT_CLASS (ff_light_page_parent_class)->constructed (object);
  ff_light_source_set_keeper (self->source, ff_page_get_keeper (FF_PAGE (self)));
}

static void
ff_light_page_dispose (GObject *object)
{
  FfLightPage *self = FF_LIGHT_PAGE (object);

  if (self->hours != NULL)
    ff_hours_view_show (self->hours, NULL, 0);
  g_clear_pointer (&self->study, ff_light_study_free);
  G_OBJECT_CLASS (ff_light_page_parent_class)->dispose (object);
}

static void
ff_light_page_finalize (GObject *object)
{
  g_free (FF_LIGHT_PAGE (object)->about);
  G_OBJECT_CLASS (ff_light_page_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, stack);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, trouble);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, source);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, head);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, rests);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, gap);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, closers);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, pay);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, until);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, view);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, cards);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, fix);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, why);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, why_box);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, day_box);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, steps);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, hours_words);
  gtk_widget_class_bind_template_child (widget_class, FfLightPage, hours);
}

static void
bind_callbacks (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, on_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_moved);
  gtk_widget_class_bind_template_callback (widget_class, on_by);
  gtk_widget_class_bind_template_callback (widget_class, on_chosen);
  gtk_widget_class_bind_template_callback (widget_class, on_move);
  gtk_widget_class_bind_template_callback (widget_class, on_fix);
  gtk_widget_class_bind_template_callback (widget_class, on_fit);
  gtk_widget_class_bind_template_callback (widget_class, on_letter);
  gtk_widget_class_bind_template_callback (widget_class, on_why);
  gtk_widget_class_bind_template_callback (widget_class, on_picked);
  gtk_widget_class_install_action (widget_class, "light.move", "i", act_move);
  gtk_widget_class_install_action (widget_class, "light.time", "i", act_time);
  gtk_widget_class_install_action (widget_class, "light.fix", NULL, act_fix);
  gtk_widget_class_install_action (widget_class, "light.best", NULL, act_best);
  gtk_widget_class_install_action (widget_class, "light.reading", NULL, act_reading);
}

static void
ff_light_page_class_init (FfLightPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->constructed = ff_light_page_constructed;
  object_class->dispose = ff_light_page_dispose;
  object_class->finalize = ff_light_page_finalize;
  widget_class->grab_focus = ff_light_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_light_page_refresh;
  g_type_ensure (FF_TYPE_FLOW);
  g_type_ensure (FF_TYPE_LIGHT_SOURCE);
  g_type_ensure (FF_TYPE_RULER_VIEW);
  g_type_ensure (FF_TYPE_PIECE_CARDS);
  g_type_ensure (FF_TYPE_HOURS_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-light-page.ui");
  bind_children (widget_class);
  bind_callbacks (widget_class);
}

static void
ff_light_page_init (FfLightPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
