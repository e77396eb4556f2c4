/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/visibility.h"

static void
test_as_said (void)
{
  static const struct
  {
    const char *text;
    LbVisibility us, metric;
  } said[] = {
    { "none", LB_VISIBILITY_NONE, LB_VISIBILITY_NONE },
    { "Black water", LB_VISIBILITY_NONE, LB_VISIBILITY_NONE },
    { "0", LB_VISIBILITY_NONE, LB_VISIBILITY_NONE },
    { "2 in", LB_VISIBILITY_NONE, LB_VISIBILITY_NONE },
    { "5 cm", LB_VISIBILITY_NONE, LB_VISIBILITY_NONE },
    { "2", LB_VISIBILITY_POOR, LB_VISIBILITY_FAIR },
    { "2 ft", LB_VISIBILITY_POOR, LB_VISIBILITY_POOR },
    { "2-4 ft", LB_VISIBILITY_POOR, LB_VISIBILITY_POOR },
    { "under 3'", LB_VISIBILITY_FAIR, LB_VISIBILITY_FAIR },
    { "0,5 m", LB_VISIBILITY_POOR, LB_VISIBILITY_POOR },
    { "3 to 5 ft", LB_VISIBILITY_FAIR, LB_VISIBILITY_FAIR },
    { "10 ft", LB_VISIBILITY_FAIR, LB_VISIBILITY_FAIR },
    { "about 12 feet", LB_VISIBILITY_GOOD, LB_VISIBILITY_GOOD },
    { "5", LB_VISIBILITY_FAIR, LB_VISIBILITY_GOOD },
    { "clear, 4 m", LB_VISIBILITY_GOOD, LB_VISIBILITY_GOOD },
    { "poor", LB_VISIBILITY_POOR, LB_VISIBILITY_POOR },
    { "good", LB_VISIBILITY_GOOD, LB_VISIBILITY_GOOD },
    { "", LB_VISIBILITY_UNKNOWN, LB_VISIBILITY_UNKNOWN },
    { "not measured", LB_VISIBILITY_UNKNOWN, LB_VISIBILITY_UNKNOWN },
    { "trübe", LB_VISIBILITY_UNKNOWN, LB_VISIBILITY_UNKNOWN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (said); i++) {
    g_test_message ("“%s”", said[i].text);
    g_assert_cmpint (lb_visibility_from_text (said[i].text, LB_UNITS_US), ==, said[i].us);
    g_assert_cmpint (lb_visibility_from_text (said[i].text, LB_UNITS_METRIC), ==, said[i].metric);
  }
}

static void
test_names (void)
{
  LbVisibility untouched = LB_VISIBILITY_FAIR;

  for (int i = 0; i < LB_N_VISIBILITIES; i++) {
    const LbVisibility visibility = (LbVisibility) i;
    LbVisibility found = LB_VISIBILITY_GOOD;

    g_assert_true (lb_visibility_from_key (lb_visibility_key (visibility), &found));
    g_assert_cmpint (found, ==, visibility);
    g_assert_nonnull (lb_visibility_name (visibility));
  }
  g_assert_false (lb_visibility_from_key ("", &untouched));
  g_assert_false (lb_visibility_from_key ("Poor", &untouched));
  g_assert_cmpint (untouched, ==, LB_VISIBILITY_FAIR);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/visibility/as-said", test_as_said);
  g_test_add_func ("/visibility/names", test_names);
  return g_test_run ();
}
