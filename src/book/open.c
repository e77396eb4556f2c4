/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Creating, opening and closing a job file.
 *
 * Opening goes from what can do least harm to what can do most (docs/file-format.md, "How a file
 * is opened"):
 *   1. lb_file_look(): kind, size and first page, without SQLite.
 *   2. A hardened connection for reading only.
 *   3. The whole text of the schema is compared with ours, under a budget of work, so that
 *      nothing foreign is ever evaluated and a tree that was bent into a maze is given up.
 *   4. PRAGMA quick_check: the structure of every page and the type of every value. On a
 *      connection that only reads, SQLite 3.40 does not evaluate the CHECKs; ranges and
 *      references are looked at as the rows are read (read.c), which every use of the file
 *      begins with.
 *      lb_book_open_and_read() reads rows by another connection while this check runs, which is
 *      safe: reading believes no value (read.c), gives up at the first row out of order, so no bent
 *      tree can lead it in a circle, writes nothing, and what it read is thrown away unless the
 *      check finds the file whole.
 *   5. Only then, and only when it is to be written, a second connection that may write; it
 *      compares the schema again, since the file may have been swapped. A file of an older format
 *      is taken along first (migrate.c); for reading only it is read as it is.
 * A file with a journal left by a crash cannot be read before it has been rolled back, which
 * writes: SQLite does that as soon as a connection that may write reads, after step 1 has said
 * that the file is ours. Then the steps go on as usual. */
#include "book/book-private.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>

/* Work granted to the checks: calls of the progress handler, each after so many steps of SQLite's
 * machine. A row takes some 60 steps and a page holds some 60 rows. */
#define STEPS_A_CALL   10000
#define CALLS_AT_LEAST 500

/* A connection that only reads goes through the file from end to end: no page is met again soon,
 * and to touch new memory for two megabytes of them costs more than they do. */
#define FEW_PAGES "32"

static int
spend_cb (gpointer data)
{
  gint64 *budget = data;

  return --*budget < 0;
}

/* Runs a checking pragma that must give no row, or the one row "ok". */
static gboolean
run_check (sqlite3 *db, const char *pragma, const char *name, GError **error)
{
  g_autoptr (sqlite3_stmt) rows = NULL;
  int rc = sqlite3_prepare_v2 (db, pragma, -1, &rows, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_step (rows);
  if (rc == SQLITE_ROW) {
    const char *said = (const char *) sqlite3_column_text (rows, 0);

    if (g_strcmp0 (said, "ok") != 0) {
      g_autofree char *shown = g_utf8_make_valid (said != NULL ? said : "?", -1);
      g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
                   _ ("“%s” is damaged (%.100s); it is left untouched: go back to a copy"), name,
                   shown);
      return FALSE;
    }
    rc = sqlite3_step (rows);
  }
  if (rc != SQLITE_DONE) {
    lb_connection_fail (db, rc, name, error);
    return FALSE;
  }
  return TRUE;
}

static gboolean
check_pages (sqlite3 *db, const char *name, GError **error)
{
  return run_check (db, "PRAGMA quick_check(1)", name, error);
}

/* Runs a check of the file under the budget of work that its size allows. */
static gboolean
check_in_budget (sqlite3 *db,
                 const char *path,
                 const char *name,
                 gboolean (*check) (sqlite3 *db, const char *name, GError **error),
                 GError **error)
{
  struct stat facts;
  gint64 budget = CALLS_AT_LEAST;

  if (g_stat (path, &facts) == 0)
    budget += facts.st_size / 4096;
  sqlite3_progress_handler (db, STEPS_A_CALL, spend_cb, &budget);

  const gboolean is_good = check (db, name, error);

  sqlite3_progress_handler (db, 0, NULL, NULL);
  return is_good;
}

/* A name for the ids of this book: 12 letters and digits from chance, 62 bits. */
static void
choose_tag (char tag[16])
{
  static const char digits[] = "0123456789abcdefghijklmnopqrstuvwxyz";
  g_autofree char *uuid = g_uuid_string_random ();
  guint64 bits = 0;

  for (const char *at = uuid; *at != '\0'; at++) {
    if (g_ascii_isxdigit (*at))
      bits = bits * 31 + (guint64) g_ascii_xdigit_value (*at) + 1;
  }
  for (int i = 0; i < 12; i++) {
    tag[i] = digits[bits % 36];
    bits /= 36;
  }
  tag[12] = '\0';
}

LbBook *
lb_book_new_for (sqlite3 *db, const char *path, gboolean is_read_only)
{
  LbBook *book = g_new0 (LbBook, 1);
  struct stat facts;

  book->db = db;
  book->path = g_strdup (path);
  book->name = g_filename_display_basename (path);
  book->is_read_only = is_read_only;
  if (g_stat (path, &facts) == 0) {
    book->device = facts.st_dev;
    book->inode = facts.st_ino;
  }
  choose_tag (book->tag);
  return book;
}

void
lb_book_close (LbBook *book)
{
  if (book == NULL)
    return;
  lb_book_roll_back (book);
  for (gsize i = 0; i < LB_N_SQL; i++)
    sqlite3_finalize (book->statements[i]);
  sqlite3_close_v2 (book->db);
  g_free (book->path);
  g_free (book->name);
  g_free (book);
}

const char *
lb_book_get_path (const LbBook *book)
{
  g_return_val_if_fail (book != NULL, NULL);

  return book->path;
}

gboolean
lb_book_is_read_only (const LbBook *book)
{
  g_return_val_if_fail (book != NULL, TRUE);

  return book->is_read_only;
}

void
lb_book_set_now (LbBook *book, gint64 now_us)
{
  g_return_if_fail (book != NULL);

  book->now_us = now_us;
}

/* The first read of a connection tells whether the journal beside the file, if there is one, is
 * alive. A connection that may write rolls it back by that read. */
static int
read_first (sqlite3 *db)
{
  return sqlite3_exec (db, "SELECT count(*) FROM sqlite_schema", NULL, NULL, NULL);
}

/* A crash left a journal, which only a connection that may write can undo. */
static gboolean
roll_back_crash (const char *path, const char *name, gboolean may_write, GError **error)
{
  if (!may_write) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN,
                 _ ("“%s” was being written when its program or the computer stopped; open it "
                    "once where it can be written, so that it can be put right"),
                 name);
    return FALSE;
  }

  g_autoptr (sqlite3) db = lb_connection_open (path, SQLITE_OPEN_READWRITE, name, error);
  if (db == NULL)
    return FALSE;
  const int rc = read_first (db);
  if (rc != SQLITE_OK)
    lb_connection_fail (db, rc, name, error);
  return rc == SQLITE_OK;
}

