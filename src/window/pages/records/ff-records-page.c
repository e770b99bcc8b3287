/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-records-page.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-flow.h"
#include "ff-limit-examples.h"
#include "ff-limit-form.h"
#include "ff-limit-words.h"
#include "ff-lines.h"

struct _FfRecordsPage {
  FfPage parent_instance;

  GPtrArray *limits; /* FfLimit, as the list has them */
  FfLimit *edited;   /* the row in the form */
  gboolean is_new;
  gboolean filling;
  GtkLabel *overdue;
  GtkListBox *list;
  FfLimitForm *form;
};

G_DEFINE_FINAL_TYPE (FfRecordsPage, ff_records_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Return", N_ ("Open the row; store what is typed") },
  { NULL },
};

const FfPageInfo ff_page_info_records = {
  .name = "records",
  .title = N_ ("Limits"),
  .icon = "ff-log-symbolic",
  .sort = FF_PAGE_PLACE,
  .get_type = ff_records_page_get_type,
  .help = "records",
  .keys = page_keys,
};

static FfKeeper *
keeper_of (FfRecordsPage *self)
{
  return ff_page_get_keeper (FF_PAGE (self));
}

/* ---- Words ---- */

static char *
today_date (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_format (now, "%Y-%m-%d");
}

static gboolean
is_overdue (const FfLimit *limit, const char *today)
{
  return *limit->checked_on == '\0'
         || (*limit->expires_on != '\0' && strcmp (limit->expires_on, today) < 0);
}

static char *
rule_words (const FfLimit *limit, const char *today)
{
  GString *words = g_string_new (ff_name_text (&ff_names_rule, (int) limit->rule));

  if (*limit->authority != '\0')
    g_string_append_printf (words, ", %s", limit->authority);
  if (*limit->source != '\0')
    g_string_append_printf (words, ": %s", limit->source);
  if (*limit->permit != '\0')
    g_string_append_printf (words, _ (", permit %s"), limit->permit);
  if (*limit->checked_on != '\0')
    g_string_append_printf (words, _ (" · checked %s %s"), limit->checked_on, limit->checked_by);
  if (is_overdue (limit, today))
    g_string_append (words, *limit->checked_on == '\0' ? _ (" · □ never checked")
                                                       : _ (" · □ its check is overdue"));
  if (limit->example)
    g_string_append (words, _ (" · EXAMPLE: set your own"));
  return g_string_free (words, FALSE);
}

/* ---- The list ---- */

static void
add_row (FfRecordsPage *self, const FfLimit *limit, const char *sheet_before, const char *today)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  g_autofree char *bound = ff_limit_bound_words (limit);
  g_autofree char *head = g_strdup_printf ("%s: %s", limit->text, bound);
  g_autofree char *rule = rule_words (limit, today);

  if (g_strcmp0 (sheet_before, limit->sheet) != 0)
    ff_lines_add (GTK_BOX (box), limit->sheet, "section-title");
  ff_lines_add (GTK_BOX (box), head, "heading");
  ff_lines_add (GTK_BOX (box), rule, "soft");
  gtk_widget_add_css_class (box, "card-body");
  gtk_list_box_append (self->list, box);
}

static void
show_overdue (FfRecordsPage *self, const char *today)
{
  g_autofree char *words = NULL;
  guint n = 0;

  for (guint i = 0; i < self->limits->len; i++)
    n += is_overdue (g_ptr_array_index (self->limits, i), today);
  words = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "□ %u row was never looked up, or its date is past.",
                   "□ %u rows were never looked up, or their date is past.", n), n);
  gtk_label_set_label (self->overdue, words);
  gtk_widget_set_visible (GTK_WIDGET (self->overdue), n > 0);
}

static void
select_edited (FfRecordsPage *self)
{
  for (guint i = 0; i < self->limits->len; i++)
    if (self->edited != NULL
        && g_str_equal (((FfLimit *) g_ptr_array_index (self->limits, i))->id, self->edited->id))
      gtk_list_box_select_row (self->list, gtk_list_box_get_row_at_index (self->list, (int) i));
}

