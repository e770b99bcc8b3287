/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-checklist.h"

#include <math.h>
#include <string.h>

FfGuard *
ff_guard_new (FfGuardKind kind, const char *text)
{
  FfGuard *guard = g_new0 (FfGuard, 1);

  guard->kind = kind;
  guard->text = g_strdup (text);
  return guard;
}

void
ff_guard_free (FfGuard *guard)
{
  g_free (guard->text);
  g_free (guard);
}

static void
item_free (gpointer data)
{
  FfCheckItem *item = data;

  g_free (item->challenge);
  g_free (item->response);
  g_free (item->note);
  ff_check_value_clear (&item->value);
  g_ptr_array_unref (item->guards);
  g_free (item);
}

FfCheckItem *
ff_check_item_new (void)
{
  FfCheckItem *item = g_new0 (FfCheckItem, 1);

  item->challenge = g_strdup ("");
  item->response = g_strdup ("");
  item->note = g_strdup ("");
  item->value.low = item->value.high = NAN;
  item->role = -1;
  item->guards = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_guard_free);
  return item;
}

static void
section_free (gpointer data)
{
  FfCheckSection *section = data;

  g_free (section->title);
  g_ptr_array_unref (section->items);
  g_free (section);
}

FfCheckSection *
ff_check_section_new (const char *title)
{
  FfCheckSection *section = g_new0 (FfCheckSection, 1);

  section->title = g_strdup (title);
  section->items = g_ptr_array_new_with_free_func (item_free);
  return section;
}

FfChecklist *
ff_checklist_new (void)
{
  FfChecklist *list = g_new0 (FfChecklist, 1);

  list->phase = FF_PHASE_ANY;
  list->title = g_strdup ("");
  list->version = g_strdup ("");
  list->date = g_strdup ("");
  list->author = g_strdup ("");
  list->sources = g_strdup ("");
  list->remarks = g_ptr_array_new_with_free_func (g_free);
  list->sections = g_ptr_array_new_with_free_func (section_free);
  return list;
}

void
ff_checklist_free (FfChecklist *list)
{
  if (list == NULL)
    return;
  g_free (list->title);
  g_free (list->version);
  g_free (list->date);
  g_free (list->author);
  g_free (list->sources);
  g_ptr_array_unref (list->remarks);
  g_ptr_array_unref (list->sections);
  g_free (list);
}

gboolean
ff_check_item_asks (const FfCheckItem *item)
{
  return item->value.sort != FF_VALUE_NONE || item->fact != FF_FACT_NONE;
}

guint
ff_checklist_count (const FfChecklist *list, guint conditions)
{
  guint count = 0;

  for (guint s = 0; s < list->sections->len; s++)
    {
      const FfCheckSection *section = g_ptr_array_index (list->sections, s);

      for (guint i = 0; i < section->items->len; i++)
        {
          const FfCheckItem *item = g_ptr_array_index (section->items, i);

          count += ff_when_holds (section->when, conditions)
                   && ff_when_holds (item->when, conditions);
        }
    }
  return count;
}

/* The same list */

typedef gboolean (*Same) (gconstpointer a, gconstpointer b);

static gboolean
all_same (GPtrArray *a, GPtrArray *b, Same same)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!same (g_ptr_array_index (a, i), g_ptr_array_index (b, i)))
      return FALSE;
  return TRUE;
}

static gboolean
same_guard (gconstpointer a, gconstpointer b)
{
  const FfGuard *first = a, *second = b;

  return first->kind == second->kind && g_str_equal (first->text, second->text);
}

static gboolean
same_item (gconstpointer a, gconstpointer b)
{
  const FfCheckItem *first = a, *second = b;

  return g_str_equal (first->challenge, second->challenge)
         && g_str_equal (first->response, second->response)
         && g_str_equal (first->note, second->note) && first->fact == second->fact
         && ff_check_value_equal (&first->value, &second->value)
         && first->critical == second->critical && first->touch == second->touch
         && first->second == second->second && first->role == second->role
         && first->when == second->when && all_same (first->guards, second->guards, same_guard);
}

static gboolean
same_section (gconstpointer a, gconstpointer b)
{
  const FfCheckSection *first = a, *second = b;

  return g_str_equal (first->title, second->title) && first->when == second->when
         && all_same (first->items, second->items, same_item);
}

gboolean
ff_checklist_equal (const FfChecklist *a, const FfChecklist *b)
{
  return g_str_equal (a->title, b->title) && a->mode == b->mode && a->phase == b->phase
         && g_str_equal (a->version, b->version) && g_str_equal (a->date, b->date)
         && g_str_equal (a->author, b->author) && g_str_equal (a->sources, b->sources)
         && a->when == b->when && all_same (a->remarks, b->remarks, g_str_equal)
         && all_same (a->sections, b->sections, same_section);
}

/* Critical items first */

static FfCheckSection *
section_at (const FfChecklist *list, int line)
{
  for (guint i = 0; i < list->sections->len; i++)
    {
      FfCheckSection *section = g_ptr_array_index (list->sections, i);

      if (section->line == line)
        return section;
    }
  return NULL;
}

static gboolean
is_sorted (const FfCheckSection *section)
{
  gboolean other = FALSE;

  for (guint i = 0; i < section->items->len; i++)
    {
      const FfCheckItem *item = g_ptr_array_index (section->items, i);

      if (item->critical && other)
        return FALSE;
      other = other || !item->critical;
    }
  return TRUE;
}

static void
append_lines (GString *out, char **lines, int from, int to)
{
  for (int i = from; i <= to && lines[i - 1] != NULL; i++)
    g_string_append_printf (out, "%s%s", lines[i - 1], lines[i] != NULL ? "\n" : "");
}

static void
append_items (GString *out, char **lines, const FfCheckSection *section, gboolean critical)
{
  for (guint i = 0; i < section->items->len; i++)
    {
      const FfCheckItem *item = g_ptr_array_index (section->items, i);

      if (item->critical != critical)
        continue;
      append_lines (out, lines, item->from_line, item->to_line);
      /* The last item of a file need not end its line. */
      if (out->len > 0 && out->str[out->len - 1] != '\n')
        g_string_append_c (out, '\n');
    }
}

char *
ff_checklist_critical_first (const char *text, int line)
{
  g_autoptr (FfChecklist) list = ff_checklist_parse (text, NULL), after = NULL;
  const FfCheckSection *section = list != NULL ? section_at (list, line) : NULL;
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  g_autoptr (GString) out = g_string_new (NULL);
  const FfCheckItem *first, *last;

  if (section == NULL || is_sorted (section))
    return NULL;
  first = g_ptr_array_index (section->items, 0);
  last = g_ptr_array_index (section->items, section->items->len - 1);
  append_lines (out, lines, 1, first->from_line - 1);
  append_items (out, lines, section, TRUE);
  append_items (out, lines, section, FALSE);
  append_lines (out, lines, last->to_line + 1, (int) g_strv_length (lines));

  /* Markdown has its corners: what would no longer be read the same way is left alone. */
  after = ff_checklist_parse (out->str, NULL);
  if (after == NULL || ff_checklist_count (after, ~0u) != ff_checklist_count (list, ~0u))
    return NULL;
  return g_string_free (g_steal_pointer (&out), FALSE);
}
