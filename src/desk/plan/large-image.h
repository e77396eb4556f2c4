/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

/* An ARGB32 image of @width by @height px for a whole view, in large pages of memory where the
 * kernel has them: touching a view's millions of pixels for the first time, page by page, can cost
 * more than drawing them. Its pixels are not cleared. */
cairo_surface_t *lb_large_image_new (int width, int height);
