/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"

#include <glib.h>

G_BEGIN_DECLS

/* The demo: an invented wharf and thirty shifts of an invented crew, the same everywhere (fixed
 * seed, fixed dates; nothing of the clock or the machine). */
#define LB_DEMO_NAME "Tern Cove Cannery Wharf (demo)"

/**
 * lb_demo_job_create:
 * @path: must not exist
 *
 * Returns: the open book, or %NULL with an error and no file left.
 */
LbBook *lb_demo_job_create (const char *path, GError **error);

G_END_DECLS
