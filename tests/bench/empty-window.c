/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An empty libadwaita window that leaves when its first frame is on the screen: the least that any
 * program of its kind needs. */
#include <adwaita.h>

static void
after_paint (GdkFrameClock *clock, GtkWidget *window)
{
  if (!gtk_widget_get_mapped (window) || gtk_widget_get_width (window) == 0)
    return;
  g_signal_handlers_disconnect_by_func (clock, after_paint, window);
  gdk_display_sync (gtk_widget_get_display (window));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
on_realize (GtkWidget *window)
{
  g_signal_connect (gtk_widget_get_frame_clock (window), "after-paint", G_CALLBACK (after_paint),
                    window);
}

static void
on_activate (GtkApplication *application)
{
  GtkWidget *window = adw_application_window_new (application);
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (content), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (content), gtk_label_new ("empty"));
  adw_application_window_set_content (ADW_APPLICATION_WINDOW (window), content);
  gtk_window_set_default_size (GTK_WINDOW (window), 1200, 800);
  g_signal_connect (window, "realize", G_CALLBACK (on_realize), NULL);
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  g_autoptr (AdwApplication) application
      = adw_application_new ("org.fieldfare.Empty", G_APPLICATION_NON_UNIQUE);

  g_signal_connect (application, "activate", G_CALLBACK (on_activate), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
