/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One connection to a job file: how it is hardened, the statements it keeps ready, and how what
 * SQLite says is told to people.
 *
 * Every connection, also one to a file of our own making, is opened the same way:
 *   1. SQLITE_DBCONFIG_DEFENSIVE on, TRUSTED_SCHEMA off, triggers and views off, double-quoted
 *      strings off: nothing that is stored in a file can act (SQLite documentation, "Defense
 *      Against The Dark Arts").
 *   2. Limits near what our own statements need.
 *   3. No memory mapping, cells checked as pages are read, foreign keys on.
 *   4. Rollback journal, deleted at each commit, with synchronous=EXTRA: like FULL, and the
 *      folder is synced after the journal is gone, so that an act that was acknowledged cannot be
 *      rolled back by a power cut.
 *   5. It waits up to two seconds for another program's lock. */
#include "book/book-private.h"

#include <glib/gi18n-lib.h>

#define BUSY_WAIT_MS 2000

static const struct
{
  int limit;
  int most;
} limits[] = {
  { SQLITE_LIMIT_LENGTH, 1000000 },     { SQLITE_LIMIT_SQL_LENGTH, 100000 },
  { SQLITE_LIMIT_COLUMN, 40 },          { SQLITE_LIMIT_EXPR_DEPTH, 40 },
  { SQLITE_LIMIT_COMPOUND_SELECT, 3 },  { SQLITE_LIMIT_VDBE_OP, 25000 },
  { SQLITE_LIMIT_FUNCTION_ARG, 8 },     { SQLITE_LIMIT_ATTACHED, 0 },
  { SQLITE_LIMIT_VARIABLE_NUMBER, 30 }, { SQLITE_LIMIT_TRIGGER_DEPTH, 1 },
};

#define PILE_COLUMNS                                                                     \
  "id, mark, mark_key, bent, row, note, x_m, y_m, shape, width_m, void_m, bar, n_bars, " \
  "bar_inset_m, batter, bearing_rad, head_m, cut_m, mudline_m, toe_m"

static const char *const statement_texts[LB_N_SQL] = {
  [LB_SQL_BEGIN] = "BEGIN IMMEDIATE",
  [LB_SQL_COMMIT] = "COMMIT",
  [LB_SQL_ROLL_BACK] = "ROLLBACK",
  [LB_SQL_SAVEPOINT] = "SAVEPOINT act",
  [LB_SQL_RELEASE] = "RELEASE act",
  [LB_SQL_ROLL_BACK_TO] = "ROLLBACK TO act",
  [LB_SQL_LAST_SEQS] = "SELECT (SELECT max(seq) FROM pile), (SELECT max(seq) FROM shift), "
                       "(SELECT max(seq) FROM entry)",
  [LB_SQL_INSERT_ENTRY] =
    "INSERT INTO entry (seq, id, act, at_us, who, shift, kind, pile, what, bars, count, amount, "
    "start_us, end_us, up_us, note, of) "
    "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17)",
  [LB_SQL_INSERT_SHIFT] =
    "INSERT INTO shift (id, day, watch, opened_us, who) VALUES (?1, ?2, ?3, ?4, ?5)",
  [LB_SQL_INSERT_PILE] = "INSERT INTO pile (" PILE_COLUMNS ") VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, "
                         "?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20)",
  [LB_SQL_PILE_ROW] = "SELECT " PILE_COLUMNS " FROM pile WHERE seq = ?1",
  [LB_SQL_FIND_PILE] = "SELECT seq FROM pile WHERE id = ?1",
  [LB_SQL_FIND_SHIFT] = "SELECT seq FROM shift WHERE id = ?1",
  [LB_SQL_NEXT_ENTRY] = "SELECT coalesce(max(seq), 0) + 1, "
                        "(SELECT max(at_us) FROM entry WHERE seq > ?1) FROM entry",
  [LB_SQL_FIND_ACT] = "SELECT seq, shift, kind FROM entry WHERE id = ?1 AND act = seq",
  [LB_SQL_LOOK_AT_ACT] =
    "SELECT EXISTS (SELECT 1 FROM entry WHERE seq >= ?1 AND act = ?1 AND kind = 'fact'), "
    "(SELECT of FROM entry WHERE seq BETWEEN ?1 AND ?1 + 1 AND act = ?1 AND kind = 'take-back')",
  [LB_SQL_ENTRY_ID] = "SELECT id FROM entry WHERE seq = ?1",
  [LB_SQL_SHIFT_OF_DAY] = "SELECT id FROM shift WHERE day = ?1 AND watch = ?2 ORDER BY seq LIMIT 1",
  [LB_SQL_FIND_FIELD] = "SELECT act FROM entry WHERE what = ?1 AND pile IS ?2 AND "
                        "kind IN ('fact', 'setting') ORDER BY at_us DESC, seq DESC LIMIT 1",
  [LB_SQL_IS_SIGNED] = "SELECT EXISTS (SELECT 1 FROM entry WHERE shift = ?1 AND kind = 'seal')",
  [LB_SQL_NOTE_SEALS] = "INSERT INTO job SELECT 'seals', CAST (count (*) AS TEXT) FROM entry "
                        "WHERE kind = 'seal' ON CONFLICT DO UPDATE SET value = excluded.value",
};

/* What a drive says that keeps no locks, as network drives may. */
static gboolean
is_about_locks (int rc)
{
  return rc == SQLITE_IOERR_LOCK || rc == SQLITE_IOERR_RDLOCK || rc == SQLITE_IOERR_UNLOCK ||
         rc == SQLITE_IOERR_CHECKRESERVEDLOCK;
}

/* What SQLite's result code means for somebody at work. @db may be %NULL. */
void
lb_connection_fail (sqlite3 *db, int rc, const char *name, GError **error)
{
  const char *said = db != NULL ? sqlite3_errmsg (db) : sqlite3_errstr (rc);

  if (is_about_locks (rc)) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK,
                 _ ("The drive of “%s” cannot lock files, so that two programs could spoil each "
                    "other's work; nothing was stored: copy it to this computer and go on there"),
                 name);
    return;
  }
  switch (rc & 0xff) {
  case SQLITE_BUSY:
  case SQLITE_LOCKED:
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_BUSY,
                 _ ("Another program holds “%s”; try again when it is done"), name);
    break;
  case SQLITE_FULL:
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK,
                 _ ("The disk is full: nothing was stored in “%s”; make room and do it again"),
                 name);
    break;
  case SQLITE_READONLY:
  case SQLITE_PERM:
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_READ_ONLY,
                 _ ("“%s” can be read but not written; save a copy to record in"), name);
    break;
  case SQLITE_CORRUPT:
  case SQLITE_NOTADB:
  case SQLITE_TOOBIG:
  case SQLITE_INTERRUPT:
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
                 _ ("“%s” is damaged (%s); it is left untouched: go back to a copy"), name, said);
    break;
  case SQLITE_CONSTRAINT:
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, _ ("“%s” cannot take this (%s)"),
                 name, said);
    break;
  default:
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK,
                 _ ("The disk failed while “%s” was used (%s); what was being done is not stored"),
                 name, said);
    break;
  }
}

