/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-light-source.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-entry.h"
#include "ff-error.h"
#include "ff-flow.h"
#include "ff-number.h"
#include "ff-pick.h"
#include "ff-position.h"
#include "ff-shot-advice.h"

#define STEP_S (5 * FF_MINUTE)
#define NARROW 110
#define MIDDLE 140
#define WIDE 180
#define WAYS 190

enum { FROM_SHOT, FROM_PLACE, FROM_TABLE };

struct _FfLightSource {
  AdwBin parent_instance;

  FfKeeper *keeper;
  FfFlow *flow;
  FfPick *from, *job, *shot, *sky, *view, *condition;
  FfEntry *clock, *position, *date, *zone, *bearing, *subject, *fps;

  GPtrArray *job_ids, *shot_ids; /* char*, as the picks show them */
  char *shot_id;
  FfAnswer *answer; /* what the shot's day was taken from */
  FfDay *anywhere;  /* the day of a place or of the table */
  FfShot *asked;    /* the shot as it is asked about */
  gint64 at;        /* 0: not yet known */
};

G_DEFINE_FINAL_TYPE (FfLightSource, ff_light_source, ADW_TYPE_BIN)

enum { CHANGED, MOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

static void
emit (FfLightSource *self, guint which)
{
  g_signal_emit (self, signals[which], 0);
}

static gboolean
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, sentence);
  return FALSE;
}

static GTimeZone *
zone_of (FfLightSource *self)
{
  if (ff_pick_get_value (self->from) == FROM_SHOT)
    return self->answer != NULL && self->answer->day != NULL ? ff_day_zone (self->answer->day)
                                                             : NULL;
  return self->anywhere != NULL ? ff_day_zone (self->anywhere) : NULL;
}

static void
show_clock (FfLightSource *self)
{
  GTimeZone *zone = zone_of (self);
  g_autofree char *text
      = zone != NULL && self->at != 0 ? ff_instant_clock ((double) self->at, zone) : g_strdup ("");

  ff_entry_set_text (self->clock, text);
}

/* Jobs and shots to choose from */

static void
fill_jobs (FfLightSource *self)
{
  GPtrArray *jobs = ff_keeper_jobs (self->keeper);
  const FfJob *open = ff_keeper_job (self->keeper);
  g_autoptr (GPtrArray) titles = g_ptr_array_new ();
  int chosen = -1;

  g_ptr_array_set_size (self->job_ids, 0);
  for (guint i = 0; i < jobs->len; i++)
    {
      const FfJob *job = g_ptr_array_index (jobs, i);

      if (open != NULL && g_str_equal (open->id, job->id))
        chosen = (int) self->job_ids->len;
      g_ptr_array_add (self->job_ids, g_strdup (job->id));
      g_ptr_array_add (titles, job->title[0] != '\0' ? job->title : (char *) _ ("without a title"));
    }
  g_ptr_array_add (titles, NULL);
  ff_pick_set_texts (self->job, (const char *const *) titles->pdata);
  ff_pick_set_value (self->job, chosen);
}

static void
fill_shots (FfLightSource *self)
{
  GPtrArray *shots = ff_keeper_shots (self->keeper);
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  int chosen = shots->len > 0 ? 0 : -1;

  g_ptr_array_set_size (self->shot_ids, 0);
  for (guint i = 0; i < shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (shots, i);

      if (g_strcmp0 (shot->id, self->shot_id) == 0)
        chosen = (int) i;
      g_ptr_array_add (self->shot_ids, g_strdup (shot->id));
      g_ptr_array_add (texts, g_strdup_printf ("%s  %s", shot->label, shot->title));
    }
  g_ptr_array_add (texts, NULL);
  ff_pick_set_texts (self->shot, (const char *const *) texts->pdata);
  ff_pick_set_value (self->shot, chosen);
}

