/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-unit.h"

#include <string.h>

static const FfUnit units[] = {
  { "", FF_DIMENSION_NONE, 1, 0 },
  { "m", FF_DIMENSION_LENGTH, 1, 0 },
  { "ft", FF_DIMENSION_LENGTH, 0.3048, 0 },
  { "km", FF_DIMENSION_LENGTH, 1000, 0 },
  { "NM", FF_DIMENSION_LENGTH, 1852, 0 },
  { "SM", FF_DIMENSION_LENGTH, 1609.344, 0 },
  { "m/s", FF_DIMENSION_SPEED, 1, 0 },
  { "kt", FF_DIMENSION_SPEED, 1852.0 / 3600.0, 0 },
  { "km/h", FF_DIMENSION_SPEED, 1 / 3.6, 0 },
  { "mph", FF_DIMENSION_SPEED, 0.44704, 0 },
  { "°C", FF_DIMENSION_TEMPERATURE, 1, 0 },
  { "°F", FF_DIMENSION_TEMPERATURE, 1 / 1.8, -32 / 1.8 },
  { "kg", FF_DIMENSION_MASS, 1, 0 },
  { "g", FF_DIMENSION_MASS, 0.001, 0 },
  { "lb", FF_DIMENSION_MASS, 0.45359237, 0 },
  { "J", FF_DIMENSION_ENERGY, 1, 0 },
  { "Wh", FF_DIMENSION_ENERGY, 3600, 0 },
  { "ft·lbf", FF_DIMENSION_ENERGY, 0.3048 * 0.45359237 * 9.80665, 0 },
  { "s", FF_DIMENSION_DURATION, 1, 0 },
  { "min", FF_DIMENSION_DURATION, 60, 0 },
  { "h", FF_DIMENSION_DURATION, 3600, 0 },
  { "d", FF_DIMENSION_DURATION, 86400, 0 },
  { "months", FF_DIMENSION_DURATION, 365.2425 / 12 * 86400, 0 },
  { "years", FF_DIMENSION_DURATION, 365.2425 * 86400, 0 },
  { "", FF_DIMENSION_CLOCK, 1, 0 },
  { "%", FF_DIMENSION_SHARE, 0.01, 0 },
  { "mm/h", FF_DIMENSION_RATE, 1, 0 },
  { "g/dL", FF_DIMENSION_CONCENTRATION, 1, 0 },
  { "dB", FF_DIMENSION_LEVEL, 1, 0 },
  { "", FF_DIMENSION_COUNT, 1, 0 },
};

const FfUnit *
ff_unit_at (FfDimension dimension, guint i)
{
  gsize k;

  for (k = 0; k < G_N_ELEMENTS (units); k++)
    if (units[k].dimension == dimension && i-- == 0)
      return &units[k];
  return NULL;
}

const FfUnit *
ff_unit_find (FfDimension dimension, const char *label)
{
  const FfUnit *unit;
  guint i;

  for (i = 0; (unit = ff_unit_at (dimension, i)) != NULL; i++)
    if (strcmp (unit->label, label) == 0)
      return unit;
  return NULL;
}

double
ff_unit_to_si (const FfUnit *unit, double value)
{
  return value * unit->factor + unit->offset;
}

double
ff_unit_from_si (const FfUnit *unit, double si)
{
  return (si - unit->offset) / unit->factor;
}

char *
ff_unit_accepted (FfDimension dimension)
{
  g_autoptr (GString) text = g_string_new (NULL);
  const FfUnit *unit;
  guint i;

  for (i = 0; (unit = ff_unit_at (dimension, i)) != NULL; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? ", " : "", unit->label);
  return g_string_free (g_steal_pointer (&text), FALSE);
}
