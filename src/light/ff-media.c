/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-media.h"

#include <math.h>

#define GIB 1073741824.0

static const FfCardClass classes[] = {
  { "C2", FF_CARD_SPEED, 2 },         { "C4", FF_CARD_SPEED, 4 },
  { "C6", FF_CARD_SPEED, 6 },         { "C10", FF_CARD_SPEED, 10 },
  { "U1", FF_CARD_UHS, 10 },          { "U3", FF_CARD_UHS, 30 },
  { "V6", FF_CARD_VIDEO, 6 },         { "V10", FF_CARD_VIDEO, 10 },
  { "V30", FF_CARD_VIDEO, 30 },       { "V60", FF_CARD_VIDEO, 60 },
  { "V90", FF_CARD_VIDEO, 90 },       { "E150", FF_CARD_EXPRESS, 150 },
  { "E300", FF_CARD_EXPRESS, 300 },   { "E450", FF_CARD_EXPRESS, 450 },
  { "E600", FF_CARD_EXPRESS, 600 },   { "VPG20", FF_CARD_COMPACT, 20 }, /* from memory */
  { "VPG65", FF_CARD_COMPACT, 65 },                                     /* from memory */
  { "VPG130", FF_CARD_COMPACT, 130 },                                   /* from memory */
  { "VPG200", FF_CARD_COMPACT, 200 }, { "VPG400", FF_CARD_COMPACT, 400 },
  { "VPG800", FF_CARD_COMPACT, 800 }, { "VPG1600", FF_CARD_COMPACT, 1600 },
};

guint
ff_card_class_count (void)
{
  return G_N_ELEMENTS (classes);
}

const FfCardClass *
ff_card_class (guint index)
{
  g_return_val_if_fail (index < G_N_ELEMENTS (classes), NULL);
  return &classes[index];
}

const FfCardClass *
ff_card_class_for (FfCardFamily family, double write_mbs)
{
  const double noise = 1e-9;

  for (guint i = 0; i < G_N_ELEMENTS (classes); i++)
    if (classes[i].family == family && classes[i].mbs >= write_mbs * (1.0 - noise))
      return &classes[i];
  return NULL;
}

double
ff_media_write_mbs (double bitrate_mbits)
{
  return bitrate_mbits / 8.0;
}

double
ff_media_minutes (double capacity_gb, double bitrate_mbits)
{
  return capacity_gb * 8000.0 / (bitrate_mbits * 60.0);
}

double
ff_media_gb_per_hour (double bitrate_mbits)
{
  return bitrate_mbits * 3600.0 / 8000.0;
}

double
ff_media_pictures (double capacity_gb, double picture_mb)
{
  return floor (capacity_gb * 1000.0 / picture_mb + 1e-9);
}

double
ff_media_gib (double capacity_gb)
{
  return capacity_gb * 1e9 / GIB;
}

double
ff_media_file_s (double bitrate_mbits)
{
  return 4.0 * GIB * 8.0 / (bitrate_mbits * 1e6);
}
