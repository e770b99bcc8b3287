/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The crew lead's sheet: the day on the first page, the kit and the weather call on the second. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-limit-say.h"
#include "ff-qr.h"
#include "ff-say.h"
#include "ff-sheets.h"

#define PAGES 2
#define NAMES 84 /* the column of names, beside what they name */
#define CODE_SIDE 76.0 /* 27 mm: 25 modules and the quiet zone, 0.8 mm each */

static void
add_named (FfSheet *sheet, const char *name, const char *value, double size)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell;

  ff_cell_text (ff_sheet_block_cell (block, NAMES), FF_SIZE_BODY, FALSE, name);
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, size, size > FF_SIZE_BODY, value);
  if (*value == '\0')
    cell->write_on = 100;
  block->on_baseline = TRUE;
}

static void
add_cautions (FfSheet *sheet, const FfSheetFacts *facts)
{
  g_autofree char *missing = ff_say_sentences (facts->missing);

  if (*missing != '\0')
    ff_sheet_caution (sheet, FF_CAUTION_CAUTION, missing);
}

static void
draw_code (cairo_t *cr, gconstpointer data, double width, double height)
{
  ff_qr_draw (cr, data, MIN (width, height));
}

/* What is asked for on the recce and written in by hand. */
static void
add_to_write (FfSheetBlock *block, const char *label)
{
  FfCell *cell = ff_sheet_block_cell (block, 116);

  ff_cell_text (cell, FF_SIZE_BODY, FALSE, label);
  cell->write_on = 116;
}

/* Where to meet and whom, in words; and the place as a code that a telephone takes to its map. */
static void
add_meeting_point (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell = ff_sheet_block_cell (block, -1);

  if (!isnan (facts->latitude_deg) && !isnan (facts->longitude_deg))
    block->drawing = (FfDrawing){ CODE_SIDE, CODE_SIDE, draw_code,
                                  ff_geo_uri (facts->latitude_deg, facts->longitude_deg), g_free };
  ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, facts->place);
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, facts->position);
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, facts->takeoff_spot);
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, _ ("client"));
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_CAMERA, TRUE, facts->client);
  add_to_write (block, _ ("hospital"));
  add_to_write (block, _ ("parking, power"));
  block->space_above = 4;
}

/* What was agreed with the client by word of mouth. */
static void
add_terms (FfSheet *sheet)
{
  const char *const labels[] = { _ ("promised"), _ ("standby terms") };
  FfSheetBlock *block = ff_sheet_row (sheet);

  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    {
      FfCell *cell = ff_sheet_block_cell (block, -1);

      ff_cell_text (cell, FF_SIZE_BODY, FALSE, labels[i]);
      cell->write_on = 60;
    }
}

static void
add_times (FfSheet *sheet, const FfSheetFacts *facts)
{
  g_autofree char *events = ff_say_all (facts->events, "  ·  ");

  ff_sheet_begin_part (sheet, _ ("the day"));
  ff_sheet_heading (sheet, _ ("The day"));
  add_named (sheet, _ ("hours"), facts->hours, FF_SIZE_TIMES);
  add_named (sheet, _ ("sun"), facts->sun_times, FF_SIZE_TIMES);
  if (*facts->sun_check != '\0')
    ff_sheet_paragraph (sheet, FF_SIZE_BODY, facts->sun_check);
  if (*events != '\0')
    add_named (sheet, _ ("events"), events, FF_SIZE_CAMERA);
  add_meeting_point (sheet, facts);
  add_terms (sheet);
}

