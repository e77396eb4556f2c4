/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* What goes from one crew's job file to another's: a part of its rows, in a file with the same tables
 * (docs/file-format.md, "Packets"). */

#define LB_PACKET_SUFFIX ".lastpack"

/* The shifts that go: those of the days from one to the other. */
typedef struct
{
  guint32 first_day, last_day;
  const char *watch; /* "day" or "night" only; NULL for both */
} LbPacketSpan;

#define LB_PACKET_SPAN_ALL ((LbPacketSpan){ .first_day = 0, .last_day = G_MAXUINT32 })

/* What went into a packet, or what a join added. */
typedef struct
{
  guint n_piles, n_shifts, n_entries;
} LbJoined;

/* How far something has come: @total is what there is to do. Called from the thread that does it. */
typedef void (*LbProgress) (gsize done, gsize total, gpointer data);

/**
 * lb_packet_write:
 * @book: only read
 * @who: who sends it, as a role or initials; "" when not said
 * @path: must not exist
 * @out_sent: (out) (optional): what is in it
 *
 * Writes a packet: all piles, all that belongs to no shift (facts, settings), the shifts of @span,
 * and whatever those refer to; whole acts only. Refuses a span in which there is no shift. It is on
 * the disk when this returns %TRUE; before that, and when it is cancelled, there is nothing at @path.
 */
gboolean lb_packet_write (LbBook *book,
                          const LbPacketSpan *span,
                          const char *who,
                          const char *path,
                          LbJoined *out_sent,
                          LbProgress progress,
                          gpointer data,
                          GCancellable *cancellable,
                          GError **error);

/* A packet, or another copy of the job file, open for reading. */
typedef struct
{
  LbBook *book;
  LbLedger *ledger;
  gboolean is_packet;
  char *who;      /* who sent it, "" when not said or for a copy */
  gint64 made_us; /* when, 0 for a copy */
} LbPacket;

/**
 * lb_packet_open:
 *
 * Opens and reads what somebody gave, as carefully as lb_book_open(). A file that is neither a packet
 * nor a job, newer, cut short, damaged or hostile is refused with its own LbBookError code.
 */
LbPacket *lb_packet_open (const char *path, GCancellable *cancellable, GError **error);
void lb_packet_free (LbPacket *packet);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbPacket, lb_packet_free)

/**
 * lb_book_join:
 * @ledger: read from @book; brought up to date first, but not beyond what was there before the join
 * @out_joined: (out) (optional)
 *
 * Joins what @book lacks of @packet (lb_join_plan()) in one durable transaction, or nothing. No other
 * program can write meanwhile.
 */
gboolean lb_book_join (LbBook *book,
                       LbLedger *ledger,
                       const LbPacket *packet,
                       LbJoined *out_joined,
                       LbProgress progress,
                       gpointer data,
                       GCancellable *cancellable,
                       GError **error);

G_END_DECLS
