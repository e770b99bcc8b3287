/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Fuzz target: whatever the bytes are, a list is read or refused with a place; one that is read is
 * written so that it is read as the same list. */
#include "ff-fuzz.h"

#include <string.h>

#include "ff-checklist-advice.h"
#include "ff-checklist.h"

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autofree char *text = g_strndup ((const char *) data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (FfChecklist) list = ff_checklist_parse (text, &error), again = NULL;
  g_autoptr (GPtrArray) advice = NULL;
  g_autofree char *written = NULL;

  g_assert ((list == NULL) == (error != NULL));
  if (list == NULL)
    return 0;
  advice = ff_checklist_advice (list);
  written = ff_checklist_write (list);
  again = ff_checklist_parse (written, NULL);
  /* What is written may be longer than what can be read. */
  g_assert (again != NULL ? ff_checklist_equal (list, again)
                          : strlen (written) > FF_CHECKLIST_BYTES);
  return 0;
}
