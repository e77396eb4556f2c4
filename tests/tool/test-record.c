/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a shell records, and what it leaves in the file. */
#include "shell.h"

#include <math.h>
#include <string.h>

static void
new_job (const char *name)
{
  g_autofree char *make = g_strconcat ("new ", name, " --units us", NULL);
  g_autofree char *take = g_strconcat ("take-piles ", name,
                                       " work.csv --default 'bar=#8' --default bars=8", NULL);

  shell_write ("work.csv", "mark,x,y,batter\nA1,0,0,1:6\nA2,10,0,\nA3,20,0,\n");
  shell_tool_ends (0, make);
  shell_tool_ends (0, take);
}

static const struct
{
  const char *line, *says;
} recorded[] = {
  { "step A1 a2 cleaned", "A2: Cleaned" },
  { "bars A1 1,2,5-6", "A1: Bars 1, 2, 5, 6" },
  { "bars A2 --count 3", "A2: 3 bars" },
  { "rods 4 A1", "4 rods" },
  { "rods 3", "3 rods" },
  { "oxygen '120 cu ft'", "120 cu ft" },
  { "burn-time A1 '2 min'", "2 min" },
  { "delay current 45", "current: 45 min" },
  { "fault 'dead switch' 20", "dead switch: 20 min" },
  { "dive 'diver 1' --depth 31 --left-surface 07:10 --left-bottom 08:02 --reached-surface 08:04 "
    "--pile A1",
    "bottom time 52 min" },
  { "condition wind 'SW 20 kn'", "SW 20 kn" },
  { "condition 'water temperature' '54 °F'", "Water temperature: 54 °F" },
  { "condition tide '2 ft'", "Tide: 2 ft" },
  { "hours 6:00 1630", "Shift from 06:00 to 16:30" },
  { "crew 'diving supervisor' superintendent", "Diving supervisor: superintendent" },
  { "stock rods 150", "Rods on hand: 150" },
  { "delivery cylinders 6", "Full oxygen cylinders that came aboard: 6" },
  { "note 'all well' --who superintendent", "all well" },
  { "check A1 gloves clamp --left-surface 07:10 --who 'diver 1'", "2 of " },
  { "check A1 all --left-surface 07:10", "checks ticked" },
  { "drawn A3 'came easily'", "Drawn whole" },
  { "broken A2 --stub -3.5", "-3.5 ft" },
  { "fact A1 head '12 ft'", "Head elevation" },
  { "setting water-level 1.5", "Water level" },
  { "setting visibility poor", "Planned for poor visibility" },
};

static void
test_record (void)
{
  g_auto (Said) said = { 0 };

  new_job ("work");
  for (gsize i = 0; i < G_N_ELEMENTS (recorded); i++) {
    g_autofree char *line = g_strconcat ("record work ", recorded[i].line, " --day 2026-07-01",
                                         NULL);

    shell_tool (&said, 0, line);
    shell_assert_says (said.out, recorded[i].says);
  }
  shell_tool_ends (0, "check work");

  shell_tool (&said, 0, "totals work --json");
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *job = json_object_get_object_member (json_node_get_object (root), "job");

  g_assert_cmpfloat (json_object_get_double_member (job, "bars_count"), ==, 7);
  g_assert_cmpfloat (json_object_get_double_member (job, "rods_count"), ==, 7);
  g_assert_cmpfloat (json_object_get_double_member (job, "dives_count"), ==, 1);
  g_assert_cmpfloat (json_object_get_double_member (job, "bottom_s"), ==, 52 * 60);
  g_assert_cmpfloat (json_object_get_double_member (job, "delay_s"), ==, 45 * 60);
  g_assert_cmpfloat (json_object_get_double_member (job, "fault_s"), ==, 20 * 60);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (job, "oxygen_m3"),
                                  120 * 0.028316846592, 1e-9);
}

