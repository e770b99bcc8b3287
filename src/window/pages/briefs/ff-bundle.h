/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All that can be printed of a job as files of plain names in one folder or on a stick, written in
 * another thread. Each file is whole or not there. */
#pragma once

#include "ff-errand.h"

typedef struct _FfBundle FfBundle;

/* Gathers it; of the wish only what holds for all of them counts. Errors as ff_errand_new(). */
FfBundle *ff_bundle_new (FfKeeper *keeper,
                         const FfProofWish *wish,
                         GFile *folder,
                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_bundle_free (FfBundle *bundle);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfBundle, ff_bundle_free)

GFile *ff_bundle_folder (const FfBundle *bundle);
guint ff_bundle_n_files (const FfBundle *bundle);

/* Names of those that are in the folder already, and would be replaced: an array of strings. */
GPtrArray *ff_bundle_existing (const FfBundle *bundle) G_GNUC_WARN_UNUSED_RESULT;

/* Takes the bundle; `source` is kept until it is back. In the callback: how many files are written,
 * and the error that ended it. */
void ff_bundle_send (FfBundle *bundle, GObject *source, GAsyncReadyCallback came_back);
const FfBundle *ff_bundle_of (GAsyncResult *result);
guint ff_bundle_n_saved (const FfBundle *bundle);
gboolean ff_bundle_finish (GAsyncResult *result, GError **error);
