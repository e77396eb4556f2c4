/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/finding.h"
#include "draw/picture-text.h"

G_BEGIN_DECLS

/* What does not fit together, in words: the same in the window, the shell and on paper. */

/* What is wrong, with the pile or the dive it is about: “G7 is said to be severed, but 3 bars are
 * left.” To be freed. */
char *lb_finding_text (const LbVoice *voice,
                       const LbLedger *ledger,
                       const LbFold *fold,
                       const LbFinding *finding);

/* And what to do: “Record the bars, or take “severed” back.” Translated; not to be freed. */
const char *lb_finding_advice (LbFindingKind kind);

/* “Answered: three bars were rusted through”; NULL while it is open. To be freed. */
char *lb_finding_answer_text (const LbFinding *finding);

G_END_DECLS
