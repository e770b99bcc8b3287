/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What every test includes: cmocka with the headers it needs before itself, and asserts of our own
 * whose failures point at the line of the test. */
#pragma once

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <glib.h>

/* |got - want| <= tolerance, and nothing else: cmocka's float asserts let NaN pass. */
#define assert_close(got, want, tolerance)                                                         \
  ff_test_close ((got), (want), (tolerance), #got, __FILE__, __LINE__)

/* An error of FF_ERROR with this code whose message holds `part`. Clears it. */
#define assert_error(error, code, part)                                                            \
  ff_test_error (&(error), (int) (code), (part), __FILE__, __LINE__)

/* No error; prints its message when there is one. */
#define assert_no_error(error) ff_test_no_error ((error), __FILE__, __LINE__)

void ff_test_close (double got,
                    double want,
                    double tolerance,
                    const char *what,
                    const char *file,
                    int line);
void ff_test_error (GError **error, int code, const char *part, const char *file, int line);
void ff_test_no_error (const GError *error, const char *file, int line);

/* An empty folder of its own for a test, and its removal with all it holds. */
char *ff_test_folder_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_test_folder_remove (char *folder);

/* A seeded random number in [low, high]; the same everywhere. */
typedef struct {
  guint64 state;
} FfTestRandom;

double ff_test_random (FfTestRandom *random, double low, double high);
int ff_test_random_int (FfTestRandom *random, int low, int high);
