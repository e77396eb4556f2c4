/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/take/list-reading.h"

typedef struct
{
  const LbTextTable *table;
  LbPileListMap map;
  LbPile defaults;
  GHashTable *taken;
} Reading;

static void
reading_free (Reading *reading)
{
  g_hash_table_unref (reading->taken);
  g_free (reading);
}

static void
load_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  GError *error = NULL;
  LbTextTable *table = lb_text_table_load (G_FILE (data), cancellable, &error);

  if (table != NULL)
    g_task_return_pointer (task, table, (GDestroyNotify) lb_text_table_free);
  else
    g_task_return_error (task, error);
}

static void
read_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Reading *reading = data;
  GError *error = NULL;
  LbPileListRows *rows = lb_pile_list_read (reading->table, &reading->map, &reading->defaults,
                                            reading->taken, NULL, NULL, cancellable, &error);

  if (rows != NULL)
    g_task_return_pointer (task, rows, (GDestroyNotify) lb_pile_list_rows_free);
  else
    g_task_return_error (task, error);
}

void
lb_list_load_async (GFile *file,
                    GCancellable *cancellable,
                    GAsyncReadyCallback callback,
                    gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);

  g_task_set_source_tag (task, lb_list_load_async);
  g_task_set_task_data (task, g_object_ref (file), g_object_unref);
  g_task_run_in_thread (task, load_thread);
}

LbTextTable *
lb_list_load_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

void
lb_list_read_async (const LbTextTable *table,
                    const LbPileListMap *map,
                    const LbPile *defaults,
                    GHashTable *taken,
                    GCancellable *cancellable,
                    GAsyncReadyCallback callback,
                    gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  Reading *reading = g_new0 (Reading, 1);

  *reading = (Reading){ .table = table, .map = *map, .defaults = *defaults, .taken = taken };
  g_task_set_source_tag (task, lb_list_read_async);
  g_task_set_task_data (task, reading, (GDestroyNotify) reading_free);
  g_task_run_in_thread (task, read_thread);
}

LbPileListRows *
lb_list_read_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
