/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The briefs: what is shown is what is saved; pages are turned by keys; what is missing leads to
 * where it is entered; a file that can't be written is said. */
#include "ff-stage.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>

#include "ff-briefed-list.h"
#include "ff-briefs-page.h"
#include "ff-entry.h"
#include "ff-pick.h"
#include "ff-preview.h"
#include "ff-printing.h"
#include "ff-settings.h"

/* The words */

static void
test_a_file_gets_a_name_that_any_disk_takes (void **state)
{
  static const struct {
    const char *job, *date, *version, *what, *want;
  } cases[] = {
    { "Skarrowick tidal mill", "2027-09-18", "A", NULL,
      "Skarrowick tidal mill 2027-09-18 vA.pdf" },
    { "Mill: day 1/2", "", "B", "pilot", "Mill- day 1-2 vB pilot.pdf" },
    { "../..\\x\n\"y\"", "", "", "camera operator", "-..-x--y- camera operator.pdf" },
    { "  ", "", "", NULL, "Brief.pdf" },
    { "Überlingen", "", "", NULL, "Überlingen.pdf" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *got = ff_proof_name_file (cases[i].job, cases[i].date, cases[i].version,
                                                 cases[i].what);

      assert_string_equal (got, cases[i].want);
    }
}

static void
test_a_long_name_is_cut_between_letters (void **state)
{
  g_autofree char *job = g_strnfill (400, 'x');
  g_autofree char *wide = g_strjoin (NULL, "x", "äöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöü",
                                     "äöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöü", NULL);
  g_autofree char *a = ff_proof_name_file (job, "2027-09-18", "A", NULL);
  g_autofree char *b = ff_proof_name_file (wide, "2027-09-18", "A", NULL);

  assert_true (strlen (a) < 200 && g_str_has_suffix (a, ".pdf"));
  assert_true (strlen (b) < 200 && g_utf8_validate (b, -1, NULL));
}

static void
test_only_sheets_that_exist_are_offered (void **state)
{
  g_autoptr (GPtrArray) titles = ff_printable_titles ();
  guint readers = 0;

  assert_int_equal (titles->len, ff_printables_count () + 1);
  for (guint i = 0; i < ff_printables_count (); i++)
    {
      const FfPrintable *what = ff_printable (i);

      assert_true (ff_brief_has_sheet (what->reader));
      readers += what->reader != FF_READER_ALL;
    }
  assert_int_equal (readers, FF_READER_ALL);
}

/* The page */

static FfBriefsPage *
page_of (FfStage *stage)
{
  return FF_BRIEFS_PAGE (ff_window_get_page (stage->window));
}

static gboolean
is_shown (gpointer page)
{
  return !ff_briefs_page_is_busy (page) && ff_briefs_page_get_proof (page) != NULL;
}

static gboolean
is_idle (gpointer page)
{
  return !ff_briefs_page_is_busy (page);
}

static FfStage *
stage_with_briefs (int width)
{
  FfStage *stage = ff_stage_new (TRUE, width, 800);

  ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, "briefs");
  assert_true (ff_stage_wait (is_shown, page_of (stage)));
  ff_stage_settle ();
  return stage;
}

static GtkWidget *
find (FfStage *stage, GType type, const char *text)
{
  return ff_stage_find (GTK_WIDGET (page_of (stage)), type, text);
}

static char *
run (const char *program, const char *path, const char *more)
{
  const char *argv[] = { program, path, more, NULL };
  g_autoptr (GError) error = NULL;
  char *output = NULL;
  int status;

  assert_true (g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &output,
                             NULL, &status, &error));
  assert_int_equal (status, 0);
  return output;
}

/* Whether a label of the window has this in its text: a sentence said over it. */
static gboolean
says (GtkWidget *root, const char *text)
{
  if (GTK_IS_LABEL (root) && strstr (gtk_label_get_text (GTK_LABEL (root)), text) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_get_child_visible (child) && says (child, text))
      return TRUE;
  return FALSE;
}

