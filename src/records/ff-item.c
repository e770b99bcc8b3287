/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-item.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-match.h"
#include "ff-number.h"
#include "ff-rows.h"

#define ITEM_KEY FF_ID (FfItem, id, "item_id", N_ ("id"), TRUE)

static const FfField item_fields[] = {
  FF_ID (FfItem, id, "id", N_ ("id"), TRUE),
  FF_TEXT (FfItem, label, N_ ("label"), TRUE, 24),
  FF_NAME (FfItem, kind, N_ ("kind"), &ff_names_kind),
  FF_TEXT (FfItem, title, N_ ("title"), FALSE, 200),
  FF_TEXT (FfItem, case_label, N_ ("case"), FALSE, 24),
  FF_ID (FfItem, belongs_to, "belongs_to", N_ ("what it belongs to"), FALSE),
  FF_REAL (FfItem, mass_kg, N_ ("mass"), FALSE, 0, 1000),
  FF_REAL (FfItem, due_at, N_ ("due"), FALSE, 0, 1e6),
  FF_REAL (FfItem, used, N_ ("used"), FALSE, 0, 1e6),
  FF_DATE (FfItem, valid_until, N_ ("valid until")),
  FF_TEXT (FfItem, note, N_ ("note"), FALSE, 2000),
};
const FfFields ff_item_fields = FF_FIELDS ("item", item_fields);

static const FfField state_fields[] = {
  FF_NAME (FfItem, state, N_ ("state"), &ff_names_state),
  FF_TEXT (FfItem, state_why, N_ ("reason of the state"), FALSE, 1000),
  FF_TEXT (FfItem, out_with, N_ ("with whom it is"), FALSE, 200),
  FF_DATE (FfItem, out_until, N_ ("day it comes back")),
};
const FfFields ff_item_state_fields = FF_FIELDS ("item_event", state_fields);

static const FfField aircraft_fields[] = {
  ITEM_KEY,
  FF_REAL (FfItem, size_m, N_ ("size"), FALSE, 0.01, 20),
  FF_REAL (FfItem, wind_limit_ms, N_ ("wind limit"), FALSE, 0.1, 60),
  FF_REAL (FfItem, temperature_low_c, N_ ("lowest temperature"), FALSE, -90, 60),
  FF_REAL (FfItem, temperature_high_c, N_ ("highest temperature"), FALSE, -90, 90),
  FF_REAL (FfItem, return_height_m, N_ ("height of the automatic return"), FALSE, 1, 1000),
  FF_FLAG (FfItem, light_fitted, N_ ("light fitted")),
  FF_ID (FfItem, camera_id, "camera_id", N_ ("camera"), FALSE),
};

static const FfField camera_fields[] = {
  ITEM_KEY,
  FF_TEXT (FfItem, apertures, N_ ("apertures"), TRUE, 400),
  FF_TEXT (FfItem, base_iso, N_ ("base ISO"), FALSE, 100),
  FF_WHOLE (FfItem, iso_low, N_ ("lowest ISO"), 1, 1000000),
  FF_WHOLE (FfItem, iso_high, N_ ("highest ISO"), 1, 10000000),
  FF_TEXT (FfItem, shutter_fast, N_ ("fastest shutter"), TRUE, 24),
  FF_TEXT (FfItem, shutter_slow, N_ ("slowest shutter"), TRUE, 24),
  FF_REAL (FfItem, pitch_um, N_ ("pitch"), FALSE, 0.1, 50),
  FF_REAL (FfItem, focal_mm, N_ ("focal length"), FALSE, 0.5, 2000),
  FF_WHOLE (FfItem, width_px, N_ ("width"), 0, 100000),
  FF_WHOLE (FfItem, height_px, N_ ("height"), 0, 100000),
  FF_REAL (FfItem, bitrate_mbits, N_ ("bit rate"), FALSE, 0.1, 100000),
};

