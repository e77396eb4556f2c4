/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/shift-account.h"
#include "draw/picture-text.h"
#include "trade/shift-words.h"

G_BEGIN_DECLS

/* A word that the record offers, as the screen speaks; any other as it was said. */
const char *lb_shift_word_name (LbShiftWords kind, const char *word);

/* The other way: a word that was typed as the screen speaks, as the file has it; any other as it is. */
const char *lb_shift_word_from_text (LbShiftWords kind, const char *text);

/* What a detail says, likewise. */
const char *lb_detail_value (const char *which, const char *said);

/* All details of an entry in one line: “Borne by: owner · What was done: …”; %NULL when it has none. To
 * be freed. */
char *lb_details_text (const LbLedger *ledger, const LbEntry *entry);

/**
 * lb_record_gaps_text:
 * @gaps: LbRecordGap
 * @dive: (nullable): the one asked about, %NULL for what its shift does not say
 *
 * Returns: (nullable): one sentence, to be freed; %NULL where nothing is missing
 */
char *lb_record_gaps_text (const GArray *gaps, const LbEntry *dive);

/* What is left and for how many shifts: “150 rods left: 4.7 shifts at 32 a shift, the mean of the last
 * 5”; or why it is not known. To be freed. */
char *lb_stock_text (const LbVoice *voice, const char *what, const LbStock *stock);

G_END_DECLS
