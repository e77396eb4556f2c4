/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A damaged job file's bytes, where they can be worked on without touching it. */

/**
 * lb_raw_copy:
 * @name: of the damaged file, for messages
 * @out_n_unread: the bytes that the disk did not give are added; they are zeros in the copy
 *
 * The bytes of @from at @to, which must not exist.
 */
gboolean lb_raw_copy (const char *from,
                      const char *to,
                      const char *name,
                      guint64 *out_n_unread,
                      GError **error);

/* Takes back in @copy what a crash left half written in @damaged, by a copy of its journal, if there
 * is one and SQLite still can; if not, @copy stays as it is. */
void lb_raw_copy_roll_back (const char *damaged, const char *copy, const char *name);

G_END_DECLS
