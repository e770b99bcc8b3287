/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the help is, and what is said where there is none. */
#include "ff-help.h"
#include "ff-test.h"

#include <glib/gstdio.h>
#include <string.h>

/* A home of our own, without any help: set before GLib looks. */
static char *home;

static void
test_address_of_a_page (void **state)
{
  g_autofree char *day = ff_help_address ("day");
  g_autofree char *first = ff_help_address (NULL);

  assert_string_equal (day, "help:fieldfare/day");
  assert_string_equal (first, "help:fieldfare/index");
}

static void
test_help_that_is_not_installed_is_said (void **state)
{
  g_autofree char *sentence = ff_help_show ("day");

  assert_non_null (sentence);
  assert_non_null (strstr (sentence, "help/C"));
}

static void
test_installed_help_is_found (void **state)
{
  const char *const dirs[] = { "/nowhere", home, NULL };
  g_autofree char *help = g_build_filename (home, "help", NULL);
  g_autofree char *english = g_build_filename (help, "C", NULL);
  g_autofree char *folder = g_build_filename (english, "fieldfare", NULL);
  g_autofree char *page = g_build_filename (folder, "index.page", NULL);

  assert_false (ff_help_is_in (dirs));
  assert_int_equal (g_mkdir_with_parents (folder, 0700), 0);
  assert_false (ff_help_is_in (dirs));
  assert_true (g_file_set_contents (page, "<page/>", -1, NULL));
  assert_true (ff_help_is_in (dirs));
  g_unlink (page);
  g_rmdir (folder);
  g_rmdir (english);
  g_rmdir (help);
}

static int
set_up (void **state)
{
  home = g_dir_make_tmp ("fieldfare-help-XXXXXX", NULL);
  return home != NULL && g_setenv ("XDG_DATA_HOME", home, TRUE)
                 && g_setenv ("XDG_DATA_DIRS", home, TRUE)
             ? 0
             : -1;
}

static int
tear_down (void **state)
{
  g_rmdir (home);
  g_free (home);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_address_of_a_page),
    cmocka_unit_test (test_help_that_is_not_installed_is_said),
    cmocka_unit_test (test_installed_help_is_found),
  };

  return cmocka_run_group_tests_name ("help", tests, set_up, tear_down);
}
