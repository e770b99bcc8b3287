/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-brief.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-sheet-flow.h"
#include "ff-leaf.h"
#include "ff-pdf.h"
#include "ff-sheets.h"

/* ISO 216 A4, 210 by 297 mm; ANSI Letter, 8.5 by 11 in; in points of 1/72 in. */
#define A4_WIDTH (210 / 25.4 * 72)
#define A4_HEIGHT (297 / 25.4 * 72)
#define LETTER_WIDTH 612.0
#define LETTER_HEIGHT 792.0

/* The readers who have a sheet, in the order in which the sheets are printed. */
static const struct {
  FfReader reader;
  FfSheet *(*make) (const FfSheetFacts *facts, const FfDayPlan *plan);
} makers[] = {
  { FF_READER_LEAD, ff_lead_sheet },
  { FF_READER_PILOT, ff_pilot_sheet },
  { FF_READER_CAMERA, ff_camera_sheet },
  { FF_READER_OBSERVER, ff_observer_sheet },
  { FF_READER_CLIENT, ff_client_sheet },
};

typedef struct {
  FfSheet *sheet;
  FfSheetFlow *flow;
  GPtrArray *frames; /* FfLeaf of each page */
  guint first_page;
} Part;

struct _FfBrief {
  double width, height;
  double bound; /* what the side that is bound has more than the other */
  char *title;
  GPtrArray *parts;
  GPtrArray *did_not_fit;
  guint n_pages;
};

static void
part_free (gpointer data)
{
  Part *part = data;

  g_clear_pointer (&part->frames, g_ptr_array_unref);
  ff_sheet_flow_free (part->flow);
  ff_sheet_free (part->sheet);
  g_free (part);
}

static FfSheetFlow *
flow_on (const FfSheet *sheet,
         const FfSheetFacts *facts,
         PangoContext *context,
         double width,
         double height)
{
  FfLeaf *frame = ff_leaf_new (facts, sheet->title, context, width, 1, 1);
  FfSheetFlow *flow = ff_sheet_flow_new (sheet, context, width - 2 * FF_LEAF_MARGIN,
                                         height - ff_leaf_head (frame) - ff_leaf_foot (frame));

  ff_leaf_free (frame);
  return flow;
}

/* What would bring a sheet back to its pages: the paper is tried, nothing is made smaller. */
static const char *
what_would_fit (const FfBrief *brief,
                const FfSheet *sheet,
                const FfSheetFacts *facts,
                PangoContext *context)
{
  const struct {
    double width, height;
    const char *words;
  } papers[] = {
    { brief->width, brief->height, _ ("without room to bind it would fit") },
    { A4_WIDTH - brief->bound, A4_HEIGHT, _ ("on A4 it would fit") },
    { A4_WIDTH, A4_HEIGHT, _ ("on A4 without room to bind it would fit") },
  };

  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autoptr (FfSheetFlow) flow = NULL;

      if (i == 0 ? brief->bound <= 0 : brief->height >= A4_HEIGHT && i == 1)
        continue;
      flow = flow_on (sheet, facts, context, papers[i].width, papers[i].height);
      if (ff_sheet_flow_n_pages (flow) <= sheet->allowance)
        return papers[i].words;
    }
  return _ ("no paper holds it; fewer lines would");
}

/* Says what went past the pages a sheet may have, and what the foot of the page could not hold. */
static void
note_overflow (FfBrief *brief,
               const Part *part,
               const FfSheetFacts *facts,
               PangoContext *context)
{
  g_autoptr (GPtrArray) past = ff_sheet_flow_past_allowance (part->flow);
  g_autofree char *names = NULL;

  if (past->len > 0)
    {
      g_ptr_array_add (past, NULL);
      names = g_strjoinv (", ", (char **) past->pdata);
      g_ptr_array_add (brief->did_not_fit,
                       g_strdup_printf (
                           /* Translators: name of a sheet, its pages, those it should have; parts
                            * of the sheet; what would help. */
                           _ ("%s: %u pages instead of %u; on the further pages: %s; %s"),
                           part->sheet->title, ff_sheet_flow_n_pages (part->flow),
                           part->sheet->allowance, names,
                           what_would_fit (brief, part->sheet, facts, context)));
    }
  if (ff_leaf_is_cut (g_ptr_array_index (part->frames, 0)))
    g_ptr_array_add (brief->did_not_fit,
                     g_strdup_printf (_ ("%s: the emergency text is longer than the foot of the "
                                         "page; its end is cut"),
                                      part->sheet->title));
}

