/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book-error.h"
#include "book/ledger.h"

#include <gio/gio.h>
#include <math.h>

G_BEGIN_DECLS

/* An open job file. Not for two threads at once; open one each (the file copes). */
typedef struct _LbBook LbBook;

typedef enum {
  LB_BOOK_READ,  /* never changes the file */
  LB_BOOK_WRITE, /* falls back to reading, see lb_book_is_read_only() */
} LbBookMode;

#define LB_BOOK_SUFFIX ".lastbent"

/**
 * lb_book_create:
 * @path: must not exist
 * @name: the job's name
 */
LbBook *lb_book_create (const char *path, const char *name, GError **error);

/**
 * lb_book_create_fixed:
 * @tag: stands at the head of every id this book makes: 1 to 12 of a–z and 0–9
 * @now_us: the clock, see lb_book_set_now()
 *
 * As lb_book_create(), with nothing in the file that comes from chance or the clock, so that the
 * same calls make the same file everywhere. For made-up jobs only: two books that share a tag
 * share ids.
 */
LbBook *lb_book_create_fixed (const char *path,
                              const char *name,
                              const char *tag,
                              gint64 now_us,
                              GError **error);

/* What the clock says from now on (UTC µs), where a draft has no at_us and for shifts that are
 * opened; 0 for the real clock. */
void lb_book_set_now (LbBook *book, gint64 now_us);

/**
 * lb_book_open:
 *
 * Opens by the hardened sequence of docs/file-format.md: a file that is foreign, newer, damaged
 * or hostile is refused with its own LbBookError code and is not changed.
 */
LbBook *lb_book_open (const char *path, LbBookMode mode, GError **error);

/**
 * lb_book_open_and_read:
 * @out_ledger: (out): untouched on failure
 *
 * lb_book_open() and lb_book_read() in one, in less time where there are two processors: the file
 * is checked by one thread and read by another, and nothing is given out that did not pass.
 */
LbBook *lb_book_open_and_read (const char *path,
                               LbBookMode mode,
                               GCancellable *cancellable,
                               LbLedger **out_ledger,
                               GError **error);
void lb_book_close (LbBook *book);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbBook, lb_book_close)

const char *lb_book_get_path (const LbBook *book);
gboolean lb_book_is_read_only (const LbBook *book);

/* The whole ledger. */
LbLedger *lb_book_read (LbBook *book, GCancellable *cancellable, GError **error);

/**
 * lb_book_read_on:
 * @out_changed: (out): whether anything was added
 *
 * Adds what was stored since, by this or another program, to @ledger. Costs next to nothing
 * when there is nothing new; meant to be asked several times a second. Refuses with
 * %LB_BOOK_ERROR_DISK when the file no longer holds what @ledger was read from, because a copy
 * was put back over it or what was read before lb_book_roll_back() is gone.
 */
gboolean lb_book_read_on (LbBook *book, LbLedger *ledger, gboolean *out_changed, GError **error);

/* An entry to be recorded: the ledger's fields without those the book fills in. */
typedef struct
{
  LbEntryKind kind;
  const char *pile_id;  /* NULL for none */
  const char *shift_id; /* NULL for none; facts and settings have none */
  const char *who;      /* NULL for none */
  const char *what;
  LbBarSet bars;
  guint count;
  double amount; /* NAN for none */
  gint64 start_us, end_us, up_us;
  const char *note;
  const char
    *of;        /* act taken back; of a fact or setting, the act it is said in view of, NULL for the
                     last one (lb_drafts_know()) */
  gint64 at_us; /* 0 for now */
} LbDraft;

#define LB_DRAFT_INIT(entry_kind) ((LbDraft){ .kind = (entry_kind), .amount = NAN })

/**
 * lb_book_record:
 * @out_act: (out) (optional): id of the act, to be freed
 *
 * Stores all of @drafts as one act in one durable transaction, or none. When it returns %TRUE
 * they are on the disk.
 */
gboolean lb_book_record (LbBook *book,
                         const LbDraft *drafts,
                         gsize n_drafts,
                         char **out_act,
                         GError **error);

/* Many acts and shifts as one transaction: what is recorded between lb_book_begin() and
 * lb_book_commit() is on the disk when the latter returns %TRUE, all of it or none. No other
 * program can write meanwhile. An act refused in between leaves the others as they are. */
gboolean lb_book_begin (LbBook *book, GError **error);
gboolean lb_book_commit (LbBook *book, GError **error);
void lb_book_roll_back (LbBook *book);

/* Opens the shift of a day and watch, or finds it when it is open; @out_id to be freed. */
gboolean lb_book_open_shift (LbBook *book,
                             guint32 day,
                             const char *watch,
                             const char *who,
                             char **out_id,
                             GError **error);

/**
 * lb_book_add_piles:
 * @piles: marks must be new to the job and differ among themselves (any case); the ids are
 *   ignored, the book gives its own
 * @progress: (nullable): called now and then with how many are in
 *
 * One transaction: all or none; cancelling leaves the file as it was.
 */
gboolean lb_book_add_piles (LbBook *book,
                            const LbPile *piles,
                            gsize n_piles,
                            void (*progress) (gsize done, gsize total, gpointer data),
                            gpointer data,
                            GCancellable *cancellable,
                            GError **error);

/* A whole, consistent copy at @path, durable before it appears there; @path must not exist. */
gboolean lb_book_copy_to (LbBook *book, const char *path, GError **error);

/* What lb_book_open() checks and more (every reference, every value's range), one line a finding
 * into @out_lines (to be freed with g_strfreev()). %FALSE only when it cannot be checked. */
gboolean lb_book_check (LbBook *book, char ***out_findings, GError **error);

G_END_DECLS
