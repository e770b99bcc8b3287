/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who is at the keys: initials at the bottom left, and a choice of the crew behind them. */
#pragma once

#include <adwaita.h>

#include "ff-keeper.h"

#define FF_TYPE_PERSON (ff_person_get_type ())
G_DECLARE_FINAL_TYPE (FfPerson, ff_person, FF, PERSON, AdwBin)

void ff_person_set_keeper (FfPerson *self, FfKeeper *keeper);
