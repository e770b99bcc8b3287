/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The writing half of ff-gear-csv.h, and the columns. */
#include "ff-gear-csv-private.h"

#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-crew.h"
#include "ff-csv.h"

static void
add_column (GArray *columns, const char *name)
{
  FfGearColumn column = { name, FF_COLUMN_FIELD };

  if (g_str_equal (name, "camera_id"))
    column = (FfGearColumn) { "camera", FF_COLUMN_CAMERA };
  else if (g_str_equal (name, "attended_by"))
    column.how = FF_COLUMN_ATTENDED;
  for (guint i = 0; i < columns->len; i++)
    if (g_str_equal (g_array_index (columns, FfGearColumn, i).name, column.name))
      return;
  g_array_append_val (columns, column);
}

static void
add_table (GArray *columns, const FfFields *fields, guint first)
{
  for (guint i = first; fields != NULL && i < fields->n_fields; i++)
    add_column (columns, fields->fields[i].name);
}

GArray *
ff_gear_columns (void)
{
  GArray *columns = g_array_new (FALSE, FALSE, sizeof (FfGearColumn));
  const FfGearColumn with = { "goes_with", FF_COLUMN_WITH };

  add_table (columns, &ff_item_fields, 0);
  add_table (columns, &ff_item_state_fields, 0);
  g_array_append_val (columns, with);
  for (guint kind = 0; kind < ff_names_kind.n_names; kind++)
    add_table (columns, ff_item_kind_fields ((FfKind) kind), 1);
  return columns;
}

const FfField *
ff_gear_column_field (FfKind kind, const char *name)
{
  const FfFields *tables[] = { &ff_item_fields, &ff_item_state_fields, ff_item_kind_fields (kind) };
  const FfField *field = NULL;

  for (guint i = 0; field == NULL && i < G_N_ELEMENTS (tables); i++)
    if (tables[i] != NULL)
      field = ff_fields_find (tables[i], name);
  return field;
}

/* The shortest that reads back as the same number. */
static char *
number_text (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  if (isnan (value))
    return g_strdup ("");
  for (int digits = 6; digits <= 17; digits++)
    {
      g_autofree char *format = g_strdup_printf ("%%.%dg", digits);

      g_ascii_formatd (text, sizeof text, format, value);
      if (digits == 17 || !(fabs (g_ascii_strtod (text, NULL) - value) > 0))
        break;
    }
  return g_strdup (text);
}

static char *
field_text (const FfItem *item, const FfField *field)
{
  if (ff_field_is_text (field))
    return g_strdup (*ff_field_text (field, item));
  switch (field->type)
    {
    case FF_FIELD_REAL:
      return number_text (*ff_field_real (field, item));
    case FF_FIELD_INSTANT:
      return *ff_field_instant (field, item) == 0
                 ? g_strdup ("")
                 : ff_instant_format ((double) *ff_field_instant (field, item), NULL);
    case FF_FIELD_FLAG:
      return g_strdup (*ff_field_whole (field, item) ? "yes" : "no");
    case FF_FIELD_NAME:
      return g_strdup (ff_name_token (field->names, *ff_field_whole (field, item)));
    case FF_FIELD_ID:
    case FF_FIELD_TEXT:
    case FF_FIELD_DATE:
    case FF_FIELD_WHOLE:
    case FF_FIELD_CLOCK:
    default:
      return g_strdup_printf ("%d", *ff_field_whole (field, item));
    }
}

typedef struct {
  GHashTable *labels;   /* id of an item to its label */
  GHashTable *initials; /* id of a member to initials */
} Names;

/* A semicolon or backslash in a label has a backslash before it. */
static void
append_escaped (GString *text, const char *label)
{
  for (const char *p = label; *p != '\0'; p++)
    {
      if (*p == ';' || *p == '\\')
        g_string_append_c (text, '\\');
      g_string_append_c (text, *p);
    }
}

static char *
with_text (const FfItem *item, const Names *names)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < item->with_ids->len; i++)
    {
      const char *label
          = g_hash_table_lookup (names->labels, g_ptr_array_index (item->with_ids, i));

      if (label == NULL)
        continue;
      if (text->len > 0)
        g_string_append (text, ";");
      append_escaped (text, label);
    }
  return g_string_free (text, FALSE);
}

static char *
cell_text (const FfItem *item, const FfGearColumn *column, const Names *names)
{
  const FfField *field;

  if (column->how == FF_COLUMN_WITH)
    return with_text (item, names);
  if (column->how == FF_COLUMN_CAMERA)
    return g_strdup (item->kind == FF_KIND_AIRCRAFT
                         ? g_hash_table_lookup (names->labels, item->camera_id)
                         : "");
  if (column->how == FF_COLUMN_ATTENDED)
    return g_strdup (item->kind == FF_KIND_CHARGER
                         ? g_hash_table_lookup (names->initials, item->attended_by)
                         : "");
  field = ff_gear_column_field (item->kind, column->name);
  return field != NULL ? field_text (item, field) : g_strdup ("");
}

static void
write_row (GString *out, GArray *columns, const FfItem *item, const Names *names)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < columns->len; i++)
    {
      char *text = cell_text (item, &g_array_index (columns, FfGearColumn, i), names);

      g_ptr_array_add (cells, text != NULL ? text : g_strdup (""));
    }
  g_ptr_array_add (cells, NULL);
  ff_csv_row (out, (const char *const *) cells->pdata);
}

static void
write_head (GString *out, GArray *columns)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new ();

  for (guint i = 0; i < columns->len; i++)
    g_ptr_array_add (cells, (gpointer) g_array_index (columns, FfGearColumn, i).name);
  g_ptr_array_add (cells, NULL);
  ff_csv_row (out, (const char *const *) cells->pdata);
}

char *
ff_gear_csv_write (GPtrArray *items, GPtrArray *members)
{
  g_autoptr (GHashTable) labels = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) initials = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GArray) columns = ff_gear_columns ();
  const Names names = { labels, initials };
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      g_hash_table_insert (labels, item->id, item->label);
    }
  for (guint i = 0; i < members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (members, i);

      g_hash_table_insert (initials, member->id, member->initials);
    }
  write_head (out, columns);
  for (guint i = 0; i < items->len; i++)
    write_row (out, columns, g_ptr_array_index (items, i), &names);
  return g_string_free (out, FALSE);
}
