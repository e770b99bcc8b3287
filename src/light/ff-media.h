/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cards: how long they last and which mark promises to keep up. All decimal, as cards are sold:
 * 1 GB is 10^9 bytes, 1 MB/s is 8 Mbit/s. Source of the marks: SD Association, "SD Standard for
 * Video Recording / Speed Class"; CompactFlash Association, Video Performance Guarantee. */
#pragma once

#include <glib.h>

typedef enum {
  FF_CARD_SPEED,   /* C: the oldest SD mark */
  FF_CARD_UHS,     /* U */
  FF_CARD_VIDEO,   /* V: the SD video speed class */
  FF_CARD_EXPRESS, /* E: SD Express */
  FF_CARD_COMPACT, /* VPG: CompactFlash, CFast, CFexpress */
} FfCardFamily;

typedef struct {
  const char *name; /* as printed on the card: "V30" */
  FfCardFamily family;
  double mbs; /* the least it writes, MB/s */
} FfCardClass;

/* The table of marks, family by family, slowest first. */
guint ff_card_class_count (void);
const FfCardClass *ff_card_class (guint index);

/* The lowest mark of a family that carries a rate in MB/s; NULL when none does. */
const FfCardClass *ff_card_class_for (FfCardFamily family, double write_mbs);

double ff_media_write_mbs (double bitrate_mbits);
double ff_media_minutes (double capacity_gb, double bitrate_mbits);
double ff_media_gb_per_hour (double bitrate_mbits);

/* Whole pictures of so many MB that fit. */
double ff_media_pictures (double capacity_gb, double picture_mb);

/* The same capacity in binary units, as most computers show it. */
double ff_media_gib (double capacity_gb);

/* Seconds until a recording fills the longest file of FAT32, 4 GiB, and is split. */
double ff_media_file_s (double bitrate_mbits);
