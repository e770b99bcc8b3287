/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-standing-card.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-flow.h"
#include "ff-lines.h"
#include "ff-page.h"
#include "ff-plan-change.h"

struct _FfStandingCard {
  GtkBox parent_instance;

  FfKeeper *keeper; /* borrowed: it outlives the page */
  FfAnswer *shown;
  GtkEditable *why; /* of a new letter; NULL: not offered */
};

G_DEFINE_FINAL_TYPE (FfStandingCard, ff_standing_card, GTK_TYPE_BOX)

static void
add_text (gpointer box, const char *text, const char *css_class)
{
  gtk_box_append (GTK_BOX (box), ff_line_new (text, css_class));
}

/* A part that begins anew: more space before it than between its sentences. */
static void
add_apart (FfStandingCard *self, GtkWidget *part)
{
  gtk_widget_set_margin_top (part, 12);
  gtk_box_append (GTK_BOX (self), part);
}

static void
say_error (FfStandingCard *self, GError **error)
{
  GtkWidget *page = gtk_widget_get_ancestor (GTK_WIDGET (self), FF_TYPE_PAGE);

  if (page != NULL)
    ff_page_say_error (FF_PAGE (page), error);
  else
    g_clear_error (error);
}

/* Callbacks */

static void
on_freeze (FfStandingCard *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *why
      = self->why != NULL ? g_strstrip (g_strdup (gtk_editable_get_text (self->why))) : NULL;

  if (!ff_keeper_freeze (self->keeper, why, &error))
    say_error (self, &error);
}

static void
on_amend (FfStandingCard *self)
{
  g_autoptr (GError) error = NULL;

  if (!ff_keeper_amend (self->keeper, &error))
    say_error (self, &error);
}

/* Which sentence a button is of, and who reads it. */
typedef struct {
  int number;
  FfRole role;
  char *initials;
} Reader;

static void
reader_free (gpointer data, GClosure *closure)
{
  g_free (((Reader *) data)->initials);
  g_free (data);
}

static void
on_read (GtkWidget *button, gpointer data)
{
  Reader *reader = data;
  GtkWidget *card = gtk_widget_get_ancestor (button, FF_TYPE_STANDING_CARD);
  FfStandingCard *self = FF_STANDING_CARD (card);
  g_autoptr (GError) error = NULL;

  if (!ff_keeper_acknowledge (self->keeper, reader->number, reader->role, reader->initials,
                              &error))
    say_error (self, &error);
}

/* Its parts */

static GtkWidget *
button_new (FfStandingCard *self, const char *label, GCallback callback)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  GtkWidget *text = gtk_button_get_child (GTK_BUTTON (button));

  gtk_label_set_wrap (GTK_LABEL (text), TRUE);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_object (button, "clicked", callback, self, G_CONNECT_SWAPPED);
  return button;
}

/* Initials of who holds the role in this job; without one, of who is at the keys. */
static const char *
initials_of (FfStandingCard *self, FfRole role)
{
  GPtrArray *crew = ff_keeper_crew (self->keeper);

  for (guint i = 0; i < crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (crew, i);

      if (member->role == role)
        return member->initials;
    }
  return ff_keeper_initials (self->keeper);
}

static void
add_read_button (FfStandingCard *self, GtkWidget *row, const FfSentence *sentence)
{
  const char *initials = initials_of (self, sentence->role);
  /* Translators: on a button beside a sentence: who says with it that they have read it. */
  g_autofree char *words = g_strdup_printf (_ ("□ %s has read it"), initials);
  GtkWidget *button;
  Reader *reader;

  if (*initials == '\0')
    {
      ff_flow_append (FF_FLOW (row), ff_line_new (_ ("□ not read; nobody has this role"), "soft"), -1);
      return;
    }
  button = gtk_button_new_with_label (words);
  reader = g_new0 (Reader, 1);
  *reader = (Reader) { sentence->number, sentence->role, g_strdup (initials) };
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  g_signal_connect_data (button, "clicked", G_CALLBACK (on_read), reader, reader_free, 0);
  ff_flow_append (FF_FLOW (row), button, -1);
}

static void
add_sentence (FfStandingCard *self, const FfAmendment *amendment, const FfSentence *sentence,
              gboolean kept)
{
  const FfAcknowledgement *given = ff_amendment_acknowledged (amendment, sentence->role);
  GtkWidget *row = ff_flow_new (12, 4);
  g_autofree char *words = ff_sentence_words (sentence);
  GtkWidget *label = ff_line_new (words, NULL);

  gtk_widget_set_hexpand (label, TRUE);
  ff_flow_append (FF_FLOW (row), label, 260);
  if (given != NULL)
    {
      /* Translators: after a sentence: whose initials stand there. */
      g_autofree char *mark = g_strdup_printf (_ ("■ read, %s"), given->initials);

      GtkWidget *read = ff_line_new (mark, "soft");

      gtk_widget_set_valign (read, GTK_ALIGN_START);
      ff_flow_append (FF_FLOW (row), read, -1);
    }
  else if (kept)
    add_read_button (self, row, sentence);
  gtk_box_append (GTK_BOX (self), row);
}

