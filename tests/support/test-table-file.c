/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "table-file.h"

#include <math.h>
#include <string.h>

static const char GOOD[] = "# Comment\n"
                           "check: bar-size\n"
                           "about: bars\n"
                           "source A615: ASTM A615/A615M, table 1\n"
                           "source own: common practice\n"
                           "\n"
                           "| bar  | length | diameter =  | mass =       | kind = | source |\n"
                           "| text | ft     | in          | own          | text   | key    |\n"
                           "| #3   | 2      | 0.375 ±0.01 | 10 lb ±1%    | round  | A615   |\n"
                           "| 1/2  | -1.5e1 | refused     | unlimited    | square | own    |\n";

/* The good table with one thing done wrong, and a word of what must be said about it. */
typedef struct
{
  const char *title;
  const char *from, *to;
  const char *says;
} Fault;

static const Fault FAULTS[] = {
  { "bad number", "| 2  ", "| 2x ", "t.tab:9: column “length”: “2x”: “x” is too much" },
  { "not a number", "| 2  ", "| nan", "does not begin with a number" },
  { "infinite", "| 2     ", "| 1e999 ", "does not begin with a number" },
  { "hexadecimal", "| 2   ", "| 0x2 ", "is too much" },
  { "decimal comma", "0.375", "0,375", "is too much" },
  { "empty cell", "| 2  ", "|    ", "t.tab:9: the cell under “length” is empty" },
  { "missing cell", "| 2      |", "|", "t.tab:9: 5 cells for 6 columns" },
  { "cell too many", "| 2      |", "| 2 | 2 |", "t.tab:9: 7 cells for 6 columns" },
  { "line not closed", "| A615   |\n", "| A615\n", "t.tab:9: a line of cells ends in “|”" },
  { "unknown unit", "| ft     |", "| furlong |", "“furlong” is no unit" },
  { "unknown unit in a cell", "10 lb", "10 stone", "“stone” is no unit" },
  { "unit left out of a cell", "10 lb", "10", "is no unit" },
  { "no tolerance", "0.375 ±0.01", "0.375", "“0.375” has no tolerance" },
  { "bad tolerance", "±0.01", "±small", "“small” is no tolerance" },
  { "negative tolerance", "±0.01", "±-1", "is no tolerance" },
  { "words after the tolerance", "±1%", "±1% or so", "follows the tolerance" },
  { "tolerance on what is given", "| 2      |", "| 2 ±1 |", "can have no tolerance" },
  { "refusal of what is given", "| 2      |", "| refused |", "does not begin with a number" },
  { "undeclared source", "| A615   |", "| A616 |", "the source A616 is not declared" },
  { "uncited source", "| own    |", "| A615 |", "no row cites the source own" },
  { "source declared twice", "source own:", "source A615:", "declared twice" },
  { "empty source", "own: common practice", "own:", "“source own:” says nothing" },
  { "no source column", "| source |", "| origin |", "the last column" },
  { "source not last", "| kind = ", "| source ", "the last column" },
  { "column twice", "| diameter =", "| length =", "two columns are named “length”" },
  { "column without a name", "| bar ", "|     ", "column 1 has no name" },
  { "wrong unit of the source", "| key ", "| text ", "“key” is the unit of" },
  { "no check", "check: bar-size\n", "", "does not name its check" },
  { "two checks", "about:", "check:", "a second “check”" },
  { "no subject", "about: bars\n", "", "does not say what it is about" },
  { "unknown header", "about:", "title:", "“title” is no header" },
  { "loose words", "# Comment", "Comment", "neither a header line" },
  { "header after the columns", "| #3 ", "about: more\n| #3 ", "comes after the columns" },
  { "not UTF-8", "# Comment", "# \xff", "it is not UTF-8" },
};

