/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pair-list.h"

#include <glib/gi18n-lib.h>

#include "ff-entry.h"
#include "ff-flow.h"

struct _FfPairList {
  GtkWidget parent_instance;

  GtkBox *rows;
  FfEntry *add;
  char *labels[2];
  char *hint;      /* stands in an empty second field */
  int first_width; /* characters; 0: each field has a line of its own */
  GPtrArray *all;  /* Row, borrowed from the box */
};

typedef struct {
  FfPairList *list;
  GtkWidget *widget;
  FfEntry *parts[2];
} Row;

G_DEFINE_FINAL_TYPE (FfPairList, ff_pair_list, GTK_TYPE_WIDGET)

enum {
  PROP_0,
  PROP_FIRST_LABEL,
  PROP_SECOND_LABEL,
  PROP_ADD_LABEL,
  PROP_FIRST_WIDTH,
  PROP_HINT,
  N_PROPS
};
enum { TYPED, REMOVED, ADDED, N_SIGNALS };

static GParamSpec *properties[N_PROPS];
static guint signals[N_SIGNALS];

/* ---- Rows ---- */

static guint
index_of (const Row *row)
{
  guint index = 0;

  if (!g_ptr_array_find (row->list->all, row, &index))
    g_return_val_if_reached (0);
  return index;
}

static void
on_typed_first (FfEntry *entry, const char *text, gpointer row)
{
  g_signal_emit (((Row *) row)->list, signals[TYPED], 0, index_of (row), 0, text);
}

static void
on_typed_second (FfEntry *entry, const char *text, gpointer row)
{
  g_signal_emit (((Row *) row)->list, signals[TYPED], 0, index_of (row), 1, text);
}

static void
on_remove (GtkButton *button, gpointer row)
{
  g_signal_emit (((Row *) row)->list, signals[REMOVED], 0, index_of (row));
}

static FfEntry *
part_new (Row *row, guint part, GCallback typed)
{
  FfEntry *entry = FF_ENTRY (ff_entry_new (row->list->labels[part], NULL));

  g_object_set (entry, "label-shown", FALSE, NULL);
  g_signal_connect (entry, "typed", typed, row);
  return entry;
}

static GtkWidget *
remove_button_new (Row *row)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("ff-remove-symbolic");

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (button, _ ("Take this line out"));
  g_signal_connect (button, "clicked", G_CALLBACK (on_remove), row);
  return button;
}

static Row *
row_new (FfPairList *self)
{
  Row *row = g_new0 (Row, 1);
  GtkWidget *fields = ff_flow_new (12, 4);

  row->list = self;
  row->widget = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  row->parts[0] = part_new (row, 0, G_CALLBACK (on_typed_first));
  row->parts[1] = part_new (row, 1, G_CALLBACK (on_typed_second));
  if (self->first_width > 0)
    ff_entry_set_width (row->parts[0], self->first_width);
  else
    gtk_widget_set_hexpand (GTK_WIDGET (row->parts[0]), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (row->parts[1]), TRUE);
  ff_flow_append (FF_FLOW (fields), GTK_WIDGET (row->parts[0]), self->first_width > 0 ? -1 : 300);
  ff_flow_append (FF_FLOW (fields), GTK_WIDGET (row->parts[1]), self->first_width > 0 ? 180 : 300);
  gtk_widget_add_css_class (GTK_WIDGET (row->parts[0]), "first");
  gtk_widget_add_css_class (GTK_WIDGET (row->parts[1]), "second");
  g_object_set (row->parts[1], "placeholder", self->hint, NULL);
  gtk_widget_set_hexpand (fields, TRUE);
  gtk_widget_add_css_class (row->widget, "pair");
  gtk_box_append (GTK_BOX (row->widget), fields);
  gtk_box_append (GTK_BOX (row->widget), remove_button_new (row));
  g_object_set_data_full (G_OBJECT (row->widget), "row", row, g_free);
  return row;
}

/* The spoken name of the button says which line goes. */
static void
name_row (Row *row, const char *first, const char *second)
{
  GtkWidget *button = gtk_widget_get_last_child (row->widget);
  g_autofree char *name = g_strdup_printf (_ ("Take out: %s %s"), first, second);

  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

/* ---- Callbacks ---- */

static void
on_add_typed (FfPairList *self, const char *text)
{
  /* Nothing of the store stands behind this line: what is typed is what it holds. */
  ff_entry_set_text (self->add, text);
  ff_entry_complain (self->add, NULL);
}

static void
on_add (FfPairList *self)
{
  g_autofree char *text = g_strstrip (g_strdup (ff_entry_get_text (self->add)));

  if (text[0] != '\0')
    g_signal_emit (self, signals[ADDED], 0, text);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->add));
}

/* ---- Overrides ---- */

static gboolean
ff_pair_list_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_PAIR_LIST (widget)->add));
}

