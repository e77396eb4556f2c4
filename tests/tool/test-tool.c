/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shell command as a script meets it: what it prints, how it ends, what it leaves in files. */
#include "shell.h"

#include <json-glib/json-glib.h>
#include <string.h>

/* --- Help and misuse ---------------------------------------------------------------------- */

static const char *const commands[] = {
  "demo",  "new",   "take-piles", "take-dive-table", "take-crane-chart", "take-soil", "piles",
  "cut",   "burn",  "record",     "divers",          "totals",           "summary",   "draw",
  "print", "check", "findings",   "answer",          "packet",           "join"
};

static void
test_help (void)
{
  g_auto (Said) said = { 0 };

  shell_tool (&said, 0, "--help");
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++) {
    g_autofree char *line = g_strconcat (commands[i], " --help", NULL);
    g_auto (Said) help = { 0 };

    shell_assert_says (said.out, commands[i]);
    shell_tool (&help, 0, line);
    shell_assert_says (help.out, "FILE");
  }
  shell_tool (&said, 0, "--version");
  shell_assert_says (said.out, "lastbent-tool");
}

/* The man page has every command and every kind of entry that --help knows. */
static void
test_man_page (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("LB_SOURCE_DIR"), "data", "lastbent-tool.1",
                                            NULL);
  g_autofree char *text = NULL;
  g_auto (Said) said = { 0 };

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_auto (GStrv) parts = g_strsplit (text, "\\-", -1);
  g_autofree char *page = g_strjoinv ("-", parts);

  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++) {
    g_autofree char *entry = g_strconcat (".BI ", commands[i], " ", NULL);

    shell_assert_says (page, entry);
  }

  shell_make_demo ();
  shell_tool (&said, 2, "record demo fly");
  g_auto (GStrv) kinds = g_strsplit (strstr (said.err, "one of ") + strlen ("one of "), ", ", -1);

  for (char **kind = kinds; *kind != NULL; kind++) {
    g_autofree char *word = g_strndup (*kind, strcspn (*kind, "\n"));
    g_autofree char *alone = g_strconcat ("\n.B ", word, "\n", NULL);
    g_autofree char *entry = g_strconcat ("\n.BI ", word, " ", NULL);

    g_test_message ("%s", word);
    g_assert_true (strstr (page, alone) != NULL || strstr (page, entry) != NULL);
  }
}

static const char *const misuses[] = {
  "",
  "fly",
  "demo",
  "demo a b",
  "new",
  "cut demo",
  "cut demo G7 --yaml",
  "totals demo --csv --json",
  "burn demo --csv --json",
  "record demo",
  "record demo fly G7",
  "record demo step G7",
  "record demo delay current",
  "record demo note x --day 31-12-2026",
  "record demo note x --day 2026-02-30",
  "draw demo map out.png",
  "draw demo side out.png",
  "draw demo plan G7 out.png",
  "draw demo plan out.png --width 5",
  "print demo card out.pdf",
  "print demo week 2026-07-11 o.pdf",
  "print demo day yesterday out.pdf",
  "print demo card G7 out.pdf --paper foolscap",
  "take-piles demo list --units furlongs",
  "take-dive-table demo",
  "take-dive-table demo own.csv --clear",
  "take-crane-chart demo",
  "take-soil demo own.csv --clear",
  "divers demo --at 25:00",
  "divers demo --day 2026-02-30",
  "divers demo --depth deep",
  "divers demo --watch noon",
  "take-piles demo list --map colour=1",
  "take-piles demo list --map mark=12",
  "take-piles demo list --default width=wide",
  "new other --units cubits",
};

static void
test_misuse (void)
{
  g_autofree char *other = shell_path ("other");

  shell_make_demo ();
  shell_write ("list", "mark,x,y\nQ1,1,2\n");
  for (gsize i = 0; i < G_N_ELEMENTS (misuses); i++)
    shell_tool_ends (2, misuses[i]);
  g_assert_false (g_file_test (other, G_FILE_TEST_EXISTS));
}

