/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Reader of the tables of published figures; the form is in the header.
 *
 * A table is read in one pass over its lines by a small state machine: header lines, then the
 * line of names, then the line of units, then rows. What cannot be known until the end (that
 * there is a row at all, that each source is cited) is looked at after the last line.
 *
 * Invariants of a table that was read:
 * 1. it has a check, at least one row, at least one given and one expected column, and ends in
 *    "source";
 * 2. every row has as many cells as there are columns, all of them understood;
 * 3. every row cites a declared source, and every declared source is cited.
 *
 * The factors of the units stand here once more, apart from those of the program, so that one
 * wrong factor cannot agree with itself. */

#include "table-file.h"

#include <math.h>
#include <string.h>

/* Exact by definition: NIST SP 811, appendix B. The inch, the pound and standard gravity. */
#define INCH  0.0254
#define FOOT  0.3048
#define POUND 0.45359237
#define LBF   (POUND * 9.80665)
#define PSI   (LBF / (INCH * INCH))

typedef struct
{
  const char *name;
  const char *dimension;
  double si;
} Unit;

static const Unit UNITS[] = {
  { "1", "number", 1.0 },
  { "count", "number", 1.0 },
  { "%", "number", 0.01 },
  { "m", "length", 1.0 },
  { "mm", "length", 0.001 },
  { "in", "length", INCH },
  { "ft", "length", FOOT },
  { "fsw", "length", FOOT }, /* a depth in seawater, not a pressure */
  { "m²", "area", 1.0 },
  { "mm²", "area", 1e-6 },
  { "in²", "area", INCH *INCH },
  { "ft²", "area", FOOT *FOOT },
  { "mm⁴", "inertia", 1e-12 },
  { "in⁴", "inertia", INCH *INCH *INCH *INCH },
  { "m³", "volume", 1.0 },
  { "cu ft", "volume", FOOT *FOOT *FOOT },
  { "kg", "mass", 1.0 },
  { "lb", "mass", POUND },
  { "LT", "mass", 2240.0 * POUND }, /* long ton */
  { "lb/ft", "mass per length", POUND / FOOT },
  { "lb/1000 ft", "mass per length", POUND / FOOT / 1000.0 },
  { "kg/m", "mass per length", 1.0 },
  { "N", "force", 1.0 },
  { "kN", "force", 1000.0 },
  { "lbf", "force", LBF },
  { "kip", "force", 1000.0 * LBF },
  { "lbf·in", "moment", LBF *INCH },
  { "kN·m", "moment", 1000.0 },
  { "ft·LT", "moment", 2240.0 * LBF *FOOT },
  { "Pa", "pressure", 1.0 },
  { "kPa", "pressure", 1000.0 },
  { "psi", "pressure", PSI },
  { "psf", "pressure", LBF / (FOOT * FOOT) },
  { "kg/m³", "density", 1.0 },
  { "lb/cu ft", "density", POUND / (FOOT * FOOT * FOOT) },
  { "s", "time", 1.0 },
  { "min", "time", 60.0 },
  { "kn", "speed", 1852.0 / 3600.0 },
  { "rad", "angle", 1.0 },
  { "°", "angle", G_PI / 180.0 },
  { "s/in²", "burn rate", 1.0 / (INCH * INCH) },
  { "cu ft/min", "gas flow", FOOT *FOOT *FOOT / 60.0 },
  { "A", "current", 1.0 },
  { "V", "voltage", 1.0 },
};

typedef enum {
  COLUMN_TEXT,
  COLUMN_NUMBER,
  COLUMN_OWN,
  COLUMN_SOURCE,
} ColumnKind;

typedef struct
{
  char *name;
  ColumnKind kind;
  gboolean is_expected;
  const Unit *unit;
} Column;

struct _LbTableRow
{
  const LbTableFile *table;
  char *place;
  LbTableCell cells[LB_TABLE_FILE_COLUMNS_MAX];
};