/* A shot is looked at as its window opens, under the sky of its job. */
static void
take_shot (FfLightSource *self, int index)
{
  const FfJob *job = ff_keeper_job (self->keeper);
  const char *id = index >= 0 && index < (int) self->shot_ids->len
                       ? g_ptr_array_index (self->shot_ids, (guint) index)
                       : NULL;

  g_free (self->shot_id);
  self->shot_id = g_strdup (id);
  self->at = 0;
  if (job != NULL)
    ff_pick_set_value (self->sky, (int) job->sky);
}

static void
fill_conditions (FfLightSource *self)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new ();

  for (guint i = 0; i < ff_conditions_count (); i++)
    g_ptr_array_add (texts, (gpointer) _ (ff_condition (i)->text));
  g_ptr_array_add (texts, NULL);
  ff_pick_set_texts (self->condition, (const char *const *) texts->pdata);
  ff_pick_set_value (self->condition, 0);
}

/* Where and when without a job: the open job's, else here and today. */
static void
fill_place (FfLightSource *self)
{
  const FfPlace *place = ff_keeper_place (self->keeper);
  const FfJob *job = ff_keeper_job (self->keeper);
  g_autoptr (GTimeZone) local = g_time_zone_new_local ();
  g_autoptr (GDateTime) now = g_date_time_new_now (local);
  g_autofree char *today = g_date_time_format (now, "%Y-%m-%d");

  if (ff_entry_get_text (self->date)[0] != '\0')
    return;
  ff_entry_set_text (self->date, job != NULL && job->date[0] != '\0' ? job->date : today);
  ff_entry_set_text (self->zone,
                     place != NULL ? place->zone : g_time_zone_get_identifier (local));
  if (place != NULL)
    {
      g_autofree char *text = ff_position_format (place->latitude_deg, place->longitude_deg);

      ff_entry_set_text (self->position, text);
    }
}

/* What is asked */

static gboolean
get_shot (FfLightSource *self, FfLightStudyQuery *query, GError **error)
{
  FfAnswer *answer = ff_keeper_answer (self->keeper);

  if (ff_keeper_job (self->keeper) == NULL)
    return refuse (error, _ ("No job is open. Choose one, or ask about a place or a condition."));
  if (self->shot_id == NULL)
    return refuse (error, _ ("This job has no shots yet. Enter one on its page Shots, or ask about "
                             "a place."));
  if (answer == NULL || answer->day == NULL)
    return refuse (error, _ ("The day is being worked out."));
  g_clear_pointer (&self->answer, ff_answer_unref);
  self->answer = ff_answer_ref (answer);
  g_clear_pointer (&self->asked, ff_shot_free);
  self->asked = ff_keeper_dup_shot (self->keeper, self->shot_id);
  if (self->asked == NULL)
    return refuse (error, _ ("This shot is no longer there. Choose another one."));
  query->day = answer->day;
  query->shot = self->asked;
  return TRUE;
}

static gboolean
read_where (FfLightSource *self, FfPosition *position, FfDate *date, GTimeZone **zone,
            GError **error)
{
  const char *text = ff_entry_get_text (self->position);

  if (text[0] == '\0')
    return refuse (error, _ ("Enter a position, as 57.20 N 4.00 W."));
  if (!ff_position_parse (text, position, error)
      || !ff_date_parse (ff_entry_get_text (self->date), date, error))
    return FALSE;
  *zone = ff_zone_new (ff_entry_get_text (self->zone), error);
  return *zone != NULL;
}

/* A number that may be left blank. */
static gboolean
read_number (FfEntry *entry, const char *what, double low, double high, double blank,
             double *ret_value, GError **error)
{
  *ret_value = blank;
  return ff_entry_get_text (entry)[0] == '\0'
         || ff_number_parse (what, ff_entry_get_text (entry), low, high, ret_value, error);
}

static gboolean
read_shot (FfLightSource *self, GError **error)
{
  g_clear_pointer (&self->asked, ff_shot_free);
  self->asked = ff_shot_new ("");
  ff_set_text (&self->asked->label, "");
  self->asked->view = (FfView) MAX (ff_pick_get_value (self->view), 0);
  return read_number (self->bearing, _ ("camera bearing"), 0, 360, NAN, &self->asked->bearing_deg,
                      error)
         && read_number (self->subject, _ ("subject"), -10, 10, 0,
                         &self->asked->subject_offset_stops, error)
         && read_number (self->fps, _ ("frame rate"), 1, 1000, 25, &self->asked->fps, error);
}