/* Ticks of a dive that is over name it; a key that no table has is refused with those of the cut. */
static void
test_checks (void)
{
  g_auto (Said) said = { 0 };

  new_job ("checks");
  shell_tool (&said, 1, "record checks check A1 all --day 2026-07-01");
  shell_assert_says (said.err, "--left-surface");
  said_clear (&said);
  shell_tool (&said, 1, "record checks check A1 gluves --left-surface 07:10 --day 2026-07-01");
  shell_assert_says (said.err, "gluves");
  shell_assert_says (said.err, "gloves, ");
  said_clear (&said);

  shell_tool (&said, 0, "record checks check A1 gloves --left-surface 07:10 --day 2026-07-01");
  shell_assert_says (said.out, "A1: Before the dive of 07:10: 1 of ");
  shell_assert_says (said.out, "; not: ");
  g_assert_null (strchr (strchr (said.out, '\n') + 1, '\n')); /* one line for the act */
  said_clear (&said);
  shell_tool_ends (0, "record checks check A1 all --left-surface 07:10 --day 2026-07-01");
  shell_tool (&said, 1, "record checks check A1 all --left-surface 07:10 --day 2026-07-01");
  shell_assert_says (said.err, "on record already");
  said_clear (&said);
  shell_tool (&said, 0, "record checks take-back --day 2026-07-01");
  shell_assert_says (said.out, "Taken back: Before the dive of 07:10: ");
  said_clear (&said);
  /* Today's next dive needs no time. */
  shell_tool_ends (0, "record checks check A1 all");
  shell_tool_ends (0, "check checks");
}

/* The crew's own cautions are kept, raised and ticked; a list that is wrong changes nothing. */
static void
test_cautions_are_taken (void)
{
  g_auto (Said) said = { 0 };

  new_job ("own");
  shell_write ("ours.csv", "key;severity;when;words;source\n"
                           "our-gate;danger;always;Gate B is locked: call first.;site rule 4\n");
  shell_write ("wrong.csv", "key,severity,when,words,source\n"
                            "our-gate,danger,always,Open.,us\ngloves,note,always,None.,us\n");
  shell_tool (&said, 0, "take-cautions own ours.csv");
  shell_assert_says (said.out, "1 caution");
  said_clear (&said);
  shell_tool (&said, 1, "take-cautions own wrong.csv");
  shell_assert_says (said.err, "wrong.csv: Line 3, column 1 (key): “gloves” is a caution that is");
  said_clear (&said);
  shell_tool (&said, 0, "cut own A1");
  shell_assert_says (said.out, "Gate B is locked: call first.");
  said_clear (&said);
  shell_tool (&said, 0, "record own check A1 gloves");
  shell_assert_says (said.out, "Gate B is locked");
  said_clear (&said);
  shell_tool_ends (0, "check own");
  shell_tool (&said, 0, "take-cautions own --clear");
  shell_assert_says (said.out, "out of the job");
  said_clear (&said);
  shell_tool (&said, 0, "cut own A1");
  g_assert_null (strstr (said.out, "Gate B"));
}

/* A dive says all of itself in one act, so that one take-back takes it all. */
static void
test_dive_is_one_act (void)
{
  g_auto (Said) said = { 0 };

  new_job ("dive");
  shell_tool (&said, 1, "record dive dive 'diver 1' --pile 'A1, A2' --count 2 --day 2026-07-01");
  shell_assert_says (said.err, "Bars belong to one pile");
  said_clear (&said);
  shell_tool (&said, 1, "record dive dive 'diver 1' --pile A1 --count -2 --day 2026-07-01");
  said_clear (&said);
  shell_tool (
    &said, 0,
    "record dive dive 'diver 1' --pile A1 --depth 31 --left-surface 710 --left-bottom 8:02 "
    "--reached-surface 0804 --mode 'surface-supplied air' --visibility '3 ft' --work "
    "'burning bars' --count 2 --rods 4 --oxygen '90 cu ft' --day 2026-07-01");
  shell_assert_says (said.out, "A1: Dive, diver 1: 31 ft, bottom time 52 min");
  shell_assert_says (said.out, "Diving mode: surface-supplied air");
  shell_assert_says (said.out, "Visibility at the cut: 3 ft");
  shell_assert_says (said.out, "Nature of work: burning bars");
  shell_assert_says (said.out, "A1: 2 bars");
  shell_assert_says (said.out, "A1: 4 rods used");
  shell_assert_says (said.out, "A1: 90 cu ft of oxygen used");
  said_clear (&said);
  shell_tool (&said, 0, "record dive dive 'diver 2' --pile 'A1 to A3' --rods 3 --day 2026-07-01");
  shell_assert_says (said.out, "Also at: A2, A3");
  said_clear (&said);
  shell_tool_ends (0, "check dive");
  shell_tool_ends (0, "record dive take-back --day 2026-07-01");
  shell_tool_ends (0, "record dive take-back --day 2026-07-01");
  shell_tool (&said, 0, "totals dive --json");
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *job = json_object_get_object_member (json_node_get_object (root), "job");

  g_assert_cmpfloat (json_object_get_double_member (job, "bars_count"), ==, 0);
  g_assert_cmpfloat (json_object_get_double_member (job, "rods_count"), ==, 0);
  g_assert_cmpfloat (json_object_get_double_member (job, "dives_count"), ==, 0);
}

