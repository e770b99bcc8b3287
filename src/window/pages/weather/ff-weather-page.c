/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-weather-page.h"

#include <glib/gi18n-lib.h>

#include "ff-call-form.h"
#include "ff-compat.h"
#include "ff-flow.h"
#include "ff-lines.h"
#include "ff-measure-form.h"
#include "ff-printing.h"
#include "ff-report-form.h"
#include "ff-settings.h"
#include "ff-thin-air-pick.h"
#include "ff-weather-rows.h"

struct _FfWeatherPage {
  FfPage parent_instance;

  FfDay *day; /* as the store holds it; NULL: no job is open */
  FfWeatherToday *today;
  gint64 pretended; /* what the clock is to say; 0: the computer's own */
  guint tick_source;

  GtkLabel *standing, *summary, *standby, *practice;
  GtkWidget *standby_band;
  FfPick *thin_air;
  GtkBox *outside, *rows, *measured, *reports, *estimates, *calls;
  FfMeasureForm *measure;
  FfReportForm *report;
  FfCallForm *call;
};

G_DEFINE_FINAL_TYPE (FfWeatherPage, ff_weather_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Return", N_ ("Keep what is measured, reported or decided") },
  { NULL },
};

const FfPageInfo ff_page_info_weather = {
  .name = "weather",
  .title = N_ ("Weather call"),
  .icon = "ff-day-symbolic",
  .sort = FF_PAGE_PART,
  .get_type = ff_weather_page_get_type,
  .help = "weather",
  .keys = page_keys,
  .under = "day",
};

static FfKeeper *
keeper_of (FfWeatherPage *self)
{
  return ff_page_get_keeper (FF_PAGE (self));
}

/* ---- The clock ---- */

static gint64
now_of (FfWeatherPage *self)
{
  const gint64 now = g_get_real_time () / G_USEC_PER_SEC;

  if (self->pretended != 0)
    return self->pretended;
  return self->day != NULL ? ff_limits_clock (self->day, now) : now;
}

/* ---- Showing ---- */

static void
set_words (GtkLabel *label, GtkWidget *shown, const char *words)
{
  /* Left alone where it says the same: it is read aloud when it changes. */
  if (g_strcmp0 (gtk_label_get_label (label), words) != 0)
    gtk_label_set_label (label, words != NULL ? words : "");
  gtk_widget_set_visible (shown, words != NULL);
}

static void
work_out (FfWeatherPage *self)
{
  FfStore *store = ff_keeper_store (keeper_of (self));
  g_autoptr (GPtrArray) calls = NULL;

  g_clear_pointer (&self->today, ff_weather_today_free);
  if (self->day == NULL || store == NULL)
    return;
  calls = ff_weather_calls_load (store, ff_keeper_job (keeper_of (self))->id, NULL);
  if (calls != NULL)
    self->today = ff_weather_today (self->day, ff_keeper_plan (keeper_of (self)), calls,
                                    now_of (self));
}

static void
show_all (FfWeatherPage *self)
{
  const FfWeatherToday *today;

  work_out (self);
  today = self->today;
  if (today == NULL)
    return;
  gtk_label_set_label (self->standing, today->limits->standing);
  set_words (self->summary, GTK_WIDGET (self->summary), today->summary);
  set_words (self->standby, self->standby_band, today->standby);
  gtk_widget_set_visible (GTK_WIDGET (self->practice),
                          ff_keeper_job (keeper_of (self))->example);
  ff_weather_rows_show (self->outside, today, TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self->outside), today->limits->outside->len > 0);
  ff_weather_rows_show (self->rows, today, FALSE);
  ff_weather_rows_show_texts (self->measured, today->measured, _ ("Nothing is measured yet."));
  ff_weather_rows_show_texts (self->reports, today->reports, _ ("No report is entered yet."));
  ff_weather_rows_show_texts (self->calls, today->calls, _ ("Nothing is decided yet."));
  ff_weather_rows_show_words (self->estimates, today->estimates);
  ff_thin_air_pick_show (self->thin_air, ff_keeper_thin_air (keeper_of (self)));
  ff_report_form_set_time (self->report, ff_day_zone (self->day), now_of (self));
  ff_call_form_set_by (self->call, ff_keeper_initials (keeper_of (self)));
}

