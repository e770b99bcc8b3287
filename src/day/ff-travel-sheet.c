/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-travel-sheet.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-battery.h"
#include "ff-crew.h"
#include "ff-error.h"
#include "ff-pack-list.h"
#include "ff-travel-private.h"

typedef struct {
  FfStore *store;
  FfPackList *list;
  GPtrArray *items;    /* FfItem: all */
  GPtrArray *carriers; /* FfCarrier */
  const FfCarrier *carrier;
  GPtrArray *batteries; /* FfItem, borrowed, as the rows */
  FfTravelSheet *sheet;
} Desk;

/* ---- The value ---- */

static void
row_free (gpointer data)
{
  FfTravelRow *row = data;

  g_free (row->label);
  g_free (row->words);
  g_free (row);
}

static void
person_free (gpointer data)
{
  FfTravelPerson *person = data;

  g_free (person->name);
  g_ptr_array_unref (person->labels);
  g_free (person);
}

static FfTravelSheet *
sheet_new (void)
{
  FfTravelSheet *sheet = g_new0 (FfTravelSheet, 1);

  sheet->rows = g_ptr_array_new_with_free_func (row_free);
  sheet->people = g_ptr_array_new_with_free_func (person_free);
  sheet->approval = g_ptr_array_new_with_free_func (g_free);
  sheet->cautions = g_ptr_array_new_with_free_func (g_free);
  sheet->remarks = g_ptr_array_new_with_free_func (g_free);
  return sheet;
}

void
ff_travel_sheet_free (FfTravelSheet *sheet)
{
  if (sheet == NULL)
    return;
  g_free (sheet->job);
  g_free (sheet->carrier);
  g_free (sheet->source);
  g_free (sheet->read_on);
  g_ptr_array_unref (sheet->rows);
  g_ptr_array_unref (sheet->people);
  g_ptr_array_unref (sheet->approval);
  g_ptr_array_unref (sheet->cautions);
  g_ptr_array_unref (sheet->remarks);
  g_free (sheet);
}

/* ---- Who carries, under which rule ---- */

static void
add_person (FfTravelSheet *sheet, char *name)
{
  FfTravelPerson *person = g_new0 (FfTravelPerson, 1);

  person->name = name;
  person->labels = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (sheet->people, person);
}

/* Each once, whatever roles they hold. */
static gboolean
add_crew (Desk *self, GError **error)
{
  g_autoptr (GPtrArray) crew = ff_job_crew_load (self->store, self->list->job_id, error);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; crew != NULL && i < crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (crew, i);

      if (g_hash_table_add (seen, member->id))
        add_person (self->sheet, g_strdup (member->name));
    }
  return crew != NULL;
}

static gboolean
find_people (Desk *self, int people, GError **error)
{
  for (int i = 0; i < people; i++)
    /* Translators: a traveller without a name. */
    add_person (self->sheet, g_strdup_printf (_ ("person %d"), i + 1));
  if (people == 0 && !add_crew (self, error))
    return FALSE;
  if (self->sheet->people->len > 0)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("%s: nobody is entered who could carry; enter the crew of the job"),
               self->list->job);
  return FALSE;
}

static gboolean
find_carrier (Desk *self, const char *wanted, GError **error)
{
  g_autofree char *id = NULL;

  self->carriers = ff_carriers_load (self->store, error);
  if (self->carriers == NULL)
    return FALSE;
  if (self->carriers->len == 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s",
                   _ ("no carrier's rule is entered; read the carrier's page and enter it, or "
                      "begin with the published examples"));
      return FALSE;
    }
  /* Those of the crew come before the examples. */
  self->carrier = g_ptr_array_index (self->carriers, 0);
  if (wanted == NULL)
    return TRUE;
  id = ff_carrier_find (self->store, wanted, error);
  for (guint i = 0; id != NULL && i < self->carriers->len; i++)
    if (g_str_equal (((FfCarrier *) g_ptr_array_index (self->carriers, i))->id, id))
      self->carrier = g_ptr_array_index (self->carriers, i);
  return id != NULL;
}

/* ---- The batteries ---- */

static const FfItem *
item_of (const Desk *self, const char *id)
{
  for (guint i = 0; i < self->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (self->items, i);

      if (g_str_equal (item->id, id))
        return item;
    }
  return NULL;
}

/* The printed figure is what the desk reads; where there is none, volts times ampere-hours. */
static double
energy_of (Desk *self, const FfItem *item)
{
  double computed = ff_battery_energy_wh (item->volts, item->milliamp_hours);

  if (isnan (item->printed_wh))
    return computed;
  if (isfinite (computed) && ff_battery_print_differs (item->printed_wh, computed))
    g_ptr_array_add (self->sheet->remarks,
                     g_strdup_printf (_ ("%s: %.1f Wh is printed on it, but volts times "
                                         "ampere-hours is %.1f Wh; look at it again."),
                                      item->label, item->printed_wh, computed));
  return item->printed_wh;
}

static void
add_row (Desk *self, const FfItem *item, gboolean wanted)
{
  FfTravelRow *row = g_new0 (FfTravelRow, 1);

  row->label = g_strdup (item->label);
  row->energy_wh = energy_of (self, item);
  row->mass_kg = item->mass_kg;
  row->wanted = wanted;
  row->person = -1;
  g_ptr_array_add (self->sheet->rows, row);
  g_ptr_array_add (self->batteries, (gpointer) item);
}

