/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The gear as CSV: random inventories come back from a file as they went in, spreadsheets are
 * understood, and what is not right is refused whole, with its line and column. */
#include "ff-random-records.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

#include "ff-csv-read.h"
#include "ff-csv.h"
#include "ff-error.h"
#include "ff-file.h"
#include "ff-gear-csv.h"

#define ROUNDS 20

static FfTestRandom dice;
static GPtrArray *nobody;

static GPtrArray *
no_items (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) ff_item_free);
}

/* ---- Round trip ---- */

static void
make_awkward (FfItem *item)
{
  static const char *const texts[] = { "=1+2", "-b1", "+49 30", "@here", "'=x", "''", "'", " blank ",
                                       "\"q\"", "a,b;c\td", "two\nlines", "--", "-5", "1,5", "=" };

  ff_set_text (&item->title, texts[ff_test_random_int (&dice, 0, G_N_ELEMENTS (texts) - 1)]);
  ff_set_text (&item->note, texts[ff_test_random_int (&dice, 0, G_N_ELEMENTS (texts) - 1)]);
}

static void
link_items (GPtrArray *items)
{
  const FfItem *camera = NULL;

  for (guint i = 0; i < items->len; i++)
    {
      FfItem *item = g_ptr_array_index (items, i);
      const FfItem *other
          = g_ptr_array_index (items, (guint) ff_test_random_int (&dice, 0, (int) items->len - 1));

      if (item->kind == FF_KIND_CAMERA)
        camera = item;
      if (other != item)
        ff_item_add_with (item, other->id);
      if (item->kind == FF_KIND_AIRCRAFT && camera != NULL)
        ff_set_text (&item->camera_id, camera->id);
    }
}

static GPtrArray *
random_inventory (void)
{
  GPtrArray *items = no_items ();
  int n = ff_test_random_int (&dice, 1, 60);

  for (int i = 0; i < n; i++)
    {
      FfKind kind = (FfKind) ff_test_random_int (&dice, 0, (int) ff_names_kind.n_names - 1);
      FfItem *item = ff_random_item (&dice, kind);

      make_awkward (item);
      item->state = (FfState) ff_test_random_int (&dice, 0, FF_STATE_RETIRED);
      if (item->state != FF_STATE_SERVICEABLE)
        ff_set_text (&item->state_why, "=cracked; \"badly\"");
      if (item->state == FF_STATE_OUT)
        ff_set_text (&item->out_until, "2027-09-19");
      item->label[ff_test_random_int (&dice, 0, 8)] = "-=;\\', "[ff_test_random_int (&dice, 0, 6)];
      g_ptr_array_add (items, item);
    }
  link_items (items);
  return items;
}

static void
assert_same (const FfItem *a, const FfItem *b)
{
  const FfFields *own = ff_item_kind_fields (a->kind);

  assert_true (ff_fields_equal (&ff_item_fields, a, b));
  assert_true (ff_fields_equal (&ff_item_state_fields, a, b));
  assert_true (own == NULL || ff_fields_equal (own, a, b));
  assert_true (ff_item_same_with (a, b));
}

static const FfItem *
find (GPtrArray *items, const char *id)
{
  for (guint i = 0; i < items->len; i++)
    if (g_str_equal (((FfItem *) g_ptr_array_index (items, i))->id, id))
      return g_ptr_array_index (items, i);
  return NULL;
}

