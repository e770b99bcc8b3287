/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The demo day as tables, invented from end to end. For ff-demo.c alone. */
#pragma once

#include "ff-names.h"

typedef struct {
  const char *name, *initials;
  FfRole role;
} FfDemoMember;

typedef struct {
  const char *label, *title, *note;
  FfView view;
  double bearing_deg; /* NAN: none */
  double height_from_m, height_to_m;
  const char *track;
  double speed_ms;
  FfIntent intent;
  int minutes;
  const char *from, *to;
} FfDemoShot;

typedef struct {
  const char *label;
  FfKind kind;
  const char *title;
  const char *case_label;
  const char *leader; /* label of what can't go without it; NULL: none */
  const char *note;
} FfDemoItem;

typedef struct {
  const char *kind, *text;
  FfCompare compare;
  double value;
  const char *unit;
} FfDemoLimit;

typedef struct {
  const char *first, *second;
} FfDemoPair;

/* Each table ends with a row whose first member is NULL. */
extern const FfDemoMember ff_demo_crew[];
extern const FfDemoPair ff_demo_hazards[]; /* what, measure */
extern const FfDemoPair ff_demo_events[];  /* clock, text */
extern const FfDemoPair ff_demo_documents[]; /* label, valid until */
extern const FfDemoPair ff_demo_other_days[]; /* title, date */
extern const FfDemoShot ff_demo_shots[];
extern const FfDemoItem ff_demo_items[];
extern const FfDemoLimit ff_demo_limits[];