static int
harden (sqlite3 *db, gboolean may_write)
{
  static const struct
  {
    int option;
    int value;
  } options[] = {
    { SQLITE_DBCONFIG_DEFENSIVE, 1 },      { SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0 },
    { SQLITE_DBCONFIG_ENABLE_TRIGGER, 0 }, { SQLITE_DBCONFIG_ENABLE_VIEW, 0 },
    { SQLITE_DBCONFIG_DQS_DML, 0 },        { SQLITE_DBCONFIG_DQS_DDL, 0 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (options); i++) {
    const int rc = sqlite3_db_config (db, options[i].option, options[i].value, NULL);
    if (rc != SQLITE_OK)
      return rc;
  }
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    sqlite3_limit (db, limits[i].limit, limits[i].most);

  sqlite3_extended_result_codes (db, 1);
  sqlite3_busy_timeout (db, BUSY_WAIT_MS);

  const int rc = sqlite3_exec (db,
                               "PRAGMA mmap_size=0; PRAGMA cell_size_check=ON; "
                               "PRAGMA foreign_keys=ON; PRAGMA temp_store=MEMORY",
                               NULL, NULL, NULL);
  /* This one reads the file, which a connection that only reads must do by itself first, to find
   * out whether a crash left a journal. */
  if (rc == SQLITE_OK && may_write)
    return sqlite3_exec (db, "PRAGMA synchronous=EXTRA", NULL, NULL, NULL);
  return rc;
}

sqlite3 *
lb_connection_open (const char *path, int flags, const char *name, GError **error)
{
  sqlite3 *opened = NULL;
  const int rc = sqlite3_open_v2 (path, &opened, flags | SQLITE_OPEN_NOMUTEX, NULL);
  g_autoptr (sqlite3) db = opened;

  if (rc != SQLITE_OK) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN, _ ("“%s” cannot be opened (%s)"), name,
                 db != NULL ? sqlite3_errmsg (db) : sqlite3_errstr (rc));
    return NULL;
  }

  const int hardened = harden (db, (flags & SQLITE_OPEN_READWRITE) != 0);
  if (hardened != SQLITE_OK) {
    lb_connection_fail (db, hardened, name, error);
    return NULL;
  }
  return g_steal_pointer (&db);
}

/* A statement ready to be bound; %NULL with @error when the file no longer lets it be made. */
sqlite3_stmt *
lb_book_sql (LbBook *book, LbSql sql, GError **error)
{
  sqlite3_stmt **statement = &book->statements[sql];

  if (*statement != NULL)
    return *statement;

  const int rc = sqlite3_prepare_v3 (book->db, statement_texts[sql], -1, SQLITE_PREPARE_PERSISTENT,
                                     statement, NULL);
  if (rc != SQLITE_OK) {
    lb_connection_fail (book->db, rc, book->name, error);
    return NULL;
  }
  return *statement;
}

/* Borrows @text until the statement has run. */
void
lb_bind_text (sqlite3_stmt *statement, int at, const char *text)
{
  sqlite3_bind_text (statement, at, text != NULL ? text : "", -1, SQLITE_STATIC);
}

gboolean
lb_book_run (LbBook *book, LbSql sql, GError **error)
{
  sqlite3_stmt *statement = lb_book_sql (book, sql, error);

  if (statement == NULL)
    return FALSE;

  const int rc = sqlite3_step (statement);
  if (rc != SQLITE_DONE)
    lb_connection_fail (book->db, rc, book->name, error);
  sqlite3_reset (statement);
  return rc == SQLITE_DONE;
}
