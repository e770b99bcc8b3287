/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sentences of the air travel sheet, and the published rows that can be taken as a start. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-error.h"
#include "ff-number.h"
#include "ff-travel-private.h"

/* Published rows. They change: each carries its source and the date it is of. */
static const struct {
  const char *name, *source, *date, *note;
  double small_wh, large_wh;
  int small_each, large_each;
} examples[] = {
  { "Example: general limits 2026",
    "IATA Dangerous Goods Regulations, 67th edition (in force 1 January 2026), spare lithium-ion "
    "batteries of passengers and crew, as reported",
    "2026-01-01", "Example. Read your own carrier's page and enter its rule.", 100, 160, 20, 2 },
  { "Example: power banks 2026",
    "ICAO Technical Instructions, addendum of 27 March 2026, power banks, as published by the UK "
    "Civil Aviation Authority",
    "2026-03-27", "Example, for power banks alone: not recharged on board.", 100, 0, 2, 0 },
};

static void
add_band (FfCarrier *carrier, double up_to_wh, int each, gboolean approval)
{
  FfCarrierBand *band = ff_carrier_band_new ();

  band->up_to_wh = up_to_wh;
  band->spares_each = each;
  band->approval = approval;
  g_ptr_array_add (carrier->bands, band);
}

static gboolean
is_there (const GPtrArray *carriers, const char *name)
{
  for (guint i = 0; i < carriers->len; i++)
    if (g_ascii_strcasecmp (((FfCarrier *) g_ptr_array_index (carriers, i))->name, name) == 0)
      return TRUE;
  return FALSE;
}

gboolean
ff_travel_add_examples (FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) there = ff_carriers_load (store, error);

  for (guint i = 0; there != NULL && i < G_N_ELEMENTS (examples); i++)
    {
      g_autoptr (FfCarrier) carrier = ff_carrier_new ();

      if (is_there (there, examples[i].name))
        continue;
      ff_set_text (&carrier->name, examples[i].name);
      ff_set_text (&carrier->source, examples[i].source);
      ff_set_text (&carrier->read_on, examples[i].date);
      ff_set_text (&carrier->note, examples[i].note);
      carrier->spares_in_all = FF_CARRIER_NO_LIMIT;
      carrier->example = TRUE;
      add_band (carrier, examples[i].small_wh, examples[i].small_each, FALSE);
      if (examples[i].large_wh > 0)
        add_band (carrier, examples[i].large_wh, examples[i].large_each, TRUE);
      if (!ff_carrier_save (store, carrier, error))
        return FALSE;
    }
  return there != NULL;
}

gboolean
ff_travel_read_band (FfCarrier *carrier, const char *text, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (text, ":", 3);
  guint n = g_strv_length (parts);
  FfCarrierBand *band;

  if (n < 2 || (n == 3 && !g_str_equal (parts[2], "approval")))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("found “%s”; accepted: WH:N or WH:N:approval, “any” for no limit"), text);
      return FALSE;
    }
  band = ff_carrier_band_new ();
  g_ptr_array_add (carrier->bands, band);
  band->approval = n == 3;
  band->up_to_wh = NAN;
  band->spares_each = FF_CARRIER_NO_LIMIT;
  return (g_str_equal (parts[0], "any")
          || ff_number_parse (_ ("size band"), parts[0], 0.1, 100000, &band->up_to_wh, error))
         && (g_str_equal (parts[1], "any")
             || ff_integer_parse (_ ("spares each"), parts[1], 0, 999, &band->spares_each, error));
}