static gboolean
get_place (FfLightSource *self, FfLightStudyQuery *query, GError **error)
{
  g_autoptr (GTimeZone) zone = NULL;
  FfPosition position;
  FfDate date;

  if (!read_where (self, &position, &date, &zone, error) || !read_shot (self, error))
    return FALSE;
  g_clear_pointer (&self->anywhere, ff_day_free);
  self->anywhere = ff_day_anywhere (position.latitude_deg, position.longitude_deg, date, zone,
                                    ff_keeper_items (self->keeper));
  query->day = self->anywhere;
  query->shot = self->asked;
  return TRUE;
}

static gboolean
get_condition (FfLightSource *self, FfLightStudyQuery *query, GError **error)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  const FfDate any = { 2027, 9, 18 };

  if (!read_shot (self, error))
    return FALSE;
  g_clear_pointer (&self->anywhere, ff_day_free);
  self->anywhere = ff_day_anywhere (0, 0, any, zone, ff_keeper_items (self->keeper));
  query->day = self->anywhere;
  query->shot = self->asked;
  query->condition = ff_condition ((guint) MAX (ff_pick_get_value (self->condition), 0));
  return TRUE;
}

/* A moment of the day that is asked about: the opening of the window, else noon. */
static void
settle_time (FfLightSource *self, const FfLightStudyQuery *query)
{
  gint64 to;

  if (self->at != 0)
    return;
  if (ff_pick_get_value (self->from) == FROM_SHOT
      && ff_day_shot_window (query->day, query->shot, &self->at, &to, NULL))
    return;
  if (ff_day_noon (query->day, &self->at))
    self->at -= self->at % STEP_S;
}

gboolean
ff_light_source_get (FfLightSource *self, FfLightStudyQuery *ret_query, GError **error)
{
  FfLightStudyQuery query = { .sky = (FfSky) MAX (ff_pick_get_value (self->sky), 0) };
  gboolean known;

  g_return_val_if_fail (FF_IS_LIGHT_SOURCE (self), FALSE);
  switch (ff_pick_get_value (self->from))
    {
    case FROM_PLACE:
      known = get_place (self, &query, error);
      break;
    case FROM_TABLE:
      known = get_condition (self, &query, error);
      break;
    case FROM_SHOT:
    default:
      known = get_shot (self, &query, error);
      break;
    }
  if (!known)
    return FALSE;
  settle_time (self, &query);
  show_clock (self);
  *ret_query = query;
  return TRUE;
}

/* Callbacks */

static void
show_fields (FfLightSource *self)
{
  int from = ff_pick_get_value (self->from);

  gtk_widget_set_visible (GTK_WIDGET (self->job), from == FROM_SHOT);
  gtk_widget_set_visible (GTK_WIDGET (self->shot), from == FROM_SHOT);
  gtk_widget_set_visible (GTK_WIDGET (self->clock), from != FROM_TABLE);
  gtk_widget_set_visible (GTK_WIDGET (self->sky), from != FROM_TABLE);
  gtk_widget_set_visible (GTK_WIDGET (self->position), from == FROM_PLACE);
  gtk_widget_set_visible (GTK_WIDGET (self->date), from == FROM_PLACE);
  gtk_widget_set_visible (GTK_WIDGET (self->zone), from == FROM_PLACE);
  gtk_widget_set_visible (GTK_WIDGET (self->view), from == FROM_PLACE);
  gtk_widget_set_visible (GTK_WIDGET (self->bearing), from == FROM_PLACE);
  gtk_widget_set_visible (GTK_WIDGET (self->subject), from == FROM_PLACE);
  gtk_widget_set_visible (GTK_WIDGET (self->fps), from != FROM_SHOT);
  gtk_widget_set_visible (GTK_WIDGET (self->condition), from == FROM_TABLE);
}

