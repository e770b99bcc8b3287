/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-checks-rows.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-lines.h"

static const char *
shape_of (const FfDayCheck *check)
{
  switch (check->state)
    {
    case FF_RUN_HELD:
      return ff_mark_shape (FF_MARK_HELD);
    case FF_RUN_COMPLETE:
      return ff_mark_shape (FF_MARK_DONE);
    case FF_RUN_ABANDONED:
      return ff_mark_shape (FF_MARK_FAILED);
    case FF_RUN_GOING:
      return "▶";
    case FF_RUN_NOT_STARTED:
    default:
      return ff_mark_shape (FF_MARK_OPEN);
    }
}

char *
ff_checks_row_words (const FfDayCheck *check, GTimeZone *zone)
{
  GString *text = g_string_new (ff_name_text (&ff_names_run_state, (int) check->state));

  if (check->held_since != 0)
    {
      g_autofree char *clock = ff_instant_clock ((double) check->held_since, zone);

      /* Translators: a list is held since a time. */
      g_string_append_printf (text, _ (" since %s"), clock);
    }
  if (check->at[0] != '\0' && check->state != FF_RUN_COMPLETE)
    /* Translators: the item of a list that is next. */
    g_string_append_printf (text, _ (" at %s"), check->at);
  g_string_append_printf (text, _ (" · %d of %d"), check->n_done, check->n_items);
  if (check->n_deferred > 0)
    g_string_append_printf (text, _ (" · %d deferred"), check->n_deferred);
  if (check->n_failed > 0)
    g_string_append_printf (text, _ (" · %d failed"), check->n_failed);
  return g_string_free (text, FALSE);
}

GtkWidget *
ff_checks_row_new (const FfDayCheck *check, GTimeZone *zone)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 14);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *state = ff_checks_row_words (check, zone);
  g_autofree char *spoken = g_strdup_printf ("%s: %s", check->title, state);

  gtk_widget_add_css_class (row, "check-row");
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (box), ff_line_new (shape_of (check), "run-shape"));
  gtk_box_append (GTK_BOX (words), ff_line_new (check->title, "run-challenge"));
  gtk_box_append (GTK_BOX (words), ff_line_new (state, "soft"));
  gtk_box_append (GTK_BOX (box), words);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  return row;
}
