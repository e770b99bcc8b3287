/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Shared by the parts of the page: what it shows and saves (ff-briefs-page.c), which of its pages is
 * large and how large (ff-briefs-turn.c). */
#pragma once

#include "ff-briefs-page.h"

#include "ff-briefed-list.h"
#include "ff-pick.h"
#include "ff-preview.h"

struct _FfBriefsPage {
  FfPage parent_instance;

  GtkStack *stack;
  GtkLabel *why;
  GtkWidget *enter;
  GtkScrolledWindow *scroller;
  GtkWidget *beside;
  GtkWidget *missing, *cut;
  GtkBox *missing_rows;
  GtkLabel *cut_words;
  FfPick *reader, *paper;
  GtkCheckButton *phones, *bound;
  FfBriefedList *briefed;
  GtkFlowBox *thumbs;
  GtkWidget *pager, *previous, *next;
  GtkLabel *where;
  GtkToggleButton *whole;
  FfPreview *large;

  FfProof *proof;
  char *job_id; /* of the proof */
  guint number; /* of the large page, from 0 */
  int zoom;
  guint n_out;  /* errands under way */
  gboolean proving, stale; /* an errand to show is under way; another is wanted after it */
  gboolean selecting;      /* by our own hand */
  gboolean disposed;
};

void ff_briefs_page_ask_to_save (FfBriefsPage *self);

/* Makes a page the large one; or only if it is there, and brings its top to the screen. */
void ff_briefs_turn_show (FfBriefsPage *self, guint number);
void ff_briefs_turn_to (FfBriefsPage *self, guint number);

/* Its callbacks, and its actions for keys and for whoever drives the program from outside. */
void ff_briefs_turn_class_init (GtkWidgetClass *widget_class);
