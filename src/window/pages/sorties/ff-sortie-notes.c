/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sortie-notes.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-block.h"
#include "ff-flow.h"
#include "ff-item.h"
#include "ff-lines.h"
#include "ff-sortie-words.h"

/* Whether a container would say the same again: then it is left alone, because making and measuring
 * labels anew at each keystroke is what takes the time. Takes the words. */
static gboolean
says_already (gpointer container, char *words)
{
  gboolean same = g_strcmp0 (g_object_get_data (container, "ff-words"), words) == 0;

  g_object_set_data_full (container, "ff-words", words, g_free);
  return same;
}

/* All of some texts as one. */
static void
add_words (GString *words, const GPtrArray *texts)
{
  for (guint i = 0; i < texts->len; i++)
    g_string_append_printf (words, "%s\n", (const char *) g_ptr_array_index (texts, i));
  g_string_append_c (words, '\f');
}

/* What is open: a shape, a word, the sentence. */
static void
add_note (GtkBox *box, const char *shape, const char *word, const char *sentence)
{
  GtkWidget *note = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *mark = gtk_label_new (shape);

  gtk_widget_set_valign (mark, GTK_ALIGN_START);
  gtk_widget_add_css_class (mark, "note-mark");
  gtk_widget_set_hexpand (texts, TRUE);
  gtk_box_append (GTK_BOX (texts), ff_line_new (word, "note-word"));
  gtk_box_append (GTK_BOX (texts), ff_line_new (sentence, NULL));
  gtk_box_append (GTK_BOX (note), mark);
  gtk_box_append (GTK_BOX (note), texts);
  gtk_widget_add_css_class (note, "note");
  gtk_box_append (box, note);
}

/* Shots with the same reason share a note: a crowded day has many. */
static void
add_miss (GtkBox *box, const FfDayPlan *plan, guint index)
{
  const FfPlanMiss *miss = g_ptr_array_index (plan->missed, index);
  g_autofree char *shots = ff_sortie_missed_words (plan, index);
  /* Translators: a shot can't be flown; then the reason. */
  g_autofree char *sentence = g_strdup_printf (_ ("Not flown: %s"), miss->reason);

  if (shots != NULL)
    add_note (box, "✕", shots, sentence);
}

static char *
open_words (const FfDayPlan *plan, const GPtrArray *outside)
{
  GString *words = g_string_new (NULL);

  add_words (words, outside);
  for (guint i = 0; i < plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, i);

      g_string_append_printf (words, "%s\n%s\n%s\n", miss->shot, miss->title, miss->reason);
    }
  add_words (words, plan->clashes);
  return g_string_free (words, FALSE);
}

void
ff_sortie_notes_show_open (GtkBox *box, const FfAnswer *answer)
{
  const FfDayPlan *plan = answer->plan;
  const GPtrArray *outside = answer->limits->outside;

  if (says_already (box, open_words (plan, outside)))
    return;
  ff_lines_clear (box);
  for (guint i = 0; i < outside->len; i++)
    add_note (box, "✕", _ ("Outside a limit"), g_ptr_array_index (outside, i));
  for (guint i = 0; i < plan->missed->len; i++)
    add_miss (box, plan, i);
  for (guint i = 0; i < plan->clashes->len; i++)
    /* Translators: two things that don't go together; the sentence follows. */
    add_note (box, "□", _ ("Clash"), g_ptr_array_index (plan->clashes, i));
  gtk_widget_set_visible (GTK_WIDGET (box),
                          outside->len + plan->missed->len + plan->clashes->len > 0);
}

void
ff_sortie_notes_show_sentences (GtkBox *box, const GPtrArray *sentences)
{
  GString *words = g_string_new (NULL);

  add_words (words, sentences);
  if (says_already (box, g_string_free (words, FALSE)))
    return;
  ff_lines_clear (box);
  for (guint i = 0; i < sentences->len; i++)
    gtk_box_append (box, ff_line_new (g_ptr_array_index (sentences, i), NULL));
  gtk_widget_set_visible (GTK_WIDGET (box), sentences->len > 0);
}

/* The charger */

static void
add_charge (GtkBox *box, const FfPlanCharge *charge, const FfDayPlan *plan, GTimeZone *zone)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *battery = gtk_label_new (charge->battery);
  g_autofree char *promise = ff_sortie_charge_words (charge, zone);
  g_autofree char *needed = ff_sortie_needed_words (charge, plan, zone);

  gtk_widget_set_valign (battery, GTK_ALIGN_START);
  gtk_widget_add_css_class (battery, "battery");
  gtk_widget_set_hexpand (texts, TRUE);
  if (needed[0] != '\0')
    gtk_box_append (GTK_BOX (texts), ff_line_new (needed, "needed"));
  gtk_box_append (GTK_BOX (texts), ff_line_new (promise, needed[0] != '\0' ? NULL : "soft"));
  gtk_box_append (GTK_BOX (row), battery);
  gtk_box_append (GTK_BOX (row), texts);
  gtk_box_append (box, row);
}

