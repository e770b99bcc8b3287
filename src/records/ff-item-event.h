/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What happened to an item, as it was entered: the story of its states. Events are appended by
 * ff_item_set_state() and never changed. */
#pragma once

#include "ff-item.h"

typedef struct {
  gint64 at;
  FfState state;
  char *why, *out_with, *out_until; /* until YYYY-MM-DD or empty */
  char *by;                         /* initials of who entered it */
} FfItemEvent;

void ff_item_event_free (FfItemEvent *event);

/* The last `most` events of an item, the newest first: an array of FfItemEvent that frees them. */
GPtrArray *ff_item_events_load (FfStore *store,
                                const char *item_id,
                                guint most,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;
