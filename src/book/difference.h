/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"

#include <glib.h>

G_BEGIN_DECLS

/* A fact of a pile, or a setting of the job, that two crews set to different values without knowing of
 * each other: two acts that stand, neither of which is reached from the other through `of`. */
typedef struct
{
  int pile;             /* -1 for a setting */
  const char *field;    /* the fact's name, or the setting's key */
  const LbEntry *other; /* the earlier one; entries borrowed from the ledger */
  const LbEntry *last;  /* the later one, which counts until somebody decides */
} LbDifference;

/**
 * lb_differences_new:
 *
 * All of them, LbDifference, by the moment of the later word; several for a field that more than two
 * crews set. Pure, and the same in every file.
 */
GArray *lb_differences_new (const LbLedger *ledger, const LbFold *fold);

/**
 * lb_drafts_know:
 * @drafts: LbDraft
 *
 * Facts and settings among @drafts are by somebody who sees what both crews said: appends and fills in
 * what makes an act that decides all that differs in those fields.
 */
void lb_drafts_know (GArray *drafts, const LbLedger *ledger, const LbFold *fold);

G_END_DECLS
