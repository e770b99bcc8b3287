/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Widgets in lines, as words in a text: side by side where there is room, one under the other where
 * there is not. Those that expand share what is left of their line. So one description of a form
 * serves from 400 px to the widest window, and at any size of text.
 *
 * The layout property "basis" of a child says how wide it would like to be when its own natural
 * width says nothing, as that of a text that wraps or of a whole column; -1: its natural width. One
 * with a basis that is alone in its line takes all of it. A child with "follows" stays on the screen
 * while what is beside it is scrolled. */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_FLOW (ff_flow_get_type ())
G_DECLARE_FINAL_TYPE (FfFlow, ff_flow, FF, FLOW, GtkWidget)

#define FF_TYPE_FLOW_LAYOUT (ff_flow_layout_get_type ())
G_DECLARE_FINAL_TYPE (FfFlowLayout, ff_flow_layout, FF, FLOW_LAYOUT, GtkLayoutManager)

GtkWidget *ff_flow_new (int column_spacing, int row_spacing);
void ff_flow_append (FfFlow *self, GtkWidget *child, int basis);

/* Which part of it is on the screen, for those that follow. */
void ff_flow_follow (FfFlow *self, int top, int height);
