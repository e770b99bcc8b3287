/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-proof.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-weather-today.h"
#include "ff-weather.h"

#define CHART_STEP_S 120 /* between samples of the day chart's curves */
#define LONGEST_NAME 120 /* bytes of a file's name, which some file systems end at 255 */

/* Words */

/* "6 sorties, first off by 16:30, last down by 19:44" */
static char *
sum_up (const FfDayPlan *plan, GTimeZone *zone)
{
  const FfPlanLine *first, *last;
  g_autofree char *off = NULL;
  g_autofree char *down = NULL;
  g_autofree char *sorties = NULL;

  if (plan->lines->len == 0)
    return g_strdup (_ ("no sortie is planned"));
  first = g_ptr_array_index (plan->lines, 0);
  last = g_ptr_array_index (plan->lines, plan->lines->len - 1);
  off = ff_instant_clock ((double) first->off_by, zone);
  down = ff_instant_clock ((double) last->land_by, zone);
  sorties = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u sortie", "%u sorties", plan->lines->len),
      plan->lines->len);
  /* Translators: "6 sorties, first off by 16:30, last landed by 19:44". */
  return g_strdup_printf (_ ("%s, first off by %s, last landed by %s"), sorties, off, down);
}

static gboolean
is_bad_in_a_name (gunichar letter)
{
  return g_unichar_iscntrl (letter) || !g_unichar_isprint (letter)
         || (letter < 128 && strchr ("/\\:*?\"<>|", (int) letter) != NULL);
}

char *
ff_proof_name_file (const char *job, const char *date, const char *version, const char *what)
{
  GString *name = g_string_new (NULL);

  for (const char *at = job; *at != '\0' && name->len < LONGEST_NAME; at = g_utf8_next_char (at))
    {
      gunichar letter = g_utf8_get_char (at);

      g_string_append_unichar (name, is_bad_in_a_name (letter) ? '-' : letter);
    }
  /* A name that begins with a point is hidden. */
  while (name->len > 0 && (name->str[0] == '.' || name->str[0] == ' '))
    g_string_erase (name, 0, 1);
  if (name->len == 0)
    g_string_append (name, _ ("Brief"));
  if (date[0] != '\0')
    g_string_append_printf (name, " %s", date);
  if (version[0] != '\0')
    /* Translators: in the name of a file, the version of the plan. */
    g_string_append_printf (name, _ (" v%s"), version);
  if (what != NULL)
    g_string_append_printf (name, " %s", what);
  g_string_append (name, ".pdf");
  return g_string_free (name, FALSE);
}

char *
ff_proof_page_name (const FfProof *proof, guint page, const char *between)
{
  FfBriefPage where = { 0 };

  ff_brief_page (proof->brief, page, &where);
  /* Translators: the name of a page: whose sheet, a blank or a new line, which page of it. */
  return g_strdup_printf (_ ("%s%s%u of %u"), where.sheet, between, where.number, where.n_pages);
}

char *
ff_proof_page_words (const FfProof *proof, guint page)
{
  g_autoptr (GPtrArray) parts = ff_brief_page_parts (proof->brief, page);
  g_autofree char *list = NULL;
  FfBriefPage where = { 0 };

  ff_brief_page (proof->brief, page, &where);
  g_ptr_array_add (parts, NULL);
  list = g_strjoinv (", ", (char **) parts->pdata);
  /* Translators: what a page of paper shows, for a screen reader: "Pilot, page 1 of 2: 6 sorties,
   * first off by 16:30, last landed by 19:44. On it: cautions, sortie 1, sortie 2". */
  return g_strdup_printf (_ ("%s, page %u of %u: %s. On it: %s"), where.sheet, where.number,
                          where.n_pages, proof->sum, list);
}

/* What it is written from */

FfSheetFacts *
ff_proof_facts (const FfProofSource *source, FfBriefMore more, gboolean phones, GError **error)
{
  g_autoptr (FfSheetFacts) facts = ff_sheet_facts (source->day, source->plan, source->now);

  if (source->standing != NULL)
    {
      ff_sheet_facts_stand (facts, source->standing);
      ff_sheet_facts_say_briefed (facts, source->standing, source->day);
    }
  if (!phones)
    ff_sheet_facts_hide_phones (facts);
  if ((more & FF_BRIEF_SPOKEN) != 0)
    facts->chart = ff_chart_facts (source->day, CHART_STEP_S, 0);
  if (!ff_sheet_facts_read_lists (facts, source->store, source->day, error)
      || ((more & FF_BRIEF_PACK) != 0
          && !ff_sheet_facts_read_pack (facts, source->store, source->day, error)))
    return NULL;
  return g_steal_pointer (&facts);
}

