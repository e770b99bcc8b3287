/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-run-acts.h"

#include <glib/gi18n-lib.h>

static const FfName act_names[] = {
  /* Translators: what happened to an item of a checklist, or to its whole run; for the log. */
  [FF_ACT_START] = { "start", N_ ("started") },
  [FF_ACT_SAY] = { "say", N_ ("said") },
  [FF_ACT_DONE] = { "done", N_ ("done") },
  /* Translators: another person looked as well. */
  [FF_ACT_SECOND] = { "second", N_ ("seen by a second person") },
  /* Translators: a value that differs from the plan was kept, with a reason. */
  [FF_ACT_ACCEPT] = { "accept", N_ ("kept as it is") },
  [FF_ACT_DEFER] = { "defer", N_ ("deferred") },
  [FF_ACT_NOT_APPLICABLE] = { "not-applicable", N_ ("not applicable") },
  [FF_ACT_FAIL] = { "fail", N_ ("failed") },
  [FF_ACT_REOPEN] = { "reopen", N_ ("opened again") },
  [FF_ACT_HOLD] = { "hold", N_ ("held") },
  [FF_ACT_AUTO_HOLD] = { "auto-hold", N_ ("held by itself") },
  [FF_ACT_RESUME] = { "resume", N_ ("resumed") },
  [FF_ACT_CHANGE] = { "change", N_ ("changed") },
  [FF_ACT_ABANDON] = { "abandon", N_ ("abandoned") },
};

const FfNames ff_names_act = { "event of a run", act_names, G_N_ELEMENTS (act_names) };
