/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-print-cases.h"

#include <glib/gi18n-lib.h>

#include "ff-paragraph.h"

/* ---- JSON ---- */

static void
json_things (FfJson *json, const GPtrArray *things, const char *need)
{
  for (guint i = 0; i < things->len; i++)
    {
      const FfBagItem *item = g_ptr_array_index (things, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "item", item->label);
      ff_json_text (json, "kind", ff_name_token (&ff_names_kind, item->kind));
      ff_json_text (json, "need", need);
      ff_json_text (json, "why", item->why);
      ff_json_end (json);
    }
}

static void
json_bag (FfJson *json, const FfDayPlan *plan)
{
  ff_json_begin_object (json, "bag");
  ff_json_texts (json, "needed", plan->bag_needed);
  ff_json_texts (json, "in_case", plan->bag_in_case);
  ff_json_begin_array (json, "items");
  json_things (json, plan->cases->bag->needed, "needed");
  json_things (json, plan->cases->bag->in_case, "in_case");
  ff_json_end (json);
  ff_json_end (json);
}

static void
json_case (FfJson *json, const FfCase *one)
{
  ff_json_begin_object (json, NULL);
  ff_json_text (json, "case", one->other_sky ? ff_name_token (&ff_names_sky, one->sky) : NULL);
  ff_json_integer (json, "late_min", one->late_minutes);
  ff_json_integer (json, "sorties", one->sorties);
  ff_json_integer (json, "batteries_used", one->batteries_used);
  ff_json_texts (json, "filters", one->filters);
  ff_json_texts (json, "lost", one->lost);
  ff_json_end (json);
}

static void
json_drop (FfJson *json, const FfDrop *drop)
{
  ff_json_begin_object (json, NULL);
  ff_json_text (json, "shot", drop->shot);
  ff_json_rounded (json, "cost", drop->price, 4);
  ff_json_integer (json, "lost_in_cases", drop->lost_in);
  ff_json_end (json);
}

static void
json_slip (FfJson *json, const FfLineSlip *slip)
{
  ff_json_begin_object (json, NULL);
  ff_json_integer (json, "line", slip->line);
  ff_json_flag (json, "survives", ff_line_slip_survives (slip));
  ff_json_integer (json, "room_min", slip->room_minutes);
  ff_json_flag (json, "light_holds_15_min_late", slip->light_holds_late);
  ff_json_flag (json, "light_holds_1_stop_of_cloud", slip->light_holds_cloud);
  ff_json_texts (json, "why", slip->why);
  ff_json_end (json);
}

void
ff_json_cases (FfJson *json, const FfDayPlan *plan, const GPtrArray *drops)
{
  const FfCases *cases = plan->cases;

  json_bag (json, plan);
  ff_json_begin_array (json, "cases");
  for (guint i = 0; i < cases->cases->len; i++)
    json_case (json, g_ptr_array_index (cases->cases, i));
  ff_json_end (json);
  ff_json_begin_array (json, "drop_first");
  for (guint i = 0; i < drops->len; i++)
    json_drop (json, g_ptr_array_index (drops, i));
  ff_json_end (json);
  ff_json_begin_array (json, "survives");
  for (guint i = 0; i < cases->slips->len; i++)
    json_slip (json, g_ptr_array_index (cases->slips, i));
  ff_json_end (json);
}

static const char *const remedy_tokens[] = {
  [FF_REMEDY_ATTEND] = "attend_charger", [FF_REMEDY_FETCH] = "fetch_item",
  [FF_REMEDY_EARLIER] = "open_earlier",  [FF_REMEDY_LATER] = "close_later",
  [FF_REMEDY_BATTERY] = "batteries",     [FF_REMEDY_CHARGER] = "charger_slot",
  [FF_REMEDY_FILTER] = "filter",
};

static void
json_remedy (FfJson *json, const FfRemedy *remedy)
{
  gboolean shot = remedy->kind == FF_REMEDY_EARLIER || remedy->kind == FF_REMEDY_LATER;

  if (remedy->kind == FF_REMEDY_NONE)
    {
      ff_json_null (json, "would_take");
      return;
    }
  ff_json_begin_object (json, "would_take");
  ff_json_text (json, "kind", remedy_tokens[remedy->kind]);
  if (shot)
    {
      ff_json_text (json, "shot", remedy->label);
      ff_json_integer (json, "by_min", remedy->minutes);
    }
  else if (remedy->kind == FF_REMEDY_FETCH)
    ff_json_text (json, "item", remedy->label);
  else if (remedy->kind == FF_REMEDY_FILTER)
    ff_json_number (json, "filter_stops", remedy->stops);
  else if (remedy->kind != FF_REMEDY_ATTEND)
    ff_json_integer (json, "count", remedy->count);
  ff_json_texts (json, "saves", remedy->saves);
  ff_json_end (json);
}