static gboolean
add_weather (FfBrief *brief, const FfProofSource *source, GError **error)
{
  g_autoptr (GPtrArray) calls = ff_weather_calls_load (source->store, source->job_id, error);
  g_autoptr (FfWeatherToday) today = NULL;

  if (calls == NULL)
    return FALSE;
  today = ff_weather_today (source->day, source->plan, calls, source->now);
  ff_brief_add_weather (brief, today);
  return TRUE;
}

FfBrief *
ff_proof_gather (const FfProofSource *source,
                 const FfSheetFacts *facts,
                 const FfProofWish *wish,
                 GError **error)
{
  const FfPrintable *what = ff_printable (wish->what);
  g_autoptr (FfBrief) brief = ff_brief_gather_with (facts, source->plan, what->reader, wish->paper,
                                                    what->more, error);

  if (brief == NULL || (what->weather && !add_weather (brief, source, error)))
    return NULL;
  if (wish->bound)
    ff_brief_bind (brief, FF_BRIEF_MOST_MARGIN_MM);
  return g_steal_pointer (&brief);
}

/* The value */

FfProof *
ff_proof_new (const FfProofSource *source, const FfProofWish *wish, GError **error)
{
  const FfPrintable *what = ff_printable (wish->what);
  g_autoptr (FfSheetFacts) facts = ff_proof_facts (source, what->more, wish->phones, error);
  FfBrief *brief = facts != NULL ? ff_proof_gather (source, facts, wish, error) : NULL;
  FfProof *proof;

  if (brief == NULL)
    return NULL;
  proof = g_atomic_rc_box_new0 (FfProof);
  proof->brief = brief;
  proof->wish = *wish;
  proof->paper = wish->paper;
  proof->frozen = source->standing != NULL && source->standing->version != NULL;
  proof->sum = sum_up (source->plan, ff_day_zone (source->day));
  proof->file_name = ff_proof_name_file (facts->job, source->date, facts->version,
                                         wish->what > 0 ? _ (what->title) : NULL);
  proof->facts = g_steal_pointer (&facts);
  proof->small = g_ptr_array_new_with_free_func (g_object_unref);
  return proof;
}

FfProof *
ff_proof_new_weather (FfSheetFacts *facts,
                      const FfWeatherToday *today,
                      FfPaper paper,
                      const char *date,
                      GError **error)
{
  FfBrief *brief = ff_brief_new_weather (facts, today, paper, error);
  g_autofree char *title = g_strdup_printf (_ ("%s weather"), facts->job);
  FfProof *proof;

  if (brief == NULL)
    {
      ff_sheet_facts_free (facts);
      return NULL;
    }
  proof = g_atomic_rc_box_new0 (FfProof);
  proof->brief = brief;
  proof->paper = paper;
  proof->sum = g_strdup (today->summary);
  proof->file_name = ff_proof_name_file (title, date, "", NULL);
  proof->facts = facts;
  proof->small = g_ptr_array_new_with_free_func (g_object_unref);
  return proof;
}

FfProof *
ff_proof_ref (FfProof *proof)
{
  return g_atomic_rc_box_acquire (proof);
}

static void
proof_clear (gpointer data)
{
  FfProof *proof = data;

  ff_brief_free (proof->brief);
  ff_sheet_facts_free (proof->facts);
  g_free (proof->sum);
  g_free (proof->file_name);
  g_ptr_array_unref (proof->small);
  g_clear_object (&proof->large);
}

void
ff_proof_unref (FfProof *proof)
{
  g_atomic_rc_box_release_full (proof, proof_clear);
}

gboolean
ff_proof_lay_out (FfProof *proof, GError **error)
{
  return ff_brief_lay_out (proof->brief, proof->facts, error);
}

void
ff_proof_draw_small (FfProof *proof, int width)
{
  double page_width, page_height;

  ff_brief_page_size (proof->brief, &page_width, &page_height);
  for (guint page = 0; page < ff_proof_n_pages (proof); page++)
    g_ptr_array_add (proof->small, ff_proof_picture (proof, page, width,
                                                     (int) (width * page_height / page_width)));
}

void
ff_proof_draw_large (FfProof *proof, guint page, int width, int height)
{
  if (page >= ff_proof_n_pages (proof) || width < 1 || height < 1)
    return;
  proof->large_page = page;
  proof->large = ff_proof_picture (proof, page, width, height);
}

guint
ff_proof_n_pages (const FfProof *proof)
{
  return ff_brief_n_pages (proof->brief);
}

GdkTexture *
ff_proof_picture (const FfProof *proof, guint page, int width, int height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  const int stride = cairo_image_surface_get_stride (surface);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (GBytes) bytes = NULL;
  double page_width, page_height;

  ff_brief_page_size (proof->brief, &page_width, &page_height);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, width / page_width, height / page_height);
  ff_brief_draw_page (proof->brief, cr, page);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  bytes = g_bytes_new_with_free_func (cairo_image_surface_get_data (surface),
                                      (gsize) stride * (gsize) height,
                                      (GDestroyNotify) cairo_surface_destroy, surface);
  return gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, (gsize) stride);
}
