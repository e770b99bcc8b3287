/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Turning the pages of a brief, and how large the large one is. */
#include <glib/gi18n-lib.h>

#include "ff-beside.h"
#include "ff-briefs-page-private.h"
#include "ff-zoom.h"

#define SCROLL_STEP 80
#define PAN_STEP 0.25

static void
show_where (FfBriefsPage *self)
{
  const guint n = ff_proof_n_pages (self->proof);
  g_autofree char *name = ff_proof_page_name (self->proof, self->number, " ");
  g_autofree char *words = NULL;

  /* Translators: over the large page: "Pilot 1 of 2 · page 1 of 4". */
  words = g_strdup_printf (_ ("%s · page %u of %u"), name, self->number + 1, n);
  gtk_label_set_label (self->where, words);
  gtk_widget_set_sensitive (self->previous, self->number > 0);
  gtk_widget_set_sensitive (self->next, self->number + 1 < n);
}

void
ff_briefs_turn_show (FfBriefsPage *self, guint number)
{
  GtkFlowBoxChild *child = gtk_flow_box_get_child_at_index (self->thumbs, (int) number);

  self->number = number;
  ff_preview_show (self->large, self->proof, number);
  show_where (self);
  self->selecting = TRUE;
  if (child != NULL)
    gtk_flow_box_select_child (self->thumbs, child);
  self->selecting = FALSE;
}

/* Brings the top of the large page to the screen. */
static void
scroll_to_page (FfBriefsPage *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  const double now = gtk_adjustment_get_value (adjustment);
  graphene_point_t top;

  if (!gtk_widget_compute_point (self->pager, self->beside, &GRAPHENE_POINT_INIT (0, 0), &top))
    return;
  gtk_adjustment_set_value (adjustment, ff_beside_get_stacked (FF_BESIDE (self->beside))
                                            ? top.y
                                            : MIN (now, top.y));
}

void
ff_briefs_turn_to (FfBriefsPage *self, guint number)
{
  GtkWidget *inside = gtk_widget_get_focus_child (GTK_WIDGET (self->thumbs));

  if (self->proof == NULL || number >= ff_proof_n_pages (self->proof))
    return;
  ff_briefs_turn_show (self, number);
  scroll_to_page (self);
  if (inside != NULL)
    gtk_widget_grab_focus (
        GTK_WIDGET (gtk_flow_box_get_child_at_index (self->thumbs, (int) number)));
}

static void
step (FfBriefsPage *self, int by)
{
  if (by > 0 || self->number > 0)
    ff_briefs_turn_to (self, by > 0 ? self->number + 1 : self->number - 1);
}

/* How large it is */

static void
zoom_to (FfBriefsPage *self, int step)
{
  self->zoom = CLAMP (step, FF_ZOOM_WHOLE, FF_ZOOM_MOST);
  gtk_toggle_button_set_active (self->whole, self->zoom == FF_ZOOM_WHOLE);
  ff_zoom_show (self->large, self->scroller, self->zoom);
}

static void
on_whole (FfBriefsPage *self)
{
  const gboolean whole = gtk_toggle_button_get_active (self->whole);

  if (whole != (self->zoom == FF_ZOOM_WHOLE))
    zoom_to (self, whole ? FF_ZOOM_WHOLE : FF_ZOOM_WIDE);
}

static void
on_larger (FfBriefsPage *self)
{
  zoom_to (self, self->zoom + 1);
}

static void
on_smaller (FfBriefsPage *self)
{
  zoom_to (self, self->zoom - 1);
}

/* Callbacks and actions */

static void
on_previous (FfBriefsPage *self)
{
  step (self, -1);
}

static void
on_next (FfBriefsPage *self)
{
  step (self, 1);
}

static void
scroll (FfBriefsPage *self, int by)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);

  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + SCROLL_STEP * by);
}

static void
act (GtkWidget *widget, const char *action, GVariant *by)
{
  FfBriefsPage *self = FF_BRIEFS_PAGE (widget);

  if (g_str_equal (action, "sheet.turn"))
    step (self, g_variant_get_int32 (by));
  else if (g_str_equal (action, "sheet.scroll"))
    scroll (self, g_variant_get_int32 (by));
  else if (g_str_equal (action, "sheet.pan"))
    ff_preview_pan (self->large, PAN_STEP * g_variant_get_int32 (by));
  else if (g_str_equal (action, "sheet.zoom"))
    zoom_to (self, self->zoom + g_variant_get_int32 (by));
  else
    ff_briefs_page_ask_to_save (self);
}

/* Public */

void
ff_briefs_turn_class_init (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, on_previous);
  gtk_widget_class_bind_template_callback (widget_class, on_next);
  gtk_widget_class_bind_template_callback (widget_class, on_whole);
  gtk_widget_class_bind_template_callback (widget_class, on_larger);
  gtk_widget_class_bind_template_callback (widget_class, on_smaller);
  gtk_widget_class_install_action (widget_class, "sheet.turn", "i", act);
  gtk_widget_class_install_action (widget_class, "sheet.scroll", "i", act);
  gtk_widget_class_install_action (widget_class, "sheet.pan", "i", act);
  gtk_widget_class_install_action (widget_class, "sheet.zoom", "i", act);
  gtk_widget_class_install_action (widget_class, "sheet.save", NULL, act);
}
