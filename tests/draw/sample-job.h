/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"

G_BEGIN_DECLS

/* A small pier in memory with a few weeks of work on it, for pictures and pages. */

#define SAMPLE_N_BENTS 8u
#define SAMPLE_N_ROWS  5u

/* 14 July 2026. */
guint32 sample_job_first_day (void);

/* The piles and @n_days shifts, none on Sundays. */
LbLedger *sample_job_new (guint n_days);

/* No facts but the mark; appended to the piles. Returns its index. */
guint sample_job_add_pile (LbLedger *ledger, const char *mark);

/* A pile of which all is known: 16 in octagon, eight #8, 1:4 to the south, head +10 ft, cut at -31 ft in
 * 0 ft of tide. */
LbPile sample_known_pile (void);

/* A shift on @day. Returns its index. */
int sample_job_add_shift (LbLedger *ledger, guint32 day);

/* Appends a copy of @entry as an act of its own: seq, id and act are given to it, and strings
 * that are NULL become "". @entry's strings are borrowed. Returns the act. */
const char *sample_job_add (LbLedger *ledger, const LbEntry *entry);

/* The head of an entry of a shift, -1 for none, about no pile. */
#define SAMPLE_ENTRY(entry_kind, entry_shift) \
  .kind = (entry_kind), .shift = (entry_shift), .pile = -1

/* 14 July 2026 plus @day days, at @hour:@minute UTC. */
gint64 sample_time_us (guint day, guint hour, guint minute);

G_END_DECLS
