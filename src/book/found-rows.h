/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/leaf-rows.h"

G_BEGIN_DECLS

/* The rows of a job file as they are found in its pages, those alone that a job file can hold. */

/* Columns of the tables, by which their rows are told. */
typedef enum {
  LB_FOUND_JOB = 2,
  LB_FOUND_SHIFT = 6,
  LB_FOUND_ENTRY = 17,
  LB_FOUND_PILE = 21,
} LbFoundKind;

/* Columns that refer to something or name it. */
#define LB_FOUND_ID          1
#define LB_FOUND_ENTRY_ACT   2
#define LB_FOUND_ENTRY_SHIFT 5
#define LB_FOUND_ENTRY_KIND  6
#define LB_FOUND_ENTRY_PILE  7
#define LB_FOUND_ENTRY_WHAT  8
#define LB_FOUND_ENTRY_OF    16

typedef struct
{
  gint64 seq;
  LbCell *cells; /* texts are ended by a NUL */
} LbFoundRow;

typedef struct
{
  GArray *piles, *shifts, *entries; /* LbFoundRow by seq, no seq and no id twice */
  char *job_id;                     /* NULL when it was not found */
  char *made;                       /* the same */
  guint n_spoilt;                   /* rows with a value that no job file holds */

  GStringChunk *texts;
  GPtrArray *cells;
} LbFoundRows;

LbFoundRows *lb_found_rows_new (const guint8 *file, gsize n, gsize page_size);
void lb_found_rows_free (LbFoundRows *found);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbFoundRows, lb_found_rows_free)

/* The number in a column, 0 for none. */
gint64 lb_found_row_number (const LbFoundRow *row, guint column);

G_END_DECLS
