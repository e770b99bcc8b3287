/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-plan-copy.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-error.h"
#include "ff-json-check.h"
#include "ff-plan-copy-private.h"

/* More than any day holds; a text with more is broken. */
#define PARTS_MOST 2000
#define TEXT_MOST 4000
#define FAR_OFF 1e12

#define TEXT(type, member) FF_TEXT (type, member, #member, FALSE, TEXT_MOST)
#define REAL(type, member) FF_REAL (type, member, #member, FALSE, -FAR_OFF, FAR_OFF)
#define WHOLE(type, member) FF_WHOLE (type, member, #member, 0, 10000000)
#define INSTANT(type, member) FF_INSTANT (type, member, #member)

static const FfField settings_fields[] = {
  REAL (FfPlanSettings, aperture),  TEXT (FfPlanSettings, shutter),
  REAL (FfPlanSettings, shutter_s), REAL (FfPlanSettings, shutter_angle_deg),
  WHOLE (FfPlanSettings, iso),      REAL (FfPlanSettings, error_stops),
};
static const FfFields settings_table = FF_FIELDS ("settings", settings_fields);

static const FfField take_fields[] = {
  FF_ID (FfPlanTake, shot_id, "shot_id", "shot_id", TRUE),
  TEXT (FfPlanTake, shot),
  TEXT (FfPlanTake, title),
  INSTANT (FfPlanTake, from),
  INSTANT (FfPlanTake, to),
  REAL (FfPlanTake, ev100_start),
  REAL (FfPlanTake, ev100_end),
  REAL (FfPlanTake, need_start_stops),
  REAL (FfPlanTake, need_end_stops),
  FF_NAME (FfPlanTake, intent, "intent", &ff_names_intent),
  REAL (FfPlanTake, fps),
  REAL (FfPlanTake, track_deg),
  REAL (FfPlanTake, wind_ms),
  REAL (FfPlanTake, tail_ms),
  INSTANT (FfPlanTake, turn_back_by),
  TEXT (FfPlanTake, run),
};
static const FfFields take_table = FF_FIELDS ("take", take_fields);

static const FfField line_fields[] = {
  FF_ID (FfPlanLine, id, "id", "id", TRUE),
  WHOLE (FfPlanLine, line),
  INSTANT (FfPlanLine, off_by),
  INSTANT (FfPlanLine, down),
  INSTANT (FfPlanLine, land_by),
  TEXT (FfPlanLine, battery),
  TEXT (FfPlanLine, engraving),
  REAL (FfPlanLine, filter_stops),
  TEXT (FfPlanLine, land_rule),
  TEXT (FfPlanLine, trim),
  TEXT (FfPlanLine, turn_round),
  TEXT (FfPlanLine, why),
};
static const FfFields line_table = FF_FIELDS ("line", line_fields);

static const FfField miss_fields[] = {
  TEXT (FfPlanMiss, shot),
  TEXT (FfPlanMiss, title),
  TEXT (FfPlanMiss, reason),
};
static const FfFields miss_table = FF_FIELDS ("miss", miss_fields);

static const FfField charge_fields[] = {
  TEXT (FfPlanCharge, battery),        INSTANT (FfPlanCharge, cool_from),
  INSTANT (FfPlanCharge, charge_from), INSTANT (FfPlanCharge, ready_at),
  TEXT (FfPlanCharge, attended_by),
};
static const FfFields charge_table = FF_FIELDS ("charge", charge_fields);

static const FfField plan_fields[] = {
  TEXT (FfDayPlan, job),
  TEXT (FfDayPlan, version),
  FF_NAME (FfDayPlan, sky, "sky", &ff_names_sky),
  REAL (FfDayPlan, learned_offset_stops),
  TEXT (FfDayPlan, light),
  WHOLE (FfDayPlan, swaps),
  WHOLE (FfDayPlan, landings_for_filter_alone),
  WHOLE (FfDayPlan, batteries_used),
  REAL (FfDayPlan, cost),
  FF_FLAG (FfDayPlan, optimal, "optimal"),
};
static const FfFields plan_table = FF_FIELDS ("plan", plan_fields);

/* ---- Copies of one part ---- */

static void
copy_fields (const FfFields *fields, gconstpointer from, gpointer to)
{
  for (guint i = 0; i < fields->n_fields; i++)
    {
      const FfField *field = &fields->fields[i];

      if (ff_field_is_text (field))
        ff_set_text (ff_field_text (field, to), *ff_field_text (field, from));
      else if (field->type == FF_FIELD_REAL)
        *ff_field_real (field, to) = *ff_field_real (field, from);
      else if (field->type == FF_FIELD_INSTANT)
        *ff_field_instant (field, to) = *ff_field_instant (field, from);
      else
        *ff_field_whole (field, to) = *ff_field_whole (field, from);
    }
}

static void
copy_texts (const GPtrArray *from, GPtrArray *to)
{
  for (guint i = 0; i < from->len; i++)
    g_ptr_array_add (to, g_strdup (g_ptr_array_index (from, i)));
}

