/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-weather-rows.h"

#include <glib/gi18n-lib.h>

#include "ff-lines.h"

static char *
rule_words (const FfLimitToday *row)
{
  GString *words = g_string_new (row->source);

  if (*row->checked != '\0')
    /* Translators: the day on which a rule was looked up, and by whom. */
    g_string_append_printf (words, _ (" · checked %s"), row->checked);
  if (row->overdue)
    g_string_append (words, *row->checked != '\0' ? _ (" · □ its check is overdue")
                                                  : _ (" · □ never checked"));
  if (row->binds)
    /* Translators: of several limits of one kind this is the strictest. */
    g_string_append (words, _ (" · binds"));
  if (row->example)
    g_string_append (words, _ (" · EXAMPLE: set your own"));
  return g_string_free (words, FALSE);
}

static char *
found_words (const FfLimitToday *row)
{
  if (*row->found != '\0' && *row->reason != '\0')
    return g_strdup_printf ("%s · %s", row->found, row->reason);
  return g_strdup (*row->found != '\0' ? row->found : row->reason);
}

static void
add_row (GtkBox *box, const FfLimitToday *row)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *shape = gtk_label_new (ff_limit_answer_shape (row->answer));
  g_autofree char *head
      /* Translators: an answer ("outside"), a limit, its bound. */
      = g_strdup_printf (_ ("%s · %s: %s"), ff_name_text (&ff_names_limit_answer, (int) row->answer),
                         row->text, row->bound);
  g_autofree char *found = found_words (row);
  g_autofree char *rule = rule_words (row);

  gtk_widget_set_valign (shape, GTK_ALIGN_START);
  gtk_widget_add_css_class (shape, "heading");
  gtk_widget_set_hexpand (texts, TRUE);
  ff_lines_add (GTK_BOX (texts), head, row->answer >= FF_LIMIT_NOT_ASSESSED ? "heading" : NULL);
  if (*found != '\0')
    ff_lines_add (GTK_BOX (texts), found, NULL);
  ff_lines_add (GTK_BOX (texts), rule, "soft");
  gtk_box_append (GTK_BOX (line), shape);
  gtk_box_append (GTK_BOX (line), texts);
  if (row->answer == FF_LIMIT_OUTSIDE)
    gtk_widget_add_css_class (line, "heed");
  gtk_box_append (box, line);
}

void
ff_weather_rows_show (GtkBox *box, const FfWeatherToday *today, gboolean outside)
{
  ff_lines_clear (box);
  for (guint i = 0; i < today->order->len; i++)
    {
      const FfLimitToday *row = g_ptr_array_index (today->order, i);

      if ((row->answer == FF_LIMIT_OUTSIDE) == outside)
        add_row (box, row);
    }
  if (!outside && today->order->len == 0)
    ff_lines_add (box, _ ("No limit is entered. Records holds the crew’s own sheets."), "soft");
}

void
ff_weather_rows_show_words (GtkBox *box, const GPtrArray *words)
{
  ff_lines_clear (box);
  for (guint i = 0; i < words->len; i++)
    {
      const FfReportWord *word = g_ptr_array_index (words, i);
      g_autofree char *line = g_strdup_printf (_ ("%s: %s"), word->label, word->text);

      ff_lines_add (box, line, NULL);
    }
}

void
ff_weather_rows_show_texts (GtkBox *box, const GPtrArray *texts, const char *none)
{
  ff_lines_clear (box);
  for (guint i = 0; i < texts->len; i++)
    ff_lines_add (box, g_ptr_array_index (texts, i), i == 0 ? "heading" : NULL);
  if (texts->len == 0)
    ff_lines_add (box, none, "soft");
}