/* A letter without a font is a box on paper: said, since it may be a name or a number to call. */
static void
note_unknown (FfBrief *brief, const Part *part)
{
  const int n = ff_sheet_flow_n_unknown (part->flow)
                + ff_leaf_n_unknown (g_ptr_array_index (part->frames, 0));

  if (n > 0)
    g_ptr_array_add (brief->did_not_fit,
                     g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                                   "%s: no font here has %d of its letters, which "
                                                   "stands as a box; install a font for its script",
                                                   "%s: no font here has %d of its letters, which "
                                                   "stand as boxes; install a font for their "
                                                   "script",
                                                   (gulong) n),
                                      part->sheet->title, n));
}

static void
lay_out_part (FfBrief *brief, Part *part, const FfSheetFacts *facts, PangoContext *context)
{
  const char *title = part->sheet->title;
  const double width = brief->width - brief->bound;

  part->first_page = brief->n_pages;
  part->flow = flow_on (part->sheet, facts, context, width, brief->height);
  part->frames = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_leaf_free);
  for (guint page = 1; page <= ff_sheet_flow_n_pages (part->flow); page++)
    g_ptr_array_add (part->frames, ff_leaf_new (facts, title, context, width, page,
                                                ff_sheet_flow_n_pages (part->flow)));
  brief->n_pages += part->frames->len;
  note_overflow (brief, part, facts, context);
  note_unknown (brief, part);
}

gboolean
ff_brief_has_sheet (FfReader reader)
{
  for (guint i = 0; i < G_N_ELEMENTS (makers); i++)
    if (makers[i].reader == reader)
      return TRUE;
  return reader == FF_READER_ALL;
}

static gboolean
refuse_reader (FfReader reader, GError **error)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (makers); i++)
    g_string_append_printf (names, "%s, ",
                            ff_name_token (&ff_names_reader, (int) makers[i].reader));
  g_string_append (names, ff_name_token (&ff_names_reader, FF_READER_ALL));
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("there is no sheet for “%s” yet; accepted: %s"),
               ff_name_token (&ff_names_reader, (int) reader), names->str);
  g_string_free (names, TRUE);
  return FALSE;
}

static FfBrief *
brief_new_empty (const FfSheetFacts *facts, FfPaper paper)
{
  FfBrief *brief = g_new0 (FfBrief, 1);
  g_autofree char *job = ff_sheet_clean (facts->job);
  g_autofree char *version = ff_sheet_clean (facts->version);

  brief->width = paper == FF_PAPER_LETTER ? LETTER_WIDTH : A4_WIDTH;
  brief->height = paper == FF_PAPER_LETTER ? LETTER_HEIGHT : A4_HEIGHT;
  /* Translators: title of the document; the job's title follows. */
  brief->title = g_strdup_printf (_ ("Brief: %s, version %s"), job, version);
  brief->parts = g_ptr_array_new_with_free_func (part_free);
  brief->did_not_fit = g_ptr_array_new_with_free_func (g_free);
  return brief;
}

static void
add_sheet (FfBrief *brief, FfSheet *sheet)
{
  Part *part = g_new0 (Part, 1);

  part->sheet = sheet;
  g_ptr_array_add (brief->parts, part);
}

static void
add_lists (FfBrief *brief, const FfSheetFacts *facts)
{
  g_autoptr (GPtrArray) lists = g_ptr_array_new ();

  ff_list_sheets_add (lists, facts);
  for (guint i = 0; i < lists->len; i++)
    add_sheet (brief, g_ptr_array_index (lists, i));
}

static void
add_more (FfBrief *brief, const FfSheetFacts *facts, const FfDayPlan *plan, FfBriefMore more)
{
  if ((more & FF_BRIEF_SPOKEN) != 0)
    add_sheet (brief, ff_spoken_sheet (facts, plan));
  if ((more & FF_BRIEF_AMENDMENTS) != 0)
    add_sheet (brief, ff_amendments_sheet (facts));
  if ((more & FF_BRIEF_PACK) != 0 && facts->pack != NULL)
    add_sheet (brief, ff_pack_paper (facts));
  if ((more & FF_BRIEF_SLIPS) != 0)
    add_sheet (brief, ff_slip_sheet (facts, plan));
  if ((more & FF_BRIEF_LISTS) != 0 && facts->lists != NULL)
    add_lists (brief, facts);
}

