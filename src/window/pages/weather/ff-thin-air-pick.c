/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-thin-air-pick.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-number.h"

static const double shares[] = { 1.0, 0.5, 0.0 };

typedef struct {
  FfKeeper *(*get_keeper) (gpointer owner);
  gpointer owner;
} Asked;

void
ff_thin_air_pick_show (FfPick *pick, double share)
{
  g_autofree char *number = ff_number_format (share, 2);
  /* Translators: a share of an estimate that is set elsewhere: "0.7 times the estimate". */
  g_autofree char *other = g_strdup_printf (_ ("%s times the estimate"), number);
  const char *texts[] = { _ ("as estimated"), _ ("half of the estimate"), _ ("not counted"), NULL,
                          NULL };
  int at = 0;

  while (at < (int) G_N_ELEMENTS (shares) && fabs (shares[at] - share) > 1e-9)
    at++;
  if (at == (int) G_N_ELEMENTS (shares))
    texts[at] = other;
  if (ff_pick_get_value (pick) == at && at < (int) G_N_ELEMENTS (shares))
    return;
  ff_pick_set_texts (pick, texts);
  ff_pick_set_value (pick, at);
}

static void
on_picked (FfPick *pick, int value, Asked *asked)
{
  FfKeeper *keeper = asked->get_keeper (asked->owner);
  g_autoptr (GError) error = NULL;

  if (value < 0 || value >= (int) G_N_ELEMENTS (shares))
    return;
  if (!ff_keeper_save_thin_air (keeper, shares[value], &error))
    ff_thin_air_pick_show (pick, ff_keeper_thin_air (keeper));
}

static void
forget (gpointer asked, GClosure *closure)
{
  g_free (asked);
}

GtkWidget *
ff_thin_air_pick_new (FfKeeper *(*get_keeper) (gpointer owner), gpointer owner)
{
  /* Translators: less dense air takes flying minutes; how far the plan counts that. */
  GtkWidget *pick = ff_pick_new (_ ("Minutes that thin air takes"), NULL);
  Asked *asked = g_new (Asked, 1);

  *asked = (Asked){ get_keeper, owner };
  ff_thin_air_pick_show (FF_PICK (pick), 1.0);
  g_signal_connect_data (pick, "picked", G_CALLBACK (on_picked), asked, forget, 0);
  return pick;
}
