/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An errand: a proof is made of what the keeper holds, laid out in another thread, and comes back
 * to be shown, printed, or said to be saved. */
#pragma once

#include "ff-keeper.h"
#include "ff-proof.h"

typedef enum { FF_TO_SHOW, FF_TO_PRINT, FF_TO_SAVE } FfPurpose;

typedef struct {
  FfPurpose purpose;
  FfProof *proof;
  char *job_id; /* whose sheets they are */
  GFile *file;  /* to save in */
  guint page;   /* to show: the page that is shown large, and its size in pixels */
  int width, height;
} FfErrand;

/* Error: FF_ERROR_INPUT when there is no plan, with what to enter. */
FfErrand *ff_errand_new (FfKeeper *keeper,
                         FfPurpose purpose,
                         const FfProofWish *wish,
                         GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What sheets are written from now. FF_ERROR_INPUT as above. */
gboolean ff_errand_source (FfKeeper *keeper, FfProofSource *ret_source, GError **error);

/* Takes the errand; `source` is kept until it is back. */
void ff_errand_send (FfErrand *errand, GObject *source, GAsyncReadyCallback came_back);

/* In the callback: the errand, borrowed; and whether it was done. */
const FfErrand *ff_errand_of (GAsyncResult *result);
gboolean ff_errand_finish (GAsyncResult *result, GError **error);
