/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"

#include <sqlite3.h>
#include <sys/types.h>

G_BEGIN_DECLS

/* What the files of this room share and nobody else sees. */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (sqlite3, sqlite3_close_v2)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (sqlite3_stmt, sqlite3_finalize)

/* "Lbnt" and "Lbpk" read as big-endian numbers; the header of every SQLite file has room for one. */
#define LB_BOOK_APPLICATION_ID   0x4c626e74
#define LB_PACKET_APPLICATION_ID 0x4c62706b
#define LB_BOOK_FORMAT           2
#define LB_BOOK_FORMAT_OLDEST    1 /* that can be read */

#define LB_BOOK_PAGE_SIZE 8192

/* Longest texts the file takes, in characters. */
#define LB_ID_MAX    40
#define LB_SHORT_MAX 200
#define LB_NOTE_MAX  4000
#define LB_TABLE_MAX 100000 /* of a setting that holds a table */
#define LB_SEAL_MAX  900000 /* of a seal; plain ASCII */

/* Recorded times lie between these, 1900 and 2200, UTC µs; days the same, as in GDate. */
#define LB_TIME_LEAST G_GINT64_CONSTANT (-2208988800000000)
#define LB_TIME_MOST  G_GINT64_CONSTANT (7258118400000000)
#define LB_DAY_LEAST  693596u
#define LB_DAY_MOST   803169u

/* Statements kept ready for as long as the book is open. */
typedef enum {
  LB_SQL_BEGIN,
  LB_SQL_COMMIT,
  LB_SQL_ROLL_BACK,
  LB_SQL_SAVEPOINT,
  LB_SQL_RELEASE,
  LB_SQL_ROLL_BACK_TO,
  LB_SQL_LAST_SEQS,
  LB_SQL_INSERT_ENTRY,
  LB_SQL_INSERT_SHIFT,
  LB_SQL_INSERT_PILE,
  LB_SQL_PILE_ROW,
  LB_SQL_FIND_PILE,
  LB_SQL_FIND_SHIFT,
  LB_SQL_NEXT_ENTRY,
  LB_SQL_FIND_ACT,
  LB_SQL_LOOK_AT_ACT,
  LB_SQL_ENTRY_ID,
  LB_SQL_SHIFT_OF_DAY,
  LB_SQL_FIND_FIELD,
  LB_SQL_IS_SIGNED,
  LB_SQL_NOTE_SEALS,
} LbSql;

#define LB_N_SQL (LB_SQL_NOTE_SEALS + 1)

struct _LbBook
{
  sqlite3 *db;
  sqlite3_stmt *statements[LB_N_SQL];
  char *path; /* absolute */
  char *name; /* the file's, as people are told of it */
  gboolean is_read_only;
  gboolean is_in_many; /* between lb_book_begin() and lb_book_commit() */
  dev_t device;        /* which file it was when it was opened */
  ino_t inode;
  char tag[16]; /* head of the ids this book gives */
  guint64 n_ids;
  gint64 now_us; /* 0: the real clock */

  /* The latest at_us up to that row, for the next act to come after. */
  gint64 seen_seq;
  gint64 latest_us;
};

/* schema.c: what the tables are, and whether a file has just these. */
gboolean lb_schema_create (sqlite3 *db, guint32 application_id);
gboolean lb_schema_begin_file (sqlite3 *db, guint32 application_id); /* leaves a transaction open */
gboolean lb_schema_check (sqlite3 *db, const char *name, GError **error);
gboolean lb_schema_find_format (sqlite3 *db, const char *name, int *out_format, GError **error);

/* migrate.c: a file of an older format into one of ours, in one transaction, after a copy of it was
 * put beside it. */
gboolean lb_migrate (const char *path, const char *name, GError **error);

/* connection.c: one hardened connection, its statements, its errors. */
sqlite3 *lb_connection_open (const char *path, int flags, const char *name, GError **error);
void lb_connection_fail (sqlite3 *db, int rc, const char *name, GError **error);
sqlite3_stmt *lb_book_sql (LbBook *book, LbSql sql, GError **error);
void lb_bind_text (sqlite3_stmt *statement, int at, const char *text); /* NULL as "" */
gboolean lb_book_run (LbBook *book, LbSql sql, GError **error); /* a statement without rows */

