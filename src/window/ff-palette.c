/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-palette.h"

typedef struct {
  const char *name;
  const char *value[FF_N_LOOKS]; /* light, dark, daylight, night */
} Colour;

static const Colour colours[FF_N_COLOURS] = {
  [FF_COLOUR_PAPER] = { "ff_paper", { "#f3f0e9", "#1b2126", "#ffffff", "#000000" } },
  [FF_COLOUR_SHEET] = { "ff_sheet", { "#fdfcf8", "#262e35", "#ffffff", "#120804" } },
  [FF_COLOUR_INK] = { "ff_ink", { "#1f262c", "#ebe7dd", "#000000", "#c9793f" } },
  [FF_COLOUR_SOFT] = { "ff_soft", { "#56626c", "#a3afb8", "#000000", "#b3703f" } },
  [FF_COLOUR_LINE] = { "ff_line", { "#d6d1c5", "#3a444d", "#000000", "#3d2111" } },
  [FF_COLOUR_SIDE] = { "ff_side", { "#333f49", "#12171b", "#ffffff", "#000000" } },
  [FF_COLOUR_SIDE_INK] = { "ff_side_ink", { "#f1ede3", "#ebe7dd", "#000000", "#c9793f" } },
  [FF_COLOUR_SIDE_SOFT] = { "ff_side_soft", { "#b4bfc7", "#94a1ab", "#000000", "#b3703f" } },
  [FF_COLOUR_SIDE_HERE] = { "ff_side_here", { "#46545f", "#262f37", "#000000", "#2a1409" } },
  [FF_COLOUR_SLATE] = { "ff_slate", { "#4a5964", "#8c9aa4", "#000000", "#8a4d28" } },
  [FF_COLOUR_CHESTNUT] = { "ff_chestnut", { "#8a3f24", "#a9502f", "#000000", "#7c3b17" } },
  [FF_COLOUR_ON_CHESTNUT] = { "ff_on_chestnut", { "#ffffff", "#ffffff", "#ffffff", "#f0b37d" } },
  [FF_COLOUR_CHESTNUT_INK]
  = { "ff_chestnut_ink", { "#82371d", "#eb9c78", "#000000", "#d5824a" } },
  [FF_COLOUR_OCHRE] = { "ff_ochre", { "#c98a26", "#dda544", "#000000", "#b87a26" } },
  [FF_COLOUR_OCHRE_WASH] = { "ff_ochre_wash", { "#f6e7c6", "#42351b", "#ffffff", "#1f1303" } },
  [FF_COLOUR_OCHRE_INK] = { "ff_ochre_ink", { "#694507", "#efc478", "#000000", "#d6973f" } },
};

/* What libadwaita and GTK call the same things. */
static const struct {
  const char *name;
  FfColour colour;
} borrowed[] = {
  { "accent_bg_color", FF_COLOUR_CHESTNUT },
  { "accent_fg_color", FF_COLOUR_ON_CHESTNUT },
  { "accent_color", FF_COLOUR_CHESTNUT_INK },
  { "destructive_bg_color", FF_COLOUR_CHESTNUT },
  { "destructive_fg_color", FF_COLOUR_ON_CHESTNUT },
  { "destructive_color", FF_COLOUR_CHESTNUT_INK },
  { "error_bg_color", FF_COLOUR_CHESTNUT },
  { "error_fg_color", FF_COLOUR_ON_CHESTNUT },
  { "error_color", FF_COLOUR_CHESTNUT_INK },
  { "warning_bg_color", FF_COLOUR_OCHRE },
  { "warning_color", FF_COLOUR_OCHRE_INK },
  { "success_bg_color", FF_COLOUR_SLATE },
  { "success_color", FF_COLOUR_INK },
  { "window_bg_color", FF_COLOUR_PAPER },
  { "window_fg_color", FF_COLOUR_INK },
  { "view_bg_color", FF_COLOUR_SHEET },
  { "view_fg_color", FF_COLOUR_INK },
  { "headerbar_bg_color", FF_COLOUR_PAPER },
  { "headerbar_fg_color", FF_COLOUR_INK },
  { "headerbar_border_color", FF_COLOUR_INK },
  { "headerbar_backdrop_color", FF_COLOUR_PAPER },
  { "headerbar_shade_color", FF_COLOUR_LINE },
  { "card_bg_color", FF_COLOUR_SHEET },
  { "card_fg_color", FF_COLOUR_INK },
  { "card_shade_color", FF_COLOUR_LINE },
  { "dialog_bg_color", FF_COLOUR_SHEET },
  { "dialog_fg_color", FF_COLOUR_INK },
  { "popover_bg_color", FF_COLOUR_SHEET },
  { "popover_fg_color", FF_COLOUR_INK },
};

