/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "draw/picture-text.h"

G_BEGIN_DECLS

/* One day's entries sorted for a reader; what was taken back is not there. */

/* What was done at one pile. */
typedef struct
{
  int pile; /* -1 for what was not put to any pile */
  LbStepSet steps;
  gboolean is_drawn, is_broken;
  LbBarSet bars;
  guint n_bars; /* with those of which only the count was said */
  double trigger_s, rods, oxygen_m3;
  GString *notes;
} LbPileWork;

/* Time lost to one cause or part. */
typedef struct
{
  const char *what; /* borrowed */
  double lost_s;
  guint n_times;
  GString *notes;
} LbLost;

typedef struct
{
  GArray *piles;         /* LbPileWork, in the order first worked */
  GArray *delays;        /* LbLost */
  GArray *faults;        /* LbLost */
  GPtrArray *conditions; /* const LbEntry */
  GPtrArray *notes;      /* const LbEntry, those not put to a pile */
  LbTotals today, to_date;
  guint pulled_so_far;
} LbDayWork;

LbDayWork *lb_day_work_new (const LbVoice *voice,
                            const LbLedger *ledger,
                            const LbFold *fold,
                            guint32 day);

/* The same of one shift alone; the sums to date stay empty. */
LbDayWork *lb_day_work_new_of_shift (const LbVoice *voice,
                                     const LbLedger *ledger,
                                     const LbFold *fold,
                                     int shift);
void lb_day_work_free (LbDayWork *work);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbDayWork, lb_day_work_free)

G_END_DECLS
