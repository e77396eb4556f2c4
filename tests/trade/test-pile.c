/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/pile.h"

#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

static const char *
intern (gpointer pool, const char *text)
{
  return g_string_chunk_insert (pool, text);
}

/* Every fact of an ordinary pile, as typed in feet and inches. */
static const char *const typed[LB_N_FACTS] = {
  [LB_FACT_MARK] = "G7",
  [LB_FACT_BENT] = "7",
  [LB_FACT_ROW] = "G",
  [LB_FACT_NOTE] = "a\nb",
  [LB_FACT_X] = "1204.7",
  [LB_FACT_Y] = "-33.25",
  [LB_FACT_SHAPE] = "oct",
  [LB_FACT_WIDTH] = "16",
  [LB_FACT_VOID] = "4",
  [LB_FACT_BAR] = "no. 8",
  [LB_FACT_N_BARS] = "8",
  [LB_FACT_BAR_INSET] = "2.5",
  [LB_FACT_BATTER] = "9.5°",
  [LB_FACT_BEARING] = "N45E",
  [LB_FACT_HEAD] = "10' 3\"",
  [LB_FACT_CUT] = "-24.1",
  [LB_FACT_MUDLINE] = "-25",
  [LB_FACT_TOE] = "-60",
  [LB_FACT_BAR_PLACES] = "4 outer, 4 inner at 4 in",
  [LB_FACT_TIP_WIDTH] = "12",
  [LB_FACT_CONCRETE] = "core",
  [LB_FACT_PINNED] = "7, 3",
  [LB_FACT_ORDER] = "5, 1-4, 6",
  [LB_FACT_REMOVAL] = "drawn whole",
};

static void
fill (LbPile *pile, GStringChunk *pool)
{
  lb_pile_init (pile);
  for (int fact = 0; fact < LB_N_FACTS; fact++) {
    g_autoptr (GError) error = NULL;

    lb_pile_set (pile, (LbFact) fact, typed[fact], LB_UNITS_US, intern, pool, &error);
    g_assert_no_error (error);
  }
}

static void
test_set_and_get (void)
{
  for (int units = LB_UNITS_US; units <= LB_UNITS_METRIC; units++) {
    GStringChunk *pool = g_string_chunk_new (256);
    LbPile pile, again;

    fill (&pile, pool);
    g_assert_true (lb_pile_check (&pile, NULL));
    g_assert_cmpstr (pile.bar->name, ==, "#8");
    g_assert_cmpfloat_with_epsilon (pile.outline.width_m, 0.4064, 1e-12);
    g_assert_cmpfloat_with_epsilon (pile.head_m, 10.25 * 0.3048, 1e-12);

    lb_pile_init (&again);
    again.id = pile.id;
    for (int fact = 0; fact < LB_N_FACTS; fact++) {
      g_autofree char *text = lb_pile_get (&pile, (LbFact) fact, (LbUnits) units);

      g_assert_true (
        lb_pile_set (&again, (LbFact) fact, text, (LbUnits) units, intern, pool, NULL));
    }
    g_assert_cmpstr (again.mark, ==, "G7");
    g_assert_cmpstr (again.note, ==, "a\nb");
    g_assert_true (again.bar == pile.bar);
    g_assert_cmpuint (again.n_bars, ==, pile.n_bars);
    g_assert_cmpint (again.outline.shape, ==, pile.outline.shape);
    g_assert_cmpfloat (again.x_m, ==, pile.x_m);
    g_assert_cmpfloat (again.y_m, ==, pile.y_m);
    g_assert_cmpfloat (again.outline.width_m, ==, pile.outline.width_m);
    g_assert_cmpfloat (again.outline.void_m, ==, pile.outline.void_m);
    g_assert_cmpfloat (again.bar_inset_m, ==, pile.bar_inset_m);
    g_assert_cmpfloat (again.tip_width_m, ==, pile.tip_width_m);
    g_assert_cmpstr (again.bar_places, ==, "4 outer, 4 inner at 101.6");
    g_assert_cmpfloat (again.batter, ==, pile.batter);
    g_assert_cmpfloat (again.bearing_rad, ==, pile.bearing_rad);
    g_assert_cmpfloat (again.head_m, ==, pile.head_m);
    g_assert_cmpfloat (again.cut_m, ==, pile.cut_m);
    g_assert_cmpfloat (again.mudline_m, ==, pile.mudline_m);
    g_assert_cmpfloat (again.toe_m, ==, pile.toe_m);
    g_assert_true (again.is_to_be_drawn);
    g_assert_cmphex (again.unsaid, ==, 0);
    g_string_chunk_free (pool);
  }
}