/* --- Files that are none ------------------------------------------------------------------ */

static void
test_refused_files (void)
{
  static const char *const lines[] = {
    "check %s",
    "summary %s",
    "totals %s",
    "piles %s",
    "cut %s A1",
    "draw %s plan p.png",
    "print %s card A1 p.pdf",
    "record %s note x",
    "take-piles %s list.csv",
  };
  g_autofree char *gone = shell_path ("gone");

  shell_write ("list.csv", "mark,x,y\nA1,1,2\n");
  shell_write ("foreign", "This is no job.\n");
  g_autoptr (GBytes) before = shell_bytes ("foreign");

  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++) {
    g_auto (GStrv) parts = g_strsplit (lines[i], "%s", 2);
    g_autofree char *missing = g_strconcat (parts[0], "gone", parts[1], NULL);
    g_autofree char *foreign = g_strconcat (parts[0], "foreign", parts[1], NULL);

    shell_tool_ends (1, missing);
    shell_tool_ends (1, foreign);
  }
  g_autoptr (GBytes) after = shell_bytes ("foreign");

  g_assert_true (g_bytes_equal (before, after));
  g_assert_false (g_file_test (gone, G_FILE_TEST_EXISTS));
}

static void
test_existing_file_stays (void)
{
  shell_write ("mine", "keep me");
  shell_tool_ends (1, "demo mine");
  shell_tool_ends (1, "new mine");
  g_autoptr (GBytes) after = shell_bytes ("mine");

  g_assert_cmpmem (g_bytes_get_data (after, NULL), g_bytes_get_size (after), "keep me", 7);
}

/* --- The demo ------------------------------------------------------------------------------ */

static void
test_demo (void)
{
  g_auto (Said) said = { 0 }, again = { 0 };

  shell_make_demo ();
  shell_tool (&said, 0, "check demo");
  shell_assert_says (said.out, "sound");

  /* Made twice it is the same job. */
  shell_tool_ends (0, "demo twin");
  shell_tool (&said, 0, "piles demo --json");
  shell_tool (&again, 0, "piles twin --json");
  g_assert_cmpstr (said.out, ==, again.out);
  shell_tool (&said, 0, "totals demo --json");
  shell_tool (&again, 0, "totals twin --json");
  g_assert_cmpstr (said.out, ==, again.out);

  shell_tool (&said, 0, "summary demo");
  shell_assert_says (said.out, "Tern Cove Cannery Wharf (demo)");
  shell_assert_says (said.out, "Hold point");
  shell_assert_says (said.out, "\nLeft to burn: ");
  shell_assert_says (said.out, " rods left: ");
  shell_assert_says (said.out, " cylinders left: ");
  g_auto (GStrv) lines = g_strsplit (g_strchomp (said.out), "\n", -1);

  g_assert_cmpuint (g_strv_length (lines), ==, 13);
}

/* --- JSON and CSV -------------------------------------------------------------------------- */

static gboolean
names_its_unit (const char *name)
{
  static const char *const endings[] = { "_m",      "_m2",    "_m3",       "_s",     "_kg",
                                         "_n",      "_pa",    "_rad",      "_count", "_tag",
                                         "_reason", "_share", "_per_rise", "_v" };

  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++) {
    if (g_str_has_suffix (name, endings[i]))
      return TRUE;
  }

  return FALSE;
}

static void
assert_figures_named (JsonObject *figures)
{
  g_autoptr (GList) members = json_object_get_members (figures);

  g_assert_cmpuint (g_list_length (members), >, 80);
  for (GList *at = members; at != NULL; at = at->next) {
    JsonNode *value = json_object_get_member (figures, at->data);

    if (json_node_get_value_type (value) == G_TYPE_BOOLEAN)
      continue;
    g_test_message ("%s", (const char *) at->data);
    g_assert_true (names_its_unit (at->data));
  }
}