char *
ff_travel_rule_words (const FfCarrier *carrier)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; i < carrier->bands->len; i++)
    {
      const FfCarrierBand *band = g_ptr_array_index (carrier->bands, i);
      g_autofree char *wh = ff_number_format (band->up_to_wh, 2);

      if (isnan (band->up_to_wh))
        g_string_append (words, _ ("any size: "));
      else
        g_string_append_printf (words, _ ("up to %s Wh: "), wh);
      if (band->spares_each == 0)
        g_string_append (words, _ ("none"));
      else if (band->spares_each < 0)
        g_string_append (words, _ ("no limit stated"));
      else
        g_string_append_printf (words, _ ("%d each"), band->spares_each);
      g_string_append_printf (words, "%s; ", band->approval ? _ (", with approval") : "");
    }
  g_string_append (words, _ ("larger: none"));
  if (carrier->spares_in_all >= 0)
    g_string_append_printf (words, _ ("; %d each in all"), carrier->spares_in_all);
  if (isfinite (carrier->cabin_kg))
    {
      g_autofree char *kg = ff_number_format (carrier->cabin_kg, 1);

      g_string_append_printf (words, _ ("; %s kg each in the cabin"), kg);
    }
  return g_string_free (words, FALSE);
}

char *
ff_travel_row_words (const FfTravelSheet *sheet, const FfTravelRow *row, const FfItem *item)
{
  const char *state = ff_name_text (&ff_names_state, (int) item->state);

  switch (row->answer)
    {
    case FF_TRAVEL_GOES:
      {
        const FfTravelPerson *person = g_ptr_array_index (sheet->people, (guint) row->person);

        return g_strdup_printf (row->approval ? _ ("%s, in the cabin; the carrier must approve it")
                                              : _ ("%s, in the cabin"),
                                person->name);
      }
    case FF_TRAVEL_UNFIT:
      return g_strdup_printf (_ ("stays: %s; a damaged or doubtful battery is not flown"), state);
    case FF_TRAVEL_NO_ENERGY:
      return g_strdup (_ ("stays until its watt-hours are entered: it is in no size band"));
    case FF_TRAVEL_TOO_LARGE:
      return g_strdup (_ ("stays: larger than the rule lets anybody carry; ask about cargo"));
    case FF_TRAVEL_TOO_MANY:
      return g_strdup (_ ("stays: everybody carries as many as the rule lets them"));
    case FF_TRAVEL_TOO_HEAVY:
    default:
      return g_strdup (_ ("stays: nobody has cabin weight left for it"));
    }
}

/* What the carrier is asked to approve, as it would stand in the letter. */
char *
ff_travel_letter_line (const FfTravelSheet *sheet, const FfTravelRow *row, const FfItem *item)
{
  const FfTravelPerson *person = g_ptr_array_index (sheet->people, (guint) row->person);
  g_autofree char *volts = ff_number_format (item->volts, 1);
  g_autofree char *hours = ff_number_format (item->milliamp_hours / 1000, 2);
  g_autofree char *energy = ff_number_format (row->energy_wh, 2);

  /* Translators: label, chemistry, volts, ampere-hours, watt-hours, who carries it. */
  return g_strdup_printf (_ ("%s: spare %s battery, %s V, %s Ah, %s Wh, in the cabin with %s"),
                          row->label,
                          *item->chemistry != '\0' ? item->chemistry : _ ("lithium"), volts, hours,
                          energy, person->name);
}

void
ff_travel_add_cautions (FfTravelSheet *sheet, const FfCarrier *carrier)
{
  static const char *const texts[] = {
    N_ ("Warning: a battery whose terminals touch metal can burn, and from the first smoke there "
        "may be less than a minute. Protect the terminals of each one: its own pouch or bag, a "
        "cap, or tape over the contacts."),
    N_ ("Spare batteries go into the cabin, never into the hold; if a bag is taken from you at the "
        "gate, take them out first."),
    N_ ("A battery that is swollen, dropped, wet or recalled stays at home."),
    N_ ("Whoever is at the desk decides, by their own rule book: carry the carrier's page and the "
        "approval on paper. What holds at the destination is not known here."),
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_ptr_array_add (sheet->cautions, g_strdup (_ (texts[i])));
  if (isfinite (carrier->charge_percent))
    g_ptr_array_add (sheet->cautions,
                     g_strdup_printf (_ ("Charge for travel: at most %.0f %%, as entered for this "
                                         "carrier."),
                                      carrier->charge_percent));
  else
    g_ptr_array_add (sheet->cautions,
                     g_strdup (_ ("Charge for travel: no level is entered for this carrier. Near "
                                  "storage charge is kinder to battery and cabin; sent as cargo, "
                                  "30 % at most is published (IATA, 2026).")));
}
