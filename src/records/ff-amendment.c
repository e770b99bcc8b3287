/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-amendment.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-json-check.h"
#include "ff-rows.h"

#define NUMBER_MOST 9999
#define SENTENCE_MOST 4000
#define CHANGE_MOST 2000000

#define BY(type)                                                                                   \
  { "entered_by", N_ ("initials of who entered it"), FF_FIELD_TEXT, FALSE,                         \
    G_STRUCT_OFFSET (type, by), 0, 12, NULL }

static const FfField amendment_fields[] = {
  FF_ID (FfAmendment, job_id, "job_id", N_ ("job"), TRUE),
  FF_WHOLE (FfAmendment, number, N_ ("number of the amendment"), 1, NUMBER_MOST),
  FF_TEXT (FfAmendment, letter, N_ ("letter of the version"), TRUE, 3),
  FF_INSTANT (FfAmendment, at, N_ ("when it was made")),
  FF_TEXT (FfAmendment, text, N_ ("text"), TRUE, 5 * SENTENCE_MOST),
  BY (FfAmendment),
  FF_TEXT (FfAmendment, change, N_ ("change of the plan, as JSON"), FALSE, CHANGE_MOST),
};
const FfFields ff_amendment_fields = FF_FIELDS ("amendment", amendment_fields);

static const FfField sentence_fields[] = {
  FF_ID (FfSentence, job_id, "job_id", N_ ("job"), TRUE),
  FF_WHOLE (FfSentence, number, N_ ("number of the amendment"), 1, NUMBER_MOST),
  FF_NAME (FfSentence, role, N_ ("role"), &ff_names_role),
  FF_TEXT (FfSentence, text, N_ ("sentence"), TRUE, SENTENCE_MOST),
};
const FfFields ff_sentence_fields = FF_FIELDS ("amendment_sentence", sentence_fields);

static const FfField acknowledgement_fields[] = {
  FF_ID (FfAcknowledgement, job_id, "job_id", N_ ("job"), TRUE),
  FF_WHOLE (FfAcknowledgement, number, N_ ("number of the amendment"), 1, NUMBER_MOST),
  FF_NAME (FfAcknowledgement, role, N_ ("role"), &ff_names_role),
  FF_TEXT (FfAcknowledgement, initials, N_ ("initials of who has read it"), TRUE, 12),
  FF_INSTANT (FfAcknowledgement, at, N_ ("when it was read")),
  BY (FfAcknowledgement),
};
const FfFields ff_acknowledgement_fields = FF_FIELDS ("acknowledgement", acknowledgement_fields);

/* ---- Made and freed ---- */

static gpointer
sentence_blank (void)
{
  FfSentence *sentence = g_new0 (FfSentence, 1);

  ff_fields_init (&ff_sentence_fields, sentence);
  return sentence;
}

static void
sentence_free (gpointer sentence)
{
  ff_fields_clear (&ff_sentence_fields, sentence);
  g_free (sentence);
}

static gpointer
acknowledgement_blank (void)
{
  FfAcknowledgement *acknowledgement = g_new0 (FfAcknowledgement, 1);

  ff_fields_init (&ff_acknowledgement_fields, acknowledgement);
  return acknowledgement;
}

static void
acknowledgement_free (gpointer acknowledgement)
{
  ff_fields_clear (&ff_acknowledgement_fields, acknowledgement);
  g_free (acknowledgement);
}

static gpointer
amendment_blank (void)
{
  FfAmendment *amendment = g_new0 (FfAmendment, 1);

  ff_fields_init (&ff_amendment_fields, amendment);
  amendment->sentences = g_ptr_array_new_with_free_func (sentence_free);
  amendment->acknowledgements = g_ptr_array_new_with_free_func (acknowledgement_free);
  return amendment;
}

FfAmendment *
ff_amendment_new (const char *job_id)
{
  FfAmendment *amendment = amendment_blank ();

  ff_set_text (&amendment->job_id, job_id);
  return amendment;
}

void
ff_amendment_free (FfAmendment *amendment)
{
  if (amendment == NULL)
    return;
  ff_fields_clear (&ff_amendment_fields, amendment);
  g_ptr_array_unref (amendment->sentences);
  g_ptr_array_unref (amendment->acknowledgements);
  g_free (amendment);
}

