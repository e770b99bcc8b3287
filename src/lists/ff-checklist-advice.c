/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-checklist-advice.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MANY_ITEMS 9      /* Gawande: five to nine a pause point */
#define TOO_MANY_ITEMS 12
#define MOST_TURN_ROUND 7 /* from the job: under a minute, or it is not done */
#define MOST_TAKE_OFF 5   /* Degani and Wiener 13: away from the busy moment */
#define LONG_ITEM 60
#define MOST_BOXED 3      /* CAP 676, 7, 2.6: fewer than four memory items */
#define GUARDS_ONE_IN 5

static void
advice_free (gpointer data)
{
  FfAdvice *advice = data;

  g_free (advice->text);
  g_free (advice);
}

static void
say (GPtrArray *all, int line, char *taken)
{
  FfAdvice *advice = g_new0 (FfAdvice, 1);

  advice->line = line;
  advice->text = taken;
  g_ptr_array_add (all, advice);
}

/* Items */

/* Answers that say nothing of what was seen (Degani and Wiener 4). */
static gboolean
is_empty_answer (const char *response)
{
  static const char *const empty[] = { "checked", "check", "set", "ok", "okay", "done", "yes",
                                       "fine", "good", "as required" };
  g_autofree char *bare = g_strdup (response);

  g_strdelimit (bare, "\".“”", ' ');
  g_strstrip (bare);
  for (guint i = 0; i < G_N_ELEMENTS (empty); i++)
    if (g_ascii_strcasecmp (bare, empty[i]) == 0)
      return TRUE;
  return FALSE;
}

static int
item_line (const FfCheckItem *item)
{
  return item->from_line;
}

static void
advise_response (GPtrArray *all, const FfChecklist *list, const FfCheckItem *item)
{
  if (ff_check_item_asks (item))
    return;
  if (item->response[0] == '\0' && list->mode == FF_LIST_CHALLENGE)
    say (all, item_line (item),
         g_strdup_printf (_ ("“%s” has no answer. Say what is seen: “locked, pulled”."),
                          item->challenge));
  else if (is_empty_answer (item->response))
    say (all, item_line (item),
         g_strdup_printf (_ ("“%s” can be answered without looking. Say the state or the value that "
                             "is wanted."),
                          item->response));
}

static void
advise_length (GPtrArray *all, const FfCheckItem *item)
{
  glong length = g_utf8_strlen (item->challenge, -1) + g_utf8_strlen (item->response, -1);

  if (length > LONG_ITEM)
    say (all, item_line (item),
         g_strdup_printf (_ ("%ld letters. Over %d an item is half read: shorten it, or put the rest "
                             "indented under it."),
                          length, LONG_ITEM));
}

/* Sections */

static void
advise_count (GPtrArray *all, const FfCheckSection *section)
{
  guint n = section->items->len;

  if (n > TOO_MANY_ITEMS)
    say (all, section->line,
         g_strdup_printf (_ ("%u items in “%s”. Nobody keeps to that many: part it."), n,
                          section->title));
  else if (n > MANY_ITEMS)
    say (all, section->line,
         g_strdup_printf (_ ("%u items in “%s”. Five to nine are kept to."), n, section->title));
}

static void
advise_order (GPtrArray *all, const FfCheckSection *section)
{
  gboolean lesser = FALSE; /* stands before */

  for (guint i = 0; i < section->items->len; i++)
    {
      const FfCheckItem *item = g_ptr_array_index (section->items, i);

      if (item->critical && lesser && 2 * i >= section->items->len)
        say (all, item_line (item),
             g_strdup_printf (_ ("“%s” is critical and stands below the middle of “%s”. Critical "
                                 "items stand first."),
                              item->challenge, section->title));
      lesser = lesser || !item->critical;
    }
}

/* The list */

static gboolean
says_first (const FfChecklist *list, const char *const words[])
{
  const FfCheckSection *section = g_ptr_array_index (list->sections, 0);
  const FfCheckItem *item = g_ptr_array_index (section->items, 0);
  g_autofree char *all = g_strdup_printf ("%s %s", item->challenge, item->response);
  g_autofree char *folded = g_utf8_casefold (all, -1);

  for (guint i = 0; words[i] != NULL; i++)
    if (strstr (folded, words[i]) == NULL)
      return FALSE;
  return TRUE;
}

