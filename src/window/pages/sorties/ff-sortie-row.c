/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sortie-row.h"

#include <glib/gi18n-lib.h>

#include "ff-block.h"
#include "ff-civil.h"
#include "ff-flow.h"
#include "ff-say.h"
#include "ff-sortie-words.h"

struct _FfSortieRow {
  GtkListBoxRow parent_instance;

  GtkWidget *off_box, *land_box, *filter_box, *locked;
  GtkLabel *number, *off, *land, *battery, *stops, *engraving, *strength, *rule, *why, *trim;
  GtkLabel *turn_round;
  GtkWidget *turn_round_box;
  FfBlock *block;
  GtkBox *shots;
  char *shots_words; /* all that stands in it */
  GtkWidget *detail, *arrow;
};

G_DEFINE_FINAL_TYPE (FfSortieRow, ff_sortie_row, GTK_TYPE_LIST_BOX_ROW)

/* A text in the column of shots that wraps rather than pushes the row wider. */
static GtkWidget *
add_text (GtkBox *box, const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (box, label);
  return label;
}

/* What is only shown when the row is open. */
static void
add_detail (FfSortieRow *self, GtkBox *box, const char *text)
{
  GtkWidget *label;

  if (text[0] == '\0')
    return;
  label = add_text (box, text, "soft");
  g_object_bind_property (self->detail, "visible", label, "visible", G_BINDING_SYNC_CREATE);
}

static void
add_take (FfSortieRow *self, const char *words)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_auto (GStrv) lines = g_strsplit (words, "\n", 5);

  add_text (GTK_BOX (box), lines[0], "shot");
  add_text (GTK_BOX (box), lines[1], NULL);
  if (lines[2][0] != '\0') /* which way the wind takes it: the pilot's to know with the line shut */
    add_text (GTK_BOX (box), lines[2], "run");
  add_detail (self, GTK_BOX (box), lines[3]);
  add_detail (self, GTK_BOX (box), lines[4]);
  gtk_box_append (self->shots, box);
}

/* What a forecast crosses stands with the line shut: it is the pilot's to know. */
static char *
crossed_words (const GPtrArray *crossed)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; crossed != NULL && i < crossed->len; i++)
    g_string_append_printf (words, "%s✕ %s", i > 0 ? " " : "",
                            (const char *) g_ptr_array_index (crossed, i));
  return g_string_free (words, FALSE);
}

/* One line of text for each of a take's labels. */
static char *
take_words (const FfPlanTake *take, GTimeZone *zone, const GPtrArray *crossed)
{
  g_autofree char *limits = crossed_words (crossed);
  g_autofree char *heeded = ff_say_two (limits, " ", take->run != NULL ? take->run : "");
  g_autofree char *shot = ff_sortie_shot_words (take, zone);
  g_autofree char *settings = ff_sortie_settings_words (take);
  g_autofree char *light = ff_sortie_light_words (take);
  g_autofree char *remarks = ff_say_sentences (take->remarks);

  return g_strjoin ("\n", g_strdelimit (shot, "\n", ' '), settings,
                    heeded, light, remarks, NULL);
}

/* Labels that say the same as before are left alone: making and measuring them anew at each
 * keystroke is what takes the time. */
static void
show_takes (FfSortieRow *self,
            const FfPlanLine *line,
            GTimeZone *zone,
            const GPtrArray *crossed)
{
  g_auto (GStrv) takes = g_new0 (char *, line->takes->len + 1);
  g_autofree char *words = NULL;
  GtkWidget *child;

  for (guint i = 0; i < line->takes->len; i++)
    takes[i] = take_words (g_ptr_array_index (line->takes, i), zone, i == 0 ? crossed : NULL);
  words = g_strjoinv ("\f", takes);
  if (g_strcmp0 (words, self->shots_words) == 0)
    return;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->shots))) != NULL)
    gtk_box_remove (self->shots, child);
  for (guint i = 0; takes[i] != NULL; i++)
    add_take (self, takes[i]);
  g_free (self->shots_words);
  self->shots_words = g_steal_pointer (&words);
}

static void
set_text (GtkLabel *label, const char *text)
{
  gtk_label_set_label (label, text);
  gtk_widget_set_visible (GTK_WIDGET (label), text[0] != '\0');
}

