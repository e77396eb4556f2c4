/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"
#include "book/demo-events.h"

G_BEGIN_DECLS

/* What the demo's shifts say beside their work, each as an act. @like: with the shift and when it is
 * said. @shift: from 0. */

/* What is aboard, played on from shift to shift. */
typedef struct
{
  double rods, cylinders;
} LbDemoStore;

#define LB_DEMO_STORE_INIT \
  {                        \
    260, 16                \
  }

gboolean lb_demo_record_conditions (LbBook *book,
                                    const LbDraft *like,
                                    int shift,
                                    const LbDemoWeather *weather,
                                    GError **error);
gboolean lb_demo_record_crew (LbBook *book, const LbDraft *like, GError **error);

/* What happened from outside in this shift. */
gboolean lb_demo_record_event (LbBook *book,
                               const LbDraft *like,
                               const LbDemoEvent *event,
                               GError **error);

/**
 * lb_demo_record_end:
 * @opened_us: when the shift began
 * @store: (inout): without what the shift used
 *
 * The hours, what came aboard when it ran short, and now and then a count.
 */
gboolean lb_demo_record_end (LbBook *book,
                             const LbDraft *like,
                             int shift,
                             gint64 opened_us,
                             LbDemoStore *store,
                             GError **error);

G_END_DECLS
