/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pick.h"

struct _FfPick {
  GtkWidget parent_instance;

  GtkLabel *label;
  GtkDropDown *choice;
  GStrv texts;
  gboolean has_blank; /* an empty row stands first, for no value: newer GTK always selects one */
  gboolean setting;   /* the choice changes by our own hand */
};

G_DEFINE_FINAL_TYPE (FfPick, ff_pick, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_LABEL, PROP_VALUE, PROP_LABEL_SHOWN, N_PROPS };
enum { PICKED, N_SIGNALS };

static GParamSpec *properties[N_PROPS];
static guint signals[N_SIGNALS];

/* Callbacks */

static void
on_selected (FfPick *self)
{
  if (!self->setting && ff_pick_get_value (self) >= 0)
    g_signal_emit (self, signals[PICKED], 0, ff_pick_get_value (self));
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_VALUE]);
}

/* Overrides */

static gboolean
ff_pick_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_PICK (widget)->choice));
}

static void
ff_pick_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  FfPick *self = FF_PICK (object);

  if (id == PROP_LABEL)
    g_value_set_string (value, gtk_label_get_label (self->label));
  else if (id == PROP_VALUE)
    g_value_set_int (value, ff_pick_get_value (self));
  else if (id == PROP_LABEL_SHOWN)
    g_value_set_boolean (value, gtk_widget_get_visible (GTK_WIDGET (self->label)));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

/* Where its heading says what it is, it keeps its name for those who listen. */
static void
name_choice (FfPick *self)
{
  if (gtk_widget_get_visible (GTK_WIDGET (self->label)))
    gtk_accessible_reset_property (GTK_ACCESSIBLE (self->choice), GTK_ACCESSIBLE_PROPERTY_LABEL);
  else
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->choice), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                    gtk_label_get_text (self->label), -1);
}

static void
ff_pick_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FfPick *self = FF_PICK (object);
  const char *label;

  if (id == PROP_LABEL)
    {
      label = g_value_get_string (value);
      gtk_label_set_text_with_mnemonic (self->label, label != NULL ? label : "");
      name_choice (self);
    }
  else if (id == PROP_VALUE)
    ff_pick_set_value (self, g_value_get_int (value));
  else if (id == PROP_LABEL_SHOWN)
    {
      gtk_widget_set_visible (GTK_WIDGET (self->label), g_value_get_boolean (value));
      name_choice (self);
    }
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_pick_dispose (GObject *object)
{
  GtkWidget *child;

  g_clear_pointer (&FF_PICK (object)->texts, g_strfreev);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ff_pick_parent_class)->dispose (object);
}

static void
install_properties (GObjectClass *object_class)
{
  properties[PROP_LABEL] = g_param_spec_string ("label", NULL, NULL, "",
                                                G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  properties[PROP_VALUE]
      = g_param_spec_int ("value", NULL, NULL, -1, G_MAXINT, -1,
                          G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  properties[PROP_LABEL_SHOWN] = g_param_spec_boolean (
      "label-shown", NULL, NULL, TRUE, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
ff_pick_class_init (FfPickClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = ff_pick_get_property;
  object_class->set_property = ff_pick_set_property;
  object_class->dispose = ff_pick_dispose;
  widget_class->grab_focus = ff_pick_grab_focus;
  install_properties (object_class);
  signals[PICKED] = g_signal_new ("picked", FF_TYPE_PICK, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_INT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-pick.ui");
  gtk_widget_class_bind_template_child (widget_class, FfPick, label);
  gtk_widget_class_bind_template_child (widget_class, FfPick, choice);
  gtk_widget_class_bind_template_callback (widget_class, on_selected);
  gtk_widget_class_set_css_name (widget_class, "pick");
}

/* The choice as it stands in the field, cut where there is no room for it; in the list that drops
 * down it is whole, with its mark. */

static void
set_up_label (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_list_item_set_child (item, label);
}

static void
bind_label (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkStringObject *text = gtk_list_item_get_item (item);

  gtk_label_set_label (GTK_LABEL (gtk_list_item_get_child (item)),
                       gtk_string_object_get_string (text));
}

static void
let_choice_be_cut (FfPick *self)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (set_up_label), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_label), NULL);
  gtk_drop_down_set_list_factory (self->choice, gtk_drop_down_get_factory (self->choice));
  gtk_drop_down_set_factory (self->choice, factory);
}

static void
ff_pick_init (FfPick *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  let_choice_be_cut (self);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->choice),
                                  GTK_ACCESSIBLE_RELATION_LABELLED_BY, self->label, NULL, -1);
}

/* Public */

GtkWidget *
ff_pick_new (const char *label, const FfNames *names)
{
  FfPick *self = g_object_new (FF_TYPE_PICK, "label", label, NULL);

  if (names != NULL)
    ff_pick_set_names (self, names);
  return GTK_WIDGET (self);
}

void
ff_pick_set_names (FfPick *self, const FfNames *names)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new ();

  g_return_if_fail (FF_IS_PICK (self));
  for (guint i = 0; i < names->n_names; i++)
    g_ptr_array_add (texts, (gpointer) ff_name_text (names, (int) i));
  g_ptr_array_add (texts, NULL);
  ff_pick_set_texts (self, (const char *const *) texts->pdata);
}

/* Fills the choice, with or without the empty row, and selects what stands for `value`. */
static void
fill (FfPick *self, gboolean with_blank, int value)
{
  g_autoptr (GtkStringList) model = gtk_string_list_new (NULL);

  if (with_blank)
    gtk_string_list_append (model, "");
  gtk_string_list_splice (model, g_list_model_get_n_items (G_LIST_MODEL (model)), 0,
                          (const char *const *) self->texts);
  self->setting = TRUE;
  self->has_blank = with_blank;
  gtk_drop_down_set_model (self->choice, G_LIST_MODEL (model));
  gtk_drop_down_set_selected (self->choice, (guint) (value + with_blank));
  self->setting = FALSE;
}

void
ff_pick_set_texts (FfPick *self, const char *const *texts)
{
  g_return_if_fail (FF_IS_PICK (self));
  g_strfreev (self->texts);
  self->texts = g_strdupv ((char **) texts);
  fill (self, TRUE, -1);
}

int
ff_pick_get_value (FfPick *self)
{
  guint selected;

  g_return_val_if_fail (FF_IS_PICK (self), -1);
  selected = gtk_drop_down_get_selected (self->choice);
  return selected != GTK_INVALID_LIST_POSITION ? (int) selected - self->has_blank : -1;
}

void
ff_pick_set_value (FfPick *self, int value)
{
  gboolean with_blank = value < 0;

  g_return_if_fail (FF_IS_PICK (self));
  if (self->texts != NULL && with_blank != self->has_blank)
    {
      fill (self, with_blank, MAX (value, -1));
      return;
    }
  self->setting = TRUE;
  gtk_drop_down_set_selected (self->choice, (guint) (MAX (value, -1) + self->has_blank));
  self->setting = FALSE;
}
