/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gap-list.h"

#include <glib/gi18n-lib.h>

#include "ff-day-gaps.h"

struct _FfGapList {
  GtkWidget parent_instance;

  GPtrArray *sentences; /* char*: what is on the screen */
};

G_DEFINE_FINAL_TYPE (FfGapList, ff_gap_list, GTK_TYPE_WIDGET)

enum { GO, N_SIGNALS };

static guint signals[N_SIGNALS];

typedef struct {
  const char *goal;
  gboolean is_page;
} Goal;

static void
on_clicked (GtkButton *button, FfGapList *self)
{
  const Goal *goal = g_object_get_data (G_OBJECT (button), "goal");

  g_signal_emit (self, signals[GO], 0, goal->goal, goal->is_page);
}

static GtkWidget *
words_new (const char *shape, const char *sentence)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *mark = gtk_label_new (shape), *words = gtk_label_new (sentence);

  gtk_widget_set_valign (mark, GTK_ALIGN_START);
  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (words), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (box), mark);
  gtk_box_append (GTK_BOX (box), words);
  return box;
}

static GtkWidget *
line_new (FfGapList *self, const FfDayGap *gap)
{
  GtkWidget *button = gtk_button_new ();
  Goal *goal = g_new0 (Goal, 1);

  goal->goal = gap->goal;
  goal->is_page = gap->is_page;
  gtk_button_set_child (GTK_BUTTON (button), words_new ("□", gap->sentence));
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "gap");
  g_object_set_data_full (G_OBJECT (button), "goal", goal, g_free);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  gap->sentence, -1);
  g_signal_connect (button, "clicked", G_CALLBACK (on_clicked), self);
  return button;
}

/* As long as there is no plan, what the sheets need is only counted. */
static guint
n_to_show (GPtrArray *gaps)
{
  guint n = 0;

  while (n < gaps->len && ((const FfDayGap *) g_ptr_array_index (gaps, n))->for_plan)
    n++;
  return n > 0 ? n : gaps->len;
}

static GtkWidget *
rest_new (guint n)
{
  g_autofree char *words
      = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Then %u more for the sheets.",
                                      "Then %u more for the sheets.", n),
                         n);
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "soft");
  return label;
}

static gboolean
is_shown (FfGapList *self, GPtrArray *gaps)
{
  gboolean same = self->sentences != NULL && self->sentences->len == gaps->len;

  for (guint i = 0; same && i < gaps->len; i++)
    same = g_str_equal (g_ptr_array_index (self->sentences, i),
                        ((const FfDayGap *) g_ptr_array_index (gaps, i))->sentence);
  return same;
}

static void
clear (FfGapList *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
}

static void
ff_gap_list_dispose (GObject *object)
{
  clear (FF_GAP_LIST (object));
  g_clear_pointer (&FF_GAP_LIST (object)->sentences, g_ptr_array_unref);
  G_OBJECT_CLASS (ff_gap_list_parent_class)->dispose (object);
}

static void
ff_gap_list_class_init (FfGapListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ff_gap_list_dispose;
  signals[GO] = g_signal_new ("go", FF_TYPE_GAP_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 2, G_TYPE_STRING, G_TYPE_BOOLEAN);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
}

static void
ff_gap_list_init (FfGapList *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
}

/* The buttons are made anew only when the words have changed: the focus may be on one of them. */
void
ff_gap_list_show (FfGapList *self, GPtrArray *gaps)
{
  const guint shown = n_to_show (gaps);

  g_return_if_fail (FF_IS_GAP_LIST (self));
  if (is_shown (self, gaps))
    return;
  clear (self);
  g_clear_pointer (&self->sentences, g_ptr_array_unref);
  self->sentences = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < gaps->len; i++)
    {
      const FfDayGap *gap = g_ptr_array_index (gaps, i);

      g_ptr_array_add (self->sentences, g_strdup (gap->sentence));
      if (i < shown)
        gtk_widget_set_parent (line_new (self, gap), GTK_WIDGET (self));
    }
  if (shown < gaps->len)
    gtk_widget_set_parent (rest_new (gaps->len - shown), GTK_WIDGET (self));
  if (gaps->len == 0)
    gtk_widget_set_parent (words_new ("■", _ ("Nothing on this page is open.")), GTK_WIDGET (self));
}
