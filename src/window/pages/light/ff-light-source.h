/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whose light the page is about: a shot of a job at a time, any place and time, or a condition of
 * the published table. Nothing that is typed here is stored.
 *
 * Signals: "changed" when another light is asked about, "moved" when only the time is. */
#pragma once

#include <adwaita.h>

#include "ff-keeper.h"
#include "ff-light-study.h"

#define FF_TYPE_LIGHT_SOURCE (ff_light_source_get_type ())
G_DECLARE_FINAL_TYPE (FfLightSource, ff_light_source, FF, LIGHT_SOURCE, AdwBin)

void ff_light_source_set_keeper (FfLightSource *self, FfKeeper *keeper);

/* The keeper's job, shots, gear or plan changed. */
void ff_light_source_refresh (FfLightSource *self);

/* What is asked; what it points to stays until the next "changed" or refresh. FALSE: something is
 * missing; FF_ERROR_INPUT says what to enter. */
gboolean ff_light_source_get (FfLightSource *self, FfLightStudyQuery *ret_query, GError **error);

/* The moment, and going to another one (to five minutes when it steps). */
gint64 ff_light_source_at (FfLightSource *self);
void ff_light_source_go (FfLightSource *self, gint64 at);
void ff_light_source_step (FfLightSource *self, int steps);

/* Looks at this shot of the open job. */
void ff_light_source_choose_shot (FfLightSource *self, const char *shot_id);

/* The shot of the open job that is looked at; NULL: another light is. */
const char *ff_light_source_shot (FfLightSource *self);
