/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Delimited text, whole in memory.
 *
 * RFC 4180 is the published source; libcsv does the parsing. The text is fed to it one line of the
 * file at a time, because that is how a record's first line is known: libcsv counts none.
 *
 * Data structure: every cell's text stands, ended by a NUL, in one arena; @offsets has where each
 * begins, @rows which offsets are a row's and the line it began on.
 *
 * Beyond the RFC, since lists are sold under its name: CR or LF alone end a line, the delimiter is
 * sniffed unless a first line "sep=;" names it, blanks around an unquoted cell are dropped, rows may
 * be of different widths, blank lines count for nothing, and on a line where no cell begins with a
 * quote a quotation mark stands for itself (16" is a width).
 *
 * Invariants:
 * 1. What lies in the arena is UTF-8 without NUL: the whole text is checked before it is parsed.
 * 2. rows[i].first_cell + its cells = rows[i + 1].first_cell; no row is without a cell.
 * 3. Nothing is kept past the limits of the header: parsing stops at the first that is met.
 */
#include "exchange/text-table.h"

#include "exchange/exchange-error.h"

#include <csv.h>
#include <glib/gi18n-lib.h>
#include <string.h>

/* So many records are looked at to find the delimiter. */
#define SNIFFED_RECORDS 50
/* Lines between two looks at the cancellable. */
#define CANCEL_STRIDE 1024

typedef struct
{
  guint32 first_cell;
  guint32 line;
} Row;

struct _LbTextTable
{
  GByteArray *arena;
  GArray *offsets; /* guint32 */
  GArray *rows;    /* Row */
  LbTextTableShape shape;
};

typedef struct
{
  LbTextTable *table;
  guint32 row_line;
  guint32 row_first;
  gboolean is_row_done; /* by the line fed last */
  LbExchangeError failure;
  char *reason; /* set once a limit is met */
} Parse;

void
lb_text_table_free (LbTextTable *table)
{
  if (table == NULL)
    return;

  g_clear_pointer (&table->arena, g_byte_array_unref);
  g_clear_pointer (&table->offsets, g_array_unref);
  g_clear_pointer (&table->rows, g_array_unref);
  g_free (table);
}

/* --- Lines and delimiters ----------------------------------------------------------------- */

/* How long the line at @at is, its CRLF, CR or LF counted. */
static gsize
line_length (const char *at, const char *end)
{
  const char *from = at;

  while (from < end && *from != '\r' && *from != '\n')
    from++;
  if (from < end && *from == '\r' && from + 1 < end && from[1] == '\n')
    from++;

  return (gsize) (from - at) + (from < end ? 1 : 0);
}

static gsize
line_of (const char *text, const char *place)
{
  gsize line = 1;

  for (const char *at = text; at < place;) {
    at += line_length (at, place);
    if (at < place || place[-1] == '\n' || place[-1] == '\r')
      line++;
  }

  return line;
}

static const char delimiters[] = { '\t', ';', ',' };

/* Counts of each delimiter outside quotes in the records up to SNIFFED_RECORDS. */
static gsize
count_delimiters (const char *text,
                  const char *end,
                  guint counts[SNIFFED_RECORDS][G_N_ELEMENTS (delimiters)])
{
  gboolean is_quoted = FALSE, is_blank = TRUE;
  gsize n_records = 0;

  memset (counts[0], 0, sizeof counts[0]);
  for (const char *at = text; at < end; at++) {
    if (*at == '"') {
      is_quoted = !is_quoted;
      is_blank = FALSE;
    } else if (!is_quoted && (*at == '\n' || *at == '\r')) {
      if (is_blank)
        continue;
      n_records++;
      is_blank = TRUE;
      if (n_records == SNIFFED_RECORDS)
        return n_records;
      memset (counts[n_records], 0, sizeof counts[n_records]);
    } else {
      is_blank = FALSE;
      for (gsize i = 0; i < G_N_ELEMENTS (delimiters) && !is_quoted; i++)
        counts[n_records][i] += *at == delimiters[i] ? 1 : 0;
    }
  }

  return n_records + (is_blank ? 0 : 1);
}

/* The first of tab, semicolon and comma that stands equally often in (nearly) every record: a
 * comma may be the decimal sign of the other two, which themselves are seldom anything else. Failing
 * that, the one that is met in the most records. */
static char
sniff_delimiter (const char *text, const char *end)
{
  guint counts[SNIFFED_RECORDS][G_N_ELEMENTS (delimiters)];
  const gsize n_records = count_delimiters (text, end, counts);
  gsize best = G_N_ELEMENTS (delimiters) - 1, most = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (delimiters); i++) {
    gsize n_like_first = 0, n_met = 0;

    for (gsize record = 0; record < n_records; record++) {
      n_like_first += counts[record][i] == counts[0][i] ? 1 : 0;
      n_met += counts[record][i] > 0 ? 1 : 0;
    }
    if (n_records > 0 && counts[0][i] > 0 && n_like_first * 10 >= n_records * 9)
      return delimiters[i];
    if (n_met > most) {
      most = n_met;
      best = i;
    }
  }

  return delimiters[best];
}

