/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The observer's sheet: one side, in the order in which it is looked at, a second at a time: where to
 * stand and face, where the aircraft will be and when it is back, what to say. No filters, no
 * settings, no client. Directions are by compass or landmark, since pilot and observer face
 * different ways. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-say.h"
#include "ff-sheets.h"
#include "ff-sun-compass.h"

#define PAGES 1
#define SKETCH 204 /* points: the width of the sketch */
#define MOST_HAZARDS 5

static void
draw_sketch (cairo_t *cr, gconstpointer data, double width, double height)
{
  const FfCompassFrame frame = { &ff_palette_paper, NULL, 1.0, width, height };

  ff_sun_compass_draw (cr, data, &frame);
}

static void
add_post (FfCell *cell, const FfCompassSpot *spot, gboolean first)
{
  /* TRANSLATORS: to the observer; the name of the post follows. */
  g_autofree char *where
      = g_strdup_printf (first ? _ ("Stand: %s") : _ ("Second post: %s"), spot->name);

  ff_cell_text (cell, first ? FF_SIZE_LAND_BY : FF_SIZE_BODY, first, where);
  if (!isnan (spot->faces_deg))
    {
      g_autofree char *face = g_strdup_printf (_ ("Face %03.0f°"), spot->faces_deg);

      if (first)
        ff_cell_text (cell, FF_SIZE_GLANCE, TRUE, face);
      else
        {
          ff_cell_more (cell, FF_SIZE_BODY, FALSE, ". ");
          ff_cell_more (cell, FF_SIZE_BODY, FALSE, face);
        }
    }
  if (*spot->glare != '\0')
    {
      ff_cell_text (cell, FF_SIZE_BODY, TRUE, _ ("CAUTION"));
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, spot->glare);
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, first ? _ (". Hand or hat; or the second post.") : ".");
    }
}

static void
add_stand (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfSheetBlock *block;
  FfCell *cell;
  gboolean first = TRUE;
  guint i;

  ff_sheet_begin_part (sheet, _ ("where to stand"));
  block = ff_sheet_row (sheet);
  cell = ff_sheet_block_cell (block, -1);
  block->outline = g_strdup (_ ("Stand here, face there"));
  if (facts->compass == NULL)
    {
      ff_cell_text (cell, FF_SIZE_LINE, TRUE, _ ("Stand"));
      cell->write_on = 160;
      return;
    }
  block->drawing = (FfDrawing){ SKETCH, SKETCH * 0.8, draw_sketch, facts->compass, NULL };
  for (i = 0; i < facts->compass->spots->len; i++)
    {
      const FfCompassSpot *spot = g_ptr_array_index (facts->compass->spots, i);

      if (!spot->post)
        continue;
      add_post (cell, spot, first);
      first = FALSE;
    }
  if (first)
    {
      ff_cell_text (cell, FF_SIZE_LINE, TRUE, _ ("Stand"));
      cell->write_on = 120;
    }
  ff_cell_text (cell, FF_SIZE_BODY, FALSE,
                _ ("My only duty is to watch. I move only while the aircraft is down."));
}

static void
add_aircraft (FfSheet *sheet, const FfSheetFacts *facts, const FfDayPlan *plan)
{
  g_autoptr (GString) back = g_string_new (NULL);
  g_autofree char *height = g_strdup_printf (_ ("up to %.0f m high"), facts->highest_m);
  g_autofree char *reach
      = ff_say_two (height, _ (", distance "), facts->distance_limit);
  FfSheetBlock *block;
  guint i;

  ff_sheet_begin_part (sheet, _ ("where the aircraft is"));
  ff_sheet_heading (sheet, _ ("Aircraft"));
  block = ff_sheet_row (sheet);
  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_CAMERA, TRUE, reach);
  if (*facts->area != '\0')
    ff_cell_text (g_ptr_array_index (block->cells, 0), FF_SIZE_BODY, FALSE, facts->area);
  for (i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);
      g_autofree char *clock = ff_instant_clock ((double) line->land_by, facts->zone);

      g_string_append_printf (back, "%s%s", i > 0 ? " " : "", clock);
    }
  if (back->len == 0)
    return;
  block = ff_sheet_row (sheet);
  /* TRANSLATORS: times follow by which the aircraft is back on the ground. */
  ff_cell_text (ff_sheet_block_cell (block, 60), FF_SIZE_BODY, TRUE, _ ("BACK BY"));
  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_LAND_BY, TRUE, back->str);
  block->on_baseline = TRUE;
}

