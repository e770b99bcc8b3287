/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Parts of a plan as JSON, for copies and for changes. */
#pragma once

#include "ff-plan-private.h"
#include "ff-record-json.h"

/* Arrays of FfPlanLine, FfPlanMiss and FfPlanCharge under their names: "lines", "missed",
 * "charges". What is read is appended; `path` begins each message. */
void ff_plan_json_parts (FfJson *json, GPtrArray *lines, GPtrArray *missed, GPtrArray *charges);
gboolean ff_plan_read_parts (JsonObject *object,
                             GPtrArray *lines,
                             GPtrArray *missed,
                             GPtrArray *charges,
                             GError **error);

/* The outer object of a text that was made here; checked as one from outside, because a job file
 * brings such texts. */
JsonNode *ff_plan_parse (const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;

FfPlanMiss *ff_plan_miss_dup (const FfPlanMiss *miss) G_GNUC_WARN_UNUSED_RESULT;
FfPlanCharge *ff_plan_charge_dup (const FfPlanCharge *charge) G_GNUC_WARN_UNUSED_RESULT;
