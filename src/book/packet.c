/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Packets on the disk.
 *
 * A packet is a job file with fewer rows and an application id of its own, so whatever guards the
 * opening of a job file (open.c, read.c) guards that of a packet. It is written as a join of the
 * chosen rows into a file that has none. The table "job" has these lines:
 *   id, made     of the job
 *   sent-by      who sends it
 *   sent         when, UTC µs
 *   sha256       of all the rest: what a bad stick or a cut transfer changes is seen at once. It is
 *                no signature, since whoever changes a packet on purpose can write a new one. */
#include "book/join-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define KEY_MADE   "made"
#define KEY_SENDER "sent-by"
#define KEY_SENT   "sent"
#define KEY_SUM    "sha256"

/* What the sum is taken of, in this order. */
static const char *const summed[] = {
  "SELECT key, value FROM job WHERE key <> '" KEY_SUM "' ORDER BY key",
  "SELECT * FROM pile ORDER BY seq",
  "SELECT * FROM shift ORDER BY seq",
  "SELECT * FROM entry ORDER BY seq",
};

static void
add_bytes (GChecksum *sum, char type, gconstpointer bytes, gsize n)
{
  g_checksum_update (sum, (const guchar *) &type, 1);
  g_checksum_update (sum, bytes, (gssize) n);
}

static void
add_big_endian (GChecksum *sum, char type, guint64 value)
{
  const guint64 bytes = GUINT64_TO_BE (value);

  add_bytes (sum, type, &bytes, sizeof bytes);
}

/* A letter for the type, and the value so that no two rows of values look alike. */
static void
add_value (GChecksum *sum, sqlite3_stmt *row, int column)
{
  switch (sqlite3_column_type (row, column)) {
  case SQLITE_INTEGER:
    add_big_endian (sum, 'i', (guint64) sqlite3_column_int64 (row, column));
    break;
  case SQLITE_FLOAT: {
    const double value = sqlite3_column_double (row, column);
    guint64 bits;

    memcpy (&bits, &value, sizeof bits);
    add_big_endian (sum, 'f', bits);
    break;
  }
  case SQLITE_TEXT: {
    const guchar *text = sqlite3_column_text (row, column);
    const gsize n = (gsize) sqlite3_column_bytes (row, column);

    add_big_endian (sum, 't', n);
    if (n > 0)
      g_checksum_update (sum, text, (gssize) n);
    break;
  }
  default:
    g_checksum_update (sum, (const guchar *) "n", 1);
    break;
  }
}

static gboolean
add_rows (GChecksum *sum, LbBook *book, const char *query, GError **error)
{
  g_autoptr (sqlite3_stmt) rows = NULL;
  int rc = sqlite3_prepare_v2 (book->db, query, -1, &rows, NULL);

  if (rc == SQLITE_OK) {
    while ((rc = sqlite3_step (rows)) == SQLITE_ROW) {
      for (int column = 0; column < sqlite3_column_count (rows); column++)
        add_value (sum, rows, column);
    }
  }
  if (rc != SQLITE_DONE) {
    lb_connection_fail (book->db, rc, book->name, error);
    return FALSE;
  }
  return TRUE;
}

/* SHA-256 of all rows, in hexadecimal. */
static char *
sum_up (LbBook *book, GError **error)
{
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);

  for (gsize i = 0; i < G_N_ELEMENTS (summed); i++) {
    if (!add_rows (sum, book, summed[i], error))
      return NULL;
  }
  return g_strdup (g_checksum_get_string (sum));
}

/* The value of a line of the table "job", "" for none; %NULL on failure. */
static char *
read_line (LbBook *book, const char *key, GError **error)
{
  g_autoptr (sqlite3_stmt) row = NULL;
  g_autofree char *value = NULL;
  int rc = sqlite3_prepare_v2 (book->db, "SELECT value FROM job WHERE key = ?1", -1, &row, NULL);

  if (rc == SQLITE_OK) {
    lb_bind_text (row, 1, key);
    rc = sqlite3_step (row);
  }
  if (rc == SQLITE_ROW)
    value = g_strdup ((const char *) sqlite3_column_text (row, 0));
  else if (rc != SQLITE_DONE) {
    lb_connection_fail (book->db, rc, book->name, error);
    return NULL;
  }
  if (value == NULL)
    return g_strdup ("");
  if (!lb_text_check (value, LB_SHORT_MAX, key, error))
    return NULL;
  return g_steal_pointer (&value);
}

static gboolean
write_line (LbBook *book, const char *key, const char *value, GError **error)
{
  g_autoptr (sqlite3_stmt) row = NULL;
  int rc = sqlite3_prepare_v2 (book->db, "INSERT INTO job (key, value) VALUES (?1, ?2)", -1, &row,
                               NULL);

  if (rc == SQLITE_OK) {
    lb_bind_text (row, 1, key);
    lb_bind_text (row, 2, value);
    rc = sqlite3_step (row);
  }
  if (rc == SQLITE_DONE)
    return TRUE;
  lb_connection_fail (book->db, rc, book->name, error);
  return FALSE;
}

/* What is written, and where to. */
typedef struct
{
  LbBook *source;
  const LbJoinPlan *plan;
  const char *who;
  LbJoinWatch watch;
} Sending;

static gboolean
write_lines (LbBook *packet, const Sending *sending, GError **error)
{
  g_autofree char *sent = g_strdup_printf ("%" G_GINT64_FORMAT, lb_book_now (sending->source));
  g_autofree char *made = read_line (sending->source, KEY_MADE, error);

  return made != NULL && write_line (packet, "id", sending->plan->from->job_id, error) &&
         write_line (packet, KEY_MADE, made, error) &&
         write_line (packet, KEY_SENDER, sending->who, error) &&
         write_line (packet, KEY_SENT, sent, error);
}

