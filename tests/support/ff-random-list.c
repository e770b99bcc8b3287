/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-random-list.h"

static const char *const words[] = {
  "motors",  "out",   "*",    "**b**",  "_x_",     "`V`",  "[x]",  "](plan:filter)", "<b>",
  "&amp;",   "#",     "1.",   "- [ ]",  "> note",  "\\",   "ring", "\"locked\"",     "16,7",
  "ä–ö",     "%",     "!",    "~~~",    "+",       "=",    "|a|",  "http://a.b",     "locked:pulled",
  "a_b_c",   "2)",    "é",    "(5)",    "***",     "***x", "![i]", "---",            "\xe6\x97\xa5",
};

static char *
some_words (FfTestRandom *random, int least)
{
  int n = ff_test_random_int (random, least, least + 4);
  GString *text = g_string_new (NULL);

  for (int i = 0; i < n; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? " " : "",
                            words[ff_test_random_int (random, 0, G_N_ELEMENTS (words) - 1)]);
  return g_string_free (text, FALSE);
}

static void
put_words (FfTestRandom *random, char **place, int least)
{
  g_free (*place);
  *place = some_words (random, least);
}

static gboolean
one_in (FfTestRandom *random, int n)
{
  return ff_test_random_int (random, 1, n) == 1;
}

static guint
some_when (FfTestRandom *random)
{
  return one_in (random, 3) ? (guint) ff_test_random_int (random, 0, (1 << FF_N_WHEN) - 1) : 0;
}

static void
put_value (FfTestRandom *random, FfCheckValue *value)
{
  static const char *const units[] = { "", "V", "m/s", "°C", "%" };
  int low = ff_test_random_int (random, -3000, 3000);

  value->sort = (FfValueSort) ff_test_random_int (random, 0, 2);
  if (value->sort != FF_VALUE_NUMBER)
    return;
  value->unit = g_strdup (units[ff_test_random_int (random, 0, G_N_ELEMENTS (units) - 1)]);
  if (one_in (random, 2))
    value->low = low / 100.0;
  if (one_in (random, 2))
    value->high = (low + ff_test_random_int (random, 0, 900)) / 100.0;
}

static FfCheckItem *
some_item (FfTestRandom *random)
{
  FfCheckItem *item = ff_check_item_new ();

  put_words (random, &item->challenge, 1);
  put_words (random, &item->response, 0);
  if (one_in (random, 4))
    put_words (random, &item->note, 1);
  put_value (random, &item->value);
  if (one_in (random, 3))
    item->fact = (FfFact) ff_test_random_int (random, 1, FF_N_FACTS - 1);
  item->critical = one_in (random, 3);
  item->touch = one_in (random, 4);
  item->second = one_in (random, 4);
  item->role = one_in (random, 3) ? ff_test_random_int (random, 0, 3) : -1;
  item->when = some_when (random);
  for (int n = one_in (random, 4) ? ff_test_random_int (random, 1, 3) : 0; n > 0; n--)
    {
      g_autofree char *text = some_words (random, 1);

      g_ptr_array_add (item->guards,
                       ff_guard_new ((FfGuardKind) ff_test_random_int (random, 0, 2), text));
    }
  return item;
}

static FfCheckSection *
some_section (FfTestRandom *random)
{
  g_autofree char *title = some_words (random, 1);
  FfCheckSection *section = ff_check_section_new (title);

  section->when = some_when (random);
  for (int n = ff_test_random_int (random, 1, 6); n > 0; n--)
    g_ptr_array_add (section->items, some_item (random));
  return section;
}

FfChecklist *
ff_random_list (FfTestRandom *random)
{
  FfChecklist *list = ff_checklist_new ();

  put_words (random, &list->title, 1);
  list->mode = (FfListMode) ff_test_random_int (random, 0, 1);
  list->phase = (FfPhase) ff_test_random_int (random, 0, FF_PHASE_EMERGENCY);
  put_words (random, &list->version, 0);
  put_words (random, &list->author, 0);
  put_words (random, &list->sources, 0);
  if (one_in (random, 2))
    {
      g_free (list->date);
      list->date = g_strdup_printf ("20%02d-0%d-1%d", ff_test_random_int (random, 10, 99),
                                    ff_test_random_int (random, 1, 9),
                                    ff_test_random_int (random, 0, 9));
    }
  list->when = some_when (random);
  for (int n = ff_test_random_int (random, 0, 2); n > 0; n--)
    g_ptr_array_add (list->remarks, some_words (random, 1));
  for (int n = ff_test_random_int (random, 1, 4); n > 0; n--)
    g_ptr_array_add (list->sections, some_section (random));
  return list;
}
