/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One field of a record: its name above, what is typed, its unit, and under it what is wrong with
 * what was typed.
 *
 * How pages use it: connect "typed" (const char *text), which comes with every keystroke; read the
 * text, save the record; call ff_entry_complain() with the sentence why not, or with NULL. When the
 * keeper says that the record changed, call ff_entry_set_text() with the stored value, always: it
 * knows when to leave alone what is being typed. A sentence is shown when the field is left, or
 * after a moment without a keystroke, so that a time half typed is not scolded.
 *
 * "entered" comes with the Enter key. With "label-shown" off the field stands in a table whose
 * heading names it; it is still spoken by its name. "placeholder" stands in an empty field. */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_ENTRY (ff_entry_get_type ())
G_DECLARE_FINAL_TYPE (FfEntry, ff_entry, FF, ENTRY, GtkWidget)

/* `unit` may be NULL. */
GtkWidget *ff_entry_new (const char *label, const char *unit);

const char *ff_entry_get_text (FfEntry *self);
void ff_entry_set_text (FfEntry *self, const char *stored);

/* The value of another record: whatever was typed here and not taken is forgotten. */
void ff_entry_reset (FfEntry *self, const char *stored);

/* Why what was typed is not taken; NULL: it was. Takes effect as described above. */
void ff_entry_complain (FfEntry *self, const char *sentence);

/* The sentence that is on the screen, or NULL. */
const char *ff_entry_get_complaint (FfEntry *self);

/* Something to know about the value, that is no fault: "sunset 19:27". NULL: nothing. */
void ff_entry_set_remark (FfEntry *self, const char *remark);

void ff_entry_set_label (FfEntry *self, const char *label);

/* A width in characters; by default a field is as wide as it is given. */
void ff_entry_set_width (FfEntry *self, int chars);