static void
advise_phase (GPtrArray *all, const FfChecklist *list)
{
  guint n = ff_checklist_count (list, ~0u);
  const FfCheckSection *first = g_ptr_array_index (list->sections, 0);

  if (list->phase == FF_PHASE_TURN_ROUND && n > MOST_TURN_ROUND)
    say (all, first->line,
         g_strdup_printf (_ ("%u items at a turn-round. Seven are done each time, more are not."), n));
  if (list->phase == FF_PHASE_TAKE_OFF && n > MOST_TAKE_OFF)
    say (all, first->line,
         g_strdup_printf (_ ("%u items just before take-off. Five at most; the rest earlier, away from "
                             "the busy moment."),
                          n));
  if (list->phase == FF_PHASE_TURN_ROUND
      && !says_first (list, (const char *const[]) { "motor", "batter", NULL }))
    say (all, first->line,
         g_strdup (_ ("A turn-round begins with motors stopped and battery out: hands come near the "
                      "propellers next.")));
  if (list->phase == FF_PHASE_EMERGENCY && list->mode != FF_LIST_READ_AND_DO)
    say (all, 1, g_strdup (_ ("An emergency card is read and done. Write “- Mode: read and do”.")));
}

static void
advise_boxed (GPtrArray *all, const FfChecklist *list)
{
  guint critical = 0;

  for (guint s = 0; s < list->sections->len; s++)
    {
      const FfCheckSection *section = g_ptr_array_index (list->sections, s);

      for (guint i = 0; i < section->items->len; i++)
        critical += ((const FfCheckItem *) g_ptr_array_index (section->items, i))->critical != 0;
    }
  if (list->phase == FF_PHASE_EMERGENCY && critical > MOST_BOXED)
    say (all, 1,
         g_strdup_printf (_ ("%u actions to know by heart. Three at most are remembered."), critical));
}

static void
advise_guards (GPtrArray *all, const FfChecklist *list)
{
  guint guarded = 0, n = ff_checklist_count (list, ~0u);

  for (guint s = 0; s < list->sections->len; s++)
    {
      const FfCheckSection *section = g_ptr_array_index (list->sections, s);

      for (guint i = 0; i < section->items->len; i++)
        {
          const FfCheckItem *item = g_ptr_array_index (section->items, i);

          for (guint g = 0; g < item->guards->len; g++)
            guarded += ((const FfGuard *) g_ptr_array_index (item->guards, g))->kind
                       != FF_GUARD_NOTE;
        }
    }
  if (n >= GUARDS_ONE_IN && guarded * GUARDS_ONE_IN > n + GUARDS_ONE_IN)
    say (all, 1,
         g_strdup_printf (_ ("%u warnings and cautions over %u items. More than one in five are no "
                             "longer seen."),
                          guarded, n));
}

static void
advise_dated (GPtrArray *all, const FfChecklist *list)
{
  if (list->version[0] == '\0' || list->date[0] == '\0')
    say (all, 1, g_strdup (_ ("No version or no date. An old print can't be told from this one.")));
}

static gint
compare_lines (gconstpointer a, gconstpointer b)
{
  return (*(FfAdvice *const *) a)->line - (*(FfAdvice *const *) b)->line;
}

GPtrArray *
ff_checklist_advice (const FfChecklist *list)
{
  GPtrArray *all = g_ptr_array_new_with_free_func (advice_free);

  advise_dated (all, list);
  advise_phase (all, list);
  advise_boxed (all, list);
  advise_guards (all, list);
  for (guint s = 0; s < list->sections->len; s++)
    {
      const FfCheckSection *section = g_ptr_array_index (list->sections, s);

      advise_count (all, section);
      if (list->mode == FF_LIST_CHALLENGE)
        advise_order (all, section);
      for (guint i = 0; i < section->items->len; i++)
        {
          advise_response (all, list, g_ptr_array_index (section->items, i));
          advise_length (all, g_ptr_array_index (section->items, i));
        }
    }
  g_ptr_array_sort (all, compare_lines);
  return all;
}

int
ff_checklist_seconds (const FfChecklist *list, guint conditions)
{
  int seconds = 0;

  for (guint s = 0; s < list->sections->len; s++)
    {
      const FfCheckSection *section = g_ptr_array_index (list->sections, s);

      for (guint i = 0; i < section->items->len; i++)
        {
          const FfCheckItem *item = g_ptr_array_index (section->items, i);

          if (ff_when_holds (section->when, conditions) && ff_when_holds (item->when, conditions))
            seconds += ff_check_item_asks (item) || item->second ? 8 : 4;
        }
    }
  return seconds;
}
