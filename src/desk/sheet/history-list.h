/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What was recorded of one pile, newest first; what was taken back is struck through. */
#define LB_TYPE_HISTORY_LIST (lb_history_list_get_type ())
G_DECLARE_FINAL_TYPE (LbHistoryList, lb_history_list, LB, HISTORY_LIST, GtkBox)

/* To be called again when the job has changed; @job NULL for nothing. */
void lb_history_list_show (LbHistoryList *self, LbJob *job, guint pile);

/* LbHistoryEntry each. */
GListModel *lb_history_list_get_model (LbHistoryList *self);

G_END_DECLS
