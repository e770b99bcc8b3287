/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sheets, one file per reader: from the facts and the plan to blocks. */
#pragma once

#include "ff-plan.h"
#include "ff-sheet-facts.h"
#include "ff-sheet.h"
#include "ff-weather-today.h"

FfSheet *ff_pilot_sheet (const FfSheetFacts *facts,
                         const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
FfSheet *ff_lead_sheet (const FfSheetFacts *facts,
                        const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
FfSheet *ff_observer_sheet (const FfSheetFacts *facts,
                            const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
FfSheet *ff_client_sheet (const FfSheetFacts *facts,
                          const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
FfSheet *ff_camera_sheet (const FfSheetFacts *facts,
                          const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
FfSheet *ff_weather_sheet (const FfWeatherToday *today) G_GNUC_WARN_UNUSED_RESULT;

/* A slip for each landing, to be cut apart. */
FfSheet *ff_slip_sheet (const FfSheetFacts *facts,
                        const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

/* What is said aloud and said back, and the day chart where the facts hold its curves. */
FfSheet *ff_spoken_sheet (const FfSheetFacts *facts,
                          const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

/* The pack list; the facts must hold it. */
FfSheet *ff_pack_paper (const FfSheetFacts *facts) G_GNUC_WARN_UNUSED_RESULT;

/* What was changed since the sheets were printed, and lines for what will be. */
FfSheet *ff_amendments_sheet (const FfSheetFacts *facts) G_GNUC_WARN_UNUSED_RESULT;

/* The paper fallback of the lists the day calls for, a sheet each, onto an array of FfSheet. The
 * facts must hold the lists. */
void ff_list_sheets_add (GPtrArray *sheets, const FfSheetFacts *facts);
