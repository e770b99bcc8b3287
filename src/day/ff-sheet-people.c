/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What sheets say of the people of a job. */
#include "ff-briefing.h"
#include "ff-field.h"
#include "ff-sheet-facts.h"

void
ff_sheet_facts_hide_phones (FfSheetFacts *facts)
{
  for (guint i = 0; i < facts->crew->len; i++)
    ff_set_text (&((FfSheetMember *) g_ptr_array_index (facts->crew, i))->phone, "");
}

void
ff_sheet_facts_say_briefed (FfSheetFacts *facts, const FfStanding *standing, const FfDay *day)
{
  g_autoptr (GPtrArray) briefings = ff_briefings (standing, day);

  for (guint i = 0; i < facts->crew->len; i++)
    {
      FfSheetMember *member = g_ptr_array_index (facts->crew, i);

      for (guint j = 0; j < briefings->len; j++)
        {
          const FfBriefing *briefing = g_ptr_array_index (briefings, j);

          if (g_str_equal (briefing->initials, member->initials))
            ff_set_text (&member->briefed, briefing->brief);
        }
    }
}