static char *
charges_words (const FfDayPlan *plan, GTimeZone *zone)
{
  GString *words = g_string_new ("\f");

  for (guint i = 0; i < plan->charges->len; i++)
    {
      const FfPlanCharge *charge = g_ptr_array_index (plan->charges, i);
      g_autofree char *promise = ff_sortie_charge_words (charge, zone);
      g_autofree char *needed = ff_sortie_needed_words (charge, plan, zone);

      g_string_append_printf (words, "%s\n%s\n%s\n", charge->battery, promise, needed);
    }
  return g_string_free (words, FALSE);
}

void
ff_sortie_notes_show_charges (GtkBox *box, const FfDayPlan *plan, GTimeZone *zone)
{
  if (says_already (box, charges_words (plan, zone)))
    return;
  ff_lines_clear (box);
  for (guint i = 0; i < plan->charges->len; i++)
    add_charge (box, g_ptr_array_index (plan->charges, i), plan, zone);
  if (plan->charges->len == 0)
    gtk_box_append (box, ff_line_new (_ ("No battery is charged between the sorties of this plan."),
                                   "soft"));
}

/* The bag */

static double
stops_of (const char *label, const GPtrArray *items)
{
  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (item->kind == FF_KIND_FILTER && g_str_equal (item->label, label))
        return isfinite (item->measured_stops) ? item->measured_stops : item->stops;
    }
  return NAN;
}

static GtkWidget *
filter_new (const char *label, const GPtrArray *items)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *name = gtk_label_new (label);

  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (name), 16);
  gtk_box_append (GTK_BOX (box), ff_block_new (stops_of (label, items)));
  gtk_box_append (GTK_BOX (box), name);
  return box;
}

/* One thing that may be needed, and when: "thin cloud: F, H". */
static void
add_in_case (GtkBox *box, const FfBagItem *item, const GPtrArray *items)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  gtk_box_append (GTK_BOX (row), item->kind == FF_KIND_FILTER ? filter_new (item->label, items)
                                                              : ff_line_new (item->label, NULL));
  gtk_box_append (GTK_BOX (row), ff_line_new (item->why, "soft"));
  gtk_box_append (box, row);
}

static void
add_needed (GtkBox *box, const FfBag *bag, const GPtrArray *items)
{
  GtkWidget *flow = ff_flow_new (20, 8);

  if (bag->needed->len == 0)
    return;
  gtk_box_append (box, ff_line_new (_ ("Needed"), "field-label"));
  for (guint i = 0; i < bag->needed->len; i++)
    {
      const FfBagItem *item = g_ptr_array_index (bag->needed, i);

      ff_flow_append (FF_FLOW (flow),
                      item->kind == FF_KIND_FILTER ? filter_new (item->label, items)
                                                   : ff_line_new (item->label, NULL),
                      -1);
    }
  gtk_box_append (box, flow);
}

static void
add_strengths (GString *words, const GPtrArray *labels, const GPtrArray *items)
{
  for (guint i = 0; i < labels->len; i++)
    g_string_append_printf (words, "%.2f ", stops_of (g_ptr_array_index (labels, i), items));
}

static char *
bag_words (const FfBag *bag, const FfDayPlan *plan, const GPtrArray *items)
{
  GString *words = g_string_new ("\f");

  for (guint i = 0; i < bag->needed->len; i++)
    g_string_append_printf (words, "%s\n",
                            ((const FfBagItem *) g_ptr_array_index (bag->needed, i))->label);
  for (guint i = 0; i < bag->in_case->len; i++)
    {
      const FfBagItem *item = g_ptr_array_index (bag->in_case, i);

      g_string_append_printf (words, "%s %s\n", item->label, item->why);
    }
  add_strengths (words, plan->bag_needed, items);
  add_strengths (words, plan->bag_in_case, items);
  return g_string_free (words, FALSE);
}

void
ff_sortie_notes_show_bag (GtkBox *box, const FfDayPlan *plan, const GPtrArray *items)
{
  const FfBag *bag = plan->cases->bag;

  if (says_already (box, bag_words (bag, plan, items)))
    return;
  ff_lines_clear (box);
  add_needed (box, bag, items);
  if (bag->in_case->len > 0)
    gtk_box_append (box, ff_line_new (_ ("In case the day turns out otherwise"), "field-label"));
  for (guint i = 0; i < bag->in_case->len; i++)
    add_in_case (box, g_ptr_array_index (bag->in_case, i), items);
  if (bag->needed->len + bag->in_case->len == 0)
    gtk_box_append (box, ff_line_new (_ ("This plan needs nothing."), "soft"));
}

/* The cost */

static void
add_part (GtkGrid *grid, int part, double cost, int row)
{
  GtkWidget *name = ff_line_new (ff_name_text (&ff_names_part, part), NULL);
  g_autofree char *text = g_strdup_printf ("%.1f", cost);
  GtkWidget *value = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (value), 1);
  gtk_grid_attach (grid, name, 0, row, 1, 1);
  gtk_grid_attach (grid, value, 1, row, 1, 1);
}

void
ff_sortie_notes_show_cost (GtkGrid *grid, const FfDayPlan *plan)
{
  int row = 0;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (grid))) != NULL)
    gtk_grid_remove (grid, child);
  for (int part = 0; part < FF_N_PARTS; part++)
    if (plan->parts[part] > 0.05)
      add_part (grid, part, plan->parts[part], row++);
}
