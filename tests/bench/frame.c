/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Test pictures: read on site while the crew waits, on a small laptop. Noise is the worst that a
 * decoder can be given; a camera's picture lies between it and the ramp. Each is read in a process
 * of its own, whose largest size is then known. */
#include <glib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "ff-frame.h"
#include "ff-test-picture.h"

#define GRANTED_MB 60

typedef struct {
  const char *name;
  FfTestFormat format;
  FfTestScene scene;
  guint width, height;
  double granted_s; /* of processor time */
} Case;

static const Case cases[] = {
  { "24 MP JPEG, ramp", FF_TEST_JPEG, FF_TEST_RAMP, 6000, 4000, 1 },
  { "24 MP JPEG, noise", FF_TEST_JPEG, FF_TEST_NOISE, 6000, 4000, 1 },
  { "24 MP PNG, noise", FF_TEST_PNG, FF_TEST_NOISE, 6000, 4000, 1 },
  { "24 MP TIFF, noise", FF_TEST_TIFF, FF_TEST_NOISE, 6000, 4000, 1 },
  { "24 MP TIFF of 16 bits", FF_TEST_TIFF_16, FF_TEST_NOISE, 6000, 4000, 1 },
  { "24 MP DNG preview, noise", FF_TEST_DNG, FF_TEST_NOISE, 6000, 4000, 1 },
  /* Held whole in memory by its nature; cameras don't write it. */
  { "24 MP progressive JPEG", FF_TEST_JPEG_PROGRESSIVE, FF_TEST_RAMP, 6000, 4000, 1 },
  { "100 MP JPEG, ramp", FF_TEST_JPEG, FF_TEST_RAMP, 11600, 8700, 5 },
};

/* The child's whole life: a little of it is the test program itself. */
static int
read_in_child (const char *path, struct rusage *ret_usage)
{
  const pid_t child = fork ();
  int status = -1;

  if (child == 0)
    {
      FfFrame frame;

      _exit (ff_frame_read (path, &frame, NULL) ? 0 : 1);
    }
  wait4 (child, &status, 0, ret_usage);
  return status;
}

static gboolean
measure (const Case *c, const char *path)
{
  const FfTestPicture picture = { c->width, c->height, c->scene };
  struct rusage usage = { 0 };
  double seconds, megabytes;

  ff_test_picture_write (path, c->format, &picture);
  if (read_in_child (path, &usage) != 0)
    {
      printf ("%s: not read\n", c->name);
      return FALSE;
    }
  seconds = (double) usage.ru_utime.tv_sec + (double) usage.ru_utime.tv_usec * 1e-6
            + (double) usage.ru_stime.tv_sec + (double) usage.ru_stime.tv_usec * 1e-6;
  megabytes = (double) usage.ru_maxrss / 1024;
  printf ("%-26s %6.2f s %6.1f MB   (granted %.0f s, %d MB)\n", c->name, seconds, megabytes,
          c->granted_s, GRANTED_MB);
  return TRUE;
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("fieldfare-bench-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "picture", NULL);
  gboolean good = TRUE;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    good = measure (&cases[i], path) && good;
  g_remove (path);
  g_rmdir (folder);
  return good ? EXIT_SUCCESS : EXIT_FAILURE;
}
