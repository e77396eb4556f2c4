/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Texts that all live as long as the pool: a GStringChunk whose blocks grow with it, the large ones
 * in large pages. */
typedef struct _LbTextPool LbTextPool;

LbTextPool *lb_text_pool_new (void);
void lb_text_pool_free (LbTextPool *pool);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbTextPool, lb_text_pool_free)

/* A copy of @text; of its first @n bytes, with a NUL after them. */
const char *lb_text_pool_add (LbTextPool *pool, const char *text);
const char *lb_text_pool_add_bytes (LbTextPool *pool, const char *text, gsize n);

/* The same copy each time for the same text. */
const char *lb_text_pool_add_once (LbTextPool *pool, const char *text);

G_END_DECLS
