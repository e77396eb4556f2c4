/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/text-pool.h"

#include <string.h>

/* Texts stay what they were while blocks of every size are added, one larger than any block too. */
static void
test_texts_stay (void)
{
  g_autoptr (LbTextPool) pool = lb_text_pool_new ();
  g_autoptr (GPtrArray) kept = g_ptr_array_new ();
  g_autofree char *large = g_strnfill (5 * 1024 * 1024, 'x');

  for (int i = 0; i < 300000; i++) {
    char text[32];

    g_snprintf (text, sizeof text, "text %d", i);
    g_ptr_array_add (kept, (gpointer) lb_text_pool_add (pool, text));
  }
  g_assert_cmpstr (lb_text_pool_add (pool, large), ==, large);
  g_assert_cmpstr (lb_text_pool_add (pool, ""), ==, "");
  for (int i = 0; i < 300000; i++) {
    char text[32];

    g_snprintf (text, sizeof text, "text %d", i);
    if (strcmp (text, g_ptr_array_index (kept, i)) != 0)
      g_error ("%s was %s", text, (const char *) g_ptr_array_index (kept, i));
  }
}

static void
test_once (void)
{
  g_autoptr (LbTextPool) pool = lb_text_pool_new ();
  const char *first = lb_text_pool_add_once (pool, "supervisor");
  const char *other = lb_text_pool_add (pool, "supervisor");

  g_assert_true (lb_text_pool_add_once (pool, "supervisor") == first);
  g_assert_true (other != first);
  g_assert_cmpstr (lb_text_pool_add_once (pool, "tender"), ==, "tender");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/text-pool/texts-stay", test_texts_stay);
  g_test_add_func ("/text-pool/once", test_once);

  return g_test_run ();
}
