/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-reading.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-rows.h"

#define FEW 8 /* candidates that a message lists */

/* From starlight to the sun on snow, and a margin. */
#define DARKEST_EV   (-12.0)
#define BRIGHTEST_EV 24.0

static const FfField reading_fields[] = {
  FF_ID (FfReading, id, "id", N_ ("id"), TRUE),
  FF_ID (FfReading, job_id, "job_id", N_ ("job"), TRUE),
  FF_INSTANT (FfReading, at, N_ ("time of the reading")),
  FF_NAME (FfReading, method, N_ ("way it was taken"), &ff_names_method),
  FF_REAL (FfReading, ev100, N_ ("light, EV at ISO 100"), TRUE, DARKEST_EV, BRIGHTEST_EV),
  FF_REAL (FfReading, spread_stops, N_ ("how far off it may be"), TRUE, 0, 20),
  FF_REAL (FfReading, shown_s, N_ ("shutter shown"), FALSE, 1e-6, 86400),
  FF_REAL (FfReading, target_s, N_ ("shutter wanted"), FALSE, 1e-6, 86400),
  FF_REAL (FfReading, aperture, N_ ("aperture"), FALSE, 0.5, 128),
  FF_REAL (FfReading, iso, N_ ("ISO"), FALSE, 1, 1e7),
  FF_REAL (FfReading, lux, N_ ("lux"), FALSE, 1e-6, 1e6),
  FF_REAL (FfReading, nd_stops, N_ ("filter fitted, in stops"), TRUE, 0, 30),
  FF_NAME (FfReading, view, N_ ("view"), &ff_names_view),
  FF_REAL (FfReading, bearing_deg, N_ ("camera bearing"), FALSE, 0, 360),
  FF_REAL (FfReading, subject_offset_stops, N_ ("brightness of the subject"), TRUE, -10, 10),
  FF_NAME (FfReading, sky, N_ ("sky"), &ff_names_sky),
  FF_FLAG (FfReading, cloud_moves, N_ ("cloud is on the move")),
  FF_TEXT (FfReading, source, N_ ("picture or note"), FALSE, 200),
  { "entered_by", N_ ("initials of who entered it"), FF_FIELD_TEXT, FALSE,
    G_STRUCT_OFFSET (FfReading, by), 0, 12, NULL },
};
const FfFields ff_reading_fields = FF_FIELDS ("reading", reading_fields);

static const FfField drop_fields[] = {
  FF_ID (FfReading, id, "reading_id", N_ ("reading"), TRUE),
  { "at", N_ ("when it was set aside"), FF_FIELD_INSTANT, TRUE,
    G_STRUCT_OFFSET (FfReading, dropped_at), 0, 7258118400.0, NULL },
  { "why", N_ ("why it was set aside"), FF_FIELD_TEXT, TRUE,
    G_STRUCT_OFFSET (FfReading, dropped_why), 0, 500, NULL },
  { "entered_by", N_ ("initials of who set it aside"), FF_FIELD_TEXT, FALSE,
    G_STRUCT_OFFSET (FfReading, dropped_by), 0, 12, NULL },
};
const FfFields ff_reading_drop_fields = FF_FIELDS ("reading_dropped", drop_fields);

static gpointer
reading_blank (void)
{
  FfReading *reading = g_new0 (FfReading, 1);

  /* The id stands in both tables. */
  ff_fields_init (&ff_reading_drop_fields, reading);
  g_free (reading->id);
  ff_fields_init (&ff_reading_fields, reading);
  reading->nd_stops = 0;
  reading->subject_offset_stops = 0;
  return reading;
}

FfReading *
ff_reading_new (const char *job_id)
{
  FfReading *reading = reading_blank ();

  g_free (reading->id);
  reading->id = ff_records_new_id ();
  ff_set_text (&reading->job_id, job_id);
  return reading;
}

void
ff_reading_free (FfReading *reading)
{
  if (reading == NULL)
    return;
  ff_fields_clear (&ff_reading_drop_fields, reading);
  ff_fields_clear (&ff_reading_fields, reading);
  g_free (reading);
}

gboolean
ff_reading_is_dropped (const FfReading *reading)
{
  return *reading->dropped_why != '\0';
}

