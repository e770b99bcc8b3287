/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-labels.h"

#include <pango/pangocairo.h>

#include "ff-shapes.h"

#define DEFAULT_EM 11.0
#define FIGURE_HEIGHT 0.73 /* of the size, in the fonts we name; others come close */
#define SHORTEST_EM 1.9    /* a text cut below this says nothing */

typedef struct {
  PangoLayout *layout;
  double x, y; /* of the layout's origin */
  cairo_rectangle_t ink, kept;
  FfColour colour;
  double plate;
} Placed;

struct _FfLabels {
  FfPalette palette;
  PangoContext *context;
  PangoFontDescription *font;
  double em;
  cairo_rectangle_t bounds;
  GArray *placed;    /* Placed */
  GArray *obstacles; /* cairo_rectangle_t */
};

static void
placed_clear (gpointer data)
{
  Placed *placed = data;

  g_clear_object (&placed->layout);
}

/* Resolution 72 makes a point one unit; unhinted metrics make the layout the same at any zoom and
 * on paper. */
static PangoContext *
make_context (void)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_cairo_context_set_resolution (context, 72);
  pango_context_set_round_glyph_positions (context, FALSE);
  return context;
}

FfLabels *
ff_labels_new (const FfPalette *palette,
               const PangoFontDescription *font,
               double scale,
               const cairo_rectangle_t *bounds)
{
  FfLabels *labels = g_new0 (FfLabels, 1);
  double size = font != NULL ? (double) pango_font_description_get_size (font) / PANGO_SCALE : 0;

  labels->palette = *palette;
  labels->context = make_context ();
  labels->font = font != NULL ? pango_font_description_copy (font)
                              : pango_font_description_from_string (palette->font);
  labels->em = (size > 0 ? size : DEFAULT_EM) * scale;
  labels->bounds = *bounds;
  labels->placed = g_array_new (FALSE, FALSE, sizeof (Placed));
  g_array_set_clear_func (labels->placed, placed_clear);
  labels->obstacles = g_array_new (FALSE, FALSE, sizeof (cairo_rectangle_t));
  return labels;
}

void
ff_labels_free (FfLabels *labels)
{
  g_array_unref (labels->placed);
  g_array_unref (labels->obstacles);
  pango_font_description_free (labels->font);
  g_object_unref (labels->context);
  g_free (labels);
}

double
ff_labels_em (const FfLabels *labels)
{
  return labels->em;
}

static double
size_of (const FfLabels *labels, const FfLabel *label)
{
  if (label->size > 0)
    return label->size * labels->em;
  return label->style == FF_TEXT_SMALL ? labels->palette.small * labels->em : labels->em;
}

static void
set_font (const FfLabels *labels, const FfLabel *label, PangoLayout *layout)
{
  PangoAttrList *attributes = pango_attr_list_new ();
  gboolean strong = label->style == FF_TEXT_STRONG;

  pango_font_description_set_absolute_size (labels->font,
                                            size_of (labels, label) * PANGO_SCALE);
  pango_font_description_set_weight (labels->font,
                                     strong ? labels->palette.strong : labels->palette.weight);
  pango_layout_set_font_description (layout, labels->font);
  /* Figures of one width, so that columns of times and values stand still. */
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
}

