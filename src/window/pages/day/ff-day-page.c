/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-page-private.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-day-fields.h"
#include "ff-day-values.h"
#include "ff-day-words.h"
#include "ff-weather-today.h"

#define MARGIN 8 /* over and under what stays on the screen */

G_DEFINE_FINAL_TYPE (FfDayPage, ff_day_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Return", N_ ("Write the value as it is stored; add the line that is typed") },
  { "Escape", N_ ("Give up a value that was refused") },
  { NULL },
};

const FfPageInfo ff_page_info_day = {
  .name = "day",
  .title = N_ ("Day"),
  .icon = "ff-day-symbolic",
  .sort = FF_PAGE_PART,
  .get_type = ff_day_page_get_type,
  .help = "day",
  .keys = page_keys,
};

FfKeeper *
ff_day_page_keeper (FfDayPage *self)
{
  return ff_page_get_keeper (FF_PAGE (self));
}

FfEntry *
ff_day_page_entry (FfDayPage *self, const char *name)
{
  return FF_ENTRY (gtk_widget_get_template_child (GTK_WIDGET (self), FF_TYPE_DAY_PAGE, name));
}

/* ---- Fields to records ---- */

static gboolean
save_job_field (FfDayPage *self, const FfDayField *day_field, const char *text, char **ret_sentence)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  const FfField *field = ff_day_field_of (day_field);
  g_autoptr (FfJob) job = ff_keeper_dup_job (keeper, ff_keeper_job (keeper)->id);
  g_autoptr (GError) error = NULL;
  g_autofree char *whose = NULL;

  if (job == NULL
      || (ff_day_value_set (field, job, day_field->scale, text, &error)
          && ff_keeper_save_job (keeper, job, _ (day_field->what), &error)))
    return TRUE;
  whose = g_strdup_printf (_ ("job “%s”"), job->title);
  *ret_sentence = g_strdup (ff_day_refusal (whose, field, error->message));
  return FALSE;
}

static gboolean
save_place_field (FfDayPage *self,
                  const FfDayField *day_field,
                  const char *text,
                  char **ret_sentence)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  const FfField *field = ff_day_field_of (day_field);
  g_autoptr (FfPlace) place = ff_keeper_dup_place (keeper, ff_keeper_job (keeper)->place_id);
  g_autoptr (GError) error = NULL;
  g_autofree char *whose = NULL;

  if (place == NULL
      || (ff_day_value_set (field, place, day_field->scale, text, &error)
          && ff_keeper_save_place (keeper, place, _ (day_field->what), &error)))
    return TRUE;
  whose = g_strdup_printf (_ ("place “%s”"), place->name);
  *ret_sentence = g_strdup (ff_day_refusal (whose, field, error->message));
  return FALSE;
}

static void
on_typed (FfEntry *entry, const char *text, FfDayPage *self)
{
  const FfDayField *day_field = g_object_get_data (G_OBJECT (entry), "field");
  g_autofree char *sentence = NULL;

  if (ff_keeper_job (ff_day_page_keeper (self)) == NULL)
    return;
  if (day_field->owner == FF_DAY_OF_JOB)
    save_job_field (self, day_field, text, &sentence);
  else
    save_place_field (self, day_field, text, &sentence);
  ff_entry_complain (entry, sentence);
}

static void
on_sky_picked (FfDayPage *self, int sky)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  g_autoptr (FfJob) job = ff_keeper_dup_job (keeper, ff_keeper_job (keeper)->id);
  g_autoptr (GError) error = NULL;

  if (job == NULL)
    return;
  job->sky = (FfSky) sky;
  ff_keeper_save_job (keeper, job, _ ("Sky changed"), &error);
  ff_page_say_error (FF_PAGE (self), &error);
}

/* ---- The calendar ---- */

static void
on_day_selected (FfDayPage *self)
{
  g_autoptr (GDateTime) day = gtk_calendar_get_date (self->calendar);
  g_autofree char *date = g_date_time_format (day, "%Y-%m-%d");
  g_autofree char *sentence = NULL;

  if (self->setting_calendar)
    return;
  save_job_field (self, ff_day_fields_find ("date"), date, &sentence);
  ff_entry_complain (ff_day_page_entry (self, "date"), sentence);
}

