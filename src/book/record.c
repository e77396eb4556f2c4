/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Recording: the only place that adds entries and shifts. Nothing is ever changed or deleted.
 *
 * An act is one transaction (BEGIN IMMEDIATE, inserts, COMMIT), or one savepoint inside the
 * transaction that lb_book_begin() opened. Invariants:
 *   1. When lb_book_record() returns TRUE outside of many, the act is on the disk.
 *   2. When it returns FALSE, nothing of the act is in the file, and no transaction of ours is
 *      left open.
 *   3. The act's id is the id of its first entry; its entries follow each other in seq.
 *   4. An act is later (at_us) than every act that was in the file before it, whatever the clock
 *      says, and its entries are of one moment: so the order in time, which is the same in every
 *      file (lb_ledger_entry()), has each act after all that its writer could know.
 *   5. A shift that was signed takes only acts that begin with a correction.
 *   6. A file that is no longer at its path (deleted, replaced) takes nothing: the act would
 *      go with it. It is looked at before the work and again just before it is committed, since
 *      a long list of piles takes its time. */
#include "book/book-private.h"

#include "trade/step.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <sys/stat.h>

gint64
lb_book_now (const LbBook *book)
{
  return book->now_us != 0 ? book->now_us : g_get_real_time ();
}

void
lb_book_next_id (LbBook *book, char id[LB_ID_MAX])
{
  g_snprintf (id, LB_ID_MAX, "%s-%" G_GUINT64_FORMAT, book->tag, ++book->n_ids);
}

void
lb_book_coming_id (const LbBook *book, char id[LB_ID_MAX])
{
  g_snprintf (id, LB_ID_MAX, "%s-%" G_GUINT64_FORMAT, book->tag, book->n_ids + 1);
}

static gboolean
check_may_record (LbBook *book, GError **error)
{
  struct stat facts;

  if (book->is_read_only) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_READ_ONLY,
                 _ ("“%s” is open for reading only; save a copy to record in"), book->name);
    return FALSE;
  }
  if (g_stat (book->path, &facts) != 0 || facts.st_dev != book->device ||
      facts.st_ino != book->inode) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK,
                 _ ("“%s” was moved, removed or replaced since it was opened; nothing was stored. "
                    "Put it back or open it where it is now"),
                 book->name);
    return FALSE;
  }
  return TRUE;
}

/* SQLite rolls some failures back by itself; then there is nothing left to do. Of what was rolled
 * back nothing was seen. */
static void
drop_transaction (LbBook *book)
{
  book->seen_seq = 0;
  if (!sqlite3_get_autocommit (book->db))
    lb_book_run (book, LB_SQL_ROLL_BACK, NULL);
}

gboolean
lb_book_begin (LbBook *book, GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (!book->is_in_many, FALSE);

  if (!check_may_record (book, error) || !lb_book_run (book, LB_SQL_BEGIN, error))
    return FALSE;
  book->is_in_many = TRUE;
  return TRUE;
}

gboolean
lb_book_commit (LbBook *book, GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (book->is_in_many, FALSE);

  book->is_in_many = FALSE;
  if (sqlite3_get_autocommit (book->db)) {
    book->seen_seq = 0;
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK,
                 _ ("The disk failed while “%s” was used; what was being done is not stored"),
                 book->name);
    return FALSE;
  }
  if (!check_may_record (book, error) || !lb_book_run (book, LB_SQL_COMMIT, error)) {
    drop_transaction (book);
    return FALSE;
  }
  return TRUE;
}

void
lb_book_roll_back (LbBook *book)
{
  g_return_if_fail (book != NULL);

  if (!book->is_in_many)
    return;
  book->is_in_many = FALSE;
  drop_transaction (book);
}

gboolean
lb_book_begin_act (LbBook *book, GError **error)
{
  if (!book->is_in_many)
    return check_may_record (book, error) && lb_book_run (book, LB_SQL_BEGIN, error);
  if (sqlite3_get_autocommit (book->db)) {
    /* A failure rolled the many back; going on would store the rest without the first. */
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK,
                 _ ("The disk failed while “%s” was used; what was being done is not stored"),
                 book->name);
    return FALSE;
  }
  return lb_book_run (book, LB_SQL_SAVEPOINT, error);
}

gboolean
lb_book_end_act (LbBook *book, gboolean keep, GError **error)
{
  if (!book->is_in_many) {
    if (keep && check_may_record (book, error) && lb_book_run (book, LB_SQL_COMMIT, error))
      return TRUE;
    drop_transaction (book);
    return FALSE;
  }
  if (sqlite3_get_autocommit (book->db))
    return FALSE;
  if (!keep) {
    book->seen_seq = 0;
    lb_book_run (book, LB_SQL_ROLL_BACK_TO, NULL);
  }
  return lb_book_run (book, LB_SQL_RELEASE, keep ? error : NULL) && keep;
}

