/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shot-needs.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-block.h"
#include "ff-civil.h"
#include "ff-sun-rose.h"

struct _FfShotNeeds {
  AdwBin parent_instance;

  GtkLabel *hour, *best, *glass, *need, *sun, *light, *plan, *edit;
  GtkLabel *clock_start, *clock_middle, *clock_end;
  FfBlock *block_start, *block_middle, *block_end;
  GtkWidget *wedge, *sun_box, *plan_box;
  GtkBox *remarks;
  FfSunRose *rose;
};

G_DEFINE_FINAL_TYPE (FfShotNeeds, ff_shot_needs, ADW_TYPE_BIN)

/* Settings are read as one: "f/2.8" and "ISO 100" are not broken over two lines. */
static void
set_words (GtkLabel *label, const char *words)
{
  g_autoptr (GString) whole = g_string_new (words);

  g_string_replace (whole, "f/", "f/\u2060", 0);
  g_string_replace (whole, "ISO ", "ISO\u00a0", 0);
  gtk_label_set_label (label, whole->str);
  gtk_widget_set_visible (GTK_WIDGET (label), words[0] != '\0');
}

static void
show_moment (FfBlock *block, GtkLabel *clock, const FfShotMoment *moment, GTimeZone *zone)
{
  g_autofree char *words = ff_instant_clock ((double) moment->at, zone);

  ff_block_set_stops (block, moment->need_stops);
  gtk_label_set_label (clock, words);
}

static void
show_wedge (FfShotNeeds *self, const FfShotAdvice *advice, GTimeZone *zone)
{
  gboolean wanted = isfinite (advice->start.need_stops);

  gtk_widget_set_visible (self->wedge, wanted);
  if (!wanted)
    return;
  show_moment (self->block_start, self->clock_start, &advice->start, zone);
  show_moment (self->block_middle, self->clock_middle, &advice->middle, zone);
  show_moment (self->block_end, self->clock_end, &advice->end, zone);
}

/* Labels are used again, so that a list of remarks that stays the same does not blink. */
static GtkLabel *
nth_remark (FfShotNeeds *self, guint n)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->remarks));

  for (guint i = 0; child != NULL && i < n; i++)
    child = gtk_widget_get_next_sibling (child);
  if (child != NULL)
    return GTK_LABEL (child);
  child = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (child), 0);
  gtk_label_set_wrap (GTK_LABEL (child), TRUE);
  gtk_box_append (self->remarks, child);
  return GTK_LABEL (child);
}

static void
show_remarks (FfShotNeeds *self, const FfShotAdvice *advice)
{
  guint n = 0;

  for (guint i = 0; advice != NULL && i < advice->helps->len; i++)
    {
      g_autofree char *words
          /* Translators: one thing that would bring a shot within reach: "a filter of 8 stops". */
          = g_strdup_printf (_ ("▸ Would help: %s"), (char *) advice->helps->pdata[i]);

      gtk_label_set_label (nth_remark (self, n++), words);
    }
  for (guint i = 0; advice != NULL && i < advice->remarks->len; i++)
    {
      g_autofree char *words = g_strdup_printf ("▸ %s", (char *) advice->remarks->pdata[i]);

      gtk_label_set_label (nth_remark (self, n++), words);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->remarks), n > 0);
  for (GtkWidget *child = GTK_WIDGET (nth_remark (self, n)); child != NULL;)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (child);

      gtk_box_remove (self->remarks, child);
      child = next;
    }
}

static void
show_nothing (FfShotNeeds *self, const char *why)
{
  set_words (self->best, why);
  set_words (self->glass, "");
  set_words (self->need, "");
  set_words (self->light, "");
  set_words (self->hour, "");
  gtk_widget_set_visible (self->wedge, FALSE);
  gtk_widget_set_visible (self->sun_box, FALSE);
  show_remarks (self, NULL);
}

static void
show_hour (FfShotNeeds *self, const FfShot *shot, const FfShotAdvice *advice, GTimeZone *zone)
{
  g_autofree char *clock = ff_instant_clock ((double) advice->now.at, zone);
  g_autofree char *words = NULL;

  /* Translators: heading of what a shot needs: its label and a clock time. */
  words = g_strdup_printf (_ ("%s at %s"), shot->label, clock);
  set_words (self->hour, words);
}

/* How long the choice holds belongs to how the need changes: one paragraph. */
static void
show_need (FfShotNeeds *self, const FfShotAdvice *advice)
{
  gboolean both = advice->need[0] != '\0' && advice->lasts[0] != '\0';
  g_autofree char *words = g_strconcat (advice->need, both ? " " : "", advice->lasts, NULL);

  set_words (self->need, words);
}

/* Class */

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, hour);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, best);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, glass);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, need);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, sun);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, light);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, plan);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, edit);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, clock_start);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, clock_middle);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, clock_end);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, block_start);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, block_middle);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, block_end);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, wedge);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, sun_box);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, plan_box);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, remarks);
  gtk_widget_class_bind_template_child (widget_class, FfShotNeeds, rose);
}

static void
ff_shot_needs_class_init (FfShotNeedsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (FF_TYPE_BLOCK);
  g_type_ensure (FF_TYPE_SUN_ROSE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-shot-needs.ui");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  bind_children (widget_class);
}

static void
ff_shot_needs_init (FfShotNeeds *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* Public */

void
ff_shot_needs_show (FfShotNeeds *self,
                    const FfShot *shot,
                    const FfShotAdvice *advice,
                    GTimeZone *zone,
                    const char *why)
{
  g_return_if_fail (FF_IS_SHOT_NEEDS (self));
  if (advice == NULL)
    {
      show_nothing (self, why);
      return;
    }
  show_hour (self, shot, advice, zone);
  set_words (self->best, advice->best);
  set_words (self->glass, advice->glass);
  show_need (self, advice);
  show_wedge (self, advice, zone);
  gtk_widget_set_visible (self->sun_box, TRUE);
  set_words (self->sun, advice->sun);
  set_words (self->light, advice->light);
  ff_sun_rose_show (self->rose, shot->view == FF_VIEW_DOWN ? NAN : shot->bearing_deg,
                    advice->now.sun_azimuth_deg, advice->now.sun_altitude_deg, advice->sun);
  show_remarks (self, advice);
}

void
ff_shot_needs_show_plan (FfShotNeeds *self, const char *words, gboolean missed)
{
  g_return_if_fail (FF_IS_SHOT_NEEDS (self));
  set_words (self->plan, words);
  gtk_widget_set_visible (self->plan_box, words[0] != '\0');
  if (missed)
    gtk_widget_add_css_class (self->plan_box, "missed");
  else
    gtk_widget_remove_css_class (self->plan_box, "missed");
}

void
ff_shot_needs_show_edit (FfShotNeeds *self, const char *sentence)
{
  g_autofree char *words = NULL;

  g_return_if_fail (FF_IS_SHOT_NEEDS (self));
  if (sentence != NULL)
    /* Translators: what the edits of a shot do to the day; a sentence follows. */
    words = g_strdup_printf (_ ("Since you opened it: %s"), sentence);
  gtk_label_set_label (self->edit, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->edit), words != NULL);
}