static gboolean
run (LbBook *book, const char *text, GError **error)
{
  if (sqlite3_exec (book->db, text, NULL, NULL, NULL) == SQLITE_OK)
    return TRUE;
  lb_connection_fail (book->db, sqlite3_extended_errcode (book->db), book->name, error);
  return FALSE;
}

/* Fills an empty database. Small pages: a packet is to be small, and most tables are nearly empty. */
static gboolean
fill (LbBook *packet, const Sending *sending, GError **error)
{
  if (!run (packet, "PRAGMA page_size=1024; BEGIN", error))
    return FALSE;
  if (!lb_schema_create (packet->db, LB_PACKET_APPLICATION_ID)) {
    lb_connection_fail (packet->db, sqlite3_extended_errcode (packet->db), packet->name, error);
    return FALSE;
  }
  if (!write_lines (packet, sending, error) ||
      !lb_book_store_plan (packet, sending->plan, sending->source, &sending->watch, error))
    return FALSE;

  g_autofree char *sum = sum_up (packet, error);
  return sum != NULL && write_line (packet, KEY_SUM, sum, error) && run (packet, "COMMIT", error);
}

/* Makes the whole file at @partner; it is closed when this returns. */
static gboolean
make_file (const char *partner, const char *path, const Sending *sending, GError **error)
{
  g_autofree char *shown = g_filename_display_basename (path);
  sqlite3 *db = lb_connection_open (partner, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, shown,
                                    error);

  if (db == NULL)
    return FALSE;

  g_autoptr (LbBook) packet = lb_book_new_for (db, partner, FALSE);
  g_free (packet->name);
  packet->name = g_steal_pointer (&shown);
  return fill (packet, sending, error);
}

static gboolean
publish (const char *path, const Sending *sending, GError **error)
{
  g_autofree char *full = g_canonicalize_filename (path, NULL);
  g_autofree char *partner = lb_file_partner (full);

  if (!lb_file_must_not_exist (full, error))
    return FALSE;
  if (!make_file (partner, full, sending, error)) {
    lb_file_discard (partner);
    return FALSE;
  }
  return lb_file_publish (partner, full, error);
}

gboolean
lb_packet_write (LbBook *book,
                 const LbPacketSpan *span,
                 const char *who,
                 const char *path,
                 LbJoined *out_sent,
                 LbProgress progress,
                 gpointer data,
                 GCancellable *cancellable,
                 GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (span != NULL, FALSE);
  g_return_val_if_fail (who != NULL, FALSE);
  g_return_val_if_fail (path != NULL, FALSE);

  if (!lb_text_check (who, LB_SHORT_MAX, _ ("Who sends it"), error))
    return FALSE;

  g_autoptr (LbLedger) ledger = lb_book_read (book, cancellable, error);
  g_autoptr (LbLedger) empty = lb_ledger_new ();
  g_autoptr (LbJoinPlan) plan = NULL;
  g_auto (LbJoinChoice) choice = { NULL };

  if (ledger == NULL)
    return FALSE;
  if (!lb_join_choice_init (&choice, ledger, span)) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("There is no shift on these days that could be sent"));
    return FALSE;
  }
  plan = lb_join_plan_chosen (empty, ledger, &choice, error);
  if (plan == NULL)
    return FALSE;

  const Sending sending = {
    .source = book,
    .plan = plan,
    .who = who,
    .watch = { .tell = progress, .data = data, .cancellable = cancellable },
  };
  if (!publish (path, &sending, error))
    return FALSE;
  if (out_sent != NULL)
    *out_sent = lb_join_plan_count (plan);
  return TRUE;
}

static gboolean
check_sum (LbPacket *packet, GError **error)
{
  g_autofree char *said = read_line (packet->book, KEY_SUM, error);
  g_autofree char *sum = said != NULL ? sum_up (packet->book, error) : NULL;

  if (sum == NULL)
    return FALSE;
  if (strcmp (said, sum) == 0)
    return TRUE;
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
               _ ("“%s” is not what was sent (its sum is wrong); have it sent again"),
               packet->book->name);
  return FALSE;
}

static gboolean
read_sender (LbPacket *packet, GError **error)
{
  g_autofree char *sent = read_line (packet->book, KEY_SENT, error);

  if (sent == NULL)
    return FALSE;
  g_free (packet->who);
  packet->who = read_line (packet->book, KEY_SENDER, error);
  if (packet->who == NULL)
    return FALSE;
  if (g_ascii_string_to_signed (sent, 10, LB_TIME_LEAST, LB_TIME_MOST, &packet->made_us, NULL))
    return TRUE;
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
               _ ("“%s” does not say when it was sent; have it sent again"), packet->book->name);
  return FALSE;
}

LbPacket *
lb_packet_open (const char *path, GCancellable *cancellable, GError **error)
{
  g_return_val_if_fail (path != NULL, NULL);

  g_autoptr (LbPacket) packet = g_new0 (LbPacket, 1);
  LbFileKind kind = LB_FILE_JOB;

  packet->who = g_strdup ("");
  packet->book = lb_book_open_other (path, cancellable, &kind, &packet->ledger, error);
  if (packet->book == NULL)
    return NULL;
  packet->is_packet = kind == LB_FILE_PACKET;
  if (packet->is_packet && (!check_sum (packet, error) || !read_sender (packet, error)))
    return NULL;
  return g_steal_pointer (&packet);
}

void
lb_packet_free (LbPacket *packet)
{
  if (packet == NULL)
    return;
  lb_book_close (packet->book);
  lb_ledger_free (packet->ledger);
  g_free (packet->who);
  g_free (packet);
}