/* Those of the pack list, then those that are short because of their state. */
static void
find_batteries (Desk *self)
{
  for (guint i = 0; i < self->list->cases->len; i++)
    {
      const FfPackCase *box = g_ptr_array_index (self->list->cases, i);

      for (guint j = 0; j < box->entries->len; j++)
        {
          const FfPackEntry *entry = g_ptr_array_index (box->entries, j);

          if (entry->kind == FF_KIND_BATTERY)
            add_row (self, item_of (self, entry->item_id),
                     entry->need == FF_PACK_NEEDED && !entry->extra);
        }
    }
  for (guint i = 0; i < self->list->shorts->len; i++)
    {
      const FfPackMissing *missing = g_ptr_array_index (self->list->shorts, i);
      const FfItem *item = item_of (self, missing->item_id);

      if (!missing->counted && item != NULL && item->kind == FF_KIND_BATTERY)
        add_row (self, item, FALSE);
    }
}

/* ---- The share ---- */

static GArray *
state_bands (const FfCarrier *carrier)
{
  GArray *bands = g_array_new (FALSE, FALSE, sizeof (FfTravelBand));

  for (guint i = 0; i < carrier->bands->len; i++)
    {
      const FfCarrierBand *band = g_ptr_array_index (carrier->bands, i);
      const FfTravelBand one = { isnan (band->up_to_wh) ? INFINITY : band->up_to_wh,
                                 band->spares_each, band->approval };

      g_array_append_val (bands, one);
    }
  return bands;
}

static GArray *
state_batteries (const Desk *self)
{
  GArray *batteries = g_array_new (FALSE, FALSE, sizeof (FfTravelBattery));

  for (guint i = 0; i < self->sheet->rows->len; i++)
    {
      const FfTravelRow *row = g_ptr_array_index (self->sheet->rows, i);
      const FfItem *item = g_ptr_array_index (self->batteries, i);
      const FfTravelBattery one = { row->energy_wh, row->mass_kg,
                                    item->state == FF_STATE_SERVICEABLE, row->wanted };

      g_array_append_val (batteries, one);
    }
  return batteries;
}

static void
hand_over (Desk *self, FfTravelRow *row, const FfTravelShare *share, const FfItem *item)
{
  FfTravelSheet *sheet = self->sheet;
  FfTravelPerson *person;

  row->answer = share->answer;
  row->approval = share->approval;
  row->person = share->answer == FF_TRAVEL_GOES ? (int) share->person : -1;
  row->words = ff_travel_row_words (sheet, row, item);
  if (row->person < 0)
    {
      sheet->wanted_left += row->wanted;
      return;
    }
  person = g_ptr_array_index (sheet->people, (guint) row->person);
  g_ptr_array_add (person->labels, g_strdup (row->label));
  person->energy_wh += row->energy_wh;
  if (isfinite (row->mass_kg))
    person->mass_kg += row->mass_kg;
  if (row->approval)
    g_ptr_array_add (sheet->approval, ff_travel_letter_line (sheet, row, item));
}

static void
share_out (Desk *self)
{
  g_autoptr (GArray) bands = state_bands (self->carrier);
  g_autoptr (GArray) batteries = state_batteries (self);
  const FfTravelRule rule = { (const FfTravelBand *) (gpointer) bands->data, bands->len,
                              self->carrier->spares_in_all, self->carrier->cabin_kg };
  g_autoptr (FfTravelPlan) plan
      = ff_travel_share (&rule, (const FfTravelBattery *) (gpointer) batteries->data,
                         batteries->len, self->sheet->people->len);
  guint unknown = 0;

  for (guint i = 0; i < self->sheet->rows->len; i++)
    {
      FfTravelRow *row = g_ptr_array_index (self->sheet->rows, i);

      hand_over (self, row, &g_array_index (plan->shares, FfTravelShare, i),
                 g_ptr_array_index (self->batteries, i));
      unknown += isnan (row->mass_kg);
    }
  self->sheet->goes = plan->goes;
  if (unknown > 0 && isfinite (self->carrier->cabin_kg))
    g_ptr_array_add (self->sheet->remarks,
                     g_strdup_printf (_ ("%u without a weight: they count as nothing here; weigh "
                                         "the bags."),
                                      unknown));
  if (!plan->proven)
    g_ptr_array_add (self->sheet->remarks,
                     g_strdup (_ ("The share is the best that was found; another may take more.")));
}

/* ---- The whole ---- */

static void
desk_clear (Desk *self)
{
  ff_pack_list_free (self->list);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_pointer (&self->carriers, g_ptr_array_unref);
  g_ptr_array_unref (self->batteries);
  ff_travel_sheet_free (self->sheet);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Desk, desk_clear)

FfTravelSheet *
ff_travel_sheet_load (FfStore *store,
                      const char *wanted_job,
                      const char *carrier,
                      int people,
                      GError **error)
{
  g_auto (Desk) self = { .store = store };

  self.batteries = g_ptr_array_new ();
  self.sheet = sheet_new ();
  self.list = ff_pack_list_load (store, wanted_job, error);
  self.items = self.list != NULL ? ff_items_load (store, error) : NULL;
  if (self.items == NULL || !find_carrier (&self, carrier, error)
      || !find_people (&self, people, error))
    return NULL;
  self.sheet->job = g_strdup (self.list->job);
  self.sheet->carrier = g_strdup (self.carrier->name);
  self.sheet->source = g_strdup (self.carrier->source);
  self.sheet->read_on = g_strdup (self.carrier->read_on);
  self.sheet->example = self.carrier->example;
  find_batteries (&self);
  share_out (&self);
  ff_travel_add_cautions (self.sheet, self.carrier);
  return g_steal_pointer (&self.sheet);
}
