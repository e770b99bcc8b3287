/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-error.h"

G_DEFINE_QUARK (ff-error-quark, ff_error)
