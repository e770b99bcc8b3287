/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The reading half of ff-gear-csv.h: rows become items, each cell checked where it stands. */
#include "ff-gear-csv-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-crew.h"
#include "ff-csv-read.h"
#include "ff-error.h"
#include "ff-number.h"

#define LONGEST_CELL 8000
#define MOST_ROWS 100000

/* What a file is read against, and where the reading stands. */
typedef struct {
  const FfCsvTable *table;
  GPtrArray *members;
  GArray *columns;      /* FfGearColumn of each column of the file */
  GHashTable *by_id;    /* id to FfItem: what is there */
  GHashTable *by_label; /* folded label to FfItem: what is there */
  GHashTable *after;    /* folded label to FfItem: as it will be, for what names another item */
  FfGearImport *import;
} Reading;

typedef struct {
  guint line, column; /* column from 0 */
  const char *name;
} Place;

static gboolean
refuse (Place at, const char *found, const char *accepted, GError **error)
{
  g_autofree char *start = g_utf8_substring (found, 0, MIN (g_utf8_strlen (found, -1), 40));

  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               /* Translators: place in a file, its column, what is there, what may be. */
               _ ("line %u, column %u (%s): found “%s”; accepted: %s"), at.line, at.column + 1,
               at.name, start, accepted);
  return FALSE;
}

static char *
fold (const char *label)
{
  return g_ascii_strdown (label, -1);
}

/* ---- Cells ---- */

static gboolean
read_number (const Reading *reading,
             const FfField *field,
             const char *cell,
             double *ret_value,
             Place at,
             GError **error)
{
  g_autofree char *text = g_strstrip (g_strdup (cell));
  g_autofree char *low = ff_number_format (field->low, 6);
  g_autofree char *high = ff_number_format (field->high, 6);
  g_autofree char *accepted = g_strdup_printf (_ ("a number, %s to %s"), low, high);

  /* Between commas 4,700 is nearly five thousand; between semicolons it is not. */
  if (reading->table->delimiter != ',' && strchr (text, '.') == NULL)
    g_strdelimit (text, ",", '.');
  return ff_number_parse (at.name, text, field->low, field->high, ret_value, NULL)
         || refuse (at, cell, accepted, error);
}

static gboolean
read_flag (const FfField *field, FfItem *item, const char *cell, Place at, GError **error)
{
  static const char *const yes[] = { "yes", "true", "1", "x", NULL };
  static const char *const no[] = { "no", "false", "0", "", NULL };
  g_autofree char *folded = fold (cell);

  if (!g_strv_contains (yes, folded) && !g_strv_contains (no, folded))
    return refuse (at, cell, "yes, no", error);
  *ff_field_whole (field, item) = g_strv_contains (yes, folded);
  return TRUE;
}

static gboolean
read_name (const FfField *field, FfItem *item, const char *cell, Place at, GError **error)
{
  g_autoptr (GString) accepted = g_string_new (NULL);

  if (ff_name_parse (field->names, cell, ff_field_whole (field, item), NULL))
    return TRUE;
  for (guint i = 0; i < field->names->n_names; i++)
    g_string_append_printf (accepted, "%s%s", i > 0 ? ", " : "", field->names->names[i].token);
  return refuse (at, cell, accepted->str, error);
}

static gboolean
read_text (const FfField *field, FfItem *item, const char *cell, Place at, GError **error)
{
  char **place = ff_field_text (field, item);
  const FfFields one = { "", field, 1 };
  g_autofree char *before = g_strdup (*place);
  g_autoptr (GError) problem = NULL;

  ff_set_text (place, cell);
  if (ff_fields_check (&one, item, "", &problem))
    return TRUE;
  ff_set_text (place, before);
  return refuse (at, cell,
                 field->type == FF_FIELD_DATE ? _ ("a date, YYYY-MM-DD")
                 : field->type == FF_FIELD_ID ? _ ("a UUID")
                                              : _ ("a text that is not too long, without control "
                                                   "characters"),
                 error);
}

