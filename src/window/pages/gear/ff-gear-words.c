/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-filter.h"
#include "ff-number.h"

const char *
ff_gear_title (const FfItem *item)
{
  g_autofree char *label = g_utf8_casefold (item->label, -1);
  g_autofree char *title = g_utf8_casefold (item->title, -1);

  return g_str_equal (label, title) ? "" : item->title;
}

/* The state */

char *
ff_gear_state_words (FfState state)
{
  static const char *const shapes[] = {
    [FF_STATE_SERVICEABLE] = "■", [FF_STATE_DEFECT] = "✕", [FF_STATE_QUARANTINED] = "‖",
    [FF_STATE_OUT] = "◧",         [FF_STATE_RETIRED] = "–",
  };

  g_return_val_if_fail ((guint) state < G_N_ELEMENTS (shapes), g_strdup (""));
  /* A shape never stands alone at the end of a line. */
  return g_strdup_printf ("%s\u00a0%s", shapes[state], ff_name_text (&ff_names_state, (int) state));
}

static char *
short_date (const char *date)
{
  FfDate day;

  return ff_date_parse (date, &day, NULL) ? ff_date_format_short (day) : g_strdup (date);
}

static void
add_out (GString *words, const FfItem *item)
{
  g_autofree char *until = short_date (item->out_until);

  if (item->out_with[0] != '\0')
    /* Translators: an item that is out: with whom. */
    g_string_append_printf (words, _ ("with %s"), item->out_with);
  if (until[0] == '\0')
    return;
  g_string_append (words, words->len > 0 ? ", " : "");
  /* Translators: an item that is out: the day it comes back. */
  g_string_append_printf (words, _ ("back %s"), until);
}

char *
ff_gear_state_reason (const FfItem *item, gboolean brief)
{
  GString *words = g_string_new (NULL);

  if (item->state == FF_STATE_OUT)
    add_out (words, item);
  if (item->state_why[0] != '\0' && !(brief && words->len > 0))
    g_string_append_printf (words, "%s%s", words->len > 0 ? ": " : "", item->state_why);
  return g_string_free (words, FALSE);
}

/* Jobs and other items */

gboolean
ff_gear_job_uses (const FfJob *job, const FfItem *item)
{
  return g_str_equal (job->aircraft_id, item->id)
         || g_ptr_array_find_with_equal_func (job->item_ids, item->id, g_str_equal, NULL);
}

static char *
join_or_null (GPtrArray *parts)
{
  if (parts->len == 0)
    return NULL;
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (", ", (char **) parts->pdata);
}

char *
ff_gear_used_by (const FfItem *item, GPtrArray *jobs)
{
  g_autoptr (GPtrArray) titles = g_ptr_array_new ();

  for (guint i = 0; i < jobs->len; i++)
    {
      const FfJob *job = g_ptr_array_index (jobs, i);

      if (job->state != FF_JOB_PUT_AWAY && ff_gear_job_uses (job, item))
        g_ptr_array_add (titles, job->title);
    }
  return join_or_null (titles);
}

char *
ff_gear_followers (const FfItem *item, GPtrArray *items)
{
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *other = g_ptr_array_index (items, i);

      if (ff_item_goes_with (item, other->id))
        g_ptr_array_add (labels, other->label);
    }
  return join_or_null (labels);
}

/* Figures */

static void
add_figure (FfGearFigure *figures, guint *n, char *value, const char *caption)
{
  figures[*n].value = value;
  figures[*n].caption = g_strdup (caption);
  (*n)++;
}

/* "2-5" for a filter that can be turned. */
static char *
span (double from, double to, int decimals)
{
  g_autofree char *low = ff_number_format (from, decimals);
  g_autofree char *high = ff_number_format (to, decimals);

  return to > from ? g_strdup_printf ("%s–%s", low, high) : g_strdup (low);
}

static void
filter_figures (const FfItem *item, FfGearFigure *figures, guint *n)
{
  double from = item->stops, to = item->stops_to;

  add_figure (figures, n, span (from, to, 1), _ ("stops"));
  if (isfinite (item->measured_stops))
    {
      g_autofree char *measured = ff_number_format (item->measured_stops, 2);

      g_free (figures[*n - 1].caption);
      /* Translators: under the number of stops that is written on a filter: its real strength. */
      figures[*n - 1].caption = g_strdup_printf (_ ("stops, measured %s"), measured);
    }
  /* Translators: by how much a filter weakens light: 32. */
  add_figure (figures, n, span (ff_filter_factor (from), ff_filter_factor (to), from < 7 ? 1 : 0),
              _ ("factor"));
  /* Translators: the optical density of a filter: 1.51. */
  add_figure (figures, n, span (ff_filter_density (from), ff_filter_density (to), 2),
              _ ("density"));
}

