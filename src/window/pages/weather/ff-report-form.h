/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An aerodrome's report or forecast, typed or pasted: read as it is typed, in short rows; kept with
 * how far away the aerodrome is and how high it lies. */
#pragma once

#include <gtk/gtk.h>

#include "ff-weather.h"

#define FF_TYPE_REPORT_FORM (ff_report_form_get_type ())
G_DECLARE_FINAL_TYPE (FfReportForm, ff_report_form, FF, REPORT_FORM, GtkBox)

/* Signal "enter": a person wants it kept. */
GtkWidget *ff_report_form_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* In whose clock times are shown, and about when reports are read. */
void ff_report_form_set_time (FfReportForm *self, GTimeZone *zone, gint64 now);

/* What is typed, without initials. NULL: what is wrong stands beside its field. */
FfWeatherReport *ff_report_form_read (FfReportForm *self,
                                      const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_report_form_kept (FfReportForm *self);
void ff_report_form_complain (FfReportForm *self, const char *sentence);

/* Puts a text in, as pasting does. */
void ff_report_form_paste (FfReportForm *self, const char *text);
