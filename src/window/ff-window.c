/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-window.h"

#include <glib/gi18n-lib.h>

#include "ff-person.h"
#include "ff-settings.h"
#include "ff-split.h"
#include "ff-strip.h"
#include "ff-wedge.h"
#include "ff-window-actions.h"
#include "ff-words.h"

struct _FfWindow {
  AdwApplicationWindow parent_instance;

  FfKeeper *keeper;
  const FfPageInfo *info; /* of the page on the screen; NULL: trouble */
  gboolean updating;      /* rows and buttons change by our own hand */

  AdwToastOverlay *toasts;
  AdwToast *said; /* the last one; watched, not owned */
  FfSplit *split;
  GtkListBox *places;
  GtkBox *bar, *parts;
  GtkWidget *controls, *job_head, *back, *bar_menu;
  GtkLabel *heading, *facts, *facts_below, *example, *version, *open_line, *trouble;
  GtkScrolledWindow *parts_scroller;
  GtkStack *stack;
  FfStrip *strip;
  FfPerson *person;
};

G_DEFINE_FINAL_TYPE (FfWindow, ff_window, ADW_TYPE_APPLICATION_WINDOW)

/* What the frame says */

static void
set_words (GtkLabel *label, const char *words)
{
  gtk_label_set_label (label, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (label), words != NULL && words[0] != '\0');
  gtk_widget_set_tooltip_text (GTK_WIDGET (label), words);
}

/* Where it is narrow, the facts of the job need a line of their own. */
static void
set_facts (FfWindow *self, const char *facts)
{
  gboolean narrow = ff_split_get_collapsed (self->split);

  set_words (self->facts, narrow ? NULL : facts);
  set_words (self->facts_below, narrow ? facts : NULL);
}

static void
show_job (FfWindow *self)
{
  const FfJob *job = ff_keeper_job (self->keeper);
  g_autofree char *facts = ff_words_facts (self->keeper);
  g_autofree char *open = ff_words_open (self->keeper);

  if (job == NULL)
    return;
  gtk_label_set_label (self->heading, job->title);
  set_facts (self, facts);
  set_words (self->version, job->version);
  gtk_widget_set_visible (GTK_WIDGET (self->example), job->example);
  set_words (self->open_line, self->info->shows_day ? NULL : open);
}

static void
show_place (FfWindow *self)
{
  gtk_label_set_label (self->heading, self->info != NULL ? _ (self->info->title) : "Fieldfare");
  set_facts (self, NULL);
  set_words (self->version, NULL);
  set_words (self->open_line, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->example), FALSE);
}

static gboolean
on_part (FfWindow *self)
{
  return self->info != NULL && self->info->sort == FF_PAGE_PART;
}

static void
show_head (FfWindow *self)
{
  gtk_widget_set_visible (self->job_head, on_part (self));
  ff_strip_set_wanted (self->strip, on_part (self) && !self->info->shows_day);
  gtk_widget_set_visible (self->back, on_part (self));
  if (on_part (self))
    show_job (self);
  else
    show_place (self);
}

/* The places and parts, and which of them is here */

static GtkWidget *
label_with_icon (const FfPageInfo *info, GtkOrientation orientation)
{
  GtkWidget *box = gtk_box_new (orientation, orientation == GTK_ORIENTATION_HORIZONTAL ? 12 : 2);
  GtkWidget *icon = gtk_image_new_from_icon_name (info->icon);

  GtkWidget *label = gtk_label_new (_ (info->title));

  gtk_widget_set_halign (icon, GTK_ALIGN_CENTER);
  /* In the bar the icon stays and the word gives way, when text is twice as large. */
  if (orientation == GTK_ORIENTATION_VERTICAL)
    gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_box_append (GTK_BOX (box), icon);
  gtk_box_append (GTK_BOX (box), label);
  return box;
}

static void
set_page_of (GtkWidget *widget, const FfPageInfo *info)
{
  g_object_set_data (G_OBJECT (widget), "page", (gpointer) info);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (info->title), -1);
}

