/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the readers of a checklist's text share. */
#pragma once

#include <cmark.h>

#include "ff-checklist.h"

typedef struct {
  char **lines; /* of the text, for columns in characters rather than bytes */
} FfCheckReader;

/* "line 12, column 7: " and the sentence; always FALSE. */
gboolean ff_check_refuse (const FfCheckReader *reader,
                          cmark_node *node,
                          GError **error,
                          const char *format,
                          ...) G_GNUC_PRINTF (4, 5);

/* All text inside a block or an inline, its blanks made single. */
char *ff_check_text (cmark_node *node) G_GNUC_WARN_UNUSED_RESULT;

/* The paragraph of a task item: challenge, response, value, fact, marks. */
gboolean ff_check_item_read (const FfCheckReader *reader,
                             cmark_node *paragraph,
                             FfCheckItem *item,
                             GError **error);

/* The words and the conditions of a heading. */
char *ff_check_heading_read (const FfCheckReader *reader,
                             cmark_node *heading,
                             guint *ret_when,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* "cold" or "cold or night", added to a mask. */
gboolean ff_check_when_read (const char *words, guint *when, GError **error);
