/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-stage.h"

#include <string.h>

#include "ff-demo.h"
#include "ff-records.h"

#define LIMIT_US (5 * G_USEC_PER_SEC)

gboolean
ff_stage_start (void)
{
  if (!gtk_init_check ())
    return FALSE;
  adw_init ();
  /* So that pictures are the same everywhere. */
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, "gtk-cursor-blink",
                FALSE, NULL);
  return TRUE;
}

/* The main loop */

gboolean
ff_stage_wait (gboolean (*is_true) (gpointer), gpointer data)
{
  gint64 until = g_get_monotonic_time () + LIMIT_US;

  while (!is_true (data))
    {
      if (g_get_monotonic_time () > until)
        return FALSE;
      if (!g_main_context_iteration (NULL, FALSE))
        g_usleep (1000);
    }
  return TRUE;
}

void
ff_stage_settle (void)
{
  gint64 until = g_get_monotonic_time () + 150 * 1000;

  while (g_get_monotonic_time () < until)
    if (!g_main_context_iteration (NULL, FALSE))
      g_usleep (1000);
}

static gboolean
is_planned (gpointer data)
{
  FfStage *stage = data;

  return !ff_keeper_is_planning (stage->keeper);
}

void
ff_stage_wait_for_plan (FfStage *stage)
{
  assert_true (ff_stage_wait (is_planned, stage));
}

/* The stage */

static void
fill (const char *folder)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStore) store = ff_records_open (folder, FF_RECORDS_WRITE, &error);

  assert_no_error (error);
  ff_demo_fill (store, &error);
  assert_no_error (error);
}

static gboolean
is_drawn (gpointer window)
{
  return gtk_widget_get_mapped (window) && gtk_widget_get_width (window) > 0;
}

/* One for all stages: a second one would export itself at the place of the first. */
static FfApplication *
the_application (void)
{
  static FfApplication *application;

  if (application != NULL)
    return application;
  application = ff_application_new ();
  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE);
  assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  return application;
}

FfStage *
ff_stage_new (gboolean demo, int width, int height)
{
  FfStage *stage = g_new0 (FfStage, 1);

  stage->folder = ff_test_folder_new ();
  if (demo)
    fill (stage->folder);
  stage->application = the_application ();
  stage->keeper = ff_keeper_new (stage->folder);
  stage->window = ff_window_new (GTK_APPLICATION (stage->application), stage->keeper);
  gtk_window_set_default_size (GTK_WINDOW (stage->window), width, height);
  ff_window_show_page (stage->window, "jobs");
  gtk_window_present (GTK_WINDOW (stage->window));
  assert_true (ff_stage_wait (is_drawn, stage->window));
  ff_stage_settle ();
  return stage;
}

void
ff_stage_free (FfStage *stage)
{
  gpointer window = stage->window;

  g_object_add_weak_pointer (window, &window);
  gtk_window_destroy (GTK_WINDOW (stage->window));
  ff_stage_settle ();
  assert_null (window);
  g_clear_object (&stage->keeper);
  ff_test_folder_remove (stage->folder);
  g_free (stage);
}

void
ff_stage_open_demo_job (FfStage *stage)
{
  g_autofree char *id = ff_job_find (ff_keeper_store (stage->keeper), "Skarrowick", NULL);

  assert_non_null (id);
  ff_keeper_open_job (stage->keeper, id);
  ff_stage_wait_for_plan (stage);
}

/* Widgets */

static gboolean
has_text (GtkWidget *widget, const char *text)
{
  const char *own = NULL;

  if (GTK_IS_LABEL (widget))
    own = gtk_label_get_text (GTK_LABEL (widget));
  else if (GTK_IS_BUTTON (widget))
    own = gtk_button_get_label (GTK_BUTTON (widget));
  else if (GTK_IS_EDITABLE (widget))
    own = gtk_editable_get_text (GTK_EDITABLE (widget));
  return own != NULL && strcmp (own, text) == 0;
}

GtkWidget *
ff_stage_find (GtkWidget *root, GType type, const char *text)
{
  if (!gtk_widget_get_visible (root) || !gtk_widget_get_child_visible (root))
    return NULL;
  if (g_type_is_a (G_OBJECT_TYPE (root), type) && (text == NULL || has_text (root, text)))
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = ff_stage_find (child, type, text);

      if (found != NULL)
        return found;
    }
  return NULL;
}

guint
ff_stage_count (GtkWidget *root, GType type)
{
  guint n = g_type_is_a (G_OBJECT_TYPE (root), type);

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += ff_stage_count (child, type);
  return n;
}

/* Pictures */

gboolean
ff_stage_picture (FfStage *stage, const char *path)
{
  GtkWidget *widget = GTK_WIDGET (stage->window);
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (widget);
  g_autoptr (GtkSnapshot) snapshot = gtk_snapshot_new ();
  g_autoptr (GdkTexture) texture = NULL;
  GskRenderNode *node;

  gdk_paintable_snapshot (paintable, GDK_SNAPSHOT (snapshot), gtk_widget_get_width (widget),
                          gtk_widget_get_height (widget));
  node = gtk_snapshot_to_node (snapshot);
  if (node == NULL)
    return FALSE;
  texture = gsk_renderer_render_texture (gtk_native_get_renderer (GTK_NATIVE (widget)), node, NULL);
  gsk_render_node_unref (node);
  return gdk_texture_save_to_png (texture, path);
}