/* Who bears a delay and what was done about a fault stand beside them. */
static void
test_lost_time_says_more (void)
{
  g_auto (Said) said = { 0 };

  new_job ("lost");
  shell_tool (&said, 0, "record lost delay weather 45 --borne-by owner --note fog");
  shell_assert_says (said.out, "Delay, weather: 45 min (fog)");
  shell_assert_says (said.out, "Borne by: owner");
  said_clear (&said);
  shell_tool (&said, 0, "record lost fault 'worn O-ring' 20 --done 'spare fitted'");
  shell_assert_says (said.out, "What was done: spare fitted");
  said_clear (&said);
  shell_tool (&said, 1, "record lost stock anodes 4");
  shell_assert_says (said.err, "“anodes” is neither rods nor cylinders");
  said_clear (&said);
  shell_tool (&said, 1, "record lost hours 16:30 6:00 --watch day");
  said_clear (&said);
  shell_write ("causes.csv", "cause\nice\ncrane away\n");
  shell_tool (&said, 0, "take-delay-causes lost causes.csv");
  shell_assert_says (said.out, "2 causes");
  said_clear (&said);
  shell_tool_ends (0, "take-delay-causes lost --clear");
  shell_tool_ends (0, "check lost");
}

static void
test_table_is_taken (void)
{
  g_auto (Said) said = { 0 };

  new_job ("table");
  shell_tool (&said, 1, "record table setting dive-table fsw");
  shell_assert_says (said.err, "take-dive-table");
}

static void
test_take_back_and_redo (void)
{
  g_auto (Said) said = { 0 };

  new_job ("back");
  shell_tool_ends (0, "record back bars A1 1,2 --day 2026-07-01");
  shell_tool_ends (0, "record back step A1 cleaned --day 2026-07-01");
  shell_tool (&said, 0, "piles back");
  shell_assert_says (said.out, "A1       cleaned   6/8");

  shell_tool_ends (0, "record back take-back --day 2026-07-01");
  shell_tool_ends (0, "record back take-back --day 2026-07-01");
  shell_tool (&said, 0, "piles back");
  shell_assert_says (said.out, "A1       standing  8/8");
  shell_tool_ends (1, "record back take-back --day 2026-07-01");

  shell_tool_ends (0, "record back redo --day 2026-07-01");
  shell_tool (&said, 0, "piles back");
  shell_assert_says (said.out, "A1       standing  6/8");
}

/* --- Burning ------------------------------------------------------------------------------ */

/* The member of the one sample, and of the one shift, that the job has. */
static JsonObject *
first_of (JsonNode *root, const char *list)
{
  JsonArray *items = json_object_get_array_member (json_node_get_object (root), list);

  g_assert_cmpuint (json_array_get_length (items), ==, 1);
  return json_array_get_object_element (items, 0);
}

