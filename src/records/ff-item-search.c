/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-item-search.h"

#include <string.h>

#include "ff-statement.h"

static char *
rest_of (const FfItem *item)
{
  const char *kind = ff_name_token (&ff_names_kind, (int) item->kind);
  const char *texts[] = { kind, item->case_label, item->serial, item->note, NULL, NULL, NULL, NULL };
  guint n = 4;

  if (item->kind == FF_KIND_FILTER)
    {
      texts[n++] = item->engraving;
      texts[n++] = item->set_name;
      texts[n++] = item->mount;
    }
  else if (item->kind == FF_KIND_BATTERY)
    texts[n++] = item->chemistry;
  else if (item->kind == FF_KIND_DOCUMENT)
    {
      texts[n++] = item->holder;
      texts[n++] = item->reference;
    }
  return g_strjoinv (" ", (char **) texts);
}

gboolean
ff_item_unindex (FfStore *store, const char *id, GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "DELETE FROM item_search WHERE rowid"
                          " = (SELECT number FROM item WHERE id = ?1)",
                          error);

  return statement != NULL && ff_statement_bind_text (statement, 1, id, error)
         && ff_statement_run (statement, error);
}

gboolean
ff_item_index (FfStore *store, const FfItem *item, GError **error)
{
  g_autofree char *rest = rest_of (item);
  g_autoptr (FfStatement) statement = NULL;

  if (!ff_item_unindex (store, item->id, error))
    return FALSE;
  statement = ff_statement_new (store,
                                "INSERT INTO item_search (rowid, label, title, rest)"
                                " SELECT number, ?2, ?3, ?4 FROM item WHERE id = ?1",
                                error);
  return statement != NULL && ff_statement_bind_text (statement, 1, item->id, error)
         && ff_statement_bind_text (statement, 2, item->label, error)
         && ff_statement_bind_text (statement, 3, item->title, error)
         && ff_statement_bind_text (statement, 4, rest, error)
         && ff_statement_run (statement, error);
}

/* What was typed as a query: every word quoted, so that none is taken for an operator, and each only
 * begun. Signs between words separate, as the tokenizer has it. */
static char *
query_of (const char *words)
{
  GString *query = g_string_new (NULL);
  gboolean inside = FALSE;

  for (const char *p = words; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      gboolean in_word = g_unichar_isalnum (c) || g_unichar_ismark (c);

      if (in_word && !inside)
        g_string_append (query, query->len > 0 ? " \"" : "\"");
      else if (!in_word && inside)
        g_string_append (query, "\"*");
      if (in_word)
        g_string_append_unichar (query, c);
      inside = in_word;
    }
  if (inside)
    g_string_append (query, "\"*");
  return g_string_free (query, FALSE);
}

GHashTable *
ff_items_search (FfStore *store, const char *words, GError **error)
{
  g_autoptr (GHashTable) found = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autofree char *valid = g_utf8_make_valid (words, -1);
  g_autofree char *query = query_of (valid);
  g_autoptr (FfStatement) statement = NULL;
  FfStep step = FF_STEP_ERROR;

  if (*query == '\0')
    return g_steal_pointer (&found);
  statement = ff_statement_new (store,
                                "SELECT id FROM item WHERE number IN"
                                " (SELECT rowid FROM item_search WHERE item_search MATCH ?1)",
                                error);
  if (statement == NULL || !ff_statement_bind_text (statement, 1, query, error))
    return NULL;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    g_hash_table_add (found, ff_statement_dup_text (statement, 0));
  return step == FF_STEP_DONE ? g_steal_pointer (&found) : NULL;
}
