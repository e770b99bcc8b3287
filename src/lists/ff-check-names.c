/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-checklist.h"

#include <glib/gi18n-lib.h>

#define TABLE(symbol, what_text)                                                                   \
  const FfNames ff_names_##symbol = { what_text, symbol##_names, G_N_ELEMENTS (symbol##_names) }

static const FfName list_mode_names[] = {
  /* Translators: one reads the item out, the other looks and answers. */
  [FF_LIST_CHALLENGE] = { "challenge and response", N_ ("challenge and response") },
  /* Translators: whoever reads the item does it at once. */
  [FF_LIST_READ_AND_DO] = { "read and do", N_ ("read and do") },
};
TABLE (list_mode, "mode");

static const FfName phase_names[] = {
  [FF_PHASE_VAN_PACK] = { "van pack", N_ ("van pack") },
  [FF_PHASE_SITE] = { "site set-up", N_ ("site set-up") },
  [FF_PHASE_PRE_FLIGHT] = { "pre-flight", N_ ("pre-flight") },
  [FF_PHASE_TAKE_OFF] = { "before take-off", N_ ("before take-off") },
  [FF_PHASE_AFTER_LANDING] = { "after landing", N_ ("after landing") },
  /* Translators: on the ground between two flights. */
  [FF_PHASE_TURN_ROUND] = { "turn-round", N_ ("turn-round") },
  /* Translators: taking everything down at the end of the day. */
  [FF_PHASE_DE_RIG] = { "de-rig", N_ ("de-rig") },
  /* Translators: copying the cards. */
  [FF_PHASE_OFFLOAD] = { "offload", N_ ("offload") },
  /* Translators: counting everything in, back at base. */
  [FF_PHASE_RETURN_CHECK] = { "return-check", N_ ("return-check") },
  /* Translators: a checklist that belongs to no one moment of the day. */
  [FF_PHASE_ANY] = { "any time", N_ ("any time") },
  /* Translators: an emergency card. */
  [FF_PHASE_EMERGENCY] = { "emergency", N_ ("emergency") },
};
TABLE (phase, "place in the day");

static const FfName when_names[] = {
  [FF_WHEN_COLD] = { "cold", N_ ("cold") },
  [FF_WHEN_NIGHT] = { "night", N_ ("night") },
  [FF_WHEN_WATER] = { "water", N_ ("water") },
  [FF_WHEN_PEOPLE] = { "near people", N_ ("near people") },
  /* Translators: one person flies, another one works the camera. */
  [FF_WHEN_OPERATORS] = { "two operators", N_ ("two operators") },
  [FF_WHEN_FIRST_FLIGHT] = { "first flight of the day", N_ ("first flight of the day") },
  [FF_WHEN_NEW_SITE] = { "new site", N_ ("new site") },
};
TABLE (when, "condition");

static const FfName fact_names[] = {
  [FF_FACT_NONE] = { "", "" },
  [FF_FACT_FILTER] = { "filter", N_ ("the filter of the next sortie") },
  [FF_FACT_BATTERY] = { "battery", N_ ("the battery of the next sortie") },
  [FF_FACT_AIRCRAFT] = { "aircraft", N_ ("the aircraft of the job") },
  [FF_FACT_CARD] = { "card", N_ ("a memory card of the job") },
  /* Translators: the height at which the aircraft comes back by itself. */
  [FF_FACT_RETURN_HEIGHT] = { "return-height", N_ ("the height of the automatic return") },
  [FF_FACT_LINE] = { "line", N_ ("the line of the plan that is next") },
  [FF_FACT_LAND_BY] = { "land-by", N_ ("the land-by time of the next sortie") },
  [FF_FACT_ABORT_WORD] = { "abort-word", N_ ("the abort word") },
};
TABLE (fact, "fact of the plan");

static const FfName guard_names[] = {
  /* Translators: the three safety statements, in the order of their weight. */
  [FF_GUARD_WARNING] = { "warning", N_ ("Warning") },
  [FF_GUARD_CAUTION] = { "caution", N_ ("Caution") },
  [FF_GUARD_NOTE] = { "note", N_ ("Note") },
};
TABLE (guard, "safety statement");

gboolean
ff_when_holds (guint when, guint conditions)
{
  return when == 0 || (when & conditions) != 0;
}

static char *
join_when (guint when, const char *(*name) (const FfNames *, int))
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < FF_N_WHEN; i++)
    if (when & (1u << i))
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", name (&ff_names_when, i));
  return g_string_free (text, FALSE);
}

char *
ff_when_tokens (guint when)
{
  return join_when (when, ff_name_token);
}

char *
ff_when_words (guint when)
{
  return join_when (when, ff_name_text);
}

gboolean
ff_when_parse (const char *tokens, guint *ret_when, GError **error)
{
  g_auto (GStrv) each = g_strsplit (tokens, ",", -1);
  guint when = 0;
  int condition;

  for (guint i = 0; each[i] != NULL; i++)
    {
      if (*g_strstrip (each[i]) == '\0')
        continue;
      if (!ff_name_parse (&ff_names_when, each[i], &condition, error))
        return FALSE;
      when |= 1u << condition;
    }
  *ret_when = when;
  return TRUE;
}
