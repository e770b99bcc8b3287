/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All sheets of a day from facts and plan to the PDF: the demo day, and one of forty shots more. */
#include <glib/gstdio.h>
#include <stdio.h>
#include <sys/resource.h>

#include "ff-brief.h"
#include "ff-fixture.h"

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
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("ff-bench-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "brief.pdf", NULL);
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (FfFixture) forty = ff_fixture_hostile ("the mill from the sea", 40);
  struct rusage before, after;

  getrusage (RUSAGE_SELF, &before);
  measure ("all sheets, demo day", demo, path, 300);
  measure ("all sheets, 40 shots more", forty, path, 1000);
  getrusage (RUSAGE_SELF, &after);
  printf ("%-28s %.1f MB over the base     (granted 80 MB)\n", "memory at most",
          (double) (after.ru_maxrss - before.ru_maxrss) / 1024);
  g_remove (path);
  g_rmdir (folder);
  return 0;
}