/* It opens on the day of the shoot, or on today. */
static void
on_calendar_opens (FfDayPage *self)
{
  const FfJob *job = ff_keeper_job (ff_day_page_keeper (self));
  g_autoptr (GDateTime) day = NULL;
  FfDate date;

  if (job == NULL || job->date[0] == '\0' || !ff_date_parse (job->date, &date, NULL))
    return;
  day = g_date_time_new_utc (date.year, date.month, date.day, 12, 0, 0);
  self->setting_calendar = TRUE;
  gtk_calendar_select_day (self->calendar, day);
  self->setting_calendar = FALSE;
}

/* ---- Records to fields ---- */

static void
show_remark (FfDayPage *self, const char *name, const char *remark)
{
  ff_entry_set_remark (ff_day_page_entry (self, name), remark);
}

static void
show_date_remark (FfDayPage *self, const FfJob *job)
{
  g_autofree char *words = NULL;
  FfDate date;

  if (job->date[0] != '\0' && ff_date_parse (job->date, &date, NULL))
    words = ff_date_format_long (date);
  show_remark (self, "date", words);
}

/* "25:30" is half past one on the next day. */
static void
show_hour_remarks (FfDayPage *self, const FfJob *job)
{
  static const char *const names[] = { "on_site", "first_off", "all_down", "off_site" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      const FfField *field = ff_fields_find (&ff_job_fields, names[i]);
      const int minutes = *ff_field_whole (field, job);
      g_autofree char *clock = minutes >= 24 * 60 ? ff_clock_format (minutes % (24 * 60)) : NULL;
      g_autofree char *words = clock != NULL ? g_strdup_printf (_ ("%s, next day"), clock) : NULL;

      show_remark (self, names[i], words);
    }
}

static void
show_blank (FfDayPage *self, const char *name, gboolean blank)
{
  GtkWidget *entry = GTK_WIDGET (ff_day_page_entry (self, name));

  show_remark (self, name,
               blank ? _ ("□ Blank: it must be filled in. Every sheet says so until it is.")
                     : NULL);
  if (blank)
    gtk_widget_add_css_class (entry, "blank");
  else
    gtk_widget_remove_css_class (entry, "blank");
}

static void
show_emergency_remarks (FfDayPage *self, const FfPlace *place)
{
  if (place == NULL)
    return;
  show_blank (self, "emergency_location", place->emergency_location[0] == '\0');
  show_blank (self, "emergency_phone", place->emergency_phone[0] == '\0');
}

/* Another job: what was typed into the last one and refused goes with it. */
static void
forget_typed (FfDayPage *self)
{
  for (guint i = 0; i < ff_day_fields_count (); i++)
    ff_entry_set_text (ff_day_page_entry (self, ff_day_fields_get (i)->widget), " ");
  ff_entry_set_text (self->position, " ");
}

static void
show_fields (FfDayPage *self, const FfJob *job, const FfPlace *place)
{
  for (guint i = 0; i < ff_day_fields_count (); i++)
    {
      const FfDayField *day_field = ff_day_fields_get (i);
      gconstpointer record = day_field->owner == FF_DAY_OF_JOB ? (gconstpointer) job : place;
      g_autofree char *text = record != NULL ? ff_day_value_text (ff_day_field_of (day_field),
                                                                  record, day_field->scale)
                                             : g_strdup ("");

      ff_entry_set_text (ff_day_page_entry (self, day_field->widget), text);
    }
  ff_pick_set_value (self->sky, (int) job->sky);
  show_date_remark (self, job);
  show_hour_remarks (self, job);
  show_emergency_remarks (self, place);
}

/* ---- Sun and moon ---- */

static void
show_line (GtkLabel *label, const char *words)
{
  gtk_label_set_label (label, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (label), words != NULL);
}

