/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the price of a change is found. */
#pragma once

#include "ff-change.h"
#include "ff-plan-private.h"

/* A change with one thing on top, and what that owns. */
typedef struct {
  FfDayChange change;
  const char **list; /* the list with one name more */
  char *move;
} FfTrial;

void ff_trial_clear (FfTrial *trial);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FfTrial, ff_trial_clear)

/* The change with the remedy. Error: FF_ERROR_INPUT. */
gboolean ff_trial_remedy (FfTrial *trial,
                          const FfDay *day,
                          const FfDayChange *change,
                          const FfRemedy *remedy,
                          GError **error);

/* The change with this shot dropped. */
void ff_trial_drop (FfTrial *trial, const FfDayChange *change, const char *shot);

/* Everything that might save `shot` (label), the least trouble first: an array of FfRemedy that
 * clears them. */
GArray *ff_remedies_for (const FfDay *day,
                         const FfDayChange *change,
                         const FfShot *shot) G_GNUC_WARN_UNUSED_RESULT;
void ff_remedy_clear (FfRemedy *remedy);

/* The sentence of a price, from its claim. */
char *ff_change_sentence (const FfChangePrice *price,
                          const FfDayPlan *before) G_GNUC_WARN_UNUSED_RESULT;