static void
battery_figures (const FfItem *item, FfGearFigure *figures, guint *n)
{
  double energy = isfinite (item->printed_wh) ? item->printed_wh
                                              : item->volts * item->milliamp_hours / 1000;

  add_figure (figures, n,
              item->usable_minutes > 1 ? g_strdup_printf ("%d", item->usable_minutes)
                                       : g_strdup ("–"),
              _ ("usable minutes"));
  add_figure (figures, n, ff_number_format (energy, 1), _ ("Wh"));
  add_figure (figures, n, ff_number_format (item->used, 0), _ ("cycles"));
}

static void
camera_figures (const FfItem *item, FfGearFigure *figures, guint *n)
{
  const char *comma = strchr (item->apertures, ',');
  const char *last = strrchr (item->apertures, ',');

  if (comma == NULL)
    add_figure (figures, n, g_strdup (item->apertures), _ ("aperture, fixed"));
  else
    add_figure (figures, n,
                g_strdup_printf ("%.*s–%s", (int) (comma - item->apertures), item->apertures,
                                 last + 1),
                _ ("aperture"));
  add_figure (figures, n, span (item->iso_low, item->iso_high, 0), _ ("ISO"));
  add_figure (figures, n, g_strdup_printf ("%s–%s", item->shutter_fast, item->shutter_slow),
              _ ("shutter, s"));
}

/* "−10" with a true minus. */
static char *
degrees (double value)
{
  g_autofree char *size = ff_number_format (fabs (value), 0);

  return g_strdup_printf ("%s%s", value < 0 ? "−" : "", size);
}

static void
aircraft_figures (const FfItem *item, FfGearFigure *figures, guint *n)
{
  g_autofree char *low = degrees (item->temperature_low_c);
  g_autofree char *high = degrees (item->temperature_high_c);

  add_figure (figures, n, ff_number_format (item->wind_limit_ms, 1), _ ("m/s wind limit"));
  add_figure (figures, n, ff_number_format (item->return_height_m, 0), _ ("m automatic return"));
  if (isfinite (item->temperature_low_c) && isfinite (item->temperature_high_c))
    add_figure (figures, n, g_strdup_printf (_ ("%s to %s"), low, high), _ ("°C"));
}

static void
charger_figures (const FfItem *item, FfGearFigure *figures, guint *n)
{
  add_figure (figures, n, g_strdup_printf ("%d", item->slots), _ ("at once"));
  add_figure (figures, n, g_strdup_printf ("%d", item->cool_minutes), _ ("min to cool"));
  add_figure (figures, n,
              item->charge_minutes > 1 ? g_strdup_printf ("%d", item->charge_minutes)
                                       : g_strdup ("–"),
              _ ("min to charge"));
}

static void
card_figures (const FfItem *item, FfGearFigure *figures, guint *n)
{
  if (item->capacity_gb >= 0.01)
    add_figure (figures, n, ff_number_format (item->capacity_gb, 1), _ ("GB"));
  if (item->speed_class[0] != '\0')
    add_figure (figures, n, g_strdup (item->speed_class), _ ("speed class"));
}

/* What wears, and papers that run out. */
static void
other_figures (const FfItem *item, FfGearFigure *figures, guint *n)
{
  if (isfinite (item->used))
    add_figure (figures, n, ff_number_format (item->used, 1), _ ("h used"));
  if (isfinite (item->due_at))
    add_figure (figures, n, ff_number_format (item->due_at, 1), _ ("h due"));
  if (item->valid_until[0] != '\0')
    add_figure (figures, n, short_date (item->valid_until), _ ("last valid day"));
}

guint
ff_gear_figures (const FfItem *item, FfGearFigure figures[FF_GEAR_MAX_FIGURES])
{
  guint n = 0;

  memset (figures, 0, FF_GEAR_MAX_FIGURES * sizeof figures[0]);
  if (item->kind == FF_KIND_FILTER)
    filter_figures (item, figures, &n);
  else if (item->kind == FF_KIND_BATTERY)
    battery_figures (item, figures, &n);
  else if (item->kind == FF_KIND_CAMERA)
    camera_figures (item, figures, &n);
  else if (item->kind == FF_KIND_AIRCRAFT)
    aircraft_figures (item, figures, &n);
  else if (item->kind == FF_KIND_CHARGER)
    charger_figures (item, figures, &n);
  else if (item->kind == FF_KIND_CARD)
    card_figures (item, figures, &n);
  else
    other_figures (item, figures, &n);
  return n;
}

void
ff_gear_figures_clear (FfGearFigure figures[FF_GEAR_MAX_FIGURES])
{
  for (guint i = 0; i < FF_GEAR_MAX_FIGURES; i++)
    {
      g_clear_pointer (&figures[i].value, g_free);
      g_clear_pointer (&figures[i].caption, g_free);
    }
}
