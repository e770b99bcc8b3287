/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the crew owns. One table of items; a kind adds its own fields. The state of an item is what
 * its last event says; events are appended, never changed. */
#pragma once

#include "ff-field.h"
#include "ff-names.h"
#include "ff-records.h"

typedef struct {
  char *id;
  char *label; /* as written on it: "b1", "ND32"; unique */
  FfKind kind;
  char *title;
  FfState state;
  char *state_why, *out_with, *out_until; /* of the last event; until YYYY-MM-DD or empty */
  char *case_label;  /* "1"; empty: none */
  GPtrArray *with_ids; /* char *: what this one cannot go without, in order; never NULL */
  char *serial;      /* number of the maker; empty */
  double mass_kg;    /* NAN: not known */
  double due_at;     /* NAN: none; hours or cycles, by kind */
  double used;       /* hours or cycles as typed; NAN: not counted. What the log adds: ff-wear.h */
  gint64 used_as_of; /* the instant up to which `used` counts; 0: before every flight */
  char *valid_until; /* documents: YYYY-MM-DD; empty */
  char *note;

  /* aircraft */
  double size_m, wind_limit_ms, temperature_low_c, temperature_high_c, return_height_m;
  gboolean light_fitted;
  char *camera_id;

  /* camera */
  char *apertures;  /* comma-separated, as written: "2.8" */
  char *base_iso;   /* comma-separated, preferred first */
  int iso_low, iso_high;
  char *shutter_fast, *shutter_slow; /* labels: "1/8000", "8" */
  double pitch_um, focal_mm;
  int width_px, height_px;
  double bitrate_mbits;
  char *profiles;   /* comma-separated, in the order of the bases: "standard, flat" */
  FfIsoSteps iso_steps;
  FfShutterBy shutter_by;
  double angle_low_deg, angle_high_deg; /* set by angle: the span it has; NAN: not known */
  char *frame_rates, *data_rates;       /* comma-separated; empty: not known */
  double sharp_from, sharp_to;          /* f-numbers between which the lens is sharp; NAN */
  char *camera_mount; /* which filter frames it takes, in the crew's own words; empty: not said */

  /* filter */
  double stops, stops_to; /* equal for a fixed one */
  double measured_stops;  /* NAN: not measured */
  char *engraving, *set_name, *slot;
  char *mount;            /* which camera it fits, in the same words; empty: not said */
  gboolean polariser;
  char *scratches;        /* what is wrong with the glass, in words; empty: nothing */

  /* battery */
  FfBatteryUse battery_use;
  char *chemistry;
  int cells;
  double volts, milliamp_hours, printed_wh;
  int usable_minutes;       /* after the reserve, as typed */
  double usable_at_c;       /* at this temperature */
  double new_milliohms;     /* of one cell when it was new; NAN: not known */
  double storage_percent;   /* to which it is charged to be kept; NAN: not said */

  /* charger */
  int slots, cool_minutes, charge_minutes;
  char *attended_by;        /* member id; empty: nobody */

  /* card */
  double capacity_gb;
  char *speed_class;

  /* document */
  char *holder, *reference, *valid_from, *conditions;
} FfItem;

/* What every item has, and what a kind adds: NULL when it adds nothing. The state is in neither: it
 * follows from the events, and has its own table for files. */
extern const FfFields ff_item_fields;
extern const FfFields ff_item_state_fields;
const FfFields *ff_item_kind_fields (FfKind kind);

FfItem *ff_item_new (FfKind kind) G_GNUC_WARN_UNUSED_RESULT;
void ff_item_free (FfItem *item);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfItem, ff_item_free)

/* Takes another item into what this one cannot go without, or out of it; nothing happens twice. */
void ff_item_add_with (FfItem *item, const char *id);
void ff_item_remove_with (FfItem *item, const char *id);
gboolean ff_item_goes_with (const FfItem *item, const char *id);
gboolean ff_item_same_with (const FfItem *a, const FfItem *b); /* whatever the order */

/* Whether a filter can sit before a camera: both mounts are said and differ, or not. */
gboolean ff_item_fits (const FfItem *filter, const FfItem *camera);

gboolean ff_item_check (const FfItem *item, GError **error);
/* Saves what the item is. Its state is kept by events alone: ff_item_set_state(). */
gboolean ff_item_save (FfStore *store, const FfItem *item, GError **error);
FfItem *ff_item_load (FfStore *store, const char *id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Takes the item out, of the gear lists of jobs too. One with a history, or that something else rests
 * on, is refused with what to do instead. FF_ERROR_INPUT. */
gboolean ff_item_delete (FfStore *store, const char *id, GError **error);

/* By id, label, or a unique beginning of a title, case ignored. FF_ERROR_INPUT lists the candidates. */
char *ff_item_find (FfStore *store, const char *wanted, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* By kind, then label: an array of FfItem that frees them. */
GPtrArray *ff_items_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The one of just this label among FfItem; NULL: none. */
FfItem *ff_items_labelled (const GPtrArray *items, const char *label);

/* Appends an event that changes an item's state. `until` is YYYY-MM-DD; it, `with` and `by` may be
 * NULL. A reason is needed; one that was quarantined comes back as serviceable only with who
 * rectified it, and the reason then says what was found and done. FF_ERROR_INPUT. */
gboolean ff_item_set_state (FfStore *store,
                            const char *item_id,
                            FfState state,
                            const char *why,
                            const char *with,
                            const char *until,
                            const char *by,
                            gint64 at,
                            GError **error);