static double
burning_rate (const char *job, gboolean is_default)
{
  g_autofree char *line = g_strconcat ("burn ", job, " --json", NULL);
  g_auto (Said) said = { 0 };

  shell_tool (&said, 0, line);
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *object = json_node_get_object (root);

  g_assert_cmpint (json_object_get_boolean_member (object, "is_default"), ==, is_default);
  return json_object_get_double_member (object, "rate_s_per_m2");
}

static void
test_burning (void)
{
  g_auto (Said) said = { 0 };

  new_job ("burning");
  shell_tool (&said, 0, "burn burning");
  shell_assert_says (said.out, "Trigger time: 25 s/in² (12.5–50) · the stated default");

  const double stated = burning_rate ("burning", TRUE);

  shell_tool_ends (1, "record burning set-aside 'no such shift' --day 2026-07-01");
  shell_tool_ends (0, "record burning bars A1 1-8 --day 2026-07-01");
  shell_tool_ends (0, "record burning burn-time A1 '5 min' --day 2026-07-01");
  shell_tool_ends (0, "record burning condition visibility 5 --day 2026-07-01");
  shell_tool (&said, 0, "burn burning");
  shell_assert_says (said.out, "#8, fair visibility: ");
  shell_assert_says (said.out, "2026-07-01 day  A1: 8 × #8, 300 s, 47.5 s/in², fair visibility\n");

  const double learned = burning_rate ("burning", FALSE);

  g_assert_cmpfloat (learned, >, 1.2 * stated);

  shell_tool_ends (1, "record burning set-aside jacketed --pile A2 --day 2026-07-01");
  shell_tool (&said, 0, "record burning set-aside jacketed --pile A1 --day 2026-07-01");
  shell_assert_says (said.out, "A1: Burning set aside from the learned rate (jacketed)");
  g_assert_cmpfloat (burning_rate ("burning", TRUE), ==, stated);
  shell_tool (&said, 0, "burn burning");
  shell_assert_says (said.out, "; set aside: 1\n");
  shell_assert_says (said.out, "fair visibility · set aside: jacketed\n");

  shell_tool (&said, 0, "burn burning --json");
  g_autoptr (JsonNode) aside = shell_parse_json (said.out);

  g_assert_cmpstr (json_object_get_string_member (first_of (aside, "samples"), "reason"), ==,
                   "jacketed");
  g_assert_false (json_object_get_boolean_member (first_of (aside, "shifts"), "is_set_aside"));

  shell_tool (&said, 0, "burn burning --csv");
  g_autoptr (LbTextTable) table = shell_parse_csv (said.out);

  g_assert_cmpuint (lb_text_table_get_shape (table).n_rows, ==, 2);

  shell_tool_ends (0, "record burning take-in --pile A1 --day 2026-07-01");
  g_assert_cmpfloat (burning_rate ("burning", FALSE), ==, learned);
  shell_tool_ends (1, "record burning take-in --pile A1 --day 2026-07-01");
  shell_tool_ends (0, "record burning set-aside 'clock stood still' --day 2026-07-01");
  shell_tool (&said, 0, "burn burning");
  shell_assert_says (said.out, "2026-07-01 day, with its rods and oxygen: set aside: clock stood");
  shell_tool_ends (0, "record burning take-back --day 2026-07-01");
  g_assert_cmpfloat (burning_rate ("burning", FALSE), ==, learned);
  shell_tool_ends (0, "check burning");
}

/* --- Facts -------------------------------------------------------------------------------- */

/* Where the bars stand, from the list and by correction, in the units of each; what has no column of
 * its own in the file is not lost. */
