/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/caution-table.h"

#include <glib.h>

G_BEGIN_DECLS

/* Cautions read from a list with the columns key, severity, when, words and source: a crew's own,
 * beside those that are built in (data/cautions.csv shows them). */

typedef struct _LbCrewCautions LbCrewCautions;

/**
 * lb_crew_cautions_from_csv:
 * @text: UTF-8; any delimiter of a list
 * @length: in bytes
 * @taken: (array length=n_taken) (nullable): rows whose keys are in use, as lb_caution_rows(); a list
 *   that names one of them is refused, so that none of the built-in cautions can be weakened
 *
 * Returns: (nullable): %NULL with %LB_EXCHANGE_ERROR, naming line and column, when any row cannot be
 *   taken: of a list that is wrong in one place nothing is taken
 */
LbCrewCautions *lb_crew_cautions_from_csv (const char *text,
                                           gsize length,
                                           const LbCautionRow *taken,
                                           gsize n_taken,
                                           GError **error);

void lb_crew_cautions_free (LbCrewCautions *list);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbCrewCautions, lb_crew_cautions_free)

/* As they stand in the list; their texts live as long as it does. Words and sources are the crew's own
 * and have no translation. */
const LbCautionRow *lb_crew_cautions_rows (const LbCrewCautions *list, gsize *out_n);

/* The same as the job's setting “cautions” holds it, to be freed. */
char *lb_crew_cautions_to_text (const LbCrewCautions *list);

G_END_DECLS
