/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/caution-table.h"

#include <glib.h>

G_BEGIN_DECLS

/* Cautions read from a list with the columns key, severity, when, words and source: a crew's own,
 * beside those that are built in (data/cautions.csv shows them). */
#define LB_CAUTION_LIST_ROWS_MAX  LB_CAUTION_CREW_ROWS_MAX
#define LB_CAUTION_LIST_WORDS_MAX 300 /* characters: more is not read on a wet card */

typedef struct _LbCautionList LbCautionList;

/**
 * lb_caution_list_from_csv:
 * @text: UTF-8; any delimiter of a list
 * @length: in bytes
 * @taken: (array length=n_taken) (nullable): rows whose keys are in use, as lb_caution_rows(); a list
 *   that names one of them is refused, so that none of the built-in cautions can be weakened
 *
 * Returns: (nullable): %NULL with %LB_EXCHANGE_ERROR, naming line and column, when any row cannot be
 *   taken: of a list that is wrong in one place nothing is taken
 */
LbCautionList *lb_caution_list_from_csv (const char *text,
                                         gsize length,
                                         const LbCautionRow *taken,
                                         gsize n_taken,
                                         GError **error);

void lb_caution_list_free (LbCautionList *list);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbCautionList, lb_caution_list_free)

/* As they stand in the list; their texts live as long as it does. Words and sources are the crew's own
 * and have no translation. */
const LbCautionRow *lb_caution_list_rows (const LbCautionList *list, gsize *out_n);

G_END_DECLS