static void
test_bar_places (void)
{
  g_auto (Said) said = { 0 }, wrong = { 0 }, cut = { 0 };

  shell_write ("rings.csv",
               "mark,x,y,shape,width (in),bar size,number of bars,head,cut,bar places (in),"
               "kept bars\n"
               "R1,0,0,round,24,#8,12,10,-20,\"8 outer, 4 inner at 7\",3\n");
  shell_tool_ends (0, "new rings");
  shell_tool_ends (0, "take-piles rings rings.csv");
  shell_tool (&said, 0, "piles rings --json");
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *pile = json_array_get_object_element (json_node_get_array (root), 0);
  JsonArray *places = json_object_get_array_member (pile, "bar_places_m");

  g_assert_cmpuint (json_array_get_length (places), ==, 12);
  g_assert_cmpfloat_with_epsilon (
    json_array_get_double_element (json_array_get_array_element (places, 8), 1), 5 * 0.0254, 1e-9);
  shell_tool (&cut, 0, "cut rings R1");
  shell_assert_says (cut.out, "8 in an outer ring, 4 in one 7 in behind the face");

  shell_tool_ends (0, "record rings fact R1 'bar places' '4 outer, 8 inner at 6.5'");
  shell_tool (&wrong, 1, "record rings fact R1 'bar places' '12 in a heap'");
  shell_assert_says (wrong.err, "3 on each face");
  shell_tool_ends (0, "check rings");
  /* Another number than the pile has: stored as said, and no figure comes of it. */
  shell_tool_ends (0, "record rings fact R1 batter plumb");
  shell_tool_ends (0, "record rings fact R1 'bar places' '8 outer, 8 inner at 7'");
  g_auto (Said) refused = { 0 };
  shell_tool (&refused, 0, "cut rings R1");
  shell_assert_says (refused.out, "those of another number of bars");
  shell_tool_ends (1, "check rings");

  /* A list with a bar out of the face is not taken. */
  shell_write ("out.csv", "mark,x,y,shape,width (in),bar,bars,bar places (in)\n"
                          "R2,9,9,round,24,#8,3,at 0 11.6; 5 -5; -5 -5\n");
  g_auto (Said) out = { 0 };
  shell_tool (&out, 1, "take-piles rings out.csv");
  shell_assert_says (out.err, "bar 1 stands out of the face");
}

/* From a list: half way down its taper the pile is half way between its widths. Broken off there, it is
 * that wide at the head. */
static void
test_tapered (void)
{
  g_auto (Said) said = { 0 }, broken = { 0 }, cut = { 0 };

  shell_write ("taper.csv", "mark,x,y,shape,width (in),toe width (in),bar,bars,head,cut,toe\n"
                            "T1,0,0,oct,16,8,#8,8,10,-10,-30\n");
  shell_tool_ends (0, "new taper");
  shell_tool_ends (0, "take-piles taper taper.csv");
  shell_tool (&said, 0, "piles taper --json");
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *pile = json_array_get_object_element (json_node_get_array (root), 0);

  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (pile, "tip_width_m"), 8 * 0.0254,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (pile, "width_at_cut_m"),
                                  12 * 0.0254, 1e-9);
  shell_tool (&cut, 0, "cut taper T1");
  shell_assert_says (cut.out, "16 in octagonal tapering to 8 in");
  shell_assert_says (cut.out, "20 ft of 16 to 12 in octagonal");
  shell_tool_ends (0, "draw taper side T1 side.svg");
  shell_tool_ends (0, "check taper");

  shell_tool_ends (0, "record taper broken T1 --stub -10 --day 2026-07-01");
  shell_tool (&broken, 0, "piles taper --json");
  g_autoptr (JsonNode) after = shell_parse_json (broken.out);

  g_assert_cmpfloat_with_epsilon (
    json_object_get_double_member (json_array_get_object_element (json_node_get_array (after), 0),
                                   "width_m"),
    12 * 0.0254, 1e-9);
}

