/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the run know of each other. */
#pragma once

#include "ff-run.h"

struct _FfListRun {
  const FfChecklist *list;
  FfRunRules rules;
  GArray *items; /* FfRunItem */
  int n_sections;
  gboolean started, held, abandoned;
  char *reader, *other, *held_why;
  gint64 held_since, last_at;
  guint completed; /* how many completions there were */
};

FfRunItem *ff_list_run_at (const FfListRun *run, int i);
void ff_list_run_set (char **place, const char *text);
void ff_list_run_item_open (FfRunItem *item);

/* What the rules allow, for ff-run-step.c: what was said is not looked at twice. */
FfChallenge ff_list_run_challenge (const FfRunItem *item, const FfRunEvent *event);