static void
test_cut_json (void)
{
  g_auto (Said) said = { 0 };

  shell_make_demo ();
  shell_tool (&said, 0, "cut demo G7 --json");
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *top = json_node_get_object (root);
  JsonObject *pile = json_object_get_object_member (top, "pile");
  JsonObject *figures = json_object_get_object_member (top, "figures");

  g_assert_cmpstr (json_object_get_string_member (pile, "mark"), ==, "G7");
  g_assert_cmpfloat (json_object_get_double_member (pile, "batter_run_per_rise"), ==, 0.25);
  assert_figures_named (figures);
  /* A range is in order, and a load stands on the hook. */
  g_assert_cmpfloat (json_object_get_double_member (figures, "burn_low_s"), <=,
                     json_object_get_double_member (figures, "burn_s"));
  g_assert_cmpfloat (json_object_get_double_member (figures, "burn_s"), <=,
                     json_object_get_double_member (figures, "burn_high_s"));
  g_assert_cmpfloat (json_object_get_double_member (figures, "hook_load_n"), >, 0);
  g_assert_cmpfloat (json_object_get_double_member (figures, "regulator_pa"), >, 0);
  g_assert_cmpstr (json_object_get_string_member (top, "slag_side"), ==, "north");
  g_assert_cmpstr (json_object_get_string_member (top, "lead_side"), ==, "south");
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (top, "cautions")), >, 5);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (top, "burn_order")), ==,
                    8);
}

/* What is not known is null, and the reason says what is missing. */
static void
test_cut_json_unknown (void)
{
  g_auto (Said) said = { 0 };

  shell_write ("bare.csv", "mark,x,y\nU1,1,2\n");
  shell_tool_ends (0, "new bare");
  shell_tool_ends (0, "take-piles bare bare.csv");
  shell_tool (&said, 0, "cut bare u1 --json");
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *figures = json_object_get_object_member (json_node_get_object (root), "figures");

  g_assert_true (json_object_get_null_member (figures, "hook_load_n"));
  g_assert_true (json_object_get_null_member (figures, "burn_high_s"));
  g_assert_cmpuint (strlen (json_object_get_string_member (figures, "hook_load_reason")), >, 5);
}

/* The object of that key among the cautions; NULL when there is none. */
static JsonObject *
find_caution (JsonObject *top, const char *key)
{
  JsonArray *cautions = json_object_get_array_member (top, "cautions");

  for (guint i = 0; i < json_array_get_length (cautions); i++) {
    JsonObject *caution = json_array_get_object_element (cautions, i);

    if (g_str_equal (json_object_get_string_member (caution, "key"), key))
      return caution;
  }
  return NULL;
}

#define CAUTION_HEAD "key,severity,when,words,source\n"

static void
test_crew_cautions (void)
{
  g_auto (Said) said = { 0 }, text = { 0 }, refused = { 0 };

  shell_make_demo ();
  shell_write ("ours.csv", CAUTION_HEAD "our-gate,danger,always,Gate B is locked.,site rule 4\n"
                                        "our-lean,note,battered,Look {lean-side}.,our rigger\n"
                                        "our-list,note,list-over,Lists {list}.,our rigger\n");
  shell_tool (&said, 0, "cut demo G7 --json --cautions ours.csv");
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *top = json_node_get_object (root);
  JsonObject *gate = find_caution (top, "our-gate");
  JsonObject *lean = find_caution (top, "our-lean");

  g_assert_nonnull (gate);
  g_assert_nonnull (lean);
  g_assert_null (find_caution (top, "our-list"));
  g_assert_nonnull (find_caution (top, "switch-open"));
  g_assert_cmpstr (json_object_get_string_member (gate, "text"), ==, "Gate B is locked.");
  g_assert_cmpstr (json_object_get_string_member (gate, "severity"), ==, "danger");
  g_assert_cmpstr (json_object_get_string_member (gate, "source"), ==, "site rule 4");
  g_assert_false (json_object_get_boolean_member (gate, "is_of_this_pile"));
  g_assert_cmpstr (json_object_get_string_member (lean, "text"), ==, "Look north.");
  g_assert_true (json_object_get_boolean_member (lean, "is_of_this_pile"));

  shell_tool (&text, 0, "cut demo G7 --cautions ours.csv");
  shell_assert_says (text.out, "\n! Gate B is locked.\n");
  shell_tool_ends (0, "print demo card G7 card.pdf --cautions ours.csv");

  /* Nothing of a list that is wrong in one place, and its name with the reason. */
  shell_write ("wrong.csv", CAUTION_HEAD "strand,note,always,It is nothing.,us\n");
  shell_tool (&refused, 1, "cut demo G7 --cautions wrong.csv");
  g_assert_cmpstr (refused.out, ==, "");
  shell_assert_says (refused.err, "wrong.csv: Line 2, column 1 (key)");
  shell_tool_ends (1, "print demo card G7 none.pdf --cautions none.csv");
  shell_tool_ends (2, "print demo day 2026-07-11 none.pdf --cautions ours.csv");
}

