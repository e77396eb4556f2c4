/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/pile-grid.h"

#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define BENTS_MAX 500
#define ROWS_MAX  100
#define FIRST_MAX 100000
/* No pier has its piles so near or so far: a slip of the unit, then. From memory. */
#define SPACING_LEAST_M 0.3
#define SPACING_MOST_M  100.0

/* A to Z, then AA to CV. */
static const char *
row_letters (guint row, GStringChunk *strings)
{
  char letters[3] = { 0 };

  if (row < 26) {
    letters[0] = (char) ('A' + row);
  } else {
    letters[0] = (char) ('A' + row / 26 - 1);
    letters[1] = (char) ('A' + row % 26);
  }

  return g_string_chunk_insert_const (strings, letters);
}

static gboolean
check_spacing (double spacing_m, guint n, const char *message, GError **error)
{
  if (n < 2 || (spacing_m >= SPACING_LEAST_M && spacing_m <= SPACING_MOST_M))
    return TRUE;

  g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, message);
  return FALSE;
}

static gboolean
check_grid (const LbPileGrid *grid, GError **error)
{
  if (grid->n_bents < 1 || grid->n_bents > BENTS_MAX || grid->n_rows < 1 || grid->n_rows > ROWS_MAX)
  {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 _ ("A grid has 1 to %d bents and 1 to %d rows"), BENTS_MAX, ROWS_MAX);
    return FALSE;
  }
  if (grid->first_bent > FIRST_MAX) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 _ ("The first bent’s number is at most %d"), FIRST_MAX);
    return FALSE;
  }
  if (!isfinite (grid->x_m) || !isfinite (grid->y_m) || !isfinite (grid->bearing_rad)) {
    g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                         _ ("The grid needs the place of its first pile and a bearing"));
    return FALSE;
  }

  return check_spacing (grid->bent_spacing_m, grid->n_bents,
                        _ ("Bents stand 1 to 330 ft (0.3 to 100 m) apart"), error) &&
         check_spacing (grid->row_spacing_m, grid->n_rows,
                        _ ("Rows stand 1 to 330 ft (0.3 to 100 m) apart"), error);
}

GArray *
lb_pile_grid_lay (const LbPileGrid *grid, const LbPile *like, GStringChunk *strings, GError **error)
{
  g_return_val_if_fail (grid != NULL, NULL);
  g_return_val_if_fail (like != NULL, NULL);
  g_return_val_if_fail (strings != NULL, NULL);

  if (!check_grid (grid, error))
    return NULL;

  GArray *piles = g_array_sized_new (FALSE, FALSE, sizeof (LbPile), grid->n_bents * grid->n_rows);
  const double sine = sin (grid->bearing_rad), cosine = cos (grid->bearing_rad);

  for (guint i = 0; i < grid->n_bents; i++) {
    g_autofree char *bent = g_strdup_printf ("%u", grid->first_bent + i);

    for (guint j = 0; j < grid->n_rows; j++) {
      const char *row = row_letters (j, strings);
      g_autofree char *mark = g_strconcat (row, bent, NULL);
      const double along = i > 0 ? i * grid->bent_spacing_m : 0;
      const double across = j > 0 ? j * grid->row_spacing_m : 0;
      LbPile pile = *like;

      pile.id = "";
      pile.mark = g_string_chunk_insert (strings, mark);
      pile.bent = g_string_chunk_insert_const (strings, bent);
      pile.row = row;
      pile.note = g_string_chunk_insert_const (strings, like->note != NULL ? like->note : "");
      pile.x_m = grid->x_m + along * sine + across * cosine;
      pile.y_m = grid->y_m + along * cosine - across * sine;
      g_array_append_val (piles, pile);
    }
  }

  return piles;
}
