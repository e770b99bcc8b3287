/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Published table of lighting conditions in EV at ISO 100 (ANSI exposure guides PH2.7-1973 and
 * PH2.7-1986 as reprinted; after Jones and Condit, JOSA 1948 and 1949). Conditions in direct
 * sun are for front light: side light is 1 stop less, back light 2. */
#pragma once

#include <glib.h>

typedef struct {
  const char *name; /* token: "open-shade" */
  const char *text; /* marked for translation */
  double low_ev100, high_ev100;
  const char *source;
  const char *note; /* what it holds for, or NULL */
} FfCondition;

guint ff_conditions_count (void);
const FfCondition *ff_condition (guint index);

/* By token, case ignored. Error: FF_ERROR_INPUT, saying how to list them. */
const FfCondition *ff_condition_find (const char *name, GError **error);
