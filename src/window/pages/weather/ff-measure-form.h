/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One thing measured or found on site: what, how much, in which unit, how high the sensor was. */
#pragma once

#include <gtk/gtk.h>

#include "ff-weather.h"

#define FF_TYPE_MEASURE_FORM (ff_measure_form_get_type ())
G_DECLARE_FINAL_TYPE (FfMeasureForm, ff_measure_form, FF, MEASURE_FORM, GtkBox)

/* Signal "enter": a person wants it kept. */
GtkWidget *ff_measure_form_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* What is typed, without its time and initials. NULL: what is wrong stands beside its field. */
FfMeasurement *ff_measure_form_read (FfMeasureForm *self,
                                     const char *job_id) G_GNUC_WARN_UNUSED_RESULT;

/* It was kept: the value goes, the kind stays for the next one. Or why it was not. */
void ff_measure_form_kept (FfMeasureForm *self);
void ff_measure_form_complain (FfMeasureForm *self, const char *sentence);

/* Chooses a kind by its token, as a person would. */
void ff_measure_form_pick (FfMeasureForm *self, const char *kind);