static void
test_random_inventories_come_back (void **state)
{
  for (int round = 0; round < ROUNDS; round++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *folder = ff_test_folder_new ();
      g_autoptr (GPtrArray) items = random_inventory ();
      g_autofree char *text = ff_gear_csv_write (items, nobody);
      g_autoptr (GPtrArray) none = no_items ();
      g_autoptr (FfGearImport) import = ff_gear_csv_read (text, none, nobody, &error);
      g_autoptr (FfGearImport) again = NULL;
      g_autoptr (GPtrArray) after = NULL;
      FfStore *store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);

      assert_no_error (error);
      assert_int_equal (import->added, items->len);
      ff_gear_import_store (import, store, "MO", 1000, &error);
      assert_no_error (error);
      after = ff_items_load (store, &error);
      assert_int_equal (after->len, items->len);
      for (guint i = 0; i < items->len; i++)
        {
          const FfItem *item = g_ptr_array_index (items, i);

          assert_same (item, find (after, item->id));
        }
      /* The same file again brings nothing. */
      again = ff_gear_csv_read (text, after, nobody, &error);
      assert_no_error (error);
      assert_int_equal (again->changes->len, 0);
      assert_int_equal (again->same, items->len);
      ff_records_close (store);
      ff_test_folder_remove (g_steal_pointer (&folder));
    }
}

/* What a spreadsheet would run: it begins with one of these and is no number. */
static gboolean
would_run (const char *cell, gsize length)
{
  g_autofree char *text = g_strndup (cell, length);

  return *text != '\0' && strchr ("=+-@", *text) != NULL
         && strspn (text, "+-.0123456789") != strlen (text);
}

/* Splits by hand, so that nothing that is tested takes an apostrophe away. */
static guint
count_running (const char *text)
{
  gboolean quoted = FALSE;
  const char *start = text;
  guint n = 0;

  for (const char *p = text; *p != '\0'; p++)
    {
      if (*p == '"')
        quoted = !quoted;
      if (quoted || strchr (",\r\n", *p) == NULL)
        continue;
      if (*start == '"')
        start++;
      n += would_run (start, (gsize) (p - start));
      start = p + 1;
    }
  return n;
}

static void
test_nothing_is_run_by_a_spreadsheet (void **state)
{
  assert_int_equal (count_running ("=1+2,-5,\"=a\",b\r\n+x\r\n"), 3);
  for (int round = 0; round < ROUNDS; round++)
    {
      g_autoptr (GPtrArray) items = random_inventory ();
      g_autofree char *text = ff_gear_csv_write (items, nobody);

      assert_int_equal (count_running (text), 0);
    }
}

static void
test_apostrophes_are_undone (void **state)
{
  static const char *const texts[] = { "=1", "'=1", "''=1", "'", "it's", "-5", "-x", "", "'a" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GString) row = g_string_new (NULL);
      g_autoptr (FfCsvTable) table = NULL;
      const FfCsvRow *back;

      ff_csv_row (row, (const char *const[]) { texts[i], "end", NULL });
      assert_true (*row->str != '=' && (*row->str != '-' || texts[i][1] == '5'));
      table = ff_csv_read (row->str, 100, 10, NULL);
      back = g_ptr_array_index (table->rows, 0);
      assert_string_equal (g_ptr_array_index (back->cells, 0), texts[i]);
    }
}

/* ---- Spreadsheets ---- */

static FfGearImport *
read_new (const char *text, GError **error)
{
  g_autoptr (GPtrArray) none = no_items ();

  return ff_gear_csv_read (text, none, nobody, error);
}

static void
test_a_spreadsheet_of_the_continent (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfGearImport) import = read_new ("\xef\xbb\xbfLabel;Kind;mass_kg;volts;note\r\n"
                                              "b1;Battery;0,42;14,8;\"one; \"\"two\"\"\r\nthree\"\r\n"
                                              "\r\n"
                                              "b2;battery;;14.8;\r\n",
                                              &error);
  const FfItem *first;

  assert_no_error (error);
  assert_int_equal (import->added, 2);
  first = ((FfGearChange *) g_ptr_array_index (import->changes, 0))->item;
  assert_close (first->mass_kg, 0.42, 0);
  assert_close (first->volts, 14.8, 0);
  assert_string_equal (first->note, "one; \"two\"\nthree");
  assert_true (isnan (((FfGearChange *) g_ptr_array_index (import->changes, 1))->item->mass_kg));
  assert_int_equal (((FfGearChange *) g_ptr_array_index (import->changes, 1))->line, 5);
}