/* ---- Its parts ---- */

FfSentence *
ff_amendment_add_sentence (FfAmendment *amendment, FfRole role, const char *text)
{
  FfSentence *sentence = sentence_blank ();

  ff_set_text (&sentence->job_id, amendment->job_id);
  sentence->number = amendment->number;
  sentence->role = role;
  ff_set_text (&sentence->text, text);
  g_ptr_array_add (amendment->sentences, sentence);
  return sentence;
}

FfAcknowledgement *
ff_amendment_add_acknowledgement (FfAmendment *amendment,
                                  FfRole role,
                                  const char *initials,
                                  gint64 at,
                                  const char *by)
{
  FfAcknowledgement *acknowledgement = acknowledgement_blank ();

  ff_set_text (&acknowledgement->job_id, amendment->job_id);
  acknowledgement->number = amendment->number;
  acknowledgement->role = role;
  ff_set_text (&acknowledgement->initials, initials);
  acknowledgement->at = at;
  ff_set_text (&acknowledgement->by, by);
  g_ptr_array_add (amendment->acknowledgements, acknowledgement);
  return acknowledgement;
}

const FfSentence *
ff_amendment_sentence (const FfAmendment *amendment, FfRole role)
{
  for (guint i = 0; i < amendment->sentences->len; i++)
    {
      const FfSentence *sentence = g_ptr_array_index (amendment->sentences, i);

      if (sentence->role == role)
        return sentence;
    }
  return NULL;
}

const FfAcknowledgement *
ff_amendment_acknowledged (const FfAmendment *amendment, FfRole role)
{
  for (guint i = 0; i < amendment->acknowledgements->len; i++)
    {
      const FfAcknowledgement *found = g_ptr_array_index (amendment->acknowledgements, i);

      if (found->role == role)
        return found;
    }
  return NULL;
}

guint
ff_amendment_n_open (const FfAmendment *amendment)
{
  guint n = 0;

  for (guint i = 0; i < amendment->sentences->len; i++)
    {
      const FfSentence *sentence = g_ptr_array_index (amendment->sentences, i);

      n += ff_amendment_acknowledged (amendment, sentence->role) == NULL;
    }
  return n;
}

/* ---- Checked ---- */

static gboolean
refuse (const char *whose, const char *what, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return FALSE;
}

static gboolean
check_sentences (const FfAmendment *amendment, const char *whose, GError **error)
{
  for (guint i = 0; i < amendment->sentences->len; i++)
    {
      const FfSentence *sentence = g_ptr_array_index (amendment->sentences, i);

      if (!ff_fields_check (&ff_sentence_fields, sentence, whose, error))
        return FALSE;
      if (sentence->number != amendment->number
          || strcmp (sentence->job_id, amendment->job_id) != 0)
        return refuse (whose, _ ("a sentence belongs to another amendment"), error);
      if (ff_amendment_sentence (amendment, sentence->role) != sentence)
        return refuse (whose, _ ("two sentences for one role; one is accepted"), error);
    }
  return amendment->sentences->len > 0
         || refuse (whose, _ ("it has no sentence for anyone"), error);
}

static gboolean
check_acknowledgements (const FfAmendment *amendment, const char *whose, GError **error)
{
  for (guint i = 0; i < amendment->acknowledgements->len; i++)
    {
      const FfAcknowledgement *given = g_ptr_array_index (amendment->acknowledgements, i);

      if (!ff_fields_check (&ff_acknowledgement_fields, given, whose, error))
        return FALSE;
      if (given->number != amendment->number || strcmp (given->job_id, amendment->job_id) != 0)
        return refuse (whose, _ ("an acknowledgement belongs to another amendment"), error);
      if (ff_amendment_sentence (amendment, given->role) == NULL)
        return refuse (whose, _ ("it was acknowledged by a role that it does not concern"), error);
    }
  return TRUE;
}

gboolean
ff_amendment_check (const FfAmendment *amendment, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("amendment %d"), amendment->number);

  if (!ff_fields_check (&ff_amendment_fields, amendment, whose, error)
      || !check_sentences (amendment, whose, error)
      || !check_acknowledgements (amendment, whose, error))
    return FALSE;
  if (*amendment->change == '\0' || ff_json_check (amendment->change, error))
    return TRUE;
  g_prefix_error (error, "%s: ", whose);
  return FALSE;
}

