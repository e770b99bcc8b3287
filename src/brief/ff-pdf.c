/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pdf.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-save.h"

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
add_outline (cairo_surface_t *surface, const GArray *outline)
{
  int parent = CAIRO_PDF_OUTLINE_ROOT;

  for (guint i = 0; i < outline->len; i++)
    {
      const FfPdfEntry *entry = &g_array_index (outline, FfPdfEntry, i);
      g_autofree char *to = g_strdup_printf ("page=%u pos=[0 %d]", entry->page + 1, (int) entry->y);
      int id = cairo_pdf_surface_add_outline (surface,
                                              entry->is_child ? parent : CAIRO_PDF_OUTLINE_ROOT,
                                              entry->text, to, CAIRO_PDF_OUTLINE_FLAG_OPEN);

      if (!entry->is_child)
        parent = id;
    }
}

static GByteArray *
render (const FfPdfDocument *document, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (
      append_bytes, bytes, document->width, document->height);
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  /* The version whose objects and cross-references are plain text: add_language() reads them. */
  cairo_pdf_surface_restrict_to_version (surface, CAIRO_PDF_VERSION_1_4);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, document->title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Fieldfare " FF_VERSION);
  for (guint page = 0; page < document->n_pages; page++)
    {
      document->draw (document->data, cr, page);
      cairo_show_page (cr);
    }
  add_outline (surface, document->outline);
  status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_OUTPUT, _ ("the sheets can't be drawn: %s"),
                   cairo_status_to_string (status));
      return NULL;
    }
  return g_steal_pointer (&bytes);
}

/* The last place of `what` in the bytes, which also hold zeros; or NULL. */
static const char *
find_last (const GByteArray *bytes, const char *what)
{
  const char *start = (const char *) bytes->data, *end = start + bytes->len;
  const char *last = NULL, *next = start;

  while ((next = memmem (next, (gsize) (end - next), what, strlen (what))) != NULL)
    last = next++;
  return last;
}

static gboolean
number_after (const char *from, const char *what, guint64 *ret_number)
{
  const char *at = from != NULL ? strstr (from, what) : NULL;

  if (at == NULL)
    return FALSE;
  *ret_number = g_ascii_strtoull (at + strlen (what), NULL, 10);
  return TRUE;
}

/* What the end of the file says of itself. */
typedef struct {
  guint64 root, info, size, start;
} Trailer;

static gboolean
read_trailer (const GByteArray *bytes, Trailer *ret_trailer)
{
  const char *trailer = find_last (bytes, "trailer");

  return number_after (trailer, "/Root ", &ret_trailer->root)
         && number_after (trailer, "/Info ", &ret_trailer->info)
         && number_after (trailer, "/Size ", &ret_trailer->size)
         && number_after (trailer, "startxref\n", &ret_trailer->start);
}

/* The catalog from its number to before the end of its dictionary; NULL when it is not found. */
static char *
read_catalog (const GByteArray *bytes, guint64 root)
{
  g_autofree char *head = g_strdup_printf ("\n%" G_GUINT64_FORMAT " 0 obj\n<<", root);
  const char *object = find_last (bytes, head);
  const char *end = object != NULL ? strstr (object, "\n>>\nendobj") : NULL;

  return end != NULL ? g_strndup (object + 1, (gsize) (end - object - 1)) : NULL;
}

static void
append_text (GByteArray *bytes, const char *text)
{
  g_byte_array_append (bytes, (const guint8 *) text, (guint) strlen (text));
}

/* Cairo has no call for the language of a document. It is added as the format means additions to be
 * made (PDF Reference 1.4, 3.4.5, incremental updates): the catalog once more, with the language in
 * it, and a cross-reference section that leads to the one before. */
static void
add_language (GByteArray *bytes, const char *language)
{
  g_autofree char *catalog = NULL, *object = NULL, *section = NULL;
  Trailer trailer;
  guint at;

  /* A zero behind the end, so that the end can be searched as text. */
  g_byte_array_append (bytes, (const guint8 *) "", 1);
  g_byte_array_set_size (bytes, bytes->len - 1);
  if (!read_trailer (bytes, &trailer))
    return;
  catalog = read_catalog (bytes, trailer.root);
  if (catalog == NULL)
    return;
  at = bytes->len;
  object = g_strdup_printf ("%s\n   /Lang (%s)\n   /ViewerPreferences << /DisplayDocTitle true >>"
                            "\n>>\nendobj\n",
                            catalog, language);
  append_text (bytes, object);
  section = g_strdup_printf ("xref\n%" G_GUINT64_FORMAT " 1\n%010u 00000 n \n"
                             "trailer\n<< /Size %" G_GUINT64_FORMAT " /Root %" G_GUINT64_FORMAT
                             " 0 R /Info %" G_GUINT64_FORMAT " 0 R /Prev %" G_GUINT64_FORMAT
                             " >>\nstartxref\n%u\n%%%%EOF\n",
                             trailer.root, at, trailer.size, trailer.root, trailer.info,
                             trailer.start, bytes->len);
  append_text (bytes, section);
}

gboolean
ff_pdf_write (const FfPdfDocument *document, const char *path, GError **error)
{
  g_autoptr (GByteArray) bytes = render (document, error);

  if (bytes == NULL)
    return FALSE;
  add_language (bytes, document->language);
  return ff_save (path, bytes->data, bytes->len, error);
}
