/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-save-all.h"

#include <glib/gi18n-lib.h>

#include "ff-compat.h"
#include "ff-missing.h"

#define BUSY "ff-save-all-busy"

/* What waits for an answer of somebody. */
typedef struct {
  FfPage *page;
  FfProofWish wish;
  FfBundle *bundle; /* NULL: the folder is not chosen yet */
} Waiting;

static void
waiting_free (gpointer data)
{
  Waiting *waiting = data;

  g_object_unref (waiting->page);
  ff_bundle_free (waiting->bundle);
  g_free (waiting);
}

/* Written */

static void
say_saved (FfPage *page, const FfBundle *bundle)
{
  g_autofree char *name = g_file_get_parse_name (ff_bundle_folder (bundle));
  const guint n = ff_bundle_n_saved (bundle);
  g_autofree char *words = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "Saved %u file in %s", "Saved %u files in %s", n), n, name);

  ff_page_say (page, words, FALSE);
}

static void
came_back (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FfPage *page = FF_PAGE (source);
  g_autoptr (GError) error = NULL;
  const gboolean done = ff_bundle_finish (result, &error);

  g_object_set_data (source, BUSY, NULL);
  /* The window may have been closed meanwhile. */
  if (gtk_widget_get_root (GTK_WIDGET (page)) == NULL)
    return;
  if (done)
    say_saved (page, ff_bundle_of (result));
  ff_page_say_error (page, &error);
}

static void
send (FfPage *page, FfBundle *bundle)
{
  g_object_set_data (G_OBJECT (page), BUSY, page);
  ff_bundle_send (bundle, G_OBJECT (page), came_back);
}

/* Those that are there already */

static void
on_replace (gpointer data)
{
  Waiting *waiting = data;

  send (waiting->page, g_steal_pointer (&waiting->bundle));
}

static void
ask_to_replace (FfPage *page, FfBundle *bundle, GPtrArray *existing)
{
  Waiting *waiting = g_new0 (Waiting, 1);
  g_autofree char *names = ff_missing_join (existing);
  g_autofree char *question = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u file is there already", "%u files are there already",
                   existing->len),
      existing->len);

  waiting->page = g_object_ref (page);
  waiting->bundle = bundle;
  /* It lives as long as the page, which a dialog that is left without an answer does not tell. */
  g_object_set_data_full (G_OBJECT (page), "ff-save-all", waiting, waiting_free);
  ff_compat_confirm (ff_page_window (page), question, names, _ ("_Replace"), on_replace, waiting);
}

void
ff_save_all_into (FfPage *page, const FfProofWish *wish, GFile *folder)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfBundle) bundle = NULL;
  g_autoptr (GPtrArray) existing = NULL;

  if (g_file_peek_path (folder) == NULL)
    {
      ff_page_say (page,
                   _ ("Briefs can only be saved on this computer or a drive of it. Choose a folder "
                      "there."),
                   FALSE);
      return;
    }
  bundle = ff_bundle_new (ff_page_get_keeper (page), wish, folder, &error);
  if (bundle == NULL)
    {
      ff_page_say_error (page, &error);
      return;
    }
  existing = ff_bundle_existing (bundle);
  if (existing->len > 0)
    ask_to_replace (page, g_steal_pointer (&bundle), existing);
  else
    send (page, g_steal_pointer (&bundle));
}

/* Where */

static void
on_folder (GFile *folder, gpointer data)
{
  Waiting *waiting = data;

  if (folder != NULL && ff_page_window (waiting->page) != NULL)
    ff_save_all_into (waiting->page, &waiting->wish, folder);
  waiting_free (waiting);
}

void
ff_save_all_ask (FfPage *page, const FfProofWish *wish)
{
  Waiting *waiting = g_new0 (Waiting, 1);

  waiting->page = g_object_ref (page);
  waiting->wish = *wish;
  ff_compat_choose_folder (ff_page_window (page), _ ("Save all into a folder"), on_folder, waiting);
}

gboolean
ff_save_all_is_busy (FfPage *page)
{
  return g_object_get_data (G_OBJECT (page), BUSY) != NULL;
}
