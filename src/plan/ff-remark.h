/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only: what is worth saying about a choice. Texts: ff_remark_text(). */
#pragma once

#include "ff-advise-table.h"

/* Fills the remarks of a choice that is complete otherwise, the gravest first. */
void ff_remarks_fill (FfChoice *choice, const FfAdviseQuery *query, const FfAdviseTable *table);
