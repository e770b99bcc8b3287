/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-print-item.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-battery-log.h"
#include "ff-battery.h"
#include "ff-civil.h"
#include "ff-filter.h"
#include "ff-flight.h"
#include "ff-item-event.h"
#include "ff-item-json.h"
#include "ff-limit.h"
#include "ff-number.h"
#include "ff-usable.h"
#include "ff-wear.h"

#define MOST_EVENTS 1000

static void
json_text (FfJson *json, const char *name, const char *text)
{
  ff_json_text (json, name, text != NULL && *text != '\0' ? text : NULL);
}

static void
json_instant (FfJson *json, const char *name, gint64 at)
{
  g_autofree char *text = ff_instant_format ((double) at, NULL);

  ff_json_text (json, name, text);
}

void
ff_print_item_line (FfConsole *console, const FfItem *item)
{
  FfJson *json = console->json;

  ff_json_begin_object (json, NULL);
  ff_json_text (json, "id", item->id);
  ff_json_text (json, "label", item->label);
  ff_json_text (json, "kind", ff_name_token (&ff_names_kind, (int) item->kind));
  json_text (json, "title", item->title);
  ff_json_text (json, "state", ff_name_token (&ff_names_state, (int) item->state));
  json_text (json, "case", item->case_label);
  ff_json_end (json);
  ff_console_line (console, "%-12s %-13s %-12s %-4s %s", item->label,
                   ff_name_text (&ff_names_kind, (int) item->kind),
                   ff_name_text (&ff_names_state, (int) item->state), item->case_label,
                   item->title);
}

/* ---- One item ---- */

static void
print_fields (FfConsole *console, const FfItem *item)
{
  ff_item_json_write (console->json, item);
  json_text (console->json, "case", item->case_label);
  ff_console_line (console, "%s  %s%s%s", item->label,
                   ff_name_text (&ff_names_kind, (int) item->kind),
                   *item->title != '\0' ? ", " : "", item->title);
  ff_console_row (console, _ ("State"), "%s%s%s",
                  ff_name_text (&ff_names_state, (int) item->state),
                  *item->state_why != '\0' ? ": " : "", item->state_why);
  if (*item->out_with != '\0' || *item->out_until != '\0')
    ff_console_row (console, _ ("With"), "%s %s", item->out_with, item->out_until);
  if (*item->case_label != '\0')
    ff_console_row (console, _ ("Case"), "%s", item->case_label);
}

static gboolean
print_with (FfConsole *console, FfStore *store, const FfItem *item, GError **error)
{
  g_autoptr (GString) labels = g_string_new (NULL);

  ff_json_begin_array (console->json, "goes_with");
  for (guint i = 0; i < item->with_ids->len; i++)
    {
      g_autoptr (FfItem) other
          = ff_item_load (store, g_ptr_array_index (item->with_ids, i), error);

      if (other == NULL)
        return FALSE;
      ff_json_text (console->json, NULL, other->label);
      g_string_append_printf (labels, "%s%s", i > 0 ? ", " : "", other->label);
    }
  ff_json_end (console->json);
  if (labels->len > 0)
    ff_console_row (console, _ ("Not without"), "%s", labels->str);
  return TRUE;
}

static gboolean
print_wear (FfConsole *console, FfStore *store, const FfItem *item, GError **error)
{
  static const char *const answers[] = { "not", "soon", "now" };
  g_autoptr (GHashTable) wear = ff_wear_load (store, item->id, error);
  g_autoptr (GDateTime) today = g_date_time_new_now_local ();
  g_autofree char *day = g_date_time_format (today, "%Y-%m-%d");
  g_autofree char *words = NULL;
  g_autofree char *used = NULL;
  FfDue due;
  double total;

  if (wear == NULL)
    return FALSE;
  ff_due (item, wear, day, &due);
  words = ff_due_words (&due);
  total = ff_wear_total (item, wear);
  used = ff_number_format (total, 1);
  ff_json_number (console->json,
                  item->kind == FF_KIND_BATTERY ? "used_cycles" : "used_hours", total);
  ff_json_text (console->json, "due", isnan (due.left) ? NULL : answers[due.answer]);
  ff_json_number (console->json, "due_left", due.left);
  if (isfinite (total))
    ff_console_row (console, item->kind == FF_KIND_BATTERY ? _ ("Cycles") : _ ("Hours"), "%s",
                    used);
  if (words != NULL)
    ff_console_row (console, _ ("Due"), "%s", words);
  return TRUE;
}

