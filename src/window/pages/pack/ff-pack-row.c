/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pack-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-block.h"

struct _FfPackRow {
  GtkListBoxRow parent_instance;

  char *item_id, *case_label;
  GtkWidget *block;
  GtkLabel *mark, *label, *title, *why, *word;
};

G_DEFINE_FINAL_TYPE (FfPackRow, ff_pack_row, GTK_TYPE_LIST_BOX_ROW)

char *
ff_pack_row_word (const FfPackEntry *entry, FfPackStage stage)
{
  FfPackMark mark = entry->marks[stage];

  if (mark == FF_PACK_DONE)
    /* Translators: an item was counted out of the store; or in again. */
    return g_strdup (stage == FF_PACK_OUT ? _ ("out") : _ ("in"));
  if (stage != FF_PACK_OUT && mark == FF_PACK_OPEN && entry->marks[FF_PACK_OUT] != FF_PACK_DONE)
    return g_strdup (_ ("was not out"));
  return g_strdup (ff_name_text (&ff_names_pack_mark, (int) mark));
}

/* "sorties 1 and 2 · check due at 100 cycles, 88 so far" */
static char *
why_words (const FfPackEntry *entry, FfPackStage stage)
{
  GString *words = g_string_new (entry->why);

  if (*entry->slot != '\0')
    g_string_append_printf (words, _ (" · slot %s"), entry->slot);
  if (*entry->due != '\0')
    g_string_append_printf (words, " · %s", entry->due);
  if (*entry->conditions[stage] != '\0')
    g_string_append_printf (words, " · %s", entry->conditions[stage]);
  if (stage != FF_PACK_OUT && entry->marks[stage] != FF_PACK_DONE
      && entry->marks[FF_PACK_OUT] == FF_PACK_DONE)
    g_string_append_printf (words, " · %s", entry->last_seen);
  return g_string_free (words, FALSE);
}

void
ff_pack_row_show (FfPackRow *self, const FfPackEntry *entry, FfPackStage stage, double stops)
{
  g_autofree char *why = why_words (entry, stage);
  g_autofree char *word = ff_pack_row_word (entry, stage);
  g_autofree char *spoken = g_strdup_printf ("%s, %s: %s. %s", entry->label, entry->title, word,
                                             why);
  gboolean same = g_strcmp0 (entry->title, entry->label) == 0;

  g_free (self->item_id);
  self->item_id = g_strdup (entry->item_id);
  g_free (self->case_label);
  self->case_label = g_strdup (entry->case_label);
  gtk_label_set_label (self->mark, ff_pack_mark_shape (entry->marks[stage]));
  gtk_label_set_label (self->label, entry->label);
  gtk_label_set_label (self->title, same ? "" : entry->title);
  gtk_label_set_label (self->why, why);
  gtk_label_set_label (self->word, word);
  gtk_widget_set_visible (self->block, !isnan (stops));
  ff_block_set_stops (FF_BLOCK (self->block), stops);
  if (entry->marks[stage] == FF_PACK_MISSING)
    gtk_widget_add_css_class (GTK_WIDGET (self), "missing");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "missing");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
}

const char *
ff_pack_row_item (FfPackRow *self)
{
  return self->item_id;
}

const char *
ff_pack_row_case (FfPackRow *self)
{
  return self->case_label;
}

static void
ff_pack_row_finalize (GObject *object)
{
  FfPackRow *self = FF_PACK_ROW (object);

  g_free (self->item_id);
  g_free (self->case_label);
  G_OBJECT_CLASS (ff_pack_row_parent_class)->finalize (object);
}

static void
ff_pack_row_class_init (FfPackRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ff_pack_row_finalize;
}

static GtkLabel *
text_new (const char *css_class, gboolean wraps)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));

  gtk_label_set_xalign (label, 0);
  gtk_label_set_wrap (label, wraps);
  gtk_label_set_wrap_mode (label, PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  return label;
}

static GtkWidget *
middle_new (FfPackRow *self)
{
  GtkWidget *middle = gtk_box_new (GTK_ORIENTATION_VERTICAL, 1);
  GtkWidget *names = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);

  self->label = text_new ("gear-label", TRUE);
  self->title = text_new (NULL, FALSE);
  self->why = text_new ("gear-state", TRUE);
  gtk_label_set_ellipsize (self->title, PANGO_ELLIPSIZE_END);
  gtk_widget_set_valign (GTK_WIDGET (self->title), GTK_ALIGN_BASELINE);
  gtk_widget_set_valign (GTK_WIDGET (self->label), GTK_ALIGN_BASELINE);
  gtk_box_append (GTK_BOX (names), GTK_WIDGET (self->label));
  gtk_box_append (GTK_BOX (names), GTK_WIDGET (self->title));
  gtk_box_append (GTK_BOX (middle), names);
  gtk_box_append (GTK_BOX (middle), GTK_WIDGET (self->why));
  gtk_widget_set_hexpand (middle, TRUE);
  return middle;
}

static void
ff_pack_row_init (FfPackRow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->mark = text_new ("pack-mark", FALSE);
  self->block = ff_block_new (NAN);
  self->word = text_new ("heading", TRUE);
  gtk_widget_set_valign (self->block, GTK_ALIGN_CENTER);
  gtk_label_set_xalign (self->word, 1);
  gtk_label_set_width_chars (self->word, 6);
  gtk_label_set_max_width_chars (self->word, 12);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->mark));
  gtk_box_append (GTK_BOX (box), self->block);
  gtk_box_append (GTK_BOX (box), middle_new (self));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->word));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), box);
  gtk_widget_add_css_class (GTK_WIDGET (self), "pack-row");
}

GtkWidget *
ff_pack_row_new (void)
{
  return g_object_new (FF_TYPE_PACK_ROW, NULL);
}