/* A take without a run has no text of one, rather than an empty one. */
static void
drop_empty_run (FfPlanTake *take)
{
  if (take->run != NULL && *take->run == '\0')
    g_clear_pointer (&take->run, g_free);
}

static FfPlanTake *
take_dup (const FfPlanTake *take)
{
  FfPlanTake *copy = ff_plan_take_new ();

  copy_fields (&take_table, take, copy);
  copy_fields (&settings_table, &take->start, &copy->start);
  copy_fields (&settings_table, &take->end, &copy->end);
  copy_texts (take->remarks, copy->remarks);
  drop_empty_run (copy);
  return copy;
}

FfPlanLine *
ff_plan_line_dup (const FfPlanLine *line)
{
  FfPlanLine *copy = ff_plan_line_new ();

  copy_fields (&line_table, line, copy);
  copy_texts (line->filters, copy->filters);
  for (guint i = 0; i < line->takes->len; i++)
    g_ptr_array_add (copy->takes, take_dup (g_ptr_array_index (line->takes, i)));
  return copy;
}

FfPlanMiss *
ff_plan_miss_dup (const FfPlanMiss *miss)
{
  FfPlanMiss *copy = g_new0 (FfPlanMiss, 1);

  copy_fields (&miss_table, miss, copy);
  return copy;
}

FfPlanCharge *
ff_plan_charge_dup (const FfPlanCharge *charge)
{
  FfPlanCharge *copy = g_new0 (FfPlanCharge, 1);

  copy_fields (&charge_table, charge, copy);
  return copy;
}

/* ---- Out ---- */

static void
write_settings (FfJson *json, const char *name, const FfPlanSettings *settings)
{
  ff_json_begin_object (json, name);
  ff_json_fields (json, &settings_table, 0, settings);
  ff_json_end (json);
}

static void
write_take (FfJson *json, const FfPlanTake *take)
{
  ff_json_begin_object (json, NULL);
  ff_json_fields (json, &take_table, 0, take);
  write_settings (json, "start", &take->start);
  write_settings (json, "end", &take->end);
  ff_json_texts (json, "remarks", take->remarks);
  ff_json_end (json);
}

static void
write_line (FfJson *json, const FfPlanLine *line)
{
  ff_json_begin_object (json, NULL);
  ff_json_fields (json, &line_table, 0, line);
  ff_json_texts (json, "filters", line->filters);
  ff_json_begin_array (json, "takes");
  for (guint i = 0; i < line->takes->len; i++)
    write_take (json, g_ptr_array_index (line->takes, i));
  ff_json_end (json);
  ff_json_end (json);
}

static void
write_plain (FfJson *json, const char *name, const FfFields *fields, GPtrArray *records)
{
  ff_json_begin_array (json, name);
  for (guint i = 0; i < records->len; i++)
    {
      ff_json_begin_object (json, NULL);
      ff_json_fields (json, fields, 0, g_ptr_array_index (records, i));
      ff_json_end (json);
    }
  ff_json_end (json);
}

void
ff_plan_json_parts (FfJson *json, GPtrArray *lines, GPtrArray *missed, GPtrArray *charges)
{
  ff_json_begin_array (json, "lines");
  for (guint i = 0; i < lines->len; i++)
    write_line (json, g_ptr_array_index (lines, i));
  ff_json_end (json);
  write_plain (json, "missed", &miss_table, missed);
  write_plain (json, "charges", &charge_table, charges);
}

char *
ff_plan_copy_write (const FfDayPlan *plan)
{
  g_autoptr (FfJson) json = ff_json_new ();

  ff_json_fields (json, &plan_table, 0, plan);
  ff_plan_json_parts (json, plan->lines, plan->missed, plan->charges);
  ff_json_texts (json, "clashes", plan->clashes);
  ff_json_texts (json, "bag_needed", plan->bag_needed);
  ff_json_texts (json, "bag_in_case", plan->bag_in_case);
  ff_json_begin_object (json, "parts");
  for (int part = 0; part < FF_N_PARTS; part++)
    ff_json_number (json, ff_name_token (&ff_names_part, part), plan->parts[part]);
  ff_json_end (json);
  return ff_json_finish (json);
}

/* ---- In ---- */

typedef gboolean (*ReadPart) (GPtrArray *parts,
                              JsonObject *object,
                              const char *path,
                              GError **error);

static gboolean
read_array (JsonObject *parent,
            const char *path,
            const char *name,
            GPtrArray *parts,
            ReadPart read_part,
            GError **error)
{
  JsonArray *array = ff_json_get_array (parent, name, path, error);
  guint length = array != NULL ? json_array_get_length (array) : 0;

  if (length > PARTS_MOST)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: too many; accepted: up to %d"), name,
                   PARTS_MOST);
      return FALSE;
    }
  for (guint i = 0; i < length; i++)
    {
      g_autofree char *own
          = g_strdup_printf ("%s%s%s[%u]", path, *path != '\0' ? "." : "", name, i);
      JsonObject *object = ff_json_element_object (array, i, own, error);

      if (object == NULL || !read_part (parts, object, own, error))
        return FALSE;
    }
  return array != NULL;
}

