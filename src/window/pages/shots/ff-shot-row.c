/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shot-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-block.h"
#include "ff-number.h"
#include "ff-shots-list.h"

struct _FfShotRow {
  GtkListBoxRow parent_instance;

  char *id;
  GtkLabel *label, *tag, *title, *facts, *place;
  FfBlock *need;
};

G_DEFINE_FINAL_TYPE (FfShotRow, ff_shot_row, GTK_TYPE_LIST_BOX_ROW)

/* What makes it stand out, over the title. */
static char *
words_of_tag (const FfShot *shot)
{
  if (shot->most_wanted && shot->fixed_time)
    return g_strdup (_ ("Most wanted · fixed time"));
  if (shot->most_wanted)
    /* Translators: the shot of the day that must not be missed. */
    return g_strdup (_ ("Most wanted"));
  /* Translators: somebody else keeps the time of this shot: a ferry, a train. */
  return g_strdup (shot->fixed_time ? _ ("Fixed time") : "");
}

static void
set_class (GtkWidget *widget, const char *name, gboolean on)
{
  if (on)
    gtk_widget_add_css_class (widget, name);
  else
    gtk_widget_remove_css_class (widget, name);
}

static void
speak (FfShotRow *self, const FfShot *shot, double need_stops, const char *place)
{
  g_autofree char *facts = ff_shots_facts (shot);
  g_autofree char *tag = words_of_tag (shot);
  g_autofree char *stops = isnan (need_stops) ? g_strdup ("–") : ff_stops_format (need_stops);
  g_autofree char *words = NULL;

  /* Translators: a shot as a screen reader says it: label, title, when, its need ("5.3 stops"), its
   * place in the plan, what makes it stand out. */
  words = g_strdup_printf (_ ("%s %s. %s. Needs %s. %s. %s"), shot->label, shot->title, facts,
                           stops, place, tag);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  g_strchomp (words), -1);
}

/* Overrides */

static void
ff_shot_row_dispose (GObject *object)
{
  FfShotRow *self = FF_SHOT_ROW (object);

  g_clear_pointer (&self->id, g_free);
  G_OBJECT_CLASS (ff_shot_row_parent_class)->dispose (object);
}

static void
ff_shot_row_class_init (FfShotRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = ff_shot_row_dispose;
  g_type_ensure (FF_TYPE_BLOCK);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-shot-row.ui");
  gtk_widget_class_bind_template_child (widget_class, FfShotRow, label);
  gtk_widget_class_bind_template_child (widget_class, FfShotRow, tag);
  gtk_widget_class_bind_template_child (widget_class, FfShotRow, title);
  gtk_widget_class_bind_template_child (widget_class, FfShotRow, facts);
  gtk_widget_class_bind_template_child (widget_class, FfShotRow, place);
  gtk_widget_class_bind_template_child (widget_class, FfShotRow, need);
}

static void
ff_shot_row_init (FfShotRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* Public */

GtkWidget *
ff_shot_row_new (void)
{
  return g_object_new (FF_TYPE_SHOT_ROW, NULL);
}

void
ff_shot_row_show (FfShotRow *self,
                  const FfShot *shot,
                  double need_stops,
                  const char *place,
                  gboolean missed)
{
  g_autofree char *tag = words_of_tag (shot);
  g_autofree char *facts = ff_shots_facts (shot);

  g_return_if_fail (FF_IS_SHOT_ROW (self));
  ff_set_text (&self->id, shot->id);
  gtk_label_set_label (self->label, shot->label);
  gtk_label_set_label (self->title, shot->title[0] != '\0' ? shot->title : _ ("no title yet"));
  gtk_label_set_label (self->tag, tag);
  gtk_widget_set_visible (GTK_WIDGET (self->tag), tag[0] != '\0');
  gtk_label_set_label (self->facts, facts);
  gtk_label_set_label (self->place, place);
  set_class (GTK_WIDGET (self), "missed", missed);
  ff_block_set_stops (self->need, need_stops);
  speak (self, shot, need_stops, place);
}

const char *
ff_shot_row_get_id (FfShotRow *self)
{
  g_return_val_if_fail (FF_IS_SHOT_ROW (self), NULL);
  return self->id;
}
