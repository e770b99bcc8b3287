/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Takes pictures of the window on the demo day: shoot FOLDER PAGE [LOOK [WIDTH HEIGHT]].
 * Without a look: all four, wide and narrow. Files are PAGE-LOOK-WIDTHxHEIGHT.png. */
#include <stdio.h>
#include <stdlib.h>

#include "ff-stage.h"

static const char *const looks[] = { "light", "dark", "daylight", "night" };

static void
take (const char *folder, const char *page, const char *look, int width, int height)
{
  FfStage *stage = ff_stage_new (TRUE, width, height);
  g_autofree char *name = g_strdup_printf ("%s-%s-%dx%d.png", page, look, width, height);
  g_autofree char *path = g_build_filename (folder, name, NULL);

  ff_looks_choose (ff_looks_get (), look);
  ff_keeper_set_initials (stage->keeper, "MO");
  if (!g_str_equal (page, "jobs"))
    ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, page);
  ff_stage_settle ();
  ff_stage_settle ();
  if (!ff_stage_picture (stage, path))
    fprintf (stderr, "no picture of %s\n", path);
  ff_stage_free (stage);
}

int
main (int argc, char **argv)
{
  if (argc < 3 || !ff_stage_start ())
    {
      fprintf (stderr, "usage: shoot FOLDER PAGE [LOOK [WIDTH HEIGHT]], with a display\n");
      return 2;
    }
  for (guint i = 0; i < G_N_ELEMENTS (looks); i++)
    {
      if (argc > 3 && !g_str_equal (argv[3], looks[i]))
        continue;
      if (argc > 5)
        {
          take (argv[1], argv[2], looks[i], atoi (argv[4]), atoi (argv[5]));
          continue;
        }
      take (argv[1], argv[2], looks[i], 1200, 800);
      take (argv[1], argv[2], looks[i], 400, 800);
    }
  return 0;
}
