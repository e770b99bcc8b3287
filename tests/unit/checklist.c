/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The text of a checklist: what it means, and where it is wrong. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-checklist-advice.h"
#include "ff-checklist.h"
#include "ff-error.h"
#include "ff-starter-lists.h"

static const char whole[]
    = "<!-- a remark -->\n"
      "# Turn-round: fit to lift again?\n\n"
      "- Mode: challenge and response\n"
      "- Place in the day: turn-round\n"
      "- Version: 2\n- Date: 2026-11-25\n\n"
      "An example.\n\n"
      "## Aircraft\n\n"
      "- [ ] **Motors**: stopped, battery out *touch*\n\n"
      "> **Warning:** A fitted battery makes propellers live.\n"
      ">\n"
      "> Note: Fingers away.\n\n"
      "- [ ] **Battery voltage**: say it `16.4 to 16.8 V` *second person, by camera*\n"
      "- [ ] Filter: [what the plan says](plan:filter) *when two operators or night*\n\n"
      "  The ring tells.\n\n"
      "## Water *when water*\n\n"
      "- [ ] Buoyancy aid: worn\n";

static const FfCheckItem *
item_of (const FfChecklist *list, guint s, guint i)
{
  const FfCheckSection *section = g_ptr_array_index (list->sections, s);

  return g_ptr_array_index (section->items, i);
}

static void
test_every_means_is_read (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfChecklist) list = ff_checklist_parse (whole, &error);
  const FfCheckItem *motors, *battery, *filter;

  assert_no_error (error);
  assert_string_equal (list->title, "Turn-round: fit to lift again?");
  assert_int_equal (list->phase, FF_PHASE_TURN_ROUND);
  assert_string_equal (list->date, "2026-11-25");
  assert_int_equal (list->sections->len, 2);
  motors = item_of (list, 0, 0);
  assert_string_equal (motors->challenge, "Motors");
  assert_string_equal (motors->response, "stopped, battery out");
  assert_true (motors->critical && motors->touch && !motors->second);
  battery = item_of (list, 0, 1);
  assert_close (battery->value.low, 16.4, 1e-9);
  assert_string_equal (battery->value.unit, "V");
  assert_true (battery->second && battery->role == FF_ROLE_CAMERA);
  assert_int_equal (battery->guards->len, 2);
  assert_int_equal (battery->from_line, 15);
  filter = item_of (list, 0, 2);
  assert_int_equal (filter->fact, FF_FACT_FILTER);
  assert_int_equal (filter->when, 1u << FF_WHEN_OPERATORS | 1u << FF_WHEN_NIGHT);
  assert_string_equal (filter->note, "The ring tells.");
  assert_int_equal (ff_checklist_count (list, 0), 2);
  assert_int_equal (ff_checklist_count (list, 1u << FF_WHEN_WATER | 1u << FF_WHEN_NIGHT), 4);
}

typedef struct {
  const char *text, *where, *what;
} Wrong;

static const Wrong wrongs[] = {
  { "", "line 1, column 1", "# Title" },
  { "# T\n", "line 1, column 1", "## Section" },
  { "# T\n\n## A\n", "line 3, column 1", "has no item" },
  { "# T\n\n- Colour: red\n", "line 3, column 1", "Mode, Place in the day" },
  { "# T\n\n- Mode: shouted\n", "line 3, column 1", "challenge and response" },
  { "# T\n\n- [ ] A: b\n", "line 3, column 1", "before the first section" },
  { "# T\n\n## A\n\n- [x] A: b\n", "line 5, column 3", "nothing is ticked" },
  { "# T\n\n## A\n\n- A: b\n", "line 5, column 3", "- [ ] Challenge" },
  { "# T\n\n## A\n\n1. A: b\n", "line 5, column 1", "numbered list" },
  { "# T\n\n## A\n\n- [ ] A: `16.8 to 16.4 V`\n", "line 5, column", "is not a value" },
  { "# T\n\n## A\n\n- [ ] A: b *quickly*\n", "line 5, column 12", "is not a mark" },
  { "# T\n\n## A\n\n- [ ] Ä: b *quickly*\n", "line 5, column 12", "is not a mark" },
  { "# T\n\n## A\n\n- [ ] A: [x](plan:colour)\n", "line 5, column", "fact of the plan" },
  { "# T\n\n## A\n\n- [ ] A: `V` `A`\n", "line 5, column", "one thing" },
  { "# T\n\n## A\n\n- [ ] A `V`\n", "line 5, column", "behind" },
  { "# T\n\n## A\n\n- [ ] A: b *touch* c\n", "line 5, column", "behind the marks" },
  { "# T\n\n## A\n\n> Beware\n\n- [ ] A: b\n", "line 5, column 3", "Warning: " },
  { "# T\n\n## A\n\n- [ ] A: b\n\n> Warning: late\n", "line 7, column 1", "guards nothing" },
  { "# T\n\n## A\n\n- [ ] A: b\n\nWords.\n", "line 7, column 1", "words between" },
  { "# T\n\n# U\n", "line 3, column 1", "second title" },
  { "# T\n\n### U\n", "line 3, column 1", "deep" },
  { "# T\n\n```\nx\n```\n", "line 3, column 1", "no meaning" },
  { "# T\n\n- Date: 2026-02-30\n", "line 3, column 1", "2026-02-30" },
  { "# T\n\n\xff\n", "line 3, column 1", "UTF-8" },
};

static void
test_errors_say_where_and_what_is_accepted (void **state)
{
  for (guint i = 0; i < G_N_ELEMENTS (wrongs); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GError) again = NULL;

      assert_null (ff_checklist_parse (wrongs[i].text, &error));
      again = g_error_copy (error);
      assert_error (error, FF_ERROR_INPUT, wrongs[i].where);
      assert_error (again, FF_ERROR_INPUT, wrongs[i].what);
    }
}

