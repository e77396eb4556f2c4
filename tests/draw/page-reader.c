/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-reader.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

/* Text without any white space, since lines break where they like. */
static char *
page_squeeze (const char *text)
{
  GString *const squeezed = g_string_new (NULL);
  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at)) {
    const gunichar c = g_utf8_get_char (at);
    if (!g_unichar_isspace (c) && c != 0x0c)
      g_string_append_unichar (squeezed, c);
  }
  return g_string_free (squeezed, FALSE);
}

char *
page_to_text (LbPictureFunc func, LbPaper paper, gsize n_pages, gpointer data, const char *option)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext");
  if (program == NULL) {
    g_test_fail_printf ("pdftotext is missing: sh src/set-up test");
    return NULL;
  }
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("lb-pages-XXXXXX", &error);
  g_assert_no_error (error);
  g_autofree char *path = g_build_filename (folder, "page.pdf", NULL);
  double width, height;
  lb_paper_size (paper, &width, &height);
  lb_picture_write (path, width, height, n_pages, "page", func, data, &error);
  g_assert_no_error (error);
  char *arguments[] = { program, (char *) option, path, (char *) "-", NULL };
  char *text = NULL;
  int status;
  g_spawn_sync (NULL, arguments, NULL, G_SPAWN_DEFAULT, NULL, NULL, &text, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  g_remove (path);
  g_rmdir (folder);
  return text;
}

char *
page_read (LbPictureFunc func, LbPaper paper, gsize n_pages, gpointer data)
{
  g_autofree char *text = page_to_text (func, paper, n_pages, data, "-raw");
  return text != NULL ? page_squeeze (text) : NULL;
}

gboolean
page_has (const char *squeezed, const char *part)
{
  g_autofree char *wanted = page_squeeze (part);
  return strstr (squeezed, wanted) != NULL;
}

void
page_assert_has (const char *squeezed, const char *part)
{
  if (!page_has (squeezed, part))
    g_error ("the page does not say “%s”", part);
}

guint
page_count (const char *squeezed, const char *part)
{
  g_autofree char *wanted = page_squeeze (part);
  guint n = 0;
  for (const char *at = squeezed; (at = strstr (at, wanted)) != NULL; at += strlen (wanted))
    n++;
  return n;
}

void
page_assert_on_sheet (LbPictureFunc func, gsize page, LbPaper paper, gpointer data)
{
  cairo_surface_t *const ink = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *const cr = cairo_create (ink);
  double paper_w, paper_h, x, y, width, height;
  lb_paper_size (paper, &paper_w, &paper_h);
  func (cr, page, paper_w, paper_h, data);
  cairo_recording_surface_ink_extents (ink, &x, &y, &width, &height);
  g_assert_cmpfloat (x, >=, -0.01);
  g_assert_cmpfloat (y, >=, -0.01);
  /* Extents are whole units: one over is the paper's own fraction. */
  g_assert_cmpfloat (x + width, <=, ceil (paper_w));
  g_assert_cmpfloat (y + height, <=, ceil (paper_h));
  cairo_destroy (cr);
  cairo_surface_destroy (ink);
}

void
page_assert_grey (LbPictureFunc func, gsize page, LbPaper paper, gpointer data)
{
  double paper_w, paper_h;
  lb_paper_size (paper, &paper_w, &paper_h);
  const int width = (int) ceil (paper_w);
  const int height = (int) ceil (paper_h);
  const int margin = 23; /* but for half of a line on the very margin */
  cairo_surface_t *const image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *const cr = cairo_create (image);
  func (cr, page, width, height, data);
  cairo_surface_flush (image);
  const guchar *const pixels = cairo_image_surface_get_data (image);
  const int stride = cairo_image_surface_get_stride (image);
  guint n_dark = 0;
  for (int y = 0; y < height; y++) {
    for (int x = 0; x < width; x++) {
      const guint32 pixel = *(const guint32 *) (gconstpointer) (pixels + y * stride + 4 * x) &
                            0xffffff;
      g_assert_cmpuint (pixel & 0xff, ==, pixel >> 8 & 0xff);
      g_assert_cmpuint (pixel & 0xff, ==, pixel >> 16);
      if (x < margin || y < margin || x >= width - margin || y >= height - margin)
        g_assert_cmphex (pixel, ==, 0xffffff);
      n_dark += pixel < 0x808080;
    }
  }
  g_assert_cmpuint (n_dark, >, 1000);
  cairo_destroy (cr);
  cairo_surface_destroy (image);
}
