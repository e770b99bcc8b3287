/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-limit-form.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-columns.h"
#include "ff-entry.h"
#include "ff-flow.h"
#include "ff-limit-kind.h"
#include "ff-lines.h"
#include "ff-number.h"
#include "ff-pick.h"

/* The fields that are plain text, as the record has them. */
static const struct {
  const char *name;
  const char *label;
  gboolean wide;
} texts[] = {
  { "sheet", N_ ("Sheet"), TRUE },
  { "text", N_ ("In the crew’s words"), TRUE },
  /* Translators: what a limit counts from: "above the ground below". */
  { "datum", N_ ("Counted from"), FALSE },
  { "authority", N_ ("Who made the rule"), FALSE },
  { "source", N_ ("Document and section"), TRUE },
  { "permit", N_ ("Number of the permit"), FALSE },
  { "checked_on", N_ ("Checked on (YYYY-MM-DD)"), FALSE },
  { "checked_by", N_ ("Checked by"), FALSE },
  { "expires_on", N_ ("Expires on (YYYY-MM-DD)"), FALSE },
  { "note", N_ ("Note"), TRUE },
};

struct _FfLimitForm {
  GtkBox parent_instance;

  FfEntry *texts[G_N_ELEMENTS (texts)];
  FfPick *kind, *compare, *unit, *only_if, *rule, *from, *to;
  FfEntry *value, *value_to;
  GtkLabel *trouble;
  GtkWidget *remove;
};

G_DEFINE_FINAL_TYPE (FfLimitForm, ff_limit_form, GTK_TYPE_BOX)

enum { STORE, REMOVE, N_SIGNALS };

static guint signals[N_SIGNALS];

static const FfLimitKind *
kind_of (FfLimitForm *self)
{
  return ff_limit_kind_at ((guint) MAX (ff_pick_get_value (self->kind), 0));
}

static FfCompare
compare_of (FfLimitForm *self)
{
  return (FfCompare) MAX (ff_pick_get_value (self->compare), 0);
}

static guint
n_values (FfCompare compare)
{
  if (compare == FF_COMPARE_BETWEEN || compare == FF_COMPARE_WINDOW)
    return 2;
  return compare != FF_COMPARE_REQUIRED && compare != FF_COMPARE_PROHIBITED
         && compare != FF_COMPARE_INFORMATION;
}

/* ---- Showing ---- */

static void
show_needed (FfLimitForm *self)
{
  const FfCompare compare = compare_of (self);
  const guint n = n_values (compare);

  gtk_widget_set_visible (GTK_WIDGET (self->value), n > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->value_to), n > 1);
  gtk_widget_set_visible (GTK_WIDGET (self->unit),
                          n > 0 && ff_unit_at (kind_of (self)->dimension, 1) != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->from), compare == FF_COMPARE_WINDOW);
  gtk_widget_set_visible (GTK_WIDGET (self->to), compare == FF_COMPARE_WINDOW);
  ff_entry_set_label (self->value, n > 1 ? _ ("From") : _ ("Value"));
}

static void
show_units (FfLimitForm *self, const char *chosen)
{
  const FfUnit *unit;
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();
  int at = 0;

  for (guint i = 0; (unit = ff_unit_at (kind_of (self)->dimension, i)) != NULL; i++)
    {
      if (g_strcmp0 (unit->label, chosen) == 0)
        at = (int) i;
      g_ptr_array_add (labels, (gpointer) unit->label);
    }
  g_ptr_array_add (labels, NULL);
  ff_pick_set_texts (self->unit, (const char *const *) labels->pdata);
  ff_pick_set_value (self->unit, at);
}

static void
on_kind (FfLimitForm *self)
{
  show_units (self, NULL);
  show_needed (self);
}

/* A clock, or minutes before and after what the sun does. */
static gboolean
is_clock (FfCompare compare, FfAnchor anchor)
{
  return compare == FF_COMPARE_BY_TIME
         || (compare == FF_COMPARE_WINDOW && anchor == FF_ANCHOR_CLOCK);
}

static void
show_value (FfEntry *entry, double value, gboolean clock)
{
  g_autofree char *text = isnan (value) ? g_strdup ("")
                          : clock && value >= 0 ? ff_clock_format ((int) value)
                                                : ff_number_format (value, 4);

  ff_entry_reset (entry, text);
  ff_entry_complain (entry, NULL);
}

