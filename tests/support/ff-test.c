/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-test.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"

void
ff_test_close (double got,
               double want,
               double tolerance,
               const char *what,
               const char *file,
               int line)
{
  if (fabs (got - want) <= tolerance)
    return;
  print_error ("%s: got %.17g, want %.17g within %.3g\n", what, got, want, tolerance);
  _fail (file, line);
}

void
ff_test_error (GError **error, int code, const char *part, const char *file, int line)
{
  gboolean right = *error != NULL && g_error_matches (*error, FF_ERROR, code)
                   && strstr ((*error)->message, part) != NULL;

  if (!right)
    {
      print_error ("want an error %d with “%s”, got: %s\n", code, part,
                   *error != NULL ? (*error)->message : "none");
      _fail (file, line);
    }
  g_clear_error (error);
}

void
ff_test_no_error (const GError *error, const char *file, int line)
{
  if (error == NULL)
    return;
  print_error ("unexpected error: %s\n", error->message);
  _fail (file, line);
}

char *
ff_test_folder_new (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("fieldfare-test-XXXXXX", &error);

  assert_no_error (error);
  return folder;
}

static void
remove_tree (const char *path)
{
  GDir *dir = g_file_test (path, G_FILE_TEST_IS_SYMLINK) ? NULL : g_dir_open (path, 0, NULL);
  const char *name;

  if (dir != NULL)
    {
      while ((name = g_dir_read_name (dir)) != NULL)
        {
          g_autofree char *child = g_build_filename (path, name, NULL);

          remove_tree (child);
        }
      g_dir_close (dir);
    }
  g_remove (path);
}

void
ff_test_folder_remove (char *folder)
{
  remove_tree (folder);
  g_free (folder);
}

/* SplitMix64 (Steele, Lea, Flood 2014): small, seeded, the same on every machine. */
static guint64
next_random (FfTestRandom *random)
{
  guint64 z = (random->state += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15));

  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

double
ff_test_random (FfTestRandom *random, double low, double high)
{
  return low + (high - low) * ((double) (next_random (random) >> 11) / 9007199254740992.0);
}

int
ff_test_random_int (FfTestRandom *random, int low, int high)
{
  return low + (int) (next_random (random) % (guint64) (high - low + 1));
}
