/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What sheets say of a plan that changes: the amendments beside the letter that stands, and what is
 * given up first. */
#include "ff-civil.h"
#include "ff-day-private.h"
#include "ff-sheet-private.h"

static void
sentence_free (gpointer data)
{
  FfSheetSentence *sentence = data;

  g_free (sentence->text);
  g_free (sentence->initials);
  g_free (sentence);
}

void
ff_sheet_amendment_free (gpointer data)
{
  FfSheetAmendment *amendment = data;

  g_free (amendment->clock);
  g_ptr_array_unref (amendment->sentences);
  g_free (amendment);
}

/* Initials of all who acknowledged for a role, in the order in which they did. */
static char *
initials_of (const FfAmendment *record, FfRole role)
{
  GString *initials = g_string_new (NULL);

  for (guint i = 0; i < record->acknowledgements->len; i++)
    {
      const FfAcknowledgement *one = g_ptr_array_index (record->acknowledgements, i);

      if (one->role == role)
        ff_sheet_append_part (initials, " ", g_strdup (one->initials));
    }
  return g_string_free (initials, FALSE);
}

static FfSheetAmendment *
amendment_of (const FfAmendment *record, GTimeZone *zone)
{
  FfSheetAmendment *amendment = g_new0 (FfSheetAmendment, 1);

  amendment->number = record->number;
  amendment->clock = ff_instant_clock ((double) record->at, zone);
  amendment->sentences = g_ptr_array_new_with_free_func (sentence_free);
  for (guint i = 0; i < record->sentences->len; i++)
    {
      const FfSentence *said = g_ptr_array_index (record->sentences, i);
      FfSheetSentence *sentence = g_new0 (FfSheetSentence, 1);

      sentence->role = said->role;
      sentence->text = g_strdup (said->text);
      sentence->initials = initials_of (record, said->role);
      g_ptr_array_add (amendment->sentences, sentence);
    }
  return amendment;
}

void
ff_sheet_add_amendments (FfSheetFacts *facts, const FfStanding *standing)
{
  g_ptr_array_set_size (facts->amendments, 0);
  for (guint i = 0; i < standing->amendments->len; i++)
    {
      const FfAmendment *record = g_ptr_array_index (standing->amendments, i);

      if (g_str_equal (record->letter, standing->version->letter))
        g_ptr_array_add (facts->amendments, amendment_of (record, facts->zone));
    }
}

gboolean
ff_sheet_facts_read_drops (FfSheetFacts *facts,
                           const FfDay *day,
                           const FfDayPlan *plan,
                           GError **error)
{
  g_autoptr (GPtrArray) drops = ff_day_drop_first (day, NULL, plan, NULL, NULL, error);
  char *words;

  if (drops == NULL)
    return FALSE;
  words = ff_drop_words (drops);
  if (words == NULL)
    return TRUE;
  g_free (facts->drop_first);
  facts->drop_first = words;
  return TRUE;
}
