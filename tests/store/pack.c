/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was counted, watches, spares and carriers in the store; and what the states of the gear do to
 * plan and pack list of the demo day. */
#include "ff-test.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ff-carrier.h"
#include "ff-charge-watch.h"
#include "ff-crew.h"
#include "ff-day.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-pack-list.h"

static char *folder;
static FfStore *store;
static char *job_id;

static FfPackList *
pack_now (void)
{
  g_autoptr (GError) error = NULL;
  FfPackList *list = ff_pack_list_load (store, job_id, &error);

  assert_no_error (error);
  if (list == NULL)
    abort (); /* not reached; the compiler does not know */
  return list;
}

static FfDayPlan *
plan_now (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = ff_day_load (store, job_id, &error);
  FfDayPlan *plan = ff_day_plan (day, NULL, &error);

  assert_no_error (error);
  if (plan == NULL)
    abort ();
  return plan;
}

static void
set_state (const char *label, FfState state, const char *why, const char *with, const char *until)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_item_find (store, label, &error);

  ff_item_set_state (store, id, state, why, with, until, "MO", 1821200000, &error);
  assert_no_error (error);
}

static void
count (const char *label, FfPackStage stage, FfPackMark mark, const char *why, gint64 at)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_item_find (store, label, &error);
  g_autoptr (FfPackEvent) event = ff_pack_event_new (job_id, id);

  event->stage = stage;
  event->mark = mark;
  event->at = at;
  ff_set_text (&event->condition, why);
  ff_pack_event_append (store, event, &error);
  assert_no_error (error);
}

static FfPackEntry *
entry_of (const FfPackList *list, const char *label)
{
  g_autofree char *id = ff_item_find (store, label, NULL);

  return ff_pack_list_find (list, id);
}

static const FfPackMissing *
short_of (const FfPackList *list, const char *label)
{
  for (guint i = 0; i < list->shorts->len; i++)
    {
      const FfPackMissing *missing = g_ptr_array_index (list->shorts, i);

      if (strcmp (missing->item, label) == 0)
        return missing;
    }
  return NULL;
}

static const char *
reason_of (const FfPackList *list, const char *label)
{
  const FfPackMissing *missing = short_of (list, label);

  return missing != NULL ? missing->reason : "";
}

static gboolean
plan_uses (const FfDayPlan *plan, const char *label)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      if (strcmp (line->battery, label) == 0
          || g_ptr_array_find_with_equal_func (line->filters, label, g_str_equal, NULL))
        return TRUE;
    }
  return FALSE;
}

/* ---- What the states do ---- */

static void
test_a_lent_filter_leaves_plan_and_list (void **state)
{
  g_autoptr (FfDayPlan) before = plan_now (), after = NULL;
  g_autoptr (FfPackList) list = NULL;
  const FfPackMissing *missing;

  assert_true (plan_uses (before, "ND16"));
  set_state ("ND16", FF_STATE_OUT, "lent", "Brackenholt", "2027-09-19");
  after = plan_now ();
  list = pack_now ();
  missing = short_of (list, "ND16");
  assert_false (plan_uses (after, "ND16"));
  assert_null (entry_of (list, "ND16"));
  g_assert (missing != NULL); /* one that never comes back, for the compiler's sake */
  assert_string_equal (missing->reason, "out with Brackenholt, back Sun 19 Sep: lent");
  assert_true (*missing->advice != '\0');
  for (guint i = 0; i < list->swaps->len; i++)
    assert_null (strstr (g_ptr_array_index (list->swaps, i), "ND16"));
}

static void
test_a_quarantined_battery_leaves_no_spare (void **state)
{
  g_autoptr (FfPackList) before = pack_now (), list = NULL;
  g_autoptr (FfDayPlan) plan = NULL;

  assert_int_equal (before->shorts->len, 0);
  set_state ("b3", FF_STATE_QUARANTINED, "swollen", NULL, NULL);
  plan = plan_now ();
  list = pack_now ();
  assert_false (plan_uses (plan, "b3"));
  assert_int_equal (plan->missed->len, 0);
  assert_null (entry_of (list, "b3"));
  assert_non_null (short_of (list, "b3"));
  assert_non_null (strstr (reason_of (list, "battery"), "no spare left"));
  for (guint i = 0; i < list->evening->turns->len; i++)
    assert_string_not_equal (((FfChargeTurn *) g_ptr_array_index (list->evening->turns, i))->battery,
                             "b3");
}

/* The claim behind it: with five, any one may fail; with four, none. */
static void
test_the_spare_is_what_the_plan_can_lose (void **state)
{
  static const char *const all[] = { "b1", "b2", "b3", "b4", "b5" };
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = ff_day_load (store, job_id, &error);
  gboolean loses = FALSE;

  for (guint i = 0; i < 5; i++)
    {
      const char *one[] = { all[i], NULL }, *two[] = { "b3", all[i], NULL };
      g_autoptr (FfDayPlan) without = ff_day_plan (day, &(FfDayChange) { .without = one }, &error);
      g_autoptr (FfDayPlan) worse = ff_day_plan (day, &(FfDayChange) { .without = two }, &error);

      assert_int_equal (without->missed->len, 0);
      loses = loses || (i != 2 && worse->missed->len > 0);
    }
  assert_true (loses);
}

