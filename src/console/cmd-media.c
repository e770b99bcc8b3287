/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a card lasts and how fast it has to be. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-command.h"
#include "ff-media.h"
#include "ff-number.h"

static char *bitrate_text, *capacity_text;

static GOptionEntry entries[] = {
  { "bitrate", 0, 0, G_OPTION_ARG_STRING, &bitrate_text, N_ ("Data rate in Mbit/s"), "MBITS" },
  { "capacity", 0, 0, G_OPTION_ARG_STRING, &capacity_text,
    N_ ("Size of the card in GB, as printed on it"), "GB" },
  G_OPTION_ENTRY_NULL,
};

static const FfCardFamily families[] = {
  FF_CARD_VIDEO, FF_CARD_UHS, FF_CARD_SPEED, FF_CARD_EXPRESS, FF_CARD_COMPACT,
};

/* The lowest mark of each family that will do: cards carry one or several of them. */
static void
say_classes (FfConsole *console, double write_mbs)
{
  const FfCardClass *video = ff_card_class_for (FF_CARD_VIDEO, write_mbs);
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *list = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (families); i++)
    {
      const FfCardClass *found = ff_card_class_for (families[i], write_mbs);

      if (found != NULL)
        g_ptr_array_add (names, (char *) found->name);
    }
  ff_json_text (console->json, "speed_class", video != NULL ? video->name : NULL);
  ff_json_texts (console->json, "marks", names);
  g_ptr_array_add (names, NULL);
  list = g_strjoinv (", ", (char **) names->pdata);
  if (*list != '\0')
    ff_console_row (console, _ ("Any of these marks"), "%s", list);
  if (video == NULL)
    ff_console_line (console, _ ("No SD video speed class promises this rate."));
}

static void
say_times (FfConsole *console, double bitrate, double capacity)
{
  const double minutes = ff_media_minutes (capacity, bitrate), file_s = ff_media_file_s (bitrate);
  g_autofree char *whole = ff_number_format (floor (minutes), 0);
  g_autofree char *write = ff_number_format (ff_media_write_mbs (bitrate), 2);
  g_autofree char *hourly = ff_number_format (ff_media_gb_per_hour (bitrate), 1);
  g_autofree char *gib = ff_number_format (ff_media_gib (capacity), 1);
  g_autofree char *file = ff_number_format (file_s / 60, 1);

  ff_json_number (console->json, "minutes", minutes);
  ff_json_number (console->json, "write_mbs", ff_media_write_mbs (bitrate));
  ff_json_number (console->json, "gb_per_hour", ff_media_gb_per_hour (bitrate));
  ff_json_number (console->json, "capacity_gib", ff_media_gib (capacity));
  ff_json_number (console->json, "fat32_file_s", file_s);
  ff_console_row (console, _ ("Lasts"), _ ("%s min"), whole);
  ff_console_row (console, _ ("Writes"), _ ("%s MB/s, %s GB an hour"), write, hourly);
  /* Translators: computers count in units of 2^30 bytes. */
  ff_console_row (console, _ ("A computer shows"), _ ("%s GiB"), gib);
  ff_console_row (console, _ ("FAT32 splits after"), _ ("%s min (4 GiB a file)"), file);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  double bitrate = 0, capacity = 0;

  if (!ff_console_want_words (console, 0, NULL, error)
      || !ff_option_number ("--bitrate", bitrate_text, 0.01, 100000, &bitrate, error)
      || !ff_option_number ("--capacity", capacity_text, 0.01, 200000, &capacity, error))
    return FF_FAILED;
  say_times (console, bitrate, capacity);
  say_classes (console, ff_media_write_mbs (bitrate));
  return FF_DONE;
}

const FfCommand ff_command_media = {
  .name = "media",
  .summary = N_ ("Say how long a card lasts and which speed mark it needs"),
  .usage = "media --bitrate MBITS --capacity GB",
  .example = "fieldfarectl media --bitrate 100 --capacity 128",
  .entries = entries,
  .run = run,
};
