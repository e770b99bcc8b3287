/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-page.h"

typedef struct {
  FfKeeper *keeper;
  const FfPageInfo *info;
  FfChanged pending; /* what changed while the page was hidden */
} FfPagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (FfPage, ff_page, ADW_TYPE_BIN)

enum { PROP_0, PROP_KEEPER, PROP_INFO, N_PROPS };

static GParamSpec *properties[N_PROPS];

/* The table of pages */

#define FF_PAGE(name) extern const FfPageInfo ff_page_info_##name;
#include "ff-page-table.h"
#undef FF_PAGE

#define FF_PAGE(name) &ff_page_info_##name,
static const FfPageInfo *const pages[] = {
#include "ff-page-table.h"
};
#undef FF_PAGE

guint
ff_pages_count (void)
{
  return G_N_ELEMENTS (pages);
}

const FfPageInfo *
ff_pages_get (guint i)
{
  return i < G_N_ELEMENTS (pages) ? pages[i] : NULL;
}

const FfPageInfo *
ff_pages_find (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    if (g_strcmp0 (pages[i]->name, name) == 0)
      return pages[i];
  return NULL;
}

const FfPageInfo *
ff_pages_nth (FfPageSort sort, guint n)
{
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    if (pages[i]->sort == sort && pages[i]->under == NULL && n-- == 0)
      return pages[i];
  return NULL;
}

/* News from the keeper */

static FfPagePrivate *
private_of (FfPage *self)
{
  return ff_page_get_instance_private (self);
}

static void
refresh_if_shown (FfPage *self)
{
  FfPagePrivate *priv = private_of (self);
  FfChanged changed = priv->pending;

  if (changed == 0 || priv->keeper == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  priv->pending = 0;
  if (FF_PAGE_GET_CLASS (self)->refresh != NULL)
    FF_PAGE_GET_CLASS (self)->refresh (self, changed);
}

static void
note (FfPage *self, FfChanged changed)
{
  private_of (self)->pending |= changed;
  refresh_if_shown (self);
}

static void
on_jobs_changed (FfPage *self)
{
  note (self, FF_CHANGED_JOBS);
}

static void
on_items_changed (FfPage *self)
{
  note (self, FF_CHANGED_ITEMS);
}

static void
on_job_changed (FfPage *self)
{
  note (self, FF_CHANGED_JOB);
}

static void
on_plan_changed (FfPage *self)
{
  note (self, FF_CHANGED_PLAN);
}

static void
take_keeper (FfPage *self, FfKeeper *keeper)
{
  FfPagePrivate *priv = private_of (self);

  if (keeper == NULL)
    return;
  priv->keeper = g_object_ref (keeper);
  g_signal_connect_object (keeper, "jobs-changed", G_CALLBACK (on_jobs_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (keeper, "items-changed", G_CALLBACK (on_items_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (keeper, "job-changed", G_CALLBACK (on_job_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (keeper, "plan-changed", G_CALLBACK (on_plan_changed), self,
                           G_CONNECT_SWAPPED);
}

/* Overrides */

static void
ff_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (ff_page_parent_class)->map (widget);
  refresh_if_shown (FF_PAGE (widget));
}

static gboolean
ff_page_grab_focus (GtkWidget *widget)
{
  GtkWidget *child = adw_bin_get_child (ADW_BIN (widget));

  return child != NULL && gtk_widget_child_focus (child, GTK_DIR_TAB_FORWARD);
}

static void
ff_page_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_KEEPER)
    take_keeper (FF_PAGE (object), g_value_get_object (value));
  else if (id == PROP_INFO)
    private_of (FF_PAGE (object))->info = g_value_get_pointer (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_KEEPER)
    g_value_set_object (value, private_of (FF_PAGE (object))->keeper);
  else if (id == PROP_INFO)
    g_value_set_pointer (value, (gpointer) private_of (FF_PAGE (object))->info);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_page_dispose (GObject *object)
{
  g_clear_object (&private_of (FF_PAGE (object))->keeper);
  G_OBJECT_CLASS (ff_page_parent_class)->dispose (object);
}

static void
ff_page_class_init (FfPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags once = G_PARAM_READWRITE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS;

  object_class->set_property = ff_page_set_property;
  object_class->get_property = ff_page_get_property;
  object_class->dispose = ff_page_dispose;
  widget_class->map = ff_page_map;
  widget_class->grab_focus = ff_page_grab_focus;
  properties[PROP_KEEPER] = g_param_spec_object ("keeper", NULL, NULL, FF_TYPE_KEEPER, once);
  properties[PROP_INFO] = g_param_spec_pointer ("info", NULL, NULL, once);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  gtk_widget_class_set_css_name (widget_class, "page");
}

static void
ff_page_init (FfPage *self)
{
  private_of (self)->pending = FF_CHANGED_ALL;
}

/* Public */

FfPage *
ff_page_new (const FfPageInfo *info, FfKeeper *keeper)
{
  return g_object_new (info->get_type (), "keeper", keeper, "info", info, NULL);
}

FfKeeper *
ff_page_get_keeper (FfPage *self)
{
  g_return_val_if_fail (FF_IS_PAGE (self), NULL);
  return private_of (self)->keeper;
}

const FfPageInfo *
ff_page_get_info (FfPage *self)
{
  g_return_val_if_fail (FF_IS_PAGE (self), NULL);
  return private_of (self)->info;
}

gboolean
ff_page_can_find (FfPage *self)
{
  return FF_PAGE_GET_CLASS (self)->find != NULL;
}

gboolean
ff_page_can_print (FfPage *self)
{
  return FF_PAGE_GET_CLASS (self)->print != NULL;
}

gboolean
ff_page_can_add (FfPage *self)
{
  return FF_PAGE_GET_CLASS (self)->add != NULL;
}

void
ff_page_find (FfPage *self)
{
  if (ff_page_can_find (self))
    FF_PAGE_GET_CLASS (self)->find (self);
}

void
ff_page_print (FfPage *self)
{
  if (ff_page_can_print (self))
    FF_PAGE_GET_CLASS (self)->print (self);
}

void
ff_page_add (FfPage *self)
{
  if (ff_page_can_add (self))
    FF_PAGE_GET_CLASS (self)->add (self);
}

GtkWindow *
ff_page_window (FfPage *self)
{
  return GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
}

void
ff_page_say (FfPage *self, const char *sentence, gboolean undo)
{
  g_return_if_fail (FF_IS_PAGE (self));
  gtk_widget_activate_action (GTK_WIDGET (self), "win.say", "(sb)", sentence, undo);
}

void
ff_page_say_last_change (FfPage *self)
{
  const char *what = ff_keeper_undo_text (ff_page_get_keeper (self));

  if (what != NULL)
    ff_page_say (self, what, TRUE);
}

void
ff_page_say_error (FfPage *self, GError **error)
{
  if (*error != NULL)
    ff_page_say (self, (*error)->message, FALSE);
  g_clear_error (error);
}

void
ff_page_go_to (FfPage *self, const char *field)
{
  g_return_if_fail (FF_IS_PAGE (self));
  if (FF_PAGE_GET_CLASS (self)->go_to != NULL)
    FF_PAGE_GET_CLASS (self)->go_to (self, field);
}

void
ff_page_go (FfPage *self, const char *name)
{
  g_return_if_fail (FF_IS_PAGE (self));
  gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "s", name);
}
