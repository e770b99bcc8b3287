/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-crew.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-rows.h"

static const FfField member_fields[] = {
  FF_ID (FfMember, id, "id", N_ ("id"), TRUE),
  FF_TEXT (FfMember, name, N_ ("name"), TRUE, 200),
  FF_TEXT (FfMember, initials, N_ ("initials"), TRUE, 12),
  FF_NAME (FfMember, role, N_ ("role"), &ff_names_role),
  FF_TEXT (FfMember, phone, N_ ("telephone"), FALSE, 60),
  FF_TEXT (FfMember, certificate, N_ ("certificate"), FALSE, 200),
  FF_DATE (FfMember, certificate_expiry, N_ ("expiry of the certificate")),
};
const FfFields ff_member_fields = FF_FIELDS ("crew_member", member_fields);

static gpointer
member_blank (void)
{
  FfMember *member = g_new0 (FfMember, 1);

  ff_fields_init (&ff_member_fields, member);
  return member;
}

FfMember *
ff_member_new (void)
{
  FfMember *member = member_blank ();

  g_free (member->id);
  member->id = ff_records_new_id ();
  return member;
}

void
ff_member_free (FfMember *member)
{
  if (member == NULL)
    return;
  ff_fields_clear (&ff_member_fields, member);
  g_free (member);
}

gboolean
ff_member_check (const FfMember *member, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("crew member “%s”"), member->name);
  glong length;

  if (!ff_fields_check (&ff_member_fields, member, whose, error))
    return FALSE;
  length = g_utf8_strlen (member->initials, -1);
  for (const char *p = member->initials; *p != '\0'; p = g_utf8_next_char (p))
    if (!g_unichar_isalpha (g_utf8_get_char (p)))
      length = 0;
  if (length == 2 || length == 3)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("%s, initials: “%s”; accepted: two or three letters"), whose, member->initials);
  return FALSE;
}

static gboolean
initials_taken (const FfMember *member, GError **error)
{
  g_autofree char *sentence
      = g_strdup_printf (_ ("crew member “%s”: somebody else has the initials %s"), member->name,
                         member->initials);

  return ff_rows_taken (error, "crew_member.initials", sentence);
}

gboolean
ff_member_save (FfStore *store, const FfMember *member, GError **error)
{
  return ff_member_check (member, error)
         && (ff_rows_save (store, &ff_member_fields, member, error)
             || initials_taken (member, error));
}

FfMember *
ff_member_load (FfStore *store, const char *id, GError **error)
{
  g_autoptr (GPtrArray) found
      = ff_rows_load (store, &ff_member_fields, "WHERE id = ?1", id, member_blank,
                      (GDestroyNotify) ff_member_free, error);

  if (found != NULL && found->len == 0)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("no crew member has the id %s"), id);
  return found != NULL && found->len > 0 ? g_ptr_array_steal_index (found, 0) : NULL;
}

GPtrArray *
ff_members_load (FfStore *store, GError **error)
{
  return ff_rows_load (store, &ff_member_fields, "ORDER BY name, id", NULL, member_blank,
                       (GDestroyNotify) ff_member_free, error);
}

static FfMember *
find_member (GPtrArray *members, const char *id)
{
  for (guint i = 0; i < members->len; i++)
    {
      FfMember *member = g_ptr_array_index (members, i);

      if (g_str_equal (member->id, id))
        return member;
    }
  return NULL;
}

static FfMember *
copy_member (const FfMember *member)
{
  FfMember *copy = g_new0 (FfMember, 1);

  copy->id = g_strdup (member->id);
  copy->name = g_strdup (member->name);
  copy->initials = g_strdup (member->initials);
  copy->role = member->role;
  copy->phone = g_strdup (member->phone);
  copy->certificate = g_strdup (member->certificate);
  copy->certificate_expiry = g_strdup (member->certificate_expiry);
  return copy;
}

/* One who holds two roles stands there twice: the roles are shown apart. */
static gboolean
read_holder (FfStatement *statement, GPtrArray *members, GPtrArray *crew, GError **error)
{
  const FfMember *member = find_member (members, ff_statement_get_text (statement, 0));
  g_autoptr (FfMember) copy = member != NULL ? copy_member (member) : NULL;
  int role;

  if (copy == NULL
      || !ff_name_parse (&ff_names_role, ff_statement_get_text (statement, 1), &role, error))
    return FALSE;
  copy->role = (FfRole) role;
  g_ptr_array_add (crew, g_steal_pointer (&copy));
  return TRUE;
}

static gint
compare_roles (gconstpointer a, gconstpointer b)
{
  const FfMember *first = *(FfMember *const *) a;
  const FfMember *second = *(FfMember *const *) b;

  if (first->role != second->role)
    return first->role < second->role ? -1 : 1;
  return g_strcmp0 (first->name, second->name);
}

GPtrArray *
ff_job_crew_load (FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) crew = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_member_free);
  g_autoptr (GPtrArray) members = ff_members_load (store, error);
  g_autoptr (FfStatement) statement = NULL;
  FfStep step = FF_STEP_ERROR;

  if (members == NULL)
    return NULL;
  statement = ff_statement_new (store, "SELECT member_id, role FROM job_crew WHERE job_id = ?1",
                                error);
  if (statement == NULL || !ff_statement_bind_text (statement, 1, job_id, error))
    return NULL;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    if (!read_holder (statement, members, crew, error))
      return NULL;
  if (step == FF_STEP_ERROR)
    return NULL;
  g_ptr_array_sort (crew, compare_roles);
  return g_steal_pointer (&crew);
}

gboolean
ff_job_crew_add (FfStore *store,
                 const char *job_id,
                 const char *member_id,
                 FfRole role,
                 GError **error)
{
  g_autoptr (FfStatement) statement = ff_statement_new (
      store, "INSERT INTO job_crew (job_id, member_id, role) VALUES (?1, ?2, ?3)", error);

  return statement != NULL && ff_statement_bind_text (statement, 1, job_id, error)
         && ff_statement_bind_text (statement, 2, member_id, error)
         && ff_statement_bind_text (statement, 3, ff_name_token (&ff_names_role, (int) role), error)
         && ff_statement_run (statement, error);
}

gboolean
ff_job_crew_has (const GPtrArray *crew, FfRole role)
{
  for (guint i = 0; i < crew->len; i++)
    if (((const FfMember *) g_ptr_array_index (crew, i))->role == role)
      return TRUE;
  return FALSE;
}