static void
show_words (FfDayPage *self, const FfJob *job, const FfDayWordsQuery *query)
{
  g_autoptr (FfDayWords) words = ff_day_words (query);
  g_autofree char *day = ff_date_format_short (query->date);
  /* Translators: heading; %s is a short date: "Sun and moon, Sat 18 Sep". */
  g_autofree char *heading = g_strdup_printf (_ ("Sun and moon, %s"), day);

  gtk_label_set_label (self->sun_heading, heading);
  show_line (self->sun, words->sun);
  show_line (self->low_sun, words->low_sun);
  show_line (self->moon, words->moon);
  show_line (self->check, words->check);
  show_line (self->clock, words->clock);
  ff_sun_arc_show (self->arc, query, job->first_off, job->all_down, words->sun);
}

/* Most keystrokes leave the sun where it is: it is worked out anew only for another day, place or
 * hour. */
static gboolean
is_other_sun (FfDayPage *self, const FfJob *job, const FfPlace *place)
{
  g_autofree char *sky
      = g_strdup_printf ("%s %s %.9f %.9f %.3f %d %d", job->date, place->zone, place->latitude_deg,
                         place->longitude_deg, place->elevation_m, job->first_off, job->all_down);

  if (g_strcmp0 (self->shown_sky, sky) == 0)
    return FALSE;
  g_free (self->shown_sky);
  self->shown_sky = g_steal_pointer (&sky);
  return TRUE;
}

static void
show_sun (FfDayPage *self, const FfJob *job, const FfPlace *place)
{
  FfDayWordsQuery query = { .check_clock = job->first_off };
  g_autoptr (GTimeZone) zone = place != NULL ? ff_zone_new (place->zone, NULL) : NULL;
  const gboolean known
      = zone != NULL && job->date[0] != '\0' && ff_date_parse (job->date, &query.date, NULL);

  gtk_widget_set_visible (self->sun_known, known);
  gtk_widget_set_visible (self->sun_unknown, !known);
  if (!known)
    {
      gtk_label_set_label (self->sun_heading, _ ("Sun and moon"));
      g_clear_pointer (&self->shown_sky, g_free);
      return;
    }
  query.zone = zone;
  query.site = (FfSite){ place->latitude_deg, place->longitude_deg, place->elevation_m };
  if (is_other_sun (self, job, place))
    show_words (self, job, &query);
}

/* ---- What is missing ---- */

static GPtrArray *
gaps_of (FfDayPage *self, const FfJob *job, const FfPlace *place)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  const FfDayState state = {
    .job = job,
    .place = place,
    .crew = ff_keeper_crew (keeper),
    .n_shots = ff_keeper_shots (keeper)->len,
    .why = ff_keeper_is_planning (keeper) ? NULL : ff_keeper_why (keeper),
  };

  return ff_day_gaps (&state);
}

static void
show_gaps (FfDayPage *self, const FfJob *job, const FfPlace *place)
{
  g_autoptr (GPtrArray) gaps = gaps_of (self, job, place);
  const FfDayGap *first = gaps->len > 0 ? g_ptr_array_index (gaps, 0) : NULL;
  g_autofree char *words = NULL;

  ff_gap_list_show (self->gaps, gaps);
  gtk_widget_set_visible (self->first_gap, first != NULL && first->for_plan);
  if (first == NULL || !first->for_plan)
    return;
  words = g_strdup_printf ("□ %s", first->sentence);
  gtk_label_set_label (self->first_gap_words, words);
}

static void
go_to (FfDayPage *self, const char *goal, gboolean is_page)
{
  GObject *widget;

  if (is_page)
    {
      if (ff_pages_find (goal) != NULL)
        ff_page_go (FF_PAGE (self), goal);
      return;
    }
  widget = gtk_widget_get_template_child (GTK_WIDGET (self), FF_TYPE_DAY_PAGE, goal);
  gtk_widget_grab_focus (GTK_WIDGET (widget));
}

/* From another page: the fields have the names that gaps have. */
static void
ff_day_page_go_to (FfPage *page, const char *field)
{
  go_to (FF_DAY_PAGE (page), field, FALSE);
}