/* "A B C" */
static char *
shots_of (const FfPlanLine *line)
{
  g_autoptr (GString) text = g_string_new (NULL);
  guint i;

  for (i = 0; i < line->takes->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? " " : "",
                            ((const FfPlanTake *) g_ptr_array_index (line->takes, i))->shot);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
add_cell (FfSheetBlock *block, double width, double size, gboolean bold, const char *text)
{
  ff_cell_text (ff_sheet_block_cell (block, width), size, bold, text);
}

/* How late the line may be with its windows kept; bold where that is little. */
static void
add_room (FfSheetBlock *block, const FfDayPlan *plan, int line)
{
  for (guint i = 0; plan->cases != NULL && i < plan->cases->slips->len; i++)
    {
      const FfLineSlip *slip = g_ptr_array_index (plan->cases->slips, i);
      g_autofree char *room = NULL;

      if (slip->line != line)
        continue;
      /* Translators: a line of the plan may be off so many minutes later; short. */
      room = g_strdup_printf (_ ("room %d min"), slip->room_minutes);
      add_cell (block, 76, FF_SIZE_BODY, slip->room_minutes < FF_SLIP_MINUTES, room);
    }
}

/* One line each: what the lead keeps time by. */
static void
add_sorties (FfSheet *sheet, const FfSheetFacts *facts, const FfDayPlan *plan)
{
  guint i;

  ff_sheet_begin_part (sheet, _ ("sorties"));
  ff_sheet_heading (sheet, _ ("Sorties"));
  if (plan->lines->len == 0)
    ff_sheet_paragraph (sheet, FF_SIZE_CAMERA, _ ("No sortie is planned."));
  for (i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);
      g_autofree char *number = g_strdup_printf ("%d", line->line);
      g_autofree char *off = ff_instant_clock ((double) line->off_by, facts->zone);
      g_autofree char *land = ff_instant_clock ((double) line->land_by, facts->zone);
      g_autofree char *span = g_strdup_printf (_ ("%s, land by %s"), off, land);
      g_autofree char *battery = g_strdup_printf (_ ("battery %s"), line->battery);
      g_autofree char *stops = ff_say_stops (line);
      g_autofree char *shots = shots_of (line);
      FfSheetBlock *block = ff_sheet_row (sheet);

      add_cell (block, 24, FF_SIZE_LINE, TRUE, number);
      add_cell (block, 194, FF_SIZE_TIMES, TRUE, span);
      add_cell (block, 84, FF_SIZE_CAMERA, FALSE, battery);
      add_cell (block, 66, FF_SIZE_CAMERA, FALSE, stops);
      add_cell (block, -1, FF_SIZE_CAMERA, TRUE, shots);
      add_room (block, plan, line->line);
      block->on_baseline = TRUE;
    }
}

static void
add_missed (FfSheet *sheet, const FfDayPlan *plan)
{
  guint i;

  for (i = 0; i < plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, i);
      g_autofree char *text
          = g_strdup_printf (_ ("Not flown: %s %s. %s"), miss->shot, miss->title, miss->reason);
      FfSheetBlock *block = ff_sheet_paragraph (sheet, FF_SIZE_BODY, text);

      block->bar = FF_STROKE_BAR;
    }
}

/* "lines 2, 5": those whose light does not hold; NULL: it holds on all. */
static char *
lines_in_the_dark (const FfCases *cases, gboolean cloud)
{
  g_autoptr (GString) lines = g_string_new (NULL);

  for (guint i = 0; i < cases->slips->len; i++)
    {
      const FfLineSlip *slip = g_ptr_array_index (cases->slips, i);

      if (cloud ? !slip->light_holds_cloud : !slip->light_holds_late)
        g_string_append_printf (lines, "%s%d", lines->len > 0 ? ", " : "", slip->line);
    }
  if (lines->len == 0)
    return NULL;
  /* Translators: numbers of lines of the plan. */
  return g_strdup_printf (_ ("lines %s"), lines->str);
}

static void
add_light_room (FfSheet *sheet, const FfCases *cases)
{
  g_autofree char *late = lines_in_the_dark (cases, FALSE);
  g_autofree char *cloud = lines_in_the_dark (cases, TRUE);
  /* Translators: minutes; then which lines, or "none". */
  g_autofree char *text
      = g_strdup_printf (_ ("The light does not hold %d min later: %s; under a stop of cloud: %s."),
                         FF_SLIP_MINUTES, late != NULL ? late : _ ("none"),
                         cloud != NULL ? cloud : _ ("none"));

  ff_sheet_paragraph (sheet, FF_SIZE_BODY, text);
}

