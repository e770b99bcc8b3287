/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What every page is: a widget that is given the keeper, and is told what changed while it is on
 * the screen (or when it comes back to it).
 *
 * A page lives in a folder of its own, pages/NAME/, with ff-NAME-page.{c,h,ui} and a meson.build
 * that adds its files to `window_sources` and `window_templates`. It derives from FfPage and
 * defines `const FfPageInfo ff_page_info_NAME`; the list of names in src/window/meson.build puts it
 * into its place as soon as the folder is there. */
#pragma once

#include <adwaita.h>

#include "ff-keeper.h"

typedef enum {
  FF_CHANGED_JOBS = 1 << 0,  /* the list of jobs, places, crew */
  FF_CHANGED_ITEMS = 1 << 1, /* the gear */
  FF_CHANGED_JOB = 1 << 2,   /* the open job, its place, shots or crew; or another job is open */
  FF_CHANGED_PLAN = 1 << 3,  /* the plan of the open job */
  FF_CHANGED_ALL = 0xf,
} FfChanged;

#define FF_TYPE_PAGE (ff_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (FfPage, ff_page, FF, PAGE, AdwBin)

struct _FfPageClass {
  AdwBinClass parent_class;

  /* Show what the keeper holds now. Called when the page is first shown with FF_CHANGED_ALL, later
   * with what changed; never while the page is hidden. When the page comes to the screen it is
   * asked to grab the focus: by default its first widget that can take it does. */
  void (*refresh) (FfPage *self, FfChanged changed);

  /* Ctrl+F, Ctrl+P, Ctrl+N; NULL: this page has no such thing. */
  void (*find) (FfPage *self);
  void (*print) (FfPage *self);
  void (*add) (FfPage *self);

  /* To one field of the page, by its name; NULL: it has none that others lead to. */
  void (*go_to) (FfPage *self, const char *field);

  gpointer padding[3];
};

/* Where a page stands: among the places at the left, or among the parts of the open job. */
typedef enum { FF_PAGE_PLACE, FF_PAGE_PART } FfPageSort;

/* A key that only this page has, for the list of shortcuts. */
typedef struct {
  const char *keys; /* as GTK writes them: "<Alt>Up" */
  const char *text; /* marked for translation */
} FfPageKey;

typedef struct {
  const char *name;  /* for --page and the settings; never changes */
  const char *title; /* marked for translation */
  const char *icon;  /* of the GResource: "ff-jobs-symbolic" */
  FfPageSort sort;
  GType (*get_type) (void);
  const char *help;      /* name of its page of the help */
  const FfPageKey *keys; /* ends with { NULL }; or NULL */
  const char *under;     /* the page that it is reached from: it stands in no bar; or NULL */
  gboolean shows_day;    /* it shows the day and all that is open in its plan by itself: the strip
                            of the day and the line of what is open stay away */
} FfPageInfo;

/* The pages that are built, in their order. */
guint ff_pages_count (void);
const FfPageInfo *ff_pages_get (guint i);
const FfPageInfo *ff_pages_find (const char *name);

/* The n-th place or part that stands in a bar, counted from 0; NULL when there are fewer. */
const FfPageInfo *ff_pages_nth (FfPageSort sort, guint n);

FfPage *ff_page_new (const FfPageInfo *info, FfKeeper *keeper) G_GNUC_WARN_UNUSED_RESULT;
FfKeeper *ff_page_get_keeper (FfPage *self);
const FfPageInfo *ff_page_get_info (FfPage *self);

/* Whether the page has such a thing. */
gboolean ff_page_can_find (FfPage *self);
gboolean ff_page_can_print (FfPage *self);
gboolean ff_page_can_add (FfPage *self);
void ff_page_find (FfPage *self);
void ff_page_print (FfPage *self);
void ff_page_add (FfPage *self);

/* The window it is in, as the parent of a dialog; NULL: in none. */
GtkWindow *ff_page_window (FfPage *self);

/* Says one sentence over the window: a refusal, or what was done. With `undo` it carries the button
 * that takes it back. */
void ff_page_say (FfPage *self, const char *sentence, gboolean undo);

/* Says what was done last, with that button; nothing when nothing can be taken back. */
void ff_page_say_last_change (FfPage *self);

/* Says an error and clears it; does nothing when there is none. */
void ff_page_say_error (FfPage *self, GError **error);

/* On this page, to the field of this name; nothing happens where there is none. */
void ff_page_go_to (FfPage *self, const char *field);

/* Goes to another page of the window, or to a field of it: "day", "day:abort_word". */
void ff_page_go (FfPage *self, const char *name);
