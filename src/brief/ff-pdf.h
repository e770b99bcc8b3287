/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pages as a PDF: text that can be searched, with a title, a language and an outline. */
#pragma once

#include <cairo.h>
#include <glib.h>

typedef struct {
  const char *text;
  guint page; /* from 0 */
  double y;   /* from the top of the page, points */
  gboolean is_child;
} FfPdfEntry;

typedef struct {
  const char *title;
  const char *language; /* a tag of BCP 47 */
  double width, height; /* points */
  guint n_pages;
  const GArray *outline; /* FfPdfEntry, a parent before its children */
  void (*draw) (gconstpointer data, cairo_t *cr, guint page);
  gconstpointer data;
} FfPdfDocument;

/* Replaces `path` as a whole or leaves it as it was. Error: FF_ERROR_OUTPUT. */
gboolean ff_pdf_write (const FfPdfDocument *document, const char *path, GError **error);
