/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Finding a record by what somebody typed: its id, its name, or a unique beginning. For the files
 * of this room alone. */
#pragma once

#include "ff-store.h"

/* `sql` gives id, name, title of each record: the name must match whole, the title may be begun;
 * case is ignored. Returns the id. FF_ERROR_INPUT says that there is no such `noun`, or that there
 * are several, and lists the candidates. */
char *ff_match (FfStore *store,
                const char *sql,
                const char *noun,
                const char *wanted,
                GError **error) G_GNUC_WARN_UNUSED_RESULT;
