/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/plan/large-image.h"

#include <glib.h>
#include <sys/mman.h>

/* Of a large page on the machines that have one of this kind: Linux, admin-guide/mm/transhuge. */
#define LARGE_PAGE (2 * 1024 * 1024)

static const cairo_user_data_key_t pixels_key;

cairo_surface_t *
lb_large_image_new (int width, int height)
{
  const int stride = cairo_format_stride_for_width (CAIRO_FORMAT_ARGB32, width);
  const gsize size = (gsize) stride * (gsize) height;
  guchar *pixels = g_aligned_alloc (size, 1, LARGE_PAGE);
  cairo_surface_t *image;

#ifdef MADV_HUGEPAGE
  madvise (pixels, size, MADV_HUGEPAGE);
#endif
  image = cairo_image_surface_create_for_data (pixels, CAIRO_FORMAT_ARGB32, width, height, stride);
  cairo_surface_set_user_data (image, &pixels_key, pixels, g_aligned_free);
  return image;
}