static void
on_from (FfLightSource *self)
{
  self->at = 0;
  if (ff_pick_get_value (self->from) == FROM_PLACE)
    fill_place (self);
  show_fields (self);
  emit (self, CHANGED);
}

static void
on_job (FfLightSource *self, int index)
{
  g_clear_pointer (&self->shot_id, g_free);
  self->at = 0;
  ff_keeper_open_job (self->keeper, g_ptr_array_index (self->job_ids, (guint) index));
}

static void
on_shot (FfLightSource *self, int index)
{
  take_shot (self, index);
  emit (self, CHANGED);
}

static void
on_other (FfLightSource *self)
{
  emit (self, CHANGED);
}

static void
on_day_typed (FfLightSource *self)
{
  self->at = 0;
  emit (self, CHANGED);
}

static void
on_clock_typed (FfLightSource *self, const char *text)
{
  g_autoptr (GError) error = NULL;
  GTimeZone *zone = zone_of (self);
  FfDate date;
  gint64 at;
  int clock;

  if (zone == NULL)
    return;
  date = ff_instant_date (self->at, zone);
  if (ff_clock_parse (text, &clock, &error)
      && ff_instant_from_clock (date, clock, zone, &at, &error))
    {
      self->at = at;
      emit (self, MOVED);
    }
  ff_entry_complain (self->clock, error != NULL ? error->message : NULL);
}

/* Overrides */

static void
ff_light_source_dispose (GObject *object)
{
  FfLightSource *self = FF_LIGHT_SOURCE (object);

  g_clear_pointer (&self->answer, ff_answer_unref);
  g_clear_pointer (&self->anywhere, ff_day_free);
  g_clear_pointer (&self->asked, ff_shot_free);
  g_clear_object (&self->keeper);
  G_OBJECT_CLASS (ff_light_source_parent_class)->dispose (object);
}

static void
ff_light_source_finalize (GObject *object)
{
  FfLightSource *self = FF_LIGHT_SOURCE (object);

  g_free (self->shot_id);
  g_ptr_array_unref (self->job_ids);
  g_ptr_array_unref (self->shot_ids);
  G_OBJECT_CLASS (ff_light_source_parent_class)->finalize (object);
}