/* What is given up first, and what a slip does: what the lead decides by when it gets late. */
static void
add_otherwise (FfSheet *sheet, const FfSheetFacts *facts, const FfDayPlan *plan)
{
  if (*facts->drop_first == '\0' && plan->cases == NULL)
    return;
  ff_sheet_begin_part (sheet, _ ("if it gets late"));
  ff_sheet_heading (sheet, _ ("If it gets late"));
  if (*facts->drop_first != '\0')
    ff_cell_text (ff_sheet_block_cell (ff_sheet_row (sheet), -1), FF_SIZE_CAMERA, TRUE,
                  facts->drop_first);
  if (plan->cases != NULL && plan->cases->slips->len > 0)
    add_light_room (sheet, plan->cases);
}

/* A promise has a person: a charge that nobody attends is none. */
static void
add_charges (FfSheet *sheet, const FfSheetFacts *facts, const FfDayPlan *plan)
{
  guint i;

  if (plan->charges->len == 0)
    return;
  ff_sheet_begin_part (sheet, _ ("charge promises"));
  ff_sheet_heading (sheet, _ ("Charge promises"));
  for (i = 0; i < plan->charges->len; i++)
    {
      const FfPlanCharge *charge = g_ptr_array_index (plan->charges, i);
      g_autofree char *in = ff_instant_clock ((double) charge->charge_from, facts->zone);
      g_autofree char *ready = ff_instant_clock ((double) charge->ready_at, facts->zone);
      g_autofree char *text
          = g_strdup_printf (_ ("Battery %s charges %s, ready %s; there: %s"),
                             charge->battery, in, ready, charge->attended_by);

      ff_sheet_paragraph (sheet, FF_SIZE_CAMERA, text);
    }
}

/* Two to a line: role, name, and the telephone or a line for it. */
static void
add_crew (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfSheetBlock *block = NULL;
  guint i;

  ff_sheet_begin_part (sheet, _ ("crew"));
  ff_sheet_heading (sheet, _ ("Crew"));
  for (i = 0; i < facts->crew->len; i++)
    {
      const FfSheetMember *member = g_ptr_array_index (facts->crew, i);
      FfCell *cell;

      if (i % 2 == 0)
        block = ff_sheet_row (sheet);
      block->on_baseline = TRUE;
      cell = ff_sheet_block_cell (block, -1);
      ff_cell_text (cell, FF_SIZE_BODY, FALSE, ff_name_text (&ff_names_role, (int) member->role));
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
      ff_cell_more (cell, FF_SIZE_CAMERA, TRUE, member->name);
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, member->phone);
      ff_cell_more (cell, FF_SIZE_LABEL, FALSE, "  ");
      /* Translators: after a name on paper: the version this person was briefed on, or a line. */
      ff_cell_more (cell, FF_SIZE_LABEL, FALSE, _ ("briefed"));
      ff_cell_more (cell, FF_SIZE_LABEL, FALSE, " ");
      if (member->briefed != NULL && *member->briefed != '\0')
        ff_cell_more (cell, FF_SIZE_BODY, TRUE, member->briefed);
      else
        cell->write_on = 26; /* a letter, and initials */
    }
}

static void
add_limits (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfSheetBlock *block = NULL;
  guint i;

  ff_sheet_begin_part (sheet, _ ("limits"));
  ff_sheet_heading (sheet, _ ("Limits, as the crew entered them"));
  if (facts->limits->len == 0)
    ff_sheet_paragraph (sheet, FF_SIZE_BODY, _ ("No limit is entered. The pilot sets them."));
  else
    ff_sheet_paragraph (sheet, FF_SIZE_BODY, facts->limits_stand);
  for (i = 0; i < facts->limits->len; i++)
    {
      const FfSheetLimit *limit = g_ptr_array_index (facts->limits, i);
      FfCell *cell;

      if (i % 2 == 0)
        block = ff_sheet_row (sheet);
      cell = ff_sheet_block_cell (block, -1);
      ff_cell_text (cell, FF_SIZE_BODY, FALSE, "");
      ff_limit_say (cell, limit);
    }
}

