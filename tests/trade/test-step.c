/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/step.h"

static void
test_names_come_back (void)
{
  for (int i = 0; i < LB_N_STEPS; i++) {
    g_autofree char *loud = g_ascii_strup (lb_step_name ((LbStep) i), -1);
    LbStep step;

    g_assert_true (lb_step_from_name (loud, &step));
    g_assert_cmpint (step, ==, i);
  }
}

static void
test_letters (void)
{
  LbStep step;

  g_assert_true (lb_step_from_name ("s", &step));
  g_assert_cmpint (step, ==, LB_STEP_SEVERED);
  g_assert_true (lb_step_from_name ("C", &step));
  g_assert_cmpint (step, ==, LB_STEP_CLEANED);
  g_assert_true (lb_step_from_name ("r", &step));
  g_assert_cmpint (step, ==, LB_STEP_RIGGED);
  g_assert_true (lb_step_from_name ("p", &step));
  g_assert_cmpint (step, ==, LB_STEP_PULLED);
}

static void
test_refused (void)
{
  const char *const texts[] = { "", "x", "sever", "pulled ", "3" };
  LbStep step = LB_STEP_RIGGED;

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    g_assert_false (lb_step_from_name (texts[i], &step));
  g_assert_cmpint (step, ==, LB_STEP_RIGGED);
}

static void
test_furthest (void)
{
  g_assert_cmpint (lb_step_furthest (0), ==, LB_STEP_STANDING);
  g_assert_cmpint (lb_step_furthest (LB_STEP_BIT (LB_STEP_CLEANED)), ==, LB_STEP_CLEANED);
  /* Rigged before severed: the furthest is still rigged. */
  g_assert_cmpint (lb_step_furthest (LB_STEP_BIT (LB_STEP_CLEANED) | LB_STEP_BIT (LB_STEP_RIGGED)),
                   ==, LB_STEP_RIGGED);
  g_assert_cmpint (lb_step_furthest (G_MAXUINT8), ==, LB_STEP_PULLED);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/step/names", test_names_come_back);
  g_test_add_func ("/trade/step/letters", test_letters);
  g_test_add_func ("/trade/step/refused", test_refused);
  g_test_add_func ("/trade/step/furthest", test_furthest);
  return g_test_run ();
}
