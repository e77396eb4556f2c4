/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"

G_BEGIN_DECLS

#define LB_DELAY_CAUSES_MAX 40

/**
 * lb_delay_causes_from_text:
 * @text: as the job's setting “delay-causes” holds them: the line “cause”, then a line a cause
 *
 * Returns: (transfer full) (nullable): the causes; %NULL with %LB_BOOK_ERROR_REFUSED, naming the line,
 *   when any of it is wrong
 */
char **lb_delay_causes_from_text (const char *text, GError **error);

/* The job's own, or else those that are built in (trade/shift-words). To be freed. */
char **lb_delay_causes (const LbFold *fold);

G_END_DECLS