struct _LbTableFile
{
  char *name;
  char *check;
  char *about;
  GHashTable *sources; /* key to text */
  GHashTable *cited;   /* keys */
  Column columns[LB_TABLE_FILE_COLUMNS_MAX];
  gsize n_columns;
  gboolean has_units;
  GPtrArray *rows;
};

G_DEFINE_QUARK (lb_table_file_error, lb_table_file_error)

static const Unit *
find_unit (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (UNITS); i++)
    if (g_str_equal (UNITS[i].name, name))
      return &UNITS[i];
  return NULL;
}

static void
row_free (gpointer data)
{
  LbTableRow *row = data;

  for (gsize i = 0; i < row->table->n_columns; i++)
    g_free ((char *) row->cells[i].text);
  g_free (row->place);
  g_free (row);
}

static LbTableFile *
table_new (const char *name)
{
  LbTableFile *table = g_new0 (LbTableFile, 1);

  table->name = g_strdup (name);
  table->sources = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  table->cited = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  table->rows = g_ptr_array_new_with_free_func (row_free);
  return table;
}

void
lb_table_file_free (LbTableFile *table)
{
  if (table == NULL)
    return;
  g_ptr_array_unref (table->rows);
  for (gsize i = 0; i < table->n_columns; i++)
    g_free (table->columns[i].name);
  g_hash_table_unref (table->sources);
  g_hash_table_unref (table->cited);
  g_free (table->name);
  g_free (table->check);
  g_free (table->about);
  g_free (table);
}

static gboolean G_GNUC_PRINTF (2, 3) fail (GError **error, const char *format, ...)
{
  va_list args;

  va_start (args, format);
  if (error != NULL)
    *error = g_error_new_valist (LB_TABLE_FILE_ERROR, 0, format, args);
  va_end (args);
  return FALSE;
}

/* Takes "NAME: TEXT" where @word may be followed by a key: "source KEY: TEXT". */
static gboolean
read_header_line (LbTableFile *table, const char *line, GError **error)
{
  const char *colon = strchr (line, ':');

  if (colon == NULL)
    return fail (error, "“%s” is neither a header line, a line of cells nor a comment", line);
  if (table->n_columns > 0)
    return fail (error, "“%s” comes after the columns; header lines stand before them", line);

  g_autofree char *name = g_strstrip (g_strndup (line, colon - line));
  g_autofree char *text = g_strstrip (g_strdup (colon + 1));

  if (text[0] == '\0')
    return fail (error, "“%s:” says nothing", name);

  if (g_str_has_prefix (name, "source ")) {
    g_autofree char *key = g_strstrip (g_strdup (name + strlen ("source ")));

    if (g_hash_table_contains (table->sources, key))
      return fail (error, "the source %s is declared twice", key);
    g_hash_table_insert (table->sources, g_steal_pointer (&key), g_steal_pointer (&text));
    return TRUE;
  }

  char **slot = g_str_equal (name, "check")   ? &table->check
                : g_str_equal (name, "about") ? &table->about
                                              : NULL;
  if (slot == NULL)
    return fail (error, "“%s” is no header; use check, about or source KEY", name);
  if (*slot != NULL)
    return fail (error, "there is a second “%s”", name);
  *slot = g_steal_pointer (&text);
  return TRUE;
}

