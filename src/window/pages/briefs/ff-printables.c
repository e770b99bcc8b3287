/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-printables.h"

#include <glib/gi18n-lib.h>

#define BESIDE(more) FF_READER_ALL, FF_BRIEF_ONLY | (more)

static const FfPrintable printables[] = {
  { N_ ("all roles"), FF_READER_ALL, FF_BRIEF_ALONE, FALSE, FALSE },
  { N_ ("crew lead"), FF_READER_LEAD, FF_BRIEF_ALONE, FALSE, TRUE },
  { N_ ("pilot"), FF_READER_PILOT, FF_BRIEF_ALONE, FALSE, TRUE },
  { N_ ("camera operator"), FF_READER_CAMERA, FF_BRIEF_ALONE, FALSE, TRUE },
  { N_ ("observer"), FF_READER_OBSERVER, FF_BRIEF_ALONE, FALSE, TRUE },
  { N_ ("client and cast"), FF_READER_CLIENT, FF_BRIEF_ALONE, FALSE, TRUE },
  { N_ ("spoken brief"), BESIDE (FF_BRIEF_SPOKEN), FALSE, TRUE },
  { N_ ("turn-round slips"), BESIDE (FF_BRIEF_SLIPS), FALSE, TRUE },
  { N_ ("pack list"), BESIDE (FF_BRIEF_PACK), FALSE, TRUE },
  { N_ ("checklists"), BESIDE (FF_BRIEF_LISTS), FALSE, TRUE },
  { N_ ("weather call"), BESIDE (0), TRUE, TRUE },
  { N_ ("amendments"), BESIDE (FF_BRIEF_AMENDMENTS), FALSE, TRUE },
  /* Translators: a choice of what is printed: all of it. */
  { N_ ("everything"), FF_READER_ALL,
    FF_BRIEF_SPOKEN | FF_BRIEF_SLIPS | FF_BRIEF_PACK | FF_BRIEF_LISTS | FF_BRIEF_AMENDMENTS,
    TRUE, FALSE },
};

const FfPrintable *
ff_printable (guint i)
{
  g_return_val_if_fail (i < G_N_ELEMENTS (printables), &printables[0]);
  return &printables[i];
}

guint
ff_printables_count (void)
{
  return G_N_ELEMENTS (printables);
}

GPtrArray *
ff_printable_titles (void)
{
  GPtrArray *titles = g_ptr_array_new ();

  for (guint i = 0; i < G_N_ELEMENTS (printables); i++)
    g_ptr_array_add (titles, (gpointer) _ (printables[i].title));
  g_ptr_array_add (titles, NULL);
  return titles;
}
