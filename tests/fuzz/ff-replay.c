/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs a fuzz target over every file of its corpus, and over each of them cut short and with single
 * bytes changed after a fixed seed, so that the normal run sees what once went wrong. */
#include "ff-fuzz.h"

#include <stdio.h>
#include <string.h>

#define CHANGES 200

static guint n_files;

static void
run_over (const char *path)
{
  g_autofree char *bytes = NULL;
  gsize n, i;
  guint32 seed = 20270918;

  if (!g_file_get_contents (path, &bytes, &n, NULL))
    return;
  n_files++;
  LLVMFuzzerTestOneInput ((const uint8_t *) bytes, n);
  for (i = 0; i < n; i++)
    LLVMFuzzerTestOneInput ((const uint8_t *) bytes, i);
  for (i = 0; i < CHANGES && n > 0; i++)
    {
      g_autofree char *changed = g_memdup2 (bytes, n);

      seed = seed * 1664525u + 1013904223u;
      changed[(seed >> 8) % n] = (char) (seed >> 24);
      LLVMFuzzerTestOneInput ((const uint8_t *) changed, n);
    }
}

int
main (int argc, char **argv)
{
  g_autoptr (GDir) folder = argc > 1 ? g_dir_open (argv[1], 0, NULL) : NULL;
  const char *name;

  while (folder != NULL && (name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *path = g_build_filename (argv[1], name, NULL);

      run_over (path);
    }
  printf ("1..1\n%s 1 - %u files of the corpus, each cut and changed\n",
          n_files > 0 ? "ok" : "not ok", n_files);
  return n_files > 0 ? 0 : 1;
}
