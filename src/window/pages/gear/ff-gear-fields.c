/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-fields.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-number.h"

/* What every item has */

static const FfGearField name_fields[] = {
  /* Translators: what is written on the item itself: "b1". */
  { "label", N_ ("Label on it"), NULL, FF_GEAR_LABEL },
  { "case_label", N_ ("Case"), NULL },
  { "title", N_ ("What it is"), NULL, FF_GEAR_PLAIN, TRUE },
};

static const FfGearField keep_fields[] = {
  { "serial", N_ ("Serial number"), NULL },
  { "mass_kg", N_ ("Mass"), N_ ("kg") },
  { "note", N_ ("Note"), NULL, FF_GEAR_PLAIN, TRUE },
};

/* Items that wear: by hours, a battery by cycles. */
static const FfGearField hours_fields[] = {
  { "used", N_ ("Used so far"), N_ ("h") },
  /* Translators: at how many hours the item is due for a change or a look. */
  { "due_at", N_ ("Due at"), N_ ("h") },
  { "serial", N_ ("Serial number"), NULL },
  { "mass_kg", N_ ("Mass"), N_ ("kg") },
  { "note", N_ ("Note"), NULL, FF_GEAR_PLAIN, TRUE },
};

static const FfGearField cycles_fields[] = {
  /* Translators: charges of a battery. */
  { "used", N_ ("Used so far"), N_ ("cycles") },
  { "due_at", N_ ("Due at"), N_ ("cycles") },
  { "serial", N_ ("Serial number"), NULL },
  { "mass_kg", N_ ("Mass"), N_ ("kg") },
  { "note", N_ ("Note"), NULL, FF_GEAR_PLAIN, TRUE },
};

/* What a kind adds */

static const FfGearField aircraft_fields[] = {
  { "camera_id", N_ ("Its camera"), NULL },
  { "size_m", N_ ("Size across"), N_ ("m") },
  { "wind_limit_ms", N_ ("Wind limit"), N_ ("m/s") },
  { "temperature_low_c", N_ ("Lowest temperature"), N_ ("°C") },
  { "temperature_high_c", N_ ("Highest temperature"), N_ ("°C") },
  { "return_height_m", N_ ("Height of the automatic return"), N_ ("m") },
  { "light_fitted", N_ ("A light is fitted"), NULL },
};

static const FfGearField exposure_fields[] = {
  { "apertures", N_ ("Aperture, or a list"), NULL, FF_GEAR_APERTURES },
  { "base_iso", N_ ("Base ISO"), NULL, FF_GEAR_BASES },
  /* Translators: picture profiles of a camera, one for each base ISO: "standard, flat". */
  { "profiles", N_ ("Picture profiles"), NULL },
  { "iso_low", N_ ("Lowest ISO"), NULL, FF_GEAR_ISO },
  { "iso_high", N_ ("Highest ISO"), NULL, FF_GEAR_ISO },
  { "iso_steps", N_ ("ISO goes in"), NULL },
  { "shutter_fast", N_ ("Fastest shutter"), N_ ("s"), FF_GEAR_SHUTTER },
  { "shutter_slow", N_ ("Slowest shutter"), N_ ("s"), FF_GEAR_SHUTTER },
  { "shutter_by", N_ ("Shutter is set"), NULL },
  { "angle_low_deg", N_ ("Smallest shutter angle"), N_ ("°") },
  { "angle_high_deg", N_ ("Largest shutter angle"), N_ ("°") },
  /* Translators: f-numbers between which a lens is sharp. */
  { "sharp_from", N_ ("Sharp from f/"), NULL },
  { "sharp_to", N_ ("Sharp to f/"), NULL },
};

