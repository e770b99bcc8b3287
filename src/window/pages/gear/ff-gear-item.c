/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-item.h"

#include <glib/gi18n-lib.h>

#include "ff-block.h"
#include "ff-columns.h"
#include "ff-gear-battery.h"
#include "ff-gear-form.h"
#include "ff-gear-measure.h"
#include "ff-gear-state.h"
#include "ff-gear-story.h"
#include "ff-gear-with.h"
#include "ff-gear-words.h"

struct _FfGearItem {
  AdwBin parent_instance;

  FfKeeper *keeper;
  char *id;
  GtkScrolledWindow *scroller;
  GtkLabel *label, *title, *kind, *state, *reason, *question, *used_by, *followers;
  FfColumns *figures;
  FfBlock *block;
  struct {
    GtkWidget *box;
    GtkLabel *value, *caption;
  } figure[FF_GEAR_MAX_FIGURES];
  GtkButton *change, *use, *measure;
  GtkMenuButton *menu;
  FfGearState *event;
  FfGearBattery *battery;
  FfGearWith *with;
  FfGearStory *story;
  GtkBox *forms;
  GtkWidget *form[FF_KIND_OTHER + 1]; /* by kind, made when first shown */
  GtkWidget *shown;                   /* one of them */
};

G_DEFINE_FINAL_TYPE (FfGearItem, ff_gear_item, ADW_TYPE_BIN)

static void
set_words (GtkLabel *label, const char *words)
{
  gtk_label_set_label (label, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (label), words != NULL && words[0] != '\0');
}

/* The figures: made once, so that nothing blinks while their values are typed */

static GtkLabel *
make_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);
  return GTK_LABEL (label);
}

/* A filter's first figure is its neutral block, large; its stops stand in it. */
static void
add_block (FfGearItem *self, GtkBox *box)
{
  self->block = FF_BLOCK (ff_block_new (0));
  gtk_widget_set_halign (GTK_WIDGET (self->block), GTK_ALIGN_START);
  gtk_widget_add_css_class (GTK_WIDGET (self->block), "gear-block");
  gtk_box_append (box, GTK_WIDGET (self->block));
}

static void
make_figures (FfGearItem *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (self->figure); i++)
    {
      GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

      self->figure[i].box = box;
      self->figure[i].value = make_label ("gear-figure");
      self->figure[i].caption = make_label ("gear-caption");
      gtk_label_set_wrap (self->figure[i].caption, TRUE);
      if (i == 0)
        add_block (self, GTK_BOX (box));
      gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->figure[i].value));
      gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->figure[i].caption));
      ff_columns_append (self->figures, box, FALSE);
    }
}

static void
show_figures (FfGearItem *self, const FfItem *item)
{
  gboolean filter = item->kind == FF_KIND_FILTER;
  FfGearFigure figures[FF_GEAR_MAX_FIGURES];
  guint n = ff_gear_figures (item, figures);

  for (guint i = 0; i < G_N_ELEMENTS (self->figure); i++)
    {
      /* The block is higher than figures are; without it captions may have two lines. */
      gtk_widget_set_valign (self->figure[i].box, filter ? GTK_ALIGN_END : GTK_ALIGN_START);
      gtk_widget_set_visible (self->figure[i].box, i < n);
      gtk_label_set_label (self->figure[i].value, i < n ? figures[i].value : "");
      gtk_label_set_label (self->figure[i].caption, i < n ? figures[i].caption : "");
    }
  ff_block_set_stops (self->block, item->stops_to);
  gtk_widget_set_visible (GTK_WIDGET (self->block), filter);
  gtk_widget_set_visible (GTK_WIDGET (self->figure[0].value),
                          !filter || item->stops_to > item->stops);
  gtk_widget_set_visible (GTK_WIDGET (self->figures), n > 0);
  ff_gear_figures_clear (figures);
}

/* The head */

static void
show_names (FfGearItem *self, const FfItem *item)
{
  g_autofree char *kind = NULL;

  gtk_label_set_label (self->label, item->label);
  if (g_utf8_strlen (item->label, -1) > FF_GEAR_LABEL_LENGTH)
    gtk_widget_add_css_class (GTK_WIDGET (self->label), "long");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->label), "long");
  set_words (self->title, ff_gear_title (item));
  if (item->case_label[0] != '\0')
    /* Translators: the kind of an item, and the number of its case: "battery in case 2". */
    kind = g_strdup_printf (_ ("%s in case %s"), ff_name_text (&ff_names_kind, (int) item->kind),
                            item->case_label);
  gtk_label_set_label (self->kind, kind != NULL
                                       ? kind
                                       : ff_name_text (&ff_names_kind, (int) item->kind));
}

static void
show_state (FfGearItem *self, const FfItem *item)
{
  FfGearWorld world = { ff_keeper_items (self->keeper), ff_keeper_jobs (self->keeper), "" };
  g_autofree char *state = ff_gear_state_words (item->state);
  g_autofree char *reason = ff_gear_state_reason (item, FALSE);
  g_autofree char *question = ff_gear_question (item, &world);

  gtk_label_set_label (self->state, state);
  set_words (self->reason, reason);
  set_words (self->question, question);
  if (item->state == FF_STATE_SERVICEABLE)
    gtk_widget_remove_css_class (GTK_WIDGET (self->state), "held");
  else
    gtk_widget_add_css_class (GTK_WIDGET (self->state), "held");
}

