/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-place.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-rows.h"

static const FfField place_fields[] = {
  FF_ID (FfPlace, id, "id", N_ ("id"), TRUE),
  FF_TEXT (FfPlace, name, N_ ("name"), TRUE, 200),
  FF_REAL (FfPlace, latitude_deg, N_ ("latitude"), TRUE, -90, 90),
  FF_REAL (FfPlace, longitude_deg, N_ ("longitude"), TRUE, -180, 180),
  FF_REAL (FfPlace, elevation_m, N_ ("height above the sea"), TRUE, -450, 9000),
  FF_TEXT (FfPlace, zone, N_ ("time zone"), TRUE, 64),
  FF_TEXT (FfPlace, takeoff_spot, N_ ("take-off spot"), FALSE, 500),
  FF_TEXT (FfPlace, second_spot, N_ ("second landing spot"), FALSE, 500),
  FF_TEXT (FfPlace, observer_post, N_ ("observer post"), FALSE, 500),
  FF_TEXT (FfPlace, second_post, N_ ("second observer post"), FALSE, 500),
  FF_TEXT (FfPlace, emergency_location, N_ ("emergency location"), FALSE, 1000),
  FF_TEXT (FfPlace, emergency_phone, N_ ("emergency telephone"), FALSE, 200),
  FF_REAL (FfPlace, second_spot_bearing_deg, N_ ("bearing of the second spot"), FALSE, 0, 360),
  FF_REAL (FfPlace, second_spot_distance_m, N_ ("distance of the second spot"), FALSE, 0, 5000),
  FF_REAL (FfPlace, post_bearing_deg, N_ ("bearing of the observer post"), FALSE, 0, 360),
  FF_REAL (FfPlace, post_distance_m, N_ ("distance of the observer post"), FALSE, 0, 5000),
  FF_REAL (FfPlace, post_faces_deg, N_ ("which way the observer faces"), FALSE, 0, 360),
  FF_REAL (FfPlace, second_post_bearing_deg, N_ ("bearing of the second post"), FALSE, 0, 360),
  FF_REAL (FfPlace, second_post_distance_m, N_ ("distance of the second post"), FALSE, 0, 5000),
  FF_REAL (FfPlace, second_post_faces_deg, N_ ("which way one faces at the second post"), FALSE, 0,
           360),
};
const FfFields ff_place_fields = FF_FIELDS ("place", place_fields);

static const FfField hazard_fields[] = {
  FF_TEXT (FfHazard, what, N_ ("hazard"), TRUE, 500),
  FF_TEXT (FfHazard, measure, N_ ("measure"), FALSE, 500),
};
const FfFields ff_hazard_fields = FF_FIELDS ("hazard", hazard_fields);

static const FfParts hazards = { "hazard", "place_id", FALSE };

FfHazard *
ff_hazard_new (void)
{
  FfHazard *hazard = g_new0 (FfHazard, 1);

  ff_fields_init (&ff_hazard_fields, hazard);
  return hazard;
}

void
ff_hazard_free (FfHazard *hazard)
{
  if (hazard == NULL)
    return;
  ff_fields_clear (&ff_hazard_fields, hazard);
  g_free (hazard);
}

static gpointer
place_blank (void)
{
  FfPlace *place = g_new0 (FfPlace, 1);

  ff_fields_init (&ff_place_fields, place);
  place->hazards = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_hazard_free);
  return place;
}

FfPlace *
ff_place_new (void)
{
  FfPlace *place = place_blank ();

  g_free (place->id);
  place->id = ff_records_new_id ();
  return place;
}

void
ff_place_free (FfPlace *place)
{
  if (place == NULL)
    return;
  ff_fields_clear (&ff_place_fields, place);
  g_ptr_array_unref (place->hazards);
  g_free (place);
}

gboolean
ff_place_check (const FfPlace *place, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("place “%s”"), place->name);
  g_autoptr (GTimeZone) zone = NULL;

  if (!ff_fields_check (&ff_place_fields, place, whose, error))
    return FALSE;
  for (guint i = 0; i < place->hazards->len; i++)
    if (!ff_fields_check (&ff_hazard_fields, g_ptr_array_index (place->hazards, i), whose, error))
      return FALSE;
  zone = ff_zone_new (place->zone, error);
  if (zone == NULL)
    g_prefix_error (error, "%s: ", whose);
  return zone != NULL;
}

gboolean
ff_place_save (FfStore *store, const FfPlace *place, GError **error)
{
  gboolean own, done;

  if (!ff_place_check (place, error) || !ff_rows_open (store, &own, error))
    return FALSE;
  done = ff_rows_save (store, &ff_place_fields, place, error)
         && ff_parts_save (store, &hazards, &ff_hazard_fields, place->id, place->hazards, error);
  return ff_rows_close (store, own, done, error);
}

static gpointer
hazard_blank (void)
{
  return ff_hazard_new ();
}

static gboolean
load_hazards (FfStore *store, FfPlace *place, GError **error)
{
  GPtrArray *found
      = ff_rows_load (store, &ff_hazard_fields, "WHERE place_id = ?1 ORDER BY position", place->id,
                      hazard_blank, (GDestroyNotify) ff_hazard_free, error);

  if (found == NULL)
    return FALSE;
  g_ptr_array_unref (place->hazards);
  place->hazards = found;
  return TRUE;
}

FfPlace *
ff_place_load (FfStore *store, const char *id, GError **error)
{
  g_autoptr (GPtrArray) found = ff_rows_load (store, &ff_place_fields, "WHERE id = ?1", id,
                                              place_blank, (GDestroyNotify) ff_place_free, error);

  if (found == NULL)
    return NULL;
  if (found->len == 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("no place has the id %s"), id);
      return NULL;
    }
  if (!load_hazards (store, g_ptr_array_index (found, 0), error))
    return NULL;
  return g_ptr_array_steal_index (found, 0);
}

GPtrArray *
ff_places_load (FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) places = ff_rows_load (store, &ff_place_fields, "ORDER BY name, id", NULL,
                                               place_blank, (GDestroyNotify) ff_place_free, error);

  for (guint i = 0; places != NULL && i < places->len; i++)
    if (!load_hazards (store, g_ptr_array_index (places, i), error))
      return NULL;
  return g_steal_pointer (&places);
}
