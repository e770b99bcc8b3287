/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The fields of one shot. It stores what is typed as it is typed, and says beside a field why a
 * value is not taken. */
#pragma once

#include <adwaita.h>

#include "ff-keeper.h"

#define FF_TYPE_SHOT_EDITOR (ff_shot_editor_get_type ())
G_DECLARE_FINAL_TYPE (FfShotEditor, ff_shot_editor, FF, SHOT_EDITOR, AdwBin)

/* Shows a shot of the keeper's open job; what was half typed in another shot is given up. */
void ff_shot_editor_show (FfShotEditor *self, FfKeeper *keeper, const FfShot *shot);

/* The title, where the typing begins. */
void ff_shot_editor_grab_title (FfShotEditor *self);
