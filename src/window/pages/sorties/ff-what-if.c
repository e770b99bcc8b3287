/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-what-if.h"

#include <glib/gi18n-lib.h>

#include "ff-flow.h"
#include "ff-item.h"
#include "ff-pick.h"
#include "ff-shot.h"

struct _FfWhatIf {
  GtkWidget parent_instance;

  FfPick *sky, *late, *without, *shot, *move;
  FfSky stored_sky;
  GPtrArray *labels; /* char*: what may be missing, in the order of the picks from 1 */
  GPtrArray *shots;  /* char*: labels of shots, in the order of the picks from 1 */
};

G_DEFINE_FINAL_TYPE (FfWhatIf, ff_what_if, GTK_TYPE_WIDGET)

enum { CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

static const int late_minutes[] = { 0, 5, 10, 15, 30 };
#define LATEST_BY_KEY 3 /* the key goes round up to 15 minutes */

/* What may happen to a shot: its window moved; after these it is dropped. */
static const int move_minutes[] = { 5, 10, 15, 30, 45, 60, -5, -10, -15, -30, -45, -60 };

/* The choices */

static void
fill_late (FfWhatIf *self)
{
  g_auto (GStrv) texts = g_new0 (char *, G_N_ELEMENTS (late_minutes) + 1);

  texts[0] = g_strdup (_ ("on time"));
  for (guint i = 1; i < G_N_ELEMENTS (late_minutes); i++)
    /* Translators: the first take-off is so many minutes late. */
    texts[i] = g_strdup_printf (_ ("%d min late"), late_minutes[i]);
  ff_pick_set_texts (self->late, (const char *const *) texts);
  ff_pick_set_value (self->late, 0);
}

static void
fill_move (FfWhatIf *self)
{
  g_auto (GStrv) texts = g_new0 (char *, G_N_ELEMENTS (move_minutes) + 3);
  guint i;

  texts[0] = g_strdup (_ ("as planned"));
  for (i = 0; i < G_N_ELEMENTS (move_minutes); i++)
    texts[i + 1] = move_minutes[i] > 0
                       /* Translators: the window of a shot is moved. */
                       ? g_strdup_printf (_ ("%d min later"), move_minutes[i])
                       : g_strdup_printf (_ ("%d min earlier"), -move_minutes[i]);
  /* Translators: a shot is not flown, by choice. */
  texts[i + 1] = g_strdup (_ ("dropped"));
  ff_pick_set_texts (self->move, (const char *const *) texts);
  ff_pick_set_value (self->move, 0);
}

static gboolean
may_be_missing (const FfItem *item)
{
  return item->state == FF_STATE_SERVICEABLE
         && (item->kind == FF_KIND_FILTER || item->kind == FF_KIND_BATTERY
             || item->kind == FF_KIND_CHARGER);
}

static GPtrArray *
labels_of (const GPtrArray *items)
{
  GPtrArray *labels = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (may_be_missing (item))
        g_ptr_array_add (labels, g_strdup (item->label));
    }
  return labels;
}

static gboolean
same_labels (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!g_str_equal (g_ptr_array_index (a, i), g_ptr_array_index (b, i)))
      return FALSE;
  return TRUE;
}

/* Shows labels behind a first choice that is none of them; what was picked stays where it can. */
static void
show_labels (FfPick *pick, const char *none, const GPtrArray *labels, const char *picked)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new ();
  guint index = 0;

  g_ptr_array_add (texts, (gpointer) none);
  for (guint i = 0; i < labels->len; i++)
    g_ptr_array_add (texts, g_ptr_array_index (labels, i));
  g_ptr_array_add (texts, NULL);
  ff_pick_set_texts (pick, (const char *const *) texts->pdata);
  if (picked != NULL
      && g_ptr_array_find_with_equal_func ((GPtrArray *) labels, picked, g_str_equal, &index))
    index++;
  else
    index = 0;
  ff_pick_set_value (pick, (int) index);
}

/* Takes the labels, unless they are the same. */
static void
take_labels (FfPick *pick, const char *none, GPtrArray **labels, GPtrArray *now)
{
  int value = ff_pick_get_value (pick);
  g_autofree char *picked
      = value > 0 && (guint) value <= (*labels)->len
            ? g_strdup (g_ptr_array_index (*labels, value - 1))
            : NULL;

  if (value >= 0 && same_labels (now, *labels))
    {
      g_ptr_array_unref (now);
      return;
    }
  g_ptr_array_unref (*labels);
  *labels = now;
  show_labels (pick, none, now, picked);
}

static GPtrArray *
shot_labels (const GPtrArray *shots)
{
  GPtrArray *labels = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < shots->len; i++)
    g_ptr_array_add (labels, g_strdup (((const FfShot *) g_ptr_array_index (shots, i))->label));
  return labels;
}

