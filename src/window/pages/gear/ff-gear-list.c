/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-list.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-crew.h"
#include "ff-gear-fields.h"

/* By kind: its heading, and what labels of it begin with when none is there yet. */
static const struct {
  const char *plural, *prefix;
} kinds[] = {
  [FF_KIND_AIRCRAFT] = { N_ ("Aircraft"), "A" },
  [FF_KIND_CAMERA] = { N_ ("Cameras"), "K" },
  [FF_KIND_FILTER] = { N_ ("Filters"), "F" },
  [FF_KIND_BATTERY] = { N_ ("Batteries"), "b" },
  [FF_KIND_CHARGER] = { N_ ("Chargers"), "ch" },
  [FF_KIND_CARD] = { N_ ("Cards"), "C" },
  [FF_KIND_PROPELLERS] = { N_ ("Propeller sets"), "P" },
  [FF_KIND_CONTROLLER] = { N_ ("Controllers"), "ct" },
  [FF_KIND_TABLET] = { N_ ("Tablets"), "T" },
  [FF_KIND_CABLE] = { N_ ("Cables"), "cb" },
  [FF_KIND_READER] = { N_ ("Card readers"), "rd" },
  [FF_KIND_RADIO] = { N_ ("Radios"), "R" },
  [FF_KIND_SAFETY] = { N_ ("Safety kit"), "sk" },
  [FF_KIND_DOCUMENT] = { N_ ("Documents"), "D" },
  [FF_KIND_CASE] = { N_ ("Cases"), "case" },
  [FF_KIND_OTHER] = { N_ ("Other things"), "X" },
};

const char *
ff_gear_plural (FfKind kind)
{
  g_return_val_if_fail ((guint) kind < G_N_ELEMENTS (kinds), "");
  return g_dgettext (GETTEXT_PACKAGE, kinds[kind].plural);
}

/* Choices */

static void
add_choice (FfGearChoices *choices, const char *id, const char *text)
{
  g_ptr_array_add (choices->ids, g_strdup (id));
  g_ptr_array_add (choices->texts, g_strdup (text));
}

static void
add_members (FfGearChoices *choices, GPtrArray *members)
{
  for (guint i = 0; i < members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (members, i);

      add_choice (choices, member->id, member->name);
    }
}

static void
add_cameras (FfGearChoices *choices, GPtrArray *items)
{
  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (item->kind == FF_KIND_CAMERA)
        add_choice (choices, item->id, item->label);
    }
}

FfGearChoices *
ff_gear_choices_new (const char *field, GPtrArray *items, GPtrArray *members)
{
  FfGearChoices *choices = g_new0 (FfGearChoices, 1);

  choices->ids = g_ptr_array_new_with_free_func (g_free);
  choices->texts = g_ptr_array_new_with_free_func (g_free);
  if (g_str_equal (field, "attended_by"))
    {
      add_choice (choices, "", _ ("nobody"));
      add_members (choices, members);
    }
  else
    {
      add_choice (choices, "", _ ("none"));
      add_cameras (choices, items);
    }
  g_ptr_array_add (choices->texts, NULL);
  return choices;
}

void
ff_gear_choices_free (FfGearChoices *choices)
{
  if (choices == NULL)
    return;
  g_ptr_array_unref (choices->ids);
  g_ptr_array_unref (choices->texts);
  g_free (choices);
}

int
ff_gear_choices_find (const FfGearChoices *choices, const char *id)
{
  for (guint i = 0; i < choices->ids->len; i++)
    if (g_str_equal (g_ptr_array_index (choices->ids, i), id))
      return (int) i;
  return 0;
}

/* Labels */

static gboolean
is_taken (GPtrArray *items, const char *label)
{
  g_autofree char *folded = g_utf8_casefold (label, -1);

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);
      g_autofree char *theirs = g_utf8_casefold (item->label, -1);

      if (g_str_equal (theirs, folded))
        return TRUE;
    }
  return FALSE;
}

