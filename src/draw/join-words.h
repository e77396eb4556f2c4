/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/join-preview.h"

G_BEGIN_DECLS

/* What a join would bring, in words: the same in the window and the shell. Returned strings are to be
 * freed. */

/* “New: 2 shifts, 34 entries, 3 facts and settings.”, or that nothing is. */
char *lb_join_news_text (const LbJoinPreview *preview);

/* A shift of the joined ledger that gets entries: “Tue 14 Jul 2026, night: 24 entries”. */
char *lb_join_shift_text (const LbJoinPreview *preview, guint shift);

/* A warning when the other computer's clock was ahead by more than a day, NULL otherwise. */
char *lb_join_ahead_text (const LbJoinPreview *preview, gint64 now_us);

G_END_DECLS
