/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What lb_book_open() checks, and more: for somebody who wants to know whether a file is sound
 * before it is handed over or archived.
 *
 * Findings are of two kinds, told apart by their words: damage of the file (SQLite's own checks,
 * references, values out of range, facts that no pile can have), and signatures that no longer hold.
 * What does not fit together in a sound file is a matter of the record: finding.h. */
#include "book/book-private.h"

#include "book/fold.h"
#include "book/seal.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static void add_finding (GPtrArray *findings, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
add_finding (GPtrArray *findings, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_ptr_array_add (findings, g_strdup_vprintf (format, arguments));
  va_end (arguments);
}

/* Every row of a query whose first column is what it found. */
static gboolean
add_rows (LbBook *book, const char *query, const char *words, GPtrArray *findings, GError **error)
{
  g_autoptr (sqlite3_stmt) rows = NULL;
  int rc = sqlite3_prepare_v2 (book->db, query, -1, &rows, NULL);

  if (rc == SQLITE_OK) {
    while ((rc = sqlite3_step (rows)) == SQLITE_ROW) {
      const char *text = (const char *) sqlite3_column_text (rows, 0);

      if (g_strcmp0 (text, "ok") != 0) {
        g_autofree char *shown = g_utf8_make_valid (text != NULL ? text : "?", -1);
        add_finding (findings, "%s: %s", words, shown);
      }
    }
  }
  if (rc != SQLITE_DONE) {
    lb_connection_fail (book->db, rc, book->name, error);
    return FALSE;
  }
  return TRUE;
}

static gboolean
check_file (LbBook *book, GPtrArray *findings, GError **error)
{
  return lb_schema_check (book->db, book->name, error) &&
         add_rows (book, "PRAGMA integrity_check", _ ("File"), findings, error) &&
         add_rows (book,
                   "SELECT \"table\" || ' ' || rowid || ' -> ' || parent "
                   "FROM pragma_foreign_key_check",
                   _ ("Reference to a row that is not there"), findings, error);
}

static void
check_entries (const LbLedger *ledger, GPtrArray *findings)
{
  for (guint i = 0; i < ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);
    const LbDraft draft = lb_draft_of (ledger, entry);
    g_autoptr (GError) reason = NULL;

    if (!lb_draft_check (&draft, &reason))
      add_finding (findings, _ ("Entry %s: %s"), entry->id, reason->message);
  }
}

static gboolean
check_bar_names (LbBook *book, GPtrArray *findings, GError **error)
{
  g_autoptr (sqlite3_stmt) rows = NULL;
  int rc = sqlite3_prepare_v2 (book->db, "SELECT DISTINCT bar FROM pile WHERE bar IS NOT NULL", -1,
                               &rows, NULL);

  if (rc == SQLITE_OK) {
    while ((rc = sqlite3_step (rows)) == SQLITE_ROW) {
      const char *name = (const char *) sqlite3_column_text (rows, 0);

      if (name != NULL && lb_bar_find (name) == NULL)
        add_finding (findings, _ ("Bars called “%s” are not in the table of bars"), name);
    }
  }
  if (rc != SQLITE_DONE) {
    lb_connection_fail (book->db, rc, book->name, error);
    return FALSE;
  }
  return TRUE;
}

/* The key is made from the mark and read by nobody but other programs. */
static gboolean
check_mark_keys (LbBook *book, GPtrArray *findings, GError **error)
{
  g_autoptr (sqlite3_stmt) rows = NULL;
  int rc = sqlite3_prepare_v2 (book->db, "SELECT mark, mark_key FROM pile ORDER BY seq", -1, &rows,
                               NULL);

  if (rc == SQLITE_OK) {
    while ((rc = sqlite3_step (rows)) == SQLITE_ROW) {
      const char *mark = (const char *) sqlite3_column_text (rows, 0);
      g_autofree char *key = mark != NULL ? lb_mark_key (mark) : NULL;

      if (g_strcmp0 (key, (const char *) sqlite3_column_text (rows, 1)) != 0)
        add_finding (findings, _ ("Pile %s: its key in the file is not that of its mark"), mark);
    }
  }
  if (rc != SQLITE_DONE) {
    lb_connection_fail (book->db, rc, book->name, error);
    return FALSE;
  }
  return TRUE;
}

static void
check_seals (const LbLedger *ledger, GPtrArray *findings)
{
  g_auto (LbSealReport) report;

  lb_seals_check (ledger, &report);
  for (guint i = 0; i < report.faults->len; i++)
    g_ptr_array_add (findings,
                     lb_seal_fault_text (ledger, &g_array_index (report.faults, LbSealFault, i)));
}

static void
check_piles (const LbLedger *ledger, const LbFold *fold, GPtrArray *findings)
{
  for (guint i = 0; i < fold->n_piles; i++) {
    const LbPile *pile = &fold->piles[i];
    g_autoptr (GError) reason = NULL;

    if (!lb_pile_check (pile, &reason))
      add_finding (findings, _ ("Pile %s: %s"), pile->mark, reason->message);
    if (lb_fold_find_mark (fold, pile->mark) != (int) i)
      add_finding (findings, _ ("Two piles are called “%s”"), pile->mark);
  }
}

gboolean
lb_book_check (LbBook *book, char ***out_findings, GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (out_findings != NULL, FALSE);

  g_autoptr (GPtrArray) findings = g_ptr_array_new_with_free_func (g_free);
  if (!check_file (book, findings, error))
    return FALSE;

  g_autoptr (GError) reason = NULL;
  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, &reason);
  if (ledger == NULL)
    add_finding (findings, "%s", reason->message);
  else {
    g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);

    check_entries (ledger, findings);
    check_seals (ledger, findings);
    check_piles (ledger, fold, findings);
    if (!check_bar_names (book, findings, error) || !check_mark_keys (book, findings, error))
      return FALSE;
  }
  g_ptr_array_add (findings, NULL);
  *out_findings = (char **) g_ptr_array_steal (findings, NULL);
  return TRUE;
}
