/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/caution.h"

static void
test_each_has_its_own_key_and_a_source (void)
{
  for (int a = 0; a < LB_N_CAUTIONS; a++) {
    g_assert_cmpstr (lb_caution_source ((LbCaution) a), !=, "");
    g_assert_nonnull (lb_caution_source ((LbCaution) a));
    for (int b = 0; b < a; b++)
      g_assert_cmpstr (lb_caution_key ((LbCaution) a), !=, lb_caution_key ((LbCaution) b));
  }
}

static void
test_gravest (void)
{
  g_assert_cmpint (lb_caution_severity (LB_CAUTION_STRAND), ==, LB_SEVERITY_DANGER);
  g_assert_cmpint (lb_caution_severity (LB_CAUTION_UNDER_LEAN), ==, LB_SEVERITY_DANGER);
  g_assert_cmpint (lb_caution_severity (LB_CAUTION_SUPERVISOR), ==, LB_SEVERITY_NOTE);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/caution/keys", test_each_has_its_own_key_and_a_source);
  g_test_add_func ("/trade/caution/gravest", test_gravest);
  return g_test_run ();
}
