/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The lists that come with the program, as text: examples to be made one's own, from data/lists. */
#pragma once

typedef struct {
  const char *id;   /* UUID, the same in every store */
  const char *name; /* of its file: "06-turn-round" */
  const char *text;
} FfStarterList;

extern const FfStarterList ff_starter_lists[];
extern const unsigned int ff_n_starter_lists;
