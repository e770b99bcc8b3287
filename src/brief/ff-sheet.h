/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A sheet on paper as a value: what it says, in blocks, before anything is measured. A block is a
 * row of cells (often only one) or a form to fill in; a cell is a stack of texts; a text is made of
 * runs that differ in size and weight. Lengths are points. */
#pragma once

#include <cairo.h>
#include <glib.h>

#include "ff-names.h"

/* Paper that is read outdoors, at arm's length, from a photocopy. */
#define FF_SIZE_LABEL 11.0 /* nothing is smaller */
#define FF_SIZE_BODY 12.0
#define FF_SIZE_CAMERA 14.0
#define FF_SIZE_LINE 16.0  /* what is flown by */
#define FF_SIZE_TIMES 18.0 /* what the lead keeps time by */
#define FF_SIZE_LAND_BY 24.0
#define FF_SIZE_GLANCE 28.0
#define FF_LINE_PITCH 1.3  /* of the size, from baseline to baseline */
#define FF_STROKE_THIN 0.8 /* a photocopier loses anything below 0.7 */
#define FF_STROKE_THICK 1.6
#define FF_STROKE_BAR 5.0
#define FF_AMENDMENT_LINES 4
#define FF_ROW_AMENDED 19.9 /* 7 mm: a sentence, written small */
#define FF_ROW_TO_WRITE 25.6 /* 9 mm: a pencil in a gloved hand */

typedef struct {
  guint bytes;
  double size;
  gboolean bold;
} FfRun;

typedef struct {
  GString *text;
  GArray *runs;  /* FfRun, end to end over the text */
  double space_above;
  gboolean rule_above; /* across its cell */
  int max_lines; /* 0: as many as it needs; else what is beyond is cut and the flow says so */
} FfText;

typedef struct {
  double width;     /* negative: so many shares of what the fixed widths leave */
  gboolean to_right;
  double stops;     /* a neutral block of this strength stands before the texts; NAN: none */
  double block_side;
  double write_on;  /* a line to write on follows the texts, at least this long; 0: none */
  gboolean boxed;   /* a frame around its last line */
  gboolean tick;    /* in a form: each row has a square to tick */
  GPtrArray *texts; /* FfText */
} FfCell;

/* A picture on a sheet: drawn into (0, 0) to (width, height) whenever its page is. */
typedef struct {
  double width, height;
  void (*draw) (cairo_t *cr, gconstpointer data, double width, double height);
  gpointer data;
  GDestroyNotify free_data; /* may be NULL */
} FfDrawing;

typedef enum {
  FF_BLOCK_ROW,
  FF_BLOCK_FORM,  /* the cells are the heads of its columns */
  FF_BLOCK_BREAK, /* what follows begins the last page the sheet may have, or goes on there */
} FfBlockKind;

typedef struct {
  FfBlockKind kind;
  char *part;    /* how the block is named when it does not fit: "sortie 7" */
  char *outline; /* its place in the outline of the document; NULL: none */
  GPtrArray *cells;
  double space_above; /* dropped at the top of a page */
  double rule_above;  /* stroke across the width; 0: none */
  double bar;         /* stroke down the left side; 0: none */
  double box;         /* stroke around it; 0: none */
  double gap;         /* between cells */
  double inset;       /* of the first cell from the left */
  gboolean heading;
  gboolean on_baseline; /* the first lines of the cells share a baseline */
  gboolean keep_next;   /* on the same page as the block after it */
  gboolean may_split;   /* between lines, when it does not fit */
  int n_rows;           /* of a form; 0: down to the foot of the page */
  double row_height;
  FfDrawing drawing;    /* stands at the left, the cells beside it; draw NULL: none */
} FfSheetBlock;

typedef struct {
  FfReader reader;
  char *title;
  gboolean two_sided; /* its second page is the back of the first */
  guint allowance; /* pages the sheet may have before it must say what went past them */
  char *part;      /* given to each block that is added */
  GPtrArray *blocks;
} FfSheet;

/* Weight of a caution, heaviest first; each stands before what it guards. */
typedef enum { FF_CAUTION_WARNING, FF_CAUTION_CAUTION, FF_CAUTION_NOTE } FfCaution;

FfSheet *ff_sheet_new (FfReader reader,
                       const char *title,
                       guint allowance) G_GNUC_WARN_UNUSED_RESULT;
void ff_sheet_free (FfSheet *sheet);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfSheet, ff_sheet_free)

/* Names the part of the sheet that the next blocks belong to. */
void ff_sheet_begin_part (FfSheet *sheet, const char *part);

/* Blocks are the sheet's; so are their cells. */
FfSheetBlock *ff_sheet_row (FfSheet *sheet);
FfSheetBlock *ff_sheet_form (FfSheet *sheet, int n_rows);
void ff_sheet_to_last_page (FfSheet *sheet);
FfSheetBlock *ff_sheet_heading (FfSheet *sheet, const char *text);
FfSheetBlock *ff_sheet_paragraph (FfSheet *sheet, double size, const char *text);
FfSheetBlock *ff_sheet_caution (FfSheet *sheet, FfCaution weight, const char *text);

/* Four lines to write what is changed after the sheet was printed, as it is read out. */
void ff_sheet_amendment_box (FfSheet *sheet);

FfCell *ff_sheet_block_cell (FfSheetBlock *block, double width);

/* A text of its own under those before it; or a run that goes on in the last one. Text may be from
 * outside: control characters become blanks, and a run from right to left stands isolated, so that
 * it can't turn round the times beside it. */
FfText *ff_cell_text (FfCell *cell, double size, gboolean bold, const char *text);
void ff_cell_more (FfCell *cell, double size, gboolean bold, const char *text);

/* Text from outside as it can stand in a line: valid, without control characters or marks that turn
 * its direction. */
char *ff_sheet_clean (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* A small label and under it what it names. */
FfCell *ff_sheet_block_fact (FfSheetBlock *block,
                             double width,
                             double size,
                             const char *label,
                             const char *text);
