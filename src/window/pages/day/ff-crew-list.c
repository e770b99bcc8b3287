/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-crew-list.h"

#include <glib/gi18n-lib.h>

#include "ff-crew-row.h"
#include "ff-day-values.h"
#include "ff-entry.h"
#include "ff-flow.h"
#include "ff-page.h"
#include "ff-pick.h"

struct _FfCrewList {
  GtkWidget parent_instance;

  FfKeeper *keeper; /* borrowed from the page */
  GtkBox *rows;
  GPtrArray *all;   /* FfCrewRow, in order, borrowed from the box */
  GPtrArray *known; /* char*: id of each member in the choice, in its order */
  FfPick *who, *role;
  FfEntry *name;
};

G_DEFINE_FINAL_TYPE (FfCrewList, ff_crew_list, GTK_TYPE_WIDGET)

/* ---- Words ---- */

static FfPage *
page_of (FfCrewList *self)
{
  return FF_PAGE (gtk_widget_get_ancestor (GTK_WIDGET (self), FF_TYPE_PAGE));
}

static void
say_last_change (FfCrewList *self)
{
  if (page_of (self) != NULL)
    ff_page_say_last_change (page_of (self));
}

static char *
sentence_of (const FfMember *member, const FfField *field, const GError *error)
{
  g_autofree char *whose = g_strdup_printf (_ ("crew member “%s”"), member->name);

  return g_strdup (ff_day_refusal (whose, field, error->message));
}

/* ---- Changes ---- */

static void
on_typed (FfCrewRow *row, const char *name, const char *text, FfCrewList *self)
{
  const FfField *field = ff_fields_find (&ff_member_fields, name);
  g_autoptr (FfMember) member = ff_keeper_dup_member (self->keeper, ff_crew_row_get_member (row));
  g_autoptr (GError) error = NULL;
  g_autofree char *what = NULL;
  g_autofree char *sentence = NULL;

  if (member == NULL)
    return;
  /* The name must not change with each letter of it that is typed. */
  what = g_strdup_printf (_ ("Record of %s changed"),
                          g_str_equal (name, "name") ? member->initials : member->name);
  if (!ff_day_value_set (field, member, 1, text, &error)
      || !ff_keeper_save_member (self->keeper, member, what, &error))
    sentence = sentence_of (member, field, error);
  ff_crew_row_complain (row, name, sentence);
}

static void
on_role_picked (FfCrewRow *row, int role, FfCrewList *self)
{
  g_autofree char *member_id = g_strdup (ff_crew_row_get_member (row));
  g_autoptr (GError) error = NULL;

  if (!ff_keeper_change_role (self->keeper, member_id, ff_crew_row_get_role (row), (FfRole) role,
                              &error))
    {
      ff_page_say_error (page_of (self), &error);
      ff_crew_list_refresh (self, self->keeper);
    }
}

static void
on_removed (FfCrewRow *row, FfCrewList *self)
{
  g_autofree char *member_id = g_strdup (ff_crew_row_get_member (row));
  g_autoptr (GError) error = NULL;

  /* The focus would be lost with the row. */
  gtk_widget_grab_focus (GTK_WIDGET (self->who));
  if (ff_keeper_remove_crew (self->keeper, member_id, ff_crew_row_get_role (row), &error))
    say_last_change (self);
  ff_page_say_error (page_of (self), &error);
}

static gboolean
is_new (FfCrewList *self)
{
  return ff_pick_get_value (self->who) >= (int) self->known->len;
}

static FfCrewRow *
row_of (FfCrewList *self, const char *member_id)
{
  for (guint i = 0; i < self->all->len; i++)
    {
      FfCrewRow *row = g_ptr_array_index (self->all, i);

      if (g_strcmp0 (ff_crew_row_get_member (row), member_id) == 0)
        return row;
    }
  return NULL;
}

static FfMember *
member_from_name (FfCrewList *self, const char *name, FfRole role)
{
  GPtrArray *members = ff_keeper_members (self->keeper);
  g_autoptr (GPtrArray) taken = g_ptr_array_new ();
  FfMember *member = ff_member_new ();
  g_autofree char *initials = NULL;

  for (guint i = 0; i < members->len; i++)
    g_ptr_array_add (taken, ((FfMember *) g_ptr_array_index (members, i))->initials);
  g_ptr_array_add (taken, NULL);
  initials = ff_day_initials (name, (const char *const *) taken->pdata);
  ff_set_text (&member->name, name);
  ff_set_text (&member->initials, initials);
  member->role = role;
  return member;
}