/* Bars found gone are out of the section and of the hold, and in nobody's production. */
static void
test_found_gone (void)
{
  g_auto (Said) said = { 0 }, cut = { 0 }, totals = { 0 }, back = { 0 };

  new_job ("gone");
  shell_tool (&said, 0, "record gone gone A1 2,5 --day 2026-07-01");
  g_assert_cmpstr (said.out, ==, "A1: Bars 2, 5 found gone\n");
  shell_tool_ends (0, "record gone bars A1 1 --day 2026-07-01");
  shell_tool_ends (1, "record gone gone A1 1,2 --day 2026-07-01");
  shell_tool_ends (1, "record gone gone A1 9x --day 2026-07-01");
  shell_tool (&cut, 0, "cut gone A1");
  shell_assert_says (cut.out, "of 8 bars on record, 2 found gone");
  shell_tool (&totals, 0, "totals gone --json");
  g_autoptr (JsonNode) root = shell_parse_json (totals.out);

  g_assert_cmpfloat (
    json_object_get_double_member (
      json_object_get_object_member (json_node_get_object (root), "job"), "bars_count"),
    ==, 1);
  shell_tool_ends (0, "check gone");
  shell_tool_ends (0, "draw gone section A1 section.svg");
  shell_tool_ends (0, "record gone take-back --day 2026-07-01");
  shell_tool_ends (0, "record gone take-back --day 2026-07-01");
  shell_tool (&back, 0, "piles gone");
  shell_assert_says (back.out, "A1       standing  8/8");
}

/* --- Divers ------------------------------------------------------------------------------- */

#define DAY " --day 2026-07-01"

/* The worked day: 40 ft by the table for 100 min, two hours up, 78 min open; U.S. Navy Diving Manual,
 * revision 7. */
static void
test_divers (void)
{
  g_auto (Said) said = { 0 };

  new_job ("dives");
  shell_tool (&said, 0, "divers dives" DAY);
  shell_assert_says (said.out, "Nobody dived on that day.");
  shell_tool_ends (0, "record dives dive 'Diver 1' --depth 39 --left-surface 07:00 "
                      "--left-bottom 08:40 --reached-surface 08:42" DAY);
  shell_tool (&said, 0, "divers dives --at 10:42" DAY);
  g_assert_cmpstr (said.out, ==,
                   "Diver 1: group I at 10:42 · open without stops: 78 min at 39 ft\n");
  shell_tool (&said, 0, "divers dives --at 10:42 --depth 14" DAY);
  shell_assert_says (said.out, "no limit at 14 ft");

  shell_tool (&said, 0, "divers dives --at 10:42 --json" DAY);
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *diver = json_array_get_object_element (json_node_get_array (root), 0);

  g_assert_cmpstr (json_object_get_string_member (diver, "state"), ==, "known");
  g_assert_cmpstr (json_object_get_string_member (diver, "group"), ==, "I");
  g_assert_cmpfloat (json_object_get_double_member (diver, "limit_s"), ==, 163 * 60);
  g_assert_cmpfloat (json_object_get_double_member (diver, "residual_s"), ==, 85 * 60);
  g_assert_cmpfloat (json_object_get_double_member (diver, "open_s"), ==, 78 * 60);

  /* 80 min where 78 were open: from then on nothing is said. */
  shell_tool_ends (0, "record dives dive 'diver 1 ' --depth 39 --left-surface 10:42 "
                      "--left-bottom 12:02 --reached-surface 12:04" DAY);
  shell_tool (&said, 0, "divers dives --at 14:00" DAY);
  g_assert_cmpstr (said.out, ==,
                   "Diver 1: Past the no-stop limit: the diving supervisor’s table decides\n");
}

static void
test_dive_table (void)
{
  g_auto (Said) said = { 0 };

  new_job ("tables");
  shell_tool_ends (0, "record tables fact -- A1 cut -36");
  shell_tool_ends (0, "record tables fact A1 head '10 ft'");
  shell_tool_ends (0, "record tables setting water-level '2 ft'");
  shell_write ("own.csv", "fsw;nostop\n20;unlimited\n30;200\n40;100\n190;3\n");
  shell_write ("wrong.csv", "fsw,nostop\n40,100\n50,120\n");
  shell_tool (&said, 0, "take-dive-table tables own.csv");
  shell_assert_says (said.out, "4 rows taken");
  shell_tool (&said, 0, "cut tables A1");
  shell_assert_says (said.out, "the supervisor’s own table, 40 ft row");
  shell_assert_says (said.out, "No-stop limit: 100 min");
  shell_assert_says (said.out, "no earlier dive of the diver counted");

  shell_tool (&said, 1, "take-dive-table tables wrong.csv");
  shell_assert_says (said.err, "wrong.csv: Line 3, column 2 (nostop)");
  shell_tool (&said, 1, "take-dive-table tables nothing.csv");
  shell_assert_says (said.err, "nothing.csv");
  shell_tool (&said, 0, "cut tables A1");
  shell_assert_says (said.out, "No-stop limit: 100 min");

  shell_tool (&said, 0, "take-dive-table tables --clear");
  shell_assert_says (said.out, "the U.S. Navy’s table again");
  shell_tool (&said, 0, "cut tables A1");
  shell_assert_says (said.out, "U.S. Navy air table, 40 ft row");
  shell_tool (&said, 0, "take-dive-table tables --clear");
  shell_assert_says (said.out, "already");
  shell_tool_ends (0, "check tables");
}

