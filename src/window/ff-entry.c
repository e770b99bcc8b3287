/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-entry.h"

#include <glib/gi18n-lib.h>

#define PATIENCE_MS 900 /* how long a half-typed value is left alone */

struct _FfEntry {
  GtkWidget parent_instance;

  GtkLabel *label, *unit, *message;
  GtkEditable *entry;
  char *stored;          /* what the record holds, as it was last told */
  char *complaint;       /* why what is typed is not stored */
  char *remark;
  gboolean emitting;     /* inside "typed": what is told now follows from the typing */
  gboolean setting;      /* the entry changes by our own hand */
  guint patience_source; /* runs while a complaint is held back */
};

G_DEFINE_FINAL_TYPE (FfEntry, ff_entry, GTK_TYPE_WIDGET)

enum {
  PROP_0,
  PROP_LABEL,
  PROP_UNIT,
  PROP_TEXT,
  PROP_WIDTH_CHARS,
  PROP_LABEL_SHOWN,
  PROP_PLACEHOLDER,
  N_PROPS
};
enum { TYPED, ENTERED, N_SIGNALS };

static GParamSpec *properties[N_PROPS];
static guint signals[N_SIGNALS];

/* What stands under the field */

static void
show_message (FfEntry *self, const char *words, gboolean wrong)
{
  gtk_label_set_label (self->message, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message), words != NULL);
  if (wrong)
    gtk_widget_add_css_class (GTK_WIDGET (self), "wrong");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "wrong");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
}

static void
show_what_is (FfEntry *self)
{
  g_autofree char *words = NULL;

  g_clear_handle_id (&self->patience_source, g_source_remove);
  if (self->complaint == NULL)
    {
      show_message (self, self->remark, FALSE);
      return;
    }
  if (self->stored[0] != '\0')
    /* Translators: under a field: why the typed value is refused, and the value that stays. */
    words = g_strdup_printf (_ ("✕ %s. Kept: %s"), self->complaint, self->stored);
  else
    /* Translators: under a field: why the typed value is refused. */
    words = g_strdup_printf (_ ("✕ %s."), self->complaint);
  show_message (self, words, TRUE);
}

static gboolean
patience_ends (gpointer user_data)
{
  FfEntry *self = user_data;

  self->patience_source = 0;
  show_what_is (self);
  return G_SOURCE_REMOVE;
}

/* Callbacks */

static void
on_changed (FfEntry *self)
{
  if (self->setting)
    return;
  self->emitting = TRUE;
  g_signal_emit (self, signals[TYPED], 0, gtk_editable_get_text (self->entry));
  self->emitting = FALSE;
}

static void
put_text (FfEntry *self, const char *text)
{
  self->setting = TRUE;
  if (!g_str_equal (gtk_editable_get_text (self->entry), text))
    gtk_editable_set_text (self->entry, text);
  self->setting = FALSE;
}

/* Enter, or the focus goes elsewhere: a good value is written as it is stored ("6." becomes "6"), a
 * wrong one stays to be mended and is named. */
static void
on_left (FfEntry *self)
{
  if (self->complaint == NULL)
    put_text (self, self->stored);
  show_what_is (self);
}

static void
on_activate (FfEntry *self)
{
  on_left (self);
  g_signal_emit (self, signals[ENTERED], 0);
}

/* Escape gives up what was typed and is not stored. */
static gboolean
on_key (FfEntry *self, guint key)
{
  if (key != GDK_KEY_Escape || self->complaint == NULL)
    return GDK_EVENT_PROPAGATE;
  put_text (self, self->stored);
  ff_entry_complain (self, NULL);
  return GDK_EVENT_STOP;
}

/* Overrides */

static gboolean
ff_entry_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_ENTRY (widget)->entry));
}

static void
ff_entry_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  FfEntry *self = FF_ENTRY (object);

  switch (id)
    {
    case PROP_LABEL:
      g_value_set_string (value, gtk_label_get_label (self->label));
      break;
    case PROP_UNIT:
      g_value_set_string (value, gtk_label_get_label (self->unit));
      break;
    case PROP_TEXT:
      g_value_set_string (value, ff_entry_get_text (self));
      break;
    case PROP_WIDTH_CHARS:
      g_value_set_int (value, gtk_editable_get_width_chars (self->entry));
      break;
    case PROP_LABEL_SHOWN:
      g_value_set_boolean (value, gtk_widget_get_visible (GTK_WIDGET (self->label)));
      break;
    case PROP_PLACEHOLDER:
      g_value_set_string (value, gtk_entry_get_placeholder_text (GTK_ENTRY (self->entry)));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

/* A field of a table, where the heading says what it is, keeps its name for those who listen. */
static void
name_entry (FfEntry *self)
{
  if (gtk_widget_get_visible (GTK_WIDGET (self->label)))
    gtk_accessible_reset_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL);
  else
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                    gtk_label_get_text (self->label), -1);
}

static void
set_unit (FfEntry *self, const char *unit)
{
  gtk_label_set_label (self->unit, unit != NULL ? unit : "");
  gtk_widget_set_visible (GTK_WIDGET (self->unit), unit != NULL && unit[0] != '\0');
}

