/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The place of the day: its position, which makes a place as soon as it can be read; the choice
 * among places that are known; the zone that is offered and that the person takes. */
#include "ff-day-page-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-day-values.h"
#include "ff-position.h"
#include "ff-zone-table.h"

#define MOST_ZONES 3

/* ---- Position ---- */

static char *
sentence_of (const GError *error)
{
  /* "position “95 N”: latitude 95 …": the field says that it is the position. */
  const char *rest = strstr (error->message, "”: ");

  return g_strdup (rest != NULL ? rest + strlen ("”: ") : error->message);
}

/* A new place bears the title of its job until it is named, or says where it is. */
static char *
first_name (const FfJob *job, const FfPosition *position)
{
  if (!g_str_has_prefix (job->title, _ ("New job")))
    return g_strdup (job->title);
  return ff_position_format (position->latitude_deg, position->longitude_deg);
}

static gboolean
add_place (FfDayPage *self, const FfPosition *position, GError **error)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  g_autoptr (FfPlace) place = ff_place_new ();
  g_autofree char *name = first_name (ff_keeper_job (keeper), position);

  ff_set_text (&place->name, name);
  ff_set_text (&place->zone, FF_DAY_NO_ZONE);
  place->latitude_deg = position->latitude_deg;
  place->longitude_deg = position->longitude_deg;
  return ff_keeper_add_place (keeper, place, error);
}

static gboolean
move_place (FfDayPage *self, const FfPosition *position, GError **error)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  g_autoptr (FfPlace) place = ff_keeper_dup_place (keeper, ff_keeper_job (keeper)->place_id);

  if (place == NULL)
    return add_place (self, position, error);
  place->latitude_deg = position->latitude_deg;
  place->longitude_deg = position->longitude_deg;
  return ff_keeper_save_place (keeper, place, _ ("Position changed"), error);
}

void
ff_day_where_position_typed (FfDayPage *self, const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *sentence = NULL;
  FfPosition position;

  if (ff_keeper_job (ff_day_page_keeper (self)) == NULL)
    return;
  if (!ff_position_parse (text, &position, &error) || !move_place (self, &position, &error))
    sentence = sentence_of (error);
  ff_entry_complain (self->position, sentence);
}

/* ---- The choice of places ---- */

void
ff_day_where_place_picked (FfDayPage *self, int index)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  g_autoptr (FfJob) job = ff_keeper_dup_job (keeper, ff_keeper_job (keeper)->id);
  const gboolean known = index < (int) self->place_ids->len;
  const char *id = known ? g_ptr_array_index (self->place_ids, (guint) index) : "";
  const FfPlace *place = ff_keeper_find_place (keeper, id);
  g_autoptr (GError) error = NULL;
  g_autofree char *what = NULL;

  if (job == NULL)
    return;
  what = place != NULL ? g_strdup_printf (_ ("Place “%s” chosen"), place->name)
                       : g_strdup (_ ("Place left"));
  ff_set_text (&job->place_id, id);
  if (ff_keeper_save_job (keeper, job, what, &error) && !known)
    gtk_widget_grab_focus (GTK_WIDGET (self->position));
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
show_choice (FfDayPage *self, const FfJob *job)
{
  g_autoptr (GPtrArray) places = ff_keeper_places (ff_day_page_keeper (self));
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  int chosen = (int) places->len;

  g_ptr_array_set_size (self->place_ids, 0);
  for (guint i = 0; i < places->len; i++)
    {
      const FfPlace *place = g_ptr_array_index (places, i);

      if (g_str_equal (place->id, job->place_id))
        chosen = (int) i;
      g_ptr_array_add (self->place_ids, g_strdup (place->id));
      g_ptr_array_add (names, place->name);
    }
  g_ptr_array_add (names, (gpointer) _ ("A new place"));
  g_ptr_array_add (names, NULL);
  ff_pick_set_texts (self->place, (const char *const *) names->pdata);
  ff_pick_set_value (self->place, chosen);
  gtk_widget_set_visible (GTK_WIDGET (self->place), places->len > 0);
}

/* A place that another job has as well: what is changed here is changed there. */
static char *
shared_words (FfDayPage *self, const FfJob *job)
{
  GPtrArray *jobs = ff_keeper_jobs (ff_day_page_keeper (self));
  const char *other = NULL;
  guint n = 0;

  for (guint i = 0; i < jobs->len; i++)
    {
      const FfJob *each = g_ptr_array_index (jobs, i);

      if (!g_str_equal (each->place_id, job->place_id) || g_str_equal (each->id, job->id))
        continue;
      other = each->title;
      n++;
    }
  if (n == 0)
    return NULL;
  if (n == 1)
    return g_strdup_printf (_ ("Also the place of “%s”: what changes here changes there."), other);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "Also the place of %u other job: what changes here changes "
                                       "there.",
                                       "Also the place of %u other jobs: what changes here changes "
                                       "there.",
                                       n),
                          n);
}

/* ---- The zone ---- */

