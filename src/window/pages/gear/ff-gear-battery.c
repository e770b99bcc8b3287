/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-battery.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-battery-log.h"
#include "ff-columns.h"
#include "ff-entry.h"
#include "ff-flight.h"
#include "ff-flow.h"
#include "ff-gear-chart.h"
#include "ff-gear-parts.h"
#include "ff-limit.h"
#include "ff-number.h"
#include "ff-pick.h"
#include "ff-usable.h"

struct _FfGearBattery {
  GtkWidget parent_instance;

  FfKeeper *keeper;
  char *id;
  GtkWidget *box, *minutes_chart, *cells_chart;
  GtkLabel *usable, *measured;
  FfEntry *cells, *temperature, *found;
  FfPick *sign;
  GtkWidget *decisions[FF_DECISION_KEEP + 1];
};

G_DEFINE_FINAL_TYPE (FfGearBattery, ff_gear_battery, GTK_TYPE_WIDGET)

/* Measuring */

static gboolean
read_temperature (FfGearBattery *self, double *ret_celsius, GError **error)
{
  g_autofree char *typed = g_strstrip (g_strdup (ff_entry_get_text (self->temperature)));

  return *typed == '\0'
         || ff_number_parse (_ ("temperature"), typed, -60, 120, ret_celsius, error);
}

static void
on_measured (FfGearBattery *self)
{
  const FfItem *item = ff_keeper_find_item (self->keeper, self->id);
  g_autoptr (FfResistance) resistance = ff_resistance_new ();
  g_autoptr (GError) error = NULL;

  if (item == NULL)
    return;
  if (ff_resistance_parse (resistance, ff_entry_get_text (self->cells), item->cells, &error)
      && read_temperature (self, &resistance->temperature_c, &error))
    ff_keeper_add_resistance (self->keeper, self->id, resistance, &error);
  ff_entry_complain (self->cells, error != NULL ? error->message : NULL);
  if (error == NULL)
    ff_entry_reset (self->cells, "");
}

/* Deciding */

static void
on_decided (FfGearBattery *self, GtkWidget *button)
{
  g_autofree char *found = g_strstrip (g_strdup (ff_entry_get_text (self->found)));
  g_autoptr (GError) error = NULL;
  int decision = 0;

  while (decision < FF_DECISION_KEEP && self->decisions[decision] != button)
    decision++;
  ff_keeper_add_incident (self->keeper, self->id, (FfSign) ff_pick_get_value (self->sign),
                          (FfDecision) decision, found, &error);
  ff_entry_complain (self->found, error != NULL ? error->message : NULL);
  if (error == NULL)
    ff_entry_reset (self->found, "");
}

/* A swollen one is not kept. */
static void
on_sign (FfGearBattery *self)
{
  gtk_widget_set_sensitive (self->decisions[FF_DECISION_KEEP],
                            ff_pick_get_value (self->sign) != FF_SIGN_SWELLING);
}

/* Showing */

static void
show_usable (FfGearBattery *self, FfStore *store, const FfItem *item)
{
  const FfJob *job = ff_keeper_job (self->keeper);
  g_autoptr (GPtrArray) flights = ff_battery_flights_load (store, item->id, NULL);
  g_autoptr (GPtrArray) limits = ff_limits_load (store, NULL);
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (GArray) values = g_array_new (FALSE, FALSE, sizeof (double));
  g_autofree char *behind = NULL;
  g_autofree char *words = NULL;
  double reserve;
  FfUsable usable;

  if (flights == NULL || limits == NULL)
    return;
  reserve = ff_usable_reserve (limits);
  ff_usable (item, flights, job != NULL ? job->temperature_c : NAN, reserve, &usable);
  behind = ff_usable_words (&usable);
  /* Translators: minutes a battery is good for, then what stands behind the figure. */
  words = g_strdup_printf (_ ("A plan counts with %d min: %s. A maker's hover time is not usable "
                              "minutes."),
                           usable.minutes, behind);
  gtk_label_set_label (self->usable, words);
  for (guint i = 0; i < flights->len; i++)
    {
      const FfBatteryFlight *flight = g_ptr_array_index (flights, i);
      double minutes = ff_battery_minutes (flight->minutes, flight->percent_off,
                                           flight->percent_down, reserve);

      if (isnan (minutes))
        continue;
      g_array_append_val (times, flight->off);
      g_array_append_val (values, minutes);
    }
  ff_gear_chart_set (self->minutes_chart, times, values, _ ("Minutes a charge"));
}