static void
add_new (FfCrewList *self, FfRole role)
{
  g_autofree char *name = g_strstrip (g_strdup (ff_entry_get_text (self->name)));
  g_autoptr (FfMember) member = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *sentence = NULL;

  if (name[0] == '\0')
    {
      ff_entry_complain (self->name, _ ("write the name"));
      gtk_widget_grab_focus (GTK_WIDGET (self->name));
      return;
    }
  member = member_from_name (self, name, role);
  if (!ff_keeper_add_new_crew (self->keeper, member, role, &error))
    {
      sentence = sentence_of (member, NULL, error);
      ff_entry_complain (self->name, sentence);
      return;
    }
  ff_entry_set_text (self->name, "");
  if (row_of (self, member->id) != NULL)
    ff_crew_row_open (row_of (self, member->id));
}

static void
on_add (FfCrewList *self)
{
  const int who = ff_pick_get_value (self->who);
  const FfRole role = (FfRole) MAX (ff_pick_get_value (self->role), 0);
  g_autoptr (GError) error = NULL;
  g_autofree char *member_id = NULL;

  if (is_new (self))
    {
      add_new (self, role);
      return;
    }
  if (who < 0)
    return;
  member_id = g_strdup (g_ptr_array_index (self->known, (guint) who));
  (void) ff_keeper_add_crew (self->keeper, member_id, role, &error);
  ff_page_say_error (page_of (self), &error);
}

static void
on_name_typed (FfCrewList *self, const char *text)
{
  ff_entry_set_text (self->name, text);
  ff_entry_complain (self->name, NULL);
}

/* The choice of a member brings the role that is usual for them. */
static void
on_who_picked (FfCrewList *self, int who)
{
  const FfMember *member
      = who < (int) self->known->len
            ? ff_keeper_find_member (self->keeper, g_ptr_array_index (self->known, (guint) who))
            : NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->name), is_new (self));
  if (member != NULL)
    ff_pick_set_value (self->role, (int) member->role);
}

/* ---- Showing ---- */

static gboolean
is_in_crew (FfCrewList *self, const char *member_id)
{
  GPtrArray *crew = ff_keeper_crew (self->keeper);

  for (guint i = 0; i < crew->len; i++)
    if (g_str_equal (((FfMember *) g_ptr_array_index (crew, i))->id, member_id))
      return TRUE;
  return FALSE;
}

/* Those who hold no role yet come first; the others may take a second one. */
static void
add_known (FfCrewList *self, GPtrArray *texts, gboolean in_crew)
{
  GPtrArray *members = ff_keeper_members (self->keeper);

  for (guint i = 0; i < members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (members, i);

      if (is_in_crew (self, member->id) != in_crew)
        continue;
      g_ptr_array_add (self->known, g_strdup (member->id));
      /* Translators: a crew member who holds a role already and may take another. */
      g_ptr_array_add (texts, in_crew ? g_strdup_printf (_ ("%s, second role"), member->name)
                                      : g_strdup (member->name));
    }
}

/* What was chosen stays chosen; at first it is one who holds no role yet. */
static int
choice_for (FfCrewList *self, const char *was, gboolean was_new, guint n_free)
{
  for (guint i = 0; i < n_free; i++)
    if (g_strcmp0 (g_ptr_array_index (self->known, i), was) == 0)
      return (int) i;
  return n_free > 0 && !was_new ? 0 : (int) self->known->len;
}

static void
fill_choice (FfCrewList *self)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  const int had = ff_pick_get_value (self->who), role = ff_pick_get_value (self->role);
  const gboolean was_new = had >= 0 && is_new (self) && ff_entry_get_text (self->name)[0] != '\0';
  g_autofree char *was
      = had >= 0 && !is_new (self) ? g_strdup (g_ptr_array_index (self->known, (guint) had)) : NULL;
  guint n_free;

  g_ptr_array_set_size (self->known, 0);
  add_known (self, texts, FALSE);
  n_free = self->known->len;
  add_known (self, texts, TRUE);
  g_ptr_array_add (texts, g_strdup (_ ("Someone new")));
  g_ptr_array_add (texts, NULL);
  ff_pick_set_texts (self->who, (const char *const *) texts->pdata);
  ff_pick_set_value (self->who, choice_for (self, was, was_new, n_free));
  on_who_picked (self, ff_pick_get_value (self->who));
  if (was_new || was != NULL)
    ff_pick_set_value (self->role, role);
}