static void
test_empty_is_unknown (void)
{
  GStringChunk *pool = g_string_chunk_new (256);
  LbPile pile;

  fill (&pile, pool);
  for (int fact = LB_FACT_BENT; fact < LB_N_FACTS; fact++) {
    const gboolean is_needed = fact == LB_FACT_X || fact == LB_FACT_Y;

    g_assert_cmpint (lb_pile_set (&pile, (LbFact) fact, "", LB_UNITS_US, intern, pool, NULL), ==,
                     !is_needed);
  }
  g_assert_true (isnan (pile.head_m) && isnan (pile.cut_m) && isfinite (pile.x_m));
  g_assert_true (isnan (pile.bar_inset_m));
  g_assert_null (pile.bar);
  g_assert_cmpuint (pile.n_bars, ==, 0);
  g_assert_cmpfloat (pile.outline.width_m, ==, 0);
  g_assert_cmpfloat (pile.batter, ==, 0);
  g_assert_cmpstr (pile.bent, ==, "");

  g_autofree char *width = lb_pile_get (&pile, LB_FACT_WIDTH, LB_UNITS_US);
  g_autofree char *head = lb_pile_get (&pile, LB_FACT_HEAD, LB_UNITS_US);

  g_assert_cmpstr (width, ==, "");
  g_assert_cmpstr (head, ==, "");
  g_string_chunk_free (pool);
}

/* Square, plumb and north are facts, and not what a pile is of which nothing was said. */
static void
test_plumb_is_a_fact (void)
{
  static const struct
  {
    LbFact fact;
    const char *text, *kept;
  } facts[] = {
    { LB_FACT_SHAPE, "square", "square" },
    { LB_FACT_BATTER, "plumb", "plumb" },
    { LB_FACT_BATTER, "1:6", "1:6" },
    { LB_FACT_BEARING, "N", "0" },
  };
  GStringChunk *pool = g_string_chunk_new (64);
  LbPile pile;

  lb_pile_init (&pile);
  g_assert_true (lb_pile_says (&pile, LB_FACT_WIDTH));
  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++) {
    g_autofree char *before = lb_pile_get (&pile, facts[i].fact, LB_UNITS_US);

    g_assert_cmpstr (before, ==, "");
    /* Nobody asks which way a pile leans before he knows that it does. */
    g_assert_true (lb_pile_says (&pile, facts[i].fact) == (facts[i].fact == LB_FACT_BEARING));
    g_assert_true (
      lb_pile_set (&pile, facts[i].fact, facts[i].text, LB_UNITS_US, intern, pool, NULL));
    g_assert_true (lb_pile_says (&pile, facts[i].fact));
    g_autofree char *after = lb_pile_get (&pile, facts[i].fact, LB_UNITS_US);

    g_assert_cmpstr (after, ==, facts[i].kept);
    if (facts[i].fact == LB_FACT_BATTER) {
      g_assert_true (lb_pile_says (&pile, LB_FACT_BEARING) == !(pile.batter > 0));
      lb_pile_set (&pile, LB_FACT_BATTER, "", LB_UNITS_US, intern, pool, NULL);
    }
  }
  g_string_chunk_free (pool);
}

