/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-briefs-page.h"

#include <glib/gi18n-lib.h>

#include "ff-beside.h"
#include "ff-briefs-keys.h"
#include "ff-compat.h"
#include "ff-errand.h"
#include "ff-flow.h"
#include "ff-missing.h"
#include "ff-pick.h"
#include "ff-preview.h"
#include "ff-printing.h"
#include "ff-settings.h"
#include "ff-thumbs.h"

#define WIDEST 1000 /* of the large page */
#define SCROLL_STEP 80
#define ROUND_THE_PAGE 96 /* what stands over and under a page that is shown whole */

struct _FfBriefsPage {
  FfPage parent_instance;

  GtkStack *stack;
  GtkLabel *why;
  GtkWidget *enter;
  GtkScrolledWindow *scroller;
  GtkWidget *beside;
  GtkWidget *missing, *cut;
  GtkBox *missing_rows;
  GtkLabel *cut_words;
  FfPick *reader, *paper;
  GtkFlowBox *thumbs;
  GtkWidget *pager, *previous, *next;
  GtkLabel *where;
  GtkToggleButton *whole;
  FfPreview *large;

  FfProof *proof;
  char *job_id; /* of the proof */
  guint number; /* of the large page, from 0 */
  guint n_out;  /* errands under way */
  gboolean proving, stale; /* an errand to show is under way; another is wanted after it */
  gboolean selecting;      /* by our own hand */
  gboolean disposed;
};

G_DEFINE_FINAL_TYPE (FfBriefsPage, ff_briefs_page, FF_TYPE_PAGE)

static const FfPageKey page_keys[] = {
  { "Left", N_ ("Page before") },
  { "Right", N_ ("Page after") },
  { "Page_Up", N_ ("Page before") },
  { "Page_Down", N_ ("Page after") },
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

static GtkWindow *
window_of (FfBriefsPage *self)
{
  return GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
}

/* The chosen page */

static void
show_where (FfBriefsPage *self)
{
  const guint n = ff_proof_n_pages (self->proof);
  g_autofree char *name = ff_proof_page_name (self->proof, self->number, " ");
  g_autofree char *words = NULL;

  /* Translators: over the large page: "Pilot 1 of 2 · page 1 of 4". */
  words = g_strdup_printf (_ ("%s · page %u of %u"), name, self->number + 1, n);
  gtk_label_set_label (self->where, words);
  gtk_widget_set_sensitive (self->previous, self->number > 0);
  gtk_widget_set_sensitive (self->next, self->number + 1 < n);
}

static void
show_number (FfBriefsPage *self, guint number)
{
  GtkFlowBoxChild *child = gtk_flow_box_get_child_at_index (self->thumbs, (int) number);

  self->number = number;
  ff_preview_show (self->large, self->proof, number);
  show_where (self);
  self->selecting = TRUE;
  if (child != NULL)
    gtk_flow_box_select_child (self->thumbs, child);
  self->selecting = FALSE;
}

/* Brings the top of the large page to the screen. */
static void
scroll_to_page (FfBriefsPage *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  const double now = gtk_adjustment_get_value (adjustment);
  graphene_point_t top;

  if (!gtk_widget_compute_point (self->pager, self->beside, &GRAPHENE_POINT_INIT (0, 0), &top))
    return;
  gtk_adjustment_set_value (adjustment, ff_beside_get_stacked (FF_BESIDE (self->beside))
                                            ? top.y
                                            : MIN (now, top.y));
}

static void
go_to (FfBriefsPage *self, guint number)
{
  GtkWidget *inside = gtk_widget_get_focus_child (GTK_WIDGET (self->thumbs));

  if (self->proof == NULL || number >= ff_proof_n_pages (self->proof))
    return;
  show_number (self, number);
  scroll_to_page (self);
  if (inside != NULL)
    gtk_widget_grab_focus (
        GTK_WIDGET (gtk_flow_box_get_child_at_index (self->thumbs, (int) number)));
}

static void
step (FfBriefsPage *self, int by)
{
  if (by > 0 || self->number > 0)
    go_to (self, by > 0 ? self->number + 1 : self->number - 1);
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
  GPtrArray *missing = self->proof->facts->missing;

  ff_missing_show (self->missing_rows, missing, FF_PAGE (self));
  gtk_widget_set_visible (self->missing, missing->len > 0);
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
  show_number (self, same ? MIN (self->number, last) : 0);
  show_pages (self);
}

/* Errands: a proof is made here, laid out in another thread, and then shown, printed or saved. */

static FfErrand *
make_errand (FfBriefsPage *self, FfPurpose purpose, GError **error)
{
  const int reader = MAX (ff_pick_get_value (self->reader), 0);
  const int paper = MAX (ff_pick_get_value (self->paper), 0);

  return ff_errand_new (keeper_of (self), purpose, (FfReader) ff_proof_readers ()[reader],
                        (FfPaper) paper, error);
}

static void came_back (GObject *source, GAsyncResult *result, gpointer user_data);

static gboolean
send (FfBriefsPage *self, FfPurpose purpose, GFile *file)
{
  g_autoptr (GError) error = NULL;
  FfErrand *errand = make_errand (self, purpose, &error);

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

static void
on_save (FfBriefsPage *self)
{
  if (self->proof != NULL)
    ff_compat_save_file (window_of (self), _ ("Save as PDF"), self->proof->file_name,
                         on_file_chosen, g_object_ref (self));
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
    go_to (self, (guint) gtk_flow_box_child_get_index (chosen->data));
  g_list_free (chosen);
}

static void
on_previous (FfBriefsPage *self)
{
  step (self, -1);
}

static void
on_next (FfBriefsPage *self)
{
  step (self, 1);
}

/* Whole: as high as what can be seen; else as wide as there is room. */
static void
on_whole (FfBriefsPage *self)
{
  const int height = gtk_widget_get_height (GTK_WIDGET (self->scroller)) - ROUND_THE_PAGE;
  const double shape = ff_preview_get_shape (self->large);

  ff_preview_set_wish (self->large, gtk_toggle_button_get_active (self->whole)
                                        ? MAX ((int) (height / shape), 120)
                                        : WIDEST);
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

/* Actions, for keys and for whoever drives the program from outside */

static void
scroll (FfBriefsPage *self, int by)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);

  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + SCROLL_STEP * by);
}

