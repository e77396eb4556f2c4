/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tool/command.h"

G_BEGIN_DECLS

/**
 * lb_record_checks:
 * @drafts: (inout): LbDraft
 * @shift: in the ledger, -1 for one that is not open yet
 * @dive_us: when the dive left the surface, 0 for the next one
 * @keys: (array length=n_keys): cautions that were ticked, or “all”
 *
 * What is to be recorded of the cautions of a pile's cut, gone through before a dive.
 */
gboolean lb_record_checks (GArray *drafts,
                           const LbToolJob *job,
                           int shift,
                           guint pile,
                           gint64 dive_us,
                           int n_keys,
                           char **keys,
                           GError **error);

G_END_DECLS