/* A text that is not UTF-8 would make Pango complain; outside text was checked long before. */
static PangoLayout *
make_layout (const FfLabels *labels, const FfLabel *label)
{
  PangoLayout *layout = pango_layout_new (labels->context);
  int width;

  set_font (labels, label, layout);
  pango_layout_set_text (layout, label->text, -1);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  if (label->max_width <= 0)
    return layout;
  pango_layout_get_size (layout, &width, NULL);
  if (width <= label->max_width * PANGO_SCALE)
    return layout;
  pango_layout_set_width (layout, (int) (label->max_width * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_height (layout, -MAX (label->max_lines, 1));
  return layout;
}

double
ff_labels_width (FfLabels *labels, const FfLabel *label)
{
  FfLabel whole = *label;
  g_autoptr (PangoLayout) layout = NULL;
  int width;

  whole.max_width = 0;
  layout = make_layout (labels, &whole);
  pango_layout_get_size (layout, &width, NULL);
  return (double) width / PANGO_SCALE;
}

int
ff_labels_lines (FfLabels *labels, const FfLabel *label)
{
  g_autoptr (PangoLayout) layout = make_layout (labels, label);

  return pango_layout_get_line_count (layout);
}

static cairo_rectangle_t
to_units (const PangoRectangle *rectangle, double x, double y)
{
  return (cairo_rectangle_t) { x + (double) rectangle->x / PANGO_SCALE,
                               y + (double) rectangle->y / PANGO_SCALE,
                               (double) rectangle->width / PANGO_SCALE,
                               (double) rectangle->height / PANGO_SCALE };
}

/* Where the layout goes and what it covers. The logical rectangle carries the offset that
 * right-to-left text gets within its width. */
static Placed
measure (const FfLabels *labels, const FfLabel *label, PangoLayout *layout)
{
  PangoRectangle ink, logical;
  Placed placed = { .layout = layout, .colour = label->colour, .plate = label->plate };
  double baseline = (double) pango_layout_get_baseline (layout) / PANGO_SCALE;
  double breath = MAX (0.1, label->plate) * labels->em;
  double over = MAX (0.05, label->plate) * labels->em;

  pango_layout_get_extents (layout, &ink, &logical);
  placed.x = label->x - (logical.x + label->align * logical.width) / PANGO_SCALE;
  placed.y = label->y + FIGURE_HEIGHT / 2 * size_of (labels, label) - baseline;
  placed.ink = to_units (&ink, placed.x, placed.y);
  placed.kept = placed.ink;
  placed.kept.x -= label->pad + breath;
  placed.kept.width += 2 * (label->pad + breath);
  placed.kept.y -= over;
  placed.kept.height += 2 * over;
  return placed;
}

static gboolean
is_inside (const cairo_rectangle_t *outer, const cairo_rectangle_t *box)
{
  return box->x >= outer->x && box->y >= outer->y && box->x + box->width <= outer->x + outer->width
         && box->y + box->height <= outer->y + outer->height;
}

gboolean
ff_labels_is_free (const FfLabels *labels, const cairo_rectangle_t *box)
{
  for (guint i = 0; i < labels->placed->len; i++)
    if (ff_boxes_overlap (&g_array_index (labels->placed, Placed, i).kept, box))
      return FALSE;
  for (guint i = 0; i < labels->obstacles->len; i++)
    if (ff_boxes_overlap (&g_array_index (labels->obstacles, cairo_rectangle_t, i), box))
      return FALSE;
  return TRUE;
}

gboolean
ff_labels_place (FfLabels *labels, const FfLabel *label, cairo_rectangle_t *ret_box)
{
  g_autoptr (PangoLayout) layout = NULL;
  Placed placed;

  if (label->text == NULL || label->text[0] == '\0')
    return FALSE;
  layout = make_layout (labels, label);
  placed = measure (labels, label, layout);
  if (pango_layout_is_ellipsized (layout) && label->max_width < SHORTEST_EM * labels->em)
    return FALSE;
  if (!is_inside (&labels->bounds, &placed.kept) || !ff_labels_is_free (labels, &placed.kept))
    return FALSE;
  g_object_ref (layout);
  g_array_append_val (labels->placed, placed);
  if (ret_box != NULL)
    *ret_box = placed.kept;
  return TRUE;
}

void
ff_labels_keep_off (FfLabels *labels, const cairo_rectangle_t *box)
{
  g_array_append_val (labels->obstacles, *box);
}

static void
draw_plate (const FfLabels *labels, const Placed *placed, cairo_t *cr)
{
  double more = placed->plate * labels->em;
  cairo_rectangle_t plate = { placed->ink.x - more, placed->ink.y - more,
                              placed->ink.width + 2 * more, placed->ink.height + 2 * more };

  ff_shape_rounded (cr, &plate, more);
  ff_colour_set (cr, labels->palette.paper);
  cairo_fill (cr);
}

void
ff_labels_draw (const FfLabels *labels, cairo_t *cr)
{
  /* All plates first, so that none wipes the edge of a text beside it. */
  for (guint i = 0; i < labels->placed->len; i++)
    if (g_array_index (labels->placed, Placed, i).plate > 0)
      draw_plate (labels, &g_array_index (labels->placed, Placed, i), cr);
  for (guint i = 0; i < labels->placed->len; i++)
    {
      const Placed *placed = &g_array_index (labels->placed, Placed, i);

      ff_colour_set (cr, placed->colour);
      cairo_move_to (cr, placed->x, placed->y);
      pango_cairo_show_layout (cr, placed->layout);
    }
}

guint
ff_labels_count (const FfLabels *labels)
{
  return labels->placed->len;
}

const char *
ff_labels_text (const FfLabels *labels, guint index)
{
  return pango_layout_get_text (g_array_index (labels->placed, Placed, index).layout);
}

void
ff_labels_ink (const FfLabels *labels, guint index, cairo_rectangle_t *ret_ink)
{
  *ret_ink = g_array_index (labels->placed, Placed, index).ink;
}
