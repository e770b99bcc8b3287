/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The words of the demo day are the crew's own, so they are not translated. */
#include "ff-demo-data.h"

#include <math.h>

const FfDemoMember ff_demo_crew[] = {
  { "Marit Ostrander", "MO", FF_ROLE_LEAD },
  { "Jonah Velk", "JV", FF_ROLE_PILOT },
  { "Ife Calloway", "IC", FF_ROLE_CAMERA },
  { "Pell Rasmussen", "PR", FF_ROLE_OBSERVER },
  { NULL },
};

const FfDemoPair ff_demo_hazards[] = {
  { "power line along the lane", "keep clear, never retrieve from it" },
  { "harbour wall edge and water", "" },
  { "walkers from the north gate", "" },
  { "gulls", "" },
  { NULL },
};

const FfDemoPair ff_demo_events[] = {
  { "17:14", "ferry passes" },
  { "18:05", "high water" },
  { "20:00", "north gate locked" },
  { NULL },
};

const FfDemoShot ff_demo_shots[] = {
  { "A", "harbour from above", "", FF_VIEW_DOWN, NAN, 60, 60, "over the basin", 0,
    FF_INTENT_VIDEO, 6, "16:30", "17:00" },
  { "B", "ferry tracking", "skipper agreed; abeam, never over the vessel", FF_VIEW_OBLIQUE, 60, 30,
    30, "alongside", 6, FF_INTENT_VIDEO, 7, "17:10", "17:20" },
  { "C", "mill wheel, slow", "", FF_VIEW_OBLIQUE, 75, 8, 8, "", 0, FF_INTENT_SLOW, 5, "17:15",
    "18:00" },
  { "D", "headland push-in", "", FF_VIEW_OBLIQUE, 70, 40, 40, "out along 060°", 5,
    FF_INTENT_VIDEO, 6, "17:40", "17:55" },
  { "E", "stills and panorama", "", FF_VIEW_OBLIQUE, NAN, 50, 50, "", 0, FF_INTENT_BRACKET, 6,
    "17:45", "18:30" },
  { "F", "low-sun reveal", "", FF_VIEW_OBLIQUE, 80, 10, 45, "", 3, FF_INTENT_VIDEO, 7, "18:35",
    "18:55" },
  { "G", "last-sun line", "", FF_VIEW_OBLIQUE, 95, 25, 25, "", 4, FF_INTENT_VIDEO, 7, "18:58",
    "19:22" },
  { "H", "dusk moving time-lapse", "", FF_VIEW_OBLIQUE, 90, 50, 50, "", 0.5, FF_INTENT_TIMELAPSE,
    10, "19:28", "19:45" },
  { NULL },
};