static void
act (GtkWidget *widget, const char *action, GVariant *by)
{
  FfBriefsPage *self = FF_BRIEFS_PAGE (widget);

  if (g_str_equal (action, "sheet.turn"))
    step (self, g_variant_get_int32 (by));
  else if (g_str_equal (action, "sheet.scroll"))
    scroll (self, g_variant_get_int32 (by));
  else
    on_save (self);
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
  gtk_widget_class_bind_template_callback (widget_class, on_save);
  gtk_widget_class_bind_template_callback (widget_class, on_thumb_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_previous);
  gtk_widget_class_bind_template_callback (widget_class, on_next);
  gtk_widget_class_bind_template_callback (widget_class, on_whole);
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
  g_type_ensure (FF_TYPE_FLOW);
  g_type_ensure (FF_TYPE_PICK);
  g_type_ensure (FF_TYPE_PREVIEW);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-briefs-page.ui");
  bind_children (widget_class);
  bind_callbacks (widget_class);
  gtk_widget_class_install_action (widget_class, "sheet.turn", "i", act);
  gtk_widget_class_install_action (widget_class, "sheet.scroll", "i", act);
  gtk_widget_class_install_action (widget_class, "sheet.save", NULL, act);
}

static void
fill_choices (FfBriefsPage *self)
{
  g_autoptr (GPtrArray) readers = ff_proof_reader_names ();
  g_autofree char *token = ff_settings_dup_text ("paper");
  int paper = FF_PAPER_A4;

  ff_pick_set_texts (self->reader, (const char *const *) readers->pdata);
  ff_pick_set_value (self->reader, 0);
  ff_pick_set_names (self->paper, &ff_names_paper);
  ff_name_parse (&ff_names_paper, token, &paper, NULL);
  ff_pick_set_value (self->paper, paper);
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

gboolean
ff_briefs_page_is_busy (FfBriefsPage *self)
{
  g_return_val_if_fail (FF_IS_BRIEFS_PAGE (self), FALSE);
  return self->n_out > 0;
}