static const FfPageInfo *
page_of (gpointer widget)
{
  return g_object_get_data (widget, "page");
}

static void
on_toggled (FfWindow *self, GtkToggleButton *button)
{
  const FfPageInfo *info = page_of (button);

  if (self->updating)
    return;
  if (gtk_toggle_button_get_active (button) || info == self->info)
    ff_window_show_page (self, info->name);
}

static GtkWidget *
add_toggle (FfWindow *self, GtkBox *box, const FfPageInfo *info, GtkOrientation orientation)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *first = gtk_widget_get_first_child (GTK_WIDGET (box));

  gtk_button_set_child (GTK_BUTTON (button), label_with_icon (info, orientation));
  set_page_of (button, info);
  if (first != NULL && GTK_IS_TOGGLE_BUTTON (first))
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), GTK_TOGGLE_BUTTON (first));
  g_signal_connect_object (button, "toggled", G_CALLBACK (on_toggled), self, G_CONNECT_SWAPPED);
  gtk_box_append (box, button);
  return button;
}

static void
add_place (FfWindow *self, const FfPageInfo *info)
{
  GtkWidget *row = gtk_list_box_row_new ();

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row),
                              label_with_icon (info, GTK_ORIENTATION_HORIZONTAL));
  set_page_of (row, info);
  gtk_list_box_append (self->places, row);
  gtk_widget_add_css_class (add_toggle (self, self->bar, info, GTK_ORIENTATION_VERTICAL), "flat");
}

static void
add_pages (FfWindow *self)
{
  self->updating = TRUE;
  for (guint i = 0; i < ff_pages_count (); i++)
    {
      const FfPageInfo *info = ff_pages_get (i);

      if (info->under != NULL)
        continue;
      if (info->sort == FF_PAGE_PLACE)
        add_place (self, info);
      else
        gtk_widget_add_css_class (
            add_toggle (self, self->parts, info, GTK_ORIENTATION_HORIZONTAL), "part");
    }
  gtk_box_reorder_child_after (self->bar, self->bar_menu,
                               gtk_widget_get_last_child (GTK_WIDGET (self->bar)));
  self->updating = FALSE;
}

/* The place where the page on the screen belongs: parts belong to the jobs. */
static const FfPageInfo *
place_here (FfWindow *self)
{
  return on_part (self) ? ff_pages_find ("jobs") : self->info;
}

static void
mark_toggles (GtkBox *box, const FfPageInfo *here)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (box)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_TOGGLE_BUTTON (child))
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (child), page_of (child) == here);
}

/* The button of the part that is shown comes into view, where not all of them fit. */
static void
scroll_to_part (FfWindow *self)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->parts)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      graphene_rect_t box;

      if (page_of (child) == self->info
          && gtk_widget_compute_bounds (child, GTK_WIDGET (self->parts), &box))
        gtk_adjustment_clamp_page (gtk_scrolled_window_get_hadjustment (self->parts_scroller),
                                   box.origin.x, box.origin.x + box.size.width);
    }
}

static void
mark_here (FfWindow *self)
{
  const FfPageInfo *here = place_here (self);

  self->updating = TRUE;
  for (int i = 0; gtk_list_box_get_row_at_index (self->places, i) != NULL; i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->places, i);

      if (page_of (row) == here)
        gtk_list_box_select_row (self->places, row);
    }
  mark_toggles (self->bar, here);
  mark_toggles (self->parts, self->info);
  scroll_to_part (self);
  self->updating = FALSE;
}

/* Callbacks */

/* A list also says "selected" when the focus comes to the row that already is. */
static void
on_place_selected (GtkListBox *list, GtkListBoxRow *row, FfWindow *self)
{
  if (!self->updating && row != NULL && page_of (row) != place_here (self))
    ff_window_show_page (self, page_of (row)->name);
}

/* The row of the jobs is already selected while a part of a job is shown, and must still lead back. */
static void
on_place_activated (GtkListBox *list, GtkListBoxRow *row, FfWindow *self)
{
  if (page_of (row) != self->info)
    ff_window_show_page (self, page_of (row)->name);
}