static gboolean
read_whole (const Reading *reading,
            const FfField *field,
            FfItem *item,
            const char *cell,
            Place at,
            GError **error)
{
  double value = 0;

  if (!read_number (reading, field, cell, &value, at, error))
    return FALSE;
  if (fabs (value - floor (value)) > 0)
    return refuse (at, cell, _ ("a whole number"), error);
  *ff_field_whole (field, item) = (int) value;
  return TRUE;
}

/* An empty cell takes away what is not needed, and leaves what is. */
static void
read_nothing (const FfField *field, FfItem *item)
{
  if (ff_field_is_text (field) && !field->needed)
    ff_set_text (ff_field_text (field, item), "");
  else if (field->type == FF_FIELD_REAL && !field->needed)
    *ff_field_real (field, item) = NAN;
  else if (field->type == FF_FIELD_INSTANT)
    *ff_field_instant (field, item) = 0;
}

static gboolean
read_field (const Reading *reading,
            const FfField *field,
            FfItem *item,
            const char *cell,
            Place at,
            GError **error)
{
  if (field->type == FF_FIELD_FLAG)
    return read_flag (field, item, cell, at, error);
  if (*cell == '\0')
    {
      read_nothing (field, item);
      return TRUE;
    }
  if (ff_field_is_text (field))
    return read_text (field, item, cell, at, error);
  if (field->type == FF_FIELD_NAME)
    return read_name (field, item, cell, at, error);
  if (field->type == FF_FIELD_INSTANT)
    return ff_instant_parse (cell, ff_field_instant (field, item), NULL)
           || refuse (at, cell, _ ("a time, ISO 8601 with an offset or Z"), error);
  if (field->type == FF_FIELD_REAL)
    return read_number (reading, field, cell, ff_field_real (field, item), at, error);
  return read_whole (reading, field, item, cell, at, error);
}

/* ---- Cells that name other records: when all rows are known ---- */

static gboolean
read_camera (const Reading *reading, FfItem *item, const char *cell, Place at, GError **error)
{
  g_autofree char *folded = fold (cell);
  const FfItem *camera = g_hash_table_lookup (reading->after, folded);

  if (*cell != '\0' && (camera == NULL || camera->kind != FF_KIND_CAMERA))
    return refuse (at, cell, _ ("the label of a camera"), error);
  ff_set_text (&item->camera_id, camera != NULL ? camera->id : "");
  return TRUE;
}

static gboolean
read_attended (const Reading *reading, FfItem *item, const char *cell, Place at, GError **error)
{
  for (guint i = 0; i < reading->members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (reading->members, i);

      if (g_ascii_strcasecmp (member->initials, cell) == 0)
        {
          ff_set_text (&item->attended_by, member->id);
          return TRUE;
        }
    }
  if (*cell != '\0')
    return refuse (at, cell, _ ("initials of the crew"), error);
  ff_set_text (&item->attended_by, "");
  return TRUE;
}

static gboolean
add_with (const Reading *reading, FfItem *item, const char *label, Place at, GError **error)
{
  g_autofree char *folded = fold (label);
  const FfItem *other = g_hash_table_lookup (reading->after, folded);

  if (other == NULL || other == item)
    return refuse (at, label, _ ("labels of other items, with semicolons between"), error);
  ff_item_add_with (item, other->id);
  return TRUE;
}

static gboolean
read_with (const Reading *reading, FfItem *item, const char *cell, Place at, GError **error)
{
  g_autoptr (GString) label = g_string_new (NULL);

  g_ptr_array_set_size (item->with_ids, 0);
  for (const char *p = cell; *p != '\0'; p++)
    {
      if (*p == ';' && label->len > 0 && !add_with (reading, item, label->str, at, error))
        return FALSE;
      if (*p == ';')
        g_string_truncate (label, 0);
      else if (*p != '\\' || p[1] == '\0')
        g_string_append_c (label, *p);
      else
        g_string_append_c (label, *++p);
    }
  return label->len == 0 || add_with (reading, item, label->str, at, error);
}

