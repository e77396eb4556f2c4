/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A list is read whole or not at all. The rows' texts are those of the text table, which it keeps. */
#include "exchange/caution-list.h"

#include "book/caution-text.h"
#include "exchange/exchange-error.h"
#include "exchange/text-table.h"

#include <glib/gi18n-lib.h>

#define N_COLUMNS LB_CAUTION_N_CELLS

static const char *const headings[N_COLUMNS] = { "key", "severity", "when", "words", "source" };

struct _LbCrewCautions
{
  LbTextTable *cells;
  gsize n_rows;
  LbCautionRow rows[LB_CAUTION_CREW_ROWS_MAX];
};

typedef struct
{
  LbCrewCautions *list;
  gsize row; /* of the cells */
  const LbCautionRow *taken;
  gsize n_taken;
} Reading;

void
lb_crew_cautions_free (LbCrewCautions *list)
{
  if (list == NULL)
    return;

  g_clear_pointer (&list->cells, lb_text_table_free);
  g_free (list);
}

static gboolean
check_heading (const LbTextTable *cells, GError **error)
{
  gboolean is_met = lb_text_table_row_cells (cells, 0) == N_COLUMNS;

  for (gsize column = 0; column < N_COLUMNS; column++)
    is_met = is_met &&
             g_ascii_strcasecmp (lb_text_table_cell (cells, 0, column), headings[column]) == 0;
  if (!is_met)
    g_set_error_literal (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_COLUMN,
                         _ ("The first line must be “key,severity,when,words,source”"));
  return is_met;
}

static gboolean
read_row (const Reading *reading, GError **error)
{
  LbCrewCautions *list = reading->list;
  const gsize n_cells = lb_text_table_row_cells (list->cells, reading->row);
  const guint line = (guint) lb_text_table_line (list->cells, reading->row);
  const char *cells[N_COLUMNS];
  guint column = 0;

  if (n_cells != N_COLUMNS) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                 _ ("Line %u has %u cells and the first line %u: give each line as many"), line,
                 (guint) n_cells, (guint) N_COLUMNS);
    return FALSE;
  }
  for (gsize i = 0; i < N_COLUMNS; i++)
    cells[i] = lb_text_table_cell (list->cells, reading->row, i);

  g_autofree char *wrong = lb_caution_row_read (cells, list->rows, list->n_rows, reading->taken,
                                                reading->n_taken, &list->rows[list->n_rows],
                                                &column);

  if (wrong != NULL) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                 _ ("Line %u, column %u (%s): %s"), line, column + 1, headings[column], wrong);
    return FALSE;
  }
  list->n_rows++;
  return TRUE;
}

LbCrewCautions *
lb_crew_cautions_from_csv (const char *text,
                           gsize length,
                           const LbCautionRow *taken,
                           gsize n_taken,
                           GError **error)
{
  g_return_val_if_fail (text != NULL, NULL);
  g_return_val_if_fail (taken != NULL || n_taken == 0, NULL);

  g_autoptr (GBytes) bytes = g_bytes_new_static (text, length);
  g_autoptr (LbTextTable) cells = lb_text_table_parse (bytes, NULL, error);

  if (cells == NULL || !check_heading (cells, error))
    return NULL;

  const gsize n_rows = lb_text_table_get_shape (cells).n_rows;

  if (n_rows < 2 || n_rows - 1 > LB_CAUTION_CREW_ROWS_MAX) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_LARGE,
                 _ ("The list has %u cautions: it must have 1 to %d"), (guint) n_rows - 1,
                 LB_CAUTION_CREW_ROWS_MAX);
    return NULL;
  }

  g_autoptr (LbCrewCautions) list = g_new0 (LbCrewCautions, 1);
  Reading reading = { .list = list, .taken = taken, .n_taken = n_taken };

  list->cells = g_steal_pointer (&cells);
  for (reading.row = 1; reading.row < n_rows; reading.row++)
    if (!read_row (&reading, error))
      return NULL;
  return g_steal_pointer (&list);
}

const LbCautionRow *
lb_crew_cautions_rows (const LbCrewCautions *list, gsize *out_n)
{
  g_return_val_if_fail (list && out_n, NULL);

  *out_n = list->n_rows;
  return list->rows;
}

char *
lb_crew_cautions_to_text (const LbCrewCautions *list)
{
  g_return_val_if_fail (list, NULL);

  g_autoptr (GString) text = g_string_new (NULL);

  for (gsize i = 0; i < list->n_rows; i++) {
    const LbCautionRow *row = &list->rows[i];

    g_string_append_printf (text, "%s\t%s\t%s\t%s\t%s\n", row->key, lb_severity_key (row->severity),
                            lb_caution_when_key (row->when), row->words, row->source);
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}