static const FfField filter_fields[] = {
  ITEM_KEY,
  FF_REAL (FfItem, stops, N_ ("stops"), TRUE, 0, 30),
  FF_REAL (FfItem, stops_to, N_ ("stops at the dark end"), TRUE, 0, 30),
  FF_REAL (FfItem, measured_stops, N_ ("measured stops"), FALSE, 0, 30),
  FF_TEXT (FfItem, engraving, N_ ("engraving"), FALSE, 40),
  FF_TEXT (FfItem, set_name, N_ ("set"), FALSE, 60),
  FF_TEXT (FfItem, slot, N_ ("slot"), FALSE, 24),
};

static const FfField battery_fields[] = {
  ITEM_KEY,
  FF_TEXT (FfItem, chemistry, N_ ("chemistry"), FALSE, 60),
  FF_WHOLE (FfItem, cells, N_ ("cells"), 0, 64),
  FF_REAL (FfItem, volts, N_ ("volts"), FALSE, 0.1, 1000),
  FF_REAL (FfItem, milliamp_hours, N_ ("capacity"), FALSE, 1, 1e6),
  FF_REAL (FfItem, printed_wh, N_ ("energy as printed"), FALSE, 0.1, 10000),
  FF_WHOLE (FfItem, usable_minutes, N_ ("usable minutes"), 1, 240),
  FF_REAL (FfItem, usable_at_c, N_ ("temperature of the usable minutes"), FALSE, -60, 80),
};

static const FfField charger_fields[] = {
  ITEM_KEY,
  FF_WHOLE (FfItem, slots, N_ ("slots"), 1, 64),
  FF_WHOLE (FfItem, cool_minutes, N_ ("minutes to cool"), 0, 1440),
  FF_WHOLE (FfItem, charge_minutes, N_ ("minutes to charge"), 1, 1440),
  FF_ID (FfItem, attended_by, "attended_by", N_ ("who attends it"), FALSE),
};

static const FfField card_fields[] = {
  ITEM_KEY,
  FF_REAL (FfItem, capacity_gb, N_ ("capacity"), TRUE, 0.001, 1e6),
  FF_TEXT (FfItem, speed_class, N_ ("speed class"), FALSE, 12),
};

/* In the order of FfKind; what follows the cards adds nothing. */
static const FfFields kind_fields[] = {
  [FF_KIND_AIRCRAFT] = FF_FIELDS ("aircraft", aircraft_fields),
  [FF_KIND_CAMERA] = FF_FIELDS ("camera", camera_fields),
  [FF_KIND_FILTER] = FF_FIELDS ("filter", filter_fields),
  [FF_KIND_BATTERY] = FF_FIELDS ("battery", battery_fields),
  [FF_KIND_CHARGER] = FF_FIELDS ("charger", charger_fields),
  [FF_KIND_CARD] = FF_FIELDS ("card", card_fields),
};

const FfFields *
ff_item_kind_fields (FfKind kind)
{
  return (guint) kind < G_N_ELEMENTS (kind_fields) ? &kind_fields[kind] : NULL;
}

/* Every kind's fields are there whatever the kind: an item may be turned into another in a form. */
static gpointer
item_blank (void)
{
  FfItem *item = g_new0 (FfItem, 1);

  for (guint i = 0; i < G_N_ELEMENTS (kind_fields); i++)
    {
      ff_fields_init (&kind_fields[i], item);
      g_free (item->id);
    }
  ff_fields_init (&ff_item_fields, item);
  ff_fields_init (&ff_item_state_fields, item);
  return item;
}

FfItem *
ff_item_new (FfKind kind)
{
  FfItem *item = item_blank ();

  g_free (item->id);
  item->id = ff_records_new_id ();
  item->kind = kind;
  return item;
}

void
ff_item_free (FfItem *item)
{
  if (item == NULL)
    return;
  for (guint i = 0; i < G_N_ELEMENTS (kind_fields); i++)
    ff_fields_clear (&kind_fields[i], item);
  ff_fields_clear (&ff_item_fields, item);
  ff_fields_clear (&ff_item_state_fields, item);
  g_free (item);
}

static gboolean
refuse (const char *whose, const char *what, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return FALSE;
}

/* "2.8,4": each part a number, as written on the camera. */
static gboolean
check_list (const char *list, const char *what, double low, double high, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (list, ",", -1);
  double value;

  for (guint i = 0; parts[i] != NULL; i++)
    if (!ff_number_parse (what, g_strstrip (parts[i]), low, high, &value, error))
      return FALSE;
  return TRUE;
}