static int
index_of_kind (const char *token)
{
  const FfLimitKind *kind;

  for (guint i = 0; (kind = ff_limit_kind_at (i)) != NULL; i++)
    if (g_str_equal (kind->token, token))
      return (int) i;
  return 0;
}

void
ff_limit_form_show (FfLimitForm *self, const FfLimit *limit, gboolean is_new)
{
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      const FfField *field = ff_fields_find (&ff_limit_fields, texts[i].name);

      ff_entry_reset (self->texts[i], *ff_field_text (field, limit));
      ff_entry_complain (self->texts[i], NULL);
    }
  ff_pick_set_value (self->kind, index_of_kind (limit->kind));
  ff_pick_set_value (self->compare, (int) limit->compare);
  ff_pick_set_value (self->only_if, (int) limit->only_if);
  ff_pick_set_value (self->rule, (int) limit->rule);
  ff_pick_set_value (self->from, (int) limit->anchor_from);
  ff_pick_set_value (self->to, (int) limit->anchor_to);
  show_units (self, limit->unit);
  show_value (self->value, limit->value, is_clock (limit->compare, limit->anchor_from));
  show_value (self->value_to, limit->value_to, is_clock (limit->compare, limit->anchor_to));
  gtk_widget_set_visible (self->remove, !is_new);
  ff_limit_form_complain (self, NULL);
  show_needed (self);
}

void
ff_limit_form_complain (FfLimitForm *self, const char *sentence)
{
  g_autofree char *words = sentence != NULL ? g_strdup_printf ("✕ %s", sentence) : NULL;

  gtk_label_set_label (self->trouble, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), words != NULL);
}

/* ---- Reading ---- */

static gboolean
read_value (FfEntry *entry, gboolean wanted, gboolean clock, double *ret_value)
{
  const char *text = ff_entry_get_text (entry);
  g_autoptr (GError) error = NULL;
  int minutes;

  *ret_value = NAN;
  if (!wanted || *text == '\0')
    return TRUE;
  if (!clock)
    ff_number_parse (_ ("Value"), text, -1e6, 1e6, ret_value, &error);
  else if (ff_clock_parse (text, &minutes, &error))
    *ret_value = minutes;
  ff_entry_complain (entry, error != NULL ? error->message : NULL);
  return error == NULL;
}

static void
read_picks (FfLimitForm *self, FfLimit *limit)
{
  const FfUnit *unit
      = ff_unit_at (kind_of (self)->dimension, (guint) MAX (ff_pick_get_value (self->unit), 0));

  ff_set_text (&limit->kind, kind_of (self)->token);
  limit->compare = compare_of (self);
  limit->only_if = (FfOnlyIf) MAX (ff_pick_get_value (self->only_if), 0);
  limit->rule = (FfRule) MAX (ff_pick_get_value (self->rule), 0);
  limit->anchor_from = (FfAnchor) MAX (ff_pick_get_value (self->from), 0);
  limit->anchor_to = (FfAnchor) MAX (ff_pick_get_value (self->to), 0);
  ff_set_text (&limit->unit, n_values (limit->compare) > 0 && unit != NULL ? unit->label : "");
}

gboolean
ff_limit_form_read (FfLimitForm *self, FfLimit *limit)
{
  const guint n = n_values (compare_of (self));

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    ff_set_text (ff_field_text (ff_fields_find (&ff_limit_fields, texts[i].name), limit),
                 ff_entry_get_text (self->texts[i]));
  read_picks (self, limit);
  if (*limit->text == '\0')
    ff_set_text (&limit->text, ff_limit_kind_text (kind_of (self)));
  /* Once somebody looked it up it is theirs, and no example any more. */
  if (*limit->checked_on != '\0')
    limit->example = FALSE;
  return read_value (self->value, n > 0, is_clock (limit->compare, limit->anchor_from),
                     &limit->value)
         && read_value (self->value_to, n > 1, is_clock (limit->compare, limit->anchor_to),
                        &limit->value_to);
}

/* ---- The widget ---- */