static void
on_go_first (FfDayPage *self)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  g_autoptr (GPtrArray) gaps = gaps_of (self, ff_keeper_job (keeper), ff_keeper_place (keeper));
  const FfDayGap *first = gaps->len > 0 ? g_ptr_array_index (gaps, 0) : NULL;

  if (first != NULL)
    go_to (self, first->goal, first->is_page);
}

static void
on_go (FfDayPage *self, const char *goal, gboolean is_page)
{
  go_to (self, goal, is_page);
}

/* How the limits stand, in one line; the page behind the button says which. */
static void
show_limits (FfDayPage *self)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  const FfDay *day = ff_keeper_day (keeper);
  g_autoptr (FfLimitsToday) today = NULL;
  g_autofree char *summary = NULL;
  g_autofree char *words = NULL;

  if (day == NULL)
    return;
  today = ff_limits_today (day, ff_keeper_plan (keeper), g_get_real_time () / G_USEC_PER_SEC);
  summary = ff_limits_summary (today);
  words = g_strdup_printf ("%s %s", ff_limit_answer_shape (today->worst), summary);
  gtk_label_set_label (self->limits, words);
}

/* ---- Scrolling ---- */

/* Sun, moon and what is missing stay beside the form. */
static gboolean
follow (gpointer user_data)
{
  FfDayPage *self = user_data;
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  graphene_rect_t columns;

  self->follow_source = 0;
  if (gtk_widget_compute_bounds (GTK_WIDGET (self->columns), GTK_WIDGET (self->body), &columns))
    ff_flow_follow (self->columns,
                    (int) (gtk_adjustment_get_value (adjustment) - columns.origin.y) + MARGIN,
                    (int) gtk_adjustment_get_page_size (adjustment) - 2 * MARGIN);
  return G_SOURCE_REMOVE;
}

/* The news may come in the middle of a layout, which must not be asked for another; it is heeded
 * before the next frame is drawn. */
static void
on_scrolled (FfDayPage *self)
{
  if (self->follow_source == 0)
    self->follow_source = g_idle_add_full (G_PRIORITY_HIGH_IDLE, follow, self, NULL);
}

/* ---- Overrides ---- */

static void
ff_day_page_refresh (FfPage *page, FfChanged changed)
{
  FfDayPage *self = FF_DAY_PAGE (page);
  FfKeeper *keeper = ff_day_page_keeper (self);
  const FfJob *job = ff_keeper_job (keeper);
  const FfPlace *place = ff_keeper_place (keeper);

  if (job == NULL)
    return;
  if (g_strcmp0 (self->job_id, job->id) != 0)
    {
      forget_typed (self);
      ff_pair_list_show (self->events, 0, NULL, NULL);
      ff_pair_list_show (self->hazards, 0, NULL, NULL);
      g_free (self->job_id);
      self->job_id = g_strdup (job->id);
    }
  if ((changed & FF_CHANGED_JOB) != 0)
    {
      show_fields (self, job, place);
      ff_day_rows_refresh (self);
      show_sun (self, job, place);
    }
  if ((changed & (FF_CHANGED_JOB | FF_CHANGED_JOBS)) != 0)
    {
      ff_day_where_refresh (self);
      ff_crew_list_refresh (self->crew, keeper);
    }
  show_gaps (self, job, place);
  show_limits (self);
}

/* The title is what is typed first. */
static gboolean
ff_day_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (ff_day_page_entry (FF_DAY_PAGE (widget), "title")));
}

static void
ff_day_page_dispose (GObject *object)
{
  g_clear_handle_id (&FF_DAY_PAGE (object)->follow_source, g_source_remove);
  G_OBJECT_CLASS (ff_day_page_parent_class)->dispose (object);
}