/* Six calls, in large letters, in two columns; and the one word that stops everything. */
static void
add_calls (FfSheet *sheet, const FfSheetFacts *facts)
{
  static const struct {
    const char *call;
    double shares;
    gboolean begins_row;
  } calls[] = {
    /* TRANSLATORS: what the observer calls out; short, as it is spoken. */
    { N_ ("Aircraft, north, low, closing"), -5, TRUE },
    { N_ ("Lost sight"), -2, FALSE },
    { N_ ("Person, at the gate"), -5, TRUE },
    { N_ ("Bird"), -2, FALSE },
    { N_ ("Clear"), -2, FALSE },
  };
  FfSheetBlock *block = NULL;
  FfCell *cell;
  gsize i;

  ff_sheet_begin_part (sheet, _ ("what to say"));
  ff_sheet_heading (sheet, _ ("Say this (by compass or landmark, never left or right)"));
  for (i = 0; i < G_N_ELEMENTS (calls); i++)
    {
      if (calls[i].begins_row)
        block = ff_sheet_row (sheet);
      cell = ff_sheet_block_cell (block, calls[i].shares);
      ff_cell_text (cell, FF_SIZE_LAND_BY, TRUE, _ (calls[i].call));
    }
  block = ff_sheet_row (sheet);
  block->box = FF_STROKE_THICK;
  cell = ff_sheet_block_cell (block, 110);
  ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, _ ("STOPS ALL"));
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, 36.0, TRUE, *facts->abort_word != '\0' ? facts->abort_word : " ");
  if (*facts->abort_word == '\0')
    cell->write_on = 160;
  block->on_baseline = TRUE;
}

static void
add_hazards (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfSheetBlock *block = NULL;
  guint i;

  ff_sheet_begin_part (sheet, _ ("hazards"));
  if (facts->hazards->len > 0)
    ff_sheet_heading (sheet, _ ("Hazards"));
  for (i = 0; i < facts->hazards->len && i < MOST_HAZARDS; i++)
    {
      const FfSheetHazard *hazard = g_ptr_array_index (facts->hazards, i);
      FfCell *cell;

      if (i % 2 == 0)
        block = ff_sheet_row (sheet);
      cell = ff_sheet_block_cell (block, -1);
      ff_cell_text (cell, FF_SIZE_BODY, TRUE, hazard->what);
      if (*hazard->measure == '\0')
        continue;
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, ", ");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, hazard->measure);
    }
}

static void
add_named (FfSheet *sheet, const char *name, const char *value)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell;

  ff_cell_text (ff_sheet_block_cell (block, 110), FF_SIZE_BODY, TRUE, name);
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, value);
  if (*value == '\0')
    cell->write_on = 100;
  block->on_baseline = TRUE;
}

/* The channel is agreed on site; beside it what is done when nobody hears. */
static void
add_radio (FfSheet *sheet)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell;

  ff_cell_text (ff_sheet_block_cell (block, 110), FF_SIZE_BODY, TRUE, _ ("Radio channel"));
  cell = ff_sheet_block_cell (block, 80);
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, "");
  cell->write_on = 60;
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, FF_SIZE_BODY, TRUE, _ ("No radio"));
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, _ ("arms crossed over the head: stop, land"));
  block->on_baseline = TRUE;
}

static char *
lead_name (const FfSheetFacts *facts)
{
  guint i;

  for (i = 0; i < facts->crew->len; i++)
    {
      const FfSheetMember *member = g_ptr_array_index (facts->crew, i);

      if (member->role == FF_ROLE_LEAD)
        return g_strdup_printf (_ ("“I am watching the aircraft. Please ask %s.”"), member->name);
    }
  return g_strdup (_ ("“I am watching the aircraft. Please ask the crew lead.”"));
}

static void
add_rest (FfSheet *sheet, const FfSheetFacts *facts)
{
  g_autofree char *spots = ff_say_two (facts->takeoff_spot, _ ("; second: "), facts->second_spot);
  g_autofree char *lead = lead_name (facts);

  ff_sheet_begin_part (sheet, _ ("landing, radio, emergency"));
  ff_sheet_heading (sheet, _ ("Landing, radio, people"));
  add_named (sheet, _ ("Landing spots"), spots);
  add_radio (sheet);
  add_named (sheet, _ ("Asked anything"), lead);
  add_named (sheet, _ ("Emergency"),
             _ ("fire: keep people back, upwind. Hurt: call, read out the place below. Pilot unwell: "
                "call the crew lead; nobody walks under the aircraft."));
}

FfSheet *
ff_observer_sheet (const FfSheetFacts *facts, const FfDayPlan *plan)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_OBSERVER, _ ("Observer"), PAGES);

  add_stand (sheet, facts);
  add_aircraft (sheet, facts, plan);
  add_calls (sheet, facts);
  add_hazards (sheet, facts);
  add_rest (sheet, facts);
  return sheet;
}
