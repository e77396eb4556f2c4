/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Delimited text as RFC 4180 defines it, as it is sold under that name, and as it arrives broken. */
#include "exchange/csv-text.h"
#include "exchange/exchange-error.h"
#include "exchange/text-table.h"

#include <string.h>

static LbTextTable *
parse_length (const char *text, gsize length, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, length);

  return lb_text_table_parse (bytes, NULL, error);
}

static LbTextTable *
parse (const char *text)
{
  g_autoptr (GError) error = NULL;
  LbTextTable *table = parse_length (text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_nonnull (table);
  return table;
}

/* The table as one text: cells in <>, rows after their line number. */
static char *
written_out (const LbTextTable *table)
{
  GString *text = g_string_new (NULL);

  for (gsize row = 0; row < lb_text_table_get_shape (table).n_rows; row++) {
    g_string_append_printf (text, "%" G_GSIZE_FORMAT, lb_text_table_line (table, row));
    for (gsize column = 0; column < lb_text_table_row_cells (table, row); column++)
      g_string_append_printf (text, "<%s>", lb_text_table_cell (table, row, column));
    g_string_append_c (text, ' ');
  }

  return g_string_free (text, FALSE);
}

typedef struct
{
  const char *name;
  const char *text;
  char delimiter;
  const char *expected;
} Dialect;

static const Dialect dialects[] = {
  { "comma", "a,b\r\n1,2\r\n", ',', "1<a><b> 2<1><2> " },
  { "no-last-line-end", "a,b\n1,2", ',', "1<a><b> 2<1><2> " },
  { "semicolon-decimal-comma", "x;y\n1,5;2,5\n3,5;4,5\n", ';', "1<x><y> 2<1,5><2,5> 3<3,5><4,5> " },
  { "tab", "x\ty\n1,5\t2\n", '\t', "1<x><y> 2<1,5><2> " },
  { "lone-cr", "a,b\r1,2\r3,4", ',', "1<a><b> 2<1><2> 3<3><4> " },
  { "mixed-line-ends", "a,b\r\n1,2\n3,4\r5,6", ',', "1<a><b> 2<1><2> 3<3><4> 4<5><6> " },
  { "bom",
    "\xef\xbb\xbf"
    "a,b\n1,2\n",
    ',', "1<a><b> 2<1><2> " },
  { "quotes", "\"a,\"\"b\"\"\",c\n1,2\n", ',', "1<a,\"b\"><c> 2<1><2> " },
  { "line-break-in-cell", "a,b\n\"one\r\ntwo\nthree\",2\nlast,3\n", ',',
    "1<a><b> 2<one\r\ntwo\nthree><2> 5<last><3> " },
  { "blank-lines", "\n\na,b\n\n  \n1,2\n\n", ',', "3<a><b> 6<1><2> " },
  { "empty-cells", "a,b,c\n,,\n1,,3\n", ',', "1<a><b><c> 2<><><> 3<1><><3> " },
  { "ragged", "a,b,c\n1\n1,2,3,4\n", ',', "1<a><b><c> 2<1> 3<1><2><3><4> " },
  { "blanks-round-cells", "a , b\n 1 , \" 2 \" \n", ',', "1<a><b> 2<1>< 2 > " },
  { "inches", "w,n\n16\",a\n20\",b\n", ',', "1<w><n> 2<16\"><a> 3<20\"><b> " },
  { "named-delimiter", "sep=|\na|b\n1|2\n", '|', "2<a><b> 3<1><2> " },
  { "semicolons-in-notes", "a,b\n1,x; y; z\n2,u; v\n3,w\n", ',',
    "1<a><b> 2<1><x; y; z> 3<2><u; v> 4<3><w> " },
  { "one-column", "a\n1\n2\n", ',', "1<a> 2<1> 3<2> " },
  { "utf-8", "Größe;n\n1,5;ü\n", ';', "1<Größe><n> 2<1,5><ü> " },
};

static void
test_dialect (gconstpointer data)
{
  const Dialect *dialect = data;
  g_autoptr (LbTextTable) table = parse (dialect->text);
  g_autofree char *written = written_out (table);

  g_assert_cmpint (lb_text_table_get_shape (table).delimiter, ==, dialect->delimiter);
  g_assert_cmpstr (written, ==, dialect->expected);
}

/* The RFC's own points 5 to 7, in a file another program wrote. */
static void
test_rfc_file (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (g_getenv ("LB_SOURCE_DIR"), "tests", "exchange", "data",
                                            "rfc4180.csv", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (LbTextTable) table = lb_text_table_load (file, NULL, &error);

  g_assert_no_error (error);
  g_autofree char *written = written_out (table);

  g_assert_cmpstr (written, ==,
                   "1<mark><note> 2<A1><plain> 3<B2><quote \" and, comma> "
                   "4<C3><line\r\nbreak> 6<D4><'=1+1> 7<E5><-3.5> ");
}

typedef struct
{
  const char *name;
  const char *text;
  gssize length;
  LbExchangeError code;
  const char *said; /* must stand in the message */
} Refusal;

static const Refusal refusals[] = {
  { "empty", "", -1, LB_EXCHANGE_ERROR_TEXT, "empty" },
  { "blank", "\n \r\n\n", -1, LB_EXCHANGE_ERROR_TEXT, "empty" },
  { "nul", "a,b\n1,\0002\n", 8, LB_EXCHANGE_ERROR_TEXT, "Line 2" },
  { "latin-1", "a,b\n1,2\n\xe9,3\n", -1, LB_EXCHANGE_ERROR_TEXT, "Line 3" },
  { "cut-utf-8", "a,b\n1,\xc3", -1, LB_EXCHANGE_ERROR_TEXT, "Line 2" },
  { "utf-16",
    "\xff\xfe"
    "a\0b\0",
    6, LB_EXCHANGE_ERROR_TEXT, "UTF-16" },
  { "unclosed-quote", "a,b\n1,2\n\"open,3\n4,5\n", -1, LB_EXCHANGE_ERROR_TEXT, "line 3" },
  { "text-after-quote", "a,b\n1,2\n3,4\n\"x\"y,5\n", -1, LB_EXCHANGE_ERROR_TEXT, "Line 4" },
};

static void
test_refusal (gconstpointer data)
{
  const Refusal *refusal = data;
  g_autoptr (GError) error = NULL;
  const gsize length = refusal->length < 0 ? strlen (refusal->text) : (gsize) refusal->length;
  LbTextTable *table = parse_length (refusal->text, length, &error);

  g_assert_null (table);
  g_assert_error (error, LB_EXCHANGE_ERROR, (int) refusal->code);
  g_assert_nonnull (strstr (error->message, refusal->said));
}

static void
test_missing_file (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = g_file_new_for_path ("/nowhere/list.csv");

  g_assert_null (lb_text_table_load (file, NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_assert_nonnull (strstr (error->message, "list.csv"));
}

static void
test_limits (void)
{
  g_autoptr (GString) wide = g_string_new ("x");
  g_autoptr (GString) tall = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  for (int i = 1; i < LB_TEXT_TABLE_COLUMNS_MAX; i++)
    g_string_append (wide, ",x");
  g_autoptr (LbTextTable) just = parse (wide->str);

  g_assert_cmpuint (lb_text_table_get_shape (just).n_columns, ==, LB_TEXT_TABLE_COLUMNS_MAX);
  g_string_append (wide, ",x");
  g_assert_null (parse_length (wide->str, wide->len, &error));
  g_assert_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_LARGE);
  g_clear_error (&error);

  for (int i = 0; i < LB_TEXT_TABLE_ROWS_MAX; i++)
    g_string_append (tall, "1,2\n");
  g_autoptr (LbTextTable) full = parse (tall->str);

  g_assert_cmpuint (lb_text_table_get_shape (full).n_rows, ==, LB_TEXT_TABLE_ROWS_MAX);
  g_assert_cmpuint (lb_text_table_line (full, LB_TEXT_TABLE_ROWS_MAX - 1), ==,
                    LB_TEXT_TABLE_ROWS_MAX);
  g_string_append (tall, "1,2\n");
  g_assert_null (parse_length (tall->str, tall->len, &error));
  g_assert_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_LARGE);
}

static void
test_huge_cell (void)
{
  const gsize length = 5 * 1000 * 1000;
  g_autofree char *long_text = g_strnfill (length, 'm');
  g_autofree char *text = g_strdup_printf ("a,b\n\"%s\",2\n", long_text);
  g_autoptr (LbTextTable) table = parse (text);

  g_assert_cmpuint (strlen (lb_text_table_cell (table, 1, 0)), ==, length);
  g_assert_cmpstr (lb_text_table_cell (table, 1, 1), ==, "2");
}

/* A quote that is left open takes in all the lines after it. */
static void
test_many_lines_in_a_cell (void)
{
  g_autoptr (GString) text = g_string_new ("a,b\n\"");
  const guint n = 200000;

  for (guint i = 0; i < n; i++)
    g_string_append (text, "0123456789\n");
  g_string_append (text, "\",2\nlast,3\n");
  g_autoptr (LbTextTable) table = parse (text->str);

  g_assert_cmpuint (strlen (lb_text_table_cell (table, 1, 0)), ==, n * 11);
  g_assert_cmpuint (lb_text_table_line (table, 2), ==, n + 3);
}

static void
test_cancel (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  for (int i = 0; i < 5000; i++)
    g_string_append (text, "1,2\n");
  g_autoptr (GBytes) bytes = g_bytes_new (text->str, text->len);

  g_cancellable_cancel (cancellable);
  g_assert_null (lb_text_table_parse (bytes, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

static void
test_past_the_end (void)
{
  g_autoptr (LbTextTable) table = parse ("a,b\n1\n");

  g_assert_cmpstr (lb_text_table_cell (table, 1, 1), ==, "");
  g_assert_cmpstr (lb_text_table_cell (table, 9, 0), ==, "");
  g_assert_cmpuint (lb_text_table_row_cells (table, 9), ==, 0);
  g_assert_cmpuint (lb_text_table_line (table, 9), ==, 0);
}

/* A cell of letters, digits, delimiters, quotes, line breaks, blanks and letters of two bytes. */
static char *
random_cell (GRand *random)
{
  static const char *const pieces[] = { "a",  "7", ",", ";",  "\t", "\"", "\r\n", "\n",
                                        "\r", " ", "é", "=1", "-",  "'x", "0.5",  "–" };
  GString *cell = g_string_new (NULL);
  const int n = g_rand_int_range (random, 0, 7);

  for (int i = 0; i < n; i++)
    g_string_append (cell, pieces[g_rand_int_range (random, 0, G_N_ELEMENTS (pieces))]);
  return g_string_free (cell, FALSE);
}

/* What lb_csv_add_text() writes before a text that could be a formula. */
static const char *
without_guard (const char *text)
{
  return text[0] == '\'' && text[1] != '\0' && strchr ("=+-@\t\r", text[1]) != NULL ? text + 1
                                                                                    : text;
}

/* Whatever is written by the rules of RFC 4180 comes back the same. */
static void
test_round_trip (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (4180);

  for (int trial = 0; trial < 500; trial++) {
    const int n_rows = g_rand_int_range (random, 1, 9), n_columns = g_rand_int_range (random, 2, 6);
    g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
    g_autoptr (GString) csv = g_string_new (NULL);

    /* The heading makes the delimiter plain, as headings do. */
    for (int column = 0; column < n_columns; column++)
      lb_csv_add_text (csv, "heading");
    lb_csv_end_row (csv);
    for (int i = 0; i < n_rows * n_columns; i++) {
      g_ptr_array_add (cells, random_cell (random));
      lb_csv_add_text (csv, g_ptr_array_index (cells, i));
      if (i % n_columns == n_columns - 1)
        lb_csv_end_row (csv);
    }

    g_autoptr (LbTextTable) table = parse (csv->str);

    g_assert_cmpuint (lb_text_table_get_shape (table).n_rows, ==, n_rows + 1);
    for (int i = 0; i < n_rows * n_columns; i++) {
      const gsize row = 1 + (gsize) (i / n_columns), column = (gsize) (i % n_columns);

      g_assert_cmpuint (lb_text_table_row_cells (table, row), ==, n_columns);
      g_assert_cmpstr (without_guard (lb_text_table_cell (table, row, column)), ==,
                       without_guard (g_ptr_array_index (cells, i)));
    }
  }
}

/* Cut short, with bits turned over: an answer or an error, and never a wild read. */
static void
test_broken_bytes (void)
{
  static const char whole[] =
    "mark;x;y;note\r\n\"A\"\"1\";1,5;2,5;\"two\r\nlines\"\r\nB2;3;4;é\r\n";
  g_autoptr (GRand) random = g_rand_new_with_seed (7);
  guint n_read = 0;

  for (int trial = 0; trial < 20000; trial++) {
    char text[sizeof whole];
    const gsize length = (gsize) g_rand_int_range (random, 0, sizeof whole);
    const int n_flips = g_rand_int_range (random, 0, 4);
    g_autoptr (GError) error = NULL;

    memcpy (text, whole, sizeof whole);
    for (int flip = 0; flip < n_flips && length > 0; flip++)
      text[g_rand_int_range (random, 0, (int) length)] ^= (char) (1 << g_rand_int_range (random, 0,
                                                                                         8));

    g_autoptr (LbTextTable) table = parse_length (text, length, &error);

    g_assert_true ((table == NULL) == (error != NULL));
    if (table != NULL) {
      g_autofree char *written = written_out (table);

      g_assert_true (g_utf8_validate (written, -1, NULL));
      n_read++;
    }
  }
  /* Both outcomes were met. */
  g_assert_cmpuint (n_read, >, 100);
  g_assert_cmpuint (n_read, <, 19900);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (dialects); i++) {
    g_autofree char *path = g_strconcat ("/text-table/dialect/", dialects[i].name, NULL);

    g_test_add_data_func (path, &dialects[i], test_dialect);
  }
  for (gsize i = 0; i < G_N_ELEMENTS (refusals); i++) {
    g_autofree char *path = g_strconcat ("/text-table/refuse/", refusals[i].name, NULL);

    g_test_add_data_func (path, &refusals[i], test_refusal);
  }
  g_test_add_func ("/text-table/rfc-file", test_rfc_file);
  g_test_add_func ("/text-table/missing-file", test_missing_file);
  g_test_add_func ("/text-table/limits", test_limits);
  g_test_add_func ("/text-table/huge-cell", test_huge_cell);
  g_test_add_func ("/text-table/many-lines-in-a-cell", test_many_lines_in_a_cell);
  g_test_add_func ("/text-table/cancel", test_cancel);
  g_test_add_func ("/text-table/past-the-end", test_past_the_end);
  g_test_add_func ("/text-table/round-trip", test_round_trip);
  g_test_add_func ("/text-table/broken-bytes", test_broken_bytes);

  return g_test_run ();
}
