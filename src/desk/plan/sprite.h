/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

/* A small picture that is laid over an ARGB32 image many times a frame: kept as runs of covered
 * pixels, so that what is clear costs nothing and what is solid is copied. */
typedef struct _LbSprite LbSprite;

/**
 * lb_sprite_new:
 * @image: an ARGB32 image surface; not kept
 * @origin_x: the pixel of @image that lb_sprite_blit() puts at its place
 */
LbSprite *lb_sprite_new (cairo_surface_t *image, int origin_x, int origin_y);
void lb_sprite_free (LbSprite *sprite);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbSprite, lb_sprite_free)

/* Pixels of an ARGB32 image, premultiplied as cairo keeps them; @stride in pixels. */
typedef struct
{
  guint32 *pixels;
  int stride, width, height;
} LbPixels;

/* Lays the sprite over @on with its origin at (@x, @y); what falls outside is left out. Rounds as
 * cairo's own compositing does. */
void lb_sprite_blit (const LbSprite *sprite, const LbPixels *on, int x, int y);

G_END_DECLS
