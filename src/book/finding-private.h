/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/dive-record.h"
#include "book/finding.h"
#include "book/seal-text.h"

G_BEGIN_DECLS

/* What finding-….c say to each other. */

/* In place of a shift: all of them; -1 is none. */
#define LB_EVERY_SHIFT (-2)

/* What is said of a shift as a whole. */
typedef struct
{
  const LbEntry *hours, *seal; /* the last word; NULL for none */
  LbSealText *sealed;          /* what that seal says; NULL when it cannot be read */
  LbRecordSaid said;
  double wet_trigger_s; /* at piles that are cut under water */
  guint n_dives_open;   /* without a bottom time */
} LbShiftGlance;

/* One search, of all or of one shift or pile; entries that cannot matter to it are left out. */
typedef struct
{
  const LbLedger *ledger;
  const LbFold *fold;
  int shift;             /* or LB_EVERY_SHIFT */
  int pile;              /* -1 for all */
  LbShiftGlance *shifts; /* same index as the ledger's */
  GPtrArray *works;      /* const LbEntry: steps and bars, by pile, then shift, then time */
  GPtrArray *dives;      /* const LbEntry: of the shifts in question and the days about them */
  GPtrArray *late; /* const LbEntry: in signed shifts, not under the signature, and no correction */
  GHashTable *answers; /* key → const LbEntry */
  GArray *found;       /* LbFinding */
} LbFindingSearch;

/* Whether findings of @shift are asked for. */
static inline gboolean
lb_finding_search_has (const LbFindingSearch *search, int shift)
{
  return search->shift == LB_EVERY_SHIFT || search->shift == shift;
}

/* Adds a copy of @finding with the key made of its kind and the ids, if it is asked for; @id and
 * @other may be NULL. */
void lb_finding_search_add (LbFindingSearch *search,
                            const LbFinding *finding,
                            const char *id,
                            const char *other,
                            const char *third);

void lb_finding_search_piles (LbFindingSearch *search);
void lb_finding_search_dives (LbFindingSearch *search);
void lb_finding_search_shifts (LbFindingSearch *search);

G_END_DECLS
