/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/demo-events.h"

/* What went wrong, and what was worth writing down. All invented. */
static const LbDemoEvent events[] = {
  { 0, LB_ENTRY_NOTE, "", 0, "First dives. Growth is a foot thick on the outer bents.", NULL },
  { 1, LB_ENTRY_DELAY, "waiting on owner", 70, "Moorings to be cleared off the outer end",
    "owner" },
  { 2, LB_ENTRY_FAULT, "leak at the collet", 35, "Collet washer burned", "spare fitted" },
  { 3, LB_ENTRY_DELAY, "current", 40, "Ebb over a knot until slack", "not settled" },
  { 4, LB_ENTRY_DELAY, "waiting on crane", 95, "Crane barge aground at low water", "contractor" },
  { 5, LB_ENTRY_FAULT, "worn O-ring", 25, "", "O-ring changed" },
  { 6, LB_ENTRY_DELAY, "weather", LB_DEMO_SHIFT_MIN,
    "Gale from the south-west; nobody in the water", "weather" },
  { 7, LB_ENTRY_DELAY, "current", 30, "", "not settled" },
  { 8, LB_ENTRY_DELAY, "vessel traffic", 35, "Ferry wash; divers out twice", "owner" },
  { 9, LB_ENTRY_FAULT, "bad clamp", 40, "Ground clamp on painted steel",
    "clamp moved to bare steel" },
  { 10, LB_ENTRY_DELAY, "waiting on crane", 60, "", "contractor" },
  { 11, LB_ENTRY_NOTE, "", 0, "The burners now keep the rod at sixty degrees and drag it.", NULL },
  { 12, LB_ENTRY_FAULT, "dead switch", 55, "Safety switch would not close", "spare fitted" },
  { 13, LB_ENTRY_DELAY, "weather", LB_DEMO_SHIFT_MIN, "Swell over four feet round the outer end",
    "weather" },
  { 14, LB_ENTRY_DELAY, "current", 65, "Spring tide: only the slack could be worked",
    "not settled" },
  { 15, LB_ENTRY_DELAY, "waiting on crane", 80, "Barge full; away to unload", "contractor" },
  { 17, LB_ENTRY_FAULT, "worn O-ring", 20, "", "O-ring changed" },
  { 18, LB_ENTRY_DELAY, "current", 35, "", "not settled" },
  { 19, LB_ENTRY_FAULT, "leak at the collet", 15, "", "collet cleaned" },
  { 20, LB_ENTRY_NOTE, "", 0, "Two more cylinders of oxygen a shift from tomorrow.", NULL },
  { 21, LB_ENTRY_DELAY, "weather", 220, "Fog until noon", "weather" },
  { 22, LB_ENTRY_DELAY, "waiting on crane", 75, "", "contractor" },
  { 24, LB_ENTRY_DELAY, "current", 45, "", "not settled" },
  { 25, LB_ENTRY_FAULT, "bad clamp", 20, "", "jaws filed" },
  { 27, LB_ENTRY_DELAY, "vessel traffic", 25, "", "owner" },
  { 28, LB_ENTRY_DELAY, "current", 50, "Ebb stronger than the tables said", "not settled" },
  { 29, LB_ENTRY_NOTE, "", 0, "Bent 8 to be finished first; hook on the leaning ones.", NULL },
};

static const LbDemoWeather weathers[] = {
  { "SW 6 kn", "calm", "0.4 kn ebb", "5 ft" },
  { "W 10 kn", "1 ft chop", "0.6 kn ebb", "4 ft" },
  { "NW 14 kn", "1 ft chop", "0.5 kn flood", "3 ft" },
  { "calm", "calm", "0.3 kn flood", "6 ft" },
  { "S 12 kn", "2 ft swell", "0.8 kn ebb", "2 ft" },
};

static const LbDemoWeather foul = { "SW 34 kn", "5 ft swell", "not measured", "none" };

const LbDemoEvent *
lb_demo_events (gsize *out_n)
{
  *out_n = G_N_ELEMENTS (events);
  return events;
}

const LbDemoWeather *
lb_demo_weathers (gsize *out_n)
{
  *out_n = G_N_ELEMENTS (weathers);
  return weathers;
}

const LbDemoWeather *
lb_demo_foul_weather (void)
{
  return &foul;
}
