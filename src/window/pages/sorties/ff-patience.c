/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-patience.h"

#define PATIENCE_MS 700

static gboolean
on_long_wait (gpointer data)
{
  FfPatience *patience = data;

  patience->source = 0;
  gtk_widget_set_visible (patience->words, TRUE);
  return G_SOURCE_REMOVE;
}

void
ff_patience_start (FfPatience *patience)
{
  if (patience->source == 0 && !gtk_widget_get_visible (patience->words))
    patience->source = g_timeout_add (PATIENCE_MS, on_long_wait, patience);
}

void
ff_patience_stop (FfPatience *patience)
{
  g_clear_handle_id (&patience->source, g_source_remove);
  gtk_widget_set_visible (patience->words, FALSE);
}