static void
test_totals_agree (void)
{
  g_auto (Said) json = { 0 }, csv = { 0 };
  double bars = 0;

  shell_make_demo ();
  shell_tool (&json, 0, "totals demo --json");
  shell_tool (&csv, 0, "totals demo --csv");
  g_autoptr (JsonNode) root = shell_parse_json (json.out);
  JsonObject *top = json_node_get_object (root);
  g_autoptr (LbTextTable) table = shell_parse_csv (csv.out);
  const gsize n_rows = lb_text_table_get_shape (table).n_rows;

  g_assert_cmpuint (n_rows, ==, 31);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (top, "days")), ==, 30);
  g_assert_cmpstr (lb_text_table_cell (table, 0, 0), ==, "day");
  g_assert_cmpstr (lb_text_table_cell (table, 0, 5), ==, "bars_count");
  g_assert_cmpstr (lb_text_table_cell (table, n_rows - 1, 0), ==, "2026-07-11");
  for (gsize row = 1; row < n_rows; row++)
    bars += g_ascii_strtod (lb_text_table_cell (table, row, 5), NULL);
  g_assert_cmpfloat (
    bars, ==,
    json_object_get_double_member (json_object_get_object_member (top, "job"), "bars_count"));
  g_assert_nonnull (strstr (csv.out, "\r\n"));
}

/* Our own list comes back as the same piles, formulas disarmed on the way. */
static void
test_piles_round_trip (void)
{
  g_auto (Said) first = { 0 }, second = { 0 };

  shell_make_demo ();
  shell_tool (&first, 0, "piles demo --csv");
  g_autoptr (LbTextTable) table = shell_parse_csv (first.out);

  g_assert_cmpuint (lb_text_table_get_shape (table).n_rows, ==, 199);
  shell_write ("again.csv", first.out);
  shell_tool_ends (0, "new again --units us");
  shell_tool_ends (0, "take-piles again again.csv");
  shell_tool (&second, 0, "piles again --csv");

  /* All but the two columns of the work done. */
  g_autoptr (LbTextTable) read = shell_parse_csv (second.out);
  const LbTextTableShape shape = lb_text_table_get_shape (table);

  g_assert_cmpuint (lb_text_table_get_shape (read).n_rows, ==, shape.n_rows);
  for (gsize row = 0; row < shape.n_rows; row++) {
    for (gsize column = 0; column < shape.n_columns - 2; column++)
      g_assert_cmpstr (lb_text_table_cell (read, row, column), ==,
                       lb_text_table_cell (table, row, column));
  }
}

static void
test_formula_guard (void)
{
  g_auto (Said) said = { 0 };

  shell_write ("evil.csv", "mark,x,y,note\n\"=A1\",-5,2,\"=HYPERLINK(1)\"\n");
  shell_tool_ends (0, "new evil --units metric");
  shell_tool_ends (0, "take-piles evil evil.csv");
  shell_tool (&said, 0, "piles evil --csv");
  shell_assert_says (said.out, "\r\n'=A1,");
  shell_assert_says (said.out, ",'=HYPERLINK(1),-5,2,");
}

