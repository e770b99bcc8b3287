/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steps of an explanation as the commands that explain write them. */
#pragma once

#include "ff-command.h"
#include "ff-explain.h"

/* An array of {step, text, formula, source, values {}}. */
void ff_json_steps (FfJson *json, const char *name, GPtrArray *steps);

/* Each step: its name and its sentence, under it formula and source, at most 80 columns wide. */
void ff_console_steps (FfConsole *console, GPtrArray *steps, int indent);