static double
figure (const char *job, const char *name)
{
  g_auto (Said) said = { 0 };
  g_autofree char *line = g_strdup_printf ("cut %s A1 --json", job);

  shell_tool (&said, 0, line);

  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *plan = json_node_get_object (root);
  JsonObject *figures = json_object_get_object_member (plan, "figures");
  JsonObject *of = json_object_has_member (figures, name) ? figures : plan;

  return json_object_get_null_member (of, name) ? (double) NAN
                                                : json_object_get_double_member (of, name);
}

/* The capacity is read off the chart once the radius is said, and the ground holds a whole pile. */
static void
test_chart_and_soil (void)
{
  g_auto (Said) said = { 0 };

  new_job ("lifts");
  shell_tool_ends (0, "record lifts fact -- A1 mudline -36");
  shell_tool_ends (0, "record lifts fact -- A1 toe -56");
  shell_tool_ends (0, "record lifts fact A1 head '10 ft'");
  shell_tool_ends (0, "record lifts fact A1 width '16 in'");
  shell_write ("chart.csv", "Radius [m];Capacity [t]\n9,5;12,5\n12;8\n");
  shell_write ("wrong.csv", "radius (ft),capacity (lb)\n40,20000\n30,30000\n");
  shell_tool (&said, 0, "take-crane-chart lifts chart.csv");
  shell_assert_says (said.out, "2 rows taken");
  g_assert_true (isnan (figure ("lifts", "crane_capacity_n")));
  shell_tool_ends (0, "record lifts setting crane-radius '10 m'");
  g_assert_cmpfloat_with_epsilon (figure ("lifts", "crane_capacity_n"), 8000 * 9.80665, 1e-6);
  g_assert_cmpfloat_with_epsilon (figure ("lifts", "crane_share_share"),
                                  figure ("lifts", "hook_load_n") / (8000 * 9.80665), 1e-9);
  shell_tool (&said, 1, "take-crane-chart lifts wrong.csv");
  shell_assert_says (said.err, "wrong.csv: Line 3, column 1 (radius (ft))");
  g_assert_cmpfloat_with_epsilon (figure ("lifts", "crane_capacity_n"), 8000 * 9.80665, 1e-6);
  shell_tool_ends (0, "take-crane-chart lifts --clear");
  g_assert_true (isnan (figure ("lifts", "crane_capacity_n")));

  shell_tool_ends (1, "record lifts setting bed rock");
  shell_tool_ends (0, "record lifts setting bed 'soft clay'");
  g_assert_cmpfloat_with_epsilon (figure ("lifts", "suction_n"),
                                  figure ("lifts", "mass_in_water_kg") * 9.80665 / 2, 1e-6);

  shell_write ("soil.csv", "to (ft),soil,strength (psf),in water (pcf)\n30,clay,400,38\n");
  shell_tool (&said, 0, "cut lifts A1");
  g_assert_null (strstr (said.out, "draw it whole"));
  shell_tool_ends (0, "record lifts fact A1 shape square");
  shell_tool_ends (0, "record lifts fact A1 removal 'drawn whole'");
  shell_tool_ends (1, "record lifts fact A1 removal blasted");
  shell_tool (&said, 0, "cut lifts A1");
  shell_assert_says (said.out, "draw it whole: –");
  shell_tool (&said, 0, "take-soil lifts soil.csv");
  shell_assert_says (said.out, "1 layer taken");
  shell_tool (&said, 0, "cut lifts A1");
  shell_assert_says (said.out, "draw it whole");
  g_assert_cmpfloat (figure ("lifts", "whole_pull_n"), >, figure ("lifts", "ground_grip_n"));
  g_assert_cmpfloat (figure ("lifts", "ground_grip_n"), >, 0);
  shell_tool_ends (0, "check lifts");
}

