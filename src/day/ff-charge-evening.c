/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-charge-evening.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-battery-log.h"
#include "ff-charge-queue.h"
#include "ff-charge-watch.h"
#include "ff-crew.h"
#include "ff-day-private.h"

typedef struct {
  const FfDay *day;
  GPtrArray *watches;   /* FfWatch */
  GPtrArray *members;   /* FfMember */
  GPtrArray *chargers;  /* FfItem, borrowed */
  GArray *times, *benches; /* FfChargeWatch, FfChargeBench */
  GPtrArray *batteries; /* char*, borrowed: labels of those that are to be charged */
  GArray *not_before;   /* gint64, as batteries */
  GArray *busy;         /* FfChargeBusy */
  FfChargeEvening *evening;
} Evening;

static void
turn_free (gpointer data)
{
  FfChargeTurn *turn = data;

  g_free (turn->battery);
  g_free (turn->charger);
  g_free (turn->attended_by);
  g_free (turn);
}

void
ff_charge_evening_free (FfChargeEvening *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->turns);
  g_ptr_array_unref (self->not_charged);
  g_ptr_array_unref (self->remarks);
  g_free (self->words);
  g_free (self->trouble);
  g_free (self);
}

static gboolean
add_times (Evening *self, GError **error)
{
  for (guint i = 0; i < self->watches->len; i++)
    {
      const FfWatch *watch = g_ptr_array_index (self->watches, i);
      FfChargeWatch time;
      FfDate date;

      if (!ff_date_parse (watch->date, &date, error)
          || !ff_instant_from_clock (date, watch->from_clock, self->day->zone, &time.from, error)
          || !ff_instant_from_clock (date, watch->to_clock, self->day->zone, &time.to, error))
        return FALSE;
      g_array_append_val (self->times, time);
    }
  return TRUE;
}

static void
add_chargers (Evening *self)
{
  for (guint i = 0; i < self->day->items->len; i++)
    {
      FfItem *item = g_ptr_array_index (self->day->items, i);
      FfChargeBench bench = { (guint) item->slots, item->charge_minutes };

      if (item->kind != FF_KIND_CHARGER || item->state != FF_STATE_SERVICEABLE
          || !ff_day_uses (self->day, item))
        continue;
      g_ptr_array_add (self->chargers, item);
      g_array_append_val (self->benches, bench);
    }
}

/* ---- What was said of the batteries ---- */

/* The last that was said, while it still holds; NULL: it is taken as empty. */
static const FfBatteryDay *
said_of (const FfDay *day, const char *label)
{
  const FfItem *item = ff_items_labelled (day->items, label);
  const FfBatteryDay *said
      = item != NULL ? g_hash_table_lookup (day->battery_days, item->id) : NULL;
  gint64 from, to;

  if (said == NULL || !day->has_date)
    return NULL;
  ff_day_bounds (day->date, day->zone, &from, &to);
  if (said->at < from - 24 * 60 * FF_MINUTE || said->at >= to)
    return NULL;
  for (guint i = 0; i < day->battery_flights->len; i++)
    {
      const FfBatteryFlight *flight = g_ptr_array_index (day->battery_flights, i);

      if (flight->off >= said->at && g_str_equal (flight->battery_id, item->id))
        return NULL;
    }
  return said;
}

static void
remark (Evening *self, char *sentence)
{
  g_ptr_array_add (self->evening->remarks, sentence);
}

static void
queue_battery (Evening *self, const char *label, gint64 not_before)
{
  g_ptr_array_add (self->batteries, (gpointer) label);
  g_array_append_val (self->not_before, not_before);
}

static gboolean
is_attended (const Evening *self, gint64 at)
{
  for (guint i = 0; i < self->times->len; i++)
    {
      const FfChargeWatch *watch = &g_array_index (self->times, FfChargeWatch, i);

      if (at >= watch->from && at <= watch->to)
        return TRUE;
    }
  return FALSE;
}

/* Which slot it is in nobody enters: the next that is not taken yet. */
static void
take_slot (Evening *self, gint64 until)
{
  guint taken = self->busy->len;

  for (guint i = 0; i < self->benches->len; i++)
    {
      guint slots = g_array_index (self->benches, FfChargeBench, i).slots;
      FfChargeBusy busy = { i, taken, until };

      if (taken < slots)
        {
          g_array_append_val (self->busy, busy);
          return;
        }
      taken -= slots;
    }
}

static void
add_charging (Evening *self, const char *label, const FfBatteryDay *said)
{
  int minutes = self->benches->len > 0
                    ? g_array_index (self->benches, FfChargeBench, 0).minutes : 0;
  gint64 until = said->until > 0 ? said->until : said->at + (gint64) minutes * FF_MINUTE;
  g_autofree char *clock = ff_instant_clock ((double) until, self->day->zone);

  take_slot (self, until);
  remark (self, g_strdup_printf (is_attended (self, until)
                                     ? _ ("%s charges until %s; its slot is taken until then.")
                                     : _ ("%s charges until %s, and nobody is entered to be there "
                                          "then: a charge is attended to its end."),
                                 label, clock));
}

