/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One line of a list: what its Markdown means. Bold is critical, a code span is what is to be read
 * and said, a link into the plan is a bound fact, emphasis at the end holds the marks. */
#include "ff-check-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"

typedef enum { PART_CHALLENGE, PART_RESPONSE, PART_MARKS } Part;

typedef struct {
  const FfCheckReader *reader;
  FfCheckItem *item;
  GString *challenge, *response;
  Part part;
} Line;

/* Text */

static char *
single_blanks (const char *text)
{
  GString *out = g_string_new (NULL);

  for (const char *p = text; *p != '\0'; p++)
    if (!g_ascii_isspace (*p))
      g_string_append_c (out, *p);
    else if (out->len > 0 && out->str[out->len - 1] != ' ')
      g_string_append_c (out, ' ');
  if (out->len > 0 && out->str[out->len - 1] == ' ')
    g_string_truncate (out, out->len - 1);
  return g_string_free (out, FALSE);
}

static void
append_inline (GString *out, cmark_node *node)
{
  cmark_node_type type = cmark_node_get_type (node);

  if (type == CMARK_NODE_SOFTBREAK || type == CMARK_NODE_LINEBREAK)
    g_string_append_c (out, ' ');
  else if (type == CMARK_NODE_TEXT || type == CMARK_NODE_CODE)
    g_string_append (out, cmark_node_get_literal (node));
}

static void
append_all (GString *out, cmark_node *node)
{
  cmark_iter *iter = cmark_iter_new (node);

  while (cmark_iter_next (iter) != CMARK_EVENT_DONE)
    if (cmark_iter_get_event_type (iter) == CMARK_EVENT_ENTER)
      append_inline (out, cmark_iter_get_node (iter));
  cmark_iter_free (iter);
}

char *
ff_check_text (cmark_node *node)
{
  g_autoptr (GString) all = g_string_new (NULL);

  append_all (all, node);
  return single_blanks (all->str);
}

/* Marks */

gboolean
ff_check_when_read (const char *words, guint *when, GError **error)
{
  g_auto (GStrv) each = g_strsplit (words, " or ", -1);
  int condition;

  for (guint i = 0; each[i] != NULL; i++)
    {
      if (!ff_name_parse (&ff_names_when, g_strstrip (each[i]), &condition, error))
        return FALSE;
      *when |= 1u << condition;
    }
  return TRUE;
}

static gboolean
read_mark (FfCheckItem *item, const char *mark, GError **error)
{
  if (g_str_equal (mark, "touch"))
    return item->touch = TRUE;
  if (g_str_equal (mark, "second person"))
    return item->second = TRUE;
  if (g_str_has_prefix (mark, "by "))
    return ff_name_parse (&ff_names_role, mark + strlen ("by "), &item->role, error);
  if (g_str_has_prefix (mark, "when "))
    return ff_check_when_read (mark + strlen ("when "), &item->when, error);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("“%s” is not a mark; accepted: touch, second person, by pilot, when cold"), mark);
  return FALSE;
}

static gboolean
read_marks (Line *line, cmark_node *node, GError **error)
{
  g_autofree char *text = ff_check_text (node);
  g_auto (GStrv) marks = g_strsplit (text, ",", -1);

  line->part = PART_MARKS;
  for (guint i = 0; marks[i] != NULL; i++)
    {
      g_autoptr (GError) problem = NULL;

      if (!read_mark (line->item, g_strstrip (marks[i]), &problem))
        return ff_check_refuse (line->reader, node, error, "%s", problem->message);
    }
  return TRUE;
}

/* The parts of a line */

/* The first colon with a blank behind it parts the challenge from the response. */
static void
part_challenge (Line *line)
{
  char *colon = strstr (line->challenge->str, ": ");

  if (line->part != PART_CHALLENGE || colon == NULL)
    return;
  g_string_append (line->response, colon + 2);
  g_string_truncate (line->challenge, (gsize) (colon - line->challenge->str));
  line->part = PART_RESPONSE;
}

static gboolean
take_text (Line *line, cmark_node *node, GError **error)
{
  g_autofree char *text = NULL;

  if (line->part == PART_MARKS)
    {
      text = ff_check_text (node);
      if (text[0] == '\0')
        return TRUE;
      return ff_check_refuse (line->reader, node, error,
                              _ ("“%s” stands behind the marks; accepted: marks in emphasis at the "
                                 "very end of the item"),
                              text);
    }
  append_all (line->part == PART_CHALLENGE ? line->challenge : line->response, node);
  part_challenge (line);
  return TRUE;
}

static gboolean
take_strong (Line *line, cmark_node *node, GError **error)
{
  if (line->part == PART_CHALLENGE)
    line->item->critical = TRUE;
  return take_text (line, node, error);
}

