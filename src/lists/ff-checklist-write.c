/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-checklist.h"

#include <string.h>

/* A backslash before ASCII punctuation makes it a plain character (CommonMark 0.30, 2.4). */
static gboolean
is_special (char c)
{
  return strchr ("\\`*_[]<>#&!", c) != NULL;
}

/* What a line may not begin with unless it means a bullet, a number or an underline. */
static gboolean
opens_block (const char *text)
{
  gsize digits = strspn (text, "0123456789");

  if (strchr ("-+=~|:", text[0]) != NULL && text[0] != '\0')
    return TRUE;
  return digits > 0 && (text[digits] == '.' || text[digits] == ')');
}

static void
append_words (GString *out, const char *text)
{
  for (const char *p = text; *p != '\0'; p++)
    {
      if (is_special (*p))
        g_string_append_c (out, '\\');
      g_string_append_c (out, *p);
    }
}

static void
append_paragraph (GString *out, const char *text)
{
  gsize digits = strspn (text, "0123456789");

  if (opens_block (text))
    {
      g_string_append_len (out, text, (gssize) digits);
      g_string_append_printf (out, "\\%c", text[digits]);
      text += digits + 1;
    }
  append_words (out, text);
}

static void
append_fact (GString *out, const char *name, const char *value)
{
  if (value[0] == '\0')
    return;
  g_string_append_printf (out, "- %s: ", name);
  append_words (out, value);
  g_string_append_c (out, '\n');
}

static char *
when_alternatives (guint when)
{
  g_autofree char *tokens = ff_when_tokens (when);
  g_auto (GStrv) each = g_strsplit (tokens, ", ", -1);

  return g_strjoinv (" or ", each);
}

static void
add_mark (GString *marks, const char *prefix, const char *mark)
{
  if (mark[0] != '\0')
    g_string_append_printf (marks, "%s%s%s", marks->len > 0 ? ", " : "", prefix, mark);
}

static void
append_marks (GString *out, const FfCheckItem *item)
{
  g_autoptr (GString) marks = g_string_new (NULL);
  g_autofree char *when = when_alternatives (item->when);

  add_mark (marks, "", item->touch ? "touch" : "");
  add_mark (marks, "", item->second ? "second person" : "");
  add_mark (marks, "by ", item->role >= 0 ? ff_name_token (&ff_names_role, item->role) : "");
  add_mark (marks, "when ", when);
  if (marks->len > 0)
    g_string_append_printf (out, " *%s*", marks->str);
}

static void
append_response (GString *out, const FfCheckItem *item)
{
  g_autofree char *value = ff_check_value_format (&item->value);

  if (item->response[0] == '\0' && !ff_check_item_asks (item))
    return;
  g_string_append_c (out, ':');
  if (item->response[0] != '\0')
    {
      g_string_append_c (out, ' ');
      append_words (out, item->response);
    }
  if (value[0] != '\0')
    g_string_append_printf (out, " `%s`", value);
  if (item->fact != FF_FACT_NONE)
    g_string_append_printf (out, " [what the plan says](plan:%s)",
                            ff_name_token (&ff_names_fact, (int) item->fact));
}

static void
append_item (GString *out, const FfCheckItem *item)
{
  static const char *const kinds[] = { "Warning", "Caution", "Note" };

  for (guint i = 0; i < item->guards->len; i++)
    {
      const FfGuard *guard = g_ptr_array_index (item->guards, i);

      g_string_append_printf (out, "%s> %s: ", i == 0 ? "\n" : ">\n", kinds[guard->kind]);
      append_words (out, guard->text);
      g_string_append_c (out, '\n');
    }
  g_string_append_printf (out, "%s- [ ] %s", item->guards->len > 0 ? "\n" : "",
                          item->critical ? "**" : "");
  append_words (out, item->challenge);
  g_string_append (out, item->critical ? "**" : "");
  append_response (out, item);
  append_marks (out, item);
  g_string_append_c (out, '\n');
  if (item->note[0] == '\0')
    return;
  g_string_append (out, "\n  ");
  append_paragraph (out, item->note);
  g_string_append_c (out, '\n');
}

static void
append_section (GString *out, const FfCheckSection *section)
{
  g_autofree char *when = when_alternatives (section->when);

  g_string_append (out, "\n## ");
  append_words (out, section->title);
  if (when[0] != '\0')
    g_string_append_printf (out, " *when %s*", when);
  g_string_append (out, "\n\n");
  for (guint i = 0; i < section->items->len; i++)
    append_item (out, g_ptr_array_index (section->items, i));
}

char *
ff_checklist_write (const FfChecklist *list)
{
  GString *out = g_string_new ("# ");
  g_autofree char *when = when_alternatives (list->when);

  append_words (out, list->title);
  g_string_append (out, "\n\n");
  append_fact (out, "Mode", ff_name_token (&ff_names_list_mode, (int) list->mode));
  append_fact (out, "Place in the day", ff_name_token (&ff_names_phase, (int) list->phase));
  append_fact (out, "When", when);
  append_fact (out, "Version", list->version);
  append_fact (out, "Date", list->date);
  append_fact (out, "By", list->author);
  append_fact (out, "Sources", list->sources);
  for (guint i = 0; i < list->remarks->len; i++)
    {
      g_string_append_c (out, '\n');
      append_paragraph (out, g_ptr_array_index (list->remarks, i));
      g_string_append_c (out, '\n');
    }
  for (guint i = 0; i < list->sections->len; i++)
    append_section (out, g_ptr_array_index (list->sections, i));
  return g_string_free (out, FALSE);
}
