/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-test.h"

#include <math.h>

#include "ff-json.h"

static void
test_numbers_are_short_and_read_back (void **state)
{
  g_autoptr (FfJson) json = ff_json_new ();
  g_autofree char *text = NULL;

  ff_json_number (json, "tenth", 0.1);
  ff_json_number (json, "third", 1.0 / 3.0);
  ff_json_number (json, "two", 2);
  ff_json_rounded (json, "rounded", 5.27499, 2);
  ff_json_rounded (json, "zero", -0.001, 2);
  ff_json_number (json, "nothing", NAN);
  ff_json_number (json, "too_much", INFINITY);
  text = ff_json_finish (json);
  assert_string_equal (text, "{\n  \"tenth\": 0.1,\n  \"third\": 0.3333333333333333,\n"
                             "  \"two\": 2.0,\n  \"rounded\": 5.27,\n  \"zero\": 0.0,\n"
                             "  \"nothing\": null,\n  \"too_much\": null\n}\n");
}

static void
test_texts_are_escaped_and_nested (void **state)
{
  g_autoptr (FfJson) json = ff_json_new ();
  g_autofree char *text = NULL;

  ff_json_begin_array (json, "list");
  ff_json_begin_object (json, NULL);
  ff_json_text (json, "quote", "a \"b\"\n\x01");
  ff_json_text (json, "none", NULL);
  ff_json_end (json);
  ff_json_end (json);
  ff_json_begin_array (json, "empty");
  ff_json_end (json);
  text = ff_json_finish (json);
  assert_string_equal (text, "{\n  \"list\": [\n    {\n      \"quote\": \"a \\\"b\\\"\\n\\u0001\",\n"
                             "      \"none\": null\n    }\n  ],\n  \"empty\": []\n}\n");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_numbers_are_short_and_read_back),
    cmocka_unit_test (test_texts_are_escaped_and_nested),
  };

  return cmocka_run_group_tests_name ("json", tests, NULL, NULL);
}