/* "8", "0.5" or "1/8000", in seconds; 0 when it is none. */
static double
shutter_seconds (const char *label)
{
  const char *slash = strchr (label, '/');
  g_autofree char *above = slash != NULL ? g_strndup (label, (gsize) (slash - label)) : NULL;
  double numerator, denominator = 1;

  if (!ff_number_parse ("", above != NULL ? above : label, 1e-6, 86400, &numerator, NULL)
      || (slash != NULL && !ff_number_parse ("", slash + 1, 1, 1e6, &denominator, NULL)))
    return 0;
  return numerator / denominator;
}

static gboolean
check_camera (const FfItem *item, const char *whose, GError **error)
{
  double fast = shutter_seconds (item->shutter_fast);
  double slow = shutter_seconds (item->shutter_slow);
  g_autofree char *apertures = g_strdup_printf ("%s, %s", whose, _ ("apertures"));
  g_autofree char *base = g_strdup_printf ("%s, %s", whose, _ ("base ISO"));

  if (!check_list (item->apertures, apertures, 0.5, 128, error)
      || (*item->base_iso != '\0' && !check_list (item->base_iso, base, 1, 1e7, error)))
    return FALSE;
  if (item->iso_low > item->iso_high)
    return refuse (whose, _ ("the lowest ISO is above the highest"), error);
  if (!(fast > 0 && slow > 0))
    return refuse (whose, _ ("a shutter time is not read; accepted: 1/8000, 0.5 or 8"), error);
  if (fast > slow)
    return refuse (whose, _ ("the fastest shutter is longer than the slowest"), error);
  return TRUE;
}

static gboolean
check_kind (const FfItem *item, const char *whose, GError **error)
{
  if (item->kind == FF_KIND_CAMERA)
    return check_camera (item, whose, error);
  if (item->kind == FF_KIND_FILTER && item->stops_to < item->stops)
    return refuse (whose, _ ("a filter's dark end has fewer stops than its light end"), error);
  if (item->kind == FF_KIND_AIRCRAFT && item->temperature_high_c < item->temperature_low_c)
    return refuse (whose, _ ("the highest temperature is below the lowest"), error);
  return TRUE;
}

gboolean
ff_item_check (const FfItem *item, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("item %s"), item->label);
  const FfFields *own = ff_item_kind_fields (item->kind);

  if (!ff_fields_check (&ff_item_fields, item, whose, error)
      || (own != NULL && !ff_fields_check (own, item, whose, error)))
    return FALSE;
  if (g_str_equal (item->belongs_to, item->id))
    return refuse (whose, _ ("it can't belong to itself"), error);
  return check_kind (item, whose, error);
}

static gboolean
label_taken (const FfItem *item, GError **error)
{
  g_autofree char *sentence
      = g_strdup_printf (_ ("item %s: another item has this label"), item->label);

  return ff_rows_taken (error, "item.label", sentence);
}

gboolean
ff_item_save (FfStore *store, const FfItem *item, GError **error)
{
  const FfFields *own_fields = ff_item_kind_fields (item->kind);
  gboolean own, done;

  if (!ff_item_check (item, error) || !ff_rows_open (store, &own, error))
    return FALSE;
  done = (ff_rows_save (store, &ff_item_fields, item, error) || label_taken (item, error))
         && (own_fields == NULL || ff_rows_save (store, own_fields, item, error));
  return ff_rows_close (store, own, done, error);
}

static gboolean
read_state (FfStatement *statement, GHashTable *by_id, GError **error)
{
  FfItem *item = g_hash_table_lookup (by_id, ff_statement_get_text (statement, 0));
  int state;

  if (item == NULL)
    return TRUE;
  if (!ff_name_parse (&ff_names_state, ff_statement_get_text (statement, 1), &state, error))
    return FALSE;
  item->state = (FfState) state;
  ff_set_text (&item->state_why, ff_statement_get_text (statement, 2));
  ff_set_text (&item->out_with, ff_statement_get_text (statement, 3));
  ff_set_text (&item->out_until, ff_statement_get_text (statement, 4));
  return TRUE;
}

