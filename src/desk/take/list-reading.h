/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "exchange/pile-list.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* The slow halves of taking a pile list, each on a worker thread. */

/* Result: LbTextTable. */
void lb_list_load_async (GFile *file,
                         GCancellable *cancellable,
                         GAsyncReadyCallback callback,
                         gpointer data);
LbTextTable *lb_list_load_finish (GAsyncResult *result, GError **error);

/**
 * lb_list_read_async:
 * @table: must live until the callback
 * @taken: (transfer full): marks already in the job, lower case
 *
 * Result: LbPileListRows.
 */
void lb_list_read_async (const LbTextTable *table,
                         const LbPileListMap *map,
                         const LbPile *defaults,
                         GHashTable *taken,
                         GCancellable *cancellable,
                         GAsyncReadyCallback callback,
                         gpointer data);
LbPileListRows *lb_list_read_finish (GAsyncResult *result, GError **error);

G_END_DECLS
