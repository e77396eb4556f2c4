/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/ledger.h"
#include "book/setting-table.h"
#include "trade/burn-left.h"
#include "trade/cut-basis.h"
#include "trade/dive-table.h"

#include <glib.h>

G_BEGIN_DECLS

/* What is true now, folded from the ledger; can be thrown away and made again. Pure: the same
 * ledger gives the same fold. 200,000 entries take milliseconds. */

typedef enum {
  LB_FLAG_SEVERED_WITH_BARS = 1 << 0,  /* said to be severed, bars left */
  LB_FLAG_PULLED_UNSEVERED = 1 << 1,   /* pulled, neither severed nor drawn whole */
  LB_FLAG_STUB_LEFT = 1 << 2,          /* broke: a stub is left and is on the list again */
  LB_FLAG_BARS_UNKNOWN = 1 << 3,       /* no bars on record */
  LB_FLAG_MORE_BARS_THAN_HAS = 1 << 4, /* more bars burned than the pile has */
  LB_FLAG_GONE_AND_BURNED = 1 << 5,    /* a bar is found gone by one entry and burned by another */
} LbPileFlag;

#define LB_FLAG_LAST LB_FLAG_GONE_AND_BURNED

const char *lb_pile_flag_words (LbPileFlag flag); /* msgid of a sentence that says what to do */

typedef struct
{
  LbStepSet done;
  LbStep step;                /* the one it is shown at */
  LbBarSet burned;            /* which bars are through, found gone or burned */
  LbBarSet gone;              /* those of them that were found gone */
  LbBarSet disputed;          /* said to be found gone, and to be burned */
  guint n_unplaced;           /* bars burned of which only the count is known */
  guint n_left;               /* bars left */
  guint flags;                /* LbPileFlag */
  gboolean is_drawn;          /* drawn whole */
  gint64 last_us;             /* last alive entry about it, 0 for none */
  int step_shift[LB_N_STEPS]; /* shift in which a step was reached, -1 */
} LbPileState;

/* Sums of a shift, a day, or the job. */
typedef struct
{
  guint steps[LB_N_STEPS]; /* piles that reached each step */
  guint bars;
  double rods, oxygen_m3, trigger_s;
  guint n_dives;
  double bottom_s; /* left surface to left bottom, rounded up to whole minutes a dive */
  double delay_s, fault_s;
} LbTotals;

typedef struct
{
  guint32 day; /* Julian day number */
  LbTotals totals;
  guint pulled_so_far; /* piles out at the end of it */
} LbDay;

/* A shift's signature. */
typedef struct
{
  gint64 at_us;     /* 0 while it is not signed */
  const char *who;  /* borrowed from the ledger, like the hash */
  const char *hash; /* the seal's SHA-256, 64 hexadecimal digits; "" when it cannot be read */
  guint64 n_rows;   /* under a signature in the file that was signed, with this one's */
  guint n_since;    /* entries that came to the shift after it was signed */
} LbSignature;

typedef struct
{
  guint n_piles;
  LbPile *piles;       /* with the facts set since; same index as the ledger's */
  LbPileState *states; /* the same */
  guint n_by_step[LB_N_STEPS];
  gsize n_days;
  LbDay *days; /* every day with a shift, in order */
  gsize n_shifts;
  LbTotals *shifts;        /* same index as the ledger's */
  LbSignature *signatures; /* the same */
  LbTotals job;
  guint8 *is_alive; /* one an entry: not taken back */
  gsize n_entries;
  LbUnits units;
  LbAssumptions assumptions;
  gboolean has_own_table; /* of no-stop limits */
  LbDiveTable own_table;
  LbCraneChart chart;                      /* no rows: none entered */
  LbGround ground;                         /* no layers: not known */
  const char *tables[LB_N_SETTING_TABLES]; /* as text, "" for none; borrowed from the ledger */
  LbCautionRow crew_rows[LB_CAUTION_CREW_ROWS_MAX]; /* cautions of the crew's own */
  gsize n_crew_rows;
  GStringChunk *crew_texts;    /* of those; NULL before there are any */
  gboolean has_own_visibility; /* to plan for; else the one said last is taken */
  LbVisibility own_visibility, said_visibility;
  int visibility_shift;           /* in which it was said, -1 for none */
  struct _LbFoldLessons *lessons; /* see lb_fold_basis() */
  const char *name;               /* the job's, borrowed from the ledger */
  const char *place;
  const char *datum;
  GHashTable *by_mark; /* lb_mark_key() of the present mark → index + 1; empty until asked for */
  LbTextPool *strings; /* of the facts set since */
} LbFold;

/**
 * lb_fold_new:
 * @until_us: only entries recorded up to then; G_MAXINT64 for all
 */
LbFold *lb_fold_new (const LbLedger *ledger, gint64 until_us);

/**
 * lb_fold_new_of_day:
 * @day: Julian day number
 *
 * How the job stood at the end of a day: the work of the shifts up to then, as it is known today.
 * Facts, settings and corrections are today's too.
 */
LbFold *lb_fold_new_of_day (const LbLedger *ledger, guint32 day);
void lb_fold_free (LbFold *fold);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbFold, lb_fold_free)

/**
 * lb_fold_basis:
 *
 * What the cut plans of this fold rest on: the assumptions, the own table, the visibility, and what the
 * dives so far teach. Learned when it is first asked for, as long as the ledger that was folded still lives, and
 * kept: it takes as long as all the rest of the fold, and much of what is shown needs none of it.
 */
const LbCutBasis *lb_fold_basis (const LbFold *fold);

/* The burning at all piles that are neither severed nor out. */
void lb_fold_burn_left (const LbFold *fold, LbBurnLeft *out_left);

/* Index by present mark (any case, spaces ignored), -1 for none. */
int lb_fold_find_mark (const LbFold *fold, const char *mark);

/* The present marks as a set of lb_mark_key(), to be unreffed; it is the caller's own. */
GHashTable *lb_fold_taken_marks (const LbFold *fold);

/* The act that "take back" would take back in @shift, and the take-back that "redo" would take
 * back; %NULL for none. Redo is offered only until something new is recorded. */
const char *lb_fold_next_take_back (const LbFold *fold, const LbLedger *ledger, int shift);
const char *lb_fold_next_redo (const LbFold *fold, const LbLedger *ledger, int shift);

G_END_DECLS