/* file.c: files as the disk has them. */
typedef enum {
  LB_FILE_JOB = 1 << 0,
  LB_FILE_PACKET = 1 << 1,
} LbFileKind;

typedef struct
{
  LbFileKind kind;
  dev_t device;
  ino_t inode;
  gboolean is_writable; /* it and its folder */
} LbFileFacts;

gboolean lb_file_look (const char *path,
                       const char *name,
                       guint kinds, /* LbFileKind, those that are welcome */
                       LbFileFacts *out,
                       GError **error);
char *lb_file_partner (const char *path);
void lb_file_discard (const char *partner);
gboolean lb_file_publish (const char *partner, const char *path, GError **error);
gboolean lb_file_must_not_exist (const char *path, GError **error);

/* open.c */
LbBook *lb_book_new_for (sqlite3 *db, const char *path, gboolean is_read_only);
LbBook *lb_book_open_other (const char *path,
                            GCancellable *cancellable,
                            LbFileKind *out_kind,
                            LbLedger **out_ledger,
                            GError **error);

/* rows.c: one row, as it is stored. What an entry refers to, as rows; 0 for none. */
typedef struct
{
  gint64 act, shift, pile, of;
} LbEntryRows;

gboolean lb_book_insert_entry (LbBook *book,
                               const LbEntry *entry, /* its references are not looked at */
                               const LbEntryRows *rows,
                               GError **error);
gboolean lb_book_insert_shift (LbBook *book, const LbShift *shift, GError **error);
gboolean lb_book_copy_pile (LbBook *book, LbBook *from, gint64 row, GError **error);

/* read.c: whether two files of one job hold the same rows, told by the last of them; a job only
 * grows. %FALSE also when one of them cannot be read. */
gboolean lb_book_is_as_far (LbBook *book, LbBook *other);

/* record.c: one act's worth of transaction, also inside lb_book_begin(). */
gboolean lb_book_begin_act (LbBook *book, GError **error);
gboolean lb_book_end_act (LbBook *book, gboolean keep, GError **error);
gboolean lb_book_store_act (LbBook *book,
                            const LbDraft *drafts, /* checked, at least one */
                            gsize n_drafts,
                            char act[LB_ID_MAX], /* (out): its id */
                            GError **error);
gint64 lb_book_now (const LbBook *book);

/* The act that set a fact or setting last, as far as this file knows; 0 for none. */
gboolean lb_book_find_field (LbBook *book,
                             const char *what,
                             gint64 pile, /* 0 for none */
                             gint64 *out_act,
                             GError **error);

/* Inside a transaction: the number the next entry gets; and from then on the moment the next act
 * gets, @said_us or the clock's, but after all that the file holds. */
gboolean lb_book_find_next (LbBook *book, gint64 *out_seq, GError **error);
gint64 lb_book_next_time (const LbBook *book, gint64 said_us);
void lb_book_next_id (LbBook *book, char id[LB_ID_MAX]);
void lb_book_coming_id (const LbBook *book, char id[LB_ID_MAX]); /* which that will be */

/* draft.c: whether a draft can be true by itself, whatever the file holds. */
gboolean lb_draft_check (const LbDraft *draft, GError **error);

const char *lb_draft_what (const LbDraft *draft); /* as it is kept */

/* The draft an entry was recorded from. */
LbDraft lb_draft_of (const LbLedger *ledger, const LbEntry *entry);

gboolean lb_text_is_plain (const char *text);
gboolean lb_text_check (const char *text, glong most, const char *label, GError **error);
gboolean lb_number_from_setting (const char *text, double *out_value);

/* piles.c: whether a pile's facts lie within what the file takes. */
gboolean lb_pile_check_ranges (const LbPile *pile, GError **error);

/* ledger.c: filling it. */
const char *lb_ledger_keep (LbLedger *ledger, const char *text);     /* once for equal texts */
const char *lb_ledger_keep_new (LbLedger *ledger, const char *text); /* without looking */
const char *lb_ledger_keep_bytes (LbLedger *ledger, const char *text, gsize n); /* the same */
void lb_ledger_place_shifts (LbLedger *ledger);
void lb_ledger_place_entries (LbLedger *ledger, guint first);

/* piles.c: inside a transaction, whether the marks that its last act gave are nobody else's. */
gboolean lb_book_check_marks (LbBook *book, GError **error);

G_END_DECLS