/* A connection that only reads, to a file whose tables are known to be ours. */
static sqlite3 *
open_reader (const char *path, const char *name, gboolean may_write, GError **error)
{
  g_autoptr (sqlite3) reader = lb_connection_open (path, SQLITE_OPEN_READONLY, name, error);

  if (reader == NULL)
    return NULL;
  const int rc = read_first (reader);
  if ((rc == SQLITE_READONLY_ROLLBACK || rc == SQLITE_READONLY_RECOVERY) &&
      !roll_back_crash (path, name, may_write, error))
    return NULL;
  sqlite3_exec (reader, "PRAGMA cache_size=" FEW_PAGES, NULL, NULL, NULL);
  if (!check_in_budget (reader, path, name, lb_schema_check, error))
    return NULL;
  return g_steal_pointer (&reader);
}

static sqlite3 *
open_writer (const char *path, const char *name, GError **error)
{
  g_autoptr (sqlite3) writer = lb_connection_open (path, SQLITE_OPEN_READWRITE, name, error);

  if (writer == NULL || !lb_schema_check (writer, name, error))
    return NULL;
  return g_steal_pointer (&writer);
}

/* One opening: what step 1 found, and the connections of the later steps. */
typedef struct
{
  char *path;
  char *name;
  LbFileKind kind;
  gboolean may_write;
  sqlite3 *reader;
} Opening;

