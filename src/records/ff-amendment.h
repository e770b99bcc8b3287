/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was changed after a plan was frozen: numbered, one sentence for each role it concerns, and
 * the initials of who has read it. Appended, never changed. */
#pragma once

#include "ff-field.h"
#include "ff-names.h"
#include "ff-records.h"

typedef struct {
  char *job_id;
  int number;
  FfRole role;
  char *text; /* "line 4, off 18:18 not 17:38" */
} FfSentence;

typedef struct {
  char *job_id;
  int number;
  FfRole role;
  char *initials; /* of who has read it */
  gint64 at;
  char *by; /* initials of who entered it; may be empty */
} FfAcknowledgement;

typedef struct {
  char *job_id;
  int number;   /* from 1, over all letters of the job */
  char *letter; /* of the frozen plan it stands beside */
  gint64 at;
  char *text;   /* all sentences, as they are read out */
  char *by;     /* initials of who entered it */
  char *change; /* what it does to the plan, as JSON */
  GPtrArray *sentences;        /* FfSentence, in the order of the roles */
  GPtrArray *acknowledgements; /* FfAcknowledgement, by time */
} FfAmendment;

extern const FfFields ff_amendment_fields;
extern const FfFields ff_sentence_fields;
extern const FfFields ff_acknowledgement_fields;

FfAmendment *ff_amendment_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_amendment_free (FfAmendment *amendment);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfAmendment, ff_amendment_free)

/* A sentence or an acknowledgement that is added to it; borrowed. */
FfSentence *ff_amendment_add_sentence (FfAmendment *amendment, FfRole role, const char *text);
FfAcknowledgement *ff_amendment_add_acknowledgement (FfAmendment *amendment,
                                                     FfRole role,
                                                     const char *initials,
                                                     gint64 at,
                                                     const char *by);

/* The sentence of a role, or NULL: it does not concern that role. */
const FfSentence *ff_amendment_sentence (const FfAmendment *amendment, FfRole role);

/* The first who acknowledged for a role, or NULL. */
const FfAcknowledgement *ff_amendment_acknowledged (const FfAmendment *amendment, FfRole role);

/* Roles that have a sentence and have not acknowledged it. */
guint ff_amendment_n_open (const FfAmendment *amendment);

/* A number, a letter, sentences of different roles; acknowledgements of roles that have one. */
gboolean ff_amendment_check (const FfAmendment *amendment, GError **error);

/* With its sentences, and the acknowledgements that it has already. */
gboolean ff_amendment_append (FfStore *store, const FfAmendment *amendment, GError **error);

/* FF_ERROR_INPUT when the amendment does not concern the role, or these initials stand there. */
gboolean ff_acknowledgement_append (FfStore *store,
                                    const FfAcknowledgement *acknowledgement,
                                    GError **error);

/* By number: an array of FfAmendment that frees them. */
GPtrArray *ff_amendments_load (FfStore *store,
                               const char *job_id,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
