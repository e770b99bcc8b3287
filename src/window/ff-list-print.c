/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-list-print.h"

#include "ff-brief.h"

static void
draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page, const FfBrief *brief)
{
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width, height, scale;

  ff_brief_page_size (brief, &width, &height);
  scale = MIN (gtk_print_context_get_width (context) / width,
               gtk_print_context_get_height (context) / height);
  cairo_scale (cr, scale, scale);
  ff_brief_draw_page (brief, cr, (guint) page);
}

/* The list as a sheet of no job: all of its items, whatever the day calls for. */
static FfBrief *
brief_of (const FfChecklist *list, GError **error)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_local ();
  g_autoptr (FfSheetFacts) facts
      = ff_sheet_facts_blank (g_get_real_time () / G_USEC_PER_SEC, zone);
  const gboolean letter = g_str_equal (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER);

  facts->lists = g_ptr_array_new ();
  g_ptr_array_add (facts->lists, (gpointer) list);
  facts->conditions = ~0u;
  return ff_brief_new_lists (facts, letter ? FF_PAPER_LETTER : FF_PAPER_A4, error);
}

GtkPrintOperation *
ff_list_print_new (const FfChecklist *list, GError **error)
{
  FfBrief *brief = brief_of (list, error);
  GtkPrintOperation *operation;

  if (brief == NULL)
    return NULL;
  operation = gtk_print_operation_new ();
  gtk_print_operation_set_n_pages (operation, (int) ff_brief_n_pages (brief));
  gtk_print_operation_set_job_name (operation, ff_brief_title (brief));
  gtk_print_operation_set_use_full_page (operation, TRUE);
  g_object_set_data_full (G_OBJECT (operation), "brief", brief, (GDestroyNotify) ff_brief_free);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page), brief);
  return operation;
}

void
ff_list_print (const FfChecklist *list, FfPage *page)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GtkPrintOperation) operation = ff_list_print_new (list, &error);

  if (operation != NULL)
    gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                             ff_page_window (page), &error);
  ff_page_say_error (page, &error);
}
