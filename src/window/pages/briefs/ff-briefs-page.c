/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-briefs-page-private.h"

#include <glib/gi18n-lib.h>

#include "ff-beside.h"
#include "ff-briefs-keys.h"
#include "ff-compat.h"
#include "ff-errand.h"
#include "ff-flow.h"
#include "ff-missing.h"
#include "ff-printing.h"
#include "ff-save-all.h"
#include "ff-settings.h"
#include "ff-thumbs.h"

G_DEFINE_FINAL_TYPE (FfBriefsPage, ff_briefs_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Left", N_ ("Page before") },
  { "Right", N_ ("Page after") },
  { "Page_Up", N_ ("Page before") },
  { "Page_Down", N_ ("Page after") },
  { "plus", N_ ("Larger") },
  { "minus", N_ ("Smaller") },
  { "<Control>s", N_ ("Save as PDF") },
  { NULL },
};

const FfPageInfo ff_page_info_briefs = {
  .name = "briefs",
  .title = N_ ("Briefs"),
  .icon = "ff-briefs-symbolic",
  .sort = FF_PAGE_PART,
  .get_type = ff_briefs_page_get_type,
  .help = "briefs",
  .keys = page_keys,
};

static FfKeeper *
keeper_of (gpointer page)
{
  return ff_page_get_keeper (FF_PAGE (page));
}

static void
show_thumbs (FfBriefsPage *self)
{
  self->selecting = TRUE;
  ff_thumbs_show (self->thumbs, self->proof);
  self->selecting = FALSE;
}

/* What keeps the sheets from being trusted, and what did not fit */

static void
show_missing (FfBriefsPage *self)
{
  gtk_widget_set_visible (self->missing,
                          ff_missing_show (self->missing_rows, self->proof, FF_PAGE (self)));
}

static void
show_cut (FfBriefsPage *self)
{
  GPtrArray *sentences = ff_brief_did_not_fit (self->proof->brief);
  g_autofree char *words = ff_missing_join (sentences);

  gtk_label_set_label (self->cut_words, words);
  gtk_widget_set_visible (self->cut, sentences->len > 0);
}

/* The focus of the page goes to its sheets when they come. */
static void
show_pages (FfBriefsPage *self)
{
  GtkWidget *before = gtk_stack_get_visible_child (self->stack);
  const gboolean focused = gtk_widget_get_focus_child (GTK_WIDGET (self->stack)) == before;

  gtk_stack_set_visible_child_name (self->stack, "pages");
  if (focused && before != gtk_stack_get_visible_child (self->stack))
    gtk_widget_grab_focus (GTK_WIDGET (self->large));
}

static void
take_proof (FfBriefsPage *self, FfProof *proof, const char *job_id)
{
  const gboolean same = g_strcmp0 (job_id, self->job_id) == 0;
  const guint last = ff_proof_n_pages (proof) - 1;

  ff_proof_ref (proof);
  g_clear_pointer (&self->proof, ff_proof_unref);
  self->proof = proof;
  if (!same)
    {
      g_free (self->job_id);
      self->job_id = g_strdup (job_id);
    }
  show_missing (self);
  show_cut (self);
  show_thumbs (self);
  ff_briefs_turn_show (self, same ? MIN (self->number, last) : 0);
  show_pages (self);
}

/* Errands: a proof is made here, laid out in another thread, and then shown, printed or saved. */

static FfProofWish
wish_of (FfBriefsPage *self)
{
  return (FfProofWish) {
    .what = (guint) MAX (ff_pick_get_value (self->reader), 0),
    .paper = (FfPaper) MAX (ff_pick_get_value (self->paper), 0),
    .phones = gtk_check_button_get_active (self->phones),
    .bound = gtk_check_button_get_active (self->bound),
  };
}

static void came_back (GObject *source, GAsyncResult *result, gpointer user_data);

static gboolean
send (FfBriefsPage *self, FfPurpose purpose, GFile *file)
{
  g_autoptr (GError) error = NULL;
  const FfProofWish wish = wish_of (self);
  FfErrand *errand = ff_errand_new (keeper_of (self), purpose, &wish, &error);

  if (errand == NULL)
    {
      ff_page_say_error (FF_PAGE (self), &error);
      return FALSE;
    }
  g_set_object (&errand->file, file);
  errand->page = self->number;
  ff_preview_get_pixels (self->large, &errand->width, &errand->height);
  self->n_out++;
  ff_errand_send (errand, G_OBJECT (self), came_back);
  return TRUE;
}

/* Has the sheets made anew; when they are being made, once more after that. */
static void
prove (FfBriefsPage *self)
{
  self->stale = self->proving;
  if (!self->proving)
    self->proving = send (self, FF_TO_SHOW, NULL);
}

/* Printing */

static void
ff_briefs_page_print (FfPage *page)
{
  send (FF_BRIEFS_PAGE (page), FF_TO_PRINT, NULL);
}

/* Saving */

