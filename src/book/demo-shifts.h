/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"

G_BEGIN_DECLS

/**
 * lb_demo_shifts_record:
 * @book: with the demo's piles in it, inside lb_book_begin()
 * @ledger: @book's
 *
 * Thirty day shifts of an invented crew that learns.
 */
gboolean lb_demo_shifts_record (LbBook *book, const LbLedger *ledger, GError **error);

G_END_DECLS
