/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who was briefed on what stands: a row each with what is said of them, and a button that notes that
 * they were just now; and a line for somebody who is not of the crew. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_BRIEFED_LIST (ff_briefed_list_get_type ())
G_DECLARE_FINAL_TYPE (FfBriefedList, ff_briefed_list, FF, BRIEFED_LIST, GtkBox)

/* Shows what the keeper's answer says; without one it is hidden. */
void ff_briefed_list_show (FfBriefedList *self, FfPage *page);
