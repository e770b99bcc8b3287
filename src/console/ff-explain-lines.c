/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-explain-lines.h"

#define NAME_WIDTH 14
/* What arithmetic leaves beyond this is noise. */
#define DECIMALS 9

void
ff_json_steps (FfJson *json, const char *name, GPtrArray *steps)
{
  ff_json_begin_array (json, name);
  for (guint i = 0; i < steps->len; i++)
    {
      const FfExplainStep *step = g_ptr_array_index (steps, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "step", ff_name_token (&ff_names_step, (int) step->kind));
      ff_json_text (json, "text", step->text);
      ff_json_text (json, "formula", step->formula[0] != '\0' ? step->formula : NULL);
      ff_json_text (json, "source", step->source[0] != '\0' ? step->source : NULL);
      ff_json_begin_object (json, "values");
      for (guint j = 0; j < step->n_values; j++)
        ff_json_rounded (json, step->values[j].name, step->values[j].value, DECIMALS);
      ff_json_end (json);
      ff_json_end (json);
    }
  ff_json_end (json);
}

/* Under the sentence, at its left edge. */
static void
say_under (FfConsole *console, const char *text, int column)
{
  g_autofree char *line = g_strdup_printf ("%*s%s", column, "", text);

  if (text[0] != '\0')
    ff_console_wrap (console, (guint) column, line);
}

static void
say_step (FfConsole *console, const FfExplainStep *step, int indent)
{
  const char *name = ff_name_text (&ff_names_step, (int) step->kind);
  int column = indent + NAME_WIDTH;
  int pad = MAX (NAME_WIDTH - (int) g_utf8_strlen (name, -1), 1);
  g_autofree char *first = g_strdup_printf ("%*s%s%*s%s", indent, "", name, pad, "", step->text);
  g_autofree char *source
      = step->source[0] != '\0' ? g_strdup_printf ("[%s]", step->source) : g_strdup ("");

  ff_console_wrap (console, (guint) column, first);
  say_under (console, step->formula, column);
  say_under (console, source, column);
}

void
ff_console_steps (FfConsole *console, GPtrArray *steps, int indent)
{
  for (guint i = 0; i < steps->len; i++)
    say_step (console, g_ptr_array_index (steps, i), indent);
}