/* "sep=;" as the first line names the delimiter; some spreadsheets write it. */
static gboolean
take_named_delimiter (const char *text, const char *end, char *out_delimiter)
{
  if (end - text < 5 || g_ascii_strncasecmp (text, "sep=", 4) != 0 ||
      (end - text > 5 && text[5] != '\r' && text[5] != '\n'))
    return FALSE;

  *out_delimiter = text[4];
  return *out_delimiter == '\t' || (g_ascii_ispunct (*out_delimiter) && *out_delimiter != '"');
}

/* Whether a cell of the line begins with a quotation mark; if none does, every one is a mark of
 * inches. */
static gboolean
has_quoted_cell (const char *line, gsize length, char delimiter)
{
  gboolean is_cell_start = TRUE;

  for (gsize i = 0; i < length; i++) {
    if (line[i] == '"' && is_cell_start)
      return TRUE;
    if (line[i] == delimiter)
      is_cell_start = TRUE;
    else if (line[i] != ' ' && line[i] != '\t')
      is_cell_start = FALSE;
  }

  return FALSE;
}

/* --- Parsing ------------------------------------------------------------------------------ */

static void
stop_for (Parse *parse, LbExchangeError failure, char *reason)
{
  if (parse->reason == NULL) {
    parse->failure = failure;
    parse->reason = reason;
  } else {
    g_free (reason);
  }
}

static void
take_cell (void *text, size_t length, void *data)
{
  Parse *parse = data;
  LbTextTable *table = parse->table;
  const guint32 offset = table->arena->len;

  if (parse->reason != NULL)
    return;
  if (table->offsets->len - parse->row_first >= LB_TEXT_TABLE_COLUMNS_MAX) {
    stop_for (parse, LB_EXCHANGE_ERROR_LARGE,
              g_strdup_printf (_ ("Line %u has more than %d columns: take out those that are not "
                                  "needed"),
                               parse->row_line, LB_TEXT_TABLE_COLUMNS_MAX));
    return;
  }

  g_array_append_val (table->offsets, offset);
  if (length > 0)
    g_byte_array_append (table->arena, text, (guint) length);
  g_byte_array_append (table->arena, (const guint8 *) "", 1);
}

static void
take_row (int terminator, void *data)
{
  Parse *parse = data;
  LbTextTable *table = parse->table;
  const Row row = { .first_cell = parse->row_first, .line = parse->row_line };

  parse->is_row_done = TRUE;
  if (parse->reason != NULL)
    return;
  if (table->rows->len >= LB_TEXT_TABLE_ROWS_MAX) {
    stop_for (parse, LB_EXCHANGE_ERROR_LARGE,
              g_strdup_printf (_ ("The list has more than %d rows: split it into shorter ones"),
                               LB_TEXT_TABLE_ROWS_MAX));
    return;
  }

  table->shape.n_columns = MAX (table->shape.n_columns, table->offsets->len - parse->row_first);
  g_array_append_val (table->rows, row);
  parse->row_first = table->offsets->len;
}

