/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is measured at a battery and what happened to it. All of it is appended, never changed. */
#pragma once

#include "ff-item.h"

/* The resistance of each cell, in milliohms, at a temperature. Compare only what was measured at
 * the same temperature and charge. */
typedef struct {
  gint64 at;
  double temperature_c; /* NAN: not measured */
  GArray *milliohms;    /* double, cell 1 first */
  char *by;
} FfResistance;

FfResistance *ff_resistance_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_resistance_free (FfResistance *resistance);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfResistance, ff_resistance_free)

/* "3.1 3.2 3.0 3.4": one number a cell, separated by blanks, commas or semicolons (a comma beside
 * blanks separates, else it is the decimal one). FF_ERROR_INPUT says how many cells are wanted;
 * `cells` 0: any number. */
gboolean ff_resistance_parse (FfResistance *resistance,
                              const char *text,
                              int cells,
                              GError **error);
double ff_resistance_worst (const FfResistance *resistance); /* the highest cell */
gboolean ff_resistance_add (FfStore *store,
                            const char *battery_id,
                            const FfResistance *resistance,
                            GError **error);

/* By time, the oldest first: an array of FfResistance that frees them. */
GPtrArray *ff_resistances_load (FfStore *store,
                                const char *battery_id,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The resistance that a rise counts from: the one typed for a new cell, else the first measured;
 * NAN when there is neither. */
double ff_resistance_new_cell (const FfItem *battery, GPtrArray *resistances);

/* How full and how warm it is on the day. */
typedef struct {
  gint64 at;
  FfBatteryDayState state;
  gint64 until;         /* charging until then; 0: not said */
  double percent;       /* NAN: not said */
  double temperature_c; /* NAN: not measured */
  char *by;
} FfBatteryDay;

void ff_battery_day_free (FfBatteryDay *day);
gboolean ff_battery_day_add (FfStore *store,
                             const char *battery_id,
                             const FfBatteryDay *day,
                             GError **error);

/* Full, or so nearly that it goes on no charger: 95 % (common practice, no source). */
gboolean ff_battery_day_is_full (const FfBatteryDay *day);

/* "part-used, 60 %, 21 °C", "charging until 21:40"; by whom and when, on this laptop's clock. NULL
 * says that nothing was entered. */
char *ff_battery_day_words (const FfBatteryDay *day) G_GNUC_WARN_UNUSED_RESULT;

/* The last of each battery, by its id: FfBatteryDay. Owns keys and values. */
GHashTable *ff_battery_days_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Swelling, a drop, water: what was found, and the decision, which sets the state of the battery in
 * the same change. A swollen battery is never kept in use; whoever decides is named. FF_ERROR_INPUT. */
typedef struct {
  gint64 at;
  FfSign sign;
  FfDecision decision;
  char *found;
  char *by;
} FfIncident;

void ff_incident_free (FfIncident *incident);
gboolean ff_incident_add (FfStore *store,
                          const char *battery_id,
                          const FfIncident *incident,
                          GError **error);

/* By time, the newest first: an array of FfIncident that frees them. */
GPtrArray *ff_incidents_load (FfStore *store,
                              const char *battery_id,
                              GError **error) G_GNUC_WARN_UNUSED_RESULT;