static gboolean
read_link (const Reading *reading,
           const FfGearColumn *column,
           FfItem *item,
           const char *cell,
           Place at,
           GError **error)
{
  if (column->how == FF_COLUMN_WITH)
    return read_with (reading, item, cell, at, error);
  if (column->how == FF_COLUMN_CAMERA && item->kind == FF_KIND_AIRCRAFT)
    return read_camera (reading, item, cell, at, error);
  if (column->how == FF_COLUMN_ATTENDED && item->kind == FF_KIND_CHARGER)
    return read_attended (reading, item, cell, at, error);
  return *cell == '\0'
         || refuse (at, cell, _ ("nothing: an item of this kind does not have it"), error);
}

/* ---- Rows ---- */

static const char *
cell_of (const Reading *reading, const FfCsvRow *row, const char *name)
{
  for (guint i = 0; i < reading->columns->len && i < row->cells->len; i++)
    if (g_str_equal (g_array_index (reading->columns, FfGearColumn, i).name, name))
      return g_ptr_array_index (row->cells, i);
  return "";
}

static guint
column_named (const Reading *reading, const char *name)
{
  guint i = 0;

  while (i < reading->columns->len
         && !g_str_equal (g_array_index (reading->columns, FfGearColumn, i).name, name))
    i++;
  return i;
}

/* The item that is there already; NULL: a new one. */
static const FfItem *
known_item (const Reading *reading, const FfCsvRow *row)
{
  const char *id = cell_of (reading, row, "id");
  g_autofree char *label = fold (cell_of (reading, row, "label"));

  if (*id != '\0')
    return g_hash_table_lookup (reading->by_id, id);
  return g_hash_table_lookup (reading->by_label, label);
}

static void
copy_table (const FfFields *fields, const FfItem *from, FfItem *to)
{
  for (guint i = 0; fields != NULL && i < fields->n_fields; i++)
    {
      const FfField *field = &fields->fields[i];

      if (ff_field_is_text (field))
        ff_set_text (ff_field_text (field, to), *ff_field_text (field, from));
      else if (field->type == FF_FIELD_REAL)
        *ff_field_real (field, to) = *ff_field_real (field, from);
      else if (field->type == FF_FIELD_INSTANT)
        *ff_field_instant (field, to) = *ff_field_instant (field, from);
      else
        *ff_field_whole (field, to) = *ff_field_whole (field, from);
    }
}

static FfItem *
copy_item (const FfItem *item)
{
  FfItem *copy = ff_item_new (item->kind);

  copy_table (&ff_item_fields, item, copy);
  copy_table (&ff_item_state_fields, item, copy);
  copy_table (ff_item_kind_fields (item->kind), item, copy);
  for (guint i = 0; i < item->with_ids->len; i++)
    ff_item_add_with (copy, g_ptr_array_index (item->with_ids, i));
  return copy;
}

/* The kind first: it says which other columns there are. */
static FfItem *
begin_item (const Reading *reading, const FfCsvRow *row, const FfItem *known, GError **error)
{
  const char *cell = cell_of (reading, row, "kind");
  Place at = { row->line, column_named (reading, "kind"), "kind" };
  const FfField *field = ff_fields_find (&ff_item_fields, "kind");
  g_autoptr (FfItem) item = known != NULL ? copy_item (known) : ff_item_new (FF_KIND_OTHER);

  if (known != NULL && *cell == '\0')
    return g_steal_pointer (&item);
  if (!read_name (field, item, cell, at, error))
    return NULL;
  if (known == NULL || item->kind == known->kind)
    return g_steal_pointer (&item);
  refuse (at, cell, ff_name_token (&ff_names_kind, (int) known->kind), error);
  return NULL;
}

static gboolean
read_row (const Reading *reading, const FfCsvRow *row, FfItem *item, GError **error)
{
  if (row->cells->len > reading->columns->len)
    return refuse ((Place) { row->line, reading->columns->len, "" },
                   g_ptr_array_index (row->cells, reading->columns->len),
                   _ ("no more cells than the first line has columns"), error);
  for (guint i = 0; i < row->cells->len; i++)
    {
      const FfGearColumn *column = &g_array_index (reading->columns, FfGearColumn, i);
      const char *cell = g_ptr_array_index (row->cells, i);
      const FfField *field = ff_gear_column_field (item->kind, column->name);
      Place at = { row->line, i, column->name };

      if (column->how != FF_COLUMN_FIELD)
        continue;
      if (field == NULL && *cell != '\0')
        return refuse (at, cell, _ ("nothing: an item of this kind does not have it"), error);
      if (field != NULL && !read_field (reading, field, item, cell, at, error))
        return FALSE;
    }
  return TRUE;
}

