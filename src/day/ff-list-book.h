/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All lists there are: the crew's own, and the starter lists that nobody has made their own yet. A
 * starter list that is changed becomes the crew's under the same id. */
#pragma once

#include "ff-checklist.h"
#include "ff-records.h"

typedef struct {
  char *id, *title, *text;
  char *name;          /* of a starter list: "06-turn-round"; else empty */
  FfChecklist *list;   /* what the text says */
  gboolean own;        /* the crew has written to it */
} FfListEntry;

/* In the order of the day, the emergency cards last: an array of FfListEntry that frees them. */
GPtrArray *ff_list_book_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* By id, name, title, or a unique beginning of a title, case ignored. FF_ERROR_INPUT lists the
 * candidates. The entry is the book's. */
const FfListEntry *ff_list_book_find (GPtrArray *book, const char *wanted, GError **error);
const FfListEntry *ff_list_book_get (GPtrArray *book, const char *id);

/* Keeps a text, byte for byte: under an id, or, where that is NULL, in place of the list with its
 * title, or as a new list. A text that can't be read is refused with its place and nothing is
 * changed. Returns the id. */
char *ff_list_book_save (FfStore *store,
                         const char *id,
                         const char *text,
                         const char *by,
                         gint64 at,
                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
