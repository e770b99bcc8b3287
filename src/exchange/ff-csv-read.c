/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-csv-read.h"

#include <csv.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-csv.h"
#include "ff-error.h"

#define BYTE_ORDER_MARK "\xef\xbb\xbf"

typedef struct {
  FfCsvTable *table;
  FfCsvRow *row;    /* being filled; NULL between rows */
  guint line, first; /* now, and where this row began */
  gsize length;      /* bytes of the cell so far */
} Reader;

static void
row_free (gpointer data)
{
  FfCsvRow *row = data;

  g_ptr_array_unref (row->cells);
  g_free (row);
}

void
ff_csv_table_free (FfCsvTable *table)
{
  if (table == NULL)
    return;
  g_ptr_array_unref (table->rows);
  g_free (table);
}

/* Blanks belong to the cell (RFC 4180, section 2, rule 4). */
static int
no_space (unsigned char c)
{
  return 0;
}

/* Lines inside a cell end as they do in texts here. */
static char *
with_plain_lines (const char *cell, size_t length)
{
  g_autofree char *text = g_strndup (cell != NULL ? cell : "", length);
  g_auto (GStrv) lines = g_strsplit (text, "\r\n", -1);

  return g_strjoinv ("\n", lines);
}

static void
on_cell (void *cell, size_t length, void *data)
{
  Reader *reader = data;
  g_autofree char *text = with_plain_lines (cell, length);

  if (reader->row == NULL)
    {
      reader->row = g_new0 (FfCsvRow, 1);
      reader->row->line = reader->first;
      reader->row->cells = g_ptr_array_new_with_free_func (g_free);
    }
  g_ptr_array_add (reader->row->cells, ff_csv_plain (text));
  reader->length = 0;
}

static void
on_row (int end, void *data)
{
  Reader *reader = data;
  FfCsvRow *row = g_steal_pointer (&reader->row);
  gboolean empty = row != NULL && row->cells->len == 1
                   && *(char *) g_ptr_array_index (row->cells, 0) == '\0';

  reader->length = 0;
  if (row != NULL && !empty)
    g_ptr_array_add (reader->table->rows, row);
  else if (row != NULL)
    row_free (row);
}

/* The sign that stands most often in the first line, outside quotes. */
static char
find_delimiter (const char *text)
{
  static const char signs[] = ",;\t";
  guint counts[] = { 0, 0, 0 };
  guint best = 0;
  gboolean quoted = FALSE;

  for (const char *p = text; *p != '\0' && (quoted || (*p != '\n' && *p != '\r')); p++)
    {
      const char *sign = strchr (signs, *p);

      if (*p == '"')
        quoted = !quoted;
      else if (sign != NULL && !quoted)
        counts[sign - signs]++;
    }
  for (guint i = 1; i < G_N_ELEMENTS (counts); i++)
    if (counts[i] > counts[best])
      best = i;
  return signs[best];
}

static guint
column_of (const Reader *reader)
{
  return reader->row != NULL ? reader->row->cells->len + 1 : 1;
}

static gboolean
refuse (const Reader *reader, const char *what, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               /* Translators: a place in a file; what is wrong there. */
               _ ("line %u, column %u: %s"), reader->line, column_of (reader), what);
  return FALSE;
}

/* Byte by byte, so that the line is known whatever happens. */
static gboolean
read_bytes (struct csv_parser *parser,
            Reader *reader,
            const char *text,
            gsize longest,
            guint most,
            GError **error)
{
  for (const char *p = text; *p != '\0'; p++)
    {
      gboolean between = reader->row == NULL && reader->length == 0;

      if (between)
        reader->first = reader->line;
      /* The second half of CR LF, and empty lines, begin no row. */
      if (!between || (*p != '\n' && *p != '\r'))
        reader->length++;
      if (csv_parse (parser, p, 1, on_cell, on_row, reader) != 1)
        return refuse (reader, _ ("found a quote inside a cell; accepted: the whole cell in quotes, "
                                  "quotes inside it doubled"),
                       error);
      if (reader->length > longest + 2)
        return refuse (reader, _ ("the cell is too long"), error);
      if (reader->table->rows->len > most)
        return refuse (reader, _ ("the file has too many rows"), error);
      if (*p == '\n' || (*p == '\r' && p[1] != '\n'))
        reader->line++;
    }
  if (csv_fini (parser, on_cell, on_row, reader) != 0)
    return refuse (reader, _ ("the file ends inside a quoted cell"), error);
  return TRUE;
}

FfCsvTable *
ff_csv_read (const char *text, gsize longest, guint most, GError **error)
{
  g_autoptr (FfCsvTable) table = g_new0 (FfCsvTable, 1);
  Reader reader = { .table = table, .line = 1, .first = 1 };
  struct csv_parser parser;
  gboolean done;

  table->rows = g_ptr_array_new_with_free_func (row_free);
  if (g_str_has_prefix (text, BYTE_ORDER_MARK))
    text += strlen (BYTE_ORDER_MARK);
  table->delimiter = find_delimiter (text);
  if (csv_init (&parser, CSV_STRICT | CSV_STRICT_FINI | CSV_APPEND_NULL) != 0)
    g_error ("libcsv can't begin");
  csv_set_delim (&parser, (unsigned char) table->delimiter);
  csv_set_space_func (&parser, no_space);
  done = read_bytes (&parser, &reader, text, longest, most, error);
  csv_free (&parser);
  if (reader.row != NULL)
    row_free (reader.row);
  return done ? g_steal_pointer (&table) : NULL;
}
