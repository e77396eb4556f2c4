/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * lb_demo_file_ready:
 * @folder: where demos are kept; made when it is not there
 * @out_is_second: (out): whether it was made now because what was kept could not be opened
 *
 * The demo kept in @folder when it can be opened. Where none is kept, or what is kept can be
 * opened no more (damaged, or of another version), a new one is made under the next free name:
 * nothing is ever written over or deleted. Takes a while; may be called on any thread.
 *
 * Returns: (transfer full): the file, or %NULL with an error
 */
GFile *lb_demo_file_ready (const char *folder, gboolean *out_is_second, GError **error);

G_END_DECLS
