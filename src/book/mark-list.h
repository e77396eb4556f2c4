/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"

G_BEGIN_DECLS

/**
 * lb_mark_list_read:
 * @text: marks with commas or semicolons between them, and ranges of two marks with “to” (in any
 *   of the program's languages), an en dash or two dots between: "G7", "C3 to C9, D4", "A2..F2"
 *
 * The end of a range may leave out what stands before its number: "C3..9".
 *
 * The piles that a line of the shift's record is about. The two ends of a range differ in one number
 * or in one letter; of the marks between, those that the job has are taken, from the first end to the
 * last. A pile is taken once, however often it is named.
 *
 * Returns: (element-type guint) (nullable): indices of piles, as named, at least one; %NULL with a
 *   sentence for the first that is no pile or no range
 */
GArray *lb_mark_list_read (const LbFold *fold, const char *text, GError **error);

/**
 * lb_mark_list_next:
 *
 * Returns: the pile after @pile in its bent, in the order of the job's list, that is not out; -1 for none
 */
int lb_mark_list_next (const LbFold *fold, guint pile);

G_END_DECLS
