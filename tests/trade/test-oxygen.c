/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/oxygen.h"

#include "trade/quantity.h"

#include <math.h>

static double
psi (double pa)
{
  return lb_quantity_from_si (LB_QUANTITY_PRESSURE, LB_UNITS_US, pa);
}

static double
from_psi (double value)
{
  return lb_quantity_to_si (LB_QUANTITY_PRESSURE, LB_UNITS_US, value);
}

static void
test_bottom_pressure (void)
{
  g_assert_cmpfloat (lb_bottom_pressure (0), ==, 0);
  g_assert_cmpfloat (lb_bottom_pressure (-3), ==, 0);
  g_assert_true (isnan (lb_bottom_pressure ((double) NAN)));
  g_assert_cmpfloat_with_epsilon (psi (lb_bottom_pressure (10 * 0.3048)), 4.45, 1e-9);
}

static void
test_setting_is_whole_and_enough (void)
{
  for (int feet = 0; feet <= 190; feet++) {
    const double exact = 90 + 0.445 * feet + 20;
    const double setting = psi (lb_regulator_setting (from_psi (90), feet * 0.3048, from_psi (20)));

    g_assert_cmpfloat_with_epsilon (setting, round (setting), 1e-9);
    g_assert_cmpfloat (setting, >, exact - 1e-5);
    g_assert_cmpfloat (setting, <, exact + 1);
  }
}

/* 90 psi at the surface is a whole number already and stays what it is. */
static void
test_setting_does_not_creep (void)
{
  g_assert_cmpfloat_with_epsilon (psi (lb_regulator_setting (from_psi (90), 0, 0)), 90, 1e-9);
  g_assert_true (isnan (lb_regulator_setting (from_psi (90), (double) NAN, 0)));
}

static void
test_flow_scale (void)
{
  g_assert_cmpfloat (lb_oxygen_flow_scale (from_psi (90), 0), ==, 1);
  /* With no over-bottom pressure it is the ratio of absolute pressures: double at 14.7 psi. */
  g_assert_cmpfloat_with_epsilon (lb_oxygen_flow_scale (0, 14.7 / 0.445 * 0.3048), 2, 1e-12);
  g_assert_cmpfloat (lb_oxygen_flow_scale (from_psi (90), 20), >,
                     lb_oxygen_flow_scale (from_psi (90), 10));
}

static void
test_mass (void)
{
  g_assert_cmpfloat (lb_oxygen_mass (0), ==, 0);
  g_assert_cmpfloat_with_epsilon (lb_oxygen_mass (2), 2 * lb_oxygen_mass (1), 1e-12);
  g_assert_cmpfloat_with_epsilon (lb_oxygen_mass (1), 1.3261, 1e-12);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/oxygen/bottom-pressure", test_bottom_pressure);
  g_test_add_func ("/trade/oxygen/setting", test_setting_is_whole_and_enough);
  g_test_add_func ("/trade/oxygen/setting-does-not-creep", test_setting_does_not_creep);
  g_test_add_func ("/trade/oxygen/flow-scale", test_flow_scale);
  g_test_add_func ("/trade/oxygen/mass", test_mass);
  return g_test_run ();
}
