/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The slip for client and cast: where to stand, when not to speak, what the noise means, what "clear
 * the area" means. Four to a page, to be cut apart. */
#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-sheets.h"

#define PAGES 1
#define SLIPS 4

static const FfSheetMember *
crew_lead (const FfSheetFacts *facts)
{
  guint i;

  for (i = 0; i < facts->crew->len; i++)
    {
      const FfSheetMember *member = g_ptr_array_index (facts->crew, i);

      if (member->role == FF_ROLE_LEAD)
        return member;
    }
  return NULL;
}

static void
add_line (FfCell *cell, const char *what, const char *text)
{
  ff_cell_text (cell, FF_SIZE_BODY, TRUE, what);
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, text);
}

static void
add_slip (FfSheet *sheet, const FfSheetFacts *facts, guint number)
{
  const FfSheetMember *lead = crew_lead (facts);
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell = ff_sheet_block_cell (block, -1);
  g_autofree char *who
      = lead != NULL ? g_strdup_printf (_ ("Go where %s shows you, and stay there."), lead->name)
                     : g_strdup (_ ("Go where the crew lead shows you, and stay there."));
  g_autofree char *ask = lead != NULL ? g_strdup_printf (_ ("Speak to %s alone."), lead->name)
                                      : g_strdup (_ ("Speak to the crew lead alone."));

  block->box = FF_STROKE_THIN;
  block->space_above = number > 0 ? 14 : 0;
  ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, _ ("An aircraft with a camera flies here today"));
  add_line (cell, _ ("Stand"), who);
  add_line (cell, _ ("Speak"), ask);
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, " ");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE,
                _ ("Never to the pilot or the observer while it flies."));
  add_line (cell, _ ("Noise"), _ ("A steady hum is normal. If it comes closer, look up and stand still."));
  add_line (cell, _ ("“Clear the area”"),
            _ ("Walk away from the aircraft at once, to where you stood before, and wait there."));
  add_line (cell, _ ("On the ground"),
            _ ("Stay away until the crew lead calls you: the propellers may start."));
  if (*facts->abort_word != '\0')
    add_line (cell, facts->abort_word, _ ("is the crew’s word: it stops everything. Stand still."));
}

FfSheet *
ff_client_sheet (const FfSheetFacts *facts, const FfDayPlan *plan)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_CLIENT, _ ("Client and cast"), PAGES);
  guint i;

  (void) plan;
  ff_sheet_begin_part (sheet, _ ("slips"));
  for (i = 0; i < SLIPS; i++)
    add_slip (sheet, facts, i);
  return sheet;
}
