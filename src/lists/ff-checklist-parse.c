/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-check-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-error.h"

#define MOST_ITEMS 400

typedef struct {
  FfCheckReader reader;
  FfChecklist *list;
  FfCheckSection *section;  /* NULL: before the first */
  GPtrArray *guards;        /* wait for their item */
  cmark_node *first_guard;
  gboolean titled;
  guint n_items;
} Parse;

/* Errors */

static int
column_of (const FfCheckReader *reader, int line, int bytes)
{
  int n_lines = (int) g_strv_length (reader->lines);
  const char *text = line >= 1 && line <= n_lines ? reader->lines[line - 1] : "";

  if (bytes <= 1 || (gsize) bytes > strlen (text))
    return 1;
  return (int) g_utf8_strlen (text, bytes - 1) + 1;
}

gboolean
ff_check_refuse (const FfCheckReader *reader,
                 cmark_node *node,
                 GError **error,
                 const char *format,
                 ...)
{
  g_autofree char *sentence = NULL;
  va_list arguments;
  int line;

  /* A break between two lines has no place of its own. */
  while (node != NULL && cmark_node_get_start_line (node) == 0)
    node = cmark_node_parent (node);
  line = node != NULL ? MAX (cmark_node_get_start_line (node), 1) : 1;
  va_start (arguments, format);
  sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               /* Translators: where in a text file; then what is wrong. */
               _ ("line %d, column %d: %s"), line,
               node != NULL ? column_of (reader, line, cmark_node_get_start_column (node)) : 1,
               sentence);
  return FALSE;
}

/* Before the first section */

static gboolean
read_date (FfChecklist *list, const char *value, GError **error)
{
  FfDate date;

  if (!ff_date_parse (value, &date, error))
    return FALSE;
  g_free (list->date);
  list->date = g_strdup (value);
  return TRUE;
}

static gboolean
keep (char **place, const char *value)
{
  g_free (*place);
  *place = g_strdup (value);
  return TRUE;
}

static gboolean
read_enum (const FfNames *names, const char *value, guint *ret_value, GError **error)
{
  int read;

  if (!ff_name_parse (names, value, &read, error))
    return FALSE;
  *ret_value = (guint) read;
  return TRUE;
}

static gboolean
read_fact (FfChecklist *list, const char *name, const char *value, GError **error)
{
  if (g_ascii_strcasecmp (name, "Mode") == 0)
    return read_enum (&ff_names_list_mode, value, (guint *) &list->mode, error);
  if (g_ascii_strcasecmp (name, "Place in the day") == 0)
    return read_enum (&ff_names_phase, value, (guint *) &list->phase, error);
  if (g_ascii_strcasecmp (name, "When") == 0)
    return ff_check_when_read (value, &list->when, error);
  if (g_ascii_strcasecmp (name, "Date") == 0)
    return read_date (list, value, error);
  if (g_ascii_strcasecmp (name, "Version") == 0)
    return keep (&list->version, value);
  if (g_ascii_strcasecmp (name, "By") == 0)
    return keep (&list->author, value);
  if (g_ascii_strcasecmp (name, "Sources") == 0)
    return keep (&list->sources, value);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("“%s” is not known; accepted before the first section: Mode, Place in the day, "
                  "When, Version, Date, By, Sources"),
               name);
  return FALSE;
}

static gboolean
read_fact_item (Parse *parse, cmark_node *item, GError **error)
{
  g_autofree char *text = ff_check_text (item);
  char *colon = strstr (text, ": ");
  g_autoptr (GError) problem = NULL;

  if (g_str_has_prefix (text, "[ ]"))
    return ff_check_refuse (&parse->reader, item, error,
                            _ ("an item before the first section; accepted: “## Section” first"));
  if (colon == NULL)
    return ff_check_refuse (&parse->reader, item, error,
                            _ ("“%s”; accepted before the first section: “- Mode: read and do”"),
                            text);
  *colon = '\0';
  if (!read_fact (parse->list, text, colon + 2, &problem))
    return ff_check_refuse (&parse->reader, item, error, "%s", problem->message);
  return TRUE;
}

static gboolean
read_remark (Parse *parse, cmark_node *node, GError **error)
{
  g_autofree char *text = ff_check_text (node);

  if (!parse->titled)
    return ff_check_refuse (&parse->reader, node, error,
                            _ ("a list begins with its title; accepted: “# Title”"));
  if (parse->section != NULL)
    return ff_check_refuse (&parse->reader, node, error,
                            _ ("words between the items; accepted: “> Note: …” before the item, or "
                               "indented under it"));
  if (text[0] != '\0')
    g_ptr_array_add (parse->list->remarks, g_steal_pointer (&text));
  return TRUE;
}

/* What guards an item */