static gboolean
want_response (Line *line, cmark_node *node, gboolean taken, GError **error)
{
  if (line->part != PART_RESPONSE)
    return ff_check_refuse (line->reader, node, error,
                            _ ("what is to be said stands behind “challenge: ” and before the "
                               "marks"));
  if (taken)
    return ff_check_refuse (line->reader, node, error,
                            _ ("an item asks for one thing; write another item"));
  return TRUE;
}

static gboolean
take_value (Line *line, cmark_node *node, GError **error)
{
  FfCheckValue *value = &line->item->value;
  g_autoptr (GError) problem = NULL;

  if (!want_response (line, node, value->sort != FF_VALUE_NONE, error))
    return FALSE;
  if (!ff_check_value_parse (cmark_node_get_literal (node), value, &problem))
    return ff_check_refuse (line->reader, node, error, "%s", problem->message);
  return TRUE;
}

static gboolean
take_link (Line *line, cmark_node *node, GError **error)
{
  const char *url = cmark_node_get_url (node);
  g_autoptr (GError) problem = NULL;
  int fact;

  if (!g_str_has_prefix (url, "plan:"))
    return take_text (line, node, error);
  if (!want_response (line, node, line->item->fact != FF_FACT_NONE, error))
    return FALSE;
  if (!ff_name_parse (&ff_names_fact, url + strlen ("plan:"), &fact, &problem))
    return ff_check_refuse (line->reader, node, error, "%s", problem->message);
  line->item->fact = (FfFact) fact;
  return TRUE;
}

static gboolean
take (Line *line, cmark_node *node, GError **error)
{
  switch ((int) cmark_node_get_type (node))
    {
    case CMARK_NODE_TEXT:
    case CMARK_NODE_SOFTBREAK:
    case CMARK_NODE_LINEBREAK:
      return take_text (line, node, error);
    case CMARK_NODE_STRONG:
      return take_strong (line, node, error);
    case CMARK_NODE_EMPH:
      return read_marks (line, node, error);
    case CMARK_NODE_CODE:
      return take_value (line, node, error);
    case CMARK_NODE_LINK:
      return take_link (line, node, error);
    default:
      return ff_check_refuse (line->reader, node, error,
                              _ ("pictures and HTML have no meaning in a list; accepted: words, "
                                 "**critical**, `value`, [words](plan:filter), *marks*"));
    }
}

/* The box that makes an item of a bullet; it is taken off the text. */
static gboolean
take_box (Line *line, cmark_node *first, GError **error)
{
  const char *text
      = first != NULL && cmark_node_get_type (first) == CMARK_NODE_TEXT ? cmark_node_get_literal (first)
                                                                        : "";

  if (g_str_has_prefix (text, "[ ] "))
    {
      g_string_append (line->challenge, text + strlen ("[ ] "));
      part_challenge (line);
      return TRUE;
    }
  if (g_str_has_prefix (text, "[x]") || g_str_has_prefix (text, "[X]"))
    return ff_check_refuse (line->reader, first, error,
                            _ ("this item is ticked already; accepted: “- [ ] ”, nothing is ticked "
                               "ahead"));
  return ff_check_refuse (line->reader, first, error,
                          _ ("this bullet is no item; accepted: “- [ ] Challenge: response”"));
}

gboolean
ff_check_item_read (const FfCheckReader *reader,
                    cmark_node *paragraph,
                    FfCheckItem *item,
                    GError **error)
{
  g_autoptr (GString) challenge = g_string_new (NULL), response = g_string_new (NULL);
  Line line = { reader, item, challenge, response, PART_CHALLENGE };
  cmark_node *first = cmark_node_first_child (paragraph);

  if (!take_box (&line, first, error))
    return FALSE;
  for (cmark_node *node = cmark_node_next (first); node != NULL; node = cmark_node_next (node))
    if (!take (&line, node, error))
      return FALSE;
  g_free (item->challenge);
  g_free (item->response);
  item->challenge = single_blanks (challenge->str);
  item->response = single_blanks (response->str);
  if (item->challenge[0] == '\0')
    return ff_check_refuse (reader, paragraph, error,
                            _ ("an item without a challenge; accepted: “- [ ] Challenge: "
                               "response”"));
  return TRUE;
}

char *
ff_check_heading_read (const FfCheckReader *reader,
                       cmark_node *heading,
                       guint *ret_when,
                       GError **error)
{
  FfCheckItem marks = { .role = -1 };
  g_autoptr (GString) title = g_string_new (NULL);
  Line line = { reader, &marks, title, title, PART_RESPONSE };

  for (cmark_node *node = cmark_node_first_child (heading); node != NULL;
       node = cmark_node_next (node))
    if (!(cmark_node_get_type (node) == CMARK_NODE_EMPH ? read_marks (&line, node, error)
                                                        : take_text (&line, node, error)))
      return NULL;
  if (marks.touch || marks.second || marks.role >= 0)
    {
      ff_check_refuse (reader, heading, error, _ ("a section can only be marked with “when”"));
      return NULL;
    }
  *ret_when = marks.when;
  return single_blanks (title->str);
}
