/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/critical-lift.h"

#include <math.h>

static const LbLiftFacts plain = { .share = 0.4, .n_cranes = 1 };

static void
test_plain_lift (void)
{
  g_assert_cmpuint (lb_critical_lift (&plain), ==, 0);
}

/* Each fact raises its own trigger and no other. */
static void
test_each_alone (void)
{
  LbLiftFacts changed[LB_N_CRITICAL_TRIGGERS];

  for (guint i = 0; i < LB_N_CRITICAL_TRIGGERS; i++)
    changed[i] = plain;
  changed[LB_CRITICAL_SUBMERGED].is_submerged = TRUE;
  changed[LB_CRITICAL_CAPACITY].share = 0.75;
  changed[LB_CRITICAL_CAPACITY_UNKNOWN].share = (double) NAN;
  changed[LB_CRITICAL_CRANES].n_cranes = 2;
  changed[LB_CRITICAL_CENTRE].is_centre_changing = TRUE;
  changed[LB_CRITICAL_VIEW].is_out_of_view = TRUE;
  for (guint i = 0; i < LB_N_CRITICAL_TRIGGERS; i++) {
    const LbCriticalSet set = lb_critical_lift (&changed[i]);

    for (guint trigger = 0; trigger < LB_N_CRITICAL_TRIGGERS; trigger++)
      g_assert_cmpint (lb_critical_set_has (set, (LbCriticalTrigger) trigger), ==, trigger == i);
  }
}

static void
test_share (void)
{
  LbLiftFacts facts = plain;

  facts.share = 0.749;
  g_assert_cmpuint (lb_critical_lift (&facts), ==, 0);
  facts.share = 3 * 0.25;
  g_assert_true (lb_critical_set_has (lb_critical_lift (&facts), LB_CRITICAL_CAPACITY));
  facts.share = 1.2;
  g_assert_true (lb_critical_set_has (lb_critical_lift (&facts), LB_CRITICAL_CAPACITY));
}

static void
test_together (void)
{
  const LbLiftFacts facts = { .is_submerged = TRUE, .share = 0.9, .n_cranes = 3 };

  g_assert_cmpuint (lb_critical_lift (&facts), ==,
                    1u << LB_CRITICAL_SUBMERGED | 1u << LB_CRITICAL_CAPACITY |
                      1u << LB_CRITICAL_CRANES);
}

static void
test_words (void)
{
  for (guint a = 0; a < LB_N_CRITICAL_TRIGGERS; a++) {
    g_assert_cmpstr (lb_critical_source ((LbCriticalTrigger) a), !=, NULL);
    g_assert_cmpstr (lb_critical_words ((LbCriticalTrigger) a), !=, NULL);
    for (guint b = 0; b < a; b++)
      g_assert_cmpstr (lb_critical_words ((LbCriticalTrigger) a), !=,
                       lb_critical_words ((LbCriticalTrigger) b));
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/critical-lift/plain-lift", test_plain_lift);
  g_test_add_func ("/trade/critical-lift/each-alone", test_each_alone);
  g_test_add_func ("/trade/critical-lift/share", test_share);
  g_test_add_func ("/trade/critical-lift/together", test_together);
  g_test_add_func ("/trade/critical-lift/words", test_words);
  return g_test_run ();
}
