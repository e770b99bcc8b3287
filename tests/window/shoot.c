/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Takes pictures of the window on the demo day: shoot FOLDER PAGE[:ROW] [LOOK [WIDTH HEIGHT]].
 * With a row, counted from 1, that row of the page's first list is opened. Without a look: all four,
 * wide and narrow. Files are PAGE[-ROW]-LOOK-WIDTHxHEIGHT.png. */
#include <stdio.h>
#include <stdlib.h>

#include "ff-pack-page.h"
#include "ff-stage.h"

static const char *const looks[] = { "light", "dark", "daylight", "night" };

static void
open_row (FfStage *stage, int number)
{
  GtkWidget *page = GTK_WIDGET (ff_window_get_page (stage->window));
  GtkListBox *list = GTK_LIST_BOX (ff_stage_find (page, GTK_TYPE_LIST_BOX, NULL));
  GtkListBoxRow *row = list != NULL ? gtk_list_box_get_row_at_index (list, number - 1) : NULL;

  if (row == NULL)
    return;
  gtk_list_box_select_row (list, row);
  g_signal_emit_by_name (list, "row-activated", row);
  ff_stage_settle ();
}

/* A page that works something out for itself shows it a moment later. */
static gboolean
is_there (gpointer stage)
{
  FfPage *page = ff_window_get_page (((FfStage *) stage)->window);

  return !FF_IS_PACK_PAGE (page) || ff_pack_page_list (FF_PACK_PAGE (page)) != NULL;
}

static void
take (const char *folder, const char *what, const char *look, int width, int height)
{
  FfStage *stage = ff_stage_new (TRUE, width, height);
  g_auto (GStrv) parts = g_strsplit (what, ":", 2);
  const char *page = parts[0], *row = parts[1];
  g_autofree char *name = g_strdup_printf ("%s%s%s-%s-%dx%d.png", page, row != NULL ? "-" : "",
                                           row != NULL ? row : "", look, width, height);
  g_autofree char *path = g_build_filename (folder, name, NULL);

  ff_looks_choose (ff_looks_get (), look);
  ff_keeper_set_initials (stage->keeper, "MO");
  if (!g_str_equal (page, "jobs"))
    ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, page);
  ff_stage_wait (is_there, stage);
  ff_stage_settle ();
  if (row != NULL)
    open_row (stage, atoi (row));
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
      fprintf (stderr, "usage: shoot FOLDER PAGE[:ROW] [LOOK [WIDTH HEIGHT]], with a display\n");
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
