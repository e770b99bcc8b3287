/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-call-form.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-columns.h"
#include "ff-entry.h"
#include "ff-error.h"
#include "ff-flow.h"
#include "ff-lines.h"

#define N_CALLS 3

struct _FfCallForm {
  GtkBox parent_instance;

  GtkToggleButton *calls[N_CALLS]; /* by FfCall */
  GtkLabel *none;                  /* that none is chosen */
  FfEntry *why, *until, *by;
};

G_DEFINE_FINAL_TYPE (FfCallForm, ff_call_form, GTK_TYPE_BOX)

enum { ENTER, N_SIGNALS };

static guint signals[N_SIGNALS];

/* -1: nothing is chosen. */
static int
chosen (FfCallForm *self)
{
  for (int i = 0; i < N_CALLS; i++)
    if (gtk_toggle_button_get_active (self->calls[i]))
      return i;
  return -1;
}

static void
show_choice (FfCallForm *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->until), chosen (self) == FF_CALL_STAND_BY);
  if (chosen (self) >= 0)
    gtk_widget_set_visible (GTK_WIDGET (self->none), FALSE);
}

/* ---- Reading ---- */

/* An instant after `now`: a clock that is past is meant for the next day only when it is early. */
static gboolean
instant_of (const char *text, GTimeZone *zone, gint64 now, gint64 *ret_at, GError **error)
{
  int minutes;
  gint64 at;

  if (!ff_clock_parse (text, &minutes, error)
      || !ff_instant_from_clock (ff_instant_date (now, zone), minutes, zone, &at, error))
    return FALSE;
  if (at <= now)
    at += 24 * 60 * 60;
  if (at - now > 12 * 60 * 60)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s is past; write a time still to come"),
                   text);
      return FALSE;
    }
  *ret_at = at;
  return TRUE;
}

static gboolean
read_until (FfCallForm *self, GTimeZone *zone, gint64 now, FfWeatherCall *made)
{
  const char *text = ff_entry_get_text (self->until);
  g_autoptr (GError) error = NULL;

  if (made->decision == FF_CALL_STAND_BY && *text != '\0')
    instant_of (text, zone, now, &made->until, &error);
  ff_entry_complain (self->until, error != NULL ? error->message : NULL);
  return error == NULL;
}

static gboolean
read_text (FfEntry *entry, char **text)
{
  g_autofree char *typed = g_strstrip (g_strdup (ff_entry_get_text (entry)));

  ff_set_text (text, typed);
  ff_entry_complain (entry, *typed == '\0' ? _ ("This is needed") : NULL);
  return *typed != '\0';
}

FfWeatherCall *
ff_call_form_read (FfCallForm *self, const char *job_id, GTimeZone *zone, gint64 now)
{
  g_autoptr (FfWeatherCall) made = ff_weather_call_new (job_id);
  const int decision = chosen (self);
  gboolean good;

  gtk_widget_set_visible (GTK_WIDGET (self->none), decision < 0);
  made->at = now;
  made->decision = (FfCall) MAX (decision, 0);
  good = read_text (self->why, &made->why);
  good = read_text (self->by, &made->by) && good;
  good = read_until (self, zone, now, made) && good;
  return good && decision >= 0 ? g_steal_pointer (&made) : NULL;
}

void
ff_call_form_kept (FfCallForm *self)
{
  for (int i = 0; i < N_CALLS; i++)
    gtk_toggle_button_set_active (self->calls[i], FALSE);
  ff_entry_reset (self->why, "");
  ff_entry_reset (self->until, "");
  show_choice (self);
}

void
ff_call_form_complain (FfCallForm *self, const char *sentence)
{
  ff_entry_complain (self->why, sentence);
}

void
ff_call_form_set_by (FfCallForm *self, const char *initials)
{
  ff_entry_set_text (self->by, initials);
}

void
ff_call_form_fill (FfCallForm *self, FfCall decision, const char *why, const char *until)
{
  gtk_toggle_button_set_active (self->calls[decision], TRUE);
  ff_entry_reset (self->why, why);
  ff_entry_reset (self->until, until != NULL ? until : "");
}

/* ---- The widget ---- */

static void
on_enter (FfCallForm *self)
{
  g_signal_emit (self, signals[ENTER], 0);
}

static void
ff_call_form_class_init (FfCallFormClass *klass)
{
  signals[ENTER] = g_signal_new ("enter", FF_TYPE_CALL_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static GtkWidget *
choice_new (FfCallForm *self)
{
  GtkWidget *flow = ff_flow_new (8, 8);

  for (int i = 0; i < N_CALLS; i++)
    {
      GtkWidget *button = gtk_toggle_button_new_with_label (ff_name_text (&ff_names_call, i));

      self->calls[i] = GTK_TOGGLE_BUTTON (button);
      if (i > 0)
        gtk_toggle_button_set_group (self->calls[i], self->calls[0]);
      gtk_widget_add_css_class (button, "stage");
      g_signal_connect_object (button, "toggled", G_CALLBACK (show_choice), self,
                               G_CONNECT_SWAPPED);
      ff_flow_append (FF_FLOW (flow), button, -1);
    }
  return flow;
}

static void
ff_call_form_init (FfCallForm *self)
{
  const GCallback enter = G_CALLBACK (on_enter);
  GtkWidget *columns = ff_columns_new (11, 2);
  GtkWidget *button = gtk_button_new_with_mnemonic (_ ("Enter the _decision"));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 10);
  self->none = GTK_LABEL (ff_line_new (_ ("✕ Choose one of the three"), "attention"));
  gtk_widget_set_visible (GTK_WIDGET (self->none), FALSE);
  gtk_box_append (GTK_BOX (self), choice_new (self));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->none));
  self->why = ff_columns_append_entry (FF_COLUMNS (columns), _ ("Why"), NULL, TRUE, enter, self);
  self->by = ff_columns_append_entry (FF_COLUMNS (columns), _ ("Decided by (initials)"),
                                      NULL, FALSE, enter, self);
  self->until = ff_columns_append_entry (FF_COLUMNS (columns), _ ("Until (17:20)"),
                                         NULL, FALSE, enter, self);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_enter), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self), columns);
  gtk_box_append (GTK_BOX (self), button);
  show_choice (self);
}

GtkWidget *
ff_call_form_new (void)
{
  return g_object_new (FF_TYPE_CALL_FORM, NULL);
}