FfBrief *
ff_brief_gather_with (const FfSheetFacts *facts,
                      const FfDayPlan *plan,
                      FfReader reader,
                      FfPaper paper,
                      FfBriefMore more,
                      GError **error)
{
  FfBrief *brief;

  if (!ff_brief_has_sheet (reader) && !refuse_reader (reader, error))
    return NULL;
  brief = brief_new_empty (facts, paper);
  for (guint i = 0; i < G_N_ELEMENTS (makers) && (more & FF_BRIEF_ONLY) == 0; i++)
    if (reader == makers[i].reader || reader == FF_READER_ALL)
      add_sheet (brief, makers[i].make (facts, plan));
  add_more (brief, facts, plan, more);
  return brief;
}

void
ff_brief_add_weather (FfBrief *brief, const FfWeatherToday *today)
{
  add_sheet (brief, ff_weather_sheet (today));
}

FfBrief *
ff_brief_gather (const FfSheetFacts *facts,
                 const FfDayPlan *plan,
                 FfReader reader,
                 FfPaper paper,
                 GError **error)
{
  return ff_brief_gather_with (facts, plan, reader, paper, FF_BRIEF_ALONE, error);
}

void
ff_brief_bind (FfBrief *brief, double margin_mm)
{
  g_return_if_fail (brief->n_pages == 0);
  margin_mm = CLAMP (margin_mm, 0, FF_BRIEF_MOST_MARGIN_MM);
  brief->bound = MAX (margin_mm / 25.4 * 72 - FF_LEAF_MARGIN, 0);
}

gboolean
ff_brief_lay_out (FfBrief *brief, const FfSheetFacts *facts, GError **error)
{
  PangoContext *context = ff_measure_context_new (error);

  if (context == NULL)
    return FALSE;
  for (guint i = 0; i < brief->parts->len; i++)
    lay_out_part (brief, g_ptr_array_index (brief->parts, i), facts, context);
  g_object_unref (context);
  return TRUE;
}

FfBrief *
ff_brief_new (const FfSheetFacts *facts,
              const FfDayPlan *plan,
              FfReader reader,
              FfPaper paper,
              GError **error)
{
  g_autoptr (FfBrief) brief = ff_brief_gather (facts, plan, reader, paper, error);

  if (brief == NULL || !ff_brief_lay_out (brief, facts, error))
    return NULL;
  return g_steal_pointer (&brief);
}

FfBrief *
ff_brief_new_weather (const FfSheetFacts *facts,
                      const FfWeatherToday *today,
                      FfPaper paper,
                      GError **error)
{
  g_autoptr (FfBrief) brief = brief_new_empty (facts, paper);

  g_free (brief->title);
  /* Translators: title of a document; the job's title follows. */
  brief->title = g_strdup_printf (_ ("Weather call: %s"), facts->job);
  add_sheet (brief, ff_weather_sheet (today));
  if (!ff_brief_lay_out (brief, facts, error))
    return NULL;
  return g_steal_pointer (&brief);
}

FfBrief *
ff_brief_new_lists (const FfSheetFacts *facts, FfPaper paper, GError **error)
{
  g_autoptr (FfBrief) brief = brief_new_empty (facts, paper);

  add_lists (brief, facts);
  g_free (brief->title);
  brief->title = brief->parts->len == 1
                     ? g_strdup (((Part *) g_ptr_array_index (brief->parts, 0))->sheet->title)
                     : g_strdup (_ ("Checklists"));
  if (!ff_brief_lay_out (brief, facts, error))
    return NULL;
  return g_steal_pointer (&brief);
}

void
ff_brief_free (FfBrief *brief)
{
  if (brief == NULL)
    return;
  g_free (brief->title);
  g_ptr_array_unref (brief->parts);
  g_ptr_array_unref (brief->did_not_fit);
  g_free (brief);
}

guint
ff_brief_n_pages (const FfBrief *brief)
{
  return brief->n_pages;
}

void
ff_brief_page_size (const FfBrief *brief, double *ret_width, double *ret_height)
{
  *ret_width = brief->width;
  *ret_height = brief->height;
}

GPtrArray *
ff_brief_did_not_fit (const FfBrief *brief)
{
  return brief->did_not_fit;
}