static gboolean
load_states (FfStore *store, GHashTable *by_id, GError **error)
{
  /* SQLite takes the other columns from the row that holds the max(). */
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "SELECT item_id, state, why, out_with, out_until, max(sequence)"
                          " FROM item_event GROUP BY item_id",
                          error);
  FfStep step = FF_STEP_ERROR;

  while (statement != NULL && (step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    if (!read_state (statement, by_id, error))
      return FALSE;
  return step == FF_STEP_DONE;
}

static GPtrArray *
load_items (FfStore *store, const char *id, GError **error)
{
  g_autoptr (GPtrArray) items
      = ff_rows_load (store, &ff_item_fields, id != NULL ? "WHERE id = ?1" : "", id, item_blank,
                      (GDestroyNotify) ff_item_free, error);
  g_autoptr (GHashTable) by_id = g_hash_table_new (g_str_hash, g_str_equal);

  if (items == NULL)
    return NULL;
  for (guint i = 0; i < items->len; i++)
    {
      FfItem *item = g_ptr_array_index (items, i);

      g_hash_table_insert (by_id, item->id, item);
    }
  for (guint i = 0; i < G_N_ELEMENTS (kind_fields); i++)
    if (!ff_rows_read_into (store, &kind_fields[i], id != NULL ? "WHERE item_id = ?1" : "", id,
                            by_id, error))
      return NULL;
  return load_states (store, by_id, error) ? g_steal_pointer (&items) : NULL;
}

FfItem *
ff_item_load (FfStore *store, const char *id, GError **error)
{
  g_autoptr (GPtrArray) found = load_items (store, id, error);

  if (found == NULL)
    return NULL;
  if (found->len == 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("no item has the id %s"), id);
      return NULL;
    }
  return g_ptr_array_steal_index (found, 0);
}

char *
ff_item_find (FfStore *store, const char *wanted, GError **error)
{
  return ff_match (store, "SELECT id, label, title FROM item ORDER BY label", _ ("item"), wanted,
                   error);
}

/* "b2" before "b10": labels are numbered by hand. */
static gint
compare_items (gconstpointer a, gconstpointer b)
{
  const FfItem *first = *(FfItem *const *) a;
  const FfItem *second = *(FfItem *const *) b;
  g_autofree char *first_key = NULL, *second_key = NULL;

  if (first->kind != second->kind)
    return first->kind < second->kind ? -1 : 1;
  first_key = g_utf8_collate_key_for_filename (first->label, -1);
  second_key = g_utf8_collate_key_for_filename (second->label, -1);
  return strcmp (first_key, second_key);
}

GPtrArray *
ff_items_load (FfStore *store, GError **error)
{
  GPtrArray *items = load_items (store, NULL, error);

  if (items != NULL)
    g_ptr_array_sort (items, compare_items);
  return items;
}

static gboolean
check_event (const char *why, const char *until, GError **error)
{
  FfDate date;

  if (why == NULL || *why == '\0')
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("a reason is missing: the next to hold the item wants to know"));
      return FALSE;
    }
  return until == NULL || *until == '\0' || ff_date_parse (until, &date, error);
}

gboolean
ff_item_set_state (FfStore *store,
                   const char *item_id,
                   FfState state,
                   const char *why,
                   const char *with,
                   const char *until,
                   const char *by,
                   gint64 at,
                   GError **error)
{
  g_autoptr (FfStatement) statement = NULL;

  if (!check_event (why, until, error))
    return FALSE;
  statement = ff_statement_new (store,
                                "INSERT INTO item_event (item_id, at, state, why, out_with,"
                                " out_until, entered_by) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
                                error);
  return statement != NULL && ff_statement_bind_text (statement, 1, item_id, error)
         && ff_statement_bind_integer (statement, 2, at, error)
         && ff_statement_bind_text (statement, 3, ff_name_token (&ff_names_state, (int) state),
                                    error)
         && ff_statement_bind_text (statement, 4, why, error)
         && ff_statement_bind_text (statement, 5, with, error)
         && ff_statement_bind_text (statement, 6, until, error)
         && ff_statement_bind_text (statement, 7, by, error)
         && ff_statement_run (statement, error);
}