/* Does what the key does that a controller of the widget listens to. */
static gboolean
press (GtkWidget *widget, const char *key)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      for (guint j = 0; GTK_IS_SHORTCUT_CONTROLLER (controller)
                        && j < g_list_model_get_n_items (G_LIST_MODEL (controller));
           j++)
        {
          g_autoptr (GtkShortcut) shortcut = g_list_model_get_item (G_LIST_MODEL (controller), j);
          g_autofree char *trigger
              = gtk_shortcut_trigger_to_string (gtk_shortcut_get_trigger (shortcut));

          if (g_str_equal (trigger, key))
            return gtk_shortcut_action_activate (gtk_shortcut_get_action (shortcut), 0, widget,
                                                 gtk_shortcut_get_arguments (shortcut));
        }
    }
  return FALSE;
}

static void
choose (FfStage *stage, guint nth_choice, guint value)
{
  GtkWidget *pick = find (stage, FF_TYPE_PICK, NULL);

  if (nth_choice == 1)
    pick = gtk_widget_get_next_sibling (pick);
  gtk_drop_down_set_selected (
      GTK_DROP_DOWN (ff_stage_find (pick, GTK_TYPE_DROP_DOWN, NULL)), value);
  assert_true (ff_stage_wait (is_shown, page_of (stage)));
}

static void
test_the_sheets_stand_on_the_page (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  const FfProof *proof = ff_briefs_page_get_proof (page_of (stage));
  const guint n = ff_proof_n_pages (proof);

  assert_true (n >= 2);
  /* Small ones and the large one. */
  assert_int_equal (ff_stage_count (GTK_WIDGET (page_of (stage)), FF_TYPE_PREVIEW), n + 1);
  assert_int_equal (proof->small->len, n);
  assert_true (gtk_widget_get_mapped (find (stage, FF_TYPE_PREVIEW, NULL)));
  assert_string_equal (ff_page_get_info (FF_PAGE (page_of (stage)))->name, "briefs");
  ff_stage_free (stage);
}

static void
test_a_page_is_told_in_words (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  const FfProof *proof = ff_briefs_page_get_proof (page_of (stage));
  GtkWidget *preview = find (stage, FF_TYPE_PREVIEW, NULL);
  g_autofree char *first = ff_proof_page_words (proof, 0);
  g_autofree char *pilots = ff_proof_page_words (proof, 2);
  g_autofree char *wrong = NULL;

  assert_true (g_str_has_prefix (first, "Crew lead, page 1 of "));
  assert_true (g_str_has_prefix (pilots, "Pilot, page 1 of "));
  assert_non_null (strstr (pilots, "6 sorties, first off by 16:30"));
  assert_non_null (strstr (pilots, "sortie 1"));
  assert_true (gtk_test_accessible_has_role (GTK_ACCESSIBLE (preview), GTK_ACCESSIBLE_ROLE_IMG));
  wrong = gtk_test_accessible_check_property (GTK_ACCESSIBLE (preview),
                                              GTK_ACCESSIBLE_PROPERTY_LABEL, first);
  assert_null (wrong);
  ff_stage_free (stage);
}

static void
test_keys_turn_the_pages (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  GtkWidget *page = GTK_WIDGET (page_of (stage));
  const guint last = ff_proof_n_pages (ff_briefs_page_get_proof (page_of (stage))) - 1;

  assert_true (press (page, "Right"));
  assert_int_equal (ff_briefs_page_get_number (page_of (stage)), 1);
  assert_true (press (page, "Page_Up"));
  assert_true (press (page, "Page_Up"));
  assert_int_equal (ff_briefs_page_get_number (page_of (stage)), 0);
  for (guint i = 0; i < last + 3; i++)
    press (page, "Page_Down");
  assert_int_equal (ff_briefs_page_get_number (page_of (stage)), last);
  gtk_widget_set_direction (page, GTK_TEXT_DIR_RTL);
  assert_true (press (page, "Right"));
  assert_int_equal (ff_briefs_page_get_number (page_of (stage)), last - 1);
  ff_stage_free (stage);
}

