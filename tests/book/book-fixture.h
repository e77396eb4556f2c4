/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"
#include "book/fold.h"

G_BEGIN_DECLS

/* What the tests of the job file begin with. Failures end the test. */

/* 2 March 2026 as in GDate, and six in the morning of it, UTC. */
#define FIXTURE_DAY 739677u
#define FIXTURE_US  G_GINT64_CONSTANT (1772431200000000)

/* Folders in memory from now on, where the system has such a place: for tests that write thousands of
 * files. To be called first of all. */
void fixture_use_memory (void);

char *fixture_folder (void); /* a new, empty folder */
char *fixture_path (const char *folder, const char *name);
void fixture_remove (const char *folder); /* with the files in it */

/* A new job file with the fixed origin "test" and clock FIXTURE_US. */
LbBook *fixture_book (const char *path);

/* Piles "P1", "P2" … of a 16-inch octagon with @n_bars #8 bars each, 0 for unknown. */
void fixture_add_piles (LbBook *book, guint n_piles, guint n_bars);

/* The id of the shift of FIXTURE_DAY + @days, opened when it is not. */
char *fixture_shift (LbBook *book, guint days);

/* Records one entry about a pile (by index, -1 for none) and returns the act. */
char *fixture_record (LbBook *book,
                      const char *shift,
                      LbEntryKind kind,
                      int pile,
                      const char *what,
                      double amount);

/* Burns bars of a pile. */
char *fixture_burn (LbBook *book, const char *shift, int pile, LbBarSet bars, guint count);

/* Takes an act back, in a shift. */
char *fixture_take_back (LbBook *book, const char *shift, const char *act);

/* A job of four piles with eight bars each and three shifts, on days 0, 1 and 2; begun and ended
 * around each test that is a story of a few entries. */
typedef struct
{
  char *folder;
  char *path;
  LbBook *book;
  char *shifts[3];
} Story;

void story_begin (Story *story, gconstpointer data);
void story_end (Story *story, gconstpointer data);
void story_record (Story *story, const LbDraft *draft);
void story_burn (Story *story, int shift, int pile, LbBarSet bars, guint count);
void story_tell (Story *story, int shift, int pile, LbEntryKind kind, double amount);
void story_set (Story *story, const char *key, const char *value);

LbLedger *fixture_read (LbBook *book);

/* Runs SQL over the file with all of SQLite's guards down. */
void fixture_tamper (const char *path, const char *sql);

/* The bytes of a file, for comparing. */
GBytes *fixture_bytes (const char *path);

/* Makes a file of just these bytes, whatever was there, without waiting for the disk. */
void fixture_write (const char *path, const void *bytes, gsize n);

G_END_DECLS
