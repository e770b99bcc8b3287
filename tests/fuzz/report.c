/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A weather report as typed by anyone. */
#include "ff-fuzz.h"

#include <math.h>

#include "ff-report.h"

#define NOW 1768564800 /* 2026-01-16 12:00 UTC */

static void
check_part (const FfReportPart *part)
{
  double ceiling;

  g_assert (part->n_layers <= FF_REPORT_LAYERS && part->n_weather <= FF_REPORT_WEATHERS);
  g_assert (isfinite (part->wind_ms.value) && isfinite (part->visibility_m.value));
  if (ff_report_ceiling (part, &ceiling) == FF_CEILING_KNOWN)
    g_assert (ceiling >= 0.0);
  g_assert (ff_report_gust_limit (part).value >= 0.0);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autofree char *text = g_strndup ((const char *) data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (FfReport) report = ff_report_read (text, NOW, &error);
  FfReportPart part;
  guint i;

  g_assert ((report == NULL) == (error != NULL));
  if (report == NULL)
    return 0;
  g_assert (ABS (report->at - NOW) <= 17 * 86400);
  check_part (&report->part);
  for (i = 0; i < report->n_periods; i++)
    check_part (&report->periods[i].part);
  if (ff_report_worst (report, report->valid_from, report->valid_to, &part))
    check_part (&part);
  return 0;
}
