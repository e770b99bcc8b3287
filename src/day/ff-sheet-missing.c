/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is missing before sheets can be trusted, the heaviest first, and where it is entered. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-private.h"
#include "ff-sheet-facts.h"

void
ff_sheet_facts_take_missing (FfSheetFacts *facts, const char *mend, char *sentence)
{
  g_ptr_array_add (facts->missing, sentence);
  g_ptr_array_add (facts->mend, (gpointer) mend);
}

static void
miss (FfSheetFacts *facts, gboolean missing, const char *mend, const char *sentence)
{
  if (missing)
    ff_sheet_facts_take_missing (facts, mend, g_strdup (sentence));
}

static void
miss_people (FfSheetFacts *facts, const FfDay *day)
{
  miss (facts, day->crew->len == 0, "day:crew", _ ("No crew is entered for this job."));
  miss (facts, day->crew->len > 0 && !ff_job_crew_has (day->crew, FF_ROLE_PILOT), "day:crew",
        _ ("No pilot is named."));
  if (!ff_job_crew_has (day->crew, FF_ROLE_OBSERVER))
    return;
  miss (facts, *facts->observer_post == '\0', "day:observer_post",
        _ ("The observer has no post: say where to stand."));
  miss (facts,
        *facts->observer_post != '\0'
            && (isnan (day->place->post_bearing_deg) || isnan (day->place->post_faces_deg)),
        "day:observer_post",
        _ ("The observer's post is not on the sketch: say where it lies and which way it faces."));
}

void
ff_sheet_facts_miss (FfSheetFacts *facts, const FfDay *day)
{
  miss (facts, *facts->emergency_location == '\0', "day:emergency_location",
        _ ("Emergency location text is blank: fill it in."));
  miss (facts, *facts->emergency_phone == '\0', "day:emergency_phone",
        _ ("Emergency telephone is blank: fill it in."));
  miss (facts, *facts->abort_word == '\0', "day:abort_word",
        _ ("Abort word is not chosen: agree on one."));
  miss_people (facts, day);
  miss (facts, *facts->takeoff_spot == '\0', "day:takeoff_spot",
        _ ("No meeting point: say where the aircraft takes off."));
  miss (facts, *facts->second_spot == '\0', "day:second_spot",
        _ ("No second landing spot: say where to go when the first is taken."));
}
