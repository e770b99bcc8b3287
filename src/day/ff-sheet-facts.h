/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The facts that sheets on paper show, gathered from a day and its plan. Every text is ready to
 * print and owned; an empty text is a fact that nobody has entered. */
#pragma once

#include <glib.h>

#include "ff-chart-facts.h"
#include "ff-compass-facts.h"
#include "ff-day.h"

typedef struct _FfStanding FfStanding;

typedef struct {
  char *name, *initials, *phone;
  char *briefed;         /* "A, 16:02"; empty: not on what stands */
  FfRole role;
} FfSheetMember;

typedef struct {
  char *text;    /* "mean wind at flying height" */
  char *bound;   /* "at most 8 m/s" */
  char *whose;   /* "own sheet, checked 2027-09-01 MO"; says when it was never checked */
  char *stands;  /* "✕" where it is outside, or empty */
} FfSheetLimit;

typedef struct {
  char *what, *measure;
} FfSheetHazard;

/* A sortie's light and geometry in the words of the camera operator. */
typedef struct {
  char *shot;
  char *view;       /* "oblique, camera 60°, height 30 m" */
  char *sun;        /* "sun 252°, 17° high, behind the camera" */
  char *caution;    /* "low sun within 30° of the camera: flare" or empty */
  char *note;       /* of the shot */
} FfSheetShot;

/* What was changed beside the printed sheets: a sentence for each role that it concerns. */
typedef struct {
  FfRole role;
  char *text;     /* "line 4, off 18:18 not 17:38" */
  char *initials; /* of who has read it; empty: nobody yet */
} FfSheetSentence;

typedef struct {
  int number;
  char *clock;          /* when it was made */
  GPtrArray *sentences; /* FfSheetSentence */
} FfSheetAmendment;

/* A line of the pack list: the label as it is written on the item. */
typedef struct {
  char *case_label; /* empty: loose */
  char *label, *title, *why;
} FfSheetPackItem;

typedef struct {
  char *job, *client, *place, *version;
  char *date;           /* "Saturday 18 September 2027" */
  char *printed;        /* "printed 17:32 Thu" */
  char *beside;         /* "amendments 1–3 stand beside this sheet"; empty: none does */
  gboolean example;
  char *abort_word;
  char *emergency_location, *emergency_phone;
  char *position;       /* "57.2000° N, 4.0000° W" */
  char *takeoff_spot, *second_spot;
  char *hours;          /* "on site 15:00, first off 16:30, all down 19:50, off site 20:30" */
  char *sun_times;      /* "sunrise 06:53, sunset 19:27" */
  char *sun_check;      /* where the sun stands at first off, as a check of clock and zone */
  char *wind;           /* "240° 4 m/s gusting 6, at 10 m" */
  char *weather;        /* "clear, 15 °C, visibility 20 km" */
  char *return_height;  /* "automatic return at 50 m" */
  char *aircraft, *camera;
  char *light_source;   /* "clear-sky estimate, not yet checked by a reading" */
  char *cards;          /* "C1–C4, 128 GB each: 170 min at 100 Mbit/s" */
  char *defects;        /* "b3 defect: latch; b5 quarantined: swollen"; empty: none is known */
  GTimeZone *zone;
  GPtrArray *crew;      /* FfSheetMember */
  GPtrArray *limits;    /* FfSheetLimit */
  GPtrArray *hazards;   /* FfSheetHazard */
  GPtrArray *events;    /* char*: "17:14 ferry passes" */
  GPtrArray *shots;     /* FfSheetShot, in the order of the list */
  GPtrArray *amendments; /* FfSheetAmendment of the letter that stands, by number */
  char *drop_first;     /* "Drop first: A; then F, B, C; G last."; empty: not read, or no choice */
  GPtrArray *missing;   /* char*: what must be filled in before the sheet can be trusted */
  GPtrArray *mend;      /* const char*, one for each of them: where it is entered, as the part of a
                           job and the field in it, "day:abort_word"; or the part alone */
  double latitude_deg, longitude_deg; /* of the meeting point; NAN: not known */
  FfCompassFacts *compass;
  char *observer_post, *second_post;
  double highest_m;     /* of the shots */
  char *area;           /* how high and where they go: "A 60 m over the basin; B 30 m alongside" */
  char *distance_limit; /* the crew's own: "at most 130 m", or empty */
  char *limits_stand;   /* when it was printed: "✕ 1 outside, □ 7 not assessed." */
  GPtrArray *book;        /* holds what the next two name; NULL: not read */
  GPtrArray *lists;       /* FfChecklist: those the day calls for, as the crew keeps them */
  GPtrArray *emergencies; /* FfChecklist: the cards of what goes wrong */
  guint conditions;       /* of the day, a mask of FfWhen */
  FfChartFacts *chart;    /* the curves of the day chart; NULL: not read */
  GPtrArray *pack;        /* FfSheetPackItem, by case; NULL: not read */
  GPtrArray *pack_short;  /* char*: "4-stop: out with Brackenholt. F can fly with the 5-stop." */
} FfSheetFacts;

/* `plan` may be NULL for a sheet that shows none. */
FfSheetFacts *ff_sheet_facts (const FfDay *day,
                              const FfDayPlan *plan,
                              gint64 printed_at) G_GNUC_WARN_UNUSED_RESULT;

/* Facts of no job, for what is printed without one: every text is empty. */
FfSheetFacts *ff_sheet_facts_blank (gint64 printed_at,
                                    GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;

/* The letter that stands, and what stands beside its sheets. The plan printed with them is then the
 * frozen one: a letter says one thing only. */
void ff_sheet_facts_stand (FfSheetFacts *facts, const FfStanding *standing);
/* Adds the checklists, and the pack list, which takes a tenth of a second. FF_ERROR_STORE. */
gboolean ff_sheet_facts_read_lists (FfSheetFacts *facts,
                                    FfStore *store,
                                    const FfDay *day,
                                    GError **error);
gboolean ff_sheet_facts_read_pack (FfSheetFacts *facts,
                                   FfStore *store,
                                   const FfDay *day,
                                   GError **error);

/* Adds what is given up first, for which the day is planned once for each shot. The plan is the one
 * of now, not a frozen one: its cost is compared. Error: FF_ERROR_INPUT. */
gboolean ff_sheet_facts_read_drops (FfSheetFacts *facts,
                                    const FfDay *day,
                                    const FfDayPlan *plan,
                                    GError **error);
/* Numbers of people stay off paper unless somebody wants them there; that of the emergency stays. */
void ff_sheet_facts_hide_phones (FfSheetFacts *facts);

/* Who was briefed on what stands, for the lead's sheet. */
void ff_sheet_facts_say_briefed (FfSheetFacts *facts,
                                 const FfStanding *standing,
                                 const FfDay *day);

/* Adds to `missing` and `mend`: one sentence, which it takes, with where it is entered, a text that
 * stays; and all that is missing of job, place and people. */
void ff_sheet_facts_take_missing (FfSheetFacts *facts, const char *mend, char *sentence);
void ff_sheet_facts_miss (FfSheetFacts *facts, const FfDay *day);
void ff_sheet_facts_free (FfSheetFacts *facts);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfSheetFacts, ff_sheet_facts_free)
