/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pack-evening.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-columns.h"
#include "ff-entry.h"
#include "ff-lines.h"
#include "ff-pack-notes.h"
#include "ff-pick.h"

struct _FfPackEvening {
  GtkBox parent_instance;

  FfKeeper *keeper;
  GPtrArray *members; /* ids as the pick has them */
  GtkBox *words, *watches;
  FfEntry *date, *from, *to;
  FfPick *who;
};

G_DEFINE_FINAL_TYPE (FfPackEvening, ff_pack_evening, GTK_TYPE_BOX)

enum { CHANGED, TROUBLE, N_SIGNALS };

static guint signals[N_SIGNALS];

static GPtrArray *
load_watches (FfPackEvening *self)
{
  FfStore *store = ff_keeper_store (self->keeper);
  const FfJob *job = ff_keeper_job (self->keeper);
  GPtrArray *watches
      = store != NULL && job != NULL ? ff_watches_load (store, job->id, NULL) : NULL;

  return watches != NULL ? watches
                         : g_ptr_array_new_with_free_func ((GDestroyNotify) ff_watch_free);
}

static void
save (FfPackEvening *self, GPtrArray *watches)
{
  g_autoptr (GError) error = NULL;

  if (ff_keeper_save_watches (self->keeper, watches, &error))
    g_signal_emit (self, signals[CHANGED], 0);
  else if (error != NULL)
    g_signal_emit (self, signals[TROUBLE], 0, error->message);
}

/* ---- Entering a watch ---- */

static gint
compare_watches (gconstpointer a, gconstpointer b)
{
  const FfWatch *first = *(FfWatch *const *) a, *second = *(FfWatch *const *) b;
  int order = g_strcmp0 (first->date, second->date);

  return order != 0 ? order : first->from_clock - second->from_clock;
}

static gboolean
read_clock (FfEntry *entry, int *ret_clock)
{
  g_autoptr (GError) error = NULL;
  gboolean good = ff_clock_parse (ff_entry_get_text (entry), ret_clock, &error);

  ff_entry_complain (entry, good ? NULL : error->message);
  return good;
}

static gboolean
read_date (FfEntry *entry)
{
  g_autoptr (GError) error = NULL;
  FfDate date;
  gboolean good = ff_date_parse (ff_entry_get_text (entry), &date, &error);

  ff_entry_complain (entry, good ? NULL : error->message);
  return good;
}

static void
on_add (FfPackEvening *self)
{
  g_autoptr (GPtrArray) watches = load_watches (self);
  g_autoptr (FfWatch) watch = ff_watch_new ();
  int who = ff_pick_get_value (self->who);

  if (!read_date (self->date) || !read_clock (self->from, &watch->from_clock)
      || !read_clock (self->to, &watch->to_clock) || who < 0 || who >= (int) self->members->len)
    return;
  if (watch->to_clock <= watch->from_clock)
    watch->to_clock += 24 * 60;
  ff_set_text (&watch->date, ff_entry_get_text (self->date));
  ff_set_text (&watch->member_id, g_ptr_array_index (self->members, (guint) who));
  g_ptr_array_add (watches, g_steal_pointer (&watch));
  g_ptr_array_sort (watches, compare_watches);
  save (self, watches);
}

static void
on_remove (FfPackEvening *self, GtkWidget *button)
{
  g_autoptr (GPtrArray) watches = load_watches (self);
  guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "ff-index"));

  if (index < watches->len)
    g_ptr_array_remove_index (watches, index);
  save (self, watches);
}

/* ---- Showing ---- */

static void
add_turn (FfPackEvening *self, const FfChargeTurn *turn, GTimeZone *zone)
{
  g_autofree char *from = ff_instant_clock ((double) turn->from, zone);
  g_autofree char *to = ff_instant_clock ((double) turn->to, zone);
  g_autofree char *words
      = g_strdup_printf (_ ("%s–%s  %s, %s slot %u, attended by %s"), from, to, turn->battery,
                         turn->charger, turn->slot, turn->attended_by);

  gtk_box_append (self->words, ff_line_new (words, NULL));
}

static void
show_words (FfPackEvening *self, const FfChargeEvening *evening, GTimeZone *zone)
{
  ff_lines_clear (self->words);
  if (*evening->trouble != '\0')
    {
      GtkWidget *trouble = ff_line_new (evening->trouble, "heed");

      gtk_box_append (self->words, trouble);
    }
  if (*evening->words != '\0')
    gtk_box_append (self->words, ff_line_new (evening->words, "heading"));
  for (guint i = 0; i < evening->remarks->len; i++)
    gtk_box_append (self->words, ff_line_new (g_ptr_array_index (evening->remarks, i), NULL));
  for (guint i = 0; i < evening->turns->len; i++)
    add_turn (self, g_ptr_array_index (evening->turns, i), zone);
}

