/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The k-th read, write, sync, truncate, open, delete or lock fails, for k = 1, 2, 3 … until the work is
 * done untouched: once, for ever, or because the disk is full. Afterwards the file is the old one
 * or the new one, and who asked was told that the disk is at fault and that nothing is stored.
 *
 * The last test takes the journal away and must find files in between: the shim can see a fault. */
#include "book-fixture.h"

#include "book/packet.h"
#include "book/seal.h"
#include "fault-vfs.h"
#include "format-1.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <sqlite3.h>
#include <string.h>

/* Far above what any work here takes; reaching it means that the faults never end. */
#define K_MOST 2000

typedef struct
{
  const char *name;

  /* @book is open for writing; %NULL for a work that begins with opening the file itself. */
  gboolean (*work) (LbBook *book, const char *folder, GError **error);
  guint n_entries, n_piles; /* what the work adds to the job */
} Work;

static gboolean
record_work (LbBook *book, const char *folder, GError **error)
{
  LbDraft drafts[3];

  for (int i = 0; i < 3; i++) {
    drafts[i] = LB_DRAFT_INIT (LB_ENTRY_NOTE);
    drafts[i].note = "under fault";
  }
  return lb_book_record (book, drafts, 3, NULL, error);
}

static gboolean
add_work (LbBook *book, const char *folder, GError **error)
{
  g_autofree LbPile *piles = g_new (LbPile, 200);
  g_autoptr (GStringChunk) marks = g_string_chunk_new (4096);

  for (guint i = 0; i < 200; i++) {
    g_autofree char *mark = g_strdup_printf ("N%u", i);

    lb_pile_init (&piles[i]);
    piles[i].unsaid = 0;
    piles[i].x_m = piles[i].y_m = i;
    piles[i].mark = g_string_chunk_insert (marks, mark);
    piles[i].note = "a note that is long enough for the piles to fill a few pages of the file";
  }
  return lb_book_add_piles (book, piles, 200, NULL, NULL, NULL, error);
}

static gboolean
copy_work (LbBook *book, const char *folder, GError **error)
{
  g_autofree char *path = fixture_path (folder, "copy");

  return lb_book_copy_to (book, path, error);
}

static gboolean
sign_work (LbBook *book, const char *folder, GError **error)
{
  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, error);

  return ledger != NULL &&
         lb_book_sign (book, ledger, lb_ledger_shift (ledger, 0)->id, "superintendent", error);
}

/* The copy of the job that is joined lies on the healthy part of the disk: it is read beforehand. */
static gboolean
join_work (LbBook *book, const char *folder, GError **error)
{
  const gboolean was_armed = fault_vfs_pause ();
  g_autofree char *path = fixture_path (folder, "other");
  g_assert_true (lb_book_copy_to (book, path, NULL));
  g_autoptr (LbBook) other = lb_book_open (path, LB_BOOK_WRITE, NULL);
  g_assert_true (record_work (other, folder, NULL));
  g_autoptr (LbPacket) packet = lb_packet_open (path, NULL, NULL);
  g_assert_nonnull (packet);
  if (was_armed)
    fault_vfs_go_on ();

  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, error);
  return ledger != NULL && lb_book_join (book, ledger, packet, NULL, NULL, NULL, NULL, error);
}

/* Opening a file of format 1 for writing takes it along. */
static gboolean
migrate_work (LbBook *book, const char *folder, GError **error)
{
  g_autofree char *path = fixture_path (folder, "job");
  g_autoptr (LbBook) opened = lb_book_open (path, LB_BOOK_WRITE, error);

  return opened != NULL;
}

static const Work works[] = {
  { "record", record_work, 3, 0 }, { "add-piles", add_work, 0, 200 },
  { "copy", copy_work, 0, 0 },     { "sign", sign_work, 1, 0 },
  { "join", join_work, 3, 0 },     { "migrate", migrate_work, 0, 0 },
};

static gboolean
opens_itself (const Work *work)
{
  return work->work == migrate_work;
}

static const struct
{
  const char *name;
  FaultManner manner;
} manners[] = {
  { "once", FAULT_ONCE },
  { "for-ever", FAULT_FOR_EVER },
  { "disk-full", FAULT_DISK_FULL },
};

/* What the file holds, read by a book of its own on the healthy disk. */
static void
count (const char *path, guint *out_entries, guint *out_piles)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_auto (GStrv) findings = NULL;

  g_assert_true (lb_book_check (book, &findings, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (findings[0], ==, NULL);
  *out_entries = ledger->entries->len;
  *out_piles = ledger->piles->len;
}

static void
assert_no_litter (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    g_assert_null (strstr (name, ".part"));
}

/* A copy is whole or is not there. */
static void
assert_copy (const char *folder, gboolean is_done)
{
  g_autofree char *copy = fixture_path (folder, "copy");
  guint n_entries, n_piles;

  g_assert_true (g_file_test (copy, G_FILE_TEST_EXISTS) == is_done);
  if (is_done)
    count (copy, &n_entries, &n_piles);
}

/* The job that each work begins with. Made once: it takes the disk longer than the works do. */
static GBytes *
make_job (gboolean is_old)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "job");
  LbBook *book = fixture_book (path);

  fixture_add_piles (book, 20, 8);
  g_free (fixture_shift (book, 0));
  lb_book_close (book);
  if (is_old)
    format_1_make (path);
  GBytes *bytes = fixture_bytes (path);
  fixture_remove (folder);
  return bytes;
}