static gboolean
read_names (LbTableFile *table, char **cells, gsize n_cells, GError **error)
{
  if (n_cells < 3 || n_cells > LB_TABLE_FILE_COLUMNS_MAX)
    return fail (error, "%" G_GSIZE_FORMAT " columns; a table has 3 to %d", n_cells,
                 LB_TABLE_FILE_COLUMNS_MAX);

  gsize n_given = 0, n_expected = 0;
  for (gsize i = 0; i < n_cells; i++) {
    g_autofree char *name = g_strdup (cells[i]);
    const gboolean is_expected = g_str_has_suffix (name, "=");

    if (is_expected)
      name[strlen (name) - 1] = '\0';
    g_strstrip (name);
    if (name[0] == '\0')
      return fail (error, "column %" G_GSIZE_FORMAT " has no name", i + 1);
    for (gsize j = 0; j < i; j++)
      if (g_str_equal (table->columns[j].name, name))
        return fail (error, "two columns are named “%s”", name);
    if (g_str_equal (name, "source") != (i + 1 == n_cells) || (i + 1 == n_cells && is_expected))
      return fail (error, "the last column, and only the last, is “source”");
    n_expected += is_expected;
    n_given += !is_expected && i + 1 < n_cells;
    table->columns[i] = (Column){ .name = g_steal_pointer (&name), .is_expected = is_expected };
    table->n_columns = i + 1;
  }
  if (n_given == 0 || n_expected == 0)
    return fail (error, "a table needs a column that is given and one that is expected (“name =”)");
  return TRUE;
}

static gboolean
read_units (LbTableFile *table, char **cells, GError **error)
{
  for (gsize i = 0; i < table->n_columns; i++) {
    Column *column = &table->columns[i];
    const gboolean is_source = i + 1 == table->n_columns;

    if (is_source != g_str_equal (cells[i], "key"))
      return fail (error, "“key” is the unit of the column “source” and of no other");
    if (is_source) {
      column->kind = COLUMN_SOURCE;
    } else if (g_str_equal (cells[i], "text")) {
      column->kind = COLUMN_TEXT;
    } else if (g_str_equal (cells[i], "own")) {
      column->kind = COLUMN_OWN;
    } else {
      column->kind = COLUMN_NUMBER;
      column->unit = find_unit (cells[i]);
      if (column->unit == NULL)
        return fail (error, "column “%s”: “%s” is no unit known here", column->name, cells[i]);
    }
  }
  table->has_units = TRUE;
  return TRUE;
}

/* A plain decimal number at the head of @text; strtod() alone would take "nan", "inf", "0x1p4". */
static gboolean
take_number (const char *text, double *out_value, const char **out_rest)
{
  const gsize n = strspn (text, "+-.0123456789eE");
  g_autofree char *digits = g_strndup (text, n);
  char *end = NULL;
  const double value = g_ascii_strtod (digits, &end);

  if (n == 0 || *end != '\0' || !isfinite (value))
    return FALSE;
  *out_value = value;
  *out_rest = text + n;
  return TRUE;
}

static gboolean
read_tolerance (const char *text, LbTableCell *cell, GError **error)
{
  const char *rest;
  double tolerance;

  if (!take_number (text, &tolerance, &rest) || tolerance < 0.0)
    return fail (error, "“%s”: “%s” is no tolerance", cell->text, text);
  if (rest[0] == '\0')
    cell->tolerance = tolerance * cell->unit_si;
  else if (g_str_equal (rest, "%"))
    cell->tolerance = tolerance / 100.0 * fabs (cell->value);
  else
    return fail (error, "“%s”: “%s” follows the tolerance", cell->text, rest);
  return TRUE;
}

static gboolean
read_number (const Column *column, LbTableCell *cell, GError **error)
{
  static const char PLUS_MINUS[] = "±";
  const Unit *unit = column->unit;
  const char *rest;

  if (column->is_expected && g_str_equal (cell->text, "refused")) {
    cell->is_refused = TRUE;
    return TRUE;
  }
  if (column->is_expected && g_str_equal (cell->text, "unlimited")) {
    cell->value = INFINITY;
    return TRUE;
  }

  if (!take_number (cell->text, &cell->value, &rest))
    return fail (error, "“%s” does not begin with a number", cell->text);

  const char *sign = strstr (rest, PLUS_MINUS);
  g_autofree char *between = g_strndup (rest, sign != NULL ? (gsize) (sign - rest) : strlen (rest));
  g_strstrip (between);

  if (column->kind == COLUMN_OWN) {
    unit = find_unit (between);
    if (unit == NULL)
      return fail (error, "“%s”: “%s” is no unit known here", cell->text, between);
  } else if (between[0] != '\0') {
    return fail (error, "“%s”: “%s” is too much", cell->text, between);
  }
  cell->unit = unit->name;
  cell->unit_si = unit->si;
  cell->value *= unit->si;

  if (column->is_expected && sign == NULL)
    return fail (error, "“%s” has no tolerance; write it as “±0.1” or “±1%%”", cell->text);
  if (!column->is_expected && sign != NULL)
    return fail (error, "“%s” is given and can have no tolerance", cell->text);
  return sign == NULL || read_tolerance (sign + strlen (PLUS_MINUS), cell, error);
}