static const Part *
part_of_page (const FfBrief *brief, guint page)
{
  for (guint i = brief->parts->len; i-- > 0;)
    {
      const Part *part = g_ptr_array_index (brief->parts, i);

      if (page >= part->first_page)
        return part;
    }
  return NULL;
}

void
ff_brief_page (const FfBrief *brief, guint page, FfBriefPage *ret_page)
{
  const Part *part = part_of_page (brief, page);

  g_return_if_fail (page < brief->n_pages && part != NULL);
  ret_page->sheet = part->sheet->title;
  ret_page->number = page - part->first_page + 1;
  ret_page->n_pages = part->frames->len;
}

GPtrArray *
ff_brief_page_parts (const FfBrief *brief, guint page)
{
  const Part *part = part_of_page (brief, page);
  GPtrArray *names = g_ptr_array_new ();
  const GArray *pieces;

  g_return_val_if_fail (page < brief->n_pages && part != NULL, names);
  pieces = ff_sheet_flow_pieces (part->flow);
  for (guint i = 0; i < pieces->len; i++)
    {
      const FfPiece *piece = &g_array_index (pieces, FfPiece, i);
      const FfSheetBlock *block = g_ptr_array_index (part->sheet->blocks, piece->block);

      if (piece->page == page - part->first_page && block->part != NULL
          && !g_ptr_array_find_with_equal_func (names, block->part, g_str_equal, NULL))
        g_ptr_array_add (names, block->part);
    }
  return names;
}

const char *
ff_brief_title (const FfBrief *brief)
{
  return brief->title;
}

/* The inner side is the left one; where a sheet has a back, it is the right one there. */
static double
left_of (const FfBrief *brief, const Part *part, guint page)
{
  return part->sheet->two_sided && (page - part->first_page) % 2 == 1 ? 0 : brief->bound;
}

void
ff_brief_draw_page (const FfBrief *brief, cairo_t *cr, guint page)
{
  const Part *part = part_of_page (brief, page);
  const FfLeaf *frame;

  g_return_if_fail (page < brief->n_pages && part != NULL);
  frame = g_ptr_array_index (part->frames, page - part->first_page);
  cairo_save (cr);
  cairo_set_source_rgb (cr, 0, 0, 0);
  cairo_translate (cr, left_of (brief, part, page), 0);
  ff_leaf_draw (frame, cr, brief->height);
  cairo_translate (cr, FF_LEAF_MARGIN, ff_leaf_head (frame));
  ff_sheet_flow_draw (part->flow, cr, page - part->first_page);
  cairo_restore (cr);
}

/* The sheets, and under each its headings. */
static GArray *
make_outline (const FfBrief *brief)
{
  GArray *outline = g_array_new (FALSE, FALSE, sizeof (FfPdfEntry));

  for (guint i = 0; i < brief->parts->len; i++)
    {
      const Part *part = g_ptr_array_index (brief->parts, i);
      const GArray *pieces = ff_sheet_flow_pieces (part->flow);
      FfPdfEntry entry = { part->sheet->title, part->first_page, 0, FALSE };

      g_array_append_val (outline, entry);
      for (guint p = 0; p < pieces->len; p++)
        {
          const FfPiece *piece = &g_array_index (pieces, FfPiece, p);
          const FfSheetBlock *block = g_ptr_array_index (part->sheet->blocks, piece->block);

          entry = (FfPdfEntry) { block->outline, part->first_page + piece->page,
                                 ff_leaf_head (g_ptr_array_index (part->frames, 0)) + piece->y,
                                 TRUE };
          if (block->outline != NULL && piece->after <= 0)
            g_array_append_val (outline, entry);
        }
    }
  return outline;
}

static void
draw_for_pdf (gconstpointer data, cairo_t *cr, guint page)
{
  ff_brief_draw_page (data, cr, page);
}

gboolean
ff_brief_write_pdf (const FfBrief *brief, const char *path, GError **error)
{
  g_autoptr (GArray) outline = make_outline (brief);
  const FfPdfDocument document = {
    .title = brief->title,
    /* Translators: the language of this translation as a tag of BCP 47: "de", "pt-BR". */
    .language = _ ("en"),
    .width = brief->width,
    .height = brief->height,
    .n_pages = brief->n_pages,
    .outline = outline,
    .draw = draw_for_pdf,
    .data = brief,
  };

  return ff_pdf_write (&document, path, error);
}