static void
say_saved (FfBriefsPage *self, const FfErrand *errand)
{
  g_autofree char *name = g_file_get_parse_name (errand->file);
  const guint n = ff_proof_n_pages (errand->proof);
  g_autofree char *words = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "Saved %u page as %s", "Saved %u pages as %s", n), n, name);

  ff_page_say (FF_PAGE (self), words, FALSE);
}

static void
on_file_chosen (GFile *file, gpointer user_data)
{
  g_autoptr (FfBriefsPage) self = user_data;

  if (file != NULL && !self->disposed)
    ff_briefs_page_save (self, file);
}

void
ff_briefs_page_ask_to_save (FfBriefsPage *self)
{
  if (self->proof != NULL)
    ff_compat_save_file (ff_page_window (FF_PAGE (self)), _ ("Save as PDF"), self->proof->file_name,
                         on_file_chosen, g_object_ref (self));
}

static void
on_save_all (FfBriefsPage *self)
{
  const FfProofWish wish = wish_of (self);

  ff_save_all_ask (FF_PAGE (self), &wish);
}

/* What comes back from an errand */

static void
shown (FfBriefsPage *self, const FfErrand *errand, gboolean done)
{
  const FfJob *job = ff_keeper_job (keeper_of (self));

  self->proving = FALSE;
  /* Another job may have been opened meanwhile. */
  if (done && job != NULL && g_str_equal (job->id, errand->job_id))
    take_proof (self, errand->proof, errand->job_id);
  if (self->stale && ff_keeper_plan (keeper_of (self)) != NULL)
    prove (self);
}

static void
came_back (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FfBriefsPage *self = FF_BRIEFS_PAGE (source);
  const FfErrand *errand = ff_errand_of (result);
  g_autoptr (GError) error = NULL;
  gboolean done = ff_errand_finish (result, &error);

  self->n_out--;
  if (self->disposed)
    return;
  if (errand->purpose == FF_TO_SHOW)
    shown (self, errand, done);
  else if (done && errand->purpose == FF_TO_PRINT)
    ff_printing_run (errand->proof, FF_PAGE (self));
  else if (done)
    say_saved (self, errand);
  ff_page_say_error (FF_PAGE (self), &error);
}

/* Callbacks */

static void
on_reader_picked (FfBriefsPage *self)
{
  self->number = 0;
  prove (self);
}

static void
on_wish_changed (FfBriefsPage *self)
{
  prove (self);
}

static void
on_bound_toggled (FfBriefsPage *self)
{
  ff_settings_set_flag ("bound", gtk_check_button_get_active (self->bound));
  prove (self);
}

static void
on_paper_picked (FfBriefsPage *self, int paper)
{
  ff_settings_set_text ("paper", ff_name_token (&ff_names_paper, paper));
  prove (self);
}

static void
on_thumb_selected (FfBriefsPage *self)
{
  GList *chosen = gtk_flow_box_get_selected_children (self->thumbs);

  if (!self->selecting && chosen != NULL)
    ff_briefs_turn_to (self, (guint) gtk_flow_box_child_get_index (chosen->data));
  g_list_free (chosen);
}

/* Four small pages in a row where the large one stands under them, else two. */
static void
on_stacked (FfBriefsPage *self)
{
  gtk_flow_box_set_max_children_per_line (
      self->thumbs, ff_beside_get_stacked (FF_BESIDE (self->beside)) ? 4 : 2);
}

static void
on_enter_clicked (FfBriefsPage *self)
{
  const FfJob *job = ff_keeper_job (keeper_of (self));
  gboolean placed = job != NULL && job->date[0] != '\0' && job->place_id[0] != '\0';

  if (placed && ff_keeper_shots (keeper_of (self))->len == 0)
    ff_page_go (FF_PAGE (self), "shots");
  else if (placed)
    ff_page_go (FF_PAGE (self), "gear");
  else
    ff_page_go (FF_PAGE (self), "day");
}

/* Overrides */

static void
show_empty (FfBriefsPage *self, const char *why)
{
  gtk_label_set_label (self->why, why);
  gtk_stack_set_visible_child_name (self->stack, "empty");
  g_clear_pointer (&self->proof, ff_proof_unref);
}

static void
ff_briefs_page_refresh (FfPage *page, FfChanged changed)
{
  FfBriefsPage *self = FF_BRIEFS_PAGE (page);
  FfKeeper *keeper = keeper_of (self);
  const FfJob *job = ff_keeper_job (keeper);
  const char *why = ff_keeper_why (keeper);

  if ((changed & (FF_CHANGED_JOB | FF_CHANGED_PLAN)) == 0)
    return;
  ff_briefed_list_show (self->briefed, page);
  if (job == NULL || g_strcmp0 (job->id, self->job_id) != 0)
    {
      g_clear_pointer (&self->proof, ff_proof_unref);
      gtk_stack_set_visible_child_name (self->stack, "wait");
    }
  if (ff_keeper_plan (keeper) != NULL && !ff_keeper_is_planning (keeper))
    prove (self);
  else if (why != NULL && !ff_keeper_is_planning (keeper))
    show_empty (self, why);
}

