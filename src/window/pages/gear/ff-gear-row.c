/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-block.h"
#include "ff-gear-words.h"
#include "ff-number.h"

struct _FfGearRow {
  GtkListBoxRow parent_instance;

  char *id;
  FfKind kind;
  FfBlock *block;
  GtkLabel *label, *title, *state, *where;
};

G_DEFINE_FINAL_TYPE (FfGearRow, ff_gear_row, GTK_TYPE_LIST_BOX_ROW)

/* A filter whose real strength is known, beside what is written on it. */
static char *
measured_words (const FfItem *item)
{
  g_autofree char *stops = ff_number_format (item->measured_stops, 2);

  if (item->kind != FF_KIND_FILTER || !isfinite (item->measured_stops))
    return g_strdup ("");
  /* Translators: the strength of a filter as measured, in stops: "measured 3.1". */
  return g_strdup_printf (_ ("measured %s"), stops);
}

static void
show_title (FfGearRow *self, const FfItem *item)
{
  const char *title = ff_gear_title (item);
  g_autofree char *measured = measured_words (item);
  g_autofree char *words
      = g_strconcat (measured, title[0] != '\0' && measured[0] != '\0' ? ", " : "", title, NULL);

  gtk_label_set_label (self->title, words);
  gtk_widget_set_visible (GTK_WIDGET (self->title), words[0] != '\0');
}

static void
show_where (FfGearRow *self, const FfItem *item)
{
  g_autofree char *words = NULL;

  if (item->case_label[0] != '\0')
    words = g_strdup_printf (_ ("case %s"), item->case_label);
  gtk_label_set_label (self->where, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->where), words != NULL);
}

static void
show_state (FfGearRow *self, const FfItem *item)
{
  g_autofree char *state = ff_gear_state_words (item->state);
  g_autofree char *reason = ff_gear_state_reason (item, TRUE);
  g_autofree char *words = NULL;

  if (item->state == FF_STATE_SERVICEABLE || reason[0] == '\0')
    words = g_strdup (state);
  else
    words = g_strdup_printf ("%s, %s", state, reason);
  gtk_label_set_label (self->state, words);
  if (item->state == FF_STATE_SERVICEABLE)
    gtk_widget_remove_css_class (GTK_WIDGET (self), "held");
  else
    gtk_widget_add_css_class (GTK_WIDGET (self), "held");
}

static void
describe (FfGearRow *self, const FfItem *item)
{
  g_autofree char *strength
      = item->kind == FF_KIND_FILTER ? ff_gear_strength (item->stops, item->stops_to) : NULL;
  g_autofree char *words
      = g_strdup_printf ("%s, %s, %s%s%s", item->label,
                         item->title[0] != '\0' ? item->title
                                                : ff_name_text (&ff_names_kind, (int) item->kind),
                         gtk_label_get_label (self->state), strength != NULL ? ", " : "",
                         strength != NULL ? strength : "");

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}

/* Overrides */

static void
ff_gear_row_finalize (GObject *object)
{
  g_free (FF_GEAR_ROW (object)->id);
  G_OBJECT_CLASS (ff_gear_row_parent_class)->finalize (object);
}

static void
ff_gear_row_class_init (FfGearRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = ff_gear_row_finalize;
  g_type_ensure (FF_TYPE_BLOCK);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-gear-row.ui");
  gtk_widget_class_bind_template_child (widget_class, FfGearRow, block);
  gtk_widget_class_bind_template_child (widget_class, FfGearRow, label);
  gtk_widget_class_bind_template_child (widget_class, FfGearRow, title);
  gtk_widget_class_bind_template_child (widget_class, FfGearRow, state);
  gtk_widget_class_bind_template_child (widget_class, FfGearRow, where);
}

static void
ff_gear_row_init (FfGearRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* Public */

GtkWidget *
ff_gear_row_new (const FfItem *item)
{
  FfGearRow *self = g_object_new (FF_TYPE_GEAR_ROW, NULL);

  ff_gear_row_show (self, item);
  return GTK_WIDGET (self);
}

void
ff_gear_row_show (FfGearRow *self, const FfItem *item)
{
  g_return_if_fail (FF_IS_GEAR_ROW (self));
  ff_set_text (&self->id, item->id);
  self->kind = item->kind;
  gtk_label_set_label (self->label, item->label);
  /* Where room is short the title gives way, not the label. */
  gtk_label_set_ellipsize (self->label,
                           g_utf8_strlen (item->label, -1) <= FF_GEAR_LABEL_LENGTH
                               ? PANGO_ELLIPSIZE_NONE
                               : PANGO_ELLIPSIZE_END);
  gtk_widget_set_visible (GTK_WIDGET (self->block), item->kind == FF_KIND_FILTER);
  if (item->kind == FF_KIND_FILTER)
    ff_block_set_stops (self->block, item->stops_to);
  show_title (self, item);
  show_where (self, item);
  show_state (self, item);
  describe (self, item);
}

const char *
ff_gear_row_get_id (FfGearRow *self)
{
  g_return_val_if_fail (FF_IS_GEAR_ROW (self), NULL);
  return self->id;
}

FfKind
ff_gear_row_get_kind (FfGearRow *self)
{
  g_return_val_if_fail (FF_IS_GEAR_ROW (self), FF_KIND_OTHER);
  return self->kind;
}
