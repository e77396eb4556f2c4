/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/ledger.h"

G_BEGIN_DECLS

/**
 * lb_clock_from_text:
 * @text: "7:10", "07:10", "0710"; 24 hours, the site's time zone
 * @out_us: (out): UTC µs on @shift's day; the small hours of a night shift are the day after
 *
 * Refuses what is no time of day with %LB_BOOK_ERROR_REFUSED.
 */
gboolean lb_clock_from_text (const LbShift *shift,
                             const char *text,
                             gint64 *out_us,
                             GError **error);

/* "07:10" in the site's time zone, "" for 0. */
char *lb_clock_to_text (gint64 us);

/* Today as a Julian day, in the site's time zone. */
guint32 lb_clock_today (void);

G_END_DECLS
