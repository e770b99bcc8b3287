/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One who holds a role on the day: initials, name, role and what to call; the rest of the record
 * opens under it. Signals: "typed" (const char *field, const char *text), "role-picked" (int),
 * "removed". */
#pragma once

#include <gtk/gtk.h>

#include "ff-crew.h"

#define FF_TYPE_CREW_ROW (ff_crew_row_get_type ())
G_DECLARE_FINAL_TYPE (FfCrewRow, ff_crew_row, FF, CREW_ROW, GtkWidget)

GtkWidget *ff_crew_row_new (void);

/* `date` is the day of the shoot, on which a certificate should still be good. */
void ff_crew_row_show (FfCrewRow *self, const FfMember *member, const char *date);

const char *ff_crew_row_get_member (FfCrewRow *self); /* id */
FfRole ff_crew_row_get_role (FfCrewRow *self);

void ff_crew_row_complain (FfCrewRow *self, const char *field, const char *sentence);

/* Opens the record and puts the cursor into the field that comes next to be filled. */
void ff_crew_row_open (FfCrewRow *self);