static FfGearChange *
change_new (FfItem *item, guint line, gboolean is_new)
{
  FfGearChange *change = g_new0 (FfGearChange, 1);

  change->item = item;
  change->line = line;
  change->is_new = is_new;
  change->fields = g_ptr_array_new_with_free_func (g_free);
  return change;
}

static gboolean
add_row (Reading *reading, const FfCsvRow *row, GHashTable *seen, GError **error)
{
  const FfItem *known = known_item (reading, row);
  FfItem *item = begin_item (reading, row, known, error);

  if (item == NULL)
    return FALSE;
  g_ptr_array_add (reading->import->changes, change_new (item, row->line, known == NULL));
  if (!read_row (reading, row, item, error))
    return FALSE;
  if (*item->label == '\0')
    return refuse ((Place) { row->line, column_named (reading, "label"), "label" }, "",
                   _ ("the label as written on the item"), error);
  if (!g_hash_table_add (seen, item->id))
    return refuse ((Place) { row->line, column_named (reading, "label"), "label" }, item->label,
                   _ ("one row an item"), error);
  return TRUE;
}

/* ---- The whole ---- */

static gboolean
read_head (Reading *reading, GError **error)
{
  g_autoptr (GArray) known = ff_gear_columns ();
  const FfCsvRow *head = g_ptr_array_index (reading->table->rows, 0);

  for (guint i = 0; i < head->cells->len; i++)
    {
      g_autofree char *name = fold (g_ptr_array_index (head->cells, i));
      const FfGearColumn *found = NULL;
      Place at = { head->line, i, g_strstrip (name) };

      for (guint j = 0; j < known->len && found == NULL; j++)
        if (g_str_equal (g_array_index (known, FfGearColumn, j).name, name))
          found = &g_array_index (known, FfGearColumn, j);
      if (found == NULL)
        return refuse (at, name, _ ("the names of columns that an export writes"), error);
      if (column_named (reading, found->name) < i)
        return refuse (at, name, _ ("each column once"), error);
      g_array_append_val (reading->columns, *found);
    }
  if (column_named (reading, "label") == reading->columns->len)
    return refuse ((Place) { head->line, 0, "label" }, "", _ ("a column “label”"), error);
  return TRUE;
}

/* Labels as they will be, those of items that the file leaves alone as well. */
static gboolean
know_labels (Reading *reading, GPtrArray *items, GHashTable *seen, GError **error)
{
  for (guint i = 0; i < items->len; i++)
    {
      FfItem *item = g_ptr_array_index (items, i);

      if (!g_hash_table_contains (seen, item->id))
        g_hash_table_insert (reading->after, fold (item->label), item);
    }
  for (guint i = 0; i < reading->import->changes->len; i++)
    {
      const FfGearChange *change = g_ptr_array_index (reading->import->changes, i);

      if (!g_hash_table_insert (reading->after, fold (change->item->label), change->item))
        return refuse ((Place) { change->line, column_named (reading, "label"), "label" },
                       change->item->label, _ ("a label that no other item has"), error);
    }
  return TRUE;
}

static void
note_fields (const FfFields *fields, const FfItem *known, FfGearChange *change)
{
  for (guint i = 0; fields != NULL && i < fields->n_fields; i++)
    {
      const FfFields one = { fields->table, &fields->fields[i], 1 };

      if (!ff_fields_equal (&one, known, change->item))
        g_ptr_array_add (change->fields, g_strdup (fields->fields[i].name));
    }
}

