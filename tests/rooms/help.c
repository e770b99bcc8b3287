/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The help holds what the program points at: each page of the window has the page of the help that
 * it names, each page there is gets installed and is about what its name says, each key stands in
 * the list of keys. */
#include "ff-test.h"

#include <string.h>

static const char *root;

static char *
read_text (const char *from_root)
{
  g_autofree char *path = g_build_filename (root, from_root, NULL);
  char *text = NULL;

  if (!g_file_get_contents (path, &text, NULL, NULL))
    fail_msg ("%s can't be read", from_root);
  return text;
}

/* The names in a folder of the tree that end so, in order. */
static GPtrArray *
list_names (const char *from_root, const char *suffix)
{
  g_autofree char *folder = g_build_filename (root, from_root, NULL);
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  assert_non_null (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, suffix))
      g_ptr_array_add (names, g_strdup (name));
  g_dir_close (dir);
  return names;
}

/* Pages of the window */

/* What stands in a source between `before` and the next quotation mark; NULL: nowhere. */
static char *
find_quoted (const char *text, const char *before)
{
  const char *start = strstr (text, before);
  const char *end = start != NULL ? strchr (start + strlen (before), '"') : NULL;

  if (end == NULL)
    return NULL;
  start += strlen (before);
  return g_strndup (start, (gsize) (end - start));
}

static guint
check_page_of_window (const char *folder, const char *file)
{
  g_autofree char *from_root = g_build_filename ("src/window/pages", folder, file, NULL);
  g_autofree char *source = read_text (from_root);
  g_autofree char *name = find_quoted (source, ".help = \"");
  g_autofree char *page = NULL;
  g_autofree char *path = NULL;

  if (name == NULL)
    return 0;
  page = g_strconcat (name, ".page", NULL);
  path = g_build_filename (root, "help/C", page, NULL);
  if (!g_file_test (path, G_FILE_TEST_IS_REGULAR))
    fail_msg ("%s names the help page “%s”; help/C/%s is missing", from_root, name, page);
  return 1;
}

static void
test_every_page_of_the_window_has_its_help (void **state)
{
  g_autoptr (GPtrArray) folders = list_names ("src/window/pages", "");

  assert_true (folders->len > 0);
  for (guint i = 0; i < folders->len; i++)
    {
      const char *folder = g_ptr_array_index (folders, i);
      g_autofree char *from_root = g_build_filename ("src/window/pages", folder, NULL);
      g_autoptr (GPtrArray) files = list_names (from_root, ".c");
      guint found = 0;

      for (guint j = 0; j < files->len; j++)
        found += check_page_of_window (folder, g_ptr_array_index (files, j));
      if (found != 1)
        fail_msg ("%s names %u pages of the help, not one", from_root, found);
    }
}

/* Pages of the help */

static void
test_every_help_page_is_installed (void **state)
{
  g_autofree char *build = read_text ("help/meson.build");
  g_autoptr (GPtrArray) pages = list_names ("help/C", ".page");

  assert_true (pages->len > 0);
  for (guint i = 0; i < pages->len; i++)
    {
      const char *page = g_ptr_array_index (pages, i);
      g_autofree char *line = g_strdup_printf ("'C/%s'", page);

      if (strstr (build, line) == NULL)
        fail_msg ("help/meson.build does not list C/%s", page);
    }
}

static void
test_every_help_page_has_its_name_and_licence (void **state)
{
  g_autoptr (GPtrArray) pages = list_names ("help/C", ".page");

  for (guint i = 0; i < pages->len; i++)
    {
      const char *page = g_ptr_array_index (pages, i);
      g_autofree char *from_root = g_build_filename ("help/C", page, NULL);
      g_autofree char *text = read_text (from_root);
      g_autofree char *name = g_strndup (page, strlen (page) - strlen (".page"));
      g_autofree char *id = g_strdup_printf (" id=\"%s\">", name);

      if (strstr (text, id) == NULL)
        fail_msg ("%s does not have%s in its first element", from_root, id);
      if (g_strstr_len (text, 300, "GPL-3.0-or-later") == NULL
          || strstr (text, "href=\"legal.xml\"") == NULL)
        fail_msg ("%s does not say its licence", from_root);
    }
}

/* Keys */

static void
test_every_key_stands_in_the_help (void **state)
{
  g_autofree char *source = read_text ("src/window/ff-shortcuts.c");
  g_autofree char *help = read_text ("help/C/keys.page");
  const char *end = strstr (source, "\n};\n");
  guint found = 0;

  assert_non_null (end);
  for (const char *at = source; (at = g_strstr_len (at, end - at, "N_ (\"")) != NULL; at++, found++)
    {
      g_autofree char *what = find_quoted (at, "N_ (\"");
      g_autofree char *cell = g_strdup_printf ("<td><p>%s</p></td>", what);

      if (strstr (help, cell) == NULL)
        fail_msg ("help/C/keys.page does not have the key for “%s”", what);
    }
  assert_true (found > 5);
}

static int
set_up (void **state)
{
  root = g_getenv ("FF_TEST_SOURCE_DIR");
  return root != NULL ? 0 : -1;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_every_page_of_the_window_has_its_help),
    cmocka_unit_test (test_every_help_page_is_installed),
    cmocka_unit_test (test_every_help_page_has_its_name_and_licence),
    cmocka_unit_test (test_every_key_stands_in_the_help),
  };

  return cmocka_run_group_tests_name ("help", tests, set_up, NULL);
}