/* The first of "b1", "b2" … that is free and no longer than a label may be. */
static char *
next_label (GPtrArray *items, const char *prefix)
{
  for (guint n = 1;; n++)
    {
      g_autofree char *number = g_strdup_printf ("%u", n);
      glong room = FF_GEAR_LABEL_LENGTH - (glong) strlen (number);
      g_autofree char *start = g_utf8_substring (prefix, 0, MIN (room, g_utf8_strlen (prefix, -1)));
      char *label = g_strconcat (g_strchomp (start), number, NULL);

      if (!is_taken (items, label))
        return label;
      g_free (label);
    }
}

/* "b" of "b12"; a text without digits at its end stays whole. */
static char *
without_number (const char *label)
{
  gsize length = strlen (label);

  while (length > 0 && g_ascii_isdigit (label[length - 1]))
    length--;
  return g_strndup (label, length);
}

/* "battery 5" becomes "battery 6" when the label goes from b5 to b6. */
static void
renumber_title (FfItem *copy, const char *old_label, const char *new_label)
{
  g_autofree char *start = without_number (copy->title);
  g_autofree char *old_start = without_number (old_label);
  g_autofree char *new_start = without_number (new_label);
  const char *old_number = old_label + strlen (old_start);

  if (old_number[0] == '\0' || !g_str_equal (copy->title + strlen (start), old_number))
    return;
  g_free (copy->title);
  copy->title = g_strconcat (start, new_label + strlen (new_start), NULL);
}

/* The number in a filter's label is its strength, so that one more of it is told by a letter. */
static char *
another_label (const FfItem *item, GPtrArray *items)
{
  g_autofree char *start = without_number (item->label);

  if (item->kind != FF_KIND_FILTER)
    return next_label (items, start[0] != '\0' ? start : kinds[item->kind].prefix);
  for (char letter = 'b'; letter <= 'z' && strlen (item->label) < FF_GEAR_LABEL_LENGTH; letter++)
    {
      char *label = g_strdup_printf ("%s%c", item->label, letter);

      if (!is_taken (items, label))
        return label;
      g_free (label);
    }
  return next_label (items, kinds[FF_KIND_FILTER].prefix);
}

/* New items */

/* A camera without steps could not be kept; these are common ones, and its title says so until it
 * is replaced. */
static void
begin_camera (FfItem *item)
{
  ff_set_text (&item->title, _ ("camera, values to be read from it"));
  ff_set_text (&item->apertures, "2.8");
  ff_set_text (&item->base_iso, "100");
  item->iso_low = 100;
  item->iso_high = 1600;
  ff_set_text (&item->shutter_fast, "1/1000");
  ff_set_text (&item->shutter_slow, "1");
}

/* The way this crew labels the kind, when it does so with numbers. */
static char *
prefix_of_crew (FfKind kind, GPtrArray *items)
{
  for (guint i = items->len; i > 0; i--)
    {
      const FfItem *item = g_ptr_array_index (items, i - 1);
      g_autofree char *start = without_number (item->label);

      if (item->kind == kind && kind != FF_KIND_FILTER && start[0] != '\0'
          && !g_str_equal (start, item->label)
          && g_utf8_strlen (item->label, -1) < FF_GEAR_LABEL_LENGTH)
        return g_steal_pointer (&start);
    }
  return g_strdup (kinds[kind].prefix);
}

FfItem *
ff_gear_new (FfKind kind, GPtrArray *items)
{
  FfItem *item = ff_item_new (kind);
  g_autofree char *prefix = prefix_of_crew (kind, items);

  g_free (item->label);
  item->label = next_label (items, prefix);
  if (kind == FF_KIND_CAMERA)
    begin_camera (item);
  return item;
}

void
ff_gear_make_another (FfItem *copy, GPtrArray *items)
{
  char *label = another_label (copy, items);

  if (copy->kind != FF_KIND_FILTER)
    renumber_title (copy, copy->label, label);
  g_free (copy->label);
  copy->label = label;
  g_free (copy->id);
  copy->id = ff_records_new_id ();
  copy->state = FF_STATE_SERVICEABLE;
  copy->used = NAN;
  copy->measured_stops = NAN;
  ff_set_text (&copy->slot, "");
  ff_set_text (&copy->note, "");
  ff_set_text (&copy->valid_until, "");
}
