/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From start to first frame: the program on the demo day beside an empty window of the same
 * library, in turns, so that both see the same machine. Granted: 1.3 times. */
#include <gio/gio.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#define ROUNDS 11
#define GRANTED 1.3

static double
run_once (const char *const *command)
{
  gint64 start = g_get_monotonic_time ();
  g_autoptr (GSubprocess) process
      = g_subprocess_newv (command, G_SUBPROCESS_FLAGS_STDERR_SILENCE, NULL);

  if (process == NULL || !g_subprocess_wait_check (process, NULL, NULL))
    {
      fprintf (stderr, "%s did not run\n", command[0]);
      exit (1);
    }
  return (double) (g_get_monotonic_time () - start) / 1000;
}

static int
compare (const void *a, const void *b)
{
  double first = *(const double *) a, second = *(const double *) b;

  return (first > second) - (first < second);
}

static double
median (double *times)
{
  qsort (times, ROUNDS, sizeof *times, compare);
  return times[ROUNDS / 2];
}

/* argv: the empty window, the program, its data folder filled before by fieldfarectl. */
int
main (int argc, char **argv)
{
  double empty[ROUNDS], ours[ROUNDS], ratio;

  if (argc < 4)
    return 2;
  for (int i = 0; i < ROUNDS; i++)
    {
      empty[i] = run_once ((const char *[]) { argv[1], NULL });
      ours[i] = run_once ((const char *[]) { argv[2], "--data-dir", argv[3],
                                             "--quit-after-first-frame", NULL });
    }
  ratio = median (ours) / median (empty);
  printf ("empty window %.0f ms, fieldfare %.0f ms: %.2f times (granted %.1f)\n", median (empty),
          median (ours), ratio, GRANTED);
  return 0;
}
