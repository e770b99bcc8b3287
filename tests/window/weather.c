/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The weather call on the demo day: a report is pasted, a gust measured, the sorties say so, the crew
 * stands by and its clock runs, and the page is saved. */
#include "ff-stage.h"

#include <glib/gstdio.h>
#include <string.h>

#include "ff-call-form.h"
#include "ff-civil.h"
#include "ff-measure-form.h"
#include "ff-pick.h"
#include "ff-report-form.h"
#include "ff-weather-page.h"

static FfWeatherPage *
page_of (FfStage *stage)
{
  return FF_WEATHER_PAGE (ff_window_get_page (stage->window));
}

static gint64
instant (const char *text)
{
  gint64 at = 0;

  assert_true (ff_instant_parse (text, &at, NULL));
  return at;
}

/* On the day, at 17:30 of the place. */
static FfStage *
stage_on_weather (void)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);

  ff_keeper_set_initials (stage->keeper, "JV");
  ff_stage_open_demo_job (stage);
  ff_stage_wait_for_plan (stage);
  ff_window_show_page (stage->window, "weather");
  ff_stage_settle ();
  ff_weather_page_set_now (page_of (stage), instant ("2027-09-18T17:30+01:00"));
  return stage;
}

static gboolean
says_below (GtkWidget *root, const char *part)
{
  if (!gtk_widget_get_visible (root) || !gtk_widget_get_child_visible (root))
    return FALSE;
  if (GTK_IS_LABEL (root) && strstr (gtk_label_get_text (GTK_LABEL (root)), part) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (says_below (child, part))
      return TRUE;
  return FALSE;
}

static gboolean
says (FfStage *stage, const char *part)
{
  return says_below (GTK_WIDGET (ff_window_get_page (stage->window)), part);
}

static gpointer
form (FfStage *stage, GType type)
{
  GtkWidget *found = ff_stage_find (GTK_WIDGET (page_of (stage)), type, NULL);

  assert_non_null (found);
  return found;
}

static void
enter (FfStage *stage, gpointer filled)
{
  g_signal_emit_by_name (filled, "enter");
  ff_stage_settle ();
}

/* The first field of a form, as the keyboard meets it. */
static void
type_value (FfStage *stage, const char *kind, const char *text)
{
  FfMeasureForm *measure = form (stage, FF_TYPE_MEASURE_FORM);

  ff_measure_form_pick (measure, kind);
  ff_entry_reset (FF_ENTRY (ff_stage_find (GTK_WIDGET (measure), FF_TYPE_ENTRY, NULL)), text);
  enter (stage, measure);
}

static const FfLimitToday *
row (FfStage *stage, const char *kind)
{
  const FfWeatherToday *today = ff_weather_page_today (page_of (stage));

  for (guint i = 0; i < today->order->len; i++)
    {
      const FfLimitToday *each = g_ptr_array_index (today->order, i);

      if (g_str_equal (each->kind, kind))
        return each;
    }
  fail_msg ("no row of %s", kind);
  return NULL;
}

static void
test_report_then_gust (void **state)
{
  FfStage *stage = stage_on_weather ();
  FfReportForm *report = form (stage, FF_TYPE_REPORT_FORM);

  ff_report_form_paste (report, "EGXX 181620Z 24008KT 9999 FEW030 15/08 Q1015 WHAT");
  assert_true (says (stage, "Gust: not reported: may be up to just under"));
  assert_true (says (stage, "Not understood: WHAT"));
  enter (stage, report);
  assert_int_equal (row (stage, "gust")->answer, FF_LIMIT_NOT_ASSESSED);
  assert_true (says (stage, "distance not given"));
  type_value (stage, "gust", "10.8");
  assert_int_equal (row (stage, "gust")->answer, FF_LIMIT_OUTSIDE);
  assert_non_null (strstr (row (stage, "gust")->found, "measured 17:30 by JV"));
  assert_true (says (stage, "1 limit outside"));
  ff_stage_wait_for_plan (stage);
  ff_window_show_page (stage->window, "sorties");
  ff_stage_settle ();
  assert_true (says (stage, "gust at flying height: 10.8 m/s"));
  ff_window_show_page (stage->window, "day");
  ff_stage_settle ();
  assert_true (says (stage, "✕ 1 limit outside"));
  ff_stage_free (stage);
}

static void
test_a_forecast_marks_the_sorties_it_crosses (void **state)
{
  FfStage *stage = stage_on_weather ();
  FfReportForm *report = form (stage, FF_TYPE_REPORT_FORM);

  ff_report_form_paste (report, "TAF EGXX 181500Z 1815/1824 24008KT 9999 SCT030 "
                                "TEMPO 1817/1819 24020G32KT");
  enter (stage, report);
  ff_stage_wait_for_plan (stage);
  ff_window_show_page (stage->window, "sorties");
  ff_stage_settle ();
  assert_true (says (stage, "✕ gust at flying height: forecast"));
  ff_stage_free (stage);
}

/* The crew's own share of what thin air takes: picked, stored, taken back. */
static void
test_thin_air_is_picked (void **state)
{
  FfStage *stage = stage_on_weather ();
  GtkWidget *pick = ff_stage_find (GTK_WIDGET (page_of (stage)), GTK_TYPE_LABEL,
                                   "Minutes that thin air takes");

  while (pick != NULL && !FF_IS_PICK (pick))
    pick = gtk_widget_get_parent (pick);
  g_assert (pick != NULL);
  assert_int_equal (ff_pick_get_value (FF_PICK (pick)), 0);
  ff_pick_set_value (FF_PICK (pick), 2);
  g_signal_emit_by_name (pick, "picked", 2);
  ff_stage_settle ();
  assert_close (ff_keeper_thin_air (stage->keeper), 0.0, 0.0);
  ff_keeper_undo (stage->keeper, NULL);
  ff_stage_settle ();
  assert_close (ff_keeper_thin_air (stage->keeper), 1.0, 0.0);
  assert_int_equal (ff_pick_get_value (FF_PICK (pick)), 0);
  ff_stage_free (stage);
}

static void
test_nothing_is_decided_for_the_crew (void **state)
{
  FfStage *stage = stage_on_weather ();

  enter (stage, form (stage, FF_TYPE_CALL_FORM));
  assert_true (says (stage, "Choose one of the three"));
  assert_int_equal (ff_weather_page_today (page_of (stage))->calls->len, 0);
  ff_stage_free (stage);
}

static void
test_standby_clock_runs (void **state)
{
  FfStage *stage = stage_on_weather ();
  FfCallForm *call = form (stage, FF_TYPE_CALL_FORM);

  ff_call_form_fill (call, FF_CALL_STAND_BY, "gusts", "18:00");
  enter (stage, call);
  assert_true (says (stage, "Standing by since 17:30: 0 min. Until 18:00: 30 min left."));
  ff_weather_page_set_now (page_of (stage), instant ("2027-09-18T17:41+01:00"));
  assert_true (says (stage, "Standing by since 17:30: 11 min. Until 18:00: 19 min left."));
  ff_call_form_fill (call, FF_CALL_NO_GO, "gusts stay", NULL);
  enter (stage, call);
  assert_false (says (stage, "Standing by since"));
  assert_true (says (stage, "no go (JV): gusts stay"));
  ff_stage_free (stage);
}

static void
test_the_page_is_saved (void **state)
{
  FfStage *stage = stage_on_weather ();
  g_autofree char *path = g_build_filename (stage->folder, "call.pdf", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *bytes = NULL;

  type_value (stage, "gust", "10.8");
  ff_weather_page_save (page_of (stage), file);
  assert_true (g_file_get_contents (path, &bytes, NULL, NULL));
  assert_true (g_str_has_prefix (bytes, "%PDF"));
  ff_stage_free (stage);
}

static void
test_a_wrong_value_is_said_beside_its_field (void **state)
{
  FfStage *stage = stage_on_weather ();

  type_value (stage, "gust", "strong");
  assert_int_equal (ff_weather_page_today (page_of (stage))->measured->len, 0);
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_report_then_gust),
    cmocka_unit_test (test_a_forecast_marks_the_sorties_it_crosses),
    cmocka_unit_test (test_thin_air_is_picked),
    cmocka_unit_test (test_nothing_is_decided_for_the_crew),
    cmocka_unit_test (test_standby_clock_runs),
    cmocka_unit_test (test_the_page_is_saved),
    cmocka_unit_test (test_a_wrong_value_is_said_beside_its_field),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("weather", tests, NULL, NULL);
}
