/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-flow.h"

/* ---- What is said of one child ---- */

#define FF_TYPE_FLOW_CHILD (ff_flow_child_get_type ())
G_DECLARE_FINAL_TYPE (FfFlowChild, ff_flow_child, FF, FLOW_CHILD, GtkLayoutChild)

struct _FfFlowChild {
  GtkLayoutChild parent_instance;

  int basis;
  gboolean follows;
};

G_DEFINE_FINAL_TYPE (FfFlowChild, ff_flow_child, GTK_TYPE_LAYOUT_CHILD)

enum { PROP_CHILD_0, PROP_BASIS, PROP_FOLLOWS };

static void
ff_flow_child_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_BASIS)
    g_value_set_int (value, FF_FLOW_CHILD (object)->basis);
  else if (id == PROP_FOLLOWS)
    g_value_set_boolean (value, FF_FLOW_CHILD (object)->follows);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_flow_child_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_BASIS)
    FF_FLOW_CHILD (object)->basis = g_value_get_int (value);
  else if (id == PROP_FOLLOWS)
    FF_FLOW_CHILD (object)->follows = g_value_get_boolean (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  gtk_layout_manager_layout_changed (
      gtk_layout_child_get_layout_manager (GTK_LAYOUT_CHILD (object)));
}

static void
ff_flow_child_class_init (FfFlowChildClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags both = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = ff_flow_child_get_property;
  object_class->set_property = ff_flow_child_set_property;
  g_object_class_install_property (object_class, PROP_BASIS,
                                   g_param_spec_int ("basis", NULL, NULL, -1, G_MAXINT, -1, both));
  g_object_class_install_property (object_class, PROP_FOLLOWS,
                                   g_param_spec_boolean ("follows", NULL, NULL, FALSE, both));
}

static void
ff_flow_child_init (FfFlowChild *self)
{
  self->basis = -1;
}

/* ---- Lines ---- */

struct _FfFlowLayout {
  GtkLayoutManager parent_instance;

  int column_spacing, row_spacing;
  int seen_top, seen_height; /* what is on the screen of it */
};

G_DEFINE_FINAL_TYPE (FfFlowLayout, ff_flow_layout, GTK_TYPE_LAYOUT_MANAGER)

typedef struct {
  GtkWidget *widget;
  gboolean has_basis, follows;
  int wanted, width;
  int x, y, height; /* of its line */
} Piece;

static Piece
piece_of (FfFlowLayout *self, GtkWidget *child)
{
  FfFlowChild *said
      = FF_FLOW_CHILD (gtk_layout_manager_get_layout_child (GTK_LAYOUT_MANAGER (self), child));
  Piece piece = { .widget = child, .has_basis = said->basis >= 0, .follows = said->follows };
  int least, natural;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, &natural, NULL, NULL);
  piece.wanted = piece.has_basis ? MAX (said->basis, least) : natural;
  return piece;
}

static int
height_of (const Piece *piece)
{
  int natural;

  gtk_widget_measure (piece->widget, GTK_ORIENTATION_VERTICAL, piece->width, NULL, &natural, NULL,
                      NULL);
  return natural;
}

/* Shares what is left of a line, [from, to), among those that expand. A lone one gets what there is
 * when it wants more, and when it has a basis. */
static void
fill_line (FfFlowLayout *self, GArray *pieces, guint from, guint to, int width)
{
  int left = width - self->column_spacing * (int) (to - from - 1), x = 0;
  guint n_expand = 0;

  for (guint i = from; i < to; i++)
    {
      left -= g_array_index (pieces, Piece, i).wanted;
      n_expand += gtk_widget_compute_expand (g_array_index (pieces, Piece, i).widget,
                                             GTK_ORIENTATION_HORIZONTAL);
    }
  for (guint i = from; i < to; i++)
    {
      Piece *piece = &g_array_index (pieces, Piece, i);
      int more = 0;

      if (to == from + 1 && (left < 0 || piece->has_basis))
        more = left;
      else if (gtk_widget_compute_expand (piece->widget, GTK_ORIENTATION_HORIZONTAL))
        {
          more = left / (int) n_expand;
          left -= more;
          n_expand--;
        }
      piece->width = piece->wanted + more;
      piece->x = x;
      x += piece->width + self->column_spacing;
    }
}

