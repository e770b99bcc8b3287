/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-report-form.h"

#include <glib/gi18n-lib.h>

#include "ff-columns.h"
#include "ff-entry.h"
#include "ff-lines.h"
#include "ff-note.h"
#include "ff-number.h"
#include "ff-report-words.h"

struct _FfReportForm {
  GtkBox parent_instance;

  GTimeZone *zone; /* NULL: UTC */
  gint64 now;
  FfNote *text;
  GtkBox *rows;
  FfEntry *distance, *elevation;
};

G_DEFINE_FINAL_TYPE (FfReportForm, ff_report_form, GTK_TYPE_BOX)

enum { ENTER, N_SIGNALS };

static guint signals[N_SIGNALS];

void
ff_report_form_set_time (FfReportForm *self, GTimeZone *zone, gint64 now)
{
  g_clear_pointer (&self->zone, g_time_zone_unref);
  self->zone = zone != NULL ? g_time_zone_ref (zone) : NULL;
  self->now = now;
}

/* ---- What it says ---- */

static void
show_words (FfReportForm *self, const FfReport *report)
{
  g_autofree char *title = ff_report_title (report, self->zone);
  g_autoptr (GPtrArray) words = ff_report_words (report, self->zone);

  ff_lines_add (self->rows, title, "heading");
  for (guint i = 0; i < words->len; i++)
    {
      const FfReportWord *word = g_ptr_array_index (words, i);
      g_autofree char *line = word->label == NULL || *word->label == '\0'
                                  ? g_strdup (word->text)
                                  /* Translators: "Wind: 240°, 4.1 m/s". */
                                  : g_strdup_printf (_ ("%s: %s"), word->label, word->text);

      ff_lines_add (self->rows, line, word->label == NULL ? "heading" : NULL);
    }
}

/* While it is typed it is not scolded: an unfinished report simply says nothing yet. */
static void
on_typed (FfReportForm *self, const char *text)
{
  g_autoptr (FfReport) report = NULL;

  ff_note_complain (self->text, NULL);
  ff_lines_clear (self->rows);
  if (*text == '\0')
    return;
  report = ff_report_read (text, self->now, NULL);
  if (report != NULL)
    show_words (self, report);
  else
    ff_lines_add (self->rows, _ ("□ Not a whole report yet: station and time are needed."), "soft");
}

void
ff_report_form_paste (FfReportForm *self, const char *text)
{
  ff_note_reset (self->text, text);
  on_typed (self, text);
}

/* ---- Reading ---- */

/* Typed in kilometres, kept in metres. */
static gboolean
read_number (FfEntry *entry, const char *what, double low, double high, double scale, double *ret)
{
  const char *text = ff_entry_get_text (entry);
  g_autoptr (GError) error = NULL;
  double value;

  if (*text != '\0' && ff_number_parse (what, text, low, high, &value, &error))
    *ret = value * scale;
  ff_entry_complain (entry, error != NULL ? error->message : NULL);
  return error == NULL;
}

FfWeatherReport *
ff_report_form_read (FfReportForm *self, const char *job_id)
{
  const char *text = ff_note_get_text (self->text);
  g_autoptr (FfWeatherReport) made = ff_weather_report_new (job_id);
  g_autoptr (GError) error = NULL;
  g_autoptr (FfReport) report = ff_report_read (text, self->now, &error);

  if (report == NULL)
    {
      ff_note_complain (self->text, error->message);
      return NULL;
    }
  if (!read_number (self->distance, _ ("Distance"), 0, 500, 1000, &made->distance_m)
      || !read_number (self->elevation, _ ("Elevation"), -500, 6000, 1, &made->elevation_m))
    return NULL;
  ff_set_text (&made->text, text);
  made->at = self->now;
  return g_steal_pointer (&made);
}

/* Distance and elevation stay: the next report is mostly of the same aerodrome. */
void
ff_report_form_kept (FfReportForm *self)
{
  ff_note_reset (self->text, "");
  ff_lines_clear (self->rows);
}

void
ff_report_form_complain (FfReportForm *self, const char *sentence)
{
  ff_note_complain (self->text, sentence);
}

/* ---- The widget ---- */

static void
on_enter (FfReportForm *self)
{
  g_signal_emit (self, signals[ENTER], 0);
}

static gboolean
ff_report_form_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_REPORT_FORM (widget)->text));
}

static void
ff_report_form_finalize (GObject *object)
{
  g_clear_pointer (&FF_REPORT_FORM (object)->zone, g_time_zone_unref);
  G_OBJECT_CLASS (ff_report_form_parent_class)->finalize (object);
}

static void
ff_report_form_class_init (FfReportFormClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ff_report_form_finalize;
  GTK_WIDGET_CLASS (klass)->grab_focus = ff_report_form_grab_focus;
  signals[ENTER] = g_signal_new ("enter", FF_TYPE_REPORT_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
}

static void
ff_report_form_init (FfReportForm *self)
{
  const GCallback enter = G_CALLBACK (on_enter);
  GtkWidget *columns = ff_columns_new (11, 2);
  GtkWidget *button = gtk_button_new_with_mnemonic (_ ("Keep the _report"));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 10);
  self->text = FF_NOTE (ff_note_new (_ ("METAR, SPECI or TAF, as it was issued")));
  self->rows = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 2));
  self->distance = ff_columns_append_entry (FF_COLUMNS (columns), _ ("Aerodrome is away"),
                                            "km", FALSE, enter, self);
  self->elevation = ff_columns_append_entry (FF_COLUMNS (columns), _ ("Elevation of the aerodrome"),
                                             "m", FALSE, enter, self);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_object (self->text, "typed", G_CALLBACK (on_typed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_enter), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->text));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->rows));
  gtk_box_append (GTK_BOX (self), columns);
  gtk_box_append (GTK_BOX (self), button);
}

GtkWidget *
ff_report_form_new (void)
{
  return g_object_new (FF_TYPE_REPORT_FORM, NULL);
}
