/* SPDX-License-Identifier: GPL-3.0-or-later */
/* If the day turns out otherwise: what each line survives, what each case of sky and clock loses,
 * and what to drop first. That last one takes as many plans as there are shots: it comes a little
 * later, from a worker, and not at all for a plan that is gone by then. */
#pragma once

#include <gtk/gtk.h>

#include "ff-answer.h"

#define FF_TYPE_OTHERWISE (ff_otherwise_get_type ())
G_DECLARE_FINAL_TYPE (FfOtherwise, ff_otherwise, FF, OTHERWISE, GtkBox)

/* An answer with a plan. */
void ff_otherwise_show (FfOtherwise *self, FfAnswer *answer);