/* The row that @id has in the table that @sql looks in; 0 with an error when there is none. */
static gint64
find_seq (LbBook *book, LbSql sql, const char *id, GError **error)
{
  sqlite3_stmt *statement = lb_book_sql (book, sql, error);
  gint64 seq = 0;

  if (statement == NULL)
    return 0;
  sqlite3_bind_text (statement, 1, id, -1, SQLITE_STATIC);

  const int rc = sqlite3_step (statement);
  if (rc == SQLITE_ROW)
    seq = sqlite3_column_int64 (statement, 0);
  else if (rc == SQLITE_DONE)
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 sql == LB_SQL_FIND_PILE ? _ ("The job has no pile with the id “%.60s”")
                                         : _ ("The job has no shift with the id “%.60s”"),
                 id);
  else
    lb_connection_fail (book->db, rc, book->name, error);
  sqlite3_reset (statement);
  return seq;
}

gboolean
lb_book_find_next (LbBook *book, gint64 *out_seq, GError **error)
{
  sqlite3_stmt *statement = lb_book_sql (book, LB_SQL_NEXT_ENTRY, error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, book->seen_seq);

  const int rc = sqlite3_step (statement);
  if (rc == SQLITE_ROW) {
    *out_seq = sqlite3_column_int64 (statement, 0);
    if (book->seen_seq == 0)
      book->latest_us = G_MININT64;
    if (sqlite3_column_type (statement, 1) != SQLITE_NULL)
      book->latest_us = MAX (book->latest_us, sqlite3_column_int64 (statement, 1));
    book->seen_seq = *out_seq - 1;
  } else {
    lb_connection_fail (book->db, rc, book->name, error);
  }
  sqlite3_reset (statement);
  return rc == SQLITE_ROW;
}

gint64
lb_book_next_time (const LbBook *book, gint64 said_us)
{
  const gint64 at_us = said_us != 0 ? said_us : lb_book_now (book);

  return at_us > book->latest_us ? at_us : book->latest_us + 1;
}

/* The act that a take-back names. */
static gboolean
find_act (LbBook *book, const char *id, gint64 *out_seq, gint64 *out_shift, GError **error)
{
  sqlite3_stmt *statement = lb_book_sql (book, LB_SQL_FIND_ACT, error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_text (statement, 1, id, -1, SQLITE_STATIC);

  const int rc = sqlite3_step (statement);
  gboolean is_found = FALSE;
  if (rc == SQLITE_DONE) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("There is no act “%.60s” that could be taken back"), id);
  } else if (rc != SQLITE_ROW) {
    lb_connection_fail (book->db, rc, book->name, error);
  } else if (g_strcmp0 ((const char *) sqlite3_column_text (statement, 2),
                        lb_entry_kind_name (LB_ENTRY_SEAL)) == 0)
  {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_SIGNED,
                 _ ("A signature cannot be taken back; correct the signed shift with a reason"));
  } else {
    *out_seq = sqlite3_column_int64 (statement, 0);
    *out_shift = sqlite3_column_int64 (statement, 1);
    is_found = TRUE;
  }
  sqlite3_reset (statement);
  return is_found;
}

gboolean
lb_book_find_field (LbBook *book, const char *what, gint64 pile, gint64 *out_act, GError **error)
{
  sqlite3_stmt *statement = lb_book_sql (book, LB_SQL_FIND_FIELD, error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_text (statement, 1, what, -1, SQLITE_STATIC);
  if (pile != 0)
    sqlite3_bind_int64 (statement, 2, pile);
  else
    sqlite3_bind_null (statement, 2);

  const int rc = sqlite3_step (statement);
  *out_act = rc == SQLITE_ROW ? sqlite3_column_int64 (statement, 0) : 0;
  if (rc != SQLITE_ROW && rc != SQLITE_DONE)
    lb_connection_fail (book->db, rc, book->name, error);
  sqlite3_reset (statement);
  return rc == SQLITE_ROW || rc == SQLITE_DONE;
}

static gboolean
is_signed (LbBook *book, gint64 shift, gboolean *out_is_signed, GError **error)
{
  sqlite3_stmt *statement = lb_book_sql (book, LB_SQL_IS_SIGNED, error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, shift);

  const int rc = sqlite3_step (statement);
  *out_is_signed = rc == SQLITE_ROW && sqlite3_column_int (statement, 0) != 0;
  if (rc != SQLITE_ROW)
    lb_connection_fail (book->db, rc, book->name, error);
  sqlite3_reset (statement);
  return rc == SQLITE_ROW;
}

static gboolean
check_unsigned (LbBook *book, gint64 shift, GError **error)
{
  gboolean is_shift_signed = FALSE;

  if (shift == 0)
    return TRUE;
  if (!is_signed (book, shift, &is_shift_signed, error))
    return FALSE;
  if (is_shift_signed)
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_SIGNED,
                 _ ("This shift is signed; it is changed only by a correction that says why"));
  return !is_shift_signed;
}

