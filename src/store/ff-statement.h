/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A prepared statement with numbered parameters (?1, ?2 …). An absent fact is NULL in the store and
 * NAN or an empty text in C. */
#pragma once

#include "ff-store.h"

typedef struct _FfStatement FfStatement;

typedef enum { FF_STEP_ROW, FF_STEP_DONE, FF_STEP_ERROR } FfStep;

FfStatement *ff_statement_new (FfStore *store,
                               const char *sql,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_statement_free (FfStatement *statement);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfStatement, ff_statement_free)

/* Parameters count from 1. Text: NULL becomes ''; a reference that is empty becomes NULL; a number
 * that is not finite becomes NULL. */
gboolean ff_statement_bind_text (FfStatement *statement, int n, const char *text, GError **error);
gboolean ff_statement_bind_reference (FfStatement *statement, int n, const char *id, GError **error);
gboolean ff_statement_bind_integer (FfStatement *statement, int n, gint64 value, GError **error);
gboolean ff_statement_bind_real (FfStatement *statement, int n, double value, GError **error);

FfStep ff_statement_step (FfStatement *statement, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Steps a statement that gives no rows, and makes it ready for the next values. */
gboolean ff_statement_run (FfStatement *statement, GError **error);
gboolean ff_statement_reset (FfStatement *statement, GError **error);

/* Columns count from 0, and are of the row last stepped to. */
char *ff_statement_dup_text (FfStatement *statement, int column) G_GNUC_WARN_UNUSED_RESULT;
const char *ff_statement_get_text (FfStatement *statement, int column);
gint64 ff_statement_get_integer (FfStatement *statement, int column);
double ff_statement_get_real (FfStatement *statement, int column);