static const FfGearField picture_fields[] = {
  { "focal_mm", N_ ("Focal length"), N_ ("mm") },
  /* Translators: the distance between two pixels of the sensor. */
  { "pitch_um", N_ ("Pixel pitch"), N_ ("µm") },
  { "width_px", N_ ("Width"), N_ ("px"), FF_GEAR_COUNT },
  { "height_px", N_ ("Height"), N_ ("px"), FF_GEAR_COUNT },
  { "frame_rates", N_ ("Frame rates, a list"), N_ ("frames/s") },
  { "bitrate_mbits", N_ ("Data rate of video"), N_ ("Mbit/s") },
  { "data_rates", N_ ("All data rates, a list"), N_ ("Mbit/s") },
  /* Translators: which filter frames a camera takes, in the crew's own words. */
  { "mount", N_ ("Filter mount"), NULL },
};

static const FfGearField filter_fields[] = {
  { "stops", N_ ("Strength"), NULL, FF_GEAR_STRENGTH },
  { "measured_stops", N_ ("Measured"), N_ ("stops") },
  { "engraving", N_ ("Engraved"), NULL },
  { "set_name", N_ ("Set"), NULL },
  /* Translators: the place of a filter in its wallet. */
  { "slot", N_ ("Slot in the wallet"), NULL },
  /* Translators: which camera a filter fits, in the same words as there. */
  { "mount", N_ ("Fits the mount"), NULL },
  /* Translators: a filter that is a polariser as well. */
  { "polariser", N_ ("It polarises, too"), NULL },
  { "scratches", N_ ("Scratches and marks"), NULL, FF_GEAR_PLAIN, TRUE },
};

static const FfGearField battery_fields[] = {
  /* Translators: what a battery drives: the aircraft, the controller… */
  { "battery_use", N_ ("Battery of"), NULL },
  { "usable_minutes", N_ ("Usable minutes after the reserve"), N_ ("min"), FF_GEAR_WANTED },
  { "usable_at_c", N_ ("At a temperature of"), N_ ("°C") },
};

static const FfGearField energy_fields[] = {
  { "volts", N_ ("Nominal voltage"), N_ ("V") },
  { "milliamp_hours", N_ ("Capacity"), N_ ("mAh") },
  { "printed_wh", N_ ("Energy, as printed on it"), N_ ("Wh") },
  { "chemistry", N_ ("Chemistry"), NULL },
  { "cells", N_ ("Cells in series"), NULL, FF_GEAR_COUNT },
  /* Translators: the resistance of one cell of a battery when it was new. */
  { "new_milliohms", N_ ("Resistance of a new cell"), N_ ("mΩ") },
  /* Translators: the charge at which a battery is kept. */
  { "storage_percent", N_ ("Storage charge"), N_ ("%") },
};

static const FfGearField charger_fields[] = {
  { "slots", N_ ("Batteries at once"), NULL },
  { "cool_minutes", N_ ("Time to cool first"), N_ ("min") },
  { "charge_minutes", N_ ("Time to charge"), N_ ("min"), FF_GEAR_WANTED },
  { "attended_by", N_ ("Who attends it"), NULL },
};

static const FfGearField card_fields[] = {
  { "capacity_gb", N_ ("Capacity"), N_ ("GB"), FF_GEAR_WANTED },
  { "speed_class", N_ ("Speed class, as printed on it"), NULL },
};

static const FfGearField document_fields[] = {
  { "valid_from", N_ ("Valid from"), NULL },
  { "valid_until", N_ ("Valid until"), NULL },
  /* Translators: whose document it is. */
  { "holder", N_ ("Holder"), NULL },
  { "reference", N_ ("Reference"), NULL },
  /* Translators: what a permission asks for. */
  { "conditions", N_ ("Conditions"), NULL, FF_GEAR_PLAIN, TRUE },
};

static const FfGearField valid_fields[] = {
  { "valid_until", N_ ("Valid until"), NULL },
};

#define GROUP(title, fields) { title, fields, G_N_ELEMENTS (fields) }

static const FfGearGroup name_group = GROUP (NULL, name_fields);
static const FfGearGroup keep_group = GROUP (N_ ("Keeping"), keep_fields);
static const FfGearGroup hours_group = GROUP (N_ ("Keeping"), hours_fields);
static const FfGearGroup cycles_group = GROUP (N_ ("Keeping"), cycles_fields);