/* Severed from a shell is what it is in the window: no bar is left, and nothing is to be flagged. */
static void
test_severed (void)
{
  g_auto (Said) said = { 0 };

  new_job ("through");
  shell_tool_ends (0, "record through bars A1 1,2 --day 2026-07-01");
  shell_tool (&said, 0, "record through step A1 A2 severed --day 2026-07-01");
  shell_assert_says (said.out, "A1: Bars 3–8 burned");
  shell_assert_says (said.out, "A2: Bars 1–8 burned");
  shell_tool_ends (0, "record through bars A3 1-8 --day 2026-07-01");
  shell_tool (&said, 0, "piles through");
  for (int i = 1; i <= 3; i++) {
    g_autofree char *line = g_strdup_printf ("A%d       severed   0/8", i);

    shell_assert_says (said.out, line);
  }
  shell_tool (&said, 0, "check through");
  shell_tool (&said, 1, "record through step A1 severed --day 2026-07-01");
  shell_assert_says (said.err, "on record already");
}

static const char *const refused_records[] = {
  "step A1 nope",
  "step A1 Z9 cleaned",
  "bars A1",
  "bars A1 0",
  "bars A1 1,,2",
  "bars A1 61",
  "bars A1 1 --count 2",
  "bars Z9 1",
  "rods many",
  "oxygen '3 lb'",
  "delay current soon",
  "dive 'diver 1' --left-surface 25:10",
  "condition mood fine",
  "note x --watch dusk",
  "fact A1 colour red",
  "fact A1 width '900 in'",
  "setting mood fine",
  "setting water-level 99999",
  "take-back --day 2026-07-02",
  "redo",
};

/* Refused entries leave the file as it was, without even an empty shift. */
static void
test_refused_records (void)
{
  new_job ("stern");
  g_autoptr (GBytes) before = shell_bytes ("stern");

  for (gsize i = 0; i < G_N_ELEMENTS (refused_records); i++) {
    g_autofree char *line = g_strconcat ("record stern ", refused_records[i], NULL);

    shell_tool_ends (1, line);
  }
  g_auto (Said) said = { 0 };

  shell_tool (&said, 0, "totals stern --csv");
  g_autoptr (LbTextTable) table = shell_parse_csv (said.out);

  g_assert_cmpuint (lb_text_table_get_shape (table).n_rows, ==, 1);
  shell_tool_ends (0, "check stern");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  shell_set_up ();

  g_test_add_func ("/tool/record", test_record);
  g_test_add_func ("/tool/record/checks", test_checks);
  g_test_add_func ("/tool/record/cautions-are-taken", test_cautions_are_taken);
  g_test_add_func ("/tool/record/table-is-taken", test_table_is_taken);
  g_test_add_func ("/tool/record/dive-is-one-act", test_dive_is_one_act);
  g_test_add_func ("/tool/record/lost-time-says-more", test_lost_time_says_more);
  g_test_add_func ("/tool/take-back-and-redo", test_take_back_and_redo);
  g_test_add_func ("/tool/record/burning", test_burning);
  g_test_add_func ("/tool/bar-places", test_bar_places);
  g_test_add_func ("/tool/tapered", test_tapered);
  g_test_add_func ("/tool/found-gone", test_found_gone);
  g_test_add_func ("/tool/divers", test_divers);
  g_test_add_func ("/tool/chart-and-soil", test_chart_and_soil);
  g_test_add_func ("/tool/dive-table", test_dive_table);
  g_test_add_func ("/tool/severed", test_severed);
  g_test_add_func ("/tool/refused-records", test_refused_records);

  const int status = g_test_run ();

  shell_tear_down ();
  return status;
}