static void
ff_pair_list_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FfPairList *self = FF_PAIR_LIST (object);

  switch (id)
    {
    case PROP_FIRST_LABEL:
    case PROP_SECOND_LABEL:
      g_free (self->labels[id - PROP_FIRST_LABEL]);
      self->labels[id - PROP_FIRST_LABEL] = g_value_dup_string (value);
      break;
    case PROP_ADD_LABEL:
      ff_entry_set_label (self->add, g_value_get_string (value));
      break;
    case PROP_HINT:
      g_free (self->hint);
      self->hint = g_value_dup_string (value);
      break;
    case PROP_FIRST_WIDTH:
      self->first_width = g_value_get_int (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
ff_pair_list_dispose (GObject *object)
{
  FfPairList *self = FF_PAIR_LIST (object);
  GtkWidget *child;

  g_ptr_array_set_size (self->all, 0);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ff_pair_list_parent_class)->dispose (object);
}

static void
ff_pair_list_finalize (GObject *object)
{
  FfPairList *self = FF_PAIR_LIST (object);

  g_ptr_array_unref (self->all);
  g_free (self->labels[0]);
  g_free (self->labels[1]);
  g_free (self->hint);
  G_OBJECT_CLASS (ff_pair_list_parent_class)->finalize (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags flags = G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS;

  properties[PROP_FIRST_LABEL] = g_param_spec_string ("first-label", NULL, NULL, "", flags);
  properties[PROP_SECOND_LABEL] = g_param_spec_string ("second-label", NULL, NULL, "", flags);
  properties[PROP_ADD_LABEL] = g_param_spec_string ("add-label", NULL, NULL, "", flags);
  properties[PROP_HINT] = g_param_spec_string ("hint", NULL, NULL, "", flags);
  properties[PROP_FIRST_WIDTH] = g_param_spec_int ("first-width", NULL, NULL, 0, 40, 0, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
install_signals (void)
{
  signals[TYPED] = g_signal_new ("typed", FF_TYPE_PAIR_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 3, G_TYPE_UINT, G_TYPE_UINT, G_TYPE_STRING);
  signals[REMOVED] = g_signal_new ("removed", FF_TYPE_PAIR_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[ADDED] = g_signal_new ("added", FF_TYPE_PAIR_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
ff_pair_list_class_init (FfPairListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (FF_TYPE_FLOW);
  g_type_ensure (FF_TYPE_ENTRY);
  object_class->set_property = ff_pair_list_set_property;
  object_class->dispose = ff_pair_list_dispose;
  object_class->finalize = ff_pair_list_finalize;
  widget_class->grab_focus = ff_pair_list_grab_focus;
  install_properties (object_class);
  install_signals ();
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-pair-list.ui");
  gtk_widget_class_bind_template_child (widget_class, FfPairList, rows);
  gtk_widget_class_bind_template_child (widget_class, FfPairList, add);
  gtk_widget_class_bind_template_callback (widget_class, on_add_typed);
  gtk_widget_class_bind_template_callback (widget_class, on_add);
}

static void
ff_pair_list_init (FfPairList *self)
{
  self->all = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* ---- Public ---- */

static void
fit_rows (FfPairList *self, guint n)
{
  while (self->all->len > n)
    {
      Row *last = g_ptr_array_steal_index (self->all, self->all->len - 1);

      gtk_box_remove (self->rows, last->widget);
    }
  while (self->all->len < n)
    {
      Row *row = row_new (self);

      g_ptr_array_add (self->all, row);
      gtk_box_append (self->rows, row->widget);
    }
}

void
ff_pair_list_show (FfPairList *self, guint n, const char *const *firsts, const char *const *seconds)
{
  g_return_if_fail (FF_IS_PAIR_LIST (self));
  fit_rows (self, n);
  gtk_widget_set_visible (GTK_WIDGET (self->rows), n > 0);
  for (guint i = 0; i < n; i++)
    {
      Row *row = g_ptr_array_index (self->all, i);

      ff_entry_set_text (row->parts[0], firsts[i]);
      ff_entry_set_text (row->parts[1], seconds[i]);
      name_row (row, firsts[i], seconds[i]);
    }
}

void
ff_pair_list_complain (FfPairList *self, guint row, guint part, const char *sentence)
{
  g_return_if_fail (FF_IS_PAIR_LIST (self));
  g_return_if_fail (row < self->all->len && part < 2);
  ff_entry_complain (((Row *) g_ptr_array_index (self->all, row))->parts[part], sentence);
}

void
ff_pair_list_answer (FfPairList *self, const char *sentence)
{
  g_return_if_fail (FF_IS_PAIR_LIST (self));
  if (sentence == NULL)
    ff_entry_set_text (self->add, "");
  ff_entry_complain (self->add, sentence);
}

void
ff_pair_list_move (FfPairList *self, guint from, guint to)
{
  Row *row, *before = NULL;

  g_return_if_fail (FF_IS_PAIR_LIST (self) && MAX (from, to) < self->all->len);
  if (from == to)
    return;
  row = g_ptr_array_steal_index (self->all, from);
  if (to > 0)
    before = g_ptr_array_index (self->all, to - 1);
  g_ptr_array_insert (self->all, (int) to, row);
  gtk_box_reorder_child_after (self->rows, row->widget, before != NULL ? before->widget : NULL);
}

void
ff_pair_list_focus_row (FfPairList *self, guint row, guint part)
{
  g_return_if_fail (FF_IS_PAIR_LIST (self));
  g_return_if_fail (row < self->all->len && part < 2);
  gtk_widget_grab_focus (GTK_WIDGET (((Row *) g_ptr_array_index (self->all, row))->parts[part]));
}

void
ff_pair_list_focus_add (FfPairList *self)
{
  g_return_if_fail (FF_IS_PAIR_LIST (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->add));
}