static void
test_a_lapsed_document_is_short (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_item_find (store, "insurance", &error);
  g_autoptr (FfItem) item = ff_item_load (store, id, &error);
  g_autoptr (FfPackList) list = NULL;

  ff_set_text (&item->valid_until, "2027-09-17");
  assert_true (ff_item_save (store, item, &error));
  list = pack_now ();
  assert_null (entry_of (list, "insurance"));
  assert_non_null (strstr (reason_of (list, "insurance"), "no longer valid"));
}

static void
test_a_broken_aircraft_still_draws_what_it_needs (void **state)
{
  g_autoptr (FfPackList) list = NULL;

  set_state ("aircraft 1", FF_STATE_DEFECT, "motor rough", NULL, NULL);
  list = pack_now ();
  assert_non_null (strstr (reason_of (list, "aircraft 1"), "motor rough"));
  assert_non_null (entry_of (list, "P1"));
  assert_non_null (entry_of (list, "cable"));
}

static void
test_more_recording_needs_more_cards (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_item_find (store, "camera 1", &error);
  g_autoptr (FfItem) camera = ff_item_load (store, id, &error);
  g_autoptr (FfPackList) list = NULL;

  camera->bitrate_mbits = 239; /* 54 min: 97 GB in V30 cards */
  assert_true (ff_item_save (store, camera, &error));
  list = pack_now ();
  assert_int_equal (entry_of (list, "C1")->need, FF_PACK_NEEDED);
  assert_int_equal (entry_of (list, "C2")->need, FF_PACK_SPARE);
  camera->bitrate_mbits = 400; /* 50 MB/s, which V30 does not promise */
  assert_true (ff_item_save (store, camera, &error));
  ff_pack_list_free (g_steal_pointer (&list));
  list = pack_now ();
  assert_null (entry_of (list, "C1"));
  assert_non_null (short_of (list, "card"));
}

static void
test_two_jobs_on_one_day (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *other_id = ff_job_find (store, "Brackenholt, second", &error);
  g_autofree char *b2 = ff_item_find (store, "b2", &error);
  g_autoptr (FfJob) other = ff_job_load (store, other_id, &error);
  g_autoptr (FfPackList) list = NULL;

  g_ptr_array_add (other->item_ids, g_strdup (b2));
  ff_set_text (&other->date, "2027-09-18");
  assert_true (ff_job_save (store, other, &error));
  list = pack_now ();
  assert_int_equal (list->clashes->len, 1);
  assert_string_equal (g_ptr_array_index (list->clashes, 0),
                       "In two jobs on one day: b2 is also on the list of Brackenholt, second "
                       "day.");
}

static void
test_a_job_that_cant_be_planned_is_packed_by_its_list (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJob) job = ff_job_load (store, job_id, &error);
  g_autoptr (FfPackList) list = NULL;

  ff_set_text (&job->place_id, "");
  assert_true (ff_job_save (store, job, &error));
  list = pack_now ();
  assert_non_null (entry_of (list, "ND64"));
  assert_non_null (entry_of (list, "C4"));
  assert_non_null (strstr (g_ptr_array_index (list->remarks, 0), "Not planned"));
}

/* ---- Counting ---- */

static void
test_the_last_of_a_stage_holds (void **state)
{
  g_autoptr (FfPackList) list = NULL;

  count ("b1", FF_PACK_OUT, FF_PACK_DONE, "", 100);
  count ("b1", FF_PACK_OUT, FF_PACK_NOT_TAKEN, "flat", 90); /* entered later: clocks may be off */
  count ("b2", FF_PACK_OUT, FF_PACK_DONE, "", 100);
  count ("b2", FF_PACK_OUT, FF_PACK_OPEN, "", 101);
  count ("C4", FF_PACK_OUT, FF_PACK_DONE, "", 102);
  list = pack_now ();
  assert_int_equal (entry_of (list, "b1")->marks[FF_PACK_OUT], FF_PACK_NOT_TAKEN);
  assert_string_equal (entry_of (list, "b1")->conditions[FF_PACK_OUT], "flat");
  assert_int_equal (entry_of (list, "b2")->marks[FF_PACK_OUT], FF_PACK_OPEN);
  assert_true (entry_of (list, "C4")->extra);
  assert_int_equal (ff_pack_list_left (list, FF_PACK_OUT), list->n_lines - 1);
  assert_int_equal (ff_pack_list_left (list, FF_PACK_GROUND), 1);
}

