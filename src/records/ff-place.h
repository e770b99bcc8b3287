/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "ff-field.h"
#include "ff-records.h"

typedef struct {
  char *what;    /* "power line along the lane" */
  char *measure; /* "keep clear, never retrieve from it"; may be empty */
} FfHazard;

typedef struct {
  char *id;
  char *name;
  double latitude_deg, longitude_deg, elevation_m;
  char *zone; /* IANA name */
  char *takeoff_spot, *second_spot;
  char *observer_post, *second_post; /* with when to move, as "only when the aircraft is down" */
  char *emergency_location;          /* text to read to a call handler; empty: must be filled in */
  char *emergency_phone;             /* empty: must be filled in */
  /* Seen from the take-off spot; NAN: nobody has said. A post's observer faces so. */
  double second_spot_bearing_deg, second_spot_distance_m;
  double post_bearing_deg, post_distance_m, post_faces_deg;
  double second_post_bearing_deg, second_post_distance_m, second_post_faces_deg;
  GPtrArray *hazards;                /* FfHazard */
} FfPlace;

extern const FfFields ff_place_fields;
extern const FfFields ff_hazard_fields;

FfHazard *ff_hazard_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_hazard_free (FfHazard *hazard);

FfPlace *ff_place_new (void) G_GNUC_WARN_UNUSED_RESULT; /* new id, empty texts */
void ff_place_free (FfPlace *place);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfPlace, ff_place_free)

/* What belongs to one record alone: a name, latitude -90 to 90, a known zone … FF_ERROR_INPUT. */
gboolean ff_place_check (const FfPlace *place, GError **error);
gboolean ff_place_save (FfStore *store, const FfPlace *place, GError **error);
FfPlace *ff_place_load (FfStore *store, const char *id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* All places by name: an array of FfPlace that frees them. */
GPtrArray *ff_places_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* One where a job is, is refused. FF_ERROR_INPUT. */
gboolean ff_place_delete (FfStore *store, const char *id, GError **error);
