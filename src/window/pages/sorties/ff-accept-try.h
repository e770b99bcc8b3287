/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is tried, stored: another sky, a later first off, a moved window. An item that is missing is
 * no plan but a state, and is entered with the gear; a shot that is dropped stays in the list. */
#pragma once

#include "ff-keeper.h"

gboolean ff_accept_try_can (const FfTry *tried);

/* Each part is one step of undo. Error: what the keeper says. */
gboolean ff_accept_try (FfKeeper *keeper, const FfTry *tried, GError **error);