static gboolean
read_row (LbTableFile *table, char **cells, guint line, GError **error)
{
  LbTableRow *row = g_new0 (LbTableRow, 1);

  row->table = table;
  row->place = g_strdup_printf ("%s:%u", table->name, line);
  g_ptr_array_add (table->rows, row);

  for (gsize i = 0; i < table->n_columns; i++) {
    const Column *column = &table->columns[i];
    LbTableCell *cell = &row->cells[i];

    cell->text = g_strdup (cells[i]);
    cell->unit = "";
    cell->unit_si = 1.0;
    if (cells[i][0] == '\0')
      return fail (error, "the cell under “%s” is empty", column->name);
    switch (column->kind) {
    case COLUMN_TEXT:
      break;
    case COLUMN_NUMBER:
    case COLUMN_OWN:
      if (!read_number (column, cell, error)) {
        g_prefix_error (error, "column “%s”: ", column->name);
        return FALSE;
      }
      break;
    case COLUMN_SOURCE:
      if (!g_hash_table_contains (table->sources, cells[i]))
        return fail (error, "the source %s is not declared", cells[i]);
      g_hash_table_add (table->cited, g_strdup (cells[i]));
      break;
    }
  }
  return TRUE;
}

static gboolean
read_cells (LbTableFile *table, const char *line, guint number, GError **error)
{
  const gsize n = strlen (line);

  if (n < 2 || line[n - 1] != '|')
    return fail (error, "a line of cells ends in “|”");

  g_autofree char *inner = g_strndup (line + 1, n - 2);
  g_auto (GStrv) cells = g_strsplit (inner, "|", -1);
  const gsize n_cells = g_strv_length (cells);

  for (gsize i = 0; i < n_cells; i++)
    g_strstrip (cells[i]);
  if (table->n_columns == 0)
    return read_names (table, cells, n_cells, error);
  if (n_cells != table->n_columns)
    return fail (error, "%" G_GSIZE_FORMAT " cells for %" G_GSIZE_FORMAT " columns", n_cells,
                 table->n_columns);
  if (!table->has_units)
    return read_units (table, cells, error);
  return read_row (table, cells, number, error);
}

static gboolean
is_whole (const LbTableFile *table, GError **error)
{
  GHashTableIter iter;
  gpointer key;

  if (table->check == NULL)
    return fail (error, "%s: it does not name its check", table->name);
  if (table->about == NULL)
    return fail (error, "%s: it does not say what it is about", table->name);
  if (table->rows->len == 0)
    return fail (error, "%s: it has no row", table->name);
  g_hash_table_iter_init (&iter, table->sources);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    if (!g_hash_table_contains (table->cited, key))
      return fail (error, "%s: no row cites the source %s", table->name, (const char *) key);
  return TRUE;
}

LbTableFile *
lb_table_file_parse (const char *name, const char *text, GError **error)
{
  g_return_val_if_fail (name != NULL && text != NULL, NULL);

  g_autoptr (LbTableFile) table = table_new (name);

  if (!g_utf8_validate (text, -1, NULL)) {
    fail (error, "%s: it is not UTF-8", name);
    return NULL;
  }

  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++) {
    const char *line = g_strstrip (lines[i]);

    if (line[0] == '\0' || line[0] == '#')
      continue;
    if (!(line[0] == '|' ? read_cells (table, line, i + 1, error)
                         : read_header_line (table, line, error)))
    {
      g_prefix_error (error, "%s:%u: ", name, i + 1);
      return NULL;
    }
  }
  return is_whole (table, error) ? g_steal_pointer (&table) : NULL;
}