static void
test_wrong_counts_are_refused (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_item_find (store, "b1", &error);
  g_autoptr (FfPackEvent) event = ff_pack_event_new (job_id, id);

  event->mark = FF_PACK_NOT_TAKEN;
  assert_false (ff_pack_event_append (store, event, &error));
  assert_error (error, FF_ERROR_INPUT, "reason");
  ff_set_text (&event->condition, "flat");
  event->stage = FF_PACK_BASE;
  assert_false (ff_pack_event_append (store, event, &error));
  assert_error (error, FF_ERROR_INPUT, "out-check");
  event->stage = FF_PACK_OUT;
  event->mark = FF_PACK_MISSING;
  assert_false (ff_pack_event_append (store, event, &error));
  assert_error (error, FF_ERROR_INPUT, "out-check");
}

/* What was counted keeps job and item; a watch keeps its member. */
static void
test_what_was_counted_is_kept (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *card = ff_item_find (store, "C4", &error);
  g_autoptr (GPtrArray) members = ff_members_load (store, &error);

  count ("C4", FF_PACK_OUT, FF_PACK_DONE, "", 100);
  assert_false (ff_item_delete (store, card, &error));
  assert_error (error, FF_ERROR_INPUT, "history");
  assert_false (ff_job_delete (store, job_id, &error));
  assert_error (error, FF_ERROR_INPUT, "log");
}

/* ---- Watches, carriers ---- */

static void
test_watches_are_in_order (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) watches = ff_watches_load (store, job_id, &error);
  FfWatch *second = ff_watch_new ();

  assert_int_equal (watches->len, 1);
  *second = *(FfWatch *) g_ptr_array_index (watches, 0);
  second->date = g_strdup (second->date);
  second->member_id = g_strdup (second->member_id);
  second->from_clock = 22 * 60;
  second->to_clock = 25 * 60;
  g_ptr_array_add (watches, second);
  assert_false (ff_watches_save (store, job_id, watches, &error));
  assert_error (error, FF_ERROR_INPUT, "before the one ahead");
  second->from_clock = 23 * 60;
  assert_true (ff_watches_save (store, job_id, watches, &error));
  second->to_clock = 22 * 60;
  assert_false (ff_watches_save (store, job_id, watches, &error));
  assert_error (error, FF_ERROR_INPUT, "ends before it begins");
}

static void
test_a_carrier_has_a_source_and_a_day (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfCarrier) carrier = ff_carrier_new ();
  g_autoptr (GPtrArray) again = NULL;
  FfCarrierBand *band = ff_carrier_band_new (), *larger = ff_carrier_band_new ();

  ff_set_text (&carrier->name, "Northern Air");
  assert_false (ff_carrier_save (store, carrier, &error));
  assert_error (error, FF_ERROR_INPUT, "source");
  ff_set_text (&carrier->source, "their page on batteries");
  assert_false (ff_carrier_save (store, carrier, &error));
  assert_error (error, FF_ERROR_INPUT, "the day it was read");
  ff_set_text (&carrier->read_on, "2027-09-01");
  assert_false (ff_carrier_save (store, carrier, &error));
  assert_error (error, FF_ERROR_INPUT, "size band");
  band->up_to_wh = larger->up_to_wh = 100;
  g_ptr_array_add (carrier->bands, band);
  g_ptr_array_add (carrier->bands, larger);
  assert_false (ff_carrier_save (store, carrier, &error));
  assert_error (error, FF_ERROR_INPUT, "higher");
  larger->up_to_wh = NAN; /* any */
  larger->approval = TRUE;
  assert_true (ff_carrier_save (store, carrier, &error));
  again = ff_carriers_load (store, &error);
  assert_int_equal (again->len, 3); /* before the two examples */
  assert_true (ff_fields_equal (&ff_carrier_fields, carrier, g_ptr_array_index (again, 0)));
  assert_int_equal (((FfCarrier *) g_ptr_array_index (again, 0))->bands->len, 2);
  assert_true (ff_carrier_delete (store, carrier->id, &error));
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);
  if (store == NULL || !ff_demo_fill (store, NULL))
    return 1;
  job_id = ff_job_find (store, "Skarrowick", NULL);
  return 0;
}

static int
tear_down (void **state)
{
  g_clear_pointer (&job_id, g_free);
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_a_lent_filter_leaves_plan_and_list),
    CASE (test_a_quarantined_battery_leaves_no_spare),
    CASE (test_the_spare_is_what_the_plan_can_lose),
    CASE (test_a_lapsed_document_is_short),
    CASE (test_a_broken_aircraft_still_draws_what_it_needs),
    CASE (test_more_recording_needs_more_cards),
    CASE (test_two_jobs_on_one_day),
    CASE (test_a_job_that_cant_be_planned_is_packed_by_its_list),
    CASE (test_the_last_of_a_stage_holds),
    CASE (test_wrong_counts_are_refused),
    CASE (test_what_was_counted_is_kept),
    CASE (test_watches_are_in_order),
    CASE (test_a_carrier_has_a_source_and_a_day),
  };

  return cmocka_run_group_tests_name ("pack", tests, NULL, NULL);
}