static void
test_refused (void)
{
  const struct
  {
    LbFact fact;
    const char *text;
    int code;
  } cases[] = {
    { LB_FACT_MARK, " ", LB_TRADE_ERROR_INCOMPLETE },
    { LB_FACT_MARK, "a\nb", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_NOTE, "\xff", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_BENT, "12345678901234567890123456789012345678901", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_X, "east", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_Y, "1e9", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_SHAPE, "oval", LB_TRADE_ERROR_UNKNOWN },
    { LB_FACT_REMOVAL, "blasted", LB_TRADE_ERROR_UNKNOWN },
    { LB_FACT_WIDTH, "3.9", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_WIDTH, "21 ft", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_VOID, "-1", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_BAR, "#12", LB_TRADE_ERROR_UNKNOWN },
    { LB_FACT_N_BARS, "61", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_N_BARS, "7.5", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_N_BARS, "-1", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_BAR_INSET, "0.1", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_BAR_PLACES, "8 at random", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_BATTER, "1", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_BEARING, "400", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_HEAD, "5000", LB_TRADE_ERROR_DOMAIN },
    { LB_FACT_TOE, "12,5x", LB_TRADE_ERROR_DOMAIN },
  };
  GStringChunk *pool = g_string_chunk_new (256);
  LbPile pile;

  fill (&pile, pool);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    const LbPile before = pile;
    g_autoptr (GError) error = NULL;

    g_assert_false (
      lb_pile_set (&pile, cases[i].fact, cases[i].text, LB_UNITS_US, intern, pool, &error));
    g_assert_error (error, LB_TRADE_ERROR, cases[i].code);
    g_assert_true (strstr (error->message, lb_fact_title (cases[i].fact)));
    g_assert_cmpmem (&pile, sizeof pile, &before, sizeof before);
  }
  g_string_chunk_free (pool);
}

static void
test_names (void)
{
  LbFact fact = LB_FACT_TOE;

  for (int i = 0; i < LB_N_FACTS; i++) {
    g_assert_true (lb_fact_from_name (lb_fact_name ((LbFact) i), &fact));
    g_assert_cmpint (fact, ==, i);
  }
  g_assert_true (lb_fact_from_name ("Bar-Inset", &fact));
  g_assert_cmpint (fact, ==, LB_FACT_BAR_INSET);
  g_assert_false (lb_fact_from_name ("", &fact));
  g_assert_cmpint (fact, ==, LB_FACT_BAR_INSET);
  g_assert_cmpint (lb_fact_quantity (LB_FACT_WIDTH), ==, LB_QUANTITY_SIZE);
  g_assert_cmpint (lb_fact_quantity (LB_FACT_HEAD), ==, LB_QUANTITY_LENGTH);
}

static void
test_any_text_is_survived (void)
{
  GStringChunk *pool = g_string_chunk_new (256);
  LbPile pile;

  fill (&pile, pool);
  for (int i = 0; i < 20000; i++) {
    char text[12];
    const int length = g_test_rand_int_range (0, (int) sizeof text - 1);
    const LbFact fact = (LbFact) g_test_rand_int_range (0, LB_N_FACTS);

    for (int c = 0; c < length; c++)
      text[c] = (char) g_test_rand_int_range (1, 256);
    text[length] = '\0';

    if (lb_pile_set (&pile, fact, text, LB_UNITS_METRIC, intern, pool, NULL)) {
      g_autofree char *back = lb_pile_get (&pile, fact, LB_UNITS_METRIC);

      g_assert_true (lb_pile_set (&pile, fact, back, LB_UNITS_METRIC, intern, pool, NULL));
    }
  }
  g_string_chunk_free (pool);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/pile/set-and-get", test_set_and_get);
  g_test_add_func ("/trade/pile/empty-is-unknown", test_empty_is_unknown);
  g_test_add_func ("/trade/pile/plumb-is-a-fact", test_plumb_is_a_fact);
  g_test_add_func ("/trade/pile/refused", test_refused);
  g_test_add_func ("/trade/pile/names", test_names);
  g_test_add_func ("/trade/pile/any-text", test_any_text_is_survived);
  return g_test_run ();
}
