/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-printing.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#define SETTINGS_GROUP "Print Settings"
#define PAGE_GROUP "Page Setup"
#define PROOF "ff-proof"

/* Pages */

static void
on_begin_print (GtkPrintOperation *operation, GtkPrintContext *context, gpointer user_data)
{
  FfProof *proof = g_object_get_data (G_OBJECT (operation), PROOF);
  cairo_surface_t *target = cairo_get_target (gtk_print_context_get_cairo_context (context));

  gtk_print_operation_set_n_pages (operation, (int) ff_proof_n_pages (proof));
  /* GTK's own PDF has no title. */
  if (cairo_surface_get_type (target) == CAIRO_SURFACE_TYPE_PDF)
    cairo_pdf_surface_set_metadata (target, CAIRO_PDF_METADATA_TITLE,
                                    ff_brief_title (proof->brief));
}

/* On other paper than the proof was laid out for, it is made to fit and stands in the middle. */
static void
on_draw_page (GtkPrintOperation *operation,
              GtkPrintContext *context,
              int page,
              gpointer user_data)
{
  FfProof *proof = g_object_get_data (G_OBJECT (operation), PROOF);
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  const double wide = gtk_print_context_get_width (context);
  const double high = gtk_print_context_get_height (context);
  double width, height, scale;

  ff_brief_page_size (proof->brief, &width, &height);
  scale = MIN (1, MIN (wide / width, high / height));
  cairo_translate (cr, (wide - width * scale) / 2, (high - height * scale) / 2);
  cairo_scale (cr, scale, scale);
  ff_brief_draw_page (proof->brief, cr, (guint) page);
}

static void
set_paper (GtkPageSetup *setup, FfPaper paper)
{
  GtkPaperSize *size = gtk_paper_size_new (paper == FF_PAPER_LETTER ? GTK_PAPER_NAME_LETTER
                                                                    : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size (setup, size);
  gtk_page_setup_set_orientation (setup, GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_paper_size_free (size);
}

GtkPrintOperation *
ff_printing_new (FfProof *proof)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();

  set_paper (setup, proof->paper);
  g_object_set_data_full (G_OBJECT (operation), PROOF, ff_proof_ref (proof),
                          (GDestroyNotify) ff_proof_unref);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_job_name (operation, ff_brief_title (proof->brief));
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  /* The sheets have margins of their own. */
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  g_signal_connect (operation, "begin-print", G_CALLBACK (on_begin_print), NULL);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw_page), NULL);
  return operation;
}

/* What was chosen */

char *
ff_printing_path (void)
{
  return g_build_filename (g_get_user_config_dir (), "fieldfare", "print.ini", NULL);
}

void
ff_printing_recall (GtkPrintOperation *operation, const char *path)
{
  FfProof *proof = g_object_get_data (G_OBJECT (operation), PROOF);
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autoptr (GtkPrintSettings) settings = gtk_print_settings_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();

  if (!g_key_file_load_from_file (file, path, G_KEY_FILE_NONE, NULL))
    return;
  if (gtk_print_settings_load_key_file (settings, file, SETTINGS_GROUP, NULL))
    {
      /* The paper is chosen on the page, the file in the dialog, anew each time. */
      gtk_print_settings_unset (settings, GTK_PRINT_SETTINGS_PAPER_FORMAT);
      gtk_print_settings_unset (settings, GTK_PRINT_SETTINGS_PAPER_WIDTH);
      gtk_print_settings_unset (settings, GTK_PRINT_SETTINGS_PAPER_HEIGHT);
      gtk_print_settings_unset (settings, GTK_PRINT_SETTINGS_PAGE_RANGES);
      gtk_print_settings_unset (settings, GTK_PRINT_SETTINGS_OUTPUT_URI);
      gtk_print_operation_set_print_settings (operation, settings);
    }
  if (gtk_page_setup_load_key_file (setup, file, PAGE_GROUP, NULL))
    {
      set_paper (setup, proof->paper);
      gtk_print_operation_set_default_page_setup (operation, setup);
    }
}

gboolean
ff_printing_remember (GtkPrintOperation *operation, const char *path, GError **error)
{
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autofree char *folder = g_path_get_dirname (path);
  GtkPrintSettings *settings = gtk_print_operation_get_print_settings (operation);
  GtkPageSetup *setup = gtk_print_operation_get_default_page_setup (operation);

  if (settings != NULL)
    gtk_print_settings_to_key_file (settings, file, SETTINGS_GROUP);
  if (setup != NULL)
    gtk_page_setup_to_key_file (setup, file, PAGE_GROUP);
  g_mkdir_with_parents (folder, 0700);
  return g_key_file_save_to_file (file, path, error);
}

/* The dialog */

static void
on_done (GtkPrintOperation *operation, GtkPrintOperationResult result, gpointer user_data)
{
  g_autoptr (FfPage) page = user_data;
  g_autoptr (GError) error = NULL;
  g_autofree char *path = ff_printing_path ();

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    gtk_print_operation_get_error (operation, &error);
  else if (result == GTK_PRINT_OPERATION_RESULT_APPLY)
    ff_printing_remember (operation, path, &error);
  /* The window may have been closed meanwhile. */
  if (gtk_widget_get_root (GTK_WIDGET (page)) != NULL)
    ff_page_say_error (page, &error);
}

void
ff_printing_run (FfProof *proof, FfPage *page)
{
  g_autoptr (GtkPrintOperation) operation = ff_printing_new (proof);
  g_autofree char *path = ff_printing_path ();

  ff_printing_recall (operation, path);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect (operation, "done", G_CALLBACK (on_done), g_object_ref (page));
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                           ff_page_window (page), NULL);
}