/* Follows a take-back of take-backs to the act that is in the end taken or brought back: whether
 * that act may have renamed a pile, so that marks have to be compared again. Each step leads to
 * an earlier entry. */
static gboolean
touches_facts (LbBook *book, gint64 act, gboolean *out_touches, GError **error)
{
  for (gint64 before = G_MAXINT64; act > 0 && act < before;) {
    sqlite3_stmt *statement = lb_book_sql (book, LB_SQL_LOOK_AT_ACT, error);
    if (statement == NULL)
      return FALSE;
    sqlite3_bind_int64 (statement, 1, act);

    const int rc = sqlite3_step (statement);
    if (rc != SQLITE_ROW && rc != SQLITE_DONE) {
      lb_connection_fail (book->db, rc, book->name, error);
      sqlite3_reset (statement);
      return FALSE;
    }
    if (rc == SQLITE_ROW)
      *out_touches = sqlite3_column_int (statement, 0) != 0;
    before = act;
    act = rc == SQLITE_ROW ? sqlite3_column_int64 (statement, 1) : 0;
    sqlite3_reset (statement);
  }
  return TRUE;
}

/* What an entry refers to, as rows; 0 for none. */
typedef struct
{
  gint64 pile, shift, of;
  gint64 of_shift; /* of the act taken back */
} References;

static gboolean
find_references (LbBook *book, const LbDraft *draft, References *out, GError **error)
{
  if (draft->kind == LB_ENTRY_TAKE_BACK &&
      !find_act (book, draft->of, &out->of, &out->of_shift, error))
    return FALSE;
  if (draft->pile_id != NULL &&
      (out->pile = find_seq (book, LB_SQL_FIND_PILE, draft->pile_id, error)) == 0)
    return FALSE;
  if (draft->shift_id != NULL &&
      (out->shift = find_seq (book, LB_SQL_FIND_SHIFT, draft->shift_id, error)) == 0)
    return FALSE;
  if (draft->kind != LB_ENTRY_FACT && draft->kind != LB_ENTRY_SETTING)
    return TRUE;
  if (draft->of != NULL && *draft->of != '\0')
    return find_act (book, draft->of, &out->of, &out->of_shift, error);
  return lb_book_find_field (book, lb_draft_what (draft), out->pile, &out->of, error);
}

/* Where an entry stands in the file and in time. */
typedef struct
{
  gint64 seq, act;
  gint64 at_us;
  const char *id;
} Place;

static gboolean
insert_draft (LbBook *book,
              const LbDraft *draft,
              const References *references,
              const Place *place,
              GError **error)
{
  const LbEntry entry = {
    .seq = place->seq,
    .id = place->id,
    .at_us = place->at_us,
    .who = draft->who,
    .kind = draft->kind,
    .what = lb_draft_what (draft),
    .bars = draft->bars,
    .count = draft->count,
    .amount = draft->amount,
    .start_us = draft->start_us,
    .end_us = draft->end_us,
    .up_us = draft->up_us,
    .note = draft->note,
  };
  const LbEntryRows rows = {
    .act = place->act,
    .shift = references->shift,
    .pile = references->pile,
    .of = references->of,
  };

  return lb_book_insert_entry (book, &entry, &rows, error);
}

static gboolean
is_rename (const LbDraft *draft)
{
  LbFact fact;

  return draft->kind == LB_ENTRY_FACT && lb_fact_from_name (draft->what, &fact) &&
         fact == LB_FACT_MARK;
}

gboolean
lb_book_store_act (LbBook *book,
                   const LbDraft *drafts,
                   gsize n_drafts,
                   char act[LB_ID_MAX],
                   GError **error)
{
  const gboolean may_change_signed = drafts[0].kind == LB_ENTRY_CORRECTION;
  gboolean must_check_marks = FALSE;
  gint64 first = 0;
  char id[LB_ID_MAX];

  if (!lb_book_find_next (book, &first, error))
    return FALSE;

  const gint64 at_us = lb_book_next_time (book, drafts[0].at_us);
  for (gsize i = 0; i < n_drafts; i++) {
    References references = { 0 };
    gboolean renames = is_rename (&drafts[i]);

    if (!find_references (book, &drafts[i], &references, error) ||

        (drafts[i].kind == LB_ENTRY_TAKE_BACK &&
         !touches_facts (book, references.of, &renames, error)))
      return FALSE;
    if (!may_change_signed && (!check_unsigned (book, references.shift, error) ||
                               !check_unsigned (book, references.of_shift, error)))
      return FALSE;
    must_check_marks = must_check_marks || renames;
    lb_book_next_id (book, id);
    if (i == 0)
      g_strlcpy (act, id, LB_ID_MAX);

    const Place place = { .seq = first + (gint64) i, .act = first, .at_us = at_us, .id = id };
    if (!insert_draft (book, &drafts[i], &references, &place, error))
      return FALSE;
  }
  return !must_check_marks || lb_book_check_marks (book, error);
}

