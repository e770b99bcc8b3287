/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program: its command line, its store, its one window. */
#pragma once

#include "ff-window.h"

#define FF_TYPE_APPLICATION (ff_application_get_type ())
G_DECLARE_FINAL_TYPE (FfApplication, ff_application, FF, APPLICATION, AdwApplication)

FfApplication *ff_application_new (void) G_GNUC_WARN_UNUSED_RESULT;