LbTableFile *
lb_table_file_load (const char *path, GError **error)
{
  g_autofree char *name = g_path_get_basename (path);
  g_autofree char *text = NULL;

  if (!g_file_get_contents (path, &text, NULL, error))
    return NULL;
  return lb_table_file_parse (name, text, error);
}

const char *
lb_table_file_name (const LbTableFile *table)
{
  return table->name;
}

const char *
lb_table_file_check (const LbTableFile *table)
{
  return table->check;
}

gsize
lb_table_file_n_rows (const LbTableFile *table)
{
  return table->rows->len;
}

const LbTableRow *
lb_table_file_row (const LbTableFile *table, gsize i)
{
  return g_ptr_array_index (table->rows, i);
}

static const Column *
find_column (const LbTableFile *table, const char *name)
{
  for (gsize i = 0; i < table->n_columns; i++)
    if (g_str_equal (table->columns[i].name, name))
      return &table->columns[i];
  return NULL;
}

static const char *
column_dimension (const Column *column)
{
  switch (column->kind) {
  case COLUMN_TEXT:
    return "text";
  case COLUMN_OWN:
    return "own";
  case COLUMN_NUMBER:
    return column->unit->dimension;
  case COLUMN_SOURCE:
    break;
  }
  return "key";
}

gboolean
lb_table_file_has_columns (const LbTableFile *table,
                           const LbTableColumn *columns,
                           gsize n_columns,
                           GError **error)
{
  for (gsize i = 0; i < n_columns; i++) {
    const Column *column = find_column (table, columns[i].name);

    if (column == NULL)
      return fail (error, "%s: the column “%s” is missing", table->name, columns[i].name);
    if (column->is_expected != columns[i].is_expected)
      return fail (error,
                   columns[i].is_expected ? "%s: “%s” is expected, so write “%s =”"
                                          : "%s: “%s” is given, so write “%s” alone",
                   table->name, column->name, column->name);
    if (!g_str_equal (column_dimension (column), columns[i].dimension))
      return fail (error, "%s: “%s” is a %s here and the check takes a %s", table->name,
                   column->name, column_dimension (column), columns[i].dimension);
  }
  if (table->n_columns != n_columns + 1)
    return fail (error, "%s: it has columns that the check does not read", table->name);
  return TRUE;
}

const char *
lb_table_row_place (const LbTableRow *row)
{
  return row->place;
}

char *
lb_table_row_title (const LbTableRow *row)
{
  g_autoptr (GString) title = g_string_new (NULL);

  for (gsize i = 0; i < row->table->n_columns; i++) {
    const Column *column = &row->table->columns[i];

    if (column->is_expected || column->kind == COLUMN_SOURCE)
      continue;
    if (title->len > 0)
      g_string_append (title, ", ");
    g_string_append (title, row->cells[i].text);
    if (column->kind == COLUMN_NUMBER && !g_str_equal (column->unit->name, "1"))
      g_string_append_printf (title, " %s", column->unit->name);
  }
  /* GLib takes a slash as the start of a new suite, TAP a hash as that of a directive. */
  g_string_replace (title, "/", "∕", 0);
  g_string_replace (title, "#", "№", 0);
  return g_string_free (g_steal_pointer (&title), FALSE);
}

const char *
lb_table_row_source (const LbTableRow *row)
{
  const LbTableCell *cell = lb_table_row_cell (row, "source");

  return g_hash_table_lookup (row->table->sources, cell->text);
}

const LbTableCell *
lb_table_row_cell (const LbTableRow *row, const char *column)
{
  const Column *found = find_column (row->table, column);

  if (found == NULL)
    g_error ("%s: there is no column “%s”", row->place, column);
  return &row->cells[found - row->table->columns];
}
