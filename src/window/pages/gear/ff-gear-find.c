/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-find.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-gear-list.h"
#include "ff-gear-words.h"
#include "ff-item-search.h"

/* One word, and where it stands. */
typedef struct {
  GHashTable *ids; /* by the index of the store; NULL: none */
  gboolean kinds[FF_KIND_OTHER + 1], states[FF_STATE_RETIRED + 1];
  gboolean is_case; /* "case" itself, which stands before every case */
} Word;

static gboolean
stands_in (const char *word, const char *text)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);

  return strstr (folded, word) != NULL;
}

static void
look_up (Word *word, FfStore *store, const char *text)
{
  word->ids = store != NULL ? ff_items_search (store, text, NULL) : NULL;
  for (guint i = 0; i < G_N_ELEMENTS (word->kinds); i++)
    word->kinds[i] = stands_in (text, ff_name_text (&ff_names_kind, (int) i))
                     || stands_in (text, ff_gear_plural ((FfKind) i));
  for (guint i = 0; i < G_N_ELEMENTS (word->states); i++)
    word->states[i] = stands_in (text, ff_name_text (&ff_names_state, (int) i));
  word->is_case = stands_in (text, ff_name_text (&ff_names_kind, FF_KIND_CASE));
}

static void
word_clear (gpointer word)
{
  g_clear_pointer (&((Word *) word)->ids, g_hash_table_unref);
}

static GArray *
read_words (FfStore *store, const char *wanted)
{
  g_autofree char *folded = g_utf8_casefold (wanted, -1);
  g_auto (GStrv) parts = g_strsplit (folded, " ", -1);
  GArray *words = g_array_new (FALSE, TRUE, sizeof (Word));

  g_array_set_clear_func (words, word_clear);
  for (guint i = 0; parts[i] != NULL; i++)
    if (parts[i][0] != '\0')
      {
        g_array_set_size (words, words->len + 1);
        look_up (&g_array_index (words, Word, words->len - 1), store, parts[i]);
      }
  return words;
}

static gboolean
has_words (const FfItem *item, GArray *words)
{
  for (guint i = 0; i < words->len; i++)
    {
      const Word *word = &g_array_index (words, Word, i);

      if (!word->kinds[item->kind] && !word->states[item->state]
          && !(word->is_case && item->case_label[0] != '\0')
          && (word->ids == NULL || !g_hash_table_contains (word->ids, item->id)))
        return FALSE;
    }
  return TRUE;
}

FfGearFound *
ff_gear_find (FfStore *store, GPtrArray *items, const char *wanted)
{
  FfGearFound *found = g_new0 (FfGearFound, 1);
  g_autoptr (GArray) words = read_words (store, wanted);

  found->items = g_ptr_array_new ();
  for (guint i = 0; i < items->len; i++)
    {
      FfItem *item = g_ptr_array_index (items, i);

      if (!has_words (item, words))
        continue;
      g_ptr_array_add (found->items, item);
      found->counts[item->kind][item->state]++;
    }
  return found;
}

void
ff_gear_found_free (FfGearFound *found)
{
  if (found == NULL)
    return;
  g_ptr_array_unref (found->items);
  g_free (found);
}

char *
ff_gear_found_counts (const FfGearFound *found, FfKind kind)
{
  GString *words = g_string_new (NULL);
  guint total = 0;

  for (guint i = 0; i < G_N_ELEMENTS (found->counts[kind]); i++)
    total += found->counts[kind][i];
  g_string_append_printf (words, "%u", total);
  for (guint i = FF_STATE_DEFECT; i < G_N_ELEMENTS (found->counts[kind]); i++)
    if (found->counts[kind][i] > 0)
      {
        g_autofree char *state = ff_gear_state_words ((FfState) i);

        g_string_append_printf (words, " · %u %s", found->counts[kind][i], state);
      }
  return g_string_free (words, FALSE);
}
