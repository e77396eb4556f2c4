/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "exchange/text-table.h"
#include "trade/pile.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* A survey's pile list on its way into the job: guess the columns, let a person change them,
 * read the rows, say what is wrong with which, and only then hand over piles. */

#define LB_COLUMN_NONE (-1)

typedef struct
{
  gboolean has_heading;      /* the first row names the columns */
  int column_of[LB_N_FACTS]; /* LB_COLUMN_NONE for a fact that the list lacks */
  LbUnits units[LB_N_FACTS]; /* of each fact's numbers; from "(ft)", "_m" in headings */
} LbPileListMap;

/**
 * lb_pile_list_guess:
 * @units: taken for columns that don't say
 *
 * Reads headings under common surveying names (point, northing, easting, elevation, description;
 * x, y; mark, bent, row, width, batter, bearing …); a headless list of five columns is taken as
 * point, northing, easting, elevation, description. What cannot be guessed stays unmapped.
 */
void lb_pile_list_guess (const LbTextTable *table, LbUnits units, LbPileListMap *out_map);

typedef struct
{
  gsize line;   /* in the file */
  char *column; /* heading, or "column 3" */
  char *reason; /* a sentence naming the value and what to do */
} LbPileListFault;

typedef struct
{
  GArray *piles;     /* LbPile; good rows only */
  GPtrArray *faults; /* LbPileListFault; a bad row has one for its first bad cell */
  GStringChunk *strings;
} LbPileListRows;

/**
 * lb_pile_list_read:
 * @defaults: what a pile has that the list doesn't say
 * @taken: (nullable): marks already in the job, lower case, as keys; a row that repeats one, or
 *   an earlier row's, is a fault
 *
 * Only %FALSE when a needed column (mark, x, y) is not mapped, or cancelled; bad rows are not an
 * error.
 */
LbPileListRows *lb_pile_list_read (const LbTextTable *table,
                                   const LbPileListMap *map,
                                   const LbPile *defaults,
                                   GHashTable *taken,
                                   void (*progress) (gsize done, gsize total, gpointer data),
                                   gpointer data,
                                   GCancellable *cancellable,
                                   GError **error);
void lb_pile_list_rows_free (LbPileListRows *rows);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbPileListRows, lb_pile_list_rows_free)

G_END_DECLS
