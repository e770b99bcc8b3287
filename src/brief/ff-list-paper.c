/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-list-paper.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <pango/pangocairo.h>

#include "ff-checklist-advice.h"

#define FONT "B612, DejaVu Sans, sans-serif" /* 0 and O, 1 and l apart */
#define BODY 14.0
#define HEADING 16.0
#define TITLE 20.0
#define FOOT 11.0
#define PITCH 1.3f
#define LEFT 57.0 /* 20 mm, to be bound */
#define MARGIN 36.0
#define SQUARE 12.0

typedef struct {
  PangoLayout *layout;
  double height, above;
  double indent;
  gboolean square, boxed;
  gboolean keep_next; /* on the page of what comes next */
  guint page;
  double y;
} Row;

struct _FfListPaper {
  PangoContext *context;
  GArray *rows; /* Row */
  char *foot;
  double width, height;
  guint n_pages;
};

static void
row_clear (gpointer data)
{
  g_object_unref (((Row *) data)->layout);
}

static PangoLayout *
layout_new (const FfListPaper *self, const char *text, double size, gboolean bold, double width)
{
  PangoLayout *layout = pango_layout_new (self->context);
  PangoFontDescription *font = pango_font_description_from_string (FONT);

  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_line_spacing (layout, PITCH);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

static Row *
add_row (FfListPaper *self, const char *text, double size, gboolean bold, double indent)
{
  Row row = { .above = 6, .indent = indent };
  PangoRectangle extents;

  row.layout = layout_new (self, text, size, bold, self->width - LEFT - MARGIN - indent);
  pango_layout_get_extents (row.layout, NULL, &extents);
  row.height = (double) extents.height / PANGO_SCALE;
  g_array_append_val (self->rows, row);
  return &g_array_index (self->rows, Row, self->rows->len - 1);
}

/* What the list says */

static char *
answer_words (const FfCheckItem *item)
{
  g_autofree char *value = ff_check_value_format (&item->value);
  GString *text = g_string_new (item->response);

  if (value[0] != '\0')
    g_string_append_printf (text, "  ________ (%s)", value);
  else if (item->fact != FF_FACT_NONE)
    g_string_append (text, "  ________");
  if (item->touch)
    g_string_append_printf (text, " [%s]", _ ("touch"));
  if (item->second)
    g_string_append_printf (text, "  2: ____");
  return g_string_free (text, FALSE);
}

static void
add_guards (FfListPaper *self, const FfCheckItem *item)
{
  for (guint i = 0; i < item->guards->len; i++)
    {
      const FfGuard *guard = g_ptr_array_index (item->guards, i);
      g_autofree char *kind = g_utf8_strup (ff_name_text (&ff_names_guard, (int) guard->kind), -1);
      g_autofree char *text = g_strdup_printf ("%s  %s", kind, guard->text);
      Row *row = add_row (self, text, BODY, TRUE, 28);

      row->boxed = row->keep_next = TRUE;
      row->above = 10;
    }
}

static void
add_item (FfListPaper *self, const FfCheckItem *item)
{
  g_autofree char *answer = answer_words (item);
  g_autofree char *text = answer[0] != '\0'
                              ? g_strdup_printf ("%s …… %s", item->challenge, answer)
                              : g_strdup (item->challenge);
  Row *row;

  add_guards (self, item);
  row = add_row (self, text, BODY, item->critical, 28);
  row->square = TRUE;
  if (item->note[0] != '\0')
    {
      row->keep_next = TRUE;
      add_row (self, item->note, 12, FALSE, 44)->above = 2;
    }
}

static void
add_section (FfListPaper *self, const FfCheckSection *section, guint conditions)
{
  g_autofree char *complete = g_strdup_printf (_ ("“%s” complete"), section->title);
  Row *row = add_row (self, section->title, HEADING, TRUE, 0);
  guint first = self->rows->len - 1;

  row->above = 16;
  for (guint i = 0; i < section->items->len; i++)
    {
      const FfCheckItem *item = g_ptr_array_index (section->items, i);

      if (ff_when_holds (item->when, conditions))
        add_item (self, item);
    }
  add_row (self, complete, BODY, TRUE, 28)->square = TRUE;
  /* One section, one page; a longer one than a page is parted all the same. */
  for (guint i = first; i + 1 < self->rows->len; i++)
    g_array_index (self->rows, Row, i).keep_next = TRUE;
}

static void
add_list (FfListPaper *self, const FfChecklist *list, guint conditions)
{
  add_row (self, list->title, TITLE, TRUE, 0);
  for (guint i = 0; i < list->remarks->len; i++)
    add_row (self, g_ptr_array_index (list->remarks, i), 12, FALSE, 0);
  for (guint i = 0; i < list->sections->len; i++)
    {
      const FfCheckSection *section = g_ptr_array_index (list->sections, i);

      if (ff_when_holds (section->when, conditions))
        add_section (self, section, conditions);
    }
}

static char *
foot_of (const FfChecklist *list, guint conditions)
{
  int seconds = ff_checklist_seconds (list, conditions);

  return g_strdup_printf (_ ("Version %s · %s · %s · about %d s · trial flights: ____ · matt paper"),
                          list->version, list->date, list->author, seconds);
}

/* Pages */

static double
height_of (const FfListPaper *self, guint from, guint to)
{
  double height = 0;

  for (guint i = from; i < to; i++)
    height += g_array_index (self->rows, Row, i).above + g_array_index (self->rows, Row, i).height;
  return height;
}

/* Rows that stay together: to the first that may be parted from the next. */
static guint
group_end (const FfListPaper *self, guint from)
{
  guint i = from;

  while (i + 1 < self->rows->len && g_array_index (self->rows, Row, i).keep_next)
    i++;
  return i + 1;
}

static void
paginate (FfListPaper *self)
{
  double room = self->height - 2 * MARGIN - 2 * FOOT, y = 0;
  guint page = 0;

  for (guint i = 0; i < self->rows->len;)
    {
      guint end = group_end (self, i);
      double whole = height_of (self, i, end);

      if (y > 0 && y + whole > room && whole <= room)
        {
          page++;
          y = 0;
        }
      for (; i < end; i++)
        {
          Row *row = &g_array_index (self->rows, Row, i);

          if (y > 0 && y + row->above + row->height > room)
            {
              page++;
              y = 0;
            }
          row->page = page;
          row->y = y + row->above;
          y += row->above + row->height;
        }
    }
  self->n_pages = page + 1;
}

FfListPaper *
ff_list_paper_new (const FfChecklist *list, guint conditions, FfPaper paper)
{
  FfListPaper *self = g_new0 (FfListPaper, 1);

  self->width = paper == FF_PAPER_LETTER ? 612.0 : 595.28;
  self->height = paper == FF_PAPER_LETTER ? 792.0 : 841.89;
  self->context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  self->rows = g_array_new (FALSE, TRUE, sizeof (Row));
  g_array_set_clear_func (self->rows, row_clear);
  self->foot = foot_of (list, conditions);
  add_list (self, list, conditions);
  paginate (self);
  return self;
}

void
ff_list_paper_free (FfListPaper *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->rows);
  g_object_unref (self->context);
  g_free (self->foot);
  g_free (self);
}

