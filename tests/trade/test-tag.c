/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/tag.h"

static void
test_names (void)
{
  for (int a = 0; a < LB_N_TAGS; a++) {
    g_assert_cmpstr (lb_tag_name ((LbTag) a), !=, "");
    for (int b = 0; b < a; b++)
      g_assert_cmpstr (lb_tag_name ((LbTag) a), !=, lb_tag_name ((LbTag) b));
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/tag/names", test_names);
  return g_test_run ();
}