static void
stop_for_quote (Parse *parse, guint32 line)
{
  stop_for (
    parse, LB_EXCHANGE_ERROR_TEXT,
    g_strdup_printf (_ ("Line %u has a quotation mark in the middle of a cell: put the whole "
                        "cell in quotes and write the mark twice"),
                     line));
}

/* Feeds the text line by line; %FALSE when cancelled, or with @parse's reason set. */
static gboolean
feed_lines (Parse *parse,
            struct csv_parser *parser,
            const char *at,
            const char *end,
            guint32 line,
            char delimiter,
            GCancellable *cancellable,
            GError **error)
{
  gboolean is_in_row = FALSE;

  for (; at < end && parse->reason == NULL; line++) {
    const gsize length = line_length (at, end);

    if (line % CANCEL_STRIDE == 0 && g_cancellable_set_error_if_cancelled (cancellable, error))
      return FALSE;

    if (!is_in_row) {
      parse->row_line = line;
      csv_set_quote (parser, has_quoted_cell (at, length, delimiter) ? CSV_QUOTE : '\0');
    }
    parse->is_row_done = FALSE;
    /* At least doubles the buffer when it has to grow: a long cell costs linear time. */
    csv_set_blk_size (parser, MAX (length, csv_get_buffer_size (parser)));
    if (csv_parse (parser, at, length, take_cell, take_row, parse) != length) {
      if (csv_error (parser) == CSV_EPARSE)
        stop_for_quote (parse, line);
      else
        stop_for (parse, LB_EXCHANGE_ERROR_LARGE, g_strdup (csv_strerror (csv_error (parser))));
    }
    /* A line that ended no row is blank, or the row goes on because a quote is open. */
    is_in_row = !parse->is_row_done && parser->quoted && length > 0;
    at += length;
  }

  if (parse->reason == NULL && csv_fini (parser, take_cell, take_row, parse) != 0)
    stop_for (parse, LB_EXCHANGE_ERROR_TEXT,
              g_strdup_printf (_ ("The quotes that open in the row of line %u are never closed"),
                               parse->row_line));

  return parse->reason == NULL;
}

static gboolean
parse_lines (LbTextTable *table,
             const char *at,
             const char *end,
             guint32 line,
             GCancellable *cancellable,
             GError **error)
{
  Parse parse = { .table = table };
  struct csv_parser parser;

  if (csv_init (&parser, CSV_STRICT | CSV_STRICT_FINI) != 0) {
    g_set_error_literal (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_LARGE,
                         _ ("There is not enough memory to read the list"));
    return FALSE;
  }
  csv_set_delim (&parser, (unsigned char) table->shape.delimiter);

  const gboolean is_whole = feed_lines (&parse, &parser, at, end, line, table->shape.delimiter,
                                        cancellable, error);

  csv_free (&parser);
  if (parse.reason != NULL) {
    g_set_error_literal (error, LB_EXCHANGE_ERROR, (int) parse.failure, parse.reason);
    g_free (parse.reason);
    return FALSE;
  }

  return is_whole;
}

static gboolean
check_text (const char *text, gsize length, GError **error)
{
  const char *wrong;

  if (length >= 2 && (memcmp (text, "\xff\xfe", 2) == 0 || memcmp (text, "\xfe\xff", 2) == 0)) {
    g_set_error_literal (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_TEXT,
                         _ ("The list is UTF-16 text: save it as UTF-8"));
    return FALSE;
  }
  if (!g_utf8_validate_len (text, length, &wrong)) {
    const guint line = (guint) line_of (text, wrong);

    if (*wrong == '\0')
      g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_TEXT,
                   _ ("Line %u holds a zero byte: this is no text file"), line);
    else
      g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_TEXT,
                   _ ("Line %u is not UTF-8 text (byte 0x%02X): save the list as UTF-8"), line,
                   (guint) (guchar) *wrong);
    return FALSE;
  }

  return TRUE;
}

