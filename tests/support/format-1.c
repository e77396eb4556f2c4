/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "format-1.h"

#include <sqlite3.h>

/* The two tables that were otherwise, as format 1 had them. */
static const char old_entry[] =
  "CREATE TABLE entry (\n"
  "  seq INTEGER PRIMARY KEY,\n"
  "  id TEXT NOT NULL UNIQUE,\n"
  "  act INTEGER NOT NULL REFERENCES entry (seq),\n"
  "  at_us INTEGER NOT NULL,\n"
  "  who TEXT NOT NULL,\n"
  "  shift INTEGER REFERENCES shift (seq),\n"
  "  kind TEXT NOT NULL CHECK (kind IN ('step', 'bars', 'gone', 'drawn', 'broken', 'burn-time', 'rods',\n"
  "    'oxygen', 'dive', 'delay', 'fault', 'condition', 'note', 'set-aside', 'take-in', 'check',\n"
  "    'fact', 'setting', 'take-back')),\n"
  "  pile INTEGER REFERENCES pile (seq),\n"
  "  what TEXT NOT NULL,\n"
  "  bars INTEGER NOT NULL CHECK (bars BETWEEN 0 AND 1152921504606846975),\n"
  "  count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 60),\n"
  "  amount REAL,\n"
  "  start_us INTEGER NOT NULL,\n"
  "  end_us INTEGER NOT NULL,\n"
  "  up_us INTEGER NOT NULL,\n"
  "  note TEXT NOT NULL,\n"
  "  of INTEGER REFERENCES entry (seq)\n"
  ") STRICT";

static const char old_pile[] =
  "CREATE TABLE pile (\n"
  "  seq INTEGER PRIMARY KEY,\n"
  "  id TEXT NOT NULL UNIQUE,\n"
  "  mark TEXT NOT NULL,\n"
  "  mark_key TEXT NOT NULL UNIQUE,\n"
  "  bent TEXT NOT NULL,\n"
  "  row TEXT NOT NULL,\n"
  "  note TEXT NOT NULL,\n"
  "  x_m REAL NOT NULL,\n"
  "  y_m REAL NOT NULL,\n"
  "  shape TEXT NOT NULL CHECK (shape IN ('square', 'octagonal', 'round')),\n"
  "  width_m REAL,\n"
  "  void_m REAL NOT NULL,\n"
  "  bar TEXT,\n"
  "  n_bars INTEGER CHECK (n_bars BETWEEN 1 AND 60),\n"
  "  bar_inset_m REAL,\n"
  "  batter REAL,\n"
  "  bearing_rad REAL,\n"
  "  head_m REAL,\n"
  "  cut_m REAL,\n"
  "  mudline_m REAL,\n"
  "  toe_m REAL\n"
  ") STRICT";

static void
run (sqlite3 *db, const char *text)
{
  g_autofree char *message = NULL;
  char *said = NULL;

  sqlite3_exec (db, text, NULL, NULL, &said);
  message = g_strdup (said);
  sqlite3_free (said);
  g_assert_cmpstr (message, ==, NULL);
}

void
format_1_make (const char *path)
{
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  run (db, "PRAGMA foreign_keys=OFF; BEGIN;"
           "CREATE TEMP TABLE rows AS SELECT * FROM entry; DROP TABLE entry;"
           "CREATE TEMP TABLE piles AS SELECT * FROM pile; DROP TABLE pile");
  run (db, old_entry);
  run (db, old_pile);
  run (db, "INSERT INTO pile SELECT * FROM piles; INSERT INTO entry SELECT * FROM rows;"
           "UPDATE entry SET of = NULL WHERE kind != 'take-back';"
           "DROP TABLE rows; DROP TABLE piles; PRAGMA user_version=1; COMMIT");
  sqlite3_close (db);
}
