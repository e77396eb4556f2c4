/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book-fixture.h"

#include <glib/gstdio.h>
#include <sqlite3.h>
#include <unistd.h>

void
fixture_use_memory (void)
{
  static const char memory[] = "/dev/shm";

  if (g_access (memory, W_OK) == 0)
    g_setenv ("TMPDIR", memory, TRUE);
}

char *
fixture_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("lastbent-test-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

char *
fixture_path (const char *folder, const char *name)
{
  g_autofree char *file = g_strconcat (name, LB_BOOK_SUFFIX, NULL);

  return g_build_filename (folder, file, NULL);
}

void
fixture_remove (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_assert_cmpint (g_remove (path), ==, 0);
  }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

LbBook *
fixture_book (const char *path)
{
  g_autoptr (GError) error = NULL;
  LbBook *book = lb_book_create_fixed (path, "Test job", "test", FIXTURE_US, &error);

  g_assert_no_error (error);
  g_assert_nonnull (book);
  return book;
}

void
fixture_add_piles (LbBook *book, guint n_piles, guint n_bars)
{
  g_autofree LbPile *piles = g_new (LbPile, n_piles);
  g_autoptr (GStringChunk) marks = g_string_chunk_new (1024);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < n_piles; i++) {
    g_autofree char *mark = g_strdup_printf ("P%u", i + 1);

    lb_pile_init (&piles[i]);
    piles[i].unsaid = 0;
    piles[i].mark = g_string_chunk_insert (marks, mark);
    piles[i].x_m = i % 100;
    piles[i].y_m = i / 100;
    piles[i].outline = (LbOutline){ .shape = LB_SHAPE_OCTAGON, .width_m = 0.4064 };
    piles[i].bar = n_bars > 0 ? lb_bar_find ("#8") : NULL;
    piles[i].n_bars = n_bars;
    piles[i].head_m = 3;
    piles[i].mudline_m = -9;
    piles[i].toe_m = -20;
  }
  g_assert_true (lb_book_add_piles (book, piles, n_piles, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
}

char *
fixture_shift (LbBook *book, guint days)
{
  g_autoptr (GError) error = NULL;
  char *shift = NULL;

  g_assert_true (lb_book_open_shift (book, FIXTURE_DAY + days, "day", NULL, &shift, &error));
  g_assert_no_error (error);
  return shift;
}

static char *
record (LbBook *book, LbDraft *draft, int pile)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = pile >= 0 ? g_strdup_printf ("test-%d", pile + 3) : NULL;
  char *act = NULL;

  /* Ids 1 and 2 are the job's and its name's; fixture_add_piles() comes next. */
  draft->pile_id = id;
  g_assert_true (lb_book_record (book, draft, 1, &act, &error));
  g_assert_no_error (error);
  return act;
}

char *
fixture_record (LbBook *book,
                const char *shift,
                LbEntryKind kind,
                int pile,
                const char *what,
                double amount)
{
  LbDraft draft = LB_DRAFT_INIT (kind);

  draft.shift_id = shift;
  draft.what = what;
  draft.amount = amount;
  return record (book, &draft, pile);
}

char *
fixture_burn (LbBook *book, const char *shift, int pile, LbBarSet bars, guint count)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_BARS);

  draft.shift_id = shift;
  draft.bars = bars;
  draft.count = count;
  return record (book, &draft, pile);
}

char *
fixture_take_back (LbBook *book, const char *shift, const char *act)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_TAKE_BACK);

  draft.shift_id = shift;
  draft.of = act;
  return record (book, &draft, -1);
}

LbLedger *
fixture_read (LbBook *book)
{
  g_autoptr (GError) error = NULL;
  LbLedger *ledger = lb_book_read (book, NULL, &error);

  g_assert_no_error (error);
  return ledger;
}

GBytes *
fixture_bytes (const char *path)
{
  g_autoptr (GError) error = NULL;
  char *data = NULL;
  gsize n = 0;

  g_file_get_contents (path, &data, &n, &error);
  g_assert_no_error (error);
  return g_bytes_new_take (data, n);
}

void
fixture_write (const char *path, const void *bytes, gsize n)
{
  g_autoptr (GError) error = NULL;

  /* GLib 2.74 does not shorten a file that is there. */
  g_remove (path);
  g_file_set_contents_full (path, bytes, (gssize) n, G_FILE_SET_CONTENTS_NONE, 0644, &error);
  g_assert_no_error (error);
}

void
story_begin (Story *story, gconstpointer data)
{
  story->folder = fixture_folder ();
  story->path = fixture_path (story->folder, "story");
  story->book = fixture_book (story->path);
  fixture_add_piles (story->book, 4, 8);
  for (guint i = 0; i < G_N_ELEMENTS (story->shifts); i++)
    story->shifts[i] = fixture_shift (story->book, i);
}

void
story_end (Story *story, gconstpointer data)
{
  lb_book_close (story->book);
  fixture_remove (story->folder);
  g_free (story->folder);
  g_free (story->path);
  for (guint i = 0; i < G_N_ELEMENTS (story->shifts); i++)
    g_free (story->shifts[i]);
}

void
story_record (Story *story, const LbDraft *draft)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (lb_book_record (story->book, draft, 1, NULL, &error));
  g_assert_no_error (error);
}

void
story_burn (Story *story, int shift, int pile, LbBarSet bars, guint count)
{
  g_free (fixture_burn (story->book, story->shifts[shift], pile, bars, count));
}

void
story_tell (Story *story, int shift, int pile, LbEntryKind kind, double amount)
{
  g_free (fixture_record (story->book, story->shifts[shift], kind, pile, NULL, amount));
}

void
story_set (Story *story, const char *key, const char *value)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);

  draft.what = key;
  draft.note = value;
  story_record (story, &draft);
}

void
fixture_tamper (const char *path, const char *sql)
{
  sqlite3 *db = NULL;
  char *message = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sqlite3_exec (db, sql, NULL, NULL, &message);
  g_assert_cmpstr (message, ==, NULL);
  sqlite3_close (db);
}
