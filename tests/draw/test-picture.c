/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture-text.h"
#include "draw/picture.h"

#include <glib/gstdio.h>
#include <string.h>

static void
draw_cb (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  g_autofree char *text = g_strdup_printf ("page %" G_GSIZE_FORMAT, page + 1);
  cairo_rectangle (cr, 1, 1, width / 2, height / 2);
  cairo_fill (cr);
  lb_text_show (cr, &LB_VOICE_PLAIN, text, 10, FALSE, LB_ALIGN_START, 5, 5, 0);
}

static void
fail_cb (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  cairo_restore (cr); /* without a save: cairo's own error */
}

typedef struct
{
  char *folder;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  fixture->folder = g_dir_make_tmp ("picture-XXXXXX", &error);
  g_assert_no_error (error);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GDir) dir = g_dir_open (fixture->folder, 0, NULL);
  for (const char *name; (name = g_dir_read_name (dir)) != NULL;) {
    g_autofree char *path = g_build_filename (fixture->folder, name, NULL);
    g_assert_cmpint (g_remove (path), ==, 0);
  }
  g_assert_cmpint (g_rmdir (fixture->folder), ==, 0);
  g_free (fixture->folder);
}

static guint
count_files (const Fixture *fixture)
{
  g_autoptr (GDir) dir = g_dir_open (fixture->folder, 0, NULL);
  guint n = 0;
  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static GBytes *
write_and_read (const Fixture *fixture, const char *name, gsize n_pages)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (fixture->folder, name, NULL);
  char *contents;
  gsize length;
  g_assert_true (lb_picture_write (path, 200, 100, n_pages, "Plan", draw_cb, NULL, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &contents, &length, &error));
  return g_bytes_new_take (contents, length);
}

static void
test_formats (Fixture *fixture, gconstpointer data)
{
  static const struct
  {
    const char *name, *start;
  } CASES[] = { { "a.png", "\x89PNG" },
                { "a.svg", "<?xml" },
                { "a.pdf", "%PDF" },
                { "B.PDF", "%PDF" } };
  for (gsize i = 0; i < G_N_ELEMENTS (CASES); i++) {
    g_autoptr (GBytes) bytes = write_and_read (fixture, CASES[i].name, 1);
    gsize length;
    const char *const start = g_bytes_get_data (bytes, &length);
    g_assert_cmpuint (length, >, 200);
    g_assert_cmpmem (start, strlen (CASES[i].start), CASES[i].start, strlen (CASES[i].start));
  }
  /* PNG header: width and height, big-endian, twice the points. */
  g_autoptr (GBytes) png = write_and_read (fixture, "a.png", 1);
  const guchar *const header = g_bytes_get_data (png, NULL);
  g_assert_cmpint (header[18] << 8 | header[19], ==, 400);
  g_assert_cmpint (header[22] << 8 | header[23], ==, 200);
  /* Nothing beside the pictures is left behind. */
  g_assert_cmpuint (count_files (fixture), ==, G_N_ELEMENTS (CASES));
}

static void
test_same_bytes_twice (Fixture *fixture, gconstpointer data)
{
  static const char *const NAMES[] = { "a.png", "a.svg", "a.pdf" };
  for (gsize i = 0; i < G_N_ELEMENTS (NAMES); i++) {
    g_autoptr (GBytes) first = write_and_read (fixture, NAMES[i], 1);
    g_autoptr (GBytes) second = write_and_read (fixture, NAMES[i], 1);
    if (!g_bytes_equal (first, second))
      g_test_message ("%s differs", NAMES[i]);
    g_assert_true (g_bytes_equal (first, second));
  }
}

static void
test_pages (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) bytes = write_and_read (fixture, "three.pdf", 3);
  g_autoptr (GBytes) one = write_and_read (fixture, "one.pdf", 1);
  g_assert_cmpuint (g_bytes_get_size (bytes), >, g_bytes_get_size (one));
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (fixture->folder, "three.png", NULL);
  g_assert_false (lb_picture_write (path, 200, 100, 3, NULL, draw_cb, NULL, &error));
  g_assert_error (error, LB_DRAW_ERROR, LB_DRAW_ERROR_FORMAT);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