/* --- Taking a list ------------------------------------------------------------------------- */

static void
test_take_bad_list (void)
{
  g_auto (Said) said = { 0 };

  shell_write ("bad.csv", "mark,x (ft),y (ft),width (in),batter\r\nP1,0,0,16,1:6\r\nP2,10,0,16,\r\n"
                          "P3,20,zero,16,\r\nP4,,0,16,\r\nP5,30,0,16,1:0.5\r\nP6,40,0,16,6\r\n");
  shell_tool_ends (0, "new site --name Site --units us");
  g_autoptr (GBytes) before = shell_bytes ("site");

  shell_tool (&said, 1, "take-piles site bad.csv");
  shell_assert_says (said.err, "bad.csv:4: y (ft): ");
  shell_assert_says (said.err, "zero");
  shell_assert_says (said.err, "bad.csv:5: x (ft): ");
  shell_assert_says (said.err, "bad.csv:6: batter: ");
  shell_assert_says (said.err, "3 rows are wrong");
  g_autoptr (GBytes) after = shell_bytes ("site");

  g_assert_true (g_bytes_equal (before, after));
  shell_tool (&said, 0, "piles site");
  g_assert_cmpstr (said.out, ==, "");
}

static void
test_take_good_rows (void)
{
  g_auto (Said) said = { 0 };
  g_autofree char *program = g_build_filename (g_getenv ("LB_BUILD_DIR"), "src", "tool",
                                               "lastbent-tool", NULL);

  shell_write ("half.csv", "mark;x;y\nA1;1,5;2\nA2;oops;2\n");
  shell_tool_ends (0, "new half --units metric");
  shell_run (&said, program, "take-piles", "half", "half.csv", "--good-rows", NULL);
  g_assert_cmpint (said.status, ==, 0);
  shell_assert_says (said.err, "half.csv:3: x: ");
  shell_assert_says (said.out, "1 pile taken");
  /* A mark that is there already is a fault like any other. */
  shell_tool (&said, 1, "take-piles half half.csv");
  shell_assert_says (said.err, "already in the job");
}

static void
test_take_dry_run (void)
{
  g_auto (Said) said = { 0 };

  shell_write ("three.csv", "A1,1,2\nA2,3,4\nA3,5,6\n");
  shell_tool_ends (0, "new dry");
  g_autoptr (GBytes) before = shell_bytes ("dry");

  shell_tool (&said, 0, "take-piles dry three.csv --dry-run");
  shell_assert_says (said.out, "3 piles would be taken");
  g_autoptr (GBytes) after = shell_bytes ("dry");

  g_assert_true (g_bytes_equal (before, after));
}

static void
test_take_mapped (void)
{
  g_auto (Said) said = { 0 };

  shell_write ("odd.csv", "Pfahl;Rechts;Hoch;Breite\nA1;10;20;400\n");
  shell_tool_ends (0, "new mapped --units metric");
  shell_tool (&said, 1, "take-piles mapped odd.csv");
  shell_assert_says (said.err, "Mark");
  shell_tool_ends (0, "take-piles mapped odd.csv --map mark=pfahl --map x=2 --map y=HOCH "
                      "--map width=Breite --default shape=octagonal --default 'bar=#8' "
                      "--default bars=8 --datum 'chart zero'");
  shell_tool (&said, 0, "piles mapped --json");
  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonObject *pile = json_array_get_object_element (json_node_get_array (root), 0);

  g_assert_cmpfloat (json_object_get_double_member (pile, "y_m"), ==, 20);
  g_assert_cmpfloat (json_object_get_double_member (pile, "width_m"), ==, 0.4);
  g_assert_cmpstr (json_object_get_string_member (pile, "shape"), ==, "octagonal");
  g_assert_cmpint (json_object_get_int_member (pile, "bars_left_count"), ==, 8);
}

/* --- Pictures and paper -------------------------------------------------------------------- */

