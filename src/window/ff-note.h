/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A longer text of a record, that wraps and grows with what is typed: its name above. Used like an
 * entry: connect "typed" (const char *text), save, and always tell it the stored text; it leaves
 * alone what is being typed. Tab leads on to the next field. */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_NOTE (ff_note_get_type ())
G_DECLARE_FINAL_TYPE (FfNote, ff_note, FF, NOTE, GtkWidget)

GtkWidget *ff_note_new (const char *label);

const char *ff_note_get_text (FfNote *self);
void ff_note_set_text (FfNote *self, const char *stored);

/* The text of another record: whatever was typed here and not taken is forgotten. */
void ff_note_reset (FfNote *self, const char *stored);

/* Why what was typed is not taken; NULL: it was. */
void ff_note_complain (FfNote *self, const char *sentence);
