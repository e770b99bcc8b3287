/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pack-notes.h"

#include <glib/gi18n-lib.h>

#include "ff-lines.h"
#include "ff-number.h"

/* So many labels of what is not in yet are named; the rest is a number. */
#define MOST_NAMED 6

/* A shape, the sentence, and under it what to do. */
static void
add_note (GtkBox *box, const char *shape, const char *sentence, const char *advice)
{
  GtkWidget *note = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *mark = gtk_label_new (shape);

  gtk_widget_set_valign (mark, GTK_ALIGN_START);
  gtk_widget_add_css_class (mark, "heading");
  gtk_box_append (GTK_BOX (texts), ff_line_new (sentence, "heading"));
  if (*advice != '\0')
    gtk_box_append (GTK_BOX (texts), ff_line_new (advice, NULL));
  gtk_widget_set_hexpand (texts, TRUE);
  gtk_box_append (GTK_BOX (note), mark);
  gtk_box_append (GTK_BOX (note), texts);
  gtk_widget_add_css_class (note, "heed");
  gtk_box_append (box, note);
}

char *
ff_pack_notes_not_in (const FfPackList *list)
{
  g_autoptr (GString) names = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < list->shorts->len; i++)
    {
      const FfPackMissing *missing = g_ptr_array_index (list->shorts, i);
      const FfPackEntry *entry = ff_pack_list_find (list, missing->item_id);

      if (!missing->counted || entry == NULL || entry->marks[FF_PACK_GROUND] == FF_PACK_MISSING
          || entry->marks[FF_PACK_BASE] == FF_PACK_MISSING)
        continue;
      if (n < MOST_NAMED)
        g_string_append_printf (names, "%s%s", n > 0 ? ", " : "", missing->item);
      n++;
    }
  if (n == 0)
    return g_strdup ("");
  if (n > MOST_NAMED)
    g_string_append (names, " …");
  return g_strdup_printf (ngettext ("%u not counted in yet: %s", "%u not counted in yet: %s", n), n,
                          names->str);
}

static gboolean
is_single (const FfPackList *list, const FfPackMissing *missing)
{
  const FfPackEntry *entry = ff_pack_list_find (list, missing->item_id);

  return !missing->counted
         || (entry != NULL && (entry->marks[FF_PACK_GROUND] == FF_PACK_MISSING
                               || entry->marks[FF_PACK_BASE] == FF_PACK_MISSING));
}

/* While half a van is still to be counted, that is one sentence; the last few are said one by one,
 * each with where it was last seen. */
void
ff_pack_notes_show_shorts (GtkBox *box, const FfPackList *list)
{
  g_autofree char *not_in = ff_pack_notes_not_in (list);
  guint counted = 0;

  ff_lines_clear (box);
  for (guint i = 0; i < list->shorts->len; i++)
    counted += !is_single (list, g_ptr_array_index (list->shorts, i));
  for (guint i = 0; i < list->shorts->len; i++)
    {
      const FfPackMissing *missing = g_ptr_array_index (list->shorts, i);
      g_autofree char *sentence = g_strdup_printf ("%s: %s.", missing->item, missing->reason);

      if (is_single (list, missing) || counted <= 3)
        add_note (box, missing->counted ? "✕" : "□", sentence, missing->advice);
    }
  if (counted > 3)
    add_note (box, "□", not_in, "");
  for (guint i = 0; i < list->clashes->len; i++)
    add_note (box, "◧", g_ptr_array_index (list->clashes, i), "");
  for (guint i = 0; i < list->remarks->len; i++)
    add_note (box, "–", g_ptr_array_index (list->remarks, i), "");
  if (list->shorts->len == 0)
    gtk_box_append (box, ff_line_new (list->back_begun
                                                 ? _ ("■ Everything that was out is in.")
                                                 : _ ("■ Nothing is short."),
                                             "heading"));
}

static void
show_sentences (GtkBox *box, const GPtrArray *sentences, const char *none)
{
  ff_lines_clear (box);
  for (guint i = 0; i < sentences->len; i++)
    gtk_box_append (box, ff_line_new (g_ptr_array_index (sentences, i), NULL));
  if (sentences->len == 0)
    gtk_box_append (box, ff_line_new (none, "soft"));
}

void
ff_pack_notes_show_due (GtkBox *box, const FfPackList *list)
{
  show_sentences (box, list->due, _ ("Nothing comes up."));
}

void
ff_pack_notes_show_wallet (GtkBox *box, const FfPackList *list)
{
  show_sentences (box, list->swaps, _ ("No filter is changed."));
}

static guint
count_in (const FfPackCase *box, FfPackStage stage)
{
  guint n = 0;

  for (guint i = 0; i < box->entries->len; i++)
    n += ((FfPackEntry *) g_ptr_array_index (box->entries, i))->marks[stage] == FF_PACK_DONE;
  return n;
}

char *
ff_pack_notes_case (const FfPackCase *box, FfPackStage stage)
{
  GString *words = g_string_new (NULL);
  g_autofree char *mass = ff_number_format (box->mass_kg, 1);
  g_autofree char *energy = ff_number_format (box->energy_wh, 0);

  if (*box->case_label != '\0')
    g_string_append_printf (words, _ ("Case %s"), box->case_label);
  else
    g_string_append (words, _ ("In no case"));
  if (stage == FF_PACK_OUT)
    g_string_append_printf (words, _ (" · %u of %u out"), count_in (box, stage), box->entries->len);
  else
    g_string_append_printf (words, _ (" · %u in, %u were out"), count_in (box, stage),
                            count_in (box, FF_PACK_OUT));
  if (box->mass_kg > 0)
    g_string_append_printf (words,
                            box->mass_unknown > 0 ? _ (" · at least %s kg") : _ (" · %s kg"), mass);
  if (box->energy_wh > 0)
    g_string_append_printf (words, _ (" · %s Wh"), energy);
  return g_string_free (words, FALSE);
}

char *
ff_pack_notes_count (const FfPackList *list, FfPackStage stage)
{
  GString *words = g_string_new (NULL);

  if (stage == FF_PACK_OUT)
    g_string_append_printf (words, _ ("%u of %u out"), list->n_marked[stage], list->n_lines);
  else
    g_string_append_printf (words, _ ("%u in, %u were out"), list->n_marked[stage],
                            list->n_marked[FF_PACK_OUT]);
  if (list->n_not_taken > 0)
    g_string_append_printf (words, _ (" · %u not taken"), list->n_not_taken);
  return g_string_free (words, FALSE);
}