static gboolean
check_size (gsize length, GError **error)
{
  if (length <= LB_TEXT_TABLE_BYTES_MAX)
    return TRUE;

  g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_LARGE,
               _ ("The list is larger than %d MB: split it into shorter ones"),
               LB_TEXT_TABLE_BYTES_MAX / (1024 * 1024));
  return FALSE;
}

LbTextTable *
lb_text_table_parse (GBytes *bytes, GCancellable *cancellable, GError **error)
{
  g_return_val_if_fail (bytes != NULL, NULL);

  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);
  const char *end = text + length;
  guint32 line = 1;

  if (!check_size (length, error) || !check_text (text, length, error))
    return NULL;

  const char *at = length >= 3 && memcmp (text, "\xef\xbb\xbf", 3) == 0 ? text + 3 : text;
  g_autoptr (LbTextTable) table = g_new0 (LbTextTable, 1);

  table->arena = g_byte_array_new ();
  table->offsets = g_array_new (FALSE, FALSE, sizeof (guint32));
  table->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  if (take_named_delimiter (at, end, &table->shape.delimiter)) {
    at += line_length (at, end);
    line++;
  } else {
    table->shape.delimiter = sniff_delimiter (at, end);
  }
  if (!parse_lines (table, at, end, line, cancellable, error))
    return NULL;

  if (table->rows->len == 0) {
    g_set_error_literal (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_TEXT, _ ("The list is empty"));
    return NULL;
  }

  table->shape.n_rows = table->rows->len;
  return g_steal_pointer (&table);
}

LbTextTable *
lb_text_table_load (GFile *file, GCancellable *cancellable, GError **error)
{
  g_return_val_if_fail (G_IS_FILE (file), NULL);

  g_autofree char *name = g_file_get_parse_name (file);
  g_autoptr (GFileInputStream) stream = g_file_read (file, cancellable, error);

  if (stream == NULL) {
    g_prefix_error (error, _ ("Cannot read “%s”: "), name);
    return NULL;
  }

  /* One byte more than is taken tells a list that is too large, whatever the file claims. */
  g_autoptr (GByteArray) text = g_byte_array_new ();
  g_autofree guint8 *block = g_malloc (1 << 16);
  gssize n_read;

  while ((n_read = g_input_stream_read (G_INPUT_STREAM (stream), block, 1 << 16, cancellable,
                                        error)) > 0)
  {
    g_byte_array_append (text, block, (guint) n_read);
    if (!check_size (text->len, error))
      return NULL;
  }
  if (n_read < 0) {
    g_prefix_error (error, _ ("Cannot read “%s”: "), name);
    return NULL;
  }

  g_autoptr (GBytes) bytes = g_byte_array_free_to_bytes (g_steal_pointer (&text));

  return lb_text_table_parse (bytes, cancellable, error);
}

/* --- Reading back ------------------------------------------------------------------------- */

LbTextTableShape
lb_text_table_get_shape (const LbTextTable *table)
{
  g_return_val_if_fail (table != NULL, (LbTextTableShape){ 0 });

  return table->shape;
}

gsize
lb_text_table_row_cells (const LbTextTable *table, gsize row)
{
  g_return_val_if_fail (table != NULL, 0);

  if (row >= table->rows->len)
    return 0;

  const gsize next = row + 1 < table->rows->len
                       ? g_array_index (table->rows, Row, row + 1).first_cell
                       : table->offsets->len;

  return next - g_array_index (table->rows, Row, row).first_cell;
}

const char *
lb_text_table_cell (const LbTextTable *table, gsize row, gsize column)
{
  g_return_val_if_fail (table != NULL, "");

  if (column >= lb_text_table_row_cells (table, row))
    return "";

  const gsize cell = g_array_index (table->rows, Row, row).first_cell + column;

  return (const char *) table->arena->data + g_array_index (table->offsets, guint32, cell);
}

gsize
lb_text_table_line (const LbTextTable *table, gsize row)
{
  g_return_val_if_fail (table != NULL, 0);

  return row < table->rows->len ? g_array_index (table->rows, Row, row).line : 0;
}
