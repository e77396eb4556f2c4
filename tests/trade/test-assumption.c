/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/assumption.h"

#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

static void
test_rows_are_whole (void)
{
  for (int i = 0; i < LB_N_ASSUMPTIONS; i++) {
    const LbAssumption *row = lb_assumption ((LbAssumptionId) i);
    LbAssumptionId id;

    g_assert_nonnull (row->key);
    g_assert_nonnull (row->title);
    g_assert_nonnull (row->source);
    g_assert_cmpfloat (row->least, <=, row->value);
    g_assert_cmpfloat (row->value, <=, row->most);
    g_assert_true (lb_assumption_find (row->key, &id));
    g_assert_cmpint (id, ==, i);
  }
}

static void
test_unknown_key (void)
{
  LbAssumptionId id = LB_ASSUME_ROD_TIME;

  g_assert_false (lb_assumption_find ("", &id));
  g_assert_false (lb_assumption_find ("no-such", &id));
  g_assert_cmpint (id, ==, LB_ASSUME_ROD_TIME);
}

static void
test_triples_rise (void)
{
  const LbAssumptionId triples[][3] = {
    { LB_ASSUME_BURN_RATE_LOW, LB_ASSUME_BURN_RATE, LB_ASSUME_BURN_RATE_HIGH },
    { LB_ASSUME_RESTRIKE_LOW, LB_ASSUME_RESTRIKE, LB_ASSUME_RESTRIKE_HIGH },
    { LB_ASSUME_ROD_WASTE_LOW, LB_ASSUME_ROD_WASTE, LB_ASSUME_ROD_WASTE_HIGH },
    { LB_ASSUME_CONCRETE_LIGHT, LB_ASSUME_CONCRETE_DENSITY, LB_ASSUME_CONCRETE_HEAVY },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (triples); i++) {
    g_assert_cmpfloat (lb_assumption (triples[i][0])->value, <,
                       lb_assumption (triples[i][1])->value);
    g_assert_cmpfloat (lb_assumption (triples[i][1])->value, <,
                       lb_assumption (triples[i][2])->value);
  }
}

static void
test_set (void)
{
  LbAssumptions assumptions;

  lb_assumptions_init (&assumptions);
  for (int i = 0; i < LB_N_ASSUMPTIONS; i++) {
    const LbAssumption *row = lb_assumption ((LbAssumptionId) i);

    g_assert_cmpint (lb_assumptions_tag (&assumptions, (LbAssumptionId) i), ==, row->tag);
    /* Both ends belong to the range. */
    g_assert_true (lb_assumptions_set (&assumptions, (LbAssumptionId) i, row->least, NULL));
    g_assert_true (lb_assumptions_set (&assumptions, (LbAssumptionId) i, row->most, NULL));
    g_assert_cmpfloat (assumptions.value[i], ==, row->most);
    g_assert_cmpint (lb_assumptions_tag (&assumptions, (LbAssumptionId) i), ==, LB_TAG_JOB);
  }
}

/* A count within the slack of a whole number is that number. */
static void
test_counts_are_whole (void)
{
  LbAssumptions assumptions;

  lb_assumptions_init (&assumptions);
  g_assert_true (lb_assumptions_set (&assumptions, LB_ASSUME_SLING_LEGS, 1 - 5e-10, NULL));
  g_assert_cmpfloat (assumptions.value[LB_ASSUME_SLING_LEGS], ==, 1);
  g_assert_true (lb_assumptions_set (&assumptions, LB_ASSUME_SLING_LEGS, 2 - 5e-10, NULL));
  g_assert_cmpfloat (assumptions.value[LB_ASSUME_SLING_LEGS], ==, 2);
}

static void
check_refused (LbAssumptionId id, double si)
{
  g_autoptr (GError) error = NULL;
  LbAssumptions assumptions;

  lb_assumptions_init (&assumptions);
  g_assert_false (lb_assumptions_set (&assumptions, id, si, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_cmpfloat (assumptions.value[id], ==, lb_assumption (id)->value);
  g_assert_false (assumptions.is_own[id]);
}

static void
test_refused (void)
{
  for (int i = 0; i < LB_N_ASSUMPTIONS; i++) {
    const LbAssumption *row = lb_assumption ((LbAssumptionId) i);
    const double width = row->most - row->least;

    check_refused ((LbAssumptionId) i, row->least - width / 100);
    check_refused ((LbAssumptionId) i, row->most + width / 100);
    check_refused ((LbAssumptionId) i, (double) NAN);
    check_refused ((LbAssumptionId) i, (double) INFINITY);
  }
  check_refused (LB_ASSUME_SLING_LEGS, 2.5);
}

/* What is chosen has a word for each of its values, and is read by it. */
static void
test_choices (void)
{
  guint n_chosen = 0;

  for (int i = 0; i < LB_N_ASSUMPTIONS; i++) {
    const LbAssumptionId id = (LbAssumptionId) i;
    const LbAssumption *row = lb_assumption (id);

    if (row->choices == NULL) {
      g_assert_null (lb_assumption_choice (id, 0));
      continue;
    }
    n_chosen++;
    g_assert_cmpint (row->quantity, ==, LB_QUANTITY_COUNT);
    g_assert_cmpuint (g_strv_length ((char **) row->choices), ==, (guint) row->most + 1);
    for (guint value = 0; value <= row->most; value++) {
      double si = -1;

      g_assert_true (
        lb_assumption_from_text (id, LB_UNITS_US, lb_assumption_choice (id, value), &si, NULL));
      g_assert_cmpfloat (si, ==, value);
    }
    g_assert_null (lb_assumption_choice (id, row->most + 1));
    g_assert_null (lb_assumption_choice (id, (double) NAN));
  }
  g_assert_cmpuint (n_chosen, ==, 3);

  g_autoptr (GError) error = NULL;
  double si = 7;

  g_assert_false (lb_assumption_from_text (LB_ASSUME_BED, LB_UNITS_US, "rock", &si, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_nonnull (strstr (error->message, "mud, soft clay"));
  g_assert_cmpfloat (si, ==, 7);
  g_assert_true (lb_assumption_from_text (LB_ASSUME_TIP_HEIGHT, LB_UNITS_US, "80", &si, NULL));
  g_assert_cmpfloat_with_epsilon (si, 80 * 0.3048, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/assumption/rows", test_rows_are_whole);
  g_test_add_func ("/trade/assumption/unknown-key", test_unknown_key);
  g_test_add_func ("/trade/assumption/triples-rise", test_triples_rise);
  g_test_add_func ("/trade/assumption/set", test_set);
  g_test_add_func ("/trade/assumption/counts", test_counts_are_whole);
  g_test_add_func ("/trade/assumption/refused", test_refused);
  g_test_add_func ("/trade/assumption/choices", test_choices);
  return g_test_run ();
}