static char *
measured_words (const FfItem *item, GPtrArray *measured)
{
  const FfResistance *last
      = measured->len > 0 ? g_ptr_array_index (measured, measured->len - 1) : NULL;
  double rise;
  g_autofree char *worst = NULL;
  g_autofree char *percent = NULL;

  if (last == NULL)
    return g_strdup (_ ("No cell was measured yet. Compare only at the same temperature and charge."));
  rise = ff_battery_rise (ff_resistance_worst (last), ff_resistance_new_cell (item, measured));
  worst = ff_number_format (ff_resistance_worst (last), 1);
  percent = ff_number_format (rise * 100, 0);
  if (ff_battery_rise_class (rise) == FF_RISE_END)
    return g_strdup_printf (_ ("□ Worst cell %s mΩ, %s %% above new: at its end, retire it?"), worst,
                            percent);
  if (ff_battery_rise_class (rise) == FF_RISE_WATCH)
    return g_strdup_printf (_ ("□ Worst cell %s mΩ, %s %% above new: watch it"), worst, percent);
  return g_strdup_printf (_ ("Worst cell %s mΩ, %s %% above new"), worst, percent);
}

static void
show_measured (FfGearBattery *self, FfStore *store, const FfItem *item)
{
  g_autoptr (GPtrArray) measured = ff_resistances_load (store, item->id, NULL);
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (GArray) values = g_array_new (FALSE, FALSE, sizeof (double));
  g_autofree char *words = NULL;

  if (measured == NULL)
    return;
  words = measured_words (item, measured);
  gtk_label_set_label (self->measured, words);
  for (guint i = 0; i < measured->len; i++)
    {
      const FfResistance *one = g_ptr_array_index (measured, i);
      double worst = ff_resistance_worst (one);

      g_array_append_val (times, one->at);
      g_array_append_val (values, worst);
    }
  ff_gear_chart_set (self->cells_chart, times, values, _ ("Worst cell, mΩ"));
}

/* Building */

static void
build_minutes (FfGearBattery *self)
{
  GtkWidget *sheet = ff_gear_sheet_new (_ ("Usable minutes"));

  self->usable = ff_gear_line_new (GTK_BOX (sheet), "", NULL);
  self->minutes_chart = ff_gear_chart_new ();
  gtk_box_append (GTK_BOX (sheet), self->minutes_chart);
  gtk_box_append (GTK_BOX (self->box), sheet);
}

static void
build_cells (FfGearBattery *self)
{
  GtkWidget *sheet = ff_gear_sheet_new (_ ("Resistance of the cells"));
  GtkWidget *columns = ff_columns_new (17, 3);

  self->measured = ff_gear_line_new (GTK_BOX (sheet), "", NULL);
  self->cells_chart = ff_gear_chart_new ();
  self->temperature = FF_ENTRY (ff_entry_new (_ ("At a temperature of"), _ ("°C")));
  self->cells = FF_ENTRY (ff_entry_new (_ ("Cells, one number each, then Enter"), _ ("mΩ")));
  g_signal_connect_object (self->cells, "entered", G_CALLBACK (on_measured), self,
                           G_CONNECT_SWAPPED);
  ff_columns_append (FF_COLUMNS (columns), GTK_WIDGET (self->temperature), FALSE);
  ff_columns_append (FF_COLUMNS (columns), GTK_WIDGET (self->cells), TRUE);
  gtk_box_append (GTK_BOX (sheet), self->cells_chart);
  gtk_box_append (GTK_BOX (sheet), columns);
  gtk_box_append (GTK_BOX (self->box), sheet);
}

