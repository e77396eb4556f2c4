/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the figures of a cut plan are made of, as the shell says it. */
#include "shell.h"

#include <string.h>

static void
test_explain (void)
{
  g_auto (Said) said = { 0 };

  shell_make_demo ();
  shell_tool (&said, 0, "cut demo G7 --explain burn");
  shell_assert_says (said.out, "G7, Burning time at the pile: ");
  shell_assert_says (said.out, "Formula: trigger time + time of a strike × (bars + rods)\n");
  shell_assert_says (said.out, "More: docs/methods.md, “Burning”\n");
  shell_assert_says (said.out, "  Bars left: 8 · computed\n");
  shell_assert_says (said.out, "  Time of a strike, this job’s: ");
  shell_assert_says (said.out, "learned from 28 shifts of this job\n");
  shell_tool (&said, 0, "cut demo G7 --explain trigger");
  shell_assert_says (said.out, "  Visibility: poor visibility · as it was said last\n");

  shell_tool (&said, 2, "cut demo G7 --explain colour");
  shell_assert_says (said.err, "it is one of true-length, lean, ");
  shell_tool_ends (2, "cut demo G7 --explain burn --json");
}

/* A figure that is not known says what to type, through whatever figure it is missing. */
static void
test_missing (void)
{
  g_auto (Said) said = { 0 };

  shell_write ("bare.csv", "mark,x,y\nU1,1,2\n");
  shell_tool_ends (0, "new 'the job' --units us");
  shell_tool_ends (0, "take-piles 'the job' bare.csv");
  shell_tool (&said, 0, "cut 'the job' U1");
  shell_assert_says (said.out, "To be found out: Shape, Width, Bar size, Number of bars, Batter, "
                               "Head elevation, Cut elevation, Mudline elevation\n");
  shell_assert_says (said.out, "Hook load: –\n    The head elevation is not known.\n");
  shell_tool (&said, 0, "cut 'the job' U1 --explain hook-load");
  shell_assert_says (said.out, "  lastbent-tool record 'the job' fact 'U1' 'head' …\n");
  shell_assert_says (said.out, "  lastbent-tool record 'the job' fact 'U1' 'width' …\n");
  g_assert_null (strstr (said.out, "fact 'U1' 'bar"));
  shell_tool_ends (0, "record 'the job' fact 'U1' 'head' '10 ft'");
  shell_tool (&said, 0, "cut 'the job' U1 --explain hook-load");
  g_assert_null (strstr (said.out, "'head' …"));
}

/* What is not known of shape, lean and bars widens what can do without it, and is asked for. */
static void
test_widened (void)
{
  g_auto (Said) said = { 0 };

  shell_write ("wide.csv", "mark,x,y,width,bars,head,mudline\nU2,1,2,16,8,10,-30\n");
  shell_tool_ends (0, "new wide --units us");
  shell_tool_ends (0, "take-piles wide wide.csv");
  shell_tool (&said, 0, "cut wide U2");
  shell_assert_says (said.out, "U2: 16 in of unknown shape, 8 bars of a size not known, lean not "
                               "known\n");
  shell_assert_says (said.out, "To be found out: Shape, Bar size, Batter\n");
  shell_assert_says (said.out, "Rig before: –\n    The shape of the pile is not known.\n");
  /* 39 ft plumb, × √10 / 3 at 1:3. */
  shell_assert_says (said.out, "True length of the piece: 39 ft (39–41.1 ft)");
  shell_assert_says (said.out, "Steel left to burn: 9.4 in² (6.32–12.48 in²)");
  shell_assert_says (said.out, "8 bars of a size not known: #8 to #11, common practice\n");
  shell_assert_says (said.out, "Sight the pile for lean before anybody works at it");
  shell_tool (&said, 0, "cut wide U2 --explain steel");
  shell_assert_says (said.out, "  lastbent-tool record 'wide' fact 'U2' 'bar' …\n");

  shell_tool_ends (0, "record wide fact U2 shape round");
  shell_tool_ends (0, "record wide fact U2 batter plumb");
  shell_tool_ends (0, "record wide fact U2 bar '#9'");
  shell_tool_ends (0, "record wide fact U2 removal 'drawn whole'");
  shell_tool (&said, 0, "cut wide U2");
  shell_assert_says (said.out, "U2: 16 in round, 8 × #9 bars, plumb, to be drawn whole\n");
  shell_assert_says (said.out, "To be found out: Toe elevation\n");
  shell_assert_says (said.out, "Pull to draw it whole: –\n");
  shell_tool_ends (0, "record wide fact U2 shape ''");
  shell_tool (&said, 0, "cut wide U2 --json");
  shell_assert_says (said.out, "\"shape\" : null");
}

