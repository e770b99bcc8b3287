/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The crew of the open job: who holds which role, taken from those who are known or entered anew. */
#pragma once

#include "ff-keeper.h"

#include <gtk/gtk.h>

#define FF_TYPE_CREW_LIST (ff_crew_list_get_type ())
G_DECLARE_FINAL_TYPE (FfCrewList, ff_crew_list, FF, CREW_LIST, GtkWidget)

/* Shows what the keeper holds now. */
void ff_crew_list_refresh (FfCrewList *self, FfKeeper *keeper);
