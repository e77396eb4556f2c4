/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "trade/repetitive.h"

#include <glib.h>

G_BEGIN_DECLS

/* The dives of the job in order of time, to tell what each diver has behind him. A diver is who the
 * dives say, whatever the case and the blanks about it: two names of one person are two divers.
 * Borrows the ledger and the fold. */
typedef struct _LbDiveLog LbDiveLog;

LbDiveLog *lb_dive_log_new (const LbLedger *ledger, const LbFold *fold);
void lb_dive_log_free (LbDiveLog *log);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbDiveLog, lb_dive_log_free)

/* The job's own table of no-stop limits; NULL for the U.S. Navy's. */
const LbDiveTable *lb_dive_log_get_table (const LbDiveLog *log);

/* What one diver's names have in common. To be freed. */
char *lb_diver_key (const char *name);

/* Whether two names are one diver's. */
gboolean lb_is_same_diver (const char *a, const char *b);

/**
 * lb_dive_log_of:
 * @but: (nullable): an entry to leave out
 * @until_us: dives that began then or before
 *
 * Returns: (transfer full): LbDive, the diver's, back to a stay of 16 hours on the surface: what
 *   lb_dive_left() asks for. A dive without any time counts whenever its shift may have been.
 */
GArray *lb_dive_log_of (const LbDiveLog *log,
                        const char *diver,
                        const LbEntry *but,
                        gint64 until_us);

/**
 * lb_dive_log_left:
 * @depth_m: planned, as it will be read on the pneumofathometer
 *
 * The bottom time without stops that @diver has for a dive that begins at @start_us, by the job's
 * table.
 */
LbDiveLeft lb_dive_log_left (const LbDiveLog *log,
                             const char *diver,
                             double depth_m,
                             gint64 start_us);

/* The same before a dive on record: what its bottom time is to be compared with. */
LbDiveLeft lb_dive_log_left_before (const LbDiveLog *log, const LbEntry *dive);

/* The diver's last dive; NULL for none. */
const LbEntry *lb_dive_log_last (const LbDiveLog *log, const char *diver);

G_END_DECLS