static void
show_filter (FfSortieRow *self, const FfPlanLine *line)
{
  g_autofree char *stops = ff_say_stops (line);
  g_autofree char *engraving = ff_say_engraving (line);
  g_autofree char *strength = line->filter_stops > 0 ? ff_say_strength (line->filter_stops)
                                                     : g_strdup ("");

  ff_block_set_stops (self->block, line->filter_stops);
  gtk_label_set_label (self->stops, stops);
  set_text (self->engraving, engraving);
  set_text (self->strength, strength);
}

static void
show_open (FfSortieRow *self)
{
  gboolean open = ff_sortie_row_get_open (self);

  gtk_image_set_from_icon_name (GTK_IMAGE (self->arrow),
                                open ? "pan-up-symbolic" : "pan-down-symbolic");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_EXPANDED, open, -1);
}

/* Overrides */

static void
ff_sortie_row_finalize (GObject *object)
{
  g_free (FF_SORTIE_ROW (object)->shots_words);
  G_OBJECT_CLASS (ff_sortie_row_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, off_box);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, locked);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, land_box);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, filter_box);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, number);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, off);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, land);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, battery);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, block);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, stops);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, engraving);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, strength);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, shots);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, detail);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, rule);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, why);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, trim);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, turn_round);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, turn_round_box);
  gtk_widget_class_bind_template_child (widget_class, FfSortieRow, arrow);
}

static void
ff_sortie_row_class_init (FfSortieRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = ff_sortie_row_finalize;
  g_type_ensure (FF_TYPE_BLOCK);
  g_type_ensure (FF_TYPE_FLOW);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-sortie-row.ui");
  bind_children (widget_class);
}

static void
ff_sortie_row_init (FfSortieRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  show_open (self);
}

/* Public */

GtkWidget *
ff_sortie_row_new (const FfSortieColumns *columns)
{
  FfSortieRow *self = g_object_new (FF_TYPE_SORTIE_ROW, NULL);

  gtk_size_group_add_widget (columns->number, GTK_WIDGET (self->number));
  gtk_size_group_add_widget (columns->off, self->off_box);
  gtk_size_group_add_widget (columns->land, self->land_box);
  gtk_size_group_add_widget (columns->filter, self->filter_box);
  return GTK_WIDGET (self);
}

void
ff_sortie_row_show (FfSortieRow *self,
                    const FfPlanLine *line,
                    GTimeZone *zone,
                    const GPtrArray *crossed,
                    gboolean locked)
{
  g_autofree char *number = g_strdup_printf ("%d", line->line);
  g_autofree char *off = ff_instant_clock ((double) line->off_by, zone);
  g_autofree char *land = ff_instant_clock ((double) line->land_by, zone);
  g_autofree char *spoken = ff_sortie_spoken (line, zone);
  /* Translators: read aloud after a sortie that the crew has decided about. */
  g_autofree char *words = g_strconcat (spoken, locked ? _ (". Locked.") : NULL, NULL);

  g_return_if_fail (FF_IS_SORTIE_ROW (self));
  gtk_label_set_label (self->number, number);
  gtk_label_set_label (self->off, off);
  gtk_label_set_label (self->land, land);
  gtk_label_set_label (self->battery, line->battery);
  gtk_widget_set_visible (self->locked, locked);
  set_text (self->rule, line->land_rule != NULL ? line->land_rule : "");
  gtk_label_set_label (self->why, line->why);
  gtk_label_set_label (self->trim, line->trim);
  gtk_label_set_label (self->turn_round, line->turn_round);
  gtk_widget_set_visible (self->turn_round_box, *line->turn_round != '\0');
  show_filter (self, line);
  show_takes (self, line, zone, crossed);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                  -1);
}

void
ff_sortie_row_set_open (FfSortieRow *self, gboolean open)
{
  g_return_if_fail (FF_IS_SORTIE_ROW (self));
  gtk_widget_set_visible (self->detail, open);
  show_open (self);
}

gboolean
ff_sortie_row_get_open (FfSortieRow *self)
{
  g_return_val_if_fail (FF_IS_SORTIE_ROW (self), FALSE);
  return gtk_widget_get_visible (self->detail);
}

void
ff_sortie_row_set_chosen (FfSortieRow *self, gboolean chosen)
{
  g_return_if_fail (FF_IS_SORTIE_ROW (self));
  if (chosen)
    gtk_widget_add_css_class (GTK_WIDGET (self), "chosen");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "chosen");
}