/* Apart from the correction that it may begin with, an act is one take-back, one seal, or neither. */
static gboolean
check_together (const LbDraft *drafts, gsize n_drafts, GError **error)
{
  const gsize first = drafts[0].kind == LB_ENTRY_CORRECTION ? 1 : 0;

  for (gsize i = first; i < n_drafts; i++) {
    const LbEntryKind kind = drafts[i].kind;

    if ((kind == LB_ENTRY_TAKE_BACK && (i != first || n_drafts != first + 1)) ||
        (kind == LB_ENTRY_SEAL && n_drafts != 1) || kind == LB_ENTRY_CORRECTION)
    {
      g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, _ ("“%s” is an act of its own"),
                   lb_entry_kind_name (kind));
      return FALSE;
    }
  }
  if (first == n_drafts) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, _ ("A correction corrects nothing"));
    return FALSE;
  }
  return TRUE;
}

static gboolean
check_drafts (const LbDraft *drafts, gsize n_drafts, GError **error)
{
  for (gsize i = 0; i < n_drafts; i++) {
    if (!lb_draft_check (&drafts[i], error))
      return FALSE;
  }
  return check_together (drafts, n_drafts, error);
}

gboolean
lb_book_record (LbBook *book, const LbDraft *drafts, gsize n_drafts, char **out_act, GError **error)
{
  char act[LB_ID_MAX];

  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (drafts != NULL && n_drafts > 0, FALSE);

  if (!check_drafts (drafts, n_drafts, error) || !lb_book_begin_act (book, error))
    return FALSE;

  const gboolean is_stored = lb_book_store_act (book, drafts, n_drafts, act, error);
  if (!lb_book_end_act (book, is_stored, is_stored ? error : NULL))
    return FALSE;
  if (out_act != NULL)
    *out_act = g_strdup (act);
  return TRUE;
}

/* The open shift's id, "" when there is none yet, %NULL on failure. */
static char *
find_shift_of_day (LbBook *book, guint32 day, const char *watch, GError **error)
{
  sqlite3_stmt *statement = lb_book_sql (book, LB_SQL_SHIFT_OF_DAY, error);
  char *id = NULL;

  if (statement == NULL)
    return NULL;
  sqlite3_bind_int64 (statement, 1, day);
  sqlite3_bind_text (statement, 2, watch, -1, SQLITE_STATIC);

  const int rc = sqlite3_step (statement);
  if (rc == SQLITE_ROW)
    id = g_strdup ((const char *) sqlite3_column_text (statement, 0));
  else if (rc == SQLITE_DONE)
    id = g_strdup ("");
  else
    lb_connection_fail (book->db, rc, book->name, error);
  sqlite3_reset (statement);
  return id;
}

static gboolean
check_shift (guint32 day, const char *watch, const char *who, GError **error)
{
  if (day < LB_DAY_LEAST || day > LB_DAY_MOST) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("The day lies outside the years 1900 to 2200"));
    return FALSE;
  }
  if (strcmp (watch, "day") != 0 && strcmp (watch, "night") != 0) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("A watch is “day” or “night”, not “%.40s”"), watch);
    return FALSE;
  }
  return lb_text_check (who, LB_SHORT_MAX, _ ("Who opens it"), error);
}

gboolean
lb_book_open_shift (LbBook *book,
                    guint32 day,
                    const char *watch,
                    const char *who,
                    char **out_id,
                    GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (watch != NULL, FALSE);
  g_return_val_if_fail (out_id != NULL, FALSE);

  if (!check_shift (day, watch, who, error) || !lb_book_begin_act (book, error))
    return FALSE;

  g_autofree char *id = find_shift_of_day (book, day, watch, error);
  gboolean is_stored = id != NULL;
  if (is_stored && *id == '\0') {
    char made[LB_ID_MAX];

    lb_book_next_id (book, made);
    const LbShift shift = { .id = made,
                            .day = day,
                            .watch = watch,
                            .opened_us = lb_book_now (book),
                            .who = who };
    is_stored = lb_book_insert_shift (book, &shift, error);
    g_free (id);
    id = g_strdup (made);
  }
  if (!lb_book_end_act (book, is_stored, is_stored ? error : NULL))
    return FALSE;
  *out_id = g_steal_pointer (&id);
  return TRUE;
}