static void
add_amendment (FfStandingCard *self, const FfAmendment *amendment, gboolean kept)
{
  for (guint i = 0; i < amendment->sentences->len; i++)
    add_sentence (self, amendment, g_ptr_array_index (amendment->sentences, i), kept);
}

/* What the plan of now would change on paper, before anybody decides it. */
static void
add_proposal (FfStandingCard *self, const FfAnswer *answer)
{
  g_autoptr (FfAmendment) proposal
      = ff_standing_propose (answer->standing, answer->day, answer->plan, "", 0);
  g_autofree char *label = NULL;

  if (proposal == NULL)
    {
      add_text (self, _ ("The plan is as it stands on the sheets."), "soft");
      return;
    }
  add_text (self, _ ("The plan is no longer what the sheets say:"), "heading");
  add_amendment (self, proposal, FALSE);
  label = g_strdup_printf (_ ("Make this amendment %d"), proposal->number);
  gtk_box_append (GTK_BOX (self), button_new (self, label, G_CALLBACK (on_amend)));
}

static void
add_amendments (FfStandingCard *self, const FfStanding *standing, GTimeZone *zone)
{
  for (guint i = standing->amendments->len; i > 0; i--)
    {
      const FfAmendment *amendment = g_ptr_array_index (standing->amendments, i - 1);
      g_autofree char *clock = ff_instant_clock ((double) amendment->at, zone);
      g_autofree char *heading
          = g_strdup_printf (_ ("Amendment %d to version %s · %s"), amendment->number,
                             amendment->letter, clock);

      add_apart (self, ff_line_new (heading, "heading"));
      add_amendment (self, amendment, TRUE);
    }
}

static void
add_freeze (FfStandingCard *self)
{
  const FfJob *job = ff_keeper_job (self->keeper);
  g_autofree char *label
      = g_strdup_printf (_ ("Freeze as version %s"), job != NULL ? job->version : "A");

  add_text (self,
            _ ("Freezing keeps a copy of this plan that never changes. Sheets carry its letter; "
               "what changes afterwards becomes a numbered amendment. It can't be taken back."),
            NULL);
  gtk_box_append (GTK_BOX (self), button_new (self, label, G_CALLBACK (on_freeze)));
}

/* A decision with a reason: everyone's sheet is printed anew. */
static void
add_new_letter (FfStandingCard *self)
{
  GtkWidget *row = ff_flow_new (12, 6);
  GtkWidget *why = gtk_entry_new ();

  gtk_entry_set_placeholder_text (GTK_ENTRY (why), _ ("Why a new letter: sheets are printed anew"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (why), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Why a new letter"), -1);
  gtk_widget_set_hexpand (why, TRUE);
  self->why = GTK_EDITABLE (why);
  ff_flow_append (FF_FLOW (row), why, 240);
  ff_flow_append (FF_FLOW (row), button_new (self, _ ("Freeze under a new letter"),
                                             G_CALLBACK (on_freeze)),
                  -1);
  add_apart (self, row);
}

/* Overrides */

static void
ff_standing_card_finalize (GObject *object)
{
  g_clear_pointer (&FF_STANDING_CARD (object)->shown, ff_answer_unref);
  G_OBJECT_CLASS (ff_standing_card_parent_class)->finalize (object);
}

static void
ff_standing_card_class_init (FfStandingCardClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ff_standing_card_finalize;
}

static void
ff_standing_card_init (FfStandingCard *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 10);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sheet");
  gtk_widget_add_css_class (GTK_WIDGET (self), "card-body");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What stands on paper"), -1);
}

/* Public */

void
ff_standing_card_show (FfStandingCard *self, FfKeeper *keeper, FfAnswer *answer)
{
  g_autofree char *words = NULL;

  g_return_if_fail (FF_IS_STANDING_CARD (self));
  gtk_widget_set_visible (GTK_WIDGET (self), answer->standing != NULL);
  if (answer->standing == NULL || answer == self->shown)
    return;
  self->keeper = keeper;
  ff_answer_ref (answer);
  g_clear_pointer (&self->shown, ff_answer_unref);
  self->shown = answer;
  ff_lines_clear (GTK_BOX (self));
  words = ff_standing_words (answer->standing, answer->day);
  add_text (self, words, "heading");
  if (answer->standing->version == NULL)
    add_freeze (self);
  else
    {
      add_proposal (self, answer);
      add_amendments (self, answer->standing, ff_day_zone (answer->day));
      add_new_letter (self);
    }
}
