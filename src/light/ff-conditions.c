/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-conditions.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"

#define ANSI N_ ("ANSI exposure guides PH2.7-1973 and PH2.7-1986, as reprinted")

/* The guides' own footnotes. */
#define FRONT N_ ("Front light, 2 h clear of sunrise and sunset; side 1 stop less, back 2 less")
#define MOON  N_ ("Moon higher than 40°")

/* Where the two guides differ the reprint gives a range that holds both. */
static const FfCondition conditions[] = {
  /* Daylight. The first two are lit by the sun itself. */
  { "snow-sun", N_ ("light sand or snow, full or slightly hazy sun"), 16, 16, ANSI, FRONT },
  { "full-sun", N_ ("typical scene, full or slightly hazy sun, distinct shadows"), 15, 15, ANSI,
    FRONT },
  { "hazy-sun", N_ ("typical scene, hazy sun, soft shadows"), 14, 14, ANSI, NULL },
  { "cloudy-bright", N_ ("typical scene, cloudy bright, no shadows"), 13, 13, ANSI, NULL },
  { "heavy-overcast", N_ ("typical scene, heavy overcast"), 12, 12, ANSI, NULL },
  { "open-shade", N_ ("areas in open shade, clear sunlight"), 12, 12, ANSI, NULL },

  /* Outdoors, natural light. */
  { "rainbow-clear", N_ ("rainbow, clear sky behind"), 15, 15, ANSI, NULL },
  { "rainbow-cloudy", N_ ("rainbow, cloudy sky behind"), 14, 14, ANSI, NULL },
  { "before-sunset", N_ ("sky and skyline just before sunset"), 12, 14, ANSI, NULL },
  { "at-sunset", N_ ("sky and skyline at sunset"), 12, 12, ANSI, NULL },
  { "after-sunset", N_ ("sky and skyline just after sunset"), 9, 11, ANSI, NULL },
  { "moon-full", N_ ("the full moon itself"), 15, 15, ANSI, MOON },
  { "moon-gibbous", N_ ("the gibbous moon itself"), 14, 14, ANSI, MOON },
  { "moon-quarter", N_ ("the quarter moon itself"), 13, 13, ANSI, MOON },
  { "moon-crescent", N_ ("the crescent moon itself"), 12, 12, ANSI, MOON },
  { "moonlit-full", N_ ("scene lit by the full moon"), -3, -2, ANSI, MOON },
  { "moonlit-gibbous", N_ ("scene lit by the gibbous moon"), -4, -4, ANSI, MOON },
  { "moonlit-quarter", N_ ("scene lit by the quarter moon"), -6, -6, ANSI, MOON },
  { "aurora-bright", N_ ("bright aurora"), -4, -3, ANSI, NULL },
  { "aurora-medium", N_ ("medium aurora"), -6, -5, ANSI, NULL },

  /* Outdoors, artificial light. */
  { "neon-signs", N_ ("neon and other bright signs"), 9, 10, ANSI, NULL },
  { "night-sports", N_ ("sports at night"), 9, 9, ANSI, NULL },
  { "fires", N_ ("fires and burning buildings"), 9, 9, ANSI, NULL },
  { "bright-street", N_ ("bright street scenes at night"), 8, 8, ANSI, NULL },
  { "night-street", N_ ("night street scenes and window displays"), 7, 8, ANSI, NULL },
  { "fairs", N_ ("fairs and amusement parks at night"), 7, 7, ANSI, NULL },
  { "night-traffic", N_ ("vehicle traffic at night"), 5, 5, ANSI, NULL },
  { "tree-lights", N_ ("Christmas tree lights, outdoors or indoors"), 4, 5, ANSI, NULL },
  { "floodlit", N_ ("floodlit buildings, monuments, fountains"), 3, 5, ANSI, NULL },
  { "distant-lights", N_ ("distant views of lighted buildings"), 2, 2, ANSI, NULL },

  /* Indoors, artificial light. */
  { "galleries", N_ ("galleries"), 8, 11, ANSI, NULL },
  { "stage-shows", N_ ("indoor sports and stage shows"), 8, 9, ANSI, NULL },
  { "circus", N_ ("floodlit circus"), 8, 8, ANSI, NULL },
  { "ice-show", N_ ("floodlit ice show"), 9, 9, ANSI, NULL },
  { "office", N_ ("offices and work areas"), 7, 8, ANSI, NULL },
  { "home", N_ ("home interiors"), 5, 7, ANSI, NULL },
};

guint
ff_conditions_count (void)
{
  return G_N_ELEMENTS (conditions);
}

const FfCondition *
ff_condition (guint index)
{
  g_return_val_if_fail (index < G_N_ELEMENTS (conditions), NULL);
  return &conditions[index];
}

const FfCondition *
ff_condition_find (const char *name, GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (conditions); i++)
    if (g_ascii_strcasecmp (conditions[i].name, name) == 0)
      return &conditions[i];
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("unknown condition “%s”; “light --list” lists them"), name);
  return NULL;
}
