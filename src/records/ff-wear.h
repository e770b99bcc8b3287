/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Hours and cycles, and what is due. Nobody types them twice: to the figure that was typed once
 * comes what the flight log says since then. Batteries count flights as cycles, aircraft the hours
 * of their jobs; a propeller set or controller those of the aircraft it was fitted to or, as long as
 * nobody entered a fitting, of the one that can't go without it. */
#pragma once

#include "ff-item.h"

typedef struct {
  double logged;  /* hours, or cycles of a battery, since `used_as_of` */
  guint flights;
} FfWear;

/* By item id: FfWear of each item that the log adds to. Owns keys and values. `id` NULL: all. */
GHashTable *ff_wear_load (FfStore *store,
                          const char *id,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Typed and logged together; NAN when neither is there. */
double ff_wear_total (const FfItem *item, GHashTable *wear);

typedef enum { FF_DUE_NOT, FF_DUE_SOON, FF_DUE_NOW } FfDueAnswer;
typedef enum { FF_DUE_HOURS, FF_DUE_CYCLES, FF_DUE_DATE } FfDueUnit;

typedef struct {
  FfDueAnswer answer;
  FfDueUnit unit;
  double left; /* hours, cycles or days; negative: over. NAN: nothing is due ever */
} FfDue;

/* What is due at an item on a day (YYYY-MM-DD): the more pressing of its use and its date. Soon is
 * the last 15 per cent of the use, and 30 days before the date (common practice, no source). Pure. */
void ff_due (const FfItem *item, GHashTable *wear, const char *day, FfDue *ret_due);

/* "3.8 h left", "12 cycles left", "due 2 days ago"; NULL: nothing is due ever. */
char *ff_due_words (const FfDue *due) G_GNUC_WARN_UNUSED_RESULT;

/* Whether an item may be fitted on another: propellers on an aircraft, a filter in the frame that it
 * can't go without, or on a camera. */
gboolean ff_fitting_suits (const FfItem *item, const FfItem *on);

/* A propeller set is on this aircraft from now on; `on_id` NULL: it was taken off. */
gboolean ff_fitting_add (FfStore *store,
                         const char *item_id,
                         const char *on_id,
                         gint64 at,
                         const char *by,
                         GError **error);

/* The aircraft it is on by the last fitting: an id, "" for taken off, NULL when none was entered. */
gboolean ff_fitting_now (FfStore *store, const char *item_id, char **ret_on_id, GError **error);
