/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rules of the house that a reader would otherwise have to watch: every file says its licence, no
 * file grows past 600 lines, every file with a text to translate is listed for it, no two headers
 * and no two types share a name, nothing at the top of the tree but what belongs there. */
#include "ff-test.h"

#include <string.h>

#define LONGEST_FILE 600

typedef void (*Visit) (const char *path, const char *from_root, const char *text, gpointer data);

static const char *root;

static gboolean
is_code (const char *name)
{
  return g_str_has_suffix (name, ".c") || g_str_has_suffix (name, ".h");
}

static gboolean
is_ours (const char *name)
{
  return is_code (name) || g_str_has_suffix (name, ".ui") || g_str_has_suffix (name, ".sql")
         || g_str_equal (name, "meson.build");
}

/* Calls `visit` for each of our files below a folder of the tree. */
static void
walk (const char *from_root, Visit visit, gpointer data)
{
  g_autofree char *folder = g_build_filename (root, from_root, NULL);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  assert_non_null (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (names, g_strdup (name));
  g_dir_close (dir);
  for (guint i = 0; i < names->len; i++)
    {
      const char *child = g_ptr_array_index (names, i);
      g_autofree char *path = g_build_filename (folder, child, NULL);
      g_autofree char *below = g_build_filename (from_root, child, NULL);
      g_autofree char *text = NULL;

      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        walk (below, visit, data);
      else if (is_ours (child) && g_file_get_contents (path, &text, NULL, NULL))
        visit (path, below, text, data);
    }
}

static void
walk_all (Visit visit, gpointer data)
{
  walk ("src", visit, data);
  walk ("tests", visit, data);
}

static void
want_licence (const char *path, const char *from_root, const char *text, gpointer data)
{
  const char *end = strchr (text, '\n');
  g_autofree char *head = g_strndup (text, end != NULL ? (gsize) (end - text) : strlen (text));

  /* In XML the declaration stands first. */
  if (strstr (head, "GPL-3.0-or-later") == NULL
      && !(g_str_has_prefix (head, "<?xml")
           && g_strstr_len (text, 300, "GPL-3.0-or-later") != NULL))
    fail_msg ("%s does not open with its licence", from_root);
}

static void
test_every_file_says_its_licence (void **state)
{
  walk_all (want_licence, NULL);
}

static void
want_short (const char *path, const char *from_root, const char *text, gpointer data)
{
  guint lines = 0;

  for (const char *p = text; *p != '\0'; p++)
    lines += *p == '\n';
  if (is_code (path) && lines > LONGEST_FILE)
    fail_msg ("%s has %u lines", from_root, lines);
}

static void
test_no_file_is_too_long (void **state)
{
  walk ("src", want_short, NULL);
}

static gboolean
has_text_to_translate (const char *path, const char *text)
{
  if (g_str_has_suffix (path, ".ui"))
    return strstr (text, "translatable=\"yes\"") != NULL;
  return is_code (path)
         && (strstr (text, "_ (\"") != NULL || strstr (text, "ngettext (") != NULL
             || strstr (text, "C_ (\"") != NULL);
}

static void
want_listed (const char *path, const char *from_root, const char *text, gpointer data)
{
  g_autofree char *line = g_strdup_printf ("\n%s\n", from_root);

  if (has_text_to_translate (path, text) && strstr (data, line) == NULL)
    fail_msg ("po/POTFILES.in does not list %s; po/list-sources writes it anew", from_root);
}

static void
test_every_text_is_listed_for_translation (void **state)
{
  g_autofree char *path = g_build_filename (root, "po", "POTFILES.in", NULL);
  g_autofree char *list = NULL;
  g_autofree char *padded = NULL;

  assert_true (g_file_get_contents (path, &list, NULL, NULL));
  padded = g_strdup_printf ("\n%s", list);
  walk ("src", want_listed, padded);
}

/* Headers are included by their bare name, so two of one name would hide each other; two types of
 * one name can't meet in one file. A forward declaration may stand in several. */
static void
want_own_name (GHashTable *seen, const char *name, const char *from_root)
{
  const char *other = g_hash_table_lookup (seen, name);

  if (other != NULL)
    fail_msg ("%s is in %s and in %s", name, other, from_root);
  g_hash_table_insert (seen, g_strdup (name), g_strdup (from_root));
}

static void
want_own_header (const char *path, const char *from_root, const char *text, gpointer seen)
{
  g_autofree char *name = g_path_get_basename (path);

  if (g_str_has_suffix (name, ".h"))
    want_own_name (seen, name, from_root);
}

static void
want_own_types (const char *path, const char *from_root, const char *text, gpointer seen)
{
  g_autoptr (GRegex) defines
      = g_regex_new ("^(?:\\} |G_DECLARE_\\w+ \\(|typedef enum \\{.*\\} )(Ff\\w+)[;,]",
                     G_REGEX_MULTILINE, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;

  if (!g_str_has_suffix (path, ".h"))
    return;
  g_regex_match (defines, text, 0, &match);
  for (; g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      g_autofree char *name = g_match_info_fetch (match, 1);

      want_own_name (seen, name, from_root);
    }
}

static void
test_no_two_headers_or_types_share_a_name (void **state)
{
  g_autoptr (GHashTable) headers
      = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GHashTable) types = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);

  walk_all (want_own_header, headers);
  walk ("src", want_own_types, types);
  assert_true (g_hash_table_size (headers) > 50);
  assert_true (g_hash_table_size (types) > 50);
}

static void
test_the_top_of_the_tree (void **state)
{
  static const char *const belongs[]
      = { "COPYING", "DEVELOPERS.md", "README.md", "data", "help",  "meson.build",
          "po",      "screenshots",   "src",       "tests" };
  GDir *dir = g_dir_open (root, 0, NULL);
  const char *name;

  assert_non_null (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      gboolean known = name[0] == '.' || g_str_has_prefix (name, "build");

      for (guint i = 0; i < G_N_ELEMENTS (belongs); i++)
        known = known || g_str_equal (name, belongs[i]);
      if (!known)
        fail_msg ("%s does not belong at the top of the tree", name);
    }
  g_dir_close (dir);
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
    cmocka_unit_test (test_every_file_says_its_licence),
    cmocka_unit_test (test_no_file_is_too_long),
    cmocka_unit_test (test_every_text_is_listed_for_translation),
    cmocka_unit_test (test_no_two_headers_or_types_share_a_name),
    cmocka_unit_test (test_the_top_of_the_tree),
  };

  return cmocka_run_group_tests_name ("house", tests, set_up, NULL);
}
