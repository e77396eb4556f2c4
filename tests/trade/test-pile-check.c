/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/pile-bars.h"
#include "trade/pile-taper.h"

#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

#define INCH 0.0254

static const char *
intern (gpointer pool, const char *text)
{
  return g_string_chunk_insert_const (pool, text);
}

typedef struct
{
  GStringChunk *pool;
  LbPile pile;
} Fixture;

static void
set (Fixture *self, LbFact fact, const char *text)
{
  g_autoptr (GError) error = NULL;

  lb_pile_set (&self->pile, fact, text, LB_UNITS_US, intern, self->pool, &error);
  g_assert_no_error (error);
}

/* A 16-in octagon of eight #8 bars with a 4-in void. */
static void
set_up (Fixture *self, gconstpointer data)
{
  self->pool = g_string_chunk_new (256);
  lb_pile_init (&self->pile);
  set (self, LB_FACT_MARK, "G7");
  set (self, LB_FACT_SHAPE, "oct");
  set (self, LB_FACT_WIDTH, "16");
  set (self, LB_FACT_VOID, "4");
  set (self, LB_FACT_BAR, "#8");
  set (self, LB_FACT_N_BARS, "8");
  set (self, LB_FACT_HEAD, "10");
  set (self, LB_FACT_CUT, "-24");
  set (self, LB_FACT_MUDLINE, "-25");
  set (self, LB_FACT_TOE, "-60");
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  g_string_chunk_free (self->pool);
}

static void
assert_agrees (const Fixture *self)
{
  g_autoptr (GError) error = NULL;

  lb_pile_check (&self->pile, &error);
  g_assert_no_error (error);
}

static void
assert_disagrees (const Fixture *self, const char *words)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (lb_pile_check (&self->pile, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_nonnull (strstr (error->message, "G7"));
  if (strstr (error->message, words) == NULL)
    g_error ("“%s” does not say “%s”", error->message, words);
}

static void
test_facts_disagree (Fixture *self, gconstpointer data)
{
  const struct
  {
    LbFact fact;
    const char *text, *words;
  } cases[] = {
    { LB_FACT_HEAD, "-24", "not above the cut" },
    { LB_FACT_HEAD, "-70", "not above the toe" },
    { LB_FACT_CUT, "-61", "below the toe" },
    { LB_FACT_MUDLINE, "-60", "mudline" },
    { LB_FACT_VOID, "16", "void is as wide" },
    { LB_FACT_TIP_WIDTH, "17", "toe is wider" },
    { LB_FACT_TIP_WIDTH, "4", "void is as wide as the toe" },
    { LB_FACT_BAR_INSET, "7", "no room" },
    { LB_FACT_N_BARS, "60", "closer" },
    { LB_FACT_PINNED, "9", "kept" },
  };

  assert_agrees (self);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    const LbPile before = self->pile;

    set (self, cases[i].fact, cases[i].text);
    assert_disagrees (self, cases[i].words);
    self->pile = before;
  }
  set (self, LB_FACT_BAR_INSET, "0.9");
  set (self, LB_FACT_BAR, "#18");
  assert_disagrees (self, "out of the face");
}

/* What is not known cannot disagree. */
static void
test_empty_pile_agrees (void)
{
  LbPile pile;

  lb_pile_init (&pile);
  g_assert_true (lb_pile_check (&pile, NULL));
  g_assert_cmpfloat_with_epsilon (lb_pile_bar_inset (&pile), 3 * INCH, 1e-12);
}