static void
ff_day_page_finalize (GObject *object)
{
  FfDayPage *self = FF_DAY_PAGE (object);

  g_free (self->job_id);
  g_free (self->offered);
  g_free (self->shown_sky);
  g_ptr_array_unref (self->place_ids);
  g_clear_pointer (&self->zone_table, g_ptr_array_unref);
  G_OBJECT_CLASS (ff_day_page_parent_class)->finalize (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, FfDayPage, name)

static void
bind_children (GtkWidgetClass *widget_class)
{
  BIND (scroller);
  BIND (body);
  BIND (columns);
  BIND (first_gap);
  BIND (first_gap_words);
  BIND (limits);
  BIND (calendar_button);
  BIND (calendar);
  BIND (place);
  BIND (position);
  BIND (place_record);
  BIND (emergency_record);
  BIND (hazard_section);
  BIND (zone_offer);
  BIND (zone_choices);
  BIND (sky);
  BIND (hazards);
  BIND (events);
  BIND (crew);
  BIND (sun_known);
  BIND (sun_unknown);
  BIND (arc);
  BIND (sun_heading);
  BIND (sun);
  BIND (low_sun);
  BIND (moon);
  BIND (check);
  BIND (clock);
  BIND (gaps);
  for (guint i = 0; i < ff_day_fields_count (); i++)
    gtk_widget_class_bind_template_child_full (widget_class, ff_day_fields_get (i)->widget, FALSE,
                                               0);
}

#define BIND_CALLBACK(name, callback)                                                              \
  gtk_widget_class_bind_template_callback_full (widget_class, name, G_CALLBACK (callback))

static void
bind_callbacks (GtkWidgetClass *widget_class)
{
  BIND_CALLBACK ("on_sky_picked", on_sky_picked);
  BIND_CALLBACK ("on_day_selected", on_day_selected);
  BIND_CALLBACK ("on_calendar_opens", on_calendar_opens);
  BIND_CALLBACK ("on_go_first", on_go_first);
  BIND_CALLBACK ("on_go", on_go);
  BIND_CALLBACK ("on_position_typed", ff_day_where_position_typed);
  BIND_CALLBACK ("on_place_picked", ff_day_where_place_picked);
  BIND_CALLBACK ("on_event_typed", ff_day_rows_event_typed);
  BIND_CALLBACK ("on_event_removed", ff_day_rows_event_removed);
  BIND_CALLBACK ("on_event_added", ff_day_rows_event_added);
  BIND_CALLBACK ("on_hazard_typed", ff_day_rows_hazard_typed);
  BIND_CALLBACK ("on_hazard_removed", ff_day_rows_hazard_removed);
  BIND_CALLBACK ("on_hazard_added", ff_day_rows_hazard_added);
}

static void
ff_day_page_class_init (FfDayPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (FF_TYPE_FLOW);
  g_type_ensure (FF_TYPE_ENTRY);
  g_type_ensure (FF_TYPE_PICK);
  g_type_ensure (FF_TYPE_PAIR_LIST);
  g_type_ensure (FF_TYPE_CREW_LIST);
  g_type_ensure (FF_TYPE_SUN_ARC);
  g_type_ensure (FF_TYPE_GAP_LIST);
  G_OBJECT_CLASS (klass)->dispose = ff_day_page_dispose;
  G_OBJECT_CLASS (klass)->finalize = ff_day_page_finalize;
  widget_class->grab_focus = ff_day_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_day_page_refresh;
  FF_PAGE_CLASS (klass)->go_to = ff_day_page_go_to;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-day-page.ui");
  bind_children (widget_class);
  bind_callbacks (widget_class);
}

static void
ff_day_page_init (FfDayPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->place_ids = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < ff_day_fields_count (); i++)
    {
      const FfDayField *day_field = ff_day_fields_get (i);
      FfEntry *entry = ff_day_page_entry (self, day_field->widget);

      g_object_set_data (G_OBJECT (entry), "field", (gpointer) day_field);
      g_signal_connect (entry, "typed", G_CALLBACK (on_typed), self);
    }
  ff_pick_set_names (self->sky, &ff_names_sky);
  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (self->scroller), "value-changed",
                           G_CALLBACK (on_scrolled), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (self->scroller), "changed",
                           G_CALLBACK (on_scrolled), self, G_CONNECT_SWAPPED);
}
