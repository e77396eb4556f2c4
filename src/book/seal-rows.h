/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/ledger.h"

G_BEGIN_DECLS

/* The rows of a job as a seal sees them: by what they are called, whatever their numbers in one
 * file, and in a form that is the same everywhere to the last byte (docs/file-format.md, "Seals").
 * Seals themselves are none of them: they are covered by the seal after them. */

typedef enum {
  LB_ROW_PILE,
  LB_ROW_SHIFT,
  LB_ROW_ENTRY,
} LbRowKind;

/* An id TAG-N, taken apart. */
typedef struct
{
  const char *tag; /* of the length below, not ended by NUL */
  gsize tag_length;
  guint64 number;
} LbRowName;

/* FALSE for an id that no book gives: small letters and digits, a hyphen, a number. */
gboolean lb_row_name_read (const char *id, LbRowName *out_name);
int lb_row_name_compare (const LbRowName *one, const LbRowName *other);

typedef struct
{
  LbRowName name;
  LbRowKind kind;
  guint index; /* in the ledger's piles or shifts, or of lb_ledger_entry() */
} LbRow;

/* All rows but seals and those without a name, by name; LbRow. */
GArray *lb_rows_new (const LbLedger *ledger);

const char *lb_row_id (const LbLedger *ledger, const LbRow *row);

/* Where the row called @name stands in @rows, or would. */
guint lb_rows_find (const GArray *rows, const LbRowName *name);

/* Adds to @text, each with its length before it. NULL counts as "". */
void lb_put_text (GString *text, const char *field);
void lb_put_number (GString *text, gint64 number);

/* Adds the whole row. */
void lb_row_put (GString *text, const LbLedger *ledger, const LbRow *row);

G_END_DECLS