static gboolean
read_settings (JsonObject *parent,
               const char *name,
               FfPlanSettings *settings,
               const char *path,
               GError **error)
{
  JsonObject *object = ff_json_get_object (parent, name, path, error);

  ff_fields_init (&settings_table, settings);
  return object != NULL
         && ff_json_read_fields (object, &settings_table, 0, settings, path, error);
}

static gboolean
read_take (GPtrArray *takes, JsonObject *object, const char *path, GError **error)
{
  FfPlanTake *take = ff_plan_take_new ();

  ff_fields_init (&take_table, take);
  g_ptr_array_add (takes, take);
  if (!ff_json_read_fields (object, &take_table, 0, take, path, error)
      || !read_settings (object, "start", &take->start, path, error)
      || !read_settings (object, "end", &take->end, path, error)
      || !ff_json_read_texts (object, "remarks", path, take->remarks, error))
    return FALSE;
  drop_empty_run (take);
  return TRUE;
}

static gboolean
read_line (GPtrArray *lines, JsonObject *object, const char *path, GError **error)
{
  FfPlanLine *line = ff_plan_line_new ();

  ff_fields_init (&line_table, line);
  g_ptr_array_add (lines, line);
  if (!ff_json_read_fields (object, &line_table, 0, line, path, error)
      || !ff_json_read_texts (object, "filters", path, line->filters, error)
      || !read_array (object, path, "takes", line->takes, read_take, error))
    return FALSE;
  if (line->takes->len > 0)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: a line without a shot"), path);
  return FALSE;
}

static gboolean
read_miss (GPtrArray *missed, JsonObject *object, const char *path, GError **error)
{
  FfPlanMiss *miss = g_new0 (FfPlanMiss, 1);

  ff_fields_init (&miss_table, miss);
  g_ptr_array_add (missed, miss);
  return ff_json_read_fields (object, &miss_table, 0, miss, path, error);
}

static gboolean
read_charge (GPtrArray *charges, JsonObject *object, const char *path, GError **error)
{
  FfPlanCharge *charge = g_new0 (FfPlanCharge, 1);

  ff_fields_init (&charge_table, charge);
  g_ptr_array_add (charges, charge);
  return ff_json_read_fields (object, &charge_table, 0, charge, path, error);
}

gboolean
ff_plan_read_parts (JsonObject *object,
                    GPtrArray *lines,
                    GPtrArray *missed,
                    GPtrArray *charges,
                    GError **error)
{
  return read_array (object, "", "lines", lines, read_line, error)
         && read_array (object, "", "missed", missed, read_miss, error)
         && read_array (object, "", "charges", charges, read_charge, error);
}

JsonNode *
ff_plan_parse (const char *text, GError **error)
{
  g_autoptr (JsonNode) root = NULL;

  if (!ff_json_check (text, error))
    return NULL;
  root = json_from_string (text, NULL);
  if (root != NULL && JSON_NODE_HOLDS_OBJECT (root))
    return g_steal_pointer (&root);
  ff_json_refuse (_ ("the copy"), "", root, _ ("an object"), error);
  return NULL;
}

/* A part of the price that a later release has is not known here. */
static gboolean
read_prices (FfDayPlan *plan, JsonObject *root, GError **error)
{
  JsonObject *parts = ff_json_get_object (root, "parts", "", error);

  for (int part = 0; parts != NULL && part < FF_N_PARTS; part++)
    {
      JsonNode *node = json_object_get_member (parts, ff_name_token (&ff_names_part, part));

      if (node != NULL && JSON_NODE_HOLDS_VALUE (node))
        plan->parts[part] = json_node_get_double (node);
    }
  return parts != NULL;
}

FfDayPlan *
ff_plan_copy_read (const char *text, GError **error)
{
  g_autoptr (JsonNode) root = ff_plan_parse (text, error);
  g_autoptr (FfDayPlan) plan = NULL;
  JsonObject *object;

  if (root == NULL)
    return NULL;
  object = json_node_get_object (root);
  plan = ff_day_plan_new ();
  ff_fields_init (&plan_table, plan);
  if (!ff_json_read_fields (object, &plan_table, 0, plan, "", error)
      || !ff_plan_read_parts (object, plan->lines, plan->missed, plan->charges, error)
      || !ff_json_read_texts (object, "clashes", "", plan->clashes, error)
      || !ff_json_read_texts (object, "bag_needed", "", plan->bag_needed, error)
      || !ff_json_read_texts (object, "bag_in_case", "", plan->bag_in_case, error)
      || !read_prices (plan, object, error))
    return NULL;
  return g_steal_pointer (&plan);
}
