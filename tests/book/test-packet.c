/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Packets between the files of two crews: what goes into one, what a join makes of it, and that what
 * comes from a careless or a hostile hand is refused with its reason and leaves the job as it was. */
#include "book-fixture.h"

#include "book/packet.h"
#include "book/seal.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>

/* A job of four piles and three shifts, a copy of it that another crew writes in, and where a packet
 * goes. */
typedef struct
{
  Story story;
  char *copy_path;
  LbBook *copy;
  char *packet_path;
} Crews;

static void
crews_begin (Crews *crews, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  story_begin (&crews->story, NULL);
  story_burn (&crews->story, 0, 0, LB_BAR (0), 0);
  crews->copy_path = fixture_path (crews->story.folder, "copy");
  crews->packet_path = g_build_filename (crews->story.folder, "shift" LB_PACKET_SUFFIX, NULL);
  g_assert_true (lb_book_copy_to (crews->story.book, crews->copy_path, &error));
  crews->copy = lb_book_open (crews->copy_path, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  lb_book_set_now (crews->copy, FIXTURE_US + G_USEC_PER_SEC);
}

static void
crews_end (Crews *crews, gconstpointer data)
{
  lb_book_close (crews->copy);
  g_free (crews->copy_path);
  g_free (crews->packet_path);
  story_end (&crews->story, NULL);
}

static LbPacketSpan
day_of_story (guint day)
{
  return (LbPacketSpan){ .first_day = FIXTURE_DAY + day, .last_day = FIXTURE_DAY + day };
}

static void
send (Crews *crews, LbBook *from, const LbPacketSpan *span)
{
  g_autoptr (GError) error = NULL;
  LbJoined sent = { 0 };

  g_remove (crews->packet_path);
  g_assert_true (
    lb_packet_write (from, span, "crew 2", crews->packet_path, &sent, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (sent.n_shifts, >, 0);
}

static LbPacket *
open_packet (const char *path)
{
  g_autoptr (GError) error = NULL;
  LbPacket *packet = lb_packet_open (path, NULL, &error);

  g_assert_no_error (error);
  return packet;
}

/* Joins what is at @path, and says what came of it: -1 for no error. */
static int
join (LbBook *into, const char *path, LbJoined *out_joined)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbLedger) ledger = fixture_read (into);
  g_autoptr (LbPacket) packet = lb_packet_open (path, NULL, &error);

  if (packet != NULL)
    lb_book_join (into, ledger, packet, out_joined, NULL, NULL, NULL, &error);
  if (error == NULL)
    return -1;
  g_assert_true (error->domain == LB_BOOK_ERROR);
  g_assert_cmpuint (strlen (error->message), >, 20);
  return error->code;
}

static void
assert_sound (LbBook *book)
{
  g_auto (GStrv) findings = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (lb_book_check (book, &findings, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (g_strv_length (findings), ==, 0);
}

static LbStep
step_of (LbBook *book, int pile)
{
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);

  return fold->states[pile].step;
}

/* The other crew cleans a pile in a shift of its own, and the shift is sent. */
static void
test_shift (Crews *crews, gconstpointer data)
{
  g_autofree char *shift = fixture_shift (crews->copy, 3);
  const LbPacketSpan span = day_of_story (3);
  LbJoined joined = { 0 };

  g_free (fixture_record (crews->copy, shift, LB_ENTRY_STEP, 2, "cleaned", NAN));
  send (crews, crews->copy, &span);

  g_autoptr (LbPacket) packet = open_packet (crews->packet_path);
  g_assert_true (packet->is_packet);
  g_assert_cmpstr (packet->who, ==, "crew 2");
  g_assert_cmpint (packet->made_us, ==, FIXTURE_US + G_USEC_PER_SEC);
  g_assert_cmpuint (packet->ledger->shifts->len, ==, 1);
  g_assert_cmpuint (packet->ledger->piles->len, ==, 4);

  g_assert_cmpint (step_of (crews->story.book, 2), ==, LB_STEP_STANDING);
  g_assert_cmpint (join (crews->story.book, crews->packet_path, &joined), ==, -1);
  g_assert_cmpuint (joined.n_shifts, ==, 1);
  g_assert_cmpuint (joined.n_entries, ==, 1);
  g_assert_cmpuint (joined.n_piles, ==, 0);
  g_assert_cmpint (step_of (crews->story.book, 2), ==, LB_STEP_CLEANED);
  assert_sound (crews->story.book);

  /* Once more changes nothing, not one byte. */
  g_autoptr (GBytes) before = fixture_bytes (crews->story.path);
  g_assert_cmpint (join (crews->story.book, crews->packet_path, &joined), ==, -1);
  g_autoptr (GBytes) after = fixture_bytes (crews->story.path);
  g_assert_cmpuint (joined.n_shifts + joined.n_entries + joined.n_piles, ==, 0);
  g_assert_true (g_bytes_equal (before, after));
}

/* What is recorded after a join is later than all that came, whatever the clock says. */
static void
test_later_than_what_came (Crews *crews, gconstpointer data)
{
  g_autofree char *shift = fixture_shift (crews->copy, 3);
  const gint64 ahead_us = FIXTURE_US + G_GINT64_CONSTANT (86400) * G_USEC_PER_SEC;

  lb_book_set_now (crews->copy, ahead_us);
  g_free (fixture_record (crews->copy, shift, LB_ENTRY_STEP, 2, "cleaned", NAN));
  send (crews, crews->copy, &LB_PACKET_SPAN_ALL);
  g_assert_cmpint (join (crews->story.book, crews->packet_path, NULL), ==, -1);
  story_tell (&crews->story, 0, 1, LB_ENTRY_DRAWN, NAN);

  g_autoptr (LbLedger) ledger = fixture_read (crews->story.book);
  const LbEntry *last = lb_ledger_entry (ledger, ledger->entries->len - 1);
  g_assert_cmpint (last->kind, ==, LB_ENTRY_DRAWN);
  g_assert_cmpint (last->at_us, >, ahead_us);
}

/* The mark that stands twice keeps nobody from renaming another pile, nor one of the two. Returns the
 * id of the one that it names. */
static char *
rename_piles (LbBook *book)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  char *named = g_strdup (fold->piles[lb_fold_find_mark (fold, "N1")].id);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_FACT);

  draft.what = "mark";
  draft.pile_id = "test-3";
  draft.note = "P1a";
  g_assert_true (lb_book_record (book, &draft, 1, NULL, &error));
  draft.note = "N1";
  g_assert_false (lb_book_record (book, &draft, 1, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  draft.pile_id = named;
  draft.note = "N1a";
  g_assert_true (lb_book_record (book, &draft, 1, NULL, &error));
  g_assert_no_error (error);
  return named;
}

/* Both crews add a pile of the same mark and record; each takes in the other's file, and they have the
 * same job. */
static void
test_both_ways (Crews *crews, gconstpointer data)
{
  g_autofree char *shift = fixture_shift (crews->copy, 1);
  LbBook *books[] = { crews->story.book, crews->copy };

  for (int i = 0; i < 2; i++) {
    LbPile pile;

    lb_pile_init (&pile);
    pile.mark = "N1";
    pile.x_m = i;
    pile.y_m = 50;
    g_assert_true (lb_book_add_piles (books[i], &pile, 1, NULL, NULL, NULL, NULL));
  }
  story_tell (&crews->story, 1, 0, LB_ENTRY_DRAWN, NAN);
  g_free (fixture_record (crews->copy, shift, LB_ENTRY_RODS, 1, NULL, 7));

  g_assert_cmpint (join (books[0], crews->copy_path, NULL), ==, -1);
  g_assert_cmpint (join (books[1], crews->story.path, NULL), ==, -1);
  for (int i = 0; i < 2; i++) {
    g_autoptr (LbLedger) ledger = fixture_read (books[i]);
    g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);

    g_assert_cmpuint (ledger->piles->len, ==, 6);
    g_assert_cmpint (fold->states[0].step, ==, LB_STEP_PULLED);
    g_assert_cmpfloat (fold->job.rods, ==, 7);
  }

  g_autofree char *here = rename_piles (books[0]);
  g_autofree char *there = rename_piles (books[1]);
  g_assert_cmpstr (here, ==, there);
}

/* Refers to nothing that is not in it, and tells nothing as standing that was taken back. */
static void
test_whole_by_itself (Crews *crews, gconstpointer data)
{
  g_autofree char *first = fixture_shift (crews->copy, 0);
  g_autofree char *second = fixture_shift (crews->copy, 1);
  g_autofree char *third = fixture_shift (crews->copy, 2);
  g_autofree char *drawn = fixture_record (crews->copy, first, LB_ENTRY_DRAWN, 1, NULL, NAN);
  const LbPacketSpan span = day_of_story (1);

  g_free (fixture_take_back (crews->copy, second, drawn));
  g_autofree char *rods = fixture_record (crews->copy, second, LB_ENTRY_RODS, 0, NULL, 4);
  g_free (fixture_take_back (crews->copy, third, rods));
  send (crews, crews->copy, &span);

  g_autoptr (LbPacket) packet = open_packet (crews->packet_path);
  g_autoptr (LbFold) fold = lb_fold_new (packet->ledger, G_MAXINT64);
  g_assert_cmpuint (packet->ledger->shifts->len, ==, 3);
  /* The job's name, and the four about work; the burning on the first day is not in it. */
  g_assert_cmpuint (packet->ledger->entries->len, ==, 5);
  g_assert_cmpuint (fold->job.bars, ==, 0);
  g_assert_cmpfloat (fold->job.rods, ==, 0);
  g_assert_cmpint (fold->states[1].step, ==, LB_STEP_STANDING);
}

/* A signature goes with all that was signed, and proves it on the other side. */
static void
test_signed (Crews *crews, gconstpointer data)
{
  g_autofree char *shift = fixture_shift (crews->copy, 3);
  g_autoptr (LbLedger) ledger = fixture_read (crews->copy);
  g_autoptr (GError) error = NULL;
  const LbPacketSpan span = day_of_story (3);
  const LbPacketSpan first = day_of_story (0);

  g_assert_true (lb_book_sign (crews->copy, ledger, crews->story.shifts[0], "sup", &error));
  g_free (fixture_record (crews->copy, shift, LB_ENTRY_STEP, 2, "cleaned", NAN));
  g_assert_true (lb_book_sign (crews->copy, ledger, shift, "sup", &error));
  g_assert_no_error (error);

  for (int i = 0; i < 2; i++) {
    g_auto (LbSealReport) report = { 0 };

    send (crews, crews->copy, i == 0 ? &span : &first);
    g_assert_cmpint (join (crews->story.book, crews->packet_path, NULL), ==, -1);
    g_autoptr (LbLedger) joined = fixture_read (crews->story.book);
    lb_seals_check (joined, &report);
    g_assert_cmpuint (report.n_seals, ==, i + 1);
    g_assert_cmpuint (report.faults->len, ==, 0);
    g_assert_cmpuint (report.n_absent, ==, 1 - i);
  }
}

static void
test_no_shift (Crews *crews, gconstpointer data)
{
  const LbPacketSpan span = day_of_story (40);
  LbPacketSpan night = day_of_story (0);
  g_autoptr (GError) error = NULL;

  night.watch = "night";
  g_assert_false (
    lb_packet_write (crews->copy, &span, "", crews->packet_path, NULL, NULL, NULL, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_false (
    lb_packet_write (crews->copy, &night, "", crews->packet_path, NULL, NULL, NULL, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_assert_false (g_file_test (crews->packet_path, G_FILE_TEST_EXISTS));
}

/* Cancelled while the rows go, when some are already written. */
static void
cancel_cb (gsize done, gsize total, gpointer data)
{
  g_cancellable_cancel (data);
}

static void
test_cancelled (Crews *crews, gconstpointer data)
{
  g_autofree char *shift = fixture_shift (crews->copy, 3);
  g_autoptr (GCancellable) writing = g_cancellable_new ();
  g_autoptr (GCancellable) joining = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  for (int i = 0; i < 2000; i++)
    g_free (fixture_record (crews->copy, shift, LB_ENTRY_RODS, 0, NULL, 1));
  g_assert_false (lb_packet_write (crews->copy, &LB_PACKET_SPAN_ALL, "", crews->packet_path, NULL,
                                   cancel_cb, writing, writing, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED);
  g_clear_error (&error);
  g_assert_false (g_file_test (crews->packet_path, G_FILE_TEST_EXISTS));

  send (crews, crews->copy, &LB_PACKET_SPAN_ALL);
  g_autoptr (LbPacket) packet = open_packet (crews->packet_path);
  g_autoptr (LbLedger) ledger = fixture_read (crews->story.book);
  g_autoptr (GBytes) before = fixture_bytes (crews->story.path);
  g_assert_false (
    lb_book_join (crews->story.book, ledger, packet, NULL, cancel_cb, joining, joining, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED);
  g_autoptr (GBytes) after = fixture_bytes (crews->story.path);
  g_assert_true (g_bytes_equal (before, after));
}

/* Another window records after the ledger was read: the join is planned on what is there now. */
static void
test_grown_meanwhile (Crews *crews, gconstpointer data)
{
  g_autofree char *shift = fixture_shift (crews->copy, 3);
  g_autoptr (GError) error = NULL;

  g_free (fixture_record (crews->copy, shift, LB_ENTRY_STEP, 2, "cleaned", NAN));
  send (crews, crews->copy, &LB_PACKET_SPAN_ALL);

  g_autoptr (LbPacket) packet = open_packet (crews->packet_path);
  g_autoptr (LbLedger) ledger = fixture_read (crews->story.book);
  g_autoptr (LbBook) beside = lb_book_open (crews->story.path, LB_BOOK_WRITE, &error);
  g_free (fixture_record (beside, crews->story.shifts[0], LB_ENTRY_DRAWN, 3, NULL, NAN));
  g_assert_true (lb_book_join (crews->story.book, ledger, packet, NULL, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpint (step_of (crews->story.book, 2), ==, LB_STEP_CLEANED);
  g_assert_cmpint (step_of (crews->story.book, 3), ==, LB_STEP_PULLED);
  assert_sound (crews->story.book);
}

/* A bar whose name only a later version knows goes from file to file as it is. */
static void
test_unknown_bar (Crews *crews, gconstpointer data)
{
  g_auto (GStrv) findings = NULL;
  LbPile pile;

  lb_pile_init (&pile);
  pile.mark = "N1";
  pile.x_m = pile.y_m = 1;
  g_assert_true (lb_book_add_piles (crews->copy, &pile, 1, NULL, NULL, NULL, NULL));
  fixture_tamper (crews->copy_path, "UPDATE pile SET bar = '#99' WHERE mark = 'N1'");
  g_assert_cmpint (join (crews->story.book, crews->copy_path, NULL), ==, -1);
  send (crews, crews->story.book, &LB_PACKET_SPAN_ALL);

  g_autoptr (LbPacket) packet = open_packet (crews->packet_path);
  g_assert_true (lb_book_check (packet->book, &findings, NULL));
  g_assert_cmpuint (g_strv_length (findings), ==, 1);
  g_assert_nonnull (strstr (findings[0], "#99"));
}

static void
test_other_job (Crews *crews, gconstpointer data)
{
  g_autofree char *path = fixture_path (crews->story.folder, "other");
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) other = lb_book_create (path, "Quay 9", &error);
  g_autoptr (LbLedger) ledger = fixture_read (crews->story.book);
  g_autoptr (LbPacket) packet = open_packet (path);

  g_assert_false (lb_book_join (crews->story.book, ledger, packet, NULL, NULL, NULL, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN);
  g_assert_nonnull (strstr (error->message, "Quay 9"));
  g_assert_nonnull (strstr (error->message, "Test job"));
}

static void
test_not_a_packet (Crews *crews, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (crews->packet_path, "mark,x,y\n", -1, NULL));
  g_assert_cmpint (join (crews->story.book, crews->packet_path, NULL), ==, LB_BOOK_ERROR_FOREIGN);
  send (crews, crews->copy, &LB_PACKET_SPAN_ALL);
  g_assert_null (lb_book_open (crews->packet_path, LB_BOOK_WRITE, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN);
  g_assert_nonnull (strstr (error->message, "packet"));
}

/* What somebody did to a packet or to a copy of the job, and the code with which it is refused. The
 * copy holds, after what both have, an act of two entries and a shift of its own. */
typedef struct
{
  const char *name;
  gboolean is_packet;
  const char *sql;
  int code;
} Case;

static const Case cases[] = {
  { "packet", TRUE, "SELECT 1", -1 },
  { "packet-row", TRUE, "UPDATE entry SET note = 'otherwise' WHERE seq = 1",
    LB_BOOK_ERROR_DAMAGED },
  { "packet-line", TRUE, "UPDATE job SET value = 'somebody' WHERE key = 'sent-by'",
    LB_BOOK_ERROR_DAMAGED },
  { "packet-sum", TRUE, "DELETE FROM job WHERE key = 'sha256'", LB_BOOK_ERROR_DAMAGED },
  { "packet-newer", TRUE, "PRAGMA user_version=3", LB_BOOK_ERROR_NEWER },
  { "packet-trigger", TRUE, "CREATE TRIGGER t AFTER INSERT ON entry BEGIN DELETE FROM pile; END",
    LB_BOOK_ERROR_DAMAGED },
  { "packet-view", TRUE,
    "ALTER TABLE job RENAME TO hidden; CREATE VIEW job AS SELECT key, value FROM hidden",
    LB_BOOK_ERROR_DAMAGED },
  { "packet-generated", TRUE, "ALTER TABLE shift ADD COLUMN g INT AS (day * 2)",
    LB_BOOK_ERROR_DAMAGED },
  { "packet-huge", TRUE,
    "UPDATE entry SET note = replace (hex (zeroblob (4000000)), '0', 'a') WHERE seq = 1",
    LB_BOOK_ERROR_DAMAGED },
  { "packet-refers-out", TRUE, "UPDATE entry SET pile = 9 WHERE seq = 2", LB_BOOK_ERROR_DAMAGED },
  { "copy", FALSE, "SELECT 1", -1 },
  { "pile", FALSE, "UPDATE pile SET mudline_m = -8 WHERE seq = 1", LB_BOOK_ERROR_DAMAGED },
  { "shift", FALSE, "UPDATE shift SET day = day + 1 WHERE seq = 1", LB_BOOK_ERROR_DAMAGED },
  { "entry", FALSE, "UPDATE entry SET bars = 2 WHERE kind = 'bars'", LB_BOOK_ERROR_DAMAGED },
  { "entry-time", FALSE, "UPDATE entry SET at_us = at_us + 1 WHERE kind = 'bars'",
    LB_BOOK_ERROR_DAMAGED },
  { "entry-pile", FALSE, "UPDATE entry SET pile = 2 WHERE kind = 'bars'", LB_BOOK_ERROR_DAMAGED },
  { "entry-shift", FALSE, "UPDATE entry SET shift = 2 WHERE kind = 'bars'", LB_BOOK_ERROR_DAMAGED },
  { "longer-act", FALSE,
    "UPDATE entry SET act = act - 1 WHERE kind = 'rods'; "
    "UPDATE entry SET act = act - 1 WHERE kind = 'oxygen'",
    LB_BOOK_ERROR_DAMAGED },
  { "id-of-no-program", FALSE, "UPDATE entry SET id = '../x' WHERE kind = 'rods'",
    LB_BOOK_ERROR_DAMAGED },
  { "no-id", FALSE, "UPDATE shift SET id = '' WHERE seq = 4", LB_BOOK_ERROR_DAMAGED },
  { "rods-beyond-reason", FALSE, "UPDATE entry SET amount = 1e12 WHERE kind = 'rods'",
    LB_BOOK_ERROR_DAMAGED },
  { "step-that-is-none", FALSE,
    "UPDATE entry SET kind = 'step', what = 'flown', amount = NULL "
    "WHERE kind = 'rods'",
    LB_BOOK_ERROR_DAMAGED },
  { "unknown-setting", FALSE,
    "UPDATE entry SET kind = 'setting', what = 'of-a-later-version', amount = NULL, pile = NULL, "
    "shift = NULL WHERE kind = 'rods'",
    -1 },
};

static void
test_case (Crews *crews, gconstpointer data)
{
  const Case *tampering = data;
  g_autofree char *shift = fixture_shift (crews->copy, 3);
  const char *path = tampering->is_packet ? crews->packet_path : crews->copy_path;
  LbDraft drafts[] = { LB_DRAFT_INIT (LB_ENTRY_RODS), LB_DRAFT_INIT (LB_ENTRY_OXYGEN) };

  for (int i = 0; i < 2; i++) {
    drafts[i].shift_id = shift;
    drafts[i].amount = 2;
  }
  g_assert_true (lb_book_record (crews->copy, drafts, 2, NULL, NULL));
  send (crews, crews->copy, &LB_PACKET_SPAN_ALL);
  fixture_tamper (path, tampering->sql);

  g_autoptr (GBytes) before = fixture_bytes (crews->story.path);
  g_assert_cmpint (join (crews->story.book, path, NULL), ==, tampering->code);
  g_autoptr (GBytes) after = fixture_bytes (crews->story.path);
  g_assert_true (g_bytes_equal (before, after) == (tampering->code != -1));
}

/* Every 16th byte flipped, and every 256th length: refused, or nothing was lost by it. */
static void
test_bent (Crews *crews, gconstpointer data)
{
  g_autofree char *shift = fixture_shift (crews->copy, 3);
  g_autofree char *bent = g_build_filename (crews->story.folder, "bent" LB_PACKET_SUFFIX, NULL);
  guint n_refused = 0;
  gsize n = 0;

  g_free (fixture_record (crews->copy, shift, LB_ENTRY_STEP, 2, "cleaned", NAN));
  send (crews, crews->copy, &LB_PACKET_SPAN_ALL);

  g_autoptr (GBytes) bytes = fixture_bytes (crews->packet_path);
  g_autoptr (LbPacket) whole = open_packet (crews->packet_path);
  const guint8 *at = g_bytes_get_data (bytes, &n);
  for (gsize i = 0; i < n; i += 16) {
    g_autofree guint8 *copy = g_memdup2 (at, n);
    const gsize length = i % 256 == 0 ? i : n;
    g_autoptr (GError) error = NULL;

    copy[i] ^= (guint8) (1 << (i / 16 % 8));
    g_assert_true (g_file_set_contents (bent, (const char *) copy, (gssize) length, NULL));
    g_autoptr (LbPacket) packet = lb_packet_open (bent, NULL, &error);
    if (packet == NULL) {
      g_assert_true (error->domain == LB_BOOK_ERROR);
      n_refused++;
    } else {
      g_assert_cmpuint (packet->ledger->entries->len, ==, whole->ledger->entries->len);
      g_assert_cmpuint (packet->ledger->shifts->len, ==, whole->ledger->shifts->len);
    }
  }
  g_test_message ("%u of %u refused", n_refused, (guint) (n + 15) / 16);
  g_assert_cmpuint (n_refused, >, (guint) n / 16 / 8);
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *path;
    void (*test) (Crews *crews, gconstpointer data);
  } tests[] = {
    { "/packet/shift", test_shift },
    { "/packet/later-than-what-came", test_later_than_what_came },
    { "/packet/both-ways", test_both_ways },
    { "/packet/whole-by-itself", test_whole_by_itself },
    { "/packet/signed", test_signed },
    { "/packet/no-shift", test_no_shift },
    { "/packet/cancelled", test_cancelled },
    { "/packet/grown-meanwhile", test_grown_meanwhile },
    { "/packet/unknown-bar", test_unknown_bar },
    { "/packet/other-job", test_other_job },
    { "/packet/not-a-packet", test_not_a_packet },
    { "/packet/bent", test_bent },
  };

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].path, Crews, NULL, crews_begin, tests[i].test, crews_end);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *path = g_strconcat ("/packet/refused/", cases[i].name, NULL);
    g_test_add (path, Crews, &cases[i], crews_begin, test_case, crews_end);
  }
  return g_test_run ();
}
