/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"

G_BEGIN_DECLS

/**
 * lb_demo_record_checks:
 * @like: with the shift, the pile and when it is said
 * @left_us: when the dive left the surface
 *
 * What the demo's crew ticked before a dive, on the card of a pile that leans or not; @left_open: a
 * number that says which check it forgot, none where it has none of that number.
 */
gboolean lb_demo_record_checks (LbBook *book,
                                const LbDraft *like,
                                gint64 left_us,
                                gboolean leans,
                                guint left_open,
                                GError **error);

G_END_DECLS
