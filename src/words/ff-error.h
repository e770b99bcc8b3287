/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* What kind of trouble it is, so that the edge (console, window) can say it in its own way.
 * The message of a GError says what, where, and what to do. */
typedef enum {
  FF_ERROR_INPUT,  /* what was asked or typed is wrong: console status 2 */
  FF_ERROR_STORE,  /* the store can't be opened, read or written: console status 3 */
  FF_ERROR_OUTPUT, /* a file could not be written: console status 3 */
} FfError;

#define FF_ERROR (ff_error_quark ())
GQuark ff_error_quark (void);
