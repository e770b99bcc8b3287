/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The weather call of the open job: the limits against what is measured, reported and forecast; forms
 * to enter more of it; the crew's decision and the standby clock; on one page of paper. */
#pragma once

#include "ff-page.h"
#include "ff-weather-today.h"

#define FF_TYPE_WEATHER_PAGE (ff_weather_page_get_type ())
G_DECLARE_FINAL_TYPE (FfWeatherPage, ff_weather_page, FF, WEATHER_PAGE, FfPage)

extern const FfPageInfo ff_page_info_weather;

/* What is shown; NULL while no job is open. Borrowed until the next refresh. */
const FfWeatherToday *ff_weather_page_today (FfWeatherPage *self);

/* A clock that says this from now on, and the minute that passes on it. 0: the computer's. */
void ff_weather_page_set_now (FfWeatherPage *self, gint64 now);

/* Writes the page as a PDF, as the button does once a file was chosen. */
void ff_weather_page_save (FfWeatherPage *self, GFile *file);
