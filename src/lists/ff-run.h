/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The run of a checklist as a pure state machine. Here: an item's states and which may follow
 * which. Nothing is passed silently: what was deferred, held or failed is taken up again. */
#pragma once

#include <glib.h>

typedef enum {
  FF_MARK_OPEN,
  FF_MARK_DONE,
  FF_MARK_DEFERRED,
  FF_MARK_HELD,
  FF_MARK_FAILED,
  FF_MARK_NOT_APPLICABLE,
} FfMark;

/* Whether an item may go from one mark to the other. A failed item is opened again before it can
 * be done; a held one resumes as open, so that it is read out anew. */
gboolean ff_mark_may_follow (FfMark from, FfMark to);

/* Whether an item with this mark still stands in the way of completing its section. */
gboolean ff_mark_is_unresolved (FfMark mark);
