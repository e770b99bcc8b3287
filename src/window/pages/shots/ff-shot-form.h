/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The form of a shot: which fields are typed, how each is read and written, which of them its
 * intent calls for, and when what is typed may be stored. Pure. */
#pragma once

#include "ff-job.h"
#include "ff-shot.h"

/* The fields that are typed as text. The others are picked or ticked. */
typedef enum {
  FF_SHOT_LABEL,
  FF_SHOT_TITLE,
  FF_SHOT_NOTE,
  FF_SHOT_FROM,
  FF_SHOT_TO,
  FF_SHOT_MINUTES,
  FF_SHOT_SUN_LEAVES,
  FF_SHOT_WEIGHT,
  FF_SHOT_FPS,
  FF_SHOT_ANGLE,
  FF_SHOT_ANGLE_FROM,
  FF_SHOT_ANGLE_TO,
  FF_SHOT_FRAMES,
  FF_SHOT_STEP,
  FF_SHOT_INTERVAL,
  FF_SHOT_MAX_ISO,
  FF_SHOT_APERTURE,
  FF_SHOT_BEARING,
  FF_SHOT_HEIGHT_FROM,
  FF_SHOT_HEIGHT_TO,
  FF_SHOT_TRACK,
  FF_SHOT_SPEED,
  FF_SHOT_OFFSET,
  FF_SHOT_MATCH,
  FF_N_SHOT_TEXTS,
} FfShotText;

/* Under which heading a field stands. */
typedef enum {
  FF_SHOT_GROUP_WHAT,
  FF_SHOT_GROUP_WHEN,
  FF_SHOT_GROUP_PICTURE,
  FF_SHOT_GROUP_FLIGHT,
  FF_SHOT_GROUP_LIGHT,
  FF_N_SHOT_GROUPS,
} FfShotGroup;

typedef struct {
  const char *field; /* of ff_shot_fields */
  const char *label; /* with a mnemonic, marked for translation */
  const char *unit;  /* marked for translation; empty: none */
  FfShotGroup group;
  int basis;         /* the width it would like, in px at 100 % text */
} FfShotTextInfo;

const FfShotTextInfo *ff_shot_text_info (FfShotText which);

/* The stored value as it stands in the field. */
char *ff_shot_text_get (const FfShot *shot, FfShotText which) G_GNUC_WARN_UNUSED_RESULT;

/* Reads one field into the shot. FALSE: it is not right, and why as half a sentence. `shots`: those
 * of the job, whose labels are taken. */
gboolean ff_shot_text_put (FfShot *shot,
                           FfShotText which,
                           const char *text,
                           GPtrArray *shots,
                           char **ret_why);

/* Whether the shot's intent and view call for the field. */
gboolean ff_shot_text_is_asked (const FfShot *shot, FfShotText which);

/* Something to know about the value: what an empty field means, how long the window is; or NULL. */
char *ff_shot_text_remark (const FfShot *shot, FfShotText which) G_GNUC_WARN_UNUSED_RESULT;

/* What the hours of the day say to the window, or NULL; `sunset` as a clock, or FF_NO_CLOCK. */
char *ff_shot_hours_remark (const FfShot *shot,
                            const FfJob *job,
                            int sunset) G_GNUC_WARN_UNUSED_RESULT;

/* "Shot D: minutes changed", for undo. */
char *ff_shot_text_change (const FfShot *shot, FfShotText which) G_GNUC_WARN_UNUSED_RESULT;

/* What was typed into one field, with the texts of all (NULL: not shown). `shot` is a copy of the
 * stored one. On TRUE it is what to store: together with other fields that were typed before and
 * could not be stored alone, as the first half of a window that moves. On FALSE `ret_why` says what
 * is wrong, and the stored value stays. */
gboolean ff_shot_form_take (FfShot *shot,
                            const char *const texts[FF_N_SHOT_TEXTS],
                            FfShotText typed,
                            GPtrArray *shots,
                            char **ret_why);

/* The first thing that keeps a shot from being stored, as half a sentence; NULL: it is right. */
char *ff_shot_form_why (const FfShot *shot) G_GNUC_WARN_UNUSED_RESULT;

/* Another intent: what it calls for and the shot does not say yet gets what is usual. */
void ff_shot_form_set_intent (FfShot *shot, FfIntent intent, double delivery_fps);