static void
assert_begins (const char *name, const char *magic)
{
  g_autoptr (GBytes) bytes = shell_bytes (name);

  g_assert_cmpuint (g_bytes_get_size (bytes), >, 1000);
  g_assert_cmpmem (g_bytes_get_data (bytes, NULL), strlen (magic), magic, strlen (magic));
}

static void
test_draw (void)
{
  static const char *const kinds[] = { "plan", "side G7", "section G7", "daily" };

  shell_make_demo ();
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++) {
    g_autofree char *png = g_strconcat ("draw demo ", kinds[i], " out.png", NULL);
    g_autofree char *svg = g_strconcat ("draw demo ", kinds[i], " out.svg --dark", NULL);
    g_autofree char *pdf = g_strconcat ("draw demo ", kinds[i], " out.pdf --width 700 --height 500",
                                        NULL);

    shell_tool_ends (0, png);
    assert_begins ("out.png", "\x89PNG");
    shell_tool_ends (0, svg);
    assert_begins ("out.svg", "<?xml");
    shell_tool_ends (0, pdf);
    assert_begins ("out.pdf", "%PDF");
  }
  shell_tool_ends (1, "draw demo plan out.gif");
  shell_tool_ends (1, "draw demo side Z9 out.png");
  shell_tool_ends (1, "draw demo plan nowhere/out.png");
}

/* The text of a PDF by poppler's pdftotext; skipped without it. */
static char *
pdf_text (const char *name)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext");
  g_auto (Said) said = { 0 };

  if (program == NULL)
    return NULL;
  shell_run (&said, program, name, "-", NULL);
  g_assert_cmpint (said.status, ==, 0);
  return g_steal_pointer (&said.out);
}

static void
test_print (void)
{
  shell_make_demo ();
  shell_tool_ends (0, "print demo card G7 A8 cards.pdf");
  assert_begins ("cards.pdf", "%PDF");
  shell_tool_ends (0, "print demo day 2026-07-11 day.pdf --paper a4");
  assert_begins ("day.pdf", "%PDF");
  shell_tool_ends (1, "print demo card Z9 none.pdf");
  shell_tool_ends (1, "print demo day 2026-07-12 none.pdf");
  g_autofree char *none = shell_path ("none.pdf");

  g_assert_false (g_file_test (none, G_FILE_TEST_EXISTS));

  g_autofree char *cards = pdf_text ("cards.pdf"), *day = pdf_text ("day.pdf");

  if (cards == NULL) {
    g_test_fail_printf ("pdftotext is missing: sh src/set-up test");
    return;
  }
  shell_assert_says (cards, "G7");
  shell_assert_says (cards, "A8");
  shell_assert_says (cards, "Hook load");
  shell_assert_says (day, "diver 1");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  shell_set_up ();

  g_test_add_func ("/tool/help", test_help);
  g_test_add_func ("/tool/man-page", test_man_page);
  g_test_add_func ("/tool/misuse", test_misuse);
  g_test_add_func ("/tool/refused-files", test_refused_files);
  g_test_add_func ("/tool/existing-file-stays", test_existing_file_stays);
  g_test_add_func ("/tool/demo", test_demo);
  g_test_add_func ("/tool/cut-json", test_cut_json);
  g_test_add_func ("/tool/cut-json-unknown", test_cut_json_unknown);
  g_test_add_func ("/tool/crew-cautions", test_crew_cautions);
  g_test_add_func ("/tool/totals-agree", test_totals_agree);
  g_test_add_func ("/tool/piles-round-trip", test_piles_round_trip);
  g_test_add_func ("/tool/formula-guard", test_formula_guard);
  g_test_add_func ("/tool/take-bad-list", test_take_bad_list);
  g_test_add_func ("/tool/take-good-rows", test_take_good_rows);
  g_test_add_func ("/tool/take-dry-run", test_take_dry_run);
  g_test_add_func ("/tool/take-mapped", test_take_mapped);
  g_test_add_func ("/tool/draw", test_draw);
  g_test_add_func ("/tool/print", test_print);

  const int status = g_test_run ();

  shell_tear_down ();
  return status;
}