static JsonObject *
basis_of (JsonNode *root, const char *figure)
{
  JsonObject *basis = json_object_get_object_member (json_node_get_object (root), "basis");

  return json_object_get_object_member (basis, figure);
}

static JsonObject *
find_input (JsonObject *figure, const char *kind, const char *key)
{
  JsonArray *inputs = json_object_get_array_member (figure, "inputs");

  for (guint i = 0; i < json_array_get_length (inputs); i++) {
    JsonObject *input = json_array_get_object_element (inputs, i);

    if (g_str_equal (json_object_get_string_member (input, "kind"), kind) &&
        g_str_equal (json_object_get_string_member (input, "key"), key))
      return input;
  }
  return NULL;
}

/* Every figure has its basis, and an input that is a figure can be followed. */
static void
test_json (void)
{
  g_auto (Said) said = { 0 };

  shell_make_demo ();
  shell_tool (&said, 0, "cut demo G7 --json");
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *all = json_object_get_object_member (json_node_get_object (root), "basis");
  g_autoptr (GList) figures = json_object_get_members (all);

  for (GList *at = figures; at != NULL; at = at->next) {
    JsonObject *figure = json_object_get_object_member (all, at->data);
    JsonArray *inputs = json_object_get_array_member (figure, "inputs");

    g_test_message ("%s", (const char *) at->data);
    g_assert_cmpuint (strlen (json_object_get_string_member (figure, "formula")), >, 5);
    g_assert_cmpuint (json_array_get_length (inputs), >, 0);
    for (guint i = 0; i < json_array_get_length (inputs); i++) {
      JsonObject *input = json_array_get_object_element (inputs, i);
      g_autofree char *key = g_strdelimit (g_strdup (json_object_get_string_member (input, "key")),
                                           "-", '_');

      if (g_str_equal (json_object_get_string_member (input, "kind"), "figure"))
        g_assert_true (json_object_has_member (all, key));
    }
  }
  g_assert_nonnull (find_input (basis_of (root, "oxygen"), "figure", "cut-depth"));
  g_assert_nonnull (find_input (basis_of (root, "steel"), "fact", "bar"));
  g_assert_nonnull (find_input (basis_of (root, "trigger"), "setting", "visibility"));

  JsonObject *restrike = find_input (basis_of (root, "burn"), "assumption", "restrike");

  g_assert_cmpfloat (json_object_get_double_member (restrike, "value_s"), ==, 75);
}

/* --- The burning that is left ------------------------------------------------------------- */

static JsonObject *
left_of (JsonNode *root)
{
  return json_object_get_object_member (json_node_get_object (root), "left");
}

static void
test_left (void)
{
  g_auto (Said) said = { 0 };

  shell_write ("work.csv", "mark,x,y,mudline\nA1,0,0,-20\nA2,10,0,-20\nA3,20,0,-20\n");
  shell_tool_ends (0, "new left --units us");
  shell_tool_ends (0, "take-piles left work.csv --default 'bar=#8' --default bars=8");
  shell_tool_ends (0, "record left fact A3 bar ''");
  shell_tool (&said, 0, "summary left");
  shell_assert_says (said.out, "Left to burn: 16 bars at 2 piles · hours at the piles: ");
  shell_assert_says (said.out, "; 1 pile not counted: its bars are not known\n");
  shell_tool_ends (0, "record left step A1 severed --day 2026-07-01");
  shell_tool_ends (0, "record left bars A2 1,2,3 --day 2026-07-01");
  shell_tool (&said, 0, "totals left --json");
  g_autoptr (JsonNode) root = shell_parse_json (said.out);

  g_assert_cmpfloat (json_object_get_double_member (left_of (root), "bars_count"), ==, 5);
  g_assert_cmpfloat (json_object_get_double_member (left_of (root), "piles_count"), ==, 1);
  g_assert_cmpfloat (json_object_get_double_member (left_of (root), "unknown_piles_count"), ==, 1);
  /* 25 s/in² × 5 × 0.79 in² */
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (left_of (root), "trigger_s"),
                                  25 * 5 * 0.79, 1e-6);
  g_assert_cmpfloat (json_object_get_double_member (left_of (root), "oxygen_low_m3"), <,
                     json_object_get_double_member (left_of (root), "oxygen_m3"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  shell_set_up ();
  g_test_add_func ("/tool/explain/words", test_explain);
  g_test_add_func ("/tool/explain/missing", test_missing);
  g_test_add_func ("/tool/explain/widened", test_widened);
  g_test_add_func ("/tool/explain/json", test_json);
  g_test_add_func ("/tool/left", test_left);
  const int status = g_test_run ();

  shell_tear_down ();
  return status;
}