static GArray *
collect (FfFlowLayout *self, GtkWidget *widget)
{
  GArray *pieces = g_array_new (FALSE, TRUE, sizeof (Piece));

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      Piece piece;

      if (!gtk_widget_should_layout (child))
        continue;
      piece = piece_of (self, child);
      g_array_append_val (pieces, piece);
    }
  return pieces;
}

/* Breaks the children into lines for a width and gives each its place. Returns the height. */
static int
lay_out (FfFlowLayout *self, GArray *pieces, int width)
{
  int y = 0;

  for (guint from = 0, to; from < pieces->len; from = to)
    {
      int taken = g_array_index (pieces, Piece, from).wanted, height = 0;

      for (to = from + 1; to < pieces->len; to++)
        {
          taken += self->column_spacing + g_array_index (pieces, Piece, to).wanted;
          if (taken > width)
            break;
        }
      fill_line (self, pieces, from, to, width);
      for (guint i = from; i < to; i++)
        height = MAX (height, height_of (&g_array_index (pieces, Piece, i)));
      for (guint i = from; i < to; i++)
        {
          g_array_index (pieces, Piece, i).y = y;
          g_array_index (pieces, Piece, i).height = height;
        }
      y += height + (to < pieces->len ? self->row_spacing : 0);
    }
  return y;
}

static void
measure_width (FfFlowLayout *self, GtkWidget *widget, GArray *pieces, int *least, int *natural)
{
  for (guint i = 0; i < pieces->len; i++)
    {
      const Piece *piece = &g_array_index (pieces, Piece, i);
      int child_least;

      gtk_widget_measure (piece->widget, GTK_ORIENTATION_HORIZONTAL, -1, &child_least, NULL, NULL,
                          NULL);
      *least = MAX (*least, child_least);
      *natural += piece->wanted + (i > 0 ? self->column_spacing : 0);
    }
}

static void
ff_flow_layout_measure (GtkLayoutManager *manager,
                        GtkWidget *widget,
                        GtkOrientation orientation,
                        int for_size,
                        int *minimum,
                        int *natural,
                        int *minimum_baseline,
                        int *natural_baseline)
{
  FfFlowLayout *self = FF_FLOW_LAYOUT (manager);
  g_autoptr (GArray) pieces = collect (self, widget);
  int least_width = 0, natural_width = 0;

  measure_width (self, widget, pieces, &least_width, &natural_width);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = least_width;
      *natural = natural_width;
      return;
    }
  *minimum = *natural
      = lay_out (self, pieces, for_size < 0 ? natural_width : MAX (for_size, least_width));
}

/* One that follows goes down beside what is scrolled past it, as far as its line goes; one that is
 * higher than the screen shows its end when it can't show all. */
static void
follow (FfFlowLayout *self, const Piece *piece, GtkAllocation *at)
{
  const int own = height_of (piece), room = piece->height - own;
  const int top
      = own <= self->seen_height ? self->seen_top : self->seen_top + self->seen_height - own;

  at->height = own;
  at->y += CLAMP (top - piece->y, 0, MAX (room, 0));
}

static void
ff_flow_layout_allocate (
    GtkLayoutManager *manager, GtkWidget *widget, int width, int height, int baseline)
{
  FfFlowLayout *self = FF_FLOW_LAYOUT (manager);
  g_autoptr (GArray) pieces = collect (self, widget);
  const gboolean rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;

  lay_out (self, pieces, width);
  for (guint i = 0; i < pieces->len; i++)
    {
      const Piece *piece = &g_array_index (pieces, Piece, i);
      GtkAllocation at = { piece->x, piece->y, piece->width, piece->height };

      if (rtl)
        at.x = width - piece->x - piece->width;
      if (piece->follows)
        follow (self, piece, &at);
      gtk_widget_size_allocate (piece->widget, &at, -1);
    }
}

