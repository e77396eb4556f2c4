/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/caution-table.h"

#include <string.h>

/* Gravest first, each with a key of its own, words and a source, and no figure its condition lacks. */
static void
test_rows (void)
{
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);
  gsize n_rows;
  const LbCautionRow *rows = lb_caution_rows (&n_rows);

  g_assert_cmpuint (n_rows, >, 0);
  for (gsize i = 0; i < n_rows; i++) {
    g_autofree char *stray = lb_caution_words_stray (rows[i].when, rows[i].words);

    g_assert_true (g_hash_table_add (keys, (gpointer) rows[i].key));
    g_assert_cmpstr (rows[i].words, !=, "");
    g_assert_cmpstr (rows[i].source, !=, "");
    g_assert_cmpstr (stray, ==, NULL);
    if (i > 0)
      g_assert_cmpint (rows[i].severity, <=, rows[i - 1].severity);
  }
}

/* No condition stands in the list that nothing follows from. */
static void
test_each_condition_is_used (void)
{
  gsize n_rows;
  const LbCautionRow *rows = lb_caution_rows (&n_rows);

  for (guint when = 0; when < LB_N_CAUTION_WHENS; when++) {
    guint n_met = 0;

    for (gsize i = 0; i < n_rows; i++)
      n_met += rows[i].when == (LbCautionWhen) when;
    g_test_message ("%s", lb_caution_when_key ((LbCautionWhen) when));
    g_assert_cmpuint (n_met, >, 0);
  }
}

static void
test_keys (void)
{
  LbSeverity severity = LB_SEVERITY_NOTE;
  LbCautionWhen when = LB_WHEN_HINGE;

  for (guint i = 0; i < LB_N_CAUTION_WHENS; i++) {
    g_assert_true (lb_caution_when_from_key (lb_caution_when_key ((LbCautionWhen) i), &when));
    g_assert_cmpuint (when, ==, i);
  }
  when = LB_WHEN_HINGE;
  g_assert_false (lb_caution_when_from_key ("", &when));
  g_assert_false (lb_caution_when_from_key ("Always", &when));
  g_assert_cmpint (when, ==, LB_WHEN_HINGE);

  for (guint i = LB_SEVERITY_NOTE; i <= LB_SEVERITY_DANGER; i++) {
    g_assert_true (lb_severity_from_key (lb_severity_key ((LbSeverity) i), &severity));
    g_assert_cmpuint (severity, ==, i);
  }
  g_assert_false (lb_severity_from_key ("warning", &severity));
  g_assert_cmpint (severity, ==, LB_SEVERITY_DANGER);
}

static void
test_stray (void)
{
  static const struct
  {
    LbCautionWhen when;
    const char *words, *stray;
  } cases[] = {
    { LB_WHEN_HOLD_KNOWN, "before bar {bar}.", NULL },
    { LB_WHEN_HOLD_KNOWN, "{bar}{bar}", NULL },
    { LB_WHEN_HOLD_KNOWN, "no blank", NULL },
    { LB_WHEN_ALWAYS, "before bar {bar}.", "{bar}" },
    { LB_WHEN_HOLD_KNOWN, "{bar} and {lean}", "{lean}" },
    { LB_WHEN_HOLD_KNOWN, "{bars}", "{bars}" },
    { LB_WHEN_HOLD_KNOWN, "{}", "{}" },
    { LB_WHEN_HOLD_KNOWN, "{bar", "{" },
    { LB_WHEN_HOLD_KNOWN, "bar}", "}" },
    { LB_WHEN_HOLD_KNOWN, "{{bar}}", "{" },
    { LB_WHEN_HOLD_KNOWN, "{bar}}", "}" },
    { LB_WHEN_HOLD_KNOWN, "{", "{" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *stray = lb_caution_words_stray (cases[i].when, cases[i].words);

    g_assert_cmpstr (stray, ==, cases[i].stray);
  }
}

static void
test_fill (void)
{
  const char *values[LB_N_CAUTION_BLANKS] = {
    [LB_BLANK_BAR] = "7",
    [LB_BLANK_LEAN_SIDE] = "north-east {bar}",
  };
  static const struct
  {
    const char *words, *filled;
  } cases[] = {
    { "", "" },
    { "as it is", "as it is" },
    { "{bar}", "7" },
    { "before {bar}, {bar} and after", "before 7, 7 and after" },
    /* What was filled in is not looked at again. */
    { "{lean-side}!", "north-east {bar}!" },
    { "{lean} to", "– to" },
    { "{none} {bar", "{none} {bar" },
    { "{{bar}}", "{7}" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *filled = lb_caution_words_fill (cases[i].words, values);

    g_assert_cmpstr (filled, ==, cases[i].filled);
  }
}

/* With all that its condition knows, no row is left with a hole. */
static void
test_fills_whole (void)
{
  gsize n_rows;
  const LbCautionRow *rows = lb_caution_rows (&n_rows);

  for (gsize i = 0; i < n_rows; i++) {
    const char *values[LB_N_CAUTION_BLANKS] = { NULL };

    for (guint blank = 0; blank < LB_N_CAUTION_BLANKS; blank++)
      if (lb_caution_when_knows (rows[i].when, (LbCautionBlank) blank))
        values[blank] = "12";

    g_autofree char *filled = lb_caution_words_fill (rows[i].words, values);

    g_assert_null (strpbrk (filled, "{}"));
    g_assert_null (strstr (filled, "–"));
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/caution-table/rows", test_rows);
  g_test_add_func ("/trade/caution-table/each-condition-is-used", test_each_condition_is_used);
  g_test_add_func ("/trade/caution-table/keys", test_keys);
  g_test_add_func ("/trade/caution-table/stray", test_stray);
  g_test_add_func ("/trade/caution-table/fill", test_fill);
  g_test_add_func ("/trade/caution-table/fills-whole", test_fills_whole);
  return g_test_run ();
}