static void
test_values (void **state)
{
  FfCheckValue value;
  g_autoptr (GError) error = NULL;

  assert_true (ff_check_value_parse ("16.4 to 16.8 V", &value, &error));
  assert_true (ff_said_within (&value, "16,4") && ff_said_within (&value, " 16.8 v "));
  assert_false (ff_said_within (&value, "16.3") || ff_said_within (&value, "16.9"));
  assert_false (ff_said_within (&value, "") || ff_said_within (&value, "16.5 A"));
  ff_check_value_clear (&value);
  assert_true (ff_check_value_parse ("at most -2 °C", &value, &error));
  assert_true (isnan (value.low) && ff_said_within (&value, "-3"));
  ff_check_value_clear (&value);
}

static void
test_what_agrees (void **state)
{
  assert_true (ff_said_agrees ("5 stops / ND32 / f5", "5"));
  assert_true (ff_said_agrees ("5 stops / ND32 / f5", "nd 32"));
  assert_true (ff_said_agrees ("5 stops / ND32 / f5", "32"));
  assert_false (ff_said_agrees ("5 stops / ND32 / f5", "4"));
  assert_false (ff_said_agrees ("5 stops / ND32 / f5", ""));
  assert_true (ff_said_agrees ("b3", "3") && ff_said_agrees ("b3", "B3"));
  assert_false (ff_said_agrees ("b13", "3"));
  assert_true (ff_said_agrees ("50 m", "50.0"));
}

/* Every way that advice speaks. */
static void
test_advice (void **state)
{
  g_autoptr (FfChecklist) list = NULL;
  g_autoptr (GPtrArray) advice = NULL;
  g_autoptr (GString) text = g_string_new ("# T\n\n- Place in the day: before take-off\n\n## A\n\n");
  g_autoptr (GString) all = g_string_new (NULL);

  for (int i = 0; i < 12; i++)
    g_string_append_printf (text, "- [ ] Item %d: checked\n", i);
  g_string_append (text, "- [ ] **Latch**\n");
  list = ff_checklist_parse (text->str, NULL);
  advice = ff_checklist_advice (list);
  for (guint i = 0; i < advice->len; i++)
    g_string_append (all, ((FfAdvice *) g_ptr_array_index (advice, i))->text);
  assert_non_null (strstr (all->str, "13 items"));
  assert_non_null (strstr (all->str, "without looking"));
  assert_non_null (strstr (all->str, "below the middle"));
  assert_non_null (strstr (all->str, "has no answer"));
  assert_non_null (strstr (all->str, "Five at most"));
  assert_non_null (strstr (all->str, "no date"));
}

static void
test_critical_items_come_first_on_request (void **state)
{
  const char *text = "# T\n\n## A\n\n- [ ] One: a\n\n> Warning: w\n\n- [ ] **Two**: b\n- [ ] Three: "
                     "c\n\n## B\n\n- [ ] Four: d\n";
  g_autofree char *moved = ff_checklist_critical_first (text, 3);
  g_autoptr (FfChecklist) list = NULL;

  assert_non_null (moved);
  list = ff_checklist_parse (moved, NULL);
  assert_string_equal (item_of (list, 0, 0)->challenge, "Two");
  assert_int_equal (item_of (list, 0, 0)->guards->len, 1);
  assert_string_equal (item_of (list, 0, 1)->challenge, "One");
  assert_string_equal (item_of (list, 1, 0)->challenge, "Four");
  assert_null (ff_checklist_critical_first (moved, 3));
}

/* What comes with the program keeps to its own advice, is dated, names its sources, says that it is an
 * example and defers. */
static void
test_starter_lists (void **state)
{
  guint phases = 0;

  assert_int_equal (ff_n_starter_lists, 22);
  for (guint i = 0; i < ff_n_starter_lists; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (FfChecklist) list = ff_checklist_parse (ff_starter_lists[i].text, &error);
      g_autoptr (GPtrArray) advice = NULL;

      if (list == NULL)
        fail_msg ("%s: %s", ff_starter_lists[i].name, error->message);
      advice = ff_checklist_advice (list);
      if (advice->len > 0)
        fail_msg ("%s:%d: %s", ff_starter_lists[i].name,
                  ((FfAdvice *) g_ptr_array_index (advice, 0))->line,
                  ((FfAdvice *) g_ptr_array_index (advice, 0))->text);
      assert_true (list->version[0] != '\0' && list->date[0] != '\0' && list->sources[0] != '\0');
      assert_non_null (strstr (g_ptr_array_index (list->remarks, 0), "example"));
      assert_non_null (strstr (g_ptr_array_index (list->remarks, 0), "come first"));
      assert_true (g_uuid_string_is_valid (ff_starter_lists[i].id));
      phases |= 1u << list->phase;
      if (list->phase == FF_PHASE_TURN_ROUND)
        assert_in_range (ff_checklist_seconds (list, ~0u), 1, 60);
    }
  assert_int_equal (phases, (1u << (FF_PHASE_EMERGENCY + 1)) - 1);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_every_means_is_read),
    cmocka_unit_test (test_errors_say_where_and_what_is_accepted),
    cmocka_unit_test (test_values),
    cmocka_unit_test (test_what_agrees),
    cmocka_unit_test (test_advice),
    cmocka_unit_test (test_starter_lists),
    cmocka_unit_test (test_critical_items_come_first_on_request),
  };

  return cmocka_run_group_tests_name ("checklist", tests, NULL, NULL);
}