static GtkSizeRequestMode
ff_flow_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
ff_flow_layout_class_init (FfFlowLayoutClass *klass)
{
  GtkLayoutManagerClass *manager_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  manager_class->layout_child_type = FF_TYPE_FLOW_CHILD;
  manager_class->measure = ff_flow_layout_measure;
  manager_class->allocate = ff_flow_layout_allocate;
  manager_class->get_request_mode = ff_flow_layout_get_request_mode;
}

static void
ff_flow_layout_init (FfFlowLayout *self)
{
  self->column_spacing = 16;
  self->row_spacing = 12;
}

/* ---- The widget ---- */

struct _FfFlow {
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (FfFlow, ff_flow, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_COLUMN_SPACING, PROP_ROW_SPACING, N_PROPS };

static GParamSpec *properties[N_PROPS];

static FfFlowLayout *
layout_of (gpointer flow)
{
  return FF_FLOW_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (flow)));
}

static void
ff_flow_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_COLUMN_SPACING)
    g_value_set_int (value, layout_of (object)->column_spacing);
  else if (id == PROP_ROW_SPACING)
    g_value_set_int (value, layout_of (object)->row_spacing);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ff_flow_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_COLUMN_SPACING)
    layout_of (object)->column_spacing = g_value_get_int (value);
  else if (id == PROP_ROW_SPACING)
    layout_of (object)->row_spacing = g_value_get_int (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  gtk_widget_queue_resize (GTK_WIDGET (object));
}

/* Tab goes through the children in their order. GTK's own order is that of their middles, which
 * changes when one of them is higher than its neighbour or follows the scrolling. */
static gboolean
ff_flow_focus (GtkWidget *widget, GtkDirectionType direction)
{
  const gboolean back = direction == GTK_DIR_TAB_BACKWARD;
  GtkWidget *at = gtk_widget_get_focus_child (widget);

  if (!back && direction != GTK_DIR_TAB_FORWARD)
    return GTK_WIDGET_CLASS (ff_flow_parent_class)->focus (widget, direction);
  if (at == NULL)
    at = back ? gtk_widget_get_last_child (widget) : gtk_widget_get_first_child (widget);
  while (at != NULL && !gtk_widget_child_focus (at, direction))
    at = back ? gtk_widget_get_prev_sibling (at) : gtk_widget_get_next_sibling (at);
  return at != NULL;
}

static void
ff_flow_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ff_flow_parent_class)->dispose (object);
}

static void
ff_flow_class_init (FfFlowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags both = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = ff_flow_get_property;
  object_class->set_property = ff_flow_set_property;
  object_class->dispose = ff_flow_dispose;
  properties[PROP_COLUMN_SPACING]
      = g_param_spec_int ("column-spacing", NULL, NULL, 0, G_MAXINT, 16, both);
  properties[PROP_ROW_SPACING]
      = g_param_spec_int ("row-spacing", NULL, NULL, 0, G_MAXINT, 12, both);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  GTK_WIDGET_CLASS (klass)->focus = ff_flow_focus;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), FF_TYPE_FLOW_LAYOUT);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "flow");
}

static void
ff_flow_init (FfFlow *self)
{
}

GtkWidget *
ff_flow_new (int column_spacing, int row_spacing)
{
  return g_object_new (FF_TYPE_FLOW, "column-spacing", column_spacing, "row-spacing", row_spacing,
                       NULL);
}

void
ff_flow_append (FfFlow *self, GtkWidget *child, int basis)
{
  GtkLayoutChild *said;

  g_return_if_fail (FF_IS_FLOW (self));
  gtk_widget_insert_before (child, GTK_WIDGET (self), NULL);
  said = gtk_layout_manager_get_layout_child (GTK_LAYOUT_MANAGER (layout_of (self)), child);
  g_object_set (said, "basis", basis, NULL);
}

void
ff_flow_follow (FfFlow *self, int top, int height)
{
  FfFlowLayout *layout;

  g_return_if_fail (FF_IS_FLOW (self));
  layout = layout_of (self);
  if (layout->seen_top == top && layout->seen_height == height)
    return;
  layout->seen_top = top;
  layout->seen_height = height;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}
