/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-list-reader.h"

#include <glib/gi18n-lib.h>

#include "ff-lines.h"
#include "ff-run-words.h"

static void
add_part (GString *text, const char *part)
{
  if (part[0] != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", part);
}

/* What stands under the challenge: answer, value, plan, marks. */
static char *
words_of (const FfCheckItem *item)
{
  g_autofree char *bounds = ff_run_words_bounds (&item->value);
  g_autofree char *when = ff_when_words (item->when);
  GString *text = g_string_new (NULL);

  add_part (text, item->response);
  add_part (text, bounds);
  if (item->fact != FF_FACT_NONE)
    add_part (text, ff_name_text (&ff_names_fact, (int) item->fact));
  add_part (text, item->critical ? _ ("critical") : "");
  add_part (text, item->touch ? _ ("touch it") : "");
  /* Translators: another person looks as well. */
  add_part (text, item->second ? _ ("second person") : "");
  add_part (text, item->role >= 0 ? ff_name_text (&ff_names_role, item->role) : "");
  add_part (text, when);
  return g_string_free (text, FALSE);
}

static void
add_item (GtkBox *box, const FfCheckItem *item)
{
  g_autofree char *words = words_of (item);
  g_autofree char *title = g_strdup_printf ("□  %s", item->challenge);

  for (guint i = 0; i < item->guards->len; i++)
    {
      const FfGuard *guard = g_ptr_array_index (item->guards, i);
      g_autofree char *kind = g_utf8_strup (ff_name_text (&ff_names_guard, (int) guard->kind), -1);
      g_autofree char *text = g_strdup_printf ("%s  %s", kind, guard->text);

      gtk_box_append (box, ff_line_new (text, "run-guard"));
    }
  gtk_box_append (box, ff_line_new (title, "run-challenge"));
  if (words[0] != '\0')
    gtk_box_append (box, ff_line_new (words, "list-words"));
  if (item->note[0] != '\0')
    gtk_box_append (box, ff_line_new (item->note, "list-words"));
}

static void
add_head (GtkBox *box, const FfListEntry *entry)
{
  const FfChecklist *list = entry->list;
  GString *facts = g_string_new (NULL);

  gtk_box_append (box, ff_line_new (entry->title, "heading-large"));
  add_part (facts, ff_name_text (&ff_names_phase, (int) list->phase));
  add_part (facts, ff_name_text (&ff_names_list_mode, (int) list->mode));
  if (list->version[0] != '\0')
    g_string_append_printf (facts, _ (" · version %s"), list->version);
  add_part (facts, list->date);
  add_part (facts, list->author);
  gtk_box_append (box, ff_line_new (facts->str, "soft"));
  g_string_free (facts, TRUE);
  for (guint i = 0; i < list->remarks->len; i++)
    gtk_box_append (box, ff_line_new (g_ptr_array_index (list->remarks, i), "attention"));
}

void
ff_list_reader_fill (GtkBox *box, const FfListEntry *entry)
{
  const FfChecklist *list = entry->list;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
  add_head (box, entry);
  for (guint s = 0; s < list->sections->len; s++)
    {
      const FfCheckSection *section = g_ptr_array_index (list->sections, s);
      g_autofree char *when = ff_when_words (section->when);
      g_autofree char *title = when[0] != '\0' ? g_strdup_printf ("%s · %s", section->title, when)
                                               : g_strdup (section->title);

      gtk_box_append (box, ff_line_new (title, "heading"));
      for (guint i = 0; i < section->items->len; i++)
        add_item (box, g_ptr_array_index (section->items, i));
    }
  if (list->sources[0] != '\0')
    gtk_box_append (box, ff_line_new (list->sources, "soft"));
}
