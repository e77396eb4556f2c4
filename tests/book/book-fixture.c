/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book-fixture.h"

#include <glib/gstdio.h>

char *
fixture_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("lastbent-test-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

char *
fixture_path (const char *folder, const char *name)
{
  g_autofree char *file = g_strconcat (name, LB_BOOK_SUFFIX, NULL);

  return g_build_filename (folder, file, NULL);
}

void
fixture_remove (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_assert_cmpint (g_remove (path), ==, 0);
  }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

LbBook *
fixture_book (const char *path)
{
  g_autoptr (GError) error = NULL;
  LbBook *book = lb_book_create_fixed (path, "Test job", "test", FIXTURE_US, &error);

  g_assert_no_error (error);
  g_assert_nonnull (book);
  return book;
}

void
fixture_add_piles (LbBook *book, guint n_piles, guint n_bars)
{
  g_autofree LbPile *piles = g_new (LbPile, n_piles);
  g_autoptr (GStringChunk) marks = g_string_chunk_new (1024);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < n_piles; i++) {
    g_autofree char *mark = g_strdup_printf ("P%u", i + 1);

    lb_pile_init (&piles[i]);
    piles[i].mark = g_string_chunk_insert (marks, mark);
    piles[i].x_m = i % 100;
    piles[i].y_m = i / 100;
    piles[i].outline = (LbOutline){ .shape = LB_SHAPE_OCTAGON, .width_m = 0.4064 };
    piles[i].bar = n_bars > 0 ? lb_bar_find ("#8") : NULL;
    piles[i].n_bars = n_bars;
    piles[i].head_m = 3;
    piles[i].mudline_m = -9;
    piles[i].toe_m = -20;
  }
  g_assert_true (lb_book_add_piles (book, piles, n_piles, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
}

GBytes *
fixture_bytes (const char *path)
{
  g_autoptr (GError) error = NULL;
  char *data = NULL;
  gsize n = 0;

  g_file_get_contents (path, &data, &n, &error);
  g_assert_no_error (error);
  return g_bytes_new_take (data, n);
}
