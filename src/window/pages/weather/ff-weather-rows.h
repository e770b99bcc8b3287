/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The limits of the weather call as rows: a shape and a word, what is asked, what was found and from
 * where, whose rule it is and when that was checked. */
#pragma once

#include <gtk/gtk.h>

#include "ff-weather-today.h"

/* The rows that are outside, or those that are not. */
void ff_weather_rows_show (GtkBox *box, const FfWeatherToday *today, gboolean outside);

/* Label and text of each estimate. */
void ff_weather_rows_show_words (GtkBox *box, const GPtrArray *words);

/* Texts one under the other, or the sentence that there are none. */
void ff_weather_rows_show_texts (GtkBox *box, const GPtrArray *texts, const char *none);
