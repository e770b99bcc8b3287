/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Plans and facts made by hand, as the sheets read them, without a store. */
#pragma once

#include "ff-plan.h"
#include "ff-sheet-facts.h"
#include "ff-test.h"

typedef struct {
  FfDayPlan plan;
  FfSheetFacts facts;
  GStringChunk *texts; /* every text of both */
  GPtrArray *owned;    /* every struct in their arrays */
} FfFixture;

/* The demo day, with plausible values. */
FfFixture *ff_fixture_demo (void) G_GNUC_WARN_UNUSED_RESULT;

/* Nothing entered at all. */
FfFixture *ff_fixture_empty (void) G_GNUC_WARN_UNUSED_RESULT;

/* The demo day with every text replaced by `text`, and so many shots, four to a sortie. */
FfFixture *ff_fixture_hostile (const char *text, guint n_shots) G_GNUC_WARN_UNUSED_RESULT;

/* A plan that nobody would fly, but could have to print. */
FfFixture *ff_fixture_random (FfTestRandom *random) G_GNUC_WARN_UNUSED_RESULT;

void ff_fixture_free (FfFixture *fixture);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfFixture, ff_fixture_free)
