/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-explain-lines.h"

#define WIDTH 80
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

/* Words in lines that end before the last column; all lines but the first are indented. */
static void
append_wrapped (GString *out, const char *text, int column, int indent)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    {
      int width = (int) g_utf8_strlen (words[i], -1);

      if (i > 0 && column + 1 + width > WIDTH)
        {
          g_string_append_printf (out, "\n%*s", indent, "");
          column = indent;
        }
      else if (i > 0)
        {
          g_string_append_c (out, ' ');
          column++;
        }
      g_string_append (out, words[i]);
      column += width;
    }
}

static void
say_step (FfConsole *console, const FfExplainStep *step, int indent)
{
  g_autoptr (GString) out = g_string_new (NULL);
  const char *name = ff_name_text (&ff_names_step, (int) step->kind);
  int column = indent + NAME_WIDTH;
  int pad = MAX (NAME_WIDTH - (int) g_utf8_strlen (name, -1), 1);

  g_string_append_printf (out, "%*s%s%*s", indent, "", name, pad, "");
  append_wrapped (out, step->text, column, column);
  if (step->formula[0] != '\0')
    {
      g_string_append_printf (out, "\n%*s", column, "");
      append_wrapped (out, step->formula, column, column);
    }
  if (step->source[0] != '\0')
    {
      g_autofree char *source = g_strdup_printf ("[%s]", step->source);

      g_string_append_printf (out, "\n%*s", column, "");
      append_wrapped (out, source, column, column);
    }
  ff_console_line (console, "%s", out->str);
}

void
ff_console_steps (FfConsole *console, GPtrArray *steps, int indent)
{
  for (guint i = 0; i < steps->len; i++)
    say_step (console, g_ptr_array_index (steps, i), indent);
}
