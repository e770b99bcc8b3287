/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can happen in the run of a checklist: the words that its events are kept by. */
#pragma once

#include "ff-names.h"

typedef enum {
  FF_ACT_START,
  FF_ACT_SAY,     /* a value was read and said */
  FF_ACT_DONE,    /* answered as the list wants it */
  FF_ACT_SECOND,  /* another person looked as well */
  FF_ACT_ACCEPT,  /* what differs is kept, with a reason and a name */
  FF_ACT_DEFER,
  FF_ACT_NOT_APPLICABLE,
  FF_ACT_FAIL,
  FF_ACT_REOPEN,
  FF_ACT_HOLD,
  FF_ACT_AUTO_HOLD, /* nobody was there, the lid was shut, the program ended */
  FF_ACT_RESUME,
  FF_ACT_CHANGE,  /* another battery, aircraft or person */
  FF_ACT_ABANDON,
} FfAct;
#define FF_N_ACTS 14

extern const FfNames ff_names_act;
