/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One row of a limit sheet, all of it: what is limited, how, whose rule it is and when somebody
 * looked it up. */
#pragma once

#include <gtk/gtk.h>

#include "ff-limit.h"

#define FF_TYPE_LIMIT_FORM (ff_limit_form_get_type ())
G_DECLARE_FINAL_TYPE (FfLimitForm, ff_limit_form, FF, LIMIT_FORM, GtkBox)

/* Signals "store" and "remove": a person wants that of the row that is shown. */
GtkWidget *ff_limit_form_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows a row. `is_new`: it is not stored yet and can't be removed. */
void ff_limit_form_show (FfLimitForm *self, const FfLimit *limit, gboolean is_new);

/* Puts what is typed into the row. FALSE: what is wrong stands beside its field. */
gboolean ff_limit_form_read (FfLimitForm *self, FfLimit *limit);
void ff_limit_form_complain (FfLimitForm *self, const char *sentence);