/* At each full minute: the ages of what is known, and how long the crew stands by. */
static gboolean
on_minute (gpointer data)
{
  FfWeatherPage *self = data;
  const gint64 second = g_get_real_time () / G_USEC_PER_SEC % 60;

  show_all (self);
  self->tick_source = g_timeout_add_seconds ((guint) (60 - second), on_minute, self);
  return G_SOURCE_REMOVE;
}

static void
start_clock (FfWeatherPage *self)
{
  const gint64 second = g_get_real_time () / G_USEC_PER_SEC % 60;

  g_clear_handle_id (&self->tick_source, g_source_remove);
  self->tick_source = g_timeout_add_seconds ((guint) (60 - second), on_minute, self);
}

void
ff_weather_page_set_now (FfWeatherPage *self, gint64 now)
{
  self->pretended = now;
  show_all (self);
}

const FfWeatherToday *
ff_weather_page_today (FfWeatherPage *self)
{
  return self->today;
}

/* ---- Entering ---- */

static const char *
job_id_of (FfWeatherPage *self)
{
  const FfJob *job = ff_keeper_job (keeper_of (self));

  return job != NULL ? job->id : "";
}

static void
on_measured (FfWeatherPage *self)
{
  g_autoptr (FfMeasurement) made = ff_measure_form_read (self->measure, job_id_of (self));
  g_autoptr (GError) error = NULL;

  if (made == NULL)
    return;
  made->at = now_of (self);
  ff_set_text (&made->by, ff_keeper_initials (keeper_of (self)));
  if (ff_keeper_add_measurement (keeper_of (self), made, &error))
    {
      ff_measure_form_kept (self->measure);
      ff_page_say (FF_PAGE (self), self->today != NULL ? self->today->summary : _ ("Kept."),
                   FALSE);
    }
  else
    ff_measure_form_complain (self->measure, error->message);
}

static void
on_reported (FfWeatherPage *self)
{
  g_autoptr (FfWeatherReport) made = NULL;
  g_autoptr (GError) error = NULL;

  ff_report_form_set_time (self->report, self->day != NULL ? ff_day_zone (self->day) : NULL,
                           now_of (self));
  made = ff_report_form_read (self->report, job_id_of (self));
  if (made == NULL)
    return;
  ff_set_text (&made->by, ff_keeper_initials (keeper_of (self)));
  if (ff_keeper_add_report (keeper_of (self), made, &error))
    ff_report_form_kept (self->report);
  else
    ff_report_form_complain (self->report, error->message);
}

static void
on_called (FfWeatherPage *self)
{
  g_autoptr (FfWeatherCall) made = NULL;
  g_autoptr (GError) error = NULL;

  if (self->day == NULL)
    return;
  made = ff_call_form_read (self->call, job_id_of (self), ff_day_zone (self->day), now_of (self));
  if (made == NULL)
    return;
  if (ff_keeper_add_call (keeper_of (self), made, &error))
    ff_call_form_kept (self->call);
  else
    ff_call_form_complain (self->call, error->message);
}

/* ---- On paper ---- */

static FfProof *
make_proof (FfWeatherPage *self, GError **error)
{
  const FfJob *job = ff_keeper_job (keeper_of (self));
  g_autofree char *token = ff_settings_dup_text ("paper");
  const FfPaper paper = g_strcmp0 (token, "letter") == 0 ? FF_PAPER_LETTER : FF_PAPER_A4;

  return ff_proof_new_weather (ff_sheet_facts (self->day, ff_keeper_plan (keeper_of (self)),
                                               now_of (self)),
                               self->today, paper, job->date, error);
}

static void
ff_weather_page_print (FfPage *page)
{
  FfWeatherPage *self = FF_WEATHER_PAGE (page);
  g_autoptr (FfProof) proof = NULL;
  g_autoptr (GError) error = NULL;

  if (self->today == NULL)
    return;
  proof = make_proof (self, &error);
  if (proof != NULL)
    ff_printing_run (proof, page);
  ff_page_say_error (page, &error);
}

