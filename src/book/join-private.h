/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book-private.h"
#include "book/join.h"
#include "book/packet.h"

G_BEGIN_DECLS

/* Which rows of a ledger go into a packet: all piles, and of these one byte each. Whatever a chosen
 * row refers to is chosen. */
typedef struct
{
  guint8 *shifts;  /* by index */
  guint8 *entries; /* by number less one */
} LbJoinChoice;

/* packet-choice.c: %FALSE when no shift lies in @span. */
gboolean lb_join_choice_init (LbJoinChoice *choice,
                              const LbLedger *ledger,
                              const LbPacketSpan *span);
void lb_join_choice_clear (LbJoinChoice *choice);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LbJoinChoice, lb_join_choice_clear)

/* join.c: as lb_join_plan(), of what is chosen. */
LbJoinPlan *lb_join_plan_chosen (const LbLedger *into,
                                 const LbLedger *from,
                                 const LbJoinChoice *choice,
                                 GError **error);

typedef struct
{
  LbProgress tell; /* may be NULL */
  gpointer data;
  GCancellable *cancellable;
} LbJoinWatch;

/* join-book.c: the rows that were planned into an open transaction. @source is the book the plan's
 * ledger was read from. */
gboolean lb_book_store_plan (LbBook *book,
                             const LbJoinPlan *plan,
                             LbBook *source,
                             const LbJoinWatch *watch,
                             GError **error);
LbJoined lb_join_plan_count (const LbJoinPlan *plan);

G_END_DECLS
