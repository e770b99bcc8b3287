/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can be printed of a job: the sheets of all roles, each sheet alone, what stands beside them,
 * and everything. */
#pragma once

#include "ff-brief.h"

typedef struct {
  const char *title; /* marked for translation; as a choice, and in the names of files */
  FfReader reader;
  FfBriefMore more;
  gboolean weather;  /* the weather call */
  gboolean alone;    /* a document of its own, when all are saved into a folder */
} FfPrintable;

/* The first is the sheets of all roles. Its title may be that of a reader, in small letters. */
const FfPrintable *ff_printable (guint i);
guint ff_printables_count (void);

/* The titles, translated and borrowed; ends with NULL. */
GPtrArray *ff_printable_titles (void) G_GNUC_WARN_UNUSED_RESULT;