static void
on_store (FfLimitForm *self)
{
  g_signal_emit (self, signals[STORE], 0);
}

static void
on_remove (FfLimitForm *self)
{
  g_signal_emit (self, signals[REMOVE], 0);
}

static gboolean
ff_limit_form_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_LIMIT_FORM (widget)->texts[0]));
}

static void
ff_limit_form_class_init (FfLimitFormClass *klass)
{
  GTK_WIDGET_CLASS (klass)->grab_focus = ff_limit_form_grab_focus;
  signals[STORE] = g_signal_new ("store", FF_TYPE_LIMIT_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
  signals[REMOVE] = g_signal_new ("remove", FF_TYPE_LIMIT_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 0);
}

static FfEntry *
field_new (FfLimitForm *self, FfColumns *columns, const char *label, gboolean wide)
{
  GtkWidget *entry = ff_entry_new (label, NULL);

  g_signal_connect_object (entry, "entered", G_CALLBACK (on_store), self, G_CONNECT_SWAPPED);
  ff_columns_append (columns, entry, wide);
  return FF_ENTRY (entry);
}

static FfPick *
pick_new (FfColumns *columns, const char *label, const FfNames *names)
{
  GtkWidget *pick = ff_pick_new (label, names);

  ff_columns_append (columns, pick, FALSE);
  return FF_PICK (pick);
}

static void
fill_kinds (FfLimitForm *self)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  const FfLimitKind *kind;

  for (guint i = 0; (kind = ff_limit_kind_at (i)) != NULL; i++)
    g_ptr_array_add (words, (gpointer) ff_limit_kind_text (kind));
  g_ptr_array_add (words, NULL);
  ff_pick_set_texts (self->kind, (const char *const *) words->pdata);
}

static void
add_buttons (FfLimitForm *self)
{
  GtkWidget *row = ff_flow_new (8, 8);
  GtkWidget *store = gtk_button_new_with_mnemonic (_ ("Store the ro_w · Enter"));

  self->remove = gtk_button_new_with_mnemonic (_ ("_Remove the row"));
  self->trouble = GTK_LABEL (ff_line_new ("", "attention"));
  g_signal_connect_object (store, "clicked", G_CALLBACK (on_store), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->remove, "clicked", G_CALLBACK (on_remove), self,
                           G_CONNECT_SWAPPED);
  ff_flow_append (FF_FLOW (row), store, -1);
  ff_flow_append (FF_FLOW (row), self->remove, -1);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->trouble));
  gtk_box_append (GTK_BOX (self), row);
}

static void
ff_limit_form_init (FfLimitForm *self)
{
  GtkWidget *columns = ff_columns_new (14, 2);
  FfColumns *fields = FF_COLUMNS (columns);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 10);
  for (guint i = 0; i < 2; i++)
    self->texts[i] = field_new (self, fields, _ (texts[i].label), texts[i].wide);
  self->kind = pick_new (fields, _ ("What is limited"), NULL);
  self->compare = pick_new (fields, _ ("How"), &ff_names_compare);
  self->value = field_new (self, fields, _ ("Value"), FALSE);
  self->value_to = field_new (self, fields, _ ("To"), FALSE);
  self->unit = pick_new (fields, _ ("Unit"), NULL);
  self->from = pick_new (fields, _ ("Start counts from"), &ff_names_anchor);
  self->to = pick_new (fields, _ ("End counts from"), &ff_names_anchor);
  /* Translators: when a limit applies: always, at night. */
  self->only_if = pick_new (fields, _ ("Applies"), &ff_names_only_if);
  self->rule = pick_new (fields, _ ("Whose rule"), &ff_names_rule);
  for (guint i = 2; i < G_N_ELEMENTS (texts); i++)
    self->texts[i] = field_new (self, fields, _ (texts[i].label), texts[i].wide);
  gtk_box_append (GTK_BOX (self), columns);
  add_buttons (self);
  fill_kinds (self);
  g_signal_connect_object (self->kind, "picked", G_CALLBACK (on_kind), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->compare, "picked", G_CALLBACK (show_needed), self,
                           G_CONNECT_SWAPPED);
}

GtkWidget *
ff_limit_form_new (void)
{
  return g_object_new (FF_TYPE_LIMIT_FORM, NULL);
}
