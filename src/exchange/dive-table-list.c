/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/dive-table-list.h"

#include "book/dive-table-text.h"
#include "exchange/exchange-error.h"
#include "exchange/text-table.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* The cells with commas between them, each row on the line that it has in the list, so that what is
 * wrong is found there. */
static char *
make_plain (const LbTextTable *cells, GError **error)
{
  const gsize n_rows = lb_text_table_get_shape (cells).n_rows;
  g_autoptr (GString) plain = g_string_new (NULL);
  gsize line = 1;

  for (gsize row = 0; row < n_rows; row++) {
    for (; line < lb_text_table_line (cells, row); line++)
      g_string_append_c (plain, '\n');
    for (gsize column = 0; column < lb_text_table_row_cells (cells, row); column++) {
      const char *cell = lb_text_table_cell (cells, row, column);

      if (strpbrk (cell, ",\n\r") != NULL) {
        g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                     _ ("Line %u, column %u: “%s” is no cell of a table of limits: write whole "
                        "minutes, and depths as 40 or 12.5"),
                     (guint) line, (guint) column + 1, cell);
        return NULL;
      }
      g_string_append_printf (plain, "%s%s", column > 0 ? "," : "", cell);
    }
  }
  g_string_append_c (plain, '\n');
  return g_string_free (g_steal_pointer (&plain), FALSE);
}

static char *
check_plain (const LbTextTable *cells, LbDiveTable *out, GError **error)
{
  g_autofree char *plain = make_plain (cells, error);

  if (plain == NULL || !lb_dive_table_from_text (plain, out, error))
    return NULL;
  return g_steal_pointer (&plain);
}

char *
lb_dive_table_from_csv (const char *text, gsize length, LbDiveTable *out, GError **error)
{
  g_return_val_if_fail (text != NULL, NULL);
  g_return_val_if_fail (out != NULL, NULL);

  g_autoptr (GBytes) bytes = g_bytes_new_static (text, length);
  g_autoptr (LbTextTable) cells = lb_text_table_parse (bytes, NULL, error);

  return cells != NULL ? check_plain (cells, out, error) : NULL;
}

char *
lb_dive_table_load (GFile *file, LbDiveTable *out, GError **error)
{
  g_return_val_if_fail (G_IS_FILE (file), NULL);
  g_return_val_if_fail (out != NULL, NULL);

  g_autoptr (LbTextTable) cells = lb_text_table_load (file, NULL, error);

  return cells != NULL ? check_plain (cells, out, error) : NULL;
}
