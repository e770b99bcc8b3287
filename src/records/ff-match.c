/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-match.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-statement.h"

/* As many as still read well in one line. */
#define SHOWN_MAX 8

typedef struct {
  char *id, *name, *title;
} Candidate;

typedef enum { MATCH_NONE, MATCH_BEGINNING, MATCH_NAME, MATCH_ID } Match;

static void
candidate_free (gpointer data)
{
  Candidate *candidate = data;

  g_free (candidate->id);
  g_free (candidate->name);
  g_free (candidate->title);
  g_free (candidate);
}

static char *
fold (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autofree char *normal = g_utf8_normalize (valid, -1, G_NORMALIZE_DEFAULT_COMPOSE);

  return g_utf8_casefold (normal, -1);
}

static Match
match_one (const Candidate *candidate, const char *folded)
{
  g_autofree char *name = fold (candidate->name);
  g_autofree char *title = fold (candidate->title);

  if (strcmp (candidate->id, folded) == 0)
    return MATCH_ID;
  if (strcmp (name, folded) == 0)
    return MATCH_NAME;
  return g_str_has_prefix (title, folded) ? MATCH_BEGINNING : MATCH_NONE;
}

static GPtrArray *
load_candidates (FfStore *store, const char *sql, GError **error)
{
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (candidate_free);
  g_autoptr (FfStatement) statement = ff_statement_new (store, sql, error);
  FfStep step = FF_STEP_ERROR;

  while (statement != NULL && (step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    {
      Candidate *candidate = g_new0 (Candidate, 1);

      candidate->id = ff_statement_dup_text (statement, 0);
      candidate->name = ff_statement_dup_text (statement, 1);
      candidate->title = ff_statement_dup_text (statement, 2);
      g_ptr_array_add (all, candidate);
    }
  return step == FF_STEP_DONE ? g_steal_pointer (&all) : NULL;
}

/* Names, with the id where the name alone would not tell them apart. */
static char *
list_candidates (GPtrArray *candidates, gboolean with_ids)
{
  GString *list = g_string_new (NULL);

  for (guint i = 0; i < candidates->len && i < SHOWN_MAX; i++)
    {
      const Candidate *candidate = g_ptr_array_index (candidates, i);

      g_string_append_printf (list, "%s%s", i > 0 ? ", " : "", candidate->name);
      if (with_ids)
        g_string_append_printf (list, " (%s)", candidate->id);
    }
  if (candidates->len > SHOWN_MAX)
    g_string_append (list, ", …");
  return g_string_free (list, FALSE);
}

static char *
refuse (const char *noun, const char *wanted, GPtrArray *all, GPtrArray *found, GError **error)
{
  g_autofree char *list = list_candidates (found->len > 0 ? found : all, found->len > 0);

  if (all->len == 0)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("no %s “%s”: there is none yet"), noun,
                 wanted);
  else if (found->len == 0)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("no %s “%s”; there is: %s"), noun, wanted,
                 list);
  else
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s “%s” could be any of: %s"), noun, wanted,
                 list);
  return NULL;
}

char *
ff_match (FfStore *store, const char *sql, const char *noun, const char *wanted, GError **error)
{
  g_autoptr (GPtrArray) all = load_candidates (store, sql, error);
  g_autoptr (GPtrArray) found = g_ptr_array_new ();
  g_autofree char *folded = fold (wanted);
  Match best = MATCH_BEGINNING;

  if (all == NULL)
    return NULL;
  for (guint i = 0; *folded != '\0' && i < all->len; i++)
    {
      Match match = match_one (g_ptr_array_index (all, i), folded);

      if (match > best)
        {
          g_ptr_array_set_size (found, 0);
          best = match;
        }
      if (match == best)
        g_ptr_array_add (found, g_ptr_array_index (all, i));
    }
  if (found->len == 1)
    return g_strdup (((Candidate *) g_ptr_array_index (found, 0))->id);
  return refuse (noun, wanted, all, found, error);
}