/* Callbacks */

static void
on_picked (FfWhatIf *self)
{
  gtk_widget_set_sensitive (GTK_WIDGET (self->move), ff_pick_get_value (self->shot) > 0);
  g_signal_emit (self, signals[CHANGED], 0);
}

/* Overrides */

static gboolean
ff_what_if_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FF_WHAT_IF (widget)->sky));
}

static void
ff_what_if_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  g_clear_pointer (&FF_WHAT_IF (object)->labels, g_ptr_array_unref);
  g_clear_pointer (&FF_WHAT_IF (object)->shots, g_ptr_array_unref);
  G_OBJECT_CLASS (ff_what_if_parent_class)->dispose (object);
}

static void
ff_what_if_class_init (FfWhatIfClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = ff_what_if_dispose;
  widget_class->grab_focus = ff_what_if_grab_focus;
  signals[CHANGED] = g_signal_new ("changed", FF_TYPE_WHAT_IF, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
  g_type_ensure (FF_TYPE_PICK);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/fieldfare/Fieldfare/ff-what-if.ui");
  gtk_widget_class_bind_template_child (widget_class, FfWhatIf, sky);
  gtk_widget_class_bind_template_child (widget_class, FfWhatIf, late);
  gtk_widget_class_bind_template_child (widget_class, FfWhatIf, without);
  gtk_widget_class_bind_template_child (widget_class, FfWhatIf, shot);
  gtk_widget_class_bind_template_child (widget_class, FfWhatIf, move);
  gtk_widget_class_bind_template_callback (widget_class, on_picked);
  gtk_widget_class_set_layout_manager_type (widget_class, FF_TYPE_FLOW_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "whatif");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
ff_what_if_init (FfWhatIf *self)
{
  self->labels = g_ptr_array_new_with_free_func (g_free);
  self->shots = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  ff_pick_set_names (self->sky, &ff_names_sky);
  fill_late (self);
  fill_move (self);
  show_labels (self->without, _ ("nothing"), self->labels, NULL);
  show_labels (self->shot, _ ("none"), self->shots, NULL);
  gtk_widget_set_sensitive (GTK_WIDGET (self->move), FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What if"), -1);
}

/* Public */

void
ff_what_if_set_day (FfWhatIf *self, FfSky sky, const GPtrArray *items, const GPtrArray *shots)
{
  gboolean other_sky;

  g_return_if_fail (FF_IS_WHAT_IF (self));
  other_sky = ff_pick_get_value (self->sky) != (int) self->stored_sky;
  self->stored_sky = sky;
  if (!other_sky || ff_pick_get_value (self->sky) < 0)
    ff_pick_set_value (self->sky, (int) sky);
  take_labels (self->without, _ ("nothing"), &self->labels, labels_of (items));
  take_labels (self->shot, _ ("none"), &self->shots, shot_labels (shots));
}

void
ff_what_if_next_late (FfWhatIf *self)
{
  int late = ff_pick_get_value (self->late);

  ff_pick_set_value (self->late, late >= LATEST_BY_KEY ? 0 : late + 1);
}

/* What is picked for the one shot. */
static void
get_shot (FfWhatIf *self, FfTry *picked)
{
  int shot = ff_pick_get_value (self->shot), move = ff_pick_get_value (self->move);

  if (shot <= 0 || (guint) shot > self->shots->len || move <= 0)
    return;
  picked->shot = g_ptr_array_index (self->shots, shot - 1);
  if (move <= (int) G_N_ELEMENTS (move_minutes))
    picked->move_minutes = move_minutes[move - 1];
  else
    picked->drop = TRUE;
}

void
ff_what_if_get (FfWhatIf *self, FfTry *ret_try)
{
  int sky = ff_pick_get_value (self->sky), late = ff_pick_get_value (self->late);
  int without = ff_pick_get_value (self->without);
  FfTry picked = FF_TRY_INIT;

  if (sky >= 0 && sky != (int) self->stored_sky)
    picked.sky = sky;
  if (late > 0)
    picked.late_minutes = late_minutes[late];
  if (without > 0 && (guint) without <= self->labels->len)
    picked.without = g_ptr_array_index (self->labels, without - 1);
  get_shot (self, &picked);
  ff_try_set (ret_try, &picked);
}

void
ff_what_if_reset (FfWhatIf *self)
{
  g_return_if_fail (FF_IS_WHAT_IF (self));
  ff_pick_set_value (self->sky, (int) self->stored_sky);
  ff_pick_set_value (self->late, 0);
  ff_pick_set_value (self->without, 0);
  ff_pick_set_value (self->shot, 0);
  ff_pick_set_value (self->move, 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->move), FALSE);
}