static void
test_a_small_page_becomes_the_large_one (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  GtkFlowBox *thumbs = GTK_FLOW_BOX (find (stage, GTK_TYPE_FLOW_BOX, NULL));

  gtk_flow_box_select_child (thumbs, gtk_flow_box_get_child_at_index (thumbs, 1));
  assert_int_equal (ff_briefs_page_get_number (page_of (stage)), 1);
  ff_stage_free (stage);
}

static void
test_reader_and_paper_are_chosen (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  const guint all = ff_proof_n_pages (ff_briefs_page_get_proof (page_of (stage)));
  g_autofree char *token = NULL;
  double width, height;

  choose (stage, 0, 2);
  assert_int_equal (ff_briefs_page_get_proof (page_of (stage))->wish.what, 2);
  assert_true (ff_proof_n_pages (ff_briefs_page_get_proof (page_of (stage))) < all);
  choose (stage, 1, FF_PAPER_LETTER);
  ff_brief_page_size (ff_briefs_page_get_proof (page_of (stage))->brief, &width, &height);
  assert_close (width, 612, 0.01);
  token = ff_settings_dup_text ("paper");
  assert_string_equal (token, "letter");
  ff_stage_free (stage);

  stage = stage_with_briefs (1200);
  assert_int_equal (ff_briefs_page_get_proof (page_of (stage))->paper, FF_PAPER_LETTER);
  ff_settings_set_text ("paper", "a4");
  ff_stage_free (stage);
}

static void
test_an_edit_changes_the_sheets_and_nothing_blinks (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  GtkWidget *first = find (stage, FF_TYPE_PREVIEW, NULL);
  g_autoptr (FfJob) job = ff_keeper_dup_job (stage->keeper, ff_keeper_job (stage->keeper)->id);
  g_autoptr (GError) error = NULL;

  ff_set_text (&job->title, "Herring wharf");
  assert_true (ff_keeper_save_job (stage->keeper, job, "Title changed", &error));
  assert_true (is_shown (page_of (stage)));
  ff_stage_wait_for_plan (stage);
  assert_true (ff_stage_wait (is_shown, page_of (stage)));
  assert_string_equal (ff_briefs_page_get_proof (page_of (stage))->facts->job, "Herring wharf");
  assert_ptr_equal (find (stage, FF_TYPE_PREVIEW, NULL), first);
  ff_stage_free (stage);
}

static void
test_what_is_missing_is_named (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  GPtrArray *missing = ff_briefs_page_get_proof (page_of (stage))->facts->missing;

  assert_true (missing->len > 0);
  for (guint i = 0; i < missing->len; i++)
    assert_non_null (find (stage, GTK_TYPE_LABEL, g_ptr_array_index (missing, i)));
  ff_stage_free (stage);
}

