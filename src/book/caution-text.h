/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/caution-table.h"

#include <glib.h>

G_BEGIN_DECLS

/* Cautions of a crew's own, as they are written down: key, severity, when, words and source. */
#define LB_CAUTION_N_CELLS   5
#define LB_CAUTION_WORDS_MAX 300 /* characters: more is not read on a wet card */

/**
 * lb_caution_row_read:
 * @before: (array length=n_before): rows of the same list, whose keys are in use
 * @taken: (array length=n_taken) (nullable): likewise, as lb_caution_rows(), so that none of the
 *   built-in cautions can be weakened
 * @out: (out): borrows from @cells; untouched on failure
 * @out_column: (out): of the cell that is wrong, from 0; set on failure
 *
 * Returns: (transfer full) (nullable): what is wrong, %NULL for nothing
 */
char *lb_caution_row_read (const char *const cells[LB_CAUTION_N_CELLS],
                           const LbCautionRow *before,
                           gsize n_before,
                           const LbCautionRow *taken,
                           gsize n_taken,
                           LbCautionRow *out,
                           guint *out_column);

/**
 * lb_cautions_from_text:
 * @text: as the job's setting “cautions” holds them: a line a caution, tabs between the cells
 * @strings: keeps the rows' texts
 * @out_rows: (out): room for %LB_CAUTION_CREW_ROWS_MAX
 * @out_n: (out): untouched on failure
 *
 * Returns: %FALSE with %LB_BOOK_ERROR_REFUSED, naming line and column, when any of it is wrong: a list
 *   that is wrong in one place is taken in none
 */
gboolean lb_cautions_from_text (const char *text,
                                GStringChunk *strings,
                                LbCautionRow *out_rows,
                                gsize *out_n,
                                GError **error);

G_END_DECLS
