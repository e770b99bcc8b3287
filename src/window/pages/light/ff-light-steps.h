/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steps of an explanation, one under the other: name, sentence, formula, source. */
#pragma once

#include <gtk/gtk.h>

#include "ff-explain.h"

/* Fills a list, whose rows are used again while their number stays the same. */
void ff_light_steps_show (GtkListBox *list, GPtrArray *steps);
