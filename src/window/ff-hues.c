/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-hues.h"

typedef struct {
  const char *name;
  const char *value[FF_N_LOOKS]; /* light, dark, daylight, night */
} Hue;

static const Hue hues[FF_N_HUES] = {
  [FF_HUE_PAPER] = { "ff_paper", { "#f3f0e9", "#1b2126", "#ffffff", "#000000" } },
  [FF_HUE_SHEET] = { "ff_sheet", { "#fdfcf8", "#262e35", "#ffffff", "#120804" } },
  [FF_HUE_INK] = { "ff_ink", { "#1f262c", "#ebe7dd", "#000000", "#c9793f" } },
  [FF_HUE_SOFT] = { "ff_soft", { "#56626c", "#a3afb8", "#000000", "#b3703f" } },
  [FF_HUE_LINE] = { "ff_line", { "#d6d1c5", "#3a444d", "#000000", "#3d2111" } },
  [FF_HUE_SIDE] = { "ff_side", { "#333f49", "#12171b", "#ffffff", "#000000" } },
  [FF_HUE_SIDE_INK] = { "ff_side_ink", { "#f1ede3", "#ebe7dd", "#000000", "#c9793f" } },
  [FF_HUE_SIDE_SOFT] = { "ff_side_soft", { "#b4bfc7", "#94a1ab", "#000000", "#b3703f" } },
  [FF_HUE_SIDE_HERE] = { "ff_side_here", { "#46545f", "#262f37", "#000000", "#2a1409" } },
  [FF_HUE_SLATE] = { "ff_slate", { "#4a5964", "#8c9aa4", "#000000", "#8a4d28" } },
  [FF_HUE_CHESTNUT] = { "ff_chestnut", { "#8a3f24", "#a9502f", "#000000", "#7c3b17" } },
  [FF_HUE_ON_CHESTNUT] = { "ff_on_chestnut", { "#ffffff", "#ffffff", "#ffffff", "#f0b37d" } },
  [FF_HUE_CHESTNUT_INK]
  = { "ff_chestnut_ink", { "#82371d", "#eb9c78", "#000000", "#d5824a" } },
  [FF_HUE_OCHRE] = { "ff_ochre", { "#c98a26", "#dda544", "#000000", "#b87a26" } },
  [FF_HUE_OCHRE_WASH] = { "ff_ochre_wash", { "#f6e7c6", "#42351b", "#ffffff", "#1f1303" } },
  [FF_HUE_OCHRE_INK] = { "ff_ochre_ink", { "#694507", "#efc478", "#000000", "#d6973f" } },
};

/* What libadwaita and GTK call the same things. */
static const struct {
  const char *name;
  FfHue hue;
} borrowed[] = {
  { "accent_bg_color", FF_HUE_CHESTNUT },
  { "accent_fg_color", FF_HUE_ON_CHESTNUT },
  { "accent_color", FF_HUE_CHESTNUT_INK },
  { "destructive_bg_color", FF_HUE_CHESTNUT },
  { "destructive_fg_color", FF_HUE_ON_CHESTNUT },
  { "destructive_color", FF_HUE_CHESTNUT_INK },
  { "error_bg_color", FF_HUE_CHESTNUT },
  { "error_fg_color", FF_HUE_ON_CHESTNUT },
  { "error_color", FF_HUE_CHESTNUT_INK },
  { "warning_bg_color", FF_HUE_OCHRE },
  { "warning_color", FF_HUE_OCHRE_INK },
  { "success_bg_color", FF_HUE_SLATE },
  { "success_color", FF_HUE_INK },
  { "window_bg_color", FF_HUE_PAPER },
  { "window_fg_color", FF_HUE_INK },
  { "view_bg_color", FF_HUE_SHEET },
  { "view_fg_color", FF_HUE_INK },
  { "headerbar_bg_color", FF_HUE_PAPER },
  { "headerbar_fg_color", FF_HUE_INK },
  { "headerbar_border_color", FF_HUE_INK },
  { "headerbar_backdrop_color", FF_HUE_PAPER },
  { "headerbar_shade_color", FF_HUE_LINE },
  { "card_bg_color", FF_HUE_SHEET },
  { "card_fg_color", FF_HUE_INK },
  { "card_shade_color", FF_HUE_LINE },
  { "dialog_bg_color", FF_HUE_SHEET },
  { "dialog_fg_color", FF_HUE_INK },
  { "popover_bg_color", FF_HUE_SHEET },
  { "popover_fg_color", FF_HUE_INK },
};

GdkRGBA
ff_hue (FfLook look, FfHue hue)
{
  GdkRGBA rgba = { 0, 0, 0, 1 };

  g_return_val_if_fail (look < FF_N_LOOKS && hue < FF_N_HUES, rgba);
  gdk_rgba_parse (&rgba, hues[hue].value[look]);
  return rgba;
}

char *
ff_hues_css (FfLook look)
{
  GString *css = g_string_new (NULL);

  g_return_val_if_fail (look < FF_N_LOOKS, g_string_free (css, FALSE));
  for (guint i = 0; i < FF_N_HUES; i++)
    g_string_append_printf (css, "@define-color %s %s;\n", hues[i].name,
                            hues[i].value[look]);
  for (guint i = 0; i < G_N_ELEMENTS (borrowed); i++)
    g_string_append_printf (css, "@define-color %s %s;\n", borrowed[i].name,
                            hues[borrowed[i].hue].value[look]);
  /* From 4.16 on the library's own sheet reads variables of these names instead. */
  if (gtk_check_version (4, 16, 0) != NULL)
    return g_string_free (css, FALSE);
  g_string_append (css, ":root {\n");
  for (guint i = 0; i < G_N_ELEMENTS (borrowed); i++)
    {
      g_autofree char *name = g_strdelimit (g_strdup (borrowed[i].name), "_", '-');

      g_string_append_printf (css, "  --%s: %s;\n", name, hues[borrowed[i].hue].value[look]);
    }
  g_string_append (css, "}\n");
  return g_string_free (css, FALSE);
}
