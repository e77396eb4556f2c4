/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Puts every row of every table in this folder to the program, each as a test of its own, so that
 * a failure names the table, the line and the source. A table that cannot be read, names no known
 * check, or has a column that its check does not read, is a test that fails; so is a check that
 * no table calls for. */

#include "trial.h"

#include <string.h>

static const LbCheck *const CHECKS[] = {
  LB_CHECKS_STEEL, LB_CHECKS_CONCRETE, LB_CHECKS_DIVING,    LB_CHECKS_LIFTING,
  LB_CHECKS_GAS,   LB_CHECKS_HOLD,     LB_CHECKS_PLAN,      LB_CHECKS_UNITS,
  LB_CHECKS_CRANE, LB_CHECKS_GROUND,   LB_CHECKS_BURN_RATE,
};

/* A row and what to do with it; lives as long as the program. */
typedef struct
{
  const LbCheck *check;
  const LbTableRow *row;
  guint n_expected;
} Case;

static const LbCheck *
find_check (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (CHECKS); i++)
    for (const LbCheck *check = CHECKS[i]; check->name != NULL; check++)
      if (g_str_equal (check->name, name))
        return check;
  return NULL;
}

static void
test_row (gconstpointer data)
{
  const Case *one = data;
  LbTrial trial = { .row = one->row };

  one->check->run (&trial);
  if (!g_test_failed () && trial.n_answered != one->n_expected)
    lb_trial_fail (&trial, "%u of %u expected figures were looked at", trial.n_answered,
                   one->n_expected);
}

static void
test_fault (gconstpointer data)
{
  g_test_message ("%s", (const char *) data);
  g_test_fail ();
}

static void
add_fault (const char *name, char *message)
{
  g_autofree char *path = g_strdup_printf ("/published/%s/fault", name);

  g_test_add_data_func_full (path, message, test_fault, g_free);
}

/* Adds the rows of one table; %FALSE with the reason when it is not fit to be put to the test. */
static gboolean
add_table (LbTableFile *table, GHashTable *checks_met, GError **error)
{
  const LbCheck *check = find_check (lb_table_file_check (table));
  gsize n_columns = 0;
  guint n_expected = 0;

  if (check == NULL) {
    g_set_error (error, LB_TABLE_FILE_ERROR, 0, "%s: there is no check “%s”",
                 lb_table_file_name (table), lb_table_file_check (table));
    return FALSE;
  }
  for (; check->columns[n_columns].name != NULL; n_columns++)
    n_expected += check->columns[n_columns].is_expected;
  if (!lb_table_file_has_columns (table, check->columns, n_columns, error))
    return FALSE;
  g_hash_table_add (checks_met, (gpointer) check->name);

  for (gsize i = 0; i < lb_table_file_n_rows (table); i++) {
    const LbTableRow *row = lb_table_file_row (table, i);
    g_autofree char *title = lb_table_row_title (row);
    g_autofree char *path = g_strdup_printf ("/published/%s: %s", lb_table_row_place (row), title);
    Case *one = g_new (Case, 1);

    *one = (Case){ .check = check, .row = row, .n_expected = n_expected };
    g_test_add_data_func_full (path, one, test_row, g_free);
  }
  return TRUE;
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

static void
add_folder (const char *folder, GPtrArray *tables, GHashTable *checks_met)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &error);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  if (dir == NULL) {
    add_fault ("folder", g_strdup (error->message));
    return;
  }
  for (const char *name; (name = g_dir_read_name (dir)) != NULL;)
    if (g_str_has_suffix (name, ".tab"))
      g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_sort (names, compare_names);

  for (guint i = 0; i < names->len; i++) {
    const char *name = g_ptr_array_index (names, i);
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_autoptr (GError) fault = NULL;
    LbTableFile *table = lb_table_file_load (path, &fault);

    if (table != NULL)
      g_ptr_array_add (tables, table);
    if (table == NULL || !add_table (table, checks_met, &fault))
      add_fault (name, g_strdup (fault->message));
  }
}

int
main (int argc, char **argv)
{
  g_autoptr (GPtrArray) tables = g_ptr_array_new_with_free_func (
    (GDestroyNotify) lb_table_file_free);
  g_autoptr (GHashTable) checks_met = g_hash_table_new (g_str_hash, g_str_equal);

  g_test_init (&argc, &argv, NULL);
  add_folder (LB_TABLES_DIR, tables, checks_met);
  for (gsize i = 0; i < G_N_ELEMENTS (CHECKS); i++)
    for (const LbCheck *check = CHECKS[i]; check->name != NULL; check++)
      if (!g_hash_table_contains (checks_met, check->name))
        add_fault (check->name, g_strdup_printf ("no table calls for “%s”", check->name));
  return g_test_run ();
}
