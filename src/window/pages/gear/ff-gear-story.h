/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What happened to an item, the newest first. */
#pragma once

#include <gtk/gtk.h>

#include "ff-keeper.h"

#define FF_TYPE_GEAR_STORY (ff_gear_story_get_type ())
G_DECLARE_FINAL_TYPE (FfGearStory, ff_gear_story, FF, GEAR_STORY, GtkWidget)

void ff_gear_story_show (FfGearStory *self, FfKeeper *keeper, const FfItem *item);