void
ff_json_change (FfJson *json, const FfChangePrice *price)
{
  if (price == NULL)
    {
      ff_json_null (json, "change");
      return;
    }
  ff_json_begin_object (json, "change");
  ff_json_texts (json, "lost", price->lost);
  ff_json_texts (json, "won", price->won);
  ff_json_text (json, "reason", price->reason);
  ff_json_rounded (json, "more_cost", price->more_cost, 4);
  json_remedy (json, &price->remedy);
  if (price->drop == NULL)
    ff_json_null (json, "drop_instead");
  else
    {
      ff_json_begin_object (json, "drop_instead");
      ff_json_text (json, "shot", price->drop);
      ff_json_texts (json, "saves", price->drop_saves);
      ff_json_end (json);
    }
  ff_json_end (json);
}

/* ---- Text ---- */

static void
print_bag_row (FfConsole *console, const char *heading, const GPtrArray *things)
{
  g_autoptr (GString) labels = g_string_new (NULL);

  for (guint i = 0; i < things->len; i++)
    g_string_append_printf (labels, "%s%s", i > 0 ? ", " : "",
                            ((const FfBagItem *) g_ptr_array_index (things, i))->label);
  if (labels->len > 0)
    ff_console_paragraph (console, heading, labels->str);
}

static void
print_reasons (FfConsole *console, const GPtrArray *things)
{
  for (guint i = 0; i < things->len; i++)
    {
      const FfBagItem *item = g_ptr_array_index (things, i);
      g_autofree char *head = g_strdup_printf ("    %s: ", item->label);

      ff_console_paragraph (console, head, item->why);
    }
}

static void
print_bag (FfConsole *console, const FfBag *bag, gboolean explain)
{
  if (bag->needed->len + bag->in_case->len > 0)
    ff_console_line (console, _ ("\nThe bag"));
  print_bag_row (console, _ ("  needed:  "), bag->needed);
  if (explain)
    print_reasons (console, bag->needed);
  print_bag_row (console, _ ("  in case: "), bag->in_case);
  if (explain)
    print_reasons (console, bag->in_case);
}

static void
print_case (FfConsole *console, const FfCase *one)
{
  g_autofree char *head = g_strdup_printf ("  %s: ", one->title);
  g_autoptr (GString) words = g_string_new (NULL);

  g_string_append_printf (words, g_dngettext (GETTEXT_PACKAGE, "%d sortie", "%d sorties",
                                              (gulong) one->sorties),
                          one->sorties);
  for (guint i = 0; i < one->filters->len; i++)
    g_string_append_printf (words, "%s%s", i > 0 ? ", " : " · ",
                            (const char *) g_ptr_array_index (one->filters, i));
  for (guint i = 0; i < one->lost->len; i++)
    /* Translators: before the labels of shots that a case of the day loses. */
    g_string_append_printf (words, "%s%s", i > 0 ? ", " : _ (" · lost: "),
                            (const char *) g_ptr_array_index (one->lost, i));
  ff_console_paragraph (console, head, words->str);
}

void
ff_print_cases (FfConsole *console,
                const FfDayPlan *plan,
                const GPtrArray *drops,
                gboolean explain)
{
  g_autoptr (GPtrArray) slips = ff_cases_slip_words (plan->cases);
  g_autofree char *first = ff_drop_words (drops);

  print_bag (console, plan->cases->bag, explain);
  ff_console_line (console, _ ("\nIf the day turns out otherwise"));
  for (guint i = 0; explain && i < plan->cases->cases->len; i++)
    print_case (console, g_ptr_array_index (plan->cases->cases, i));
  for (guint i = 0; i < slips->len; i++)
    ff_console_paragraph (console, "  ", g_ptr_array_index (slips, i));
  if (first != NULL)
    ff_console_paragraph (console, "  ", first);
}
