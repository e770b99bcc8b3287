/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-briefing.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-day-private.h"

static void
briefing_free (gpointer data)
{
  FfBriefing *self = data;

  g_free (self->name);
  g_free (self->initials);
  g_free (self->words);
  g_free (self->brief);
  g_free (self);
}

static FfBriefing *
find (GPtrArray *briefings, const char *initials)
{
  for (guint i = 0; i < briefings->len; i++)
    {
      FfBriefing *self = g_ptr_array_index (briefings, i);

      if (strcmp (self->initials, initials) == 0)
        return self;
    }
  return NULL;
}

static FfBriefing *
add (GPtrArray *briefings, const char *name, const char *initials, const char *role)
{
  FfBriefing *self = g_new0 (FfBriefing, 1);

  self->name = g_strdup (name);
  self->initials = g_strdup (initials);
  self->role = role;
  g_ptr_array_add (briefings, self);
  return self;
}

/* The last time is what counts. */
static const FfBriefed *
last_of (const FfStanding *standing, const char *initials)
{
  for (guint i = standing->briefed->len; i-- > 0;)
    {
      const FfBriefed *briefed = g_ptr_array_index (standing->briefed, i);

      if (strcmp (briefed->initials, initials) == 0)
        return briefed;
    }
  return NULL;
}

/* An amendment beside the letter that stands, that came after the briefing, has a sentence for a
 * role of theirs, and that they have not read either. */
static gboolean
is_news (const FfStanding *standing,
         const FfAmendment *amendment,
         const FfBriefed *last,
         GPtrArray *crew)
{
  if (amendment->number <= last->upto
      || strcmp (amendment->letter, standing->version->letter) != 0)
    return FALSE;
  for (guint i = 0; i < crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (crew, i);

      if (strcmp (member->initials, last->initials) == 0
          && ff_amendment_sentence (amendment, member->role) != NULL
          && ff_amendment_acknowledged (amendment, member->role) == NULL)
        return TRUE;
    }
  return FALSE;
}

/* Number of the first amendment that is news; 0: none. */
static int
first_news (const FfStanding *standing, const FfBriefed *last, GPtrArray *crew)
{
  for (guint i = 0; i < standing->amendments->len; i++)
    {
      const FfAmendment *amendment = g_ptr_array_index (standing->amendments, i);

      if (is_news (standing, amendment, last, crew))
        return amendment->number;
    }
  return 0;
}

/* What has come since; NULL: nothing. */
static char *
say_since (const FfStanding *standing, const FfBriefed *last, GPtrArray *crew)
{
  const FfPlanVersion *version = standing->version;
  int news;

  if (version == NULL)
    return g_strdup_printf (_ ("briefed on version %s, which is not frozen: brief again when it is"),
                            last->letter);
  if (strcmp (last->letter, version->letter) != 0)
    return g_strdup_printf (_ ("briefed on version %s; version %s since: brief again"),
                            last->letter, version->letter);
  if (last->at < version->frozen_at)
    return g_strdup_printf (_ ("briefed before version %s was frozen: brief again"),
                            version->letter);
  news = first_news (standing, last, crew);
  if (news > 0)
    return g_strdup_printf (_ ("briefed on version %s; amendment %d since: read it out"),
                            last->letter, news);
  return NULL;
}

static void
say (FfBriefing *self, const FfStanding *standing, GPtrArray *crew, GTimeZone *zone)
{
  g_autofree char *clock = NULL;

  self->last = last_of (standing, self->initials);
  if (self->last == NULL)
    {
      self->words = g_strdup (_ ("not briefed"));
      self->brief = g_strdup ("");
      return;
    }
  clock = ff_instant_clock ((double) self->last->at, zone);
  self->words = say_since (standing, self->last, crew);
  self->state = self->words != NULL ? FF_BRIEFING_SINCE : FF_BRIEFING_DONE;
  if (self->words == NULL)
    self->words = g_strdup_printf (_ ("briefed on version %s, %s"), self->last->letter, clock);
  self->brief = self->state == FF_BRIEFING_DONE
                    /* Translators: in a narrow column: the letter of the version somebody was
                     * briefed on, and when. */
                    ? g_strdup_printf (_ ("%s, %s"), self->last->letter, clock)
                    : g_strdup ("");
}

GPtrArray *
ff_briefings (const FfStanding *standing, const FfDay *day)
{
  GPtrArray *briefings = g_ptr_array_new_with_free_func (briefing_free);

  for (guint i = 0; i < day->crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (day->crew, i);

      if (find (briefings, member->initials) == NULL)
        add (briefings, member->name, member->initials,
             ff_name_text (&ff_names_role, (int) member->role));
    }
  for (guint i = 0; i < standing->briefed->len; i++)
    {
      const FfBriefed *briefed = g_ptr_array_index (standing->briefed, i);

      if (find (briefings, briefed->initials) == NULL)
        add (briefings, briefed->name, briefed->initials, "");
    }
  for (guint i = 0; i < briefings->len; i++)
    say (g_ptr_array_index (briefings, i), standing, day->crew, day->zone);
  return briefings;
}

guint
ff_briefings_n_open (GPtrArray *briefings)
{
  guint n = 0;

  for (guint i = 0; i < briefings->len; i++)
    n += ((FfBriefing *) g_ptr_array_index (briefings, i))->state != FF_BRIEFING_DONE;
  return n;
}

char *
ff_briefings_sum (GPtrArray *briefings)
{
  const guint n = ff_briefings_n_open (briefings);

  if (briefings->len == 0)
    return g_strdup (_ ("No crew is entered for this job."));
  if (n == 0)
    return g_strdup (_ ("All were briefed on what stands."));
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u of %u is not briefed on what stands.",
                                       "%u of %u are not briefed on what stands.", n),
                          n, briefings->len);
}

const char *
ff_briefing_shape (FfBriefingState state)
{
  return state == FF_BRIEFING_DONE ? "■" : state == FF_BRIEFING_SINCE ? "◧" : "□";
}

const char *
ff_briefing_token (FfBriefingState state)
{
  return state == FF_BRIEFING_DONE ? "done" : state == FF_BRIEFING_SINCE ? "since" : "open";
}

FfBriefed *
ff_briefing_say (const FfStanding *standing,
                 const FfDay *day,
                 const char *name,
                 const char *initials,
                 const char *by,
                 gint64 at)
{
  FfBriefed *briefed = ff_briefed_new (day->job->id);

  ff_set_text (&briefed->letter,
               standing->version != NULL ? standing->version->letter : day->job->version);
  for (guint i = 0; i < standing->amendments->len; i++)
    briefed->upto = MAX (briefed->upto,
                         ((FfAmendment *) g_ptr_array_index (standing->amendments, i))->number);
  ff_set_text (&briefed->name, name);
  ff_set_text (&briefed->initials, initials);
  ff_set_text (&briefed->by, by);
  briefed->at = at;
  return briefed;
}
