/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Records made at random by their own tables of fields: every one of them passes its check. */
#pragma once

#include "ff-test.h"

#include "ff-crew.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-limit.h"
#include "ff-place.h"
#include "ff-reading.h"
#include "ff-shot.h"

FfPlace *ff_random_place (FfTestRandom *dice) G_GNUC_WARN_UNUSED_RESULT;
FfJob *ff_random_job (FfTestRandom *dice) G_GNUC_WARN_UNUSED_RESULT; /* without place and gear */
FfShot *ff_random_shot (FfTestRandom *dice, const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
FfItem *ff_random_item (FfTestRandom *dice, FfKind kind) G_GNUC_WARN_UNUSED_RESULT;
FfMember *ff_random_member (FfTestRandom *dice) G_GNUC_WARN_UNUSED_RESULT;
FfReading *ff_random_reading (FfTestRandom *dice, const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
FfLimit *ff_random_limit (FfTestRandom *dice) G_GNUC_WARN_UNUSED_RESULT;

/* Every field but the ids, which records give themselves. */
void ff_random_fill (FfTestRandom *dice, const FfFields *fields, gpointer record);