static void
opening_clear (Opening *opening)
{
  g_free (opening->path);
  g_free (opening->name);
  sqlite3_close_v2 (opening->reader);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Opening, opening_clear)

/* Steps 1 to 3. */
static gboolean
opening_begin (Opening *opening, const char *path, LbBookMode mode, guint kinds, GError **error)
{
  LbFileFacts facts;

  opening->path = g_canonicalize_filename (path, NULL);
  opening->name = g_filename_display_basename (opening->path);
  if (!lb_file_look (opening->path, opening->name, kinds, &facts, error))
    return FALSE;
  opening->kind = facts.kind;
  opening->may_write = mode == LB_BOOK_WRITE && facts.is_writable;
  opening->reader = open_reader (opening->path, opening->name, opening->may_write, error);
  return opening->reader != NULL;
}

/* Step 4. */
static gboolean
opening_check (Opening *opening, GError **error)
{
  return check_in_budget (opening->reader, opening->path, opening->name, check_pages, error);
}

/* Step 5. */
static LbBook *
opening_finish (Opening *opening, GError **error)
{
  int format;

  if (!lb_schema_find_format (opening->reader, opening->name, &format, error))
    return NULL;
  if (opening->may_write && format != LB_BOOK_FORMAT &&
      !lb_migrate (opening->path, opening->name, error))
    return NULL;

  sqlite3 *db = opening->may_write ? open_writer (opening->path, opening->name, error)
                                   : g_steal_pointer (&opening->reader);

  if (db == NULL)
    return NULL;
  return lb_book_new_for (db, opening->path,
                          !opening->may_write || sqlite3_db_readonly (db, "main") != 0);
}

LbBook *
lb_book_open (const char *path, LbBookMode mode, GError **error)
{
  g_return_val_if_fail (path != NULL, NULL);

  g_auto (Opening) opening = { NULL };

  if (!opening_begin (&opening, path, mode, LB_FILE_JOB, error) || !opening_check (&opening, error))
    return NULL;
  return opening_finish (&opening, error);
}

typedef struct
{
  Opening *opening;
  GError *error;
} Check;

static gpointer
check_thread (gpointer data)
{
  Check *check = data;

  return GINT_TO_POINTER (opening_check (check->opening, &check->error));
}

/* Reads by a connection of its own, which is closed again. */
static LbLedger *
read_beside (const Opening *opening, GCancellable *cancellable, GError **error)
{
  sqlite3 *db = open_reader (opening->path, opening->name, FALSE, error);
  g_autoptr (LbBook) book = NULL;

  if (db == NULL)
    return NULL;
  book = lb_book_new_for (db, opening->path, TRUE);
  return lb_book_read (book, cancellable, error);
}

/* Step 4 and the rows at once, then step 5. */
static LbBook *
check_and_read (Opening *opening, GCancellable *cancellable, LbLedger **out_ledger, GError **error)
{
  Check check = { .opening = opening };
  GThread *thread = g_thread_new ("check", check_thread, &check);
  g_autoptr (GError) reason = NULL;
  g_autoptr (LbLedger) ledger = read_beside (opening, cancellable, &reason);

  /* The check has the last word, and the better words for what is wrong. */
  if (!GPOINTER_TO_INT (g_thread_join (thread))) {
    g_propagate_error (error, check.error);
    return NULL;
  }
  if (ledger == NULL) {
    g_propagate_error (error, g_steal_pointer (&reason));
    return NULL;
  }

  LbBook *book = opening_finish (opening, error);
  if (book != NULL)
    *out_ledger = g_steal_pointer (&ledger);
  return book;
}

LbBook *
lb_book_open_and_read (const char *path,
                       LbBookMode mode,
                       GCancellable *cancellable,
                       LbLedger **out_ledger,
                       GError **error)
{
  g_return_val_if_fail (path != NULL, NULL);
  g_return_val_if_fail (out_ledger != NULL, NULL);

  g_auto (Opening) opening = { NULL };
  if (!opening_begin (&opening, path, mode, LB_FILE_JOB, error))
    return NULL;
  return check_and_read (&opening, cancellable, out_ledger, error);
}