static void
want_refusal (const char *text, const char *part)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfGearImport) import = read_new (text, &error);

  assert_null (import);
  assert_error (error, FF_ERROR_INPUT, part);
}

static void
test_what_is_wrong_is_said_with_its_place (void **state)
{
  g_autofree char *long_cell = g_strnfill (10000000, 'x');
  g_autofree char *with_long = g_strconcat ("label,kind\nb1,", long_cell, NULL);

  want_refusal ("", "line 1");
  want_refusal ("kind\nbattery\n", "a column “label”");
  want_refusal ("label,kind,colour\n", "line 1, column 3 (colour)");
  want_refusal ("label,kind,label\n", "each column once");
  want_refusal ("label,kind\nb1,spoon\n", "line 2, column 2 (kind): found “spoon”; accepted: aircraft");
  want_refusal ("label,kind,volts\nb1,battery,14.8\nb2,battery,abc\n",
                "line 3, column 3 (volts): found “abc”");
  want_refusal ("label,kind,volts\nb1,battery,nan\n", "found “nan”");
  want_refusal ("label,kind,milliamp_hours\nb1,battery,\"4,700\"\n", "found “4,700”");
  want_refusal ("label,kind,usable_minutes\nb1,battery,17.5\n", "a whole number");
  want_refusal ("label,kind,stops\nb1,battery,3\n", "an item of this kind does not have it");
  want_refusal ("label,kind,valid_until\nD1,document,31.12.2027\n", "YYYY-MM-DD");
  want_refusal ("label,kind\nb1,battery\nB1,card\n", "a label that no other item has");
  want_refusal ("label,kind\nb1,battery,more\n", "line 2, column 3");
  want_refusal ("label,kind,goes_with\nA1,aircraft,P1\n", "line 2, column 3 (goes_with)");
  want_refusal ("label,kind,state\nb1,battery,quarantined\n", "a reason of the state");
  want_refusal ("label,kind\n\"b1\"x,battery\n", "line 2, column 1: found a quote");
  want_refusal ("label,kind\n\"b1,battery\n", "ends inside a quoted cell");
  want_refusal ("label,kind\nb\x01,battery\n", "line 2, column 1 (label)");
  want_refusal ("label,kind,apertures\nK1,camera,\n", "line 2: item K1");
  want_refusal (with_long, "line 2, column 2: the cell is too long");
}