static FfCrewRow *
add_row (FfCrewList *self)
{
  GtkWidget *row = ff_crew_row_new ();

  g_signal_connect (row, "typed", G_CALLBACK (on_typed), self);
  g_signal_connect (row, "role-picked", G_CALLBACK (on_role_picked), self);
  g_signal_connect (row, "removed", G_CALLBACK (on_removed), self);
  gtk_box_append (self->rows, row);
  g_ptr_array_add (self->all, row);
  return FF_CREW_ROW (row);
}

/* Rows are kept for those who stay, so that an opened record stays open and the cursor where it
 * is; the order follows the roles. */
static void
show_member (FfCrewList *self, guint index, const FfMember *member, const char *date)
{
  FfCrewRow *row = NULL;
  guint at = index;

  for (; at < self->all->len; at++)
    {
      row = g_ptr_array_index (self->all, at);
      if (g_strcmp0 (ff_crew_row_get_member (row), member->id) == 0)
        break;
    }
  if (at >= self->all->len)
    {
      row = add_row (self);
      at = self->all->len - 1;
    }
  if (at != index)
    {
      g_ptr_array_steal_index (self->all, at);
      g_ptr_array_insert (self->all, (int) index, row);
      gtk_box_reorder_child_after (self->rows, GTK_WIDGET (row),
                                   index > 0 ? g_ptr_array_index (self->all, index - 1) : NULL);
    }
  ff_crew_row_show (row, member, date);
}

void
ff_crew_list_refresh (FfCrewList *self, FfKeeper *keeper)
{
  const FfJob *job = ff_keeper_job (keeper);
  GPtrArray *crew = ff_keeper_crew (keeper);

  g_return_if_fail (FF_IS_CREW_LIST (self));
  self->keeper = keeper;
  for (guint i = 0; i < crew->len; i++)
    show_member (self, i, g_ptr_array_index (crew, i), job != NULL ? job->date : "");
  while (self->all->len > crew->len)
    {
      GtkWidget *last = g_ptr_array_steal_index (self->all, self->all->len - 1);

      gtk_box_remove (self->rows, last);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->rows), crew->len > 0);
  fill_choice (self);
}

/* ---- Overrides ---- */

static gboolean
ff_crew_list_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_CREW_LIST (widget)->who));
}

static void
ff_crew_list_dispose (GObject *object)
{
  FfCrewList *self = FF_CREW_LIST (object);
  GtkWidget *child;

  g_ptr_array_set_size (self->all, 0);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ff_crew_list_parent_class)->dispose (object);
}

static void
ff_crew_list_finalize (GObject *object)
{
  g_ptr_array_unref (FF_CREW_LIST (object)->all);
  g_ptr_array_unref (FF_CREW_LIST (object)->known);
  G_OBJECT_CLASS (ff_crew_list_parent_class)->finalize (object);
}

static void
ff_crew_list_class_init (FfCrewListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (FF_TYPE_FLOW);
  g_type_ensure (FF_TYPE_ENTRY);
  g_type_ensure (FF_TYPE_PICK);
  object_class->dispose = ff_crew_list_dispose;
  object_class->finalize = ff_crew_list_finalize;
  widget_class->grab_focus = ff_crew_list_grab_focus;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-crew-list.ui");
  gtk_widget_class_bind_template_child (widget_class, FfCrewList, rows);
  gtk_widget_class_bind_template_child (widget_class, FfCrewList, who);
  gtk_widget_class_bind_template_child (widget_class, FfCrewList, role);
  gtk_widget_class_bind_template_child (widget_class, FfCrewList, name);
  gtk_widget_class_bind_template_callback (widget_class, on_who_picked);
  gtk_widget_class_bind_template_callback (widget_class, on_name_typed);
  gtk_widget_class_bind_template_callback (widget_class, on_add);
}

static void
ff_crew_list_init (FfCrewList *self)
{
  self->all = g_ptr_array_new ();
  self->known = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  ff_pick_set_names (self->role, &ff_names_role);
  ff_pick_set_value (self->role, FF_ROLE_LEAD);
}
