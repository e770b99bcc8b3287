/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A proof: the sheets of a brief laid out, with the words that go with them. A value that doesn't
 * change once it is laid out; the page shows one, prints one, saves one. */
#pragma once

#include <gtk/gtk.h>

#include "ff-brief.h"
#include "ff-day.h"
#include "ff-printables.h"
#include "ff-standing.h"

/* What is wanted on paper. */
typedef struct {
  guint what;      /* which of the printables */
  FfPaper paper;
  gboolean phones; /* telephone numbers of the crew */
  gboolean bound;  /* room at the side that goes into a folder */
} FfProofWish;

/* What it is written from; none of it is kept. */
typedef struct {
  const FfDay *day;
  const FfDayPlan *plan;      /* the frozen one, where one stands */
  const FfStanding *standing; /* may be NULL */
  FfStore *store;
  const char *job_id, *date;
  gint64 now;                 /* the moment the sheets say they were printed */
} FfProofSource;

typedef struct {
  FfBrief *brief;
  FfSheetFacts *facts;
  FfProofWish wish;
  FfPaper paper;
  gboolean frozen;  /* the plan on it is kept under its letter */
  char *sum;        /* "6 sorties, first off by 16:30, last landed by 19:44" */
  char *file_name;  /* "Skarrowick Head 2027-09-18 vA pilot.pdf" */
  GPtrArray *small; /* GdkTexture of each page; empty before it is laid out */
  guint large_page; /* the page that was asked for as large as it is shown */
  GdkTexture *large; /* its picture; NULL: none was asked for */
} FfProof;

FfProof *ff_proof_new (const FfProofSource *source,
                       const FfProofWish *wish,
                       GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Its two parts, for several documents from the same facts, which must outlive them. */
FfSheetFacts *ff_proof_facts (const FfProofSource *source,
                              FfBriefMore more,
                              gboolean phones,
                              GError **error) G_GNUC_WARN_UNUSED_RESULT;
FfBrief *ff_proof_gather (const FfProofSource *source,
                          const FfSheetFacts *facts,
                          const FfProofWish *wish,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The weather call, laid out; takes the facts. `plan` may be NULL. */
FfProof *ff_proof_new_weather (FfSheetFacts *facts,
                               const FfWeatherToday *today,
                               FfPaper paper,
                               const char *date,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
FfProof *ff_proof_ref (FfProof *proof);
void ff_proof_unref (FfProof *proof);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfProof, ff_proof_unref)

/* The slow parts, for another thread: laying out, and then the pictures, of all pages with this
 * width and of one page with this size, in pixels. */
gboolean ff_proof_lay_out (FfProof *proof, GError **error);
void ff_proof_draw_small (FfProof *proof, int width);
void ff_proof_draw_large (FfProof *proof, guint page, int width, int height);

guint ff_proof_n_pages (const FfProof *proof);

/* A page as a picture: paper is white and ink is black, in every look. */
GdkTexture *ff_proof_picture (const FfProof *proof,
                              guint page,
                              int width,
                              int height) G_GNUC_WARN_UNUSED_RESULT;

/* "Pilot 1 of 2", with a blank or a new line between the two. */
char *ff_proof_page_name (const FfProof *proof,
                          guint page,
                          const char *between) G_GNUC_WARN_UNUSED_RESULT;

/* What is on the page, for those who can't see it. */
char *ff_proof_page_words (const FfProof *proof, guint page) G_GNUC_WARN_UNUSED_RESULT;

/* A name that any file system takes: "Skarrowick Head 2027-09-18 vA pilot.pdf"; `what` may be
 * NULL. */
char *ff_proof_name_file (const char *job,
                          const char *date,
                          const char *version,
                          const char *what) G_GNUC_WARN_UNUSED_RESULT;