/* Where it is narrow the parts go without their pictures, so that all of them are seen. */
static void
show_part_icons (FfWindow *self, gboolean shown)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->parts)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gtk_widget_set_visible (
        gtk_widget_get_first_child (gtk_button_get_child (GTK_BUTTON (child))), shown);
}

static void
on_collapsed (FfWindow *self)
{
  show_part_icons (self, !ff_split_get_collapsed (self->split));
  if (ff_split_get_collapsed (self->split))
    gtk_widget_add_css_class (GTK_WIDGET (self), "narrow");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "narrow");
  if (on_part (self))
    show_job (self);
}

static void
on_job_changed (FfWindow *self)
{
  if (!on_part (self))
    return;
  if (ff_keeper_job (self->keeper) == NULL)
    ff_window_show_page (self, "jobs");
  else
    show_job (self);
}

static void
on_keeper_news (FfWindow *self)
{
  ff_window_update_actions (self);
}

/* Overrides */

static void
remember (FfWindow *self)
{
  GSettings *settings = ff_settings_get ();
  const FfJob *job = ff_keeper_job (self->keeper);
  int width, height;

  if (settings == NULL)
    return;
  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  g_settings_set (settings, "window-size", "(ii)", width, height);
  g_settings_set_boolean (settings, "window-maximized", gtk_window_is_maximized (GTK_WINDOW (self)));
  if (self->info != NULL)
    g_settings_set_string (settings, "page", self->info->name);
  g_settings_set_string (settings, "job", job != NULL ? job->id : "");
}

static gboolean
ff_window_close_request (GtkWindow *window)
{
  remember (FF_WINDOW (window));
  return GTK_WINDOW_CLASS (ff_window_parent_class)->close_request (window);
}

/* Pages fill themselves when they are mapped; only then is there something to take the focus. */
static void
ff_window_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (ff_window_parent_class)->map (widget);
  gtk_widget_grab_focus (gtk_stack_get_visible_child (FF_WINDOW (widget)->stack));
}

static void
ff_window_dispose (GObject *object)
{
  g_clear_weak_pointer (&FF_WINDOW (object)->said);
  g_clear_object (&FF_WINDOW (object)->keeper);
  G_OBJECT_CLASS (ff_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FfWindow, toasts);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, split);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, controls);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, places);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, bar);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, bar_menu);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, parts);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, parts_scroller);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, job_head);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, back);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, heading);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, facts);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, facts_below);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, example);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, version);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, open_line);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, trouble);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, strip);
  gtk_widget_class_bind_template_child (widget_class, FfWindow, person);
  gtk_widget_class_bind_template_callback (widget_class, on_place_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_place_activated);
  gtk_widget_class_bind_template_callback (widget_class, on_collapsed);
}

static void
ff_window_class_init (FfWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = ff_window_dispose;
  widget_class->map = ff_window_map;
  GTK_WINDOW_CLASS (klass)->close_request = ff_window_close_request;
  g_type_ensure (FF_TYPE_SPLIT);
  g_type_ensure (FF_TYPE_STRIP);
  g_type_ensure (FF_TYPE_WEDGE);
  g_type_ensure (FF_TYPE_PERSON);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-window.ui");
  bind_children (widget_class);
}

static void
restore_size (FfWindow *self)
{
  GSettings *settings = ff_settings_get ();
  int width = 1200, height = 800;

  if (settings != NULL)
    {
      g_settings_get (settings, "window-size", "(ii)", &width, &height);
      if (g_settings_get_boolean (settings, "window-maximized"))
        gtk_window_maximize (GTK_WINDOW (self));
    }
  gtk_window_set_default_size (GTK_WINDOW (self), MAX (width, 360), MAX (height, 360));
}

static void
ff_window_init (FfWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_window_set_icon_name (GTK_WINDOW (self), "org.fieldfare.Fieldfare");
  /* Where the desktop puts all buttons at the other end, no room is kept for them here. */
  g_object_bind_property (self->controls, "empty", self->controls, "visible",
                          G_BINDING_SYNC_CREATE | G_BINDING_INVERT_BOOLEAN);
  restore_size (self);
  ff_window_add_actions (self);
  add_pages (self);
}

