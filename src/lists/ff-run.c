/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-run.h"

gboolean
ff_mark_may_follow (FfMark from, FfMark to)
{
  if (from == to)
    return FALSE;
  switch (from)
    {
    case FF_MARK_OPEN:
      return TRUE;
    case FF_MARK_DEFERRED:
      return to != FF_MARK_HELD;
    case FF_MARK_HELD:
    case FF_MARK_DONE:
    case FF_MARK_FAILED:
    case FF_MARK_NOT_APPLICABLE:
      return to == FF_MARK_OPEN;
    default:
      return FALSE;
    }
}

gboolean
ff_mark_is_unresolved (FfMark mark)
{
  return mark != FF_MARK_DONE && mark != FF_MARK_NOT_APPLICABLE;
}
