/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A crew's own cautions, and the table that is built in against the one that people read. */
#include "book/caution-text.h"
#include "exchange/caution-list.h"
#include "exchange/exchange-error.h"

#include <string.h>

#define HEAD "key,severity,when,words,source\n"

static LbCrewCautions *
read_list (const char *text, GError **error)
{
  gsize n_taken;
  const LbCautionRow *taken = lb_caution_rows (&n_taken);

  return lb_crew_cautions_from_csv (text, strlen (text), taken, n_taken, error);
}

/* data/cautions.csv says what the program says, row by row. */
static void
test_the_table_for_people (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("LB_SOURCE_DIR"), "data", "cautions.csv",
                                            NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  gsize length, n_read, n_rows;
  const LbCautionRow *rows = lb_caution_rows (&n_rows);

  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);

  g_autoptr (LbCrewCautions) list = lb_crew_cautions_from_csv (text, length, NULL, 0, &error);

  g_assert_no_error (error);

  const LbCautionRow *read = lb_crew_cautions_rows (list, &n_read);

  for (gsize i = 0; i < MIN (n_read, n_rows); i++) {
    g_assert_cmpstr (read[i].key, ==, rows[i].key);
    g_assert_cmpstr (read[i].words, ==, rows[i].words);
    g_assert_cmpstr (read[i].source, ==, rows[i].source);
    g_assert_cmpint (read[i].severity, ==, rows[i].severity);
    g_assert_cmpint (read[i].when, ==, rows[i].when);
  }
  g_assert_cmpuint (n_read, ==, n_rows);
}

static void
test_a_crew_s_own (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbCrewCautions) list = read_list (
    "\xef\xbb\xbfKey;Severity;When;Words;Source\r\n"
    "our-gate;danger;always;Gate B is locked: call before the shift.;site rule 4\r\n"
    "our-bar;note;hold-known;Look at bar {bar} again.;our rigger\r\n",
    &error);
  gsize n_rows;

  g_assert_no_error (error);

  const LbCautionRow *rows = lb_crew_cautions_rows (list, &n_rows);

  g_assert_cmpuint (n_rows, ==, 2);
  g_assert_cmpstr (rows[0].key, ==, "our-gate");
  g_assert_cmpint (rows[0].severity, ==, LB_SEVERITY_DANGER);
  g_assert_cmpint (rows[0].when, ==, LB_WHEN_ALWAYS);
  g_assert_cmpstr (rows[0].words, ==, "Gate B is locked: call before the shift.");
  g_assert_cmpstr (rows[1].source, ==, "our rigger");
  g_assert_cmpint (rows[1].when, ==, LB_WHEN_HOLD_KNOWN);
}

static void
expect_refusal (const char *text, LbExchangeError code, const char *words)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbCrewCautions) list = read_list (text, &error);

  g_assert_null (list);
  g_test_message ("%s", error->message);
  g_assert_error (error, LB_EXCHANGE_ERROR, (int) code);
  g_assert_nonnull (strstr (error->message, words));
}

static void
test_heading_refused (void)
{
  static const char *const wrong[] = {
    "our-gate,note,always,Words.,us\n",
    "key,severity,when,words\nour-gate,note,always,Words.\n",
    "key,when,severity,words,source\nour-gate,always,note,Words.,us\n",
    "key,severity,when,words,source,more\nour-gate,note,always,Words.,us,x\n",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    expect_refusal (wrong[i], LB_EXCHANGE_ERROR_COLUMN, "key,severity,when,words,source");
}

static void
test_cells_refused (void)
{
  static const struct
  {
    const char *text, *words;
  } wrong[] = {
    { HEAD "our-a,note,always,W.,us\n\nour-b,grave,always,W.,us\n", "Line 4, column 2 (severity)" },
    { HEAD ",note,always,W.,us\n", "Line 2, column 1 (key)" },
    { HEAD "Our gate,note,always,W.,us\n", "no key" },
    { HEAD "4-gates,note,always,W.,us\n", "no key" },
    { HEAD "a234567890123456789012345678901234567890x,note,always,W.,us\n", "no key" },
    { HEAD "strand,note,always,W.,us\n", "built in" },
    { HEAD "our-a,note,always,W.,us\nour-a,note,always,W.,us\n", "Line 3, column 1 (key)" },
    { HEAD "our-a,note,sometimes,W.,us\n", "Line 2, column 3 (when)" },
    { HEAD "our-a,note,,W.,us\n", "always, burning" },
    { HEAD "our-a,note,always,,us\n", "Line 2, column 4 (words)" },
    { HEAD "our-a,note,always,\"two\nlines\",us\n", "Line 2, column 4 (words)" },
    { HEAD "our-a,note,always,W.,\n", "Line 2, column 5 (source)" },
    { HEAD "our-a,note,always,Before bar {bar}.,us\n", "“{bar}” is not known when “always”" },
    { HEAD "our-a,note,hold-known,Before bar {br}.,us\n", "“{br}”" },
    { HEAD "our-a,note,always,W.\n", "Line 2 has 4 cells" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    expect_refusal (wrong[i].text, LB_EXCHANGE_ERROR_VALUE, wrong[i].words);
}

static void
test_sizes (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = g_string_new (HEAD);
  g_autofree char *most = g_strnfill (LB_CAUTION_WORDS_MAX, 'w');

  expect_refusal (text->str, LB_EXCHANGE_ERROR_LARGE, "0 cautions");
  for (guint i = 0; i < LB_CAUTION_CREW_ROWS_MAX; i++)
    g_string_append_printf (text, "our-%u,note,always,%s,us\n", i, most);

  g_autoptr (LbCrewCautions) list = read_list (text->str, &error);

  g_assert_no_error (error);
  g_assert_nonnull (list);
  g_string_append (text, "our-more,note,always,W.,us\n");
  expect_refusal (text->str, LB_EXCHANGE_ERROR_LARGE, "61 cautions");

  g_autofree char *over = g_strdup_printf (HEAD "our-a,note,always,%sw,us\n", most);

  expect_refusal (over, LB_EXCHANGE_ERROR_VALUE, "1 to 300 characters");
}

/* Whatever a file holds, it is taken whole or refused with a reason. */
static void
test_any_bytes (void)
{
  static const char alphabet[] = "our-anotelwysh,\n{bar}\";\xff\t";
  g_autoptr (GRand) rand = g_rand_new_with_seed (8);

  for (guint i = 0; i < 4000; i++) {
    g_autoptr (GString) text = g_string_new (HEAD);
    const gint32 length = g_rand_int_range (rand, 0, 80);
    g_autoptr (GError) error = NULL;

    for (gint32 at = 0; at < length; at++)
      g_string_append_c (text, alphabet[g_rand_int_range (rand, 0, sizeof alphabet)]);

    g_autoptr (LbCrewCautions) list = lb_crew_cautions_from_csv (text->str, text->len, NULL, 0,
                                                                 &error);

    g_assert_true ((list == NULL) == (error != NULL));
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/caution-list/the-table-for-people", test_the_table_for_people);
  g_test_add_func ("/exchange/caution-list/a-crew-s-own", test_a_crew_s_own);
  g_test_add_func ("/exchange/caution-list/heading-refused", test_heading_refused);
  g_test_add_func ("/exchange/caution-list/cells-refused", test_cells_refused);
  g_test_add_func ("/exchange/caution-list/sizes", test_sizes);
  g_test_add_func ("/exchange/caution-list/any-bytes", test_any_bytes);
  return g_test_run ();
}