/* Bytes that are no text do not come as far as the parser. */
static void
test_hostile_files_are_refused (void **state)
{
  static const struct {
    const char *bytes;
    gssize length;
  } files[] = {
    { "label,kind\nb\0001,battery\n", 21 },
    { "label,kind\n\xff\xfe,battery\n", 21 },
    { "label,kind\n\xc0\x80,battery\n", 21 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *folder = ff_test_folder_new ();
      g_autofree char *path = g_build_filename (folder, "x.csv", NULL);

      assert_true (g_file_set_contents (path, files[i].bytes, files[i].length, NULL));
      assert_null (ff_file_read (path, FF_GEAR_CSV_MOST, &error));
      assert_error (error, FF_ERROR_INPUT, "");
      ff_test_folder_remove (g_steal_pointer (&folder));
    }
}

/* A byte of a good file changed, cut or doubled: read or refused, never anything else. */
static void
test_broken_files (void **state)
{
  g_autoptr (GPtrArray) items = random_inventory ();
  g_autofree char *text = ff_gear_csv_write (items, nobody);
  gsize length = strlen (text);

  for (int round = 0; round < 300; round++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *broken = g_strdup (text);
      g_autofree char *valid = NULL;
      g_autoptr (FfGearImport) import = NULL;

      for (int i = 0; i < 3; i++)
        broken[ff_test_random_int (&dice, 0, (int) length - 1)]
            = (char) ff_test_random_int (&dice, 1, 127);
      if (round % 3 == 0)
        broken[ff_test_random_int (&dice, 0, (int) length - 1)] = '\0';
      valid = g_utf8_make_valid (broken, -1);
      import = read_new (valid, &error);
      assert_true ((import != NULL) != (error != NULL));
    }
}

/* ---- Into a store that is not empty ---- */

static void
test_changes_are_said_before_they_are_made (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) items = no_items ();
  g_autoptr (FfGearImport) import = NULL;
  const FfGearChange *change;
  FfItem *battery = ff_item_new (FF_KIND_BATTERY);
  FfItem *card = ff_item_new (FF_KIND_CARD);

  ff_set_text (&battery->label, "b1");
  ff_set_text (&battery->note, "kept");
  ff_set_text (&card->label, "C1");
  card->capacity_gb = 64;
  g_ptr_array_add (items, battery);
  g_ptr_array_add (items, card);
  import = ff_gear_csv_read ("label,kind,volts,state,state_why\nB1,,14.8,defect,latch\nb2,battery,,,\n",
                             items, nobody, &error);
  assert_no_error (error);
  assert_int_equal (import->added, 1);
  assert_int_equal (import->changed, 1);
  change = g_ptr_array_index (import->changes, 0);
  assert_false (change->is_new);
  assert_true (change->has_event);
  assert_string_equal (change->item->note, "kept");
  assert_true (g_ptr_array_find_with_equal_func (change->fields, "volts", g_str_equal, NULL));
  assert_false (g_ptr_array_find_with_equal_func (change->fields, "note", g_str_equal, NULL));
  /* What is there is only looked at. */
  assert_string_equal (battery->label, "b1");
  assert_true (isnan (battery->volts));
  assert_null (ff_gear_csv_read ("label,kind\nC1,battery\n", items, nobody, &error));
  assert_error (error, FF_ERROR_INPUT, "accepted: card");
}

static void
test_all_or_nothing (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = ff_test_folder_new ();
  FfStore *store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);
  g_autoptr (FfItem) battery = ff_item_new (FF_KIND_BATTERY);
  g_autoptr (GPtrArray) items = NULL;
  g_autoptr (GPtrArray) after = NULL;
  g_autoptr (FfGearImport) import = NULL;

  ff_set_text (&battery->label, "b1");
  assert_true (ff_item_save (store, battery, &error));
  assert_true (ff_item_set_state (store, battery->id, FF_STATE_QUARANTINED, "swollen", NULL, NULL,
                                  "JV", 1, &error));
  items = ff_items_load (store, &error);
  import = ff_gear_csv_read ("label,kind,state,state_why\nb7,battery,,\nb1,battery,serviceable,ok\n",
                             items, nobody, &error);
  assert_no_error (error);
  /* Nobody rectified it: the new one is not stored, either. */
  assert_false (ff_gear_import_store (import, store, "", 2, &error));
  assert_error (error, FF_ERROR_INPUT, "line 3: it was quarantined");
  after = ff_items_load (store, NULL);
  assert_int_equal (after->len, 1);
  ff_records_close (store);
  ff_test_folder_remove (g_steal_pointer (&folder));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_random_inventories_come_back),
    cmocka_unit_test (test_nothing_is_run_by_a_spreadsheet),
    cmocka_unit_test (test_apostrophes_are_undone),
    cmocka_unit_test (test_a_spreadsheet_of_the_continent),
    cmocka_unit_test (test_what_is_wrong_is_said_with_its_place),
    cmocka_unit_test (test_hostile_files_are_refused),
    cmocka_unit_test (test_broken_files),
    cmocka_unit_test (test_changes_are_said_before_they_are_made),
    cmocka_unit_test (test_all_or_nothing),
  };

  dice.state = 20270918;
  nobody = g_ptr_array_new ();
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", FALSE);
  return cmocka_run_group_tests_name ("gear-csv", tests, NULL, NULL);
}
