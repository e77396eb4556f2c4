/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"
#include "book/seal-rows.h"

G_BEGIN_DECLS

/* A signed shift is sealed: an entry says, by a SHA-256 (FIPS 180-4) of all the rows that were on
 * record and of the seals before it, what was signed. Any row changed, removed or put among them
 * later shows. It cannot show that everything after some seal was cut off, or that all of the file
 * was made anew: the count and the last hash printed on each daily report can. */

/* What is wrong with a seal. */
typedef enum {
  LB_SEAL_FAULT_TEXT,    /* it does not say what a seal says */
  LB_SEAL_FAULT_MISSING, /* a row that was signed is gone */
  LB_SEAL_FAULT_CHANGED, /* a row is not what was signed; or, without a row, something is not */
  LB_SEAL_FAULT_CHAIN,   /* the seal before it is not the one it came after */
  LB_SEAL_FAULT_GONE,    /* the file had more seals than it has */
} LbSealFaultKind;

typedef struct
{
  LbSealFaultKind kind;
  int shift;           /* that was signed, -1 for none */
  const char *seal_id; /* borrowed from the ledger, "" for none */
  char *row_id;        /* the first row that breaks it, "" when that cannot be told */
} LbSealFault;

typedef struct
{
  guint n_seals;
  guint n_rows;        /* under a signature */
  guint n_open;        /* under none: of shifts not signed, or recorded since */
  guint n_absent;      /* seals that others come after and that are not in this file */
  const LbEntry *head; /* the last seal, NULL for none; borrowed */
  GArray *faults;      /* LbSealFault, at most one a seal, by time */
} LbSealReport;

/* Proves every seal of the ledger. 200,000 rows take less than half a second. */
void lb_seals_check (const LbLedger *ledger, LbSealReport *out_report);
void lb_seal_report_clear (LbSealReport *report);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LbSealReport, lb_seal_report_clear)

/* A sentence that names the shift and the row. To be freed. */
char *lb_seal_fault_text (const LbLedger *ledger, const LbSealFault *fault);

/* The seal's hash, 64 hexadecimal digits; "" when it cannot be read. To be freed. */
char *lb_seal_hash (const LbEntry *seal);

/* Sets @is_covered (by index of @rows, see lb_rows_new()) for the rows @seal covers. */
void lb_seal_mark_rows (const GArray *rows, const LbEntry *seal, guint8 *is_covered);

/**
 * lb_book_sign:
 * @ledger: of this book; it is read on
 * @shift_id: a shift that nobody signed yet
 * @who: by whom, a role or initials
 *
 * Seals a shift: all its entries, all that belongs to no shift, and what came later to shifts
 * signed before. One durable transaction. Refuses with %LB_BOOK_ERROR_SIGNED when it is signed.
 */
gboolean lb_book_sign (LbBook *book,
                       LbLedger *ledger,
                       const char *shift_id,
                       const char *who,
                       GError **error);

G_END_DECLS
