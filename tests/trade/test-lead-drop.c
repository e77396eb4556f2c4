/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/lead-drop.h"

#include <math.h>

#define FOOT 0.3048

static void
test_sizes_grow (void)
{
  gsize n_sizes = 0;
  const LbLeadSize *sizes = lb_lead_sizes (&n_sizes);

  g_assert_cmpuint (n_sizes, ==, 6);
  for (gsize i = 0; i < n_sizes; i++) {
    g_assert_true (lb_lead_size_find (sizes[i].name) == &sizes[i]);
    /* Each size has 1.26 times the copper of the one before: the gauge's 39 steps for 92 in
     * diameter. */
    if (i > 0)
      g_assert_cmpfloat_with_epsilon (sizes[i].cmil / sizes[i - 1].cmil, pow (92, 2.0 / 39), 0.002);
  }
  g_assert_null (lb_lead_size_find ("12"));
  g_assert_null (lb_lead_size_find (NULL));
}

/* The article on cables: 1/0 has about 0.0829 in² of copper. */
static void
test_area (void)
{
  g_assert_cmpfloat_with_epsilon (lb_lead_size_find ("1/0")->cmil * 1e-6 * G_PI / 4, 0.0829,
                                  0.0001);
}

static void
test_in_proportion (void)
{
  const LbLeadSize *size = lb_lead_size_find ("1/0");
  const double once = lb_lead_drop (size, 100, 150);

  g_assert_cmpfloat_with_epsilon (lb_lead_drop (size, 200, 150), 2 * once, 1e-12);
  g_assert_cmpfloat_with_epsilon (lb_lead_drop (size, 100, 300), 2 * once, 1e-12);
  g_assert_cmpfloat (lb_lead_drop (size, 0, 300), ==, 0);
}

/* The thinnest keeps the rule; one size thinner does not. */
static void
test_least (void)
{
  gsize n_sizes = 0;
  const LbLeadSize *sizes = lb_lead_sizes (&n_sizes);

  for (double feet = 10; feet < 400; feet += 10) {
    const LbLeadSize *least = lb_lead_size_least (feet * FOOT, 200);

    g_assert_nonnull (least);
    g_assert_cmpfloat (lb_lead_drop (least, feet * FOOT, 200), <=, LB_LEAD_DROP_MOST);
    if (least > sizes)
      g_assert_cmpfloat (lb_lead_drop (least - 1, feet * FOOT, 200), >, LB_LEAD_DROP_MOST);
  }
  /* Exactly 4 V is within the rule. */
  const double just = LB_LEAD_DROP_MOST * sizes[0].cmil / (10.37 * 200) * FOOT;

  g_assert_true (lb_lead_size_least (just, 200) == &sizes[0]);
  g_assert_true (lb_lead_size_least (just * 1.0001, 200) == &sizes[1]);
  g_assert_null (lb_lead_size_least (600 * FOOT, 400));
}

static void
test_refused (void)
{
  const LbLeadSize *size = lb_lead_size_find ("2");

  g_assert_true (isnan (lb_lead_drop (size, -1, 200)));
  g_assert_true (isnan (lb_lead_drop (size, 100, -200)));
  g_assert_true (isnan (lb_lead_drop (size, (double) NAN, 200)));
  g_assert_null (lb_lead_size_least (100, (double) NAN));
  g_assert_null (lb_lead_size_least (-100, 200));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/lead-drop/sizes-grow", test_sizes_grow);
  g_test_add_func ("/trade/lead-drop/area", test_area);
  g_test_add_func ("/trade/lead-drop/in-proportion", test_in_proportion);
  g_test_add_func ("/trade/lead-drop/least", test_least);
  g_test_add_func ("/trade/lead-drop/refused", test_refused);
  return g_test_run ();
}
