/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A list that is written is read as the same list, and written the same again. */
#include "ff-random-list.h"

#include <string.h>

#define LISTS 4000

static void
test_random_lists_come_back (void **state)
{
  FfTestRandom random = { 20261125 };

  for (int i = 0; i < LISTS; i++)
    {
      g_autoptr (FfChecklist) list = ff_random_list (&random);
      g_autofree char *text = ff_checklist_write (list);
      g_autoptr (GError) error = NULL;
      g_autoptr (FfChecklist) read = ff_checklist_parse (text, &error);
      g_autofree char *again = NULL;

      if (read == NULL || !ff_checklist_equal (list, read))
        fail_msg ("list %d: %s\n%s", i, error != NULL ? error->message : "not the same", text);
      again = ff_checklist_write (read);
      assert_string_equal (again, text);
    }
}

/* Whatever is done to a text, it is read or refused with a place. */
static void
test_damaged_lists_are_read_or_refused (void **state)
{
  FfTestRandom random = { 7 };

  for (int i = 0; i < LISTS; i++)
    {
      g_autoptr (FfChecklist) list = ff_random_list (&random);
      g_autofree char *text = ff_checklist_write (list);
      g_autoptr (GError) error = NULL;
      g_autoptr (FfChecklist) read = NULL;
      int length = (int) strlen (text);

      for (int n = ff_test_random_int (&random, 1, 6); n > 0; n--)
        text[ff_test_random_int (&random, 0, length - 1)]
            = "\n\n*`[]>-#: \\\x80x"[ff_test_random_int (&random, 0, 13)];
      read = ff_checklist_parse (text, &error);
      assert_true (read != NULL || g_str_has_prefix (error->message, "line "));
    }
}

static void
test_moving_critical_items_keeps_all (void **state)
{
  FfTestRandom random = { 99 };
  int moved = 0;

  for (int i = 0; i < LISTS; i++)
    {
      g_autoptr (FfChecklist) list = ff_random_list (&random), read = NULL, after = NULL;
      g_autofree char *text = ff_checklist_write (list);
      g_autofree char *other = NULL;
      const FfCheckSection *section;
      gboolean plain = FALSE;

      read = ff_checklist_parse (text, NULL);
      section = g_ptr_array_index (read->sections, 0);
      other = ff_checklist_critical_first (text, section->line);
      if (other == NULL)
        continue;
      moved++;
      after = ff_checklist_parse (other, NULL);
      section = g_ptr_array_index (after->sections, 0);
      assert_int_equal (ff_checklist_count (after, ~0u), ff_checklist_count (list, ~0u));
      for (guint n = 0; n < section->items->len; n++)
        {
          const FfCheckItem *item = g_ptr_array_index (section->items, n);

          assert_false (item->critical && plain);
          plain = plain || !item->critical;
        }
    }
  assert_true (moved > LISTS / 10);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_random_lists_come_back),
    cmocka_unit_test (test_damaged_lists_are_read_or_refused),
    cmocka_unit_test (test_moving_critical_items_keeps_all),
  };

  return cmocka_run_group_tests_name ("random checklists", tests, NULL, NULL);
}
