/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The house rule, proved: with the very command that compiles a room, the header of a room it may
 * not know does not compile, and that of each room it may know does. */
#include "ff-test.h"

#include <gio/gio.h>
#include <json-glib/json-glib.h>
#include <string.h>

/* A header of each room to try, and the rooms it may use (the table of the design). */
typedef struct {
  const char *room;
  const char *header;
  const char *may_use;
} Room;

#define KERNELS " plan lists light sky power words "

static const Room rooms[] = {
  { "words", "ff-names.h", "" },
  { "power", "ff-battery.h", " words " },
  { "sky", "ff-sun.h", " words " },
  { "light", "ff-daylight.h", " sky words " },
  { "lists", "ff-run.h", " words " },
  { "plan", "ff-advise.h", " light power words " },
  { "store", "ff-store.h", " words " },
  { "records", "ff-records.h", " store words " },
  { "day", "ff-day.h", " records" KERNELS },
  { "exchange", "ff-file.h", " records" KERNELS },
  { "brief", "ff-brief.h", " day" KERNELS },
  { "console", "ff-command.h", " day brief exchange records" KERNELS },
  { "window", "ff-split.h", " day brief exchange records" KERNELS },
};

static JsonArray *commands;
static char *folder;

static char *
path_of (const char *variable, const char *rest)
{
  return g_build_filename (g_getenv (variable), rest, NULL);
}

/* The compile command of some source of a room, as the build wrote it down; NULL while the room has
 * no source yet. */
static char *
command_of_room (const char *room)
{
  g_autofree char *mark = g_strdup_printf ("src/%s/", room);

  for (guint i = 0; i < json_array_get_length (commands); i++)
    {
      JsonObject *entry = json_array_get_object_element (commands, i);

      if (strstr (json_object_get_string_member (entry, "file"), mark) != NULL
          && strstr (json_object_get_string_member (entry, "output"), "ff-test") == NULL)
        return g_strdup (json_object_get_string_member (entry, "command"));
    }
  return NULL;
}

/* Runs the room's compile command on a text. */
static gboolean
compiles (const char *command, const char *text)
{
  g_autofree char *source = g_build_filename (folder, "try.c", NULL);
  g_auto (GStrv) words = NULL;
  g_autoptr (GPtrArray) run = g_ptr_array_new ();
  int status = -1;

  assert_true (g_file_set_contents (source, text, -1, NULL));
  assert_true (g_shell_parse_argv (command, NULL, &words, NULL));
  for (guint i = 0; words[i] != NULL; i++)
    {
      if (g_str_equal (words[i], "-o") || g_str_equal (words[i], "-MF")
          || g_str_equal (words[i], "-MQ"))
        i++;
      else if (!g_str_equal (words[i], "-c") && !g_str_equal (words[i], "-MD")
               && !g_str_has_suffix (words[i], ".c"))
        g_ptr_array_add (run, words[i]);
    }
  g_ptr_array_add (run, (char *) "-fsyntax-only");
  g_ptr_array_add (run, source);
  g_ptr_array_add (run, NULL);
  assert_true (g_spawn_sync (g_getenv ("FF_TEST_BUILD_DIR"), (char **) run->pdata, NULL,
                             G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL
                                 | G_SPAWN_STDOUT_TO_DEV_NULL,
                             NULL, NULL, NULL, NULL, &status, NULL));
  return g_spawn_check_wait_status (status, NULL);
}

static gboolean
may_use (const Room *room, const Room *other)
{
  g_autofree char *word = g_strdup_printf (" %s ", other->room);

  return room == other || strstr (room->may_use, word) != NULL;
}

/* Includes every header that the room may know; a text that must compile. */
static char *
text_of_allowed (const Room *room)
{
  GString *text = g_string_new ("extern int try_it;\n");

  for (guint i = 0; i < G_N_ELEMENTS (rooms); i++)
    if (may_use (room, &rooms[i]))
      g_string_append_printf (text, "#include \"%s\"\n", rooms[i].header);
  return g_string_free (text, FALSE);
}

/* Stops the compiler if it could find any header that the room may not know. */
static char *
text_of_forbidden (const Room *room)
{
  GString *text = g_string_new ("extern int try_it;\n");

  for (guint i = 0; i < G_N_ELEMENTS (rooms); i++)
    if (!may_use (room, &rooms[i]))
      g_string_append_printf (text, "#if __has_include (\"%s\")\n#error %s\n#endif\n",
                              rooms[i].header, rooms[i].room);
  return g_string_free (text, FALSE);
}

/* One header that the room may not know; NULL for a room that may know all. */
static const char *
wrong_header (const Room *room)
{
  for (guint i = 0; i < G_N_ELEMENTS (rooms); i++)
    if (!may_use (room, &rooms[i]))
      return rooms[i].header;
  return NULL;
}

static void
test_only_allowed_headers_compile (void **state)
{
  for (guint i = 0; i < G_N_ELEMENTS (rooms); i++)
    {
      g_autofree char *command = command_of_room (rooms[i].room);
      g_autofree char *allowed = text_of_allowed (&rooms[i]);
      g_autofree char *forbidden = text_of_forbidden (&rooms[i]);
      g_autofree char *wrong
          = g_strdup_printf ("#include \"%s\"\nextern int try_it;\n", wrong_header (&rooms[i]));

      assert_non_null (command);
      if (!compiles (command, allowed))
        fail_msg ("%s can't include a header that it may use", rooms[i].room);
      if (!compiles (command, forbidden))
        fail_msg ("%s can include a header that it may not use", rooms[i].room);
      if (compiles (command, wrong))
        fail_msg ("a wrong include compiles in %s", rooms[i].room);
    }
}

/* No file of this folder, nor of those in it, may include what lies above it. A room that is not
 * there yet has nothing to look at. */
static void
look_for_climbing (const char *dir_path)
{
  GDir *dir = g_dir_open (dir_path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *file = g_build_filename (dir_path, name, NULL);
      g_autofree char *text = NULL;

      if (g_file_test (file, G_FILE_TEST_IS_DIR))
        look_for_climbing (file);
      else if (g_file_get_contents (file, &text, NULL, NULL)
               && strstr (text, "#include \"../") != NULL)
        fail_msg ("%s climbs out of its room", file);
    }
  g_clear_pointer (&dir, g_dir_close);
}

/* An include that climbs out of its folder would get past the include paths. */
static void
test_no_include_climbs (void **state)
{
  for (guint i = 0; i < G_N_ELEMENTS (rooms); i++)
    {
      g_autofree char *part = g_build_filename ("src", rooms[i].room, NULL);
      g_autofree char *dir_path = path_of ("FF_TEST_SOURCE_DIR", part);

      look_for_climbing (dir_path);
    }
}

static int
set_up (void **state)
{
  g_autofree char *path = path_of ("FF_TEST_BUILD_DIR", "compile_commands.json");
  JsonParser *parser = json_parser_new ();

  if (!json_parser_load_from_file (parser, path, NULL))
    return -1;
  commands = json_node_get_array (json_parser_get_root (parser));
  json_array_ref (commands);
  g_object_unref (parser);
  folder = ff_test_folder_new ();
  return 0;
}

static int
tear_down (void **state)
{
  json_array_unref (commands);
  ff_test_folder_remove (folder);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_only_allowed_headers_compile),
    cmocka_unit_test (test_no_include_climbs),
  };

  return cmocka_run_group_tests_name ("rooms", tests, set_up, tear_down);
}