static gboolean
add_guard (Parse *parse, cmark_node *paragraph, GError **error)
{
  g_autofree char *text = ff_check_text (paragraph);
  char *colon = strstr (text, ": ");
  int kind;

  if (colon != NULL)
    {
      *colon = '\0';
      if (ff_name_parse (&ff_names_guard, text, &kind, NULL))
        {
          g_ptr_array_add (parse->guards, ff_guard_new ((FfGuardKind) kind, colon + 2));
          return TRUE;
        }
    }
  return ff_check_refuse (&parse->reader, paragraph, error,
                          _ ("a quote that guards an item begins with “Warning: ”, “Caution: ” or "
                             "“Note: ”"));
}

static gboolean
read_quote (Parse *parse, cmark_node *quote, GError **error)
{
  for (cmark_node *node = cmark_node_first_child (quote); node != NULL; node = cmark_node_next (node))
    {
      if (cmark_node_get_type (node) != CMARK_NODE_PARAGRAPH)
        return ff_check_refuse (&parse->reader, node, error,
                                _ ("a quote holds sentences alone"));
      if (parse->section == NULL ? !read_remark (parse, node, error)
                                 : !add_guard (parse, node, error))
        return FALSE;
    }
  if (parse->section != NULL && parse->first_guard == NULL)
    parse->first_guard = quote;
  return TRUE;
}

static gboolean
refuse_loose_guard (Parse *parse, GError **error)
{
  return ff_check_refuse (&parse->reader, parse->first_guard, error,
                          _ ("this guards nothing; a warning stands before its item"));
}

/* Items */

static void
take_guards (Parse *parse, FfCheckItem *item)
{
  if (parse->first_guard != NULL)
    item->from_line = cmark_node_get_start_line (parse->first_guard);
  while (parse->guards->len > 0)
    g_ptr_array_add (item->guards, g_ptr_array_steal_index (parse->guards, 0));
  parse->first_guard = NULL;
}

static gboolean
read_note (Parse *parse, cmark_node *node, FfCheckItem *item, GError **error)
{
  g_autofree char *text = NULL, *before = item->note;

  if (cmark_node_get_type (node) != CMARK_NODE_PARAGRAPH)
    {
      before = NULL;
      return ff_check_refuse (&parse->reader, node, error,
                              _ ("under an item only sentences may stand; a warning stands before "
                                 "it, at the left margin"));
    }
  text = ff_check_text (node);
  item->note = before[0] != '\0' ? g_strdup_printf ("%s %s", before, text) : g_strdup (text);
  return TRUE;
}

static gboolean
read_item (Parse *parse, cmark_node *node, GError **error)
{
  FfCheckItem *item = ff_check_item_new ();
  cmark_node *paragraph = cmark_node_first_child (node);

  g_ptr_array_add (parse->section->items, item);
  item->from_line = cmark_node_get_start_line (node);
  take_guards (parse, item);
  if (++parse->n_items > MOST_ITEMS)
    return ff_check_refuse (&parse->reader, node, error, _ ("more than %d items"), MOST_ITEMS);
  if (paragraph == NULL || cmark_node_get_type (paragraph) != CMARK_NODE_PARAGRAPH)
    return ff_check_refuse (&parse->reader, node, error,
                            _ ("this bullet is no item; accepted: “- [ ] Challenge: response”"));
  if (!ff_check_item_read (&parse->reader, paragraph, item, error))
    return FALSE;
  for (cmark_node *below = cmark_node_next (paragraph); below != NULL;
       below = cmark_node_next (below))
    if (!read_note (parse, below, item, error))
      return FALSE;
  return TRUE;
}

static gboolean
read_bullets (Parse *parse, cmark_node *bullets, GError **error)
{
  if (cmark_node_get_list_type (bullets) != CMARK_BULLET_LIST)
    return ff_check_refuse (&parse->reader, bullets, error,
                            _ ("a numbered list; accepted: “- [ ] Challenge: response”, the program "
                               "counts"));
  if (!parse->titled)
    return read_remark (parse, bullets, error);
  for (cmark_node *node = cmark_node_first_child (bullets); node != NULL;
       node = cmark_node_next (node))
    if (parse->section != NULL ? !read_item (parse, node, error)
                               : !read_fact_item (parse, node, error))
      return FALSE;
  return TRUE;
}

/* Headings */

static gboolean
want_full_section (Parse *parse, GError **error)
{
  if (parse->first_guard != NULL)
    return refuse_loose_guard (parse, error);
  if (parse->section != NULL && parse->section->items->len == 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("line %d, column 1: the section “%s” has no item; accepted: “- [ ] Challenge: "
                      "response” below it"),
                   parse->section->line, parse->section->title);
      return FALSE;
    }
  return TRUE;
}

static gboolean
read_title (Parse *parse, cmark_node *node, GError **error)
{
  if (parse->titled)
    return ff_check_refuse (&parse->reader, node, error,
                            _ ("a second title; accepted: one “# Title”, then “## Section”"));
  g_free (parse->list->title);
  parse->list->title = ff_check_text (node);
  parse->titled = parse->list->title[0] != '\0';
  return parse->titled
         || ff_check_refuse (&parse->reader, node, error, _ ("the title has no words"));
}