static void
test_unknown_ending (Fixture *fixture, gconstpointer data)
{
  static const char *const NAMES[] = { "plan.gif", "plan", "pdf", "plan.pdf.txt" };
  for (gsize i = 0; i < G_N_ELEMENTS (NAMES); i++) {
    g_autoptr (GError) error = NULL;
    g_autofree char *path = g_build_filename (fixture->folder, NAMES[i], NULL);
    g_assert_false (lb_picture_write (path, 200, 100, 1, NULL, draw_cb, NULL, &error));
    g_assert_error (error, LB_DRAW_ERROR, LB_DRAW_ERROR_FORMAT);
    g_assert_nonnull (strstr (error->message, NAMES[i]));
  }
  g_assert_cmpuint (count_files (fixture), ==, 0);
}

static void
test_no_such_folder (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (fixture->folder, "missing", "plan.pdf", NULL);
  g_assert_false (lb_picture_write (path, 200, 100, 1, NULL, draw_cb, NULL, &error));
  g_assert_error (error, LB_DRAW_ERROR, LB_DRAW_ERROR_WRITE);
  g_assert_nonnull (strstr (error->message, "plan.pdf"));
}

/* What was there before is kept, to the byte, when the new picture cannot be drawn. */
static void
test_old_file_kept (Fixture *fixture, gconstpointer data)
{
  static const char *const NAMES[] = { "a.png", "a.svg", "a.pdf" };
  for (gsize i = 0; i < G_N_ELEMENTS (NAMES); i++) {
    g_autoptr (GBytes) before = write_and_read (fixture, NAMES[i], 1);
    g_autoptr (GError) error = NULL, read_error = NULL;
    g_autofree char *path = g_build_filename (fixture->folder, NAMES[i], NULL);
    g_autofree char *after = NULL;
    gsize length;
    g_assert_false (lb_picture_write (path, 200, 100, 1, NULL, fail_cb, NULL, &error));
    g_assert_error (error, LB_DRAW_ERROR, LB_DRAW_ERROR_WRITE);
    g_assert_true (g_file_get_contents (path, &after, &length, &read_error));
    g_assert_cmpmem (after, length, g_bytes_get_data (before, NULL), g_bytes_get_size (before));
  }
}

/* Large text is larger, wrapped text is narrower and taller, and measuring is showing. */
static void
test_text (Fixture *fixture, gconstpointer data)
{
  cairo_surface_t *const surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 100, 100);
  cairo_t *const cr = cairo_create (surface);
  LbVoice large = LB_VOICE_PLAIN;
  large.scale = 2;
  double width, height, large_width, large_height, wrapped_width, wrapped_height;
  const char *const text = "umbilical and leads to the north";
  lb_text_measure (cr, &LB_VOICE_PLAIN, text, 10, FALSE, 0, &width, &height);
  lb_text_measure (cr, &large, text, 10, FALSE, 0, &large_width, &large_height);
  lb_text_measure (cr, &LB_VOICE_PLAIN, text, 10, FALSE, 60, &wrapped_width, &wrapped_height);
  g_assert_cmpfloat_with_epsilon (large_width, 2 * width, width * 0.01);
  g_assert_cmpfloat_with_epsilon (large_height, 2 * height, height * 0.05);
  g_assert_cmpfloat (wrapped_width, <=, 60);
  g_assert_cmpfloat (wrapped_height, >, 1.9 * height);
  g_assert_cmpfloat (lb_text_show (cr, &LB_VOICE_PLAIN, text, 10, FALSE, LB_ALIGN_END, 90, 5, 60),
                     ==, wrapped_height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/picture/formats", test_formats);
  ADD ("/picture/same-bytes-twice", test_same_bytes_twice);
  ADD ("/picture/pages", test_pages);
  ADD ("/picture/unknown-ending", test_unknown_ending);
  ADD ("/picture/no-such-folder", test_no_such_folder);
  ADD ("/picture/old-file-kept", test_old_file_kept);
  ADD ("/picture/text", test_text);
#undef ADD
  return g_test_run ();
}