GdkRGBA
ff_palette_colour (FfLook look, FfColour colour)
{
  GdkRGBA rgba = { 0, 0, 0, 1 };

  g_return_val_if_fail (look < FF_N_LOOKS && colour < FF_N_COLOURS, rgba);
  gdk_rgba_parse (&rgba, colours[colour].value[look]);
  return rgba;
}

/* How light a block is: from nearly paper without a filter to nearly black from seven stops on.
 * Even steps, because the eye counts steps and the stops stand in the block anyway. */
static float
block_lightness (double stops)
{
  return (float) (0.86 - 0.70 * CLAMP (stops, 0, 7) / 7);
}

GdkRGBA
ff_palette_block (FfLook look, double stops)
{
  float light = block_lightness (stops);

  switch (look)
    {
    case FF_LOOK_DAYLIGHT:
      return (GdkRGBA) { 1, 1, 1, 1 };
    case FF_LOOK_NIGHT:
      return (GdkRGBA) { light * 0.66f, light * 0.35f, light * 0.16f, 1 };
    case FF_LOOK_LIGHT:
    case FF_LOOK_DARK:
    case FF_N_LOOKS:
    default:
      return (GdkRGBA) { light, light, light, 1 };
    }
}

gboolean
ff_palette_block_has_patch (FfLook look)
{
  return look == FF_LOOK_DAYLIGHT || look == FF_LOOK_NIGHT;
}

GdkRGBA
ff_palette_on_block (FfLook look, double stops)
{
  if (ff_palette_block_has_patch (look))
    return ff_palette_colour (look, FF_COLOUR_INK);
  /* Between black and white text one always has 4.5 to 1 on a grey; this is where they change. */
  return block_lightness (stops) > 0.46f ? (GdkRGBA) { 0, 0, 0, 1 } : (GdkRGBA) { 1, 1, 1, 1 };
}

char *
ff_palette_css (FfLook look)
{
  GString *css = g_string_new (NULL);

  g_return_val_if_fail (look < FF_N_LOOKS, g_string_free (css, FALSE));
  for (guint i = 0; i < FF_N_COLOURS; i++)
    g_string_append_printf (css, "@define-color %s %s;\n", colours[i].name,
                            colours[i].value[look]);
  for (guint i = 0; i < G_N_ELEMENTS (borrowed); i++)
    g_string_append_printf (css, "@define-color %s %s;\n", borrowed[i].name,
                            colours[borrowed[i].colour].value[look]);
  /* From 4.16 on the library's own sheet reads variables of these names instead. */
  if (gtk_check_version (4, 16, 0) != NULL)
    return g_string_free (css, FALSE);
  g_string_append (css, ":root {\n");
  for (guint i = 0; i < G_N_ELEMENTS (borrowed); i++)
    {
      g_autofree char *name = g_strdelimit (g_strdup (borrowed[i].name), "_", '-');

      g_string_append_printf (css, "  --%s: %s;\n", name, colours[borrowed[i].colour].value[look]);
    }
  g_string_append (css, "}\n");
  return g_string_free (css, FALSE);
}