static void
test_good (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbTableFile) table = lb_table_file_parse ("t.tab", GOOD, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (lb_table_file_name (table), ==, "t.tab");
  g_assert_cmpstr (lb_table_file_check (table), ==, "bar-size");
  g_assert_cmpuint (lb_table_file_n_rows (table), ==, 2);

  const LbTableRow *row = lb_table_file_row (table, 0);
  g_assert_cmpstr (lb_table_row_place (row), ==, "t.tab:9");
  g_assert_cmpstr (lb_table_row_source (row), ==, "ASTM A615/A615M, table 1");
  g_assert_cmpstr (lb_table_row_cell (row, "bar")->text, ==, "#3");
  g_assert_cmpfloat_with_epsilon (lb_table_row_cell (row, "length")->value, 0.6096, 1e-12);
  g_assert_cmpfloat_with_epsilon (lb_table_row_cell (row, "diameter")->value, 0.009525, 1e-12);
  g_assert_cmpfloat_with_epsilon (lb_table_row_cell (row, "diameter")->tolerance, 0.000254, 1e-12);
  g_assert_cmpfloat_with_epsilon (lb_table_row_cell (row, "mass")->value, 4.5359237, 1e-9);
  g_assert_cmpfloat_with_epsilon (lb_table_row_cell (row, "mass")->tolerance, 0.045359237, 1e-9);
  g_assert_cmpstr (lb_table_row_cell (row, "mass")->unit, ==, "lb");

  row = lb_table_file_row (table, 1);
  g_autofree char *title = lb_table_row_title (row);
  g_assert_cmpstr (title, ==, "1∕2, -1.5e1 ft");
  g_assert_true (lb_table_row_cell (row, "diameter")->is_refused);
  g_assert_cmpfloat (lb_table_row_cell (row, "mass")->value, ==, INFINITY);
}

static void
test_fault (gconstpointer data)
{
  const Fault *fault = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = g_string_new (GOOD);

  g_assert_cmpuint (g_string_replace (text, fault->from, fault->to, 1), ==, 1);

  g_autoptr (LbTableFile) table = lb_table_file_parse ("t.tab", text->str, &error);
  g_assert_null (table);
  g_assert_error (error, LB_TABLE_FILE_ERROR, 0);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, fault->says));
}

static void
test_no_rows (void)
{
  g_autoptr (GError) error = NULL;
  const char *first_row = strstr (GOOD, "| #3");
  g_autofree char *text = g_strndup (GOOD, first_row - GOOD);
  g_autoptr (LbTableFile) table = lb_table_file_parse ("t.tab", text, &error);

  g_assert_null (table);
  g_assert_cmpstr (error->message, ==, "t.tab: it has no row");
}

static void
test_no_file (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbTableFile) table = lb_table_file_load ("/does/not/exist.tab", &error);

  g_assert_null (table);
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
}

static void
test_columns (void)
{
  const LbTableColumn columns[] = {
    { "bar", "text", FALSE },    { "length", "length", FALSE }, { "diameter", "length", TRUE },
    { "mass", "own", TRUE },     { "kind", "text", TRUE },      { "weight", "mass", TRUE },
    { "length", "time", FALSE }, { "length", "length", TRUE },
  };
  g_autoptr (LbTableFile) table = lb_table_file_parse ("t.tab", GOOD, NULL);
  g_autoptr (GError) unread = NULL, missing = NULL, other_dimension = NULL, other_side = NULL;

  g_assert_true (lb_table_file_has_columns (table, columns, 5, NULL));
  g_assert_false (lb_table_file_has_columns (table, columns, 4, &unread));
  g_assert_cmpstr (unread->message, ==, "t.tab: it has columns that the check does not read");
  g_assert_false (lb_table_file_has_columns (table, columns, 6, &missing));
  g_assert_cmpstr (missing->message, ==, "t.tab: the column “weight” is missing");
  g_assert_false (lb_table_file_has_columns (table, columns + 6, 1, &other_dimension));
  g_assert_cmpstr (other_dimension->message, ==,
                   "t.tab: “length” is a length here and the check takes a time");
  g_assert_false (lb_table_file_has_columns (table, columns + 7, 1, &other_side));
  g_assert_cmpstr (other_side->message, ==, "t.tab: “length” is expected, so write “length =”");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/table-file/good", test_good);
  for (gsize i = 0; i < G_N_ELEMENTS (FAULTS); i++) {
    g_autofree char *path = g_strconcat ("/table-file/fault/", FAULTS[i].title, NULL);

    g_test_add_data_func (path, &FAULTS[i], test_fault);
  }
  g_test_add_func ("/table-file/no-rows", test_no_rows);
  g_test_add_func ("/table-file/no-file", test_no_file);
  g_test_add_func ("/table-file/columns", test_columns);
  return g_test_run ();
}
