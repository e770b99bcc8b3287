/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-test.h"

#include "ff-run.h"

static void
test_nothing_is_passed_silently (void **state)
{
  assert_false (ff_mark_may_follow (FF_MARK_FAILED, FF_MARK_DONE));
  assert_false (ff_mark_may_follow (FF_MARK_HELD, FF_MARK_DONE));
  assert_true (ff_mark_may_follow (FF_MARK_HELD, FF_MARK_OPEN));
  assert_true (ff_mark_may_follow (FF_MARK_FAILED, FF_MARK_OPEN));
  assert_true (ff_mark_may_follow (FF_MARK_DEFERRED, FF_MARK_DONE));
}

static void
test_each_mark_can_come_back_to_open (void **state)
{
  for (int mark = FF_MARK_DONE; mark <= FF_MARK_NOT_APPLICABLE; mark++)
    {
      assert_true (ff_mark_may_follow ((FfMark) mark, FF_MARK_OPEN));
      assert_false (ff_mark_may_follow ((FfMark) mark, (FfMark) mark));
    }
}

static void
test_only_done_and_not_applicable_resolve (void **state)
{
  for (int mark = FF_MARK_OPEN; mark <= FF_MARK_NOT_APPLICABLE; mark++)
    assert_int_equal (ff_mark_is_unresolved ((FfMark) mark),
                      mark != FF_MARK_DONE && mark != FF_MARK_NOT_APPLICABLE);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_nothing_is_passed_silently),
    cmocka_unit_test (test_each_mark_can_come_back_to_open),
    cmocka_unit_test (test_only_done_and_not_applicable_resolve),
  };

  return cmocka_run_group_tests_name ("lists", tests, NULL, NULL);
}
