/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-run-rows.h"

#include <glib/gi18n-lib.h>

static GtkWidget *
label_new (const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  return label;
}

static void
add_guards (GtkBox *box, const FfCheckItem *item)
{
  static const char *const css[] = { "run-warning", "run-caution", "run-note" };

  for (guint i = 0; i < item->guards->len; i++)
    {
      const FfGuard *guard = g_ptr_array_index (item->guards, i);
      g_autofree char *kind = g_utf8_strup (ff_name_text (&ff_names_guard, (int) guard->kind), -1);
      /* Translators: the weight of a safety statement, in capitals, and the statement. */
      g_autofree char *text = g_strdup_printf (_ ("%s  %s"), kind, guard->text);
      GtkWidget *label = label_new (text, "run-guard");

      gtk_widget_add_css_class (label, css[guard->kind]);
      gtk_box_append (box, label);
    }
}

/* What was answered: the value, or the response; reasons; who. */
static char *
answer_of (const FfRunItem *item)
{
  GString *text = g_string_new (NULL);

  if (item->said[0] != '\0')
    g_string_append_printf (text, "“%s”", item->said);
  else if (item->item != NULL && item->mark == FF_MARK_DONE)
    g_string_append (text, item->item->response);
  if (item->why[0] != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", item->why);
  if (item->from_paper)
    g_string_append_printf (text, " · %s", _ ("from paper"));
  if (item->by[0] != '\0')
    g_string_append_printf (text, "   %s", item->by);
  if (item->second_by[0] != '\0')
    g_string_append_printf (text, " %s", item->second_by);
  return g_string_free (text, FALSE);
}

/* The mark as a word, for what is not simply open or done. */
static char *
title_of (const FfListRun *run, int i)
{
  const FfRunItem *item = ff_list_run_item (run, i);
  FfMark mark = ff_list_run_mark (run, i);
  g_autofree char *name = ff_run_words_name (run, i);
  const char *critical
      /* Translators: an item that may kill when it is passed over. */
      = item->item != NULL && item->item->critical ? _ ("critical") : NULL;

  if (mark != FF_MARK_OPEN && mark != FF_MARK_DONE)
    return g_strdup_printf ("%s · %s", name, ff_name_text (&ff_names_mark, (int) mark));
  return mark == FF_MARK_OPEN && critical != NULL ? g_strdup_printf ("%s · %s", name, critical)
                                                  : g_strdup (name);
}

static void
add_current (GtkBox *words, FfKeeper *keeper, const FfDayRun *run, int i)
{
  const FfListRun *machine = ff_day_run_run (run);
  const FfRunItem *item = ff_list_run_item (machine, i);
  g_autofree char *wanted = ff_run_words_wanted (run, i);
  g_autofree char *who = ff_run_words_who (keeper, machine, item);
  g_autofree char *turn = NULL;

  if (wanted[0] != '\0')
    gtk_box_append (words, label_new (wanted, "run-wanted"));
  if (item->item != NULL && item->item->note[0] != '\0')
    gtk_box_append (words, label_new (item->item->note, "soft"));
  if (who[0] == '\0')
    return;
  turn = g_strdup_printf (item->waits_for_second
                              /* Translators: a person's name: it is their turn. */
                              ? _ ("%s looks as well")
                              : item->item != NULL ? _ ("%s answers") : _ ("%s says it aloud"),
                          who);
  gtk_box_append (words, label_new (turn, "run-who"));
}

static GtkWidget *
row_new (FfKeeper *keeper, const FfDayRun *run, int i, gboolean current)
{
  const FfListRun *machine = ff_day_run_run (run);
  const FfRunItem *item = ff_list_run_item (machine, i);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 14);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *shape = gtk_label_new (ff_mark_shape (ff_list_run_mark (machine, i)));
  g_autofree char *title = title_of (machine, i);
  g_autofree char *answer = answer_of (item);

  gtk_widget_add_css_class (row, current ? "run-now" : "run-row");
  gtk_widget_add_css_class (shape, "run-shape");
  gtk_widget_set_valign (shape, GTK_ALIGN_START);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), label_new (title, "run-challenge"));
  if (current)
    add_current (GTK_BOX (words), keeper, run, i);
  if (answer[0] != '\0')
    gtk_box_append (GTK_BOX (words), label_new (answer, "run-answer"));
  gtk_box_append (GTK_BOX (row), shape);
  gtk_box_append (GTK_BOX (row), words);
  return row;
}

static int
shown_section (const FfListRun *run, int current)
{
  int last = ff_list_run_n_items (run) - 1;

  return ff_list_run_item (run, current >= 0 ? current : last)->section_number;
}

GtkWidget *
ff_run_rows_fill (GtkBox *box, FfKeeper *keeper, const FfDayRun *run)
{
  const FfListRun *machine = ff_day_run_run (run);
  int current = ff_list_run_current (machine), section = shown_section (machine, current);
  GtkWidget *now = NULL, *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
  for (int i = 0; i < ff_list_run_n_items (machine); i++)
    {
      const FfRunItem *item = ff_list_run_item (machine, i);
      GtkWidget *row;

      if (item->section_number != section)
        continue;
      if (item->item != NULL && ff_mark_is_unresolved (item->mark))
        add_guards (box, item->item);
      row = row_new (keeper, run, i, i == current);
      gtk_box_append (box, row);
      if (i == current)
        now = row;
    }
  return now;
}