static int
cool_minutes (const Evening *self)
{
  const FfItem *charger
      = self->chargers->len > 0 ? g_ptr_array_index (self->chargers, 0) : NULL;

  return charger != NULL ? charger->cool_minutes : 0;
}

static void
add_hot (Evening *self, const char *label, const FfBatteryDay *said)
{
  gint64 cool = said->at + (gint64) cool_minutes (self) * FF_MINUTE;
  g_autofree char *at = ff_instant_clock ((double) said->at, self->day->zone);
  g_autofree char *then = ff_instant_clock ((double) cool, self->day->zone);

  queue_battery (self, label, cool);
  remark (self, g_strdup_printf (_ ("%s: hot at %s; it cools, and goes in at %s at the earliest."),
                                 label, at, then));
}

/* How much is in it shortens no charge here: the last of a charge is the slowest. */
static void
add_part (Evening *self, const char *label, const FfBatteryDay *said)
{
  g_autofree char *at = ff_instant_clock ((double) said->at, self->day->zone);

  queue_battery (self, label, G_MININT64);
  if (said->state == FF_BATTERY_DAY_COLD)
    remark (self, g_strdup_printf (_ ("%s: cold at %s; let it come to room temperature before it "
                                      "is charged."),
                                   label, at));
  else
    /* Translators: label of a battery, "part-used" or "storage charge", clock time. */
    remark (self, g_strdup_printf (_ ("%s: %s at %s; a whole charge is counted for it."), label,
                                   ff_name_text (&ff_names_battery_day, (int) said->state), at));
}

static void
add_battery (Evening *self, const char *label)
{
  const FfBatteryDay *said = said_of (self->day, label);
  g_autofree char *at
      = said != NULL ? ff_instant_clock ((double) said->at, self->day->zone) : NULL;

  if (said == NULL)
    queue_battery (self, label, G_MININT64);
  else if (said->state == FF_BATTERY_DAY_CHARGING)
    add_charging (self, label, said);
  else if (said->state == FF_BATTERY_DAY_HOT)
    add_hot (self, label, said);
  else if (ff_battery_day_is_full (said))
    remark (self, g_strdup_printf (_ ("%s: full at %s; it is not charged again."), label, at));
  else
    add_part (self, label, said);
}

static const char *
name_of (const Evening *self, guint watch)
{
  const FfWatch *kept = g_ptr_array_index (self->watches, watch);

  for (guint i = 0; i < self->members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (self->members, i);

      if (g_str_equal (member->id, kept->member_id))
        return member->name;
    }
  return "";
}

static void
add_turns (Evening *self, const FfChargePlan *plan)
{
  for (guint i = 0; i < plan->charges->len; i++)
    {
      const FfCharge *charge = &g_array_index (plan->charges, FfCharge, i);
      const FfItem *charger = g_ptr_array_index (self->chargers, charge->charger);
      FfChargeTurn *turn = g_new0 (FfChargeTurn, 1);

      turn->battery = g_strdup (g_ptr_array_index (self->batteries, charge->battery));
      turn->charger = g_strdup (charger->label);
      turn->slot = charge->slot + 1;
      turn->from = charge->from;
      turn->to = charge->to;
      turn->attended_by = g_strdup (name_of (self, charge->watch));
      g_ptr_array_add (self->evening->turns, turn);
    }
  for (guint i = 0; i < self->batteries->len; i++)
    if (!ff_charges_hold (plan->charges, i))
      g_ptr_array_add (self->evening->not_charged,
                       g_strdup (g_ptr_array_index (self->batteries, i)));
}

static guint
count_slots (const Evening *self)
{
  guint slots = 0;

  for (guint i = 0; i < self->benches->len; i++)
    slots += g_array_index (self->benches, FfChargeBench, i).slots;
  return slots;
}

static char *
length_words (int minutes)
{
  if (minutes % 60 == 0)
    return g_strdup_printf (_ ("%d h"), minutes / 60);
  return g_strdup_printf (_ ("%d h %02d min"), minutes / 60, minutes % 60);
}

static void
say_length (const Evening *self, GString *words)
{
  guint slots = count_slots (self), batteries = self->batteries->len;
  g_autofree char *length = length_words (self->evening->busy_minutes);
  g_autofree char *many = g_strdup_printf (ngettext ("%u battery", "%u batteries", batteries),
                                           batteries);
  g_autofree char *wide = g_strdup_printf (ngettext ("%u slot", "%u slots", slots), slots);

  /* Translators: "5 batteries, 1 slot: 5 h." */
  g_string_append_printf (words, _ ("%s, %s: %s."), many, wide, length);
}

