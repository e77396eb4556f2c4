/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tables of a job file, and of a packet (docs/file-format.md), as the very text that is written
 * into it.
 *
 * A file is ours only when sqlite_schema holds exactly this text and nothing besides: then no
 * trigger, view, generated column or expression in it can do anything that is not written here,
 * whoever made the file.
 *
 * Rows are numbered 1, 2, 3 … in each table and refer to each other by number; ids are what they
 * are called outside of this file. Numbers that are not known are NULL; texts that are not said are ''. The ranges are wide:
 * they keep out what would break arithmetic, lb_pile_set() and lb_draft_check() are stricter. */
#include "book/book-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

typedef struct
{
  const char *type;
  const char *name;
  const char *sql; /* NULL for the indexes that SQLite makes for UNIQUE and PRIMARY KEY */
} SchemaPart;

/* What both formats have. */
#define JOB_TABLE                      \
  "CREATE TABLE job (\n"               \
  "  key TEXT NOT NULL PRIMARY KEY,\n" \
  "  value TEXT NOT NULL\n"            \
  ") STRICT"

#define SHIFT_TABLE                                            \
  "CREATE TABLE shift (\n"                                     \
  "  seq INTEGER PRIMARY KEY,\n"                               \
  "  id TEXT NOT NULL UNIQUE,\n"                               \
  "  day INTEGER NOT NULL,\n"                                  \
  "  watch TEXT NOT NULL CHECK (watch IN ('day', 'night')),\n" \
  "  opened_us INTEGER NOT NULL,\n"                            \
  "  who TEXT NOT NULL\n"                                      \
  ") STRICT"

/* By name, as the check reads them. */
static const SchemaPart parts[] = {
  { "table", "entry",
    "CREATE TABLE entry (\n"
    "  seq INTEGER PRIMARY KEY,\n"
    "  id TEXT NOT NULL UNIQUE,\n"
    "  act INTEGER NOT NULL REFERENCES entry (seq),\n"
    "  at_us INTEGER NOT NULL,\n"
    "  who TEXT NOT NULL,\n"
    "  shift INTEGER REFERENCES shift (seq),\n"
    "  kind TEXT NOT NULL,\n"
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
    ") STRICT" },
  { "index", "entry_field",
    "CREATE INDEX entry_field ON entry (what, pile) WHERE kind IN ('fact', 'setting')" },
  { "index", "entry_seal", "CREATE INDEX entry_seal ON entry (shift) WHERE kind = 'seal'" },
  { "table", "job", JOB_TABLE },
  { "table", "pile",
    "CREATE TABLE pile (\n"
    "  seq INTEGER PRIMARY KEY,\n"
    "  id TEXT NOT NULL UNIQUE,\n"
    "  mark TEXT NOT NULL,\n"
    "  mark_key TEXT NOT NULL,\n"
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
    ") STRICT" },
  { "table", "shift", SHIFT_TABLE },
  { "index", "sqlite_autoindex_entry_1", NULL },
  { "index", "sqlite_autoindex_job_1", NULL },
  { "index", "sqlite_autoindex_pile_1", NULL },
  { "index", "sqlite_autoindex_shift_1", NULL },
};

/* Of format 1, which is still read, and taken along when it is opened for writing (migrate.c). */
static const SchemaPart parts_of_1[] = {
  { "table", "entry",
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
    ") STRICT" },
  { "table", "job", JOB_TABLE },
  { "table", "pile",
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
    ") STRICT" },
  { "table", "shift", SHIFT_TABLE },
  { "index", "sqlite_autoindex_entry_1", NULL },
  { "index", "sqlite_autoindex_job_1", NULL },
  { "index", "sqlite_autoindex_pile_1", NULL },
  { "index", "sqlite_autoindex_pile_2", NULL },
  { "index", "sqlite_autoindex_shift_1", NULL },
};

/* Tables before their indexes. */
static int
create_parts (sqlite3 *db, const char *type)
{
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++) {
    if (parts[i].sql == NULL || strcmp (parts[i].type, type) != 0)
      continue;

    const int rc = sqlite3_exec (db, parts[i].sql, NULL, NULL, NULL);
    if (rc != SQLITE_OK)
      return rc;
  }
  return SQLITE_OK;
}

gboolean
lb_schema_create (sqlite3 *db, guint32 application_id)
{
  if (create_parts (db, "table") != SQLITE_OK || create_parts (db, "index") != SQLITE_OK)
    return FALSE;

  g_autofree char *identity = g_strdup_printf ("PRAGMA application_id=%u; PRAGMA user_version=%d",
                                               application_id, LB_BOOK_FORMAT);
  return sqlite3_exec (db, identity, NULL, NULL, NULL) == SQLITE_OK;
}

gboolean
lb_schema_begin_file (sqlite3 *db, guint32 application_id)
{
  g_autofree char *begin = g_strdup_printf ("PRAGMA page_size=%d; BEGIN", LB_BOOK_PAGE_SIZE);

  return sqlite3_exec (db, begin, NULL, NULL, NULL) == SQLITE_OK &&
         lb_schema_create (db, application_id);
}

static gboolean
is_part (sqlite3_stmt *row, const SchemaPart *part)
{
  const char *type = (const char *) sqlite3_column_text (row, 0);
  const char *name = (const char *) sqlite3_column_text (row, 1);
  const char *sql = (const char *) sqlite3_column_text (row, 2);

  return g_strcmp0 (type, part->type) == 0 && g_strcmp0 (name, part->name) == 0 &&
         g_strcmp0 (sql, part->sql) == 0;
}

gboolean
lb_schema_find_format (sqlite3 *db, const char *name, int *out_format, GError **error)
{
  g_autoptr (sqlite3_stmt) row = NULL;
  int rc = sqlite3_prepare_v2 (db, "PRAGMA user_version", -1, &row, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_step (row);
  if (rc != SQLITE_ROW) {
    lb_connection_fail (db, rc, name, error);
    return FALSE;
  }
  *out_format = sqlite3_column_int (row, 0);
  return TRUE;
}

gboolean
lb_schema_check (sqlite3 *db, const char *name, GError **error)
{
  int format;
  if (!lb_schema_find_format (db, name, &format, error))
    return FALSE;

  const SchemaPart *expected = format == 1 ? parts_of_1 : parts;
  const gsize n_expected = format == 1 ? G_N_ELEMENTS (parts_of_1) : G_N_ELEMENTS (parts);
  g_autoptr (sqlite3_stmt) rows = NULL;
  gsize n_read = 0;
  int rc = sqlite3_prepare_v2 (db, "SELECT type, name, sql FROM sqlite_schema ORDER BY name", -1,
                               &rows, NULL);

  if (rc == SQLITE_OK) {
    while ((rc = sqlite3_step (rows)) == SQLITE_ROW) {
      if (n_read == n_expected || !is_part (rows, &expected[n_read])) {
        const char *found = (const char *) sqlite3_column_text (rows, 1);
        g_autofree char *shown = g_utf8_make_valid (found != NULL ? found : "?", -1);

        g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
                     _ ("“%s” has something in it that a job file does not have, or has it "
                        "otherwise (“%.60s”); it is left untouched"),
                     name, shown);
        return FALSE;
      }
      n_read++;
    }
  }
  if (rc != SQLITE_DONE) {
    lb_connection_fail (db, rc, name, error);
    return FALSE;
  }
  if (n_read < n_expected) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
                 _ ("“%s” lacks a table that a job file has (“%s”)"), name, expected[n_read].name);
    return FALSE;
  }
  return TRUE;
}
