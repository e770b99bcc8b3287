/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A carrier's rule for spare batteries in the cabin, in the crew's own entry: whose words, where
 * they stand, when they were read. The program states none of its own; the published rows that can
 * be taken as a start are marked as examples. */
#pragma once

#include "ff-field.h"
#include "ff-records.h"

#define FF_CARRIER_NO_LIMIT (-1)

/* Batteries over the band before and up to this energy. */
typedef struct {
  double up_to_wh; /* NAN: any */
  int spares_each; /* 0: none go; FF_CARRIER_NO_LIMIT */
  gboolean approval;
} FfCarrierBand;

typedef struct {
  char *id;
  char *name;            /* unique: "Northern Air" */
  char *source;          /* "their page on batteries" */
  char *read_on;         /* YYYY-MM-DD */
  int spares_in_all;     /* each person; FF_CARRIER_NO_LIMIT */
  double cabin_kg;       /* each person; NAN: none stated */
  double charge_percent; /* at most, for travel; NAN: none stated */
  char *note;
  gboolean example;
  GPtrArray *bands; /* FfCarrierBand, the smallest first */
} FfCarrier;

extern const FfFields ff_carrier_fields;
extern const FfFields ff_carrier_band_fields;

FfCarrierBand *ff_carrier_band_new (void) G_GNUC_WARN_UNUSED_RESULT;
FfCarrier *ff_carrier_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_carrier_free (FfCarrier *carrier);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfCarrier, ff_carrier_free)

/* A source and a date; at least one band; each larger than the one before. FF_ERROR_INPUT. */
gboolean ff_carrier_check (const FfCarrier *carrier, GError **error);
gboolean ff_carrier_save (FfStore *store, const FfCarrier *carrier, GError **error);
gboolean ff_carrier_delete (FfStore *store, const char *id, GError **error);

/* By name: an array of FfCarrier that frees them. */
GPtrArray *ff_carriers_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* By id, name or a unique beginning of it. FF_ERROR_INPUT lists the candidates. */
char *ff_carrier_find (FfStore *store,
                       const char *wanted,
                       GError **error) G_GNUC_WARN_UNUSED_RESULT;
