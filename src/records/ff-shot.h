/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "ff-field.h"
#include "ff-names.h"
#include "ff-records.h"

typedef struct {
  char *id;
  char *job_id;
  int position;         /* order in the shot list, from 0 */
  char *label;          /* "A" */
  char *title;          /* "harbour from above" */
  char *note;           /* "skipper agreed; abeam, never over the vessel" */
  FfView view;
  double bearing_deg;   /* camera; NAN: all round or straight down */
  double height_from_m, height_to_m;
  char *track;          /* "out along 060°" */
  double speed_ms;      /* 0: still */
  FfIntent intent;
  double fps;           /* video, slow */
  double angle_deg, angle_from_deg, angle_to_deg;
  int frames;           /* bracket */
  double step_stops;    /* bracket */
  double interval_s;    /* time-lapse */
  double max_iso;       /* 0: the camera's */
  double hold_aperture; /* as written; 0: free */
  int minutes;
  int window_from, window_to; /* minutes after local midnight of the job's date */
  gboolean fixed_time;  /* someone else keeps this time: a ferry, a train */
  gboolean most_wanted;
  double weight;        /* cost of not flying it; 0: the default */
  double subject_offset_stops; /* +1 snow or pale sand, -1 dark forest */
  char *match_group;    /* shots that must look alike; empty: none */
  gboolean must_fly;    /* left out only where nothing else can be done */
  int sun_leaves;       /* behind a hill, by the crew's own eyes: minutes after local midnight, or -1 */
  gboolean auto_iso;    /* the camera follows the light by ISO, up to max_iso */
} FfShot;

extern const FfFields ff_shot_fields;

FfShot *ff_shot_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT; /* video, 25 frames, 180° */
void ff_shot_free (FfShot *shot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfShot, ff_shot_free)

/* A window that ends before it starts or is shorter than the shot, minutes out of 1 to 120 … */
gboolean ff_shot_check (const FfShot *shot, GError **error);

/* The clock at which the window closes, or the sun leaves the subject before that. */
int ff_shot_closes (const FfShot *shot);

gboolean ff_shot_save (FfStore *store, const FfShot *shot, GError **error);

/* The same for a shot from elsewhere, which must not replace one that is there. */
gboolean ff_shot_add (FfStore *store, const FfShot *shot, GError **error);

FfShot *ff_shot_load (FfStore *store, const char *id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean ff_shot_delete (FfStore *store, const char *id, GError **error);

/* In the order of the list: an array of FfShot that frees them. */
GPtrArray *ff_shots_load (FfStore *store,
                          const char *job_id,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;