static void
fill_list (FfRecordsPage *self)
{
  g_autofree char *today = today_date ();
  const char *before = NULL;
  GtkListBoxRow *row;

  self->filling = TRUE;
  while ((row = gtk_list_box_get_row_at_index (self->list, 0)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  for (guint i = 0; i < self->limits->len; i++)
    {
      const FfLimit *limit = g_ptr_array_index (self->limits, i);

      add_row (self, limit, before, today);
      before = limit->sheet;
    }
  select_edited (self);
  show_overdue (self, today);
  self->filling = FALSE;
}

/* ---- Editing ---- */

static void
edit (FfRecordsPage *self, FfLimit *taken, gboolean is_new)
{
  ff_limit_free (self->edited);
  self->edited = taken;
  self->is_new = is_new;
  ff_limit_form_show (self->form, taken, is_new);
}

static FfLimit *
new_limit (FfRecordsPage *self)
{
  FfLimit *limit = ff_limit_new ();
  const FfLimit *last = self->limits->len > 0
                            ? g_ptr_array_index (self->limits, self->limits->len - 1) : NULL;

  ff_set_text (&limit->sheet, self->edited != NULL ? self->edited->sheet
                              : last != NULL       ? last->sheet : _ ("Own sheet"));
  ff_set_text (&limit->kind, "mean-wind");
  ff_set_text (&limit->unit, "m/s");
  limit->position = (int) MIN (self->limits->len + 1, 9999);
  return limit;
}

/* The stored row, to be changed apart from the list. */
static FfLimit *
copy_of (FfRecordsPage *self, guint index)
{
  FfStore *store = ff_keeper_store (keeper_of (self));
  g_autoptr (GPtrArray) again = store != NULL ? ff_limits_load (store, NULL) : NULL;

  return again != NULL && index < again->len ? g_ptr_array_steal_index (again, index)
                                             : new_limit (self);
}

static void
on_row_selected (GtkListBox *list, GtkListBoxRow *row, FfRecordsPage *self)
{
  const int i = row != NULL ? gtk_list_box_row_get_index (row) : -1;

  if (!self->filling && i >= 0 && i < (int) self->limits->len)
    edit (self, copy_of (self, (guint) i), FALSE);
}

static void
on_row_activated (FfRecordsPage *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->form));
}

static void
on_store (FfRecordsPage *self)
{
  g_autoptr (GError) error = NULL;

  if (!ff_limit_form_read (self->form, self->edited))
    return;
  self->is_new = FALSE;
  if (ff_keeper_save_limit (keeper_of (self), self->edited, _ ("Limit stored"), &error))
    {
      ff_limit_form_show (self->form, self->edited, FALSE);
      ff_page_say (FF_PAGE (self), _ ("Limit stored"), TRUE);
    }
  else
    ff_limit_form_complain (self->form, error->message);
}

static void
on_remove (FfRecordsPage *self)
{
  g_autofree char *id = g_strdup (self->edited->id);
  g_autoptr (GError) error = NULL;

  if (ff_keeper_delete_limit (keeper_of (self), id, &error))
    {
      edit (self, new_limit (self), TRUE);
      ff_page_say (FF_PAGE (self), _ ("Limit removed"), TRUE);
    }
  ff_page_say_error (FF_PAGE (self), &error);
}

static void
ff_records_page_add (FfPage *page)
{
  FfRecordsPage *self = FF_RECORDS_PAGE (page);

  gtk_list_box_unselect_all (self->list);
  edit (self, new_limit (self), TRUE);
  gtk_widget_grab_focus (GTK_WIDGET (self->form));
}

static void
on_add (FfRecordsPage *self)
{
  ff_records_page_add (FF_PAGE (self));
}

static void
on_example (GtkButton *button, FfRecordsPage *self)
{
  const guint sheet = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "sheet"));
  g_autoptr (GPtrArray) rows = ff_limit_example_rows (sheet);
  g_autoptr (GError) error = NULL;

  if (ff_keeper_add_limits (keeper_of (self), rows, _ ("Example sheet added"), &error))
    ff_page_say (FF_PAGE (self), _ ("Added, each row marked as an example: set your own."), TRUE);
  ff_page_say_error (FF_PAGE (self), &error);
}

/* ---- Overrides ---- */

static void
ff_records_page_refresh (FfPage *page, FfChanged changed)
{
  FfRecordsPage *self = FF_RECORDS_PAGE (page);
  FfStore *store = ff_keeper_store (keeper_of (self));
  GPtrArray *loaded = store != NULL ? ff_limits_load (store, NULL) : NULL;

  if (loaded == NULL || (changed & ~FF_CHANGED_PLAN) == 0)
    {
      g_clear_pointer (&loaded, g_ptr_array_unref);
      return;
    }
  g_ptr_array_unref (self->limits);
  self->limits = loaded;
  if (self->edited == NULL)
    edit (self, self->limits->len > 0 ? copy_of (self, 0) : new_limit (self),
          self->limits->len == 0);
  fill_list (self);
}

