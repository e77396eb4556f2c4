/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A pile list into the job. The order of things is what makes it safe: the list is read whole, every
 * fault is said, and only then is anything stored, all of it in one transaction or nothing. */
#include "exchange/pile-list.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static gboolean is_dry_run, takes_good_rows;
static char **map_options, **default_options;
static char *units_option, *datum_option;

static const GOptionEntry options[] = {
  { "dry-run", 0, 0, G_OPTION_ARG_NONE, &is_dry_run, N_ ("Say what would be taken; change nothing"),
    NULL },
  { "good-rows", 0, 0, G_OPTION_ARG_NONE, &takes_good_rows,
    N_ ("Take the good rows though others are bad"), NULL },
  { "map", 0, 0, G_OPTION_ARG_STRING_ARRAY, &map_options,
    N_ ("Which column, by heading or number, a fact stands in; none after “=” for nowhere"),
    N_ ("FACT=COLUMN") },
  { "default", 0, 0, G_OPTION_ARG_STRING_ARRAY, &default_options,
    N_ ("A fact of every pile where the list says nothing"), N_ ("FACT=VALUE") },
  { "units", 0, 0, G_OPTION_ARG_STRING, &units_option,
    N_ ("Of numbers that say no unit; the job’s when not given"), "us|metric" },
  { "datum", 0, 0, G_OPTION_ARG_STRING, &datum_option, N_ ("Record what the elevations count from"),
    N_ ("TEXT") },
  { NULL },
};

/* "bar inset=3": the fact, and what stands behind the sign; %NULL with a message when it is none. */
static const char *
split_option (const char *option, LbFact *out_fact)
{
  const char *sign = strchr (option, '=');
  g_autofree char *name = sign != NULL ? g_strndup (option, (gsize) (sign - option)) : NULL;

  if (name != NULL && lb_fact_from_name (name, out_fact))
    return sign + 1;

  lb_tool_misuse (_ ("“%s” names no fact: write for example mark=1 or width=16"), option);
  return NULL;
}

/* A column by its number from 1, or by its heading in any case. */
static gboolean
find_column (const LbTextTable *table, const LbPileListMap *map, const char *text, int *out_column)
{
  const gsize n_columns = lb_text_table_get_shape (table).n_columns;
  guint64 number;

  if (*text == '\0') {
    *out_column = LB_COLUMN_NONE;
    return TRUE;
  }
  if (map->has_heading) {
    g_autofree char *wanted = g_utf8_casefold (text, -1);

    for (gsize column = 0; column < n_columns; column++) {
      g_autofree char *heading = g_utf8_casefold (lb_text_table_cell (table, 0, column), -1);

      if (g_str_equal (heading, wanted)) {
        *out_column = (int) column;
        return TRUE;
      }
    }
  }
  if (!g_ascii_string_to_unsigned (text, 10, 1, n_columns, &number, NULL))
    return FALSE;

  *out_column = (int) number - 1;
  return TRUE;
}

static gboolean
apply_maps (const LbTextTable *table, LbPileListMap *map)
{
  for (char **option = map_options; option != NULL && *option != NULL; option++) {
    LbFact fact;
    const char *column = split_option (*option, &fact);

    if (column == NULL)
      return FALSE;
    if (!find_column (table, map, column, &map->column_of[fact])) {
      lb_tool_misuse (_ ("the list has no column “%s”"), column);
      return FALSE;
    }
  }

  return TRUE;
}

static const char *
keep_text (gpointer pool, const char *text)
{
  return g_string_chunk_insert_const (pool, text);
}

static gboolean
apply_defaults (LbPile *pile, LbUnits units, GStringChunk *pool)
{
  for (char **option = default_options; option != NULL && *option != NULL; option++) {
    g_autoptr (GError) error = NULL;
    LbFact fact;
    const char *value = split_option (*option, &fact);

    if (value == NULL)
      return FALSE;
    if (!lb_pile_set (pile, fact, value, units, keep_text, pool, &error)) {
      lb_tool_misuse ("%s", error->message);
      return FALSE;
    }
  }

  return TRUE;
}