/* The caution stands before what it guards. */
static void
build_decision (FfGearBattery *self)
{
  GtkWidget *sheet = ff_gear_sheet_new (_ ("Swollen, dropped or wet?"));
  GtkWidget *buttons = ff_flow_new (8, 8);

  ff_gear_line_new (
      GTK_BOX (sheet),
      _ ("CAUTION  Set it apart outdoors, away from people and what burns. Do not charge it, fly it "
         "or post it. Smoke or hiss: get out and call for help; under a minute may be all. When in "
         "doubt, quarantine. Ask the carrier and the recycler; local rules come first."),
      "asking");
  self->sign = FF_PICK (ff_pick_new (_ ("What was it"), &ff_names_sign));
  self->found = FF_ENTRY (ff_entry_new (_ ("What was found"), NULL));
  g_signal_connect_object (self->sign, "picked", G_CALLBACK (on_sign), self, G_CONNECT_SWAPPED);
  ff_pick_set_value (self->sign, FF_SIGN_SWELLING);
  gtk_box_append (GTK_BOX (sheet), GTK_WIDGET (self->sign));
  gtk_box_append (GTK_BOX (sheet), GTK_WIDGET (self->found));
  for (int i = 0; i <= FF_DECISION_KEEP; i++)
    {
      static const char *const labels[] = { N_ ("‖ _Quarantine it"), N_ ("– _Retire it"),
                                            N_ ("■ _Keep it in use") };

      self->decisions[i]
          = gtk_button_new_with_mnemonic (g_dgettext (GETTEXT_PACKAGE, labels[i]));
      g_signal_connect_object (self->decisions[i], "clicked", G_CALLBACK (on_decided), self,
                               G_CONNECT_SWAPPED);
      ff_flow_append (FF_FLOW (buttons), self->decisions[i], -1);
    }
  gtk_box_append (GTK_BOX (sheet), buttons);
  gtk_box_append (GTK_BOX (self->box), sheet);
  on_sign (self);
}

static void
ff_gear_battery_dispose (GObject *object)
{
  FfGearBattery *self = FF_GEAR_BATTERY (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->keeper);
  G_OBJECT_CLASS (ff_gear_battery_parent_class)->dispose (object);
}

static void
ff_gear_battery_finalize (GObject *object)
{
  g_free (FF_GEAR_BATTERY (object)->id);
  G_OBJECT_CLASS (ff_gear_battery_parent_class)->finalize (object);
}

static void
ff_gear_battery_class_init (FfGearBatteryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ff_gear_battery_dispose;
  G_OBJECT_CLASS (klass)->finalize = ff_gear_battery_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
ff_gear_battery_init (FfGearBattery *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  build_minutes (self);
  build_cells (self);
  build_decision (self);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

void
ff_gear_battery_show (FfGearBattery *self, FfKeeper *keeper, const FfItem *item)
{
  FfStore *store = ff_keeper_store (keeper);

  g_return_if_fail (FF_IS_GEAR_BATTERY (self));
  g_set_object (&self->keeper, keeper);
  gtk_widget_set_visible (GTK_WIDGET (self), item->kind == FF_KIND_BATTERY);
  if (item->kind != FF_KIND_BATTERY || store == NULL)
    return;
  if (g_strcmp0 (self->id, item->id) != 0)
    {
      ff_entry_reset (self->cells, "");
      ff_entry_reset (self->temperature, "");
      ff_entry_reset (self->found, "");
    }
  ff_set_text (&self->id, item->id);
  show_usable (self, store, item);
  show_measured (self, store, item);
}
