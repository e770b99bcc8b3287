/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The records that a day was loaded from, to read and not to change. */
#pragma once

#include "ff-day.h"
#include "ff-job.h"
#include "ff-place.h"

const FfJob *ff_day_job (const FfDay *day);
const FfPlace *ff_day_place (const FfDay *day); /* NULL: none yet */
