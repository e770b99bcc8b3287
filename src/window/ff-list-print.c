/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-list-print.h"

#include "ff-list-paper.h"

static void
draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page, FfListPaper *paper)
{
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width, height;

  ff_list_paper_size (paper, &width, &height);
  cairo_scale (cr, gtk_print_context_get_width (context) / width,
               gtk_print_context_get_width (context) / width);
  ff_list_paper_draw (paper, cr, (guint) page);
}

GtkPrintOperation *
ff_list_print_new (const FfChecklist *list)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  FfListPaper *paper = ff_list_paper_new (list, ~0u, FF_PAPER_A4);

  gtk_print_operation_set_n_pages (operation, (int) ff_list_paper_n_pages (paper));
  gtk_print_operation_set_job_name (operation, list->title);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  g_object_set_data_full (G_OBJECT (operation), "paper", paper,
                          (GDestroyNotify) ff_list_paper_free);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page), paper);
  return operation;
}

void
ff_list_print (const FfChecklist *list, FfPage *page)
{
  g_autoptr (GtkPrintOperation) operation = ff_list_print_new (list);
  g_autoptr (GError) error = NULL;

  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                           GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (page))), &error);
  ff_page_say_error (page, &error);
}
