/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sortie-lock.h"

#include <glib/gi18n-lib.h>

static const FfPlanLine *
line_of (const FfAnswer *answer, int line)
{
  return line > 0 ? g_ptr_array_index (answer->plan->lines, line - 1) : NULL;
}

void
ff_sortie_lock_show (GtkButton *button, const FfAnswer *answer, int line, gboolean trying)
{
  const FfPlanLine *chosen = line_of (answer, line);
  gboolean locked = chosen != NULL && ff_locks_find (answer->locks, chosen->id) != NULL;

  /* Translators: of the chosen sortie; K is a key. */
  gtk_button_set_label (button, locked ? _ ("Unlock it · K") : _ ("Lock it · K"));
  gtk_widget_set_sensitive (GTK_WIDGET (button), chosen != NULL && !trying);
}

gboolean
ff_sortie_lock_toggle (FfKeeper *keeper, const FfAnswer *answer, int line, GError **error)
{
  const FfPlanLine *chosen = line_of (answer, line);

  g_return_val_if_fail (chosen != NULL, FALSE);
  return ff_keeper_toggle_lock (keeper, chosen->id, error);
}
