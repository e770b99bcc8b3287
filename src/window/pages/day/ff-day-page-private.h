/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Shared by the files of the day's page: the page itself (ff-day-page.c), the place (ff-day-where.c)
 * and the lists (ff-day-rows.c). */
#pragma once

#include "ff-crew-list.h"
#include "ff-day-gaps.h"
#include "ff-day-page.h"
#include "ff-entry.h"
#include "ff-flow.h"
#include "ff-gap-list.h"
#include "ff-pair-list.h"
#include "ff-pick.h"
#include "ff-sun-arc.h"

struct _FfDayPage {
  FfPage parent_instance;

  char *job_id; /* whose words stand in the fields */

  GtkScrolledWindow *scroller;
  GtkBox *body;
  FfFlow *columns;
  guint follow_source;

  /* What is missing, in one line. */
  GtkWidget *first_gap;
  GtkLabel *first_gap_words;

  GtkLabel *limits; /* how many are outside, in one line */

  /* When */
  GtkMenuButton *calendar_button;
  GtkCalendar *calendar;
  gboolean setting_calendar;

  /* Where */
  FfPick *place;
  FfEntry *position;
  GtkWidget *place_record, *emergency_record, *hazard_section;
  GtkWidget *zone_offer;
  FfFlow *zone_choices;
  GPtrArray *place_ids;  /* char*, as in the choice of places */
  GPtrArray *zone_table; /* FfZoneCity; NULL: not yet read */
  char *offered;         /* zones on offer, joined */

  FfPick *sky;
  FfPairList *hazards, *events;
  FfCrewList *crew;

  /* At the side */
  char *shown_sky; /* what the words there are about */
  GtkWidget *sun_known, *sun_unknown;
  FfSunArc *arc;
  GtkLabel *sun_heading, *sun, *low_sun, *moon, *check, *clock;
  FfGapList *gaps;
};

FfKeeper *ff_day_page_keeper (FfDayPage *self);
FfEntry *ff_day_page_entry (FfDayPage *self, const char *name);

/* ff-day-where.c */
void ff_day_where_refresh (FfDayPage *self);
void ff_day_where_position_typed (FfDayPage *self, const char *text);
void ff_day_where_place_picked (FfDayPage *self, int index);

/* ff-day-rows.c */
void ff_day_rows_refresh (FfDayPage *self);
void ff_day_rows_event_typed (FfDayPage *self, guint row, guint part, const char *text);
void ff_day_rows_event_removed (FfDayPage *self, guint row);
void ff_day_rows_event_added (FfDayPage *self, const char *text);
void ff_day_rows_hazard_typed (FfDayPage *self, guint row, guint part, const char *text);
void ff_day_rows_hazard_removed (FfDayPage *self, guint row);
void ff_day_rows_hazard_added (FfDayPage *self, const char *text);