static gboolean
ff_briefs_page_grab_focus (GtkWidget *widget)
{
  FfBriefsPage *self = FF_BRIEFS_PAGE (widget);

  if (self->proof != NULL)
    return gtk_widget_grab_focus (GTK_WIDGET (self->large));
  return GTK_WIDGET_CLASS (ff_briefs_page_parent_class)->grab_focus (widget);
}

static void
ff_briefs_page_dispose (GObject *object)
{
  FfBriefsPage *self = FF_BRIEFS_PAGE (object);

  self->disposed = TRUE;
  g_clear_pointer (&self->proof, ff_proof_unref);
  G_OBJECT_CLASS (ff_briefs_page_parent_class)->dispose (object);
}

static void
ff_briefs_page_finalize (GObject *object)
{
  FfBriefsPage *self = FF_BRIEFS_PAGE (object);

  g_free (self->job_id);
  G_OBJECT_CLASS (ff_briefs_page_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, stack);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, why);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, enter);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, scroller);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, beside);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, missing);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, missing_rows);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, cut);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, cut_words);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, reader);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, paper);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, phones);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, bound);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, briefed);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, thumbs);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, pager);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, previous);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, next);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, where);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, whole);
  gtk_widget_class_bind_template_child (widget_class, FfBriefsPage, large);
}

static void
bind_callbacks (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, on_reader_picked);
  gtk_widget_class_bind_template_callback (widget_class, on_paper_picked);
  gtk_widget_class_bind_template_callback_full (widget_class, "on_save",
                                                G_CALLBACK (ff_briefs_page_ask_to_save));
  gtk_widget_class_bind_template_callback (widget_class, on_save_all);
  gtk_widget_class_bind_template_callback (widget_class, on_wish_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_bound_toggled);
  gtk_widget_class_bind_template_callback (widget_class, on_thumb_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_stacked);
  gtk_widget_class_bind_template_callback (widget_class, on_enter_clicked);
}

static void
ff_briefs_page_class_init (FfBriefsPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = ff_briefs_page_dispose;
  object_class->finalize = ff_briefs_page_finalize;
  widget_class->grab_focus = ff_briefs_page_grab_focus;
  FF_PAGE_CLASS (klass)->refresh = ff_briefs_page_refresh;
  FF_PAGE_CLASS (klass)->print = ff_briefs_page_print;
  g_type_ensure (FF_TYPE_BESIDE);
  g_type_ensure (FF_TYPE_BRIEFED_LIST);
  g_type_ensure (FF_TYPE_FLOW);
  g_type_ensure (FF_TYPE_PICK);
  g_type_ensure (FF_TYPE_PREVIEW);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-briefs-page.ui");
  bind_children (widget_class);
  bind_callbacks (widget_class);
  ff_briefs_turn_class_init (widget_class);
}

static void
fill_choices (FfBriefsPage *self)
{
  g_autoptr (GPtrArray) titles = ff_printable_titles ();
  g_autofree char *token = ff_settings_dup_text ("paper");
  int paper = FF_PAPER_A4;

  ff_pick_set_texts (self->reader, (const char *const *) titles->pdata);
  ff_pick_set_value (self->reader, 0);
  ff_pick_set_names (self->paper, &ff_names_paper);
  ff_name_parse (&ff_names_paper, token, &paper, NULL);
  ff_pick_set_value (self->paper, paper);
  gtk_check_button_set_active (self->bound, ff_settings_get_flag ("bound"));
}

static void
ff_briefs_page_init (FfBriefsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_choices (self);
  ff_briefs_keys_add (GTK_WIDGET (self), GTK_WIDGET (self->large));
}

/* Public */

const FfProof *
ff_briefs_page_get_proof (FfBriefsPage *self)
{
  g_return_val_if_fail (FF_IS_BRIEFS_PAGE (self), NULL);
  return self->proof;
}

guint
ff_briefs_page_get_number (FfBriefsPage *self)
{
  g_return_val_if_fail (FF_IS_BRIEFS_PAGE (self), 0);
  return self->number;
}

void
ff_briefs_page_save (FfBriefsPage *self, GFile *file)
{
  g_return_if_fail (FF_IS_BRIEFS_PAGE (self));
  if (g_file_peek_path (file) != NULL)
    send (self, FF_TO_SAVE, file);
  else
    ff_page_say (FF_PAGE (self),
                 _ ("A brief can only be saved on this computer or a drive of it. Choose a folder "
                    "there."),
                 FALSE);
}

void
ff_briefs_page_save_all (FfBriefsPage *self, GFile *folder)
{
  const FfProofWish wish = wish_of (self);

  ff_save_all_into (FF_PAGE (self), &wish, folder);
}

gboolean
ff_briefs_page_is_busy (FfBriefsPage *self)
{
  g_return_val_if_fail (FF_IS_BRIEFS_PAGE (self), FALSE);
  return self->n_out > 0 || ff_save_all_is_busy (FF_PAGE (self));
}
