/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The demo day: an invented job that can be thrown away. */
#pragma once

#include <glib.h>

typedef struct _FfStore FfStore;

/* Fills an empty store; one that holds anything is refused (FF_ERROR_INPUT) and left as it was. */
gboolean ff_demo_fill (FfStore *store, GError **error);