const FfDemoItem ff_demo_items[] = {
  { "aircraft 1", FF_KIND_AIRCRAFT, "aircraft 1", "1", NULL, "" },
  { "camera 1", FF_KIND_CAMERA, "camera of aircraft 1", "1", "aircraft 1", "" },
  { "P1", FF_KIND_PROPELLERS, "propeller set 1", "1", "aircraft 1", "" },
  { "P2", FF_KIND_PROPELLERS, "propeller set 2, spare", "2", NULL, "" },
  { "controller", FF_KIND_CONTROLLER, "controller", "1", "aircraft 1", "own battery" },
  { "cable", FF_KIND_CABLE, "controller cable", "1", "controller", "" },
  { "tablet", FF_KIND_TABLET, "tablet", "", NULL, "" },
  { "ND2", FF_KIND_FILTER, "1-stop filter", "3", NULL, "" },
  { "ND4", FF_KIND_FILTER, "2-stop filter", "3", NULL, "" },
  { "ND8", FF_KIND_FILTER, "3-stop filter", "3", NULL, "" },
  { "ND16", FF_KIND_FILTER, "4-stop filter", "3", NULL, "" },
  { "ND32", FF_KIND_FILTER, "5-stop filter", "3", NULL, "" },
  { "ND64", FF_KIND_FILTER, "6-stop filter", "3", NULL, "" },
  { "clear", FF_KIND_FILTER, "clear filter", "3", NULL, "" },
  { "b1", FF_KIND_BATTERY, "battery 1", "2", NULL, "usable minutes typed, no log yet" },
  { "b2", FF_KIND_BATTERY, "battery 2", "2", NULL, "usable minutes typed, no log yet" },
  { "b3", FF_KIND_BATTERY, "battery 3", "2", NULL, "usable minutes typed, no log yet" },
  { "b4", FF_KIND_BATTERY, "battery 4", "2", NULL,
    "resistance rise to watch; usable minutes typed, no log yet" },
  { "b5", FF_KIND_BATTERY, "battery 5", "2", NULL, "usable minutes typed, no log yet" },
  { "charger", FF_KIND_CHARGER, "charger, one slot", "2", "aircraft 1", "" },
  { "C1", FF_KIND_CARD, "card 1", "3", NULL, "" },
  { "C2", FF_KIND_CARD, "card 2", "3", NULL, "" },
  { "C3", FF_KIND_CARD, "card 3", "3", NULL, "" },
  { "C4", FF_KIND_CARD, "card 4", "3", NULL, "" },
  { "reader", FF_KIND_READER, "card reader", "3", NULL, "" },
  { "spares", FF_KIND_OTHER, "spares", "2", NULL, "" },
  { "pad", FF_KIND_OTHER, "landing pad", "", NULL, "" },
  { "radio 1", FF_KIND_RADIO, "radio 1", "", NULL, "" },
  { "radio 2", FF_KIND_RADIO, "radio 2", "", NULL, "" },
  { "radio 3", FF_KIND_RADIO, "radio 3", "", NULL, "" },
  { "radio 4", FF_KIND_RADIO, "radio 4", "", NULL, "" },
  { "fire blanket", FF_KIND_SAFETY, "fire blanket", "", NULL, "" },
  { "extinguisher", FF_KIND_SAFETY, "fire extinguisher", "", NULL, "" },
  { "first-aid kit", FF_KIND_SAFETY, "first-aid kit", "", NULL, "" },
  { "cones", FF_KIND_SAFETY, "cones", "", NULL, "" },
  { "vests", FF_KIND_SAFETY, "high-visibility vests", "", NULL, "" },
  { "insurance", FF_KIND_DOCUMENT, "insurance", "", NULL, "" },
  { "permission", FF_KIND_DOCUMENT, "landowner's permission", "", NULL, "" },
  { "certificate", FF_KIND_DOCUMENT, "pilot's certificate", "", NULL, "" },
  { NULL },
};

const FfDemoPair ff_demo_documents[] = {
  { "insurance", "2027-12-31" },
  { "permission", "2027-09-18" },
  { NULL },
};

const FfDemoLimit ff_demo_limits[] = {
  { "mean-wind", "mean wind at flying height", FF_COMPARE_AT_MOST, 8, "m/s" },
  { "gust", "gust at flying height", FF_COMPARE_AT_MOST, 9, "m/s" },
  { "rain", "rain", FF_COMPARE_PROHIBITED, NAN, "" },
  { "height", "height", FF_COMPARE_AT_MOST, 60, "m" },
  { "distance", "distance", FF_COMPARE_AT_MOST, 130, "m" },
  { "people", "uninvolved people", FF_COMPARE_AT_LEAST, 50, "m" },
  { "visibility", "visibility", FF_COMPARE_AT_LEAST, 5, "km" },
  { "battery-temperature", "battery at take-off", FF_COMPARE_AT_LEAST, 15, "°C" },
  { "reserve", "reserve at landing", FF_COMPARE_AT_LEAST, 30, "%" },
  { "light", "light on from sunset", FF_COMPARE_REQUIRED, NAN, "" },
  { "all-down", "all down", FF_COMPARE_BY_TIME, 19 * 60 + 50, "" },
  { "observer", "an observer", FF_COMPARE_REQUIRED, NAN, "" },
  { NULL },
};

const FfDemoPair ff_demo_other_days[] = {
  { "Brackenholt, first day", "2027-09-16" },
  { "Brackenholt, second day", "2027-09-19" },
  { NULL },
};
