/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Checklists made at random, with the words that Markdown trips over. */
#pragma once

#include "ff-checklist.h"
#include "ff-test.h"

FfChecklist *ff_random_list (FfTestRandom *random) G_GNUC_WARN_UNUSED_RESULT;
