/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Gentle advice to who writes a list, from the published rules of checklist design; nothing of it
 * is an error. Sources: Degani and Wiener, Human Factors of Flight-Deck Checklists: The Normal
 * Checklist (NASA CR-177549, 1990), its guidelines by number; CAP 676, Guidelines for the Design and
 * Presentation of Emergency and Abnormal Checklists (UK CAA, 2006); Gawande's Checklist for
 * Checklists; WHO Surgical Safety Checklist manual (2008). */
#pragma once

#include "ff-checklist.h"

typedef struct {
  int line;   /* of the text, from 1 */
  char *text; /* what, and what would be better */
} FfAdvice;

/* In the order of the text: an array of FfAdvice that frees them. */
GPtrArray *ff_checklist_advice (const FfChecklist *list) G_GNUC_WARN_UNUSED_RESULT;

/* Rough time to run it, in seconds, for the print alone: a clock on the screen hurries. Four seconds
 * to read and answer, eight where something is read off and typed or a second person looks (common
 * practice, no source). */
int ff_checklist_seconds (const FfChecklist *list, guint conditions);