guint
ff_list_paper_n_pages (const FfListPaper *self)
{
  return self->n_pages;
}

void
ff_list_paper_size (const FfListPaper *self, double *ret_width, double *ret_height)
{
  *ret_width = self->width;
  *ret_height = self->height;
}

static void
draw_row (cairo_t *cr, const FfListPaper *self, const Row *row)
{
  double x = LEFT + row->indent, y = MARGIN + row->y;

  cairo_set_line_width (cr, 1.2);
  if (row->square)
    cairo_rectangle (cr, LEFT + 2, y + 3, SQUARE, SQUARE);
  if (row->boxed)
    cairo_rectangle (cr, x - 6, y - 3, self->width - MARGIN - x + 6, row->height + 6);
  cairo_stroke (cr);
  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, row->layout);
}

void
ff_list_paper_draw (const FfListPaper *self, cairo_t *cr, guint page)
{
  g_autofree char *text
      = g_strdup_printf (_ ("%s · page %u of %u"), self->foot, page + 1, self->n_pages);
  PangoLayout *foot = layout_new (self, text, FOOT, FALSE, self->width - LEFT - MARGIN);

  cairo_set_source_rgb (cr, 0, 0, 0);
  for (guint i = 0; i < self->rows->len; i++)
    if (g_array_index (self->rows, Row, i).page == page)
      draw_row (cr, self, &g_array_index (self->rows, Row, i));
  cairo_move_to (cr, LEFT, self->height - MARGIN - FOOT);
  pango_cairo_show_layout (cr, foot);
  g_object_unref (foot);
}
