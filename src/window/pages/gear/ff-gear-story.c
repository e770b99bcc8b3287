/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-story.h"

#include <glib/gi18n-lib.h>

#include "ff-gear-parts.h"
#include "ff-gear-words.h"
#include "ff-item-event.h"

#define MOST_EVENTS 30

struct _FfGearStory {
  GtkWidget parent_instance;

  GtkWidget *sheet, *lines;
};

G_DEFINE_FINAL_TYPE (FfGearStory, ff_gear_story, GTK_TYPE_WIDGET)

/* "Sat 18 Sep 2027, 17:40 · MO", on the clock of this computer. */
static char *
when_and_who (const FfItemEvent *event)
{
  g_autoptr (GDateTime) at = g_date_time_new_from_unix_local (event->at);
  g_autofree char *when = at != NULL ? g_date_time_format (at, "%a %e %b %Y, %H:%M") : NULL;

  return g_strdup_printf ("%s%s%s", when != NULL ? when : "", *event->by != '\0' ? " · " : "",
                          event->by);
}

static char *
what_happened (const FfItemEvent *event)
{
  g_autofree char *state = ff_gear_state_words (event->state);
  g_autoptr (GString) words = g_string_new (state);

  if (*event->out_with != '\0')
    /* Translators: the item is with somebody. */
    g_string_append_printf (words, _ (", with %s"), event->out_with);
  if (*event->out_until != '\0')
    /* Translators: the item comes back on a day. */
    g_string_append_printf (words, _ (", back on %s"), event->out_until);
  g_string_append_printf (words, ": %s", event->why);
  return g_string_free (g_steal_pointer (&words), FALSE);
}

static void
add_event (FfGearStory *self, const FfItemEvent *event)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 1);
  g_autofree char *what = what_happened (event);
  g_autofree char *when = when_and_who (event);

  ff_gear_line_new (GTK_BOX (box), what, NULL);
  ff_gear_line_new (GTK_BOX (box), when, "soft");
  gtk_box_append (GTK_BOX (self->lines), box);
}

static void
ff_gear_story_dispose (GObject *object)
{
  g_clear_pointer (&FF_GEAR_STORY (object)->sheet, gtk_widget_unparent);
  G_OBJECT_CLASS (ff_gear_story_parent_class)->dispose (object);
}

static void
ff_gear_story_class_init (FfGearStoryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ff_gear_story_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
ff_gear_story_init (FfGearStory *self)
{
  self->sheet = ff_gear_sheet_new (_ ("Its story"));
  self->lines = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  gtk_box_append (GTK_BOX (self->sheet), self->lines);
  gtk_widget_set_parent (self->sheet, GTK_WIDGET (self));
}

void
ff_gear_story_show (FfGearStory *self, FfKeeper *keeper, const FfItem *item)
{
  FfStore *store = ff_keeper_store (keeper);
  g_autoptr (GPtrArray) events
      = store != NULL ? ff_item_events_load (store, item->id, MOST_EVENTS, NULL) : NULL;
  GtkWidget *child;

  g_return_if_fail (FF_IS_GEAR_STORY (self));
  while ((child = gtk_widget_get_first_child (self->lines)) != NULL)
    gtk_box_remove (GTK_BOX (self->lines), child);
  for (guint i = 0; events != NULL && i < events->len; i++)
    add_event (self, g_ptr_array_index (events, i));
  gtk_widget_set_visible (GTK_WIDGET (self), events != NULL && events->len > 0);
}