/* One or two groups of its own; after them what wears, or only what is kept. */
static const struct {
  FfGearGroup own[2];
  const FfGearGroup *last;
} kinds[] = {
  [FF_KIND_AIRCRAFT] = { { GROUP (N_ ("Flying"), aircraft_fields) }, &hours_group },
  [FF_KIND_CAMERA] = { { GROUP (N_ ("Exposure"), exposure_fields),
                         GROUP (N_ ("Picture"), picture_fields) }, &keep_group },
  [FF_KIND_FILTER] = { { GROUP (N_ ("Glass"), filter_fields) }, &keep_group },
  [FF_KIND_BATTERY] = { { GROUP (N_ ("In the air"), battery_fields),
                          GROUP (N_ ("Energy"), energy_fields) }, &cycles_group },
  [FF_KIND_CHARGER] = { { GROUP (N_ ("Charging"), charger_fields) }, &keep_group },
  [FF_KIND_CARD] = { { GROUP (N_ ("Space"), card_fields) }, &keep_group },
  [FF_KIND_PROPELLERS] = { { { 0 } }, &hours_group },
  [FF_KIND_CONTROLLER] = { { { 0 } }, &hours_group },
  [FF_KIND_TABLET] = { { { 0 } }, &keep_group },
  [FF_KIND_CABLE] = { { { 0 } }, &keep_group },
  [FF_KIND_READER] = { { { 0 } }, &keep_group },
  [FF_KIND_RADIO] = { { { 0 } }, &keep_group },
  [FF_KIND_SAFETY] = { { GROUP (N_ ("Date"), valid_fields) }, &keep_group },
  [FF_KIND_DOCUMENT] = { { GROUP (N_ ("Paper"), document_fields) }, &keep_group },
  [FF_KIND_CASE] = { { { 0 } }, &keep_group },
  [FF_KIND_OTHER] = { { { 0 } }, &hours_group },
};

guint
ff_gear_groups (FfKind kind, FfGearGroup groups[FF_GEAR_MAX_GROUPS])
{
  guint n = 0;

  g_return_val_if_fail ((guint) kind < G_N_ELEMENTS (kinds), 0);
  groups[n++] = name_group;
  for (guint i = 0; i < G_N_ELEMENTS (kinds[kind].own); i++)
    if (kinds[kind].own[i].fields != NULL)
      groups[n++] = kinds[kind].own[i];
  groups[n++] = *kinds[kind].last;
  return n;
}

const FfField *
ff_gear_record_field (FfKind kind, const FfGearField *field)
{
  const FfFields *own = ff_item_kind_fields (kind);
  const FfField *found = ff_fields_find (&ff_item_fields, field->name);

  return found == NULL && own != NULL ? ff_fields_find (own, field->name) : found;
}

/* Showing */

static char *
strength_text (const FfItem *item)
{
  g_autofree char *from = ff_number_format (item->stops, 2);
  g_autofree char *to = ff_number_format (item->stops_to, 2);

  if (item->stops_to > item->stops)
    /* Translators: the strength of a filter that can be turned; it must be readable again, so the
     * words are not translated. */
    return g_strdup_printf ("%s-%s stops variable", from, to);
  return g_strdup_printf (g_str_equal (from, "1") ? "%s stop" : "%s stops", from);
}

static gboolean
is_hidden (const FfField *field, const FfGearField *asked, double value)
{
  return (asked->how == FF_GEAR_COUNT || asked->how == FF_GEAR_WANTED) && value <= field->low;
}

char *
ff_gear_text (const FfItem *item, const FfGearField *asked)
{
  const FfField *field = ff_gear_record_field (item->kind, asked);
  double value;

  g_return_val_if_fail (field != NULL, g_strdup (""));
  if (asked->how == FF_GEAR_STRENGTH)
    return strength_text (item);
  if (ff_field_is_text (field))
    return g_strdup (*ff_field_text (field, item));
  value = field->type == FF_FIELD_REAL ? *ff_field_real (field, item)
                                       : *ff_field_whole (field, item);
  if (isnan (value) || is_hidden (field, asked, value))
    return g_strdup ("");
  return ff_number_format (value, 4);
}
