/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What tests of the window share: a keeper on the demo day in a folder of its own, a window, a main
 * loop that is waited for with a limit, pictures of the window. */
#pragma once

#include "ff-test.h"

#include "ff-application.h"
#include "ff-entry.h"
#include "ff-looks.h"

/* Starts GTK; FALSE where there is no display. */
gboolean ff_stage_start (void);

typedef struct {
  char *folder;
  FfApplication *application;
  FfKeeper *keeper;
  FfWindow *window;
} FfStage;

/* A window of this size on the demo day (or on an empty store), shown and drawn. */
FfStage *ff_stage_new (gboolean demo, int width, int height) G_GNUC_WARN_UNUSED_RESULT;

/* Closes it, and checks that the window is gone. */
void ff_stage_free (FfStage *stage);

/* Opens the example job. */
void ff_stage_open_demo_job (FfStage *stage);

/* Runs the main loop until `is_true`, for at most five seconds. */
gboolean ff_stage_wait (gboolean (*is_true) (gpointer), gpointer data);
void ff_stage_settle (void);         /* until nothing is left to do */
void ff_stage_wait_for_plan (FfStage *stage);

/* The first widget of this type at or below `root` (and with this text, when it is given: a
 * label's, button's or entry's). NULL: none. Only shown ones. */
GtkWidget *ff_stage_find (GtkWidget *root, GType type, const char *text);
guint ff_stage_count (GtkWidget *root, GType type);

/* The window as a PNG file. */
gboolean ff_stage_picture (FfStage *stage, const char *path);
