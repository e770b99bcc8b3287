/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-list-book.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-kept-list.h"
#include "ff-starter-lists.h"

static void
entry_free (gpointer data)
{
  FfListEntry *entry = data;

  g_free (entry->id);
  g_free (entry->title);
  g_free (entry->text);
  g_free (entry->name);
  ff_checklist_free (entry->list);
  g_free (entry);
}

static FfListEntry *
entry_new (const char *id, const char *text, GError **error)
{
  g_autoptr (FfChecklist) list = ff_checklist_parse (text, error);
  FfListEntry *entry;

  if (list == NULL)
    return NULL;
  entry = g_new0 (FfListEntry, 1);
  entry->id = g_strdup (id);
  entry->title = g_strdup (list->title);
  entry->text = g_strdup (text);
  entry->name = g_strdup ("");
  entry->list = g_steal_pointer (&list);
  return entry;
}

/* What stands in the store was read before it was kept; that it can't be read now is damage. */
static gboolean
add_own (GPtrArray *book, const FfKeptList *kept, GError **error)
{
  g_autoptr (GError) problem = NULL;
  FfListEntry *entry = entry_new (kept->id, kept->text, &problem);

  if (entry == NULL)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_STORE, _ ("list “%s”: %s"), kept->title,
                   problem->message);
      return FALSE;
    }
  entry->own = TRUE;
  g_ptr_array_add (book, entry);
  return TRUE;
}

static FfListEntry *
find_id (GPtrArray *book, const char *id)
{
  for (guint i = 0; id != NULL && i < book->len; i++)
    {
      FfListEntry *entry = g_ptr_array_index (book, i);

      if (g_str_equal (entry->id, id))
        return entry;
    }
  return NULL;
}

static gboolean
has_title (GPtrArray *book, const char *title)
{
  for (guint i = 0; i < book->len; i++)
    {
      const FfListEntry *entry = g_ptr_array_index (book, i);

      if (g_ascii_strcasecmp (entry->title, title) == 0)
        return TRUE;
    }
  return FALSE;
}

/* An own list under the title of a starter list stands in its place. */
static void
add_starter (GPtrArray *book, const FfStarterList *starter)
{
  FfListEntry *entry = find_id (book, starter->id);

  if (entry == NULL)
    {
      entry = entry_new (starter->id, starter->text, NULL);
      g_assert (entry != NULL);
      if (has_title (book, entry->title))
        {
          entry_free (entry);
          return;
        }
      g_ptr_array_add (book, entry);
    }
  g_free (entry->name);
  entry->name = g_strdup (starter->name);
}

static gint
compare (gconstpointer a, gconstpointer b)
{
  const FfListEntry *first = *(FfListEntry *const *) a, *second = *(FfListEntry *const *) b;
  int order;

  if (first->list->phase != second->list->phase)
    return first->list->phase < second->list->phase ? -1 : 1;
  /* The crew's own lists of a phase stand after the starter ones, by title. */
  if ((first->name[0] == '\0') != (second->name[0] == '\0'))
    return first->name[0] != '\0' ? -1 : 1;
  order = strcmp (first->name, second->name);
  return order != 0 ? order : g_utf8_collate (first->title, second->title);
}

GPtrArray *
ff_list_book_load (FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) book = g_ptr_array_new_with_free_func (entry_free);
  g_autoptr (GPtrArray) kept = ff_kept_lists_load (store, error);

  if (kept == NULL)
    return NULL;
  for (guint i = 0; i < kept->len; i++)
    if (!add_own (book, g_ptr_array_index (kept, i), error))
      return NULL;
  for (guint i = 0; i < ff_n_starter_lists; i++)
    add_starter (book, &ff_starter_lists[i]);
  g_ptr_array_sort (book, compare);
  return g_steal_pointer (&book);
}

/* Finding */

static gboolean
is_named (const FfListEntry *entry, const char *folded)
{
  g_autofree char *title = g_utf8_casefold (entry->title, -1);

  return g_str_equal (entry->id, folded) || g_str_equal (entry->name, folded)
         || g_str_equal (title, folded);
}

static gboolean
begins_so (const FfListEntry *entry, const char *folded)
{
  g_autofree char *title = g_utf8_casefold (entry->title, -1);

  return g_str_has_prefix (title, folded);
}

static const FfListEntry *
refuse (GPtrArray *book, GPtrArray *found, const char *wanted, GError **error)
{
  GPtrArray *from = found->len > 0 ? found : book;
  g_autoptr (GString) titles = g_string_new (NULL);

  for (guint i = 0; i < from->len; i++)
    g_string_append_printf (titles, "%s%s", i > 0 ? "; " : "",
                            ((const FfListEntry *) g_ptr_array_index (from, i))->title);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               found->len > 0 ? _ ("“%s” begins several lists; accepted: %s")
                              : _ ("no list is called “%s”; accepted: %s"),
               wanted, titles->str);
  return NULL;
}

const FfListEntry *
ff_list_book_find (GPtrArray *book, const char *wanted, GError **error)
{
  g_autofree char *folded = g_utf8_casefold (wanted, -1);
  g_autoptr (GPtrArray) found = g_ptr_array_new ();

  for (guint i = 0; i < book->len; i++)
    {
      const FfListEntry *entry = g_ptr_array_index (book, i);

      if (is_named (entry, folded))
        return entry;
      if (folded[0] != '\0' && begins_so (entry, folded))
        g_ptr_array_add (found, (gpointer) entry);
    }
  return found->len == 1 ? g_ptr_array_index (found, 0) : refuse (book, found, wanted, error);
}

const FfListEntry *
ff_list_book_get (GPtrArray *book, const char *id)
{
  return find_id (book, id);
}

/* Keeping */

static char *
id_of_title (FfStore *store, const char *title, GError **error)
{
  g_autoptr (GPtrArray) book = ff_list_book_load (store, error);

  if (book == NULL)
    return NULL;
  for (guint i = 0; i < book->len; i++)
    {
      const FfListEntry *entry = g_ptr_array_index (book, i);

      if (g_ascii_strcasecmp (entry->title, title) == 0)
        return g_strdup (entry->id);
    }
  return ff_records_new_id ();
}

char *
ff_list_book_save (FfStore *store,
                   const char *id,
                   const char *text,
                   const char *by,
                   gint64 at,
                   GError **error)
{
  g_autoptr (FfChecklist) list = ff_checklist_parse (text, error);
  g_autoptr (FfKeptList) kept = NULL;
  g_autofree char *own_id = NULL;

  if (list == NULL)
    return NULL;
  own_id = id != NULL ? g_strdup (id) : id_of_title (store, list->title, error);
  if (own_id == NULL)
    return NULL;
  kept = ff_kept_list_new ();
  ff_set_text (&kept->id, own_id);
  ff_set_text (&kept->title, list->title);
  ff_set_text (&kept->text, text);
  ff_set_text (&kept->by, by);
  kept->changed_at = at;
  return ff_kept_list_save (store, kept, error) ? g_steal_pointer (&own_id) : NULL;
}
