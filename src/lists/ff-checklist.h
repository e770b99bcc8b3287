/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A checklist as a person writes it: a CommonMark file (spec.commonmark.org, version 0.30) whose
 * headings are the title and the sections, whose task items are the items, whose block quotes warn
 * before the item they guard. DEVELOPERS.md and the help write the grammar down. The text is what
 * is kept; this is what it says. */
#pragma once

#include <glib.h>

#include "ff-check-value.h"
#include "ff-names.h"

/* One reads and the other answers; or whoever reads does. */
typedef enum { FF_LIST_CHALLENGE, FF_LIST_READ_AND_DO } FfListMode;

/* Where in the day a list belongs. */
typedef enum {
  FF_PHASE_VAN_PACK,
  FF_PHASE_SITE,
  FF_PHASE_PRE_FLIGHT,
  FF_PHASE_TAKE_OFF,
  FF_PHASE_AFTER_LANDING,
  FF_PHASE_TURN_ROUND,
  FF_PHASE_DE_RIG,
  FF_PHASE_OFFLOAD,
  FF_PHASE_RETURN_CHECK,
  FF_PHASE_ANY,
  FF_PHASE_EMERGENCY,
} FfPhase;

/* What a day can be; bit n of a mask is condition n. */
typedef enum {
  FF_WHEN_COLD,
  FF_WHEN_NIGHT,
  FF_WHEN_WATER,
  FF_WHEN_PEOPLE,
  FF_WHEN_OPERATORS,
  FF_WHEN_FIRST_FLIGHT,
  FF_WHEN_NEW_SITE,
} FfWhen;
#define FF_N_WHEN 7

/* What the plan knows, and an item can be bound to. */
typedef enum {
  FF_FACT_NONE,
  FF_FACT_FILTER,
  FF_FACT_BATTERY,
  FF_FACT_AIRCRAFT,
  FF_FACT_CARD,
  FF_FACT_RETURN_HEIGHT,
  FF_FACT_LINE,
  FF_FACT_LAND_BY,
  FF_FACT_ABORT_WORD,
} FfFact;
#define FF_N_FACTS 9

typedef enum { FF_GUARD_WARNING, FF_GUARD_CAUTION, FF_GUARD_NOTE } FfGuardKind;

extern const FfNames ff_names_list_mode;
extern const FfNames ff_names_phase;
extern const FfNames ff_names_when;
extern const FfNames ff_names_fact;
extern const FfNames ff_names_guard;

typedef struct {
  FfGuardKind kind;
  char *text;
} FfGuard;

typedef struct {
  char *challenge;
  char *response; /* the words expected; may be empty where a value or a fact is asked for */
  char *note;     /* empty: none */
  FfCheckValue value;
  FfFact fact;
  gboolean critical, touch, second; /* second: another person looks as well */
  int role;       /* FfRole of the one who answers; -1: whoever */
  guint when;     /* mask of FfWhen: any of them calls for it; 0: always */
  GPtrArray *guards;        /* FfGuard: stand before it */
  int from_line, to_line;   /* where it stands in the text, its guards included; from 1 */
} FfCheckItem;

typedef struct {
  char *title;
  guint when;
  GPtrArray *items; /* FfCheckItem, at least one */
  int line;
} FfCheckSection;

typedef struct {
  char *title;
  FfListMode mode;
  FfPhase phase;
  char *version, *date, *author, *sources; /* date YYYY-MM-DD; each may be empty */
  guint when;
  GPtrArray *remarks;  /* char *: what stands before the first section */
  GPtrArray *sections; /* FfCheckSection, at least one */
} FfChecklist;

/* The longest text that is read. */
#define FF_CHECKLIST_BYTES (128 * 1024)

FfCheckItem *ff_check_item_new (void) G_GNUC_WARN_UNUSED_RESULT;
FfCheckSection *ff_check_section_new (const char *title) G_GNUC_WARN_UNUSED_RESULT;
FfGuard *ff_guard_new (FfGuardKind kind, const char *text) G_GNUC_WARN_UNUSED_RESULT;
void ff_guard_free (FfGuard *guard);
FfChecklist *ff_checklist_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_checklist_free (FfChecklist *list);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfChecklist, ff_checklist_free)

/* Reads a text. FF_ERROR_INPUT: "line 12, column 7: …", what was found and what is accepted. */
FfChecklist *ff_checklist_parse (const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A text that is read as this list: how a list made by a program is written. A text that a person
 * wrote is kept as it is instead. */
char *ff_checklist_write (const FfChecklist *list) G_GNUC_WARN_UNUSED_RESULT;

/* The same list, wherever its items stand in the text. */
gboolean ff_checklist_equal (const FfChecklist *a, const FfChecklist *b);

/* Whether a day like this calls for what is marked so. */
gboolean ff_when_holds (guint when, guint conditions);

/* "cold, night"; empty for none. By tokens, and in people's words. */
char *ff_when_tokens (guint when) G_GNUC_WARN_UNUSED_RESULT;
char *ff_when_words (guint when) G_GNUC_WARN_UNUSED_RESULT;

/* Reads tokens back: "cold, night"; empty for none. FF_ERROR_INPUT. */
gboolean ff_when_parse (const char *tokens, guint *ret_when, GError **error);

/* Whether the person must say or read something, rather than answer that it is so. */
gboolean ff_check_item_asks (const FfCheckItem *item);

/* Number of items that such a day calls for. */
guint ff_checklist_count (const FfChecklist *list, guint conditions);

/* The text with the critical items of the section that begins in `line` moved to its front, in
 * their order, each with what guards it; NULL when they are there already. Degani and Wiener, Human
 * Factors of Flight-Deck Checklists (NASA CR-177549, 1990), guideline 10: the most critical items
 * as near to the beginning as possible. */
char *ff_checklist_critical_first (const char *text, int line) G_GNUC_WARN_UNUSED_RESULT;