static char *
say_words (const Evening *self)
{
  FfChargeEvening *evening = self->evening;
  GString *words = g_string_new (NULL);

  if (evening->busy_minutes > 0)
    say_length (self, words);
  if (evening->first_by > 0)
    {
      g_autofree char *first = ff_instant_clock ((double) evening->first_by, self->day->zone);
      g_autofree char *done = ff_instant_clock ((double) evening->done_at, self->day->zone);
      const FfChargeTurn *turn = g_ptr_array_index (evening->turns, 0);
      g_autofree char *begin = ff_instant_clock ((double) turn->from, self->day->zone);

      g_string_append_printf (words, _ (" Begun at %s, done at %s; the first must go in by %s."),
                              begin, done, first);
    }
  return g_string_free (words, FALSE);
}

static char *
join (const GPtrArray *labels)
{
  GString *joined = g_string_new (NULL);

  for (guint i = 0; i < labels->len; i++)
    g_string_append_printf (joined, "%s%s", i > 0 ? ", " : "",
                            (const char *) g_ptr_array_index (labels, i));
  return g_string_free (joined, FALSE);
}

static char *
say_trouble (const Evening *self)
{
  g_autofree char *left = join (self->evening->not_charged);

  if (self->batteries->len == 0)
    return g_strdup ("");
  if (self->chargers->len == 0)
    return g_strdup (_ ("No serviceable charger is on the list of the job: nothing can be "
                        "charged."));
  if (self->watches->len == 0)
    return g_strdup (_ ("Nobody is entered to attend the charger before the job, and a charge that "
                        "nobody attends is not planned: enter who is there, and when."));
  if (self->evening->not_charged->len > 0)
    return g_strdup_printf (_ ("Not charged while somebody is there: %s. Begin earlier, or bring "
                               "another charger."),
                            left);
  return g_strdup ("");
}

static void
work_out (Evening *self)
{
  FfChargeProblem problem = {
    .n_batteries = self->batteries->len,
    .watches = (const FfChargeWatch *) (gpointer) self->times->data,
    .n_watches = self->times->len,
    .chargers = (const FfChargeBench *) (gpointer) self->benches->data,
    .n_chargers = self->benches->len,
    .not_before = (const gint64 *) (gpointer) self->not_before->data,
    .busy = (const FfChargeBusy *) (gpointer) self->busy->data,
    .n_busy = self->busy->len,
  };
  g_autoptr (FfChargePlan) plan = ff_charge_queue (&problem);

  self->evening->first_by = plan->first_by;
  self->evening->done_at = plan->done_at;
  self->evening->busy_minutes = plan->busy_minutes;
  add_turns (self, plan);
  self->evening->words = say_words (self);
  self->evening->trouble = say_trouble (self);
}

static void
evening_clear (Evening *self)
{
  g_clear_pointer (&self->watches, g_ptr_array_unref);
  g_clear_pointer (&self->members, g_ptr_array_unref);
  g_ptr_array_unref (self->chargers);
  g_array_unref (self->times);
  g_array_unref (self->benches);
  g_ptr_array_unref (self->batteries);
  g_array_unref (self->not_before);
  g_array_unref (self->busy);
  g_clear_pointer (&self->evening, ff_charge_evening_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Evening, evening_clear)

FfChargeEvening *
ff_charge_evening_new (const FfDay *day,
                       FfStore *store,
                       const GPtrArray *batteries,
                       GError **error)
{
  g_auto (Evening) self = { .day = day };

  self.chargers = g_ptr_array_new ();
  self.times = g_array_new (FALSE, FALSE, sizeof (FfChargeWatch));
  self.benches = g_array_new (FALSE, FALSE, sizeof (FfChargeBench));
  self.batteries = g_ptr_array_new ();
  self.not_before = g_array_new (FALSE, FALSE, sizeof (gint64));
  self.busy = g_array_new (FALSE, FALSE, sizeof (FfChargeBusy));
  self.evening = g_new0 (FfChargeEvening, 1);
  self.evening->turns = g_ptr_array_new_with_free_func (turn_free);
  self.evening->not_charged = g_ptr_array_new_with_free_func (g_free);
  self.evening->remarks = g_ptr_array_new_with_free_func (g_free);
  self.watches = ff_watches_load (store, day->job->id, error);
  self.members = self.watches != NULL ? ff_members_load (store, error) : NULL;
  if (self.members == NULL || !add_times (&self, error))
    return NULL;
  add_chargers (&self);
  for (guint i = 0; i < batteries->len; i++)
    add_battery (&self, g_ptr_array_index (batteries, i));
  work_out (&self);
  return g_steal_pointer (&self.evening);
}
