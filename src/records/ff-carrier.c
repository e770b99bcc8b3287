/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-carrier.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-error.h"
#include "ff-match.h"
#include "ff-rows.h"

static const FfField carrier_fields[] = {
  FF_ID (FfCarrier, id, "id", N_ ("id"), TRUE),
  FF_TEXT (FfCarrier, name, N_ ("name"), TRUE, 100),
  FF_TEXT (FfCarrier, source, N_ ("source"), TRUE, 500),
  FF_DATE (FfCarrier, read_on, N_ ("day it was read")),
  FF_WHOLE (FfCarrier, spares_in_all, N_ ("spares in all, each person"), -1, 999),
  FF_REAL (FfCarrier, cabin_kg, N_ ("cabin weight, each person"), FALSE, 0.1, 100),
  FF_REAL (FfCarrier, charge_percent, N_ ("charge for travel"), FALSE, 1, 100),
  FF_TEXT (FfCarrier, note, N_ ("note"), FALSE, 2000),
  FF_FLAG (FfCarrier, example, N_ ("example")),
};
const FfFields ff_carrier_fields = FF_FIELDS ("carrier", carrier_fields);

static const FfField band_fields[] = {
  FF_REAL (FfCarrierBand, up_to_wh, N_ ("energy up to"), FALSE, 0.1, 100000),
  FF_WHOLE (FfCarrierBand, spares_each, N_ ("spares, each person"), -1, 999),
  FF_FLAG (FfCarrierBand, approval, N_ ("needs approval")),
};
const FfFields ff_carrier_band_fields = FF_FIELDS ("carrier_band", band_fields);

static const FfParts bands_of_carrier = { "carrier_band", "carrier_id", FALSE };

FfCarrierBand *
ff_carrier_band_new (void)
{
  FfCarrierBand *band = g_new0 (FfCarrierBand, 1);

  ff_fields_init (&ff_carrier_band_fields, band);
  return band;
}

static gpointer
band_blank (void)
{
  return ff_carrier_band_new ();
}

static gpointer
carrier_blank (void)
{
  FfCarrier *carrier = g_new0 (FfCarrier, 1);

  ff_fields_init (&ff_carrier_fields, carrier);
  carrier->bands = g_ptr_array_new_with_free_func (g_free);
  return carrier;
}

FfCarrier *
ff_carrier_new (void)
{
  FfCarrier *carrier = carrier_blank ();

  g_free (carrier->id);
  carrier->id = ff_records_new_id ();
  return carrier;
}

void
ff_carrier_free (FfCarrier *carrier)
{
  if (carrier == NULL)
    return;
  ff_fields_clear (&ff_carrier_fields, carrier);
  g_ptr_array_unref (carrier->bands);
  g_free (carrier);
}

static const char *
wrong_band (const FfCarrier *carrier)
{
  double before = 0;

  for (guint i = 0; i < carrier->bands->len; i++)
    {
      const FfCarrierBand *band = g_ptr_array_index (carrier->bands, i);

      if (isnan (before) || band->up_to_wh <= before)
        return _ ("each size band must end higher than the one before it");
      before = band->up_to_wh;
    }
  return carrier->bands->len == 0 ? _ ("a size band is missing: up to how many watt-hours") : NULL;
}

gboolean
ff_carrier_check (const FfCarrier *carrier, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("carrier “%s”"), carrier->name);
  const char *what;

  if (!ff_fields_check (&ff_carrier_fields, carrier, whose, error))
    return FALSE;
  for (guint i = 0; i < carrier->bands->len; i++)
    if (!ff_fields_check (&ff_carrier_band_fields, g_ptr_array_index (carrier->bands, i), whose,
                          error))
      return FALSE;
  what = *carrier->read_on == '\0' ? _ ("the day it was read is missing: rules change")
                                   : wrong_band (carrier);
  if (what != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return what == NULL;
}

static gboolean
name_taken (const FfCarrier *carrier, GError **error)
{
  g_autofree char *sentence
      = g_strdup_printf (_ ("carrier “%s”: another one has this name"), carrier->name);

  return ff_rows_taken (error, "carrier.name", sentence);
}

gboolean
ff_carrier_save (FfStore *store, const FfCarrier *carrier, GError **error)
{
  gboolean own, done;

  if (!ff_carrier_check (carrier, error) || !ff_rows_open (store, &own, error))
    return FALSE;
  done = (ff_rows_save (store, &ff_carrier_fields, carrier, error) || name_taken (carrier, error))
         && ff_parts_save (store, &bands_of_carrier, &ff_carrier_band_fields, carrier->id,
                           carrier->bands, error);
  return ff_rows_close (store, own, done, error);
}

static gboolean
load_bands (FfStore *store, FfCarrier *carrier, GError **error)
{
  GPtrArray *bands
      = ff_rows_load (store, &ff_carrier_band_fields, "WHERE carrier_id = ?1 ORDER BY position",
                      carrier->id, band_blank, g_free, error);

  if (bands == NULL)
    return FALSE;
  g_ptr_array_unref (carrier->bands);
  carrier->bands = bands;
  return TRUE;
}

GPtrArray *
ff_carriers_load (FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) carriers
      = ff_rows_load (store, &ff_carrier_fields, "ORDER BY example, name", NULL, carrier_blank,
                      (GDestroyNotify) ff_carrier_free, error);

  for (guint i = 0; carriers != NULL && i < carriers->len; i++)
    if (!load_bands (store, g_ptr_array_index (carriers, i), error))
      return NULL;
  return g_steal_pointer (&carriers);
}

char *
ff_carrier_find (FfStore *store, const char *wanted, GError **error)
{
  return ff_match (store, "SELECT id, name, name FROM carrier ORDER BY name", _ ("carrier"),
                   wanted, error);
}