static gboolean
print_fitting (FfConsole *console, FfStore *store, const FfItem *item, GError **error)
{
  g_autofree char *on_id = NULL;
  g_autoptr (FfItem) on = NULL;

  if (!ff_fitting_now (store, item->id, &on_id, error))
    return FALSE;
  if (on_id != NULL && *on_id != '\0' && (on = ff_item_load (store, on_id, error)) == NULL)
    return FALSE;
  ff_json_text (console->json, "fitted_on", on != NULL ? on->label : NULL);
  if (on_id != NULL)
    ff_console_row (console, _ ("Fitted on"), "%s", on != NULL ? on->label : _ ("nothing"));
  return TRUE;
}

static void
print_filter (FfConsole *console, const FfItem *item)
{
  g_autofree char *stops = ff_stops_format (item->stops);
  g_autofree char *density = ff_number_format (ff_filter_density (item->stops), 2);
  g_autofree char *factor = ff_number_format (ff_filter_factor (item->stops), 1);

  ff_json_number (console->json, "density", ff_filter_density (item->stops));
  ff_json_number (console->json, "factor", ff_filter_factor (item->stops));
  ff_console_row (console, _ ("Strength"), _ ("%s, factor %s, density %s"), stops, factor, density);
}

/* ---- A battery ---- */

static gboolean
print_usable (FfConsole *console, FfStore *store, const FfItem *item, GError **error)
{
  g_autoptr (GPtrArray) flights = ff_battery_flights_load (store, item->id, error);
  g_autoptr (GPtrArray) limits = flights != NULL ? ff_limits_load (store, error) : NULL;

  if (limits == NULL)
    return FALSE;
  if (flights->len == 0)
    ff_console_row (console, _ ("Usable"),
                    _ ("%d min as typed, no log yet (hover time is not usable minutes)"),
                    item->usable_minutes);
  ff_json_begin_array (console->json, "usable");
  for (int band = 0; band < FF_N_TEMPERATURE_BANDS; band++)
    {
      g_autofree char *words = NULL;
      FfUsable usable;

      /* Any temperature of the band: its middle, or five degrees beyond the last border. */
      ff_usable (item, flights, band * 10 - 5, ff_usable_reserve (limits), &usable);
      words = ff_usable_words (&usable);
      ff_json_begin_object (console->json, NULL);
      ff_json_number (console->json, "from_c", band > 0 ? (band - 1) * 10 : NAN);
      ff_json_number (console->json, "to_c", band < FF_N_TEMPERATURE_BANDS - 1 ? band * 10 : NAN);
      ff_json_integer (console->json, "minutes", usable.minutes);
      ff_json_text (console->json, "from", usable.from_log ? "log" : "typed");
      ff_json_integer (console->json, "flights", usable.flights);
      ff_json_number (console->json, "mean_minutes", usable.mean);
      ff_json_number (console->json, "worst_minutes", usable.worst);
      ff_json_end (console->json);
      if (usable.flights > 0)
        ff_console_row (console, ff_usable_band_text (usable.band), _ ("%d min, %s"),
                        usable.minutes, words);
    }
  ff_json_end (console->json);
  return TRUE;
}

static void
print_energy (FfConsole *console, const FfItem *item)
{
  double energy = ff_battery_energy_wh (item->volts, item->milliamp_hours);
  gboolean asked = isfinite (energy) && isfinite (item->printed_wh)
                   && ff_battery_print_differs (item->printed_wh, energy);
  g_autofree char *computed = ff_number_format (energy, 2);
  g_autofree char *printed = ff_number_format (item->printed_wh, 2);

  ff_json_number (console->json, "computed_wh", energy);
  ff_json_flag (console->json, "wh_differ", asked);
  if (isfinite (energy))
    ff_console_row (console, _ ("Energy"), _ ("%s Wh from V × Ah, %s Wh as printed"), computed,
                    printed);
  if (asked)
    ff_console_line (console, "%s",
                     _ ("The two differ by more than 2 %: one of the figures is misread."));
}

