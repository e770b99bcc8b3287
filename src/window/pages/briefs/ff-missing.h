/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is missing before the sheets can be trusted: a row for each sentence, with a button that
 * goes to where it is entered. */
#pragma once

#include "ff-page.h"
#include "ff-proof.h"

/* FALSE: nothing is. */
gboolean ff_missing_show (GtkBox *rows, const FfProof *proof, FfPage *page);

/* The sentences, one a line. */
char *ff_missing_join (GPtrArray *sentences) G_GNUC_WARN_UNUSED_RESULT;
