/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

#define LB_DRAW_ERROR (lb_draw_error_quark ())

typedef enum {
  LB_DRAW_ERROR_FORMAT, /* the name's ending is none of .png .svg .pdf */
  LB_DRAW_ERROR_WRITE,
} LbDrawError;

GQuark lb_draw_error_quark (void);

typedef void (*LbPictureFunc) (cairo_t *cr, gsize page, double width, double height, gpointer data);

/**
 * lb_picture_write:
 * @path: ends in .png, .svg or .pdf; replaced only when the new one is whole
 * @width: points (px at scale 1 in a PNG, which is written at twice that)
 * @n_pages: over 1 only in a PDF
 * @title: (nullable): PDF title
 *
 * The same input gives the same bytes: no dates of its own (SOURCE_DATE_EPOCH is read by the
 * caller, never here).
 */
gboolean lb_picture_write (const char *path,
                           double width,
                           double height,
                           gsize n_pages,
                           const char *title,
                           LbPictureFunc func,
                           gpointer data,
                           GError **error);

G_END_DECLS