static void
show_others (FfGearItem *self, const FfItem *item)
{
  g_autofree char *jobs = ff_gear_used_by (item, ff_keeper_jobs (self->keeper));
  g_autofree char *labels = ff_gear_followers (item, ff_keeper_items (self->keeper));
  g_autofree char *used_by = NULL;
  g_autofree char *followers = NULL;

  if (jobs != NULL)
    /* Translators: an item: the jobs that use it. */
    used_by = g_strdup_printf (_ ("Used by: %s"), jobs);
  if (labels != NULL)
    /* Translators: an item: labels of those that are packed whenever it is. */
    followers = g_strdup_printf (_ ("With it go: %s"), labels);
  set_words (self->used_by, used_by);
  set_words (self->followers, followers);
}

/* Papers and safety kit belong to every day; the rest may be on the list of the open job or not. A
 * job without a list uses everything. */
static void
show_use (FfGearItem *self, const FfItem *item)
{
  const FfJob *job = ff_keeper_job (self->keeper);
  gboolean offered = job != NULL && job->item_ids->len > 0 && !ff_gear_job_uses (job, item)
                     && item->state != FF_STATE_RETIRED;
  g_autofree char *words = NULL;

  if (offered)
    /* Translators: a button: puts the item on the list of the open job. */
    words = g_strdup_printf (_ ("Use it in “%s”"), job->title);
  gtk_label_set_label (GTK_LABEL (gtk_button_get_child (self->use)), words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->use), offered);
}

/* One form a kind is shown at a time; a stack would measure them at widths they never get. */
static void
show_form (FfGearItem *self, const FfItem *item)
{
  GtkWidget **form = &self->form[item->kind];

  if (*form == NULL)
    {
      *form = ff_gear_form_new (item->kind, self->keeper);
      gtk_box_append (self->forms, *form);
    }
  ff_gear_form_show (FF_GEAR_FORM (*form), item);
  if (self->shown != NULL && self->shown != *form)
    gtk_widget_set_visible (self->shown, FALSE);
  gtk_widget_set_visible (*form, TRUE);
  self->shown = *form;
}

/* Callbacks */

static void
on_change (FfGearItem *self)
{
  const FfItem *item = ff_keeper_find_item (self->keeper, self->id);

  if (item == NULL)
    return;
  ff_gear_state_begin (self->event, item);
  gtk_widget_set_visible (GTK_WIDGET (self->event), TRUE);
  gtk_widget_grab_focus (GTK_WIDGET (self->event));
}

static void
on_measure (FfGearItem *self)
{
  ff_gear_measure_begin (GTK_WIDGET (self), self->keeper, self->id);
}

static void
on_event_done (FfGearItem *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->event), FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->change));
}

/* Overrides */

static void
ff_gear_item_dispose (GObject *object)
{
  g_clear_object (&FF_GEAR_ITEM (object)->keeper);
  G_OBJECT_CLASS (ff_gear_item_parent_class)->dispose (object);
}

static void
ff_gear_item_finalize (GObject *object)
{
  g_free (FF_GEAR_ITEM (object)->id);
  G_OBJECT_CLASS (ff_gear_item_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-gear-item.ui");
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, scroller);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, label);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, title);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, kind);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, state);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, reason);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, question);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, used_by);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, followers);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, figures);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, change);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, use);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, measure);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, menu);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, event);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, battery);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, with);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, story);
  gtk_widget_class_bind_template_child (widget_class, FfGearItem, forms);
  gtk_widget_class_bind_template_callback (widget_class, on_change);
  gtk_widget_class_bind_template_callback (widget_class, on_measure);
  gtk_widget_class_bind_template_callback (widget_class, on_event_done);
}

static void
ff_gear_item_class_init (FfGearItemClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = ff_gear_item_dispose;
  object_class->finalize = ff_gear_item_finalize;
  g_type_ensure (FF_TYPE_COLUMNS);
  g_type_ensure (FF_TYPE_GEAR_BATTERY);
  g_type_ensure (FF_TYPE_GEAR_STATE);
  g_type_ensure (FF_TYPE_GEAR_STORY);
  g_type_ensure (FF_TYPE_GEAR_WITH);
  bind_template (GTK_WIDGET_CLASS (klass));
}

static void
ff_gear_item_init (FfGearItem *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  make_figures (self);
}

/* Public */

void
ff_gear_item_set_keeper (FfGearItem *self, FfKeeper *keeper)
{
  g_return_if_fail (FF_IS_GEAR_ITEM (self));
  g_set_object (&self->keeper, keeper);
  ff_gear_state_set_keeper (self->event, keeper);
}

void
ff_gear_item_show (FfGearItem *self, const FfItem *item)
{
  g_return_if_fail (FF_IS_GEAR_ITEM (self) && self->keeper != NULL);
  /* What was begun about another item is not about this one. */
  if (g_strcmp0 (self->id, item->id) != 0)
    {
      gtk_widget_set_visible (GTK_WIDGET (self->event), FALSE);
      gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
      ff_set_text (&self->id, item->id);
    }
  show_names (self, item);
  show_figures (self, item);
  show_state (self, item);
  show_others (self, item);
  show_use (self, item);
  gtk_widget_set_visible (GTK_WIDGET (self->measure),
                          item->kind == FF_KIND_FILTER && item->stops_to <= item->stops);
  show_form (self, item);
  ff_gear_battery_show (self->battery, self->keeper, item);
  ff_gear_with_show (self->with, self->keeper, item);
  ff_gear_story_show (self->story, self->keeper, item);
}

void
ff_gear_item_edit (FfGearItem *self)
{
  g_return_if_fail (FF_IS_GEAR_ITEM (self));
  if (self->shown != NULL)
    gtk_widget_grab_focus (self->shown);
}

void
ff_gear_item_change_state (FfGearItem *self)
{
  g_return_if_fail (FF_IS_GEAR_ITEM (self));
  on_change (self);
}
