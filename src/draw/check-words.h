/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/dive-account.h"
#include "book/fold.h"

G_BEGIN_DECLS

/* What of a caution's words names it: the order without its reason, its figures left out. “Hook
 * tension on before bar …”. To be freed. */
char *lb_caution_short_text (const LbCautionRow *row);

/* The same by key, also of the crew's own; one that no table here has is said by its key. */
char *lb_check_name_text (const LbFold *fold, const char *key);

/**
 * lb_checks_text:
 * @checks: LbCheck
 * @names_most: of those left open, and how many more there are after them; 0 for all
 *
 * “12 of 14 checks ticked; not: Hook tension on before bar …; …”. To be freed.
 */
char *lb_checks_text (const LbFold *fold, const GArray *checks, guint names_most);

G_END_DECLS