static gboolean
print_resistances (FfConsole *console, FfStore *store, const FfItem *item, GError **error)
{
  static const char *const rises[] = { "none", "watch", "end" };
  g_autoptr (GPtrArray) measured = ff_resistances_load (store, item->id, error);
  double fresh;

  if (measured == NULL)
    return FALSE;
  fresh = ff_resistance_new_cell (item, measured);
  ff_json_begin_array (console->json, "resistances");
  for (guint i = 0; i < measured->len; i++)
    {
      const FfResistance *one = g_ptr_array_index (measured, i);
      double rise = ff_battery_rise (ff_resistance_worst (one), fresh);
      g_autofree char *worst = ff_number_format (ff_resistance_worst (one), 2);
      g_autofree char *percent = ff_number_format (rise * 100, 0);
      g_autofree char *at = ff_instant_format ((double) one->at, NULL);

      ff_json_begin_object (console->json, NULL);
      ff_json_text (console->json, "at", at);
      ff_json_number (console->json, "temperature_c", one->temperature_c);
      ff_json_begin_array (console->json, "milliohms");
      for (guint cell = 0; cell < one->milliohms->len; cell++)
        ff_json_number (console->json, NULL, g_array_index (one->milliohms, double, cell));
      ff_json_end (console->json);
      ff_json_number (console->json, "rise_percent", rise * 100);
      ff_json_text (console->json, "rise", rises[ff_battery_rise_class (rise)]);
      ff_json_end (console->json);
      ff_console_row (console, at, _ ("worst cell %s mΩ, %s %% above new"), worst, percent);
    }
  ff_json_end (console->json);
  return TRUE;
}

static gboolean
print_day (FfConsole *console, FfStore *store, const FfItem *item, GError **error)
{
  g_autoptr (GHashTable) days = ff_battery_days_load (store, error);
  const FfBatteryDay *day = days != NULL ? g_hash_table_lookup (days, item->id) : NULL;
  g_autofree char *words = NULL;

  if (days == NULL)
    return FALSE;
  ff_json_text (console->json, "day_state",
                day != NULL ? ff_name_token (&ff_names_battery_day, (int) day->state) : NULL);
  ff_json_number (console->json, "day_percent", day != NULL ? day->percent : NAN);
  ff_json_number (console->json, "day_temperature_c", day != NULL ? day->temperature_c : NAN);
  if (day != NULL && day->until != 0)
    json_instant (console->json, "day_until", day->until);
  else
    ff_json_text (console->json, "day_until", NULL);
  words = ff_battery_day_words (day);
  if (day != NULL)
    ff_console_row (console, _ ("Today"), "%s", words);
  return TRUE;
}

static gboolean
print_battery (FfConsole *console, FfStore *store, const FfItem *item, GError **error)
{
  print_energy (console, item);
  return print_usable (console, store, item, error)
         && print_resistances (console, store, item, error)
         && print_day (console, store, item, error);
}

/* ---- The story ---- */

static void
print_event (FfConsole *console, const FfItemEvent *event)
{
  g_autofree char *at = ff_instant_format ((double) event->at, NULL);

  ff_json_begin_object (console->json, NULL);
  json_instant (console->json, "at", event->at);
  ff_json_text (console->json, "state", ff_name_token (&ff_names_state, (int) event->state));
  ff_json_text (console->json, "why", event->why);
  json_text (console->json, "with", event->out_with);
  json_text (console->json, "until", event->out_until);
  json_text (console->json, "by", event->by);
  ff_json_end (console->json);
  ff_console_line (console, "  %s  %-12s  %s%s%s", at,
                   ff_name_text (&ff_names_state, (int) event->state), event->why,
                   *event->by != '\0' ? "  " : "", event->by);
}

static gboolean
print_events (FfConsole *console, FfStore *store, const FfItem *item, GError **error)
{
  g_autoptr (GPtrArray) events = ff_item_events_load (store, item->id, MOST_EVENTS, error);

  if (events == NULL)
    return FALSE;
  ff_json_begin_array (console->json, "events");
  for (guint i = 0; i < events->len; i++)
    print_event (console, g_ptr_array_index (events, i));
  ff_json_end (console->json);
  return TRUE;
}

gboolean
ff_print_item (FfConsole *console, FfStore *store, const FfItem *item, GError **error)
{
  print_fields (console, item);
  if (item->kind == FF_KIND_FILTER)
    print_filter (console, item);
  return print_with (console, store, item, error) && print_wear (console, store, item, error)
         && print_fitting (console, store, item, error)
         && (item->kind != FF_KIND_BATTERY || print_battery (console, store, item, error))
         && print_events (console, store, item, error);
}
