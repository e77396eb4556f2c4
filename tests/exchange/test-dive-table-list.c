/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A supervisor's own table: as it should be, and as it must not be taken. */
#include "book/book-error.h"
#include "book/dive-table-text.h"
#include "exchange/setting-list.h"

#include <math.h>
#include <string.h>

#define FOOT   0.3048
#define MINUTE 60.0

static const char whole[] = "fsw,nostop,A,B,Z\r\n"
                            "20,unlimited,26,43,*\r\n"
                            "30,371,17,27,371\r\n"
                            "40,163,12,20,163\r\n"
                            "150,8,,3,8\r\n"
                            "190,5,,5,\r\n";

/* As taken, and read again from what the job would hold. */
static char *
take (const char *text, gsize length, LbDiveTable *out, GError **error)
{
  char *plain = lb_setting_list_from_csv (LB_TABLE_DIVE, text, length, error);

  if (plain != NULL)
    g_assert_true (lb_dive_table_from_text (plain, out, NULL));
  return plain;
}

static void
test_whole (void)
{
  g_autoptr (GError) error = NULL;
  LbDiveTable table;
  LbNoStop limit;

  g_autofree char *plain = take (whole, strlen (whole), &table, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (plain, ==,
                   "fsw,nostop,A,B,Z\n20,unlimited,26,43,*\n30,371,17,27,371\n"
                   "40,163,12,20,163\n150,8,,3,8\n190,5,,5,\n");
  g_assert_false (table.is_metric);
  g_assert_cmpstr (table.groups, ==, "ABZ");
  g_assert_cmpuint (table.n_rows, ==, 5);
  g_assert_true (lb_dive_table_limit (&table, 15 * FOOT, &limit, NULL));
  g_assert_true (isinf (limit.limit_s));
  g_assert_true (lb_dive_table_limit (&table, 31 * FOOT, &limit, NULL));
  g_assert_cmpfloat (limit.limit_s, ==, 163 * MINUTE);
  g_assert_cmpint (lb_dive_table_group (&table, 15 * FOOT, 5000 * MINUTE), ==, 'Z');
  g_assert_cmpint (lb_dive_table_group (&table, 40 * FOOT, 21 * MINUTE), ==, 'Z');
  g_assert_cmpint (lb_dive_table_group (&table, 150 * FOOT, 1 * MINUTE), ==, 'B');
  g_assert_false (lb_dive_table_limit (&table, 191 * FOOT, &limit, NULL));
}

static void
test_metres_without_groups (void)
{
  static const char text[] = "\xef\xbb\xbfMSW;NoStop\n9;200\n12.5;120\n";
  LbDiveTable table;
  LbNoStop limit;

  g_autofree char *plain = take (text, strlen (text), &table, NULL);
  g_assert_cmpstr (plain, ==, "MSW,NoStop\n9,200\n12.5,120\n");
  g_assert_true (table.is_metric);
  g_assert_cmpstr (table.groups, ==, "");
  g_assert_true (lb_dive_table_limit (&table, 9.1, &limit, NULL));
  g_assert_cmpfloat (limit.table_depth_m, ==, 12.5);
  g_assert_cmpfloat (limit.limit_s, ==, 120 * MINUTE);
  g_assert_cmpint (lb_dive_table_group (&table, 9, MINUTE), ==, 0);
}

static void
test_most_rows (void)
{
  g_autoptr (GString) text = g_string_new ("msw,nostop\n");
  g_autoptr (GError) error = NULL;
  LbDiveTable table;

  for (int i = 1; i <= LB_DIVE_ROWS_MAX; i++)
    g_string_append_printf (text, "%.1f,%d\n", i * 0.4, 500 - i);
  g_autofree char *plain = take (text->str, text->len, &table, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (plain, ==, text->str);
  g_assert_cmpuint (table.n_rows, ==, LB_DIVE_ROWS_MAX);
  g_string_append (text, "81,1\n");
  g_assert_null (take (text->str, text->len, &table, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
}

typedef struct
{
  const char *name;
  const char *text;
  const char *said; /* must stand in the message */
} Refusal;

static const Refusal refusals[] = {
  { "empty", "", "empty" },
  { "heading-alone", "fsw,nostop\n", "0 lines" },
  { "no-heading", "30,371\n40,163\n", "fsw,nostop" },
  { "unit", "feet,nostop\n40,163\n", "first line" },
  { "second-heading", "fsw,limit\n40,163\n", "first line" },
  { "one-column", "fsw\n40\n", "first line" },
  { "small-letter", "fsw,nostop,a\n40,163,12\n", "capital" },
  { "long-letter", "fsw,nostop,AB\n40,163,12\n", "capital" },
  { "letters-crossed", "fsw,nostop,B,A\n40,163,12,20\n", "in order" },
  { "letter-twice", "fsw,nostop,A,A\n40,163,12,20\n", "in order" },
  { "short-row", "fsw,nostop,A\n40,163\n", "Line 2 has 2" },
  { "long-row", "fsw,nostop\n40,163,12\n", "Line 2 has 3" },
  { "depths-crossed", "fsw,nostop\n40,163\n30,100\n", "Line 3, column 1" },
  { "depth-twice", "fsw,nostop\n40,163\n40,163\n", "Line 3, column 1" },
  { "depth-zero", "fsw,nostop\n0,163\n", "Line 2, column 1" },
  { "depth-negative", "fsw,nostop\n-40,163\n", "“-40”" },
  { "depth-words", "fsw,nostop\nforty,163\n", "“forty”" },
  { "depth-nan", "fsw,nostop\nnan,163\n", "“nan”" },
  { "depth-hex", "fsw,nostop\n0x28,163\n", "“0x28”" },
  { "depth-points", "fsw,nostop\n4.0.1,163\n", "“4.0.1”" },
  { "depth-empty", "fsw,nostop\n,163\n", "column 1" },
  { "feet-as-metres", "msw,nostop\n40,163\n100,25\n", "right unit" },
  { "limit-grows", "fsw,nostop\n40,163\n45,1250\n", "Line 3, column 2" },
  { "limit-comes-late", "fsw,nostop\n40,163\n45,unlimited\n", "Line 3" },
  { "limit-zero", "fsw,nostop\n40,0\n", "Line 2, column 2 (nostop)" },
  { "limit-negative", "fsw,nostop\n40,-163\n", "“-163”" },
  { "limit-part", "fsw,nostop\n40,163.5\n", "“163.5”" },
  { "limit-wraps", "fsw,nostop\n40,65537\n", "“65537”" },
  { "limit-huge", "fsw,nostop\n40,99999999999999999999999\n", "column 2" },
  { "groups-crossed", "fsw,nostop,A,B\n40,163,20,12\n", "Line 2, column 4 (B)" },
  { "group-past-limit", "fsw,nostop,A\n40,163,164\n", "column 3 (A)" },
  { "gap-in-groups", "fsw,nostop,A,B,C\n40,163,12,,36\n", "column 5 (C)" },
  { "star-with-limit", "fsw,nostop,A,B\n40,163,12,*\n", "“*”" },
  { "after-star", "fsw,nostop,A,B\n10,unlimited,*,12\n", "column 4 (B)" },
  { "star-twice", "fsw,nostop,A,B\n10,unlimited,*,*\n", "column 4 (B)" },
  { "comma-for-point", "fsw;nostop\n30;371\n\n12,5;163\n", "Line 4, column 1: “12,5”" },
  { "two-in-one-cell", "fsw,nostop\n\"40,163\"\n", "“40,163”" },
  { "line-in-a-cell", "fsw,nostop\n40,\"163\n45\"\n", "Line 2, column 2" },
  { "blank-lines", "fsw;nostop\r\n\r\n40;0\r\n", "Line 3, column 2 (nostop)" },
  { "group-word", "fsw,nostop,A\n40,163,x\n", "“x”" },
};

static void
test_refusal (gconstpointer data)
{
  const Refusal *refusal = data;
  g_autoptr (GError) error = NULL;
  LbDiveTable table = { .n_rows = 7 };

  g_assert_null (take (refusal->text, strlen (refusal->text), &table, &error));
  g_assert_nonnull (error);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, refusal->said));
  g_assert_cmpuint (table.n_rows, ==, 7);
}

/* Cut short, with bits turned over: a table that keeps its own rules, or an error. */
static void
test_broken_bytes (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (9);
  guint n_read = 0;

  for (int trial = 0; trial < 20000; trial++) {
    char text[sizeof whole];
    const gsize length = (gsize) g_rand_int_range (random, 0, sizeof whole);
    const int n_flips = g_rand_int_range (random, 0, 3);
    g_autoptr (GError) error = NULL;
    LbDiveTable table, again;

    memcpy (text, whole, sizeof whole);
    for (int flip = 0; flip < n_flips && length > 0; flip++)
      text[g_rand_int_range (random, 0, (int) length)] ^= (char) (1 << g_rand_int_range (random, 0,
                                                                                         8));
    g_autofree char *plain = take (text, length, &table, &error);
    if (plain == NULL) {
      g_assert_nonnull (error);
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      continue;
    }
    g_assert_no_error (error);
    n_read++;
    g_assert_true (lb_dive_table_from_text (plain, &again, NULL));
    g_assert_cmpmem (&again, sizeof again, &table, sizeof table);
    for (gsize i = 1; i < table.n_rows; i++) {
      g_assert_cmpfloat (table.rows[i].depth, >, table.rows[i - 1].depth);
      if (table.rows[i - 1].limit != LB_DIVE_NO_LIMIT)
        g_assert_cmpuint (table.rows[i].limit, <=, table.rows[i - 1].limit);
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

  g_test_add_func ("/dive-table-list/whole", test_whole);
  g_test_add_func ("/dive-table-list/metres-without-groups", test_metres_without_groups);
  g_test_add_func ("/dive-table-list/most-rows", test_most_rows);
  for (gsize i = 0; i < G_N_ELEMENTS (refusals); i++) {
    g_autofree char *path = g_strconcat ("/dive-table-list/refuse/", refusals[i].name, NULL);

    g_test_add_data_func (path, &refusals[i], test_refusal);
  }
  g_test_add_func ("/dive-table-list/broken-bytes", test_broken_bytes);

  return g_test_run ();
}
