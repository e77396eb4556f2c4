/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/setting-list.h"

#include "exchange/caution-list.h"
#include "exchange/decimal-sign.h"
#include "exchange/exchange-error.h"
#include "exchange/text-table.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define DIGITS "0123456789"

typedef struct
{
  const LbTextTable *cells;
  gboolean has_decimals;
  LbDecimalSign sign; /* of the whole list: a radius of 9.5 tells that 12,500 is grouped */
  gsize row, column;
} Reading;

/* Takes @said, what is wrong in the cell. */
static gboolean
refuse (const Reading *reading, char *said, GError **error)
{
  g_autofree char *reason = said;

  g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE, _ ("Line %u, column %u: %s"),
               (guint) lb_text_table_line (reading->cells, reading->row),
               (guint) reading->column + 1, reason);
  return FALSE;
}

static void
look_at_signs (Reading *reading)
{
  const gsize n_rows = lb_text_table_get_shape (reading->cells).n_rows;

  for (gsize row = 1; row < n_rows; row++)
    for (gsize column = 0; column < lb_text_table_row_cells (reading->cells, row); column++) {
      const char *cell = lb_text_table_cell (reading->cells, row, column);

      if (strpbrk (cell, DIGITS) != NULL)
        reading->sign = lb_decimal_sign_look (reading->sign, cell);
    }
}

/* The first line is words. */
static gboolean
append_cell (const Reading *reading, GString *plain, GError **error)
{
  const char *cell = lb_text_table_cell (reading->cells, reading->row, reading->column);
  const gboolean is_number = reading->has_decimals && reading->row > 0 &&
                             strpbrk (cell, DIGITS) != NULL;
  g_autofree char *number = is_number ? lb_decimal_sign_plain (reading->sign, cell) : NULL;
  const char *taken = is_number ? number : cell;

  if (taken == NULL)
    return refuse (reading,
                   g_strdup_printf (_ ("“%s” can be read two ways, because the list has decimal "
                                       "points and decimal commas: write it without grouping"),
                                    cell),
                   error);
  if (strpbrk (taken, ",\n\r") != NULL)
    return refuse (reading,
                   g_strdup_printf (_ ("“%s” is no cell of such a table: write one number or word, "
                                       "without grouping"),
                                    cell),
                   error);
  g_string_append_printf (plain, "%s%s", reading->column > 0 ? "," : "", taken);
  return TRUE;
}

/* The cells with commas between them, each row on the line that it has in the list, so that what is
 * wrong is found there. */
static char *
make_plain (Reading *reading, GError **error)
{
  const gsize n_rows = lb_text_table_get_shape (reading->cells).n_rows;
  g_autoptr (GString) plain = g_string_new (NULL);
  gsize line = 1;

  for (reading->row = 0; reading->row < n_rows; reading->row++) {
    const gsize n_cells = lb_text_table_row_cells (reading->cells, reading->row);

    for (; line < lb_text_table_line (reading->cells, reading->row); line++)
      g_string_append_c (plain, '\n');
    for (reading->column = 0; reading->column < n_cells; reading->column++)
      if (!append_cell (reading, plain, error))
        return NULL;
  }
  g_string_append_c (plain, '\n');
  return g_string_free (g_steal_pointer (&plain), FALSE);
}

static char *
take (LbSettingTable table, const LbTextTable *cells, GError **error)
{
  Reading reading = { .cells = cells, .has_decimals = lb_setting_table_has_decimals (table) };

  if (cells == NULL)
    return NULL;
  if (reading.has_decimals)
    look_at_signs (&reading);

  g_autofree char *plain = make_plain (&reading, error);

  if (plain == NULL || !lb_setting_table_check (table, plain, error))
    return NULL;
  return g_steal_pointer (&plain);
}

/* A list of its own form: with commas in its words, and columns in any order. */
static char *
take_cautions (const char *text, gsize length, GError **error)
{
  gsize n_built_in;
  const LbCautionRow *built_in = lb_caution_rows (&n_built_in);
  g_autoptr (LbCrewCautions) list = lb_crew_cautions_from_csv (text, length, built_in, n_built_in,
                                                               error);

  return list != NULL ? lb_crew_cautions_to_text (list) : NULL;
}

static char *
load_cautions (GFile *file, GError **error)
{
  g_autoptr (GBytes) bytes = g_file_load_bytes (file, NULL, NULL, error);
  gsize length;
  const char *text;

  if (bytes == NULL)
    return NULL;
  text = g_bytes_get_data (bytes, &length);
  return take_cautions (text != NULL ? text : "", length, error);
}

char *
lb_setting_list_from_csv (LbSettingTable table, const char *text, gsize length, GError **error)
{
  g_return_val_if_fail (text != NULL, NULL);

  if (table == LB_TABLE_CAUTIONS)
    return take_cautions (text, length, error);

  g_autoptr (GBytes) bytes = g_bytes_new_static (text, length);
  g_autoptr (LbTextTable) cells = lb_text_table_parse (bytes, NULL, error);

  return take (table, cells, error);
}

char *
lb_setting_list_load (LbSettingTable table, GFile *file, GError **error)
{
  g_return_val_if_fail (G_IS_FILE (file), NULL);

  if (table == LB_TABLE_CAUTIONS)
    return load_cautions (file, error);

  g_autoptr (LbTextTable) cells = lb_text_table_load (file, NULL, error);

  return take (table, cells, error);
}