void
ff_weather_page_save (FfWeatherPage *self, GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfProof) proof = self->today != NULL ? make_proof (self, &error) : NULL;

  if (proof != NULL && ff_brief_write_pdf (proof->brief, g_file_peek_path (file), &error))
    {
      g_autofree char *name = g_file_get_basename (file);
      g_autofree char *words = g_strdup_printf (_ ("Saved as %s"), name);

      ff_page_say (FF_PAGE (self), words, FALSE);
    }
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
on_file_chosen (GFile *file, gpointer data)
{
  g_autoptr (FfWeatherPage) self = FF_WEATHER_PAGE (data);

  if (file != NULL && gtk_widget_get_root (GTK_WIDGET (self)) != NULL)
    ff_weather_page_save (self, file);
}

static void
on_save (FfWeatherPage *self)
{
  g_autoptr (FfProof) proof = NULL;
  g_autoptr (GError) error = NULL;

  if (self->today == NULL)
    return;
  proof = make_proof (self, &error);
  if (proof != NULL)
    ff_compat_save_file (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), _ ("Save as PDF"),
                         proof->file_name, on_file_chosen, g_object_ref (self));
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
on_print (FfWeatherPage *self)
{
  ff_weather_page_print (FF_PAGE (self));
}

static void
on_back (FfWeatherPage *self)
{
  ff_page_go (FF_PAGE (self), "day");
}

/* ---- Overrides ---- */

static void
ff_weather_page_refresh (FfPage *page, FfChanged changed)
{
  FfWeatherPage *self = FF_WEATHER_PAGE (page);
  const FfJob *job = ff_keeper_job (keeper_of (self));
  FfStore *store = ff_keeper_store (keeper_of (self));

  g_clear_pointer (&self->today, ff_weather_today_free);
  g_clear_pointer (&self->day, ff_day_free);
  if (job == NULL || store == NULL)
    return;
  self->day = ff_day_load (store, job->id, NULL);
  show_all (self);
}

static void
ff_weather_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (ff_weather_page_parent_class)->map (widget);
  start_clock (FF_WEATHER_PAGE (widget));
}

static void
ff_weather_page_unmap (GtkWidget *widget)
{
  g_clear_handle_id (&FF_WEATHER_PAGE (widget)->tick_source, g_source_remove);
  GTK_WIDGET_CLASS (ff_weather_page_parent_class)->unmap (widget);
}

/* The gust is what is measured first. */
static gboolean
ff_weather_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_WEATHER_PAGE (widget)->measure));
}

static void
ff_weather_page_finalize (GObject *object)
{
  FfWeatherPage *self = FF_WEATHER_PAGE (object);

  g_clear_pointer (&self->today, ff_weather_today_free);
  g_clear_pointer (&self->day, ff_day_free);
  g_clear_handle_id (&self->tick_source, g_source_remove);
  G_OBJECT_CLASS (ff_weather_page_parent_class)->finalize (object);
}

static void
ff_weather_page_class_init (FfWeatherPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = ff_weather_page_finalize;
  widget_class->map = ff_weather_page_map;
  widget_class->unmap = ff_weather_page_unmap;
  widget_class->grab_focus = ff_weather_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_weather_page_refresh;
  FF_PAGE_CLASS (klass)->print = ff_weather_page_print;
}

/* ---- Built once ---- */

static void
add_button (FfWeatherPage *self,
            GtkWidget *flow,
            const char *label,
            const char *tip,
            void (*clicked) (FfWeatherPage *))
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  gtk_widget_set_tooltip_text (button, tip);
  g_signal_connect_object (button, "clicked", G_CALLBACK (clicked), self, G_CONNECT_SWAPPED);
  ff_flow_append (FF_FLOW (flow), button, -1);
}

static GtkWidget *
head_new (FfWeatherPage *self)
{
  GtkWidget *flow = ff_flow_new (8, 8);

  /* Short, so that all stand in one row where it is narrow. */
  add_button (self, flow, _ ("_Back"), _ ("Back to the day"), on_back);
  add_button (self, flow, _ ("_Print"), _ ("Print the page"), on_print);
  add_button (self, flow, _ ("Save _PDF"), _ ("Save the page as PDF"), on_save);
  return flow;
}

static GtkBox *
box_in (GtkWidget *card)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  gtk_box_append (GTK_BOX (card), box);
  return GTK_BOX (box);
}

