/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a flight keeps of the sky it took off under: a copy in words, since sheets change and
 * measurements follow. */
#pragma once

#include "ff-day.h"
#include "ff-flight.h"

/* Fills the flight's conditions and limits with what had been measured, reported and forecast by the
 * time it was off, and how the limits stood against that; `plan` may be NULL. The day is the one it
 * is logged in. */
void ff_flight_keep_sky (FfFlight *flight, const FfDay *day, const FfDayPlan *plan);
