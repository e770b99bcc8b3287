/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-piece-cards.h"

#include <glib/gi18n-lib.h>

#include "ff-flow.h"

#define CARD_WIDTH 150

struct _FfPieceCards {
  AdwBin parent_instance;

  GtkWidget *cards[FF_N_PIECES];
  GtkLabel *values[FF_N_PIECES], *details[FF_N_PIECES], *holds[FF_N_PIECES];
};

G_DEFINE_FINAL_TYPE (FfPieceCards, ff_piece_cards, ADW_TYPE_BIN)

static guint chosen_signal;

static void
on_clicked (FfPieceCards *self, GtkWidget *card)
{
  for (int i = 0; i < FF_N_PIECES; i++)
    if (self->cards[i] == card)
      g_signal_emit (self, chosen_signal, 0, i);
}

static void
ff_piece_cards_class_init (FfPieceCardsClass *klass)
{
  chosen_signal = g_signal_new ("chosen", FF_TYPE_PIECE_CARDS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkLabel *
add_label (GtkWidget *box, const char *text, const char *class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, class);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static GtkWidget *
card_new (FfPieceCards *self, FfRulerPiece piece)
{
  GtkWidget *card = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  gtk_box_append (GTK_BOX (box), head);
  add_label (head, ff_name_text (&ff_names_piece, (int) piece), "field-label");
  /* Translators: mark of a setting that is held and does not give way. */
  self->holds[piece] = add_label (head, _ ("‖ fixed"), "piece-fixed");
  gtk_label_set_xalign (self->holds[piece], 1);
  self->values[piece] = add_label (box, "", "number-large");
  self->details[piece] = add_label (box, "", "number-small");
  gtk_button_set_child (GTK_BUTTON (card), box);
  gtk_widget_add_css_class (card, "piece");
  gtk_widget_set_hexpand (card, TRUE);
  g_signal_connect_object (card, "clicked", G_CALLBACK (on_clicked), self, G_CONNECT_SWAPPED);
  return card;
}

static void
ff_piece_cards_init (FfPieceCards *self)
{
  GtkWidget *flow = ff_flow_new (8, 8);

  for (int i = 0; i < FF_N_PIECES; i++)
    {
      self->cards[i] = card_new (self, (FfRulerPiece) i);
      ff_flow_append (FF_FLOW (flow), self->cards[i], CARD_WIDTH);
    }
  adw_bin_set_child (ADW_BIN (self), flow);
}

void
ff_piece_cards_show (FfPieceCards *self, const FfLightStudy *study, const FfRuler *ruler)
{
  g_return_if_fail (FF_IS_PIECE_CARDS (self));
  for (int i = 0; i < FF_N_PIECES; i++)
    {
      const FfRulerPiece piece = (FfRulerPiece) i;
      g_autofree char *value = ff_light_words_value (study, ruler, piece);
      g_autofree char *detail = ff_light_words_detail (study, ruler, piece);
      g_autofree char *spoken = ff_light_words_piece (study, ruler, piece);

      gtk_label_set_text (self->values[i], value);
      gtk_label_set_text (self->details[i], detail);
      gtk_widget_set_visible (GTK_WIDGET (self->holds[i]), ruler->fixed[i]);
      if (piece == ruler->chosen)
        gtk_widget_add_css_class (self->cards[i], "chosen");
      else
        gtk_widget_remove_css_class (self->cards[i], "chosen");
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->cards[i]),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
    }
}