static gboolean
ff_records_page_grab_focus (GtkWidget *widget)
{
  FfRecordsPage *self = FF_RECORDS_PAGE (widget);
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);

  return row != NULL ? gtk_widget_grab_focus (GTK_WIDGET (row))
                     : gtk_widget_grab_focus (GTK_WIDGET (self->form));
}

static void
ff_records_page_finalize (GObject *object)
{
  FfRecordsPage *self = FF_RECORDS_PAGE (object);

  ff_limit_free (self->edited);
  g_ptr_array_unref (self->limits);
  G_OBJECT_CLASS (ff_records_page_parent_class)->finalize (object);
}

static void
ff_records_page_class_init (FfRecordsPageClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ff_records_page_finalize;
  GTK_WIDGET_CLASS (klass)->grab_focus = ff_records_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_records_page_refresh;
  FF_PAGE_CLASS (klass)->add = ff_records_page_add;
}

/* ---- Built once ---- */

static GtkWidget *
list_card_new (FfRecordsPage *self)
{
  GtkWidget *card = ff_lines_card (_ ("Limit sheets"));
  GtkWidget *add = gtk_button_new_with_mnemonic (_ ("_Add a row"));

  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_placeholder (
      self->list, ff_line_new (_ ("No limit is entered yet: add a row, or an example."), "soft"));
  g_signal_connect_object (self->list, "row-selected", G_CALLBACK (on_row_selected), self, 0);
  g_signal_connect_object (self->list, "row-activated", G_CALLBACK (on_row_activated), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (add, "clicked", G_CALLBACK (on_add), self, G_CONNECT_SWAPPED);
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (card), add);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->list));
  gtk_widget_set_hexpand (card, TRUE);
  return card;
}

static GtkWidget *
examples_card_new (FfRecordsPage *self)
{
  GtkWidget *card = ff_lines_card (_ ("Add an example sheet"));
  const char *name;

  ff_lines_add (GTK_BOX (card),
                _ ("Not law, not advice, perhaps out of date: read the source named in each row "
                   "and set your own."), NULL);
  for (guint i = 0; (name = ff_limit_example_name (i)) != NULL; i++)
    {
      GtkWidget *button = gtk_button_new ();

      gtk_button_set_child (GTK_BUTTON (button), ff_line_new (name, NULL));
      g_object_set_data (G_OBJECT (button), "sheet", GUINT_TO_POINTER (i));
      g_signal_connect_object (button, "clicked", G_CALLBACK (on_example), self, 0);
      gtk_box_append (GTK_BOX (card), button);
    }
  return card;
}

static GtkWidget *
form_column_new (FfRecordsPage *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 16);
  GtkWidget *card = ff_lines_card (_ ("The row"));

  self->form = FF_LIMIT_FORM (ff_limit_form_new ());
  g_signal_connect_object (self->form, "store", G_CALLBACK (on_store), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->form, "remove", G_CALLBACK (on_remove), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->form));
  gtk_box_append (GTK_BOX (column), card);
  gtk_box_append (GTK_BOX (column), examples_card_new (self));
  gtk_widget_set_hexpand (column, TRUE);
  return column;
}

static void
ff_records_page_init (FfRecordsPage *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *clamp = adw_clamp_new ();
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);
  GtkWidget *columns = ff_flow_new (24, 16);

  self->limits = g_ptr_array_new ();
  self->overdue = GTK_LABEL (ff_line_new ("", "attention"));
  gtk_widget_add_css_class (body, "page-body");
  ff_lines_add (GTK_BOX (body),
                _ ("The crew’s own limits, for all jobs. Fieldfare holds no law: each row says whose "
                   "rule it is and when somebody looked it up."), NULL);
  gtk_box_append (GTK_BOX (body), GTK_WIDGET (self->overdue));
  ff_flow_append (FF_FLOW (columns), list_card_new (self), 300);
  ff_flow_append (FF_FLOW (columns), form_column_new (self), 300);
  gtk_box_append (GTK_BOX (body), columns);
  adw_clamp_set_maximum_size (ADW_CLAMP (clamp), 1240);
  adw_clamp_set_tightening_threshold (ADW_CLAMP (clamp), 1100);
  adw_clamp_set_child (ADW_CLAMP (clamp), body);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), clamp);
  adw_bin_set_child (ADW_BIN (self), scroller);
}