static LbBook *
open_job (const Work *work, GBytes *job, const char *path)
{
  g_autoptr (GError) error = NULL;
  gsize n = 0;
  const char *bytes = g_bytes_get_data (job, &n);

  fixture_write (path, bytes, n);
  if (opens_itself (work))
    return NULL;
  LbBook *book = lb_book_open (path, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  return book;
}

/* What is said names the file and is about the disk or the file, never that all is well or that the
 * entry was wrong. A page that cannot be read while a file is checked counts as damage. */
static void
assert_told (const Work *work, guint kinds, const GError *error)
{
  g_assert_true (error->domain == LB_BOOK_ERROR);
  if (error->code != LB_BOOK_ERROR_DAMAGED || !opens_itself (work))
    g_assert_true (error->code == LB_BOOK_ERROR_DISK || error->code == LB_BOOK_ERROR_OPEN);
  g_assert_nonnull (strstr (error->message, LB_BOOK_SUFFIX));
  if (kinds == FAULT_LOCK)
    g_assert_nonnull (strstr (error->message, "cannot lock"));
}

/* One work with the fault at its k-th operation; whether the fault came to pass. */
static gboolean
try_fault (const Work *work, GBytes *job, FaultManner manner, guint kinds, guint k, guint *n_told)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "job");
  g_autoptr (GError) error = NULL;
  guint n_entries, n_piles;
  LbBook *book = open_job (work, job, path);

  fault_vfs_arm (kinds, manner, k);
  const gboolean is_done = work->work (book, folder, &error);
  const gboolean had_fault = fault_vfs_disarm ();
  g_assert_true (is_done == (error == NULL));
  if (!is_done) {
    g_assert_true (had_fault);
    assert_told (work, kinds, error);
    (*n_told)++;
  }
  lb_book_close (book);

  count (path, &n_entries, &n_piles);
  const gboolean is_new = n_entries == 1 + work->n_entries && n_piles == 20 + work->n_piles;
  const gboolean is_old = n_entries == 1 && n_piles == 20;
  g_assert_true (is_new || is_old);
  if (is_done)
    g_assert_true (is_new);
  if (work->work == copy_work)
    assert_copy (folder, is_done);
  assert_no_litter (folder);
  fixture_remove (folder);
  return had_fault;
}

static void
test_faults (gconstpointer data)
{
  const Work *work = data;
  g_autoptr (GBytes) job = make_job (opens_itself (work));
  guint n_tried = 0;
  guint n_told = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (manners); i++) {
    for (guint kinds = 1; kinds <= FAULT_ALL + 1; kinds *= 2) {
      const guint chosen = kinds <= FAULT_ALL ? kinds : FAULT_ALL;
      guint k = 1;

      while (try_fault (work, job, manners[i].manner, chosen, k, &n_told)) {
        n_tried++;
        k++;
        g_assert_cmpuint (k, <, K_MOST);
      }
    }
  }
  g_test_message ("%s: %u faults, %u told, 0 files in between", work->name, n_tried, n_told);
  g_assert_cmpuint (n_tried, >, 20);
  g_assert_cmpuint (n_told, >, n_tried / 2);
}

/* Whether the file is neither old nor new after a fault without a journal. */
static gboolean
is_torn_without_journal (guint k, gboolean *out_had_fault)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "torn");
  sqlite3 *db = NULL;
  sqlite3_stmt *rows = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sqlite3_exec (
    db,
    "PRAGMA synchronous=OFF; PRAGMA journal_mode=OFF; CREATE TABLE t (i INTEGER PRIMARY KEY, s TEXT UNIQUE)",
    NULL, NULL, NULL);
  fault_vfs_arm (FAULT_WRITE, FAULT_FOR_EVER, k);
  sqlite3_exec (db,
                "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 500) "
                "INSERT INTO t SELECT i, hex (i) || '-padding-padding-padding' FROM n",
                NULL, NULL, NULL);
  *out_had_fault = fault_vfs_disarm ();
  sqlite3_close (db);

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  gboolean is_whole = FALSE;
  if (sqlite3_prepare_v2 (db, "PRAGMA integrity_check", -1, &rows, NULL) == SQLITE_OK &&
      sqlite3_step (rows) == SQLITE_ROW)
    is_whole = g_strcmp0 ((const char *) sqlite3_column_text (rows, 0), "ok") == 0;
  sqlite3_finalize (rows);
  sqlite3_close (db);
  fixture_remove (folder);
  return !is_whole;
}

static void
test_shim_sees (void)
{
  gboolean had_fault = TRUE;
  guint n_torn = 0;
  guint k = 1;

  for (; had_fault; k++) {
    if (is_torn_without_journal (k, &had_fault))
      n_torn++;
  }
  g_test_message ("without a journal: %u faults, %u torn files", k - 2, n_torn);
  g_assert_cmpuint (n_torn, >, 3);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  fixture_use_memory ();
  g_test_init (&argc, &argv, NULL);
  fault_vfs_install ();
  for (gsize i = 0; i < G_N_ELEMENTS (works); i++) {
    g_autofree char *name = g_strconcat ("/faults/disk/", works[i].name, NULL);
    g_test_add_data_func (name, &works[i], test_faults);
  }
  g_test_add_func ("/faults/disk/shim-sees", test_shim_sees);
  return g_test_run ();
}