/* Another's file, a packet or a job, for reading. */
LbBook *
lb_book_open_other (const char *path,
                    GCancellable *cancellable,
                    LbFileKind *out_kind,
                    LbLedger **out_ledger,
                    GError **error)
{
  g_auto (Opening) opening = { NULL };

  if (!opening_begin (&opening, path, LB_BOOK_READ, LB_FILE_JOB | LB_FILE_PACKET, error))
    return NULL;
  *out_kind = opening.kind;
  return check_and_read (&opening, cancellable, out_ledger, error);
}

static gboolean
is_tag (const char *tag)
{
  const gsize length = strlen (tag);

  return length >= 1 && length <= 12 &&
         strspn (tag, "abcdefghijklmnopqrstuvwxyz0123456789") == length;
}

/* Fills an empty database: tables, the job's own lines, its name as the first entry. */
static gboolean
fill_new (LbBook *book, const char *name, GError **error)
{
  char id[LB_ID_MAX];

  if (!lb_schema_begin_file (book->db, LB_BOOK_APPLICATION_ID)) {
    lb_connection_fail (book->db, sqlite3_extended_errcode (book->db), book->name, error);
    return FALSE;
  }
  lb_book_next_id (book, id);

  g_autofree char *lines = g_strdup_printf ("INSERT INTO job VALUES ('id', '%s'), "
                                            "('made', '%" G_GINT64_FORMAT "')",
                                            id, lb_book_now (book));
  if (sqlite3_exec (book->db, lines, NULL, NULL, NULL) != SQLITE_OK) {
    lb_connection_fail (book->db, sqlite3_extended_errcode (book->db), book->name, error);
    return FALSE;
  }
  book->is_in_many = TRUE;

  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);
  draft.what = "name";
  draft.note = name;
  return lb_book_record (book, &draft, 1, NULL, error) && lb_book_commit (book, error);
}

/* Makes the whole file at @partner; it is closed when this returns. */
static gboolean
make_file (const char *partner,
           const char *path,
           const char *name,
           const char *tag,
           gint64 now_us,
           GError **error)
{
  g_autofree char *shown = g_filename_display_basename (path);
  sqlite3 *db = lb_connection_open (partner, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, shown,
                                    error);

  if (db == NULL)
    return FALSE;

  g_autoptr (LbBook) book = lb_book_new_for (db, partner, FALSE);
  g_free (book->name);
  book->name = g_steal_pointer (&shown);
  book->now_us = now_us;
  if (tag != NULL)
    g_strlcpy (book->tag, tag, sizeof book->tag);
  return fill_new (book, name, error);
}

static LbBook *
create (const char *path, const char *name, const char *tag, gint64 now_us, GError **error)
{
  g_autofree char *full = g_canonicalize_filename (path, NULL);
  g_autofree char *partner = lb_file_partner (full);

  if (!lb_file_must_not_exist (full, error))
    return NULL;
  if (!make_file (partner, full, name, tag, now_us, error)) {
    lb_file_discard (partner);
    return NULL;
  }
  if (!lb_file_publish (partner, full, error))
    return NULL;

  LbBook *book = lb_book_open (full, LB_BOOK_WRITE, error);
  if (book != NULL && tag != NULL) {
    g_strlcpy (book->tag, tag, sizeof book->tag);
    book->n_ids = 2; /* the job and its name */
    book->now_us = now_us;
  }
  return book;
}

LbBook *
lb_book_create (const char *path, const char *name, GError **error)
{
  g_return_val_if_fail (path != NULL, NULL);
  g_return_val_if_fail (name != NULL, NULL);

  return create (path, name, NULL, 0, error);
}

LbBook *
lb_book_create_fixed (const char *path,
                      const char *name,
                      const char *tag,
                      gint64 now_us,
                      GError **error)
{
  g_return_val_if_fail (path != NULL, NULL);
  g_return_val_if_fail (name != NULL, NULL);
  g_return_val_if_fail (tag != NULL && is_tag (tag), NULL);

  return create (path, name, tag, now_us, error);
}