static void
say_faults (const char *list, const GPtrArray *faults)
{
  for (guint i = 0; i < faults->len; i++) {
    const LbPileListFault *fault = g_ptr_array_index (faults, i);

    g_printerr ("%s:%" G_GSIZE_FORMAT ": %s: %s\n", list, fault->line, fault->column,
                fault->reason);
  }
}

static gboolean
store (const LbToolJob *job, const LbPileListRows *rows, GError **error)
{
  LbDraft datum = LB_DRAFT_INIT (LB_ENTRY_SETTING);

  datum.what = "datum";
  datum.note = datum_option;

  return (rows->piles->len == 0 ||
          lb_book_add_piles (job->book, (const LbPile *) (gconstpointer) rows->piles->data,
                             rows->piles->len, NULL, NULL, NULL, error)) &&
         (datum_option == NULL || lb_book_record (job->book, &datum, 1, NULL, error));
}

/* Says the outcome, and takes what is to be taken. */
static LbExit
take (const LbToolJob *job, const LbPileListRows *rows, const char *list)
{
  const guint n_good = rows->piles->len, n_bad = rows->faults->len;
  g_autoptr (GError) error = NULL;

  say_faults (list, rows->faults);
  if (n_bad > 0 && !takes_good_rows) {
    g_printerr (ngettext ("%s: %u row is wrong, so nothing was taken: put it right, or take the "
                          "others with --good-rows\n",
                          "%s: %u rows are wrong, so nothing was taken: put them right, or take "
                          "the others with --good-rows\n",
                          n_bad),
                g_get_prgname (), n_bad);
    return LB_EXIT_REFUSED;
  }
  if (is_dry_run) {
    g_print (ngettext ("%u pile would be taken.\n", "%u piles would be taken.\n", n_good), n_good);
    return LB_EXIT_DONE;
  }
  if (!store (job, rows, &error))
    return lb_tool_refuse (error);

  g_print (ngettext ("%u pile taken.\n", "%u piles taken.\n", n_good), n_good);
  return LB_EXIT_DONE;
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (args[1]);
  g_autoptr (GStringChunk) pool = g_string_chunk_new (256);
  LbPileListMap map;
  LbPile defaults;

  if (!lb_tool_job_open (&job, args[0], LB_BOOK_WRITE, &error))
    return lb_tool_refuse (error);

  LbUnits units = job.fold->units;

  if (!lb_tool_read_units (units_option, &units, &error))
    return lb_tool_misuse ("%s", error->message);

  g_autoptr (LbTextTable) table = lb_text_table_load (file, NULL, &error);

  if (table == NULL)
    return lb_tool_refuse (error);

  lb_pile_init (&defaults);
  lb_pile_list_guess (table, units, &map);
  if (!apply_maps (table, &map) || !apply_defaults (&defaults, units, pool))
    return LB_EXIT_USAGE;

  g_autoptr (GHashTable) taken = lb_fold_taken_marks (job.fold);
  g_autoptr (LbPileListRows) rows = lb_pile_list_read (table, &map, &defaults, taken, NULL, NULL,
                                                       NULL, &error);

  return rows != NULL ? take (&job, rows, args[1]) : lb_tool_refuse (error);
}

const LbCommand lb_command_take_piles = {
  .name = "take-piles",
  .arguments = N_ ("FILE LIST"),
  .summary = N_ ("Take the piles of a survey’s list: delimited text, UTF-8"),
  .more = N_ ("Columns are found by their headings (point, northing, easting, elevation, "
              "description; mark, bent, row, width, batter, bearing …). What is wrong is said on "
              "stderr as LIST:LINE: COLUMN: REASON; then nothing is taken, unless --good-rows is "
              "given."),
  .options = options,
  .least = 2,
  .most = 2,
  .run = run,
};
