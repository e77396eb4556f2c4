/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The icons of the pages come twice: as SVG, for any size, and drawn at 16 px, in the toolkit's own
 * form for symbolic icons (gtk4-encode-symbolic-svg ICON.svg 16x16), so that a start needs no SVG
 * reader. Both have to be the same picture. */
#include <gdk-pixbuf/gdk-pixbuf.h>
#include <stdlib.h>
#include <string.h>

#define ICONS "/org/lastbent/Lastbent/icons"

/* What two versions of the SVG reader may differ by at an edge. */
#define ALPHA_MOST 24

static guint8
alpha_at (GdkPixbuf *picture, int x, int y)
{
  return gdk_pixbuf_read_pixels (
    picture)[y * gdk_pixbuf_get_rowstride (picture) + x * gdk_pixbuf_get_n_channels (picture) + 3];
}

static void
test_same (gconstpointer data)
{
  const char *name = data;
  g_autofree char *svg_path = g_strconcat (ICONS "/scalable/actions/", name, ".svg", NULL);
  g_autofree char *png_path = g_strconcat (ICONS "/16x16/actions/", name, ".symbolic.png", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GdkPixbuf) svg = gdk_pixbuf_new_from_resource_at_scale (svg_path, 16, 16, TRUE,
                                                                     &error);
  g_assert_no_error (error);
  g_autoptr (GdkPixbuf) png = gdk_pixbuf_new_from_resource (png_path, &error);
  guint n_drawn = 0;

  g_assert_no_error (error);
  g_assert_cmpint (gdk_pixbuf_get_width (png), ==, 16);
  g_assert_cmpint (gdk_pixbuf_get_height (png), ==, 16);
  g_assert_true (gdk_pixbuf_get_has_alpha (png));
  for (int y = 0; y < 16; y++) {
    for (int x = 0; x < 16; x++) {
      g_assert_cmpint (abs (alpha_at (svg, x, y) - alpha_at (png, x, y)), <=, ALPHA_MOST);
      n_drawn += alpha_at (png, x, y) > 0;
    }
  }
  g_assert_cmpuint (n_drawn, >, 0);
}

int
main (int argc, char *argv[])
{
  g_autoptr (GError) error = NULL;

  g_test_init (&argc, &argv, NULL);

  g_auto (GStrv) files = g_resources_enumerate_children (ICONS "/16x16/actions", 0, &error);
  g_assert_no_error (error);
  for (gsize i = 0; files[i] != NULL; i++) {
    char *name = g_strndup (files[i], strlen (files[i]) - strlen (".symbolic.png"));
    g_autofree char *path = g_strconcat ("/icons/", name, NULL);

    g_test_add_data_func_full (path, name, test_same, g_free);
  }

  return g_test_run ();
}
