/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All sheets of a day from facts and plan to the PDF: the demo day, and one of forty shots more. Beside
 * them the same words in the same sizes through the headless converter of an office suite, where one
 * is installed. */
#include <glib/gstdio.h>
#include <stdio.h>
#include <sys/resource.h>

#include "ff-brief.h"
#include "ff-fixture.h"
#include "ff-sheets.h"

#define ROUNDS 5

static void
print_all (const FfFixture *fixture, const char *path)
{
  g_autoptr (FfBrief) brief
      = ff_brief_new (&fixture->facts, &fixture->plan, FF_READER_ALL, FF_PAPER_A4, NULL);

  if (brief == NULL || !ff_brief_write_pdf (brief, path, NULL))
    g_error ("%s: not written", path);
}

static void
append_sheet (GString *html, FfSheet *taken)
{
  g_autoptr (FfSheet) sheet = taken;

  g_string_append (html, "<div style='page-break-after: always'>\n");
  for (guint b = 0; b < sheet->blocks->len; b++)
    {
      const FfSheetBlock *block = g_ptr_array_index (sheet->blocks, b);

      for (guint c = 0; c < block->cells->len; c++)
        {
          const FfCell *cell = g_ptr_array_index (block->cells, c);

          for (guint t = 0; t < cell->texts->len; t++)
            {
              const FfText *text = g_ptr_array_index (cell->texts, t);
              g_autofree char *words = g_markup_escape_text (text->text->str, -1);

              g_string_append_printf (html, "<p style='font-size: %gpt'>%s</p>\n",
                                      g_array_index (text->runs, FfRun, 0).size, words);
            }
        }
    }
  g_string_append (html, "</div>\n");
}

/* The office suite starts anew for each document, as it does for whoever has no kit. */
static void
measure_office (const FfFixture *fixture, const char *folder, double ours_ms)
{
  g_autofree char *office = g_find_program_in_path ("soffice");
  g_autofree char *page = g_build_filename (folder, "brief.html", NULL);
  g_autofree char *made = g_build_filename (folder, "brief.pdf", NULL);
  g_autoptr (GString) html = g_string_new ("<html><head><meta charset='utf-8'></head><body>\n");
  char *arguments[] = { office, (char *) "--headless", (char *) "--convert-to", (char *) "pdf",
                        (char *) "--outdir", (char *) folder, page, NULL };
  const FfSheetFacts *facts = &fixture->facts;
  gint64 start;
  int status = -1;

  if (office == NULL)
    {
      printf ("%-28s not installed\n", "an office suite's converter");
      return;
    }
  append_sheet (html, ff_lead_sheet (facts, &fixture->plan));
  append_sheet (html, ff_pilot_sheet (facts, &fixture->plan));
  append_sheet (html, ff_camera_sheet (facts, &fixture->plan));
  append_sheet (html, ff_observer_sheet (facts, &fixture->plan));
  append_sheet (html, ff_client_sheet (facts, &fixture->plan));
  g_string_append (html, "</body></html>\n");
  g_remove (made);
  if (!g_file_set_contents (page, html->str, (gssize) html->len, NULL))
    g_error ("%s: not written", page);
  start = g_get_monotonic_time ();
  if (!g_spawn_sync (NULL, arguments, NULL,
                     G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, NULL,
                     NULL, &status, NULL)
      || status != 0 || !g_file_test (made, G_FILE_TEST_EXISTS))
    printf ("%-28s failed\n", "an office suite's converter");
  else
    {
      const double took = (double) (g_get_monotonic_time () - start) / 1000;

      printf ("%-28s %7.0f ms, %.0f times ours\n", "an office suite's converter", took,
              took / ours_ms);
    }
  g_remove (page);
}

/* Gives the best of the rounds, in milliseconds. */
static double
measure (const char *what, const FfFixture *fixture, const char *path, double granted_ms)
{
  double first = 0, best = G_MAXDOUBLE;

  for (int i = 0; i < ROUNDS; i++)
    {
      const gint64 start = g_get_monotonic_time ();
      double took;

      print_all (fixture, path);
      took = (double) (g_get_monotonic_time () - start) / 1000;
      first = i == 0 ? took : first;
      best = MIN (best, took);
    }
  printf ("%-28s first %7.1f ms, best %7.1f ms  (granted %g ms)\n", what, first, best, granted_ms);
  return best;
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("ff-bench-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "brief.pdf", NULL);
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (FfFixture) forty = ff_fixture_hostile ("the mill from the sea", 40);
  struct rusage before, after;
  double ours_ms;

  getrusage (RUSAGE_SELF, &before);
  ours_ms = measure ("all sheets, demo day", demo, path, 300);
  measure ("all sheets, 40 shots more", forty, path, 1000);
  getrusage (RUSAGE_SELF, &after);
  printf ("%-28s %.1f MB over the base     (granted 80 MB)\n", "memory at most",
          (double) (after.ru_maxrss - before.ru_maxrss) / 1024);
  measure_office (demo, folder, ours_ms);
  g_remove (path);
  g_rmdir (folder);
  return 0;
}