static void
test_places (Fixture *self, gconstpointer data)
{
  const struct
  {
    const char *places, *words; /* %NULL when they agree */
  } cases[] = {
    { "4 outer, 4 inner at 5", NULL },
    { "1 between corners", NULL },
    { "2 on each face", NULL },
    { "3 on each face", "another number" },
    { "8 outer, 4 inner at 5", "another number" },
    /* Inner bars in the void, and as good as on the outer ones. */
    { "4 outer, 4 inner at 5.7", "bar 5 stands in the void" },
    { "4 outer, 4 inner at 3.5", "bars 1 and 5 are closer" },
    { "at 0 7.5; 3 5; 5 0; 5 -3; 0 -5; -3 -5; -5 0; -5 3", NULL },
    { "at 0 7.6; 3 5; 5 0; 5 -3; 0 -5; -3 -5; -5 0; -5 3", "bar 1 stands out" },
    /* Within the square round the octagon, and out of its slanting face. */
    { "at 0 5; 6 5; 5 0; 5 -3; 0 -5; -3 -5; -5 0; -5 3", "bar 2 stands out" },
    { "at 0 5; 3 5; 5 0; 5 -3; 0 -5; -3 -5; -5 0; -5 0.9", "bars 7 and 8 are closer" },
    { "at 0 5; 3 5; 5 0; 5 -3; 0 -5; -3 -5; -5 0; -5 1", NULL },
    { "at 0 0; 3 5; 5 0; 5 -3; 0 -5; -3 -5; -5 0; -5 3", "bar 1 stands in the void" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    set (self, LB_FACT_BAR_PLACES, cases[i].places);
    if (cases[i].words == NULL)
      assert_agrees (self);
    else
      assert_disagrees (self, cases[i].words);
  }
  set (self, LB_FACT_BAR_PLACES, "1 between corners");
  set (self, LB_FACT_SHAPE, "round");
  assert_disagrees (self, "round pile has none");
}

/* Where the line on record is no good, the usual ring is drawn, and why is said. */
static void
test_fallback (Fixture *self, gconstpointer data)
{
  LbPoint usual[LB_BARS_MAX], places[LB_BARS_MAX];

  g_assert_null (lb_pile_bars_place (&self->pile, &self->pile.outline, usual));
  self->pile.bar_places = "8 in a heap";
  g_assert_nonnull (lb_pile_bars_place (&self->pile, &self->pile.outline, places));
  g_assert_cmpmem (places, 8 * sizeof *places, usual, 8 * sizeof *usual);
  self->pile.bar_places = "12 outer, 4 inner at 127";
  g_assert_nonnull (lb_pile_bars_place (&self->pile, &self->pile.outline, places));
  g_assert_cmpmem (places, 8 * sizeof *places, usual, 8 * sizeof *usual);
  self->pile.bar_places = "4 outer, 4 inner at 127";
  g_assert_null (lb_pile_bars_place (&self->pile, &self->pile.outline, places));
  g_assert_cmpfloat_with_epsilon (hypot (places[4].x, places[4].y), 3 * INCH, 1e-12);
}

/* Bars are looked at where the pile is cut: 34 of 70 ft down from 16 in at the head. */
static void
test_taper (Fixture *self, gconstpointer data)
{
  set (self, LB_FACT_TIP_WIDTH, "12");

  const LbOutline at_cut = lb_pile_outline_at (&self->pile, self->pile.cut_m);

  g_assert_cmpfloat_with_epsilon (at_cut.width_m, (16 - 4 * 34.0 / 70) * INCH, 1e-12);
  g_assert_cmpfloat_with_epsilon (lb_pile_outline_at (&self->pile, 99).width_m, 16 * INCH, 1e-12);
  g_assert_cmpfloat_with_epsilon (lb_pile_outline_at (&self->pile, -99).width_m, 12 * INCH, 1e-12);
  g_assert_cmpfloat_with_epsilon (at_cut.void_m, 4 * INCH, 1e-12);
  assert_agrees (self);
  set (self, LB_FACT_BAR_PLACES, "at 0 6.5; 3 5; 5 0; 5 -3; 0 -5; -3 -5; -5 0; -5 3");
  assert_agrees (self);
  /* Within the face at the head, and out of it at the cut. */
  set (self, LB_FACT_BAR_PLACES, "at 0 7; 3 5; 5 0; 5 -3; 0 -5; -3 -5; -5 0; -5 3");
  assert_disagrees (self, "bar 1 stands out");

  /* Broken at the cut: what was there is the head, and nothing below has changed. */
  LbPile broken = self->pile;

  lb_pile_break_off (&broken, broken.cut_m);
  g_assert_cmpfloat_with_epsilon (broken.outline.width_m, at_cut.width_m, 1e-12);
  g_assert_cmpfloat_with_epsilon (lb_pile_outline_at (&broken, -12).width_m,
                                  lb_pile_outline_at (&self->pile, -12).width_m, 1e-12);

  /* Without the toe nobody knows the width but at the head, and without taper it is known anywhere. */
  set (self, LB_FACT_TOE, "");
  g_assert_cmpfloat (lb_pile_outline_at (&self->pile, self->pile.cut_m).width_m, ==, 0);
  g_assert_true (isnan (lb_pile_end_width (&self->pile, self->pile.cut_m)));
  set (self, LB_FACT_TIP_WIDTH, "");
  g_assert_cmpfloat (lb_pile_end_width (&self->pile, self->pile.cut_m), ==, 0);
  g_assert_cmpfloat_with_epsilon (lb_pile_outline_at (&self->pile, (double) NAN).width_m, 16 * INCH,
                                  1e-12);
}

#define ADD(name, function) g_test_add (name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/trade/pile-check/facts-disagree", test_facts_disagree);
  ADD ("/trade/pile-check/places", test_places);
  ADD ("/trade/pile-check/fallback", test_fallback);
  ADD ("/trade/pile-check/taper", test_taper);
  g_test_add_func ("/trade/pile-check/empty-pile-agrees", test_empty_pile_agrees);
  return g_test_run ();
}