/* What is missing for its method; NULL: nothing. */
static const char *
missing (const FfReading *reading)
{
  if (reading->method == FF_METHOD_SHOWN
      && (!isfinite (reading->shown_s) || !isfinite (reading->target_s)))
    return _ ("it needs the shutter shown and the shutter wanted");
  if (reading->method == FF_METHOD_LUX && !isfinite (reading->lux))
    return _ ("it needs the lux");
  if (reading->method == FF_METHOD_FRAME && *reading->source == '\0')
    return _ ("it needs the name of the picture");
  return NULL;
}

gboolean
ff_reading_check (const FfReading *reading, GError **error)
{
  const char *whose = _ ("reading"), *what;

  if (!ff_fields_check (&ff_reading_fields, reading, whose, error)
      || (ff_reading_is_dropped (reading)
          && !ff_fields_check (&ff_reading_drop_fields, reading, whose, error)))
    return FALSE;
  what = missing (reading);
  if (what != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return what == NULL;
}

gboolean
ff_reading_append (FfStore *store, const FfReading *reading, GError **error)
{
  gboolean own, done;

  if (!ff_reading_check (reading, error) || !ff_rows_open (store, &own, error))
    return FALSE;
  done = ff_rows_append (store, &ff_reading_fields, reading, error)
         && (!ff_reading_is_dropped (reading)
             || ff_rows_append (store, &ff_reading_drop_fields, reading, error));
  return ff_rows_close (store, own, done, error);
}

gboolean
ff_reading_drop (FfStore *store,
                 const char *id,
                 const char *why,
                 const char *by,
                 gint64 at,
                 GError **error)
{
  g_autoptr (FfReading) reading = reading_blank ();
  g_autofree char *reason = g_strstrip (g_strdup (why));

  ff_set_text (&reading->id, id);
  ff_set_text (&reading->dropped_why, reason);
  ff_set_text (&reading->dropped_by, by);
  reading->dropped_at = at;
  return ff_fields_check (&ff_reading_drop_fields, reading, _ ("reading"), error)
         && (ff_rows_append (store, &ff_reading_drop_fields, reading, error)
             || ff_rows_taken (error, "reading_dropped.reading_id",
                               _ ("this reading is set aside already")));
}

static gboolean
load_drops (FfStore *store, const char *job_id, GPtrArray *readings, GError **error)
{
  g_autoptr (GHashTable) by_id = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < readings->len; i++)
    {
      FfReading *reading = g_ptr_array_index (readings, i);

      g_hash_table_insert (by_id, reading->id, reading);
    }
  return ff_rows_read_into (store, &ff_reading_drop_fields,
                            "WHERE reading_id IN (SELECT id FROM reading WHERE job_id = ?1)",
                            job_id, by_id, error);
}

GPtrArray *
ff_readings_load (FfStore *store, const char *job_id, GError **error)
{
  /* Of two at one instant the one that was entered later counts: rows keep that order. */
  g_autoptr (GPtrArray) readings
      = ff_rows_load (store, &ff_reading_fields, "WHERE job_id = ?1 ORDER BY at, rowid", job_id,
                      reading_blank, (GDestroyNotify) ff_reading_free, error);

  if (readings == NULL || !load_drops (store, job_id, readings, error))
    return NULL;
  return g_steal_pointer (&readings);
}

static void
add_candidate (GString *list, guint n, const FfReading *reading)
{
  g_autofree char *at = ff_instant_format ((double) reading->at, NULL);

  if (n < FEW)
    g_string_append_printf (list, "%s%.8s (%s)", n > 0 ? ", " : "", reading->id, at);
  else if (n == FEW)
    g_string_append (list, ", …");
}

const FfReading *
ff_readings_find (GPtrArray *readings, const char *wanted, GError **error)
{
  g_autoptr (GString) near = g_string_new (NULL), all = g_string_new (NULL);
  const FfReading *found = NULL;
  guint n = 0;

  for (guint i = 0; i < readings->len; i++)
    {
      const FfReading *reading = g_ptr_array_index (readings, i);

      add_candidate (all, i, reading);
      if (*wanted == '\0' || g_ascii_strncasecmp (reading->id, wanted, strlen (wanted)) != 0)
        continue;
      add_candidate (near, n++, reading);
      found = reading;
    }
  if (n == 1)
    return found;
  if (n > 1)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("several readings begin with “%s”: %s"),
                 wanted, near->str);
  else if (readings->len > 0)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("no reading begins with “%s”; there are: %s"),
                 wanted, all->str);
  else
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                 _ ("no reading begins with “%s”; the job has none"), wanted);
  return NULL;
}
