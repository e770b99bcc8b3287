/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The crew's decision: go, stand by or no go, why, until when, by whom. Nothing is chosen at first:
 * the program suggests none. */
#pragma once

#include <gtk/gtk.h>

#include "ff-weather.h"

#define FF_TYPE_CALL_FORM (ff_call_form_get_type ())
G_DECLARE_FINAL_TYPE (FfCallForm, ff_call_form, FF, CALL_FORM, GtkBox)

/* Signal "enter": a person wants it kept. */
GtkWidget *ff_call_form_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* What is typed, made at `now` in this zone. NULL: what is wrong stands beside its field. */
FfWeatherCall *ff_call_form_read (FfCallForm *self,
                                  const char *job_id,
                                  GTimeZone *zone,
                                  gint64 now) G_GNUC_WARN_UNUSED_RESULT;
void ff_call_form_kept (FfCallForm *self);
void ff_call_form_complain (FfCallForm *self, const char *sentence);

/* Who is at the keys; what is typed there stays. */
void ff_call_form_set_by (FfCallForm *self, const char *initials);

/* Fills it, as a person would. `until` may be NULL. */
void ff_call_form_fill (FfCallForm *self, FfCall decision, const char *why, const char *until);