static void
test_what_is_saved_can_be_read (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  g_autofree char *path = g_build_filename (stage->folder, "brief.pdf", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *text = NULL;

  ff_briefs_page_save (page_of (stage), file);
  assert_true (ff_stage_wait (is_idle, page_of (stage)));
  text = run ("pdftotext", path, "-");
  assert_non_null (strstr (text, "Skarrowick"));
  assert_non_null (strstr (text, "EXAMPLE, not a place to fly"));
  assert_non_null (strstr (text, "Camera operator"));
  ff_stage_settle ();
  assert_true (says (GTK_WIDGET (stage->window), path));
  ff_stage_free (stage);
}

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (dir != NULL && g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

/* A file for each that stands alone, by plain names; those that are there are asked about. */
static void
test_all_goes_into_one_folder (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  g_autofree char *path = g_build_filename (stage->folder, "stick", NULL);
  g_autofree char *pilot
      = g_build_filename (path, "Skarrowick tidal mill 2027-09-18 vA pilot.pdf", NULL);
  g_autofree char *pack
      = g_build_filename (path, "Skarrowick tidal mill 2027-09-18 vA pack list.pdf", NULL);
  g_autoptr (GFile) folder = g_file_new_for_path (path);
  g_autofree char *text = NULL;
  g_autofree char *listed = NULL;
  guint n;

  assert_int_equal (g_mkdir (path, 0700), 0);
  ff_briefs_page_save_all (page_of (stage), folder);
  assert_true (ff_stage_wait (is_idle, page_of (stage)));
  ff_stage_settle ();
  n = count_files (path);
  assert_true (n >= 10);
  text = run ("pdftotext", pilot, "-");
  assert_non_null (strstr (text, "Pilot"));
  assert_null (strstr (text, "Pack list"));
  listed = run ("pdftotext", pack, "-");
  assert_non_null (strstr (listed, "ND32"));
  assert_true (says (GTK_WIDGET (stage->window), "Saved"));
  /* The second time nothing is written before somebody says so. */
  g_unlink (pack);
  ff_briefs_page_save_all (page_of (stage), folder);
  ff_stage_settle ();
  assert_false (ff_briefs_page_is_busy (page_of (stage)));
  assert_false (g_file_test (pack, G_FILE_TEST_EXISTS));
  ff_stage_free (stage);
}

/* A file that grows past what the disk takes is not there at all, and those before it are. */
static void
test_a_full_disk_is_said (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  g_autofree char *path = g_build_filename (stage->folder, "stick", NULL);
  g_autoptr (GFile) folder = g_file_new_for_path (path);
  struct rlimit before, small;

  assert_int_equal (g_mkdir (path, 0700), 0);
  assert_int_equal (getrlimit (RLIMIT_FSIZE, &before), 0);
  signal (SIGXFSZ, SIG_IGN);
  small = before;
  small.rlim_cur = 2000;
  assert_int_equal (setrlimit (RLIMIT_FSIZE, &small), 0);
  ff_briefs_page_save_all (page_of (stage), folder);
  assert_true (ff_stage_wait (is_idle, page_of (stage)));
  assert_int_equal (setrlimit (RLIMIT_FSIZE, &before), 0);
  ff_stage_settle ();
  assert_int_equal (count_files (path), 0);
  assert_true (says (GTK_WIDGET (stage->window), "can't be written"));
  ff_stage_free (stage);
}

static void
test_telephones_are_off_until_wanted (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  GtkWidget *phones = find (stage, GTK_TYPE_CHECK_BUTTON, NULL);
  const FfMember *lead = g_ptr_array_index (ff_keeper_crew (stage->keeper), 0);
  g_autoptr (FfMember) member = ff_keeper_dup_member (stage->keeper, lead->id);
  g_autoptr (GError) error = NULL;
  const FfSheetMember *shown;

  ff_set_text (&member->phone, "+44 1632 960001");
  assert_true (ff_keeper_save_member (stage->keeper, member, "Telephone changed", &error));
  ff_stage_wait_for_plan (stage);
  assert_true (ff_stage_wait (is_idle, page_of (stage)));
  shown = g_ptr_array_index (ff_briefs_page_get_proof (page_of (stage))->facts->crew, 0);
  assert_string_equal (shown->phone, "");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (phones), TRUE);
  assert_true (ff_stage_wait (is_idle, page_of (stage)));
  shown = g_ptr_array_index (ff_briefs_page_get_proof (page_of (stage))->facts->crew, 0);
  assert_string_equal (shown->phone, "+44 1632 960001");
  ff_stage_free (stage);
}

static void
test_everything_can_be_reached (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  const guint roles = ff_proof_n_pages (ff_briefs_page_get_proof (page_of (stage)));
  guint beside = 0, all;

  for (guint i = 6; i + 1 < ff_printables_count (); i++)
    {
      choose (stage, 0, i);
      beside += ff_proof_n_pages (ff_briefs_page_get_proof (page_of (stage)));
    }
  choose (stage, 0, ff_printables_count () - 1);
  all = ff_proof_n_pages (ff_briefs_page_get_proof (page_of (stage)));
  assert_int_equal (all, roles + beside);
  ff_stage_free (stage);
}

static gboolean
is_frozen (gpointer page)
{
  return is_shown (page) && ff_briefs_page_get_proof (page)->frozen;
}

static void
test_who_was_briefed_is_noted (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  GtkWidget *list = find (stage, FF_TYPE_BRIEFED_LIST, NULL);
  g_autoptr (GError) error = NULL;

  assert_non_null (find (stage, GTK_TYPE_LABEL, "The plan is not frozen: it may still change."));
  assert_true (ff_keeper_freeze (stage->keeper, NULL, &error));
  ff_stage_wait_for_plan (stage);
  assert_true (ff_stage_wait (is_frozen, page_of (stage)));
  gtk_toggle_button_set_active (
      GTK_TOGGLE_BUTTON (gtk_widget_get_first_child (list)), TRUE);
  ff_stage_settle ();
  assert_true (says (list, "4 of 4 are not briefed"));
  g_signal_emit_by_name (find (stage, GTK_TYPE_BUTTON, "Was briefed"), "clicked");
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  assert_true (says (list, "3 of 4 are not briefed"));
  assert_true (says (list, "■ briefed on version A"));
  ff_stage_free (stage);
}

static void
test_the_large_page_grows (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  GtkWidget *page = GTK_WIDGET (page_of (stage));
  GtkWidget *large;
  int before, least;

  large = gtk_widget_get_last_child (gtk_widget_get_ancestor (
      find (stage, GTK_TYPE_TOGGLE_BUTTON, "_Whole page"), GTK_TYPE_BOX));
  assert_true (FF_IS_PREVIEW (large));
  before = gtk_widget_get_height (large);
  press (page, "plus");
  press (page, "plus");
  ff_stage_settle ();
  assert_true (gtk_widget_get_height (large) > before * 5 / 4);
  /* The window does not grow with it. */
  gtk_widget_measure (GTK_WIDGET (stage->window), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL,
                      NULL, NULL);
  assert_true (least <= 1200);
  for (guint i = 0; i < 4; i++)
    press (page, "minus");
  ff_stage_settle ();
  assert_true (gtk_widget_get_height (large) < 800);
  ff_stage_free (stage);
}

/* From what is missing to the very field. */
static void
test_what_is_missing_leads_to_its_field (void **state)
{
  FfStage *stage = stage_with_briefs (1200);

  gtk_widget_activate_action (GTK_WIDGET (page_of (stage)), "win.page", "s", "day:abort_word");
  ff_stage_settle ();
  assert_string_equal (ff_page_get_info (ff_window_get_page (stage->window))->name, "day");
  assert_non_null (gtk_widget_get_ancestor (
      gtk_root_get_focus (GTK_ROOT (stage->window)), FF_TYPE_ENTRY));
  ff_stage_free (stage);
}

static void
test_a_folder_that_takes_nothing_is_said (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  g_autofree char *path = g_build_filename (stage->folder, "no such folder", "brief.pdf", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  ff_briefs_page_save (page_of (stage), file);
  assert_true (ff_stage_wait (is_idle, page_of (stage)));
  ff_stage_settle ();
  assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  assert_false (says (GTK_WIDGET (stage->window), "Saved"));
  assert_true (says (GTK_WIDGET (stage->window), "no such folder"));
  ff_stage_free (stage);
}

static void
test_an_empty_job_says_what_to_enter (void **state)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_keeper_new_job (stage->keeper, &error);
  g_autofree char *path = g_build_filename (stage->folder, "brief.pdf", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  ff_keeper_open_job (stage->keeper, id);
  ff_stage_wait_for_plan (stage);
  ff_window_show_page (stage->window, "briefs");
  ff_stage_settle ();
  assert_null (ff_briefs_page_get_proof (page_of (stage)));
  assert_non_null (ff_keeper_why (stage->keeper));
  assert_non_null (find (stage, GTK_TYPE_LABEL, ff_keeper_why (stage->keeper)));
  /* Neither printing nor saving does anything but say so. */
  gtk_widget_activate_action (GTK_WIDGET (stage->window), "win.print", NULL);
  ff_briefs_page_save (page_of (stage), file);
  assert_false (ff_briefs_page_is_busy (page_of (stage)));
  assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  ff_stage_free (stage);
}

/* From the demo day to a job without a plan: its sheets must not stay. */
static void
test_another_job_has_none_of_these_sheets (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  g_autofree char *id = ff_job_find (ff_keeper_store (stage->keeper), "Brackenholt, first", NULL);

  ff_keeper_open_job (stage->keeper, id);
  ff_stage_wait_for_plan (stage);
  ff_window_show_page (stage->window, "briefs");
  ff_stage_settle ();
  assert_null (ff_briefs_page_get_proof (page_of (stage)));
  ff_stage_free (stage);
}

static void
test_printing_keeps_title_and_choices (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  FfProof *proof = (FfProof *) ff_briefs_page_get_proof (page_of (stage));
  g_autofree char *path = g_build_filename (stage->folder, "printed.pdf", NULL);
  g_autofree char *choices = g_build_filename (stage->folder, "config", "print.ini", NULL);
  g_autoptr (GtkPrintOperation) first = ff_printing_new (proof);
  g_autoptr (GtkPrintOperation) second = ff_printing_new (proof);
  g_autoptr (GtkPrintSettings) settings = gtk_print_settings_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  gtk_print_settings_set_n_copies (settings, 3);
  gtk_print_operation_set_print_settings (first, settings);
  gtk_print_operation_set_export_filename (first, path);
  assert_int_equal (gtk_print_operation_run (first, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL,
                                             &error),
                    GTK_PRINT_OPERATION_RESULT_APPLY);
  text = run ("pdfinfo", path, NULL);
  assert_non_null (strstr (text, ff_brief_title (proof->brief)));
  assert_non_null (strstr (text, "A4"));
  assert_true (ff_printing_remember (first, choices, &error));
  ff_printing_recall (second, choices);
  assert_int_equal (
      gtk_print_settings_get_n_copies (gtk_print_operation_get_print_settings (second)), 3);
  ff_printing_recall (second, "/dev/null");
  ff_stage_free (stage);
}

static void
test_whole_page_and_narrow (void **state)
{
  FfStage *stage = stage_with_briefs (1200);
  GtkWidget *whole = find (stage, GTK_TYPE_TOGGLE_BUTTON, "_Whole page");
  GtkWidget *large = gtk_widget_get_last_child (
      gtk_widget_get_parent (gtk_widget_get_parent (whole)));
  const int wide = gtk_widget_get_width (large);
  int least;

  assert_true (FF_IS_PREVIEW (large));
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (whole), TRUE);
  ff_stage_settle ();
  assert_true (gtk_widget_get_width (large) < wide);
  assert_true (gtk_widget_get_height (large) < 800);
  ff_stage_free (stage);

  stage = stage_with_briefs (400);
  gtk_widget_measure (GTK_WIDGET (stage->window), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL,
                      NULL, NULL);
  assert_true (least <= 400);
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_a_file_gets_a_name_that_any_disk_takes),
    cmocka_unit_test (test_a_long_name_is_cut_between_letters),
    cmocka_unit_test (test_only_sheets_that_exist_are_offered),
    cmocka_unit_test (test_the_sheets_stand_on_the_page),
    cmocka_unit_test (test_a_page_is_told_in_words),
    cmocka_unit_test (test_keys_turn_the_pages),
    cmocka_unit_test (test_a_small_page_becomes_the_large_one),
    cmocka_unit_test (test_reader_and_paper_are_chosen),
    cmocka_unit_test (test_an_edit_changes_the_sheets_and_nothing_blinks),
    cmocka_unit_test (test_what_is_missing_is_named),
    cmocka_unit_test (test_what_is_saved_can_be_read),
    cmocka_unit_test (test_all_goes_into_one_folder),
    cmocka_unit_test (test_a_full_disk_is_said),
    cmocka_unit_test (test_telephones_are_off_until_wanted),
    cmocka_unit_test (test_everything_can_be_reached),
    cmocka_unit_test (test_who_was_briefed_is_noted),
    cmocka_unit_test (test_the_large_page_grows),
    cmocka_unit_test (test_what_is_missing_leads_to_its_field),
    cmocka_unit_test (test_a_folder_that_takes_nothing_is_said),
    cmocka_unit_test (test_an_empty_job_says_what_to_enter),
    cmocka_unit_test (test_another_job_has_none_of_these_sheets),
    cmocka_unit_test (test_printing_keeps_title_and_choices),
    cmocka_unit_test (test_whole_page_and_narrow),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("briefs", tests, NULL, NULL);
}