/* "ND32: the plan: A, B" of each filter; batteries and chargers stand with their promises. */
static void
add_reasons (FfSheet *sheet, const char *name, const GPtrArray *items)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell;

  ff_cell_text (ff_sheet_block_cell (block, NAMES), FF_SIZE_BODY, FALSE, name);
  cell = ff_sheet_block_cell (block, -1);
  for (guint i = 0; i < items->len; i++)
    {
      const FfBagItem *item = g_ptr_array_index (items, i);

      if (item->kind != FF_KIND_FILTER)
        continue;
      if (cell->texts->len == 0)
        ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, "");
      else
        ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ·  ");
      ff_cell_more (cell, FF_SIZE_CAMERA, TRUE, item->label);
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, item->why);
    }
  if (cell->texts->len == 0)
    ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, _ ("none"));
  block->on_baseline = TRUE;
}

/* Each filter with the reason it is in the bag; of a plan that was read back, without. */
static void
add_bag (FfSheet *sheet, const FfDayPlan *plan)
{
  g_autofree char *needed = ff_say_all (plan->bag_needed, ", ");
  g_autofree char *in_case = ff_say_all (plan->bag_in_case, ", ");

  if (plan->cases != NULL)
    {
      add_reasons (sheet, _ ("filters needed"), plan->cases->bag->needed);
      add_reasons (sheet, _ ("in case"), plan->cases->bag->in_case);
      return;
    }
  add_named (sheet, _ ("filters needed"), needed, FF_SIZE_CAMERA);
  add_named (sheet, _ ("in case of cloud"), *in_case != '\0' ? in_case : _ ("none"), FF_SIZE_CAMERA);
}

static void
add_kit (FfSheet *sheet, const FfSheetFacts *facts, const FfDayPlan *plan)
{
  ff_sheet_begin_part (sheet, _ ("the kit"));
  ff_sheet_heading (sheet, _ ("The kit"));
  add_bag (sheet, plan);
  add_named (sheet, _ ("cards"), facts->cards, FF_SIZE_BODY);
  add_named (sheet, _ ("open defects"), facts->defects, FF_SIZE_BODY);
}

static FfSheetBlock *
add_form (FfSheet *sheet, const char *heading, const char *const *heads, const double *widths, int rows)
{
  FfSheetBlock *block;
  guint i;

  ff_sheet_begin_part (sheet, heading);
  ff_sheet_heading (sheet, heading);
  block = ff_sheet_form (sheet, rows);
  for (i = 0; heads[i] != NULL; i++)
    ff_cell_text (ff_sheet_block_cell (block, widths[i]), FF_SIZE_LABEL, FALSE, _ (heads[i]));
  return block;
}

static void
add_forms (FfSheet *sheet)
{
  static const char *const cases[] = { N_ ("case"), N_ ("out"), N_ ("on the ground"),
                                       N_ ("at base"), N_ ("what is missing"), NULL };
  static const double case_widths[] = { 56, 72, 92, 72, -1 };
  static const char *const calls[] = { N_ ("time"), N_ ("mean"), N_ ("gust"), N_ ("decision"),
                                       N_ ("by"), NULL };
  static const double call_widths[] = { 64, 64, 64, -1, 56 };

  add_form (sheet, _ ("Count by case"), cases, case_widths, 3);
  add_form (sheet, _ ("Weather call"), calls, call_widths, 3);
  ff_sheet_amendment_box (sheet);
}

FfSheet *
ff_lead_sheet (const FfSheetFacts *facts, const FfDayPlan *plan)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_LEAD, _ ("Crew lead"), PAGES);

  add_cautions (sheet, facts);
  add_times (sheet, facts);
  add_sorties (sheet, facts, plan);
  add_missed (sheet, plan);
  add_otherwise (sheet, facts, plan);
  add_charges (sheet, facts, plan);
  add_crew (sheet, facts);
  ff_sheet_to_last_page (sheet);
  add_kit (sheet, facts, plan);
  add_limits (sheet, facts);
  add_forms (sheet);
  return sheet;
}
