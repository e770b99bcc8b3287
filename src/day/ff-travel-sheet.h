/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The air travel sheet of a job: its batteries shared among its people under a carrier's rule as the
 * crew has entered it; what can't go and why; what the carrier must approve; cautions. The program
 * states no rule of its own. All texts are translated, owned and never NULL. */
#pragma once

#include <glib.h>

#include "ff-carrier.h"
#include "ff-travel.h"

typedef struct {
  char *label;
  double energy_wh, mass_kg; /* NAN: not known */
  FfTravelAnswer answer;
  int person;   /* index in `people`; -1: it stays */
  gboolean approval, wanted;
  char *words;  /* "Marit Ostrander, in the cabin; the carrier must approve", "stays: quarantined" */
} FfTravelRow;

typedef struct {
  char *name;
  GPtrArray *labels; /* char * */
  double energy_wh, mass_kg;
} FfTravelPerson;

typedef struct {
  char *job, *carrier, *source, *read_on;
  gboolean example;
  GPtrArray *rows;     /* FfTravelRow */
  GPtrArray *people;   /* FfTravelPerson */
  GPtrArray *approval; /* char*: lines for the letter that asks the carrier */
  GPtrArray *cautions; /* char*: before anything is handed over */
  GPtrArray *remarks;  /* char*: weights not known, a print that differs, a share not proven */
  guint goes, wanted_left; /* wanted_left: the plan flies them, and they stay */
} FfTravelSheet;

/* `carrier` by id or name; NULL: the first that is no example, else the first. `people`: so many
 * instead of the crew of the job; 0: the crew. FF_ERROR_INPUT: no such job or carrier, no rule
 * entered, nobody to carry. */
FfTravelSheet *ff_travel_sheet_load (FfStore *store,
                                     const char *wanted_job,
                                     const char *carrier,
                                     int people,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_travel_sheet_free (FfTravelSheet *sheet);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfTravelSheet, ff_travel_sheet_free)

/* "up to 100 Wh: 20 each; up to 160 Wh: 2 each, with approval; larger: none" */
char *ff_travel_rule_words (const FfCarrier *carrier) G_GNUC_WARN_UNUSED_RESULT;

/* "100:20", "160:2:approval", "any:0": adds a size band, up to so many watt-hours, spares each ("any":
 * no limit stated). FF_ERROR_INPUT says what was found and what is accepted. */
gboolean ff_travel_read_band (FfCarrier *carrier, const char *text, GError **error);

/* Stores the published rows as rules marked as examples, with their source and date; those that are
 * there already stay as they are. */
gboolean ff_travel_add_examples (FfStore *store, GError **error);
