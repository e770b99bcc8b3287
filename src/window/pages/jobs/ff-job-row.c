/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-job-row.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"

struct _FfJobRow {
  GtkListBoxRow parent_instance;

  char *id;
  GtkLabel *weekday, *day, *month, *tag, *title, *facts;
  GtkMenuButton *menu;
};

G_DEFINE_FINAL_TYPE (FfJobRow, ff_job_row, GTK_TYPE_LIST_BOX_ROW)

/* The date stands as on a tear-off calendar: weekday, day, month and year. */
static void
show_date (FfJobRow *self, const char *date)
{
  FfDate day;
  g_autoptr (GDateTime) noon = NULL;
  g_autofree char *weekday = NULL;
  g_autofree char *number = NULL;
  g_autofree char *month = NULL;

  if (date[0] != '\0' && ff_date_parse (date, &day, NULL))
    noon = g_date_time_new_utc (day.year, day.month, day.day, 12, 0, 0);
  if (noon == NULL)
    {
      gtk_label_set_label (self->day, "–");
      gtk_label_set_label (self->month, _ ("no date"));
      return;
    }
  weekday = g_date_time_format (noon, "%a");
  number = g_strdup_printf ("%d", day.day);
  /* Translators: month and year under the day of a job, in strftime's letters. */
  month = g_date_time_format (noon, _ ("%b %Y"));
  gtk_label_set_label (self->weekday, weekday);
  gtk_label_set_label (self->day, number);
  gtk_label_set_label (self->month, month);
}

static char *
words_of_facts (const FfJob *job, const FfPlace *place)
{
  GString *words = g_string_new (NULL);

  if (place != NULL && !g_str_equal (place->name, job->title))
    g_string_append (words, place->name);
  if (job->client[0] != '\0')
    g_string_append_printf (words, "%s%s", words->len > 0 ? " · " : "", job->client);
  if (job->first_off >= 0)
    {
      g_autofree char *clock = ff_clock_format (job->first_off);

      g_string_append (words, words->len > 0 ? " · " : "");
      g_string_append_printf (words, _ ("first off %s"), clock);
    }
  if (words->len == 0)
    g_string_append (words, _ ("no place and no hours yet"));
  return g_string_free (words, FALSE);
}

/* One word over the title that says why the job stands out; empty: it does not. */
static char *
tag_of (const FfJob *job, const char *next, gboolean open)
{
  if (job->state == FF_JOB_PUT_AWAY)
    return g_strdup (_ ("put away"));
  if (job->state == FF_JOB_FLOWN)
    /* Translators: ■ is the shape of "done". */
    return g_strdup (_ ("■ flown"));
  if (next != NULL)
    /* Translators: over the job that comes next; %s is "in 3 days" or "today". */
    return g_strdup_printf (_ ("Next, %s"), next);
  return g_strdup (open ? _ ("last open") : "");
}

static void
add_item (GMenu *menu, const char *label, const char *action, const char *id)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

  g_menu_item_set_action_and_target (item, action, "s", id);
  g_menu_append_item (menu, item);
}

static void
fill_menu (FfJobRow *self, const FfJob *job)
{
  g_autoptr (GMenu) menu = g_menu_new ();

  add_item (menu, _ ("_Duplicate"), "job.duplicate", job->id);
  add_item (menu, job->state == FF_JOB_PUT_AWAY ? _ ("Take _out again") : _ ("_Put away"),
            "job.put-away", job->id);
  add_item (menu, _ ("D_elete"), "job.delete", job->id);
  gtk_menu_button_set_menu_model (self->menu, G_MENU_MODEL (menu));
}

static void
show_tag (FfJobRow *self, const char *tag, gboolean next)
{
  gtk_label_set_label (self->tag, tag);
  gtk_widget_set_visible (GTK_WIDGET (self->tag), tag[0] != '\0');
  if (next)
    gtk_widget_add_css_class (GTK_WIDGET (self), "next");
}

/* Overrides */

static void
ff_job_row_finalize (GObject *object)
{
  g_free (FF_JOB_ROW (object)->id);
  G_OBJECT_CLASS (ff_job_row_parent_class)->finalize (object);
}

static void
ff_job_row_class_init (FfJobRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = ff_job_row_finalize;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-job-row.ui");
  gtk_widget_class_bind_template_child (widget_class, FfJobRow, weekday);
  gtk_widget_class_bind_template_child (widget_class, FfJobRow, day);
  gtk_widget_class_bind_template_child (widget_class, FfJobRow, month);
  gtk_widget_class_bind_template_child (widget_class, FfJobRow, tag);
  gtk_widget_class_bind_template_child (widget_class, FfJobRow, title);
  gtk_widget_class_bind_template_child (widget_class, FfJobRow, facts);
  gtk_widget_class_bind_template_child (widget_class, FfJobRow, menu);
}

static void
ff_job_row_init (FfJobRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* Public */

GtkWidget *
ff_job_row_new (const FfJob *job, const FfPlace *place, const char *next, gboolean open)
{
  FfJobRow *self = g_object_new (FF_TYPE_JOB_ROW, NULL);
  g_autofree char *facts = words_of_facts (job, place);
  g_autofree char *spoken = NULL;
  g_autofree char *tag = tag_of (job, next, open);

  self->id = g_strdup (job->id);
  show_date (self, job->date);
  show_tag (self, tag, next != NULL);
  gtk_label_set_label (self->title, job->title);
  gtk_label_set_label (self->facts, facts);
  fill_menu (self, job);
  spoken = g_strdup_printf ("%s %s, %s, %s", tag, job->title,
                            job->date[0] != '\0' ? job->date : _ ("no date"), facts);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->menu), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What to do with this job"), -1);
  return GTK_WIDGET (self);
}

const char *
ff_job_row_get_id (FfJobRow *self)
{
  g_return_val_if_fail (FF_IS_JOB_ROW (self), NULL);
  return self->id;
}