static GtkWidget *
card_with (const char *heading, GtkWidget *form, GtkBox **ret_below)
{
  GtkWidget *card = ff_lines_card (heading);

  if (form != NULL)
    gtk_box_append (GTK_BOX (card), form);
  *ret_below = box_in (card);
  return card;
}

/* What is entered, in the order in which it is: measure, read the report, decide. */
static GtkWidget *
entering_new (FfWeatherPage *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 16);

  self->measure = FF_MEASURE_FORM (ff_measure_form_new ());
  self->report = FF_REPORT_FORM (ff_report_form_new ());
  self->call = FF_CALL_FORM (ff_call_form_new ());
  g_signal_connect_object (self->measure, "enter", G_CALLBACK (on_measured), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->report, "enter", G_CALLBACK (on_reported), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->call, "enter", G_CALLBACK (on_called), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (column), card_with (_ ("Measured on site"), GTK_WIDGET (self->measure),
                                               &self->measured));
  gtk_box_append (GTK_BOX (column), card_with (_ ("Report or forecast"), GTK_WIDGET (self->report),
                                               &self->reports));
  gtk_box_append (GTK_BOX (column), card_with (_ ("The crew decides"), GTK_WIDGET (self->call),
                                               &self->calls));
  gtk_widget_set_hexpand (column, TRUE);
  return column;
}

static FfKeeper *
keeper_of_page (gpointer page)
{
  return keeper_of (page);
}

static GtkWidget *
reading_new (FfWeatherPage *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 16);

  gtk_box_append (GTK_BOX (column), card_with (_ ("Limits"), NULL, &self->rows));
  gtk_box_append (GTK_BOX (column),
                  card_with (_ ("Estimates, no measurements"), NULL, &self->estimates));
  self->thin_air = FF_PICK (ff_thin_air_pick_new (keeper_of_page, self));
  gtk_box_append (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (self->estimates))),
                  GTK_WIDGET (self->thin_air));
  gtk_box_set_spacing (self->rows, 14);
  gtk_widget_set_hexpand (column, TRUE);
  return column;
}

static GtkLabel *
status_new (const char *css_class)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "xalign", 0.0, "wrap", TRUE, "wrap-mode",
                                   PANGO_WRAP_WORD_CHAR, "accessible-role",
                                   GTK_ACCESSIBLE_ROLE_STATUS, NULL);

  gtk_widget_add_css_class (label, css_class);
  return GTK_LABEL (label);
}

static void
add_top (FfWeatherPage *self, GtkBox *body)
{
  self->summary = status_new ("heading-large");
  self->standing = GTK_LABEL (ff_line_new ("", NULL));
  self->practice = GTK_LABEL (
      ff_line_new (_ ("Example day: this page’s clock is today’s, on the day of the example."),
                   "soft"));
  self->standby = status_new ("heading-large");
  self->standby_band = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_widget_add_css_class (self->standby_band, "heed");
  gtk_box_append (GTK_BOX (self->standby_band), ff_line_new ("‖", "heading-large"));
  gtk_box_append (GTK_BOX (self->standby_band), GTK_WIDGET (self->standby));
  gtk_widget_set_visible (self->standby_band, FALSE);
  self->outside = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 8));
  gtk_box_append (body, head_new (self));
  gtk_box_append (body, self->standby_band);
  gtk_box_append (body, GTK_WIDGET (self->summary));
  gtk_box_append (body, GTK_WIDGET (self->standing));
  gtk_box_append (body, GTK_WIDGET (self->practice));
  gtk_box_append (body, GTK_WIDGET (self->outside));
}

static void
ff_weather_page_init (FfWeatherPage *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *clamp = adw_clamp_new ();
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);
  GtkWidget *columns = ff_flow_new (24, 16);

  gtk_widget_add_css_class (body, "page-body");
  add_top (self, GTK_BOX (body));
  ff_flow_append (FF_FLOW (columns), entering_new (self), 440);
  ff_flow_append (FF_FLOW (columns), reading_new (self), 440);
  gtk_box_append (GTK_BOX (body), columns);
  adw_clamp_set_maximum_size (ADW_CLAMP (clamp), 1240);
  adw_clamp_set_tightening_threshold (ADW_CLAMP (clamp), 1100);
  adw_clamp_set_child (ADW_CLAMP (clamp), body);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), clamp);
  adw_bin_set_child (ADW_BIN (self), scroller);
}