/* What a row does to the item it belongs to. */
static void
compare (const Reading *reading, FfGearChange *change)
{
  const FfItem *known = g_hash_table_lookup (reading->by_id, change->item->id);
  const FfItem *item = change->item;

  change->has_event
      = known != NULL ? !ff_fields_equal (&ff_item_state_fields, known, item)
                      : item->state != FF_STATE_SERVICEABLE || *item->state_why != '\0';
  if (known == NULL)
    return;
  note_fields (&ff_item_fields, known, change);
  note_fields (ff_item_kind_fields (item->kind), known, change);
  note_fields (&ff_item_state_fields, known, change);
  if (!ff_item_same_with (known, item))
    g_ptr_array_add (change->fields, g_strdup ("goes_with"));
}

static gboolean
finish_row (const Reading *reading, const FfCsvRow *row, FfGearChange *change, GError **error)
{
  FfItem *item = change->item;

  for (guint i = 0; i < row->cells->len; i++)
    {
      const FfGearColumn *column = &g_array_index (reading->columns, FfGearColumn, i);
      Place at = { row->line, i, column->name };

      if (column->how != FF_COLUMN_FIELD
          && !read_link (reading, column, item, g_ptr_array_index (row->cells, i), at, error))
        return FALSE;
    }
  if (!ff_item_check (item, error))
    {
      g_prefix_error (error, _ ("line %u: "), row->line);
      return FALSE;
    }
  compare (reading, change);
  if (change->has_event && *item->state_why == '\0')
    return refuse ((Place) { row->line, column_named (reading, "state_why"), "state_why" }, "",
                   _ ("a reason of the state"), error);
  return TRUE;
}

static gboolean
finish_rows (Reading *reading, GError **error)
{
  GPtrArray *changes = reading->import->changes;

  for (guint i = 0; i < changes->len; i++)
    if (!finish_row (reading, g_ptr_array_index (reading->table->rows, i + 1),
                     g_ptr_array_index (changes, i), error))
      return FALSE;
  for (guint i = changes->len; i > 0; i--)
    {
      const FfGearChange *change = g_ptr_array_index (changes, i - 1);

      if (change->is_new)
        reading->import->added++;
      else if (change->fields->len > 0)
        reading->import->changed++;
      else
        {
          reading->import->same++;
          g_ptr_array_remove_index (changes, i - 1);
        }
    }
  return TRUE;
}

static gboolean
read_all (Reading *reading, GPtrArray *items, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  if (reading->table->rows->len == 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("line 1: found nothing; accepted: a first line that names the columns"));
      return FALSE;
    }
  if (!read_head (reading, error))
    return FALSE;
  for (guint i = 1; i < reading->table->rows->len; i++)
    if (!add_row (reading, g_ptr_array_index (reading->table->rows, i), seen, error))
      return FALSE;
  return know_labels (reading, items, seen, error) && finish_rows (reading, error);
}

static void
know_items (Reading *reading, GPtrArray *items)
{
  for (guint i = 0; i < items->len; i++)
    {
      FfItem *item = g_ptr_array_index (items, i);

      g_hash_table_insert (reading->by_id, item->id, item);
      g_hash_table_insert (reading->by_label, fold (item->label), item);
    }
}

FfGearImport *
ff_gear_csv_read (const char *text, GPtrArray *items, GPtrArray *members, GError **error)
{
  g_autoptr (FfCsvTable) table = ff_csv_read (text, LONGEST_CELL, MOST_ROWS, error);
  g_autoptr (FfGearImport) import = NULL;
  Reading reading = { .table = table, .members = members };
  gboolean done;

  if (table == NULL)
    return NULL;
  import = g_new0 (FfGearImport, 1);
  reading.import = import;
  ff_gear_import_begin (import);
  reading.columns = g_array_new (FALSE, FALSE, sizeof (FfGearColumn));
  reading.by_id = g_hash_table_new (g_str_hash, g_str_equal);
  reading.by_label = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  reading.after = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  know_items (&reading, items);
  done = read_all (&reading, items, error);
  g_array_unref (reading.columns);
  g_hash_table_unref (reading.by_id);
  g_hash_table_unref (reading.by_label);
  g_hash_table_unref (reading.after);
  return done ? g_steal_pointer (&import) : NULL;
}
