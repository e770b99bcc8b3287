/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The system's printing of a proof. What was last chosen in its dialog (printer, options, page) is
 * kept as a key file. */
#pragma once

#include "ff-page.h"
#include "ff-proof.h"

/* An operation that prints this proof, which it keeps. Run it with the dialog, or to a file. */
GtkPrintOperation *ff_printing_new (FfProof *proof) G_GNUC_WARN_UNUSED_RESULT;

/* Where the choices are kept: in the user's configuration. */
char *ff_printing_path (void) G_GNUC_WARN_UNUSED_RESULT;

/* What was chosen last time; a file that is not there or not right changes nothing. The paper stays
 * that of the proof. */
void ff_printing_recall (GtkPrintOperation *operation, const char *path);
gboolean ff_printing_remember (GtkPrintOperation *operation, const char *path, GError **error);

/* Prints by the system's dialog over the window of the page, which says what went wrong. */
void ff_printing_run (FfProof *proof, FfPage *page);