static void
add_watch (FfPackEvening *self, const FfWatch *watch, guint index)
{
  const FfMember *member = ff_keeper_find_member (self->keeper, watch->member_id);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *button = gtk_button_new_from_icon_name ("ff-remove-symbolic");
  g_autofree char *from = ff_clock_format (watch->from_clock);
  g_autofree char *to = ff_clock_format (watch->to_clock % (24 * 60));
  g_autofree char *words
      /* Translators: a watch at the charger: day, from, until, name. */
      = g_strdup_printf (_ ("%s, %s–%s: %s is at the charger"), watch->date, from, to,
                         member != NULL ? member->name : "");
  GtkWidget *label = ff_line_new (words, NULL);
  g_autofree char *spoken = g_strdup_printf (_ ("Take away: %s"), words);

  gtk_widget_set_hexpand (label, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                  -1);
  gtk_widget_set_tooltip_text (button, _ ("Take this watch away"));
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_object_set_data (G_OBJECT (button), "ff-index", GUINT_TO_POINTER (index));
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_remove), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (self->watches, row);
}

static void
show_watches (FfPackEvening *self)
{
  g_autoptr (GPtrArray) watches = load_watches (self);

  ff_lines_clear (self->watches);
  for (guint i = 0; i < watches->len; i++)
    add_watch (self, g_ptr_array_index (watches, i), i);
}

static void
show_people (FfPackEvening *self)
{
  GPtrArray *members = ff_keeper_members (self->keeper);
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  int chosen = ff_pick_get_value (self->who);

  g_ptr_array_set_size (self->members, 0);
  for (guint i = 0; i < members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (members, i);

      /* Whoever is at the keys is the likeliest. */
      if (chosen < 0 && g_strcmp0 (member->initials, ff_keeper_initials (self->keeper)) == 0)
        chosen = (int) i;
      g_ptr_array_add (names, member->name);
      g_ptr_array_add (self->members, g_strdup (member->id));
    }
  g_ptr_array_add (names, NULL);
  ff_pick_set_texts (self->who, (const char *const *) names->pdata);
  ff_pick_set_value (self->who, CLAMP (chosen, 0, (int) self->members->len - 1));
}

/* The evening before, when nothing is typed yet. */
static void
offer_date (FfPackEvening *self)
{
  const FfJob *job = ff_keeper_job (self->keeper);
  g_autoptr (GDateTime) day = NULL, before = NULL;
  g_autofree char *text = NULL;
  FfDate date;

  if (job == NULL || *ff_entry_get_text (self->date) != '\0'
      || !ff_date_parse (job->date, &date, NULL))
    return;
  day = g_date_time_new_utc (date.year, date.month, date.day, 12, 0, 0);
  before = g_date_time_add_days (day, -1);
  text = g_date_time_format (before, "%Y-%m-%d");
  ff_entry_set_text (self->date, text);
}

void
ff_pack_evening_show (FfPackEvening *self,
                      FfKeeper *keeper,
                      const FfChargeEvening *evening,
                      GTimeZone *zone)
{
  g_set_object (&self->keeper, keeper);
  show_words (self, evening, zone);
  show_watches (self);
  show_people (self);
  offer_date (self);
}

/* ---- The widget ---- */

static void
ff_pack_evening_dispose (GObject *object)
{
  FfPackEvening *self = FF_PACK_EVENING (object);

  g_clear_object (&self->keeper);
  g_clear_pointer (&self->members, g_ptr_array_unref);
  G_OBJECT_CLASS (ff_pack_evening_parent_class)->dispose (object);
}

static void
ff_pack_evening_class_init (FfPackEveningClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ff_pack_evening_dispose;
  signals[CHANGED] = g_signal_new ("changed", FF_TYPE_PACK_EVENING, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
  signals[TROUBLE] = g_signal_new ("trouble", FF_TYPE_PACK_EVENING, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static FfEntry *
field_new (FfPackEvening *self, FfColumns *columns, const char *label, const char *stored)
{
  GtkWidget *entry = ff_entry_new (label, NULL);

  ff_entry_set_text (FF_ENTRY (entry), stored);
  g_signal_connect_object (entry, "entered", G_CALLBACK (on_add), self, G_CONNECT_SWAPPED);
  ff_columns_append (columns, entry, FALSE);
  return FF_ENTRY (entry);
}

static void
ff_pack_evening_init (FfPackEvening *self)
{
  GtkWidget *columns = ff_columns_new (11, 3);
  GtkWidget *add = gtk_button_new_with_label (_ ("Enter this watch"));

  self->members = g_ptr_array_new_with_free_func (g_free);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 10);
  self->words = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  self->watches = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->words));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->watches));
  self->date = field_new (self, FF_COLUMNS (columns), _ ("Day"), "");
  self->from = field_new (self, FF_COLUMNS (columns), _ ("From"), "18:00");
  self->to = field_new (self, FF_COLUMNS (columns), _ ("Until"), "23:00");
  self->who = FF_PICK (ff_pick_new (_ ("Who attends"), NULL));
  ff_columns_append (FF_COLUMNS (columns), GTK_WIDGET (self->who), TRUE);
  gtk_box_append (GTK_BOX (self), columns);
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  g_signal_connect_object (add, "clicked", G_CALLBACK (on_add), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self), add);
}
