/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-item.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-item-camera.h"
#include "ff-item-search.h"
#include "ff-match.h"
#include "ff-number.h"
#include "ff-rows.h"

#define ITEM_KEY FF_ID (FfItem, id, "item_id", N_ ("id"), TRUE)

/* Came with version 2 of the store: files written before do not have it. */
#define OPTIONAL(member, words, type, high, names)                                                 \
  { #member, words, type, FALSE, G_STRUCT_OFFSET (FfItem, member), 0, high, names }

static const FfField item_fields[] = {
  FF_ID (FfItem, id, "id", N_ ("id"), TRUE),
  FF_TEXT (FfItem, label, N_ ("label"), TRUE, 24),
  FF_NAME (FfItem, kind, N_ ("kind"), &ff_names_kind),
  FF_TEXT (FfItem, title, N_ ("title"), FALSE, 200),
  FF_TEXT (FfItem, case_label, N_ ("case"), FALSE, 24),
  FF_TEXT (FfItem, serial, N_ ("serial number"), FALSE, 60),
  FF_REAL (FfItem, mass_kg, N_ ("mass"), FALSE, 0, 1000),
  FF_REAL (FfItem, due_at, N_ ("due"), FALSE, 0, 1e6),
  FF_REAL (FfItem, used, N_ ("used"), FALSE, 0, 1e6),
  OPTIONAL (used_as_of, N_ ("time up to which “used” counts"), FF_FIELD_INSTANT, 7258118400.0, NULL),
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
  FF_TEXT (FfItem, profiles, N_ ("picture profiles, in the order of the bases"), FALSE, 120),
  OPTIONAL (iso_steps, N_ ("steps of ISO"), FF_FIELD_NAME, 0, &ff_names_iso_steps),
  OPTIONAL (shutter_by, N_ ("how the shutter is set"), FF_FIELD_NAME, 0, &ff_names_shutter_by),
  FF_REAL (FfItem, angle_low_deg, N_ ("smallest shutter angle"), FALSE, 0.1, 360),
  FF_REAL (FfItem, angle_high_deg, N_ ("largest shutter angle"), FALSE, 0.1, 360),
  FF_TEXT (FfItem, frame_rates, N_ ("frame rates"), FALSE, 200),
  FF_TEXT (FfItem, data_rates, N_ ("data rates"), FALSE, 200),
  FF_REAL (FfItem, sharp_from, N_ ("widest sharp aperture"), FALSE, 0.5, 128),
  FF_REAL (FfItem, sharp_to, N_ ("narrowest sharp aperture"), FALSE, 0.5, 128),
  { "mount", N_ ("mount"), FF_FIELD_TEXT, FALSE, G_STRUCT_OFFSET (FfItem, camera_mount), 0, 40,
    NULL },
};

static const FfField filter_fields[] = {
  ITEM_KEY,
  FF_REAL (FfItem, stops, N_ ("stops"), TRUE, 0, 30),
  FF_REAL (FfItem, stops_to, N_ ("stops at the dark end"), TRUE, 0, 30),
  FF_REAL (FfItem, measured_stops, N_ ("measured stops"), FALSE, 0, 30),
  FF_TEXT (FfItem, engraving, N_ ("engraving"), FALSE, 40),
  FF_TEXT (FfItem, set_name, N_ ("set"), FALSE, 60),
  FF_TEXT (FfItem, slot, N_ ("slot"), FALSE, 24),
  FF_TEXT (FfItem, mount, N_ ("mount"), FALSE, 40),
  OPTIONAL (polariser, N_ ("polariser"), FF_FIELD_FLAG, 1, NULL),
  FF_TEXT (FfItem, scratches, N_ ("scratches"), FALSE, 200),
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
  OPTIONAL (battery_use, N_ ("use"), FF_FIELD_NAME, 0, &ff_names_battery_use),
  FF_REAL (FfItem, new_milliohms, N_ ("resistance of a new cell"), FALSE, 0.01, 10000),
  FF_REAL (FfItem, storage_percent, N_ ("storage charge"), FALSE, 0, 100),
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

static const FfField document_fields[] = {
  ITEM_KEY,
  FF_TEXT (FfItem, holder, N_ ("holder"), FALSE, 120),
  FF_TEXT (FfItem, reference, N_ ("reference"), FALSE, 120),
  FF_DATE (FfItem, valid_from, N_ ("valid from")),
  FF_TEXT (FfItem, conditions, N_ ("conditions"), FALSE, 2000),
};

/* By FfKind; a kind that is not here, or whose table is NULL, adds nothing. */
static const FfFields kind_fields[] = {
  [FF_KIND_AIRCRAFT] = FF_FIELDS ("aircraft", aircraft_fields),
  [FF_KIND_CAMERA] = FF_FIELDS ("camera", camera_fields),
  [FF_KIND_FILTER] = FF_FIELDS ("filter", filter_fields),
  [FF_KIND_BATTERY] = FF_FIELDS ("battery", battery_fields),
  [FF_KIND_CHARGER] = FF_FIELDS ("charger", charger_fields),
  [FF_KIND_CARD] = FF_FIELDS ("card", card_fields),
  [FF_KIND_DOCUMENT] = FF_FIELDS ("document", document_fields),
};

static const FfParts goes_with = { "goes_with", "item_id", FALSE };

const FfFields *
ff_item_kind_fields (FfKind kind)
{
  if ((guint) kind >= G_N_ELEMENTS (kind_fields) || kind_fields[kind].table == NULL)
    return NULL;
  return &kind_fields[kind];
}

/* Every kind's fields are there whatever the kind: an item may be turned into another in a form. */
static gpointer
item_blank (void)
{
  FfItem *item = g_new0 (FfItem, 1);

  for (guint i = 0; i < G_N_ELEMENTS (kind_fields); i++)
    {
      ff_fields_init (&kind_fields[i], item);
      g_clear_pointer (&item->id, g_free);
    }
  ff_fields_init (&ff_item_fields, item);
  ff_fields_init (&ff_item_state_fields, item);
  item->with_ids = g_ptr_array_new_with_free_func (g_free);
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
  g_ptr_array_unref (item->with_ids);
  g_free (item);
}

/* ---- What it can't go without ---- */

static guint
find_with (const FfItem *item, const char *id)
{
  guint i = 0;

  while (i < item->with_ids->len && !g_str_equal (g_ptr_array_index (item->with_ids, i), id))
    i++;
  return i;
}

gboolean
ff_item_goes_with (const FfItem *item, const char *id)
{
  return find_with (item, id) < item->with_ids->len;
}

void
ff_item_add_with (FfItem *item, const char *id)
{
  if (!ff_item_goes_with (item, id))
    g_ptr_array_add (item->with_ids, g_strdup (id));
}

void
ff_item_remove_with (FfItem *item, const char *id)
{
  guint i = find_with (item, id);

  if (i < item->with_ids->len)
    g_ptr_array_remove_index (item->with_ids, i);
}

gboolean
ff_item_same_with (const FfItem *a, const FfItem *b)
{
  gboolean same = a->with_ids->len == b->with_ids->len;

  for (guint i = 0; same && i < a->with_ids->len; i++)
    same = ff_item_goes_with (b, g_ptr_array_index (a->with_ids, i));
  return same;
}

gboolean
ff_item_fits (const FfItem *filter, const FfItem *camera)
{
  g_autofree char *frame = NULL, *taken = NULL;

  if (*filter->mount == '\0' || *camera->camera_mount == '\0')
    return TRUE;
  frame = g_utf8_casefold (filter->mount, -1);
  taken = g_utf8_casefold (camera->camera_mount, -1);
  return g_str_equal (frame, taken);
}

static gboolean
refuse (const char *whose, const char *what, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return FALSE;
}

static gboolean
check_kind (const FfItem *item, const char *whose, GError **error)
{
  if (item->kind == FF_KIND_CAMERA)
    return ff_item_check_camera (item, whose, error);
  if (item->kind == FF_KIND_FILTER && item->stops_to < item->stops)
    return refuse (whose, _ ("a filter's dark end has fewer stops than its light end"), error);
  if (item->kind == FF_KIND_AIRCRAFT && item->temperature_high_c < item->temperature_low_c)
    return refuse (whose, _ ("the highest temperature is below the lowest"), error);
  return TRUE;
}

static gboolean
check_with (const FfItem *item, const char *whose, GError **error)
{
  for (guint i = 0; i < item->with_ids->len; i++)
    {
      const char *id = g_ptr_array_index (item->with_ids, i);

      if (g_str_equal (id, item->id))
        return refuse (whose, _ ("it can't go with itself"), error);
      if (!g_uuid_string_is_valid (id))
        return refuse (whose, _ ("what goes with it is named by something that is no id"), error);
      if (find_with (item, id) < i)
        return refuse (whose, _ ("the same item goes with it twice"), error);
    }
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
  return check_with (item, whose, error) && check_kind (item, whose, error);
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
         && (own_fields == NULL || ff_rows_save (store, own_fields, item, error))
         && ff_parts_save_ids (store, &goes_with, "with_id", item->id, item->with_ids, error)
         && ff_item_index (store, item, error);
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
load_states (FfStore *store, const char *id, GHashTable *by_id, GError **error)
{
  /* One look into the index an item: a store of ten years has many events of each. */
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "SELECT e.item_id, e.state, e.why, e.out_with, e.out_until"
                          " FROM item AS i JOIN item_event AS e ON e.sequence"
                          " = (SELECT max(sequence) FROM item_event WHERE item_id = i.id)"
                          " WHERE ?1 = '' OR i.id = ?1",
                          error);
  FfStep step = FF_STEP_ERROR;

  if (statement == NULL || !ff_statement_bind_text (statement, 1, id, error))
    return FALSE;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    if (!read_state (statement, by_id, error))
      return FALSE;
  return step == FF_STEP_DONE;
}

static gboolean
load_with (FfStore *store, const char *id, GHashTable *by_id, GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "SELECT item_id, with_id FROM goes_with WHERE ?1 = '' OR item_id = ?1"
                          " ORDER BY item_id, position",
                          error);
  FfStep step = FF_STEP_ERROR;

  if (statement == NULL || !ff_statement_bind_text (statement, 1, id, error))
    return FALSE;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    {
      FfItem *item = g_hash_table_lookup (by_id, ff_statement_get_text (statement, 0));

      if (item != NULL)
        g_ptr_array_add (item->with_ids, ff_statement_dup_text (statement, 1));
    }
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
    if (kind_fields[i].table != NULL
        && !ff_rows_read_into (store, &kind_fields[i], id != NULL ? "WHERE item_id = ?1" : "", id,
                            by_id, error))
      return NULL;
  if (!load_states (store, id, by_id, error) || !load_with (store, id, by_id, error))
    return NULL;
  return g_steal_pointer (&items);
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

/* An item beside what it is sorted by, which is worked out once: there may be thousands. */
typedef struct {
  FfItem *item;
  char *key;
} Sortable;

static gint
compare_items (gconstpointer a, gconstpointer b)
{
  const Sortable *first = a, *second = b;

  if (first->item->kind != second->item->kind)
    return first->item->kind < second->item->kind ? -1 : 1;
  return strcmp (first->key, second->key);
}

/* "b2" before "b10": labels are numbered by hand. */
static void
sort_items (GPtrArray *items)
{
  g_autofree Sortable *sorted = g_new (Sortable, MAX (items->len, 1));

  for (guint i = 0; i < items->len; i++)
    {
      sorted[i].item = g_ptr_array_index (items, i);
      sorted[i].key = g_utf8_collate_key_for_filename (sorted[i].item->label, -1);
    }
  qsort (sorted, items->len, sizeof *sorted, compare_items);
  for (guint i = 0; i < items->len; i++)
    {
      items->pdata[i] = sorted[i].item;
      g_free (sorted[i].key);
    }
}

GPtrArray *
ff_items_load (FfStore *store, GError **error)
{
  GPtrArray *items = load_items (store, NULL, error);

  if (items != NULL)
    sort_items (items);
  return items;
}

FfItem *
ff_items_labelled (const GPtrArray *items, const char *label)
{
  for (guint i = 0; i < items->len; i++)
    {
      FfItem *item = g_ptr_array_index (items, i);

      if (g_str_equal (item->label, label))
        return item;
    }
  return NULL;
}