static void
take_keeper (FfWindow *self, FfKeeper *keeper)
{
  self->keeper = g_object_ref (keeper);
  ff_strip_set_keeper (self->strip, keeper);
  ff_person_set_keeper (self->person, keeper);
  g_signal_connect_object (keeper, "job-changed", G_CALLBACK (on_job_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (keeper, "plan-changed", G_CALLBACK (on_job_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (keeper, "undo-changed", G_CALLBACK (on_keeper_news), self,
                           G_CONNECT_SWAPPED);
}

/* Public */

FfWindow *
ff_window_new (GtkApplication *application, FfKeeper *keeper)
{
  FfWindow *self = g_object_new (FF_TYPE_WINDOW, "application", application, NULL);

  take_keeper (self, keeper);
  return self;
}

static FfPage *
ensure_page (FfWindow *self, const FfPageInfo *info)
{
  GtkWidget *page = gtk_stack_get_child_by_name (self->stack, info->name);

  if (page == NULL)
    {
      page = GTK_WIDGET (ff_page_new (info, self->keeper));
      gtk_stack_add_named (self->stack, page, info->name);
    }
  return FF_PAGE (page);
}

static void
show_trouble (FfWindow *self)
{
  self->info = NULL;
  gtk_label_set_label (self->trouble, ff_keeper_trouble (self->keeper));
  gtk_stack_set_visible_child_name (self->stack, "trouble");
}

/* The page that can be shown for this name now. */
static const FfPageInfo *
resolve (FfWindow *self, const char *name)
{
  const FfPageInfo *info = ff_pages_find (name);

  if (info != NULL && info->sort == FF_PAGE_PART && ff_keeper_job (self->keeper) == NULL)
    info = ff_pages_find ("jobs");
  return info != NULL ? info : ff_pages_nth (FF_PAGE_PLACE, 0);
}

void
ff_window_show_page (FfWindow *self, const char *name)
{
  g_return_if_fail (FF_IS_WINDOW (self));
  if (ff_keeper_trouble (self->keeper) != NULL)
    show_trouble (self);
  else
    {
      self->info = resolve (self, name);
      gtk_stack_set_visible_child (self->stack, GTK_WIDGET (ensure_page (self, self->info)));
    }
  mark_here (self);
  show_head (self);
  ff_window_update_actions (self);
  gtk_widget_grab_focus (gtk_stack_get_visible_child (self->stack));
}

FfPage *
ff_window_get_page (FfWindow *self)
{
  g_return_val_if_fail (FF_IS_WINDOW (self), NULL);
  return self->info != NULL ? ensure_page (self, self->info) : NULL;
}

FfKeeper *
ff_window_get_keeper (FfWindow *self)
{
  g_return_val_if_fail (FF_IS_WINDOW (self), NULL);
  return self->keeper;
}

gboolean
ff_window_get_narrow (FfWindow *self)
{
  g_return_val_if_fail (FF_IS_WINDOW (self), FALSE);
  return ff_split_get_collapsed (self->split);
}

void
ff_window_say (FfWindow *self, const char *sentence, gboolean undo)
{
  g_autofree char *plain = NULL;
  AdwToast *toast;

  g_return_if_fail (FF_IS_WINDOW (self));
  /* A toast reads markup, and names of jobs may hold anything. */
  plain = g_markup_escape_text (sentence, -1);
  toast = adw_toast_new (plain);
  if (undo)
    {
      adw_toast_set_button_label (toast, _ ("_Undo"));
      adw_toast_set_action_name (toast, "win.undo");
      adw_toast_set_timeout (toast, 10);
    }
  /* What is said now is about what was just done; it does not wait behind the sentence before. */
  if (self->said != NULL)
    adw_toast_dismiss (self->said);
  g_set_weak_pointer (&self->said, toast);
  adw_toast_overlay_add_toast (self->toasts, toast);
}