static guint
plain_signal (const char *name)
{
  return g_signal_new (name, FF_TYPE_LIGHT_SOURCE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
ff_light_source_class_init (FfLightSourceClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ff_light_source_dispose;
  G_OBJECT_CLASS (klass)->finalize = ff_light_source_finalize;
  signals[CHANGED] = plain_signal ("changed");
  signals[MOVED] = plain_signal ("moved");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static FfPick *
add_pick (FfLightSource *self, const char *label, const FfNames *names, int basis,
          GCallback picked)
{
  GtkWidget *pick = ff_pick_new (label, names);

  ff_flow_append (self->flow, pick, basis);
  g_signal_connect_object (pick, "picked", picked, self, G_CONNECT_SWAPPED);
  return FF_PICK (pick);
}

static FfEntry *
add_entry (FfLightSource *self, const char *label, const char *unit, int basis, GCallback typed)
{
  GtkWidget *entry = ff_entry_new (label, unit);

  ff_flow_append (self->flow, entry, basis);
  g_signal_connect_object (entry, "typed", typed, self, G_CONNECT_SWAPPED);
  return FF_ENTRY (entry);
}

static void
add_picks (FfLightSource *self)
{
  const char *const ways[]
      = { _ ("a shot of a job"), _ ("a place and time"), _ ("a named condition"), NULL };

  self->from = add_pick (self, _ ("_Light of"), NULL, WAYS, G_CALLBACK (on_from));
  ff_pick_set_texts (self->from, ways);
  ff_pick_set_value (self->from, FROM_SHOT);
  self->job = add_pick (self, _ ("_Job"), NULL, WIDE, G_CALLBACK (on_job));
  self->shot = add_pick (self, _ ("S_hot"), NULL, WIDE, G_CALLBACK (on_shot));
  self->condition = add_pick (self, _ ("_Condition"), NULL, WIDE, G_CALLBACK (on_other));
  gtk_widget_set_hexpand (GTK_WIDGET (self->job), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->shot), TRUE);
}

static void
add_fields (FfLightSource *self)
{
  self->position = add_entry (self, _ ("_Position"), NULL, WIDE, G_CALLBACK (on_day_typed));
  self->date = add_entry (self, _ ("_Date"), NULL, MIDDLE, G_CALLBACK (on_day_typed));
  self->zone = add_entry (self, _ ("_Zone"), NULL, MIDDLE, G_CALLBACK (on_day_typed));
  self->clock = add_entry (self, _ ("_Time"), NULL, NARROW, G_CALLBACK (on_clock_typed));
  self->sky = add_pick (self, _ ("S_ky"), &ff_names_sky, MIDDLE, G_CALLBACK (on_other));
  self->view = add_pick (self, _ ("_View"), &ff_names_view, MIDDLE, G_CALLBACK (on_other));
  self->bearing = add_entry (self, _ ("Camera _bearing"), "°", MIDDLE, G_CALLBACK (on_other));
  self->subject = add_entry (self, _ ("Sub_ject"), _ ("stops"), MIDDLE, G_CALLBACK (on_other));
  self->fps = add_entry (self, _ ("Frame _rate"), _ ("fps"), NARROW, G_CALLBACK (on_other));
  ff_pick_set_value (self->sky, FF_SKY_CLEAR);
  ff_pick_set_value (self->view, FF_VIEW_OBLIQUE);
}

static void
ff_light_source_init (FfLightSource *self)
{
  self->job_ids = g_ptr_array_new_with_free_func (g_free);
  self->shot_ids = g_ptr_array_new_with_free_func (g_free);
  self->flow = FF_FLOW (ff_flow_new (16, 10));
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->flow));
  add_picks (self);
  add_fields (self);
  fill_conditions (self);
  show_fields (self);
}

/* Public */

void
ff_light_source_set_keeper (FfLightSource *self, FfKeeper *keeper)
{
  g_return_if_fail (FF_IS_LIGHT_SOURCE (self));
  g_set_object (&self->keeper, keeper);
}

void
ff_light_source_refresh (FfLightSource *self)
{
  gboolean known;

  g_return_if_fail (FF_IS_LIGHT_SOURCE (self));
  fill_jobs (self);
  fill_shots (self);
  known = self->shot_id != NULL
          && g_ptr_array_find_with_equal_func (self->shot_ids, self->shot_id, g_str_equal, NULL);
  if (!known)
    take_shot (self, ff_pick_get_value (self->shot));
}

gint64
ff_light_source_at (FfLightSource *self)
{
  g_return_val_if_fail (FF_IS_LIGHT_SOURCE (self), 0);
  return self->at;
}

void
ff_light_source_go (FfLightSource *self, gint64 at)
{
  g_return_if_fail (FF_IS_LIGHT_SOURCE (self));
  if (self->at == 0 || at == self->at)
    return;
  self->at = at;
  show_clock (self);
  emit (self, MOVED);
}

void
ff_light_source_step (FfLightSource *self, int steps)
{
  g_return_if_fail (FF_IS_LIGHT_SOURCE (self));
  ff_light_source_go (self, (self->at / STEP_S + steps) * STEP_S);
}

void
ff_light_source_choose_shot (FfLightSource *self, const char *shot_id)
{
  guint index;

  g_return_if_fail (FF_IS_LIGHT_SOURCE (self));
  if (!g_ptr_array_find_with_equal_func (self->shot_ids, shot_id, g_str_equal, &index))
    return;
  ff_pick_set_value (self->shot, (int) index);
  on_shot (self, (int) index);
}

const char *
ff_light_source_shot (FfLightSource *self)
{
  g_return_val_if_fail (FF_IS_LIGHT_SOURCE (self), NULL);
  return ff_pick_get_value (self->from) == FROM_SHOT ? self->shot_id : NULL;
}
