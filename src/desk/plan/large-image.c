/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/plan/large-image.h"

#include "book/large-room.h"

static const cairo_user_data_key_t pixels_key;

cairo_surface_t *
lb_large_image_new (int width, int height)
{
  const int stride = cairo_format_stride_for_width (CAIRO_FORMAT_ARGB32, width);
  const gsize size = (gsize) stride * (gsize) height;
  guchar *pixels = lb_large_room_new (size);
  cairo_surface_t *image;

  image = cairo_image_surface_create_for_data (pixels, CAIRO_FORMAT_ARGB32, width, height, stride);
  cairo_surface_set_user_data (image, &pixels_key, pixels, lb_large_room_free);
  return image;
}