static void
ff_entry_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FfEntry *self = FF_ENTRY (object);

  switch (id)
    {
    case PROP_LABEL:
      ff_entry_set_label (self, g_value_get_string (value));
      break;
    case PROP_UNIT:
      set_unit (self, g_value_get_string (value));
      break;
    case PROP_TEXT:
      ff_entry_set_text (self, g_value_get_string (value));
      break;
    case PROP_WIDTH_CHARS:
      ff_entry_set_width (self, g_value_get_int (value));
      break;
    case PROP_LABEL_SHOWN:
      gtk_widget_set_visible (GTK_WIDGET (self->label), g_value_get_boolean (value));
      name_entry (self);
      break;
    case PROP_PLACEHOLDER:
      gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), g_value_get_string (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
ff_entry_dispose (GObject *object)
{
  FfEntry *self = FF_ENTRY (object);
  GtkWidget *child;

  g_clear_handle_id (&self->patience_source, g_source_remove);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ff_entry_parent_class)->dispose (object);
}

static void
ff_entry_finalize (GObject *object)
{
  FfEntry *self = FF_ENTRY (object);

  g_free (self->stored);
  g_free (self->complaint);
  g_free (self->remark);
  G_OBJECT_CLASS (ff_entry_parent_class)->finalize (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags both = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  properties[PROP_LABEL] = g_param_spec_string ("label", NULL, NULL, "", both);
  properties[PROP_UNIT] = g_param_spec_string ("unit", NULL, NULL, "", both);
  properties[PROP_TEXT] = g_param_spec_string ("text", NULL, NULL, "", both);
  properties[PROP_WIDTH_CHARS]
      = g_param_spec_int ("width-chars", NULL, NULL, -1, G_MAXINT, 5, both);
  properties[PROP_LABEL_SHOWN] = g_param_spec_boolean ("label-shown", NULL, NULL, TRUE, both);
  properties[PROP_PLACEHOLDER] = g_param_spec_string ("placeholder", NULL, NULL, "", both);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-entry.ui");
  gtk_widget_class_bind_template_child (widget_class, FfEntry, label);
  gtk_widget_class_bind_template_child (widget_class, FfEntry, unit);
  gtk_widget_class_bind_template_child (widget_class, FfEntry, message);
  gtk_widget_class_bind_template_child (widget_class, FfEntry, entry);
  gtk_widget_class_bind_template_callback (widget_class, on_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_activate);
}

static void
ff_entry_class_init (FfEntryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = ff_entry_get_property;
  object_class->set_property = ff_entry_set_property;
  object_class->dispose = ff_entry_dispose;
  object_class->finalize = ff_entry_finalize;
  widget_class->grab_focus = ff_entry_grab_focus;
  install_properties (object_class);
  signals[TYPED] = g_signal_new ("typed", FF_TYPE_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[ENTERED] = g_signal_new ("entered", FF_TYPE_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  bind_template (widget_class);
  gtk_widget_class_set_css_name (widget_class, "field");
}

static void
ff_entry_init (FfEntry *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  self->stored = g_strdup ("");
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_left), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->entry),
                                  GTK_ACCESSIBLE_RELATION_LABELLED_BY, self->label, NULL,
                                  GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, self->message, NULL, -1);
}

/* Public */

GtkWidget *
ff_entry_new (const char *label, const char *unit)
{
  return g_object_new (FF_TYPE_ENTRY, "label", label, "unit", unit, NULL);
}

const char *
ff_entry_get_text (FfEntry *self)
{
  g_return_val_if_fail (FF_IS_ENTRY (self), "");
  return gtk_editable_get_text (self->entry);
}

void
ff_entry_set_text (FfEntry *self, const char *stored)
{
  g_return_if_fail (FF_IS_ENTRY (self));
  if (stored == NULL)
    stored = "";
  /* What comes back from the typing itself must not move the cursor under the fingers; and the same
   * value told again is no news. */
  if (g_str_equal (self->stored, stored))
    return;
  g_free (self->stored);
  self->stored = g_strdup (stored);
  if (self->emitting)
    return;
  put_text (self, self->stored);
  ff_entry_complain (self, NULL);
}

void
ff_entry_reset (FfEntry *self, const char *stored)
{
  g_return_if_fail (FF_IS_ENTRY (self));
  g_free (self->stored);
  self->stored = g_strdup (stored != NULL ? stored : "");
  put_text (self, self->stored);
  ff_entry_complain (self, NULL);
}

void
ff_entry_complain (FfEntry *self, const char *sentence)
{
  g_return_if_fail (FF_IS_ENTRY (self));
  if (self->complaint != sentence)
    {
      g_free (self->complaint);
      self->complaint = g_strdup (sentence);
    }
  if (sentence == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    {
      show_what_is (self);
      return;
    }
  g_clear_handle_id (&self->patience_source, g_source_remove);
  self->patience_source = g_timeout_add (PATIENCE_MS, patience_ends, self);
}

const char *
ff_entry_get_complaint (FfEntry *self)
{
  g_return_val_if_fail (FF_IS_ENTRY (self), NULL);
  return self->patience_source == 0 ? self->complaint : NULL;
}

void
ff_entry_set_remark (FfEntry *self, const char *remark)
{
  g_return_if_fail (FF_IS_ENTRY (self));
  if (g_strcmp0 (self->remark, remark) == 0)
    return;
  g_free (self->remark);
  self->remark = g_strdup (remark);
  if (self->complaint == NULL)
    show_what_is (self);
}

void
ff_entry_set_label (FfEntry *self, const char *label)
{
  g_return_if_fail (FF_IS_ENTRY (self));
  gtk_label_set_text_with_mnemonic (self->label, label != NULL ? label : "");
  name_entry (self);
}

void
ff_entry_set_width (FfEntry *self, int chars)
{
  g_return_if_fail (FF_IS_ENTRY (self));
  gtk_editable_set_width_chars (self->entry, chars);
  gtk_editable_set_max_width_chars (self->entry, chars);
  gtk_widget_set_hexpand (GTK_WIDGET (self->entry), chars <= 0);
}