static gboolean
read_section (Parse *parse, cmark_node *node, GError **error)
{
  guint when = 0;
  g_autofree char *title = NULL;

  if (!parse->titled)
    return read_remark (parse, node, error);
  title = want_full_section (parse, error)
              ? ff_check_heading_read (&parse->reader, node, &when, error)
              : NULL;
  if (title == NULL)
    return FALSE;
  if (title[0] == '\0')
    return ff_check_refuse (&parse->reader, node, error, _ ("the section has no name"));
  parse->section = ff_check_section_new (title);
  parse->section->when = when;
  parse->section->line = cmark_node_get_start_line (node);
  g_ptr_array_add (parse->list->sections, parse->section);
  return TRUE;
}

static gboolean
read_heading (Parse *parse, cmark_node *node, GError **error)
{
  switch (cmark_node_get_heading_level (node))
    {
    case 1:
      return read_title (parse, node, error);
    case 2:
      return read_section (parse, node, error);
    default:
      return ff_check_refuse (&parse->reader, node, error,
                              _ ("a heading this deep has no meaning; accepted: “# Title”, “## "
                                 "Section”"));
    }
}

/* The whole */

static gboolean
read_block (Parse *parse, cmark_node *node, GError **error)
{
  const char *literal;

  switch ((int) cmark_node_get_type (node))
    {
    case CMARK_NODE_HEADING:
      return read_heading (parse, node, error);
    case CMARK_NODE_PARAGRAPH:
      return read_remark (parse, node, error);
    case CMARK_NODE_BLOCK_QUOTE:
      return read_quote (parse, node, error);
    case CMARK_NODE_LIST:
      return read_bullets (parse, node, error);
    case CMARK_NODE_THEMATIC_BREAK:
      return TRUE;
    case CMARK_NODE_HTML_BLOCK:
      literal = cmark_node_get_literal (node);
      if (g_str_has_prefix (literal, "<!--"))
        return TRUE;
      G_GNUC_FALLTHROUGH;
    default:
      return ff_check_refuse (&parse->reader, node, error,
                              _ ("this has no meaning in a list; accepted: headings, quotes, task "
                                 "items, <!-- remarks -->"));
    }
}

/* How far each item reaches: to the line before what comes next. */
static void
set_ends (FfChecklist *list, int n_lines)
{
  int next = n_lines + 1;

  for (guint s = list->sections->len; s-- > 0;)
    {
      FfCheckSection *section = g_ptr_array_index (list->sections, s);

      for (guint i = section->items->len; i-- > 0;)
        {
          FfCheckItem *item = g_ptr_array_index (section->items, i);

          item->to_line = next - 1;
          next = item->from_line;
        }
      next = section->line;
    }
}

static gboolean
read_document (Parse *parse, cmark_node *document, GError **error)
{
  for (cmark_node *node = cmark_node_first_child (document); node != NULL;
       node = cmark_node_next (node))
    if (!read_block (parse, node, error))
      return FALSE;
  if (!parse->titled)
    return ff_check_refuse (&parse->reader, NULL, error,
                            _ ("a list begins with its title; accepted: “# Title”"));
  if (parse->section == NULL)
    return ff_check_refuse (&parse->reader, NULL, error,
                            _ ("a list has a section at least; accepted: “## Section”"));
  return want_full_section (parse, error);
}

static gboolean
check_text (const char *text, char **lines, GError **error)
{
  if (strlen (text) > FF_CHECKLIST_BYTES)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("line 1, column 1: the text is longer than %d bytes"), FF_CHECKLIST_BYTES);
      return FALSE;
    }
  for (guint i = 0; lines[i] != NULL; i++)
    {
      const char *end;

      if (!g_utf8_validate (lines[i], -1, &end))
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("line %u, column %ld: not UTF-8 text; save the file as UTF-8"), i + 1,
                       g_utf8_strlen (lines[i], end - lines[i]) + 1);
          return FALSE;
        }
    }
  return TRUE;
}

FfChecklist *
ff_checklist_parse (const char *text, GError **error)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  g_autoptr (FfChecklist) list = ff_checklist_new ();
  g_autoptr (GPtrArray) guards = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_guard_free);
  Parse parse = { .reader = { lines }, .list = list, .guards = guards };
  cmark_node *document;
  gboolean good;

  if (!check_text (text, lines, error))
    return NULL;
  document = cmark_parse_document (text, strlen (text), CMARK_OPT_DEFAULT);
  cmark_consolidate_text_nodes (document);
  good = read_document (&parse, document, error);
  cmark_node_free (document);
  set_ends (list, (int) g_strv_length (lines));
  return good ? g_steal_pointer (&list) : NULL;
}
