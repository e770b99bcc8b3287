/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An item of the gear as JSON, the same in a job file and on the console. */
#pragma once

#include "ff-item.h"
#include "ff-json.h"

/* Its fields, those of its state and those of its kind, into the object that is open. */
void ff_item_json_write (FfJson *json, const FfItem *item);
