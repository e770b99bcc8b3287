/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Crew members: name, role, one phone, certificate. Fit or not fit, never a reason. */
#pragma once

#include "ff-field.h"
#include "ff-names.h"
#include "ff-records.h"

typedef struct {
  char *id;
  char *name;
  char *initials; /* two or three letters, unique */
  FfRole role;    /* usual role; in a job: the role there */
  char *phone;
  char *certificate, *certificate_expiry; /* reference; YYYY-MM-DD or empty */
} FfMember;

extern const FfFields ff_member_fields;

FfMember *ff_member_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_member_free (FfMember *member);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfMember, ff_member_free)

gboolean ff_member_check (const FfMember *member, GError **error);
gboolean ff_member_save (FfStore *store, const FfMember *member, GError **error);

FfMember *ff_member_load (FfStore *store,
                          const char *id,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* One who holds a role or attends a charger is refused. FF_ERROR_INPUT. */
gboolean ff_member_delete (FfStore *store, const char *id, GError **error);

/* Everyone, by name; and who holds which role in a job, lead first. Arrays of FfMember. */
GPtrArray *ff_members_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *ff_job_crew_load (FfStore *store,
                             const char *job_id,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Whether somebody among FfMember, as loaded for a job, holds a role. */
gboolean ff_job_crew_has (const GPtrArray *crew, FfRole role);

gboolean ff_job_crew_add (FfStore *store,
                          const char *job_id,
                          const char *member_id,
                          FfRole role,
                          GError **error);
gboolean ff_job_crew_remove (FfStore *store,
                             const char *job_id,
                             const char *member_id,
                             FfRole role,
                             GError **error);