/* ---- Kept ---- */

static gboolean
append_all (FfStore *store, const FfAmendment *amendment, GError **error)
{
  if (!ff_rows_append (store, &ff_amendment_fields, amendment, error))
    return ff_rows_taken (error, "amendment.number",
                          _ ("an amendment of this number was made meanwhile; look at it first"));
  for (guint i = 0; i < amendment->sentences->len; i++)
    if (!ff_rows_append (store, &ff_sentence_fields, g_ptr_array_index (amendment->sentences, i),
                         error))
      return FALSE;
  for (guint i = 0; i < amendment->acknowledgements->len; i++)
    if (!ff_acknowledgement_append (store, g_ptr_array_index (amendment->acknowledgements, i),
                                    error))
      return FALSE;
  return TRUE;
}

gboolean
ff_amendment_append (FfStore *store, const FfAmendment *amendment, GError **error)
{
  gboolean own, done;

  if (!ff_amendment_check (amendment, error) || !ff_rows_open (store, &own, error))
    return FALSE;
  done = append_all (store, amendment, error);
  return ff_rows_close (store, own, done, error);
}

gboolean
ff_acknowledgement_append (FfStore *store,
                           const FfAcknowledgement *acknowledgement,
                           GError **error)
{
  g_autoptr (GError) problem = NULL;

  if (!ff_fields_check (&ff_acknowledgement_fields, acknowledgement, _ ("acknowledgement"), error))
    return FALSE;
  if (ff_rows_append (store, &ff_acknowledgement_fields, acknowledgement, &problem))
    return TRUE;
  if (problem->code == FF_ERROR_INPUT && strstr (problem->message, "FOREIGN KEY") != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("amendment %d does not concern the %s"),
                 acknowledgement->number,
                 ff_name_text (&ff_names_role, (int) acknowledgement->role));
  else
    g_propagate_error (error, g_steal_pointer (&problem));
  return ff_rows_taken (error, "acknowledgement.initials",
                        _ ("these initials stand there already"));
}

static FfAmendment *
find (GPtrArray *amendments, int number)
{
  for (guint i = 0; i < amendments->len; i++)
    {
      FfAmendment *amendment = g_ptr_array_index (amendments, i);

      if (amendment->number == number)
        return amendment;
    }
  return NULL;
}

static gboolean
load_sentences (FfStore *store, const char *job_id, GPtrArray *amendments, GError **error)
{
  g_autoptr (GPtrArray) sentences
      = ff_rows_load (store, &ff_sentence_fields, "WHERE job_id = ?1 ORDER BY number, rowid",
                      job_id, sentence_blank, sentence_free, error);

  while (sentences != NULL && sentences->len > 0)
    {
      FfSentence *sentence = g_ptr_array_steal_index (sentences, 0);
      FfAmendment *amendment = find (amendments, sentence->number);

      if (amendment != NULL)
        g_ptr_array_add (amendment->sentences, sentence);
      else
        sentence_free (sentence);
    }
  return sentences != NULL;
}

static gboolean
load_acknowledgements (FfStore *store, const char *job_id, GPtrArray *amendments, GError **error)
{
  g_autoptr (GPtrArray) given
      = ff_rows_load (store, &ff_acknowledgement_fields, "WHERE job_id = ?1 ORDER BY at, rowid",
                      job_id, acknowledgement_blank, acknowledgement_free, error);

  while (given != NULL && given->len > 0)
    {
      FfAcknowledgement *acknowledgement = g_ptr_array_steal_index (given, 0);
      FfAmendment *amendment = find (amendments, acknowledgement->number);

      if (amendment != NULL)
        g_ptr_array_add (amendment->acknowledgements, acknowledgement);
      else
        acknowledgement_free (acknowledgement);
    }
  return given != NULL;
}

GPtrArray *
ff_amendments_load (FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) amendments
      = ff_rows_load (store, &ff_amendment_fields, "WHERE job_id = ?1 ORDER BY number", job_id,
                      amendment_blank, (GDestroyNotify) ff_amendment_free, error);

  if (amendments == NULL || !load_sentences (store, job_id, amendments, error)
      || !load_acknowledgements (store, job_id, amendments, error))
    return NULL;
  return g_steal_pointer (&amendments);
}