static void
on_zone_clicked (GtkButton *button, FfDayPage *self)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  g_autoptr (FfPlace) place = ff_keeper_dup_place (keeper, ff_keeper_job (keeper)->place_id);
  g_autofree char *zone = g_strdup (g_object_get_data (G_OBJECT (button), "zone"));
  g_autoptr (GError) error = NULL;

  if (place == NULL)
    return;
  ff_set_text (&place->zone, zone);
  /* The button goes with the offer; the field shows what was taken. */
  gtk_widget_grab_focus (GTK_WIDGET (ff_day_page_entry (self, "zone")));
  ff_keeper_save_place (keeper, place, _ ("Time zone changed"), &error);
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
offer_zone (FfDayPage *self, const FfZoneCity *city, const FfPlace *place)
{
  const double km = ff_zone_city_distance_km (city, place->latitude_deg, place->longitude_deg);
  /* Translators: a time zone and how far its city is: "Europe/London, 660 km". */
  g_autofree char *label = g_strdup_printf (_ ("%s, %.0f km"), city->zone, km);
  GtkWidget *button = gtk_button_new_with_label (label);
  GtkWidget *words = gtk_button_get_child (GTK_BUTTON (button));

  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (words), PANGO_WRAP_WORD_CHAR);
  g_object_set_data_full (G_OBJECT (button), "zone", g_strdup (city->zone), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (on_zone_clicked), self);
  ff_flow_append (self->zone_choices, button, -1);
}

static gboolean
is_among (GPtrArray *cities, const char *zone)
{
  for (guint i = 0; i < cities->len; i++)
    if (g_str_equal (((const FfZoneCity *) g_ptr_array_index (cities, i))->zone, zone))
      return TRUE;
  return FALSE;
}

static char *
joined (GPtrArray *cities, const FfPlace *place)
{
  g_autofree char *where = ff_position_format (place->latitude_deg, place->longitude_deg);
  GString *names = g_string_new (where);

  for (guint i = 0; i < cities->len; i++)
    g_string_append_printf (names, " %s",
                            ((const FfZoneCity *) g_ptr_array_index (cities, i))->zone);
  return g_string_free (names, FALSE);
}

/* The buttons are made anew only for another offer: the focus may be on one of them. */
static void
show_offer (FfDayPage *self, GPtrArray *cities, const FfPlace *place)
{
  g_autofree char *offer = joined (cities, place);
  GtkWidget *child;

  if (g_strcmp0 (offer, self->offered) == 0)
    return;
  g_free (self->offered);
  self->offered = g_steal_pointer (&offer);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->zone_choices))) != NULL)
    gtk_widget_unparent (child);
  for (guint i = 0; i < cities->len; i++)
    offer_zone (self, g_ptr_array_index (cities, i), place);
}

/* Zones of the nearest cities are offered until one is taken, and again when the place moves so far
 * that the one taken is no longer among them. */
static void
show_zone (FfDayPage *self, const FfPlace *place)
{
  g_autoptr (GPtrArray) cities = NULL;
  gboolean wanted;

  if (self->zone_table == NULL)
    self->zone_table = ff_zone_table_load ();
  cities = ff_zone_table_nearest (self->zone_table, place->latitude_deg, place->longitude_deg,
                                  MOST_ZONES);
  wanted = cities->len > 0 && !is_among (cities, place->zone);
  gtk_widget_set_visible (self->zone_offer, wanted);
  ff_entry_set_remark (ff_day_page_entry (self, "zone"),
                       g_str_equal (place->zone, FF_DAY_NO_ZONE)
                           ? _ ("□ None chosen yet: all clocks are UTC until one is.")
                           : NULL);
  if (wanted)
    show_offer (self, cities, place);
}

/* ---- All of it ---- */

static void
show_position (FfDayPage *self, const FfPlace *place)
{
  g_autofree char *degrees = NULL;
  g_autofree char *dms = NULL;

  if (place == NULL)
    {
      ff_entry_set_text (self->position, "");
      ff_entry_set_remark (self->position,
                           _ ("As 57.2 N 4.0 W, 57°12.0'N 4°00.0'W, 57°12'00\"N 4°00'00\"W or "
                              "geo:57.2,-4.0."));
      return;
    }
  degrees = ff_position_format (place->latitude_deg, place->longitude_deg);
  dms = ff_position_format_dms (place->latitude_deg, place->longitude_deg);
  ff_entry_set_text (self->position, degrees);
  ff_entry_set_remark (self->position, dms);
}

void
ff_day_where_refresh (FfDayPage *self)
{
  FfKeeper *keeper = ff_day_page_keeper (self);
  const FfJob *job = ff_keeper_job (keeper);
  const FfPlace *place = ff_keeper_place (keeper);
  g_autofree char *shared = place != NULL ? shared_words (self, job) : NULL;

  show_choice (self, job);
  show_position (self, place);
  gtk_widget_set_visible (self->place_record, place != NULL);
  gtk_widget_set_visible (self->emergency_record, place != NULL);
  gtk_widget_set_visible (self->hazard_section, place != NULL);
  ff_entry_set_remark (ff_day_page_entry (self, "name"), shared);
  if (place != NULL)
    show_zone (self, place);
}
