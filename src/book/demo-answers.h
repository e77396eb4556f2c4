/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"

G_BEGIN_DECLS

/**
 * lb_demo_answer_findings:
 * @record: of this book; it is read on
 * @like: of the entries to record
 *
 * What the superintendent says at the end of a shift to what does not fit together in it.
 */
gboolean lb_demo_answer_findings (LbBook *book,
                                  LbLedger *record,
                                  const LbDraft *like,
                                  GError **error);

G_END_DECLS
